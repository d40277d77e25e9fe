//! The simulated courses: the chance of finishing, when each stage is done, what held things up.

use super::calendar::Calendar;
use super::follow::{Scratch, Witness};
use super::holdup::{Cause, Holdup, holdups};
use super::luck::{Course, Luck};
use super::programme::{Programme, Step};
use rayon::prelude::*;

/// How many courses are simulated.
pub const SAMPLES: usize = 10_000;

/// So many courses are followed abreast.
const ABREAST: usize = 8;

/// So many times as many at least are followed by one worker at a time.
const AT_A_TIME: usize = 32;

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
    /// What held things up most, in how many of the courses; the most frequent first.
    pub holdups: Vec<Holdup>,
}

/// When one stage is done.
#[derive(Debug, Clone, PartialEq)]
pub struct StageTimes {
    /// The stage's place in the table.
    pub stage: usize,
    /// The 10th, 50th and 90th percentile in minutes of the calendar; `None` for a time not
    /// reached within the course.
    pub done: [Option<f64>; 3],
    /// The share of courses in which it is done by the end of the first day.
    pub on_day_one: f64,
}

/// What is asked of the courses drawn.
#[derive(Debug, Clone, Copy)]
pub struct Asked<'a> {
    /// What there is to do.
    pub programme: &'a Programme,
    /// When there is time.
    pub calendar: &'a Calendar,
    /// What may come.
    pub luck: &'a Luck,
    /// How many times slower than usual each stage goes in the middle.
    pub middling: &'a [f64],
    /// When the first day ends.
    pub day_one_ends: f64,
    /// The seed.
    pub seed: u64,
}

impl Forecast {
    /// Follows the programme through all the courses drawn.
    pub fn of(asked: &Asked<'_>) -> Self {
        let (programme, samples) = (asked.programme, asked.luck.len());
        let steps = programme.steps.len().max(1);
        let mut times = vec![f64::INFINITY; samples * steps];
        let mut ends = vec![f64::INFINITY; samples];
        let mut causes = vec![None; samples];
        times
            .par_chunks_mut(steps * ABREAST)
            .zip(ends.par_chunks_mut(ABREAST))
            .zip(causes.par_chunks_mut(ABREAST))
            .enumerate()
            .with_min_len(AT_A_TIME)
            .for_each_init(
                || Scratch::new(programme),
                |scratch, (number, ((times, ends), causes))| {
                    let first = number * ABREAST;
                    let courses = abreast(ends.len(), |at| asked.luck.course(first + at));
                    let mut watching = Times { steps, times };
                    let all = programme.follow(asked.calendar, courses, scratch, &mut watching);
                    for (course, (end, cause)) in ends.iter_mut().zip(causes).enumerate() {
                        *end = all[course];
                        let followed = scratch.followed(course);
                        *cause = Cause::of(programme, followed, asked.middling);
                    }
                },
            );
        let finished = ends.iter().filter(|end| end.is_finite()).count();
        Self {
            chance: share(finished, samples),
            samples,
            seed: asked.seed,
            by_stage: by_stage(asked, &times, steps),
            holdups: holdups(&ends, &causes),
        }
    }
}

fn by_stage(asked: &Asked<'_>, times: &[f64], steps: usize) -> Vec<StageTimes> {
    let of_step = |(at, step): (usize, &Step)| {
        let done: Vec<f64> = times.iter().skip(at).step_by(steps).copied().collect();
        let early = done.iter().filter(|time| **time <= asked.day_one_ends);
        StageTimes {
            stage: step.stage,
            on_day_one: share(early.count(), done.len()),
            done: percentiles(done),
        }
    };
    let steps = asked.programme.steps.par_iter().enumerate();
    steps.map(of_step).collect()
}

/// The share of the first `samples` courses drawn that finish.
pub fn chance(programme: &Programme, calendar: &Calendar, luck: &Luck, samples: usize) -> f64 {
    let samples = samples.min(luck.len());
    let courses = first(samples);
    let ends = ends(programme, calendar, luck, &courses);
    share(ends.iter().filter(|it| it.is_finite()).count(), samples)
}

/// The numbers of the first courses drawn.
pub fn first(courses: usize) -> Vec<u32> {
    (0..u32::try_from(courses).unwrap_or(u32::MAX)).collect()
}

/// The same in the order in which they will likely finish: by the minutes of their stages alone.
pub fn quickest_first(programme: &Programme, luck: &Luck, courses: usize) -> Vec<u32> {
    let mut usual = vec![0.0; luck.course(0).slowness.len()];
    for step in &programme.steps {
        let longest = step.usual.iter().copied().fold(0.0, f64::max);
        usual[step.stage] += longest * step.string.map_or(1.0, |_| programme.ties.middle);
    }
    let minutes = |number: u32| -> f64 {
        let slowness = luck.course(number as usize).slowness.iter();
        slowness.zip(&usual).map(|(slow, usual)| slow * usual).sum()
    };
    let mut order = first(courses.min(luck.len()));
    order.par_sort_by_cached_key(|number| minutes(*number).to_bits());
    order
}

/// When each of some of the courses drawn finishes, by their numbers: minutes of the calendar,
/// infinite for one that does not.
pub fn ends(programme: &Programme, calendar: &Calendar, luck: &Luck, courses: &[u32]) -> Vec<f64> {
    let mut ends = vec![f64::INFINITY; courses.len()];
    ends.par_chunks_mut(ABREAST)
        .zip(courses.par_chunks(ABREAST))
        .with_min_len(AT_A_TIME)
        .for_each_init(
            || Scratch::new(programme),
            |scratch, (ends, numbers)| {
                let courses = abreast(ends.len(), |at| luck.course(numbers[at] as usize));
                let all = programme.follow(calendar, courses, scratch, &mut ());
                ends.copy_from_slice(&all[..ends.len()]);
            },
        );
    ends
}

/// So many courses, the last of them once more in each place that is left.
fn abreast<'a>(many: usize, course: impl Fn(usize) -> Course<'a>) -> [Course<'a>; ABREAST] {
    std::array::from_fn(|at| course(at.min(many.saturating_sub(1))))
}

fn share(some: usize, of: usize) -> f64 {
    some as f64 / of.max(1) as f64
}

/// When each step is done, course by course; a course more than there is room for is let go.
struct Times<'a> {
    steps: usize,
    times: &'a mut [f64],
}

impl Witness for Times<'_> {
    fn done(&mut self, course: usize, step: usize, clock: f64) {
        if let Some(time) = self.times.get_mut(course * self.steps + step) {
            *time = clock;
        }
    }
}

/// By the nearest rank, so that a percentile is a time that was reached.
fn percentiles(mut times: Vec<f64>) -> [Option<f64>; 3] {
    // None of those looked through is less than the one found before.
    let mut found = 0;
    [10, 50, 90].map(|percent| {
        let rank = (times.len() * percent).div_ceil(100).max(1);
        if times.len() < rank {
            return None;
        }
        let rest = &mut times[found..];
        let (_, time, _) = rest.select_nth_unstable_by(rank - 1 - found, f64::total_cmp);
        found = rank - 1;
        Some(*time).filter(|time| time.is_finite())
    })
}
