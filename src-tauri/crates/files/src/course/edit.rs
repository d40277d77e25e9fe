//! Editing a course file as text: one value changes, comments and spelling stay.

mod absences;
mod again;
mod begun;
mod breaks;
mod kit;
mod linked;
mod rain;
mod ready;
mod roster;
mod rows;
mod running;
mod tables;
mod vehicles;

pub use absences::{add_absence, remove_absence};
pub use again::again;
pub(super) use begun::{DayHours, begun};
pub use breaks::{add_break, remove_break};
pub(crate) use kit::{change_in, take_back_in};
pub use kit::{change_rule, take_back_rule};
pub use rain::{add_rain, remove_rain};
pub use ready::mark;
pub(crate) use roster::names_in;
pub use roster::take_in_roster;
pub use rows::{add_stretch, add_survey, remove_row};
pub use running::{tell, untell, unwish, wish};
pub use vehicles::{add_vehicle, remove_vehicle};

use super::CourseFile;
use super::node::AS_A_TIME;
use crate::Fault;
use crate::quantity::with_points;
use craft::quantity::Units;
use toml_edit::{ArrayOfTables, DocumentMut, Formatted, Item, Table, TableLike, Value};

/// Keys whose value is a list, also where the file does not hold them yet.
const LISTS: [&str; 9] = [
    "wall.through_rows",
    "frames.stock_lengths",
    "frames.lumber_lengths",
    "stone.closed",
    "timetable.leave_out",
    "timetable.teach",
    "pace.beforehand",
    "pace.without",
    "worksheets.leave_out",
];

/// The same of each student.
const STUDENT_LISTS: [&str; 2] = [".with", ".apart"];

/// The text with one key set to what a person typed; an empty text removes the key.
///
/// Keys are written as `wall.height`, `day.0.start`, `wall.footing.depth`. The kind of the
/// value that stands there decides how the typed text is taken; where none stands it is
/// taken as a number, truth, date or time if it reads as one, else as text.
///
/// A comma as decimal sign is written as the point that the file has, where the file would refuse
/// it otherwise.
///
/// # Errors
/// The [`Fault`] that the changed text would have, so that the caller keeps the old one.
pub fn set(text: &str, key: &str, typed: &str) -> Result<String, Fault> {
    set_as_typed(text, key, typed).or_else(|refused| {
        let with_points = with_points(typed).ok_or_else(|| refused.clone())?;
        set_as_typed(text, key, &with_points).map_err(|_| refused)
    })
}

fn set_as_typed(text: &str, key: &str, typed: &str) -> Result<String, Fault> {
    let mut document = document(text)?;
    let steps = steps(key);
    let (last, outer) = steps.split_last().unwrap_or((&"", &[]));
    let table = descend(document.as_table_mut(), outer).ok_or_else(|| no_such(key))?;
    let typed = typed.trim();
    if is_list(key) && !typed.is_empty() && !table.contains_key(last) {
        table.insert(last, Item::Value(list_of(typed)));
    } else {
        put(table, last, typed);
    }
    linked::follow(&mut document, key, typed, || units(text));
    checked(document, text).map_err(|fault| match fault {
        // Who types a time does not see how the file has it.
        fault if fault.key == key && fault.cure == AS_A_TIME => Fault {
            what: format!("{key}: this is not a time of day"),
            cure: "write it as 13:30 or as 1:30 pm".to_owned(),
            ..fault
        },
        fault => fault,
    })
}

/// The units of a course; metric where it can't be read, of which [`checked`] tells.
fn units(text: &str) -> Units {
    CourseFile::parse(text).map_or(Units::Metric, |it| it.course.units)
}

/// The text with one more course day: like the last, a day later.
///
/// # Errors
/// The [`Fault`] that the changed text would have.
pub fn add_day(text: &str) -> Result<String, Fault> {
    let file = CourseFile::parse(text)?;
    let mut document = parsed(text)?;
    let days = days(&mut document)?;
    let (Some(last), Some(day)) = (days.iter().last(), file.course.days.last()) else {
        return Err(no_such("day"));
    };
    let mut next = last.clone();
    let date = day.date.succ_opt().unwrap_or(day.date);
    put(&mut next, "date", &date.to_string());
    next.set_position(None);
    days.push(next);
    checked(document, text)
}

