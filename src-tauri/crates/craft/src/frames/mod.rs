//! Setting out: where frames stand, the marks of each, bars, boards, strings and moves.
//!
//! `stations`: where frames stand; `bays`: what lies between two of them; `bars` and `board`:
//! what a frame is made of, and the trench it passes; `strings`: heights, lengths and sag;
//! `leapfrog`: the order of moves where frames are short; `fittings`: what goes with it all;
//! `gauge`: the batter gauge.

mod bars;
mod bays;
mod board;
mod fittings;
mod gauge;
mod leapfrog;
mod stations;
mod strings;

pub use bars::{BarMarks, Bars};
pub use bays::{Bay, bow, spacing_for};
pub use board::{Board, Trench, corner_diagonals};
pub use fittings::{Curve, Fittings};
pub use gauge::{Gauge, usual_plumb_edge};
pub use leapfrog::{LEAST_IN_USE, Leapfrog, Move};
pub use stations::FrameRow;
pub use strings::{StringHeight, Strings, sag};

use crate::Error;
use crate::course::{End, FrameKind, FramesGiven, WallGiven};
use crate::quantity::{Length, metres};
use crate::tables::Bar;
use crate::wall::{Side, Wall};

/// How many frames a wall takes as it stands.
pub fn count(wall: &Wall, frames: &FramesGiven) -> usize {
    let stations = stations::stations(wall, frames).len();
    if wall.is_ring() {
        stations - 1
    } else {
        stations
    }
}

/// The whole setting-out.
#[derive(Debug, Clone, PartialEq)]
pub struct Frames {
    /// One row per frame, in order of station.
    pub rows: Vec<FrameRow>,
    /// What lies between neighbours, in order; the last bay of a ring comes back to station 0.
    pub bays: Vec<Bay>,
    /// Sets to bring.
    pub sets: usize,
    /// Frames that are missing, if they have been counted.
    pub short: Option<usize>,
    /// End profiles, one per head.
    pub end_profiles: usize,
    /// The bars; nothing where the frames are of timber.
    pub bars: Option<Bars>,
    /// The order of moves, when fewer frames are in stock than stations.
    pub moves: Vec<Move>,
    /// String heights from the ground up.
    pub strings: Vec<StringHeight>,
}

impl Frames {
    /// The setting-out of a wall as it stands.
    ///
    /// # Errors
    /// [`Error::UnknownBar`] if the table has no such bar.
    pub fn set_out(
        given: &WallGiven,
        wall: &Wall,
        frames: &FramesGiven,
        bars: &[Bar],
    ) -> Result<Self, Error> {
        let stations = stations::stations(wall, frames);
        let rows = stations::rows(wall, &stations);
        let bays = bays::bays(wall, &stations, &rows);
        let in_stock = frames.in_stock.map(|count| count as usize);
        let ends = if wall.is_ring() { &[][..] } else { &given.ends };
        Ok(Self {
            sets: rows.len().div_ceil((frames.set_size as usize).max(1)),
            short: in_stock.map(|have| rows.len().saturating_sub(have)),
            end_profiles: ends.iter().filter(|end| **end == End::Head).count(),
            bars: match frames.kind {
                FrameKind::Bar => Some(bars::choose(&wall.section, &rows, frames, bars)?),
                FrameKind::Timber => None,
            },
            moves: in_stock.map_or_else(Vec::new, |have| leapfrog::moves(&rows, have)),
            strings: strings::heights(wall, &given.through_rows),
            rows,
            bays,
        })
    }

    /// The longest distance between neighbours, along the centre line.
    pub fn bay(&self) -> Length {
        self.bays.iter().fold(metres(0.0), |longest, bay| {
            if longest < bay.length {
                bay.length
            } else {
                longest
            }
        })
    }

    /// The bays that the work is shared out to and told by: between two frames, one at least.
    pub fn bays_to_build(&self) -> usize {
        self.rows.len().saturating_sub(1).max(1)
    }

    /// The greatest rise of all frames at one side.
    pub fn highest(&self, side: Side) -> Length {
        self.rows.iter().fold(metres(0.0), |highest, row| {
            let rise = row.rise(side);
            if highest < rise { rise } else { highest }
        })
    }
}
