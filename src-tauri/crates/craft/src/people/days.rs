//! The pairs and stints of each day, from those who come that day.

use super::pairs::pairs_of;
use super::presence::{Gap, gaps};
use super::{Stint, along, pairs};
use crate::course::{Course, Day, Student};
use crate::quantity::Length;
use crate::tables::PaceTable;
use chrono::NaiveTime;

/// One course day and its people.
#[derive(Debug, Clone, PartialEq)]
pub struct DayPeople {
    /// The course day, counted from 0.
    pub day: usize,
    /// Names of those who come that day, if only for a part of it, in the roster's order.
    pub present: Vec<String>,
    /// Who is away, and when.
    pub away: Vec<Away>,
    /// Who builds where.
    pub stints: Vec<Stint>,
    /// The stints are those of the first day: nothing is to be told anew.
    pub same_as_first: bool,
}

/// A time somebody is away.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Away {
    /// The student's name.
    pub who: String,
    /// When they leave, or the day begins without them.
    pub from: NaiveTime,
    /// When they are back, or the day ends without them.
    pub until: NaiveTime,
    /// Which of the day's stints is short of them, counted from 0; none who is away all day.
    pub stint: Option<usize>,
}

impl Away {
    /// Comes late: there from [`Away::until`] on.
    pub fn comes_late(&self, day: &Day) -> bool {
        self.from <= day.start && self.until < day.finish
    }

    /// Leaves early: there until [`Away::from`].
    pub fn leaves_early(&self, day: &Day) -> bool {
        day.start < self.from && day.finish <= self.until
    }
}

/// Each day's people. Who comes late or leaves early stays in their pair; where somebody is
/// away all day, pairs are made anew from the others, and those of the whole group are kept where
/// that breaks no wish. `laying` is the stage whose rates count.
pub fn days(course: &Course, length: Length, pace: &PaceTable, laying: &str) -> Vec<DayPeople> {
    let whole = pairs(&course.group, pace, laying);
    let mut days: Vec<DayPeople> = Vec::new();
    for (at, day) in course.days.iter().enumerate() {
        let times: Vec<(&Student, Vec<Gap>)> = course
            .group
            .students
            .iter()
            .map(|student| (student, gaps(course, at, student)))
            .collect();
        let there: Vec<&Student> = times
            .iter()
            .filter(|(_, gaps)| !all_day(day, gaps))
            .map(|(student, _)| *student)
            .collect();
        let pairs = if there.len() == course.group.students.len() {
            whole.clone()
        } else {
            pairs_of(&there, &course.group, &whole, (pace, laying))
        };
        let stints = along(pairs, length, pace, laying);
        let same_as_first = days.first().is_none_or(|first| first.stints == stints);
        days.push(DayPeople {
            day: at,
            present: there.iter().map(|student| student.name.clone()).collect(),
            away: away(&times, &stints),
            stints,
            same_as_first,
        });
    }
    days
}

fn all_day(day: &Day, gaps: &[Gap]) -> bool {
    matches!(gaps, [gap] if gap.from == day.start && gap.until == day.finish)
}

fn away(times: &[(&Student, Vec<Gap>)], stints: &[Stint]) -> Vec<Away> {
    let stint_of = |student: &Student| {
        stints
            .iter()
            .position(|stint| stint.members.iter().any(|it| it.name == student.name))
    };
    times
        .iter()
        .flat_map(|(student, gaps)| {
            gaps.iter().map(|gap| Away {
                who: student.name.clone(),
                from: gap.from,
                until: gap.until,
                stint: stint_of(student),
            })
        })
        .collect()
}
