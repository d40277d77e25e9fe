//! Checks on whole sheets: complete, alike for ever, unlike a neighbour's, and right.

use super::*;
use crate::quantity::{FOOT_M, INCH_M, SHORT_TON_KG, Units};
use proptest::prelude::*;

const BOTH: [Units; 2] = [Units::Metric, Units::Imperial];

fn sheets(units: Units, seed: u64, students: usize) -> Vec<Vec<Question>> {
    let (course, tables) = (sample::course(units, seed), sample::tables());
    (0..students)
        .map(|student| sheet(&course, &tables, student))
        .collect()
}

/// The numbers of a text in order: `3 ft 6 1/2 in` has 3, 6, 1 and 2.
fn numbers(text: &str) -> Vec<&str> {
    text.split(|letter: char| !letter.is_ascii_digit() && letter != '.')
        .map(|number| number.trim_matches('.'))
        .filter(|number| !number.is_empty())
        .collect()
}

/// The first quantity of an answer, read as a person reads it, in SI or as a count.
fn read(answer: &str) -> f64 {
    let first = answer.split([';', ',']).next().unwrap_or_default();
    let (mut sum, mut number) = (0.0, 0.0);
    for word in first.split(' ') {
        let factor = match word {
            "m" | "frames" | "throughs" => 1.0,
            "ft" => FOOT_M,
            "in" => INCH_M,
            "t" => 1000.0,
            "short" => SHORT_TON_KG,
            "tons" => continue,
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
fn allowed(tolerance: &str) -> f64 {
    match tolerance.split(';').next().unwrap_or_default() {
        "exact" => 0.0,
        "within 0.01 m" => 0.01,
        "within 1/4 in" => INCH_M / 4.0,
        "within 0.2 t" => 200.0,
        "within 0.2 short tons" => 0.2 * SHORT_TON_KG,
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
    ] {
        assert!((read(answer) - si).abs() < 1e-9, "{answer}");
    }
}

#[test]
fn a_sheet_has_one_question_of_each_kind_in_order() {
    for units in BOTH {
        for sheet in sheets(units, 11, 200) {
            let kinds: Vec<Kind> = sheet.iter().map(|question| question.kind).collect();
            assert_eq!(kinds, Kind::ALL);
        }
    }
}

#[test]
fn codes_and_titles_are_all_different() {
    for name in [Kind::code, Kind::title] {
        let mut names = Kind::ALL.map(name).to_vec();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), Kind::ALL.len());
    }
}

#[test]
fn the_printed_answer_is_the_value_within_half_its_tolerance() {
    for units in BOTH {
        for question in sheets(units, 7, 200).concat() {
            if question.kind == Kind::OrderOfWork {
                continue;
            }
            let off = (read(&question.answer) - question.value).abs();
            // Half, so that whoever rounds as the key does is right on either side of it.
            let half = allowed(&question.tolerance) / 2.0;
            assert!(
                off <= half + 1e-9,
                "{}\n{} is off by {off}",
                question.ask,
                question.answer
            );
        }
    }
}

#[test]
fn widths_come_out_without_rounding() {
    const EVEN: [Kind; 3] = [Kind::BaseWidth, Kind::WidthAtString, Kind::GaugeOffset];
    for units in BOTH {
        let all = sheets(units, 3, 200).concat();
        for question in all.iter().filter(|question| EVEN.contains(&question.kind)) {
            let off = (read(&question.answer) - question.value).abs();
            assert!(off < 1e-9, "{}: off by {off}", question.ask);
        }
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

#[test]
fn no_question_gives_its_answer_away() {
    for units in BOTH {
        for question in sheets(units, 21, 400).concat() {
            for part in question.answer.split([';', ',']) {
                let bar = part.trim().strip_prefix("take ");
                // Which bar to take is chosen from those in the question.
                assert!(
                    bar.is_some() || !mentions(&question.ask, part.trim()),
                    "{} gives away {part}",
                    question.ask
                );
            }
        }
    }
}

#[test]
fn the_working_arrives_at_the_answer() {
    for units in BOTH {
        for question in sheets(units, 4, 200).concat() {
            for part in question.answer.split([';', ',']) {
                let part = part.trim().trim_start_matches("take ");
                // Counts are worked out as bare numbers.
                let number = part.trim_end_matches(char::is_alphabetic).trim();
                let arrived = question.working.contains(part)
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
                assert!(arrived || letters == part, "{}\n{part}", question.working);
            }
        }
    }
}

#[test]
fn only_an_order_has_choices() {
    for question in sheets(Units::Metric, 9, 50).concat() {
        assert_eq!(
            question.choices.is_empty(),
            question.kind != Kind::OrderOfWork
        );
    }
}

#[test]
fn students_and_seeds_make_a_difference() {
    let sheets_of_one = sheets(Units::Metric, 1, 40);
    for (at, sheet) in sheets_of_one.iter().enumerate() {
        assert!(!sheets_of_one[..at].contains(sheet), "student {at}");
    }
    assert_ne!(sheets_of_one, sheets(Units::Metric, 2, 40));
    assert_eq!(sheets_of_one, sheets(Units::Metric, 1, 40));
}

/// Every second wall, gauge and line is enough for a whole group to be asked about.
#[test]
fn a_group_is_not_asked_the_same_few_questions() {
    for units in BOTH {
        let group = sheets(units, 6, 20);
        for at in 0..Kind::ALL.len() {
            let mut asked: Vec<String> = group
                .iter()
                .map(|sheet| format!("{}{:?}", sheet[at].ask, sheet[at].choices))
                .collect();
            asked.sort();
            asked.dedup();
            assert!(
                8 <= asked.len(),
                "{units:?} {:?}: {}",
                Kind::ALL[at],
                asked.len()
            );
        }
    }
}

proptest! {
    #[test]
    fn neighbours_never_hold_the_same_numbers(
        seed in any::<u64>(),
        student in 0_usize..10_000,
        imperial in any::<bool>(),
    ) {
        let course = sample::course(if imperial { Units::Imperial } else { Units::Metric }, seed);
        let tables = sample::tables();
        let mine = sheet(&course, &tables, student);
        let next = sheet(&course, &tables, student + 1);
        prop_assert_eq!(mine.len(), Kind::ALL.len());
        prop_assert_eq!(next.len(), Kind::ALL.len());
        for (mine, next) in mine.iter().zip(&next) {
            if mine.kind != Kind::OrderOfWork {
                prop_assert_ne!(numbers(&mine.ask), numbers(&next.ask), "{:?}", mine.kind);
            }
            if mine.kind == Kind::FramesAndBars {
                prop_assert_ne!(&mine.answer, &next.answer);
            }
        }
    }

    /// What a course is about to build has no say in its sheets.
    #[test]
    fn a_question_does_not_depend_on_the_others_or_on_the_wall(
        seed in any::<u64>(),
        student in 0_usize..10_000,
    ) {
        let (course, tables) = (sample::course(Units::Metric, seed), sample::tables());
        let mut other = course.clone();
        other.wall.line.clear();
        other.wall.height = crate::quantity::metres(1.4);
        other.frames.spacing = crate::quantity::metres(1.0);
        for one in sheet(&course, &tables, student) {
            prop_assert_eq!(question(one.kind, &other, &tables, student), Some(one));
        }
    }
}

/// A sheet as text: title, question, what is to be ordered, answer.
fn as_text(sheet: &[Question]) -> String {
    let mut text = String::new();
    for question in sheet {
        text += &format!("{}: {}\n", question.kind.title(), question.ask);
        for choice in &question.choices {
            text += &format!("- {choice}\n");
        }
        text += &format!("= {}\n\n", question.answer);
    }
    text
}

/// A key printed months after the sheets must still answer them, and so must a key printed
/// by the next version of the program. The numbers hang on the order of the draws and on
/// every list drawn from: when one changes, nothing else would notice.
#[test]
fn a_sheet_is_the_same_for_ever() {
    let metric = as_text(&sheets(Units::Metric, 20_270_424, 4)[3]);
    let imperial = as_text(&sheets(Units::Imperial, 20_270_424, 5)[4]);
    assert_eq!(format!("{metric}{imperial}"), include_str!("pinned.txt"));
}
