//! The days in the real window: planned, run and recorded.

use super::driver::Window;
use super::{open_example, picture};
use files::Library;
use std::fs;

const ENTER: &str = "\u{e007}";

fn shows(window: &Window, id: &str, text: &str) {
    window.wait_until(&format!("{id} shows {text}"), || {
        window.text(id).contains(text)
    });
}

/// Chooses one of a list, as a person does from the keyboard.
fn choose(window: &Window, id: &str, value: &str) {
    window.script(&format!(
        "const list = document.getElementById({id:?}); list.focus(); list.value = {value:?};\
         list.dispatchEvent(new Event('change', {{ bubbles: true }}))"
    ));
}

#[test]
fn weather_lessons_and_effects_move_the_days() {
    let (_folder, _file, window) = open_example();
    window.wait_for_text("figure-length", " m");
    window.click("step-days");
    window.click("weather-0-open");
    window.type_into("field-day-0-weather-high", "34 C");
    window.type_into("field-day-0-weather-humidity", "0.6");
    shows(&window, "asks-0", "rest 30 minutes of every hour");
    window.click("add-rain-0");
    window.wait_until("an hour of rain", || {
        window.value("field-day-0-rain-0-minutes") == "60"
    });

    window.click("lessons-open");
    choose(&window, "lesson-copes-day", "2");
    shows(&window, "lessons-open", "1 moved");
    window.type_into("lesson-copes-time", &format!("10:00{ENTER}"));
    shows(&window, "lessons", "day 2, 10:00");
    window.type_into("lesson-copes-time", &format!("noon{ENTER}"));
    shows(
        &window,
        "trouble-lesson-copes",
        "\"noon\" is not a time of day",
    );
    window.click("lesson-throughs-out");
    shows(&window, "lessons-open", "1 left out");

    window.click("counted-open");
    window.click("effect-heat");
    shows(&window, "counted-open", "without heat");
    window.click("beforehand-sort");
    shows(&window, "counted-open", "1 done beforehand");
    for open in ["lifts-open", "holdups-open", "stages-open"] {
        window.click(open);
    }
    shows(&window, "lifts-table", " m");
    shows(&window, "holdups-table", " %");
    window.click("step-group");
    window.click("add-absence");
    shows(&window, "away", "is away from");
    picture(&window, "window-away.png");
}

#[test]
fn the_day_is_told_with_taps_and_the_rest_is_worked_out_from_there() {
    let (_folder, _file, window) = open_example();
    window.wait_for_text("figure-length", " m");
    window.click("step-today");
    window.click("done-sort-all");
    shows(&window, "said", "Sort the heap, all bays, done");
    // Where no course day is on, the time is that of what was told last.
    window.wait_until("the first break", || window.value("told-time") == "11:00");
    window.click("done-line-all");
    window.click("half-dig-0");
    shows(&window, "told", "\"Dig the trench\", bay 1, 50 %");
    window.type_into("share-dig-1", &format!("60{ENTER}"));
    shows(&window, "told", "\"Dig the trench\", bay 2, 60 %");
    shows(&window, "standing", "day 1, 12:45 (Lunch)");
    window.type_into("share-dig-1", &format!("most{ENTER}"));
    shows(
        &window,
        "trouble-tell",
        "\"most\" is not a share of the work",
    );
    assert_eq!(window.value("share-dig-1"), "most", "what was typed stays");

    window.click("to-come-open");
    shows(&window, "to-come", "Lay the footing");
    picture(&window, "window-told.png");
    window.click("untell-3");
    window.wait_until("one report fewer", || {
        !window.text("told").contains("bay 2")
    });
    window.click("undo");
    shows(&window, "told", "bay 2");
}

#[test]
fn a_past_course_is_recorded_in_the_pace_book_and_taken_back() {
    let (_folder, file, window) = {
        let folder = tempfile::tempdir().expect("a folder");
        let file = folder.path().join("past.walling");
        let past = Library::example(false).replace("2027-", "2024-");
        fs::write(&file, past).expect("writes");
        let window = Window::open(&file);
        (folder, file, window)
    };
    window.wait_for_text("figure-length", " m");
    window.click("step-after");
    shows(&window, "nothing-told", "Nothing has been told");
    window.click("step-today");
    window.click("done-sort-all");
    shows(&window, "told", "Sort the heap");
    window.click("step-after");
    window.click("record-pace");
    shows(&window, "pace-courses", "Hollin Bank long weekend");
    window.click("rates-open");
    shows(&window, "rates", "before:");
    picture(&window, "window-recorded.png");
    window.click("take-back-pace");
    shows(&window, "pace-said", "not in the book");
    assert!(window.text("pace-courses").is_empty());
    assert!(
        !fs::read_to_string(&file)
            .expect("reads")
            .contains("\n[[progress]]"),
        "nothing saved unasked"
    );
}
