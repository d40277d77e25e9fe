//! Timber frames and the moves of a leapfrog, for the wall as it is built.

use super::{Built, Planner};
use crate::Error;
use crate::course::FrameKind;
use crate::frames::Leapfrog;
use crate::kit;
use crate::people::pair_count;
use crate::timber::{FrameShape, TimberPlan};

impl Planner<'_> {
    pub(super) fn timber(&self, built: &Built) -> Result<Option<TimberPlan>, Error> {
        let given = &self.course.frames;
        if given.kind == FrameKind::Bar {
            return Ok(None);
        }
        let mut timber = self.tables.frames.timber.clone();
        if !given.lumber_lengths.is_empty() {
            timber
                .lumber
                .stock_lengths
                .clone_from(&given.lumber_lengths);
        }
        let rows = built.frames.rows.iter();
        let shapes: Vec<FrameShape> = rows.map(|row| FrameShape::at(row, &self.section)).collect();
        timber.plan(&shapes).map(Some)
    }

    pub(super) fn leapfrog(&self, built: &Built) -> Option<Leapfrog> {
        let frames = &self.course.frames;
        let moved = frames.leapfrog && !built.frames.moves.is_empty();
        let gang = self.gang(built);
        moved.then(|| Leapfrog {
            in_use: kit::frames_standing(&built.frames, frames.leapfrog, frames.in_stock),
            room: gang.room,
            pairs: gang.pairs_at_work(),
            of_pairs: pair_count(self.course.group.students.len()),
        })
    }
}
