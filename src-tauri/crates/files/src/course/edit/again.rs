//! The same course again on other dates: what belongs to those days goes, all else stays.

use super::tables::take_out;
use super::{checked, no_such, parsed, put};
use crate::Fault;
use crate::course::CourseFile;
use crate::quantity;
use chrono::{Datelike, NaiveDate, TimeDelta};
use craft::quantity::{Units, show_mark};
use toml_edit::{DocumentMut, Formatted, Item, TableLike, Value};

/// Dates of a course file are those of years that anyone plans for.
const YEARS: std::ops::RangeInclusive<i32> = 1970..=2199;

/// The text of the same course from another first day on.
///
/// Every date in it moves by the same number of days. What was told on the day goes, with the
/// length that telling wrote down, which is worked out again; so do marks of what had been seen to,
/// and the weather, which was that of those days. The seed, the people, the kit counted and every
/// comment stay.
///
/// # Errors
/// The [`Fault`] of a text that is refused, or of a date that no course has.
pub fn again(text: &str, first: NaiveDate) -> Result<String, Fault> {
    let course = CourseFile::parse(text)?.course;
    let mut document = parsed(text)?;
    let was = course.days.first().map_or(first, |day| day.date);
    let by = first - was;
    let told = course.running.progress.len();
    for at in (0..told).rev() {
        take_out(&mut document, "progress", at);
    }
    if 0 < told {
        open_length(&mut document, course.units);
    }
    forget_marks(&mut document);
    forget_weather(&mut document);
    shift(document.as_table_mut(), by)?;
    checked(document, text)
}

/// The length that telling wrote down, in the words in which it does that; one that a person gave
/// stays.
fn open_length(document: &mut DocumentMut, units: Units) {
    let Some(wall) = document.get_mut("wall").and_then(Item::as_table_like_mut) else {
        return;
    };
    let by_telling = |item: Option<&Item>| {
        let text = item.and_then(Item::as_str).unwrap_or_default();
        quantity::length(text).is_ok_and(|length| show_mark(length, units) == text)
    };
    if by_telling(wall.get("length")) {
        put(wall, "length", "auto");
        return;
    }
    let line = wall.get("line").and_then(Item::as_array);
    let last = line.and_then(|line| {
        let rows = line.iter().filter_map(Value::as_inline_table);
        rows.filter_map(|row| row.get("straight")).last().cloned()
    });
    if wall.get("length").is_none() && by_telling(last.map(Item::Value).as_ref()) {
        put(wall, "length", "auto");
    }
}

/// Nothing has been seen to yet; that a list is kept stays.
fn forget_marks(document: &mut DocumentMut) {
    let ready = document.get_mut("ready").and_then(Item::as_table_like_mut);
    let done = ready.and_then(|ready| ready.get_mut("done"));
    if let Some(marks) = done.and_then(Item::as_array_mut) {
        marks.clear();
        marks.set_trailing("");
        marks.set_trailing_comma(false);
    }
}

fn forget_weather(document: &mut DocumentMut) {
    let forget = |day: &mut dyn TableLike| {
        day.remove("weather");
        day.remove("rain");
    };
    match document.get_mut("day") {
        Some(Item::ArrayOfTables(days)) => days.iter_mut().for_each(|day| forget(day)),
        Some(Item::Value(Value::Array(days))) => {
            let days = days.iter_mut().filter_map(Value::as_inline_table_mut);
            days.for_each(|day| forget(day));
        }
        _ => {}
    }
}

/// Every date in the tables below moves; the space and the comments round it stay.
fn shift(table: &mut dyn TableLike, by: TimeDelta) -> Result<(), Fault> {
    for (_, item) in table.iter_mut() {
        match item {
            Item::Table(inner) => shift(inner, by)?,
            Item::ArrayOfTables(rows) => {
                for row in rows.iter_mut() {
                    shift(row, by)?;
                }
            }
            Item::Value(value) => shift_value(value, by)?,
            Item::None => {}
        }
    }
    Ok(())
}

fn shift_value(value: &mut Value, by: TimeDelta) -> Result<(), Fault> {
    match value {
        Value::Array(values) => values.iter_mut().try_for_each(|it| shift_value(it, by)),
        Value::InlineTable(inner) => shift(inner, by),
        Value::Datetime(when) => shift_date(when, by),
        _ => Ok(()),
    }
}

fn shift_date(when: &mut Formatted<toml_edit::Datetime>, by: TimeDelta) -> Result<(), Fault> {
    let mut moved = *when.value();
    let Some(date) = moved.date.as_mut() else {
        return Ok(());
    };
    let old = NaiveDate::from_ymd_opt(date.year.into(), date.month.into(), date.day.into());
    let new = old
        .and_then(|old| old.checked_add_signed(by))
        .filter(|new| YEARS.contains(&new.year()))
        .ok_or_else(no_such_date)?;
    let narrow = |number: u32| u8::try_from(number).map_err(|_| no_such_date());
    date.year = u16::try_from(new.year()).map_err(|_| no_such_date())?;
    date.month = narrow(new.month())?;
    date.day = narrow(new.day())?;
    let decor = when.decor().clone();
    *when = Formatted::new(moved);
    *when.decor_mut() = decor;
    Ok(())
}

fn no_such_date() -> Fault {
    Fault {
        what: format!(
            "on these dates the course would fall outside the years {} to {}",
            YEARS.start(),
            YEARS.end()
        ),
        cure: "give a first day of this or the coming years, such as 2027-04-24".to_owned(),
        ..no_such("day.0.date")
    }
}

#[cfg(test)]
mod tests;
