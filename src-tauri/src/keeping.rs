//! What keeps the open course from being lost: the journal, the claim on its file, and what earlier
//! sittings have left. It follows the desk after each command by itself.

use crate::claim::{self, Claim};
use crate::desk::{Desk, Error};
use crate::history::changed;
use crate::journal::{self, Entry, Writer};
use crate::shown::plain;
use files::course::{self, CourseFile, Language};
use shapes::window::{self, Kept, Trouble};
use shapes::{Clock, DateStyle};
use std::ops::{Deref, DerefMut};
use std::path::{Path, PathBuf};
use std::sync::mpsc::{Receiver, Sender, channel};
use std::sync::{Mutex, MutexGuard, PoisonError};
use tauri::ipc::Channel;

/// All of it.
pub(crate) struct Keeping {
    data: PathBuf,
    /// Tells what this run of the program keeps from what others keep.
    sitting: String,
    journal: Writer,
    now: Mutex<Now>,
    poke: Sender<()>,
}

struct Now {
    claim: Claim,
    path: Option<PathBuf>,
    /// The text that was kept last, to see whether there is anything new.
    text: Option<String>,
    base: String,
    left: Vec<(PathBuf, Entry, Kept)>,
    broken: Vec<Trouble>,
    /// The window, once it listens, and what it was told last.
    window: Option<Channel<window::Keeping>>,
    told: Option<window::Keeping>,
}

impl Keeping {
    /// For the course that lies on the desk first. What comes out beside it is poked when the disk
    /// should be looked at at once.
    pub(crate) fn new(desk: &Desk) -> (Self, Receiver<()>) {
        let data = desk.folder.clone();
        let sitting = format!(
            "{:x}-{}",
            chrono::Utc::now().timestamp_millis(),
            std::process::id()
        );
        claim::clear_leftovers(&data);
        let (poke, poked) = channel();
        let mut now = Now {
            claim: Claim::of(&data, desk.path(), &sitting),
            path: desk.path().map(Path::to_owned),
            text: None,
            base: String::new(),
            left: Vec::new(),
            broken: Vec::new(),
            window: None,
            told: None,
        };
        now.find(&data, &sitting);
        let keeping = Self {
            journal: Writer::new(&data, &sitting),
            now: Mutex::new(now),
            data,
            sitting,
            poke,
        };
        (keeping, poked)
    }

    fn now(&self) -> MutexGuard<'_, Now> {
        self.now.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// After anything may have been done at the desk: keeps what is new, and tells the window.
    /// The disk is not waited for.
    fn follow(&self, desk: &Desk) {
        let mut now = self.now();
        if now.path.as_deref() != desk.path() {
            now.path = desk.path().map(Path::to_owned);
            // First of all, for it may be the same file under another name.
            now.claim.let_go();
            now.claim = Claim::of(&self.data, desk.path(), &self.sitting);
            now.text = None;
            now.find(&self.data, &self.sitting);
        }
        if now.is_new(desk) {
            let entry = desk.unsaved().then(|| Entry {
                path: desk.path().map(|it| it.as_os_str().to_owned()),
                place: now.claim.place.clone(),
                base: desk.base().to_owned(),
                text: desk.text().to_owned(),
                at: chrono::Utc::now().timestamp(),
            });
            self.journal.keep(entry);
        }
        self.tell(&mut now, desk);
    }

    /// Tells the window how things stand, if that is news.
    fn tell(&self, now: &mut Now, desk: &Desk) {
        let failed = self.journal.failed().map(|why| {
            plain(
                "not-kept",
                format!("Changes can't be kept safe between saves: {why}"),
                "Save often until this is mended.",
            )
        });
        let standing = window::Keeping {
            kept: now.left.iter().map(|(_, _, kept)| kept.clone()).collect(),
            outside: desk.outside().shape(),
            elsewhere: !now.claim.is_mine(),
            broken: now.broken.iter().cloned().chain(failed).collect(),
        };
        if now.told.as_ref() != Some(&standing)
            && let Some(window) = &now.window
            // A window that no longer listens is told nothing.
            && window.send(standing.clone()).is_ok()
        {
            now.told = Some(standing);
        }
    }

    /// The window listens from now on.
    pub(crate) fn listen(&self, window: Channel<window::Keeping>) {
        let mut now = self.now();
        now.window = Some(window);
        now.told = None;
    }

    /// Looks at the disk at once and not at the next turn of the timer.
    pub(crate) fn look_now(&self) {
        // Nobody looks any more when the program ends.
        let _ = self.poke.send(());
    }

    /// The timer's turn: whether another window asks this one to come forward.
    pub(crate) fn turn(&self) -> bool {
        let mut now = self.now();
        if !now.claim.is_mine() {
            now.claim.try_again();
        }
        now.claim.is_knocked_at()
    }

    /// Whether the course may be saved to a path: another window may have that open.
    pub(crate) fn may_save(&self, path: &Path) -> Result<(), Error> {
        let now = self.now();
        let place = claim::place_of(path);
        let free = if place == now.claim.place {
            now.claim.is_mine()
        } else {
            claim::is_free(&self.data, &place)
        };
        let refused = || Error::OpenElsewhere(path.to_owned());
        free.then_some(()).ok_or_else(refused)
    }

