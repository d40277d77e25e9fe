//! What can hurt someone, as JSON.

use craft::hazards::{Rating, Shown};
use serde::Serialize;

/// What can hurt someone on this course: an aid to an assessment, not one.
#[derive(Debug, Clone, Serialize)]
pub struct Hazard {
    /// A word for it that stays.
    pub id: String,
    /// What it is called.
    pub name: String,
    /// What could happen.
    pub harm: String,
    /// Who could be hurt.
    pub who: String,
    /// Why it is met on this course; null where every course meets it.
    pub because: Option<String>,
    /// What is answered on the site; null where no one need ask.
    pub ask: Option<String>,
    /// With nothing done about it.
    pub before: Risk,
    /// What is done about it.
    pub controls: Vec<String>,
    /// With all of that done.
    pub after: Risk,
    /// Ids of the cautions that say more.
    pub cautions: Vec<String>,
    /// Who says so.
    pub source: String,
}

/// How likely, how badly, and what the two come to.
#[derive(Debug, Clone, Serialize)]
pub struct Risk {
    /// `unlikely`, `possible` or `likely`.
    pub likelihood: String,
    /// `slight`, `serious` or `grave`.
    pub severity: String,
    /// `very low`, `low`, `medium`, `high` or `very high`.
    pub level: String,
}

impl Hazard {
    /// A hazard in its JSON shape.
    pub fn of(it: &Shown) -> Self {
        Self {
            id: it.id.clone(),
            name: it.name.clone(),
            harm: it.harm.clone(),
            who: it.who.clone(),
            because: (!it.because.is_empty()).then(|| it.because.clone()),
            ask: it.ask.clone(),
            before: Risk::of(it.before),
            controls: it.controls.clone(),
            after: Risk::of(it.after),
            cautions: it.cautions.clone(),
            source: it.source.clone(),
        }
    }
}

impl Risk {
    fn of(rating: Rating) -> Self {
        Self {
            likelihood: rating.likelihood.word().to_owned(),
            severity: rating.severity.word().to_owned(),
            level: rating.level().word().to_owned(),
        }
    }
}
