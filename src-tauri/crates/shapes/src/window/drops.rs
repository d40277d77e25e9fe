//! What a person drops onto the window or pastes into it, before anything is taken in.

use super::{KitListPreview, PacePreview, Trouble};
use serde::Serialize;
use ts_rs::TS;

/// What was dropped.
#[derive(Debug, Clone, Serialize, TS)]
#[serde(tag = "kind", content = "is", rename_all = "kebab-case")]
pub enum Dropped {
    /// A course, to be opened.
    Course,
    /// A kit list, looked at.
    KitList(KitListPreview),
    /// A pace book, looked at.
    PaceBook(PacePreview),
    /// A list of people: its lines, cells parted by tabs.
    Roster(String),
    /// Nothing known.
    Refused(Trouble),
}

/// What taking in a list of people would change, in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct RosterPreview {
    /// Who is new.
    pub added: Vec<String>,
    /// Whose experience would be another.
    pub changed: Vec<String>,
    /// How many are there just so.
    pub same: usize,
    /// Who is in the course and not in the list.
    pub not_in_list: Vec<String>,
}
