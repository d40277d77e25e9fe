//! What has been built so far, as it was told on the day, and how long it took.

use super::belief::Belief;
use super::calendar::Calendar;
use super::evidence::Worked;
use super::programme::{Programme, Step};
use super::telling::Telling;
use super::whole::Whole;
use crate::tables::PaceSpread;

/// Whole stages of less than so many usual minutes say nothing of pace by themselves: they are
/// told together with what comes next.
pub(super) const LEAST: f64 = 5.0;

/// More than so many times quicker than usual can't be.
pub const QUICKEST: f64 = 10.0;

/// A report put to the programme.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Told {
    /// When, on the clock.
    pub clock: f64,
    /// Which step of the programme.
    pub step: usize,
    /// Which bay; all of them if it is not said.
    pub bay: Option<usize>,
    /// The share that is done.
    pub done: f64,
}

impl Told {
    /// Puts it to the shares done, step by step and bay by bay.
    ///
    /// What is begun in a bay has all the steps before it done there, and a step for which all
    /// bays must be ready has everything before it done in all of them. What is not done yet has
    /// nothing begun after it.
    pub fn apply(&self, programme: &Programme, done: &mut [Vec<f64>]) {
        let is_told = |bay: &usize| self.bay.is_none_or(|told| told == *bay);
        let together = |step: usize| programme.steps[step].together;
        let before = (0..=self.step).rev().find(|step| together(*step));
        let behind = (self.step + 1..done.len()).find(|step| together(*step));
        for bay in 0..programme.bays {
            for (number, step) in done.iter_mut().enumerate() {
                let share = &mut step[bay];
                if number == self.step {
                    if is_told(&bay) {
                        *share = self.done;
                    }
                } else if number < self.step {
                    let all = before.is_some_and(|it| number <= it);
                    if 0.0 < self.done && (all || is_told(&bay)) {
                        *share = 1.0;
                    }
                } else if self.done < 1.0
                    && (is_told(&bay) || behind.is_some_and(|it| it <= number))
                {
                    *share = 0.0;
                }
            }
        }
    }

    /// Whether it says that more is done than a later report does.
    fn is_denied_by(&self, later: &Self, programme: &Programme) -> bool {
        let mut said = vec![vec![0.0; programme.bays]; programme.steps.len()];
        self.apply(programme, &mut said);
        let mut after = said.clone();
        later.apply(programme, &mut after);
        let mut shares = said.iter().flatten().zip(after.iter().flatten());
        shares.any(|(said, after)| *after < *said - 1e-9)
    }
}

/// The reports that no later one denies, each with its number: nothing that was built is ever
/// taken down again, so that whoever says less than before corrects what was said. Of a report on
/// all bays what is not denied stands, bay by bay.
pub fn standing(programme: &Programme, told: &[Told]) -> Vec<(usize, Told)> {
    let stands = |(at, it): &(usize, Told)| {
        let mut later = told[at + 1..].iter();
        !later.any(|later| it.is_denied_by(later, programme))
    };
    let mut standing = Vec::new();
    for report in told.iter().copied().enumerate() {
        let (at, it) = report;
        if stands(&report) {
            standing.push(report);
        } else if it.bay.is_none() {
            let bays = 0..programme.bays;
            let bays = bays.map(|bay| {
                (
                    at,
                    Told {
                        bay: Some(bay),
                        ..it
                    },
                )
            });
            standing.extend(bays.filter(stands));
        }
    }
    standing
}

/// Reports on one wall, one after another. A wall that is made lower, shorter or longer while it
/// is being built is told of in chapters.
#[derive(Debug, Clone)]
pub struct Chapter<'a> {
    /// The wall as it was to be then.
    pub whole: &'a Whole,
    /// What was told of it, in order of time.
    pub told: Vec<Told>,
}

/// Work between two reports.
#[derive(Debug, Clone, PartialEq)]
pub struct Stretch {
    /// How long it took.
    pub worked: Worked,
    /// The share of the bays it tells of.
    pub share: f64,
}

/// A report of work that went so many times quicker than usual that it may be a slip.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Quick {
    /// Its place among the reports.
    pub report: usize,
    /// How many times.
    pub times: f64,
}

