//! One stone set: its top, its outline, how far it reaches in, and the skyline it leaves.

use super::polygon::{P, bounds};
use super::reserved::Reserved;
use super::shape::{Room, bed_over};
use super::skyline::{DONE, Laid, Piece, Wall, piece_at};
use super::stone::{Point, Role, Stone};
use super::valley::Planned;
use crate::quantity::metres;

/// Less room than this under the top takes no further course, in metres.
pub(super) const LEAST_COURSE_M: f64 = 0.04;
/// A bed clear of what is under it by more than this bends down, in metres.
const CLEAR_M: f64 = 0.012;
/// A stone reaches into the wall by at least so much of its length along the face (common
/// practice, no source).
const REACH: [f64; 2] = [1.12, 1.7];

impl Wall {
    /// Lays one stone and puts its top into the skyline.
    pub(super) fn lay_one(
        &mut self,
        row: usize,
        one: &Planned,
        floor: &[Piece],
        risen: &mut Vec<Piece>,
    ) {
        let reserved = one.reserved.map(|i| self.reserved[i].clone());
        let squared = reserved.as_ref().map_or(0.0, |one| one.squared);
        let (top, pieces) = self.top_of(row + one.lines, one, squared);
        let bed = self.bed_of(row, one, floor);
        let highest = bed.iter().map(|p| p[1]).fold(f64::NEG_INFINITY, f64::max);
        let room = Room {
            sides: one.sides,
            edge: one.edge,
            bed: &bed,
            top: top.map(|y| y.max(highest + 0.025)),
            squared,
        };
        let shaped = room.fill(&mut self.luck);
        let course = row / 2 + 1;
        let (role, into) = self.reach_in(&shaped.outline, reserved.as_ref());
        self.stones.push(stone(&shaped.outline, role, course, into));
        if let Some(wedge) = &shaped.pinning {
            let into = self.luck.between(0.06, 0.12);
            self.stones.push(stone(wedge, Role::Pinning, course, into));
        }
        self.laid.push(Laid {
            sides: one.sides,
            row,
            upper: shaped.upper,
        });
        risen.extend(pieces);
    }

    /// The bed it lies on, over what has been laid.
    fn bed_of(&self, row: usize, one: &Planned, floor: &[Piece]) -> Vec<P> {
        let foot = one.sides.map(|side| {
            let x = side.at(self.rows.level(row, side.x));
            side.at(self.surface(piece_at(floor, x), x))
        });
        let bed = bed_over(&self.tops(floor, foot[0], foot[1]), CLEAR_M);
        if 1 < bed.len() {
            return bed;
        }
        foot.map(|x| [x, self.rows.level(row, x)]).to_vec()
    }

    /// Levels of its top at both sides, and the pieces of skyline it makes.
    fn top_of(&mut self, line: usize, one: &Planned, squared: f64) -> ([f64; 2], Vec<Piece>) {
        let middle = (one.sides[0].x + one.sides[1].x) / 2.0;
        let level = self.rows.level(line, middle);
        let [from, to] = one.sides.map(|side| side.at(level));
        let step = self
            .steps
            .iter()
            .copied()
            .find(|x| from + 0.03 < *x && *x < to - 0.03);
        if let Some(x) = step {
            let piece = |from: f64, to: f64| self.piece(from, to, self.reached(line, from, to));
            let levels = [from, to].map(|x| self.rows.level(line, x));
            return (levels, vec![piece(from, x), piece(x, to)]);
        }
        let reached = self.reached(line, from, to);
        let pieces = vec![self.piece(from, to, reached)];
        if reached == DONE {
            let under = [self.top.at(from), self.top.before(to)];
            return (under.map(|y| y - self.luck.between(0.0, 0.006)), pieces);
        }
        let off = 0.05 * self.rows.course(line.saturating_sub(1)) * (1.0 - 0.6 * squared);
        let whole = off * self.luck.bell();
        let levels = [from, to].map(|x| self.rows.level(line, x) + whole + off * self.luck.bell());
        (levels, pieces)
    }

    /// The line reached, or that there is no room for another course over it.
    fn reached(&self, line: usize, from: f64, to: f64) -> usize {
        let (from, to) = (from + 0.01, to - 0.01);
        let tops = [
            (from, self.top.at(from)),
            ((from + to) / 2.0, self.top.at((from + to) / 2.0)),
            (to, self.top.before(to)),
        ];
        let room = tops
            .iter()
            .map(|(x, top)| top - self.rows.level(line, *x))
            .fold(f64::INFINITY, f64::min);
        if self.rows.last() <= line || room < LEAST_COURSE_M {
            DONE
        } else {
            line
        }
    }

    /// A piece of skyline on the stone that is laid next.
    fn piece(&self, from: f64, to: f64, row: usize) -> Piece {
        Piece {
            from,
            to,
            row,
            stone: Some(self.laid.len()),
        }
    }

    /// What the stone does, and how far it reaches into the wall in metres.
    fn reach_in(&mut self, outline: &[P], reserved: Option<&Reserved>) -> (Role, f64) {
        let [left, low, right, _] = bounds(outline);
        let along = right - left;
        let width = self.width((left + right) / 2.0, low);
        let luck = &mut self.luck;
        let role = reserved.map_or(Role::Face, |one| one.role);
        let into = match role {
            Role::Through => width,
            Role::EndLong => along * luck.between(0.75, 0.95),
            Role::EndShort => (width * luck.between(0.45, 0.6)).max(1.3 * along),
            _ if reserved.is_some_and(|one| one.traced) => along * luck.between(0.3, 0.42),
            _ => {
                let usual = luck.between(REACH[0], REACH[1]);
                let least = if luck.chance(0.08) {
                    luck.between(0.95, 1.1)
                } else {
                    REACH[0]
                };
                (along * usual)
                    .min(0.62 * width)
                    .max(along * least)
                    .max(0.14)
            }
        };
        (role, into)
    }
}

/// The drawing's stone.
pub(super) fn stone(outline: &[P], role: Role, course: usize, into: f64) -> Stone {
    Stone {
        outline: outline.iter().map(|p| Point::metres(*p)).collect(),
        role,
        course,
        into: metres(into),
    }
}
