//! Opening the store's file, and the two doors through which all reading and writing goes.
//!
//! The file is never opened but through SQLite: closing any other handle on it would drop
//! the locks this process holds (POSIX advisory locks belong to the process).

use crate::Error;
use crate::migrations::{self, Found, NEWEST};
use crate::notice::ReadOnly;
use rusqlite::{Connection, OpenFlags, Transaction, TransactionBehavior};
use std::io::ErrorKind;
use std::path::{Path, PathBuf};
use std::time::Duration;

/// The store's file in its folder.
pub const FILE_NAME: &str = "kit.db";

/// How long to wait for another program that is writing.
const PATIENCE: Duration = Duration::from_secs(5);

/// An instructor's kit store, open.
#[derive(Debug)]
pub struct Store {
    db: Connection,
    path: PathBuf,
    read_only: Option<ReadOnly>,
}

impl Store {
    /// Opens the store in a folder to read and change it; makes folder and file where they
    /// are missing, and brings an older store to this version.
    ///
    /// Where writing is not allowed, or a newer program has written the store, it is opened
    /// for reading: see [`Store::notice`].
    ///
    /// # Errors
    /// [`Error::Folder`], [`Error::CanNotOpen`]; [`Error::NotAStore`], [`Error::Damaged`] and
    /// [`Error::CutOff`], which leave the file as it is; [`Error::Busy`], [`Error::DiskFull`].
    pub fn open(folder: &Path) -> Result<Self, Error> {
        let path = folder.join(FILE_NAME);
        if let Err(cause) = std::fs::create_dir_all(folder) {
            return match cause.kind() {
                ErrorKind::PermissionDenied | ErrorKind::ReadOnlyFilesystem => {
                    Self::empty(path, not_writable(folder))
                }
                _ => Err(Error::Folder {
                    folder: folder.to_owned(),
                    cause,
                }),
            };
        }
        let flags = OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_CREATE;
        match connect(&path, flags) {
            Ok(db) => Self::to_change(db, path.clone()).map_err(|cause| named(cause, &path)),
            // Nothing there, and nothing may be made there.
            Err(Error::ReadOnly(_)) if !path.exists() => Self::empty(path, not_writable(folder)),
            Err(cause) => Err(opening(cause, &path)),
        }
    }

    /// Opens the store in a folder for reading alone. Where there is none it reads as empty,
    /// and none is made.
    ///
    /// # Errors
    /// [`Error::CanNotOpen`], [`Error::NotAStore`], [`Error::Damaged`], [`Error::CutOff`],
    /// [`Error::Busy`].
    pub fn read(folder: &Path) -> Result<Self, Error> {
        let path = folder.join(FILE_NAME);
        match path.try_exists() {
            Ok(true) => {}
            Ok(false) => return Self::empty(path, ReadOnly::Asked),
            Err(_) => return Err(Error::CanNotOpen { path }),
        }
        let mut opened = Self::to_read(&path, ReadOnly::Asked);
        if matches!(opened, Err(Error::CutOff { .. })) {
            // The plug was pulled while another program wrote. Whoever opens the file for
            // writing takes the half change out again; what is read afterwards is whole.
            put_right(&path)?;
            opened = Self::to_read(&path, ReadOnly::Asked);
        }
        opened
    }

    /// What to tell the person about a store that was opened to change it and can only be
    /// read, or that a newer program has written.
    pub fn notice(&self) -> Option<&ReadOnly> {
        self.read_only.as_ref().filter(|it| **it != ReadOnly::Asked)
    }

    /// Whether changes are taken.
    pub fn is_read_only(&self) -> bool {
        self.read_only.is_some()
    }

    fn to_change(mut db: Connection, path: PathBuf) -> Result<Self, Error> {
        let folder = path.parent().unwrap_or(Path::new("")).to_owned();
        let found = sound(&db)?;
        if matches!(found, Found::Store(version) if NEWEST < version) || db.is_readonly("main")? {
            drop(db);
            return Self::to_read(&path, not_writable(&folder));
        }
        let ready = match found {
            Found::Store(NEWEST) => try_writing(&mut db),
            Found::Empty | Found::Store(_) => migrations::migrate(&mut db),
            Found::Foreign => return Err(Error::NotAStore { path }),
        };
        match ready {
            Ok(()) => Ok(Self {
                db,
                path,
                read_only: None,
            }),
            Err(Error::ReadOnly(_) | Error::DiskFull) => {
                drop(db);
                Self::to_read(&path, not_writable(&folder))
            }
            Err(cause) => Err(cause),
        }
    }

    fn to_read(path: &Path, why: ReadOnly) -> Result<Self, Error> {
        let db = connect(path, OpenFlags::SQLITE_OPEN_READ_ONLY)
            .map_err(|cause| opening(cause, path))?;
        let found = sound(&db).map_err(|cause| named(cause, path))?;
        let (db, read_only) = match found {
            Found::Store(NEWEST) => (db, why),
            Found::Store(written) if NEWEST < written => {
                let known = NEWEST;
                (db, ReadOnly::Newer { written, known })
            }
            Found::Empty | Found::Store(_) => (brought_up(&db)?, why),
            Found::Foreign => {
                return Err(Error::NotAStore {
                    path: path.to_owned(),
                });
            }
        };
        Ok(Self {
            db,
            path: path.to_owned(),
            read_only: Some(read_only),
        })
    }

