//! A plan as a person reads it: every figure rounded and written once, for window and paper.

use crate::clock::{Clock, DateStyle, list};
use craft::course::Course;
use craft::tables::Tables;
use serde::Serialize;
use ts_rs::TS;

mod book;
mod days;
mod deliveries;
mod frames;
mod heaps;
mod kit;
mod lifting;
mod loads;
mod money;
mod place;
mod reasons;
mod retaining;
mod running;
mod stone;
mod timber;
mod today;
mod wall;

pub use book::{BookRow, book};
pub use days::{Chance, Day, Entry, Mark, StageTimes, lasts};
pub use deliveries::Delivery;
pub use frames::{Bars, BayRow, CurveRow, Frames, Move, Row, StringRow, StringToBring};
pub use heaps::Heaps;
pub use kit::{Kit, KitLine};
pub use lifting::{HeavyStone, Lift, Lifting};
pub use loads::{Hold, LoadLine, Loads, Run};
pub use money::{CostLine, GroupRow, Money};
pub use place::Coordinates;
pub use reasons::{Reason, ReasonSource, ReasonStep, reasons};
pub use retaining::{FromFront, Retaining};
pub use running::{DayPeople, DayWeather, Line, Place, Round, Running};
pub use stone::{Kind, RestsOn, Stone, ThroughRow};
pub use timber::{CutLine, PatternLine, Timber};
pub use today::{StageDone, Today};
pub use wall::{EndRow, Limit, Wall};

/// A whole plan in words and written figures.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "Written")]
pub struct Written {
    /// What the course is called.
    pub title: String,
    /// The place's name.
    pub venue: String,
    /// All its dates in short.
    pub dates: String,
    /// `8 students in 4 pairs, 1 instructor, 1 assistant`.
    pub group: String,
    /// The wall.
    pub wall: Wall,
    /// Its setting-out.
    pub frames: Frames,
    /// Null where the frames are of bars.
    pub timber: Option<Timber>,
    /// Null where the wall stands free.
    pub retaining: Option<Retaining>,
    /// Its stone.
    pub stone: Stone,
    /// What goes with the heap plan.
    pub heaps: Heaps,
    /// What of it is ordered, and by when; nothing where nothing is lacking.
    pub deliveries: Vec<Delivery>,
    /// What one person may lift.
    pub lifting: Lifting,
    /// The tools.
    pub kit: Kit,
    /// Null where no vehicle is given.
    pub loads: Option<Loads>,
    /// Null where the course says nothing of money.
    pub money: Option<Money>,
    /// Who builds where.
    pub stints: Vec<Stint>,
    /// The days.
    pub days: Vec<Day>,
    /// The chance of finishing.
    pub chance: Chance,
    /// How the days are run.
    pub running: Running,
    /// What to mind.
    pub cautions: Vec<Caution>,
    /// What is not ready.
    pub to_do: Vec<ToDo>,
}

/// A pair and its stretch of wall.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenStint")]
pub struct Stint {
    /// Counted from 1.
    pub number: usize,
    /// Where it begins.
    pub from: String,
    /// Where it ends.
    pub to: String,
    /// How long it is.
    pub length: String,
    /// Names with experience.
    pub members: Vec<String>,
}

/// Something to mind.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenCaution")]
pub struct Caution {
    /// A fixed word for programs.
    pub id: String,
    /// What to do or not to do.
    pub text: String,
    /// Who says so.
    pub source: String,
    /// Students are told.
    pub for_students: bool,
    /// It follows from this plan's own numbers.
    pub of_this_plan: bool,
}

/// Something not ready.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenToDo")]
pub struct ToDo {
    /// A word for it that stays, unique in the list.
    pub id: String,
    /// Where it belongs: `stone`, `kit`, `venue` and so on.
    pub part: String,
    /// What, with the numbers.
    pub text: String,
    /// By when; empty where it does not matter.
    pub by: String,
    /// The same date as `2027-04-24`; empty where it does not matter.
    pub date: String,
    /// The instructor has marked it done.
    pub done: bool,
    /// It keeps the course from being ready.
    pub counts: bool,
}

impl Written {
    /// The plan as written in the course's units.
    pub fn of(
        plan: &craft::plan::Plan,
        course: &Course,
        tables: &Tables,
        style: DateStyle,
    ) -> Self {
        let clock = Clock::new(course, style);
        let dates: Vec<_> = course.days.iter().map(|day| day.date).collect();
        Self {
            title: course.title.clone(),
            venue: course.venue.name.clone(),
            dates: clock.dates(&dates),
            group: group(plan, course),
            wall: Wall::of(plan, course),
            frames: Frames::of(plan, course),
            timber: Timber::of(plan, course.units),
            retaining: Retaining::of(plan, course, tables),
            stone: Stone::of(plan, course),
            heaps: Heaps::of(&plan.heaps, course.units),
            deliveries: plan
                .deliveries
                .iter()
                .map(|it| Delivery::of(it, course.units, &clock))
                .collect(),
            lifting: Lifting::of(&plan.lifting, tables, course.units),
            kit: Kit::of(&plan.kit, course.units, &clock),
            loads: plan
                .loads
                .as_ref()
                .map(|loads| Loads::of(loads, &plan.kit, tables, course.units)),
            money: plan
                .money
                .as_ref()
                .map(|money| Money::of(money, course.group.students.len())),
            stints: stints(plan, course),
            days: days::days(plan, course, &clock),
            chance: Chance::of(plan, course, tables, &clock),
            running: Running::of(plan, course, tables, &clock),
            cautions: cautions(plan, tables),
            to_do: plan
                .to_do
                .iter()
                .map(|it| ToDo {
                    id: it.id.clone(),
                    part: it.part.word().to_owned(),
                    text: it.text.clone(),
                    by: it.by.map(|date| clock.date(date)).unwrap_or_default(),
                    date: it.by.map(|date| date.to_string()).unwrap_or_default(),
                    done: it.done,
                    counts: it.counts,
                })
                .collect(),
        }
    }
}

fn group(plan: &craft::plan::Plan, course: &Course) -> String {
    use craft::quantity::show_count;
    let group = &course.group;
    let mut words = vec![format!(
        "{} in {}",
        show_count(group.students.len(), "student", "students"),
        show_count(plan.stints.len(), "stint", "stints")
    )];
    words.push(show_count(
        group.instructors as usize,
        "instructor",
        "instructors",
    ));
    if 0 < group.assistants {
        words.push(show_count(
            group.assistants as usize,
            "assistant",
            "assistants",
        ));
    }
    list(&words)
}

fn stints(plan: &craft::plan::Plan, course: &Course) -> Vec<Stint> {
    let show = |length| craft::quantity::show_length(length, course.units);
    plan.stints
        .iter()
        .enumerate()
        .map(|(at, stint)| Stint {
            number: at + 1,
            from: show(stint.from),
            to: show(stint.to),
            length: show(stint.to - stint.from),
            members: stint
                .members
                .iter()
                .map(|student| {
                    format!(
                        "{} ({})",
                        student.name,
                        crate::plan::experience_word(student.experience)
                    )
                })
                .collect(),
        })
        .collect()
}

fn cautions(plan: &craft::plan::Plan, tables: &Tables) -> Vec<Caution> {
    plan.cautions
        .iter()
        .map(|caution| Caution {
            id: caution.id.clone(),
            text: caution.text.clone(),
            source: caution.source.clone(),
            for_students: caution.for_students,
            of_this_plan: !tables.cautions.iter().any(|row| row.id == caution.id),
        })
        .collect()
}
