//! How a person writes a quantity: metres with two decimals, feet and inches with fractions.

use super::{Area, FOOT_M, INCH_M, Length, Mass, POUND_KG, Read, SHORT_TON_KG, Volume, metres};

/// The system quantities are shown in. The sums are the same in both.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Units {
    /// Metres, kilograms, tonnes.
    Metric,
    /// Feet and inches, pounds, short tons.
    Imperial,
}

/// A length: `1.07 m`; `3 ft 6 1/8 in`. Inches go to the nearest eighth below 10 ft and
/// to the nearest quarter from there, as a tape is read on site (common practice, no source).
pub fn show_length(length: Length, units: Units) -> String {
    match units {
        Units::Metric => format!("{:.2} m", tidy_zero(length.si(), 0.005)),
        Units::Imperial => {
            let parts_per_inch: u32 = if length.si().abs() < 10.0 * FOOT_M {
                8
            } else {
                4
            };
            feet_and_inches(length.si() / INCH_M, parts_per_inch)
        }
    }
}

/// A length that is marked, taped or cut: to the millimetre where it is not whole
/// centimetres, `1.07 m` and `0.385 m`; to the nearest sixteenth of an inch below 10 ft and
/// the nearest eighth from there (common practice, no source).
pub fn show_mark(length: Length, units: Units) -> String {
    match units {
        Units::Metric => {
            let millimetres = (length.si() * 1000.0).round();
            if millimetres % 10.0 == 0.0 {
                return show_length(length, units);
            }
            format!("{:.3} m", millimetres / 1000.0)
        }
        Units::Imperial => feet_and_inches(length.si() / INCH_M, parts_per_inch(length)),
    }
}

/// Into how many parts an inch is divided for a mark so long.
fn parts_per_inch(length: Length) -> u32 {
    if length.si().abs() < 10.0 * FOOT_M {
        16
    } else {
        8
    }
}

/// A length as [`show_mark`] prints it, for sums that are to add up as they stand.
pub fn round_to_mark(length: Length, units: Units) -> Length {
    let part = match units {
        Units::Metric => 0.001,
        Units::Imperial => INCH_M / f64::from(parts_per_inch(length)),
    };
    metres((length.si() / part).round() * part)
}

/// A length so small that it is told in millimetres: `18 mm`, `less than 1 mm`; in inches as
/// any mark.
pub fn show_small(length: Length, units: Units) -> String {
    match units {
        Units::Metric => {
            let millimetres = (length.si() * 1000.0).round();
            if millimetres < 1.0 && 0.0 < length.si() {
                return "less than 1 mm".to_owned();
            }
            format!("{millimetres:.0} mm")
        }
        Units::Imperial if length.si() < INCH_M / 32.0 && 0.0 < length.si() => {
            "less than 1/16 in".to_owned()
        }
        Units::Imperial => show_mark(length, units),
    }
}

/// A length by rule of thumb, as it is said and not as it is measured. Up to 10 cm to the half
/// centimetre, `5 cm`, `2.5 cm`; above that to the centimetre, `15 cm`, and from a metre on in
/// metres, `1.5 m`. The same in quarters of an inch up to 4 in, `2 in`, and above that in
/// whole ones, `4 ft 11 in`. What is finer than the step keeps its millimetres or eighths
/// (common practice, no source).
pub fn show_roughly(length: Length, units: Units) -> String {
    let metres = length.si();
    match units {
        Units::Metric if metres.abs() < 0.005 - HAIR_M => format!("{:.0} mm", metres * 1000.0),
        Units::Metric if metres.abs() < 0.1 - HAIR_M => {
            format!("{} cm", (metres * 200.0).round() / 2.0)
        }
        Units::Metric => {
            let centimetres = (metres * 100.0).round();
            if centimetres.abs() < 100.0 {
                format!("{centimetres:.0} cm")
            } else {
                format!("{} m", centimetres / 100.0)
            }
        }
        Units::Imperial if metres.abs() < INCH_M / 4.0 - HAIR_M => {
            feet_and_inches(metres / INCH_M, 8)
        }
        Units::Imperial if metres.abs() < 4.0 * INCH_M => feet_and_inches(metres / INCH_M, 4),
        Units::Imperial => feet_and_inches(metres / INCH_M, 1),
    }
}

