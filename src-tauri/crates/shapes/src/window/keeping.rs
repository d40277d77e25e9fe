//! How safe the open course is: what was kept of earlier sittings, and what others do to its file.

use super::{Changed, Trouble};
use serde::Serialize;
use ts_rs::TS;

/// All that the window tells of it, calmly and beside the work.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct Keeping {
    /// Changes of earlier sittings that were never saved; nothing of them is on the desk.
    pub kept: Vec<Kept>,
    /// Where the file on the disk stands against what is shown.
    pub outside: Outside,
    /// The file is open in another window, and only that one saves to it.
    pub elsewhere: bool,
    /// What can't be kept safe, or could not be read of what was.
    pub broken: Vec<Trouble>,
}

/// Where the file on the disk stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, TS)]
#[serde(rename_all = "lowercase")]
#[ts(rename_all = "lowercase")]
pub enum Outside {
    /// As the program left it.
    Same,
    /// Changed by another program, and nobody has said yet which shall hold.
    Changed,
    /// Changed by another program; the person keeps their own, and saving asks.
    Mine,
    /// Deleted or moved away, or its drive is not there.
    Gone,
}

/// Changes that a crash or a pulled plug kept from being saved.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct Kept {
    /// By what they are taken or left.
    pub id: String,
    /// The course's title.
    pub title: String,
    /// The file's name; empty for a course that was never saved.
    pub file: String,
    /// The folder it is in; empty for a course that was never saved.
    pub folder: String,
    /// When the last of them was made, as `14:32` or `Sat 24 April 2027, 14:32`.
    pub when: String,
    /// What they are, against what the disk holds.
    pub changes: Vec<Changed>,
    /// They belong to the course that is open.
    pub here: bool,
    /// The file itself has been changed or deleted since.
    pub since: bool,
}
