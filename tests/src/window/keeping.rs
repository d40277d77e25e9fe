//! The real window, killed and started again, and its file changed by another program.

use super::driver::Window;
use super::{expected, picture};
use files::Library;
use files::course::set;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

/// The example in one folder, and another for the program's own things.
fn example() -> (tempfile::TempDir, PathBuf, PathBuf) {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("hollin-bank.walling");
    fs::write(&file, Library::example(false)).expect("writes");
    let data = folder.path().join("data");
    (folder, file, data)
}

fn edited(key: &str, typed: &str) -> String {
    set(Library::example(false), key, typed).expect("an edit")
}

fn read(file: &Path) -> String {
    fs::read_to_string(file).expect("reads")
}

fn shows(window: &Window, id: &str) {
    window.wait_until(&format!("{id} is shown"), || !window.text(id).is_empty());
}

fn is_gone(window: &Window, id: &str) {
    window.wait_until(&format!("{id} is gone"), || window.text(id).is_empty());
}

/// Waits until the journal holds a text; the window says nothing of it, and must not.
fn wait_for_journal(window: &Window, data: &Path, text: &str) {
    let folder = data.join("invalid.coursewright.desktop/unsaved");
    let holds = |file: &Path| fs::read_to_string(file).is_ok_and(|kept| kept.contains(text));
    window.wait_until("the change is kept", || {
        let entries = fs::read_dir(&folder).into_iter().flatten().flatten();
        entries.map(|entry| entry.path()).any(|file| holds(&file))
    });
}

/// Ends the program that has a file open as a pulled plug would.
fn kill(file: &Path) {
    let ours = |id: &str| {
        let command = fs::read(format!("/proc/{id}/cmdline")).unwrap_or_default();
        let mut parts = command.split(|byte| *byte == 0);
        let program = parts.next().unwrap_or_default();
        program.ends_with(b"coursewright-desktop")
            && parts.next() == Some(file.as_os_str().as_encoded_bytes())
    };
    let ids = fs::read_dir("/proc").expect("lists").flatten();
    let ids = ids.map(|entry| entry.file_name().to_string_lossy().into_owned());
    let id = ids.into_iter().find(|id| ours(id)).expect("the program");
    let killed = Command::new("kill").args(["-9", &id]).status();
    assert!(killed.expect("kill runs").success());
}

#[test]
fn changes_outlive_a_killed_program_and_are_taken_or_undone() {
    let (_folder, file, data) = example();
    let window = Window::open_in(&file, &data);
    window.wait_for_text("figure-length", " m");
    window.click("step-group");
    window.type_into("field-group-novices", "2");
    wait_for_journal(&window, &data, "novices = 2");
    kill(&file);
    drop(window);
    assert_eq!(
        read(&file),
        Library::example(false),
        "nothing saved unasked"
    );

    let window = Window::open_in(&file, &data);
    let before = expected(Library::example(false)).written.wall.length;
    window.wait_for_text("figure-length", &before);
    window.wait_for_text("note-kept", "hollin-bank.walling of");
    window.wait_for_text("note-kept", "novices 6 to 2");
    picture(&window, "window-kept.png");
    window.click("note-kept-take");
    let after = expected(&edited("group.novices", "2")).written.wall.length;
    window.wait_for_text("figure-length", &after);
    window.wait_for_text("undo", "novices 6 to 2");
    window.wait_for_text("saved", "changed, not saved");
    is_gone(&window, "note-kept");
    window.click("undo");
    window.wait_for_text("figure-length", &before);
    window.wait_for_text("saved", "saved");
    assert_eq!(read(&file), Library::example(false));
}

#[test]
fn a_file_changed_outside_is_told_and_nothing_is_overwritten_unasked() {
    let (_folder, file, data) = example();
    let window = Window::open_in(&file, &data);
    window.wait_for_text("figure-length", " m");
    window.click("step-wall");
    window.type_into("field-wall-height", "1.2 m");
    window.wait_for_text("saved", "changed, not saved");
    let theirs = edited("group.novices", "2");
    fs::write(&file, &theirs).expect("writes");
    shows(&window, "note-changed");
    picture(&window, "window-changed-outside.png");

    window.click("note-changed-keepMine");
    shows(&window, "note-mine");
    window.click("save");
    shows(&window, "note-overwrite");
    assert_eq!(read(&file), theirs, "not before it was answered");
    window.click("note-overwrite-dontSave");
    shows(&window, "note-mine");
    window.click("save");
    window.click("note-overwrite-overwrite");
    let mine = edited("wall.height", "1.2 m");
    window.wait_until("mine is saved", || read(&file) == mine);
    is_gone(&window, "note-overwrite");

    fs::write(&file, &theirs).expect("writes");
    window.click("note-changed-readAnew");
    window.wait_for_text("figure-length", &expected(&theirs).written.wall.length);
    is_gone(&window, "note-changed");
    window.click("undo");
    window.wait_for_text("figure-length", &expected(&mine).written.wall.length);

    fs::remove_file(&file).expect("deletes");
    shows(&window, "note-gone");
    window.click("note-gone-save");
    window.wait_until("it is written anew", || {
        fs::read_to_string(&file).is_ok_and(|text| text == mine)
    });
    is_gone(&window, "note-gone");
}

/// The second start ends by itself, because the first window has come forward.
#[test]
fn a_second_start_on_the_same_file_leaves_one_window() {
    let (_folder, file, data) = example();
    let window = Window::open_in(&file, &data);
    window.wait_for_text("figure-length", " m");
    let mut second = window.start_beside(&file, &data);
    let ended = second.wait().expect("it ends");
    assert!(ended.success(), "{ended}");
    assert!(window.text("note-elsewhere").is_empty());
}
