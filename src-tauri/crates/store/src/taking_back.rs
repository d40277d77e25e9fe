//! Undoing a count of kit that came home: the store as it was before.

use crate::courses::known;
use crate::{Error, Store};
use rusqlite::{Connection, OptionalExtension, params};
use std::path::Path;

impl Store {
    /// Takes a count home back: conditions and counts return to what they were, and the course
    /// holds again what it had booked. Other changes made since stay as they are.
    ///
    /// # Errors
    /// [`Error::NoSuchCourse`], [`Error::NotHome`]; [`Error::ChangedSinceHome`] if a lot has
    /// been changed such that it can't be undone; [`Error::CoursePath`], [`Error::ReadOnly`],
    /// [`Error::Busy`], [`Error::DiskFull`].
    pub fn take_back_home(&mut self, path: &Path) -> Result<(), Error> {
        self.writing(|change| {
            let (course, title) = known(change, path)?;
            let ask = "SELECT id FROM homecoming WHERE course = ?1 AND closes";
            let closed = change.query_row(ask, [course], |row| row.get(0));
            let Some(homecoming) = closed.optional()? else {
                return Err(Error::NotHome { title });
            };
            for it in changes(change, homecoming)? {
                if !undo(change, &it)? {
                    let Change { item, owner, .. } = it;
                    return Err(Error::ChangedSinceHome { title, item, owner });
                }
            }
            change.execute("DELETE FROM homecoming WHERE id = ?1", [homecoming])?;
            Ok(())
        })
    }
}

/// By how much a count home changed a lot.
struct Change {
    lot: Option<i64>,
    item: String,
    owner: String,
    by: [i64; 3],
}

fn changes(db: &Connection, homecoming: i64) -> Result<Vec<Change>, Error> {
    let mut ask = db.prepare(
        "SELECT lot, item, owner, good, care, broken FROM changed_by_homecoming
         WHERE homecoming = ?1 ORDER BY rowid DESC",
    )?;
    let changes = ask.query_map([homecoming], |row| {
        Ok(Change {
            lot: row.get(0)?,
            item: row.get(1)?,
            owner: row.get(2)?,
            by: [row.get(3)?, row.get(4)?, row.get(5)?],
        })
    })?;
    Ok(changes.collect::<Result<_, _>>()?)
}

/// Whether the lot is still there and has enough of each to give back.
fn undo(db: &Connection, change: &Change) -> Result<bool, Error> {
    let undo = "UPDATE lot SET good = good - ?2, care = care - ?3, broken = broken - ?4
        WHERE id = ?1 AND ?2 <= good AND ?3 <= care AND ?4 <= broken";
    let [good, care, broken] = change.by;
    let done = db.execute(undo, params![change.lot, good, care, broken])?;
    Ok(done == 1)
}
