//! The calendar file at the desk: what it holds, and what it is never written over.

use super::*;

fn made() -> chrono::NaiveDate {
    chrono::NaiveDate::from_ymd_opt(2027, 4, 1).expect("a date")
}

#[test]
fn the_calendar_file_is_of_the_course_on_the_desk_and_follows_it() {
    let (folder, _path, mut desk) = desk_with_file();
    assert_eq!(desk.calendar_name(), "one.ics");
    let file = folder.path().join(desk.calendar_name());
    desk.write_calendar(&file, made()).expect("writes");
    let read = || std::fs::read_to_string(&file).expect("reads");
    let first = read();
    assert!(first.contains("DTSTART;TZID=Europe/London:20270423T090000"));
    assert!(first.contains("DTSTAMP:20270401T"));

    desk.edit("day.0.start", "08:30", false).expect("earlier");
    desk.write_calendar(&file, made()).expect("over its own");
    assert!(read().contains("DTSTART;TZID=Europe/London:20270423T083000"));
}

#[test]
fn a_calendar_file_is_written_over_nothing_but_its_own_kind() {
    let (_folder, path, desk) = desk_with_file();
    let wrong = desk.write_calendar(&path, made()).expect_err("refused");
    assert_eq!(crate::shown::trouble(wrong).code, "exists");
    let kept = std::fs::read_to_string(&path).expect("reads");
    assert_eq!(kept, Library::example(false));
}
