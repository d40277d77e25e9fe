//! The courses opened lately: a list in the instructor's folder, looked at afresh when it is shown.

use crate::desk::Desk;
use crate::kit::real;
use crate::shown::trouble;
use chrono::{Days, Local, NaiveDate};
use documents::{Course, FromStore};
use files::course::{CourseFile, Language};
use files::recent::{Recent, RecentList};
use files::{Error, Library};
use shapes::window::{Readiness, RecentCourse, Trouble};
use shapes::{Clock, DateStyle};
use std::path::{Path, PathBuf};

const FILE: &str = "recent.toml";
/// Where a list goes that can't be read, so that nothing of it is lost.
const UNREADABLE: &str = "recent-unreadable.toml";
/// The same weekday a year on.
const YEAR_DAYS: u64 = 52 * 7;

/// The list, and what became of one that can't be read.
pub(crate) fn list(folder: &Path) -> (RecentList, String) {
    let path = folder.join(FILE);
    let Ok(text) = std::fs::read_to_string(&path) else {
        // There is none before the first course.
        return (RecentList::default(), String::new());
    };
    match RecentList::parse(&text) {
        Some(list) => (list, String::new()),
        None => (
            RecentList::default(),
            format!(
                "The list of courses in {} can't be read, so a new one is begun; the old one is kept \
                 beside it as {UNREADABLE}. Your courses are where they were: open them with Open.",
                path.display()
            ),
        ),
    }
}

/// Puts the open course first on the list, if it has a file; the desk goes on to be used.
///
/// Where the list can't be written nothing is told: the course itself is what matters.
pub(crate) fn noted(desk: &Desk) -> &Desk {
    if let Some(path) = desk.path() {
        let written = &desk.course.written;
        let course = Recent {
            path: real(path),
            title: written.title.clone(),
            place: written.venue.clone(),
            dates: written.dates.clone(),
        };
        let _ = change(&desk.folder, |list| list.put_first(course));
    }
    desk
}

/// Takes a course off the list; its file stays.
pub(crate) fn forget(folder: &Path, path: &Path) -> Result<(), Error> {
    change(folder, |list| list.take_off(path))
}

fn change(folder: &Path, change: impl FnOnce(&mut RecentList)) -> Result<(), Error> {
    let path = folder.join(FILE);
    let (mut list, unreadable) = list(folder);
    let can_not_write = |cause| Error::Write {
        path: path.clone(),
        cause,
    };
    std::fs::create_dir_all(folder).map_err(can_not_write)?;
    if !unreadable.is_empty() {
        std::fs::rename(&path, folder.join(UNREADABLE)).map_err(can_not_write)?;
    }
    change(&mut list);
    files::save(&path, list.to_text().as_bytes())
}

/// A course of the list, as its file says now.
pub(crate) fn shown(recent: &Recent, on_desk: Option<&Path>) -> RecentCourse {
    let mut course = RecentCourse {
        path: recent.path.display().to_string(),
        file: part(recent.path.file_name()),
        folder: part(recent.path.parent().map(Path::as_os_str)),
        title: recent.title.clone(),
        place: recent.place.clone(),
        dates: recent.dates.clone(),
        again: String::new(),
        open: on_desk == Some(&recent.path),
        trouble: None,
    };
    match CourseFile::open(&recent.path) {
        Ok((file, _)) => {
            course.title.clone_from(&file.course.title);
            course.place.clone_from(&file.course.venue.name);
            course.dates = dates(&file);
            course.again = year_on(&file, Local::now().date_naive());
        }
        Err(error) => course.trouble = Some(gone(error, &recent.path)),
    }
    course
}

/// How ready a course is.
pub(crate) fn readiness(
    path: &Path,
    library: &Library,
    held: impl FnOnce(&[NaiveDate]) -> FromStore,
) -> Result<Readiness, crate::desk::Error> {
    let (file, text) = CourseFile::open(path)?;
    let days: Vec<NaiveDate> = file.course.days.iter().map(|day| day.date).collect();
    let store = held(&days);
    let asked = craft::plan::Asked::Figures;
    let course = Course::plan_again(file, library, store, asked, &mut Default::default())
        .map_err(|fault| Error::from(fault.in_file(&path.display().to_string(), &text)))?;
    let last = days.last().map(ToString::to_string).unwrap_or_default();
    let today = Local::now().date_naive().to_string();
    Ok(Readiness::of(&course.written.to_do, &last, &today))
}

/// A file that is not there is told as such, with what may have happened.
fn gone(error: Error, path: &Path) -> Trouble {
    let missing =
        matches!(&error, Error::Read { cause, .. } if cause.kind() == std::io::ErrorKind::NotFound);
    if missing {
        return Trouble {
            code: "gone".to_owned(),
            key: String::new(),
            what: format!("{} is not there any more.", path.display()),
            cure: "It may have been moved or renamed: open it where it is now with Open".to_owned(),
        };
    }
    Trouble {
        key: String::new(),
        ..trouble(error.into())
    }
}

