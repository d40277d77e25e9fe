//! From the room a stone has to the stone: never a rectangle, its corners off, its joints
//! a little open.

use super::luck::Luck;
use super::polygon::{P, Upright, area, bounds};

/// The room for one stone, in metres.
pub(super) struct Room<'a> {
    /// The joint lines on both sides.
    pub(super) sides: [Upright; 2],
    /// Whether a side is the wall's own edge and not a joint.
    pub(super) edge: [bool; 2],
    /// The bed it lies on, from left to right.
    pub(super) bed: &'a [P],
    /// Its top at the left and at the right.
    pub(super) top: [f64; 2],
    /// How well it is squared: 0 as found, 1 picked for its square corners.
    pub(super) squared: f64,
}

/// A stone in its room.
pub(super) struct Shaped {
    /// Its corners, anticlockwise.
    pub(super) outline: Vec<P>,
    /// Its upper side from left to right, for the next one to lie on.
    pub(super) upper: Vec<P>,
    /// A wedge driven into a corner that was missing.
    pub(super) pinning: Option<Vec<P>>,
}

/// Half of the least joint, and what it may be wider, in metres.
const HALF_JOINT_M: [f64; 2] = [0.0025, 0.0055];
/// No pinning is smaller, in square metres.
const LEAST_PINNING_M2: f64 = 0.0004;
/// The most corners of an outline.
const MOST_CORNERS: usize = 9;

impl Room<'_> {
    /// A stone that fills this room.
    pub(super) fn fill(&self, luck: &mut Luck) -> Shaped {
        let bottom = self.lower_side(luck);
        let last = bottom.len() - 1;
        let [tl, tr] = self.upper_corners(luck);
        let corners = [bottom[0], bottom[last], tr, tl];
        // What lies along from each corner, and what up or down from it.
        let beside = [
            [bottom[1], tl],
            [bottom[last - 1], tr],
            [tl, bottom[last]],
            [tr, bottom[0]],
        ];
        let [left, low, right, high] = bounds(&corners);
        let size = [right - left, high - low];
        let missing = self.missing_corner(size, luck);
        let mut spare = MOST_CORNERS - 3 - bottom.len() - usize::from(missing.is_some());
        let mut cuts = corners.map(|corner| [corner; 2]);
        for (i, cut) in cuts.iter_mut().enumerate() {
            if missing == Some(i) {
                *cut = broken_off(corners[i], beside[i], size, luck);
            } else if !luck.chance(0.08 + 0.12 * self.squared) && 0 < spare {
                spare -= 1;
                *cut = self.worn(corners[i], beside[i], size, luck);
            }
        }
        let middle = self.bump(cuts[3][0], cuts[2][0], size[1], luck);
        let mut outline = vec![cuts[0][1], cuts[0][0]];
        outline.extend(&bottom[1..last]);
        outline.extend([cuts[1][0], cuts[1][1], cuts[2][1], cuts[2][0]]);
        outline.extend([middle, cuts[3][0], cuts[3][1]]);
        outline.dedup_by(|a, b| near(*a, *b));
        let mut upper = vec![cuts[3][1], cuts[3][0], middle, cuts[2][0], cuts[2][1]];
        let mut pinning = None;
        if let Some(i) = missing {
            // Where a corner is missing the next stone lies on the pinning.
            upper[if i == 2 { 4 } else { 0 }] = corners[i];
            let [along, down] = cuts[i];
            let [next, other] = if i == 2 { [along, down] } else { [down, along] };
            pinning = wedge([corners[i], next, other], luck);
        }
        Shaped {
            outline,
            upper,
            pinning,
        }
    }

    /// A corner worn off: a point along from it and a point up or down from it.
    fn worn(
        &self,
        at: P,
        [along, up]: [P; 2],
        [length, height]: [f64; 2],
        luck: &mut Luck,
    ) -> [P; 2] {
        let size = 1.0 - 0.6 * self.squared;
        let by = size * luck.between(0.06, 0.17) * length.min(0.26);
        let off = size * luck.between(0.08, 0.3) * height.min(0.15);
        [toward(at, along, by, 0.4), toward(at, up, off, 0.4)]
    }

    fn half_joint(&self, side: usize, luck: &mut Luck) -> f64 {
        if self.edge[side] {
            0.0
        } else {
            luck.between(HALF_JOINT_M[0], HALF_JOINT_M[1])
        }
    }

    /// The bed from joint to joint, a few millimetres up.
    fn lower_side(&self, luck: &mut Luck) -> Vec<P> {
        let mut bottom = self.bed.to_vec();
        for point in &mut bottom {
            point[1] += luck.between(0.002, 0.006);
        }
        let last = bottom.len() - 1;
        for (side, at, sign) in [(0, 0, 1.0), (1, last, -1.0)] {
            let draw_in = self.draw_in(side, luck);
            bottom[at][0] =
                self.sides[side].at(bottom[at][1]) + sign * (self.half_joint(side, luck) + draw_in);
        }
        bottom
    }

    fn upper_corners(&self, luck: &mut Luck) -> [P; 2] {
        let mut corner = |side: usize, sign: f64| {
            let draw_in = self.draw_in(side, luck);
            let y = self.top[side];
            let x = self.sides[side].at(y) + sign * (self.half_joint(side, luck) + draw_in);
            [x, y]
        };
        [corner(0, 1.0), corner(1, -1.0)]
    }

    /// A side is seldom straight up: now and then one end of it falls back.
    fn draw_in(&self, side: usize, luck: &mut Luck) -> f64 {
        let falls_back = luck.chance(0.35);
        let by = luck.between(0.001, 0.010) * (1.0 - 0.7 * self.squared);
        if falls_back && !self.edge[side] {
            by
        } else {
            0.0
        }
    }

    /// Whether an upper corner is gone altogether, so that it takes a pinning.
    fn missing_corner(&self, [length, height]: [f64; 2], luck: &mut Luck) -> Option<usize> {
        let gone = luck.chance(0.13 * (1.0 - self.squared));
        let corner = if luck.chance(0.5) { 2 } else { 3 };
        let room = 0.17 < length && 0.075 < height && !self.edge[3 - corner];
        (gone && room).then_some(corner)
    }

    /// A point of the upper side, a little above or below the straight.
    fn bump(&self, left: P, right: P, height: f64, luck: &mut Luck) -> P {
        let part = luck.between(0.3, 0.7);
        let up = luck.between(-0.045, 0.03) * height * (1.0 - 0.6 * self.squared);
        [
            left[0] + (right[0] - left[0]) * part,
            left[1] + (right[1] - left[1]) * part + up,
        ]
    }
}

