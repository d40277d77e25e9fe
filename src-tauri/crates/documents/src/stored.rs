//! What of an instructor's store counts for a course: tools held, and the pace of earlier courses.

use chrono::NaiveDate;
use craft::kit::Held;
use craft::pace::book::Record;
use std::path::Path;
use store::{Error, PaceRecord, Store};

/// What the store holds for one course; nothing without a store.
#[derive(Debug, Clone, Default)]
pub struct FromStore {
    /// Tools, less what other courses have booked on its days.
    pub held: Vec<Held>,
    /// How long the stages of the instructor's other courses took, in the order of their days.
    pub recorded: Vec<Record>,
}

impl FromStore {
    /// What counts for the course of this file on these days.
    ///
    /// Its own record does not count: what was built on it is told in the file itself.
    ///
    /// # Errors
    /// [`Error`] where the store can't be read.
    pub fn read(
        store: &Store,
        course_path: Option<&Path>,
        days: &[NaiveDate],
    ) -> Result<Self, Error> {
        let own = course_path.map(|path| std::fs::canonicalize(path).unwrap_or(path.to_owned()));
        let records = store.pace_records()?;
        let others = records
            .into_iter()
            .filter(|it| Some(&it.path) != own.as_ref());
        Ok(Self {
            held: store.held_for(course_path, days)?,
            recorded: others.map(|it: PaceRecord| it.record).collect(),
        })
    }
}
