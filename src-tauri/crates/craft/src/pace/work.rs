//! How much of each stage there is to do, from the geometry of the wall.

use crate::course::{End, StoneKind, WallGiven};
use crate::frames::Frames;
use crate::quantity::{Length, Read, in_tonnes};
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
            Work::StrippedTonnes => in_tonnes(self.stone.stripped),
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
            Work::CopeEnds if 0 < self.stone.copes && !self.standing.is_ring() => 2.0,
            Work::CopeMetres | Work::CopeEnds | Work::Minutes(_) | Work::EachDay(_) => 0.0,
        }
    }

    /// How much more or less of a stage there is in each bay than an even share would be:
    /// 1 everywhere for a wall of one height.
    pub fn by_bay(&self, stage: &Stage) -> Vec<f64> {
        let bays: Vec<(Length, Length)> = self
            .frames
            .rows
            .windows(2)
            .map(|rows| (rows[0].station, rows[1].station))
            .collect();
        let dense = self.to_the_metre(stage);
        let along = |it: &(Length, Length)| (it.1 - it.0).si();
        let whole: f64 = bays.iter().map(along).sum();
        let weighed = bays
            .iter()
            .zip(&dense)
            .map(|(bay, dense)| along(bay) * dense);
        let mean = weighed.sum::<f64>() / whole;
        if bays.is_empty() || !mean.is_normal() || mean < 0.0 {
            return vec![1.0; bays.len().max(1)];
        }
        dense.into_iter().map(|dense| dense / mean).collect()
    }

    /// How much of a stage there is to the metre, bay by bay, in any unit: what of it is done
    /// counts on a lower or higher wall by that.
    pub fn to_the_metre(&self, stage: &Stage) -> Vec<f64> {
        let rows = self.frames.rows.windows(2);
        let middles = rows.map(|rows| (rows[0].station + rows[1].station) / 2.0);
        let mut dense: Vec<f64> = middles.map(|middle| self.at(stage, middle)).collect();
        if dense.is_empty() {
            dense.push(self.at(stage, self.standing.length() / 2.0));
        }
        dense
    }

    /// How much of a stage there is to the metre about a station, in any unit.
    fn at(&self, stage: &Stage, station: Length) -> f64 {
        let section = &self.standing.section;
        let height = self.standing.height_at(station);
        let above = section.height() - self.first_row();
        match stage.work {
            Work::FootingTonnes | Work::TrenchCubicMetres => {
                let outset = self.wall.footing.map_or(0.0, |it| 2.0 * it.outset.si());
                section.top_width().si() + section.narrowing() * height.si() + outset
            }
            Work::FirstLiftTonnes => (section.area_to_depth(height) - section.area_to_depth(above))
                .si()
                .max(0.0),
            Work::SecondLiftTonnes => section.area_to_depth(above).si(),
            _ => 1.0,
        }
    }

    /// The body below the first through row: `volume below · density · (1 - voids)`. A wall
    /// without throughs is one lift, up to the top.
    fn first_lift_tonnes(&self) -> f64 {
        let below = self.volumes.body - self.standing.body_above(self.first_row());
        in_tonnes(below * self.stone.density * (1.0 - self.stone.voids))
    }

    /// The height of the lowest row of throughs; of the top where there is none.
    fn first_row(&self) -> Length {
        let rows = self.wall.through_rows.iter().copied();
        rows.fold(self.standing.section.height(), |lowest, row| {
            if row < lowest { row } else { lowest }
        })
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
