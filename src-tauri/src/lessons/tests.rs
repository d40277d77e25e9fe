//! Lessons written at the desk: the course follows the shelf, and the shelf never breaks the course.

use crate::desk::Desk;
use files::Library;
use shapes::window::LessonChange;
use std::path::PathBuf;

fn desk() -> (tempfile::TempDir, PathBuf, Desk) {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("one.walling");
    std::fs::write(&path, Library::example(false)).expect("writes");
    let store = folder.path().join("store");
    let desk = Desk::set_up(Some(path), &store).expect("opens");
    (folder, store, desk)
}

fn word(key: &str, typed: &str) -> LessonChange {
    LessonChange::Word(key.to_owned(), typed.to_owned())
}

fn given(desk: &Desk) -> Vec<String> {
    let days = desk.view().written.days;
    let entries = days.into_iter().flat_map(|day| day.entries);
    entries.map(|it| it.what).collect()
}

#[test]
fn a_built_in_lesson_is_changed_kept_and_given_back() {
    let (_folder, store, mut desk) = desk();
    let built_in = desk.lesson("throughs").expect("there");
    assert!(built_in.saved && built_in.fault.is_none() && built_in.whose == "built-in");

    let draft = desk.change_lesson("throughs", &built_in.text, &word("title", "Tie stones"));
    assert!(!draft.saved && desk.would_be_lost());
    assert_eq!(draft.parts.expect("parts").title, "Tie stones");
    assert!(
        given(&desk).contains(&"Throughs".to_owned()),
        "nothing is saved yet"
    );

    let kept = desk.save_lesson("throughs", &draft.text).expect("saves");
    assert!(kept.draft.saved && kept.draft.whose == "replaces" && !desk.would_be_lost());
    assert!(
        given(&desk).contains(&"Tie stones".to_owned()),
        "{:?}",
        given(&desk)
    );
    let file = store.join("lessons/cards/throughs.md");
    assert_eq!(std::fs::read_to_string(&file).expect("reads"), draft.text);

    let back = desk
        .take_lesson_away("throughs", &draft.text)
        .expect("takes it away");
    assert!(!file.exists() && !back.draft.saved && back.draft.whose == "built-in");
    assert_eq!(
        back.draft.text, draft.text,
        "what was written stays at the editor"
    );
    assert!(given(&desk).contains(&"Throughs".to_owned()));
    desk.save_lesson("throughs", &back.draft.text)
        .expect("saves again");
    assert!(given(&desk).contains(&"Tie stones".to_owned()));
}

#[test]
fn a_new_lesson_is_taught_once_it_says_so() {
    let (_folder, _store, mut desk) = desk();
    let draft = desk.new_lesson("Frost & stone");
    assert_eq!(
        (draft.id.as_str(), draft.whose.as_str()),
        ("frost-stone", "new")
    );
    let always = LessonChange::Lines("when".to_owned(), vec!["always".to_owned()]);
    let draft = desk.change_lesson(&draft.id, &draft.text, &always);
    let kept = desk.save_lesson(&draft.id, &draft.text).expect("saves");
    let on_shelf = kept
        .shelf
        .lessons
        .iter()
        .find(|it| it.id == "frost-stone")
        .expect("there");
    assert!(on_shelf.taught && on_shelf.whose == "own", "{on_shelf:?}");
    assert!(given(&desk).contains(&"Frost & stone".to_owned()));
}

#[test]
fn a_broken_lesson_is_kept_and_does_not_count() {
    let (_folder, store, mut desk) = desk();
    let text = desk.lesson("copes").expect("there").text;
    let draft = desk.change_lesson("copes", &text, &word("minutes", "ages"));
    let fault = draft.fault.expect("a fault");
    assert_eq!((fault.part.as_str(), fault.line), ("minutes", 5));
    let kept = desk.save_lesson("copes", &draft.text).expect("saves");
    assert!(store.join("lessons/cards/copes.md").is_file());
    let copes = kept
        .shelf
        .lessons
        .iter()
        .find(|it| it.id == "copes")
        .expect("there");
    assert!(copes.fault.starts_with("line 5: "), "{}", copes.fault);
    assert!(
        given(&desk).contains(&"Copes".to_owned()),
        "the built-in one counts"
    );
    assert!(
        desk.lesson_job("copes", &draft.text)
            .expect("no trouble")
            .is_none()
    );
    let whole = desk.change_lesson(
        "copes",
        &draft.text,
        &LessonChange::Whole("no head".to_owned()),
    );
    assert!(whole.parts.is_none() && whole.fault.is_some());
}

/// A course that asks for a lesson can't be planned without it: the shelf stays as it was.
#[test]
fn a_lesson_that_the_course_asks_for_is_not_taken_away() {
    let (_folder, store, mut desk) = desk();
    let draft = desk.new_lesson("Frost");
    desk.save_lesson("frost", &draft.text).expect("saves");
    desk.edit("timetable.teach", "frost", false)
        .expect("asks for it");
    assert!(given(&desk).contains(&"Frost".to_owned()));
    assert!(desk.take_lesson_away("frost", &draft.text).is_err());
    assert!(store.join("lessons/cards/frost.md").is_file());
    assert!(given(&desk).contains(&"Frost".to_owned()));
    desk.edit("timetable.teach", "", false)
        .expect("asks no more");
    desk.take_lesson_away("frost", &draft.text)
        .expect("takes it away");
}