/// The text without its last course day; the only day stays.
///
/// # Errors
/// The [`Fault`] that the changed text would have.
pub fn remove_day(text: &str) -> Result<String, Fault> {
    let mut document = parsed(text)?;
    let days = days(&mut document)?;
    if 1 < days.len() {
        days.remove(days.len() - 1);
    }
    checked(document, text)
}

/// Whether the value of a key is a list.
fn is_list(key: &str) -> bool {
    let of_student =
        key.starts_with("student.") && STUDENT_LISTS.iter().any(|it| key.ends_with(it));
    of_student || LISTS.contains(&key)
}

/// The keys on the way to a value. A tool is a key that a person chose, full stops and all.
fn steps(key: &str) -> Vec<&str> {
    match key.strip_prefix("kit.on_hand.") {
        Some(tool) => vec!["kit", "on_hand", tool],
        None => key.split('.').collect(),
    }
}

fn parsed(text: &str) -> Result<DocumentMut, Fault> {
    // What can't be read can't be edited either: the reader says why.
    CourseFile::parse(text)?;
    document(text)
}

fn document(text: &str) -> Result<DocumentMut, Fault> {
    text.parse().map_err(|_| no_such(""))
}

/// The changed text, with the line ends of the text it was.
fn checked(document: DocumentMut, before: &str) -> Result<String, Fault> {
    let text = with_ends_of(before, document.to_string());
    CourseFile::parse(&text).map(|_| text)
}

/// The TOML library ends every line with a bare line feed; a file that was written elsewhere may
/// end most of them with a carriage return as well.
pub(crate) fn with_ends_of(before: &str, text: String) -> String {
    let (returns, lines) = (before.matches("\r\n").count(), before.matches('\n').count());
    if lines < 2 * returns {
        text.replace("\r\n", "\n").replace('\n', "\r\n")
    } else {
        text
    }
}

fn no_such(key: &str) -> Fault {
    Fault {
        code: "unknown-key",
        key: key.to_owned(),
        at: 0,
        what: format!("there is no place for {key} in this file"),
        cure: "change it in the file itself".to_owned(),
    }
}

fn days(document: &mut DocumentMut) -> Result<&mut ArrayOfTables, Fault> {
    document
        .get_mut("day")
        .and_then(Item::as_array_of_tables_mut)
        .ok_or_else(|| no_such("day"))
}

/// The table a path leads to; tables that are missing on the way are made.
fn descend<'t>(table: &'t mut dyn TableLike, path: &[&str]) -> Option<&'t mut dyn TableLike> {
    let [step, rest @ ..] = path else {
        return Some(table);
    };
    if let Some((number, rest)) = rest.split_first()
        && let Ok(number) = number.parse::<usize>()
    {
        let one = element(table.get_mut(step)?, number)?;
        return descend(one, rest);
    }
    if !table.contains_key(step) {
        table.insert(step, Item::Table(Table::new()));
    }
    descend(table.get_mut(step)?.as_table_like_mut()?, rest)
}

fn element(item: &mut Item, number: usize) -> Option<&mut dyn TableLike> {
    match item {
        Item::ArrayOfTables(tables) => tables.get_mut(number).map(|it| it as &mut dyn TableLike),
        Item::Value(Value::Array(array)) => array
            .get_mut(number)
            .and_then(Value::as_inline_table_mut)
            .map(|it| it as &mut dyn TableLike),
        _ => None,
    }
}

/// Keys of times of day.
const TIMES: [&str; 6] = ["start", "finish", "time", "at", "from", "until"];

/// A time of day, however it was typed, as the file has it.
fn time_value(typed: &str) -> Option<Value> {
    let time = super::clock::time_of_day(typed)?;
    time.format("%H:%M:%S").to_string().parse().ok()
}

/// Puts a value in place of the old one, with the space and the comment round it kept.
fn put(table: &mut dyn TableLike, key: &str, typed: &str) {
    if typed.is_empty() {
        table.remove(key);
        return;
    }
    let old = table.get(key).and_then(Item::as_value).cloned();
    let of_day = TIMES.contains(&key).then(|| time_value(typed)).flatten();
    let mut value = of_day.unwrap_or_else(|| value_of(typed, old.as_ref()));
    if let Some(old) = &old {
        *value.decor_mut() = old.decor().clone();
        // A list that was written as a list of quantities is replaced as a whole.
    }
    match table.get_mut(key) {
        Some(item) => *item = Item::Value(value),
        None => {
            table.insert(key, Item::Value(value));
        }
    }
}

