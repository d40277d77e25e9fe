//! Your courses in the real window: from the first run to a course on the desk, and found again.

use super::driver::Window;
use super::picture;
use files::Library;
use files::course::{again, set};
use files::recent::{Recent, RecentList};
use std::fs;
use std::path::Path;

/// Where the program keeps its own, below the data folder.
const OURS: &str = "invalid.coursewright.desktop";

fn first_run() -> Window {
    Window::open_with(None, tempfile::tempdir().expect("a data folder"))
}

fn shows(window: &Window, id: &str, text: &str) {
    window.wait_until(&format!("{id} shows {text}"), || {
        window.text(id).contains(text)
    });
}

#[test]
fn six_answers_make_a_course() {
    let window = first_run();
    shows(&window, "no-courses", "No course has been opened here yet");
    picture(&window, "window-first-run.png");
    window.click("begin");
    shows(&window, "place", "A new course");
    // The place has no name yet: nothing is made, and it is told where.
    window.click("make");
    shows(&window, "trouble-venue-name", "The place has no name yet");
    window.type_into("field-venue-name", "Thorn Beck Croft");
    window.type_into("field-day", "many");
    window.click("field-group-novices");
    shows(&window, "trouble-day", "whole number from 1 to 10");
    window.type_into("field-day", "3");
    window.type_into("field-group-novices", "6");
    window.wait_until("it is worked out", || {
        window.text("comes-to").contains("6 students") && window.text("trouble-day").is_empty()
    });
    picture(&window, "window-begin.png");
    window.click("make");
    shows(&window, "saved", "changed, not saved");
    shows(&window, "step-group", "6 students");
    shows(&window, "step-days", "3 days");
    shows(&window, "step-venue", "Thorn Beck Croft");
}

#[test]
fn an_example_is_opened_and_the_way_back_is_there() {
    let window = first_run();
    window.click("example-thorn-beck");
    shows(&window, "step-venue", "Thorn Beck Croft");
    window.click("courses");
    shows(&window, "place", "Your courses");
    window.click("example-hollin-bank");
    shows(&window, "step-venue", "Hollin Bank Farm");
}

/// A list with a course, one that has moved and one that is broken.
fn with_a_list(folder: &Path) -> tempfile::TempDir {
    let data = tempfile::tempdir().expect("a data folder");
    let texts = [
        ("next.walling", later()),
        (
            "broken.walling",
            "format = 1\ntitel = \"Broken\"\n".to_owned(),
        ),
    ];
    for (name, text) in texts {
        fs::write(folder.join(name), text).expect("writes");
    }
    let courses = ["next.walling", "moved.walling", "broken.walling"].map(|name| Recent {
        path: folder.join(name),
        title: format!("The course of {name}"),
        place: "Hollin Bank Farm".to_owned(),
        dates: "some days".to_owned(),
    });
    let list = RecentList {
        courses: courses.to_vec(),
    };
    let ours = data.path().join(OURS);
    fs::create_dir_all(&ours).expect("makes it");
    fs::write(ours.join("recent.toml"), list.to_text()).expect("writes");
    data
}

/// The example, so far ahead that it is not over for many years.
fn later() -> String {
    let first = "2099-04-24".parse().expect("a date");
    let text = again(Library::example(false), first).expect("again");
    set(&text, "title", "A course to come").expect("a title")
}

#[test]
fn courses_are_found_again_and_what_is_gone_is_told() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("next.walling");
    let window = Window::open_with(None, with_a_list(folder.path()));
    shows(&window, "recent-0", "A course to come");
    shows(&window, "ready-0", "to do");
    shows(&window, "recent-1", "is not there any more");
    shows(&window, "recent-2", "no key titel");
    picture(&window, "window-courses.png");
    window.click("forget-1");
    window.wait_until("it is off the list", || window.text("recent-2").is_empty());
    assert!(folder.path().join("broken.walling").exists());

    // The same again: a course of its own, not saved; the file it came from stays.
    window.click("again-0");
    window.click("make-again-0");
    shows(&window, "saved", "changed, not saved");
    assert_eq!(fs::read_to_string(&file).expect("reads"), later());
}

#[test]
fn a_course_of_the_list_is_opened_changed_and_saved() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("next.walling");
    let window = Window::open_with(None, with_a_list(folder.path()));
    window.click("open-0");
    shows(&window, "step-venue", "Hollin Bank Farm");
    window.click("step-group");
    window.type_into("field-group-novices", "4");
    let fewer = set(&later(), "group.novices", "4").expect("an edit");
    window.click("save");
    window.wait_until("the file is saved", || {
        fs::read_to_string(&file).is_ok_and(|text| text == fewer)
    });
    window.click("courses");
    shows(&window, "ready-0", "lies open");
}
