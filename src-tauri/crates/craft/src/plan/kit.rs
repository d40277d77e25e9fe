//! The tools this wall and this group take.

use super::{Built, Planner};
use crate::conditions::Conditions;
use crate::kit::{self, Counted, KitLine};

impl Planner<'_> {
    pub(super) fn kit(&self, built: &Built, conditions: &Conditions) -> Vec<KitLine> {
        let stints = self.gang(built).pairs_at_work();
        let (frames, length) = (&built.frames, built.length);
        let counted = Counted::of(&self.course, conditions, frames, length, stints);
        kit::kit(&self.rules, &counted, &self.course.kit.held)
    }
}
