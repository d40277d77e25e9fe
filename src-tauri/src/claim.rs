//! Which window a course file is open in, on this machine.
//!
//! Each open course has a small file in the data folder, locked for as long as the program lives.
//! The system lets go of the lock however the program ends, so none is ever stale. Somebody else
//! who wants the course knocks: a file beside the lock, which the first window takes away when it
//! has come forward. No daemon and no network is needed for that.

use std::fs::{self, File, TryLockError};
use std::io::Write;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant, SystemTime};
use uuid::Uuid;

/// Where the locks lie in the data folder.
const FOLDER: &str = "open";
/// How long a window that lives takes at most to answer; one that hangs does not.
const PATIENCE: Duration = Duration::from_secs(2);
/// How the places of courses that were never saved begin.
const NEW: &str = "new-";
/// A lock of a course never saved that is older than this and free was left by a crash.
const STALE: Duration = Duration::from_secs(60);

/// The lock of an open course, or the knowledge that another window has it.
pub(crate) struct Claim {
    /// The name of the course's file among the locks.
    pub(crate) place: String,
    folder: PathBuf,
    held: Held,
}

/// Who has the course.
enum Held {
    /// This window, as long as it keeps the lock open.
    Here { _lock: File },
    /// Another window.
    Elsewhere,
    /// The system knows no locks here. The course is this window's then as well, and what others
    /// do to its file is still noticed.
    Unknown,
}

impl Claim {
    /// Claims a course. `sitting` names one that has no file yet.
    pub(crate) fn of(data: &Path, path: Option<&Path>, sitting: &str) -> Self {
        let place = path.map_or_else(|| format!("{NEW}{sitting}"), place_of);
        let mut claim = Self {
            place,
            folder: data.join(FOLDER),
            held: Held::Elsewhere,
        };
        claim.try_again();
        claim
    }

    /// Whether the course is this window's.
    pub(crate) fn is_mine(&self) -> bool {
        !matches!(self.held, Held::Elsewhere)
    }

    /// Claims it if the other window has let go.
    pub(crate) fn try_again(&mut self) {
        if !self.is_mine() {
            self.held = locked(&self.folder, &self.place);
        }
    }

    /// Lets go of the course, so that it can be claimed under another name.
    pub(crate) fn let_go(&mut self) {
        // Nobody else asks for a course that has no file, so its lock can go.
        if self.is_mine() && self.place.starts_with(NEW) {
            let _ = fs::remove_file(lock(&self.folder, &self.place));
        }
        self.held = Held::Elsewhere;
    }

    /// Whether somebody has knocked; they are answered by this.
    pub(crate) fn is_knocked_at(&self) -> bool {
        self.is_mine() && fs::remove_file(knock(&self.folder, &self.place)).is_ok()
    }
}

impl Drop for Claim {
    fn drop(&mut self) {
        self.let_go();
    }
}

/// Whether a course is open in another window, which has now come forward.
pub(crate) fn other_window_answers(data: &Path, path: &Path) -> bool {
    let (folder, place) = (data.join(FOLDER), place_of(path));
    if is_free(data, &place) {
        return false;
    }
    let knock = knock(&folder, &place);
    if File::create(&knock).is_err() {
        return false;
    }
    let end = Instant::now() + PATIENCE;
    while Instant::now() < end {
        if !knock.exists() {
            return true;
        }
        std::thread::sleep(Duration::from_millis(20));
    }
    // Taken away at the last moment, it was answered.
    fs::remove_file(&knock).is_err()
}

/// Whether no program that runs has the course of this place.
pub(crate) fn is_free(data: &Path, place: &str) -> bool {
    match File::open(lock(&data.join(FOLDER), place)) {
        Ok(file) => !matches!(file.try_lock_shared(), Err(TryLockError::WouldBlock)),
        Err(_) => true,
    }
}

/// The name of a file among the locks: the same however it is spelt or linked to.
pub(crate) fn place_of(path: &Path) -> String {
    let real = real(path);
    Uuid::new_v5(&Uuid::NAMESPACE_URL, real.as_os_str().as_encoded_bytes()).to_string()
}

/// Takes away what crashes have left of courses that were never saved.
pub(crate) fn clear_leftovers(data: &Path) {
    let entries = fs::read_dir(data.join(FOLDER)).into_iter().flatten();
    for entry in entries.flatten() {
        let name = entry.file_name().to_string_lossy().into_owned();
        let Some(place) = name.strip_suffix(".lock") else {
            continue;
        };
        if place.starts_with(NEW) && is_older(&entry.path(), STALE) && is_free(data, place) {
            // Another program may have been quicker; then it is gone as well.
            let _ = fs::remove_file(entry.path());
        }
    }
}

/// Whether a file was last written so long ago.
pub(crate) fn is_older(path: &Path, than: Duration) -> bool {
    let written = fs::metadata(path).and_then(|about| about.modified());
    let age = written.map(|then| SystemTime::now().duration_since(then));
    matches!(age, Ok(Ok(age)) if than < age)
}

