//! The eye that looks a section over: skins, missing throughs, holes in the middle.

use super::check::{Fault, FaultKind, LEAST_STONE_M2};
use super::polygon::{P, area, bounds, slice};
use super::stone::{Point, Role, Stone};
use crate::quantity::{Length, Read, metres, whole_number};
use crate::wall::{Section, Side};

/// A hole between the faces as wide as this, in metres, is a hollow (common practice, no
/// source).
pub const HOLLOW_M: f64 = 0.065;
/// A stone in a face that reaches in by less than this share of its height is a skin
/// (common practice, no source).
pub const SKIN_SHARE: f64 = 0.8;
/// A stone no farther from the line of a face than this, in metres, is in the face.
const IN_FACE_M: f64 = 0.03;
/// A through lies in a row if its bed is no farther from it than this, in metres.
const IN_ROW_M: f64 = 0.1;
/// Holes are looked for in squares of this size, in metres.
const SQUARE_M: f64 = 0.005;

/// What is known of a section beforehand.
#[derive(Debug, Clone, PartialEq)]
pub struct ExpectedCut {
    /// Ground to the underside of the cope, and the two faces.
    pub section: Section,
    /// Heights above the ground of the beds of the throughs the section goes through.
    pub through_rows: Vec<Length>,
}

/// Everything wrong with a section: skins first, then throughs, then holes.
pub fn check_cut(stones: &[Stone], expected: &ExpectedCut) -> Vec<Fault> {
    let outline = Outline::new(&expected.section);
    let mut faults: Vec<Fault> = stones
        .iter()
        .enumerate()
        .filter_map(|(i, stone)| skin(i, stone, &outline))
        .collect();
    for row in &expected.through_rows {
        let there = stones.iter().any(|stone| {
            stone.role == Role::Through && (bounds(&stone.corners())[1] - row.si()).abs() < IN_ROW_M
        });
        if !there {
            faults.push(Fault {
                kind: FaultKind::MissingThrough,
                at: Point::metres([0.0, row.si()]),
                size: expected.section.width_at(*row),
                stones: Vec::new(),
            });
        }
    }
    faults.extend(holes(stones, &outline));
    faults
}

/// The wall's outline in metres.
struct Outline {
    height: f64,
    half_top: f64,
    lean: [f64; 2],
}

impl Outline {
    fn new(section: &Section) -> Self {
        Self {
            height: section.height().si(),
            half_top: section.top_width().si() / 2.0,
            lean: [Side::Left, Side::Right].map(|side| section.batter(side).lean()),
        }
    }

    fn faces(&self, y: f64) -> [f64; 2] {
        let below = self.height - y;
        [
            -self.half_top - below * self.lean[0],
            self.half_top + below * self.lean[1],
        ]
    }
}

fn skin(index: usize, stone: &Stone, outline: &Outline) -> Option<Fault> {
    let corners = stone.corners();
    let [left, low, right, high] = bounds(&corners);
    let y = (low + high) / 2.0;
    let faces = outline.faces(y);
    let in_face = (left - faces[0]).abs().min((right - faces[1]).abs()) < IN_FACE_M;
    let in_wall = 0.0 < y && y < outline.height && stone.role != Role::Cope;
    let is_skin = in_face
        && in_wall
        && LEAST_STONE_M2 <= area(&corners)
        && right - left < SKIN_SHARE * (high - low);
    is_skin.then(|| Fault {
        kind: FaultKind::Traced,
        at: Point::metres([(left + right) / 2.0, y]),
        size: metres(right - left),
        stones: vec![index],
    })
}

/// The section as squares, row by row from the ground: whether a stone covers each.
struct Squares {
    columns: usize,
    left: f64,
    covered: Vec<bool>,
}

impl Squares {
    fn new(stones: &[Stone], outline: &Outline) -> Self {
        let [left, right] = outline.faces(0.0);
        let columns = whole_number(((right - left) / SQUARE_M).ceil()).max(1);
        let rows = whole_number((outline.height / SQUARE_M).floor()).max(1);
        let mut squares = Self {
            columns,
            left,
            covered: vec![false; columns * rows],
        };
        for row in 0..rows {
            let y = (row as f64 + 0.5) * SQUARE_M;
            let [from, to] = outline.faces(y);
            squares.cover(row, f64::NEG_INFINITY, from);
            squares.cover(row, to, f64::INFINITY);
        }
        for stone in stones {
            let corners = stone.corners();
            let [_, low, _, high] = bounds(&corners);
            let first = whole_number((low / SQUARE_M - 0.5).ceil().max(0.0));
            for row in first..rows {
                let y = (row as f64 + 0.5) * SQUARE_M;
                if high <= y {
                    break;
                }
                if let Some([from, to]) = slice(&corners, y) {
                    squares.cover(row, from, to);
                }
            }
        }
        squares
    }

    fn cover(&mut self, row: usize, from: f64, to: f64) {
        let column = |x: f64| ((x - self.left) / SQUARE_M - 0.5).ceil().max(0.0);
        let (from, to) = (whole_number(column(from)), whole_number(column(to)));
        let start = row * self.columns;
        for column in from.min(self.columns)..to.min(self.columns) {
            self.covered[start + column] = true;
        }
    }

    fn at(&self, i: usize) -> P {
        [
            self.left + ((i % self.columns) as f64 + 0.5) * SQUARE_M,
            ((i / self.columns) as f64 + 0.5) * SQUARE_M,
        ]
    }

    /// From a square's middle to the nearest covered square, in squares, as far as `most`;
    /// what lies outside counts as covered.
    fn free(&self, i: usize, most: usize) -> f64 {
        let (row, column) = (i / self.columns, i % self.columns);
        let rows = self.covered.len() / self.columns;
        let edge = most.min(row + 1).min(column + 1);
        let mut nearest = (edge * edge) as f64;
        for r in row.saturating_sub(most)..=row + most {
            for c in column.saturating_sub(most)..=column + most {
                let open = r < rows && c < self.columns && !self.covered[r * self.columns + c];
                if !open {
                    let (up, along) = (r.abs_diff(row), c.abs_diff(column));
                    nearest = nearest.min((up * up + along * along) as f64);
                }
            }
        }
        nearest.sqrt()
    }
}

/// Holes: the largest round opening of each place where one of [`HOLLOW_M`] fits.
fn holes(stones: &[Stone], outline: &Outline) -> Vec<Fault> {
    let squares = Squares::new(stones, outline);
    let least = HOLLOW_M / 2.0 / SQUARE_M;
    let mut wide: Vec<(f64, usize)> = (0..squares.covered.len())
        .filter(|i| !squares.covered[*i])
        .filter(|i| least <= squares.free(*i, whole_number(least.ceil())))
        .map(|i| (squares.free(i, 40), i))
        .collect();
    wide.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
    let mut faults: Vec<Fault> = Vec::new();
    for (free, i) in wide {
        let at = squares.at(i);
        let size = 2.0 * free * SQUARE_M;
        let known = faults.iter().any(|fault| {
            let [x, y] = fault.at.in_metres();
            let (dx, dy) = (x - at[0], y - at[1]);
            (dx * dx + dy * dy).sqrt() < fault.size.si() / 2.0 + size / 2.0 + HOLLOW_M / 2.0
        });
        if !known {
            faults.push(Fault {
                kind: FaultKind::HollowHearting,
                at: Point::metres(at),
                size: metres(size),
                stones: Vec::new(),
            });
        }
    }
    faults
}
