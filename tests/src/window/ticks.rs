//! The load list in the real window: what was ticked off is there when the program is started again.

use super::driver::Window;
use files::Library;
use std::fs;

#[test]
fn what_was_ticked_off_the_load_list_is_there_after_a_restart() {
    let folder = tempfile::tempdir().expect("a folder");
    let data = tempfile::tempdir().expect("a data folder");
    let file = folder.path().join("course.walling");
    // The example has a van.
    let text = Library::example(false);
    fs::write(&file, text).expect("a course");

    let first = "[...document.querySelectorAll('main li input[type=checkbox]')]";
    let ticked = |window: &Window| {
        window.script(&format!(
            "return {first}.filter((it) => it.checked).map((it) => it.id).join()"
        ))
    };
    let window = Window::open_in(&file, data.path());
    window.wait_for_text("figure-length", " m");
    window.click("step-load");
    window.wait_for_text("ticked-1", "0 of ");
    let id = window.script(&format!("return {first}[1].id"));
    window.click(&id);
    window.wait_for_text("ticked-1", "1 of ");
    drop(window);

    let window = Window::open_in(&file, data.path());
    window.wait_for_text("figure-length", " m");
    window.click("step-today");
    window.click("day-load-open");
    window.wait_for_text("ticked-1", "1 of ");
    assert_eq!(ticked(&window), id);
    window.click(&id);
    window.wait_for_text("ticked-1", "0 of ");
    assert_eq!(
        fs::read_to_string(&file).expect("a course"),
        text,
        "the file is the plan alone"
    );
}
