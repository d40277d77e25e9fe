//! A line of a sum read and worked out again: what goes in and what comes out must be the same, but
//! for how they are rounded where they are written.

use crate::shown::{Span, quantity};

/// Whether a line comes out: `2 × 1.07 m / 6 + 0.41 m = 0.767 m`, or with a whole number at its end,
/// `9.00 m / 0.90 m = 10, to the nearest: 10`.
pub(crate) fn check(line: &str) -> Result<(), String> {
    let (sum, result) = line.split_once(" = ").ok_or("there is no = in it")?;
    let (result, whole) = match result
        .split_once(", rounded ")
        .or_else(|| result.split_once(", to the "))
    {
        Some((result, whole)) => (result, Some(whole)),
        None => (result, None),
    };
    let worked_out = read(sum, false)?;
    let stands = read(result, true)?;
    if !worked_out.meets(stands) {
        return Err(format!(
            "it comes to {worked_out:?}, and {stands:?} stands there"
        ));
    }
    whole.map_or(Ok(()), |whole| check_whole(worked_out, whole))
}

fn check_whole(exact: Span, whole: &str) -> Result<(), String> {
    let (how, count) = whole.split_once(": ").ok_or("no whole number")?;
    let count: f64 = count
        .replace(',', "")
        .parse()
        .map_err(|_| format!("{count} is no number"))?;
    let hair = 1e-6;
    let (least, most) = match how {
        "up" => ((exact.low - hair).ceil(), (exact.high + hair).ceil()),
        "down" => ((exact.low - hair).floor(), (exact.high + hair).floor()),
        "nearest" => ((exact.low - hair).round(), (exact.high + hair).round()),
        _ => return Err(format!("rounded {how}?")),
    };
    if (least..=most).contains(&count) {
        Ok(())
    } else {
        Err(format!("{exact:?} rounded {how} is not {count}"))
    }
}

fn read(text: &str, comes_out: bool) -> Result<Span, String> {
    let spaced = text
        .replace('(', " ( ")
        .replace(')', " ) ")
        .replace('√', " √ ");
    let words: Vec<&str> = spaced.split_whitespace().collect();
    let mut reader = Reader {
        words: &words,
        comes_out,
    };
    let span = reader.sum()?;
    if reader.words.is_empty() {
        Ok(span)
    } else {
        Err(format!("{:?} is left over of {text}", reader.words))
    }
}

struct Reader<'a> {
    words: &'a [&'a str],
    comes_out: bool,
}

impl Reader<'_> {
    fn takes(&mut self, word: &str) -> bool {
        let there = self.words.first() == Some(&word);
        if there {
            self.words = &self.words[1..];
        }
        there
    }

    fn sum(&mut self) -> Result<Span, String> {
        let mut span = self.product()?;
        loop {
            if self.takes("+") {
                let more = self.product()?;
                span = Span {
                    low: span.low + more.low,
                    high: span.high + more.high,
                };
            } else if self.takes("-") {
                let less = self.product()?;
                span = Span {
                    low: span.low - less.high,
                    high: span.high - less.low,
                };
            } else {
                return Ok(span);
            }
        }
    }

    fn product(&mut self) -> Result<Span, String> {
        let mut span = self.part()?;
        loop {
            let ends = |one: Span, other: Span, of: fn(f64, f64) -> f64| {
                Span::of(&[
                    of(one.low, other.low),
                    of(one.low, other.high),
                    of(one.high, other.low),
                    of(one.high, other.high),
                ])
            };
            if self.takes("×") {
                span = ends(span, self.part()?, |one, other| one * other);
            } else if self.takes("/") {
                span = ends(span, self.part()?, |one, other| one / other);
            } else {
                return Ok(span);
            }
        }
    }

    fn part(&mut self) -> Result<Span, String> {
        if self.takes("√") {
            let of = self.part()?;
            return Ok(Span {
                low: of.low.max(0.0).sqrt(),
                high: of.high.sqrt(),
            });
        }
        if self.takes("(") {
            let inside = self.sum()?;
            return if self.takes(")") {
                Ok(inside)
            } else {
                Err("a bracket is not closed".to_owned())
            };
        }
        let (span, taken) = quantity(self.words, self.comes_out)
            .ok_or_else(|| format!("no quantity: {:?}", self.words))?;
        self.words = &self.words[taken..];
        Ok(span)
    }
}

/// The check itself: it takes what is right to the last figure and refuses what is one figure off.
#[test]
fn right_lines_pass_and_wrong_ones_do_not() {
    for right in [
        "2 × 1.07 m / 8 + 0.35 m = 0.62 m",
        "0.41 m + 2 × (1.07 m - 0.20 m) / 6 = 0.70 m",
        "√(1 + 1 / (6 × 6)) = 1.0138",
        "9.00 m / 0.90 m = 10, to the nearest: 10",
        "29.3 t / 10.0 t = 2.93, rounded up: 3",
        "13.3 t / (1 - 20 %) = 16.6 t",
        "3 ft 6 in / 6 × 2 + 1 ft 4 in = 2 ft 6 in",
        "GBP 240 + GBP 60.50 = GBP 300.50",
    ] {
        assert_eq!(check(right), Ok(()), "{right}");
    }
    for wrong in [
        "2 × 1.07 m / 8 + 0.35 m = 0.64 m",
        "0.41 m + 2 × (1.07 m - 0.20 m) / 6 = 0.72 m",
        "√(1 + 1 / (6 × 6)) = 1.0148",
        "9.00 m / 0.90 m = 10, to the nearest: 11",
        "29.3 t / 10.0 t = 2.93, rounded up: 2",
        "13.3 t / (1 - 20 %) = 17.0 t",
        "3 ft 6 in / 6 × 2 + 1 ft 4 in = 2 ft 7 in",
        "GBP 240 + GBP 60.50 = GBP 300.55",
        "1.07 m",
        "1.07 m + = 1.07 m",
        "(1.07 m = 1.07 m",
    ] {
        assert!(check(wrong).is_err(), "{wrong}");
    }
}
