//! Direct handling: what is dragged and what is moved by keys comes to the same file as typing.

use super::driver::Window;
use super::{open_example, picture};
use files::Library;
use files::course::{set, wish};
use std::fs;
use std::path::{Path, PathBuf};

const UP: &str = "\u{e013}";
const DOWN: &str = "\u{e015}";
const RIGHT: &str = "\u{e014}";
const ENTER: &str = "\u{e007}";
const ESCAPE: &str = "\u{e00c}";

/// A course in a folder of its own, and the window open on it.
fn open(text: &str) -> (tempfile::TempDir, PathBuf, Window) {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("one.walling");
    fs::write(&file, text).expect("writes");
    let window = Window::open(&file);
    (folder, file, window)
}

/// An example with a surveyed ground.
fn surveyed(imperial: bool) -> String {
    let example = Library::example(imperial);
    let (wall, rest) = example.split_once("\n[stone]").expect("a table of stone");
    format!(
        "{wall}\n[[wall.ground]]\nstation = \"0 m\"\nlevel = \"0 m\"\n\n[[wall.ground]]\n\
         station = \"3 m\"\nlevel = \"-0.10 m\"\n\n[stone]{rest}"
    )
}

fn attribute(window: &Window, id: &str, name: &str) -> String {
    window.script(&format!(
        "return document.getElementById({id:?})?.getAttribute({name:?}) ?? ''"
    ))
}

/// The file as it is once it has been saved and holds the text.
fn saved(window: &Window, file: &Path, expected: &str) {
    window.click("save");
    window.wait_until("the file holds what was expected", || {
        fs::read_to_string(file).is_ok_and(|text| text == expected)
    });
}

/// Waits until all that was asked of the plan has been answered, and nothing more comes.
fn settled(window: &Window) {
    let quiet = "return document.querySelector('.outcome')?.getAttribute('aria-busy') + \
                 [...document.querySelectorAll('[role=slider]')].map((it) => it.ariaValueText)";
    let mut before = String::new();
    window.wait_until("the plan has come to rest", || {
        std::thread::sleep(std::time::Duration::from_millis(600));
        let now = window.script(quiet);
        let same = now == before && now.starts_with("false");
        before = now;
        same
    });
}

/// Drags a handle, then does the same by keys: both give the file that typing gives, and one undo
/// takes either back.
fn by_pointer_and_by_keys(text: &str, steps: &[&str], id: &str, key: &str, by: (i32, i32)) {
    let (_folder, file, window) = open(text);
    window.wait_for_text("figure-length", "");
    steps.iter().for_each(|step| window.click(step));
    let at = || attribute(&window, id, "aria-valuetext");
    window.wait_until("the handle is there", || !at().is_empty());
    let before = at();
    window.drag(id, by);
    window.wait_until("the drag has moved it", || at() != before);
    settled(&window);
    let words = at();
    let typed = words.strip_prefix("1 in ").unwrap_or(&words);
    let expected = set(text, key, typed).expect("an edit");
    saved(&window, &file, &expected);
    picture(&window, &format!("window-dragged-{id}.png"));
    window.click("undo");
    window.wait_until("one undo takes the drag back", || at() == before);
    saved(&window, &file, text);

    let field = format!("field-{}", key.replace('.', "-"));
    let towards = if 0 < by.0 || by.1 < 0 { UP } else { DOWN };
    for _ in 0..100 {
        window.press(id, towards);
        if window.value(&field) == typed {
            break;
        }
    }
    window.wait_until("the keys have moved it", || at() == words);
    saved(&window, &file, &expected);
    window.press(id, &towards.repeat(2));
    window.wait_until("the keys go on", || at() != words);
    window.press(id, ESCAPE);
    window.wait_until("Escape takes back what they did", || at() == words);
    saved(&window, &file, &expected);
}

#[test]
fn the_height_is_dragged() {
    for imperial in [false, true] {
        let text = Library::example(imperial);
        by_pointer_and_by_keys(
            text,
            &["step-wall"],
            "handle-height",
            "wall.height",
            (0, -20),
        );
    }
}

#[test]
fn a_face_is_dragged() {
    for imperial in [false, true] {
        let text = Library::example(imperial);
        let (id, key) = ("handle-face-right", "wall.batter");
        by_pointer_and_by_keys(text, &["step-wall"], id, key, (5, 0));
    }
}

#[test]
fn the_ground_is_dragged() {
    for imperial in [false, true] {
        let (id, key) = ("handle-ground-1", "wall.ground.1.level");
        let text = surveyed(imperial);
        by_pointer_and_by_keys(&text, &["step-line", "drawing-elevation"], id, key, (0, 8));
    }
}

