//! Numbers in cells: counts and kilograms, and why a cell is neither.

use super::cells::Marks;
use super::faults::{Fault, quoted, shortened};
use crate::lots::{MOST_MASS_KG, MOST_OF_ONE};

/// A count: a whole number from 0 to [`MOST_OF_ONE`].
pub(super) fn count(text: &str, marks: Marks) -> Result<u32, Fault> {
    let (number, decimals) = plain(text, marks, "Write a whole number in digits, such as 6.")?;
    // A whole number with three noughts behind a mark is a thousand to some readers.
    if decimals == 3 && number.fract() == 0.0 {
        return Err(two_ways(text));
    }
    count_of(number)
}

/// A count from a number.
pub(super) fn count_of(number: f64) -> Result<u32, Fault> {
    not_negative(number)?;
    let absurd = || absurd(&number.to_string(), &MOST_OF_ONE.to_string());
    if f64::from(MOST_OF_ONE) < number {
        return Err(absurd());
    }
    if number.fract() != 0.0 {
        let what = format!("{number} is not a whole number");
        return Err(Fault::new("fraction", what, "Write whole ones only."));
    }
    // In range and whole, so what it is written as is a count.
    number.abs().to_string().parse().map_err(|_| absurd())
}

/// Kilograms, from 0 to [`MOST_MASS_KG`].
pub(super) fn kilograms(text: &str, marks: Marks) -> Result<f64, Fault> {
    let (number, _) = plain(text, marks, "Write kilograms in digits, such as 1.5.")?;
    kilograms_of(number)
}

/// Kilograms from a number.
pub(super) fn kilograms_of(number: f64) -> Result<f64, Fault> {
    not_negative(number)?;
    if number <= MOST_MASS_KG {
        // A minus before nothing is nothing.
        Ok(number.abs())
    } else {
        Err(absurd(&number.to_string(), &MOST_MASS_KG.to_string()))
    }
}

/// Minutes or pairs: any number from 0 up; whether it can be is for the pace book to say.
pub(super) fn amount(text: &str, marks: Marks, cure: &str) -> Result<f64, Fault> {
    let (number, _) = plain(text, marks, cure)?;
    not_negative(number)?;
    Ok(number.abs())
}

fn not_negative(number: f64) -> Result<(), Fault> {
    if number < 0.0 {
        let what = format!("{number} is less than nothing");
        return Err(Fault::new("negative", what, "Write 0 or more."));
    }
    Ok(())
}

fn absurd(number: &str, most: &str) -> Fault {
    let what = format!("{} is more than anybody has", shortened(number));
    let cure = format!("The most is {most}; look for a slip of the finger.");
    Fault::new("absurd", what, cure)
}

fn two_ways(text: &str) -> Fault {
    let what = format!("{} can be read in two ways", quoted(text));
    let digits: String = text.chars().filter(char::is_ascii_digit).collect();
    let cure = format!("Write {digits} without a mark, or fewer digits behind it.");
    Fault::new("two-ways", what, cure)
}

/// The number, and how many digits stand behind its mark.
fn plain(text: &str, marks: Marks, cure: &str) -> Result<(f64, usize), Fault> {
    let text = text.trim();
    let refuse = || {
        Fault::new(
            "not-a-number",
            format!("{} is not a number", quoted(text)),
            cure,
        )
    };
    let unsigned = text.strip_prefix(['-', '\u{2212}']);
    let (whole, mark, behind) = split(unsigned.unwrap_or(text)).ok_or_else(refuse)?;
    let grouped = behind.len() == 3 && !whole.trim_start_matches('0').is_empty();
    match (mark, marks) {
        (Some(','), Marks::Point) if grouped => return Err(two_ways(text)),
        (Some(','), Marks::Point) => {
            let cure = format!("Write it with a point: {whole}.{behind}.");
            return Err(Fault { cure, ..refuse() });
        }
        (Some('.'), Marks::Comma) | (Some(_), Marks::Either) if grouped => {
            return Err(two_ways(text));
        }
        _ => {}
    }
    let number: f64 = format!("{whole}.{behind}0").parse().map_err(|_| refuse())?;
    if number.is_infinite() {
        return Err(absurd(text, &MOST_OF_ONE.to_string()));
    }
    let signed = if unsigned.is_some() { -number } else { number };
    Ok((signed, behind.len()))
}

/// Digits before a mark, the mark, digits behind it; nothing else.
fn split(text: &str) -> Option<(&str, Option<char>, &str)> {
    let digits = |text: &str| text.bytes().all(|b| b.is_ascii_digit());
    let (whole, mark, behind) = match text.find(['.', ',']) {
        Some(at) => (&text[..at], text[at..].chars().next(), &text[at + 1..]),
        None => (text, None, ""),
    };
    let any = !whole.is_empty() || !behind.is_empty();
    (any && digits(whole) && digits(behind)).then_some((whole, mark, behind))
}