/// A path as the system knows it; a file that is not there yet by its folder.
fn real(path: &Path) -> PathBuf {
    let here = std::path::absolute(path).unwrap_or_else(|_| path.to_owned());
    let beside = || {
        let folder = fs::canonicalize(here.parent()?).ok()?;
        Some(folder.join(here.file_name()?))
    };
    fs::canonicalize(&here)
        .ok()
        .or_else(beside)
        .unwrap_or(here.clone())
}

/// Takes the lock, unless another program has it.
fn locked(folder: &Path, place: &str) -> Held {
    let opened = fs::create_dir_all(folder).and_then(|()| {
        let mut how = File::options();
        how.create(true).write(true).truncate(false);
        how.open(lock(folder, place))
    });
    let Ok(mut file) = opened else {
        return Held::Unknown;
    };
    match file.try_lock() {
        Ok(()) => {
            // For a person who looks into the folder.
            let _ = file.set_len(0);
            let _ = writeln!(file, "{}", std::process::id());
            Held::Here { _lock: file }
        }
        Err(TryLockError::WouldBlock) => Held::Elsewhere,
        Err(TryLockError::Error(_)) => Held::Unknown,
    }
}

fn lock(folder: &Path, place: &str) -> PathBuf {
    folder.join(format!("{place}.lock"))
}

fn knock(folder: &Path, place: &str) -> PathBuf {
    folder.join(format!("{place}.knock"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn course() -> (tempfile::TempDir, PathBuf) {
        let folder = tempfile::tempdir().expect("a folder");
        let path = folder.path().join("one.walling");
        fs::write(&path, "").expect("writes");
        (folder, path)
    }

    #[test]
    fn only_the_first_window_has_a_course_and_the_second_follows_when_it_lets_go() {
        let (data, path) = course();
        let first = Claim::of(data.path(), Some(&path), "a");
        let mut second = Claim::of(data.path(), Some(&path), "b");
        assert!(first.is_mine() && !second.is_mine());
        second.try_again();
        assert!(!second.is_mine());
        drop(first);
        second.try_again();
        assert!(second.is_mine());
    }

    #[test]
    fn courses_never_saved_and_different_files_are_open_side_by_side() {
        let (data, path) = course();
        let other = data.path().join("two.walling");
        let claims = [
            Claim::of(data.path(), Some(&path), "a"),
            Claim::of(data.path(), Some(&other), "b"),
            Claim::of(data.path(), None, "c"),
            Claim::of(data.path(), None, "d"),
        ];
        assert!(claims.iter().all(Claim::is_mine));
        let news = claims[2].place.clone();
        assert!(!is_free(data.path(), &news));
        drop(claims);
        assert!(is_free(data.path(), &news));
        assert!(!lock(&data.path().join(FOLDER), &news).exists());
    }

    #[test]
    fn a_link_and_another_spelling_are_the_same_file() {
        let (data, path) = course();
        let link = data.path().join("link.walling");
        std::os::unix::fs::symlink(&path, &link).expect("links");
        assert_eq!(place_of(&path), place_of(&link));
        let round = data.path().join("open").join("..").join("one.walling");
        fs::create_dir_all(data.path().join("open")).expect("makes it");
        assert_eq!(place_of(&path), place_of(&round));
    }

    /// A file keeps its name among the locks when it is deleted: its claim must not change hands.
    #[test]
    fn a_file_that_is_not_there_has_the_place_it_would_have() {
        let (_data, path) = course();
        let there = place_of(&path);
        fs::remove_file(&path).expect("deletes");
        assert_eq!(place_of(&path), there);
    }

    #[test]
    fn what_a_program_that_died_has_left_is_no_claim() {
        let (data, path) = course();
        let place = place_of(&path);
        let folder = data.path().join(FOLDER);
        fs::create_dir_all(&folder).expect("makes it");
        fs::write(lock(&folder, &place), "4242\n").expect("writes");
        assert!(is_free(data.path(), &place));
        assert!(Claim::of(data.path(), Some(&path), "a").is_mine());
    }

    #[test]
    fn a_window_that_lives_answers_a_knock_and_one_that_hangs_does_not() {
        let (data, path) = course();
        assert!(!other_window_answers(data.path(), &path), "nobody has it");
        let first = Claim::of(data.path(), Some(&path), "a");
        assert!(!first.is_knocked_at());
        std::thread::scope(|both| {
            let knocking = both.spawn(|| other_window_answers(data.path(), &path));
            let end = Instant::now() + PATIENCE;
            while !first.is_knocked_at() && Instant::now() < end {
                std::thread::sleep(Duration::from_millis(5));
            }
            assert!(knocking.join().expect("knocks"));
        });
        assert!(!other_window_answers(data.path(), &path), "it hangs");
        assert!(!first.is_knocked_at(), "nothing is left of the knock");
    }
}
