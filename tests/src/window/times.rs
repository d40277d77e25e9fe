//! Times of day in the real window: typed by either clock, shown by that of the course's language.

use super::driver::Window;
use files::Library;
use std::fs;

/// The key of WebDriver that leaves a field.
const TAB: &str = "\u{e004}";

fn course(american: bool) -> (tempfile::TempDir, Window) {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("course.walling");
    fs::write(&file, Library::example(american)).expect("a course");
    let window = Window::open(&file);
    window.wait_for_text("figure-length", if american { " ft" } else { " m" });
    window.click("step-days");
    (folder, window)
}

#[test]
fn a_time_is_typed_by_the_clock_of_twelve_hours() {
    let (_folder, window) = course(false);
    window.type_into("field-day-0-finish", &format!("4:45 pm{TAB}"));
    window.wait_until("the file's own words", || {
        window.value("field-day-0-finish") == "16:45"
    });
    assert!(window.text("help-day-0-finish").contains("1:30 pm"));
    window.click("breaks-0-open");
    window.type_into("field-day-0-breaks-1-start", &format!("1:15 p.m.{TAB}"));
    window.wait_until("the break is moved", || {
        window.value("field-day-0-breaks-1-start") == "13:15"
    });
    window.type_into("field-day-0-finish", &format!("half past four{TAB}"));
    window.wait_for_text("trouble-day-0-finish", "not a time of day");
    window.wait_for_text("trouble-day-0-finish", "13:30 or as 1:30 pm");
}

#[test]
fn an_american_course_shows_times_by_that_clock() {
    let (_folder, window) = course(true);
    window.wait_until("the start", || {
        window.value("field-day-0-start").ends_with(" am")
    });
    window.type_into("field-day-0-finish", &format!("16:45{TAB}"));
    window.wait_until("the finish", || {
        window.value("field-day-0-finish") == "4:45 pm"
    });
    // No course day is on: the time to tell for is that of the first break.
    window.click("step-today");
    window.wait_until("the time to tell for", || {
        window.value("told-time").ends_with(" am")
    });
}