fn dates(file: &CourseFile) -> String {
    let style = match file.language {
        Language::EnGb => DateStyle::British,
        Language::EnUs => DateStyle::American,
    };
    let dates: Vec<NaiveDate> = file.course.days.iter().map(|day| day.date).collect();
    Clock::new(&file.course, style).dates(&dates)
}

/// The same weekdays a year on, or as many years as it takes to lie ahead.
fn year_on(file: &CourseFile, today: NaiveDate) -> String {
    let first = file.course.days.first().map(|day| day.date);
    let years = std::iter::successors(first, |date| date.checked_add_days(Days::new(YEAR_DAYS)));
    let next = years.skip(1).find(|date| today <= *date);
    next.map(|date| date.to_string()).unwrap_or_default()
}

fn part(name: Option<&std::ffi::OsStr>) -> String {
    name.map(|it| it.to_string_lossy().into_owned())
        .unwrap_or_default()
}

/// The path on the list that the window named; only those are opened without a dialog.
pub(crate) fn known(folder: &Path, named: &str) -> Option<PathBuf> {
    let (list, _) = list(folder);
    let mut paths = list.courses.into_iter().map(|it| it.path);
    paths.find(|path| path.display().to_string() == named)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn desk() -> (tempfile::TempDir, PathBuf, Desk) {
        let folder = tempfile::tempdir().expect("a folder");
        let path = folder.path().join("one.walling");
        std::fs::write(&path, Library::example(false)).expect("writes");
        let desk = Desk::set_up(Some(path.clone()), &folder.path().join("own")).expect("opens");
        (folder, path, desk)
    }

    #[test]
    fn a_course_that_was_opened_is_found_again() {
        let (_folder, path, desk) = desk();
        noted(&desk);
        noted(&desk);
        let (list, notice) = list(&desk.folder);
        assert_eq!((list.courses.len(), notice.as_str()), (1, ""));
        let course = shown(&list.courses[0], Some(&real(&path)));
        assert_eq!(course.title, "Hollin Bank long weekend");
        assert_eq!(course.file, "one.walling");
        assert!(course.open && course.trouble.is_none());
        assert_eq!(known(&desk.folder, &course.path), Some(real(&path)));
        assert_eq!(known(&desk.folder, "/etc/passwd"), None);
        forget(&desk.folder, &real(&path)).expect("forgets");
        assert_eq!(known(&desk.folder, &course.path), None);
        assert!(path.exists(), "the course's own file stays");
    }

    #[test]
    fn a_file_that_has_moved_or_is_broken_is_told_by_its_old_name() {
        let (_folder, path, desk) = desk();
        noted(&desk);
        let (list, _) = list(&desk.folder);
        std::fs::write(&path, "format = 1\ntitel = 3\n").expect("writes");
        let broken = shown(&list.courses[0], None);
        assert_eq!(broken.title, "Hollin Bank long weekend");
        let trouble = broken.trouble.expect("why");
        assert!(trouble.what.contains("titel"), "{}", trouble.what);
        std::fs::remove_file(&path).expect("removes");
        let gone = shown(&list.courses[0], None).trouble.expect("why");
        assert_eq!(gone.code, "gone");
    }

    #[test]
    fn a_list_that_can_not_be_read_is_kept_beside_a_new_one() {
        let (_folder, _path, desk) = desk();
        std::fs::create_dir_all(&desk.folder).expect("makes it");
        std::fs::write(desk.folder.join(FILE), "course = 3").expect("writes");
        assert!(list(&desk.folder).1.contains(UNREADABLE));
        noted(&desk);
        assert_eq!(list(&desk.folder).0.courses.len(), 1);
        let kept = std::fs::read_to_string(desk.folder.join(UNREADABLE)).expect("reads");
        assert_eq!(kept, "course = 3");
    }

    #[test]
    fn readiness_is_that_of_the_plan() {
        let (_folder, path, desk) = desk();
        let told = readiness(&path, &desk.library, |_| FromStore::default()).expect("a plan");
        let left = desk.course.written.to_do.iter().filter(|it| it.counts);
        let today = Local::now().date_naive().to_string();
        if today.as_str() <= "2027-04-25" {
            assert!(told.words.starts_with(&format!("{} to do", left.count())));
        } else {
            assert_eq!(told.words, "over");
        }
    }

    /// By hand: 23 April 2027 is a Friday, and so are 21 April 2028 and 20 April 2029.
    #[test]
    fn the_same_weekday_a_year_on_is_offered() {
        let file = CourseFile::parse(Library::example(false)).expect("sound");
        let on = |today: &str| year_on(&file, today.parse().expect("a date"));
        assert_eq!(on("2027-01-04"), "2028-04-21");
        assert_eq!(on("2028-04-21"), "2028-04-21");
        assert_eq!(on("2028-04-22"), "2029-04-20");
    }
}
