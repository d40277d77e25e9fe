//! Low, likely and high of a figure that rests on several uncertain ones.
//!
//! Every uncertain figure is a normal distribution in two halves: its middle is the centre,
//! one in ten is below `low`, one in ten above `high`. What rests on several of them is
//! read at the likeliest way to come to its own 10th and 90th percentile: all are moved
//! together, each by its share of the effect, so that the move as a whole is 1.28 standard
//! deviations long (the design point of the first-order reliability method: Hasofer and
//! Lind, 1974, from memory). A test holds it against plain sampling.

use crate::quantity::{Mass, kilograms};

/// The 90th percentile of the standard normal distribution (any statistical table).
const Z90: f64 = 1.281_551_565_544_600_4;

/// Low, likely, high: the 10th, 50th and 90th percentile.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Range {
    /// One in ten is below.
    pub low: Mass,
    /// As likely above as below.
    pub mid: Mass,
    /// One in ten is above.
    pub high: Mass,
}

/// An uncertain figure: its 10th, 50th and 90th percentile, in SI units.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Figure {
    /// As likely above as below.
    pub centre: f64,
    /// One in ten is below.
    pub low: f64,
    /// One in ten is above.
    pub high: f64,
}

impl Figure {
    /// The figure so many standard deviations above its centre; below for a negative `z`.
    pub fn at(&self, z: f64) -> f64 {
        let half = if z < 0.0 {
            self.centre - self.low
        } else {
            self.high - self.centre
        };
        self.centre + half * z / Z90
    }
}

impl Range {
    /// Nothing, and surely.
    pub(super) fn nothing() -> Self {
        let none = kilograms(0.0);
        Self {
            low: none,
            mid: none,
            high: none,
        }
    }

    /// The range of `value`, whose arguments are standard deviations of `N` uncertain
    /// figures. `effect` is what decides how much each counts: the same sum before anything
    /// is cut off at nothing.
    pub(super) fn of<const N: usize>(
        effect: impl Fn(&[f64; N]) -> f64,
        value: impl Fn(&[f64; N]) -> Mass,
    ) -> Self {
        let middle = [0.0; N];
        Self {
            low: value(&design_point(&effect, -1.0)),
            mid: value(&middle),
            high: value(&design_point(&effect, 1.0)),
        }
    }
}

/// Where to read the 90th percentile (`towards` 1) or the 10th (`towards` -1).
fn design_point<const N: usize>(effect: &impl Fn(&[f64; N]) -> f64, towards: f64) -> [f64; N] {
    let middle = effect(&[0.0; N]);
    let mut point = [0.0; N];
    for (at, moved) in point.iter_mut().enumerate() {
        let gain = |z: f64| {
            let mut alone = [0.0; N];
            alone[at] = z;
            (effect(&alone) - middle) * towards
        };
        let (up, down) = (gain(Z90), gain(-Z90));
        *moved = if down < up {
            up.max(0.0)
        } else {
            -down.max(0.0)
        };
    }
    let length = point.iter().map(|part| part * part).sum::<f64>().sqrt();
    if 0.0 < length {
        for part in &mut point {
            *part *= Z90 / length;
        }
    }
    point
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Read;

    #[test]
    fn one_figure_alone_is_read_at_its_own_ends() {
        let voids = Figure {
            centre: 0.25,
            low: 0.2,
            high: 0.35,
        };
        let solid = |z: &[f64; 1]| 1.0 - voids.at(z[0]);
        let range = Range::of(solid, |z| kilograms(solid(z)));
        let close = |a: f64, b: f64| (a - b).abs() < 1e-12;
        assert!(close(range.low.si(), 0.65));
        assert!(close(range.mid.si(), 0.75));
        assert!(close(range.high.si(), 0.8));
    }

    #[test]
    fn equal_figures_add_up_like_the_sides_of_a_triangle() {
        let one = Figure {
            centre: 10.0,
            low: 9.0,
            high: 11.0,
        };
        let sum = |z: &[f64; 4]| z.iter().map(|z| one.at(*z)).sum::<f64>();
        let range = Range::of(sum, |z| kilograms(sum(z)));
        // Four spreads of 1 make one of 2.
        assert!((range.high.si() - 42.0).abs() < 1e-9);
        assert!((range.low.si() - 38.0).abs() < 1e-9);
    }

    #[test]
    fn what_moves_nothing_has_no_range() {
        let range = Range::of(|_: &[f64; 2]| 5.0, |_| kilograms(5.0));
        assert_eq!(range.low, range.high);
    }
}
