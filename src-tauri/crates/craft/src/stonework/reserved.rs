//! Stones whose places are settled before any other is laid: end stones and throughs.

use super::given::{Face, FaceEnd, PlantedFault, PlantedKind, ThroughRow};
use super::levels::Levels;
use super::luck::Luck;
use super::rows::Rows;
use super::stone::Role;
use crate::quantity::{Read, whole_number};

/// Ends of settled stones one over the other are apart by at least this, in metres.
const LEAST_LAP_M: f64 = 0.075;
/// Settled stones side by side leave no gap, or one that takes a stone, in metres.
const LEAST_GAP_M: f64 = 0.12;
/// An end stone along the face for each unit of its course's height (common practice, no
/// source): a long one, and one that ties into the wall.
const END_LONG: [f64; 2] = [2.0, 2.5];
const END_SHORT: [f64; 2] = [0.95, 1.25];

/// A place kept for one stone, in metres.
#[derive(Debug, Clone)]
pub(super) struct Reserved {
    pub(super) from: f64,
    pub(super) to: f64,
    /// The line it stands on.
    pub(super) row: usize,
    /// How many lines it rises.
    pub(super) lines: usize,
    pub(super) role: Role,
    /// Laid with its length along the face.
    pub(super) traced: bool,
    /// As for a room.
    pub(super) squared: f64,
    /// Which of its sides is the wall's own edge.
    pub(super) outer: Option<usize>,
    /// Its joints stand straight up.
    pub(super) plumb: bool,
}

impl Reserved {
    pub(super) fn new(from: f64, to: f64, row: usize, role: Role) -> Self {
        Self {
            from,
            to,
            row,
            lines: 2,
            role,
            traced: false,
            squared: 0.8,
            outer: None,
            plumb: false,
        }
    }

    /// Its sides that are joints.
    pub(super) fn joints(&self) -> impl Iterator<Item = f64> + '_ {
        [self.from, self.to]
            .into_iter()
            .enumerate()
            .filter(|(side, _)| self.outer != Some(*side))
            .map(|(_, x)| x)
    }

    /// Whether it goes with another: clear of it beside, lapped over or under it.
    pub(super) fn goes_with(&self, other: &Self) -> bool {
        LEAST_LAP_M <= self.lap(other)
    }

    /// The lap over or under another; none where it is in its way, and more than enough
    /// where they do not touch.
    fn lap(&self, other: &Self) -> f64 {
        let beside = self.row < other.row + other.lines && other.row < self.row + self.lines;
        let touch = self.row + self.lines == other.row || other.row + other.lines == self.row;
        if beside {
            let gap = (other.from - self.to).max(self.from - other.to);
            let clear = LEAST_GAP_M <= gap || gap.abs() < 1e-6;
            return if clear { f64::INFINITY } else { 0.0 };
        }
        if !touch {
            return f64::INFINITY;
        }
        self.joints()
            .flat_map(|a| other.joints().map(move |b| (a - b).abs()))
            .fold(f64::INFINITY, f64::min)
    }
}

/// Throughs and end stones of a face.
pub(super) fn settle(
    face: &Face,
    rows: &Rows,
    top: &Levels,
    faults: &[PlantedFault],
) -> Vec<Reserved> {
    let mut luck = Luck::new(face.seed, 2);
    let mut places: Vec<Place> = face
        .throughs
        .iter()
        .flat_map(|row| through_places(face, row, top, &mut luck))
        .collect();
    for fault in faults {
        if fault.kind == PlantedKind::MissingThrough {
            leave_out(&mut places, fault.at());
        }
    }
    let mut settled: Vec<Reserved> = Vec::new();
    for place in places {
        let row = rows.nearest_bed(place.x, place.y);
        let half = place.width / 2.0;
        let mut one = Reserved::new(place.x - half, place.x + half, row, Role::Through);
        if place.thickness < 0.72 * rows.course(row) {
            one.lines = 1;
        }
        if settled.iter().all(|other| one.goes_with(other)) {
            settled.push(one);
        }
    }
    for side in 0..2 {
        if let FaceEnd::Head(batter) = face.ends[side] {
            head(face, rows, side, batter.lean(), &mut luck, &mut settled);
        }
    }
    settled
}

