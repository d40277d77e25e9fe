//! The real window: the built program under Xvfb, driven through WebDriver as a person would.
//!
//! With TAKE_PICTURES=FOLDER it also keeps a picture of every place it visits.

#[path = "window/axe.rs"]
mod axe;
#[path = "window/behind.rs"]
mod behind;
#[path = "window/courses.rs"]
mod courses;
#[path = "window/day.rs"]
mod day;
#[path = "window/driver.rs"]
mod driver;
#[path = "window/everyone.rs"]
mod everyone;
#[path = "window/handling.rs"]
mod handling;
#[path = "window/hands.rs"]
mod hands;
#[path = "window/keeping.rs"]
mod keeping;
#[path = "window/keyboard.rs"]
mod keyboard;
#[path = "window/kit.rs"]
mod kit;
#[path = "window/lessons.rs"]
mod lessons;
#[path = "window/network.rs"]
mod network;
#[path = "window/opened.rs"]
mod opened;
#[path = "window/pages.rs"]
mod pages;
#[path = "window/paper.rs"]
mod paper;
#[path = "window/screen.rs"]
mod screen;
#[path = "window/ticks.rs"]
mod ticks;
#[path = "window/times.rs"]
mod times;
#[path = "window/watched.rs"]
mod watched;

use documents::{Course, DOCUMENTS};
use driver::Window;
use files::Library;
use files::course::{CourseFile, set};
use std::fs;
use std::path::{Path, PathBuf};

/// The example in a folder of its own, and the window open on it.
fn open_example() -> (tempfile::TempDir, PathBuf, Window) {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("hollin-bank.walling");
    fs::write(&file, Library::example(false)).expect("writes");
    let window = Window::open(&file);
    (folder, file, window)
}

/// A picture of the window as it is, where pictures are asked for.
fn picture(window: &Window, name: &str) {
    if let Some(folder) = std::env::var_os("TAKE_PICTURES") {
        window.picture(&Path::new(&folder).join(name));
    }
}

/// What the core says of a course: the window must show the same.
fn expected(text: &str) -> Course {
    let library = Library::built_in().expect("the library");
    Course::plan(CourseFile::parse(text).expect("a course"), &library).expect("a plan")
}

#[test]
fn a_course_is_opened_changed_saved_and_printed() {
    let (_folder, file, window) = open_example();
    let start = Library::example(false);
    let before = expected(start);
    window.wait_for_text("figure-length", &before.written.wall.length);
    assert!(
        window
            .text("figure-chance")
            .contains(&before.written.chance.chance)
    );

    window.click("step-group");
    window.type_into("field-group-novices", "2");
    let fewer = set(start, "group.novices", "2").expect("an edit");
    let after = expected(&fewer);
    assert_ne!(
        before.written.wall.length, after.written.wall.length,
        "the test needs a change that shows"
    );
    window.wait_for_text("figure-length", &after.written.wall.length);

    window.click("save");
    window.wait_until("the file is saved", || {
        fs::read_to_string(&file).is_ok_and(|text| text == fewer)
    });

    window.click("step-pages");
    window.click("print");
    window.wait_for_text("printed", "worksheets-key.pdf");
    let pages = file.with_file_name("hollin-bank pages");
    for document in DOCUMENTS {
        let pdf = fs::read(pages.join(format!("{}.pdf", document.name)));
        // What is private is printed when it is ticked, and begins without.
        let begins = pdf.as_ref().is_ok_and(|pdf| pdf.starts_with(b"%PDF"));
        assert_eq!(begins, !document.is_private(), "{}: {pdf:?}", document.name);
    }

    window.click("step-wall");
    window.click("undo");
    window.wait_for_text("figure-length", &before.written.wall.length);
}

