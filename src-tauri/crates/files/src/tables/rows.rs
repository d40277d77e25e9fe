//! The rows of the tables as their files hold them. The files say what each key means.
#![allow(missing_docs)]

mod hazards;
mod heaps;
mod lifting;
mod pace;
mod ready;
mod setting_out;
mod spread;
mod stages;
pub(crate) mod weather;

pub(crate) use hazards::{HazardRows, Hazards};
pub(crate) use heaps::{HeapRows, Heaped, Heaps, Laid, Strip, Trench, Ways};
pub(crate) use lifting::{
    At, Body, Grip, HowLifted, Lift as StageLift, Lifting, Place as LiftingPlace, Rows,
};
pub(crate) use pace::Pace;
pub(crate) use ready::Ready;
pub(crate) use setting_out::{Frames, Retaining};
pub(crate) use stages::Stages;

use super::figures::{self, WrittenLength};
use crate::cards::Country;
use serde::Deserialize;

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
pub(crate) struct HazardsAsked {
    pub(crate) row: Vec<HazardAsked>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct HazardAsked {
    pub(crate) hazard: String,
    pub(crate) control: String,
    pub(crate) source: String,
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
