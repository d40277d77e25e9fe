//! Stretches of the line and stations of the survey, added and dropped.

use super::{checked, no_such, parsed};
use crate::Fault;
use crate::course::CourseFile;
use craft::course::Course;
use craft::quantity::{Length, Units, metres, show_mark};
use toml_edit::{Array, DocumentMut, InlineTable, Item, Value};

/// A new stretch, its radius, and the way to the next station (common practice, no source).
const STRETCH_M: f64 = 3.0;
const STRETCH_FT: f64 = 10.0;
const RADIUS_M: f64 = 6.0;
const RADIUS_FT: f64 = 20.0;

/// The text with one more stretch at the end of its line. A wall that had no line gets its
/// length as the first straight; a stated length gives way to the sum of the stretches.
///
/// # Errors
/// The [`Fault`] that the changed text would have.
pub fn add_stretch(text: &str, bent: bool) -> Result<String, Fault> {
    let course = CourseFile::parse(text)?.course;
    let mut document = parsed(text)?;
    let units = course.units;
    let long = either(units, STRETCH_M, STRETCH_FT);
    if course.wall.line.is_empty() && (bent || course.wall.length.is_some()) {
        // A line needs a straight that can be stretched, and begins with the wall there was.
        let length = course.wall.length;
        let first = length.map_or_else(|| long.clone(), |length| show_mark(length, units));
        push(list(&mut document, "line")?, &[("straight", first)]);
    }
    if course.wall.length.is_some()
        && let Some(wall) = document.get_mut("wall").and_then(Item::as_table_like_mut)
    {
        wall.remove("length");
    }
    let line = list(&mut document, "line")?;
    if bent {
        let radius = either(units, RADIUS_M, RADIUS_FT);
        let turn = "left".to_owned();
        push(line, &[("arc", long), ("radius", radius), ("turn", turn)]);
    } else {
        push(line, &[("straight", long)]);
    }
    checked(document, text)
}

/// The text with one more surveyed station: beyond the last, at its level.
///
/// # Errors
/// The [`Fault`] that the changed text would have.
pub fn add_survey(text: &str) -> Result<String, Fault> {
    let course = CourseFile::parse(text)?.course;
    let mut document = parsed(text)?;
    let (station, level) = next_station(&course);
    let show = |length| show_mark(length, course.units);
    let row = [("station", show(station)), ("level", show(level))];
    push(list(&mut document, "ground")?, &row);
    checked(document, text)
}

/// The text without one row of `line` or `ground`, counted from 0; an empty list is dropped.
///
/// # Errors
/// The [`Fault`] that the changed text would have.
pub fn remove_row(text: &str, key: &str, at: usize) -> Result<String, Fault> {
    let mut document = parsed(text)?;
    let rows = list(&mut document, key)?;
    if at < rows.len() {
        rows.remove(at);
    }
    if rows.is_empty()
        && let Some(wall) = document.get_mut("wall").and_then(Item::as_table_like_mut)
    {
        wall.remove(key);
    }
    checked(document, text)
}

fn next_station(course: &Course) -> (Length, Length) {
    let step = match course.units {
        Units::Metric => metres(STRETCH_M),
        Units::Imperial => metres(STRETCH_FT * craft::quantity::FOOT_M),
    };
    course
        .wall
        .ground
        .last()
        .map_or((metres(0.0), metres(0.0)), |last| {
            (last.station + step, last.level)
        })
}

fn either(units: Units, in_metres: f64, in_feet: f64) -> String {
    match units {
        Units::Metric => format!("{in_metres} m"),
        Units::Imperial => format!("{in_feet} ft"),
    }
}

fn list<'d>(document: &'d mut DocumentMut, key: &str) -> Result<&'d mut Array, Fault> {
    if !["line", "ground"].contains(&key) {
        return Err(no_such(key));
    }
    document
        .get_mut("wall")
        .and_then(Item::as_table_like_mut)
        .map(|wall| {
            wall.entry(key)
                .or_insert(Item::Value(Value::Array(Array::new())))
        })
        .and_then(Item::as_array_mut)
        .ok_or_else(|| no_such(key))
}

/// Adds a row, written as the last one is, on a line of its own or not.
fn push(rows: &mut Array, keys: &[(&str, String)]) {
    let mut table = InlineTable::new();
    for (key, value) in keys {
        table.insert(*key, value.as_str().into());
    }
    let mut row = Value::InlineTable(table);
    if let Some(last) = rows.len().checked_sub(1).and_then(|last| rows.get(last)) {
        *row.decor_mut() = last.decor().clone();
    }
    rows.push_formatted(row);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Library;

    fn wall(text: &str) -> craft::course::WallGiven {
        CourseFile::parse(text).expect("sound").course.wall
    }

    #[test]
    fn a_line_begins_with_the_wall_there_was() {
        let text = super::super::set(Library::example(false), "wall.length", "9 m");
        let bent = add_stretch(&text.expect("a length"), true).expect("a bend");
        let line = wall(&bent).line;
        assert_eq!(line.len(), 2);
        assert_eq!(line[0].length, metres(9.0));
        assert!(line[1].bend.is_some());
        assert_eq!(wall(&bent).length, Some(metres(12.0)));
        let less = remove_row(&bent, "line", 0).expect("a stretch less");
        assert_eq!(wall(&less).line.len(), 1);
        let none = remove_row(&less, "line", 0).expect("no line");
        assert!(wall(&none).line.is_empty());
    }

    #[test]
    fn an_auto_length_stays_auto() {
        let text = Library::example(true);
        let straight = add_stretch(text, false).expect("a straight");
        assert_eq!(wall(&straight).length, None);
        assert!(straight.contains("line = [{ straight = \"10 ft\" }]"));
        let bent = add_stretch(text, true).expect("a bend");
        assert_eq!(wall(&bent).line.len(), 2);
    }

    #[test]
    fn stations_follow_one_another() {
        let text = Library::example(false);
        let two = add_survey(&add_survey(text).expect("one")).expect("two");
        let ground = wall(&two).ground;
        assert_eq!(ground[0].station, metres(0.0));
        assert_eq!(ground[1].station, metres(3.0));
        let back = remove_row(&two, "ground", 1).and_then(|one| remove_row(&one, "ground", 0));
        assert_eq!(back.expect("none left"), text);
        assert!(remove_row(text, "ends", 0).is_err());
    }
}
