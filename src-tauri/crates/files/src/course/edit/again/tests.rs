//! The same course on other dates: only what belongs to those days has changed.

use super::*;
use crate::Library;
use crate::course::{add_rain, mark, set, tell, wish};
use chrono::NaiveTime;
use craft::course::Report;
use craft::quantity::metres;

fn date(text: &str) -> NaiveDate {
    text.parse().expect("a date")
}

fn told(text: &str, length_m: f64) -> String {
    let report = Report {
        day: 0,
        time: NaiveTime::from_hms_opt(14, 40, 0).expect("a time"),
        stage: "footing".to_owned(),
        bay: None,
        done: 1.0,
        wall: None,
    };
    tell(text, &report, metres(length_m)).expect("told")
}

/// The example's own dates replaced by hand: nothing else may differ.
#[test]
fn only_the_dates_change() {
    let example = Library::example(false);
    let by_hand = ["23", "24", "25"].iter().zip(["21", "22", "23"]);
    let due = by_hand.fold(example.to_owned(), |text, (old, new)| {
        text.replace(
            &format!("date = 2027-04-{old}"),
            &format!("date = 2028-04-{new}"),
        )
    });
    assert_ne!(due, example);
    assert_eq!(again(example, date("2028-04-21")).expect("again"), due);
    let back = again(&due, date("2027-04-23")).expect("and back");
    assert_eq!(back, example);
}

#[test]
fn everything_dated_moves_by_the_same_days() {
    let text = set(
        Library::example(true),
        "stone.closed",
        "2027-04-28, 2027-05-03",
    );
    let text = again(&text.expect("closed"), date("2027-05-13")).expect("a week later");
    let course = CourseFile::parse(&text).expect("sound").course;
    let days: Vec<String> = course.days.iter().map(|it| it.date.to_string()).collect();
    assert_eq!(
        days,
        ["2027-05-13", "2027-05-14", "2027-05-15", "2027-05-16"]
    );
    assert_eq!(
        course.stone.closed,
        [date("2027-05-05"), date("2027-05-10")]
    );
}

#[test]
fn what_belongs_to_the_old_days_goes_and_the_rest_stays() {
    let example = Library::example(false);
    let text = set(example, "pace.seed", "7").expect("a seed");
    let text = wish(&text, "copes", 2, None).expect("a wish");
    let due = again(&text, date("2028-04-21")).expect("again");
    let text = mark(&text, "permission", true).expect("a mark");
    let text = mark(&text, "insurance", true).expect("another");
    let text = add_rain(&text, 1).expect("rain");
    let text = set(&text, "day.0.weather.high", "24 C").expect("weather");
    let text = told(&text, 6.75);
    let after = again(&text, date("2028-04-21")).expect("again");
    let course = CourseFile::parse(&after).expect("sound").course;
    assert_eq!(course.running.progress, []);
    assert_eq!(course.wall.length, None);
    assert_eq!(course.ready.expect("a list is kept").done, [""; 0]);
    assert_eq!(course.seed, 7);
    assert_eq!(course.running.wishes.len(), 1);
    assert_eq!(after.replace("\n[ready]\ndone = []\n", ""), due);
}

/// A length a person wrote is theirs; one that telling wrote is not.
#[test]
fn a_length_given_by_hand_stays() {
    let given = set(Library::example(false), "wall.length", "9 m").expect("a length");
    let after = again(&told(&given, 6.75), date("2028-04-21")).expect("again");
    assert!(after.contains("length = \"9 m\" "), "{after}");
    let imperial = again(&told(Library::example(true), 6.4), date("2028-05-04")).expect("again");
    assert!(imperial.contains("length = \"auto\" "), "{imperial}");
}

#[test]
fn the_last_straight_is_open_again() {
    let line =
        "line = [ { straight = \"4 m\" }, { arc = \"3 m\", radius = \"6 m\", turn = \"left\" } ]";
    let text = Library::example(false).replacen("[wall]\n", &format!("[wall]\n{line}\n"), 1);
    let after = again(&told(&text, 8.5), date("2028-04-21")).expect("again");
    let wall = CourseFile::parse(&after).expect("sound").course.wall;
    assert_eq!(wall.length, None);
}

#[test]
fn a_date_that_no_course_has_is_refused() {
    let example = Library::example(false);
    let fault = again(example, date("2199-12-31")).expect_err("the last day is in 2200");
    assert_eq!(fault.key, "day.0.date");
    let fault = again("title = 3", date("2028-04-21")).expect_err("no course");
    assert_eq!(fault.code, "missing-key");
}
