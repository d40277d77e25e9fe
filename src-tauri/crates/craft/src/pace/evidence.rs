//! What a report on the day tells of pace: how long it took, of what was done, how surely.
//!
//! A report says that between two times so much of each stage was done. Its log slowness,
//! ln(minutes taken / usual minutes), is the weighted mean of the stages' log slowness, each
//! weighing as much as its share of the usual minutes, give or take how exactly progress is
//! read off. (The mean of logarithms stands for the logarithm of the mean: where stages differ
//! by the 0.17 of the pace table that is 0.015 too little, which is less than the reading error.)

use super::belief::Belief;
use crate::tables::PaceSpread;
use statrs::distribution::{Continuous, ContinuousCDF, Normal};

/// More than so many times slower or quicker than usual is a slip of the pen and not a pace.
pub const ABSURD: f64 = 10.0;

/// How far from the middle a normal number is looked for, in standard deviations.
const REACH: i32 = 12;

/// Steps to one standard deviation. The trapezium rule on a density that dies away at both ends
/// is exact to rounding long before so many.
const STEPS: i32 = 16;

/// A log slowness is looked for so far above the mean, and the stretch halved so often.
const FAR: f64 = 12.0;
const HALVINGS: u32 = 60;

/// Work done between two times.
#[derive(Debug, Clone, PartialEq)]
pub struct Worked {
    /// Working minutes that went by: lessons and breaks taken out, slow hours counted as the
    /// part of an hour that they are worth.
    pub minutes: f64,
    /// Usual minutes of what was done; beginners' slower first hours belong to what is usual.
    pub usual: f64,
    /// The share of each row of the stage table in it; they add up to 1.
    pub weights: Vec<f64>,
    /// For each row of the stage table, how many pairs a string ties together; `None` where
    /// nobody waits for a string. Missing rows count as `None`.
    pub tied: Vec<Option<f64>>,
    /// So many of the minutes, give or take, may have been something else.
    pub unsure: f64,
    /// By so many usual minutes shares that were read by eye may be off.
    pub misread: f64,
}

/// What is known of a weighted sum of log slowness.
#[derive(Debug, Clone, PartialEq)]
pub struct Observation {
    /// The share of each stage; they add up to 1.
    pub weights: Vec<f64>,
    /// The sum.
    pub value: f64,
    /// The variance of its error.
    pub variance: f64,
}

impl Worked {
    /// What it tells those who believe this; nothing where no time went by, nothing was done, or
    /// the pace is out of reason (see [`ABSURD`]).
    ///
    /// `value = ln(minutes / usual) - Σ weight · mean`,
    /// `variance = reading² + (clock² + unsure²) / minutes² + Σ weight² · variance`, mean and
    /// variance being those of the slowest pair's log slowness. Each report is taken to meet
    /// slowest pairs of its own; two reports on one stretch of string share them, so together they
    /// are trusted a little too much.
    ///
    /// A share read by eye is off by so much whether it is great or small: then see below.
    pub fn observation(&self, belief: &Belief, spread: &PaceSpread) -> Option<Observation> {
        let unsure = self.unsure / self.minutes;
        let mut variance = reading_variance(self.minutes, spread) + unsure * unsure;
        let mut slowest = 0.0;
        for (weight, tied) in self.weights.iter().zip(&self.tied) {
            if let Some(pairs) = tied.filter(|_| 0.0 < *weight) {
                let pair = slowest_pair(pairs, spread.pair);
                slowest += weight * pair.mean;
                variance += weight * weight * pair.variance;
            }
        }
        let slowness = self.minutes / self.usual;
        let exact = self.misread <= 0.0;
        let sound = self.weights.iter().all(|weight| 0.0 <= *weight)
            && 0.0 < self.weights.iter().sum()
            && 0.0 < self.minutes
            && 0.0 <= self.usual
            && (!exact || (ABSURD.recip()..=ABSURD).contains(&slowness));
        if !sound {
            return None;
        }
        let (mut value, mut more) = (slowness.ln(), 0.0);
        if !exact {
            let (mean, spread) = belief.of_sum(&self.weights);
            (value, more) = self.read(mean + slowest, spread + variance);
        }
        Some(Observation {
            weights: self.weights.clone(),
            value: value - slowest,
            variance: variance + more,
        })
    }

    /// The log slowness y that shares read by eye speak for, and the variance of that reading,
    /// where y is believed to be normal about a `mean` with a `variance`.
    ///
    /// What was done in the minutes M is u = M exp(-y), give or take a normal error e. The
    /// likeliest y is where `(y - mean) / variance + (u - h) h / e² = 0`, h = M exp(-y); there u
    /// is taken to be straight in y: `value = y + 1 - u / h`, `variance = (e / h)²`. The likeliest
    /// y falls evenly as u grows and is finite for none (Gauss and Newton's way to a least sum of
    /// squares; A. H. Jazwinski, "Stochastic Processes and Filtering Theory", 1970, section 8.3,
    /// from memory). With no error it is the plain ln(M / u).
    fn read(&self, mean: f64, variance: f64) -> (f64, f64) {
        let most = self.minutes;
        let off = self.misread * self.misread;
        let plain = (most / self.usual).ln();
        let done = |y: f64| most * (-y).exp();
        let slope = |y: f64| (y - mean) / variance + (self.usual - done(y)) * done(y) / off;
        let (mut low, mut high) = (mean.min(plain), mean.max(plain).min(mean + FAR));
        for _ in 0..HALVINGS {
            let middle = f64::midpoint(low, high);
            if slope(middle) < 0.0 {
                low = middle;
            } else {
                high = middle;
            }
        }
        let y = f64::midpoint(low, high);
        (y + 1.0 - self.usual / done(y), off / done(y).powi(2))
    }
}

