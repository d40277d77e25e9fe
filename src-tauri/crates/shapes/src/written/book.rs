//! The pace book in words: what each stage was taken to need before the records, and is now.

use craft::pace::book::BookRate;
use craft::tables::Tables;
use serde::Serialize;
use ts_rs::TS;

/// One rate before and after the records.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenBookRow")]
#[allow(missing_docs)]
pub struct BookRow {
    pub stage: String,
    pub before: String,
    pub after: String,
    /// How sure it is, before and after.
    pub spread: String,
}

/// The rates of a pace book, stage by stage.
pub fn book(rates: &[BookRate], tables: &Tables) -> Vec<BookRow> {
    let hours = |hours: [f64; 3]| hours.map(|it| format!("{it:.2}")).join(" / ");
    rates
        .iter()
        .map(|row| {
            let stage = tables.stages.iter().find(|stage| stage.id == row.stage);
            BookRow {
                stage: stage.map_or(row.stage.clone(), |stage| stage.name.clone()),
                before: hours(row.before_hours),
                after: hours(row.after_hours),
                spread: format!("{:.2} -> {:.2}", row.before_spread, row.after_spread),
            }
        })
        .collect()
}
