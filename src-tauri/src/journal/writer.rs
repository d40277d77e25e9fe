//! Writes the journal on a thread of its own: no change waits for the disk.

use super::{Entry, write};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Condvar, Mutex, MutexGuard, PoisonError};
use std::time::Duration;
use std::{fs, io, thread};

/// Between two writes, so that fast typing does not wear the disk. A change is kept after this and
/// one write at the latest.
const PAUSE: Duration = Duration::from_millis(200);
/// After a write that failed.
const TRY_AGAIN: Duration = Duration::from_secs(2);

/// The journal of this sitting.
pub(crate) struct Writer {
    shared: Arc<Shared>,
}

struct Shared {
    data: PathBuf,
    /// Tells this sitting's entries from those of others.
    sitting: String,
    wish: Mutex<Wish>,
    news: Condvar,
    /// The entry that is on the disk now. Held while it is written or taken away.
    on_disk: Mutex<Option<PathBuf>>,
}

/// What the journal should hold.
#[derive(Default)]
struct Wish {
    /// Nothing: all is saved.
    entry: Option<Entry>,
    /// Counts the wishes; `done` is the last that the disk has followed.
    number: u64,
    done: u64,
    /// What an earlier sitting left and the desk has taken: it goes once the journal holds the
    /// desk as it is from the wish of this number on.
    taken: Vec<(u64, PathBuf)>,
    /// Why the last write failed.
    failed: Option<String>,
    ended: bool,
}

impl Writer {
    /// A journal in the data folder that holds nothing yet.
    pub(crate) fn new(data: &Path, sitting: &str) -> Self {
        let shared = Arc::new(Shared {
            data: data.to_owned(),
            sitting: sitting.to_owned(),
            wish: Mutex::default(),
            news: Condvar::new(),
            on_disk: Mutex::default(),
        });
        let writing = shared.clone();
        thread::spawn(move || writing.write_on());
        Self { shared }
    }

    /// What shall be kept from now on; returns at once. Nothing: all is saved.
    pub(crate) fn keep(&self, entry: Option<Entry>) {
        let mut wish = self.shared.wish();
        wish.entry = entry;
        wish.number += 1;
        self.shared.news.notify_all();
    }

    /// Takes an earlier sitting's entry away as soon as the next wish is on the disk.
    pub(crate) fn take_over(&self, file: PathBuf) {
        let mut wish = self.shared.wish();
        let from = wish.number + 1;
        wish.taken.push((from, file));
    }

    /// Why nothing can be kept just now.
    pub(crate) fn failed(&self) -> Option<String> {
        self.shared.wish().failed.clone()
    }

    /// The course is closed on purpose: nothing of it is kept, and nothing is written any more.
    pub(crate) fn end(&self) {
        self.shared.wish().ended = true;
        self.shared.news.notify_all();
        self.shared.remove();
    }

    /// Waits until the disk has followed.
    #[cfg(test)]
    pub(crate) fn settle(&self) {
        let wish = self.shared.wish();
        let behind = |wish: &mut Wish| wish.done < wish.number;
        let long = Duration::from_secs(10);
        let waited = self.shared.news.wait_timeout_while(wish, long, behind);
        assert!(!waited.expect("a journal").1.timed_out(), "nothing written");
    }
}

impl Drop for Writer {
    /// Ends the thread and leaves what is on the disk.
    fn drop(&mut self) {
        self.shared.wish().ended = true;
        self.shared.news.notify_all();
    }
}

impl Shared {
    fn wish(&self) -> MutexGuard<'_, Wish> {
        self.wish.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn on_disk(&self) -> MutexGuard<'_, Option<PathBuf>> {
        self.on_disk.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn write_on(&self) {
        while let Some((number, entry)) = self.next() {
            let followed = self.follow(entry.as_ref());
            let failed = followed.is_err();
            self.settled(number, followed);
            thread::sleep(if failed { TRY_AGAIN } else { PAUSE });
        }
    }

    /// The newest wish, once there is one that the disk has not followed; nothing at the end.
    fn next(&self) -> Option<(u64, Option<Entry>)> {
        let idle = |wish: &mut Wish| wish.done == wish.number && !wish.ended;
        let wish = self
            .news
            .wait_while(self.wish(), idle)
            .unwrap_or_else(PoisonError::into_inner);
        (!wish.ended).then(|| (wish.number, wish.entry.clone()))
    }

    fn follow(&self, entry: Option<&Entry>) -> io::Result<()> {
        let Some(entry) = entry else {
            self.remove();
            return Ok(());
        };
        let file = entry.file(&self.data, &self.sitting);
        let mut on_disk = self.on_disk();
        if self.wish().ended {
            return Ok(());
        }
        write(entry, &file)?;
        // Another course lies on the desk, and of the one before nothing is to be kept.
        if let Some(before) = on_disk.replace(file.clone()).filter(|it| *it != file) {
            let _ = fs::remove_file(before);
        }
        Ok(())
    }

    fn settled(&self, number: u64, followed: io::Result<()>) {
        let mut wish = self.wish();
        wish.failed = followed.err().map(|wrong| wrong.to_string());
        if wish.failed.is_none() {
            wish.done = number;
            let taken = std::mem::take(&mut wish.taken);
            let (gone, later) = taken.into_iter().partition(|(from, _)| *from <= number);
            wish.taken = later;
            for (_, file) in Vec::<(u64, PathBuf)>::into_iter(gone) {
                let _ = fs::remove_file(file);
            }
        }
        self.news.notify_all();
    }

    fn remove(&self) {
        if let Some(file) = self.on_disk().take() {
            let _ = fs::remove_file(file);
        }
    }
}