impl Observation {
    /// Lets a belief learn it.
    pub fn tell(&self, belief: &mut Belief) {
        belief.observe(&self.weights, self.value, self.variance);
    }
}

/// The variance of the logarithm of so many minutes as they are read off: progress is judged by
/// eye, and the time is noted to some minutes.
pub(super) fn reading_variance(minutes: f64, spread: &PaceSpread) -> f64 {
    spread.reading.powi(2) + (spread.clock_minutes / minutes).powi(2)
}

/// Mean and variance of a logarithm of slowness.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Moments {
    /// The mean.
    pub mean: f64,
    /// The variance.
    pub variance: f64,
}

/// How much slower than the usual pair the slowest of so many `pairs` is, as a logarithm, where
/// pairs differ by a standard deviation of `spread`. Fewer than one pair count as one; a part of
/// a pair is one that stands at the string with half a stint.
///
/// The slowest of k has the density `k φ(z) Φ(z)^(k - 1)` (H. A. David and H. N. Nagaraja,
/// "Order Statistics", section 2.1, from memory), here summed by the trapezium rule.
pub fn slowest_pair(pairs: f64, spread: f64) -> Moments {
    let pairs = pairs.max(1.0);
    let normal = Normal::standard();
    let (mut mass, mut first, mut second) = (0.0, 0.0, 0.0);
    for step in -REACH * STEPS..=REACH * STEPS {
        let z = f64::from(step) / f64::from(STEPS);
        let density = pairs * normal.pdf(z) * normal.cdf(z).powf(pairs - 1.0);
        mass += density;
        first += density * z;
        second += density * z * z;
    }
    let mean = first / mass;
    Moments {
        mean: spread * mean,
        variance: spread * spread * (second / mass - mean * mean),
    }
}

