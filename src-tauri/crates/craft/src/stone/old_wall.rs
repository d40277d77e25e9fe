//! The stone of an old wall that is stripped out to be used again.

use super::kinds::{self, Kinds};
use super::makeup::Outcome;
use crate::course::OldWall;
use crate::quantity::{Length, Volume, cubic_metres, kilograms};

impl OldWall {
    /// Its body: (base + top) / 2 · height · length.
    fn body(&self) -> Volume {
        (self.base_width + self.top_width) / 2.0 * self.height * self.length
    }

    /// Its footing: (base + 2 · outset) · depth · length.
    fn under(&self) -> Volume {
        let wide = |outset: Length| self.base_width + outset * 2.0;
        self.footing.map_or(cubic_metres(0.0), |it| {
            wide(it.outset) * it.depth * self.length
        })
    }

    /// Its cope: top width · cope height · length.
    fn cope(&self) -> Volume {
        self.top_width * self.cope_height * self.length
    }

    /// What of it can be built in again, by kind. Throughs are not told apart from face
    /// stone before the wall is down.
    pub(super) fn stone(&self, at: &Outcome) -> Kinds {
        let solid = at.density * (1.0 - at.voids) * at.reused;
        let body = self.body() * solid;
        kinds::sorted(|kind| {
            use crate::course::StoneKind::{Copes, Face, Footing, Hearting, Throughs};
            match kind {
                Footing => self.under() * solid,
                Face => body * (1.0 - at.hearting_share),
                Hearting => body * at.hearting_share,
                Throughs => kilograms(0.0),
                Copes => self.cope() * at.density * at.cope_fill * at.reused,
            }
        })
    }
}
