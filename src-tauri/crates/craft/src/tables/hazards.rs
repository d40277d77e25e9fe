//! What can hurt someone on a course, how likely and how badly, and what is done about it.

use crate::hazards::{Circumstance, Rating};
use crate::quantity::Length;

/// All that a risk assessment is given.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct HazardTable {
    /// Walls no lower than this can drop a stone on a knee.
    pub knee: Length,
    /// Walls no lower than this can drop a stone on a body.
    pub waist: Length,
    /// Who says how high they are.
    pub heights_source: String,
    /// Who sets likelihood against severity as [`Rating::level`] does.
    pub matrix_source: String,
    /// The hazards.
    pub hazards: Vec<Hazard>,
}

/// Something that can hurt someone.
#[derive(Debug, Clone, PartialEq)]
pub struct Hazard {
    /// A word for it that stays, unique in the table.
    pub id: String,
    /// What it is called.
    pub name: String,
    /// What could happen.
    pub harm: String,
    /// Who could be hurt.
    pub who: String,
    /// On which courses it is met: where any of these holds.
    pub met_by: Vec<Circumstance>,
    /// What is answered on the site, as a question; nothing where no one need ask.
    pub ask: Option<String>,
    /// Before anything is done about it.
    pub before: Rating,
    /// What is done about it, at least one thing.
    pub controls: Vec<String>,
    /// With the controls in place; never above `before`.
    pub after: Rating,
    /// Ids of the cautions that say more.
    pub cautions: Vec<String>,
    /// Who says so.
    pub source: String,
}
