//! The rows of `hazards.toml`.

use crate::tables::figures::WrittenLength;
use craft::hazards::{Circumstance, Likelihood, Rating, Severity};
use serde::Deserialize;
use serde::de::{Deserializer, Error};

#[derive(Deserialize)]
#[serde(try_from = "HazardRows")]
pub(crate) struct Hazards {
    pub(crate) rows: HazardRows,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct HazardRows {
    pub(crate) heights: Heights,
    pub(crate) matrix: Matrix,
    pub(crate) hazard: Vec<Hazard>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Heights {
    pub(crate) knee: WrittenLength,
    pub(crate) waist: WrittenLength,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Matrix {
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Hazard {
    pub(crate) id: String,
    pub(crate) name: String,
    pub(crate) harm: String,
    pub(crate) who: String,
    #[serde(deserialize_with = "circumstances")]
    pub(crate) met_by: Vec<Circumstance>,
    pub(crate) ask: Option<String>,
    pub(crate) before: Rated,
    pub(crate) controls: Vec<String>,
    pub(crate) after: Rated,
    #[serde(default)]
    pub(crate) cautions: Vec<String>,
    pub(crate) source: String,
}

/// How likely and how badly.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Rated {
    #[serde(deserialize_with = "likelihood")]
    likelihood: Likelihood,
    #[serde(deserialize_with = "severity")]
    severity: Severity,
}

impl From<&Rated> for Rating {
    fn from(row: &Rated) -> Self {
        Self {
            likelihood: row.likelihood,
            severity: row.severity,
        }
    }
}

impl TryFrom<HazardRows> for Hazards {
    type Error = String;

    /// Refuses what no single key can see: an id twice, no controls, a risk that controls
    /// make worse, a knee above the waist.
    fn try_from(rows: HazardRows) -> Result<Self, String> {
        if rows.heights.waist.0 < rows.heights.knee.0 {
            return Err("the knee stands higher than the waist".to_owned());
        }
        for (at, row) in rows.hazard.iter().enumerate() {
            let id = &row.id;
            if rows.hazard.iter().take(at).any(|before| before.id == *id) {
                return Err(format!(
                    "\"{id}\" stands twice: each hazard needs an id of its own"
                ));
            }
            if row.controls.iter().all(|control| control.trim().is_empty()) {
                return Err(format!(
                    "\"{id}\" has no controls: say at least one thing that is done about it"
                ));
            }
            if Rating::from(&row.after).is_above(Rating::from(&row.before)) {
                return Err(format!(
                    "\"{id}\" is worse after its controls than before: after may not be above before"
                ));
            }
        }
        Ok(Self { rows })
    }
}

fn circumstances<'de, D: Deserializer<'de>>(reader: D) -> Result<Vec<Circumstance>, D::Error> {
    let given = Vec::<String>::deserialize(reader)?;
    if given.is_empty() {
        return Err(D::Error::custom(
            "met_by names nothing: \"always\" is the word for every course",
        ));
    }
    let one = |word: &String| {
        let found = Circumstance::all().find(|it| it.word() == word);
        found.ok_or_else(|| no_word(word, Circumstance::all().map(Circumstance::word)))
    };
    given.iter().map(one).collect()
}

fn likelihood<'de, D: Deserializer<'de>>(reader: D) -> Result<Likelihood, D::Error> {
    let given = String::deserialize(reader)?;
    let found = Likelihood::ALL.into_iter().find(|it| it.word() == given);
    found.ok_or_else(|| no_word(&given, Likelihood::ALL.into_iter().map(Likelihood::word)))
}

fn severity<'de, D: Deserializer<'de>>(reader: D) -> Result<Severity, D::Error> {
    let given = String::deserialize(reader)?;
    let found = Severity::ALL.into_iter().find(|it| it.word() == given);
    found.ok_or_else(|| no_word(&given, Severity::ALL.into_iter().map(Severity::word)))
}

fn no_word<E: Error>(given: &str, known: impl Iterator<Item = &'static str>) -> E {
    let words: Vec<&str> = known.collect();
    E::custom(format!("\"{given}\" is not one of {}", words.join(", ")))
}
