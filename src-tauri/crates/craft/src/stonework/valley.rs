//! One low stretch of the skyline filled with stones, from one neighbour to the other.

use super::bond::{Gap, least_lap, part};
use super::polygon::Upright;
use super::skyline::{DONE, Piece, Wall, piece_at};
use crate::quantity::Read;

/// What bounds a stretch on one side.
#[derive(Clone, Copy)]
struct Bound {
    line: Upright,
    /// The line a stone beside it may not rise over.
    cap: Option<usize>,
    /// The wall's own edge.
    edge: bool,
}

/// A stone to be laid: which reserved one, if any; its sides; how many lines it takes.
pub(super) struct Planned {
    pub(super) reserved: Option<usize>,
    pub(super) sides: [Upright; 2],
    pub(super) edge: [bool; 2],
    pub(super) lines: usize,
}

impl Wall {
    /// Fills the pieces from `first` to `last`, all of one line; gives back the new skyline.
    pub(super) fn fill(&mut self, first: usize, last: usize) -> Vec<Piece> {
        let row = self.sky[first].row;
        let floor: Vec<Piece> = self.sky[first..=last].to_vec();
        let (mut from, mut to) = (floor[0].from, floor[floor.len() - 1].to);
        let mut risen = Vec::new();
        let mut after = Vec::new();
        let racked = self.raked(&floor, from, to);
        if from < racked[0] {
            risen.push(done(&floor, from, racked[0].min(to)));
            from = racked[0];
        }
        if racked[1] < to && from < to {
            after.push(done(&floor, racked[1].max(from), to));
            to = racked[1];
        }
        if 0.06 < to - from {
            let bounds = [
                self.bound(first, from, &floor, 0, !risen.is_empty()),
                self.bound(last, to, &floor, 1, !after.is_empty()),
            ];
            let mut planned = self.plan(row, [from, to], bounds, &floor);
            self.choose_heights(row, &mut planned, [bounds[0].cap, bounds[1].cap]);
            for one in &planned {
                self.lay_one(row, one, &floor, &mut risen);
            }
        } else if from < to {
            risen.push(done(&floor, from, to));
        }
        risen.extend(after);
        risen
    }

    /// Where raked ends step back to on this floor; the floor's own ends where they don't.
    fn raked(&mut self, floor: &[Piece], from: f64, to: f64) -> [f64; 2] {
        let mut at = [from, to];
        let levels = [
            self.surface(&floor[0], from),
            self.surface(&floor[floor.len() - 1], to),
        ];
        for side in 0..2 {
            if let Some(ground) = self.edges[side].raked_from {
                let back = (levels[side] - ground).max(0.0) * self.luck.between(0.93, 1.05);
                let line = self.edges[side].line.x;
                at[side] = if side == 0 {
                    from.max(line + back)
                } else {
                    to.min(line - back)
                };
                if (at[side] - [from, to][side]).abs() < 0.02 {
                    at[side] = [from, to][side];
                }
            }
        }
        at
    }

    /// What stands beside the stretch on the left (0) or the right (1).
    fn bound(&self, piece: usize, x: f64, floor: &[Piece], side: usize, free: bool) -> Bound {
        let stands_free = Bound {
            line: Upright::plumb(x),
            cap: None,
            edge: true,
        };
        if free {
            return stands_free;
        }
        let beside = if side == 0 {
            piece.checked_sub(1).map(|i| self.sky[i])
        } else {
            self.sky.get(piece + 1).copied()
        };
        let Some(beside) = beside else {
            return Bound {
                line: self.edges[side].line,
                ..stands_free
            };
        };
        let here = if side == 0 {
            floor[0]
        } else {
            floor[floor.len() - 1]
        };
        let Some(laid) = beside.stone.and_then(|i| self.laid.get(i)) else {
            return Bound {
                line: Upright::plumb(x),
                cap: Some(beside.row),
                edge: false,
            };
        };
        let height = laid
            .upper
            .iter()
            .map(|p| p[1])
            .fold(f64::NEG_INFINITY, f64::max);
        if beside.row == DONE && height < self.surface(&here, x) + 0.02 {
            return stands_free;
        }
        Bound {
            line: laid.sides[1 - side],
            cap: (laid.row != here.row && beside.row != DONE).then_some(beside.row),
            edge: false,
        }
    }

