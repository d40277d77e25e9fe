//! The desk: edits, undo, saving without loss.

mod calendar;
mod day;
mod handles;
mod pace_book;
mod pages;
mod saving;

use super::*;

fn desk_with_file() -> (tempfile::TempDir, PathBuf, Desk) {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("one.walling");
    std::fs::write(&path, Library::example(false)).expect("writes");
    let desk = Desk::set_up(Some(path.clone()), &folder.path().join("store")).expect("opens");
    (folder, path, desk)
}

#[test]
fn undo_to_the_start_gives_the_starting_file_byte_for_byte() {
    let (_folder, path, mut desk) = desk_with_file();
    desk.edit("group.novices", "4", false).expect("edits");
    desk.edit("wall.height", "0.9 m", false).expect("edits");
    desk.add_day().expect("adds");
    assert!(desk.unsaved());
    for _ in 0..3 {
        desk.undo().expect("undoes");
    }
    assert!(!desk.unsaved());
    desk.save(&path).expect("saves");
    assert_eq!(
        std::fs::read_to_string(&path).expect("reads"),
        Library::example(false)
    );
}

/// Typing on in one field is one change to undo, told against the figures it began at.
#[test]
fn typing_on_is_one_change() {
    let (_folder, _path, mut desk) = desk_with_file();
    let before = desk.view().written.wall.base_width;
    for (typed, goes_on) in [("1.2 m", false), ("1.3 m", true), ("1.35 m", true)] {
        desk.edit("wall.height", typed, goes_on).expect("edits");
    }
    let view = desk.view();
    let undo = view.undo.expect("a change");
    assert_eq!(undo.len(), 1);
    assert_eq!(undo[0].to.as_deref(), Some("1.35 m"));
    let width = view.moved.iter().find(|it| it.what == "base width");
    assert_eq!(width.map(|it| it.before.clone()), Some(before));
    desk.undo().expect("undoes");
    assert!(!desk.unsaved());
}

/// An emptied key goes from the file; written anew it comes back to its line, not to the end.
#[test]
fn a_field_emptied_and_written_anew_keeps_its_line() {
    let (_folder, _path, mut desk) = desk_with_file();
    let at_once = files::course::set(desk.text(), "group.novices", "4").expect("an edit");
    for (typed, goes_on) in [("", false), ("4", true)] {
        desk.edit("group.novices", typed, goes_on).expect("edits");
    }
    assert_eq!(desk.text(), at_once);
}

/// The figures come at once, what could be done otherwise when it is asked for; pages have both.
#[test]
fn what_could_be_done_otherwise_comes_after_the_figures() {
    let (_folder, _path, mut desk) = desk_with_file();
    assert!(desk.view().advised);
    desk.edit("wall.height", "1.2 m", false).expect("edits");
    let figures = desk.view();
    assert!(!figures.advised && figures.written.running.lifts.is_empty());
    desk.advise().expect("advises");
    let advised = desk.view();
    assert!(advised.advised && !advised.written.running.lifts.is_empty());
    assert_eq!(figures.written.wall.length, advised.written.wall.length);
    assert_eq!(figures.written.chance.chance, advised.written.chance.chance);
}

#[test]
fn broken_lessons_of_ones_own_are_told_and_the_built_in_ones_count() {
    let folder = tempfile::tempdir().expect("a folder");
    let cards = folder.path().join("lessons/cards");
    std::fs::create_dir_all(&cards).expect("makes it");
    for name in ["copes.md", "throughs.md"] {
        std::fs::write(cards.join(name), "no head\n").expect("writes");
    }
    let desk = Desk::set_up(None, folder.path()).expect("opens");
    assert_eq!(desk.library.faults.len(), 2);
    let view = desk.view();
    let [copes, throughs] = view.own.as_slice() else {
        panic!("{:?}", view.own);
    };
    assert_eq!(copes.code, "no-head");
    let place = format!("{}, line 1: ", cards.join("copes.md").display());
    assert!(copes.what.starts_with(&place), "{}", copes.what);
    assert!(throughs.what.contains("throughs.md"), "{}", throughs.what);
    let lessons = view.choices.lessons;
    assert!(lessons.iter().any(|it| it.id == "copes"));
}