/// A corner broken off: more than worn, and not flatter than it is deep.
fn broken_off(at: P, [along, up]: [P; 2], [_, height]: [f64; 2], luck: &mut Luck) -> [P; 2] {
    let down = luck.between(0.032, 0.055).min(0.55 * height);
    [
        toward(at, along, down * luck.between(0.7, 1.0), 0.5),
        toward(at, up, down, 0.6),
    ]
}

/// So far from a corner toward the next, but no more than a share of the way.
fn toward(from: P, to: P, by: f64, most: f64) -> P {
    let way =
        ((to[0] - from[0]) * (to[0] - from[0]) + (to[1] - from[1]) * (to[1] - from[1])).sqrt();
    let part = if way < 1e-9 {
        0.0
    } else {
        (by / way).min(most)
    };
    [
        from[0] + (to[0] - from[0]) * part,
        from[1] + (to[1] - from[1]) * part,
    ]
}

fn near(a: P, b: P) -> bool {
    (a[0] - b[0]).abs() < 1e-9 && (a[1] - b[1]).abs() < 1e-9
}

/// A small stone in the corner between three points, anticlockwise, two of its tips off;
/// none where there is hardly room.
fn wedge(room: [P; 3], luck: &mut Luck) -> Option<Vec<P>> {
    let middle = super::polygon::middle(&room);
    let part = luck.between(0.12, 0.2);
    let [corner, next, last] = room.map(|p| toward(p, middle, part * distance(p, middle), 0.5));
    let size = luck.between(0.15, 0.3);
    let outline = vec![
        corner,
        toward(next, corner, size * distance(next, corner), 0.5),
        toward(next, last, size * distance(next, last), 0.5),
        toward(last, next, size * distance(next, last), 0.5),
        toward(last, corner, size * distance(last, corner), 0.5),
    ];
    (LEAST_PINNING_M2 < area(&outline)).then_some(outline)
}

fn distance(a: P, b: P) -> f64 {
    ((a[0] - b[0]) * (a[0] - b[0]) + (a[1] - b[1]) * (a[1] - b[1])).sqrt()
}

/// The bed for a stone over these tops: it lies on two of them, one on each side of its
/// middle, and bends down where it would hang far clear of the rest. `tops` run from left
/// to right, the first and the last at the stone's ends.
pub(super) fn bed_over(tops: &[P], clear: f64) -> Vec<P> {
    let hull = upper_hull(tops);
    let (Some(first), Some(last)) = (hull.first(), hull.last()) else {
        return Vec::new();
    };
    let middle = (first[0] + last[0]) / 2.0;
    let over = hull
        .windows(2)
        .position(|pair| middle <= pair[1][0])
        .unwrap_or(0);
    let (Some(a), Some(b)) = (hull.get(over), hull.get(over + 1)) else {
        return vec![*first, *last];
    };
    let rise = (b[1] - a[1]) / (b[0] - a[0]).max(1e-9);
    let straight = |x: f64| a[1] + rise * (x - a[0]);
    let hangs = [first, last].map(|end| clear < straight(end[0]) - end[1]);
    let mut bed = Vec::with_capacity(4);
    for (end, pivot, hang) in [(first, a, hangs[0]), (last, b, hangs[1])] {
        let down = [end[0], end[1].max(lowest(&hull, *pivot, *end))];
        let level = [end[0], straight(end[0])];
        match (hang, bed.is_empty()) {
            (true, true) => bed.extend([down, *pivot]),
            (true, false) => bed.extend([*pivot, down]),
            (false, _) => bed.push(level),
        }
    }
    bed
}

/// How low a bed may bend from a pivot to the end without cutting into what is between.
fn lowest(hull: &[P], pivot: P, end: P) -> f64 {
    hull.iter()
        .filter(|p| (p[0] - pivot[0]) * (end[0] - pivot[0]) > 1e-12)
        .map(|p| pivot[1] + (p[1] - pivot[1]) / (p[0] - pivot[0]) * (end[0] - pivot[0]))
        .fold(f64::NEG_INFINITY, f64::max)
}

/// The upper convex hull of points that run from left to right.
fn upper_hull(points: &[P]) -> Vec<P> {
    let mut hull: Vec<P> = Vec::with_capacity(points.len());
    for &p in points {
        if let Some(last) = hull.last()
            && p[0] - last[0] < 1e-6
        {
            let y = last[1].max(p[1]);
            let x = last[0];
            hull.pop();
            push_hull(&mut hull, [x, y]);
            continue;
        }
        push_hull(&mut hull, p);
    }
    hull
}

fn push_hull(hull: &mut Vec<P>, p: P) {
    while 1 < hull.len()
        && 0.0 <= super::polygon::turn(hull[hull.len() - 2], hull[hull.len() - 1], p)
    {
        hull.pop();
    }
    hull.push(p);
}
