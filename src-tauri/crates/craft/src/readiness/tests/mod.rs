//! What tests of the list are made from: a planned course, tools, tasks and marks.

mod any;
mod by_hand;

use super::*;
use crate::course::ReadyGiven;
use crate::plan::sample::SAMPLE;
use crate::quantity::kilograms;
use crate::tables::{Applies, ComeByTimes, Task, Way, When};
use std::sync::LazyLock;

fn day(month: u32, day: u32) -> NaiveDate {
    NaiveDate::from_ymd_opt(2027, month, day).expect("a date")
}

fn task(id: &str, when: When, applies: Applies) -> Task {
    Task {
        id: id.to_owned(),
        text: format!("See to {id}."),
        when,
        part: Part::Venue,
        applies,
        source: "invented".to_owned(),
    }
}

fn ready() -> ReadyTable {
    ReadyTable {
        tasks: vec![
            task("permission", When::DaysBefore(42), Applies::Always),
            task("services", When::WorkingDaysBefore(10), Applies::Always),
            task("lamps", When::DaysBefore(2), Applies::Dark),
            task("stakes", When::DaysBefore(2), Applies::Timber),
            task("home", When::DaysAfter(1), Applies::Always),
        ],
        times: ComeByTimes {
            borrow_days: 14,
            hire_days: 10,
            buy_days: 7,
            source: "invented".to_owned(),
        },
        ..ReadyTable::default()
    }
}

fn tool(item: &str, need: usize, have: usize, way: Way) -> KitLine {
    KitLine {
        item: item.to_owned(),
        rule: item.to_owned(),
        clash: Vec::new(),
        source: String::new(),
        unit: String::new(),
        need,
        have: Some(have),
        short: Some(need.saturating_sub(have)),
        why: String::new(),
        mass: kilograms(1.0),
        place: String::new(),
        safety_critical: false,
        consumable: false,
        needed_for: "all".to_owned(),
        each: kilograms(1.0),
        way,
        prepare: String::new(),
        held: None,
    }
}

static CONDITIONS: LazyLock<Conditions> =
    LazyLock::new(|| Conditions::of(&SAMPLE.0, &SAMPLE.2.sun));

fn planned<'a>(kit: &'a [KitLine], ready: &'a ReadyTable) -> Planned<'a> {
    let plan = &SAMPLE.2;
    Planned {
        stone: &plan.stone,
        retaining: None,
        frames: &plan.frames,
        timber: None,
        kit,
        loads: None,
        money: None,
        forecast: &plan.forecast,
        from_here: None,
        timetable: &plan.timetable,
        wishes: &[],
        pairs: &[],
        lessons: &[],
        conditions: &CONDITIONS,
        ready,
        deliveries: &plan.deliveries,
    }
}

/// The sample's course, its list kept, with these marks.
fn marked(done: &[&str]) -> Course {
    Course {
        ready: Some(ReadyGiven {
            done: done.iter().map(|id| (*id).to_owned()).collect(),
        }),
        ..SAMPLE.0.clone()
    }
}

fn list_of(course: &Course, planned: Planned<'_>) -> Vec<ToDo> {
    to_do(course, planned)
}

fn one<'l>(list: &'l [ToDo], id: &str) -> &'l ToDo {
    let found: Vec<&ToDo> = list.iter().filter(|it| it.id == id).collect();
    assert_eq!(found.len(), 1, "{id} in {list:#?}");
    found[0]
}
