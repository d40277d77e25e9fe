//! The heat index: how hot it feels in the shade, from temperature and humidity.
//!
//! As the US National Weather Service works it out: L. P. Rothfusz, "The Heat Index
//! Equation", NWS Southern Region Technical Attachment SR 90-23 (1990), with the simple
//! formula and the adjustments of the Weather Prediction Center's page "The Heat Index
//! Equation". The formulas are stated in degrees Fahrenheit and per cent, so the sums are.

use crate::quantity::{Temperature, fahrenheit, in_fahrenheit};

/// Below this air temperature there is no heat index: the service's own programs give the
/// air's temperature from there down (from memory).
const LEAST_AIR_F: f64 = 40.0;
/// The regression is used where the simple formula, averaged with the air, comes to this.
const REGRESSION_FROM_F: f64 = 80.0;
/// The adjustments count from this air temperature.
const ADJUSTED_FROM_F: f64 = 80.0;
/// Half of what the chart is rounded to.
const HALF_F: f64 = 0.5;
/// Below this humidity, and up to this air temperature, the regression is too high.
const DRY_PERCENT: f64 = 13.0;
const DRY_TO_F: f64 = 112.0;
/// Above this humidity, and up to this air temperature, it is too low.
const DAMP_PERCENT: f64 = 85.0;
const DAMP_TO_F: f64 = 87.0;

/// The service's chart goes to this air temperature, and its hottest figure is this.
const CHART_AIR_TO_F: f64 = 110.0;
const CHART_TO_F: f64 = 137.0;

/// Whether the service's chart does not go so far: in air above 110 °F (43.3 °C), or where it feels
/// hotter than 137 °F (58.3 °C). What the formulas give there is no measure of anything.
pub fn is_beyond_the_chart(air: Temperature, felt: Temperature) -> bool {
    // Half a degree more is still read as the last figure of a chart in whole degrees.
    CHART_AIR_TO_F + HALF_F <= in_fahrenheit(air) || CHART_TO_F + HALF_F <= in_fahrenheit(felt)
}

/// How hot it feels in the shade and a light wind.
///
/// `humidity` is relative, from 0 to 1. None where the humidity is no share, or the air is
/// below 40 °F (4.4 °C). Beyond the service's chart the figure is an extrapolation:
/// [`is_beyond_the_chart`].
pub fn heat_index(air: Temperature, humidity: f64) -> Option<Temperature> {
    let (air_f, percent) = (in_fahrenheit(air), humidity * 100.0);
    // Written so that what is no number is outside.
    let is_valid = LEAST_AIR_F <= air_f && (0.0..=1.0).contains(&humidity);
    is_valid.then(|| fahrenheit(index_f(air_f, percent)))
}

fn index_f(air_f: f64, percent: f64) -> f64 {
    let averaged = f64::midpoint(simple_f(air_f, percent), air_f);
    if averaged < REGRESSION_FROM_F {
        return averaged;
    }
    regression_f(air_f, percent) - too_dry_f(air_f, percent) + too_damp_f(air_f, percent)
}

/// Consistent with Steadman's results in mild weather.
fn simple_f(air_f: f64, percent: f64) -> f64 {
    0.5 * (air_f + 61.0 + (air_f - 68.0) * 1.2 + percent * 0.094)
}

/// Rothfusz's multiple regression on Steadman's results; within 1.3 °F of them.
fn regression_f(t: f64, r: f64) -> f64 {
    -42.379 + 2.049_015_23 * t + 10.143_331_27 * r
        - 0.224_755_41 * t * r
        - 0.006_837_83 * t * t
        - 0.054_817_17 * r * r
        + 0.001_228_74 * t * t * r
        + 0.000_852_82 * t * r * r
        - 0.000_001_99 * t * t * r * r
}

/// What is taken off in dry air: `(13 - RH) / 4 * sqrt((17 - |T - 95|) / 17)`.
fn too_dry_f(air_f: f64, percent: f64) -> f64 {
    if percent < DRY_PERCENT && (ADJUSTED_FROM_F..=DRY_TO_F).contains(&air_f) {
        (DRY_PERCENT - percent) / 4.0 * ((17.0 - (air_f - 95.0).abs()) / 17.0).sqrt()
    } else {
        0.0
    }
}