/// How far the wall has come.
#[derive(Debug, Clone, PartialEq)]
pub struct SoFar {
    /// The time of the last report, on the clock.
    pub now: f64,
    /// The share done, step by step and bay by bay.
    pub done: Vec<Vec<f64>>,
    /// The same at each time something was told, the last with it.
    pub history: Vec<(f64, Vec<Vec<f64>>)>,
    /// Minutes of the lessons before each step that have been given.
    pub given: Vec<f64>,
    /// What the reports tell of pace.
    pub stretches: Vec<Stretch>,
    /// The reports that may be slips.
    pub quick: Vec<Quick>,
}

/// A report that can't be: so much can't have been done in that time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TooSoon {
    /// Its place among the reports.
    pub report: usize,
    /// Working minutes that went by.
    pub minutes: f64,
    /// Minutes it usually takes.
    pub usual: f64,
}

impl SoFar {
    /// Adds up the reports, which stand in order of time, and says how far that is on the way to
    /// the `whole` as it is to be now. Where a report does not say whether a lesson had been
    /// given, what is `believed` of pace decides.
    ///
    /// Who corrects what was said of the wall before it was changed is not believed to have built
    /// less by it: within a chapter a report denies an earlier one, see [`standing`].
    ///
    /// # Errors
    /// [`TooSoon`] for work done more than [`QUICKEST`] times quicker than usual.
    pub fn of(
        chapters: &[Chapter<'_>],
        whole: &Whole,
        is_fixed: &dyn Fn(&Step) -> bool,
        calendar: &Calendar,
        (believed, spread): (&Belief, &PaceSpread),
    ) -> Result<Self, TooSoon> {
        let first = chapters.first().map_or(whole, |chapter| chapter.whole);
        let mut telling = Telling::new(first, is_fixed, calendar, believed, spread);
        let mut before = 0;
        for chapter in chapters {
            telling.turn_to(chapter.whole);
            let mut told = standing(&chapter.whole.programme, &chapter.told);
            for (number, _) in &mut told {
                *number += before;
            }
            for same in told.chunk_by(|(_, a), (_, b)| (a.clock - b.clock).abs() < 1e-9) {
                telling.hear(same)?;
            }
            before += chapter.told.len();
        }
        telling.turn_to(whole);
        Ok(telling.so_far)
    }

    /// How far that is on the way to another wall.
    pub fn at(&self, whole: &Whole, other: &Whole) -> Self {
        let shares = |done: &[Vec<f64>]| whole.shares_at(other, done);
        let history = self.history.iter();
        Self {
            done: shares(&self.done),
            history: history.map(|(at, done)| (*at, shares(done))).collect(),
            given: whole.given_at(other, &self.given),
            ..self.clone()
        }
    }

    /// What is believed of pace after what was told.
    pub fn learned(&self, believed: &Belief, spread: &PaceSpread) -> Belief {
        let mut belief = believed.clone();
        for stretch in &self.stretches {
            if let Some(observation) = stretch.worked.observation(&belief, spread) {
                observation.tell(&mut belief);
            }
        }
        belief
    }

    /// Whether anything of a step has been begun.
    pub fn begun(&self, step: usize) -> bool {
        self.done[step].iter().any(|done| 0.0 < *done)
    }

    /// What is left to do. Lessons that have been given, and steps that are done, are left out.
    pub fn left(&self, programme: &Programme) -> Programme {
        let mut left = programme.clone();
        for (number, step) in left.steps.iter_mut().enumerate() {
            for (usual, done) in step.usual.iter_mut().zip(&self.done[number]) {
                *usual *= 1.0 - done;
            }
            let mut given = self.given[number];
            let begun = self.begun(number);
            step.lessons.retain(|lesson| {
                let minutes = &mut left.lesson_minutes[*lesson];
                let before = given.min(*minutes);
                given -= before;
                *minutes -= before;
                !begun && 0.0 < *minutes
            });
            step.after = step.after.filter(|(_, clock)| self.now < *clock);
        }
        let mut number = 0;
        left.steps.retain(|_| {
            number += 1;
            self.done[number - 1].iter().any(|done| *done < 1.0)
        });
        left.laid = self.laid(programme);
        left
    }

    /// Usual minutes of laying behind each bay.
    fn laid(&self, programme: &Programme) -> Vec<f64> {
        let laying = programme.steps.iter().zip(&self.done);
        let mut laid = vec![0.0; programme.bays];
        for (step, done) in laying.filter(|(step, _)| step.laying) {
            for (laid, (usual, done)) in laid.iter_mut().zip(step.usual.iter().zip(done)) {
                *laid += usual * done;
            }
        }
        laid
    }
}

#[cfg(test)]
pub(super) mod tests;
