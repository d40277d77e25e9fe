//! Taking a kit list into the store: first what would change, then the change.

use crate::lots::{self, Lot};
use crate::sheet::{self, Kind, KitList};
use crate::{Error, Store};
use rusqlite::Connection;
use std::collections::HashMap;

/// What becomes of lots that the file does not name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Mode {
    /// They stay: the file holds what is new or different.
    Merge,
    /// They go: the file is the whole list.
    Replace,
}

/// A lot the file changes.
#[derive(Debug, Clone, PartialEq)]
pub struct Changed {
    /// In the store.
    pub before: Lot,
    /// After the import.
    pub after: Lot,
}

/// What an import would change. Columns the file does not have stay as they are.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Preview {
    /// New lots, in the order of the file.
    pub added: Vec<Lot>,
    /// Lots that would be different, in the order of the file.
    pub changed: Vec<Changed>,
    /// Lots that are in the store just so.
    pub same: Vec<Lot>,
    /// Lots of the store that the file does not name; [`Mode::Replace`] removes them.
    pub not_in_file: Vec<Lot>,
    list: KitList,
}

impl Store {
    /// What taking in a kit list would change. Changes nothing.
    ///
    /// # Errors
    /// [`Error::Busy`], [`Error::Damaged`], [`Error::NewerUnreadable`].
    pub fn preview(&self, list: &KitList) -> Result<Preview, Error> {
        self.reading(|db| compare(db, list))
    }

    /// Does what the preview showed, all of it or nothing.
    ///
    /// # Errors
    /// [`Error::ChangedSincePreview`] if the store is no longer as it was looked at;
    /// [`Error::ReadOnly`], [`Error::Busy`], [`Error::DiskFull`].
    pub fn apply(&mut self, preview: &Preview, mode: Mode) -> Result<(), Error> {
        self.writing(|change| {
            if compare(change, &preview.list)? != *preview {
                return Err(Error::ChangedSincePreview);
            }
            if mode == Mode::Replace {
                for lot in &preview.not_in_file {
                    lots::remove(change, &lot.item, &lot.owner)?;
                }
            }
            let changed = preview.changed.iter().map(|it| &it.after);
            for lot in preview.added.iter().chain(changed) {
                lots::put(change, lot)?;
            }
            Ok(())
        })
    }

    /// The kit list as a file's content, to be saved under a name that ends accordingly. The
    /// same store gives the same bytes, and importing them gives the same store.
    ///
    /// # Errors
    /// [`Error::Export`]; [`Error::Busy`], [`Error::Damaged`], [`Error::NewerUnreadable`].
    pub fn export(&self, kind: Kind) -> Result<Vec<u8>, Error> {
        sheet::write(&self.lots()?, kind)
    }
}

fn compare(db: &Connection, list: &KitList) -> Result<Preview, Error> {
    let stored = lots::all(db)?;
    let mut rest: HashMap<(String, String), &Lot> =
        stored.iter().map(|lot| (lot.key(), lot)).collect();
    let mut preview = Preview {
        list: list.clone(),
        ..Preview::default()
    };
    for given in &list.lots {
        match rest.remove(&given.key()) {
            None => preview.added.push(given.clone()),
            Some(before) => {
                let after = list.columns.over(before, given);
                if after == *before {
                    preview.same.push(after);
                } else {
                    let before = before.clone();
                    preview.changed.push(Changed { before, after });
                }
            }
        }
    }
    // In the order of the store, which the map has lost.
    let rest = stored.iter().filter(|lot| rest.contains_key(&lot.key()));
    preview.not_in_file = rest.cloned().collect();
    Ok(preview)
}
