//! Days, stages and chance in written figures.

use crate::clock::Clock;
use craft::course::Course;
use craft::plan::Plan;
use craft::quantity::{show_count, show_share};
use craft::tables::{Tables, Work};
use serde::Serialize;
use ts_rs::TS;

/// One course day.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenDay")]
pub struct Day {
    /// Counts from 1.
    pub number: usize,
    /// In full.
    pub date: String,
    /// `09:00`.
    pub start: String,
    /// `16:30`.
    pub finish: String,
    /// `05:52`, or a word where the sun does not rise.
    pub sunrise: String,
    /// The same for sunset.
    pub sunset: String,
    /// The day's entries in order.
    pub entries: Vec<Entry>,
}

/// One line of the timetable.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenEntry")]
#[allow(missing_docs)]
pub struct Entry {
    pub start: String,
    pub finish: String,
    /// `45 min`, `2 h 15 min`.
    pub lasts: String,
    pub what: String,
    pub kind: String,
    /// Its share of the day, from 0 to 1, for drawing it as a bar.
    pub from_share: f64,
    /// Where it ends, as a share of the day.
    pub to_share: f64,
}

/// The chance of finishing.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenChance")]
pub struct Chance {
    /// `83 %`.
    pub chance: String,
    /// `80 %`.
    pub wished: String,
    /// Below the wish.
    pub below: bool,
    /// What the chance was worked out from.
    pub from: String,
    /// When each stage is done.
    pub stages: Vec<StageTimes>,
}

/// When a stage is done, and how much of it there is.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenStage")]
#[allow(missing_docs)]
pub struct StageTimes {
    pub name: String,
    pub note: String,
    /// `3.2 t`, `4 frames`.
    pub amount: String,
    /// At the usual pace.
    pub usually: String,
    pub early: Mark,
    pub likely: Mark,
    pub late: Mark,
}

/// A time by which a stage is done.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenMark")]
pub struct Mark {
    /// `day 1, 14:20`, or `not within the course`.
    pub text: String,
    /// Whether it is reached.
    pub reached: bool,
}

/// The days with their entries.
pub(super) fn days(plan: &Plan, course: &Course, clock: &Clock) -> Vec<Day> {
    course
        .days
        .iter()
        .zip(&plan.sun)
        .enumerate()
        .map(|(at, (day, sun))| {
            let entries: Vec<_> = plan
                .timetable
                .iter()
                .filter(|entry| entry.day == at)
                .collect();
            let span = (
                entries.first().map_or(0.0, |entry| entry.from),
                entries.last().map_or(1.0, |entry| entry.to),
            );
            let light = |time: Option<_>| {
                time.as_ref()
                    .map_or_else(|| "none".to_owned(), |time| clock.write_time(time))
            };
            Day {
                number: at + 1,
                date: clock.date(day.date),
                start: clock.write_time(&day.start),
                finish: clock.write_time(&day.finish),
                sunrise: light(sun.sunrise),
                sunset: light(sun.sunset),
                entries: entries
                    .into_iter()
                    .map(|entry| Entry::of(entry, span, clock))
                    .collect(),
            }
        })
        .collect()
}

impl Entry {
    fn of(entry: &craft::pace::Entry, span: (f64, f64), clock: &Clock) -> Self {
        let share = |time: f64| ((time - span.0) / (span.1 - span.0).max(1.0)).clamp(0.0, 1.0);
        Self {
            start: clock.time(entry.from),
            finish: clock.time(entry.to),
            lasts: lasts(entry.to - entry.from),
            what: entry.what.clone(),
            kind: entry.kind.word().to_owned(),
            from_share: share(entry.from),
            to_share: share(entry.to),
        }
    }
}

/// `45 min`, `2 h`, `2 h 15 min`.
pub fn lasts(minutes: f64) -> String {
    let minutes = minutes.round();
    let hours = (minutes / 60.0).floor();
    let rest = minutes - 60.0 * hours;
    match (0.0 < hours, 0.0 < rest) {
        (true, true) => format!("{hours:.0} h {rest:.0} min"),
        (true, false) => format!("{hours:.0} h"),
        _ => format!("{rest:.0} min"),
    }
}

impl Chance {
    pub(super) fn of(plan: &Plan, course: &Course, tables: &Tables, clock: &Clock) -> Self {
        let forecast = &plan.forecast;
        Self {
            chance: show_share(forecast.chance),
            wished: show_share(course.chance),
            below: forecast.chance < course.chance,
            from: format!("{} simulated courses", thousands(forecast.samples)),
            stages: stage_times(forecast, plan, course, tables, clock),
        }
    }
}

/// When each stage of a forecast is done.
pub(super) fn stage_times(
    forecast: &craft::pace::Forecast,
    plan: &Plan,
    course: &Course,
    tables: &Tables,
    clock: &Clock,
) -> Vec<StageTimes> {
    let stages = forecast.by_stage.iter();
    stages
        .filter_map(|times| {
            let stage = tables.stages.get(times.stage)?;
            let work = plan.work.iter().find(|work| work.stage == times.stage)?;
            let [early, likely, late] = times.done.map(|time| Mark::of(time, course, clock));
            Some(StageTimes {
                name: stage.name.clone(),
                note: stage.note.clone(),
                amount: amount(stage.work, work.amount, course),
                usually: lasts(work.hours * 60.0),
                early,
                likely,
                late,
            })
        })
        .collect()
}

/// `day 1, 14:20`.
pub(super) fn at(time: f64, course: &Course, clock: &Clock) -> String {
    let day = craft::pace::calendar::day_at(&course.days, time) + 1;
    format!("day {day}, {}", clock.time(time))
}

impl Mark {
    fn of(time: Option<f64>, course: &Course, clock: &Clock) -> Self {
        let Some(time) = time else {
            return Self {
                text: "not within the course".to_owned(),
                reached: false,
            };
        };
        Self {
            text: at(time, course, clock),
            reached: true,
        }
    }
}

fn amount(work: Work, amount: f64, course: &Course) -> String {
    use craft::quantity::{
        cubic_metres, metres, show_length, show_mass, show_volume, tonnes, whole_number,
    };
    let count = whole_number(amount);
    match work {
        Work::StrippedTonnes
        | Work::HeapTonnes
        | Work::FootingTonnes
        | Work::FirstLiftTonnes
        | Work::SecondLiftTonnes => show_mass(tonnes(amount), course.units),
        Work::TrenchCubicMetres => show_volume(cubic_metres(amount), course.units),
        Work::Frames => show_count(count, "frame", "frames"),
        Work::Throughs => show_count(count, "through", "throughs"),
        Work::Heads => show_count(count, "head", "heads"),
        Work::Metres | Work::CopeMetres => show_length(metres(amount), course.units),
        Work::CopeEnds => show_count(count, "end", "ends"),
        Work::Minutes(_) | Work::EachDay(_) => String::new(),
    }
}

/// `10,000`.
fn thousands(count: usize) -> String {
    if count < 1000 {
        count.to_string()
    } else {
        format!("{},{:03}", count / 1000, count % 1000)
    }
}
