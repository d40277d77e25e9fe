//! Saving while others write to the same file: nothing is overwritten unasked, nothing is lost.

use super::*;
use crate::outside::{self, Outside};
use std::fs;

/// The example as another program would leave it.
fn theirs(novices: &str) -> String {
    files::course::set(Library::example(false), "group.novices", novices).expect("an edit")
}

/// What the timer does.
fn look(desk: &mut Desk, path: &Path) {
    desk.noticed(outside::look(path).expect("looks"));
}

fn read(path: &Path) -> String {
    fs::read_to_string(path).expect("reads")
}

#[test]
fn a_file_changed_by_someone_else_is_not_overwritten() {
    let (_folder, path, mut desk) = desk_with_file();
    desk.edit("group.novices", "4", false).expect("edits");
    for theirs in [b"someone else's".as_slice(), b"\xff\xfeno text", b""] {
        fs::write(&path, theirs).expect("writes");
        assert!(matches!(desk.save(&path), Err(Error::ChangedOutside(_))));
        assert_eq!(fs::read(&path).expect("reads"), theirs);
    }
    assert!(desk.unsaved());
}

#[test]
fn an_unchanged_file_is_saved_to_without_a_question_again_and_again() {
    let (_folder, path, mut desk) = desk_with_file();
    for novices in ["4", "5", "6"] {
        desk.edit("group.novices", novices, false).expect("edits");
        look(&mut desk, &path);
        desk.save(&path).expect("saves");
        look(&mut desk, &path);
        assert_eq!((desk.outside(), desk.unsaved()), (&Outside::Same, false));
        assert_eq!(read(&path), desk.text());
    }
}

#[test]
fn reading_anew_is_one_step_that_can_be_undone() {
    let (_folder, path, mut desk) = desk_with_file();
    desk.edit("wall.height", "1.2 m", false).expect("edits");
    let mine = desk.text().to_owned();
    fs::write(&path, theirs("3")).expect("writes");
    look(&mut desk, &path);
    assert_eq!(desk.outside().shape(), shapes::window::Outside::Changed);
    assert_eq!(desk.text(), mine, "nothing is taken unasked");

    desk.read_anew().expect("reads");
    assert_eq!(desk.text(), theirs("3"));
    assert_eq!((desk.outside(), desk.unsaved()), (&Outside::Same, false));
    let undo = desk.view().undo.expect("a step");
    let keys: Vec<_> = undo.iter().map(|it| it.key.as_str()).collect();
    assert_eq!(keys, ["group.novices", "wall.height"]);

    desk.undo().expect("undoes");
    assert_eq!(desk.text(), mine);
    assert!(desk.unsaved());
    desk.save(&path)
        .expect("what was read anew is known, so nothing is asked");
    assert_eq!(read(&path), mine);
}

#[test]
fn a_file_that_can_not_be_read_anew_leaves_the_course_as_it_is() {
    let (_folder, path, mut desk) = desk_with_file();
    desk.edit("wall.height", "1.2 m", false).expect("edits");
    let mine = desk.text().to_owned();
    fs::write(&path, "half a fi").expect("writes");
    look(&mut desk, &path);
    assert!(matches!(
        desk.read_anew(),
        Err(Error::Files(files::Error::Refused(_)))
    ));
    assert_eq!((desk.text(), desk.unsaved()), (mine.as_str(), true));
    assert!(matches!(desk.save(&path), Err(Error::ChangedOutside(_))));
}

#[test]
fn who_keeps_their_own_is_asked_once_when_saving() {
    let (_folder, path, mut desk) = desk_with_file();
    fs::write(&path, theirs("3")).expect("writes");
    look(&mut desk, &path);
    desk.keep_mine();
    look(&mut desk, &path);
    assert_eq!(desk.outside().shape(), shapes::window::Outside::Mine);
    assert!(desk.unsaved(), "closing must ask");
    assert!(matches!(desk.save(&path), Err(Error::ChangedOutside(_))));
    assert_eq!(read(&path), theirs("3"));

    desk.save_over().expect("saves");
    assert_eq!(read(&path), Library::example(false));
    assert!(!desk.unsaved());
    desk.edit("wall.height", "1.2 m", false).expect("edits");
    desk.save(&path).expect("not asked again");
}

/// Between the question and the answer the file changes once more: that was not agreed to.
#[test]
fn saving_over_takes_only_what_the_person_was_told_of() {
    let (_folder, path, mut desk) = desk_with_file();
    desk.edit("wall.height", "1.2 m", false).expect("edits");
    fs::write(&path, theirs("3")).expect("writes");
    look(&mut desk, &path);
    fs::write(&path, theirs("2")).expect("writes");
    assert!(matches!(desk.save_over(), Err(Error::ChangedOutside(_))));
    assert_eq!(read(&path), theirs("2"));
    desk.save_over().expect("now it was told");
    assert_eq!(read(&path), desk.text());
}

#[test]
fn a_deleted_file_is_told_and_saving_writes_it_anew() {
    let (_folder, path, mut desk) = desk_with_file();
    fs::remove_file(&path).expect("deletes");
    look(&mut desk, &path);
    assert_eq!((desk.outside(), desk.unsaved()), (&Outside::Gone, true));
    desk.save(&path).expect("saves");
    assert_eq!(read(&path), Library::example(false));
    assert_eq!((desk.outside(), desk.unsaved()), (&Outside::Same, false));
}

#[test]
fn a_file_that_comes_back_is_as_it_was() {
    let (_folder, path, mut desk) = desk_with_file();
    desk.edit("wall.height", "1.2 m", false).expect("edits");
    fs::remove_file(&path).expect("deletes");
    look(&mut desk, &path);
    fs::write(&path, Library::example(false)).expect("writes");
    look(&mut desk, &path);
    assert_eq!(desk.outside(), &Outside::Same);
    desk.save(&path).expect("saves");
}

/// Two machines of one sync folder, and the same change made on both.
#[test]
fn the_same_change_made_elsewhere_is_no_clash() {
    let (_folder, path, mut desk) = desk_with_file();
    desk.edit("group.novices", "3", false).expect("edits");
    fs::write(&path, desk.text()).expect("writes");
    look(&mut desk, &path);
    assert_eq!((desk.outside(), desk.unsaved()), (&Outside::Same, false));
}

#[test]
fn saving_elsewhere_leaves_both() {
    let (folder, path, mut desk) = desk_with_file();
    desk.edit("wall.height", "1.2 m", false).expect("edits");
    fs::write(&path, theirs("3")).expect("writes");
    look(&mut desk, &path);
    let other = folder.path().join("two.walling");
    desk.save_as(other.clone()).expect("saves");
    assert_eq!(
        (read(&path), read(&other)),
        (theirs("3"), desk.text().to_owned())
    );
    assert_eq!((desk.outside(), desk.unsaved()), (&Outside::Same, false));
}
