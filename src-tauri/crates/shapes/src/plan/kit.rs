//! The tool list as JSON.

use craft::quantity::Read;
use serde::Serialize;

/// One line of the tool list.
#[derive(Debug, Clone, Serialize)]
pub struct KitLine {
    /// The tool.
    pub item: String,
    /// What it is counted in; empty for pieces.
    pub unit: String,
    /// How many the course needs.
    pub need: usize,
    /// How many are there; null if nobody has counted.
    pub have: Option<usize>,
    /// How many are missing; null if nobody has counted.
    pub short: Option<usize>,
    /// Which courses have booked what is missing, where enough are held.
    pub clash: Vec<Taken>,
    /// How to come by what is short: `borrow`, `hire` or `buy`.
    pub way: String,
    /// What to do to it before the course; empty for nothing.
    pub prepare: String,
    /// How the need comes about.
    pub why: String,
    /// Who says that so many are needed, or that the rule was changed.
    pub source: String,
    /// All that are needed.
    pub mass_kg: f64,
    /// Of one.
    pub each_kg: f64,
    /// Where it is used.
    pub place: String,
    /// Without it the work must not begin.
    pub safety_critical: bool,
    /// Used up by the course.
    pub consumable: bool,
}

/// So many booked by another course on one day.
#[derive(Debug, Clone, Serialize)]
#[allow(missing_docs)]
pub struct Taken {
    pub course: String,
    pub date: String,
    pub count: u32,
}

impl KitLine {
    pub(super) fn of(line: &craft::kit::KitLine) -> Self {
        Self {
            item: line.item.clone(),
            unit: line.unit.clone(),
            need: line.need,
            have: line.have,
            short: line.short,
            clash: line
                .clash
                .iter()
                .map(|it| Taken {
                    course: it.course.clone(),
                    date: it.date.to_string(),
                    count: it.count,
                })
                .collect(),
            way: line.way.word().to_owned(),
            prepare: line.prepare.clone(),
            source: line.source.clone(),
            each_kg: line.each.si(),
            why: line.why.clone(),
            mass_kg: line.mass.si(),
            place: line.place.clone(),
            safety_critical: line.safety_critical,
            consumable: line.consumable,
        }
    }
}
