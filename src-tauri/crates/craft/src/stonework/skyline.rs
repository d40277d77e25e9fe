//! The wall as it rises: what has been laid, and the skyline the next stones lie on.

use super::levels::Levels;
use super::luck::Luck;
use super::polygon::{P, Upright};
use super::reserved::Reserved;
use super::rows::Rows;
use super::stone::Stone;
use crate::wall::Section;

/// The line number of what is up to the top.
pub(super) const DONE: usize = usize::MAX;

/// A stone that has been laid, as the next ones need to know it.
pub(super) struct Laid {
    /// Its joint lines.
    pub(super) sides: [Upright; 2],
    /// The line it stands on.
    pub(super) row: usize,
    /// Its upper side from left to right.
    pub(super) upper: Vec<P>,
}

/// A piece of the skyline.
#[derive(Clone, Copy, Debug)]
pub(super) struct Piece {
    pub(super) from: f64,
    pub(super) to: f64,
    /// The line it has reached.
    pub(super) row: usize,
    /// Which stone it is the top of; none on the bare ground.
    pub(super) stone: Option<usize>,
}

/// The piece of a skyline that lies over a place along it. A skyline is never empty.
pub(super) fn piece_at(floor: &[Piece], x: f64) -> &Piece {
    let at = floor.partition_point(|piece| piece.to < x);
    &floor[at.min(floor.len() - 1)]
}

/// One edge of the wall.
#[derive(Clone, Copy)]
pub(super) struct Edge {
    pub(super) line: Upright,
    /// Steps back with height, from this level up.
    pub(super) raked_from: Option<f64>,
}

/// A wall being built.
pub(super) struct Wall {
    pub(super) length: f64,
    pub(super) ground: Levels,
    pub(super) top: Levels,
    pub(super) steps: Vec<f64>,
    pub(super) section: Section,
    pub(super) edges: [Edge; 2],
    /// The shortest and the longest usual stone.
    pub(super) lengths: [f64; 2],
    pub(super) rows: Rows,
    pub(super) reserved: Vec<Reserved>,
    pub(super) luck: Luck,
    pub(super) laid: Vec<Laid>,
    pub(super) sky: Vec<Piece>,
    pub(super) stones: Vec<Stone>,
    /// Stretches in which a joint is not crossed as it should be.
    pub(super) uncrossed: usize,
}

impl Wall {
    /// Lays stones where the wall is lowest until it is nowhere below its top.
    pub(super) fn build(&mut self) {
        while let Some([first, last]) = self.lowest() {
            let risen = self.fill(first, last);
            self.sky.splice(first..=last, risen);
        }
    }

    /// The lowest stretch of the skyline, the leftmost of them.
    fn lowest(&self) -> Option<[usize; 2]> {
        let mut found: Option<(usize, usize)> = None;
        for (i, piece) in self.sky.iter().enumerate() {
            if piece.row != DONE && found.is_none_or(|(_, row)| piece.row < row) {
                found = Some((i, piece.row));
            }
        }
        let (first, row) = found?;
        let run = self.sky[first..]
            .iter()
            .take_while(|piece| piece.row == row)
            .count();
        Some([first, first + run - 1])
    }

    /// The level of what has been laid, at a place on a piece of the skyline.
    pub(super) fn surface(&self, piece: &Piece, x: f64) -> f64 {
        match piece.stone.and_then(|i| self.laid.get(i)) {
            Some(laid) => along(&laid.upper, x),
            None => self.ground.at(x),
        }
    }

    /// The tops under a stone from here to there, left to right.
    pub(super) fn tops(&self, pieces: &[Piece], from: f64, to: f64) -> Vec<P> {
        let mut tops = Vec::new();
        for piece in pieces {
            let (low, high) = (piece.from.max(from), piece.to.min(to));
            if high < low - 1e-9 {
                continue;
            }
            tops.push([low, self.surface(piece, low)]);
            match piece.stone.and_then(|i| self.laid.get(i)) {
                Some(laid) => {
                    tops.extend(laid.upper.iter().filter(|p| low < p[0] && p[0] < high));
                }
                None => tops.extend(
                    self.ground
                        .between(low, high)
                        .iter()
                        .filter(|p| low < p[0] && p[0] < high),
                ),
            }
            tops.push([high, self.surface(piece, high)]);
        }
        if let (Some(first), Some(last)) = (tops.first().copied(), tops.last().copied()) {
            if from < first[0] - 1e-6 {
                tops.insert(0, [from, first[1]]);
            }
            if last[0] + 1e-6 < to {
                tops.push([to, last[1]]);
            }
        }
        tops
    }

    /// How high up the wall a place is: 0 at the ground, 1 under the cope.
    pub(super) fn share(&self, x: f64, y: f64) -> f64 {
        let (low, high) = (self.ground.at(x), self.top.at(x));
        ((y - low) / (high - low).max(0.05)).clamp(0.0, 1.0)
    }
}

/// The level of a line at a place; beyond its ends, that of the end.
pub(super) fn along(line: &[P], x: f64) -> f64 {
    let Some(first) = line.first() else {
        return 0.0;
    };
    if x <= first[0] {
        return first[1];
    }
    for pair in line.windows(2) {
        let (a, b) = (pair[0], pair[1]);
        if x <= b[0] {
            let width = b[0] - a[0];
            return if width < 1e-9 {
                a[1].max(b[1])
            } else {
                a[1] + (b[1] - a[1]) * ((x - a[0]) / width)
            };
        }
    }
    line[line.len() - 1][1]
}

/// A piece of the skyline before any stone is laid on it.
pub(super) fn on_the_ground(from: f64, to: f64, row: usize) -> Piece {
    Piece {
        from,
        to,
        row,
        stone: None,
    }
}
