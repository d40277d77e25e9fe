//! Where the stone lies, in written figures.

use craft::quantity::{Units, show_length};
use serde::Serialize;
use ts_rs::TS;

/// What goes with the heap plan.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenHeaps")]
pub struct Heaps {
    /// The room all of it takes, as a sentence; empty where nothing lies.
    pub ground: String,
    /// The farthest a barrow goes, as a sentence; empty where nothing is tipped.
    pub run: String,
    /// What has to be said about it.
    pub notes: Vec<String>,
}

impl Heaps {
    pub(super) fn of(heaps: &craft::heaps::Heaps, units: Units) -> Self {
        let [along, across] = heaps.ground.map(|it| show_length(it, units));
        let ground = if heaps.heaps.is_empty() {
            String::new()
        } else {
            format!("Wall, working strips and heaps take {along} by {across}.")
        };
        Self {
            ground,
            run: heaps.longest_run.map_or_else(String::new, |run| {
                let run = show_length(run, units);
                format!("The farthest barrow run from where the lorry tips is {run}.")
            }),
            notes: heaps.notes.iter().map(|note| note.words(units)).collect(),
        }
    }
}
