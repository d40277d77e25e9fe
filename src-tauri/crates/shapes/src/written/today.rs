//! How it stands on the day, in words.

use super::running::{Line, show_part};
use crate::clock::Clock;
use crate::words;
use craft::course::{Course, Report, WallSize};
use craft::plan::{Change, Cure, CureKind, Plan};
use craft::quantity::{Length, Units, metres, show_mark, show_share, whole_number};
use craft::tables::Tables;
use serde::Serialize;
use ts_rs::TS;

/// How it stands on the day.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenToday")]
pub struct Today {
    /// `day 1, 11:40`.
    pub now: String,
    /// The chance of finishing from here.
    pub chance: String,
    /// It is below the wish.
    pub below: bool,
    /// The chance there was before the course.
    pub before: String,
    /// The share of the whole work that is done.
    pub done: String,
    /// The pace so far against the usual one: `35 min behind the usual pace`; empty while nothing
    /// has taken any time.
    pub against: String,
    /// The same for each stage that took time: `20 min behind`.
    pub against_by_stage: Vec<Line>,
    /// What was told, in the order of the course file: `day 1, 11:40: "Dig the trench", bay 2,
    /// 50 %`.
    pub told: Vec<String>,
    /// How far each stage has come, bay by bay.
    pub stages: Vec<StageDone>,
    /// When each stage still to come is done.
    pub by_stage: Vec<super::StageTimes>,
    /// What would help, the most first.
    pub cures: Vec<Line>,
    /// What the chances with the cures rest on; empty where no cure makes the wall smaller, and
    /// where each report says how large the wall was.
    pub assumed: String,
    /// Reports of so much in so little time that they may be slips.
    pub quick: Vec<String>,
    /// What makes the wall safe to leave.
    pub safe: Vec<String>,
    /// When progress is asked for next; empty when the course is over.
    pub ask_at: String,
}

/// How far one stage has come.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenStageDone")]
pub struct StageDone {
    /// Its id.
    pub stage: String,
    /// Its name.
    pub name: String,
    /// The share done, bay by bay.
    pub bays: Vec<f64>,
    /// The same in words: `not begun`, `40 %`, `done`.
    pub shares: Vec<String>,
    /// All bays are done.
    pub done: bool,
}

impl Today {
    pub(super) fn of(plan: &Plan, course: &Course, tables: &Tables, clock: &Clock) -> Option<Self> {
        let today = plan.today.as_ref()?;
        let at = |minutes: f64| super::days::at(minutes, course, clock);
        let done = today.told.last().map_or(0.0, |(_, share)| *share);
        Some(Self {
            now: at(today.now),
            chance: show_share(today.forecast.chance),
            below: today.forecast.chance < course.chance,
            before: show_share(plan.forecast.chance),
            done: show_part(done),
            against: against(today),
            against_by_stage: today
                .record
                .stages
                .iter()
                .map(|it| Line {
                    what: words::stage_named(tables, &it.stage),
                    figure: behind(it.taken_minutes - it.usual_minutes),
                })
                .collect(),
            told: told(course, tables, clock, course.wall.size(plan.sizing.length)),
            stages: today
                .done
                .iter()
                .map(|it| StageDone {
                    stage: words::stage_id(tables, it.stage),
                    name: words::stage_name(tables, it.stage),
                    bays: it.bays.clone(),
                    shares: it.bays.iter().map(|done| share(*done)).collect(),
                    done: it.bays.iter().all(|done| 1.0 <= *done),
                })
                .collect(),
            by_stage: super::days::stage_times(&today.forecast, plan, course, tables, clock),
            cures: today
                .cures
                .iter()
                .map(|it| Line {
                    what: words::cure(&it.kind, course, tables),
                    figure: show_share(it.chance),
                })
                .collect(),
            assumed: assumed(&today.cures, course),
            quick: quick(today, course, tables, clock),
            safe: words::safe(today, course, tables),
            ask_at: today
                .ask_at
                .as_ref()
                .map_or_else(String::new, |(time, name)| {
                    format!("{} ({name})", at(*time))
                }),
        })
    }
}

/// All stages together. Lessons and breaks are in neither time, so a late start is not counted twice.
fn against(today: &craft::plan::Today) -> String {
    let stages = &today.record.stages;
    if stages.is_empty() {
        return String::new();
    }
    let over = |it: &craft::pace::book::StageRecord| it.taken_minutes - it.usual_minutes;
    let sum = behind(stages.iter().map(over).sum());
    if sum == AS_USUAL {
        "at the usual pace".to_owned()
    } else {
        let of = if sum.ends_with("ahead") { " of" } else { "" };
        format!("{sum}{of} the usual pace")
    }
}

const AS_USUAL: &str = "as usual";

/// Minutes more than usual, to the nearest five: nobody tells closer than that.
fn behind(minutes: f64) -> String {
    let fives = 5.0 * (minutes / 5.0).round();
    if !fives.is_finite() || fives == 0.0 {
        AS_USUAL.to_owned()
    } else if 0.0 < fives {
        format!("{} behind", super::days::lasts(fives))
    } else {
        format!("{} ahead", super::days::lasts(-fives))
    }
}

