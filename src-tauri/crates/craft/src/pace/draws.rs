//! How courses differ: for each simulated course, how many times slower each stage goes.
//!
//! `log slowness = course + stage (+ the slowest pair's, where a string ties pairs)`, each
//! a normal deviate. Numbers are keyed by seed and course, so that neighbouring plans meet
//! the same luck and a comparison between them is not noise.

use crate::tables::{Crew, PaceSpread, Stage, Work};
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::SeedableRng;
use rand_distr::{Distribution, StandardNormal};
use rayon::prelude::*;
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::rc::Rc;

/// Slowness of each stage in each simulated course; 1 is the usual pace.
#[derive(Debug, Clone)]
pub struct Draws {
    stages: usize,
    /// Course by course, stage by stage.
    slowness: Vec<f64>,
}

impl Draws {
    /// The luck of `samples` courses with so many pairs at the wall at once.
    pub fn new(
        seed: u64,
        samples: usize,
        stages: &[Stage],
        spread: &PaceSpread,
        pairs: usize,
    ) -> Self {
        let mut slowness = vec![1.0; samples * stages.len()];
        if !stages.is_empty() {
            slowness
                .par_chunks_exact_mut(stages.len())
                .enumerate()
                .for_each(|(course, row)| {
                    let mut random = ChaCha8Rng::seed_from_u64(seed);
                    random.set_stream(course as u64);
                    fill(row, stages, spread, pairs, &mut random);
                });
        }
        Self {
            stages: stages.len(),
            slowness,
        }
    }

    /// How many courses.
    pub fn len(&self) -> usize {
        self.slowness.len().checked_div(self.stages).unwrap_or(0)
    }

    /// Whether there is no course.
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// The courses, each a slice of slowness by stage.
    pub fn courses(&self) -> rayon::slice::ChunksExact<'_, f64> {
        self.slowness.par_chunks_exact(self.stages.max(1))
    }

    /// The middle slowness of each stage.
    pub fn medians(&self) -> Vec<f64> {
        (0..self.stages)
            .map(|stage| {
                let mut column: Vec<f64> = self
                    .slowness
                    .iter()
                    .skip(stage)
                    .step_by(self.stages)
                    .copied()
                    .collect();
                let middle = column.len() / 2;
                if column.is_empty() {
                    return 1.0;
                }
                *column.select_nth_unstable_by(middle, f64::total_cmp).1
            })
            .collect()
    }
}

fn fill(
    row: &mut [f64],
    stages: &[Stage],
    spread: &PaceSpread,
    pairs: usize,
    random: &mut ChaCha8Rng,
) {
    let mut normal = |deviation: f64| {
        let z: f64 = StandardNormal.sample(random);
        z * deviation
    };
    let course = normal(spread.course);
    for (slowness, stage) in row.iter_mut().zip(stages) {
        let of_stage = normal(spread.stage);
        // A talk or a walk along the wall takes the time it takes.
        *slowness = if matches!(stage.work, Work::Minutes(_)) {
            0.0
        } else {
            course + of_stage
        };
    }
    // Pair by pair, so that a pair more leaves the luck of the others as it was.
    let mut slowest = vec![f64::MIN; row.len()];
    for _ in 0..pairs {
        for (slowest, stage) in slowest.iter_mut().zip(stages) {
            if stage.crew == Crew::FacingPairs {
                *slowest = slowest.max(normal(spread.pair));
            }
        }
    }
    for ((slowness, slowest), stage) in row.iter_mut().zip(slowest).zip(stages) {
        if stage.crew == Crew::FacingPairs && 0 < pairs {
            *slowness += slowest;
        }
        *slowness = slowness.exp();
    }
}

/// The luck of one seed, made when it is asked for and kept: which pairs can stand at the
/// wall depends on its length.
#[derive(Debug)]
pub struct Luck<'a> {
    seed: u64,
    samples: usize,
    stages: &'a [Stage],
    spread: PaceSpread,
    made: RefCell<BTreeMap<usize, Rc<Draws>>>,
}

impl<'a> Luck<'a> {
    /// The luck of `samples` courses.
    pub fn new(seed: u64, samples: usize, stages: &'a [Stage], spread: PaceSpread) -> Self {
        Self {
            seed,
            samples,
            stages,
            spread,
            made: RefCell::default(),
        }
    }

    /// The draws with so many pairs at the wall at once.
    pub fn of(&self, pairs: usize) -> Rc<Draws> {
        let make = || {
            Rc::new(Draws::new(
                self.seed,
                self.samples,
                self.stages,
                &self.spread,
                pairs,
            ))
        };
        Rc::clone(self.made.borrow_mut().entry(pairs).or_insert_with(make))
    }
}
