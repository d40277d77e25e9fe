//! The parts a line of a sum is put together from.

use craft::quantity::{Density, FOOT_M, POUND_KG, Read, Units};
use craft::wall::{Section, Side};

/// A number with at most four decimals, thousands apart: `0.3333`, `2.5`, `10,000`.
pub(super) fn number(value: f64) -> String {
    let text = format!("{}", (value * 10_000.0).round() / 10_000.0);
    let (whole, decimals) = text.split_once('.').unwrap_or((&text, ""));
    let whole = apart(whole);
    if decimals.is_empty() {
        whole
    } else {
        format!("{whole}.{decimals}")
    }
}

/// Digits with a comma before every three from the end.
fn apart(digits: &str) -> String {
    let mut apart = String::new();
    for (at, digit) in digits.chars().enumerate() {
        let before = digits.len() - at;
        if 0 < at && before.is_multiple_of(3) && !apart.ends_with('-') {
            apart.push(',');
        }
        apart.push(digit);
    }
    apart
}

/// A share as `27.5 %`.
pub(super) fn percent(share: f64) -> String {
    format!("{} %", (share * 1000.0).round() / 10.0)
}

/// `2,600 kg/m³`; `162.3 lb/ft³`.
pub(super) fn density(density: Density, units: Units) -> String {
    let kilograms = density.si();
    match units {
        Units::Metric => format!("{} kg/m³", number(kilograms.round())),
        Units::Imperial => format!("{:.1} lb/ft³", kilograms / POUND_KG * FOOT_M.powi(3)),
    }
}

/// `a / b = q, rounded up: n`, and the like.
pub(super) fn rounded(sum: &str, exact: f64, how: &str, to: usize) -> String {
    format!(
        "{sum} = {}, {how}: {}",
        hundredths(exact),
        number(to as f64)
    )
}

/// A number with two decimals.
pub(super) fn hundredths(value: f64) -> String {
    number((value * 100.0).round() / 100.0)
}

/// What both faces take from the width over a depth: `2 × 1.07 m / 6`, or a term for each face
/// that leans.
pub(super) fn leaning_in(section: &Section, depth: &str) -> Vec<String> {
    let [left, right] = Side::BOTH.map(|side| section.batter(side).n());
    match (left, right) {
        (Some(one), Some(other)) if one.to_bits() == other.to_bits() => {
            vec![format!("2 × {depth} / {}", number(one))]
        }
        _ => [left, right]
            .into_iter()
            .flatten()
            .map(|n| format!("{depth} / {}", number(n)))
            .collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use craft::quantity::kg_per_m3;

    /// Written by hand; 2600 kg/m³ is 2600 / 0.453 592 37 · 0.3048³ = 162.31 lb/ft³.
    #[test]
    fn numbers_read_as_a_person_writes_them() {
        for (value, text) in [
            (0.333_333, "0.3333"),
            (2.5, "2.5"),
            (10_000.0, "10,000"),
            (1_234_567.891, "1,234,567.891"),
            (-100.0, "-100"),
            (6.000_01, "6"),
        ] {
            assert_eq!(number(value), text);
        }
        assert_eq!(percent(0.275), "27.5 %");
        assert_eq!(density(kg_per_m3(2600.0), Units::Metric), "2,600 kg/m³");
        assert_eq!(density(kg_per_m3(2600.0), Units::Imperial), "162.3 lb/ft³");
    }
}
