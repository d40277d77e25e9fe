//! Checks of what is believed of pace: by hand, against plain weighted draws, and for any case.

use super::{Belief, Factor, triangle};
use crate::tables::{Crew, PaceSpread, Stage, Work};
use nalgebra::{DMatrix, DVector};
use proptest::prelude::*;
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::SeedableRng;
use rand_distr::{Distribution, StandardNormal};

pub(crate) fn stages() -> Vec<Stage> {
    let works = [
        Work::TrenchCubicMetres,
        Work::FootingTonnes,
        Work::Minutes(15),
        Work::SecondLiftTonnes,
    ];
    works
        .into_iter()
        .map(|work| Stage {
            id: format!("{work:?}"),
            name: String::new(),
            work,
            crew: Crew::Everyone,
            string: false,
            along: crate::tables::Along::BayByBay,
            beforehand: false,
            note: String::new(),
            if_left: String::new(),
        })
        .collect()
}

pub(crate) fn spread() -> PaceSpread {
    PaceSpread {
        course: 0.22,
        stage: 0.17,
        pair: 0.1,
        instructor: 0.18,
        instructor_stage: 0.12,
        reading: 0.05,
        clock_minutes: 5.0,
        source: String::new(),
    }
}

pub(crate) fn built_in() -> Belief {
    Belief::built_in(&stages(), &spread())
}

/// Standard normal numbers, the same ones each time.
pub(crate) fn normals(seed: u64) -> impl FnMut() -> f64 {
    let mut random = ChaCha8Rng::seed_from_u64(seed);
    move || StandardNormal.sample(&mut random)
}

pub(crate) fn near(one: f64, other: f64, within: f64) -> bool {
    (one - other).abs() <= within
}

#[test]
fn the_built_in_belief_is_the_usual_pace_with_the_spread_of_the_table() {
    let belief = built_in();
    let (course, stage) = (0.22 * 0.22, 0.17 * 0.17);
    for row in 0..4 {
        assert!(near(belief.mean(row), 0.0, 0.0));
        for column in 0..4 {
            let held = row == 2 || column == 2;
            let due = match (held, row == column) {
                (true, _) => 0.0,
                (false, true) => course + stage,
                (false, false) => course,
            };
            assert!(near(belief.covariance(row, column), due, 1e-15));
        }
    }
    assert!(near(belief.variance(99), 0.0, 0.0));
}

/// By hand: one stage of variance 0.04 seen once at 0.3, with an error of variance 0.01, is
/// believed to be at 0.3 · 0.04 / 0.05 = 0.24 with variance 0.04 · 0.01 / 0.05 = 0.008.
#[test]
fn one_stage_is_weighed_against_what_was_believed() {
    let mut belief = Belief::of(
        DVector::from_element(1, 0.0),
        DMatrix::from_element(1, 1, 0.04),
    );
    belief.observe(&[1.0], 0.3, 0.01);
    assert!(near(belief.mean(0), 0.24, 1e-15));
    assert!(near(belief.variance(0), 0.008, 1e-15));
}

/// By hand: a report on digging says something of laying as far as courses differ as a whole:
/// covariance over variance of digging, 0.0484 / 0.0773.
#[test]
fn one_stage_tells_of_the_others() {
    let mut belief = built_in();
    belief.observe(&[1.0], 0.4, 0.0);
    assert!(near(belief.mean(0), 0.4, 1e-12));
    assert!(near(belief.variance(0), 0.0, 1e-12));
    assert!(near(belief.mean(1), 0.4 * 0.0484 / 0.0773, 1e-12));
    assert!(near(belief.mean(2), 0.0, 0.0));
}

/// The same question asked of 200,000 plain draws, each weighed by how well it explains the
/// two observations. The mean of n independent weighted draws is off by its own standard
/// deviation over √n_eff, n_eff = (Σ weight)² / Σ weight² (A. Kong, "A Note on Importance
/// Sampling using Standardized Weights", 1992); four of those are allowed, and for a variance
/// four times variance · √(2 / n_eff).
#[test]
fn conditioning_agrees_with_weighted_draws() {
    let observations = [
        (vec![0.7, 0.3, 0.0, 0.0], 0.35, 0.05_f64.powi(2)),
        (vec![0.0, 0.5, 0.2, 0.3], -0.1, 0.1_f64.powi(2)),
    ];
    let prior = built_in();
    let mut belief = prior.clone();
    for (weights, value, variance) in &observations {
        belief.observe(weights, *value, *variance);
    }
    let seen = weighted(&prior.factor(), &observations, 200_000);
    assert!(1_000.0 < seen.effective, "{}", seen.effective);
    for stage in 0..4 {
        let variance = belief.variance(stage);
        let of_mean = 4.0 * (variance / seen.effective).sqrt();
        let of_variance = 4.0 * variance * (2.0 / seen.effective).sqrt();
        assert!(near(belief.mean(stage), seen.mean[stage], of_mean));
        assert!(near(variance, seen.variance[stage], of_variance));
    }
    // The check has teeth: what was seen moved the belief by more than it allows.
    assert!(0.15 < belief.mean(0));
}

struct Weighted {
    effective: f64,
    mean: [f64; 4],
    variance: [f64; 4],
}

