//! What can be moved in the picture of the days: lessons to another day or time, breaks within
//! their day.

use chrono::{NaiveTime, Timelike};
use craft::pace::calendar::{minutes_to, to_the_minute};
use craft::pace::timetable::{Entry, Of};
use documents::{Course, DayRow};
use shapes::Clock;
use shapes::window::{DayEntry, DayHandles, DayPlaces, HandleStop};
use std::collections::BTreeMap;

/// The rows and the entries of the days.
pub(crate) fn shown(course: &Course, rows: &[DayRow]) -> DayHandles {
    let days = Days {
        course,
        clock: course.clock(),
    };
    let entries = course.plan.timetable.iter().filter_map(|entry| {
        let row = rows.iter().find(|row| row.day == entry.day)?;
        days.entry(row, entry)
    });
    DayHandles {
        days: rows.iter().filter_map(|row| days.places(row)).collect(),
        entries: told_apart(entries.collect()),
    }
}

/// A lesson may be given on several days: after the first time its id is numbered, so that it is
/// the same whichever day that is.
fn told_apart(mut entries: Vec<DayEntry>) -> Vec<DayEntry> {
    let mut times: BTreeMap<String, usize> = BTreeMap::new();
    for entry in &mut entries {
        let time = times.entry(entry.id.clone()).or_default();
        *time += 1;
        if 1 < *time {
            entry.id = format!("{}-{time}", entry.id);
        }
    }
    entries
}

struct Days<'a> {
    course: &'a Course,
    clock: Clock,
}

impl Days<'_> {
    fn places(&self, row: &DayRow) -> Option<DayPlaces> {
        let day = self.course.file.course.days.get(row.day)?;
        let (start, finish) = (minute(day.start), minute(day.finish));
        let quarters = (start.div_ceil(15) * 15..finish).step_by(15);
        Some(DayPlaces {
            name: format!("Day {}", row.day + 1),
            top: row.from.y,
            bottom: row.to.y,
            times: quarters
                .filter_map(|it| NaiveTime::from_hms_opt(it / 60, it % 60, 0))
                .map(|time| self.stop(row, time))
                .collect(),
        })
    }

    fn stop(&self, row: &DayRow, time: NaiveTime) -> HandleStop {
        HandleStop {
            typed: time.format("%H:%M").to_string(),
            words: self.clock.write_time(&time),
            place: row.x(f64::from(minute(time))),
        }
    }

    /// A lesson, or a break that the file gives; a break that was added so that nobody works too
    /// long goes where it has to.
    fn entry(&self, row: &DayRow, entry: &Entry) -> Option<DayEntry> {
        let course = &self.course.file.course;
        let day = course.days.get(entry.day)?;
        let midnight = minutes_to(&course.days, day.date, NaiveTime::MIN);
        let [from, to] = [entry.from, entry.to].map(|it| to_the_minute(it) - midnight);
        let begins = time_of(from)?;
        let lesson = match entry.of {
            Some(Of::Lesson(at)) => self.course.library.tables.lessons.get(at),
            _ => None,
        };
        let pause = day
            .breaks
            .iter()
            .position(|it| it.name == entry.what && it.start == begins);
        let (id, lesson, key) = match (lesson, pause) {
            (Some(lesson), _) => (lesson.id.clone(), Some(lesson.id.clone()), None),
            (None, Some(at)) if entry.of.is_none() => (
                format!("break-{}-{at}", entry.day),
                None,
                Some(format!("day.{}.breaks.{at}.start", entry.day)),
            ),
            _ => return None,
        };
        Some(DayEntry {
            id,
            name: entry.what.clone(),
            lesson,
            key,
            day: entry.day,
            from: row.x(from),
            to: row.x(to),
            typed: begins.format("%H:%M").to_string(),
            words: self.clock.write_time(&begins),
        })
    }
}

fn minute(time: NaiveTime) -> u32 {
    time.num_seconds_from_midnight() / 60
}

/// A time of day from minutes after midnight.
fn time_of(minutes: f64) -> Option<NaiveTime> {
    let minute = (0..24 * 60).find(|it| f64::from(*it) >= minutes)?;
    NaiveTime::from_hms_opt(minute / 60, minute % 60, 0)
}
