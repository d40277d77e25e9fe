//! How it stands on the day, and what could be done otherwise, as JSON.

use super::work::Finish;
use crate::clock::Clock;
use crate::words;
use craft::course::Course;
use craft::quantity::Read;
use craft::tables::Tables;
use serde::Serialize;

/// How it stands on the day.
#[derive(Debug, Clone, Serialize)]
pub struct Today {
    /// The time of the last report.
    pub now: String,
    /// How far each stage has come.
    pub done: Vec<StageDone>,
    /// The share of the whole work done at each time something was told.
    pub told: Vec<ToldShare>,
    /// What the rest will take.
    pub finish: Finish,
    /// What would help, the most first.
    pub cures: Vec<Cure>,
    /// Reports of so much in so little time that they may be slips.
    pub quick: Vec<Quick>,
    /// What makes the wall safe to leave as it stands.
    pub safe: Vec<String>,
    /// When progress is asked for next.
    pub ask_at: Option<String>,
}

/// How far one stage has come.
#[derive(Debug, Clone, Serialize)]
pub struct StageDone {
    /// The stage's id.
    pub stage: String,
    /// The share done, bay by bay.
    pub bays: Vec<f64>,
}

/// What was done at a time.
#[derive(Debug, Clone, Serialize)]
#[allow(missing_docs)]
pub struct ToldShare {
    pub at: String,
    pub share: f64,
}

/// A report that may be a slip.
#[derive(Debug, Clone, Serialize)]
pub struct Quick {
    /// Its place among the reports of the course file, counted from 1.
    pub report: usize,
    /// How many times quicker than usual it is.
    pub times: f64,
}

/// Something that would help.
#[derive(Debug, Clone, Serialize)]
pub struct Cure {
    /// What.
    pub what: String,
    /// The chance of finishing with it.
    pub chance: f64,
    /// By how much that is better.
    pub gain: f64,
}

/// What could be done otherwise.
#[derive(Debug, Clone, Serialize)]
pub struct Advice {
    /// What would make the wall longer, the most first.
    pub lifts: Vec<WhatIf>,
    /// The chance of finishing by length.
    pub curve: Vec<CurvePoint>,
    /// For a group too large for one wall.
    pub two_walls: Option<TwoWalls>,
    /// Where the length is given and its chance below the wish: the greatest height that keeps
    /// it.
    pub highest_m: Option<f64>,
    /// Pairs that find no place at the wall.
    pub idle_pairs: usize,
}

/// What a change would do to the length.
#[derive(Debug, Clone, Serialize)]
pub struct WhatIf {
    /// The change.
    pub what: String,
    /// The length it allows.
    pub length_m: f64,
    /// What would then decide.
    pub binding: String,
}

/// The chance of finishing at one length.
#[derive(Debug, Clone, Serialize)]
#[allow(missing_docs)]
pub struct CurvePoint {
    pub length_m: f64,
    pub chance: f64,
}

/// Two walls in place of one.
#[derive(Debug, Clone, Serialize)]
#[allow(missing_docs)]
pub struct TwoWalls {
    pub students: [usize; 2],
    pub instructors: [u32; 2],
    pub lengths_m: [f64; 2],
}

impl Today {
    pub(super) fn of(
        today: &craft::plan::Today,
        course: &Course,
        tables: &Tables,
        clock: &Clock,
    ) -> Self {
        Self {
            now: clock.iso(today.now),
            done: today
                .done
                .iter()
                .map(|it| StageDone {
                    stage: words::stage_id(tables, it.stage),
                    bays: it.bays.clone(),
                })
                .collect(),
            told: today
                .told
                .iter()
                .map(|(at, share)| ToldShare {
                    at: clock.iso(*at),
                    share: *share,
                })
                .collect(),
            finish: Finish::of(&today.forecast, tables, clock),
            cures: today
                .cures
                .iter()
                .map(|it| Cure {
                    what: words::cure(&it.kind, course, tables),
                    chance: it.chance,
                    gain: it.gain,
                })
                .collect(),
            quick: today
                .quick
                .iter()
                .map(|it| Quick {
                    report: it.report + 1,
                    times: it.times,
                })
                .collect(),
            safe: words::safe(today, course, tables),
            ask_at: today.ask_at.as_ref().map(|(at, _)| clock.iso(*at)),
        }
    }
}

impl Advice {
    pub(super) fn of(advice: &craft::plan::Advice, course: &Course, tables: &Tables) -> Self {
        Self {
            lifts: advice
                .lifts
                .iter()
                .map(|it| WhatIf {
                    what: words::change(&it.change, course, tables),
                    length_m: it.length.si(),
                    binding: it.binding.word().to_owned(),
                })
                .collect(),
            curve: advice
                .curve
                .iter()
                .map(|(length, chance)| CurvePoint {
                    length_m: length.si(),
                    chance: *chance,
                })
                .collect(),
            two_walls: advice.two_walls.as_ref().map(|it| TwoWalls {
                students: it.students,
                instructors: it.instructors,
                lengths_m: it.lengths.map(Read::si),
            }),
            highest_m: advice.highest.map(Read::si),
            idle_pairs: advice.idle_pairs,
        }
    }
}
