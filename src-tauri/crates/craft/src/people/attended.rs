//! What one student is there for: how long they are taught, and which parts of the days.

use super::presence::gaps;
use crate::course::{Course, Student};
use crate::pace::calendar::minutes_to;
use crate::pace::{Entry, EntryKind};

/// The stretches of the course that a student is there, in minutes since midnight of the first
/// day: in order, none touching another, days through which they are away left out.
#[derive(Debug, Clone, PartialEq)]
pub struct Attended {
    /// The course day, counted from 0, and when on it.
    stretches: Vec<(usize, [f64; 2])>,
}

impl Attended {
    /// What a student of the course is there for, by the absences that are given.
    pub fn of(course: &Course, student: &Student) -> Self {
        let mut stretches = Vec::new();
        for (at, day) in course.days.iter().enumerate() {
            let minutes = |time| minutes_to(&course.days, day.date, time);
            let mut from = day.start;
            for gap in gaps(course, at, student) {
                if from < gap.from {
                    stretches.push((at, [minutes(from), minutes(gap.from)]));
                }
                from = gap.until;
            }
            if from < day.finish {
                stretches.push((at, [minutes(from), minutes(day.finish)]));
            }
        }
        Self { stretches }
    }

    /// The course days they come, if only for a part of it, counted from 0.
    pub fn days(&self) -> Vec<usize> {
        let mut days: Vec<usize> = self.stretches.iter().map(|(day, _)| *day).collect();
        days.dedup();
        days
    }

    /// Minutes they are there, breaks of the timetable taken off.
    pub fn taught_minutes(&self, timetable: &[Entry]) -> f64 {
        let there: f64 = self.stretches.iter().map(|(_, [from, to])| to - from).sum();
        let breaks = timetable.iter().filter(|it| it.kind == EntryKind::Break);
        there - breaks.map(|it| self.minutes_of(it)).sum::<f64>()
    }

    /// Whether they are there for any of a line of the timetable.
    pub fn takes_part(&self, entry: &Entry) -> bool {
        0.0 < self.minutes_of(entry)
    }

    fn minutes_of(&self, entry: &Entry) -> f64 {
        let shared = |(_, [from, to]): &(usize, [f64; 2])| to.min(entry.to) - from.max(entry.from);
        let shared = self.stretches.iter().map(shared);
        shared.filter(|minutes| 0.0 < *minutes).sum()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::course::Absence;
    use crate::plan::sample::course;
    use chrono::NaiveTime;

    fn at(hour: u32, minute: u32) -> Option<NaiveTime> {
        NaiveTime::from_hms_opt(hour, minute, 0)
    }

    fn away(day: usize, from: Option<NaiveTime>, until: Option<NaiveTime>) -> Absence {
        Absence {
            who: "Student 1".to_owned(),
            day,
            from,
            until,
        }
    }

    /// Three days of 9:00 to 17:00, with lunch from 12:00 to 13:00 on each.
    fn lunches() -> Vec<Entry> {
        let lunch = |day: u32| Entry {
            day: day as usize,
            from: f64::from(day) * 1440.0 + 720.0,
            to: f64::from(day) * 1440.0 + 780.0,
            what: "Lunch".to_owned(),
            kind: EntryKind::Break,
            of: None,
        };
        (0..3).map(lunch).collect()
    }

    fn attended(absences: &[Absence]) -> Attended {
        let mut course = course();
        course.absences = absences.to_vec();
        Attended::of(&course, &course.group.students[0])
    }

    /// Hours by hand: eight a day, less an hour of lunch, less what is missed of the rest.
    #[test]
    fn hours_are_those_they_are_there_for_without_the_breaks() {
        for (absences, hours, days) in [
            (&[][..], 21.0, &[0, 1, 2][..]),
            (&[away(1, None, None)], 14.0, &[0, 2]),
            (&[away(0, None, at(10, 30))], 19.5, &[0, 1, 2]),
            // Half of the lunch is missed with the afternoon: three and a half hours there.
            (&[away(2, at(12, 30), None)], 17.0, &[0, 1, 2]),
            (
                &[
                    away(2, at(10, 0), at(11, 0)),
                    away(2, at(10, 30), at(14, 0)),
                ],
                18.0,
                &[0, 1, 2],
            ),
            (
                &[
                    away(0, None, None),
                    away(1, None, None),
                    away(2, None, None),
                ],
                0.0,
                &[],
            ),
        ] {
            let there = attended(absences);
            let minutes = there.taught_minutes(&lunches());
            assert!(
                (minutes / 60.0 - hours).abs() < 1e-9,
                "{absences:?}: {minutes} min"
            );
            assert_eq!(there.days(), days, "{absences:?}");
        }
    }

    #[test]
    fn somebody_elses_absence_is_no_matter_of_theirs() {
        let other = Absence {
            who: "Student 2".to_owned(),
            ..away(1, None, None)
        };
        assert_eq!(attended(&[other]), attended(&[]));
    }

    #[test]
    fn they_take_part_in_what_they_see_any_of() {
        let there = attended(&[away(0, at(12, 30), None), away(1, None, None)]);
        let takes_part: Vec<bool> = lunches().iter().map(|it| there.takes_part(it)).collect();
        assert_eq!(takes_part, [true, false, true]);
        // To leave as it begins is to miss it.
        let gone = attended(&[away(0, at(12, 0), None)]);
        assert!(!gone.takes_part(&lunches()[0]));
    }
}
