//! How courses differ: the luck of each simulated course, drawn once and met by every plan.
//!
//! `log slowness of a stage = what is believed of it + its share of the draw`, by
//! [`Belief`](super::belief::Belief). On a stage with a string a bay also goes at the pace of
//! its slowest pair. Numbers are keyed by seed and course, so that neighbouring plans meet the
//! same luck and a comparison between them is not noise.

use super::belief::Belief;
use super::ties::STEPS;
use crate::tables::Stage;
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};
use rand_distr::{Distribution, StandardNormal};
use rayon::prelude::*;

/// So many bits of chance are one of the [`STEPS`].
const BITS: u32 = STEPS.trailing_zeros();

/// The luck of a number of simulated courses.
#[derive(Debug, Clone)]
pub struct Luck {
    stages: usize,
    tied: usize,
    bays: usize,
    /// Course by course: how many times slower each stage goes.
    slowness: Vec<f64>,
    /// Course by course, bay by bay, tied stage by tied stage: which of the equally likely
    /// steps the slowest pair is on.
    ties: Vec<u16>,
}

/// The luck of one course.
#[derive(Debug, Clone, Copy)]
pub struct Course<'a> {
    /// By stage: so many times slower than usual.
    pub slowness: &'a [f64],
    ties: &'a [u16],
    tied: usize,
}

impl<'a> Course<'a> {
    /// The course in the middle: every stage as slow as it is in the middle, and the slowest
    /// pair of each bay too.
    pub fn middling(slowness: &'a [f64]) -> Self {
        Self {
            slowness,
            ties: &[],
            tied: 0,
        }
    }

    /// The step the slowest pair of a bay is on at a stage with a string, counted among those;
    /// the middle one where none was drawn.
    pub fn tie(&self, bay: usize, stage: usize) -> usize {
        self.ties
            .get(bay * self.tied + stage)
            .map_or(STEPS / 2, |step| usize::from(*step))
    }
}

impl Luck {
    /// The luck of `samples` courses with up to `bays` bays.
    pub fn new(seed: u64, samples: usize, stages: &[Stage], belief: &Belief, bays: usize) -> Self {
        let tied = stages.iter().filter(|stage| stage.string).count();
        let each = (tied * bays).max(1);
        let mut slowness = vec![1.0; samples * stages.len()];
        let mut ties = vec![0; samples * each];
        if !stages.is_empty() {
            let factor = belief.factor();
            slowness
                .par_chunks_exact_mut(stages.len())
                .zip(ties.par_chunks_exact_mut(each))
                .enumerate()
                .with_min_len(64)
                .for_each_init(
                    || vec![0.0; stages.len()],
                    |normals, (course, (slowness, ties))| {
                        let mut random = ChaCha8Rng::seed_from_u64(seed);
                        random.set_stream(course as u64);
                        for normal in normals.iter_mut() {
                            *normal = StandardNormal.sample(&mut random);
                        }
                        factor.draw(normals, slowness);
                        for slowness in slowness {
                            *slowness = slowness.exp();
                        }
                        steps(ties, &mut random);
                    },
                );
        }
        Self {
            stages: stages.len(),
            tied,
            bays,
            slowness,
            ties,
        }
    }

    /// How many bays it was drawn for.
    pub fn bays(&self) -> usize {
        self.bays
    }

    /// How many courses.
    pub fn len(&self) -> usize {
        self.slowness.len().checked_div(self.stages).unwrap_or(0)
    }

    /// Whether there is no course.
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// One of the courses.
    pub fn course(&self, number: usize) -> Course<'_> {
        let each = (self.tied * self.bays).max(1);
        let part = |from: usize, length: usize| from * length..(from + 1) * length;
        Course {
            slowness: self
                .slowness
                .get(part(number, self.stages))
                .unwrap_or_default(),
            ties: self.ties.get(part(number, each)).unwrap_or_default(),
            tied: self.tied,
        }
    }
}

/// Fills steps from as few random numbers as will do.
fn steps(ties: &mut [u16], random: &mut ChaCha8Rng) {
    let whole = (u64::BITS / BITS) as usize;
    for some in ties.chunks_mut(whole) {
        let mut bits = random.next_u64();
        for step in some {
            *step = (bits & (STEPS as u64 - 1)) as u16;
            bits >>= BITS;
        }
    }
}