/// What was told, report by report.
fn told(course: &Course, tables: &Tables, clock: &Clock, now: WallSize) -> Vec<String> {
    let reports = course.running.progress.iter();
    let words = reports.map(|it| {
        let wall = it.wall.filter(|wall| !wall.is(&now));
        let of = wall.map(|wall| of_a_wall(wall, now, course.units));
        report(it, tables, clock) + &of.unwrap_or_default()
    });
    words.collect()
}

fn report(it: &Report, tables: &Tables, clock: &Clock) -> String {
    let stage = tables.stages.iter().find(|stage| stage.id == it.stage);
    let name = stage.map_or(&it.stage, |stage| &stage.name);
    let bay = it
        .bay
        .map_or_else(|| "all bays".to_owned(), |bay| format!("bay {}", bay + 1));
    format!(
        "day {}, {}: \"{name}\", {bay}, {}",
        it.day + 1,
        clock.write_time(&it.time),
        share(it.done)
    )
}

/// `, of a wall 9.00 m long, 1.20 m high`: in what it was another wall than it is to be now.
fn of_a_wall(wall: WallSize, now: WallSize, units: Units) -> String {
    let mut of = ", of a wall".to_owned();
    let mut differs = |was: Length, is: Length, how: &dyn Fn(String) -> String| {
        let show = |length| show_mark(length, units);
        if show(was) != show(is) {
            let mark = if of.ends_with("wall") { " " } else { ", " };
            of += mark;
            of += &how(show(was));
        }
    };
    differs(wall.length, now.length, &|it| format!("{it} long"));
    differs(wall.height, now.height, &|it| format!("{it} high"));
    differs(wall.cope_height, now.cope_height, &|it| {
        if wall.cope_height <= metres(0.0) {
            "without a cope".to_owned()
        } else {
            format!("with a cope of {it}")
        }
    });
    of
}

/// Shares told without the wall they are shares of are read as shares of the wall as it is now.
fn assumed(cures: &[Cure], course: &Course) -> String {
    let smaller = |cure: &Cure| {
        matches!(
            cure.kind,
            CureKind::StopAtThroughs
                | CureKind::Shorten { .. }
                | CureKind::Change(Change::Lower(_) | Change::WithoutCope)
        )
    };
    let mut told = course.running.progress.iter();
    if !cures.iter().any(smaller) || told.all(|report| report.wall.is_some()) {
        return String::new();
    }
    "Some of what was told stands in the file without the size the wall had then. Once a smaller \
     wall is written into the file, those shares are read as shares of the smaller wall: the \
     group looks slower than it is, and the chance lower than here. To keep it, give those \
     reports the size of the wall as it is now, as the file's own remarks show."
        .to_owned()
}

fn quick(
    today: &craft::plan::Today,
    course: &Course,
    tables: &Tables,
    clock: &Clock,
) -> Vec<String> {
    let quick = today.quick.iter();
    let said = quick.filter_map(|it| {
        let told = report(course.running.progress.get(it.report)?, tables, clock);
        let times = whole_number(it.times.round());
        Some(format!(
            "{told}: that is {times} times as quick as usual. If it is a slip, take the report back."
        ))
    });
    said.collect()
}

/// A share that was told. What is nearly done is not done.
fn share(done: f64) -> String {
    if done <= 0.0 {
        "not begun".to_owned()
    } else if 1.0 <= done {
        "done".to_owned()
    } else {
        show_share(done)
    }
}

#[cfg(test)]
mod tests {
    use super::{behind, of_a_wall};
    use craft::course::WallSize;
    use craft::quantity::{Units, metres};

    #[test]
    fn a_report_says_in_what_its_wall_was_another() {
        let size = |length, height, cope_height| WallSize {
            length: metres(length),
            height: metres(height),
            cope_height: metres(cope_height),
        };
        let now = size(6.0, 1.05, 0.0);
        for (was, said) in [
            (size(9.0, 1.05, 0.0), ", of a wall 9.00 m long"),
            (size(9.0, 1.2, 0.0), ", of a wall 9.00 m long, 1.20 m high"),
            (size(6.0, 1.05, 0.25), ", of a wall with a cope of 0.25 m"),
        ] {
            assert_eq!(of_a_wall(was, now, Units::Metric), said);
        }
        let bare = of_a_wall(now, size(6.0, 1.05, 0.25), Units::Metric);
        assert_eq!(bare, ", of a wall without a cope");
    }

    #[test]
    fn a_pace_is_told_in_fives_of_minutes() {
        for (minutes, told) in [
            (0.0, "as usual"),
            (2.4, "as usual"),
            (-2.4, "as usual"),
            (3.0, "5 min behind"),
            (-18.0, "20 min ahead"),
            (92.0, "1 h 30 min behind"),
            (f64::NAN, "as usual"),
        ] {
            assert_eq!(behind(minutes), told, "{minutes}");
        }
    }
}
