//! A plan as JSON: SI throughout, unrounded, the unit in every key.

use crate::clock::{Clock, DateStyle, iso};
use craft::course::Course;
use craft::pace::Bound;
use craft::tables::Tables;
use serde::Serialize;

mod days;
mod deliveries;
mod frames;
mod hazards;
mod heaps;
mod kit;
mod lifting;
mod loads;
mod money;
mod retaining;
mod stone;
mod timber;
mod today;
mod wall;
mod work;

pub(crate) use days::unmet;
pub use days::{Ask, Away, DayPeople, DayStint, DayWeather, Place, Round, Turn, Unmet};
pub use deliveries::Delivery;
pub(crate) use deliveries::ordered_word;
pub use frames::{
    Bars, Bay, Board, Curve, FrameRow, Frames, Leapfrog, Move, StringHeight, StringToBring, Trench,
};
pub use hazards::{Hazard, Risk};
pub use heaps::{Heap, Heaps};
pub use kit::{KitLine, Taken};
pub use lifting::{HeavyStone, Lift, Lifting};
pub use loads::{LoadLine, LoadedHold, Loads, Run};
pub use money::{CostLine, GroupCost, Money};
pub use retaining::{Check, Retaining};
pub use stone::{ByKind, Copes, KindRange, Range, RestsOn, Stone, ThroughRow, Throughs};
pub(crate) use timber::kind_word as timber_word;
pub use timber::{Buy, CutRow, Pattern, Timber};
pub use today::{Advice, Cure, CurvePoint, Quick, StageDone, Today, ToldShare, TwoWalls, WhatIf};
pub use wall::{Limit, LineStretch, ProfilePoint, Sizing, Wall, WallEnd};
pub(crate) use work::experience_word;
pub use work::{Entry, Finish, Holdup, Member, People, StageTimes, StageWork, Stint};

/// The whole plan.
#[derive(Debug, Clone, Serialize)]
pub struct Plan {
    /// The wall.
    pub wall: Wall,
    /// Its setting-out.
    pub frames: Frames,
    /// Its stone.
    pub stone: Stone,
    /// Where it lies before it is built in.
    pub heaps: Heaps,
    /// What of it is ordered, and by when; nothing where nothing is lacking.
    pub deliveries: Vec<Delivery>,
    /// What one person may lift.
    pub lifting: Lifting,
    /// The tools.
    pub kit: Vec<KitLine>,
    /// What travels in which vehicle; null if no vehicle is given.
    pub loads: Option<Loads>,
    /// What it costs; null if the course says nothing of money.
    pub money: Option<Money>,
    /// Who builds where.
    pub people: People,
    /// The stages there is work for.
    pub stages: Vec<StageWork>,
    /// The days.
    pub timetable: Vec<Entry>,
    /// The chance of finishing.
    pub finish: Finish,
    /// What could be done otherwise.
    pub advice: Advice,
    /// How it stands on the day; null before anything has been built.
    pub today: Option<Today>,
    /// What the weather typed in comes to.
    pub weather: Vec<DayWeather>,
    /// Wishes that can't be had.
    pub unmet: Vec<Unmet>,
    /// Daylight.
    pub sun: Vec<SunDay>,
    /// What to mind.
    pub cautions: Vec<Caution>,
    /// What can hurt someone, the highest remaining risk first.
    pub hazards: Vec<Hazard>,
    /// What is not ready.
    pub to_do: Vec<ToDo>,
}

/// The sun on one date; local times with offset.
#[derive(Debug, Clone, Serialize)]
#[allow(missing_docs)]
pub struct SunDay {
    pub date: String,
    pub sunrise: Option<String>,
    pub sunset: Option<String>,
    pub civil_dawn: Option<String>,
    pub civil_dusk: Option<String>,
}

/// Something to mind.
#[derive(Debug, Clone, Serialize)]
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
#[derive(Debug, Clone, Serialize)]
pub struct ToDo {
    /// A word for it that stays, unique in the list.
    pub id: String,
    /// Where it belongs: `stone`, `kit`, `venue` and so on.
    pub part: String,
    /// What, with the numbers.
    pub text: String,
    /// By when.
    pub by: Option<String>,
    /// The instructor has marked it done.
    pub done: bool,
    /// It keeps the course from being ready.
    pub counts: bool,
}

impl Plan {
    /// The plan in its JSON shape.
    pub fn of(plan: &craft::plan::Plan, course: &Course, tables: &Tables) -> Self {
        let clock = Clock::new(course, DateStyle::British);
        Self {
            wall: Wall::of(plan, course),
            frames: Frames::of(plan, course.frames.kind),
            stone: Stone::of(&plan.stone, plan.sizing.length),
            heaps: Heaps::of(&plan.heaps),
            deliveries: plan.deliveries.iter().map(Delivery::of).collect(),
            lifting: Lifting::of(&plan.lifting),
            kit: plan.kit.iter().map(KitLine::of).collect(),
            loads: plan.loads.as_ref().map(Loads::of),
            money: plan.money.as_ref().map(Money::of),
            people: People::of(plan),
            stages: stages(plan, tables),
            timetable: timetable(plan, tables, &clock),
            finish: Finish::of(&plan.forecast, tables, &clock),
            advice: Advice::of(&plan.advice, course, tables),
            today: plan
                .today
                .as_ref()
                .map(|today| Today::of(today, course, tables, &clock)),
            weather: days::weather(plan),
            unmet: unmet(plan, course, tables, &clock),
            sun: plan.sun.iter().map(SunDay::of).collect(),
            cautions: plan.cautions.iter().map(Caution::of).collect(),
            hazards: plan.hazards.iter().map(Hazard::of).collect(),
            to_do: plan.to_do.iter().map(ToDo::of).collect(),
        }
    }
}

/// The stages there is work for.
pub(crate) fn stages(plan: &craft::plan::Plan, tables: &Tables) -> Vec<StageWork> {
    let work = plan.work.iter();
    work.map(|work| StageWork::of(work, tables)).collect()
}

/// What is on, day by day.
pub(crate) fn timetable(plan: &craft::plan::Plan, tables: &Tables, clock: &Clock) -> Vec<Entry> {
    let entries = plan.timetable.iter();
    entries.map(|it| Entry::of(it, tables, clock)).collect()
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
            id: to_do.id.clone(),
            part: to_do.part.word().to_owned(),
            text: to_do.text.clone(),
            by: to_do.by.map(|date| date.to_string()),
            done: to_do.done,
            counts: to_do.counts,
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
