//! How the days are run, in words: what holds things up, what would help, people, weather.

use super::book::{BookRow, book};
use super::today::Today;
use crate::clock::{Clock, list};
use crate::words;
use craft::course::Course;
use craft::pace::sizing::rounded_down;
use craft::plan::{Plan, TwoWalls};
use craft::quantity::{Units, show_count, show_length, show_share, show_temperature, whole_number};
use craft::tables::{Tables, Work};
use serde::Serialize;
use ts_rs::TS;

/// How the days are run.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenRunning")]
pub struct Running {
    /// How often the throughs are reached on the first day; empty without throughs.
    pub throughs: String,
    /// What held the simulated courses up most, the most frequent first.
    pub holdups: Vec<Line>,
    /// What would make the wall longer, the most first.
    pub lifts: Vec<Line>,
    /// Sentences about the wall's length, height and number that an instructor should know.
    pub about_length: Vec<String>,
    /// Wishes that can't be had.
    pub unmet: Vec<String>,
    /// Weather day by day, where it was typed in.
    pub weather: Vec<DayWeather>,
    /// Who is away when, and who builds where then.
    pub people: Vec<DayPeople>,
    /// Who does what, stage by stage.
    pub rotation: Vec<Round>,
    /// The pace table before and after what was recorded.
    pub book: Vec<BookRow>,
    /// How it stands on the day; null before anything has been built.
    pub today: Option<Today>,
}

/// Something with its figure.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenLine")]
#[allow(missing_docs)]
pub struct Line {
    pub what: String,
    pub figure: String,
}

/// What the weather of a day comes to.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenDayWeather")]
pub struct DayWeather {
    /// Counts from 1.
    pub day: usize,
    /// Heat index and wind chill with their bands; empty where nothing was typed in.
    pub figures: Vec<String>,
    /// What it asks for, the most pressing first.
    pub asks: Vec<String>,
}

/// A day with people away, or with pairs of its own.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenDayPeople")]
pub struct DayPeople {
    /// Counts from 1.
    pub day: usize,
    /// Who is away, and when.
    pub away: Vec<String>,
    /// The stints of that day; none where they are those of the first day.
    pub stints: Vec<String>,
}

/// Who does what at one stage.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenRound")]
pub struct Round {
    /// The stage's name.
    pub stage: String,
    /// Stint by stint.
    pub places: Vec<Place>,
    /// Turns at the built ends.
    pub heads: Vec<String>,
}

/// The people at one stint.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenPlace")]
#[allow(missing_docs)]
pub struct Place {
    pub stint: usize,
    pub left: String,
    pub right: String,
}

impl Running {
    pub(super) fn of(plan: &Plan, course: &Course, tables: &Tables, clock: &Clock) -> Self {
        Self {
            throughs: throughs(plan, tables),
            holdups: holdups(plan, tables),
            lifts: lifts(plan, course, tables),
            about_length: about_length(plan, course),
            unmet: plan
                .days
                .timed
                .unmet
                .iter()
                .map(|it| words::unmet(it, course, tables, clock))
                .chain(plan.days.unmet.iter().map(words::unmet_pair))
                .collect(),
            weather: weather(plan, course.units),
            people: people(plan, course, clock),
            rotation: rotation(plan, tables),
            book: book(&plan.book, tables),
            today: Today::of(plan, course, tables, clock),
        }
    }
}

fn throughs(plan: &Plan, tables: &Tables) -> String {
    let is_through = |stage: usize| {
        tables
            .stages
            .get(stage)
            .is_some_and(|it| it.work == Work::Throughs)
    };
    let times = plan
        .forecast
        .by_stage
        .iter()
        .find(|it| is_through(it.stage));
    times.map_or_else(String::new, |times| {
        let share = if times.on_day_one <= 0.0 {
            "none".to_owned()
        } else {
            show_share(times.on_day_one)
        };
        format!("The throughs are in by the end of the first day in {share} of the courses.")
    })
}

fn holdups(plan: &Plan, tables: &Tables) -> Vec<Line> {
    let held = plan.forecast.holdups.iter().filter(|it| 0.005 <= it.share);
    held.map(|it| Line {
        what: words::cause(it.cause, tables),
        figure: show_share(it.share),
    })
    .collect()
}

fn lifts(plan: &Plan, course: &Course, tables: &Tables) -> Vec<Line> {
    let lifts = plan.advice.lifts.iter();
    lifts
        .map(|it| Line {
            what: words::change(&it.change, course, tables),
            figure: show_length(rounded_down(it.length, course.units), course.units),
        })
        .collect()
}

