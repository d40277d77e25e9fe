//! The line of the wall and its length.

use crate::Fault;
use crate::course::node::{Entry, Section};
use craft::quantity::{Length, Units, show_length};
use craft::wall::{Bend, Side, Stretch, total};

/// How far a stated length and the sum of the stretches may differ: a hair.
const HAIR_M: f64 = 1e-6;

/// The stretches of a given line; nothing if no line is given.
pub(super) fn line(section: &Section<'_>) -> Result<Vec<Stretch>, Fault> {
    section.tables("line")?.iter().map(stretch).collect()
}

fn stretch(section: &Section<'_>) -> Result<Stretch, Fault> {
    section.only(&["straight", "arc", "radius", "turn"])?;
    let Some(arc) = section.get("arc") else {
        if let Some(entry) = section.get("radius").or_else(|| section.get("turn")) {
            return Err(entry.fault(
                "not-an-arc",
                "only an arc has this",
                "write { arc = \"3 m\", radius = \"6 m\", turn = \"left\" }, or leave it out",
            ));
        }
        let straight = section.need(
            "straight",
            "give { straight = \"4 m\" } or { arc = \"3 m\", radius = \"6 m\", turn = \"left\" }",
        )?;
        return Ok(Stretch {
            length: straight.length(0.1, 400.0)?,
            bend: None,
        });
    };
    if let Some(straight) = section.get("straight") {
        return Err(straight.fault(
            "two-stretches",
            "one stretch is either straight or an arc",
            "make two stretches of it: { ... }, { ... }",
        ));
    }
    let radius = section.need(
        "radius",
        "give the radius of the centre line: radius = \"6 m\"",
    )?;
    let turn = section.need(
        "turn",
        "say which way it turns: turn = \"left\" or \"right\"",
    )?;
    Ok(Stretch {
        length: arc.length(0.1, 400.0)?,
        bend: Some(Bend {
            radius: radius.length(0.01, 10_000.0)?,
            turn: turn.word(&[("left", Side::Left), ("right", Side::Right)])?,
        }),
    })
}

/// A length of a wall that is written down.
pub(super) fn stated(entry: &Entry<'_>) -> Result<Length, Fault> {
    entry.length(0.25, 400.0)
}

/// The given length; a line's length is the sum of its stretches, and `auto` stretches its
/// last straight.
pub(super) fn length(section: &Section<'_>, line: &[Stretch]) -> Result<Option<Length>, Fault> {
    let summed = (!line.is_empty()).then(|| total(line));
    let Some(entry) = section.get("length") else {
        return Ok(summed);
    };
    let is_word = |word: &str| word.chars().all(char::is_alphabetic);
    if entry.as_word().is_some_and(is_word) {
        return entry.word(&[("auto", None)]);
    }
    let length = stated(&entry)?;
    match summed {
        Some(sum) if HAIR_M < (length - sum).abs().value => Err(entry.fault(
            "line-and-length",
            &format!(
                "the stretches of the line add up to {}",
                show_length(sum, Units::Metric)
            ),
            "leave length out, make the two agree, or write \"auto\" to stretch the last straight",
        )),
        _ => Ok(Some(length)),
    }
}
