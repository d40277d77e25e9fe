//! The bars of all frames: how long they must be, and which stock length does.

use super::FrameRow;
use crate::Error;
use crate::course::FramesGiven;
use crate::quantity::{Length, Mass, Read, metres};
use crate::tables::Bar;
use crate::wall::{Section, Side};

/// The bars of all frames.
#[derive(Debug, Clone, PartialEq)]
pub struct Bars {
    /// Two to a frame.
    pub count: usize,
    /// The shortest that would do for all of them.
    pub needed: Length,
    /// The shortest stock length that does; `None` if none does.
    pub chosen: Option<Length>,
    /// Nominal diameter.
    pub diameter: Length,
    /// All bars together, if a stock length does.
    pub mass: Option<Mass>,
}

/// Needed: `rise · sqrt(1 + 1/n²) + embedment + projection`, the largest over all frames.
pub(super) fn choose(
    section: &Section,
    rows: &[FrameRow],
    given: &FramesGiven,
    bars: &[Bar],
) -> Result<Bars, Error> {
    let bar = bars
        .iter()
        .find(|bar| bar.key == given.bar)
        .ok_or_else(|| Error::UnknownBar {
            given: given.bar.clone(),
            known: bars.iter().map(|bar| bar.key.clone()).collect(),
        })?;
    let needed = needed(section, rows, given);
    let chosen = given
        .stock_lengths
        .iter()
        .copied()
        .filter(|stock| needed.si() <= stock.si() + 1e-9)
        .min_by(|a, b| a.si().total_cmp(&b.si()));
    let count = 2 * rows.len();
    Ok(Bars {
        count,
        needed,
        chosen,
        diameter: bar.diameter,
        mass: chosen.map(|length| bar.mass * length * count as f64),
    })
}

fn needed(section: &Section, rows: &[FrameRow], given: &FramesGiven) -> Length {
    let along = |row: &FrameRow, side| row.rise(side) * section.batter(side).slope_factor();
    let longest = rows
        .iter()
        .flat_map(|row| Side::BOTH.map(|side| along(row, side).si()))
        .fold(0.0, f64::max);
    metres(longest) + given.embedment + given.projection
}