/// Less than any tape shows: what a binary fraction may lack of a written length.
const HAIR_M: f64 = 1e-9;

/// Minus a very small nothing is written as plain nothing.
fn tidy_zero(value: f64, half_step: f64) -> f64 {
    if value.abs() < half_step { 0.0 } else { value }
}

fn feet_and_inches(inches: f64, parts_per_inch: u32) -> String {
    let parts = (inches.abs() * f64::from(parts_per_inch)).round();
    let sign = if inches < 0.0 && 0.0 < parts { "-" } else { "" };
    let per_foot = f64::from(12 * parts_per_inch);
    let feet = (parts / per_foot).floor();
    let left = parts - feet * per_foot;
    let whole = (left / f64::from(parts_per_inch)).floor();
    let fraction = fraction(left - whole * f64::from(parts_per_inch), parts_per_inch);
    let inch_text = match (whole, fraction) {
        (0.0, Some(fraction)) => format!("{fraction} in"),
        (whole, Some(fraction)) => format!("{whole:.0} {fraction} in"),
        (whole, None) => format!("{whole:.0} in"),
    };
    match (feet, inch_text.as_str()) {
        (0.0, _) => format!("{sign}{inch_text}"),
        (feet, "0 in") => format!("{sign}{feet:.0} ft"),
        (feet, _) => format!("{sign}{feet:.0} ft {inch_text}"),
    }
}

/// `parts / per_inch` in lowest terms, or nothing for nothing.
fn fraction(parts: f64, per_inch: u32) -> Option<String> {
    let (mut top, mut bottom) = (super::whole_number(parts), per_inch);
    if top == 0 {
        return None;
    }
    while top % 2 == 0 {
        top /= 2;
        bottom /= 2;
    }
    Some(format!("{top}/{bottom}"))
}

/// A mass: `4.2 t`, or `55 kg` below a tonne; `4.6 tons` of 2,000 lb, or `121 lb`.
pub fn show_mass(mass: Mass, units: Units) -> String {
    let (big, small, big_name, small_name) = match units {
        Units::Metric => (1000.0, 1.0, "t", "kg"),
        Units::Imperial => (SHORT_TON_KG, POUND_KG, "short tons", "lb"),
    };
    let kilograms = mass.si();
    if kilograms < big {
        let small_count = tidy_zero(kilograms / small, 0.05);
        // Light tools weigh a few pounds or kilograms: a decimal matters there.
        if 0.0 < small_count && small_count < 10.0 {
            return format!("{small_count:.1} {small_name}");
        }
        return format!("{small_count:.0} {small_name}");
    }
    format!("{:.1} {big_name}", kilograms / big)
}

/// A volume: `4.27 m³`; `151 ft³`.
pub fn show_volume(volume: Volume, units: Units) -> String {
    match units {
        Units::Metric => format!("{:.2} m³", volume.si()),
        Units::Imperial => format!("{:.0} ft³", volume.si() / FOOT_M.powi(3)),
    }
}

/// An area: `0.63 m²`; `6.8 ft²`.
pub fn show_area(area: Area, units: Units) -> String {
    match units {
        Units::Metric => format!("{:.2} m²", area.si()),
        Units::Imperial => format!("{:.1} ft²", area.si() / FOOT_M.powi(2)),
    }
}

/// A share of one as whole per cent: `83 %`. Short of certain never shows as 100, nor
/// possible as 0.
pub fn show_share(share: f64) -> String {
    let percent = (share * 100.0).round();
    if share < 1.0 && 100.0 <= percent {
        return "over 99 %".to_owned();
    }
    if 0.0 < share && percent < 1.0 {
        return "under 1 %".to_owned();
    }
    format!("{percent:.0} %")
}

/// `1 frame`, `4 frames`: a count with its word.
pub fn show_count(count: usize, one: &str, many: &str) -> String {
    if count == 1 {
        format!("1 {one}")
    } else {
        format!("{count} {many}")
    }
}

#[cfg(test)]
mod tests {
    use super::super::{kilograms, metres};
    use super::*;