    /// Whether what was kept under this name belongs to the open course.
    pub(crate) fn is_here(&self, id: &str) -> bool {
        let now = self.now();
        now.left.iter().any(|(_, _, it)| it.id == id && it.here)
    }

    /// Puts on the desk what was kept. The old entry goes when the journal holds the desk.
    pub(crate) fn take(&self, desk: &mut Desk, id: &str) -> Result<(), Error> {
        let file = self.now().file(id).ok_or(Error::NothingKept)?;
        // Another window may have been quicker.
        let Ok(entry) = journal::read(&file) else {
            self.now().let_go(id);
            return Err(Error::NothingKept);
        };
        desk.take(entry)?;
        let mut now = self.now();
        now.let_go(id);
        now.text = None;
        self.journal.take_over(file);
        Ok(())
    }

    /// Lets go of what was kept.
    pub(crate) fn leave(&self, id: &str) {
        let mut now = self.now();
        if let Some(file) = now.file(id) {
            // Another window may have been quicker; then it is gone as well.
            let _ = std::fs::remove_file(file);
        }
        now.let_go(id);
    }

    /// The course is closed on purpose: what is not saved is not kept.
    pub(crate) fn end(&self) {
        self.journal.end();
    }

    #[cfg(test)]
    pub(crate) fn settle(&self) {
        self.journal.settle();
    }
}

impl Now {
    /// Looks for what earlier sittings have left.
    fn find(&mut self, data: &Path, sitting: &str) {
        let (left, broken) = journal::left(data, sitting, &self.claim);
        let shown = |(file, entry): (PathBuf, Entry)| {
            let kept = shape(&file, &entry, self.path.as_deref());
            (file, entry, kept)
        };
        self.left = left.into_iter().map(shown).collect();
        self.broken.extend(broken.iter().map(|file| {
            plain(
                "kept-unreadable",
                "Something that was kept of an earlier course can't be read.".to_owned(),
                &format!("It was put aside, in {}.", file.display()),
            )
        }));
    }

    /// Whether the desk is another than when it was kept last; remembers it as it is.
    fn is_new(&mut self, desk: &Desk) -> bool {
        let text = desk.unsaved().then(|| desk.text());
        if self.text.as_deref() == text && (text.is_none() || self.base == desk.base()) {
            return false;
        }
        self.text = text.map(ToOwned::to_owned);
        self.base = desk.base().to_owned();
        true
    }

    fn file(&self, id: &str) -> Option<PathBuf> {
        let found = self.left.iter().find(|(_, _, kept)| kept.id == id);
        found.map(|(file, _, _)| file.clone())
    }

    fn let_go(&mut self, id: &str) {
        self.left.retain(|(_, _, kept)| kept.id != id);
    }
}

/// What was kept, as the window tells it.
fn shape(file: &Path, entry: &Entry, open: Option<&Path>) -> Kept {
    let path = entry.path();
    let words = |part: Option<&std::ffi::OsStr>| {
        part.map(|it| it.to_string_lossy().into_owned())
            .unwrap_or_default()
    };
    let there = path.as_ref().map(std::fs::read);
    let title = course::values(&entry.text).remove("title");
    Kept {
        id: words(file.file_name()),
        title: title.unwrap_or_default(),
        file: words(path.as_ref().and_then(|it| it.file_name())),
        folder: words(
            path.as_ref()
                .and_then(|it| it.parent())
                .map(Path::as_os_str),
        ),
        when: when(entry),
        changes: changed(&entry.base, &entry.text),
        here: path.is_some() && path.as_deref() == open,
        since: there.is_some_and(|there| !there.is_ok_and(|it| it == entry.base.as_bytes())),
    }
}

/// As `14:32`, with its date when that was another day, written as the course's language does.
fn when(entry: &Entry) -> String {
    let Some(at) = chrono::DateTime::from_timestamp(entry.at, 0) else {
        return String::new();
    };
    let at = at.with_timezone(&chrono::Local);
    let Ok(file) = CourseFile::parse(&entry.text) else {
        return at.format("%H:%M").to_string();
    };
    let style = match file.language {
        Language::EnGb => DateStyle::British,
        Language::EnUs => DateStyle::American,
    };
    let clock = Clock::new(&file.course, style);
    let time = clock.write_time(&at);
    if at.date_naive() == chrono::Local::now().date_naive() {
        time
    } else {
        format!("{}, {time}", clock.date(at.date_naive()))
    }
}

/// The desk for one command; when it is left, what was done at it is kept.
pub(crate) struct AtDesk<'a> {
    desk: MutexGuard<'a, Desk>,
    keeping: &'a Keeping,
}

impl<'a> AtDesk<'a> {
    pub(crate) fn new(desk: &'a Mutex<Desk>, keeping: &'a Keeping) -> Self {
        Self {
            desk: desk.lock().unwrap_or_else(PoisonError::into_inner),
            keeping,
        }
    }
}

impl Deref for AtDesk<'_> {
    type Target = Desk;

    fn deref(&self) -> &Desk {
        &self.desk
    }
}

impl DerefMut for AtDesk<'_> {
    fn deref_mut(&mut self) -> &mut Desk {
        &mut self.desk
    }
}

impl Drop for AtDesk<'_> {
    fn drop(&mut self) {
        self.keeping.follow(&self.desk);
    }
}

#[cfg(test)]
mod tests;
