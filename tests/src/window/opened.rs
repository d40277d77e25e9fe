//! Files opened as a file manager opens them: with any path a person may have.

use crate::Window;
use files::Library;
use files::course::set;
use std::fs;

/// Blanks, marks that shells and addresses know, and letters of other languages.
const PATH: [&str; 2] = ["Mauer am Bühl (1)", "50% Käse & Stein #2 石.walling"];

#[test]
fn a_path_of_blanks_marks_and_letters_is_opened_and_saved_to() {
    let folder = tempfile::tempdir().expect("a folder");
    let own = folder.path().join(PATH[0]);
    fs::create_dir(&own).expect("a folder of its own");
    let file = own.join(PATH[1]);
    fs::write(&file, Library::example(false)).expect("writes");
    let window = Window::open(&file);
    window.wait_for_text("figure-length", " m");
    let head = window.script("return document.querySelector('header').textContent");
    assert!(head.contains(PATH[1]), "{head}");

    window.click("step-group");
    window.type_into("field-group-novices", "5");
    window.wait_for_text("saved", "not saved");
    window.click("save");
    let due = set(Library::example(false), "group.novices", "5").expect("an edit");
    window.wait_until("the file is saved", || {
        fs::read_to_string(&file).is_ok_and(|text| text == due)
    });
    let there = fs::read_dir(&own).expect("reads").count();
    assert_eq!(there, 1, "another file was written beside it");
}
