//! Every way the kit store can refuse, each with a sentence for the person who asked.

use crate::notice::ReadOnly;
use crate::sheet::Refusal;
use chrono::NaiveDate;
use rusqlite::ErrorCode;
use std::io::ErrorKind;
use std::path::PathBuf;

/// Why the kit store refused.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum Error {
    /// The folder can't be made.
    #[error("{}: the folder for the kit store can't be made: {}. Choose another folder.", folder.display(), said(cause))]
    Folder {
        /// The folder.
        folder: PathBuf,
        /// What the system says.
        cause: std::io::Error,
    },
    /// The file is there and can't be opened.
    #[error("{}: the kit store can't be opened. Look at whose file it is and who may read it.", path.display())]
    CanNotOpen {
        /// The file.
        path: PathBuf,
    },
    /// The file is something else.
    #[error("{}: this is not a kit store, and it was left as it is. Move it away to begin a new store, or put your own store's file in its place.", path.display())]
    NotAStore {
        /// The file.
        path: PathBuf,
    },
    /// The file is damaged.
    #[error("{}: the kit store is damaged, and it was left as it is. Put back a copy of the file from a backup, or move it away to begin a new store.", path.display())]
    Damaged {
        /// The file.
        path: PathBuf,
    },
    /// A change was cut off, and the file can't be put right where it is.
    #[error("{}: the last change to the kit store was cut off, and putting it right takes writing to its folder, which is not allowed. Allow that once.", path.display())]
    CutOff {
        /// The file.
        path: PathBuf,
    },
    /// A newer store keeps this in a way unknown here.
    #[error("{notice} What was asked for is kept there in a way this program can't read.")]
    NewerUnreadable {
        /// Why the store is open for reading only.
        notice: ReadOnly,
    },
    /// A change to a store that is open for reading only.
    #[error("{0} Nothing was changed.")]
    ReadOnly(ReadOnly),
    /// Another program kept the store busy for longer than one waits.
    #[error(
        "Another program is changing the kit store. Nothing was changed here; try again in a moment."
    )]
    Busy,
    /// No room.
    #[error("The disk is full. The kit store is as it was before; make room and try again.")]
    DiskFull,
    /// Anything else the database says.
    #[error(
        "The kit store could not be used: {what}. It is as it was before; try again, and if that fails close Coursewright and open it anew."
    )]
    Unexpected {
        /// The database's words.
        what: String,
    },

    /// A name that must be there was empty.
    #[error("An item needs a name. Write what it is, such as \"Walling hammer\".")]
    EmptyItem,
    /// A text longer than a field holds.
    #[error("The {field} has {given} characters, and {most} at most can be kept. Shorten it.")]
    TooLong {
        /// Which.
        field: &'static str,
        /// Characters given.
        given: usize,
        /// Characters allowed.
        most: usize,
    },
    /// A character that no screen shows.
    #[error(
        "The {field} holds a character that can't be shown (U+{:04X}). Type it again without it.", u32::from(*character)
    )]
    Unshowable {
        /// Which.
        field: &'static str,
        /// The character.
        character: char,
    },
    /// More than anybody has.
    #[error(
        "{given} of \"{item}\" ({field}) is more than a store holds, which is {most} at most. Look for a slip of the finger."
    )]
    TooMany {
        /// The item.
        item: String,
        /// Which count.
        field: &'static str,
        /// What was given.
        given: u64,
        /// What is allowed.
        most: u32,
    },
    /// A mass that nothing has.
    #[error(
        "The mass of one \"{item}\" must be from 0 to {most_kg} kg; it is {given_kg}. Write the mass of a single one in kilograms."
    )]
    Mass {
        /// The item.
        item: String,
        /// What was given, in kg.
        given_kg: f64,
        /// What is allowed, in kg.
        most_kg: f64,
    },
    /// A lot that is there already.
    #[error(
        "{} is in the kit store already. Change that entry instead of adding another.",
        of(item, owner)
    )]
    LotThere {
        /// The item.
        item: String,
        /// Whose.
        owner: String,
    },
    /// A lot that is not there.
    #[error(
        "{} is not in the kit store. Somebody may have removed it; look at the list again.",
        of(item, owner)
    )]
    NoSuchLot {
        /// The item.
        item: String,
        /// Whose.
        owner: String,
    },

    /// A path that can't be kept as text.
    #[error("{}: the name of this course file holds characters that can't be kept. Rename the file.", path.display())]
    CoursePath {
        /// The course file.
        path: PathBuf,
    },
    /// A course that has booked nothing.
    #[error("{}: this course has booked nothing in the kit store. Book its kit first.", path.display())]
    NoSuchCourse {
        /// The course file.
        path: PathBuf,
    },
    /// Two courses in one file.
    #[error("{}: the store knows a course of this name already. Release its kit and take its record back first, or choose another name.", path.display())]
    CourseThere {
        /// The course file.
        path: PathBuf,
    },
    /// A course whose kit has been counted home.
    #[error(
        "The kit of \"{title}\" was counted home on {}. Take that count back first, or give the course days after it.", day(*on)
    )]
    AlreadyHome {
        /// The course.
        title: String,
        /// When it was counted.
        on: NaiveDate,
    },
    /// Nothing to take back.
    #[error("The kit of \"{title}\" has not been counted home, so there is nothing to take back.")]
    NotHome {
        /// The course.
        title: String,
    },
    /// A return before the course.
    #[error(
        "\"{title}\" begins on {}, so its kit can't be counted home on {}. Look at the date.", day(*first), day(*on)
    )]
    HomeTooEarly {
        /// The course.
        title: String,
        /// Its first day.
        first: NaiveDate,
        /// The day given.
        on: NaiveDate,
    },
    /// Something came home that did not go out.
    #[error(
        "\"{title}\" has booked no \"{item}\", so none can be counted home. Add what else came back to the store itself."
    )]
    NotBooked {
        /// The course.
        title: String,
        /// The item.
        item: String,
    },
    /// More came home than went out.
    #[error(
        "\"{title}\" has booked {booked} of \"{item}\", and {counted} are counted home. Count again: back, needs care, broken, used up and lost together make {booked} at most."
    )]
    MoreThanBooked {
        /// The course.
        title: String,
        /// The item.
        item: String,
        /// What went out.
        booked: u32,
        /// What is said to have come home.
        counted: u64,
    },
    /// The store has moved on since the kit was counted home.
    #[error(
        "The count of \"{title}\" can't be taken back, because {} has been changed since. Put the store right by hand.",
        of(item, owner)
    )]
    ChangedSinceHome {
        /// The course.
        title: String,
        /// The item.
        item: String,
        /// Whose.
        owner: String,
    },

    /// A pace that no group has.
    #[error(transparent)]
    AbsurdPace(#[from] craft::pace::book::Absurd),
    /// A record without a stage.
    #[error("Nothing is recorded of \"{title}\". Say how long at least one stage took.")]
    NothingRecorded {
        /// The course.
        title: String,
    },
    /// A stage without a name.
    #[error("A stage recorded of \"{title}\" has no name. Name it as the stage table does.")]
    UnnamedStage {
        /// The course.
        title: String,
    },
    /// A stage recorded twice.
    #[error("The stage \"{stage}\" is recorded twice. Add its times up in one row.")]
    StageTwice {
        /// The stage's id.
        stage: String,
    },
    /// Pairs that can't be tied by one string.
    #[error(
        "{given} pairs are said to be tied by the string at the stage \"{stage}\". Count the pairs at the string, 1 or more; leave it out where nobody waited for a string."
    )]
    TiedPairs {
        /// The stage's id.
        stage: String,
        /// What was given.
        given: f64,
    },
    /// A record before the course.
    #[error(
        "\"{title}\" begins on {}, so its pace can't be recorded on {}. Look at the date.", day(*first), day(*on)
    )]
    RecordedTooEarly {
        /// The course.
        title: String,
        /// Its first day.
        first: NaiveDate,
        /// The day given.
        on: NaiveDate,
    },
    /// Nothing to take back.
    #[error("{}: no pace is recorded of this course, so there is nothing to take back.", path.display())]
    NotRecorded {
        /// The course file.
        path: PathBuf,
    },

    /// The sheet is refused, with every fault.
    #[error(transparent)]
    Sheet(#[from] Box<Refusal>),
    /// The store has changed since the import was looked at.
    #[error(
        "The kit store was changed since this import was looked at, so nothing was imported. Look at what it would change once more."
    )]
    ChangedSincePreview,
    /// A workbook that can't be made.
    #[error("The kit list can't be written as a sheet: {what}.")]
    Export {
        /// The library's words.
        what: String,
    },
}

