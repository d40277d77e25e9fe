//! The simulated courses: the chance of finishing, and when each stage is done.

use super::calendar::Calendar;
use super::draws::Draws;
use super::programme::{Programme, Step, Witness};
use rayon::prelude::*;

/// How many courses are simulated.
pub const SAMPLES: usize = 10_000;

/// What the simulated courses say.
#[derive(Debug, Clone, PartialEq)]
pub struct Forecast {
    /// The share of courses that finish.
    pub chance: f64,
    /// How many were simulated.
    pub samples: usize,
    /// The seed they were drawn from.
    pub seed: u64,
    /// Each stage that there is work for, in order.
    pub by_stage: Vec<StageTimes>,
}

/// When one stage is done.
#[derive(Debug, Clone, PartialEq)]
pub struct StageTimes {
    /// The stage's place in the table.
    pub stage: usize,
    /// The 10th, 50th and 90th percentile in minutes of the calendar; `None` for a time not
    /// reached within the course.
    pub done: [Option<f64>; 3],
}

impl Forecast {
    /// Follows the programme through all the courses drawn.
    pub fn of(programme: &Programme, calendar: &Calendar, draws: &Draws, seed: u64) -> Self {
        let stages: Vec<usize> = programme.stages().collect();
        let courses: Vec<Vec<f64>> = draws
            .courses()
            .map(|slowness| {
                let mut times = Times(Vec::with_capacity(stages.len()));
                programme.follow(calendar, slowness, &mut times);
                times.0
            })
            .collect();
        let by_stage = stages
            .iter()
            .enumerate()
            .map(|(at, &stage)| StageTimes {
                stage,
                done: percentiles(courses.iter().map(|times| times[at]).collect()),
            })
            .collect();
        let finished = courses
            .iter()
            .filter(|times| times.iter().all(|time| time.is_finite()))
            .count();
        Self {
            chance: finished as f64 / courses.len().max(1) as f64,
            samples: courses.len(),
            seed,
            by_stage,
        }
    }
}

/// The share of the courses drawn that finish.
pub fn chance(programme: &Programme, calendar: &Calendar, draws: &Draws) -> f64 {
    let finished = draws
        .courses()
        .filter(|slowness| {
            let mut end = End(0.0);
            programme.follow(calendar, slowness, &mut end);
            end.0.is_finite()
        })
        .count();
    finished as f64 / draws.len().max(1) as f64
}

/// When each stage is done, in order.
struct Times(Vec<f64>);

impl Witness for Times {
    fn done(&mut self, step: Step, at: f64) {
        if matches!(step, Step::Stage(_)) {
            self.0.push(at);
        }
    }
}

/// When the last step is done.
struct End(f64);

impl Witness for End {
    fn done(&mut self, _step: Step, at: f64) {
        self.0 = at;
    }
}

/// By the nearest rank, so that a percentile is a time that was reached.
fn percentiles(mut times: Vec<f64>) -> [Option<f64>; 3] {
    [10, 50, 90].map(|percent| {
        let rank = (times.len() * percent).div_ceil(100).max(1);
        if times.len() < rank {
            return None;
        }
        let (_, time, _) = times.select_nth_unstable_by(rank - 1, f64::total_cmp);
        Some(*time).filter(|time| time.is_finite())
    })
}