/// Where one through goes, in metres.
struct Place {
    x: f64,
    y: f64,
    width: f64,
    thickness: f64,
}

fn through_places(face: &Face, row: &ThroughRow, top: &Levels, luck: &mut Luck) -> Vec<Place> {
    let below = row.below_top.si();
    let [from, to] = face.reach(top, below);
    let (length, spacing) = (to - from, row.spacing.si().max(0.1));
    if length < row.width.si() + 0.25 {
        return Vec::new();
    }
    let count = whole_number((length / spacing).round()).max(1);
    let bay = length / count as f64;
    (0..count)
        .map(|i| {
            let off = if count == 1 {
                0.0
            } else {
                luck.between(-0.02, 0.02)
            };
            let x = from + bay * (i as f64 + 0.5) + off;
            Place {
                x,
                y: top.at(x) - below,
                width: row.width.si() * luck.between(0.9, 1.12),
                thickness: row.thickness.si(),
            }
        })
        .collect()
}

fn leave_out(places: &mut Vec<Place>, [x, y]: [f64; 2]) {
    let off = |place: &Place| (place.x - x) * (place.x - x) + (place.y - y) * (place.y - y);
    let nearest = (0..places.len()).min_by(|a, b| off(&places[*a]).total_cmp(&off(&places[*b])));
    if let Some(nearest) = nearest {
        places.remove(nearest);
    }
}

/// Long and short stones by turns up one end.
fn head(
    face: &Face,
    rows: &Rows,
    side: usize,
    lean: f64,
    luck: &mut Luck,
    settled: &mut Vec<Reserved>,
) {
    let length = face.length.si();
    let x = if side == 0 { 0.0 } else { length };
    let ground = Levels::new(&face.ground).at(x);
    for row in (0..rows.last()).step_by(2) {
        let rise = (rows.level(row, x) - ground).max(0.0) * lean;
        let edge = if side == 0 { rise } else { length - rise };
        let long = (row / 2 + side).is_multiple_of(2);
        let (share, least) = if long {
            (END_LONG, 0.22)
        } else {
            (END_SHORT, 0.11)
        };
        let height = rows.course(row);
        let usual = (height * luck.between(share[0], share[1])).max(least);
        let stone = |along: f64| end_stone(row, side, edge, along, long);
        let found = best_length(usual, 4.0 * height, settled, stone);
        settled.extend(found);
    }
}

fn end_stone(row: usize, side: usize, edge: f64, along: f64, long: bool) -> Reserved {
    let (from, to) = if side == 0 {
        (edge, edge + along)
    } else {
        (edge - along, edge)
    };
    let role = if long { Role::EndLong } else { Role::EndShort };
    let mut one = Reserved::new(from, to, row, role);
    one.outer = Some(side);
    one
}

/// The end stone nearest to the usual length that keeps clear of throughs and of its
/// neighbours, or that reaches up to a through; failing that, the one that laps most.
fn best_length(
    usual: f64,
    most: f64,
    settled: &[Reserved],
    stone: impl Fn(f64) -> Reserved,
) -> Option<Reserved> {
    let plain = stone(0.0);
    let up_to = |other: &Reserved| match plain.outer {
        Some(0) => other.from - plain.from,
        _ => plain.to - other.to,
    };
    let touching = settled
        .iter()
        .filter(|other| other.row == plain.row)
        .map(up_to);
    let mut best: Option<(f64, Reserved)> = None;
    let tries = (0..24)
        .flat_map(|i| [usual + 0.01 * f64::from(i), usual - 0.01 * f64::from(i)])
        .chain(touching)
        .filter(|along| 0.1 <= *along && *along <= most);
    for one in tries.map(&stone) {
        let lap = settled
            .iter()
            .map(|other| one.lap(other))
            .fold(LEAST_LAP_M, f64::min);
        if best.as_ref().is_none_or(|(most, _)| *most < lap) {
            best = Some((lap, one));
        }
    }
    best.map(|(_, one)| one)
}
