//! Names that are hard on a page: marks of the typesetter, other letters, very long ones.

use super::look::every_document;
use super::words::has_its_words;
use checks::courses::{library, parsed, plain, planned};
use checks::paper::letters;
use craft::kit::Held;
use documents::{Course, DOCUMENTS, FromStore};
use files::Library;
use files::course::set;

/// As typed. None may act, and each must be printed as it is.
const NAMES: [&str; 12] = [
    "#read(\"/etc/passwd\")",
    "* _ $ @ref <label> \\",
    "// -- ... ~ `code` [x] {y}",
    "\"Double\" and 'single'",
    "#panic() #import \"look.typ\": *",
    "Δημήτρης Παπαδόπουλος",
    "Müller-Łukasz Ødegård",
    "Києва Ґанна",
    "<script>alert(1)</script> &amp;",
    "Centre Metre-Grey",
    "= Heading + 1. list / term: x",
    "½ ≤ √ → ✓ 1/2",
];

/// A name of 400 characters, in words and in one piece.
fn long_names() -> [String; 2] {
    let words = "Ambrosius Bartholomew Crispin ".repeat(14);
    [words[..400].trim_end().to_owned(), "W".repeat(400)]
}

/// A text as TOML writes it.
fn quoted(text: &str) -> String {
    format!("\"{}\"", text.replace('\\', "\\\\").replace('"', "\\\""))
}

fn with_roster(text: &str, names: &[String]) -> String {
    let roster: String = names
        .iter()
        .map(|name| format!("[[student]]\nname = {}\n", quoted(name)))
        .collect();
    format!("{text}\n{roster}")
}

fn names() -> Vec<String> {
    NAMES
        .iter()
        .map(|name| (*name).to_owned())
        .chain(long_names())
        .collect()
}

/// Prints the course; each name stands as typed wherever students are named.
fn prints_as_typed(text: &str) {
    let course = planned(&with_roster(text, &names()));
    every_document(&course, |document, printed, paper| {
        let lost = &printed.unprintable;
        assert!(lost.is_empty(), "{}: {lost:?}", document.name);
        has_its_words(&course, document, paper);
        let there = paper.letters();
        if ["run-sheet", "worksheets", "worksheets-key"].contains(&document.name) {
            for name in names() {
                assert!(
                    there.contains(&letters(&name)),
                    "{}: no {name}",
                    document.name
                );
            }
        }
    });
}

#[test]
fn awkward_names_stand_as_they_were_typed() {
    prints_as_typed(&plain());
}

/// The program's own words are respelled for America; what a person typed never is.
#[test]
fn awkward_names_stand_as_they_were_typed_in_america() {
    prints_as_typed(Library::example(true));
}

/// Titles, places and breaks: all the awkward names at once, a long one, one in one piece.
#[test]
fn awkward_titles_places_and_breaks_stand_as_they_were_typed() {
    let [words, piece] = long_names();
    for typed in [NAMES.join(" | "), words, piece] {
        let mut text = plain();
        for key in ["title", "venue.name", "day.0.breaks.0.name"] {
            text = set(&text, key, &typed).unwrap_or_else(|fault| panic!("{key}: {fault:?}"));
        }
        let course = planned(&text);
        every_document(&course, |document, _, paper| {
            let there = paper.letters();
            assert!(
                there.contains(&letters(&typed)),
                "{}: no {typed}",
                document.name
            );
        });
    }
}

/// Vehicles, tools of one's own and those who lend them: on the pages that name them.
#[test]
fn awkward_vehicles_tools_and_owners_stand_as_they_were_typed() {
    let [words, piece] = long_names();
    for typed in [NAMES.join(" | "), words, piece] {
        let name = quoted(&typed);
        let more = format!(
            "[[vehicle]]\nname = {name}\npayload = \"150 kg\"\n\
             [[kit.rule]]\nitem = {name}\nper = \"group\"\neach = 1\n"
        );
        let held = [Held {
            owners: vec![typed.clone()],
            ..Held::counted("Spade", 2)
        }];
        let file = parsed(&(plain() + &more));
        let store = FromStore {
            held: held.to_vec(),
            ..FromStore::default()
        };
        let course = Course::plan_with(file, library(), store).expect("a plan");
        every_document(&course, |document, _, paper| {
            let times = match document.name {
                // The vehicle above its lines and among the others, the tool, the owner.
                "load-list" => 4,
                "return-list" => 2,
                _ => return,
            };
            let there = paper.letters().matches(&letters(&typed)).count();
            assert!(times <= there, "{}: {there} times {typed}", document.name);
        });
    }
}

/// What no font holds is told, once, and a sign stands in its place.
#[test]
fn signs_that_no_font_holds_are_told() {
    let names = ["Zoë 🧱", "石 wall", "🧱 again"].map(str::to_owned);
    let course = planned(&with_roster(&plain(), &names));
    every_document(&course, |document, printed, paper| {
        if ["run-sheet", "worksheets", "worksheets-key"].contains(&document.name) {
            let mut told = printed.unprintable.clone();
            told.sort_unstable();
            assert_eq!(told, ['石', '🧱'], "{}", document.name);
            let there = paper.letters();
            for name in ["Zoë▯", "▯wall", "▯again"] {
                assert!(there.contains(name), "{}: no {name}", document.name);
            }
        }
    });
}

#[test]
fn the_title_of_a_window_is_that_of_the_document() {
    let course = planned(&plain());
    let mut titles = Vec::new();
    every_document(&course, |_, _, paper| titles.push(paper.title()));
    for (title, document) in titles.iter().zip(DOCUMENTS) {
        assert!(title.contains("Plain course"), "{}: {title}", document.name);
    }
    titles.sort();
    titles.dedup();
    assert_eq!(
        titles.len(),
        DOCUMENTS.len(),
        "two documents have one title"
    );
}