impl Error {
    /// A short, fixed name for programs. Never changes once shipped.
    pub fn code(&self) -> &'static str {
        match self {
            Self::Folder { .. } => "no-folder",
            Self::CanNotOpen { .. } => "can-not-open",
            Self::NotAStore { .. } => "not-a-store",
            Self::Damaged { .. } => "damaged",
            Self::CutOff { .. } => "cut-off",
            Self::NewerUnreadable { .. } => "newer-store",
            Self::ReadOnly(_) => "read-only",
            Self::Busy => "busy",
            Self::DiskFull => "disk-full",
            Self::Unexpected { .. } => "unexpected",
            Self::EmptyItem => "empty-item",
            Self::TooLong { .. } => "too-long",
            Self::Unshowable { .. } => "unshowable",
            Self::TooMany { .. } => "too-many",
            Self::Mass { .. } => "mass",
            Self::LotThere { .. } => "lot-there",
            Self::NoSuchLot { .. } => "no-such-lot",
            Self::CoursePath { .. } => "course-path",
            Self::NoSuchCourse { .. } => "no-such-course",
            Self::CourseThere { .. } => "course-there",
            Self::AlreadyHome { .. } => "already-home",
            Self::NotHome { .. } => "not-home",
            Self::HomeTooEarly { .. } => "home-too-early",
            Self::NotBooked { .. } => "not-booked",
            Self::MoreThanBooked { .. } => "more-than-booked",
            Self::ChangedSinceHome { .. } => "changed-since-home",
            Self::AbsurdPace(_) => "absurd-pace",
            Self::NothingRecorded { .. } => "nothing-recorded",
            Self::UnnamedStage { .. } => "unnamed-stage",
            Self::StageTwice { .. } => "stage-twice",
            Self::TiedPairs { .. } => "tied-pairs",
            Self::RecordedTooEarly { .. } => "recorded-too-early",
            Self::NotRecorded { .. } => "not-recorded",
            Self::Sheet(refusal) => refusal.code(),
            Self::ChangedSincePreview => "changed-since-preview",
            Self::Export { .. } => "can-not-export",
        }
    }
}

