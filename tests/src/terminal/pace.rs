//! The pace book through the terminal program: recorded, shown before and after, taken back.

use super::desk::Desk;
use checks::courses::plain;
use checks::program::{Ran, run};
use serde_json::Value;

/// Two courses beside a store: `other.walling` is built on later, by the same instructor.
struct Shelf {
    desk: Desk,
    store: String,
}

impl Shelf {
    fn new() -> Self {
        let desk = Desk::with_course(&plain());
        desk.put(
            "other.walling",
            &plain().replace("Plain course", "The other course"),
        );
        let store = desk.file("store").display().to_string();
        std::fs::create_dir(&store).expect("a folder");
        Self { desk, store }
    }

    fn call(&self, arguments: &str) -> Ran {
        let file = |name: &str| self.desk.file(name).display().to_string();
        let all: Vec<String> = arguments
            .split_whitespace()
            .map(|it| {
                if it.ends_with(".walling") {
                    file(it)
                } else {
                    it.to_owned()
                }
            })
            .collect();
        run(&all)
    }

    /// The same with the store.
    fn stored(&self, arguments: &str) -> Ran {
        self.call(&format!("{arguments} --store {}", self.store))
    }

    fn chance(&self, file: &str) -> f64 {
        let ran = self.stored(&format!("plan {file} --json"));
        assert_eq!(ran.code, Some(0), "{}", ran.err);
        let plan: Value = serde_json::from_str(&ran.out).expect("JSON");
        plan["finish"]["chance"].as_f64().expect("a chance")
    }

    /// Builds the first course, twice as slowly as usual or slower.
    fn build_slowly(&self) {
        for rest in ["line --at 11:30", "dig --at 13:30", "frames --at 16:00"] {
            let ran = self.call(&format!("told course.walling {rest}"));
            assert_eq!(ran.code, Some(0), "{rest}: {}", ran.err);
        }
    }
}

/// The row of a stage in the book: hours before and after, of a novice.
fn hours(book: &str, stage: &str) -> [f64; 2] {
    let row = book
        .lines()
        .find(|line| line.trim_start().starts_with(stage));
    let row = row.unwrap_or_else(|| panic!("no {stage} in\n{book}"));
    let figures: Vec<f64> = row
        .split_whitespace()
        .filter_map(|word| word.parse().ok())
        .collect();
    [figures[0], figures[3]]
}

#[test]
fn a_slow_course_slows_the_next_plan_and_taking_it_back_undoes_that() {
    let shelf = Shelf::new();
    shelf.build_slowly();
    let before = [
        shelf.chance("other.walling"),
        shelf.chance("course.walling"),
    ];
    let ran = shelf.stored("pace record course.walling");
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert!(
        ran.out.starts_with("Recorded: Plain course, "),
        "{}",
        ran.out
    );
    let [built_in, recorded] = hours(&ran.out, "Dig the trench");
    assert_eq!(built_in, 4.0);
    assert!(built_in < recorded, "{}", ran.out);
    let listed = shelf.stored("pace list");
    // Without --on it is recorded on the last course day: no clock is asked.
    assert!(
        listed
            .out
            .starts_with("Plain course, 2027-04-24, recorded on 2027-04-25"),
        "{}",
        listed.out
    );
    let after = [
        shelf.chance("other.walling"),
        shelf.chance("course.walling"),
    ];
    assert!(after[0] <= before[0], "{after:?} {before:?}");
    // What was built on a course is told in its own file: its record does not count twice.
    assert_eq!(after[1], before[1]);
    let ran = shelf.stored("pace take-back course.walling");
    assert!(ran.out.contains("No course is recorded"), "{}", ran.out);
    assert_eq!(shelf.chance("other.walling"), before[0]);
}

