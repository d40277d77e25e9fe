//! A plan as JSON: SI throughout, unrounded, the unit in every key.

use crate::clock::{Clock, DateStyle, iso};
use craft::course::{Course, StoneKind};
use craft::pace::Bound;
use craft::quantity::{Length, Read, in_tonnes};
use craft::tables::Tables;
use serde::Serialize;
use ts_rs::TS;

mod frames;
mod retaining;
mod timber;
mod wall;
mod work;

pub use frames::{
    Bars, Bay, Board, Curve, FrameRow, Frames, Leapfrog, Move, StringHeight, StringToBring, Trench,
};
pub use retaining::{Check, Retaining};
pub(crate) use timber::kind_word as timber_word;
pub use timber::{Buy, CutRow, Pattern, Timber};
pub use wall::{Limit, LineStretch, ProfilePoint, Sizing, Wall, WallEnd};
pub(crate) use work::experience_word;
pub use work::{Entry, Finish, KitLine, Member, People, StageTimes, StageWork, Stint};

/// The whole plan.
#[derive(Debug, Clone, Serialize, TS)]
pub struct Plan {
    /// The wall.
    pub wall: Wall,
    /// Its setting-out.
    pub frames: Frames,
    /// Its stone.
    pub stone: Stone,
    /// The tools.
    pub kit: Vec<KitLine>,
    /// Who builds where.
    pub people: People,
    /// The stages there is work for.
    pub stages: Vec<StageWork>,
    /// The days.
    pub timetable: Vec<Entry>,
    /// The chance of finishing.
    pub finish: Finish,
    /// Daylight.
    pub sun: Vec<SunDay>,
    /// What to mind.
    pub cautions: Vec<Caution>,
    /// What is not ready.
    pub to_do: Vec<ToDo>,
}

/// The stone.
#[derive(Debug, Clone, Serialize, TS)]
pub struct Stone {
    /// Of the solid stone.
    pub solid_density_kg_m3: f64,
    /// Where it comes from.
    pub density_source: String,
    /// Share of the wall that is air.
    pub voids: f64,
    /// Share of what is delivered that is not built in.
    pub waste: f64,
    /// In the finished wall.
    pub built_t: f64,
    /// In one metre of it.
    pub built_t_per_m: f64,
    /// Still to be delivered.
    pub to_deliver_t: Range,
    /// Whole deliveries for the high figure.
    pub loads: Option<usize>,
    /// In the finished wall, by kind.
    pub by_kind: ByKind,
    /// Stones that cross the wall.
    pub throughs: Throughs,
    /// The row on top.
    pub copes: Copes,
}

/// The 10th, 50th and 90th percentile.
#[derive(Debug, Clone, Serialize, TS)]
pub struct Range {
    /// One in ten is below.
    pub low: f64,
    /// The middle.
    pub mid: f64,
    /// One in ten is above.
    pub high: f64,
}

/// Tonnes in the finished wall.
#[derive(Debug, Clone, Serialize, TS)]
#[allow(missing_docs)]
pub struct ByKind {
    pub footing_t: f64,
    pub face_t: f64,
    pub hearting_t: f64,
    pub throughs_t: f64,
    pub copes_t: f64,
}

/// Stones that cross the wall.
#[derive(Debug, Clone, Serialize, TS)]
pub struct Throughs {
    /// In all rows.
    pub count: usize,
    /// Row by row.
    pub rows: Vec<ThroughRow>,
}

/// One row of throughs.
#[derive(Debug, Clone, Serialize, TS)]
pub struct ThroughRow {
    /// Above the ground.
    pub height_m: f64,
    /// Of one through.
    pub length_m: f64,
    /// How many.
    pub count: usize,
    /// Of one through.
    pub mass_kg: f64,
}

/// The row on top.
#[derive(Debug, Clone, Serialize, TS)]
pub struct Copes {
    /// How many stones.
    pub count: usize,
}

/// The sun on one date; local times with offset.
#[derive(Debug, Clone, Serialize, TS)]
#[allow(missing_docs)]
pub struct SunDay {
    pub date: String,
    pub sunrise: Option<String>,
    pub sunset: Option<String>,
    pub civil_dawn: Option<String>,
    pub civil_dusk: Option<String>,
}