fn weighted(prior: &Factor, observations: &[(Vec<f64>, f64, f64)], draws: usize) -> Weighted {
    let mut normal = normals(11);
    let (mut total, mut squares) = (0.0, 0.0);
    let (mut sum, mut sum_of_squares) = ([0.0; 4], [0.0; 4]);
    for _ in 0..draws {
        let z: [f64; 4] = std::array::from_fn(|_| normal());
        let mut x = [0.0; 4];
        prior.draw(&z, &mut x);
        let misfit: f64 = observations
            .iter()
            .map(|(weights, value, variance)| {
                let said: f64 = weights.iter().zip(x).map(|(weight, x)| weight * x).sum();
                (value - said).powi(2) / variance
            })
            .sum();
        let weight = (-misfit / 2.0).exp();
        total += weight;
        squares += weight * weight;
        for stage in 0..4 {
            sum[stage] += weight * x[stage];
            sum_of_squares[stage] += weight * x[stage].powi(2);
        }
    }
    let mean = sum.map(|sum| sum / total);
    Weighted {
        effective: total * total / squares,
        mean,
        variance: std::array::from_fn(|it| sum_of_squares[it] / total - mean[it].powi(2)),
    }
}

/// Draws have the mean and covariance of the belief, to four standard errors of 200,000 draws.
#[test]
fn draws_have_the_mean_and_covariance_believed() {
    let mut belief = built_in();
    belief.observe(&[0.5, 0.5], 0.3, 0.002);
    let factor = belief.factor();
    let mut normal = normals(12);
    let draws: Vec<[f64; 4]> = (0..200_000)
        .map(|_| {
            let z: [f64; 4] = std::array::from_fn(|_| normal());
            let mut x = [0.0; 4];
            factor.draw(&z, &mut x);
            x
        })
        .collect();
    let count = draws.len() as f64;
    let error = 4.0 / count.sqrt();
    for row in 0..4 {
        let seen = draws.iter().map(|x| x[row]).sum::<f64>() / count;
        let deviation = belief.variance(row).sqrt();
        assert!(near(seen, belief.mean(row), error * deviation));
        for column in 0..4 {
            let product =
                |x: &[f64; 4]| (x[row] - belief.mean(row)) * (x[column] - belief.mean(column));
            let seen = draws.iter().map(product).sum::<f64>() / count;
            let size = (belief.variance(row) * belief.variance(column)).sqrt();
            let allowed = error * std::f64::consts::SQRT_2 * size;
            assert!(near(seen, belief.covariance(row, column), allowed));
        }
    }
}

#[test]
fn what_is_known_for_certain_does_not_stop_the_factor() {
    let mut belief = built_in();
    belief.observe(&[1.0], 0.2, 0.0);
    belief.observe(&[0.0, 1.0], 0.1, 0.0);
    let mut x = [9.0; 4];
    belief.factor().draw(&[3.0, -3.0, 3.0, 0.0], &mut x);
    assert!(near(x[0], 0.2, 1e-7), "{x:?}");
    assert!(near(x[1], 0.1, 1e-7), "{x:?}");
    assert!(near(x[2], 0.0, 0.0), "{x:?}");
}

#[test]
fn nonsense_changes_nothing() {
    let before = built_in();
    let nonsense = [
        (1.0, f64::NAN, 0.01),
        (1.0, f64::INFINITY, 0.01),
        (f64::NAN, 0.1, 0.01),
        (1.0, 0.1, f64::NAN),
        (1.0, 0.1, -0.01),
        (0.0, 0.1, 0.0),
    ];
    for (weight, value, variance) in nonsense {
        let mut belief = before.clone();
        belief.observe(&[weight], value, variance);
        assert_eq!(belief, before, "{weight} {value} {variance}");
    }
}

fn observation() -> impl Strategy<Value = (Vec<f64>, f64, f64)> {
    let weights = prop::collection::vec(0.0..1.0, 4);
    (weights, -1.0..1.0, 0.0005..0.5)
}

proptest! {
    #[test]
    fn the_order_of_observations_does_not_matter(
        seen in prop::collection::vec(observation(), 2..8),
    ) {
        let (mut there, mut back) = (built_in(), built_in());
        for (weights, value, variance) in &seen {
            there.observe(weights, *value, *variance);
        }
        for (weights, value, variance) in seen.iter().rev() {
            back.observe(weights, *value, *variance);
        }
        for row in 0..4 {
            prop_assert!(near(there.mean(row), back.mean(row), 1e-9));
            for column in 0..4 {
                let (one, other) = (there.covariance(row, column), back.covariance(row, column));
                prop_assert!(near(one, other, 1e-9));
            }
        }
    }

    #[test]
    fn an_observation_never_widens_a_variance((weights, value, variance) in observation()) {
        let before = built_in();
        let mut after = before.clone();
        after.observe(&weights, value, variance);
        for stage in 0..4 {
            prop_assert!(after.variance(stage) <= before.variance(stage));
        }
    }

    #[test]
    fn what_is_as_good_as_unknown_teaches_nothing((weights, value, _) in observation()) {
        let before = built_in();
        let mut after = before.clone();
        after.observe(&weights, value, 1e12);
        for row in 0..4 {
            prop_assert!(near(after.mean(row), before.mean(row), 1e-10));
            for column in 0..4 {
                let (one, other) = (after.covariance(row, column), before.covariance(row, column));
                prop_assert!(near(one, other, 1e-10));
            }
        }
    }

    #[test]
    fn the_factor_times_itself_is_the_covariance(
        seen in prop::collection::vec(observation(), 0..8),
    ) {
        let mut belief = built_in();
        for (weights, value, variance) in &seen {
            belief.observe(weights, *value, *variance);
        }
        let lower = triangle(&belief.covariance);
        let again = &lower * lower.transpose();
        prop_assert!((again - &belief.covariance).amax() < 1e-12);
    }
}
