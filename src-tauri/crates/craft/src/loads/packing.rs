//! Pieces shared out over holds and runs: how it is tried, and the fewest runs there can be.

use super::{Hold, Piece, need};
use crate::quantity::{Read, whole_number};

/// So many of a piece in a hold on a run; all three are counted from 0.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Placed {
    pub(super) piece: usize,
    pub(super) run: usize,
    pub(super) hold: usize,
    pub(super) count: usize,
}

/// A way of loading, from the handiest to the one that wastes least room.
#[derive(Debug, Clone, Copy)]
pub(super) struct Way {
    /// Pieces of a line stay together where some run has room for all of them.
    together: bool,
    /// Nothing needed later travels on an earlier run than something needed before it.
    in_turn: bool,
    /// The heaviest pieces are placed first, whenever they are needed.
    heaviest_first: bool,
}

impl Way {
    pub(super) const ALL: [Self; 5] = [
        Self::new(true, true, false),
        Self::new(false, true, false),
        Self::new(true, false, false),
        Self::new(false, false, false),
        Self::new(false, false, true),
    ];

    const fn new(together: bool, in_turn: bool, heaviest_first: bool) -> Self {
        Self {
            together,
            in_turn,
            heaviest_first,
        }
    }
}

/// The pieces in at most so many runs, loaded one way; nothing if they have no room so.
pub(super) fn in_runs(
    pieces: &[&Piece],
    holds: &[Hold],
    runs: usize,
    way: Way,
) -> Option<Vec<Placed>> {
    let limits: Vec<f64> = holds.iter().map(|hold| hold.limit.si()).collect();
    let mut filling = Filling {
        pieces,
        rooms: vec![limits; runs],
        placed: Vec::new(),
    };
    let mut order: Vec<usize> = (0..pieces.len()).collect();
    if way.heaviest_first {
        order.sort_by(|a, b| pieces[*b].each.si().total_cmp(&pieces[*a].each.si()));
    }
    for piece in order {
        filling.place(piece, way)?;
    }
    let mut placed = filling.placed;
    if way.heaviest_first {
        early_runs_first(&mut placed, pieces, runs);
    }
    Some(placed)
}

/// Runs while they are loaded.
struct Filling<'a> {
    pieces: &'a [&'a Piece],
    /// What is left of the limits, in kilograms, run by run and hold by hold.
    rooms: Vec<Vec<f64>>,
    placed: Vec<Placed>,
}

impl Filling<'_> {
    /// Gives every piece of a line its place; nothing if there is no room for all.
    fn place(&mut self, piece: usize, way: Way) -> Option<()> {
        let (each, count) = (self.pieces[piece].each.si(), self.pieces[piece].count);
        let from = if way.in_turn { self.turn_of(piece) } else { 0 };
        let runs = from..self.rooms.len();
        let takes_all = |run: &usize| {
            let places = self.rooms[*run].iter().map(|room| fit(*room, each));
            count <= places.fold(0, usize::saturating_add)
        };
        let whole = runs.clone().find(takes_all).filter(|_| way.together);
        let runs = whole.map_or(runs, |run| run..run + 1);
        let mut left = count;
        for run in runs {
            for (hold, count) in shared(&self.rooms[run], each, left) {
                self.rooms[run][hold] -= each * count as f64;
                left -= count;
                self.placed.push(Placed {
                    piece,
                    run,
                    hold,
                    count,
                });
            }
        }
        (left == 0).then_some(())
    }

    /// The first run on which nothing is overtaken that is needed before it.
    fn turn_of(&self, piece: usize) -> usize {
        let needed = need(self.pieces[piece]);
        let before = |it: &&Placed| need(self.pieces[it.piece]) < needed;
        let runs = self.placed.iter().filter(before).map(|it| it.run);
        runs.max().unwrap_or_default()
    }
}

/// Runs counted anew by how early their pieces are needed, on the average.
fn early_runs_first(placed: &mut [Placed], pieces: &[&Piece], runs: usize) {
    let early = |run: usize| {
        let here = placed.iter().filter(|it| it.run == run);
        let (needs, count) = here.fold((0.0, 0.0), |(needs, count), it| {
            let (need, here) = (need(pieces[it.piece]) as f64, it.count as f64);
            (needs + need * here, count + here)
        });
        if count <= 0.0 {
            f64::INFINITY
        } else {
            needs / count
        }
    };
    let mut order: Vec<(usize, f64)> = (0..runs).map(|run| (run, early(run))).collect();
    order.sort_by(|a, b| a.1.total_cmp(&b.1));
    for it in placed {
        it.run = order
            .iter()
            .position(|(run, _)| *run == it.run)
            .unwrap_or(it.run);
    }
}

/// So many pieces over the holds of one run: all in the first that takes all, else spread
/// from the first on, as far as there is room.
fn shared(rooms: &[f64], each: f64, count: usize) -> Vec<(usize, usize)> {
    if let Some(hold) = rooms.iter().position(|room| count <= fit(*room, each)) {
        return if count == 0 {
            Vec::new()
        } else {
            vec![(hold, count)]
        };
    }
    let mut left = count;
    let mut parts = Vec::new();
    for (hold, room) in rooms.iter().enumerate() {
        let here = fit(*room, each).min(left);
        if 0 < here {
            parts.push((hold, here));
            left -= here;
        }
    }
    parts
}

/// How many pieces of a mass there is room for; a remainder of one part in a thousand million
/// is taken for rounding. What weighs nothing always has room.
fn fit(room: f64, each: f64) -> usize {
    if each <= 0.0 {
        return usize::MAX;
    }
    whole_number((room / each + 1e-9).floor())
}

/// Runs that can't be done without: as many as the whole mass takes, and, for each mass, as
/// many as the pieces of that mass or more take when a hold has only so many places for them.
/// Pieces must each have room in some hold.
pub(super) fn fewest_runs(pieces: &[&Piece], holds: &[Hold]) -> usize {
    if pieces.is_empty() {
        return 0;
    }
    let capacity: f64 = holds.iter().map(|hold| hold.limit.si()).sum();
    let whole: f64 = pieces.iter().map(|it| it.each.si() * it.count as f64).sum();
    let by_mass = if whole <= 0.0 {
        1
    } else {
        whole_number((whole / capacity - 1e-9).ceil())
    };
    let by_places = pieces.iter().map(|least| {
        let each = least.each.si();
        let heavy = pieces.iter().filter(|it| each <= it.each.si());
        let count: usize = heavy.map(|it| it.count).sum();
        let places = holds.iter().map(|hold| fit(hold.limit.si(), each));
        count.div_ceil(places.fold(0, usize::saturating_add).max(1))
    });
    by_places.fold(by_mass.max(1), usize::max)
}
