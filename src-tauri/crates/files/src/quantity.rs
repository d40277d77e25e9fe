//! Quantities as a person writes them: `1.07 m`, `3'6"`, `42 1/2 in`, `4 t`, `2600 kg/m3`.

mod comma;
mod weather;

pub use comma::with_points;
pub use weather::{speed, temperature};

use craft::quantity::{
    Density, FOOT_M, INCH_M, Length, Mass, POUND_KG, SHORT_TON_KG, kg_per_m3, kilograms, metres,
};

/// One long ton (2,240 lb) in kilograms, exact.
const LONG_TON_KG: f64 = 2240.0 * POUND_KG;

/// Why a text is not a quantity: what is wrong, and what would be right.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NotAQuantity {
    /// What is wrong.
    pub what: String,
    /// What would be right.
    pub cure: &'static str,
}

const LENGTH_CURE: &str =
    "write a length such as \"1.07 m\", \"107 cm\", \"3 ft 6 in\", \"3'6\\\"\" or \"42 1/2 in\"";
const MASS_CURE: &str =
    "write a mass such as \"4 t\", \"850 kg\", \"2 short tons\", \"2 long tons\" or \"200 lb\"";
const DENSITY_CURE: &str = "write a density such as \"2600 kg/m3\", \"2.6 t/m3\" or \"162 lb/ft3\"";

/// A length: one number with its unit, or feet and inches.
///
/// # Errors
/// [`NotAQuantity`] for anything else.
pub fn length(text: &str) -> Result<Length, NotAQuantity> {
    let unit = |word: &str| match word {
        "m" | "metre" | "metres" | "meter" | "meters" => Some((1.0, false)),
        "cm" => Some((0.01, false)),
        "mm" => Some((0.001, false)),
        "ft" | "foot" | "feet" | "'" | "′" | "’" => Some((FOOT_M, true)),
        "in" | "inch" | "inches" | "\"" | "″" | "”" => Some((INCH_M, true)),
        _ => None,
    };
    let (negative, parts) = parts(text, LENGTH_CURE)?;
    let refuse = |what: String| NotAQuantity {
        what,
        cure: LENGTH_CURE,
    };
    let mut sum = 0.0;
    let mut last = f64::INFINITY;
    for (number, word) in &parts {
        let Some((size, joins)) = unit(word) else {
            return Err(refuse(unit_trouble(text, word, "length")));
        };
        // Only feet and inches are said together, the larger first.
        if 1 < parts.len() && !(joins && size < last) {
            return Err(refuse(format!("\"{text}\" is not one length")));
        }
        last = size;
        sum += number * size;
    }
    Ok(metres(if negative { -sum } else { sum }))
}

/// A mass: one number with its unit.
///
/// # Errors
/// [`NotAQuantity`] for anything else.
pub fn mass(text: &str) -> Result<Mass, NotAQuantity> {
    let (number, word) = single(text, "mass", MASS_CURE)?;
    let size = match word.as_str() {
        "t" | "tonne" | "tonnes" => 1000.0,
        "kg" => 1.0,
        "short ton" | "short tons" => SHORT_TON_KG,
        "long ton" | "long tons" => LONG_TON_KG,
        "lb" | "lbs" | "pound" | "pounds" => POUND_KG,
        "ton" | "tons" => {
            return Err(NotAQuantity {
                what: format!("\"{text}\" does not say which ton is meant"),
                cure: "write \"t\" for 1,000 kg, \"short tons\" for 2,000 lb or \"long tons\" for 2,240 lb",
            });
        }
        other => {
            return Err(NotAQuantity {
                what: unit_trouble(text, other, "mass"),
                cure: MASS_CURE,
            });
        }
    };
    Ok(kilograms(number * size))
}

/// A density: one number with its unit.
///
/// # Errors
/// [`NotAQuantity`] for anything else.
pub fn density(text: &str) -> Result<Density, NotAQuantity> {
    let (number, word) = single(text, "density", DENSITY_CURE)?;
    let size = match word.replace('³', "3").as_str() {
        "kg/m3" => 1.0,
        "t/m3" => 1000.0,
        "lb/ft3" => POUND_KG / FOOT_M.powi(3),
        other => {
            return Err(NotAQuantity {
                what: unit_trouble(text, other, "density"),
                cure: DENSITY_CURE,
            });
        }
    };
    Ok(kg_per_m3(number * size))
}

fn unit_trouble(text: &str, word: &str, kind: &str) -> String {
    if word.is_empty() {
        format!("\"{text}\" is a {kind} without a unit")
    } else {
        format!("\"{word}\" in \"{text}\" is not a unit of {kind}")
    }
}

fn single(text: &str, kind: &str, cure: &'static str) -> Result<(f64, String), NotAQuantity> {
    let (negative, mut parts) = parts(text, cure)?;
    match (parts.pop(), parts.is_empty()) {
        (Some((number, word)), true) => Ok((if negative { -number } else { number }, word)),
        _ => Err(NotAQuantity {
            what: format!("\"{text}\" is not one {kind}"),
            cure,
        }),
    }
}

