//! Who is there when: how much of the group's pace each part of a day has.

use super::speed;
use crate::course::{Course, Day, Student};
use crate::tables::PaceTable;
use chrono::NaiveTime;

/// A part of a day through which the same people are there.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Presence {
    /// When it begins.
    pub from: NaiveTime,
    /// When it ends.
    pub to: NaiveTime,
    /// The share of the group's pace that is there: `Σ speed of those there / Σ speed of all`,
    /// 0 to 1.
    pub share: f64,
}

/// For each course day its parts in order, from its start to its finish without a gap. A day
/// through which nothing changes is one part. `laying` is the stage whose rates count.
pub fn presence(course: &Course, pace: &PaceTable, laying: &str) -> Vec<Vec<Presence>> {
    (0..)
        .zip(&course.days)
        .map(|(at, day)| of_day(course, (at, day), pace, laying))
        .collect()
}

fn of_day(
    course: &Course,
    (at, day): (usize, &Day),
    pace: &PaceTable,
    laying: &str,
) -> Vec<Presence> {
    let people: Vec<(f64, Vec<Gap>)> = course
        .group
        .students
        .iter()
        .map(|student| {
            let speed = speed(pace, laying, student.experience);
            (speed, gaps(course, at, student))
        })
        .collect();
    let all: f64 = people.iter().map(|(speed, _)| speed).sum();
    let mut parts: Vec<Presence> = Vec::new();
    for [from, to] in between_changes(day, &people) {
        let is_there = |gaps: &[Gap]| gaps.iter().all(|gap| to <= gap.from || gap.until <= from);
        let away: f64 = people
            .iter()
            .filter(|(_, gaps)| !is_there(gaps))
            .map(|(speed, _)| speed)
            .sum();
        let nobody = people.iter().all(|(_, gaps)| !is_there(gaps));
        // What is left of sums in another order would not be exactly nothing.
        let share = if nobody { 0.0 } else { 1.0 - away / all };
        match parts.last_mut() {
            Some(last) if (last.share - share).abs() < 1e-12 => last.to = to,
            _ => parts.push(Presence { from, to, share }),
        }
    }
    parts
}

/// The stretches between which somebody comes or goes.
fn between_changes(day: &Day, people: &[(f64, Vec<Gap>)]) -> Vec<[NaiveTime; 2]> {
    let gaps = people.iter().flat_map(|(_, gaps)| gaps);
    let mut times: Vec<NaiveTime> = gaps.flat_map(|gap| [gap.from, gap.until]).collect();
    times.extend([day.start, day.finish]);
    times.sort_unstable();
    times.dedup();
    times
        .windows(2)
        .filter_map(|pair| pair.try_into().ok())
        .collect()
}

/// A time somebody is away, within the day's hours.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Gap {
    pub(super) from: NaiveTime,
    pub(super) until: NaiveTime,
}

/// When a student is away on a day: in order, none touching another.
pub(super) fn gaps(course: &Course, at: usize, student: &Student) -> Vec<Gap> {
    let Some(day) = course.days.get(at) else {
        return Vec::new();
    };
    let mut given: Vec<Gap> = course
        .absences
        .iter()
        .filter(|absence| absence.day == at && absence.who == student.name)
        .map(|absence| Gap {
            from: absence.from.unwrap_or(day.start).max(day.start),
            until: absence.until.unwrap_or(day.finish).min(day.finish),
        })
        .filter(|gap| gap.from < gap.until)
        .collect();
    given.sort_unstable_by_key(|gap| gap.from);
    let mut gaps: Vec<Gap> = Vec::new();
    for gap in given {
        match gaps.last_mut() {
            Some(last) if gap.from <= last.until => last.until = last.until.max(gap.until),
            _ => gaps.push(gap),
        }
    }
    gaps
}
