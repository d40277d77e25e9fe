//! Lesson cards read and refused, and what becomes of an instructor's own.

use super::*;
use crate::Library;
use craft::quantity::Units;
use std::path::Path;

/// A sound card; the lines below count in it.
const SOUND: &str = r#"+++
id = "frost"
title = "Frost and stone"
kind = "lesson"
minutes = 15
before = "footing"
when = ["cold", "dark"]
drawings = ["section", "ice"]
aims = ["Know frost {50 mm} deep"]
show = [
  "A stone",
  "A split of {15 mm}",
]
kit = ["Bucket"]
hazards = ["eyes"]
mistakes = ["None"]
questions = [
  { ask = "How deep?", answer = "{height}" },
]
+++

Text of **one**

- list
"#;

fn read(text: &str) -> Result<Card, Error> {
    let library = Library::built_in().expect("sound");
    let names = Names {
        stages: &library.tables.stages,
        cautions: &library.tables.cautions,
        sketches: &["ice", "wedge"],
    };
    let file = Text::of(Path::new("frost.md"), text.to_owned());
    card(&file.with_plain_lines(), &names)
}

#[test]
fn a_card_is_read_with_all_that_is_in_it() {
    let card = read(SOUND).expect("sound");
    assert_eq!(card.when, [Applies::Cold, Applies::Dark]);
    assert_eq!(card.drawings, ["section", "ice"]);
    assert_eq!(card.text.len(), 2);
    let aim = card.aims[0].filled(Units::Imperial, |_| None);
    assert_eq!(aim, "Know frost 2\u{a0}in deep");
    let windows = format!("\u{FEFF}{}", SOUND.replace('\n', "\r\n"));
    assert_eq!(read(&windows).expect("sound"), card);
}

#[test]
fn what_is_not_said_of_a_card_is_as_usual() {
    let without = SOUND
        .replace("when = [\"cold\", \"dark\"]\n", "")
        .replace("drawings = [\"section\", \"ice\"]\n", "");
    let card = read(&without).expect("sound");
    assert_eq!(card.when, [Applies::Always]);
    assert!(card.drawings.is_empty());
    let asked = read(&SOUND.replace("[\"cold\", \"dark\"]", "[\"asked\"]")).expect("sound");
    assert!(asked.when.is_empty());
}

#[test]
fn a_broken_card_is_refused_at_its_line() {
    for (find, with, line, what) in [
        (
            "+++\nid",
            "id",
            1,
            "a lesson begins with its head between two lines of +++",
        ),
        ("]\n+++\n", "]\n", 1, "a lesson begins with its head"),
        (
            "id = \"frost\"",
            "id = \"ice\"",
            2,
            "a lesson's id is its file's name without .md",
        ),
        (
            "\"Frost and stone\"",
            "7",
            3,
            "invalid type: integer `7`, expected a string",
        ),
        (
            "kind = \"lesson\"",
            "kind = \"lession\"",
            4,
            "unknown variant `lession`, expected `lesson` or `safety`",
        ),
        (
            "minutes = 15",
            "minutes = -15",
            5,
            "invalid value: integer `-15`",
        ),
        ("minutes = 15\n", "", 2, "missing field `minutes`"),
        (
            "minutes = 15",
            "minutes = 600",
            5,
            "a lesson lasts from 5 minutes to 4 hours",
        ),
        (
            "\"footing\"",
            "\"foting\"",
            6,
            "there is no stage \"foting\"; did you mean \"footing\"? There are start, day, ",
        ),
        (
            "\"cold\"",
            "\"clod\"",
            7,
            "there is no condition \"clod\"; did you mean \"cold\"? There are always, ",
        ),
        (
            "[\"cold\", \"dark\"]",
            "[]",
            7,
            "an empty list would never be taught",
        ),
        (
            "[\"cold\", \"dark\"]",
            "[\"cold\", \"asked\"]",
            7,
            "\"asked\" stands alone",
        ),
        (
            "\"ice\"",
            "\"icce\"",
            8,
            "there is no drawing \"icce\"; did you mean \"ice\"? There are section, ",
        ),
        (
            "{50 mm}",
            "{50 mmm}",
            9,
            "{50 mmm} is neither a length nor a mass",
        ),
        ("{15 mm}", "{15 mm", 12, "a { without its }"),
        (
            "kit = [\"Bucket\"]",
            "kt = [\"Bucket\"]",
            14,
            "unknown field `kt`",
        ),
        (
            "[\"eyes\"]",
            "[\"eys\"]",
            15,
            "there is no caution \"eys\"; did you mean \"eyes\"?",
        ),
        (
            "answer = \"{height}\"",
            "answer = \"{hieght}\"",
            18,
            "there is no figure {hieght}",
        ),
        ("**one**", "**one** {two}", 22, "there is no figure {two}"),
        (
            "- list",
            "# list",
            24,
            "a heading other than ## has no place in a lesson",
        ),
    ] {
        assert_eq!(SOUND.matches(find).count(), 1, "{find}");
        let refused = read(&SOUND.replace(find, with)).expect_err(with);
        let Error::Refused(refusal) = refused else {
            panic!("another error: {refused}");
        };
        assert_eq!(refusal.line, line, "{with}: {refusal}");
        assert!(refusal.what.starts_with(what), "{with}: {refusal}");
    }
}

