//! The programme of a course: lessons and stages in order, followed through the calendar.

use super::calendar::{Calendar, Spent};
use super::crew::Gang;
use super::work::Amounts;
use crate::tables::{Before, Crew, Lesson, PaceTable, Places, Stage, Work};

/// One thing the group does after another, by its place in its table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Step {
    /// A lesson.
    Lesson(usize),
    /// A stage.
    Stage(usize),
}

/// Who watches a programme being followed.
pub trait Witness {
    /// A piece of time, and the step it was spent on.
    fn piece(&mut self, _step: Step, _spent: Spent, _from: f64, _to: f64) {}
    /// A step is done; infinite when the course ended first.
    fn done(&mut self, _step: Step, _at: f64) {}
}

/// What a group will do, in order, and how long each stage takes at its usual pace.
#[derive(Debug, Clone, PartialEq)]
pub struct Programme {
    steps: Vec<Step>,
    /// Clock minutes by stage at the usual pace.
    usual: Vec<f64>,
    lesson_minutes: Vec<f64>,
    /// Stages at which stones are laid to a string.
    laying: Vec<bool>,
    /// Share of those at the wall that is new to laying.
    novices: f64,
    places: Places,
}

impl Programme {
    /// The programme for these amounts of work: each stage there is work for, its lessons
    /// before it, the lessons that open the course first.
    pub fn new(
        stages: &[Stage],
        lessons: &[Lesson],
        pace: &PaceTable,
        amounts: &Amounts<'_>,
        gang: &Gang<'_>,
    ) -> Self {
        let usual: Vec<f64> = stages
            .iter()
            .map(|stage| 60.0 * gang.clock_hours(stage, amounts.of(stage)))
            .collect();
        Self {
            steps: steps(stages, lessons, &usual),
            usual,
            lesson_minutes: lessons
                .iter()
                .map(|lesson| f64::from(lesson.minutes))
                .collect(),
            laying: stages.iter().map(is_laying).collect(),
            novices: gang.share_of_novices(),
            places: pace.places.clone(),
        }
    }

    /// The stages there is work for, in order.
    pub fn stages(&self) -> impl Iterator<Item = usize> {
        self.steps.iter().filter_map(|step| match step {
            Step::Stage(stage) => Some(*stage),
            Step::Lesson(_) => None,
        })
    }

    /// Goes through the programme with each stage so many times slower than usual.
    pub fn follow(&self, calendar: &Calendar, slowness: &[f64], witness: &mut impl Witness) {
        let mut walk = calendar.walk();
        let mut laid = 0.0;
        for &step in &self.steps {
            let mut saw = |spent, from, to| witness.piece(step, spent, from, to);
            match step {
                Step::Lesson(lesson) => walk.lesson(self.lesson_minutes[lesson], &mut saw),
                Step::Stage(stage) => {
                    let minutes = self.usual[stage] * slowness[stage];
                    let learning = if self.laying[stage] {
                        let before = self.learning(laid);
                        laid += minutes;
                        self.learning(laid) - before
                    } else {
                        0.0
                    };
                    walk.work(minutes + learning, &mut saw);
                }
            }
            witness.done(step, walk.now());
        }
    }

    /// Minutes that learning adds to so many minutes of laying. In the first `hours` on the
    /// clock laying goes slower by a factor f: `min(t (f - 1), hours (1 - 1/f))`, for the
    /// share of those at the wall that is new to it.
    fn learning(&self, laid: f64) -> f64 {
        let factor = self.places.learning_factor;
        let most = 60.0 * self.places.learning_hours * (1.0 - 1.0 / factor);
        self.novices * (laid * (factor - 1.0)).min(most)
    }
}

fn steps(stages: &[Stage], lessons: &[Lesson], usual: &[f64]) -> Vec<Step> {
    let given = |when: Before| {
        lessons
            .iter()
            .enumerate()
            .filter(move |(_, lesson)| lesson.before == when)
            .map(|(number, _)| Step::Lesson(number))
    };
    let mut steps: Vec<Step> = given(Before::Course).collect();
    for (number, stage) in stages.iter().enumerate() {
        if 0.0 < usual[number] {
            steps.extend(given(Before::Stage(stage.id.clone())));
            steps.push(Step::Stage(number));
        }
    }
    steps
}

fn is_laying(stage: &Stage) -> bool {
    stage.crew == Crew::FacingPairs
        && matches!(
            stage.work,
            Work::FootingTonnes | Work::FirstLiftTonnes | Work::SecondLiftTonnes
        )
}
