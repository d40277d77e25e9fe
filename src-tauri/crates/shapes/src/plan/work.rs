//! People, stages, timetable and chance as JSON.

use super::days::{DayPeople, Round};
use crate::clock::Clock;
use crate::words;
use craft::course::Experience;
use craft::pace::timetable::Of;
use craft::quantity::Read;
use craft::tables::Tables;
use serde::Serialize;
use ts_rs::TS;

/// Who builds where.
#[derive(Debug, Clone, Serialize)]
pub struct People {
    /// How many.
    pub students: usize,
    /// How many pairs they make.
    pub pairs: usize,
    /// To one instructor; null without one.
    pub students_per_instructor: Option<f64>,
    /// Each student in exactly one.
    pub stints: Vec<Stint>,
    /// Who is there, day by day.
    pub days: Vec<DayPeople>,
    /// Who does what, stage by stage.
    pub rotation: Vec<Round>,
}

/// A pair and its stretch of wall.
#[derive(Debug, Clone, Serialize)]
pub struct Stint {
    /// Where it begins.
    pub from_m: f64,
    /// Where it ends.
    pub to_m: f64,
    /// Names.
    pub members: Vec<String>,
    /// The same people with their experience.
    pub who: Vec<Member>,
}

/// One student of a stint.
#[derive(Debug, Clone, Serialize, TS)]
pub struct Member {
    /// Unique in the group.
    pub name: String,
    /// `novice`, `improver` or `experienced`.
    pub experience: String,
}

/// A stage there is work for.
#[derive(Debug, Clone, Serialize, TS)]
pub struct StageWork {
    /// Its id.
    pub stage: String,
    /// What a person reads.
    pub name: String,
    /// In the unit of its rate.
    pub amount: f64,
    /// Clock hours of the whole group at its usual pace.
    pub hours: f64,
}

/// One line of the timetable.
#[derive(Debug, Clone, Serialize, TS)]
pub struct Entry {
    /// Counts from 1.
    pub day: usize,
    /// Local time with offset.
    pub start: String,
    /// Local time with offset.
    pub finish: String,
    /// What happens.
    pub what: String,
    /// `lesson`, `build`, `break`, `safety` or `tidy`.
    pub kind: String,
    /// The stage's id, where it is one.
    pub stage: Option<String>,
    /// The lesson's id, where it is one.
    pub lesson: Option<String>,
}

/// The chance of finishing.
#[derive(Debug, Clone, Serialize)]
pub struct Finish {
    /// The share of simulated courses that finish.
    pub chance: f64,
    /// How many were simulated.
    pub samples: usize,
    /// What they were drawn from.
    pub seed: u64,
    /// When each stage is done.
    pub by_stage: Vec<StageTimes>,
    /// What held the simulated courses up most.
    pub holdups: Vec<Holdup>,
}

/// How often something held a simulated course up most.
#[derive(Debug, Clone, Serialize)]
pub struct Holdup {
    /// What.
    pub what: String,
    /// The share of all courses.
    pub share: f64,
    /// The share of the courses that did not finish.
    pub of_unfinished: f64,
}

/// When a stage is done: percentiles as local times; null for a time not reached.
#[derive(Debug, Clone, Serialize)]
#[allow(missing_docs)]
pub struct StageTimes {
    pub stage: String,
    pub p10: Option<String>,
    pub p50: Option<String>,
    pub p90: Option<String>,
    /// The share of courses in which it is done by the end of the first day.
    pub on_day_one: f64,
}

impl People {
    pub(crate) fn of(plan: &craft::plan::Plan) -> Self {
        let ratio = plan.students_per_instructor;
        Self {
            students: plan.stints.iter().map(|stint| stint.members.len()).sum(),
            pairs: plan.stints.len(),
            students_per_instructor: ratio.is_finite().then_some(ratio),
            days: super::days::people(plan),
            rotation: super::days::rotation(plan),
            stints: plan
                .stints
                .iter()
                .map(|stint| Stint {
                    from_m: stint.from.si(),
                    to_m: stint.to.si(),
                    members: stint
                        .members
                        .iter()
                        .map(|student| student.name.clone())
                        .collect(),
                    who: stint
                        .members
                        .iter()
                        .map(|student| Member {
                            name: student.name.clone(),
                            experience: experience_word(student.experience).to_owned(),
                        })
                        .collect(),
                })
                .collect(),
        }
    }
}

/// The word a course file uses.
pub(crate) fn experience_word(experience: Experience) -> &'static str {
    match experience {
        Experience::Novice => "novice",
        Experience::Improver => "improver",
        Experience::Experienced => "experienced",
    }
}

impl StageWork {
    pub(super) fn of(work: &craft::plan::StageWork, tables: &Tables) -> Self {
        let stage = tables.stages.get(work.stage);
        Self {
            stage: stage.map(|stage| stage.id.clone()).unwrap_or_default(),
            name: stage.map(|stage| stage.name.clone()).unwrap_or_default(),
            amount: work.amount,
            hours: work.hours,
        }
    }
}

impl Entry {
    pub(super) fn of(entry: &craft::pace::Entry, tables: &Tables, clock: &Clock) -> Self {
        let stage = |of: Of| match of {
            Of::Stage(stage) => tables.stages.get(stage).map(|it| it.id.clone()),
            Of::Lesson(_) => None,
        };
        let lesson = |of: Of| match of {
            Of::Lesson(lesson) => tables.lessons.get(lesson).map(|it| it.id.clone()),
            Of::Stage(_) => None,
        };
        Self {
            stage: entry.of.and_then(stage),
            lesson: entry.of.and_then(lesson),
            day: entry.day + 1,
            start: clock.iso(entry.from),
            finish: clock.iso(entry.to),
            what: entry.what.clone(),
            kind: entry.kind.word().to_owned(),
        }
    }
}

impl Finish {
    pub(super) fn of(forecast: &craft::pace::Forecast, tables: &Tables, clock: &Clock) -> Self {
        Self {
            chance: forecast.chance,
            samples: forecast.samples,
            seed: forecast.seed,
            holdups: forecast
                .holdups
                .iter()
                .map(|it| Holdup {
                    what: words::cause(it.cause, tables),
                    share: it.share,
                    of_unfinished: it.of_unfinished,
                })
                .collect(),
            by_stage: forecast
                .by_stage
                .iter()
                .map(|times| {
                    let [p10, p50, p90] = times.done.map(|time| time.map(|time| clock.iso(time)));
                    let stage = tables.stages.get(times.stage);
                    StageTimes {
                        stage: stage.map(|stage| stage.id.clone()).unwrap_or_default(),
                        p10,
                        p50,
                        p90,
                        on_day_one: times.on_day_one,
                    }
                })
                .collect(),
        }
    }
}
