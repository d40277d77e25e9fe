//! Checks on answers: read as a person reads them they are the value, and the working gets there.

use super::*;
use crate::quantity::{FOOT_M, INCH_M, SHORT_TON_KG};

/// Kinds whose answers are no quantities.
const IN_WORDS: [Kind; 6] = [
    Kind::OrderOfWork,
    Kind::NameTheParts,
    Kind::HazardAndControl,
    Kind::FindTheFault,
    Kind::OnePersonLift,
    Kind::Leapfrog,
];

/// The first quantity of an answer, read as a person reads it, in SI or as a count.
fn read(answer: &str) -> f64 {
    let first = answer.split([';', ',']).next().unwrap_or_default();
    if let Some(n) = first.strip_prefix("1 in ") {
        return n.parse().expect("a number");
    }
    let (mut sum, mut number) = (0.0, 0.0);
    for word in first.split(' ') {
        let factor = match word {
            "m" | "frames" | "throughs" => 1.0,
            "ft" => FOOT_M,
            "in" => INCH_M,
            "t" => 1000.0,
            "short" => SHORT_TON_KG,
            "tons" | "rise" | "offset" | "station" | "left" | "right" | "left:" | "apart" => {
                continue;
            }
            part => {
                let (top, bottom) = part.split_once('/').unwrap_or((part, "1"));
                let parsed = |text: &str| text.parse::<f64>().expect("a number or a known unit");
                number += parsed(top) / parsed(bottom);
                continue;
            }
        };
        sum += number * factor;
        number = 0.0;
    }
    sum
}

/// The tolerance in SI; nothing where the answer must be exact.
fn allowed(question: &Question) -> f64 {
    match question.tolerance.split(';').next().unwrap_or_default() {
        // A table holds marks to the millimetre or the sixteenth of an inch.
        "exact" if question.kind == Kind::ReadTheTable => INCH_M / 16.0,
        "exact" => 0.0,
        "within 1 cm (3/8 in)" => 0.01,
        "within 1/4 in (6 mm)" => INCH_M / 4.0,
        "within 0.2 t (0.2 short tons)" => 200.0,
        "within 0.2 short tons (0.2 t)" => 0.2 * SHORT_TON_KG,
        other => panic!("no such tolerance: {other}"),
    }
}

#[test]
fn answers_are_read_as_a_person_reads_them() {
    for (answer, si) in [
        ("0.80 m", 0.8),
        ("2 ft 6 1/4 in", 30.25 * INCH_M),
        ("7 7/8 in", 7.875 * INCH_M),
        ("5 ft 6 5/8 in; take 6 ft", 66.625 * INCH_M),
        ("5 frames, 10 bars", 5.0),
        ("10.1 t", 10_100.0),
        ("2 short tons", 2.0 * SHORT_TON_KG),
        ("1 in 6.5", 6.5),
        ("left: rise 1.26 m, offset 0.41 m; right: ..", 1.26),
        ("3.00 m apart; 0.41 m wide", 3.0),
    ] {
        assert!((read(answer) - si).abs() < 1e-9, "{answer}");
    }
}

#[test]
fn the_printed_answer_is_the_value_within_half_its_tolerance() {
    for question in all_questions(7, 200) {
        if IN_WORDS.contains(&question.kind) {
            continue;
        }
        let off = (read(&question.answer) - question.value).abs();
        // Half, so that whoever rounds as the key does is right on either side of it.
        let half = allowed(&question) / 2.0;
        assert!(
            off <= half + 1e-9,
            "{}\n{} is off by {off}",
            question.ask,
            question.answer
        );
    }
}

#[test]
fn widths_come_out_without_rounding_but_at_the_hardest_level() {
    const EVEN: [Kind; 3] = [Kind::BaseWidth, Kind::WidthAtString, Kind::GaugeOffset];
    for units in BOTH {
        for level in [Level::Easy, Level::Usual] {
            let world = World::new(units, 3, level);
            for student in 0..200 {
                for kind in EVEN {
                    let question = question(kind, &world.asked(), student).expect("a question");
                    let off = (read(&question.answer) - question.value).abs();
                    assert!(off < 1e-9, "{}: off by {off}", question.ask);
                }
            }
        }
    }
}

/// What a course can meet: nothing answered is absurd.
#[test]
fn answers_lie_in_usual_ranges() {
    for question in all_questions(29, 200) {
        let usual = match question.kind {
            Kind::BaseWidth => 0.44..1.1,
            Kind::WidthAtString => 0.3..1.0,
            Kind::GaugeOffset => 0.03..0.3,
            Kind::FramesAndBars => 3.0..11.0,
            Kind::BarLength => 1.2..2.4,
            Kind::Tonnes => 1500.0..30_000.0,
            Kind::ThroughsAndCopes => 3.0..30.0,
            Kind::Batter => 5.0..12.1,
            Kind::UnevenGround => 0.9..1.9,
            Kind::Squareness => 0.7..5.0,
            Kind::OnePersonLift => 0.5..130.0,
            Kind::ReadTheTable => 0.2..6.1,
            _ => continue,
        };
        assert!(
            usual.contains(&question.value),
            "{}\n{}",
            question.ask,
            question.answer
        );
    }
}