#[test]
fn a_broken_table_of_ones_own_is_told_and_the_course_is_there() {
    let folder = tempfile::tempdir().expect("a folder");
    let tables = folder.path().join("lessons/tables");
    std::fs::create_dir_all(&tables).expect("makes it");
    std::fs::write(tables.join("bars.toml"), "no table\n").expect("writes");
    let view = Desk::set_up(None, folder.path()).expect("opens").view();
    let [broken] = view.own.as_slice() else {
        panic!("{:?}", view.own);
    };
    assert!(broken.what.contains("bars.toml, line 1"), "{}", broken.what);
}

#[test]
fn a_refused_edit_changes_nothing_and_says_what_would_be_right() {
    let (_folder, _path, mut desk) = desk_with_file();
    let before = desk.view();
    let Err(Error::Fault(fault)) = desk.edit("wall.height", "tall", false) else {
        panic!("should be refused");
    };
    assert_eq!(fault.key, "wall.height");
    let after = desk.view();
    assert_eq!(before.values, after.values);
    assert_eq!(before.written.wall.length, after.written.wall.length);
    assert_eq!(after.undo, None);
}

#[test]
fn comments_and_spelling_stay_when_a_value_changes() {
    let (_folder, path, mut desk) = desk_with_file();
    desk.edit("wall.height", "3'6\"", false).expect("edits");
    desk.save(&path).expect("saves");
    let text = std::fs::read_to_string(&path).expect("reads");
    let line = text
        .lines()
        .find(|line| line.starts_with("height"))
        .expect("the line");
    assert!(line.starts_with("height = \"3'6\\\"\""), "{line}");
    assert!(
        line.contains("# ground to the underside of the cope"),
        "{line}"
    );
}

fn key(key: &str, typed: &str) -> shapes::window::RuleKey {
    shapes::window::RuleKey {
        key: key.to_owned(),
        typed: typed.to_owned(),
    }
}

#[test]
fn a_rule_changed_for_good_is_known_as_such_until_it_is_taken_back() {
    let (_folder, _path, mut desk) = desk_with_file();
    let changed = |desk: &Desk| {
        let rules = desk.view().rules;
        let spade = rules.iter().find(|rule| rule.item == "Spade");
        spade.map(|it| (it.changed_here, it.changed_for_good))
    };
    assert_eq!(changed(&desk), Some((false, false)));
    let twice = [key("each", "2")];
    desk.change_rule_for_good("spade", &twice).expect("changed");
    assert_eq!(changed(&desk), Some((false, true)));
    desk.change_rule("Spade", &[key("least", "7")])
        .expect("changed");
    assert_eq!(changed(&desk), Some((true, true)));
    desk.take_back_rule_for_good("Spade").expect("taken back");
    assert_eq!(changed(&desk), Some((true, false)));
}

#[test]
fn a_rule_refused_for_good_names_its_key_and_no_file() {
    let (_folder, _path, mut desk) = desk_with_file();
    let Err(Error::Fault(fault)) = desk.change_rule_for_good("Spade", &[key("each", "many")])
    else {
        panic!("should be refused");
    };
    assert_eq!(fault.key, "rule.0.each");
    assert!(!fault.what.contains("kit-own"), "{}", fault.what);
}

#[test]
fn what_is_no_count_on_the_way_home_is_told_with_its_item() {
    let typed = shapes::window::ReturnTyped {
        item: "Spade".to_owned(),
        back: "3".to_owned(),
        care: String::new(),
        broken: String::new(),
        used_up: String::new(),
        lost: "one".to_owned(),
    };
    let Err(wrong) = crate::kit::returns(&[typed]) else {
        panic!("should be refused");
    };
    assert_eq!(wrong.field, "lost.Spade");
    assert_eq!(wrong.what, "\"one\" is not a count");
}
