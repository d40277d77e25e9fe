//! The eye that looks a face over: what is wrong with these stones, whoever laid them.
//!
//! Joints are found from the outlines alone. What a stone is for is asked only to know
//! copes and throughs from the rest.

use super::joints::{Line, Seen, lines};
use super::levels::Levels;
use super::polygon::area;
use super::stone::{Point, Role, Stone};
use crate::quantity::{Length, Read, metres};

/// Two joints one over the other nearer than this, in metres, are not crossed (common
/// practice, no source: 40 mm, less 5 mm that worn corners leave unsure).
pub const LEAST_LAP_M: f64 = 0.035;
/// A joint through so many courses is a running joint (common practice, no source).
pub const RUNNING_COURSES: usize = 2;
/// A stone that reaches in by less than this share of its length along the face is traced
/// (common practice, no source).
pub const TRACED_SHARE: f64 = 0.6;
/// Throughs farther apart than this many spacings leave one out (common practice, no
/// source).
pub const LONGEST_ROW_GAP: f64 = 1.5;
/// What shows less face than this, in square metres, is a pinning and makes no joint
/// (common practice, no source).
pub const LEAST_STONE_M2: f64 = 0.0013;
/// A through belongs to a row whose line is no farther from its middle than this, in
/// metres (common practice, no source).
const IN_ROW_M: f64 = 0.25;

/// What is known of a face beforehand.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Expectations {
    /// The rows of throughs asked for.
    pub rows: Vec<ExpectedRow>,
}

/// A row of throughs asked for.
#[derive(Debug, Clone, PartialEq)]
pub struct ExpectedRow {
    /// Where it runs, in order of station; a row of no length has no points.
    pub line: Vec<Point>,
    /// Between neighbouring throughs.
    pub spacing: Length,
}

/// What can be wrong.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FaultKind {
    /// An upright joint through [`RUNNING_COURSES`] or more.
    RunningJoint,
    /// A stone with its length along the face; in a section, a stone that is only a skin.
    Traced,
    /// A through left out.
    MissingThrough,
    /// A hole between the faces.
    HollowHearting,
}

/// Something wrong.
#[derive(Debug, Clone, PartialEq)]
pub struct Fault {
    /// What.
    pub kind: FaultKind,
    /// The middle of it.
    pub at: Point,
    /// A joint's height, a stone's length along, a hole's width; the gap in a row, from through
    /// to through or, with one stone in `stones`, from that through to the end of the row.
    pub size: Length,
    /// The stones concerned, by their place in the list given.
    pub stones: Vec<usize>,
}

/// Everything wrong with a face: joints first, then stones, then rows.
pub fn check(stones: &[Stone], expected: &Expectations) -> Vec<Fault> {
    let seen: Vec<Seen> = stones
        .iter()
        .enumerate()
        .filter(|(_, stone)| stone.role != Role::Cope)
        .map(|(index, stone)| Seen::new(index, stone.corners()))
        .filter(|seen| LEAST_STONE_M2 <= area(&seen.corners))
        .collect();
    let mut faults: Vec<Fault> = lines(&seen, LEAST_LAP_M)
        .iter()
        .filter_map(joint_fault)
        .collect();
    faults.extend(
        seen.iter()
            .filter_map(|one| traced(one, &stones[one.index])),
    );
    for row in &expected.rows {
        faults.extend(row_gaps(stones, row, &expected.rows));
    }
    faults
}

/// A line that has two stones or more on both of its sides is crossed by none. With one
/// stone on a side it is no more than that stone's own end.
fn joint_fault(line: &Line) -> Option<Fault> {
    let left = line.left.difference(&line.right).count();
    let right = line.right.difference(&line.left).count();
    if left.min(right) < RUNNING_COURSES {
        return None;
    }
    let mut stones: Vec<usize> = line.left.iter().chain(&line.right).copied().collect();
    stones.sort_unstable();
    Some(Fault {
        kind: FaultKind::RunningJoint,
        at: Point::metres([
            (line.foot[0] + line.head[0]) / 2.0,
            (line.foot[1] + line.head[1]) / 2.0,
        ]),
        size: metres(line.head[1] - line.foot[1]),
        stones,
    })
}

fn traced(seen: &Seen, stone: &Stone) -> Option<Fault> {
    let [left, low, right, high] = seen.bounds;
    let along = right - left;
    let is_traced = stone.role != Role::Through && stone.into.si() < TRACED_SHARE * along;
    is_traced.then(|| Fault {
        kind: FaultKind::Traced,
        at: Point::metres([(left + right) / 2.0, (low + high) / 2.0]),
        size: metres(along),
        stones: vec![seen.index],
    })
}

/// Gaps in one row of throughs. Before the first and after the last stands half a gap.
fn row_gaps(stones: &[Stone], row: &ExpectedRow, rows: &[ExpectedRow]) -> Vec<Fault> {
    let (Some(first), Some(last)) = (row.line.first(), row.line.last()) else {
        return Vec::new();
    };
    let (from, to) = (first.x.si(), last.x.si());
    let line = Levels::new(&row.line);
    let mut throughs: Vec<(f64, usize)> = stones
        .iter()
        .enumerate()
        .filter(|(_, stone)| stone.role == Role::Through)
        .filter_map(|(i, stone)| {
            let [x, y] = middle(stone);
            let off = (y - line.at(x)).abs();
            let nearest = rows
                .iter()
                .all(|other| off <= (y - Levels::new(&other.line).at(x)).abs() + 1e-9);
            (off < IN_ROW_M && nearest).then_some((x, i))
        })
        .collect();
    throughs.sort_by(|a, b| a.0.total_cmp(&b.0));
    let longest = LONGEST_ROW_GAP * row.spacing.si();
    let mut faults = Vec::new();
    let mut note = |a: f64, b: f64, counts: f64, beside: Vec<usize>| {
        if longest < counts && 1e-9 < b - a {
            let x = (a + b) / 2.0;
            faults.push(Fault {
                kind: FaultKind::MissingThrough,
                at: Point::metres([x, line.at(x)]),
                size: metres(b - a),
                stones: beside,
            });
        }
    };
    match (throughs.first().copied(), throughs.last().copied()) {
        (Some((a, i)), Some((b, j))) => {
            note(from, a, 2.0 * (a - from), vec![i]);
            for pair in throughs.windows(2) {
                let gap = pair[1].0 - pair[0].0;
                note(pair[0].0, pair[1].0, gap, vec![pair[0].1, pair[1].1]);
            }
            note(b, to, 2.0 * (to - b), vec![j]);
        }
        // A stretch shorter than half a spacing asks for none.
        _ => note(from, to, 3.0 * (to - from), Vec::new()),
    }
    faults
}

fn middle(stone: &Stone) -> [f64; 2] {
    let [left, low, right, high] = super::polygon::bounds(&stone.corners());
    [(left + right) / 2.0, (low + high) / 2.0]
}
