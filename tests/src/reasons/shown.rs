//! Quantities as they are written in a sum, each with how far off its rounding may be.

/// All that a written figure may stand for, in SI units.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Span {
    pub(crate) low: f64,
    pub(crate) high: f64,
}

impl Span {
    pub(crate) fn about(middle: f64, off: f64) -> Self {
        Self {
            low: middle - off,
            high: middle + off,
        }
    }

    pub(crate) fn of(ends: &[f64]) -> Self {
        Self {
            low: ends.iter().copied().fold(f64::INFINITY, f64::min),
            high: ends.iter().copied().fold(f64::NEG_INFINITY, f64::max),
        }
    }

    pub(crate) fn meets(self, other: Self) -> bool {
        let hair = 1e-9 * self.high.abs().max(1.0);
        self.low <= other.high + hair && other.low <= self.high + hair
    }
}

const INCH: f64 = 0.0254;
const POUND: f64 = 0.453_592_37;

/// What one of a unit is in SI, and how finely it is written where it is written without decimals.
fn unit(word: &str) -> Option<(f64, f64)> {
    Some(match word {
        "m" | "m²" | "m³" => (1.0, 0.5),
        "mm" => (0.001, 0.5),
        "kg" | "kg/m³" => (1.0, 0.5),
        "t" => (1000.0, 0.5),
        "lb" => (POUND, 0.5),
        "lb/ft³" => (POUND / (12.0 * INCH).powi(3), 0.5),
        "ft²" => ((12.0 * INCH).powi(2), 0.5),
        "ft³" => ((12.0 * INCH).powi(3), 0.5),
        // One decimal at most is written, and none where it is a nought.
        "%" => (0.01, 0.05),
        _ => return None,
    })
}

/// `1,234.5` and how many decimals it has.
fn number(word: &str) -> Option<(f64, usize)> {
    let plain = word.replace(',', "");
    if !plain
        .trim_start_matches('-')
        .starts_with(|it: char| it.is_ascii_digit())
    {
        return None;
    }
    let decimals = plain.split_once('.').map_or(0, |it| it.1.len());
    Some((plain.parse().ok()?, decimals))
}

/// `5/8`.
fn fraction(word: &str) -> Option<f64> {
    let (top, bottom) = word.split_once('/')?;
    Some(top.parse::<f64>().ok()? / bottom.parse::<f64>().ok()?)
}

/// A quantity at the beginning of some words, and how many of them it takes. A bare number is exact
/// where it goes in, and rounded where it comes out.
pub(crate) fn quantity(words: &[&str], comes_out: bool) -> Option<(Span, usize)> {
    if let Some(taken) = feet_and_inches(words) {
        return Some(taken);
    }
    let first = words.first()?;
    if first.len() == 3 && first.bytes().all(|it| it.is_ascii_uppercase()) {
        let (amount, _) = number(words.get(1)?)?;
        return Some((Span::about(amount, 0.005), 2));
    }
    let (value, decimals) = number(first)?;
    let last = 0.5 * 0.1_f64.powi(i32::try_from(decimals).ok()?);
    if words.get(1..3) == Some(&["short", "tons"]) {
        let ton = 2000.0 * POUND;
        return Some((Span::about(value * ton, last * ton), 3));
    }
    match words.get(1).and_then(|word| unit(word)) {
        Some((one, whole)) => {
            let off = if decimals == 0 { whole } else { last.min(0.5) };
            Some((Span::about(value * one, off * one), 2))
        }
        None if comes_out && decimals < 3 => Some((Span::about(value, 0.005), 1)),
        None => Some((Span::about(value, last.min(0.000_05)), 1)),
    }
}

/// `3 ft 6 1/8 in`, `10 ft`, `5/8 in`, `7 in`: to the nearest eighth below 10 ft, above it to the
/// nearest quarter.
fn feet_and_inches(words: &[&str]) -> Option<(Span, usize)> {
    let mut at = 0;
    let mut inches = 0.0;
    let mut any = false;
    if words.get(1) == Some(&"ft") {
        inches += 12.0 * number(words[0])?.0;
        (at, any) = (2, true);
    }
    let sign = if inches < 0.0 { -1.0 } else { 1.0 };
    let rest = &words[at.min(words.len())..];
    let more = match *rest {
        [whole, part, "in", ..] => number(whole)
            .zip(fraction(part))
            .map(|(whole, part)| (whole.0 + part, 3)),
        _ => None,
    };
    let more = more.or_else(|| match *rest {
        [one, "in", ..] => fraction(one)
            .or_else(|| number(one).map(|it| it.0))
            .map(|it| (it, 2)),
        _ => None,
    });
    if let Some((value, taken)) = more {
        inches += sign * value;
        at += taken;
        any = true;
    }
    let eighths = if inches.abs() < 120.0 {
        1.0 / 16.0
    } else {
        1.0 / 8.0
    };
    any.then(|| (Span::about(inches * INCH, eighths * INCH), at))
}

#[test]
fn quantities_are_read_as_they_are_written() {
    for (text, low, high, taken) in [
        ("1.07 m", 1.065, 1.075, 2),
        ("18 mm", 0.0175, 0.0185, 2),
        ("12.4 t", 12_350.0, 12_450.0, 2),
        ("25 %", 0.2495, 0.2505, 2),
        ("2,600 kg/m³", 2599.5, 2600.5, 2),
        ("GBP 1,240.50 + 1", 1240.495, 1240.505, 2),
        ("GBP -45.50", -45.505, -45.495, 2),
        ("3 ft 6 1/8 in / 6", 42.0625 * INCH, 42.1875 * INCH, 5),
        ("5/8 in", 0.5625 * INCH, 0.6875 * INCH, 2),
        ("30 ft", 359.875 * INCH, 360.125 * INCH, 2),
        ("121 lb", 120.5 * POUND, 121.5 * POUND, 2),
        ("8", 7.999_95, 8.000_05, 1),
    ] {
        let words: Vec<&str> = text.split_whitespace().collect();
        let (span, of) = quantity(&words, false).expect(text);
        assert!(
            (span.low - low).abs() < 1e-6 && (span.high - high).abs() < 1e-6,
            "{text}: {span:?}"
        );
        assert_eq!(of, taken, "{text}");
    }
    assert_eq!(quantity(&["throughs"], false), None);
}