/// Whether a text holds this quantity; `3 ft 4 in` holds neither `3 ft` nor `4 in`.
fn mentions(text: &str, quantity: &str) -> bool {
    text.match_indices(quantity).any(|(at, _)| {
        let (before, after) = (&text[..at], &text[at + quantity.len()..]);
        let goes_before =
            before.ends_with("ft ") || before.ends_with(|c: char| c.is_numeric() || c == '.');
        let goes_on = quantity.ends_with("ft")
            && after
                .strip_prefix(' ')
                .is_some_and(|rest| rest.starts_with(char::is_numeric));
        !goes_before && !goes_on
    })
}

#[test]
fn a_quantity_is_found_whole() {
    assert!(mentions("is 0.60 m up. How", "0.60 m"));
    assert!(mentions("4 ft high and 1 ft 4 in wide", "4 ft"));
    assert!(mentions("is 6 in wide", "6 in"));
    assert!(!mentions("is 10.60 m up", "0.60 m"));
    assert!(!mentions("is 3 ft 4 in long", "4 in"));
    assert!(!mentions("is 3 ft 4 in long", "3 ft"));
}

/// The figure of a part of an answer: `rise 1.20 m` is `1.20 m`, `0.68 m long` too.
fn figure(part: &str) -> &str {
    let part = part.trim();
    let Some(at) = part.find(|letter: char| letter.is_ascii_digit()) else {
        return part;
    };
    part[at..]
        .trim_end_matches(" long")
        .trim_end_matches(" apart")
        .trim_end_matches(" wide")
}

#[test]
fn no_question_gives_its_answer_away() {
    for question in all_questions(21, 200) {
        if question.answer.is_empty() {
            continue;
        }
        for part in question.answer.split([';', ',']) {
            // Which bar to take is chosen from those in the question.
            let bar = part.trim().starts_with("take ");
            assert!(
                bar || !mentions(&question.ask, figure(part)),
                "{} gives away {part}",
                question.ask
            );
        }
    }
}

#[test]
fn the_working_arrives_at_the_answer() {
    for question in all_questions(4, 200) {
        if [Kind::HazardAndControl, Kind::NameTheParts].contains(&question.kind) {
            continue;
        }
        for part in question.answer.split([';', ',']) {
            let figure = figure(part);
            // Counts are worked out as bare numbers.
            let number = figure.trim_end_matches(char::is_alphabetic).trim();
            let arrived = question.working.contains(figure)
                || question.working.lines().any(|line| {
                    line.ends_with(&format!("= {number}"))
                        || line.ends_with(&format!("so {number}"))
                });
            let letters: String = question
                .working
                .lines()
                .filter_map(|line| line.split(' ').next())
                .collect::<Vec<_>>()
                .join(" ");
            assert!(
                arrived || letters == part.trim(),
                "{}\n{part}",
                question.working
            );
        }
    }
}

/// A figure of a sum in metres or inches, without what follows it.
fn figure_of_sum(text: &str) -> Option<f64> {
    let words: Vec<&str> = text.trim().split(", ").next()?.split(' ').collect();
    let part = |text: &str| -> Option<f64> {
        let (top, bottom) = text.split_once('/').unwrap_or((text, "1"));
        Some(top.parse::<f64>().ok()? / bottom.parse::<f64>().ok()?)
    };
    match words.as_slice() {
        [metres, "m"] => part(metres),
        [inches @ .., "in"] => {
            let (feet, inches) = match inches {
                [feet, "ft", inches @ ..] => (part(feet)?, inches),
                inches => (0.0, inches),
            };
            let inches: Option<f64> = inches.iter().map(|one| part(one)).sum();
            Some(12.0 * feet + inches?)
        }
        [feet, "ft"] => Some(12.0 * part(feet)?),
        _ => None,
    }
}

/// Sums and differences of two figures add up as they are printed: a student has no others.
#[test]
fn printed_sums_add_up() {
    let mut sums = 0;
    for question in all_questions(31, 200) {
        for line in question.working.lines() {
            let parts: Vec<&str> = line.split(" = ").collect();
            let [.., sum, total] = parts.as_slice() else {
                continue;
            };
            let (terms, sign) = match (sum.split_once(" + "), sum.split_once(" − ")) {
                (Some(terms), None) => (terms, 1.0),
                (None, Some(terms)) => (terms, -1.0),
                _ => continue,
            };
            let figures = [terms.0, terms.1, total].map(figure_of_sum);
            let [Some(one), Some(other), Some(total)] = figures else {
                continue;
            };
            assert!((one + sign * other - total).abs() < 1e-6, "{line}");
            sums += 1;
        }
    }
    assert!(1000 < sums, "only {sums} sums were read");
}
