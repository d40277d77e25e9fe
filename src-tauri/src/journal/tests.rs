//! The journal: what is kept, what is found again, and what is not.

use super::*;
use std::time::Instant;

fn entry(path: Option<&Path>, text: &str) -> Entry {
    Entry {
        path: path.map(|it| it.as_os_str().to_owned()),
        place: path.map_or_else(|| "new-a".to_owned(), claim::place_of),
        base: "title = \"One\"\n".to_owned(),
        text: text.to_owned(),
        at: 1_800_000_000,
    }
}

/// What another program, started later, finds.
fn found(data: &Path) -> Vec<Entry> {
    let other = Claim::of(data, None, "later");
    let (left, broken) = left(data, "later", &other);
    assert_eq!(broken, Vec::<PathBuf>::new());
    left.into_iter().map(|(_, entry)| entry).collect()
}

#[test]
fn what_is_kept_is_found_after_a_crash_until_it_is_saved() {
    let data = tempfile::tempdir().expect("a folder");
    let path = data.path().join("one.walling");
    fs::write(&path, "title = \"One\"\n").expect("writes");
    let writer = Writer::new(data.path(), "a");
    for text in ["title = \"Two\"\n", "title = \"Three\"\n"] {
        writer.keep(Some(entry(Some(&path), text)));
        writer.settle();
        assert_eq!(found(data.path()), [entry(Some(&path), text)]);
    }
    writer.keep(None);
    writer.settle();
    assert_eq!(found(data.path()), []);
    assert_eq!(files(data.path()), Vec::<PathBuf>::new());
}

#[test]
fn a_course_never_saved_is_kept_and_goes_when_it_gets_a_file() {
    let data = tempfile::tempdir().expect("a folder");
    let writer = Writer::new(data.path(), "a");
    writer.keep(Some(entry(None, "title = \"Two\"\n")));
    writer.settle();
    assert_eq!(found(data.path()).len(), 1);
    let path = data.path().join("one.walling");
    writer.keep(Some(entry(Some(&path), "title = \"Three\"\n")));
    writer.settle();
    assert_eq!(
        found(data.path()),
        [entry(Some(&path), "title = \"Three\"\n")]
    );
}

#[test]
fn closing_on_purpose_leaves_nothing_even_while_something_is_being_written() {
    let data = tempfile::tempdir().expect("a folder");
    let writer = Writer::new(data.path(), "a");
    for number in 0..20 {
        writer.keep(Some(entry(None, &format!("title = \"{number}\"\n"))));
    }
    writer.end();
    writer.keep(Some(entry(None, "title = \"late\"\n")));
    std::thread::sleep(Duration::from_millis(400));
    assert_eq!(files(data.path()), Vec::<PathBuf>::new());
}

#[test]
fn what_was_saved_just_before_the_end_is_not_offered() {
    let data = tempfile::tempdir().expect("a folder");
    let path = data.path().join("one.walling");
    let kept = entry(Some(&path), "title = \"Two\"\n");
    write(&kept, &kept.file(data.path(), "a")).expect("writes");
    fs::write(&path, "title = \"Two\"\n").expect("writes");
    assert_eq!(found(data.path()), []);
    assert_eq!(files(data.path()), Vec::<PathBuf>::new());
}

#[test]
fn what_a_window_that_lives_is_keeping_is_not_offered_to_another() {
    let data = tempfile::tempdir().expect("a folder");
    let path = data.path().join("one.walling");
    let living = Claim::of(data.path(), Some(&path), "a");
    let kept = entry(Some(&path), "title = \"Two\"\n");
    write(&kept, &kept.file(data.path(), "a")).expect("writes");
    assert_eq!(found(data.path()), []);
    drop(living);
    assert_eq!(found(data.path()).len(), 1);
    let mine = Claim::of(data.path(), Some(&path), "later");
    assert_eq!(
        left(data.path(), "later", &mine).0.len(),
        1,
        "claimed by me"
    );
}

#[test]
fn what_can_not_be_read_is_put_aside_and_told_once() {
    let data = tempfile::tempdir().expect("a folder");
    let kept = entry(None, "title = \"Two\"\n");
    let file = kept.file(data.path(), "a");
    write(&kept, &file).expect("writes");
    let whole = fs::read_to_string(&file).expect("reads");
    let spoilt: [&[u8]; 5] = [
        b"",
        b"\0\0\0\0",
        b"\xff\xfe",
        &whole.as_bytes()[..whole.len() / 2],
        &whole.replace("Two", "Ten").into_bytes(),
    ];
    for spoilt in spoilt {
        fs::write(&file, spoilt).expect("writes");
        let mine = Claim::of(data.path(), None, "later");
        let (found, broken) = left(data.path(), "later", &mine);
        assert_eq!(found.len(), 0, "{spoilt:?}");
        let [broken] = broken.as_slice() else {
            panic!("{spoilt:?}: {broken:?}");
        };
        assert_eq!(fs::read(broken).expect("is there"), spoilt);
        let again = left(data.path(), "later", &mine);
        assert_eq!((again.0.len(), again.1.len()), (0, 0), "told once");
    }
}

#[test]
fn what_is_taken_over_goes_only_when_the_new_journal_is_on_the_disk() {
    let data = tempfile::tempdir().expect("a folder");
    let kept = entry(None, "title = \"Two\"\n");
    let old = kept.file(data.path(), "a");
    write(&kept, &old).expect("writes");
    let writer = Writer::new(data.path(), "b");
    writer.take_over(old.clone());
    assert!(old.exists());
    writer.keep(Some(entry(None, "title = \"Two\"\n")));
    writer.settle();
    assert!(!old.exists());
    assert_eq!(found(data.path()).len(), 1);
}

/// A disk that takes nothing is told, and written to again when it does.
#[test]
fn a_journal_that_can_not_be_written_says_so_until_it_can() {
    let data = tempfile::tempdir().expect("a folder");
    fs::write(folder(data.path()), "in the way").expect("writes");
    let writer = Writer::new(data.path(), "a");
    writer.keep(Some(entry(None, "title = \"Two\"\n")));
    let end = Instant::now() + Duration::from_secs(5);
    while writer.failed().is_none() && Instant::now() < end {
        std::thread::sleep(Duration::from_millis(5));
    }
    assert!(writer.failed().is_some());
    fs::remove_file(folder(data.path())).expect("out of the way");
    writer.settle();
    assert_eq!((writer.failed(), found(data.path()).len()), (None, 1));
}

#[cfg(unix)]
#[test]
fn nobody_else_may_read_it() {
    use std::os::unix::fs::PermissionsExt;
    let data = tempfile::tempdir().expect("a folder");
    let kept = entry(None, "title = \"Two\"\n");
    let file = kept.file(data.path(), "a");
    write(&kept, &file).expect("writes");
    let mode = fs::metadata(&file).expect("looks").permissions().mode();
    assert_eq!(mode & 0o077, 0);
}
