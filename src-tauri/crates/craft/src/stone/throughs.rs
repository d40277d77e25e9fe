//! Throughs and copes: how many of what size.

use crate::course::{ThroughReach, WallGiven};
use crate::quantity::{Density, Length, Mass, Read, steps_to_cover, whole_number};
use crate::wall::Wall;

/// One row of throughs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ThroughRow {
    /// Above the ground.
    pub height: Length,
    /// Of one through.
    pub length: Length,
    /// How many.
    pub count: usize,
    /// Of one through.
    pub mass: Mass,
}

/// How far a three-quarter through reaches into the wall from its face (the word says it).
const THREE_QUARTERS: f64 = 0.75;

/// Count: length / spacing to the nearest whole number, at least 1. Length of one: the
/// wall's width at the row and the projection on both faces; three quarters of the width and
/// one projection where no stone is long enough to cross it.
pub(super) fn rows(wall: &WallGiven, standing: &Wall, density: Density) -> Vec<ThroughRow> {
    let (size, length) = (wall.through, standing.length());
    wall.through_rows
        .iter()
        .map(|&height| {
            let width = standing.section.width_at(height);
            let long = match wall.through_reach {
                ThroughReach::Across => width + size.projection * 2.0,
                ThroughReach::ThreeQuarters => width * THREE_QUARTERS + size.projection,
            };
            ThroughRow {
                height,
                length: long,
                count: in_a_row(length, wall.through_spacing),
                mass: long * size.width * size.thickness * density,
            }
        })
        .collect()
}

/// The nearest whole number of spacings; half a spacing more makes one more through, whatever
/// the last binary digit says.
fn in_a_row(length: Length, spacing: Length) -> usize {
    whole_number((length.si() / spacing.si() + 1e-9).round()).max(1)
}

/// Length / thickness, rounded up; none without a cope.
pub(super) fn copes(wall: &WallGiven, length: Length) -> usize {
    if wall.cope_height.si() <= 0.0 {
        return 0;
    }
    steps_to_cover(length, wall.cope_thickness)
}