fn value_of(typed: &str, old: Option<&Value>) -> Value {
    let as_text = || text_value(typed);
    match old {
        Some(Value::String(_)) => as_text(),
        Some(Value::Array(_)) => list_of(typed),
        _ => plain_value(typed).unwrap_or_else(as_text),
    }
}

/// `0.55 m, 0.9 m` as a list of texts; dates stay dates.
fn list_of(typed: &str) -> Value {
    let texts = typed
        .split([',', ';'])
        .map(str::trim)
        .filter(|text| !text.is_empty());
    let one = |text: &str| match plain_value(text) {
        Some(date @ Value::Datetime(_)) => date,
        _ => text_value(text),
    };
    Value::Array(texts.map(one).collect())
}

/// A number, truth, date or time written without quotes; times may leave out the seconds.
fn plain_value(typed: &str) -> Option<Value> {
    let with_seconds = format!("{typed}:00");
    let is_time = typed.len() == 5 && typed.as_bytes().get(2) == Some(&b':');
    let value: Value = if is_time { &with_seconds } else { typed }.parse().ok()?;
    let plain = matches!(
        value,
        Value::Integer(_) | Value::Float(_) | Value::Boolean(_) | Value::Datetime(_)
    );
    plain.then_some(value)
}

/// A text in double quotes on one line, as a person would write it: `"3'6\""`.
fn text_value(text: &str) -> Value {
    let mut quoted = String::from('"');
    for sign in text.chars() {
        match sign {
            '"' => quoted.push_str("\\\""),
            '\\' => quoted.push_str("\\\\"),
            sign if sign.is_control() => quoted.push_str(&format!("\\u{:04x}", u32::from(sign))),
            sign => quoted.push(sign),
        }
    }
    quoted.push('"');
    quoted
        .parse()
        .unwrap_or_else(|_| Value::String(Formatted::new(text.to_owned())))
}

#[cfg(test)]
mod tests {
    use super::set;
    use crate::Library;

    #[test]
    fn a_time_by_the_clock_of_twelve_hours_is_kept_as_the_file_has_it() {
        let text = Library::example(false);
        for (key, typed, written) in [
            ("day.0.finish", "4:45 pm", "finish = 16:45:00"),
            ("day.0.breaks.1.start", "1:05 p.m.", "start = 13:05:00"),
            ("day.0.start", "8.30", "start = 08:30:00"),
        ] {
            let edited = set(text, key, typed).unwrap_or_else(|wrong| panic!("{key}: {wrong:?}"));
            assert!(edited.contains(written), "{key}: {edited}");
        }
        let refused = set(text, "day.0.finish", "half past four").expect_err("no time");
        assert_eq!(refused.cure, "write it as 13:30 or as 1:30 pm");
        let ends = set(text, "wall.ends.start", "raked").expect("no time of day");
        assert!(ends.contains("start = \"raked\""));
    }

    #[test]
    fn a_decimal_comma_is_written_as_a_point_and_a_text_keeps_its_commas() {
        let text = Library::example(false);
        for (key, typed, written) in [
            ("wall.height", "1,07 m", "height = \"1.07 m\""),
            ("wall.batter", "6,5", "batter = 6.5"),
            (
                "wall.through_rows",
                "0,5 m, 0,8 m",
                "through_rows = [\"0.5 m\", \"0.8 m\"]",
            ),
            ("title", "Walls, 1,5 days", "title = \"Walls, 1,5 days\""),
        ] {
            let edited = set(text, key, typed).unwrap_or_else(|wrong| panic!("{key}: {wrong:?}"));
            assert!(edited.contains(written), "{key}: {edited}");
        }
        for pasted in [
            "x".repeat(10_000),
            "\u{1F9F1} \u{58C1} \"quoted\" \\ \u{7}".to_owned(),
        ] {
            let edited = set(text, "title", &pasted).expect("any text is a title");
            let read = crate::course::values(&edited);
            assert_eq!(read.get("title"), Some(&pasted));
            assert!(set(text, "wall.height", &pasted).is_err());
        }
        let refused = set(text, "wall.height", "1,250 m").expect_err("it may be 1 m or 1250 m");
        assert!(refused.what.contains("1,250 m"), "{}", refused.what);
    }
}