    #[test]
    fn lengths_read_as_a_person_writes_them() {
        // Worked by hand from 1 in = 25.4 mm; the last column is the tape reading.
        for (m, metric, imperial) in [
            (1.07, "1.07 m", "3 ft 6 1/8 in"),
            (0.4064, "0.41 m", "1 ft 4 in"),
            (0.2, "0.20 m", "7 7/8 in"),
            (0.003, "0.00 m", "1/8 in"),
            (-0.001, "0.00 m", "0 in"),
            (-0.12, "-0.12 m", "-4 3/4 in"),
            (3.048, "3.05 m", "10 ft"),
            (9.0, "9.00 m", "29 ft 6 1/4 in"),
            (0.3047, "0.30 m", "1 ft"),
        ] {
            assert_eq!(show_length(metres(m), Units::Metric), metric);
            assert_eq!(show_length(metres(m), Units::Imperial), imperial);
        }
    }

    /// Worked by hand: 0.385 m is 15.157 in, nearest sixteenth 15 3/16; 3.333 m is 131.22 in,
    /// nearest eighth 131 1/4.
    #[test]
    fn marks_read_to_the_millimetre() {
        for (m, metric, imperial) in [
            (1.07, "1.07 m", "3 ft 6 1/8 in"),
            (0.385, "0.385 m", "1 ft 3 3/16 in"),
            (10.0 / 3.0, "3.333 m", "10 ft 11 1/4 in"),
            (-0.0004, "0.00 m", "0 in"),
            (-0.125, "-0.125 m", "-4 15/16 in"),
        ] {
            assert_eq!(show_mark(metres(m), Units::Metric), metric);
            assert_eq!(show_mark(metres(m), Units::Imperial), imperial);
        }
        for (m, metric, imperial) in [
            (0.0184, "18 mm", "3/4 in"),
            (0.0002, "less than 1 mm", "less than 1/16 in"),
            (0.0, "0 mm", "0 in"),
        ] {
            assert_eq!(show_small(metres(m), Units::Metric), metric);
            assert_eq!(show_small(metres(m), Units::Imperial), imperial);
        }
    }

    /// Worked by hand from 1 in = 25.4 mm: 50 mm is 1.97 in, nearest quarter 2; 75 mm is 2.95
    /// in; 150 mm is 5.9 in; 1.5 m is 59.06 in.
    #[test]
    fn a_rule_of_thumb_reads_as_it_is_said() {
        for (m, metric, imperial) in [
            (0.003, "3 mm", "1/8 in"),
            (0.005, "0.5 cm", "1/4 in"),
            (0.01, "1 cm", "1/2 in"),
            (0.0254, "2.5 cm", "1 in"),
            (0.025, "2.5 cm", "1 in"),
            (0.05, "5 cm", "2 in"),
            (0.075, "7.5 cm", "3 in"),
            (0.1, "10 cm", "4 in"),
            (0.15, "15 cm", "6 in"),
            (0.3048, "30 cm", "1 ft"),
            (0.45, "45 cm", "1 ft 6 in"),
            (0.996, "1 m", "3 ft 3 in"),
            (1.5, "1.5 m", "4 ft 11 in"),
            (2.0, "2 m", "6 ft 7 in"),
            (10.0, "10 m", "32 ft 10 in"),
            (0.0, "0 mm", "0 in"),
        ] {
            assert_eq!(show_roughly(metres(m), Units::Metric), metric);
            assert_eq!(show_roughly(metres(m), Units::Imperial), imperial);
        }
    }

    #[test]
    fn masses_and_shares_read_as_a_person_writes_them() {
        assert_eq!(show_mass(kilograms(55.0), Units::Metric), "55 kg");
        assert_eq!(show_mass(kilograms(1.5), Units::Metric), "1.5 kg");
        assert_eq!(show_mass(kilograms(12_440.0), Units::Metric), "12.4 t");
        assert_eq!(show_mass(kilograms(55.0), Units::Imperial), "121 lb");
        assert_eq!(
            show_mass(kilograms(2000.0), Units::Imperial),
            "2.2 short tons"
        );
        assert_eq!(show_share(0.834), "83 %");
        assert_eq!(show_share(0.9999), "over 99 %");
        assert_eq!(show_share(0.001), "under 1 %");
        assert_eq!(show_share(1.0), "100 %");
    }
}
