//! Files that nobody meant: random bytes, and courses with something random done to them.

use checks::courses::{library, plain};
use files::course::{CourseFile, set, values};
use files::{Library, quantity};
use proptest::prelude::*;

/// Reads a text, and plans it if it is understood. A fault must lie within the text.
fn survives(text: &str) -> Result<(), TestCaseError> {
    let fault = match CourseFile::parse(text) {
        Ok(file) => match documents::Course::plan(file, library()) {
            Ok(course) => {
                serde_json::to_string(&course.numbers()).expect("a plan is JSON");
                return Ok(());
            }
            Err(fault) => fault,
        },
        Err(fault) => fault,
    };
    prop_assert!(fault.at <= text.len(), "{fault:?}");
    prop_assert!(
        !fault.what.is_empty() && !fault.cure.is_empty(),
        "{fault:?}"
    );
    prop_assert!(
        !fault.what.contains('\n'),
        "two lines where one is due: {fault:?}"
    );
    let refusal = fault.in_file("course.walling", text);
    prop_assert!(1 <= refusal.line && refusal.line <= text.matches('\n').count() + 1);
    Ok(())
}

/// Values that someone might write where something else belongs.
const VALUES: [&str; 30] = [
    "0",
    "-1",
    "1",
    "7",
    "0.5",
    "1e308",
    "-0.0",
    "nan",
    "inf",
    "-inf",
    "true",
    "\"\"",
    "\"m\"",
    "\"0 m\"",
    "\"0.3 m\"",
    "\"1e9 m\"",
    "\"400 m\"",
    "\"9999999999999999 t\"",
    "\"auto\"",
    "\"plumb\"",
    "[]",
    "[[]]",
    "{}",
    "[ {} ]",
    "2027-04-24",
    "09:00:00",
    "23:59:59",
    "9999-12-31",
    "\"\\u0000\"",
    "9223372036854775807",
];

/// One thing done to a text.
#[derive(Debug, Clone)]
enum Blow {
    /// The value on a line becomes another.
    Value(usize, usize),
    /// A line goes.
    Without(usize),
    /// A line is there twice, the second time somewhere else.
    Again(usize, usize),
    /// A character comes in.
    Letter(usize, char),
    /// The text ends early.
    Cut(usize),
}

fn blow() -> impl Strategy<Value = Blow> {
    let line = 0..100_usize;
    prop_oneof![
        4 => (line.clone(), 0..VALUES.len()).prop_map(|(line, value)| Blow::Value(line, value)),
        2 => line.clone().prop_map(Blow::Without),
        2 => (line.clone(), line).prop_map(|(from, to)| Blow::Again(from, to)),
        2 => (0..4000_usize, any::<char>()).prop_map(|(at, letter)| Blow::Letter(at, letter)),
        1 => (0..4000_usize).prop_map(Blow::Cut),
    ]
}

fn struck(text: &str, blow: &Blow) -> String {
    let mut lines: Vec<String> = text.lines().map(str::to_owned).collect();
    let count = lines.len().max(1);
    let boundary = |at: usize| {
        let at = at % (text.len() + 1);
        (0..=at)
            .rev()
            .find(|at| text.is_char_boundary(*at))
            .unwrap_or(0)
    };
    match *blow {
        Blow::Value(line, value) => {
            let Some(line) = lines.get_mut(line % count) else {
                return text.to_owned();
            };
            let key = line.split_once('=').map(|(key, _)| key.to_owned());
            *line = key.map_or(line.clone(), |key| format!("{key}= {}", VALUES[value]));
        }
        Blow::Without(line) if !lines.is_empty() => {
            lines.remove(line % count);
        }
        Blow::Again(from, to) if !lines.is_empty() => {
            let line = lines[from % count].clone();
            lines.insert(to % count, line);
        }
        Blow::Letter(at, letter) => {
            let (before, after) = text.split_at(boundary(at));
            return format!("{before}{letter}{after}");
        }
        Blow::Cut(at) => return text[..boundary(at)].to_owned(),
        Blow::Without(_) | Blow::Again(..) => {}
    }
    lines.join("\n")
}

proptest! {
    #![proptest_config(checks::cases(400))]

    #[test]
    fn a_course_struck_at_random_is_understood_or_refused(
        blows in prop::collection::vec(blow(), 1..4),
        which in 0..3_usize,
    ) {
        let text = match which {
            0 => plain(),
            1 => Library::example(false).to_owned(),
            _ => Library::example(true).to_owned(),
        };
        let text = blows.iter().fold(text, |text, blow| struck(&text, blow));
        survives(&text)?;
    }

    #[test]
    fn any_text_is_understood_or_refused(text in any::<String>()) {
        survives(&text)?;
    }

    #[test]
    fn anything_typed_is_taken_or_refused(
        key in 0..60_usize,
        typed in prop_oneof![any::<String>(), "[0-9.,' \"a-z/-]{0,12}"],
    ) {
        let text = plain();
        let values = values(&text);
        let key = values.keys().nth(key % values.len()).expect("a key");
        if let Ok(edited) = set(&text, key, &typed) {
            prop_assert!(CourseFile::parse(&edited).is_ok(), "{key} = {typed}");
        }
        let _ = set(&text, &typed, "1 m");
    }

    #[test]
    fn any_text_is_a_quantity_or_refused(text in "[-−0-9./ '\"′″a-z³]{0,16}") {
        for read in [
            quantity::length(&text).map(|it| it.value),
            quantity::mass(&text).map(|it| it.value),
            quantity::density(&text).map(|it| it.value),
        ] {
            match read {
                Ok(value) => prop_assert!(value.is_finite(), "{text}: {value}"),
                Err(wrong) => prop_assert!(!wrong.what.is_empty() && !wrong.cure.is_empty()),
            }
        }
    }
}

proptest! {
    #![proptest_config(checks::cases(64))]

    #[test]
    fn any_bytes_are_understood_or_refused(bytes in prop::collection::vec(any::<u8>(), 0..300)) {
        let folder = tempfile::tempdir().expect("a folder");
        let path = folder.path().join("course.walling");
        std::fs::write(&path, &bytes).expect("written");
        let refused = CourseFile::open(&path).expect_err("random bytes are no course");
        let said = refused.to_string();
        prop_assert!(said.starts_with(&path.display().to_string()), "{said}");
        prop_assert_eq!(std::fs::read(&path).expect("still there"), bytes);
    }
}
