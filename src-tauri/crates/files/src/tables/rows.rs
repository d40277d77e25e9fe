//! The rows of the tables as their files hold them. The files say what each key means.
#![allow(missing_docs)]

mod heaps;
mod lifting;
mod ready;
mod setting_out;

pub(crate) use heaps::{HeapRows, Heaped, Heaps, Laid, Strip, Trench, Ways};
pub(crate) use lifting::{
    At, Body, Grip, HowLifted, Lift as StageLift, Lifting, Place as LiftingPlace, Rows,
};
pub(crate) use ready::Ready;
pub(crate) use setting_out::{Frames, Retaining};

use super::figures::{self, WrittenLength};
use crate::cards::{Country, Term};
use serde::Deserialize;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Terms {
    pub(crate) term: Vec<Term>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Countries {
    pub(crate) country: Vec<Country>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Stone {
    pub(crate) lead_working_days: u32,
    pub(crate) lead_source: String,
    pub(crate) defaults: StoneDefaults,
    pub(crate) stone: Vec<Rock>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct StoneDefaults {
    pub(crate) voids: Spread,
    pub(crate) hearting_share: Spread,
    pub(crate) waste: Spread,
    pub(crate) cope_fill: Spread,
    pub(crate) reused: Spread,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Spread {
    #[serde(deserialize_with = "figures::share")]
    pub(crate) centre: f64,
    #[serde(deserialize_with = "figures::share")]
    pub(crate) low: f64,
    #[serde(deserialize_with = "figures::share")]
    pub(crate) high: f64,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Rock {
    pub(crate) key: String,
    pub(crate) name: String,
    #[serde(deserialize_with = "figures::positive")]
    pub(crate) density_kg_m3: f64,
    #[serde(deserialize_with = "figures::positive")]
    pub(crate) low_kg_m3: f64,
    #[serde(deserialize_with = "figures::positive")]
    pub(crate) high_kg_m3: f64,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Bars {
    pub(crate) bar: Vec<Bar>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Bar {
    pub(crate) key: String,
    pub(crate) diameter: WrittenLength,
    #[serde(deserialize_with = "figures::positive")]
    pub(crate) mass_kg_per_m: f64,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Pace {
    pub(crate) spread: PaceSpread,
    pub(crate) places: Places,
    pub(crate) rate: Vec<Rate>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct PaceSpread {
    #[serde(deserialize_with = "figures::share")]
    pub(crate) course: f64,
    #[serde(deserialize_with = "figures::share")]
    pub(crate) stage: f64,
    #[serde(deserialize_with = "figures::share")]
    pub(crate) pair: f64,
    pub(crate) source: String,
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
    pub(crate) tidy_minutes: u32,
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
pub(crate) struct Stages {
    pub(crate) stage: Vec<Stage>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Stage {
    pub(crate) id: String,
    pub(crate) name: String,
    pub(crate) work: Option<Work>,
    pub(crate) minutes: Option<u32>,
    pub(crate) crew: Crew,
    pub(crate) note: String,
}

#[derive(Deserialize)]
pub(crate) enum Work {
    #[serde(rename = "heap tonnes")]
    Heap,
    #[serde(rename = "trench cubic metres")]
    Trench,
    #[serde(rename = "frames")]
    Frames,
    #[serde(rename = "footing tonnes")]
    Footing,
    #[serde(rename = "first lift tonnes")]
    FirstLift,
    #[serde(rename = "throughs")]
    Throughs,
    #[serde(rename = "second lift tonnes")]
    SecondLift,
    #[serde(rename = "heads")]
    Heads,
    #[serde(rename = "metres")]
    Metres,
    #[serde(rename = "cope metres")]
    CopeMetres,
}

impl From<Work> for craft::tables::Work {
    fn from(work: Work) -> Self {
        match work {
            Work::Heap => Self::HeapTonnes,
            Work::Trench => Self::TrenchCubicMetres,
            Work::Frames => Self::Frames,
            Work::Footing => Self::FootingTonnes,
            Work::FirstLift => Self::FirstLiftTonnes,
            Work::Throughs => Self::Throughs,
            Work::SecondLift => Self::SecondLiftTonnes,
            Work::Heads => Self::Heads,
            Work::Metres => Self::Metres,
            Work::CopeMetres => Self::CopeMetres,
        }
    }
}

#[derive(Deserialize)]
pub(crate) enum Crew {
    #[serde(rename = "everyone")]
    Everyone,
    #[serde(rename = "facing pairs")]
    FacingPairs,
    #[serde(rename = "diggers")]
    Diggers,
    #[serde(rename = "coping crews")]
    CopingCrews,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Cautions {
    pub(crate) caution: Vec<Caution>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Caution {
    pub(crate) id: String,
    pub(crate) text: String,
    #[serde(deserialize_with = "figures::applies")]
    pub(crate) applies: craft::tables::Applies,
    pub(crate) audience: Audience,
    pub(crate) source: String,
}

#[derive(Deserialize, PartialEq)]
#[serde(rename_all = "lowercase")]
pub(crate) enum Audience {
    Student,
    Instructor,
    Both,
}
