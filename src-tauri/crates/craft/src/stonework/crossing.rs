//! The outline of the wall that is cut across.

use super::given::Crossing;
use crate::quantity::Read;
use crate::wall::Side;

/// The outline in metres.
pub(super) struct Shape {
    pub(super) height: f64,
    pub(super) top_width: f64,
    pub(super) lean: [f64; 2],
}

impl Shape {
    pub(super) fn new(crossing: &Crossing) -> Self {
        let section = crossing.section;
        Self {
            height: section.height().si(),
            top_width: section.top_width().si(),
            lean: [Side::Left, Side::Right].map(|side| section.batter(side).lean()),
        }
    }

    /// The left face and the right one at this level.
    pub(super) fn faces(&self, y: f64) -> [f64; 2] {
        let half = self.top_width / 2.0;
        [
            -half - (self.height - y) * self.lean[0],
            half + (self.height - y) * self.lean[1],
        ]
    }

    pub(super) fn width(&self, y: f64) -> f64 {
        let [left, right] = self.faces(y);
        right - left
    }
}
