//! The load list: which tool travels in which vehicle, on which run, and what goes in first.
//!
//! Masses alone are reckoned with. Whether it all has room, lies low and is tied down, whether
//! axles and the ball of the hook bear it, and who may drive it, is for the driver to see.

mod of_course;
mod packing;
#[cfg(test)]
mod tests;

pub use of_course::{holds, pieces};

use crate::quantity::{Mass, Read, kilograms};
use packing::{Placed, Way, in_runs};

/// Some pieces of one kind that have to travel.
#[derive(Debug, Clone, PartialEq)]
pub struct Piece {
    /// What it is.
    pub name: String,
    /// How many.
    pub count: usize,
    /// The mass of one.
    pub each: Mass,
    /// When it is first needed: 0 from the beginning, a greater number later.
    pub first_needed: usize,
    /// Without it the work must not begin: it travels with what is needed first.
    pub safety: bool,
}

/// What can be loaded: a van, or the trailer that goes with it.
#[derive(Debug, Clone, PartialEq)]
pub struct Hold {
    /// What it is called.
    pub name: String,
    /// The greatest mass it may carry.
    pub limit: Mass,
}

/// Everything that travels, run by run.
#[derive(Debug, Clone, PartialEq)]
pub struct Loads {
    /// The runs in order; what is needed first goes on the first.
    pub runs: Vec<Run>,
    /// What is heavier, piece by piece, than anything may carry.
    pub fits_nowhere: Vec<Line>,
    /// Fewer runs than this can't be, however the pieces are shared out.
    pub fewest: usize,
}

/// One run of all vehicles.
#[derive(Debug, Clone, PartialEq)]
pub struct Run {
    /// Every hold in the order given; one that has nothing to carry has no lines.
    pub holds: Vec<Loaded>,
}

/// A hold as it is loaded.
#[derive(Debug, Clone, PartialEq)]
pub struct Loaded {
    /// What it is called.
    pub name: String,
    /// The greatest mass it may carry.
    pub limit: Mass,
    /// What goes in, in that order: what is needed first goes in last.
    pub lines: Vec<Line>,
}

/// Some pieces of one kind in one place.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// What it is.
    pub name: String,
    /// How many.
    pub count: usize,
    /// The mass of one.
    pub each: Mass,
}

impl Line {
    fn of(piece: &Piece, count: usize) -> Self {
        Self {
            name: piece.name.clone(),
            count,
            each: piece.each,
        }
    }

    /// All of them together.
    pub fn mass(&self) -> Mass {
        self.each * self.count as f64
    }
}

impl Loaded {
    /// All that is in it.
    pub fn mass(&self) -> Mass {
        total(&self.lines)
    }

    /// Its mass as a share of the limit; nothing where nothing may be carried.
    pub fn share(&self) -> f64 {
        if self.limit.si() <= 0.0 {
            return 0.0;
        }
        self.mass().si() / self.limit.si()
    }
}

impl Run {
    /// All that travels on it.
    pub fn mass(&self) -> Mass {
        let masses = self.holds.iter().map(Loaded::mass);
        masses.fold(kilograms(0.0), |sum, mass| sum + mass)
    }
}

fn total(lines: &[Line]) -> Mass {
    lines
        .iter()
        .fold(kilograms(0.0), |sum, line| sum + line.mass())
}

impl Loads {
    /// Shares pieces out over the holds, in as few runs as it finds.
    ///
    /// For each number of runs from the fewest that could be, ways of loading are tried from
    /// the handiest to the tightest; the first that has room is taken: lines kept together and
    /// in order of need, then lines split, then what is needed later let into gaps of earlier
    /// runs, and at last the heaviest pieces placed first. Whether fewer runs would do after
    /// all is a bin packing question that is not searched to its end; [`Loads::fewest`] says
    /// how far from the bound the answer is.
    pub fn of(pieces: &[Piece], holds: &[Hold]) -> Self {
        let most = holds.iter().map(|hold| hold.limit.si());
        let most = most.fold(f64::NEG_INFINITY, f64::max);
        let (loadable, too_heavy): (Vec<&Piece>, Vec<&Piece>) = pieces
            .iter()
            .filter(|piece| 0 < piece.count)
            .partition(|piece| piece.each.si() <= most);
        let sorted = by_need(loadable);
        let fewest = packing::fewest_runs(&sorted, holds);
        let placed = packed(&sorted, holds, fewest);
        let count = placed.iter().map(|it| it.run + 1).max().unwrap_or_default();
        Self {
            runs: (0..count)
                .map(|run| Run::of(run, &placed, &sorted, holds))
                .collect(),
            fits_nowhere: too_heavy
                .into_iter()
                .map(|piece| Line::of(piece, piece.count))
                .collect(),
            fewest,
        }
    }
}

/// From what is needed first to what is needed last; of what is needed together, what nobody
/// may work without before the rest, and then the lighter before the heavier.
fn by_need(mut pieces: Vec<&Piece>) -> Vec<&Piece> {
    pieces.sort_by(|a, b| {
        need(a)
            .cmp(&need(b))
            .then(b.safety.cmp(&a.safety))
            .then(a.each.si().total_cmp(&b.each.si()))
    });
    pieces
}

/// When a piece is needed; what nobody may work without is needed from the beginning.
fn need(piece: &Piece) -> usize {
    if piece.safety { 0 } else { piece.first_needed }
}

fn packed(sorted: &[&Piece], holds: &[Hold], fewest: usize) -> Vec<Placed> {
    let mut runs = fewest;
    loop {
        let found = Way::ALL
            .iter()
            .find_map(|way| in_runs(sorted, holds, runs, *way));
        match found {
            Some(placed) => return placed,
            // Each piece alone on a run has room, so this comes to an end.
            None => runs += 1,
        }
    }
}

impl Run {
    fn of(run: usize, placed: &[Placed], sorted: &[&Piece], holds: &[Hold]) -> Self {
        let lines = |at: usize| {
            // The pieces are in order of need, and what is needed first goes in last.
            let here = |piece: usize| {
                placed
                    .iter()
                    .filter(|it| (it.run, it.hold, it.piece) == (run, at, piece))
                    .map(|it| it.count)
                    .sum::<usize>()
            };
            (0..sorted.len())
                .rev()
                .map(|piece| Line::of(sorted[piece], here(piece)))
                .filter(|line| 0 < line.count)
                .collect()
        };
        Self {
            holds: holds
                .iter()
                .enumerate()
                .map(|(at, hold)| Loaded {
                    name: hold.name.clone(),
                    limit: hold.limit,
                    lines: lines(at),
                })
                .collect(),
        }
    }
}
