//! Spells of rain added to a course day and dropped from it.

use super::{checked, days, no_such, parsed};
use crate::Fault;
use crate::course::CourseFile;
use chrono::{NaiveTime, TimeDelta};
use craft::course::Day;
use toml_edit::{Array, InlineTable, Item, Value};

/// How long a new spell is, and how long after the day's start or the spell before it begins.
const MINUTES: i64 = 60;

/// The text with one more spell of rain in a day, counted from 0: an hour, an hour after the
/// start of the day or after the last spell, for its times to be typed in.
///
/// # Errors
/// The [`Fault`] that the changed text would have.
pub fn add_rain(text: &str, day: usize) -> Result<String, Fault> {
    let course = CourseFile::parse(text)?.course;
    let given = course.days.get(day).ok_or_else(|| no_such("day"))?;
    let mut document = parsed(text)?;
    let mut spell = InlineTable::new();
    let start = begins(given).format("%H:%M:%S").to_string();
    spell.insert(
        "start",
        start.parse::<Value>().map_err(|_| no_such("start"))?,
    );
    spell.insert("minutes", MINUTES.into());
    spells(&mut document, day)?.push(Value::InlineTable(spell));
    checked(document, text)
}

/// The text without one spell of rain of a day, both counted from 0.
///
/// # Errors
/// The [`Fault`] that the changed text would have.
pub fn remove_rain(text: &str, day: usize, at: usize) -> Result<String, Fault> {
    let mut document = parsed(text)?;
    let rain = spells(&mut document, day)?;
    if at < rain.len() {
        rain.remove(at);
    }
    if rain.is_empty()
        && let Some(day) = days(&mut document)?.get_mut(day)
    {
        day.remove("rain");
    }
    checked(document, text)
}

fn begins(day: &Day) -> NaiveTime {
    let spells = day.weather.rain.iter();
    let last = spells.map(|spell| spell.start + TimeDelta::minutes(spell.minutes.into()));
    let from = last.max().unwrap_or(day.start);
    from + TimeDelta::minutes(MINUTES)
}

fn spells(document: &mut toml_edit::DocumentMut, day: usize) -> Result<&mut Array, Fault> {
    let table = days(document)?.get_mut(day).ok_or_else(|| no_such("day"))?;
    table
        .entry("rain")
        .or_insert(Item::Value(Value::Array(Array::new())))
        .as_array_mut()
        .ok_or_else(|| no_such("rain"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Library;

    #[test]
    fn rain_comes_and_goes() {
        let text = Library::example(false);
        let one = add_rain(text, 1).expect("one");
        let two = add_rain(&one, 1).expect("two");
        let rain = |text: &str| {
            let course = CourseFile::parse(text).expect("sound").course;
            let spells = course.days[1].weather.rain.iter();
            spells.map(|it| it.start.to_string()).collect::<Vec<_>>()
        };
        assert_eq!(rain(&two), ["10:00:00", "12:00:00"]);
        assert_eq!(rain(&remove_rain(&two, 1, 0).expect("less")), ["12:00:00"]);
        assert_eq!(remove_rain(&one, 1, 0).expect("none"), text);
        assert_eq!(
            add_rain(text, 9).expect_err("no such day").code,
            "unknown-key"
        );
    }
}
