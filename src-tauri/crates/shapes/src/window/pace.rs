//! The pace book as the window shows it.

use crate::words;
use crate::written::{BookRow, lasts};
use craft::pace::book::{Record, StageRecord};
use craft::tables::Tables;
use serde::Serialize;
use ts_rs::TS;

/// The instructor's pace book, for the open course.
#[derive(Debug, Clone, Serialize, TS)]
pub struct PaceBook {
    /// Why it can only be read; empty if it can be changed.
    pub notice: String,
    /// The open course stands in it.
    pub recorded: bool,
    /// More or other things have been told since it was recorded.
    pub changed: bool,
    /// How long the stages of the open course took, as far as was told.
    pub record: Vec<PaceRow>,
    /// All courses that stand in it, by date.
    pub courses: Vec<PaceCourse>,
    /// The pace table before all of them and after; nothing while the book is empty.
    pub rates: Vec<BookRow>,
}

/// How long one stage took.
#[derive(Debug, Clone, Serialize, TS)]
pub struct PaceRow {
    /// The stage's name.
    pub stage: String,
    /// How long so much of it usually takes.
    pub usual: String,
    /// How long it took.
    pub taken: String,
    /// The two compared: `20 % longer`, `as usual`.
    pub pace: String,
}

/// A course that stands in the pace book.
#[derive(Debug, Clone, Serialize, TS)]
#[allow(missing_docs)]
pub struct PaceCourse {
    pub title: String,
    pub first_day: String,
    pub recorded_on: String,
    /// How many stages were recorded.
    pub stages: usize,
    /// It is the course that is open.
    pub this: bool,
}

/// What taking in a pace book would change, in words.
#[derive(Debug, Clone, Serialize, TS)]
pub struct PacePreview {
    /// The file's name.
    pub file: String,
    /// Courses that the book does not have.
    pub added: Vec<String>,
    /// Courses that would be recorded otherwise.
    pub changed: Vec<String>,
    /// How many are in the book just so.
    pub same: usize,
    /// Courses that the file does not have; they stay.
    pub not_in_file: Vec<String>,
}

impl PaceRow {
    /// The stages of a record, in its order.
    pub fn all(record: &Record, tables: &Tables) -> Vec<Self> {
        let row = |it: &StageRecord| Self {
            stage: words::stage_named(tables, &it.stage),
            usual: lasts(it.usual_minutes),
            taken: lasts(it.taken_minutes),
            pace: compared(it.taken_minutes / it.usual_minutes),
        };
        record.stages.iter().map(row).collect()
    }
}

/// How much longer than usual something took, in whole per cent.
fn compared(times: f64) -> String {
    let percent = (100.0 * (times - 1.0)).round();
    if percent == 0.0 || !percent.is_finite() {
        "as usual".to_owned()
    } else if 0.0 < percent {
        format!("{percent:.0} % longer")
    } else {
        format!("{:.0} % shorter", -percent)
    }
}

#[cfg(test)]
mod tests {
    use super::compared;

    #[test]
    fn a_pace_is_told_against_the_usual_one() {
        for (times, told) in [
            (1.204, "20 % longer"),
            (0.85, "15 % shorter"),
            (1.004, "as usual"),
            (0.996, "as usual"),
        ] {
            assert_eq!(compared(times), told);
        }
    }
}
