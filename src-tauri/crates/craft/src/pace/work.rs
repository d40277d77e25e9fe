//! How much of each stage there is to do, from the geometry of the wall.

use crate::course::{End, StoneKind, WallGiven};
use crate::frames::Frames;
use crate::quantity::{Read, in_tonnes};
use crate::stone::Stone;
use crate::tables::{Stage, Work};
use crate::wall::{Volumes, Wall};

/// Less than a gram is what rounding leaves, and no stage of its own.
const DUST: f64 = 1e-6;

/// What the amounts are taken from.
#[derive(Debug, Clone, Copy)]
pub struct Amounts<'a> {
    /// The wall asked for.
    pub wall: &'a WallGiven,
    /// The same as it stands.
    pub standing: &'a Wall,
    /// Its volumes.
    pub volumes: &'a Volumes,
    /// Its frames.
    pub frames: &'a Frames,
    /// Its stone.
    pub stone: &'a Stone,
}

impl Amounts<'_> {
    /// The amount of a stage in the unit its rate is for; 0 where there is none of it.
    pub fn of(&self, stage: &Stage) -> f64 {
        let amount = self.exactly(stage);
        if amount < DUST { 0.0 } else { amount }
    }

    fn exactly(&self, stage: &Stage) -> f64 {
        match stage.work {
            Work::HeapTonnes => in_tonnes(self.stone.heap),
            Work::TrenchCubicMetres if self.wall.trench_dug => 0.0,
            Work::TrenchCubicMetres => self.volumes.footing.si(),
            Work::Frames => self.frames.rows.len() as f64,
            Work::FootingTonnes => in_tonnes(self.stone.kind(StoneKind::Footing)),
            Work::FirstLiftTonnes => self.first_lift_tonnes(),
            Work::Throughs => self.stone.through_count() as f64,
            Work::SecondLiftTonnes => {
                let laid = self.stone.kind(StoneKind::Face) + self.stone.kind(StoneKind::Hearting);
                in_tonnes(laid) - self.first_lift_tonnes()
            }
            Work::Heads => self.heads() as f64,
            Work::Metres => self.standing.length().si(),
            Work::CopeMetres if 0 < self.stone.copes => self.standing.length().si(),
            Work::CopeMetres | Work::Minutes(_) => 0.0,
        }
    }

    /// The body below the first through row: `volume below · density · (1 - voids)`. A wall
    /// without throughs is one lift, up to the top.
    fn first_lift_tonnes(&self) -> f64 {
        let first_row = self.wall.through_rows.iter().copied().fold(
            self.standing.section.height(),
            |lowest, row| {
                if row < lowest { row } else { lowest }
            },
        );
        let below = self.volumes.body - self.standing.body_above(first_row);
        in_tonnes(below * self.stone.density * (1.0 - self.stone.voids))
    }

    fn heads(&self) -> usize {
        if self.standing.is_ring() {
            return 0;
        }
        self.wall
            .ends
            .iter()
            .filter(|end| **end == End::Head)
            .count()
    }
}
