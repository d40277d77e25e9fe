//! Lessons written in the window, lists of names pasted into it, and the day at a touch.

use super::{open_example, picture};
use files::Library;
use files::course::{CourseFile, set};
use std::fs;

#[test]
fn a_lesson_is_changed_looked_at_kept_and_given_back() {
    let (_folder, _file, window) = open_example();
    window.wait_for_text("figure-length", " m");
    window.click("step-lessons");
    window.wait_for_text("open-throughs", "Throughs");
    picture(&window, "window-lessons.png");
    window.click("open-throughs");
    window.wait_for_text("lesson-page", "page 1 of");
    window.type_into("lesson-title", "Tie stones");
    window.wait_for_text("lesson-head", "Tie stones");
    window.wait_for_text("lesson-stands", "not saved");
    window.wait_for_text("lesson-page", "page 1 of");
    picture(&window, "window-lesson.png");

    window.type_into("lesson-minutes", "ages");
    window.wait_for_text("trouble-lesson-minutes", "line 5 of the file");
    window.wait_for_text("lesson-page", "before the mistake");
    window.type_into("lesson-minutes", "20");
    window.wait_for_text("lesson-page", "page 1 of");

    window.click("save-lesson");
    window.wait_for_text("lesson-said", "It counts from now on");
    let own = find(window.data(), "throughs.md").expect("the instructor's own card");
    let text = fs::read_to_string(&own).expect("reads");
    assert!(text.contains("title = \"Tie stones\"\n") && text.contains("minutes = 20\n"));

    window.click("lesson-away");
    window.wait_for_text("lesson-said", "goes off the shelf");
    assert!(own.exists(), "asked first");
    window.click("lesson-away");
    window.wait_for_text("lesson-said", "built-in lesson counts again");
    assert!(!own.exists());
    assert_eq!(window.value("lesson-title"), "Tie stones", "the words stay");
    window.click("all-lessons");
    window.wait_for_text("lessons-taught", "Taught on this course");
}

fn find(folder: &std::path::Path, name: &str) -> Option<std::path::PathBuf> {
    let entries = fs::read_dir(folder).ok()?.flatten();
    entries.map(|it| it.path()).find_map(|path| {
        if path.is_dir() {
            find(&path, name)
        } else {
            path.file_name()
                .is_some_and(|it| it == name)
                .then_some(path)
        }
    })
}

#[test]
fn three_hundred_names_and_a_decimal_comma_end_well() {
    let (_folder, file, window) = open_example();
    window.wait_for_text("figure-length", " m");
    window.click("step-group");
    window.click("roster-paste-open");
    window.script(
        "const field = document.getElementById('roster-text');\
         field.value = Array.from({length: 300}, (_, at) => `Person ${at}\\timprover`).join('\\n');\
         field.dispatchEvent(new Event('input', { bubbles: true })); return ''",
    );
    window.click("roster-look");
    window.wait_for_text("roster-told", "New: 300");
    picture(&window, "window-roster.png");
    window.click("roster-leave");

    window.click("step-wall");
    window.type_into("field-wall-height", "1,07 m");
    let lower = set(Library::example(false), "wall.height", "1.07 m").expect("an edit");
    window.click("save");
    window.wait_until("the comma is written as a point", || {
        fs::read_to_string(&file).is_ok_and(|text| text == lower)
    });
    CourseFile::parse(&lower).expect("the file is sound");
}

#[test]
fn what_is_done_is_told_with_a_tap_and_taken_back() {
    let (_folder, _file, window) = open_example();
    window.wait_for_text("figure-length", " m");
    window.click("step-today");
    window.wait_for_text("next-what", "");
    let small = window.script(
        "return Array.from(document.querySelectorAll('main :is(button, select, input:not([type=checkbox]), summary)'))\
         .filter((it) => it.checkVisibility() && it.getBoundingClientRect().height < 44).map((it) => it.id).join(' ')",
    );
    assert_eq!(small, "", "too small for a glove");
    window.click("sun");
    window.wait_until("black on white", || {
        window.script("return document.documentElement.dataset.look ?? ''") == "sun"
    });
    picture(&window, "window-day.png");
    let tap = window.script("return document.querySelector('[id^=done-]').id");
    window.click(&tap);
    window.wait_for_text("said", "Told for");
    window.wait_for_text("built", "%");
    window.click("untell-last");
    window.wait_for_text("said", "Taken back");
    window.wait_for_text("nothing-yet", "Nothing has been told yet");
}
