//! The shapes stone lies in: cones, ridges, flat-topped heaps and stones laid flat.
//!
//! Volumes are the cone's, the prism's and the frustum's of any handbook of surveying.

use crate::quantity::{Length, Volume};
use std::f64::consts::PI;

/// A cone: `π r² h / 3`.
pub fn cone(radius: Length, height: Length) -> Volume {
    radius * radius * height * (PI / 3.0)
}

/// A ridge with rounded ends, `length` and `width` over all: a prism between two half cones,
/// `w h (l - w) / 2 + π (w/2)² h / 3`. As long as it is wide it is a cone.
pub fn ridge(length: Length, width: Length, height: Length) -> Volume {
    width * height * (length - width) / 2.0 + cone(width / 2.0, height)
}

/// A cone cut off level: `π h (R² + R r + r²) / 3`.
pub fn frustum(base_radius: Length, top_radius: Length, height: Length) -> Volume {
    let squares = base_radius * base_radius + base_radius * top_radius + top_radius * top_radius;
    squares * height * (PI / 3.0)
}

/// Stones laid side by side, one high: a prism, `l w h`.
pub fn laid(length: Length, width: Length, height: Length) -> Volume {
    length * width * height
}

/// So often at most what is left of a stretch is halved to find a root.
const HALVINGS: u32 = 60;

/// As near as this share of the whole stretch's rise is there.
const NEAR: f64 = 1e-13;

/// Where a continuous `of` comes to `wanted` between `low`, where it is less, and `high`. It is
/// tried on the chord first, which on a straight wall leads there at once, and in the middle of
/// what that leaves.
pub(super) fn where_it_is(wanted: f64, low: f64, high: f64, of: impl Fn(f64) -> f64) -> f64 {
    let short = |at: f64| wanted - of(at);
    let (mut low, mut high) = ((low, short(low)), (high, short(high)));
    if low.1 <= 0.0 {
        return low.0;
    }
    let near = (low.1 - high.1).abs() * NEAR;
    for _ in 0..HALVINGS {
        let chord = low.0 + (high.0 - low.0) * (low.1 / (low.1 - high.1)).clamp(0.0, 1.0);
        for at in [chord, low.0 + (high.0 - low.0) / 2.0] {
            let left = short(at);
            if left.abs() <= near {
                return at;
            }
            if low.0 < at && at < high.0 {
                *(if 0.0 < left { &mut low } else { &mut high }) = (at, left);
            }
        }
    }
    high.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Read, metres};

    /// By hand: a cone of radius 3 and height 4 holds 12 π; a ridge 10 long, 6 wide and 4 high
    /// a prism of 12 · 4 = 48 more; cut off half way up, where the radius is 1.5, seven eighths
    /// of the cone are left.
    #[test]
    fn shapes_by_hand() {
        let m = metres;
        assert!((cone(m(3.0), m(4.0)).si() - 12.0 * PI).abs() < 1e-12);
        let long = ridge(m(10.0), m(6.0), m(4.0)).si();
        assert!((long - 48.0 - 12.0 * PI).abs() < 1e-12);
        let round = ridge(m(6.0), m(6.0), m(4.0)).si();
        assert!((round - 12.0 * PI).abs() < 1e-12);
        let cut = frustum(m(3.0), m(1.5), m(2.0)).si();
        assert!((cut - 12.0 * PI * 7.0 / 8.0).abs() < 1e-12);
        assert!((laid(m(3.0), m(2.0), m(0.5)).si() - 3.0).abs() < 1e-12);
    }

    /// Two roads to one answer: the closed form against level slices summed.
    #[test]
    fn a_ridge_is_the_sum_of_its_slices() {
        let (length, width, height) = (4.2, 1.6, 0.7);
        let slices = 20_000;
        let step = height / f64::from(slices);
        let sum: f64 = (0..slices)
            .map(|slice| {
                // At this share of its height a ridge is so much narrower and shorter.
                let left = 1.0 - (f64::from(slice) + 0.5) / f64::from(slices);
                let across = width * left;
                (across * (length - width) + PI * across * across / 4.0) * step
            })
            .sum();
        let closed = ridge(metres(length), metres(width), metres(height)).si();
        assert!((closed - sum).abs() < 1e-7, "{closed} {sum}");
    }

    #[test]
    fn a_root_is_found() {
        assert!((where_it_is(2.0, 0.0, 2.0, |x| x * x) - 2.0_f64.sqrt()).abs() < 1e-12);
        // Where the chord is no guide: all the rise at one end, and a step.
        assert!((where_it_is(0.5, 0.0, 1.0, |x| x.powi(40)) - 0.5_f64.powf(0.025)).abs() < 1e-12);
        assert!((where_it_is(0.5, 0.0, 1.0, |x| f64::from(0.3 < x)) - 0.3).abs() < 1e-12);
        // At either end.
        assert!(where_it_is(0.0, 0.0, 4.0, |x| x).abs() < 1e-12);
        assert!((where_it_is(4.0, 0.0, 4.0, |x| x) - 4.0).abs() < 1e-12);
    }
}