/// The system's word for why a folder can't be made.
fn said(cause: &std::io::Error) -> String {
    match cause.kind() {
        ErrorKind::NotADirectory | ErrorKind::AlreadyExists => "a file is in its way".to_owned(),
        ErrorKind::StorageFull => "the disk is full".to_owned(),
        _ => cause.to_string(),
    }
}

/// `"Spade"`, or `"Spade" (Guild)` where somebody else owns it.
fn of(item: &str, owner: &str) -> String {
    if owner.is_empty() {
        format!("\"{item}\"")
    } else {
        format!("\"{item}\" ({owner})")
    }
}

/// `24 April 2027`.
pub(crate) fn day(date: NaiveDate) -> String {
    date.format("%-d %B %Y").to_string()
}

/// What the database says, sorted by what a person can do about it. Damage and writing that
/// is not allowed want the file's name, so the doors of [`crate::Store`] put it in.
impl From<rusqlite::Error> for Error {
    fn from(cause: rusqlite::Error) -> Self {
        let cut_off = rusqlite::ffi::SQLITE_READONLY_ROLLBACK;
        if cause
            .sqlite_error()
            .is_some_and(|it| it.extended_code == cut_off)
        {
            return Self::CutOff {
                path: PathBuf::new(),
            };
        }
        match cause.sqlite_error_code() {
            Some(ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked) => Self::Busy,
            Some(ErrorCode::DiskFull) => Self::DiskFull,
            Some(ErrorCode::NotADatabase) => Self::NotAStore {
                path: PathBuf::new(),
            },
            Some(ErrorCode::DatabaseCorrupt) => Self::Damaged {
                path: PathBuf::new(),
            },
            Some(ErrorCode::ReadOnly | ErrorCode::CannotOpen) => {
                Self::ReadOnly(ReadOnly::NotWritable {
                    folder: PathBuf::new(),
                })
            }
            _ => Self::Unexpected {
                what: cause.to_string(),
            },
        }
    }
}