#[test]
fn the_built_in_cards_name_cautions_there_are() {
    let library = Library::built_in().expect("sound");
    assert!(library.faults.is_empty());
    let cautions = &library.tables.cautions;
    for card in library.cards.iter() {
        for hazard in &card.hazards {
            let known = cautions.iter().any(|caution| caution.id == *hazard);
            assert!(known, "{}: no caution \"{hazard}\"", card.id);
        }
    }
}

fn store(cards: &[(&str, &[u8])]) -> tempfile::TempDir {
    let store = tempfile::tempdir().expect("a folder");
    let folder = store.path().join("lessons/cards");
    std::fs::create_dir_all(&folder).expect("makes it");
    for (name, content) in cards {
        std::fs::write(folder.join(name), content).expect("writes");
    }
    store
}

#[test]
fn a_broken_card_of_ones_own_is_named_and_the_built_in_one_is_used() {
    let broken = SOUND
        .replace("\"footing\"", "\"foting\"")
        .replace("\"ice\"", "\"gauge\"");
    let copes = "+++\nid = \"copes\"\n+++\n";
    let store = store(&[
        ("frost.md", broken.as_bytes()),
        ("copes.md", copes.as_bytes()),
        ("throughs.md", b"+++\n\xff\n"),
    ]);
    let library = Library::with_store(store.path()).expect("used all the same");
    let built_in = Library::built_in().expect("sound");
    assert_eq!(library.cards, built_in.cards);
    assert_eq!(library.tables.lessons, built_in.tables.lessons);
    let said: Vec<String> = library.faults.iter().map(ToString::to_string).collect();
    let path = |name: &str| store.path().join("lessons/cards").join(name);
    let [copes, frost, throughs] = &said[..] else {
        panic!("{said:?}");
    };
    let begins = |name: &str, place: &str| format!("{}:{place}", path(name).display());
    assert!(
        copes.starts_with(&begins("copes.md", "2:1: missing field `title`")),
        "{copes}"
    );
    assert!(copes.ends_with("\nthe built-in lesson of this name is used until it is mended"));
    assert!(
        frost.starts_with(&begins("frost.md", "6:10: there is no stage \"foting\"")),
        "{frost}"
    );
    assert!(frost.ends_with("\nthis lesson is not there until it is mended"));
    assert!(
        throughs.starts_with(&begins("throughs.md", "1:1: can't be read")),
        "{throughs}"
    );
}

#[test]
fn a_sound_card_of_ones_own_counts_with_its_condition() {
    let sound = SOUND.replace("\"ice\"", "\"mine\"");
    let store = store(&[("frost.md", sound.as_bytes())]);
    let sketches = store.path().join("lessons/sketches");
    std::fs::create_dir_all(&sketches).expect("makes it");
    std::fs::write(sketches.join("mine.typ"), "#let words = \"Ice\"\n").expect("writes");
    let library = Library::with_store(store.path()).expect("sound");
    assert!(library.faults.is_empty(), "{:?}", library.faults);
    let mut lessons = library.tables.lessons.iter();
    let frost = lessons.find(|lesson| lesson.id == "frost").expect("there");
    assert_eq!(frost.when, [Applies::Cold, Applies::Dark]);
    assert!(library.pages.contains_key("sketches/mine.typ"));
}