/// What is added in damp air: `(RH - 85) / 10 * (87 - T) / 5`.
fn too_damp_f(air_f: f64, percent: f64) -> f64 {
    if DAMP_PERCENT < percent && (ADJUSTED_FROM_F..=DAMP_TO_F).contains(&air_f) {
        (percent - DAMP_PERCENT) / 10.0 * (DAMP_TO_F - air_f) / 5.0
    } else {
        0.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::celsius;
    use proptest::prelude::*;

    fn index(air_f: f64, percent: f64) -> Option<f64> {
        heat_index(fahrenheit(air_f), percent / 100.0).map(in_fahrenheit)
    }

    /// One row for each branch; the whole table is in tests/tables/heat_index.csv. Figures of
    /// MetPy 1.7.1, the simple ones by hand: 0.5 (75 + 61 + 8.4 + 4.7) = 74.55, and with the
    /// air half of 149.55.
    #[test]
    fn each_branch_is_as_the_weather_service_works_it_out() {
        for (air_f, percent, theirs) in [
            (75.0, 50.0, 74.775),
            (90.0, 70.0, 105.922),
            (84.0, 95.0, 100.882),
            (95.0, 10.0, 89.45),
        ] {
            let ours = index(air_f, percent).expect("a heat index");
            assert!((ours - theirs).abs() < 0.001, "{air_f} {percent}: {ours}");
        }
    }

    /// At either end of its range the adjustment for dry air comes to nothing at 112 °F, that
    /// for damp air at 87 °F; a degree beyond there is none.
    #[test]
    fn adjustments_end_without_a_jump() {
        assert!(too_dry_f(112.0, 5.0).abs() < 1e-9 && too_dry_f(113.0, 5.0).abs() < 1e-9);
        assert!(too_damp_f(87.0, 95.0).abs() < 1e-9 && too_damp_f(88.0, 95.0).abs() < 1e-9);
        assert!(too_dry_f(95.0, 13.0).abs() < 1e-9 && too_damp_f(84.0, 85.0).abs() < 1e-9);
    }

    #[test]
    fn there_is_none_where_it_means_nothing() {
        assert_eq!(index(39.9, 50.0), None);
        assert!(index(40.0, 50.0).is_some());
        for humidity in [-0.01, 1.01, f64::NAN] {
            assert_eq!(heat_index(celsius(30.0), humidity), None);
        }
        assert_eq!(heat_index(celsius(f64::NAN), 0.5), None);
    }

    /// The chart's last row and column: 110 °F at 40 % reads 136, 90 °F at 100 % reads 132.
    #[test]
    fn the_chart_ends_somewhere() {
        for (air_f, percent, beyond) in [
            (110.0, 40.0, false),
            (90.0, 100.0, false),
            (111.0, 5.0, true),
            (107.6, 70.0, true),
            (131.0, 90.0, true),
        ] {
            let felt = heat_index(fahrenheit(air_f), percent / 100.0).expect("an index");
            let ours = is_beyond_the_chart(fahrenheit(air_f), felt);
            assert_eq!(ours, beyond, "{air_f} {percent}");
        }
    }

    proptest! {
        /// From 80 °F and 40 % the service's chart rises to the right and downwards.
        #[test]
        fn hotter_or_damper_never_feels_cooler(
            air_f in 80.0..110.0, percent in 40.0..100.0, more in 0.0..10.0
        ) {
            let here = index(air_f, percent).expect("an index");
            let hotter = index(f64::min(air_f + more, 110.0), percent).expect("an index");
            let damper = index(air_f, f64::min(percent + more, 100.0)).expect("an index");
            prop_assert!(here <= hotter + 1e-9, "hotter: {here} {hotter}");
            prop_assert!(here <= damper + 1e-9, "damper: {here} {damper}");
        }
    }
}
