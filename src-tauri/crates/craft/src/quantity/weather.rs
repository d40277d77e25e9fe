//! Temperature and the speed of wind: made, read and shown.
//!
//! A [`Temperature`] is a point on the scale and a [`TemperatureRise`] a step along it: two
//! temperatures can't be added, a rise can be added to a temperature.

use super::{Read, Units};
use uom::si::f64::{TemperatureInterval, ThermodynamicTemperature, Velocity};
use uom::si::temperature_interval::degree_fahrenheit as fahrenheit_step;
use uom::si::thermodynamic_temperature::{degree_celsius, degree_fahrenheit, kelvin};
use uom::si::velocity::{kilometer_per_hour, knot, meter_per_second, mile_per_hour};

/// A temperature: how warm it is.
pub type Temperature = ThermodynamicTemperature;
/// How much warmer one thing is than another.
pub type TemperatureRise = TemperatureInterval;
/// A speed.
pub type Speed = Velocity;

/// A temperature of so many degrees Celsius.
pub fn celsius(value: f64) -> Temperature {
    Temperature::new::<degree_celsius>(value)
}

/// A temperature of so many degrees Fahrenheit.
pub fn fahrenheit(value: f64) -> Temperature {
    Temperature::new::<degree_fahrenheit>(value)
}

/// Warmer by so many degrees Fahrenheit.
pub fn fahrenheit_degrees(value: f64) -> TemperatureRise {
    TemperatureRise::new::<fahrenheit_step>(value)
}

/// A speed of so many metres to the second.
pub fn metres_per_second(value: f64) -> Speed {
    Speed::new::<meter_per_second>(value)
}

/// A speed of so many kilometres to the hour.
pub fn kilometres_per_hour(value: f64) -> Speed {
    Speed::new::<kilometer_per_hour>(value)
}

/// A speed of so many international miles (1,609.344 m) to the hour.
pub fn miles_per_hour(value: f64) -> Speed {
    Speed::new::<mile_per_hour>(value)
}

/// A speed of so many knots, nautical miles (1,852 m) to the hour.
pub fn knots(value: f64) -> Speed {
    Speed::new::<knot>(value)
}

/// A temperature as a number of degrees Celsius.
pub fn in_celsius(temperature: Temperature) -> f64 {
    temperature.get::<degree_celsius>()
}

/// A temperature as a number of degrees Fahrenheit.
pub fn in_fahrenheit(temperature: Temperature) -> f64 {
    temperature.get::<degree_fahrenheit>()
}

/// A speed as a number of kilometres to the hour.
pub fn in_kilometres_per_hour(speed: Speed) -> f64 {
    speed.get::<kilometer_per_hour>()
}

/// A speed as a number of miles to the hour.
pub fn in_miles_per_hour(speed: Speed) -> f64 {
    speed.get::<mile_per_hour>()
}

impl Read for Temperature {
    fn si(self) -> f64 {
        self.get::<kelvin>()
    }
}

impl Read for Speed {
    fn si(self) -> f64 {
        self.get::<meter_per_second>()
    }
}

/// A temperature to the whole degree, as forecasts give it: `24 °C`; `75 °F`.
pub fn show_temperature(temperature: Temperature, units: Units) -> String {
    match units {
        Units::Metric => format!("{} °C", whole(in_celsius(temperature))),
        Units::Imperial => format!("{} °F", whole(in_fahrenheit(temperature))),
    }
}

/// A wind to the whole unit, as forecasts give it: `20 km/h`; `12 mph`.
pub fn show_speed(speed: Speed, units: Units) -> String {
    match units {
        Units::Metric => format!("{} km/h", whole(in_kilometres_per_hour(speed))),
        Units::Imperial => format!("{} mph", whole(in_miles_per_hour(speed))),
    }
}

/// To the nearest whole number, with no minus before a nought. The millionths that a half
/// loses on its way through kelvin are put right first.
fn whole(value: f64) -> String {
    let nearest = ((value * 1e6).round() / 1e6).round();
    let tidy = if nearest.abs() < 0.5 { 0.0 } else { nearest };
    format!("{tidy:.0}")
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: F = 9/5 C + 32; 1 mph is 1.609344 km/h.
    #[test]
    fn weather_reads_as_a_forecast_writes_it() {
        for (c, metric, imperial) in [
            (24.0, "24 °C", "75 °F"),
            (0.0, "0 °C", "32 °F"),
            (-0.4, "0 °C", "31 °F"),
            (-17.9, "-18 °C", "0 °F"),
            (-40.0, "-40 °C", "-40 °F"),
            (37.5, "38 °C", "100 °F"),
        ] {
            assert_eq!(show_temperature(celsius(c), Units::Metric), metric);
            assert_eq!(show_temperature(celsius(c), Units::Imperial), imperial);
        }
        for (kmh, metric, imperial) in [
            (20.0, "20 km/h", "12 mph"),
            (0.0, "0 km/h", "0 mph"),
            (160.9344, "161 km/h", "100 mph"),
        ] {
            assert_eq!(show_speed(kilometres_per_hour(kmh), Units::Metric), metric);
            assert_eq!(
                show_speed(kilometres_per_hour(kmh), Units::Imperial),
                imperial
            );
        }
    }

    /// Exact by definition: 0 °C is 273.15 K and 32 °F; a mile 1,609.344 m, a nautical mile
    /// 1,852 m; 15 degrees Fahrenheit are 25/3 kelvin.
    #[test]
    fn makers_and_readers_agree() {
        for (ours, theirs) in [
            (celsius(0.0).si(), 273.15),
            (in_celsius(fahrenheit(32.0)), 0.0),
            (in_fahrenheit(celsius(-40.0)), -40.0),
            (
                in_celsius(celsius(10.0) + fahrenheit_degrees(15.0)),
                55.0 / 3.0,
            ),
            (kilometres_per_hour(36.0).si(), 10.0),
            (in_kilometres_per_hour(miles_per_hour(1.0)), 1.609_344),
            (in_kilometres_per_hour(knots(10.0)), 18.52),
            (in_miles_per_hour(metres_per_second(0.447_04)), 1.0),
        ] {
            assert!((ours - theirs).abs() < 1e-9, "{ours}, not {theirs}");
        }
    }
}
