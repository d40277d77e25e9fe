//! The store's versions: numbered texts, each applied once, in order and for good.

use crate::Error;
use rusqlite::{Connection, Transaction, TransactionBehavior};

/// What makes version n out of version n - 1. A text that has shipped is never changed; a
/// change to the tables is one more file.
const STEPS: [&str; 4] = [
    include_str!("0001_lots.sql"),
    include_str!("0002_bookings.sql"),
    include_str!("0003_homecomings.sql"),
    include_str!("0004_pace_records.sql"),
];

/// The newest version this program knows.
pub(crate) const NEWEST: u32 = STEPS.len() as u32;

/// Marks the file as a kit store: `Wkit` as four bytes, in the header's application id.
const APPLICATION_ID: i32 = 0x576B_6974;

/// What a database file is, as far as its header and tables tell.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Found {
    /// Nothing is in it yet.
    Empty,
    /// A kit store of this version.
    Store(u32),
    /// Another program's database.
    Foreign,
}

/// Looks without changing anything.
pub(crate) fn look(db: &Connection) -> Result<Found, Error> {
    let version: i64 = db.query_row("PRAGMA user_version", [], |row| row.get(0))?;
    let id: i32 = db.query_row("PRAGMA application_id", [], |row| row.get(0))?;
    let count = "SELECT count(*) FROM sqlite_schema";
    let tables: i64 = db.query_row(count, [], |row| row.get(0))?;
    Ok(match (u32::try_from(version), id, tables) {
        (Ok(0), 0, 0) => Found::Empty,
        (Ok(version), APPLICATION_ID, _) if 0 < version => Found::Store(version),
        _ => Found::Foreign,
    })
}

/// Brings an older or empty store to the newest version, in one transaction.
pub(crate) fn migrate(db: &mut Connection) -> Result<(), Error> {
    migrate_to(db, NEWEST)
}

fn migrate_to(db: &mut Connection, newest: u32) -> Result<(), Error> {
    let change = db.transaction_with_behavior(TransactionBehavior::Immediate)?;
    // Another program may have done it while this one waited for its turn.
    let from = match look(&change)? {
        Found::Empty => 0,
        Found::Store(version) => version,
        Found::Foreign => return Ok(()),
    };
    if newest <= from {
        return Ok(());
    }
    apply(&change, from, newest)?;
    change.commit()?;
    Ok(())
}

fn apply(change: &Transaction<'_>, from: u32, newest: u32) -> Result<(), Error> {
    for (number, step) in (1..).zip(STEPS) {
        if from < number && number <= newest {
            change.execute_batch(step)?;
        }
    }
    change.pragma_update(None, "application_id", APPLICATION_ID)?;
    change.pragma_update(None, "user_version", newest)?;
    Ok(())
}
