//! The two sets of constants of the NIOSH equation: centimetres and kilograms, inches and pounds.

use crate::quantity::{INCH_M, Length, Mass, POUND_KG, Read, kilograms};

/// Which of its two sets of constants the equation is worked with.
///
/// They are not conversions of each other: 51 lb is 23.13 kg, 10 in is 25.4 cm and 30 in is
/// 76.2 cm. So the same lift has two limits, and the inch one is the higher by 0.2 to 3.7 %
/// (worked out from the constants; a property test holds it). Between 75 cm and 30 in the
/// two read the frequency and grip tables from different columns and may differ by more.
///
/// Source: NIOSH 94-110, section 1.3, p. 7.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum System {
    /// Centimetres and kilograms; the more careful of the two.
    Metric,
    /// Inches and pounds.
    Us,
}

/// The constants of one system, in its own units.
#[derive(Debug)]
pub(super) struct Constants {
    /// One unit of length in metres.
    length_m: f64,
    /// One unit of mass in kilograms.
    mass_kg: f64,
    /// LC: what may be lifted when nothing makes it harder.
    pub(super) load: f64,
    /// Least H, and the numerator of HM.
    pub(super) reach_least: f64,
    /// Beyond this H there is no lifting.
    pub(super) reach_most: f64,
    /// V of the best height, about the knuckles of a person standing; also where the
    /// frequency and grip tables change columns.
    pub(super) height_best: f64,
    /// What VM loses with each unit above or below it.
    pub(super) height_slope: f64,
    /// Above this V there is no lifting.
    pub(super) height_most: f64,
    /// The numerator of DM.
    pub(super) travel_numerator: f64,
    /// Least D.
    pub(super) travel_least: f64,
    /// Beyond this D there is no lifting.
    pub(super) travel_most: f64,
    /// H of a load, before half its depth: taken up from low down, and from higher.
    pub(super) reach_low_high: [f64; 2],
    /// The V at which "higher" begins.
    pub(super) reach_changes: f64,
}

/// Source: NIOSH 94-110, pp. 7 to 12.
static METRIC: Constants = Constants {
    length_m: 0.01,
    mass_kg: 1.0,
    load: 23.0,
    reach_least: 25.0,
    reach_most: 63.0,
    height_best: 75.0,
    height_slope: 0.003,
    height_most: 175.0,
    travel_numerator: 4.5,
    travel_least: 25.0,
    travel_most: 175.0,
    reach_low_high: [25.0, 20.0],
    reach_changes: 25.0,
};

/// Source: NIOSH 94-110, pp. 7 to 12.
static US: Constants = Constants {
    length_m: INCH_M,
    mass_kg: POUND_KG,
    load: 51.0,
    reach_least: 10.0,
    reach_most: 25.0,
    height_best: 30.0,
    height_slope: 0.0075,
    height_most: 70.0,
    travel_numerator: 1.8,
    travel_least: 10.0,
    travel_most: 70.0,
    reach_low_high: [10.0, 8.0],
    reach_changes: 10.0,
};

impl System {
    pub(super) fn constants(self) -> &'static Constants {
        match self {
            Self::Metric => &METRIC,
            Self::Us => &US,
        }
    }

    /// H, where it can't be measured, of a load so deep from front to back held at V:
    /// `20 + W/2` cm, or `25 + W/2` cm where V is below 25 cm; in inches `8 + W/2`, or
    /// `10 + W/2` below 10 in. A depth below nothing counts as nothing.
    ///
    /// Source: NIOSH 94-110, section 1.3.1.1, p. 8.
    pub fn reach_for_depth(self, depth: Length, height: Length) -> Length {
        let it = self.constants();
        let [low, high] = it.reach_low_high;
        let clear = if it.number(height) < it.reach_changes {
            low
        } else {
            high
        };
        crate::quantity::metres((clear + it.number(depth).max(0.0) / 2.0) * it.length_m)
    }
}

impl Constants {
    /// A length as a number of this system's units, rounded to a millionth of one, so that
    /// 30 in, carried as 0.762 m, is 30 again and not a hair below it.
    pub(super) fn number(&self, length: Length) -> f64 {
        (length.si() / self.length_m * 1e6).round() / 1e6
    }

    /// A mass of so many of this system's units.
    pub(super) fn mass(&self, number: f64) -> Mass {
        kilograms(number * self.mass_kg)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::metres;

    /// NIOSH 94-110, p. 8, worked by hand: a stone 30 cm (12 in) deep.
    #[test]
    fn reach_follows_from_the_depth_of_the_stone() {
        for (system, depth, height, reach) in [
            (System::Metric, 0.30, 0.0, 0.40),
            (System::Metric, 0.30, 0.25, 0.35),
            (System::Metric, 0.30, 1.10, 0.35),
            (System::Us, 12.0 * INCH_M, 9.0 * INCH_M, 16.0 * INCH_M),
            (System::Us, 12.0 * INCH_M, 10.0 * INCH_M, 14.0 * INCH_M),
            (System::Metric, -1.0, 0.0, 0.25),
        ] {
            let ours = system.reach_for_depth(metres(depth), metres(height)).si();
            assert!((ours - reach).abs() < 1e-9, "{system:?} {depth} {ours}");
        }
    }
}