    fn empty(path: PathBuf, why: ReadOnly) -> Result<Self, Error> {
        let db = brought_up(&Connection::open_in_memory()?)?;
        Ok(Self {
            db,
            path,
            read_only: Some(why),
        })
    }

    /// A store that is gone when it is dropped.
    #[cfg(test)]
    pub(crate) fn in_memory() -> Self {
        let mut db = Connection::open_in_memory().expect("memory");
        prepare(&db).expect("prepared");
        migrations::migrate(&mut db).expect("migrated");
        Self {
            db,
            path: PathBuf::new(),
            read_only: None,
        }
    }

    /// The one door for questions: all that is asked within it sees the store at one moment.
    pub(crate) fn reading<T>(
        &self,
        ask: impl FnOnce(&Connection) -> Result<T, Error>,
    ) -> Result<T, Error> {
        let one_moment = self.db.unchecked_transaction().map_err(Error::from);
        let answer = one_moment.and_then(|moment| ask(&moment));
        answer.map_err(|cause| match (cause, &self.read_only) {
            (Error::Unexpected { .. }, Some(notice @ ReadOnly::Newer { .. })) => {
                Error::NewerUnreadable {
                    notice: notice.clone(),
                }
            }
            (cause, _) => named(cause, &self.path),
        })
    }

    /// The one door for changes: all of them or, on any refusal, none.
    pub(crate) fn writing<T>(
        &mut self,
        change: impl FnOnce(&Transaction<'_>) -> Result<T, Error>,
    ) -> Result<T, Error> {
        if let Some(why) = &self.read_only {
            return Err(Error::ReadOnly(why.clone()));
        }
        let Self { db, path, .. } = self;
        let all = || {
            let all = db.transaction_with_behavior(TransactionBehavior::Immediate)?;
            let done = change(&all)?;
            all.commit()?;
            Ok(done)
        };
        all().map_err(|cause| named(cause, path))
    }
}

fn not_writable(folder: &Path) -> ReadOnly {
    ReadOnly::NotWritable {
        folder: folder.to_owned(),
    }
}

fn connect(path: &Path, flags: OpenFlags) -> Result<Connection, Error> {
    let db = Connection::open_with_flags(path, flags | OpenFlags::SQLITE_OPEN_NO_MUTEX)?;
    prepare(&db)?;
    Ok(db)
}

/// Durable before quick: a rollback journal, synced in full before and after each change.
fn prepare(db: &Connection) -> Result<(), Error> {
    db.busy_timeout(PATIENCE)?;
    db.pragma_update(None, "trusted_schema", false)?;
    db.pragma_update(None, "foreign_keys", true)?;
    db.pragma_update(None, "synchronous", "FULL")?;
    Ok(())
}

/// What the file is, if it is whole: all of it looked at in one moment, for another program
/// may be making the store just now, and half of a look before that and half after it would
/// take the store for something else.
fn sound(db: &Connection) -> Result<Found, Error> {
    let one_moment = db.unchecked_transaction()?;
    let found = migrations::look(&one_moment)?;
    let said: String = one_moment.query_row("PRAGMA quick_check(1)", [], |row| row.get(0))?;
    if said == "ok" {
        Ok(found)
    } else {
        Err(Error::Damaged {
            path: PathBuf::new(),
        })
    }
}

/// Begins a change and gives it up: tells at once, and not at the first change, that the
/// journal can't be written beside the file. A busy store can be written, and a full disk
/// may have room again.
fn try_writing(db: &mut Connection) -> Result<(), Error> {
    let tried = db
        .transaction_with_behavior(TransactionBehavior::Immediate)
        .and_then(|change| {
            change.pragma_update(None, "user_version", NEWEST)?;
            change.rollback()
        });
    match tried.map_err(Error::from) {
        Err(Error::Busy | Error::DiskFull) => Ok(()),
        other => other,
    }
}

/// A copy in memory, brought to this version; the file stays as it is.
fn brought_up(file: &Connection) -> Result<Connection, Error> {
    let mut copy = Connection::open_in_memory()?;
    rusqlite::backup::Backup::new(file, &mut copy)?.step(-1)?;
    migrations::migrate(&mut copy)?;
    copy.pragma_update(None, "query_only", true)?;
    Ok(copy)
}

/// Takes a half change out of the file, as any opening for writing does.
fn put_right(path: &Path) -> Result<(), Error> {
    let right = connect(path, OpenFlags::SQLITE_OPEN_READ_WRITE).and_then(|db| sound(&db));
    match right {
        Ok(_) => Ok(()),
        Err(Error::ReadOnly(_)) => Err(Error::CutOff {
            path: path.to_owned(),
        }),
        Err(cause) => Err(named(cause, path)),
    }
}

fn opening(cause: Error, path: &Path) -> Error {
    match cause {
        Error::ReadOnly(_) | Error::Unexpected { .. } => Error::CanNotOpen {
            path: path.to_owned(),
        },
        cause => named(cause, path),
    }
}

/// The error with the file it is about.
fn named(cause: Error, path: &Path) -> Error {
    let path = path.to_owned();
    match cause {
        Error::NotAStore { .. } => Error::NotAStore { path },
        Error::Damaged { .. } => Error::Damaged { path },
        Error::CutOff { .. } => Error::CutOff { path },
        Error::ReadOnly(ReadOnly::NotWritable { .. }) => {
            Error::ReadOnly(not_writable(path.parent().unwrap_or(Path::new(""))))
        }
        cause => cause,
    }
}
