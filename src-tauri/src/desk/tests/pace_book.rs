//! The pace book at the desk: what this course teaches the next, and how it is taken back.

use super::*;
use crate::edits::Told;

/// A course of some years ago, for one that is to come has no pace yet.
fn past_course(folder: &Path, name: &str) -> PathBuf {
    let path = folder.join(name);
    std::fs::write(&path, Library::example(false).replace("2027-", "2024-")).expect("writes");
    path
}

fn set_up() -> (tempfile::TempDir, Desk) {
    let folder = tempfile::tempdir().expect("a folder");
    let path = past_course(folder.path(), "one.walling");
    let desk = Desk::set_up(Some(path), &folder.path().join("store")).expect("opens");
    (folder, desk)
}

fn tell(desk: &mut Desk, stage: &str, time: &str) {
    let told = Told {
        day: 0,
        time,
        stage,
        bay: None,
        done: "done",
    };
    desk.tell(&told).expect("told");
}

#[test]
fn a_course_is_recorded_for_others_and_taken_back() {
    let (folder, mut desk) = set_up();
    tell(&mut desk, "sort", "12:00");
    let chance = desk.view().written.chance.chance;
    assert!(!desk.pace_book().expect("a book").recorded);
    desk.record_pace().expect("recorded");
    let book = desk.pace_book().expect("a book");
    assert!(book.recorded && !book.changed);
    assert_eq!(book.courses.len(), 1);
    assert!(book.courses[0].this);
    assert_eq!(book.courses[0].first_day, "Tue 23 April 2024");
    let sort = |rows: &[shapes::written::BookRow]| {
        let it = rows.iter().find(|row| row.stage == "Sort the heap");
        it.map(|row| row.before != row.after)
    };
    assert_eq!(sort(&book.rates), Some(true));
    assert_eq!(book.record[0].stage, "Sort the heap");
    assert!(book.record[0].pace.ends_with("longer"), "{:?}", book.record);

    // What was built here is told in the file: its own record does not count again.
    let text = desk.text().to_owned();
    desk.show(&text).expect("planned anew");
    assert_eq!(desk.view().written.chance.chance, chance);
    assert!(desk.view().written.running.book.is_empty());

    tell(&mut desk, "line", "12:30");
    tell(&mut desk, "dig", "14:30");
    assert!(desk.pace_book().expect("a book").changed);

    let other = past_course(folder.path(), "two.walling");
    desk.open(other).expect("opens");
    assert_eq!(sort(&desk.view().written.running.book), Some(true));
    assert!(!desk.pace_book().expect("a book").recorded);

    desk.open(folder.path().join("one.walling")).expect("opens");
    desk.take_back_pace().expect("taken back");
    assert!(desk.pace_book().expect("a book").courses.is_empty());
    assert!(matches!(desk.take_back_pace(), Err(Error::Store(_))));
}

#[test]
fn there_is_something_to_record_once_something_was_told() {
    let (_folder, mut desk) = set_up();
    assert!(matches!(desk.record_pace(), Err(Error::NothingTold)));
}

#[test]
fn a_course_that_was_never_saved_is_not_recorded() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut desk = Desk::set_up(None, folder.path()).expect("the example");
    tell(&mut desk, "sort", "12:00");
    assert!(matches!(desk.record_pace(), Err(Error::NeverSaved)));
}

#[test]
fn a_course_to_come_has_no_pace_yet() {
    let (_folder, _path, mut desk) = desk_with_file();
    let far = desk.text().replace("2027-", "2127-");
    desk.change(far).expect("in a hundred years");
    tell(&mut desk, "sort", "12:00");
    let Err(Error::Store(wrong)) = desk.record_pace() else {
        panic!("should be refused");
    };
    assert_eq!(wrong.code(), "recorded-too-early");
}
