//! The hazards of one course: those of the table that this wall, these days and this group
//! bring with them, each with the course's own reason for it.
//!
//! - `rating`: how likely, how badly, and what the two come to
//! - `circumstance`: when a hazard is met
//! - `because`: why it is met on this course, in a few words with its figures

mod because;
mod circumstance;
mod rating;
#[cfg(test)]
mod tests;

pub use circumstance::{Circumstance, Circumstances, Met};
pub use rating::{Level, Likelihood, Rating, Severity};

use crate::tables::HazardTable;

/// A hazard of one course.
#[derive(Debug, Clone, PartialEq)]
pub struct Shown {
    /// A word for it that stays.
    pub id: String,
    /// What it is called.
    pub name: String,
    /// What could happen.
    pub harm: String,
    /// Who could be hurt.
    pub who: String,
    /// Why it is met here, with this course's figures; empty where every course meets it.
    pub because: String,
    /// What is answered on the site; nothing where no one need ask.
    pub ask: Option<String>,
    /// Before anything is done about it.
    pub before: Rating,
    /// What is done about it.
    pub controls: Vec<String>,
    /// With the controls in place.
    pub after: Rating,
    /// Ids of the cautions that say more.
    pub cautions: Vec<String>,
    /// Who says so.
    pub source: String,
}

/// The hazards that a course meets, the highest remaining risk first, then the highest
/// before, then as the table has them.
pub fn hazards(table: &HazardTable, circumstances: &Circumstances) -> Vec<Shown> {
    let mut shown: Vec<Shown> = table
        .hazards
        .iter()
        .filter_map(|hazard| {
            let reasons = circumstances.reasons(&hazard.met_by)?;
            Some(Shown {
                id: hazard.id.clone(),
                name: hazard.name.clone(),
                harm: hazard.harm.clone(),
                who: hazard.who.clone(),
                because: reasons.join("; "),
                ask: hazard.ask.clone(),
                before: hazard.before,
                controls: hazard.controls.clone(),
                after: hazard.after,
                cautions: hazard.cautions.clone(),
                source: hazard.source.clone(),
            })
        })
        .collect();
    // Stable, so that hazards of one level keep the order of the table.
    shown.sort_by_key(|it| std::cmp::Reverse((it.after.level(), it.before.level())));
    shown
}
