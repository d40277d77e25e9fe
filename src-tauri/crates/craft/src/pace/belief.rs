//! What is believed of pace: how slow each stage may turn out, and how the stages hang together.
//!
//! Slowness is minutes taken over usual minutes: 1 is the usual pace, 2 takes twice as long.
//! Its logarithm x, one number for each row of the stage table, is a normal vector. A report
//! or a record says something of a weighted sum of x; conditioning on it is one closed formula
//! (the measurement update of the Kalman filter: R. E. Kalman, "A New Approach to Linear
//! Filtering and Prediction Problems", 1960).

use crate::tables::{PaceSpread, Stage};
use nalgebra::{DMatrix, DVector};

/// The share of a variance that is put down to rounding.
const ROUNDING: f64 = 1e-12;

/// A normal distribution of the log slowness of all stages.
#[derive(Debug, Clone, PartialEq)]
pub struct Belief {
    mean: DVector<f64>,
    covariance: DMatrix<f64>,
}

impl Belief {
    /// What is believed before anything was seen: the usual pace on average, with the spread
    /// between whole courses common to all stages and that between stages each stage's own.
    ///
    /// `Σ = course² 1 1ᵀ + stage² I` over the stages that have a pace; a stage of a fixed time
    /// takes that time for certain.
    pub fn built_in(stages: &[Stage], spread: &PaceSpread) -> Self {
        Self {
            mean: DVector::zeros(stages.len()),
            covariance: between(stages, spread.course.powi(2), spread.stage.powi(2)),
        }
    }

    /// A belief with this mean and covariance; the covariance must be symmetric and of as many
    /// rows as the mean.
    pub(super) fn of(mean: DVector<f64>, covariance: DMatrix<f64>) -> Self {
        Self { mean, covariance }
    }

    /// The same with numbers added behind it that have nothing to do with it: mean 0 and this
    /// covariance.
    pub(super) fn beside(&self, other: &DMatrix<f64>) -> Self {
        let (here, there) = (self.len(), other.nrows());
        let mut covariance = DMatrix::zeros(here + there, here + there);
        covariance
            .view_mut((0, 0), (here, here))
            .copy_from(&self.covariance);
        covariance
            .view_mut((here, here), (there, there))
            .copy_from(other);
        let mean = self.mean.clone().resize_vertically(here + there, 0.0);
        Self { mean, covariance }
    }

    /// The same about the first so many numbers alone.
    pub(super) fn first(&self, count: usize) -> Self {
        Self {
            mean: self.mean.rows(0, count).into_owned(),
            covariance: self.covariance.view((0, 0), (count, count)).into_owned(),
        }
    }

    /// The sum of this and something that has nothing to do with it: mean 0 and this covariance,
    /// of the same size.
    pub(super) fn with(&self, other: &DMatrix<f64>) -> Self {
        Self {
            mean: self.mean.clone(),
            covariance: &self.covariance + other,
        }
    }

    /// How many numbers it is about: the stages of the table.
    pub fn len(&self) -> usize {
        self.mean.len()
    }

    /// It is about nothing.
    pub fn is_empty(&self) -> bool {
        self.mean.is_empty()
    }

    /// The mean of a stage's log slowness; 0, the usual pace, for a stage it does not know.
    pub fn mean(&self, stage: usize) -> f64 {
        self.mean.get(stage).copied().unwrap_or(0.0)
    }

    /// The variance of a stage's log slowness; 0 for a stage it does not know.
    pub fn variance(&self, stage: usize) -> f64 {
        self.covariance(stage, stage)
    }

    /// The covariance of the log slowness of two stages; 0 for a stage it does not know.
    pub fn covariance(&self, stage: usize, other: usize) -> f64 {
        self.covariance.get((stage, other)).copied().unwrap_or(0.0)
    }

    /// Mean and variance of Σ weight · log slowness; stages without a weight count 0.
    pub(super) fn of_sum(&self, weights: &[f64]) -> (f64, f64) {
        let weight = |stage: usize| weights.get(stage).copied().unwrap_or(0.0);
        let weights = DVector::from_fn(self.len(), |stage, _| weight(stage));
        let variance = weights.dot(&(&self.covariance * &weights));
        (weights.dot(&self.mean), variance)
    }

