//! Editing a course as text: one value changes, and everything else stays to the letter.

use checks::courses::{parsed, plain};
use files::Library;
use files::course::{add_day, remove_day, set, values};

/// The lines in which two texts differ, as (old, new).
fn changes(old: &str, new: &str) -> Vec<(String, String)> {
    assert_eq!(old.lines().count(), new.lines().count(), "{new}");
    old.lines()
        .zip(new.lines())
        .filter(|(old, new)| old != new)
        .map(|(old, new)| (old.to_owned(), new.to_owned()))
        .collect()
}

#[test]
fn one_value_changes_and_its_comment_stays() {
    let example = Library::example(false);
    for (key, typed, line) in [
        ("wall.height", "1.2 m", "height = \"1.2 m\""),
        ("wall.batter", "7.5", "batter = 7.5"),
        ("group.novices", "9", "novices = 9"),
        ("wall.length", "9 m", "length = \"9 m\""),
        (
            "wall.ends.finish",
            "raked",
            "ends = { start = \"head\", finish = \"raked\" }",
        ),
        ("frames.leapfrog", "true", "leapfrog = true"),
        ("stone.voids", "0.3", "voids = 0.3"),
        ("day.0.start", "08:30", "start = 08:30:00"),
        ("pace.chance", "0.9", "chance = 0.9"),
    ] {
        let edited = set(example, key, typed).unwrap_or_else(|fault| panic!("{key}: {fault:?}"));
        let changes = changes(example, &edited);
        assert_eq!(changes.len(), 1, "{key}: {changes:?}");
        let (old, new) = &changes[0];
        assert!(new.starts_with(line), "{key}: {new}");
        let comment = |line: &str| line.split_once('#').map(|(_, words)| words.to_owned());
        assert_eq!(comment(old), comment(new), "{key}");
    }
}

#[test]
fn what_was_typed_is_kept_as_typed() {
    for typed in ["3'6\"", "42 1/2 in", "3 ft 6 in", ".9 m", "1070 mm"] {
        let edited = set(&plain(), "wall.height", typed).expect("a height");
        assert_eq!(values(&edited)["wall.height"], typed);
    }
    let title = "A \"quoted\" title \\ with # and ünïcode";
    let edited = set(&plain(), "title", title).expect("a title");
    assert_eq!(parsed(&edited).course.title, title);
}

#[test]
fn a_value_set_back_gives_the_old_text() {
    for text in [plain(), Library::example(true).to_owned()] {
        for (key, typed) in [
            ("wall.height", "1.4 m"),
            ("wall.batter", "9"),
            ("venue.name", "Elsewhere"),
            ("group.instructors", "3"),
            ("frames.spacing_straight", "2 m"),
            ("stone.waste", "0.25"),
            ("day.0.finish", "16:45"),
            ("wall.through_size.width", "250 mm"),
            ("wall.footing.depth", "0.2 m"),
        ] {
            let old = values(&text)[key].clone();
            let there = set(&text, key, typed).expect(key);
            assert_ne!(there, text, "{key}");
            assert_eq!(set(&there, key, &old).expect(key), text, "{key}");
        }
    }
}

#[test]
fn every_value_set_to_itself_changes_nothing() {
    for text in [
        plain(),
        Library::example(false).to_owned(),
        Library::example(true).to_owned(),
    ] {
        for (key, value) in values(&text) {
            let edited =
                set(&text, &key, &value).unwrap_or_else(|fault| panic!("{key}: {fault:?}"));
            assert_eq!(edited, text, "{key} = {value}");
        }
    }
}

#[test]
fn what_would_be_refused_is_not_put_in() {
    for (key, typed) in [
        ("wall.height", "tall"),
        ("wall.height", "1.07"),
        ("wall.batter", "0"),
        ("wall.no_such_key", "1"),
        ("nowhere.at_all", "1"),
        ("day.7.start", "09:00"),
        ("day.0.date", "2031-01-01"),
        ("wall.height", ""),
        ("format", "2"),
    ] {
        let answer = set(&plain(), key, typed);
        let fault = answer.expect_err(&format!("{key} = {typed}"));
        assert!(!fault.what.is_empty() && !fault.cure.is_empty());
    }
}

#[test]
fn a_key_that_is_not_there_is_put_in_and_taken_out_again() {
    let text = plain();
    let without = set(&text, "stone.most", "").expect("it may go");
    assert!(!without.contains("most ="));
    let back = set(&without, "stone.most", "60 t").expect("it may come");
    assert_eq!(values(&back)["stone.most"], "60 t");
    // In a file that has no such table at all.
    let bare = text.split("[pace]").next().expect("the file before it");
    let made = set(bare, "pace.chance", "0.7").expect("the table is made");
    assert!((parsed(&made).course.chance - 0.7).abs() < 1e-12);
}

#[test]
fn a_list_is_typed_with_commas() {
    let rows = set(&plain(), "wall.through_rows", "0.4 m, 0.8 m").expect("two rows");
    assert_eq!(parsed(&rows).course.wall.through_rows.len(), 2);
    let none = set(&plain(), "wall.through_rows", "").expect("no rows");
    assert!(parsed(&none).course.wall.through_rows.is_empty());
    let again = set(&none, "wall.through_rows", "0.5 m").expect("a row where none was");
    assert_eq!(parsed(&again).course.wall.through_rows.len(), 1);
    let closed = set(&plain(), "stone.closed", "2027-04-02, 2027-04-05").expect("two dates");
    assert_eq!(parsed(&closed).course.stone.closed.len(), 2);
    assert_eq!(values(&closed)["stone.closed"], "2027-04-02, 2027-04-05");
}

#[test]
fn days_come_and_go_at_the_end() {
    for text in [plain(), Library::example(false).to_owned()] {
        let days = |text: &str| parsed(text).course.days;
        let more = add_day(&text).expect("one more day");
        let (before, after) = (days(&text), days(&more));
        assert_eq!(after.len(), before.len() + 1);
        assert_eq!(after[..before.len()], before[..]);
        let [last, new] = [before.len() - 1, before.len()].map(|at| &after[at]);
        assert_eq!(new.date, last.date.succ_opt().expect("a day later"));
        assert_eq!((new.start, new.finish), (last.start, last.finish));
        assert_eq!(days(&remove_day(&more).expect("one day less")), before);
        // The only day stays.
        let mut one = text;
        for _ in 0..5 {
            one = remove_day(&one).expect("one day less");
        }
        assert_eq!(days(&one).len(), 1);
    }
}

#[test]
fn private_notes_are_not_among_the_values_and_survive_editing() {
    let notes = "private = { emergency_contact = \"07700 900123\", medical = \"bee stings\" }";
    let text = format!("{}\n[[student]]\nname = \"Ash\"\n{notes}\n", plain());
    let shown = format!("{:?}", values(&text));
    assert!(
        !shown.contains("900123") && !shown.contains("bee stings"),
        "{shown}"
    );
    let edited = set(&text, "student.0.name", "Elm").expect("another name");
    assert!(edited.contains(notes));
}