/// The text as numbers, each with the word behind it, and whether a minus stands before all.
fn parts(text: &str, cure: &'static str) -> Result<(bool, Vec<(f64, String)>), NotAQuantity> {
    let refuse = || NotAQuantity {
        what: format!("\"{text}\" is not a number with a unit"),
        cure,
    };
    let trimmed = text.trim();
    let (negative, mut rest) = match trimmed.strip_prefix(['-', '−']) {
        Some(rest) => (true, rest.trim_start()),
        None => (false, trimmed),
    };
    let mut parts = Vec::new();
    while !rest.is_empty() {
        let split = rest.find(|c: char| !is_of_number(c)).unwrap_or(rest.len());
        let (number, after) = rest.split_at(split);
        let number = number_of(number.trim()).ok_or_else(refuse)?;
        let end = end_of_word(after);
        let (word, next) = after.split_at(end);
        let word = word.split_whitespace().collect::<Vec<_>>().join(" ");
        parts.push((number, word));
        rest = next.trim_start();
    }
    if parts.is_empty() {
        Err(refuse())
    } else {
        Ok((negative, parts))
    }
}

/// Where the next number begins. Behind a stroke a digit belongs to the unit, as in kg/m3.
fn end_of_word(text: &str) -> usize {
    let starts_number =
        |at: usize, c: char| (c.is_ascii_digit() || c == '.') && !text[..at].contains('/');
    text.char_indices()
        .find(|&(at, c)| starts_number(at, c))
        .map_or(text.len(), |(at, _)| at)
}

fn is_of_number(c: char) -> bool {
    c.is_ascii_digit() || c == '.' || c == '/' || c == ' '
}

/// `1.07`, `.5`, `5/8` or `42 1/2`.
fn number_of(text: &str) -> Option<f64> {
    let plain = |text: &str| {
        let digits = text.bytes().all(|b| b.is_ascii_digit() || b == b'.');
        if digits {
            text.parse::<f64>().ok()
        } else {
            None
        }
    };
    let fraction = |text: &str| {
        let (top, bottom) = text.split_once('/')?;
        let (top, bottom) = (plain(top)?, plain(bottom)?);
        (0.0 < bottom).then(|| top / bottom)
    };
    let mut words = text.split_whitespace();
    let number = match (words.next()?, words.next()) {
        (one, None) => fraction(one).or_else(|| plain(one))?,
        (whole, Some(part)) => plain(whole)? + fraction(part)?,
    };
    (words.next().is_none() && number.is_finite()).then_some(number)
}

#[cfg(test)]
mod tests {
    use super::*;
    use craft::quantity::Read;

    #[test]
    fn lengths_are_read_as_people_write_them() {
        // By hand from 1 in = 25.4 mm (international yard and pound agreement, 1959).
        for (text, expected) in [
            ("1.07 m", 1.07),
            (".5 m", 0.5),
            ("107 cm", 1.07),
            ("1070 mm", 1.07),
            ("3 ft 6 in", 1.0668),
            ("3'6\"", 1.0668),
            ("3' 6 1/2\"", 1.0795),
            ("3ft6in", 1.0668),
            ("42 in", 1.0668),
            ("42 1/2 in", 1.0795),
            ("5/8 in", 0.015_875),
            ("16in", 0.4064),
            ("0 m", 0.0),
            ("-0.12 m", -0.12),
            ("  2 feet ", 0.6096),
        ] {
            let read = length(text).unwrap_or_else(|wrong| panic!("{text}: {}", wrong.what));
            assert!(
                (read.si() - expected).abs() < 1e-12,
                "{text}: {}",
                read.si()
            );
        }
    }

    #[test]
    fn what_is_no_length_is_refused_in_words() {
        for (text, what) in [
            ("", "\"\" is not a number with a unit"),
            ("1.07", "\"1.07\" is a length without a unit"),
            (
                "3 yards",
                "\"yards\" in \"3 yards\" is not a unit of length",
            ),
            ("1 m 20 cm", "\"1 m 20 cm\" is not one length"),
            ("6 in 3 ft", "\"6 in 3 ft\" is not one length"),
            ("nan m", "\"nan m\" is not a number with a unit"),
            ("inf m", "\"inf m\" is not a number with a unit"),
            ("1/0 in", "\"1/0 in\" is not a number with a unit"),
            ("1.2.3 m", "\"1.2.3 m\" is not a number with a unit"),
            ("1 2 m", "\"1 2 m\" is not a number with a unit"),
            ("m", "\"m\" is not a number with a unit"),
        ] {
            assert_eq!(length(text).expect_err(text).what, what);
        }
    }

    #[test]
    fn masses_and_densities() {
        for (text, expected) in [
            ("4 t", 4000.0),
            ("850 kg", 850.0),
            ("2 short tons", 1_814.369_48),
            ("1 long ton", 1_016.046_908_8),
            ("200 lb", 90.718_474),
        ] {
            assert!(
                (mass(text).expect(text).si() - expected).abs() < 1e-9,
                "{text}"
            );
        }
        for (text, expected) in [
            ("2600 kg/m3", 2600.0),
            ("2.6 t/m3", 2600.0),
            ("2600 kg/m³", 2600.0),
        ] {
            assert!(
                (density(text).expect(text).si() - expected).abs() < 1e-9,
                "{text}"
            );
        }
        let pounds = density("1 lb/ft3").expect("a density").si();
        assert!((pounds - 16.018_463_373_96).abs() < 1e-9);
        assert_eq!(
            mass("2 tons").expect_err("two tons").what,
            "\"2 tons\" does not say which ton is meant"
        );
        assert!(mass("2 m").is_err() && density("2600").is_err());
    }
}
