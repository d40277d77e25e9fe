//! The batter gauge: the right triangle that holds a face to its slope.

use crate::quantity::{FOOT_M, Length, Units, metres};
use crate::wall::Batter;

/// The plumb edge of a gauge (common practice, no source): one for most walls, and a short
/// one for walls on which it would stand up past the top.
const LONG_METRIC_M: f64 = 1.2;
const SHORT_METRIC_M: f64 = 0.6;
const LONG_IMPERIAL_FT: f64 = 4.0;
const SHORT_IMPERIAL_FT: f64 = 2.0;
/// A wall lower than this share of the long edge takes the short one (common practice, no
/// source).
const SHORT_BELOW: f64 = 0.75;

/// A gauge for one batter: upright along its plumb edge, it comes to a point at the bottom and
/// lies with its slope on the face.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gauge {
    /// What it holds a face to.
    pub batter: Batter,
    /// The plumb edge.
    pub rise: Length,
    /// Across the top: `rise / n`.
    pub width: Length,
    /// The edge that lies on the face: `rise · sqrt(1 + 1/n²)`.
    pub slope: Length,
}

impl Gauge {
    /// The gauge of this batter with a plumb edge of this length. For a plumb face it is a
    /// straight edge, of no width.
    pub fn of(batter: Batter, rise: Length) -> Self {
        Self {
            batter,
            rise,
            width: rise * batter.lean(),
            slope: rise * batter.slope_factor(),
        }
    }

    /// A straight edge with a level does, for the face is plumb.
    pub fn is_plumb(&self) -> bool {
        self.batter.n().is_none()
    }
}

/// The plumb edge a gauge usually has, for a wall whose highest face rises so far.
pub fn usual_plumb_edge(highest: Length, units: Units) -> Length {
    let [long, short] = match units {
        Units::Metric => [LONG_METRIC_M, SHORT_METRIC_M].map(metres),
        Units::Imperial => [LONG_IMPERIAL_FT, SHORT_IMPERIAL_FT].map(|feet| metres(feet * FOOT_M)),
    };
    if highest < long * SHORT_BELOW {
        short
    } else {
        long
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{INCH_M, Read};

    fn one_in(n: f64) -> Batter {
        Batter::one_in(n).expect("more than zero")
    }

    /// By hand: 48 in / 6 = 8 in; sqrt(48² + 8²) = 48.6621 in.
    #[test]
    fn a_four_foot_gauge_at_one_in_six_is_eight_inches_wide() {
        let gauge = Gauge::of(one_in(6.0), metres(48.0 * INCH_M));
        assert!((gauge.width.si() / INCH_M - 8.0).abs() < 1e-9);
        assert!((gauge.slope.si() / INCH_M - 48.6621).abs() < 5e-5);
    }

    /// By hand: 3-4-5 at 3 in 4, and the diagonal of a square at 1 in 1.
    #[test]
    fn any_batter_and_any_length_make_a_right_triangle() {
        let steep = Gauge::of(one_in(4.0 / 3.0), metres(0.8));
        assert!((steep.width.si() - 0.6).abs() < 1e-12);
        assert!((steep.slope.si() - 1.0).abs() < 1e-12);
        let square = Gauge::of(Batter::ONE_IN_ONE, metres(1.0));
        assert!((square.slope.si() - 2.0_f64.sqrt()).abs() < 1e-12);
        let plumb = Gauge::of(Batter::PLUMB, metres(1.2));
        assert!(plumb.is_plumb() && !steep.is_plumb());
        assert_eq!(plumb.width, metres(0.0));
        assert_eq!(plumb.slope, plumb.rise);
    }

    /// By hand: three quarters of 1.2 m are 0.9 m, of 4 ft 3 ft.
    #[test]
    fn a_low_wall_takes_the_short_edge() {
        for (highest, units, edge) in [
            (metres(0.9), Units::Metric, 1.2),
            (metres(0.89), Units::Metric, 0.6),
            (metres(3.1 * FOOT_M), Units::Imperial, 4.0 * FOOT_M),
            (metres(2.9 * FOOT_M), Units::Imperial, 2.0 * FOOT_M),
        ] {
            assert_eq!(usual_plumb_edge(highest, units), metres(edge));
        }
    }
}
