//! The rows of the table of pace as its file holds them. The file says what each key means.
#![allow(missing_docs)]

use super::spread::PaceSpread;
use crate::tables::figures::{self, WrittenLength};
use serde::Deserialize;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Pace {
    pub(crate) spread: PaceSpread,
    pub(crate) places: Places,
    pub(crate) rests: Rests,
    pub(crate) fatigue: Fatigue,
    pub(crate) rate: Vec<Rate>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Places {
    #[serde(deserialize_with = "figures::positive")]
    pub(crate) hands_on: f64,
    #[serde(deserialize_with = "figures::not_negative")]
    pub(crate) learning_hours: f64,
    #[serde(deserialize_with = "figures::positive")]
    pub(crate) learning_factor: f64,
    pub(crate) facing_pair: WrittenLength,
    pub(crate) diggers: WrittenLength,
    pub(crate) coping_crew: WrittenLength,
    #[serde(deserialize_with = "figures::positive")]
    pub(crate) students_per_instructor: f64,
    #[serde(deserialize_with = "figures::positive")]
    pub(crate) too_many_students: f64,
    pub(crate) one_wall: u32,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Rate {
    pub(crate) stage: String,
    pub(crate) hours: Hours,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Hours {
    #[serde(deserialize_with = "figures::positive")]
    pub(crate) novice: f64,
    #[serde(deserialize_with = "figures::positive")]
    pub(crate) improver: f64,
    #[serde(deserialize_with = "figures::positive")]
    pub(crate) experienced: f64,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Rests {
    pub(crate) name: String,
    #[serde(deserialize_with = "figures::positive")]
    pub(crate) longest_minutes: f64,
    #[serde(deserialize_with = "figures::not_negative")]
    pub(crate) grace_minutes: f64,
    #[serde(deserialize_with = "figures::positive")]
    pub(crate) minutes: f64,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Fatigue {
    #[serde(deserialize_with = "figures::not_negative")]
    pub(crate) from_hours: f64,
    #[serde(deserialize_with = "figures::share")]
    pub(crate) per_hour: f64,
    #[serde(deserialize_with = "figures::part")]
    pub(crate) least: f64,
    pub(crate) source: String,
}
