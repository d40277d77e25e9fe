//! Rules and groups for the tests of the kit. All invented.

use super::{Counted, Heat, RuleChange, SaidBy, Weather};
use crate::conditions::Conditions;
use crate::course::{Break, Day, Experience, GloveSize, Group, Pairing, Student, WeatherGiven};
use crate::quantity::{kilograms, metres};
use crate::tables::{Each, KitRule, Per};
use chrono::{NaiveDate, NaiveTime};

/// So many to each, and nothing else said.
pub(super) fn rule(item: &str, per: Per, each: f64) -> KitRule {
    let change = RuleChange {
        item: item.to_owned(),
        per: Some(per),
        each: Some(Each::Same(each)),
        mass: Some(kilograms(2.0)),
        why: Some("it is of use".to_owned()),
        ..RuleChange::default()
    };
    change.rule().expect("all that a rule needs")
}

/// So many students, none of whom has said a size, and staff.
pub(super) fn group(students: usize, instructors: u32, assistants: u32) -> Group {
    let student = |at| Student::new(format!("Student {at}"), Experience::Novice);
    Group {
        instructors,
        assistants,
        students: (1..=students).map(student).collect(),
        pairing: Pairing::default(),
    }
}

/// Students with these sizes, and nobody to teach.
pub(super) fn wearing(sizes: &[Option<GloveSize>]) -> Group {
    let mut group = group(sizes.len(), 0, 0);
    for (student, size) in group.students.iter_mut().zip(sizes) {
        student.gloves = *size;
    }
    group
}

/// Three days, the second the longest: 9:00 to 17:30 with its breaks.
pub(super) fn days() -> Vec<Day> {
    let time = |hour, minute| NaiveTime::from_hms_opt(hour, minute, 0).expect("a time");
    [(16, 0), (17, 30), (12, 0)]
        .into_iter()
        .zip(24..)
        .map(|((hour, minute), day)| Day {
            date: NaiveDate::from_ymd_opt(2027, 4, day).expect("a date"),
            start: time(9, 0),
            finish: time(hour, minute),
            breaks: vec![Break {
                name: "Tea".to_owned(),
                start: time(10, 30),
                minutes: 30,
            }],
            weather: WeatherGiven::default(),
        })
        .collect()
}

/// A course of this group: 4 frames, 3 stints, 9.25 m of wall, mild by the season.
pub(super) fn counted<'a>(
    group: &'a Group,
    days: &'a [Day],
    conditions: &'a Conditions,
) -> Counted<'a> {
    Counted {
        group,
        days,
        conditions,
        weather: Weather {
            heat: Heat::Mild,
            said: SaidBy::Season,
        },
        frames_standing: 4,
        bar: Some(kilograms(2.8)),
        stints: 3,
        length: metres(9.25),
    }
}
