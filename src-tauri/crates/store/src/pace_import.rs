//! Taking a pace book from a file into the store: first what would change, then the change.

use crate::{Error, PaceList, PaceRecord, Store, pace_book, sheet};
use rusqlite::Connection;
use std::collections::HashMap;
use std::path::Path;

/// A record that the file changes.
#[derive(Debug, Clone, PartialEq)]
pub struct PaceChanged {
    /// In the store.
    pub before: PaceRecord,
    /// After the import; the one before is kept, and counts again when this one is taken back.
    pub after: PaceRecord,
}

/// What taking in a pace book would change.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PacePreview {
    /// Courses that the store's book does not have, in the order of the file.
    pub added: Vec<PaceRecord>,
    /// Courses that would be recorded otherwise, in the order of the file.
    pub changed: Vec<PaceChanged>,
    /// Courses that are in the book just so.
    pub same: Vec<PaceRecord>,
    /// Courses of the book that the file does not have; they stay.
    pub not_in_file: Vec<PaceRecord>,
    list: PaceList,
}

impl Store {
    /// What taking in a pace book would change. Changes nothing.
    ///
    /// # Errors
    /// [`Error::Busy`], [`Error::Damaged`], [`Error::NewerUnreadable`].
    pub fn preview_pace(&self, list: &PaceList) -> Result<PacePreview, Error> {
        self.reading(|db| compare(db, list))
    }

    /// Does what the preview showed, all of it or nothing.
    ///
    /// # Errors
    /// [`Error::ChangedSincePreview`] if the book is no longer as it was looked at;
    /// [`Error::ReadOnly`], [`Error::Busy`], [`Error::DiskFull`].
    pub fn apply_pace(&mut self, preview: &PacePreview) -> Result<(), Error> {
        self.writing(|change| {
            if compare(change, &preview.list)? != *preview {
                return Err(Error::ChangedSincePreview);
            }
            let changed = preview.changed.iter().map(|it| &it.after);
            for record in preview.added.iter().chain(changed) {
                pace_book::put(change, known_by(&record.path)?, record)?;
            }
            Ok(())
        })
    }

    /// The records that count as the content of a CSV file. The same book gives the same bytes, and
    /// importing them gives the same book.
    ///
    /// # Errors
    /// [`Error::Export`]; [`Error::Busy`], [`Error::Damaged`], [`Error::NewerUnreadable`].
    pub fn export_pace(&self) -> Result<Vec<u8>, Error> {
        sheet::write_pace_book(&self.pace_records()?)
    }
}

fn compare(db: &Connection, list: &PaceList) -> Result<PacePreview, Error> {
    let stored = pace_book::counting(db)?;
    let mut rest: HashMap<&Path, &PaceRecord> =
        stored.iter().map(|it| (it.path.as_path(), it)).collect();
    let mut preview = PacePreview {
        list: list.clone(),
        ..PacePreview::default()
    };
    for given in &list.records {
        match rest.remove(given.path.as_path()) {
            None => preview.added.push(given.clone()),
            Some(before) if before == given => preview.same.push(given.clone()),
            Some(before) => preview.changed.push(PaceChanged {
                before: before.clone(),
                after: given.clone(),
            }),
        }
    }
    // In the order of the store, which the map has lost.
    let rest = stored
        .iter()
        .filter(|it| rest.contains_key(it.path.as_path()));
    preview.not_in_file = rest.cloned().collect();
    Ok(preview)
}

/// What the store knows the course by: the words of the file, which need not be a path here.
fn known_by(path: &Path) -> Result<&str, Error> {
    path.to_str().ok_or_else(|| Error::CoursePath {
        path: path.to_owned(),
    })
}