    /// Reserved stones where they belong, and the rest parted under the bonding rule.
    fn plan(
        &mut self,
        row: usize,
        ends: [f64; 2],
        bounds: [Bound; 2],
        floor: &[Piece],
    ) -> Vec<Planned> {
        let kept = self.reserved_here(row, ends);
        let cuts = self.forced_cuts(row, ends);
        let clear = self.kept_clear(row, ends);
        let joints: Vec<f64> = floor
            .windows(2)
            .filter(|pair| pair[0].stone != pair[1].stone)
            .map(|pair| pair[0].to)
            .collect();
        let mut stops: Vec<(f64, Option<usize>)> = cuts.iter().map(|x| (*x, None)).collect();
        for (i, at) in &kept {
            stops.retain(|(x, _)| *x < at[0] + 0.05 || at[1] - 0.05 < *x);
            stops.push((at[0], Some(*i)));
            stops.push((at[1], None));
        }
        stops.push((ends[1], None));
        stops.sort_by(|a, b| a.0.total_cmp(&b.0).then(b.1.is_none().cmp(&a.1.is_none())));
        let mut parts: Vec<(Option<usize>, f64)> = Vec::new();
        let (mut at, mut which) = (ends[0], None);
        for (stop, next) in stops {
            if 1e-6 < stop - at {
                if which.is_none() {
                    let gap = Gap {
                        from: at,
                        to: stop,
                        joints: &joints,
                        kept_clear: &clear,
                        shortest: self.lengths[0],
                        longest: self.longest(row, at),
                    };
                    for cut in self.part_gap(row, &gap) {
                        parts.push((None, cut));
                    }
                }
                parts.push((which, stop));
            }
            at = stop;
            which = next;
        }
        self.with_sides(row, &parts, bounds, &clear)
    }

    fn part_gap(&mut self, row: usize, gap: &Gap<'_>) -> Vec<f64> {
        let [short, long] = [gap.shortest, gap.longest];
        let height = self.rows.course(row);
        let over = 2.0 * least_lap(short) + 0.02;
        let luck = &mut self.luck;
        let (cuts, crossed) = part(gap, |_| {
            let share = luck.unit();
            let wish = short + (long - short) * share * (0.35 + 0.65 * share);
            // A stone that leaves room for a joint over its middle, but for a few.
            let least = if luck.chance(0.75) { over } else { 0.0 };
            wish.max(0.95 * height).max(least)
        });
        if !crossed {
            self.uncrossed += 1;
        }
        cuts
    }

    /// Long stones lie low, and none is longer than the wall is wide.
    fn longest(&self, row: usize, x: f64) -> f64 {
        let y = self.rows.level(row, x);
        let most = self.lengths[1] * (1.05 - 0.35 * self.share(x, y));
        most.min(0.85 * self.width(x, y)).max(1.4 * self.lengths[0])
    }

    /// Width of the wall in metres at this level here.
    pub(super) fn width(&self, x: f64, y: f64) -> f64 {
        let below = (self.top.at(x) - y).max(0.0);
        self.section.top_width().si() + below * self.section.narrowing()
    }

