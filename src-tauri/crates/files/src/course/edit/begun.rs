//! A course text filled in from a template: single values put in their places, and its days.

use super::super::CourseFile;
use super::{descend, no_such, put, steps, text_value};
use crate::Fault;
use chrono::{Days, NaiveDate, NaiveTime, TimeDelta, Timelike};
use std::fmt::Write;
use toml_edit::{DocumentMut, Item};

/// A break for a meal, and one for tea (common practice, no source).
const LUNCH_MINUTES: i64 = 45;
const TEA_MINUTES: i64 = 15;
/// A shorter day has no lunch (common practice, no source).
const LUNCH_FROM_MINUTES: i64 = 5 * 60;
/// A longer stretch of work has tea in its middle; the talk is of no more than two hours at a
/// stretch (common practice, no source).
const STRETCH_MINUTES: i64 = 120;
/// Times of day are given by the quarter hour.
const QUARTER: i64 = 15;

/// The days of a course that all keep the same hours.
pub(in crate::course) struct DayHours {
    pub(in crate::course) first: NaiveDate,
    pub(in crate::course) days: u64,
    pub(in crate::course) start: NaiveTime,
    pub(in crate::course) finish: NaiveTime,
}

/// The template with these keys set and these days; an empty text removes a key. Comments stay.
///
/// # Errors
/// The [`Fault`] that the text would have.
pub(in crate::course) fn begun(
    template: &str,
    keys: &[(&str, String)],
    days: &DayHours,
) -> Result<String, Fault> {
    let mut document: DocumentMut = template.parse().map_err(|_| no_such(""))?;
    for (key, typed) in keys {
        let steps = steps(key);
        let (last, outer) = steps.split_last().unwrap_or((&"", &[]));
        let table = descend(document.as_table_mut(), outer).ok_or_else(|| no_such(key))?;
        put(table, last, typed);
    }
    let written: DocumentMut = written(days)?.parse().map_err(|_| no_such("day"))?;
    let (Some(Item::ArrayOfTables(there)), Some(Item::ArrayOfTables(new))) =
        (document.get_mut("day"), written.get("day"))
    else {
        return Err(no_such("day"));
    };
    there.clear();
    for day in new {
        let mut day = day.clone();
        // Its place is that of the template's day.
        day.set_position(None);
        there.push(day);
    }
    let text = document.to_string();
    CourseFile::parse(&text).map(|_| text)
}

/// The days as a person would write them.
fn written(days: &DayHours) -> Result<String, Fault> {
    let mut text = String::new();
    let breaks = breaks(days.start, days.finish);
    for day in 0..days.days {
        let date = days.first.checked_add_days(Days::new(day));
        let date = date.ok_or_else(|| no_such("day"))?;
        let (start, finish) = (days.start, days.finish);
        // Writing into a text can't fail.
        let _ = write!(
            text,
            "\n[[day]]\ndate = {date}\nstart = {start}\nfinish = {finish}\n"
        );
        if !breaks.is_empty() {
            text.push_str("breaks = [\n");
            for (name, start, minutes) in &breaks {
                let name = text_value(name);
                let _ = writeln!(
                    text,
                    "  {{ name = {name}, start = {start}, minutes = {minutes} }},"
                );
            }
            text.push_str("]\n");
        }
    }
    Ok(text)
}

/// Lunch in the middle of a day that is long enough, tea in the middle of every stretch of work
/// longer than two hours; all by the quarter hour.
fn breaks(start: NaiveTime, finish: NaiveTime) -> Vec<(&'static str, NaiveTime, i64)> {
    let (start, finish) = (minutes(start), minutes(finish));
    let mut breaks = Vec::new();
    let mut stretches = vec![(start, finish)];
    if LUNCH_FROM_MINUTES <= finish - start {
        let lunch = middle(start, finish, LUNCH_MINUTES);
        breaks.push(("Lunch", lunch, LUNCH_MINUTES));
        stretches = vec![(start, lunch), (lunch + LUNCH_MINUTES, finish)];
    }
    for (from, to) in stretches {
        if STRETCH_MINUTES < to - from {
            breaks.push(("Tea", middle(from, to, TEA_MINUTES), TEA_MINUTES));
        }
    }
    breaks.sort_by_key(|(_, start, _)| *start);
    let time = |minutes| NaiveTime::MIN + TimeDelta::minutes(minutes);
    breaks
        .into_iter()
        .map(|(name, start, long)| (name, time(start), long))
        .collect()
}

/// When a break so long begins in the middle of a stretch, to the quarter hour.
fn middle(from: i64, to: i64, long: i64) -> i64 {
    (from + to - long) / 2 / QUARTER * QUARTER
}

fn minutes(time: NaiveTime) -> i64 {
    i64::from(time.hour() * 60 + time.minute())
}

#[cfg(test)]
mod tests {
    use super::breaks;
    use chrono::NaiveTime;

    fn at(text: &str) -> NaiveTime {
        text.parse().expect("a time")
    }

    /// By hand, from the rule above.
    #[test]
    fn breaks_fall_in_the_middle_of_the_work() {
        for (start, finish, due) in [
            ("09:00:00", "16:30:00", "10:30 Tea, 12:15 Lunch, 14:30 Tea"),
            ("09:00:00", "13:00:00", "10:45 Tea"),
            ("10:00:00", "15:00:00", "12:00 Lunch, 13:45 Tea"),
            ("09:00:00", "11:00:00", ""),
        ] {
            let found: Vec<String> = breaks(at(start), at(finish))
                .iter()
                .map(|(name, start, _)| format!("{} {name}", start.format("%H:%M")))
                .collect();
            assert_eq!(found.join(", "), due, "{start} to {finish}");
        }
    }
}
