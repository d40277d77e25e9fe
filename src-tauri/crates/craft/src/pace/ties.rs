//! How much a string slows a bay: it rises at the pace of its slowest pair.
//!
//! With k pairs in a bay, each slower or faster by a normal deviate of the log, the slowest one's
//! is `pair · Φ⁻¹(U^(1/k))` with U uniform: the distribution of the largest of k, which holds for
//! a k that is no whole number as well. So a longer wall, with fewer pairs to a bay, changes
//! little by little.

use super::evidence::slowest_luck;

/// The slowest pair's luck is one of so many equally likely steps.
pub(super) const STEPS: usize = 1024;

/// How many times slower a bay goes for its slowest pair, step by step of luck.
#[derive(Debug, Clone, PartialEq)]
pub struct Ties {
    factors: Vec<f64>,
    /// At the middle of the luck.
    pub middle: f64,
    /// So many pairs are in a bay.
    pub pairs: f64,
}

impl Ties {
    /// For so many pairs in a bay (at least one), whose log pace deviates by `pair`.
    pub fn new(pairs: f64, pair: f64) -> Self {
        let factor = |luck: f64| (pair * slowest_luck(luck, pairs)).exp();
        let steps = (0..STEPS).map(|step| (step as f64 + 0.5) / STEPS as f64);
        Self {
            factors: steps.map(factor).collect(),
            middle: factor(0.5),
            pairs,
        }
    }

    /// On one step of luck.
    pub fn factor(&self, step: usize) -> f64 {
        self.factors.get(step).copied().unwrap_or(1.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mean_log(pairs: f64) -> f64 {
        let ties = Ties::new(pairs, 1.0);
        let logs = (0..STEPS).map(|step| ties.factor(step).ln());
        logs.sum::<f64>() / STEPS as f64
    }

    /// The mean of the largest of n standard normals. Source: D. Teichroew, "Tables of expected
    /// values of order statistics and products of order statistics for samples of size twenty
    /// and less from the normal distribution", Annals of Mathematical Statistics 27, 1956; from
    /// memory.
    #[test]
    fn the_slowest_of_some_pairs_is_as_slow_as_the_largest_of_some_normals() {
        for (pairs, mean) in [
            (1.0, 0.0),
            (2.0, 0.564_19),
            (3.0, 0.846_28),
            (5.0, 1.162_96),
            (10.0, 1.538_75),
        ] {
            assert!(
                (mean_log(pairs) - mean).abs() < 0.002,
                "{pairs}: {}",
                mean_log(pairs)
            );
        }
    }

    #[test]
    fn more_pairs_are_never_faster_on_the_same_luck() {
        for pairs in 10..60 {
            let [fewer, more] = [pairs, pairs + 1].map(|it| Ties::new(f64::from(it) / 10.0, 0.1));
            assert!((0..STEPS).all(|step| fewer.factor(step) <= more.factor(step)));
        }
    }
}
