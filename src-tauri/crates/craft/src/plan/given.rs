//! What a course and hand-edited tables must agree on before anything is worked out.

use crate::Error;
use crate::course::{Course, GivenRate};
use crate::kit::{self, Held, Standing, frames_free, name_key};
use crate::tables::{Before, KitRule, PaceTable, Rate, Stage, Tables};
use std::borrow::Cow;
use std::collections::HashSet;

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
                key: "pace.rates".to_owned(),
                what: "a stage in the table of stages",
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

/// The kit rules as this course changes them. Every tool counted must be one that a rule
/// names, or it would count for nothing.
pub(super) fn kit_rules(course: &Course, tables: &Tables) -> Result<Vec<KitRule>, Error> {
    let changes = &course.kit.changes;
    let rules = kit::changed(&tables.kit, changes, Standing::ThisCourse, &tables.stages)?;
    // A tool that came in sizes until this course changed that may have been counted so.
    let mut known = kit::known_items(&rules);
    for item in kit::known_items(&tables.kit) {
        if !known.contains(&item) {
            known.push(item);
        }
    }
    let keys: HashSet<String> = known.iter().map(|item| name_key(item)).collect();
    let counted = |held: &&Held| keys.contains(&name_key(&held.item));
    match course.kit.held.iter().find(|held| !counted(held)) {
        None => Ok(rules),
        Some(held) => Err(Error::UnknownTool {
            given: held.item.clone(),
            known,
        }),
    }
}

/// The course with the frames it can count on: those the parts held make, less what other
/// courses have booked on its days, and no more than it says are in stock.
pub(super) fn with_frames_free<'c>(course: &'c Course, rules: &[KitRule]) -> Cow<'c, Course> {
    let Some(frames) = frames_free(rules, &course.kit.held, course.frames.kind) else {
        return Cow::Borrowed(course);
    };
    let stock = course.frames.in_stock;
    let left = stock.unwrap_or(frames.usable).min(frames.free());
    if stock == Some(left) {
        return Cow::Borrowed(course);
    }
    let mut course = course.clone();
    course.frames.in_stock = Some(left);
    Cow::Owned(course)
}

/// What a course says of lessons and stages must be of those there are.
pub(super) fn running(course: &Course, tables: &Tables) -> Result<(), Error> {
    let running = &course.running;
    let lessons: Vec<&str> = tables.lessons.iter().map(|it| it.id.as_str()).collect();
    let stages: Vec<&str> = tables.stages.iter().map(|it| it.id.as_str()).collect();
    let can_be = tables.stages.iter().filter(|stage| stage.beforehand);
    let beforehand: Vec<&str> = can_be.map(|it| it.id.as_str()).collect();
    for (at, given) in running.left_out.iter().enumerate() {
        known(given, &lessons, "one of the lessons", || {
            format!("timetable.leave_out.{at}")
        })?;
    }
    for (at, given) in running.asked.iter().enumerate() {
        known(given, &lessons, "one of the lessons", || {
            format!("timetable.teach.{at}")
        })?;
    }
    for (at, wish) in running.wishes.iter().enumerate() {
        known(&wish.lesson, &lessons, "one of the lessons", || {
            format!("wish.{at}.lesson")
        })?;
    }
    for (at, given) in running.beforehand.iter().enumerate() {
        let what = "a stage that can be done before the course";
        known(given, &beforehand, what, || format!("pace.beforehand.{at}"))?;
    }
    for (at, report) in running.progress.iter().enumerate() {
        let what = "a stage in the table of stages";
        known(&report.stage, &stages, what, || {
            format!("progress.{at}.stage")
        })?;
    }
    Ok(())
}

fn known(
    given: &str,
    known: &[&str],
    what: &'static str,
    key: impl Fn() -> String,
) -> Result<(), Error> {
    if known.contains(&given) {
        return Ok(());
    }
    Err(Error::UnknownStage {
        key: key(),
        what,
        given: given.to_owned(),
        known: known.iter().map(|&it| it.to_owned()).collect(),
    })
}

/// Tables are edited by hand: each stage that is work needs a rate, and each lesson a stage.
pub(super) fn sound(tables: &Tables) -> Result<(), Error> {
    let has_rate = |stage: &Stage| {
        stage.work.is_fixed() || tables.pace.rates.iter().any(|rate| rate.stage == stage.id)
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
