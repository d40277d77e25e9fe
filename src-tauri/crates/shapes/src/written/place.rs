//! A place on the map as it is read out over a telephone: decimal degrees, and degrees, minutes
//! and seconds.

use serde::Serialize;

/// Where the course is held, north or south and east or west, in both spellings.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Coordinates {
    /// `54.20000° N`: five decimals are about a metre on the ground.
    pub latitude: String,
    /// `2.40000° W`.
    pub longitude: String,
    /// `54° 12′ 00.0″ N`: a tenth of a second is about three metres.
    pub latitude_dms: String,
    /// `2° 24′ 00.0″ W`.
    pub longitude_dms: String,
}

impl Coordinates {
    /// Degrees north of the equator and east of Greenwich, as WGS 84 and maps on telephones
    /// count them, written out.
    pub fn of(latitude: f64, longitude: f64) -> Self {
        let (north, east) = (["N", "S"], ["E", "W"]);
        Self {
            latitude: decimal(latitude, north),
            longitude: decimal(longitude, east),
            latitude_dms: minutes_and_seconds(latitude, north),
            longitude_dms: minutes_and_seconds(longitude, east),
        }
    }
}

/// So many parts of a degree stand in its last decimal.
const DECIMAL_PARTS: f64 = 1e5;

/// Tenths of a second in a degree: 60 minutes of 60 seconds.
const TENTHS: f64 = 36_000.0;

fn decimal(degrees: f64, sides: [&str; 2]) -> String {
    let parts = (degrees.abs() * DECIMAL_PARTS).round();
    format!(
        "{:.5}° {}",
        parts / DECIMAL_PARTS,
        side(degrees, parts, sides)
    )
}

/// Rounded once, in the smallest part that is shown: so 60 seconds are never written, they are
/// the next minute.
fn minutes_and_seconds(degrees: f64, sides: [&str; 2]) -> String {
    let tenths = (degrees.abs() * TENTHS).round();
    let whole = (tenths / TENTHS).floor();
    let rest = tenths - whole * TENTHS;
    let minutes = (rest / 600.0).floor();
    let seconds = (rest - minutes * 600.0) / 10.0;
    let side = side(degrees, tenths, sides);
    format!("{whole:.0}° {minutes:02.0}′ {seconds:04.1}″ {side}")
}

/// What rounds to nothing lies on the line itself, and counts as north or east.
fn side(degrees: f64, parts: f64, sides: [&str; 2]) -> &str {
    let [positive, negative] = sides;
    if degrees < 0.0 && 0.0 < parts {
        negative
    } else {
        positive
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The degrees a text says, by its own numbers.
    fn read(text: &str) -> f64 {
        let numbers: Vec<f64> = text
            .split(|sign: char| !sign.is_ascii_digit() && sign != '.')
            .filter_map(|number| number.parse().ok())
            .collect();
        let share = [1.0, 60.0, 3600.0];
        let degrees: f64 = numbers.iter().zip(share).map(|(it, of)| it / of).sum();
        if text.ends_with(['S', 'W']) {
            -degrees
        } else {
            degrees
        }
    }

    #[test]
    fn seconds_carry_into_minutes_and_degrees() {
        for (degrees, text) in [
            (0.0, "0° 00′ 00.0″ N"),
            (-0.000_001, "0° 00′ 00.0″ N"),
            (-0.000_1, "0° 00′ 00.4″ S"),
            (54.999_99, "55° 00′ 00.0″ N"),
            (54.016_666, "54° 01′ 00.0″ N"),
            (-89.999_999, "90° 00′ 00.0″ S"),
        ] {
            assert_eq!(Coordinates::of(degrees, 0.0).latitude_dms, text);
        }
    }

    /// Both spellings say where it is, to half of their last sign; steps that no decimal
    /// divides reach every minute and second.
    #[test]
    fn both_spellings_say_where_it_is() {
        for step in -20_000_i32..=20_000 {
            let (latitude, longitude) = (f64::from(step) * 0.004_499_93, f64::from(step) / 111.11);
            let it = Coordinates::of(latitude, longitude);
            for (given, decimal, dms) in [
                (latitude, &it.latitude, &it.latitude_dms),
                (longitude, &it.longitude, &it.longitude_dms),
            ] {
                assert!(
                    (read(decimal) - given).abs() < 0.500_01 / DECIMAL_PARTS,
                    "{decimal}"
                );
                assert!((read(dms) - given).abs() < 0.500_01 / TENTHS, "{dms}");
                let parts: Vec<&str> = dms.split(' ').collect();
                assert!(parts[1] < "60" && parts[2] < "60", "{dms}");
            }
        }
    }
}
