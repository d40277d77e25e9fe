//! Breaks added to a course day and dropped from it.

use super::{checked, days, no_such, parsed};
use crate::Fault;
use crate::course::CourseFile;
use chrono::{NaiveTime, Timelike};
use craft::course::Day;
use toml_edit::{Array, InlineTable, Item, Value};

/// How long a new break is (common practice, no source).
const MINUTES: i64 = 15;

/// The text with one more break in a day, counted from 0: in the middle of the longest time
/// without one, to the quarter hour.
///
/// # Errors
/// The [`Fault`] that the changed text would have.
pub fn add_break(text: &str, day: usize) -> Result<String, Fault> {
    let file = CourseFile::parse(text)?;
    let given = file.course.days.get(day).ok_or_else(|| no_such("day"))?;
    let (at, start) = longest_gap(given);
    let mut document = parsed(text)?;
    let array = breaks(&mut document, day)?;
    let mut one = Value::InlineTable(written(start));
    if let Some(like) = array.get(0) {
        // Written as its neighbours are, on a line of its own or not.
        *one.decor_mut() = like.decor().clone();
    }
    array.insert_formatted(at, one);
    checked(document, text)
}

/// The text without one break of a day, both counted from 0.
///
/// # Errors
/// The [`Fault`] that the changed text would have.
pub fn remove_break(text: &str, day: usize, at: usize) -> Result<String, Fault> {
    let mut document = parsed(text)?;
    let array = breaks(&mut document, day)?;
    if at < array.len() {
        array.remove(at);
    }
    checked(document, text)
}

fn breaks(document: &mut toml_edit::DocumentMut, day: usize) -> Result<&mut Array, Fault> {
    let table = days(document)?.get_mut(day).ok_or_else(|| no_such("day"))?;
    table
        .entry("breaks")
        .or_insert(Item::Value(Value::Array(Array::new())))
        .as_array_mut()
        .ok_or_else(|| no_such("breaks"))
}

/// Where in the list a new break belongs, and when it begins.
fn longest_gap(day: &Day) -> (usize, NaiveTime) {
    let mut best = (0, 0, 0);
    let mut from = minutes(day.start);
    let ends = day
        .breaks
        .iter()
        .map(|it| (minutes(it.start), i64::from(it.minutes)));
    for (at, (start, lasts)) in ends.chain([(minutes(day.finish), 0)]).enumerate() {
        if best.2 < start - from {
            best = (at, from, start - from);
        }
        from = start + lasts;
    }
    let middle = best.1 + (best.2 - MINUTES) / 2;
    let quarter = (middle + MINUTES / 2) / MINUTES * MINUTES;
    // A gap shorter than a break is refused by whoever reads the changed text.
    let start = u32::try_from(quarter.max(best.1)).unwrap_or_default();
    (
        best.0,
        NaiveTime::from_hms_opt(start / 60, start % 60, 0).unwrap_or(day.start),
    )
}

fn minutes(time: NaiveTime) -> i64 {
    i64::from(time.num_seconds_from_midnight() / 60)
}

fn written(start: NaiveTime) -> InlineTable {
    let mut table = InlineTable::new();
    table.insert("name", "Break".into());
    if let Ok(time) = start.format("%H:%M:%S").to_string().parse::<Value>() {
        table.insert("start", time);
    }
    table.insert("minutes", MINUTES.into());
    table
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Library;

    #[test]
    fn a_break_comes_where_the_longest_time_without_one_is() {
        let text = Library::example(false);
        // By hand, day 3: 9:00 to 11:00, 11:15 to 12:45, 13:30 to 16:00; the longest is the
        // last, 150 minutes: a quarter of an hour in its middle begins at 14:37, so at 14:30.
        let more = add_break(text, 2).expect("a break more");
        let day = &CourseFile::parse(&more).expect("sound").course.days[2];
        assert_eq!(day.breaks.len(), 3);
        assert_eq!(
            day.breaks[2].start,
            NaiveTime::from_hms_opt(14, 30, 0).expect("a time")
        );
        assert_eq!(remove_break(&more, 2, 2).expect("a break less"), text);
    }

    #[test]
    fn a_day_without_breaks_gets_its_first() {
        let mut text = Library::example(false).to_owned();
        for _ in 0..3 {
            text = remove_break(&text, 0, 0).expect("a break less");
        }
        let more = add_break(&text, 0).expect("a break more");
        assert_eq!(
            CourseFile::parse(&more).expect("sound").course.days[0]
                .breaks
                .len(),
            1
        );
    }
}