#[test]
fn a_refused_value_says_so_at_its_field_and_the_last_good_plan_stays() {
    let (_folder, file, window) = open_example();
    let length = expected(Library::example(false)).written.wall.length;
    window.wait_for_text("figure-length", &length);
    window.click("step-wall");
    window.type_into("field-wall-height", "tall");
    window.wait_for_text(
        "trouble-wall-height",
        "\"tall\" is not a number with a unit",
    );
    window.wait_for_text("trouble-wall-height", "1.07 m");
    window.wait_for_text("figure-length", &length);
    assert_eq!(
        window.value("field-wall-height"),
        "tall",
        "what was typed stays"
    );

    window.type_into("field-wall-height", "0.9 m");
    let lower = set(Library::example(false), "wall.height", "0.9 m").expect("an edit");
    window.wait_for_text("figure-length", &expected(&lower).written.wall.length);
    assert_eq!(
        fs::read_to_string(&file).expect("reads"),
        Library::example(false),
        "nothing saved unasked"
    );
}

/// A break added stands in the file and in the timetable, and undo takes it back.
#[test]
fn breaks_are_added_and_removed() {
    let (_folder, _file, window) = open_example();
    window.wait_for_text("figure-length", " m");
    window.click("step-days");
    window.click("breaks-2-open");
    window.click("add-break-2");
    window.wait_until("the third break of day 3", || {
        window.value("field-day-2-breaks-2-start") == "14:30"
    });
    window.click("remove-break-2-0");
    window.wait_until("the first is gone", || {
        window.value("field-day-2-breaks-0-name") == "Lunch"
    });
    window.click("undo");
    window.click("undo");
    window.wait_until("all is as it was", || {
        window.value("field-day-2-breaks-0-name") == "Tea"
            && window.value("field-day-2-breaks-2-start").is_empty()
    });
}

/// A line bent and a ground surveyed in the window: the file, the figures and the drawings
/// follow.
#[test]
fn a_line_is_bent_and_the_ground_surveyed() {
    let (_folder, _file, window) = open_example();
    window.wait_for_text("figure-length", " m");
    window.click("step-line");
    window.click("add-arc");
    window.wait_until("the arc stands beside its straight", || {
        window.value("field-wall-line-1-radius") == "6 m"
            && window.value("field-wall-line-0-straight") == "3 m"
    });
    window.click("add-level");
    window.click("add-level");
    window.wait_until("two stations are there", || {
        window.value("field-wall-ground-1-station") == "3.00 m"
    });
    window.type_into("field-wall-ground-1-level", "-0.30 m");
    window.click("step-frames");
    window.wait_until("the frames know of the ground", || {
        let shown = window.script("return document.querySelector('main').textContent");
        shown.contains("-0.30 m") && shown.contains("Arc from")
    });
    window.click("step-line");
    picture(&window, "window-bent.png");
}

/// Outside the program's own commands everything is denied, and nothing leaves the machine.
#[test]
fn the_window_may_do_nothing_but_its_own_commands() {
    let (_folder, _file, window) = open_example();
    window.wait_for_text("figure-length", "");
    for command in [
        "plugin:event|listen",
        "plugin:dialog|open",
        "plugin:fs|read_file",
        "no_such",
    ] {
        let said = window.invoke(command);
        assert!(said.starts_with("refused"), "{command}: {said}");
    }
    let fetched = window.script_async(
        "const done = arguments[arguments.length - 1];\
         fetch('https://example.org').then(() => done('fetched'), () => done('refused'))",
    );
    assert_eq!(fetched, "refused");
    assert_eq!(window.script("return typeof window.__TAURI__"), "undefined");
}

#[test]
fn every_place_can_be_visited() {
    let (_folder, _file, window) = open_example();
    window.wait_for_text("figure-length", " m");
    for place in window.places() {
        window.visit(&place);
        picture(&window, &format!("window-{place}.png"));
    }
}

/// A file from a newer program is not opened: the window says why, and the file stays.
#[test]
fn a_refused_file_is_told_in_the_window_and_not_touched() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("newer.walling");
    let newer = Library::example(false).replace("format = 1", "format = 99");
    fs::write(&file, &newer).expect("writes");
    let window = Window::open(&file);
    window.wait_until("the refusal is shown", || {
        window
            .script("return document.body.textContent")
            .contains("99 is newer than this program knows")
    });
    assert!(window.text("figure-length").is_empty(), "nothing is open");
    assert_eq!(fs::read_to_string(&file).expect("reads"), newer);
}
