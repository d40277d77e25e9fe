//! Where the stone of this wall lies before it is built in.

use super::{Built, Planner};
use crate::course::{StoneKind, WallKind};
use crate::heaps::{Heaps, HeapsAsked, heaps};
use crate::people::Stint;
use crate::quantity::{Length, Mass};
use crate::retaining::Retaining;

impl Planner<'_> {
    /// The heaps of all that must be at hand, what will be left over included.
    pub(super) fn heaps(
        &self,
        built: &Built,
        stints: &[Stint],
        retaining: Option<&Retaining>,
    ) -> Heaps {
        let (given, stone) = (&self.course.wall, &built.stone);
        let wanted: Vec<(StoneKind, Mass)> = stone
            .by_kind
            .iter()
            .map(|(kind, mass)| (*kind, stone.wanted(*mass)))
            .collect();
        let joints: Vec<Length> = stints.iter().skip(1).map(|stint| stint.from).collect();
        let throughs = stone.throughs.iter().map(|row| row.length);
        let asked = HeapsAsked {
            stone: &wanted,
            density: stone.density,
            drainage: retaining.map(|it| (it.backfill, it.backfill_mass)),
            longest_through: throughs.reduce(|most, it| if most < it { it } else { most }),
            wall: &built.wall,
            footing: given.footing,
            bank: match &given.kind {
                WallKind::Retaining(bank) => Some(bank.side),
                WallKind::Freestanding => None,
            },
            ends: given.ends,
            stint_joints: &joints,
            load: self.course.stone.load,
        };
        heaps(&asked, &self.tables.heaps)
    }
}
