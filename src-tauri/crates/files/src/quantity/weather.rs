//! Temperature and wind as a forecast writes them: `24 C`, `75 °F`, `20 km/h`, `12 mph`.

use super::{NotAQuantity, single, unit_trouble};
use craft::quantity::{
    Speed, Temperature, celsius, fahrenheit, kilometres_per_hour, knots, metres_per_second,
    miles_per_hour,
};

const TEMPERATURE_CURE: &str = "write a temperature such as \"24 C\", \"24 °C\" or \"75 F\"";
const SPEED_CURE: &str = "write a speed such as \"20 km/h\", \"12 mph\", \"5 m/s\" or \"10 knots\"";

/// A temperature: one number with its unit; it may be below nought.
///
/// # Errors
/// [`NotAQuantity`] for anything else.
pub fn temperature(text: &str) -> Result<Temperature, NotAQuantity> {
    let (number, word) = single(text, "temperature", TEMPERATURE_CURE)?;
    match word.as_str() {
        "C" | "°C" | "º C" | "ºC" | "° C" | "Celsius" | "degrees C" => Ok(celsius(number)),
        "F" | "°F" | "º F" | "ºF" | "° F" | "Fahrenheit" | "degrees F" => {
            Ok(fahrenheit(number))
        }
        "°" | "º" | "degrees" => Err(NotAQuantity {
            what: format!("\"{text}\" does not say which degrees are meant"),
            cure: TEMPERATURE_CURE,
        }),
        other => Err(NotAQuantity {
            what: unit_trouble(text, other, "temperature"),
            cure: TEMPERATURE_CURE,
        }),
    }
}

/// A speed: one number with its unit.
///
/// # Errors
/// [`NotAQuantity`] for anything else.
pub fn speed(text: &str) -> Result<Speed, NotAQuantity> {
    let (number, word) = single(text, "speed", SPEED_CURE)?;
    match word.as_str() {
        "km/h" | "kph" => Ok(kilometres_per_hour(number)),
        "mph" => Ok(miles_per_hour(number)),
        "m/s" => Ok(metres_per_second(number)),
        "knot" | "knots" | "kn" | "kt" => Ok(knots(number)),
        other => Err(NotAQuantity {
            what: unit_trouble(text, other, "speed"),
            cure: SPEED_CURE,
        }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use craft::quantity::Read;

    /// By hand: 0 °C is 273.15 K, F = 9/5 C + 32; a mile 1,609.344 m, a nautical mile 1,852 m.
    #[test]
    fn weather_is_read_as_a_forecast_writes_it() {
        for (text, kelvin) in [
            ("24 C", 297.15),
            ("24 °C", 297.15),
            ("24°C", 297.15),
            ("-3 C", 270.15),
            ("−3 °C", 270.15),
            ("75.2 F", 297.15),
            ("-40 °F", 233.15),
            ("24 ºC", 297.15),
        ] {
            let read = temperature(text).unwrap_or_else(|wrong| panic!("{text}: {}", wrong.what));
            assert!((read.si() - kelvin).abs() < 1e-9, "{text}: {}", read.si());
        }
        for (text, metres_per_second) in [
            ("36 km/h", 10.0),
            ("10 mph", 4.4704),
            ("5 m/s", 5.0),
            ("5m/s", 5.0),
            ("18 knots", 9.26),
        ] {
            let read = speed(text).unwrap_or_else(|wrong| panic!("{text}: {}", wrong.what));
            assert!((read.si() - metres_per_second).abs() < 1e-9, "{text}");
        }
    }

    #[test]
    fn what_is_no_weather_is_refused_in_words() {
        for (text, what) in [
            ("24", "\"24\" is a temperature without a unit"),
            (
                "24 degrees",
                "\"24 degrees\" does not say which degrees are meant",
            ),
            ("24°", "\"24°\" does not say which degrees are meant"),
            ("24 m", "\"m\" in \"24 m\" is not a unit of temperature"),
            ("warm", "\"warm\" is not a number with a unit"),
            ("24 C 3 C", "\"24 C 3 C\" is not one temperature"),
            ("nan C", "\"nan C\" is not a number with a unit"),
        ] {
            assert_eq!(temperature(text).expect_err(text).what, what);
        }
        for (text, what) in [
            ("20", "\"20\" is a speed without a unit"),
            ("5 Bft", "\"Bft\" in \"5 Bft\" is not a unit of speed"),
            ("", "\"\" is not a number with a unit"),
        ] {
            assert_eq!(speed(text).expect_err(text).what, what);
        }
    }
}
