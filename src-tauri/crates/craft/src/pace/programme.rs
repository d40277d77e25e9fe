//! The programme of a course: what there is to do, in order, and how long it usually takes.

use super::crew::Gang;
use super::fixed::Timed;
use super::ties::Ties;
use super::work::Amounts;
use crate::course::{Effect, Running};
use crate::quantity::{Length, Read, metres};
use crate::tables::{Along, Before, Lesson, PaceTable, Places, Stage, Work};

/// A stage there is work for.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// Its place in the table of stages.
    pub stage: usize,
    /// Clock minutes at the usual pace, bay by bay.
    pub usual: Vec<f64>,
    /// All bays must be ready for it.
    pub together: bool,
    /// Its place among the stages with a string, if it has one.
    pub string: Option<usize>,
    /// Stone is laid, so that beginners learn.
    pub laying: bool,
    /// The lessons given when it is due.
    pub lessons: Vec<usize>,
    /// The lesson by wish that must be over, and when it is.
    pub after: Option<(usize, f64)>,
    /// The share of its time that is lost because not all find a place or a teacher.
    pub crowding: f64,
}

/// What a group will do, in order.
#[derive(Debug, Clone, PartialEq)]
pub struct Programme {
    /// The stages there is work for.
    pub steps: Vec<Step>,
    /// How many bays there are.
    pub bays: usize,
    /// How long each lesson lasts.
    pub lesson_minutes: Vec<f64>,
    /// How the slowest pair slows a bay.
    pub ties: Ties,
    /// Minutes of laying behind each bay, at the usual pace.
    pub laid: Vec<f64>,
    /// How beginners learn.
    pub learning: Learning,
}

/// How beginners learn to lay.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Learning {
    /// Of those at the wall, the share that is new to it.
    novices: f64,
    factor: f64,
    /// The most minutes it costs one who is new.
    most: f64,
}

/// What a programme is made of.
#[derive(Debug, Clone, Copy)]
pub struct Given<'a> {
    /// The stages in order.
    pub stages: &'a [Stage],
    /// The lessons.
    pub lessons: &'a [Lesson],
    /// The pace.
    pub pace: &'a PaceTable,
    /// How the days are run.
    pub running: &'a Running,
    /// What stands at fixed times.
    pub timed: &'a Timed,
    /// Between two frames.
    pub spacing: Length,
}

impl Programme {
    /// The programme for these amounts of work.
    pub fn new(given: &Given<'_>, amounts: &Amounts<'_>, gang: &Gang<'_>) -> Self {
        let bays = amounts.frames.bays_to_build();
        let length = amounts.standing.length();
        let minutes = given.stages.iter().map(|stage| {
            let done = given.running.beforehand.contains(&stage.id);
            let amount = if done { 0.0 } else { amounts.of(stage) };
            let minutes = 60.0 * gang.clock_hours(stage, amount);
            (!done && 0.0 < minutes).then_some(minutes)
        });
        let minutes: Vec<Option<f64>> = minutes.collect();
        let due = given.due(&minutes);
        let steps = minutes.iter().enumerate().filter_map(|(number, minutes)| {
            let by_bay = amounts.by_bay(&given.stages[number]);
            Some(given.step(number, (*minutes)?, &by_bay, &due[number], gang))
        });
        Self {
            steps: steps.collect(),
            bays,
            lesson_minutes: given
                .lessons
                .iter()
                .map(|lesson| f64::from(lesson.minutes))
                .collect(),
            ties: Ties::new(
                pairs_to_a_bay(gang, given.spacing, length),
                given.pace.spread.pair,
            ),
            laid: vec![0.0; bays],
            learning: Learning::of(gang, &given.pace.places, given.running),
        }
    }
}

impl Given<'_> {
    /// The lessons before each stage, given what minutes there are of it.
    fn due(&self, minutes: &[Option<f64>]) -> Vec<Vec<usize>> {
        let mut due = vec![Vec::new(); minutes.len()];
        for (number, lesson) in self.lessons.iter().enumerate() {
            if !self.running.left_out.contains(&lesson.id)
                && let Some(stage) = self.stage_after(lesson, minutes)
            {
                due[stage].push(number);
            }
        }
        due
    }

    /// The stage that waits for a lesson. A lesson whose own stage this course has not got is
    /// given only where it was asked for: before the next stage, or the last there is.
    fn stage_after(&self, lesson: &Lesson, minutes: &[Option<f64>]) -> Option<usize> {
        let Before::Stage(id) = &lesson.before else {
            return None;
        };
        let own = self.stages.iter().position(|stage| stage.id == *id)?;
        let is_work = |stage: &usize| minutes[*stage].is_some();
        if is_work(&own) {
            return Some(own);
        }
        if !self.running.asked.contains(&lesson.id) {
            return None;
        }
        let next = (own..minutes.len()).find(is_work);
        next.or_else(|| (0..own).rev().find(is_work))
    }

    fn step(
        &self,
        number: usize,
        minutes: f64,
        by_bay: &[f64],
        due: &[usize],
        gang: &Gang<'_>,
    ) -> Step {
        let stage = &self.stages[number];
        let strings = self.stages[..number].iter().filter(|it| it.string).count();
        let (at_its_time, when_due): (Vec<usize>, Vec<usize>) = due
            .iter()
            .partition(|number| self.timed.lesson(**number).is_some());
        let ends = at_its_time
            .into_iter()
            .filter_map(|number| Some((number, self.timed.lesson(number)?.to)));
        Step {
            stage: number,
            usual: by_bay.iter().map(|share| minutes * share).collect(),
            together: stage.along == Along::Together,
            string: stage.string.then_some(strings),
            laying: is_laying(stage),
            lessons: when_due,
            after: ends.max_by(|a, b| a.1.total_cmp(&b.1)),
            crowding: gang.crowding(stage),
        }
    }
}

impl Learning {
    /// For a share of novices among those at the wall, from 0 to 1, who in their first `hours` of
    /// laying on the clock go slower by a `factor` of at least 1.
    pub fn new(novices: f64, factor: f64, hours: f64) -> Self {
        Self {
            novices,
            factor,
            most: 60.0 * hours * (1.0 - 1.0 / factor),
        }
    }

    fn of(gang: &Gang<'_>, places: &Places, running: &Running) -> Self {
        let counts = running.counts(Effect::Learning);
        let novices = if counts { gang.share_of_novices() } else { 0.0 };
        Self::new(novices, places.learning_factor, places.learning_hours)
    }

    /// Whether anybody learns.
    pub fn counts(&self) -> bool {
        0.0 < self.novices
    }

    /// Minutes that learning adds to so many minutes of laying. In the first `hours` on the
    /// clock laying goes slower by a factor f: `min(t (f - 1), hours (1 - 1/f))`, for the
    /// share of those at the wall that is new to it.
    pub fn adds(&self, laid: f64) -> f64 {
        self.novices * (laid * (self.factor - 1.0)).min(self.most)
    }
}

/// How many pairs share the string of one bay: those at the wall at once, spread along it.
/// It does not jump where a wall gets a bay more.
fn pairs_to_a_bay(gang: &Gang<'_>, spacing: Length, length: Length) -> f64 {
    let share = if length <= spacing || length <= metres(0.0) {
        1.0
    } else {
        spacing.si() / length.si()
    };
    gang.pairs_at_once() * share
}

fn is_laying(stage: &Stage) -> bool {
    matches!(
        stage.work,
        Work::FootingTonnes | Work::FirstLiftTonnes | Work::SecondLiftTonnes
    )
}
