//! `again`: the same course on other dates, in a file of its own.

use super::desk::Desk;
use checks::courses::{changed, parsed, plain};

fn again(desk: &Desk, from: &str) -> checks::program::Ran {
    let out = desk.file("next.walling").display().to_string();
    desk.call("again", &["--from", from, "--out", &out])
}

/// What was told of the old days is not in the new file, and the old file stays.
#[test]
fn a_course_is_written_again_on_other_dates() {
    let before = plain();
    let desk = Desk::with_course(&before);
    let told = desk.call("told", &["line", "--at", "11:00"]);
    assert_eq!(told.code, Some(0), "{}", told.err);
    let held = std::fs::read_to_string(desk.course()).expect("the course");
    let ran = again(&desk, "2028-04-22");
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert!(ran.out.contains("22 and 23 April 2028"), "{}", ran.out);
    let next = std::fs::read_to_string(desk.file("next.walling")).expect("the new one");
    let dates = [
        ("date = 2027-04-24", "date = 2028-04-22"),
        ("date = 2027-04-25", "date = 2028-04-23"),
    ];
    assert_eq!(next, changed(before, &dates));
    assert_eq!(parsed(&next).course.running.progress, []);
    let after = std::fs::read_to_string(desk.course()).expect("the old one");
    assert_eq!(after, held);
}

#[test]
fn nothing_is_overwritten_and_no_date_guessed() {
    let desk = Desk::with_course(&plain());
    assert_eq!(again(&desk, "2028-04-22").code, Some(0));
    let twice = again(&desk, "2029-04-21");
    assert_eq!(twice.code, Some(2));
    assert!(twice.err.contains("not overwritten"), "{}", twice.err);
    assert_eq!(again(&desk, "next spring").code, Some(2));
    let late = again(&desk, "2199-12-31");
    assert_eq!(late.code, Some(2));
    assert!(late.err.contains("nothing was written"), "{}", late.err);
}