    /// Learns that `value` = Σ weight · log slowness, give or take a normal error of this
    /// `variance`. Stages without a weight count 0.
    ///
    /// With `v = Σ w` and `s = wᵀ v + variance`: mean + v (value - wᵀ mean) / s and
    /// covariance - v vᵀ / s. What is no number changes nothing, and neither does an observation
    /// of what was known for certain.
    pub fn observe(&mut self, weights: &[f64], value: f64, variance: f64) {
        let weight = |stage: usize| weights.get(stage).copied().unwrap_or(0.0);
        let weights = DVector::from_fn(self.len(), |stage, _| weight(stage));
        let gain = &self.covariance * &weights;
        let spread = weights.dot(&gain) + variance;
        let surprise = value - weights.dot(&self.mean);
        if variance < 0.0 || !(0.0 < spread && spread.is_finite() && surprise.is_finite()) {
            return;
        }
        self.mean.axpy(surprise / spread, &gain, 1.0);
        // One triangle is reckoned and copied over, so that it stays symmetric to the last bit.
        self.covariance.syger(-1.0 / spread, &gain, &gain, 1.0);
        self.covariance.fill_upper_triangle_with_lower_triangle();
        for stage in 0..self.len() {
            let variance = &mut self.covariance[(stage, stage)];
            *variance = variance.max(0.0);
        }
    }

    /// What draws are made with: see [`Factor::draw`].
    pub fn factor(&self) -> Factor {
        Factor {
            mean: self.mean.iter().copied().collect(),
            lower: packed(&triangle(&self.covariance)),
        }
    }
}

/// A belief made ready for drawing: log slowness = mean + L z.
#[derive(Debug, Clone, PartialEq)]
pub struct Factor {
    mean: Vec<f64>,
    /// The lower triangle L, row after row.
    lower: Vec<f64>,
}

impl Factor {
    /// How many stages a draw has.
    pub fn len(&self) -> usize {
        self.mean.len()
    }

    /// A draw has no stages.
    pub fn is_empty(&self) -> bool {
        self.mean.is_empty()
    }

    /// Writes the log slowness of one course to `out`, from as many independent standard normal
    /// numbers `z` as there are stages. Where `z` is shorter, the rest of it counts 0. Nothing
    /// is allocated.
    pub fn draw(&self, z: &[f64], out: &mut [f64]) {
        let mut rest = self.lower.as_slice();
        for (stage, (slowness, mean)) in out.iter_mut().zip(&self.mean).enumerate() {
            let (row, below) = rest.split_at(stage + 1);
            rest = below;
            let luck: f64 = row.iter().zip(z).map(|(factor, z)| factor * z).sum();
            *slowness = mean + luck;
        }
    }
}

/// The covariance of what is `common` to all stages that have a pace and what is each one's
/// `own`, both given as variances; 0 for stages of a fixed time.
pub(super) fn between(stages: &[Stage], common: f64, own: f64) -> DMatrix<f64> {
    let varies: Vec<f64> = stages.iter().map(|it| has_pace(it).into()).collect();
    DMatrix::from_fn(stages.len(), stages.len(), |row, column| {
        let own = if row == column { own } else { 0.0 };
        varies[row] * varies[column] * (common + own)
    })
}

/// A stage of a fixed time has no pace: a talk or a walk along the wall takes the time it takes.
pub(super) fn has_pace(stage: &Stage) -> bool {
    !stage.work.is_fixed()
}

/// The lower triangle L with `L Lᵀ = covariance`, where some directions may have no variance at
/// all, or what rounding left of none; the library's own factor takes neither.
///
/// Cholesky's method, with a column of zeros where nothing is left (N. J. Higham, "Accuracy and
/// Stability of Numerical Algorithms", section 10.3, from memory).
fn triangle(covariance: &DMatrix<f64>) -> DMatrix<f64> {
    let size = covariance.nrows();
    let mut lower = DMatrix::zeros(size, size);
    for column in 0..size {
        for row in column..size {
            let explained: f64 = (0..column)
                .map(|before| lower[(row, before)] * lower[(column, before)])
                .sum();
            let left = covariance[(row, column)] - explained;
            let pivot: f64 = lower[(column, column)];
            lower[(row, column)] = if row != column {
                if 0.0 < pivot { left / pivot } else { 0.0 }
            } else if covariance[(row, row)] * ROUNDING < left {
                left.sqrt()
            } else {
                0.0
            };
        }
    }
    lower
}

fn packed(lower: &DMatrix<f64>) -> Vec<f64> {
    (0..lower.nrows())
        .flat_map(|row| (0..=row).map(move |column| lower[(row, column)]))
        .collect()
}

#[cfg(test)]
pub(super) mod tests;