fn about_length(plan: &Plan, course: &Course) -> Vec<String> {
    let mut said = Vec::new();
    let show = |length| show_length(length, course.units);
    if let Some(height) = plan.advice.highest {
        said.push(format!(
            "At this length the wish is kept up to a height of {} under the cope.",
            show(height)
        ));
    }
    if let Some(TwoWalls {
        students,
        instructors,
        lengths,
    }) = &plan.advice.two_walls
    {
        said.push(format!(
            "Too many for one wall to teach at: two walls, one with {} and {} up to {}, the other with {} and {} up to {}.",
            show_count(students[0], "student", "students"),
            show_count(instructors[0] as usize, "instructor", "instructors"),
            show(lengths[0]),
            show_count(students[1], "student", "students"),
            show_count(instructors[1] as usize, "instructor", "instructors"),
            show(lengths[1]),
        ));
        if course.group.instructors < instructors.iter().sum() {
            said.push("Two walls take another instructor: nobody builds without one.".to_owned());
        }
    }
    if 0 < plan.advice.idle_pairs {
        said.push(format!(
            "{} would stand idle for want of a place at the wall.",
            show_count(plan.advice.idle_pairs, "pair", "pairs")
        ));
    }
    said
}

fn weather(plan: &Plan, units: Units) -> Vec<DayWeather> {
    let days = plan.days.weather.iter().enumerate();
    days.map(|(at, it)| {
        let mut figures = Vec::new();
        let band = |band: Option<&String>| band.map_or(String::new(), |it| format!(" ({it})"));
        let heat = it.heat_band.as_ref();
        if let Some(felt) = it.heat_index {
            figures.push(format!(
                "feels like {}{}",
                show_temperature(felt, units),
                band(heat.map(|it| &it.name))
            ));
        }
        if it.beyond_the_chart {
            let name = band(heat.map(|it| &it.name));
            figures.push(format!("beyond the chart of the heat index{name}"));
        }
        if let Some(felt) = it.full_sun_heat_index {
            figures.push(format!(
                "up to {} in full sun",
                show_temperature(felt, units)
            ));
        }
        if let Some(minutes) = heat.map(|it| it.rest_minutes).filter(|it| 0 < *it) {
            figures.push(format!("{minutes} min of rest in each hot hour"));
        }
        if let Some(felt) = it.wind_chill {
            figures.push(format!(
                "wind chill {}{}",
                show_temperature(felt, units),
                band(it.cold_band.as_ref().map(|it| &it.name))
            ));
        }
        DayWeather {
            day: at + 1,
            figures,
            asks: it.asks.iter().map(|ask| ask.text.clone()).collect(),
        }
    })
    .filter(|it| !it.figures.is_empty() || !it.asks.is_empty())
    .collect()
}

fn people(plan: &Plan, course: &Course, clock: &Clock) -> Vec<DayPeople> {
    let show = |length| show_length(length, course.units);
    let days = plan.days.people.iter();
    days.filter(|it| !it.away.is_empty() || !it.same_as_first)
        .map(|it| DayPeople {
            day: it.day + 1,
            away: it
                .away
                .iter()
                .map(|away| {
                    let [from, until] = [away.from, away.until].map(|it| clock.write_time(&it));
                    format!("{} is away from {from} to {until}", away.who)
                })
                .collect(),
            stints: if it.same_as_first {
                Vec::new()
            } else {
                let stints = it.stints.iter();
                stints
                    .map(|stint| {
                        let names: Vec<String> =
                            stint.members.iter().map(|it| it.name.clone()).collect();
                        format!(
                            "{} to {}: {}",
                            show(stint.from),
                            show(stint.to),
                            list(&names)
                        )
                    })
                    .collect()
            },
        })
        .collect()
}

fn rotation(plan: &Plan, tables: &Tables) -> Vec<Round> {
    let name = |id: &str| {
        let stage = tables.stages.iter().find(|stage| stage.id == id);
        stage.map_or(id.to_owned(), |stage| stage.name.clone())
    };
    let rounds = plan.days.rotation.rounds.iter();
    rounds
        .map(|round| Round {
            stage: name(&round.stage),
            places: round
                .places
                .iter()
                .map(|place| Place {
                    stint: place.stint + 1,
                    left: face(&place.left, &place.hearting),
                    right: face(&place.right, &place.hearting),
                })
                .collect(),
            heads: round
                .heads
                .iter()
                .map(|turn| {
                    let end = if turn.end == 0 {
                        "station 0"
                    } else {
                        "the far end"
                    };
                    format!(
                        "The pair of stint {} at {end}, from {} to {} of the time.",
                        turn.pair + 1,
                        show_part(turn.from),
                        show_part(turn.to)
                    )
                })
                .collect(),
        })
        .collect()
}

/// Those at one face; where some of them heart while the others lay, who does which.
fn face(here: &[String], hearting: &[String]) -> String {
    let (heart, lay): (Vec<String>, Vec<String>) =
        here.iter().cloned().partition(|it| hearting.contains(it));
    if heart.is_empty() {
        return list(here);
    }
    let one_or_more = |who: &[String], one, more| if who.len() == 1 { one } else { more };
    format!(
        "{} {}; {} {}",
        list(&lay),
        one_or_more(&lay, "lays", "lay"),
        list(&heart),
        one_or_more(&heart, "hearts and passes stone", "heart and pass stone")
    )
}

/// A part in per cent, ends included.
pub(super) fn show_part(part: f64) -> String {
    format!("{} %", whole_number((100.0 * part).round()))
}
