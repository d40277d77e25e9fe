//! The journal and the desk together: crash, start again, take or leave.

use super::*;
use files::Library;
use std::fs;
use std::time::{Duration, Instant};

/// A run of the program on a data folder.
struct Run {
    desk: Mutex<Desk>,
    keeping: Keeping,
}

impl Run {
    fn start(data: &Path, file: Option<&Path>) -> Self {
        let desk = Desk::set_up(file.map(Path::to_owned), data).expect("opens");
        let (keeping, _) = Keeping::new(&desk);
        Self {
            desk: Mutex::new(desk),
            keeping,
        }
    }

    fn desk(&self) -> AtDesk<'_> {
        AtDesk::new(&self.desk, &self.keeping)
    }

    fn edit(&self, key: &str, typed: &str) {
        self.desk().edit(key, typed, false).expect("edits");
    }

    /// Ends without warning, once what was typed is kept: files and locks stay as they are.
    fn crash(self) {
        self.keeping.settle();
    }

    fn kept(&self) -> Vec<Kept> {
        let now = self.keeping.now();
        now.left.iter().map(|(_, _, it)| it.clone()).collect()
    }

    fn take(&self, kept: &Kept) -> Result<(), Error> {
        let mut desk = self.desk();
        self.keeping.take(&mut desk, &kept.id)
    }
}

fn course() -> (tempfile::TempDir, PathBuf, PathBuf) {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("one.walling");
    fs::write(&path, Library::example(false)).expect("writes");
    let data = folder.path().join("data");
    (folder, data, path)
}

fn entries(data: &Path) -> usize {
    fs::read_dir(data.join("unsaved")).map_or(0, Iterator::count)
}

#[test]
fn changes_of_a_crash_are_offered_and_one_undo_leads_to_what_the_disk_holds() {
    let (_folder, data, path) = course();
    let first = Run::start(&data, Some(&path));
    first.edit("wall.height", "1.2 m");
    first.edit("group.novices", "4");
    first.crash();
    assert_eq!(
        fs::read_to_string(&path).expect("reads"),
        Library::example(false)
    );

    let again = Run::start(&data, Some(&path));
    let [kept] = again.kept().try_into().expect("one offer");
    assert!(kept.here && !kept.since);
    assert_eq!(
        (kept.title.as_str(), kept.file.as_str()),
        ("Hollin Bank long weekend", "one.walling")
    );
    assert_eq!(kept.changes.len(), 2);
    assert!(!again.desk().unsaved(), "nothing is applied unasked");

    again.take(&kept).expect("takes");
    assert_eq!(again.kept(), []);
    let undo = again.desk().view().undo.expect("a step");
    assert_eq!(undo, kept.changes);
    again.keeping.settle();
    assert_eq!(entries(&data), 1, "kept anew, and the old entry is gone");
    again.desk().undo().expect("undoes");
    assert!(!again.desk().unsaved());
    assert_eq!(again.desk().text(), Library::example(false));
    again.keeping.settle();
    assert_eq!(entries(&data), 0);
}

#[test]
fn what_is_left_goes_and_is_never_offered_again() {
    let (_folder, data, path) = course();
    let first = Run::start(&data, Some(&path));
    first.edit("wall.height", "1.2 m");
    first.crash();
    let again = Run::start(&data, Some(&path));
    again.keeping.leave(&again.kept()[0].id);
    assert_eq!((again.kept(), entries(&data)), (Vec::new(), 0));
    assert!(!again.desk().unsaved());
}

/// Nobody has answered, and works on: both sittings' changes are kept, and stay so.
#[test]
fn an_offer_without_an_answer_is_not_overwritten_by_new_changes() {
    let (_folder, data, path) = course();
    for height in ["1.2 m", "1.3 m"] {
        let run = Run::start(&data, Some(&path));
        run.edit("wall.height", height);
        run.crash();
    }
    let third = Run::start(&data, Some(&path));
    let heights = third.kept();
    let mut heights: Vec<_> = heights
        .iter()
        .map(|it| it.changes[0].to.as_deref())
        .collect();
    heights.sort_unstable();
    assert_eq!(heights, [Some("1.2 m"), Some("1.3 m")]);
}