#[test]
fn a_later_record_counts_in_place_of_the_earlier() {
    let shelf = Shelf::new();
    shelf.build_slowly();
    for on in ["2027-04-25", "2027-05-02"] {
        let ran = shelf.stored(&format!("pace record course.walling --on {on}"));
        assert_eq!(ran.code, Some(0), "{}", ran.err);
    }
    let listed = shelf.stored("pace list").out;
    assert_eq!(listed.matches("recorded on").count(), 1, "{listed}");
    let ran = shelf.stored("pace take-back course.walling");
    assert!(
        ran.out
            .starts_with("Taken back: the record of 2027-04-25 counts again."),
        "{}",
        ran.out
    );
}

#[test]
fn a_store_that_is_not_there_is_made() {
    let shelf = Shelf::new();
    shelf.build_slowly();
    std::fs::remove_dir(&shelf.store).expect("an empty folder");
    let ran = shelf.stored("pace record course.walling");
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert!(ran.out.starts_with("Recorded: "), "{}", ran.out);
}

#[test]
fn what_can_not_be_recorded_is_refused() {
    let shelf = Shelf::new();
    for (arguments, words) in [
        (
            "pace record course.walling",
            "nothing has been told of this course",
        ),
        ("pace record nowhere.walling", "can't be read"),
        ("pace take-back course.walling", "no pace is recorded"),
    ] {
        let ran = shelf.stored(arguments);
        assert_eq!(ran.code, Some(2), "{arguments}: {}", ran.out);
        assert!(ran.err.contains(words), "{arguments}: {}", ran.err);
    }
    shelf.build_slowly();
    let early = shelf.stored("pace record course.walling --on 2027-04-01");
    assert_eq!(early.code, Some(2), "{}", early.out);
    let mistyped = shelf.call("pace list --store no-such-store");
    assert_eq!(mistyped.code, Some(2));
    assert!(
        mistyped.err.contains("there is no such folder"),
        "{}",
        mistyped.err
    );
    assert_eq!(
        shelf.stored("pace list").out,
        "No course is recorded: the built-in pace table counts.\n"
    );
}

/// Written, read by another store, written again: the same file; and nothing of a file with a fault.
#[test]
fn a_book_goes_to_another_store_by_a_file() {
    let shelf = Shelf::new();
    shelf.build_slowly();
    let ran = shelf.stored("pace record course.walling");
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let at = |name: &str| shelf.desk.file(name).display().to_string();
    let (book, again, other) = (at("pace.csv"), at("again.csv"), at("other-store"));
    let ran = shelf.stored(&format!("pace export {book}"));
    assert_eq!((ran.code, ran.out), (Some(0), format!("{book}\n")));
    let never_over = shelf.stored(&format!("pace export {book}"));
    assert_eq!(never_over.code, Some(2), "{}", never_over.out);

    let look = shelf.call(&format!("pace import {book} --store {other} --look"));
    assert_eq!(look.code, Some(0), "{}", look.err);
    assert!(
        look.out.starts_with("new      Plain course, 2027-04-24"),
        "{}",
        look.out
    );
    assert!(look.out.ends_with("Nothing was changed.\n"), "{}", look.out);
    let empty = shelf.call(&format!("pace list --store {other}"));
    assert!(empty.out.contains("No course is recorded"), "{}", empty.out);

    let ran = shelf.call(&format!("pace import {book} --store {other}"));
    assert!(ran.out.contains("Dig the trench"), "{}", ran.out);
    let ran = shelf.call(&format!("pace export {again} --store {other}"));
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let read = |path: &str| std::fs::read(path).expect("a file");
    assert!(read(&book) == read(&again), "the same bytes");

    let text = String::from_utf8(read(&book)).expect("UTF-8");
    let faulty = shelf
        .desk
        .put("faulty.csv", &text.replacen("2027-04-24", "24.4.2027", 1));
    let ran = shelf.stored(&format!("pace import {}", faulty.display()));
    assert_eq!(ran.code, Some(2), "{}", ran.out);
    assert!(ran.err.contains("nothing was imported"), "{}", ran.err);
    assert!(
        ran.err
            .contains("row 2, column B (first day): \"24.4.2027\" is not a date"),
        "{}",
        ran.err
    );
}