/// A wall dragged below its throughs says so, and the handle goes back to the last sound plan.
#[test]
fn what_is_refused_is_said_and_the_handle_goes_back() {
    let (_folder, file, window) = open_example();
    let id = "handle-height";
    window.wait_for_text("figure-length", "");
    window.click("step-wall");
    let at = || attribute(&window, id, "aria-valuetext");
    window.drag(id, (0, 400));
    window.wait_for_text("handle-trouble", "not between the ground and the top");
    window.wait_for_text("trouble-wall-height", "not between the ground and the top");
    picture(&window, "window-dragged-refused.png");
    let last_sound = at();
    assert_ne!(last_sound, "0.30 m");
    window.click("undo");
    window.wait_until("undo lets go of what was refused", || {
        window.text("trouble-wall-height").is_empty()
    });
    assert_eq!(at(), last_sound);
    assert_eq!(
        fs::read_to_string(&file).expect("reads"),
        Library::example(false),
        "nothing saved unasked"
    );
}

/// A lesson carried on by a quarter of an hour or more, by pointer and by keys, is the same wish.
#[test]
fn a_lesson_is_carried_to_another_time() {
    let (_folder, file, window) = open_example();
    let id = "entry-throughs";
    window.wait_for_text("figure-length", "");
    window.click("step-days");
    let said = || window.text("entries-said");
    let wished = || window.value("lesson-throughs-time");
    window.drag(id, (60, 0));
    window.wait_until("a wish", || !wished().is_empty());
    let text = Library::example(false);
    let day = window
        .value("lesson-throughs-day")
        .parse::<usize>()
        .expect("a day")
        - 1;
    let time = format!("{}:00", wished()).parse().expect("a time");
    let expected = wish(text, "throughs", day, Some(time)).expect("an edit");
    saved(&window, &file, &expected);
    picture(&window, "window-dragged-lesson.png");
    let words = format!("Day {}, {}", day + 1, wished());
    window.click("undo");
    window.wait_until("one undo takes it back", || wished().is_empty());

    for _ in 0..20 {
        window.press(id, RIGHT);
        if said().ends_with(&words) {
            break;
        }
    }
    assert!(said().ends_with(&words), "{} is not {words}", said());
    window.press(id, ENTER);
    window.wait_until("the same wish", || !wished().is_empty());
    saved(&window, &file, &expected);
}

/// A break goes to another time of its day.
#[test]
fn a_break_is_carried_by_keys_and_put_back() {
    let (_folder, file, window) = open_example();
    let id = "entry-break-0-1";
    window.wait_for_text("figure-length", "");
    window.click("step-days");
    let begins = || window.value("field-day-0-breaks-1-start");
    window.press(id, &RIGHT.repeat(2));
    window.wait_for_text("entries-said", "Day 1, 13:15");
    window.press(id, ESCAPE);
    window.wait_for_text("entries-said", "Put back");
    window.press(id, &format!("{RIGHT}{ENTER}"));
    let expected = set(Library::example(false), "day.0.breaks.1.start", "13:00").expect("an edit");
    saved(&window, &file, &expected);
    window.click("breaks-0-open");
    window.wait_until("the field has it", || begins() == "13:00");
}

const ROSTER: &str = "[[student]]\nname = \"Ada\"\n\n[[student]]\nname = \"Ben\"\n\n[[student]]\n\
                      name = \"Cleo\"\n\n[[student]]\nname = \"Dan\"\n\n[group]\ninstructors = 1\n";

/// One name dropped on another is a wish of the first, by pointer and by keys.
#[test]
fn a_student_is_dropped_on_another() {
    let example = Library::example(false);
    let (head, rest) = example.split_once("[group]").expect("a group");
    let (_, wall) = rest.split_once("[wall]").expect("a wall");
    let text = format!("{head}{ROSTER}\n[wall]{wall}");
    let (_folder, file, window) = open(&text);
    window.wait_for_text("figure-length", "");
    window.click("step-group");
    let order = || {
        window.script(
        "return [...document.querySelectorAll('[data-student]')].map((it) => it.dataset.student).join()",
    )
    };
    window.wait_until("four names", || order().split(',').count() == 4);
    let names: Vec<String> = order().split(',').map(str::to_owned).collect();
    let place = |name: &str| {
        ["Ada", "Ben", "Cleo", "Dan"]
            .iter()
            .position(|it| *it == name)
    };
    let (first, third) = (place(&names[0]).expect("known"), &names[2]);
    let id = format!("student-{first}");
    let expected = set(&text, &format!("student.{first}.with"), third).expect("an edit");
    let apart = window.script(&format!(
        "const top = (id) => document.getElementById(id).getBoundingClientRect().top; \
         return top('student-{}') - top('{id}')",
        place(third).expect("known")
    ));
    let down = apart.parse::<f64>().expect("pixels").round();
    window.drag(&id, (0, format!("{down:.0}").parse().expect("whole")));
    window.wait_for_text("students-said", &names[0]);
    saved(&window, &file, &expected);
    picture(&window, "window-dragged-student.png");
    window.click("undo");
    saved(&window, &file, &text);
    window.press(&id, &format!("{}{ENTER}", DOWN.repeat(2)));
    saved(&window, &file, &expected);
}
