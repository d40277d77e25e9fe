//! What would help on the day, and the chance each cure buys.

use super::changes::Change;
use super::today::{Cure, CureKind, Looking};
use crate::pace::calendar::Calendar;
use crate::pace::forecast;
use crate::pace::programme::{Programme, Step};
use crate::pace::whole::Whole;
use crate::quantity::{Length, metres};
use crate::tables::Work;

/// So many of the simulated courses are asked what a cure would do.
const ASKED: usize = 2000;
/// A cure that buys less is none.
const LEAST_GAIN: f64 = 0.005;
/// Bays that differ by less than this share of a stage are level.
const LEVEL: f64 = 0.05;
/// By so much the wall is lowered, a course of stone.
const A_COURSE_M: f64 = 0.15;
/// Days begin or end so many minutes earlier or later.
const HALF_AN_HOUR: u32 = 30;

impl Looking<'_> {
    fn chance(&self, rest: &Programme, calendar: &Calendar) -> f64 {
        if rest.steps.is_empty() {
            return 1.0;
        }
        let stages = &self.planner.tables.stages;
        let luck = self.chances.luck(stages, self.whole.programme.bays);
        forecast::chance(rest, calendar, &luck, ASKED)
    }

    pub(super) fn cures(&self) -> Vec<Cure> {
        let now = self.chance(&self.rest, &self.calendar);
        let mut cures = Vec::new();
        let mut try_out = |kind: CureKind, rest: &Programme, calendar: &Calendar| {
            let chance = self.chance(rest, calendar);
            if now + LEAST_GAIN <= chance {
                cures.push(Cure {
                    kind,
                    chance,
                    gain: chance - now,
                });
            }
        };
        if let Some((bay, rest)) = self.with_helpers() {
            try_out(CureKind::MoveHelpers { bay }, &rest, &self.calendar);
        }
        if let Some(rest) = self.up_to_the_throughs() {
            try_out(CureKind::StopAtThroughs, &rest, &self.calendar);
        }
        if let Some((to, rest)) = self.shorter() {
            try_out(CureKind::Shorten { to }, &rest, &self.calendar);
        }
        for change in self.changes() {
            if let Some((rest, calendar)) = self.changed(&change) {
                try_out(CureKind::Change(change), &rest, &calendar);
            }
        }
        cures.sort_by(|a, b| b.chance.total_cmp(&a.chance));
        cures
    }

    fn changes(&self) -> Vec<Change> {
        let lessons = self.rest.steps.iter().flat_map(|step| &step.lessons);
        let lessons = lessons.filter(|lesson| !self.planner.tables.lessons[**lesson].safety);
        let mut changes = vec![
            Change::Lower(metres(A_COURSE_M)),
            Change::WithoutCope,
            Change::EarlierStart(HALF_AN_HOUR),
            Change::LaterFinish(HALF_AN_HOUR),
        ];
        changes.extend(lessons.map(|lesson| Change::WithoutLesson(*lesson)));
        changes
    }

    /// The bay that is most behind and the rest with everybody's time shared out evenly: nothing
    /// where all bays are level.
    fn with_helpers(&self) -> Option<(usize, Programme)> {
        let step = self.rest.steps.first()?;
        let (fewest, most) = step
            .usual
            .iter()
            .fold((f64::INFINITY, 0.0_f64), |(fewest, most), minutes| {
                (fewest.min(*minutes), most.max(*minutes))
            });
        let behind = step.usual.iter().position(|minutes| most <= *minutes)?;
        let whole = self.steps().iter().find(|it| it.stage == step.stage)?;
        (LEVEL * whole.usual[behind] < most - fewest).then_some(())?;
        let mut rest = self.rest.clone();
        for step in rest.steps.iter_mut().filter(|step| !step.together) {
            let mean = step.usual.iter().sum::<f64>() / step.usual.len() as f64;
            step.usual.fill(mean);
        }
        Some((behind, rest))
    }

    /// What is left when the wall ends at its throughs, while it is not higher yet.
    fn up_to_the_throughs(&self) -> Option<Programme> {
        let stages = &self.planner.tables.stages;
        let is_through = |step: &Step| stages[step.stage].work == Work::Throughs;
        let throughs = self.steps().iter().position(is_through)?;
        let mut above = (throughs + 1..self.steps().len()).peekable();
        above.peek()?;
        above.all(|step| !self.so_far.begun(step)).then_some(())?;
        let last = self.steps()[throughs].stage;
        let mut rest = self.rest.clone();
        rest.steps.retain(|step| {
            step.stage <= last || matches!(stages[step.stage].work, Work::Minutes(_))
        });
        Some(rest)
    }

    /// The rest of a wall that ends before the last bay, while its footing is not in.
    fn shorter(&self) -> Option<(Length, Programme)> {
        let bays = self.whole.programme.bays;
        let stages = &self.planner.tables.stages;
        let is_footing = |step: &Step| stages[step.stage].work == Work::FootingTonnes;
        let footing = self.steps().iter().position(is_footing)?;
        let untouched = self.so_far.done[footing][bays - 1] <= 0.0;
        (1 < bays && untouched && !self.built.wall.is_ring()).then_some(())?;
        let to = self.built.frames.rows.get(bays - 1)?.station;
        let shorter = self.planner.build(to).ok()?;
        let programme = self.planner.programme(&shorter);
        let whole = self.planner.whole(&shorter, programme);
        Some((to, self.rest_of(&whole)))
    }

    fn changed(&self, change: &Change) -> Option<(Programme, Calendar)> {
        let course = change.made_to(&self.planner.course, self.planner)?;
        let planner = self.planner.changed(course)?;
        let built = planner.build(self.built.length).ok()?;
        let whole = planner.whole(&built, planner.programme(&built));
        let rest = self.rest_of(&whole);
        Some((rest, planner.time.calendar.from(self.so_far.now)))
    }

    /// What is left to do at another wall after the work that was done for this one.
    fn rest_of(&self, other: &Whole) -> Programme {
        self.so_far.at(self.whole, other).left(&other.programme)
    }
}