/// How far from the usual pair the slowest of so many `pairs` is, in standard deviations, where
/// `luck` is evenly spread between 0 and 1: `Φ⁻¹(luck^(1 / pairs))`. More pairs never make it
/// quicker. It stays finite for every luck.
pub fn slowest_luck(luck: f64, pairs: f64) -> f64 {
    let most = f64::from(REACH);
    // What is no number is no luck at all, where the library would give up.
    let luck = if luck.is_nan() { 0.5 } else { luck };
    let share = luck.clamp(0.0, 1.0).powf(pairs.max(1.0).recip());
    Normal::standard().inverse_cdf(share).clamp(-most, most)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pace::belief::tests::{built_in, near, spread};

    fn worked(minutes: f64, usual: &[f64]) -> Worked {
        let done: f64 = usual.iter().sum();
        Worked {
            minutes,
            usual: done,
            weights: usual.iter().map(|usual| usual / done).collect(),
            tied: vec![None; usual.len()],
            unsure: 0.0,
            misread: 0.0,
        }
    }

    /// A third of a stage of 180 usual minutes, read to 9 of them: more is never slower, a hair
    /// more changes next to nothing, none at all is slow and not absurd, and a great share is
    /// what it would be without the error.
    #[test]
    fn more_done_in_the_same_time_is_never_slower() {
        let mut before = f64::INFINITY;
        let mut usual = 0.0;
        while usual < 150.0 {
            let mut belief = built_in();
            let worked = Worked {
                usual,
                weights: vec![0.0, 1.0],
                misread: 9.0,
                ..worked(75.0, &[1.0, 1.0])
            };
            let seen = worked.observation(&belief, &spread()).expect("a report");
            seen.tell(&mut belief);
            let slowness = belief.mean(1);
            assert!(
                slowness < before + 1e-9,
                "{usual}: {slowness} after {before}"
            );
            assert!(before - slowness < 0.1 || usual <= 0.0, "{usual}");
            (before, usual) = (slowness, usual + 1.0);
            assert!(slowness < 1.0);
        }
        assert!(before < -0.4, "{before}");
    }

    /// Mean and variance of the largest of n standard normal numbers: n = 2 and 3 in closed form
    /// (1/√π, 1 - 1/π; 3/(2√π), 1 + √3/(2π) - 9/(4π)); the means of 4, 5 and 10 by H. L. Harter,
    /// "Expected Values of Normal Order Statistics", 1961, the variances by D. Teichroew, "Tables
    /// of Expected Values of Order Statistics", 1956, both from memory.
    #[test]
    fn the_slowest_pair_is_as_slow_as_the_tables_of_order_statistics_say() {
        for (pairs, mean, variance) in [
            (1.0, 0.0, 1.0),
            (2.0, 0.564_190, 0.681_690),
            (3.0, 0.846_284, 0.559_467),
            (4.0, 1.029_375, 0.491_715),
            (5.0, 1.162_964, 0.447_534),
            (10.0, 1.538_753, 0.344_344),
        ] {
            let slowest = slowest_pair(pairs, 0.1);
            assert!(near(slowest.mean, 0.1 * mean, 1e-7), "{pairs} {slowest:?}");
            let due = 0.01 * variance;
            assert!(near(slowest.variance, due, 1e-8), "{pairs} {slowest:?}");
        }
    }

    /// Another road to the same answer, for parts of pairs too: the middle of each of 100,000
    /// equal parts of the luck. What lies beyond the last part is missed: a thousandth or so.
    #[test]
    fn the_luck_of_the_slowest_pair_has_its_mean_and_variance() {
        for pairs in [0.5, 1.0, 1.7, 3.0, 6.4, 20.0] {
            let parts = 100_000;
            let lucks: Vec<f64> = (0..parts)
                .map(|part| slowest_luck((f64::from(part) + 0.5) / f64::from(parts), pairs))
                .collect();
            let mean = lucks.iter().sum::<f64>() / f64::from(parts);
            let squares = lucks.iter().map(|z| (z - mean).powi(2)).sum::<f64>();
            let slowest = slowest_pair(pairs, 1.0);
            assert!(near(slowest.mean, mean, 1e-3), "{pairs}");
            assert!(
                near(slowest.variance, squares / f64::from(parts), 1e-3),
                "{pairs}"
            );
        }
    }

    #[test]
    fn more_pairs_are_never_quicker_and_every_luck_is_finite() {
        for luck in [0.0, 1e-300, 0.1, 0.5, 0.999, 1.0] {
            let mut before = slowest_luck(luck, 1.0);
            assert!(before.is_finite());
            for pairs in [1.5, 2.0, 5.0, 40.0] {
                let next = slowest_luck(luck, pairs);
                assert!(before <= next && next.is_finite(), "{luck} {pairs}");
                before = next;
            }
        }
    }

    /// By hand: 90 and 30 usual minutes done in 150: weights 3/4 and 1/4, ln 1.25 = 0.22314,
    /// variance 0.05² + (5 / 150)² = 0.0025 + 0.00111.
    #[test]
    fn a_report_is_weighed_by_what_was_done() {
        let worked = worked(150.0, &[90.0, 0.0, 30.0]);
        let seen = worked
            .observation(&built_in(), &spread())
            .expect("a report");
        assert_eq!(seen.weights, [0.75, 0.0, 0.25]);
        assert!(near(seen.value, 0.223_144, 1e-6), "{seen:?}");
        assert!(near(seen.variance, 0.003_611, 1e-6), "{seen:?}");
    }

    /// By hand: with two pairs tied on a quarter of it, 0.25 · 0.1 · 0.56419 of the slowness is
    /// the slowest pair's, and 0.25² · 0.1² · 0.68169 of the variance.
    #[test]
    fn the_slowest_pair_is_not_blamed_on_the_group() {
        let mut worked = worked(150.0, &[90.0, 0.0, 30.0]);
        let free = worked
            .observation(&built_in(), &spread())
            .expect("a report");
        worked.tied = vec![None, Some(9.0), Some(2.0)];
        let tied = worked
            .observation(&built_in(), &spread())
            .expect("a report");
        assert!(near(free.value - tied.value, 0.014_105, 1e-6));
        assert!(near(tied.variance - free.variance, 0.000_426, 1e-6));
    }

    #[test]
    fn what_tells_nothing_is_left_out() {
        for (minutes, usual) in [
            (0.0, vec![10.0]),
            (-5.0, vec![10.0]),
            (f64::NAN, vec![10.0]),
            (5.0, vec![]),
            (5.0, vec![0.0]),
            (5.0, vec![-1.0, 6.0]),
            (5.0, vec![f64::NAN]),
            (5.0, vec![50.1]),
            (50.1, vec![5.0]),
        ] {
            let worked = worked(minutes, &usual);
            assert_eq!(
                worked.observation(&built_in(), &spread()),
                None,
                "{worked:?}"
            );
        }
    }

    #[test]
    fn a_belief_that_is_told_moves_towards_it() {
        let mut belief = Belief::built_in(&crate::pace::belief::tests::stages(), &spread());
        let before = belief.clone();
        let worked = worked(120.0, &[80.0]);
        worked
            .observation(&belief, &spread())
            .expect("a report")
            .tell(&mut belief);
        assert!(0.3 < belief.mean(0) && belief.mean(0) < 1.5_f64.ln());
        assert!(0.1 < belief.mean(1) && belief.mean(1) < belief.mean(0));
        assert!(belief.variance(0) < before.variance(0) / 5.0);
    }
}
