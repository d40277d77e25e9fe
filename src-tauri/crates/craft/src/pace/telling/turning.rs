//! A wall that was changed while it was being built: what was told so far, put to the new one.

use super::{Due, Telling};
use crate::pace::programme::Step;
use crate::pace::said::Last;
use crate::pace::whole::Whole;

impl<'a> Telling<'a> {
    /// From here on another wall is told of: the same one lower, shorter or longer.
    pub(in crate::pace) fn turn_to(&mut self, other: &'a Whole) {
        if std::ptr::eq(self.whole, other) {
            return;
        }
        let whole = std::mem::replace(&mut self.whole, other);
        self.so_far = self.so_far.at(whole, other);
        let steps = &other.programme.steps;
        self.due = self.due.and_then(|due| {
            let same = |step: &Step| whole.place_of(step) == Some(due.step);
            let step = steps.iter().position(same)?;
            Some(Due { step, ..due })
        });
        let told: Vec<Vec<f64>> = (0..self.fixed.len())
            .map(|step| self.last.iter().map(|last| last.done[step]).collect())
            .collect();
        let told = whole.shares_at(other, &told);
        let last = (0..other.programme.bays).map(|bay| {
            // Nobody has stood at a bay that is new.
            let times = whole.bay_of(other, bay).map(|it| &self.last[it]);
            let times = times.map_or((self.so_far.now, self.aside), |it| (it.clock, it.aside));
            Last {
                clock: times.0,
                aside: times.1,
                done: told.iter().map(|step| step[bay]).collect(),
            }
        });
        self.last = last.collect();
        self.programme = &other.programme;
        self.fixed = steps.iter().map(self.is_fixed).collect();
    }
}
