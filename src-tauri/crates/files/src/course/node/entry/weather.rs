//! The value of one key, taken as a temperature, a wind or a humidity.

use super::super::Entry;
use crate::{Fault, quantity};
use craft::quantity::{Speed, Temperature, in_celsius, in_kilometres_per_hour};

impl Entry<'_> {
    /// A temperature of outdoor air, from -60 to 60 °C.
    pub(in crate::course) fn temperature(&self) -> Result<Temperature, Fault> {
        let cure = "write it with its unit, in quotes: \"24 C\" or \"75 F\"";
        let temperature = self.quantity(quantity::temperature, "a temperature", cure)?;
        let bounds = "between -60 °C and 60 °C (-76 °F and 140 °F)";
        self.between(to_millionths(in_celsius(temperature)), -60.0, 60.0, bounds)?;
        Ok(temperature)
    }

    /// A wind, up to 200 km/h.
    pub(in crate::course) fn speed(&self) -> Result<Speed, Fault> {
        let cure = "write it with its unit, in quotes: \"20 km/h\" or \"12 mph\"";
        let speed = self.quantity(quantity::speed, "a speed", cure)?;
        let bounds = "between 0 km/h and 200 km/h (124 mph)";
        self.between(
            to_millionths(in_kilometres_per_hour(speed)),
            0.0,
            200.0,
            bounds,
        )?;
        Ok(speed)
    }

    /// A relative humidity: a share, of which all is fog and not too much.
    pub(in crate::course) fn humidity(&self) -> Result<f64, Fault> {
        let cure = "a share from 0 to 1, such as 0.6 for 60 %";
        let humidity = self.any_number(cure)?;
        self.between(humidity, 0.0, 1.0, cure)?;
        Ok(humidity)
    }
}

/// Without what a bound such as 60 °C gains or loses on its way through SI.
fn to_millionths(value: f64) -> f64 {
    (value * 1e6).round() / 1e6
}