#[test]
fn a_course_never_saved_is_kept_and_taken_without_a_file() {
    let (_folder, data, path) = course();
    let first = Run::start(&data, None);
    first.edit("title", "Brand new");
    first.crash();

    let again = Run::start(&data, Some(&path));
    let [kept] = again.kept().try_into().expect("one offer");
    assert_eq!(
        (kept.title.as_str(), kept.file.as_str(), kept.here),
        ("Brand new", "", false)
    );
    again.take(&kept).expect("takes");
    let desk = again.desk();
    assert_eq!(desk.path(), None);
    assert!(desk.unsaved() && desk.text().contains("Brand new"));
    let undo = desk.view().undo.expect("a step");
    assert_eq!(undo[0].key, "title");
}

#[test]
fn changes_of_another_course_are_offered_and_open_it() {
    let (folder, data, path) = course();
    let first = Run::start(&data, Some(&path));
    first.edit("wall.height", "1.2 m");
    first.crash();
    let other = folder.path().join("two.walling");
    fs::write(&other, Library::example(true)).expect("writes");
    let again = Run::start(&data, Some(&other));
    let [kept] = again.kept().try_into().expect("one offer");
    assert!(!kept.here);
    again.take(&kept).expect("takes");
    assert_eq!(again.desk().path(), Some(path.as_path()));
    assert!(again.desk().unsaved());
    again.desk().save(&path).expect("saves");
    again.keeping.settle();
    assert_eq!(entries(&data), 0);
}

/// The file has been changed between the crash and the new start: both are there to choose from.
#[test]
fn a_file_changed_since_is_not_overwritten_by_what_was_kept() {
    let (_folder, data, path) = course();
    let first = Run::start(&data, Some(&path));
    first.edit("wall.height", "1.2 m");
    first.crash();
    let theirs = files::course::set(Library::example(false), "group.novices", "3").expect("edits");
    fs::write(&path, &theirs).expect("writes");

    let again = Run::start(&data, Some(&path));
    let [kept] = again.kept().try_into().expect("one offer");
    assert!(kept.since);
    again.take(&kept).expect("takes");
    let mut desk = again.desk();
    assert_eq!(desk.outside().shape(), window::Outside::Changed);
    assert!(matches!(desk.save(&path), Err(Error::ChangedOutside(_))));
    desk.undo().expect("undoes");
    assert_eq!(desk.text(), theirs, "one step back to what the disk holds");
}

#[test]
fn what_was_kept_of_a_deleted_or_broken_file_can_still_be_taken() {
    for there in [None, Some("half a fi")] {
        let (_folder, data, path) = course();
        let first = Run::start(&data, Some(&path));
        first.edit("wall.height", "1.2 m");
        first.crash();
        match there {
            None => fs::remove_file(&path).expect("deletes"),
            Some(text) => fs::write(&path, text).expect("writes"),
        }
        let again = Run::start(&data, None);
        let [kept] = again.kept().try_into().expect("one offer");
        assert!(kept.since);
        again.take(&kept).expect("takes");
        let mut desk = again.desk();
        assert!(desk.unsaved() && desk.text().contains("1.2 m"));
        assert_eq!(desk.save(&path).is_ok(), there.is_none());
    }
}

#[test]
fn nothing_is_kept_of_what_was_saved_or_closed_on_purpose() {
    let (_folder, data, path) = course();
    let run = Run::start(&data, Some(&path));
    run.edit("wall.height", "1.2 m");
    run.keeping.settle();
    assert_eq!(entries(&data), 1);
    run.desk().save(&path).expect("saves");
    run.keeping.settle();
    assert_eq!(entries(&data), 0);
    run.edit("wall.height", "1.3 m");
    run.keeping.end();
    drop(run);
    assert_eq!(Run::start(&data, Some(&path)).kept(), []);
}

