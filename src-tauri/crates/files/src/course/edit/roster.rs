//! A list of names taken into the course as its roster: those who are there already keep all that is
//! noted of them.

use super::tables::{put_in, take_out};
use super::{checked, parsed, put, text_value};
use crate::Fault;
use crate::roster::Named;
use std::collections::HashSet;
use toml_edit::{DocumentMut, Item, TableLike, Value};

/// The counts that a roster replaces.
const COUNTS: [&str; 3] = ["novices", "improvers", "experienced"];

/// The text with a list of people as its roster. Who is named there already stays where they are,
/// with their notes, and gets the experience of the list where that says one; `whole`: who is not
/// in the list goes.
///
/// # Errors
/// The [`Fault`] that the changed text would have, as where an absence names one who goes.
pub fn take_in_roster(text: &str, people: &[Named], whole: bool) -> Result<String, Fault> {
    let mut document = parsed(text)?;
    if whole {
        let stay: HashSet<&str> = people.iter().map(|it| it.name.as_str()).collect();
        let names = names(&document);
        for (at, _) in names
            .iter()
            .enumerate()
            .rev()
            .filter(|(_, it)| !stay.contains(it.as_str()))
        {
            take_out(&mut document, "student", at);
        }
    }
    let there = names(&document);
    for person in people {
        match there.iter().position(|it| *it == person.name) {
            Some(at) => set_experience(&mut document, at, person),
            None => {
                let mut keys = vec![("name", text_value(&person.name))];
                keys.extend(person.experience.map(|it| ("experience", Value::from(it))));
                put_in(&mut document, "student", None, &keys)?;
            }
        }
    }
    if let Some(group) = document.get_mut("group").and_then(Item::as_table_like_mut) {
        for count in COUNTS {
            group.remove(count);
        }
    }
    checked(document, text)
}

/// The names of the roster as they are written, in its order.
pub(crate) fn names_in(text: &str) -> Vec<(String, String)> {
    let Ok(document) = text.parse::<DocumentMut>() else {
        return Vec::new();
    };
    let word = |row: &dyn TableLike, key: &str| {
        let value = row.get(key).and_then(Item::as_str).unwrap_or_default();
        value.trim().to_owned()
    };
    let mut all = Vec::new();
    each(&document, |row| {
        all.push((word(row, "name"), word(row, "experience")))
    });
    all
}

fn names(document: &DocumentMut) -> Vec<String> {
    let mut all = Vec::new();
    each(document, |row| {
        let name = row.get("name").and_then(Item::as_str).unwrap_or_default();
        all.push(name.trim().to_owned());
    });
    all
}

fn each(document: &DocumentMut, mut tell: impl FnMut(&dyn TableLike)) {
    match document.get("student") {
        Some(Item::ArrayOfTables(rows)) => rows.iter().for_each(|row| tell(row)),
        Some(Item::Value(Value::Array(rows))) => {
            let rows = rows.iter().filter_map(Value::as_inline_table);
            rows.for_each(|row| tell(row));
        }
        _ => {}
    }
}

fn set_experience(document: &mut DocumentMut, at: usize, person: &Named) {
    let Some(word) = person.experience else {
        return;
    };
    let Some(item) = document.get_mut("student") else {
        return;
    };
    if let Some(row) = super::element(item, at) {
        let is = row
            .get("experience")
            .and_then(Item::as_str)
            .unwrap_or("novice");
        if is != word {
            put(row, "experience", word);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Library;
    use crate::course::{CourseFile, set};
    use crate::roster;

    fn named(pasted: &str) -> Vec<Named> {
        roster::read(&roster::cells(pasted)).expect("sound")
    }

    fn shown(text: &str) -> Vec<(String, String)> {
        names_in(text)
    }

    #[test]
    fn a_roster_replaces_the_counts_and_keeps_what_is_noted() {
        let text = Library::example(false);
        let first = take_in_roster(text, &named("Ann, improver\nBen"), true).expect("takes it in");
        assert_eq!(
            CourseFile::parse(&first)
                .expect("sound")
                .course
                .group
                .students
                .len(),
            2
        );
        assert!(!first.contains("novices ="), "{first}");
        let noted = set(&first, "student.0.gloves", "L").expect("notes it");
        let more =
            take_in_roster(&noted, &named("Cid, experienced\nAnn"), false).expect("takes it in");
        let pair = |name: &str, it: &str| (name.to_owned(), it.to_owned());
        assert_eq!(
            shown(&more),
            [
                pair("Ann", "improver"),
                pair("Ben", ""),
                pair("Cid", "experienced")
            ]
        );
        let whole = take_in_roster(&more, &named("Cid\nAnn, novice"), true).expect("takes it in");
        assert_eq!(
            shown(&whole),
            [pair("Ann", "novice"), pair("Cid", "experienced")]
        );
        assert!(whole.contains("gloves = \"L\""), "{whole}");
        assert_eq!(
            take_in_roster(&whole, &named("Ann\nCid"), true).expect("takes it in"),
            whole
        );
    }

    #[test]
    fn three_hundred_rows_go_in() {
        let rows: String = (0..300)
            .map(|at| format!("Person {at} 🧱\t{}\n", ["novice", "improver"][at % 2]))
            .collect();
        let text =
            take_in_roster(Library::example(false), &named(&rows), true).expect("takes it in");
        assert_eq!(
            CourseFile::parse(&text)
                .expect("sound")
                .course
                .group
                .students
                .len(),
            300
        );
    }

    #[test]
    fn someone_who_is_named_elsewhere_does_not_go() {
        let text =
            take_in_roster(Library::example(false), &named("Ann\nBen"), true).expect("takes it in");
        let away = crate::course::add_absence(&text).expect("away");
        assert!(take_in_roster(&away, &named("Ben"), true).is_err());
        assert!(take_in_roster(&away, &named("Cid"), false).is_ok());
    }
}
