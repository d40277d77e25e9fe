//! Weather, people, wishes and the day itself as JSON.

use crate::clock::Clock;
use crate::words;
use craft::course::Course;
use craft::people;
use craft::plan::Plan;
use craft::quantity::Read;
use craft::tables::Tables;
use serde::Serialize;
use ts_rs::TS;

/// What the typed-in weather of a day comes to.
#[derive(Debug, Clone, Serialize)]
pub struct DayWeather {
    /// Counts from 1.
    pub day: usize,
    /// In the shade.
    pub heat_index_c: Option<f64>,
    /// With full sun.
    pub full_sun_heat_index_c: Option<f64>,
    /// The band of heat.
    pub heat_band: Option<String>,
    /// Minutes of rest in each hot hour.
    pub rest_minutes: u32,
    /// In the coldest hour.
    pub wind_chill_c: Option<f64>,
    /// The band of cold.
    pub cold_band: Option<String>,
    /// What the day asks for, the most pressing first.
    pub asks: Vec<Ask>,
}

/// Something a day's weather asks for.
#[derive(Debug, Clone, Serialize)]
pub struct Ask {
    /// What to do.
    pub text: String,
    /// Who says so.
    pub source: String,
}

/// A wish that can't be had.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WishUnmet")]
pub struct Unmet {
    /// The wish among those of the file, counted from 1; null for one about pairs.
    pub wish: Option<usize>,
    /// What can't be had, and why.
    pub text: String,
}

/// One day's people.
#[derive(Debug, Clone, Serialize)]
pub struct DayPeople {
    /// Counts from 1.
    pub day: usize,
    /// Names of those who come.
    pub present: Vec<String>,
    /// Who is away and when.
    pub away: Vec<Away>,
    /// Who builds where that day.
    pub stints: Vec<DayStint>,
    /// As on the first day.
    pub same_as_first: bool,
    /// Working minutes of the day: its open time, slow hours counted as what they are worth.
    pub working_minutes: f64,
}

/// A pair and its stretch of wall on one day.
#[derive(Debug, Clone, Serialize)]
#[allow(missing_docs)]
pub struct DayStint {
    pub from_m: f64,
    pub to_m: f64,
    pub members: Vec<String>,
}

/// A time somebody is away; local times.
#[derive(Debug, Clone, Serialize)]
#[allow(missing_docs)]
pub struct Away {
    pub who: String,
    pub from: String,
    pub until: String,
}

/// Who does what at one stage.
#[derive(Debug, Clone, Serialize)]
pub struct Round {
    /// The stage's id.
    pub stage: String,
    /// Stint by stint.
    pub places: Vec<Place>,
    /// Turns at the built ends.
    pub heads: Vec<Turn>,
}

/// The people at one stint.
#[derive(Debug, Clone, Serialize)]
pub struct Place {
    /// Counts from 1.
    pub stint: usize,
    /// Names of those at the left face.
    pub left: Vec<String>,
    /// Names of those at the right face.
    pub right: Vec<String>,
}

/// A pair's turn at a built end.
#[derive(Debug, Clone, Serialize)]
pub struct Turn {
    /// `start` or `finish`.
    pub end: String,
    /// The pair, counted from 1 by the stint it began at.
    pub pair: usize,
    /// Shares of the stage.
    pub from: f64,
    /// Shares of the stage.
    pub to: f64,
}

/// Weather day by day.
pub(super) fn weather(plan: &Plan) -> Vec<DayWeather> {
    let days = plan.days.weather.iter().enumerate();
    days.map(|(at, it)| DayWeather {
        day: at + 1,
        heat_index_c: it.heat_index.map(Read::si).map(kelvin),
        full_sun_heat_index_c: it.full_sun_heat_index.map(Read::si).map(kelvin),
        heat_band: it.heat_band.as_ref().map(|band| band.name.clone()),
        rest_minutes: it.heat_band.as_ref().map_or(0, |band| band.rest_minutes),
        wind_chill_c: it.wind_chill.map(Read::si).map(kelvin),
        cold_band: it.cold_band.as_ref().map(|band| band.name.clone()),
        asks: it
            .asks
            .iter()
            .map(|ask| Ask {
                text: ask.text.clone(),
                source: ask.source.clone(),
            })
            .collect(),
    })
    .collect()
}

fn kelvin(kelvin: f64) -> f64 {
    kelvin - 273.15
}

/// Wishes that can't be had.
pub(crate) fn unmet(plan: &Plan, course: &Course, tables: &Tables, clock: &Clock) -> Vec<Unmet> {
    let timed = plan.days.timed.unmet.iter().map(|it| Unmet {
        wish: Some(it.wish + 1),
        text: words::unmet(it, course, tables, clock),
    });
    let pairs = plan.days.unmet.iter().map(|it| Unmet {
        wish: None,
        text: words::unmet_pair(it),
    });
    timed.chain(pairs).collect()
}

/// People day by day.
pub(super) fn people(plan: &Plan) -> Vec<DayPeople> {
    let working = &plan.days.working;
    let days = plan.days.people.iter();
    days.map(|it| DayPeople {
        day: it.day + 1,
        present: it.present.clone(),
        away: it.away.iter().map(Away::of).collect(),
        stints: it
            .stints
            .iter()
            .map(|stint| DayStint {
                from_m: stint.from.si(),
                to_m: stint.to.si(),
                members: stint.members.iter().map(|it| it.name.clone()).collect(),
            })
            .collect(),
        same_as_first: it.same_as_first,
        working_minutes: working.get(it.day).copied().unwrap_or(0.0),
    })
    .collect()
}

impl Away {
    fn of(away: &people::Away) -> Self {
        Self {
            who: away.who.clone(),
            from: away.from.to_string(),
            until: away.until.to_string(),
        }
    }
}

/// Who does what, stage by stage.
pub(super) fn rotation(plan: &Plan) -> Vec<Round> {
    let rounds = plan.days.rotation.rounds.iter();
    rounds
        .map(|round| Round {
            stage: round.stage.clone(),
            places: round
                .places
                .iter()
                .map(|place| Place {
                    stint: place.stint + 1,
                    left: place.left.clone(),
                    right: place.right.clone(),
                })
                .collect(),
            heads: round
                .heads
                .iter()
                .map(|turn| Turn {
                    end: if turn.end == 0 { "start" } else { "finish" }.to_owned(),
                    pair: turn.pair + 1,
                    from: turn.from,
                    to: turn.to,
                })
                .collect(),
        })
        .collect()
}
