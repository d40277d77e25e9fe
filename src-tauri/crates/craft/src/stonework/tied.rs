//! Throughs of a wall cut across, and what closes the row behind one that ends short.

use super::cut::Work;
use super::given::{Crossing, CutReach, PlantedFault, PlantedKind};
use super::polygon::{P, Upright};
use super::shape::Room;
use super::stone::Role;
use crate::quantity::{Read, whole_number};
use crate::wall::Side;

/// Between a tail and the face stone behind it there is room for hearting: this share of the
/// room behind the tail, and never more than this in metres (common practice, no source).
const BEHIND_SHARE: [f64; 2] = [0.2, 0.3];
const BEHIND_M: f64 = 0.07;
/// A face stone behind a tail is no higher than this for each unit it reaches in: where there
/// is less room, thinner stones lie on each other.
const HIGHEST: f64 = 1.1;
/// Hearting is packed behind a tail in pieces about so high, in metres.
const PACKED_M: f64 = 0.045;

/// One through that is laid, in metres.
#[derive(Clone, Copy)]
pub(super) struct Tie {
    pub(super) bed: f64,
    pub(super) top: f64,
    reach: CutReach,
}

/// Every through that is laid, from below.
pub(super) fn ties(crossing: &Crossing, faults: &[PlantedFault]) -> Vec<Tie> {
    let height = crossing.section.height().si();
    let thickness = crossing.through_thickness.si();
    let mut ties: Vec<Tie> = crossing
        .throughs
        .iter()
        .map(|one| Tie {
            bed: one.bed.si(),
            top: (one.bed.si() + thickness).min(height),
            reach: one.reach,
        })
        .filter(|tie| 0.0 < tie.bed && tie.bed < tie.top)
        .collect();
    ties.sort_by(|a, b| a.bed.total_cmp(&b.bed));
    ties.dedup_by(|upper, lower| upper.bed < lower.top);
    for fault in faults {
        if fault.kind == PlantedKind::MissingThrough {
            let off = |tie: &Tie| (tie.bed - fault.at()[1]).abs();
            let nearest = (0..ties.len()).min_by(|a, b| off(&ties[*a]).total_cmp(&off(&ties[*b])));
            if let Some(nearest) = nearest {
                ties.remove(nearest);
            }
        }
    }
    ties
}

/// To the right for one towards the middle of the wall.
fn inward(side: Side) -> f64 {
    match side {
        Side::Left => 1.0,
        Side::Right => -1.0,
    }
}

/// What is on this side and what is over there, from left to right.
fn ordered<T>(side: Side, here: T, there: T) -> [T; 2] {
    match side {
        Side::Left => [here, there],
        Side::Right => [there, here],
    }
}

/// The one of two, from left to right, that is on this side.
fn on(side: Side, [left, right]: [f64; 2]) -> f64 {
    match side {
        Side::Left => left,
        Side::Right => right,
    }
}

impl Work {
    /// The through itself, over the faces it comes to.
    pub(super) fn through(&mut self, tie: &Tie, projection: f64) {
        let faces = self.shape.faces((tie.bed + tie.top) / 2.0);
        let mut rough = || 0.01 * self.luck.unit();
        let (ends, edge) = match tie.reach {
            CutReach::Across => (
                [
                    faces[0] - projection - rough(),
                    faces[1] + projection + rough(),
                ],
                [true, true],
            ),
            CutReach::From(side, reach) => {
                let outer = on(side, faces) - inward(side) * (projection + rough());
                let tail = self.tail(tie, side, reach.si());
                (ordered(side, outer, tail), ordered(side, true, false))
            }
        };
        let foot = ends.map(|x| [x, tie.bed]);
        let head = [tie.top - 0.002, tie.top - 0.002 - 0.006 * self.luck.unit()];
        let room = Room {
            sides: ends.map(Upright::plumb),
            edge,
            bed: &foot,
            top: head,
            squared: 0.8,
        };
        self.shaped(&room, Role::Through, 0);
    }

    /// Where a through that comes from a side ends inside the wall.
    fn tail(&self, tie: &Tie, side: Side, reach: f64) -> f64 {
        let faces = self.shape.faces(tie.bed);
        (on(side, faces) + inward(side) * reach).clamp(faces[0], faces[1])
    }

    /// The face on this side where a through from the other ends short of it: a stone, or
    /// thinner ones on each other, and close behind them the tail. Gives the middles of the
    /// hearting to be packed between.
    pub(super) fn behind(&mut self, tie: &Tie, side: Side) -> Vec<P> {
        let CutReach::From(from, reach) = tie.reach else {
            return Vec::new();
        };
        if from == side {
            return Vec::new();
        }
        let tail = self.tail(tie, from, reach.si());
        let middle = (tie.bed + tie.top) / 2.0;
        let height = tie.top - tie.bed;
        let face =
            on(side, self.shape.faces(middle)) + inward(side) * self.luck.between(0.0, 0.006);
        let room = (tail - face) * inward(side);
        if room <= 0.0 {
            return Vec::new();
        }
        let share = self.luck.between(BEHIND_SHARE[0], BEHIND_SHARE[1]);
        let packed = (room * share).min(BEHIND_M);
        let into = room - packed;
        let outer = Upright {
            x: face,
            y: middle,
            lean: inward(side) * on(side, self.shape.lean),
        };
        let inner = Upright::plumb(face + inward(side) * into);
        let count = (height / (HIGHEST * into)).ceil().clamp(1.0, 4.0);
        let each = height / count;
        for at in 0..whole_number(count) {
            let low = tie.bed + each * at as f64;
            let sides = ordered(side, outer, inner);
            let room = Room {
                sides,
                edge: ordered(side, true, false),
                bed: &sides.map(|one| [one.at(low), low]),
                top: [low + each - 0.002; 2],
                squared: 0.6,
            };
            self.shaped(&room, Role::Face, 0);
        }
        let pieces = (height / PACKED_M).round().max(1.0);
        let x = tail - inward(side) * packed / 2.0;
        (0..whole_number(pieces))
            .map(|at| [x, tie.bed + height * (at as f64 + 0.5) / pieces])
            .collect()
    }
}
