//! A course, its tables and its plan, for the tests of what follows from a plan. Invented.

use super::{Plan, plan};
use crate::course::{Course, Day, Experience, OnSite, Student, WeatherGiven};
use crate::quantity::{Units, tonnes};
use crate::tables::{Rate, Tables};
use crate::worksheet::sample;
use chrono::{NaiveDate, NaiveTime};
use std::sync::LazyLock;

/// Planned once, because a plan simulates thousands of courses.
pub(crate) static SAMPLE: LazyLock<(Course, Tables, Plan)> = LazyLock::new(|| {
    let (course, tables) = (course(), tables());
    let plan = plan(&course, &tables).expect("a sound course");
    (course, tables, plan)
});

/// Eight students and an instructor on the three days from Friday 23 April 2027, with stone to
/// come in loads of 10 t.
pub(crate) fn course() -> Course {
    let mut course = sample::course(Units::Metric, 1);
    course.days = (23..=25).map(day).collect();
    course.group.students = (1..=8).map(student).collect();
    course.stone.on_site = OnSite::Heap(tonnes(4.0));
    course.stone.load = Some(tonnes(10.0));
    course
}

fn day(day: u32) -> Day {
    let time = |hour| NaiveTime::from_hms_opt(hour, 0, 0).expect("a time");
    Day {
        date: NaiveDate::from_ymd_opt(2027, 4, day).expect("a date"),
        start: time(9),
        finish: time(17),
        breaks: Vec::new(),
        weather: WeatherGiven::default(),
    }
}

fn student(number: u32) -> Student {
    Student::new(format!("Student {number}"), Experience::Novice)
}

pub(crate) fn tables() -> Tables {
    let mut tables = sample::tables();
    tables.pace.rates = tables
        .stages
        .iter()
        .map(|stage| Rate {
            stage: stage.id.clone(),
            hours: [2.0, 1.5, 1.0],
            source: "invented".to_owned(),
        })
        .collect();
    tables
}