#[test]
fn a_second_window_does_not_save_over_and_may_when_the_first_has_closed() {
    let (folder, data, path) = course();
    let first = Run::start(&data, Some(&path));
    let second = Run::start(&data, Some(&path));
    assert!(first.keeping.may_save(&path).is_ok());
    let refused = second.keeping.may_save(&path);
    assert!(matches!(refused, Err(Error::OpenElsewhere(_))));
    let other = folder.path().join("two.walling");
    assert!(
        second.keeping.may_save(&other).is_ok(),
        "under another name"
    );
    drop(first);
    second.keeping.turn();
    assert!(second.keeping.may_save(&path).is_ok());
}

#[test]
fn saving_under_another_name_takes_the_claim_along() {
    let (folder, data, path) = course();
    let first = Run::start(&data, Some(&path));
    let other = folder.path().join("two.walling");
    first.desk().save_as(other.clone()).expect("saves");
    let second = Run::start(&data, Some(&path));
    assert!(second.keeping.may_save(&path).is_ok());
    assert!(second.keeping.may_save(&other).is_err());
}

#[test]
fn opening_what_another_window_has_brings_that_forward_and_changes_nothing_here() {
    let (folder, data, path) = course();
    let first = Run::start(&data, Some(&path));
    let other = folder.path().join("two.walling");
    fs::write(&other, Library::example(true)).expect("writes");
    let second = Run::start(&data, Some(&other));
    std::thread::scope(|both| {
        let opening = both.spawn(|| second.desk().open(path.clone()));
        while !opening.is_finished() && !first.keeping.turn() {
            std::thread::sleep(Duration::from_millis(5));
        }
        let refused = opening.join().expect("opens");
        assert!(matches!(refused, Err(Error::InOtherWindow(_))));
    });
    assert_eq!(second.desk().path(), Some(other.as_path()));
}

/// One's own file under another name is not open in another window.
#[test]
fn the_open_course_can_be_opened_again() {
    let (folder, data, path) = course();
    let link = folder.path().join("link.walling");
    std::os::unix::fs::symlink(&path, &link).expect("links");
    let run = Run::start(&data, Some(&path));
    for name in [&path, &link] {
        run.desk().open(name.clone()).expect("opens");
        assert!(run.keeping.may_save(name).is_ok());
    }
}

#[test]
fn the_window_is_told_once_of_each_change() {
    let (_folder, data, path) = course();
    let run = Run::start(&data, Some(&path));
    let told = std::sync::Arc::new(Mutex::new(Vec::new()));
    let hears = told.clone();
    run.keeping.listen(Channel::new(move |body| {
        let json: serde_json::Value = body.deserialize()?;
        let outside = json["outside"].as_str().unwrap_or_default().to_owned();
        hears.lock().expect("hears").push(outside);
        Ok(())
    }));
    drop(run.desk());
    run.edit("wall.height", "1.2 m");
    fs::remove_file(&path).expect("deletes");
    for _ in 0..2 {
        run.desk()
            .noticed(crate::outside::look(&path).expect("looks"));
    }
    assert_eq!(*told.lock().expect("told"), ["same", "gone"]);
}

/// From a change to the moment it is safe on the disk; a measurement as well as a bound.
#[test]
fn a_change_is_kept_within_a_second_while_typing_goes_on() {
    let (_folder, data, path) = course();
    let run = Run::start(&data, Some(&path));
    let mut longest = Duration::ZERO;
    for number in 0..10 {
        run.edit("wall.height", &format!("1.{number}1 m"));
        let changed = Instant::now();
        run.keeping.settle();
        longest = longest.max(changed.elapsed());
    }
    assert!(longest < Duration::from_secs(1), "{longest:?}");
}