/// Something to mind.
#[derive(Debug, Clone, Serialize, TS)]
pub struct Caution {
    /// A fixed word for programs.
    pub id: String,
    /// What to do or not to do.
    pub text: String,
    /// Who says so.
    pub source: String,
    /// Students are told.
    pub for_students: bool,
}

/// Something not ready.
#[derive(Debug, Clone, Serialize, TS)]
pub struct ToDo {
    /// A fixed word for programs.
    pub id: String,
    /// What, with the numbers.
    pub text: String,
    /// By when.
    pub by: Option<String>,
}

impl Plan {
    /// The plan in its JSON shape.
    pub fn of(plan: &craft::plan::Plan, course: &Course, tables: &Tables) -> Self {
        let clock = Clock::new(course, DateStyle::British);
        Self {
            wall: Wall::of(plan, course),
            frames: Frames::of(plan, course.frames.kind),
            stone: Stone::of(&plan.stone, plan.sizing.length),
            kit: plan.kit.iter().map(KitLine::of).collect(),
            people: People::of(plan),
            stages: plan
                .work
                .iter()
                .map(|work| StageWork::of(work, tables))
                .collect(),
            timetable: plan
                .timetable
                .iter()
                .map(|entry| Entry::of(entry, &clock))
                .collect(),
            finish: Finish::of(&plan.forecast, tables, &clock),
            sun: plan.sun.iter().map(SunDay::of).collect(),
            cautions: plan.cautions.iter().map(Caution::of).collect(),
            to_do: plan.to_do.iter().map(ToDo::of).collect(),
        }
    }
}

impl Stone {
    fn of(stone: &craft::stone::Stone, length: Length) -> Self {
        let kind = |kind| in_tonnes(stone.kind(kind));
        Self {
            solid_density_kg_m3: stone.density.si(),
            density_source: stone.density_source.clone(),
            voids: stone.voids,
            waste: stone.waste,
            built_t: in_tonnes(stone.built()),
            built_t_per_m: in_tonnes(craft::stone::per_metre(stone, length)),
            to_deliver_t: Range {
                low: in_tonnes(stone.to_deliver.low),
                mid: in_tonnes(stone.to_deliver.mid),
                high: in_tonnes(stone.to_deliver.high),
            },
            loads: stone.loads,
            by_kind: ByKind {
                footing_t: kind(StoneKind::Footing),
                face_t: kind(StoneKind::Face),
                hearting_t: kind(StoneKind::Hearting),
                throughs_t: kind(StoneKind::Throughs),
                copes_t: kind(StoneKind::Copes),
            },
            throughs: Throughs {
                count: stone.through_count(),
                rows: stone
                    .throughs
                    .iter()
                    .map(|row| ThroughRow {
                        height_m: row.height.si(),
                        length_m: row.length.si(),
                        count: row.count,
                        mass_kg: row.mass.si(),
                    })
                    .collect(),
            },
            copes: Copes { count: stone.copes },
        }
    }
}

impl SunDay {
    fn of(sun: &craft::sun::SunDay) -> Self {
        Self {
            date: sun.date.to_string(),
            sunrise: sun.sunrise.as_ref().map(iso),
            sunset: sun.sunset.as_ref().map(iso),
            civil_dawn: sun.civil_dawn.as_ref().map(iso),
            civil_dusk: sun.civil_dusk.as_ref().map(iso),
        }
    }
}

impl Caution {
    fn of(caution: &craft::cautions::Shown) -> Self {
        Self {
            id: caution.id.clone(),
            text: caution.text.clone(),
            source: caution.source.clone(),
            for_students: caution.for_students,
        }
    }
}

impl ToDo {
    fn of(to_do: &craft::readiness::ToDo) -> Self {
        Self {
            id: to_do.id.to_owned(),
            text: to_do.text.clone(),
            by: to_do.by.map(|date| date.to_string()),
        }
    }
}

/// The word for the direction of a limit.
fn bound_word(bound: Bound) -> &'static str {
    match bound {
        Bound::Least => "least",
        Bound::Most => "most",
    }
}
