//! What goes with the frames of a finished setting-out: boards, strings, gaps in the footing.

use super::board::{Board, Trench};
use super::strings::{self, Strings};
use super::{Bay, Frames, spacing_for};
use crate::course::{FramesGiven, WallGiven};
use crate::quantity::{Length, millimetres};
use crate::tables::FrameTable;
use crate::wall::{Bend, Side, Wall};

/// What goes with the frames.
#[derive(Debug, Clone, PartialEq)]
pub struct Fittings {
    /// The board of each bar frame.
    pub board: Option<Board>,
    /// What the bars do in a dug footing, if there is one.
    pub trench: Option<Trench>,
    /// The string to bring.
    pub string: Strings,
    /// The arcs of the line.
    pub curves: Vec<Curve>,
}

/// One arc, and how the string keeps to it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Curve {
    /// Where it begins.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
    /// How it bends.
    pub bend: Bend,
    /// The longest of its bays, along the centre line.
    pub bay: Length,
    /// The most a straight string is off the left and off the right face.
    pub bow: [Length; 2],
    /// The outer face's bow is more than the instructor allows.
    pub too_far: bool,
    /// The longest bay that keeps the outer face's bow within the tolerance.
    pub spacing_for_tolerance: Length,
}

impl Fittings {
    /// What goes with these frames.
    pub fn of(
        given: &WallGiven,
        wall: &Wall,
        frames: &Frames,
        how: &FramesGiven,
        table: &FrameTable,
    ) -> Self {
        let section = &wall.section;
        let bars = frames.bars.as_ref();
        Self {
            board: bars.map(|bars| Board::of(section, bars.diameter, &table.board)),
            trench: bars.zip(given.footing).map(|(bars, footing)| {
                Trench::of(footing, section, (bars.count, bars.diameter), how, table)
            }),
            string: strings::strings(wall, &frames.bays, &frames.strings, &table.string),
            curves: curves(wall, frames, how.tolerance),
        }
    }
}

fn curves(wall: &Wall, frames: &Frames, tolerance: Length) -> Vec<Curve> {
    wall.line
        .spans()
        .filter_map(|(from, to, bend)| Some((from, to, bend?)))
        .map(|(from, to, bend)| {
            let bays = || {
                let within = |bay: &&Bay| from <= bay.from && bay.to <= to;
                frames.bays.iter().filter(within)
            };
            let most = |of: &dyn Fn(&Bay) -> Length| {
                bays().map(of).fold(
                    Length::default(),
                    |most, it| if most < it { it } else { most },
                )
            };
            let outer = bend.turn.other();
            let bow = [most(&|bay| bay.bow[0]), most(&|bay| bay.bow[1])];
            let widest = frames
                .rows
                .iter()
                .filter(|row| from <= row.station && row.station <= to)
                .map(|row| row.offset(outer))
                .fold(
                    Length::default(),
                    |most, it| if most < it { it } else { most },
                );
            let at_outer = match outer {
                Side::Left => bow[0],
                Side::Right => bow[1],
            };
            Curve {
                from,
                to,
                bend,
                bay: most(&|bay| bay.length),
                bow,
                // Frames are set to the millimetre.
                too_far: tolerance + millimetres(1.0) < at_outer,
                spacing_for_tolerance: spacing_for(bend, outer, widest, tolerance),
            }
        })
        .collect()
}
