//! What can hurt someone on this course.

use super::{Built, Planner};
use crate::conditions::Conditions;
use crate::hazards::{Circumstances, Met, Shown, hazards};
use crate::lifting::Guide;

impl Planner<'_> {
    pub(super) fn hazards(
        &self,
        built: &Built,
        conditions: &Conditions,
        lifting: &Guide,
        ratio: f64,
    ) -> Vec<Shown> {
        let table = &self.tables.hazards;
        let circumstances = Circumstances::of(&Met {
            course: &self.course,
            conditions,
            wall: &built.wall,
            frames: &built.frames,
            stone: &built.stone,
            lifting,
            ratio,
            places: &self.pace.places,
            table,
        });
        hazards(table, &circumstances)
    }
}
