//! The kit store as the window shows it, and what is typed into it.

use super::View;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// The instructor's kit store.
#[derive(Debug, Clone, Serialize, TS)]
pub struct KitStore {
    /// Where it lives.
    pub folder: String,
    /// Why it can only be read; empty if it can be changed.
    pub notice: String,
    /// What there is, by item and owner.
    pub lots: Vec<Lot>,
    /// All courses that have booked, by date.
    pub courses: Vec<BookedCourse>,
    /// Each a sentence that names item, date and courses.
    pub clashes: Vec<String>,
    /// `open` if nothing is booked for this course, `booked`, `home` once it was counted in.
    pub stands: String,
    /// What this course has booked, in the order of its load list.
    pub booked: Vec<BookedItem>,
}

/// So many of an item that one person owns.
#[derive(Debug, Clone, Serialize, TS)]
#[allow(missing_docs)]
pub struct Lot {
    pub item: String,
    /// Empty for pieces.
    pub unit: String,
    /// Empty for the instructor's own.
    pub owner: String,
    pub good: u32,
    pub care: u32,
    pub broken: u32,
    /// Of one, with its unit; empty if it is not known.
    pub mass: String,
    pub note: String,
}

/// A course that has booked kit.
#[derive(Debug, Clone, Serialize, TS)]
#[allow(missing_docs)]
pub struct BookedCourse {
    pub title: String,
    pub file: String,
    pub days: String,
    pub items: usize,
    /// When its kit came home; empty while it is booked.
    pub home: String,
    /// It is the course that is open.
    pub this: bool,
}

/// So many of an item.
#[derive(Debug, Clone, Serialize, TS)]
#[allow(missing_docs)]
pub struct BookedItem {
    pub item: String,
    pub count: u32,
}

/// A lot as it was typed: every field as text.
#[derive(Debug, Clone, Deserialize, TS)]
#[allow(missing_docs)]
pub struct LotTyped {
    pub item: String,
    pub unit: String,
    pub owner: String,
    pub good: String,
    pub care: String,
    pub broken: String,
    pub mass: String,
    pub note: String,
}

/// What became of one item, as it was typed.
#[derive(Debug, Clone, Deserialize, TS)]
#[allow(missing_docs)]
pub struct ReturnTyped {
    pub item: String,
    pub back: String,
    pub care: String,
    pub broken: String,
    pub used_up: String,
    pub lost: String,
}

/// What counting the kit home has come to.
#[derive(Debug, Clone, Serialize, TS)]
pub struct CountedHome {
    /// The course after it.
    pub view: View,
    /// Booked and not counted: they stay in the store as they were.
    pub uncounted: Vec<BookedItem>,
    /// Said to need care, to be broken, used up or lost, beyond what the store holds.
    pub not_in_store: Vec<BookedItem>,
}

/// What taking in a kit list would change.
#[derive(Debug, Clone, Serialize, TS)]
pub struct KitListPreview {
    /// The file's name.
    pub file: String,
    /// New lots, in words.
    pub added: Vec<String>,
    /// Lots that would be different, in words.
    pub changed: Vec<String>,
    /// How many are there just so.
    pub same: usize,
    /// Lots the file does not name, in words.
    pub not_in_file: Vec<String>,
}
