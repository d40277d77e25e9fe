//! What of a view is other than in the one given before: a key press changes a part of it, and waits for all that
//! is sent.

use serde::Serialize;
use serde_json::value::RawValue;
use std::collections::BTreeMap;
use ts_rs::TS;

/// Fields of a record by their names, each as JSON.
pub type Fields = BTreeMap<String, Box<RawValue>>;

/// A view, told by what is other in it. Its two large parts are told field by field.
#[derive(Debug, Serialize, TS)]
pub struct Renewed {
    /// The number of the view that comes of it.
    pub number: u32,
    /// The number of the view that it changes; null where all is here.
    pub before: Option<u32>,
    /// What is other, save in those two parts.
    #[ts(type = "Partial<Omit<View, 'written' | 'drawings'>>")]
    pub view: Fields,
    /// What is other of the plan as a person reads it.
    #[ts(type = "Partial<Written>")]
    pub written: Fields,
    /// What is other of the drawings.
    #[ts(type = "Partial<Drawings>")]
    pub drawings: Fields,
}