    /// The joint lines between the parts: most a little aslant, those of settled stones less.
    fn with_sides(
        &mut self,
        row: usize,
        parts: &[(Option<usize>, f64)],
        bounds: [Bound; 2],
        clear: &[[f64; 2]],
    ) -> Vec<Planned> {
        let mut planned = Vec::with_capacity(parts.len());
        let mut left = bounds[0].line;
        let mut from = left.at(self.rows.level(row, left.x));
        for (i, (reserved, to)) in parts.iter().enumerate() {
            let next = parts.get(i + 1);
            let right = match next {
                None => bounds[1].line,
                Some((beside, end)) => {
                    let shorter = (to - from).min(end - to);
                    let near = |[low, high]: &[f64; 2]| low - 0.04 < *to && *to < high + 0.04;
                    let most = if clear.iter().any(near) {
                        0.02
                    } else {
                        self.most_lean(row, [*reserved, *beside], shorter)
                    };
                    Upright {
                        x: *to,
                        y: self.rows.level(row, *to),
                        lean: most * self.luck.bell(),
                    }
                }
            };
            planned.push(Planned {
                reserved: *reserved,
                sides: [left, right],
                edge: [i == 0 && bounds[0].edge, next.is_none() && bounds[1].edge],
                lines: 0,
            });
            left = right;
            from = *to;
        }
        planned
    }

    /// How far a joint may lean: short stones keep some of their length at the top.
    fn most_lean(&self, row: usize, beside: [Option<usize>; 2], shorter: f64) -> f64 {
        let mut settled = beside.into_iter().flatten().map(|i| &self.reserved[i]);
        match settled.next() {
            Some(one) if one.plumb || settled.any(|other| other.plumb) => 0.0,
            Some(_) => 0.04,
            None => (0.14 * shorter / self.rows.course(row)).min(0.25),
        }
    }

    /// Reserved stones that stand on this line within the stretch, in order.
    fn reserved_here(&self, row: usize, ends: [f64; 2]) -> Vec<(usize, [f64; 2])> {
        let mut here: Vec<(usize, [f64; 2])> = Vec::new();
        for (i, one) in self.reserved.iter().enumerate() {
            let mut at = [one.from.max(ends[0]), one.to.min(ends[1])];
            if row != one.row || at[1] - at[0] < 0.1 {
                continue;
            }
            for side in 0..2 {
                // The skyline's end leans with the edge; a sliver is no stone.
                if (at[side] - ends[side]).abs() < 0.08 {
                    at[side] = ends[side];
                }
            }
            here.push((i, at));
        }
        here.sort_by(|a, b| a.1[0].total_cmp(&b.1[0]));
        for i in 1..here.len() {
            let end = here[i - 1].1[1];
            if here[i].1[0] - end < 0.06 {
                here[i].1[0] = end;
            }
        }
        here.retain(|(_, at)| 0.05 < at[1] - at[0]);
        here
    }

    /// Steps of the top that this course would stand over.
    fn forced_cuts(&self, row: usize, ends: [f64; 2]) -> Vec<f64> {
        let over = |x: f64| {
            let low = self.top.at(x).min(self.top.before(x));
            low + 0.02 < self.rows.level(row + 2, x)
        };
        self.steps
            .iter()
            .copied()
            .filter(|x| ends[0] + 0.03 < *x && *x < ends[1] - 0.03 && over(*x))
            .collect()
    }

    /// Where no joint may be for the sake of stones and edges still to come above.
    fn kept_clear(&self, row: usize, ends: [f64; 2]) -> Vec<[f64; 2]> {
        let reach = least_lap(self.lengths[0]) + 0.02;
        let mut clear: Vec<[f64; 2]> = self
            .reserved
            .iter()
            .filter(|one| row < one.row && one.row <= row + 2)
            .flat_map(|one| [one.from, one.to])
            .chain(self.steps.iter().copied())
            .filter(|x| ends[0] - reach < *x && *x < ends[1] + reach)
            .map(|x| [x - reach, x + reach])
            .collect();
        clear.sort_by(|a, b| a[0].total_cmp(&b[0]));
        clear
    }
}

fn done(floor: &[Piece], from: f64, to: f64) -> Piece {
    Piece {
        from,
        to,
        row: DONE,
        stone: piece_at(floor, (from + to) / 2.0).stone,
    }
}
