//! Wind chill: how cold it feels on bare skin, from temperature and wind.
//!
//! The index that the US National Weather Service and Environment Canada have used since
//! 1 November 2001 (Joint Action Group for Temperature Indices), with the wind as forecasts
//! give it, at 10 m. Published in two forms, in degrees Fahrenheit and mph, and in degrees
//! Celsius and km/h; rounding of their coefficients keeps the two some 0.06 °C apart.

use crate::quantity::{
    Speed, Temperature, Units, celsius, fahrenheit, in_celsius, in_fahrenheit,
    in_kilometres_per_hour, in_miles_per_hour,
};

/// The wind counts by this power.
const POWER: f64 = 0.16;
/// A limit met but for rounding is met.
const HAIR: f64 = 1e-9;

/// One of the two published forms: `c0 + cT T + cV V^0.16 + cTV T V^0.16`.
struct Form {
    alone: f64,
    air: f64,
    wind: f64,
    both: f64,
    /// Valid up to this temperature.
    most_air: f64,
    /// Valid from this wind.
    least_wind: f64,
}

const US: Form = Form {
    alone: 35.74,
    air: 0.6215,
    wind: -35.75,
    both: 0.4275,
    most_air: 50.0,
    least_wind: 3.0,
};

/// The limits are those of the US form: 50 °F is 10 °C, 3 mph is 4.8 km/h.
const METRIC: Form = Form {
    alone: 13.12,
    air: 0.6215,
    wind: -11.37,
    both: 0.3965,
    most_air: 10.0,
    least_wind: 4.8,
};

impl Form {
    fn chill(&self, air: f64, wind: f64) -> Option<f64> {
        // Written so that what is no number is outside.
        let is_valid = air <= self.most_air + HAIR && self.least_wind - HAIR <= wind;
        is_valid.then(|| {
            let power = wind.powf(POWER);
            self.alone + self.air * air + self.wind * power + self.both * air * power
        })
    }
}

/// How cold it feels on bare skin in this wind, by the form that is published in these
/// units, so that it agrees with the chart its reader knows.
///
/// None above 50 °F (10 °C) and in winds below 3 mph (4.8 km/h): there the air's own
/// temperature is how cold it feels.
pub fn wind_chill(air: Temperature, wind: Speed, units: Units) -> Option<Temperature> {
    match units {
        Units::Metric => METRIC
            .chill(in_celsius(air), in_kilometres_per_hour(wind))
            .map(celsius),
        Units::Imperial => US
            .chill(in_fahrenheit(air), in_miles_per_hour(wind))
            .map(fahrenheit),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{kilometres_per_hour, miles_per_hour};
    use proptest::prelude::*;

    /// The National Weather Service's chart, to the whole degree; the whole table is in
    /// tests/tables/wind_chill.csv.
    #[test]
    fn it_is_as_the_chart_says() {
        for (air_f, mph, chart) in [
            (40.0, 5.0, 36.0),
            (30.0, 60.0, 10.0),
            (0.0, 15.0, -19.0),
            (-45.0, 60.0, -98.0),
        ] {
            let ours = wind_chill(fahrenheit(air_f), miles_per_hour(mph), Units::Imperial);
            let ours = in_fahrenheit(ours.expect("a wind chill"));
            assert!((ours.round() - chart).abs() < 1e-9, "{air_f} {mph}: {ours}");
        }
    }

    #[test]
    fn there_is_none_in_warm_or_still_air() {
        let imperial = |f, mph| wind_chill(fahrenheit(f), miles_per_hour(mph), Units::Imperial);
        let metric = |c, kmh| wind_chill(celsius(c), kilometres_per_hour(kmh), Units::Metric);
        assert!(imperial(50.0, 3.0).is_some() && metric(10.0, 4.8).is_some());
        assert!(imperial(50.1, 10.0).is_none() && metric(10.1, 20.0).is_none());
        assert!(imperial(30.0, 2.9).is_none() && metric(0.0, 4.7).is_none());
        assert!(imperial(f64::NAN, 10.0).is_none() && metric(0.0, f64::NAN).is_none());
    }

    proptest! {
        #[test]
        fn more_wind_or_colder_air_never_feels_warmer(
            air_c in -45.0..10.0, kmh in 4.9..100.0, more in 0.0..20.0
        ) {
            let at = |c, kmh| wind_chill(celsius(c), kilometres_per_hour(kmh), Units::Metric)
                .map(in_celsius)
                .expect("a wind chill");
            let here = at(air_c, kmh);
            prop_assert!(here <= air_c, "warmer than the air: {here}");
            prop_assert!(at(air_c, kmh + more) <= here + HAIR);
            prop_assert!(at(air_c - more, kmh) <= here + HAIR);
        }

        /// Two roads to one answer: the two forms.
        #[test]
        fn both_forms_agree(air_c in -45.0..9.9, kmh in 5.0..100.0) {
            let at = |units| wind_chill(celsius(air_c), kilometres_per_hour(kmh), units)
                .map(in_celsius)
                .expect("a wind chill");
            prop_assert!((at(Units::Metric) - at(Units::Imperial)).abs() < 0.08);
        }
    }
}
