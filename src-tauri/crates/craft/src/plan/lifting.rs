//! Which stones of this wall one person may lift: the guide, asked about its own stones.

use super::Planner;
use crate::course::StoneKind;
use crate::lifting::{Guide, guide};
use crate::quantity::{Length, Mass, Read, kilograms, metres};
use crate::stone::Stone;

/// A footing stone's usual length along the wall (common practice, no source).
const FOOTING_STONE_M: f64 = 0.3;

impl Planner<'_> {
    /// The guide at this wall's heights, and its answers for this wall's heavy stones, each
    /// named by the stage in which it is laid.
    pub(super) fn lifting(&self, stone: &Stone) -> Guide {
        let wall = &self.course.wall;
        let top = wall.height + wall.cope_height / 2.0;
        let stones: Vec<(String, Mass)> = [
            ("footing", self.footing_stone(stone)),
            ("throughs", heaviest_through(stone)),
            ("cope", self.cope(stone)),
        ]
        .into_iter()
        .filter(|(_, mass)| kilograms(0.0) < *mass)
        .map(|(name, mass)| (name.to_owned(), mass))
        .collect();
        guide(&self.tables.lifting, stone.density, top, &stones)
    }

    /// Half as wide as the trench and as high as it is deep.
    fn footing_stone(&self, stone: &Stone) -> Mass {
        let none = metres(0.0);
        let (depth, outset) = self
            .course
            .wall
            .footing
            .map_or((none, none), |it| (it.depth, it.outset));
        if stone.kind(StoneKind::Footing).si() <= 0.0 {
            return kilograms(0.0);
        }
        let wide: Length = self.section.base_width() / 2.0 + outset;
        wide * depth * metres(FOOTING_STONE_M) * stone.density
    }

    /// As wide as the top, as high as the cope and of its thickness, less its rough corners.
    fn cope(&self, stone: &Stone) -> Mass {
        let wall = &self.course.wall;
        let solid = self.tables.stone.cope_fill.centre;
        wall.top_width * wall.cope_height * wall.cope_thickness * stone.density * solid
    }
}

fn heaviest_through(stone: &Stone) -> Mass {
    let rows = stone.throughs.iter().map(|row| row.mass);
    rows.fold(
        kilograms(0.0),
        |most, mass| if most < mass { mass } else { most },
    )
}
