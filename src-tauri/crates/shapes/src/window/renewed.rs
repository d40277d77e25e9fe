//! What of a view is other than in the one given before: a key press changes a part of it, and waits for all that
//! is sent.

use serde::Serialize;
use serde_json::Value;
use ts_rs::TS;

/// A view, told by what is other in it.
#[derive(Debug, Serialize, TS)]
pub struct Renewed {
    /// The number of the view that comes of it.
    pub number: u32,
    /// The view; null where it is the one before with some changes.
    #[ts(type = "View | null")]
    pub whole: Option<Value>,
    /// These changes.
    pub changes: Vec<Difference>,
}

/// A part of a view that is other.
#[derive(Debug, Serialize, TS)]
pub struct Difference {
    /// Where it is: the name of a field or the place in a list, from outside to inside.
    pub at: Vec<String>,
    /// What is there now.
    #[ts(type = "unknown")]
    pub now: Value,
}
