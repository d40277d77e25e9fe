//! What a course and hand-edited tables must agree on before anything is worked out.

use crate::Error;
use crate::course::{Course, GivenRate};
use crate::tables::{Before, PaceTable, Rate, Stage, Tables, Work};

/// The table of pace with the rates a course gives in place of its own.
pub(super) fn with_rates(
    table: &PaceTable,
    given: &[GivenRate],
    stages: &[Stage],
) -> Result<PaceTable, Error> {
    let mut table = table.clone();
    for rate in given {
        if !stages.iter().any(|stage| stage.id == rate.stage) {
            return Err(Error::UnknownStage {
                given: rate.stage.clone(),
                known: stages.iter().map(|stage| stage.id.clone()).collect(),
            });
        }
        table.rates.retain(|row| row.stage != rate.stage);
        table.rates.push(Rate {
            stage: rate.stage.clone(),
            hours: rate.hours,
            source: "given in the course file".to_owned(),
        });
    }
    Ok(table)
}

/// Every tool counted must be one that a rule names, or it would count for nothing.
pub(super) fn known_tools(course: &Course, tables: &Tables) -> Result<(), Error> {
    let known = |item: &str| {
        tables
            .kit
            .iter()
            .any(|rule| rule.item.eq_ignore_ascii_case(item))
    };
    match course.kit_on_hand.iter().find(|(item, _)| !known(item)) {
        None => Ok(()),
        Some((item, _)) => Err(Error::UnknownTool {
            given: item.clone(),
            known: tables.kit.iter().map(|rule| rule.item.clone()).collect(),
        }),
    }
}

/// Tables are edited by hand: each stage that is work needs a rate, and each lesson a stage.
pub(super) fn sound(tables: &Tables) -> Result<(), Error> {
    let has_rate = |stage: &Stage| {
        matches!(stage.work, Work::Minutes(_))
            || tables.pace.rates.iter().any(|rate| rate.stage == stage.id)
    };
    if let Some(stage) = tables.stages.iter().find(|stage| !has_rate(stage)) {
        return Err(Error::Table {
            table: "tables/pace.toml",
            missing: stage.id.clone(),
        });
    }
    let homeless = tables
        .lessons
        .iter()
        .find_map(|lesson| match &lesson.before {
            Before::Stage(id) if !tables.stages.iter().any(|stage| stage.id == *id) => Some(id),
            _ => None,
        });
    match homeless {
        Some(id) => Err(Error::Table {
            table: "tables/stages.toml",
            missing: id.clone(),
        }),
        None => Ok(()),
    }
}
