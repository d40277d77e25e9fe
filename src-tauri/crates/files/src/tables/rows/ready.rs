//! The rows of `ready.toml`.

use crate::tables::figures::{self, WrittenMass};
use craft::readiness::WORKED_OUT;
use craft::tables::Applies;
use serde::de::{Deserialize, Deserializer, Error};
use std::collections::HashSet;

/// More days than anything is arranged ahead of a course.
const MOST_DAYS: u32 = 366;

#[derive(serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Ready {
    pub(crate) times: Times,
    pub(crate) loading: Loading,
    #[serde(deserialize_with = "told_apart")]
    pub(crate) task: Vec<Task>,
}

#[derive(serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Times {
    #[serde(deserialize_with = "days")]
    pub(crate) borrow_days: u32,
    #[serde(deserialize_with = "days")]
    pub(crate) hire_days: u32,
    #[serde(deserialize_with = "days")]
    pub(crate) buy_days: u32,
    pub(crate) source: String,
}

#[derive(serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Loading {
    pub(crate) person: WrittenMass,
    pub(crate) source: String,
    #[serde(default)]
    pub(crate) note: Vec<Note>,
}

#[derive(serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Note {
    pub(crate) text: String,
    pub(crate) source: String,
}

/// One thing to arrange. By when it is stands in one of three keys.
#[derive(serde::Deserialize)]
#[serde(try_from = "WrittenTask")]
pub(crate) struct Task {
    pub(crate) id: String,
    pub(crate) text: String,
    pub(crate) when: craft::tables::When,
    pub(crate) part: craft::tables::Part,
    pub(crate) applies: Applies,
    pub(crate) source: String,
}

#[derive(serde::Deserialize)]
#[serde(deny_unknown_fields)]
struct WrittenTask {
    id: String,
    text: String,
    #[serde(default, deserialize_with = "some_days")]
    days_before: Option<u32>,
    #[serde(default, deserialize_with = "some_days")]
    working_days_before: Option<u32>,
    #[serde(default, deserialize_with = "some_days")]
    days_after: Option<u32>,
    #[serde(deserialize_with = "part")]
    part: craft::tables::Part,
    #[serde(deserialize_with = "figures::applies")]
    applies: Applies,
    source: String,
}

impl TryFrom<WrittenTask> for Task {
    type Error = String;

    fn try_from(row: WrittenTask) -> Result<Self, String> {
        use craft::tables::When;
        let when = match (row.days_before, row.working_days_before, row.days_after) {
            (Some(days), None, None) => When::DaysBefore(days),
            (None, Some(days), None) => When::WorkingDaysBefore(days),
            (None, None, Some(days)) => When::DaysAfter(days),
            _ => {
                return Err(format!(
                    "\"{}\" needs one of days_before, working_days_before and days_after",
                    row.id
                ));
            }
        };
        let plain = |sign: u8| sign.is_ascii_lowercase() || sign.is_ascii_digit() || sign == b'-';
        if row.id.is_empty() || !row.id.bytes().all(plain) {
            return Err(format!(
                "\"{}\" is not an id: write it in small letters, figures and hyphens",
                row.id
            ));
        }
        if WORKED_OUT.contains(&row.id.as_str()) {
            return Err(format!(
                "\"{}\" is an id of what the plan works out itself; choose another",
                row.id
            ));
        }
        Ok(Self {
            id: row.id,
            text: row.text,
            when,
            part: row.part,
            applies: row.applies,
            source: row.source,
        })
    }
}

fn told_apart<'de, D: Deserializer<'de>>(reader: D) -> Result<Vec<Task>, D::Error> {
    let tasks = Vec::<Task>::deserialize(reader)?;
    let mut seen = HashSet::new();
    match tasks.iter().find(|task| !seen.insert(task.id.as_str())) {
        Some(twice) => Err(D::Error::custom(format!(
            "the task \"{}\" is there twice",
            twice.id
        ))),
        None => Ok(tasks),
    }
}

fn part<'de, D: Deserializer<'de>>(reader: D) -> Result<craft::tables::Part, D::Error> {
    let given = String::deserialize(reader)?;
    let mut all = craft::tables::Part::ALL.into_iter();
    all.find(|part| part.word() == given).ok_or_else(|| {
        let words = craft::tables::Part::ALL.map(craft::tables::Part::word);
        D::Error::custom(format!("\"{given}\" is not one of: {}", words.join(", ")))
    })
}

fn days<'de, D: Deserializer<'de>>(reader: D) -> Result<u32, D::Error> {
    let given = figures::not_negative(reader)?;
    if given.fract() != 0.0 || f64::from(MOST_DAYS) < given {
        return Err(D::Error::custom(format!(
            "{given} stands where a whole number of days up to {MOST_DAYS} is due"
        )));
    }
    Ok(u32::try_from(craft::quantity::whole_number(given)).unwrap_or(MOST_DAYS))
}

fn some_days<'de, D: Deserializer<'de>>(reader: D) -> Result<Option<u32>, D::Error> {
    days(reader).map(Some)
}
