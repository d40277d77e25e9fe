//! The footing: large stones in the trench, benched where the ground falls.

use super::bond::{Gap, part};
use super::polygon::{Upright, bounds};
use super::setting::stone;
use super::shape::Room;
use super::skyline::{Laid, Piece, Wall};
use super::stone::Role;

/// Shortest and longest footing stone in metres, where face stones are not longer (common
/// practice, no source).
const LENGTHS_M: [f64; 2] = [0.3, 0.65];

impl Wall {
    /// Lays a footing under the first course, so many metres deep.
    pub(super) fn lay_footing(&mut self, depth: f64) {
        let benches = std::mem::take(&mut self.sky);
        let count = benches.len();
        for (i, bench) in benches.iter().enumerate() {
            let ends = [
                if i == 0 {
                    Upright::plumb(self.edges[0].line.x)
                } else {
                    Upright::plumb(bench.from)
                },
                if i + 1 == count {
                    Upright::plumb(self.edges[1].line.x)
                } else {
                    Upright::plumb(bench.to)
                },
            ];
            let edge = [i == 0, i + 1 == count];
            self.lay_bench(bench, ends, edge, depth);
        }
    }

    fn lay_bench(&mut self, bench: &Piece, ends: [Upright; 2], edge: [bool; 2], depth: f64) {
        let clear: Vec<[f64; 2]> = self
            .reserved
            .iter()
            .filter(|one| one.row == bench.row)
            .flat_map(|one| [one.from, one.to])
            .map(|x| [x - 0.075, x + 0.075])
            .collect();
        let gap = Gap {
            from: bench.from,
            to: bench.to,
            joints: &[],
            kept_clear: &clear,
            shortest: LENGTHS_M[0].max(1.2 * self.lengths[0]),
            longest: LENGTHS_M[1].max(1.3 * self.lengths[1]),
        };
        let luck = &mut self.luck;
        let (mut stops, _) = part(&gap, |_| luck.between(gap.shortest, gap.longest));
        stops.push(bench.to);
        let mut left = ends[0];
        let mut from = bench.from;
        for (i, to) in stops.iter().enumerate() {
            let last = i + 1 == stops.len();
            let right = if last {
                ends[1]
            } else {
                Upright {
                    x: *to,
                    y: self.rows.level(bench.row, *to),
                    lean: 0.12 * self.luck.bell(),
                }
            };
            let edge = [i == 0 && edge[0], last && edge[1]];
            self.lay_footing_stone(bench, [from, *to], [left, right], edge, depth);
            left = right;
            from = *to;
        }
    }

    fn lay_footing_stone(
        &mut self,
        bench: &Piece,
        [from, to]: [f64; 2],
        sides: [Upright; 2],
        edge: [bool; 2],
        depth: f64,
    ) {
        let top = [from, to].map(|x| self.rows.level(bench.row, x) - self.luck.between(0.0, 0.008));
        let deep = [0, 1].map(|_| depth * self.luck.between(0.82, 0.97));
        let bed = [
            [sides[0].at(top[0] - deep[0]), top[0] - deep[0]],
            [sides[1].at(top[1] - deep[1]), top[1] - deep[1]],
        ];
        let shaped = Room {
            sides,
            edge,
            bed: &bed,
            top,
            squared: 0.35,
        }
        .fill(&mut self.luck);
        let along = {
            let [left, _, right, _] = bounds(&shaped.outline);
            right - left
        };
        let into = (along * self.luck.between(1.1, 1.4))
            .min(0.6 * self.width(from, top[0]))
            .max(0.9 * along);
        self.stones
            .push(stone(&shaped.outline, Role::Footing, 0, into));
        if let Some(wedge) = &shaped.pinning {
            self.stones.push(stone(wedge, Role::Pinning, 0, 0.1));
        }
        self.sky.push(Piece {
            from,
            to,
            row: bench.row,
            stone: Some(self.laid.len()),
        });
        self.laid.push(Laid {
            sides,
            row: bench.row,
            upper: shaped.upper,
        });
    }
}
