//! The journal of what is not saved: the text of an open course, kept in the data folder from each
//! change until it is saved, so that a crash or a pulled plug costs at most the last second.

mod writer;

pub(crate) use writer::Writer;

use crate::claim::{self, Claim};
use serde::{Deserialize, Serialize};
use std::ffi::OsString;
use std::io::{self, Write};
use std::path::{Path, PathBuf};
use std::time::Duration;
use std::{fs, fs::File};
use uuid::Uuid;

/// Where the journal lies in the data folder.
const FOLDER: &str = "unsaved";
/// Where what can't be read is put aside, in the journal's folder.
const BROKEN: &str = "broken";
/// The form of an entry.
const FORMAT: u32 = 1;
const ENDING: &str = "json";
/// How entries that are being written are named.
const UNFINISHED: &str = "unfinished-";
/// An unfinished entry older than this was left by a crash.
const STALE: Duration = Duration::from_secs(60);

/// What is kept of a course.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub(crate) struct Entry {
    /// Where the course lives; nothing for one that was never saved.
    pub(crate) path: Option<OsString>,
    /// Its place among the claims: who holds that still has the course open.
    pub(crate) place: String,
    /// What the disk held, or what a course never saved began from.
    pub(crate) base: String,
    /// What was on the desk.
    pub(crate) text: String,
    /// When it was last changed, in seconds since 1970.
    pub(crate) at: i64,
}

/// An entry as it is written.
#[derive(Serialize, Deserialize)]
struct Written {
    format: u32,
    /// What the entry must come to: a file that a broken disk has garbled is not taken for whole.
    check: Uuid,
    entry: Entry,
}

impl Entry {
    /// Where the course lives.
    pub(crate) fn path(&self) -> Option<PathBuf> {
        self.path.as_ref().map(PathBuf::from)
    }

    /// The file of the journal for this entry, written in a sitting.
    fn file(&self, data: &Path, sitting: &str) -> PathBuf {
        folder(data).join(format!("{}.{sitting}.{ENDING}", self.place))
    }

    fn check(&self) -> Uuid {
        let path = self
            .path
            .as_ref()
            .map_or(&b""[..], |it| it.as_encoded_bytes());
        let parts = [path, self.base.as_bytes(), self.text.as_bytes()];
        Uuid::new_v5(&Uuid::NAMESPACE_OID, &parts.join(&0))
    }
}

/// Writes an entry: to a new file, synced to the disk, then renamed over the old one.
///
/// It may hold what students said in confidence. So it is for its owner only, which a saved course
/// need not be.
fn write(entry: &Entry, file: &Path) -> io::Result<()> {
    let folder = file.parent().unwrap_or(Path::new("."));
    fs::create_dir_all(folder)?;
    let written = Written {
        format: FORMAT,
        check: entry.check(),
        entry: entry.clone(),
    };
    let mut unfinished = tempfile::Builder::new()
        .prefix(UNFINISHED)
        .tempfile_in(folder)?;
    unfinished.write_all(&serde_json::to_vec(&written)?)?;
    unfinished.as_file().sync_all()?;
    unfinished.persist(file).map_err(|failed| failed.error)?;
    // The rename itself must reach the disk too; where a folder can't be synced the file is whole.
    let _ = File::open(folder).and_then(|folder| folder.sync_all());
    Ok(())
}

/// Reads an entry of the journal.
pub(crate) fn read(file: &Path) -> io::Result<Entry> {
    let written: Written = serde_json::from_slice(&fs::read(file)?)?;
    let whole = written.format == FORMAT && written.check == written.entry.check();
    if whole {
        Ok(written.entry)
    } else {
        Err(io::Error::from(io::ErrorKind::InvalidData))
    }
}

/// What earlier sittings have left, by its file, and the files that can't be read, which are put
/// aside. What another window that lives is still keeping is not among it.
pub(crate) fn left(
    data: &Path,
    sitting: &str,
    mine: &Claim,
) -> (Vec<(PathBuf, Entry)>, Vec<PathBuf>) {
    clear_leftovers(data);
    let (mut left, mut broken) = (Vec::new(), Vec::new());
    for file in files(data) {
        let Some(place) = place_of_earlier(&file, sitting) else {
            continue;
        };
        if !(place == mine.place && mine.is_mine() || claim::is_free(data, &place)) {
            continue;
        }
        match read(&file) {
            // Saved just before the end, or undone to where it began.
            Ok(entry) if is_on_disk(&entry) => drop(fs::remove_file(&file)),
            Ok(entry) => left.push((file, entry)),
            // Another window has taken it meanwhile.
            Err(wrong) if wrong.kind() == io::ErrorKind::NotFound => {}
            Err(_) => broken.push(put_aside(&file)),
        }
    }
    left.sort_by_key(|(_, entry)| std::cmp::Reverse(entry.at));
    (left, broken)
}

/// The place an entry belongs to, unless it was written in this sitting.
fn place_of_earlier(file: &Path, sitting: &str) -> Option<String> {
    let name = file.file_name()?.to_string_lossy().into_owned();
    let (place, writer) = name.strip_suffix(&format!(".{ENDING}"))?.split_once('.')?;
    (writer != sitting).then(|| place.to_owned())
}

/// Whether nothing would be lost without the entry.
fn is_on_disk(entry: &Entry) -> bool {
    match entry.path() {
        Some(path) => fs::read(path).is_ok_and(|there| there == entry.text.as_bytes()),
        None => entry.base == entry.text,
    }
}

fn put_aside(file: &Path) -> PathBuf {
    let aside = file.with_file_name(BROKEN);
    let put = file.file_name().map(|name| aside.join(name));
    let moved = put.filter(|put| {
        fs::create_dir_all(&aside)
            .and_then(|()| fs::rename(file, put))
            .is_ok()
    });
    moved.unwrap_or_else(|| file.to_owned())
}

fn clear_leftovers(data: &Path) {
    let unfinished = |file: &PathBuf| {
        let name = file.file_name().map(|it| it.to_string_lossy());
        name.is_some_and(|it| it.starts_with(UNFINISHED))
    };
    for file in files(data).into_iter().filter(unfinished) {
        if claim::is_older(&file, STALE) {
            // Somebody else may have been quicker; then it is gone as well.
            let _ = fs::remove_file(file);
        }
    }
}

fn files(data: &Path) -> Vec<PathBuf> {
    let entries = fs::read_dir(folder(data)).into_iter().flatten();
    entries.flatten().map(|entry| entry.path()).collect()
}

fn folder(data: &Path) -> PathBuf {
    data.join(FOLDER)
}

#[cfg(test)]
mod tests;
