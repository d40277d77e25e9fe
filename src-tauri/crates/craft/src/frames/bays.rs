//! What lies between two neighbouring frames: chords, bows and diagonals.

use super::FrameRow;
use crate::quantity::{Length, Read, metres};
use crate::wall::{Bend, Place, Side, Wall};
use std::f64::consts::PI;

/// The stretch between two neighbouring frames.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bay {
    /// Station of the frame it begins at.
    pub from: Length,
    /// Station of the frame it ends at; the length of the line where a ring closes.
    pub to: Length,
    /// Along the centre line.
    pub length: Length,
    /// How it bends.
    pub bend: Option<Bend>,
    /// Between the marks of the left bars, and of the right ones, at the ground: what a tape
    /// pulled straight reads.
    pub taped: [Length; 2],
    /// From the left mark to the next right one, and from the right to the next left.
    pub diagonals: [Length; 2],
    /// How far a straight string at the ground is off each face at the middle of the bay:
    /// inside the wall at the outer face of a curve, clear of it at the inner face.
    pub bow: [Length; 2],
}

/// All bays of a line, from frame to frame.
pub(super) fn bays(wall: &Wall, stations: &[Length], rows: &[FrameRow]) -> Vec<Bay> {
    stations
        .windows(2)
        .enumerate()
        .filter_map(|(at, pair)| {
            // The bay that closes a ring ends at the first frame.
            let (first, second) = (rows.get(at)?, rows.get(at + 1).or(rows.first())?);
            Some(bay(wall, (pair[0], pair[1]), first, second))
        })
        .collect()
}

fn bay(wall: &Wall, (from, to): (Length, Length), first: &FrameRow, second: &FrameRow) -> Bay {
    let middle = (from + to) / 2.0;
    let bend = wall
        .line
        .spans()
        .find(|(start, end, _)| *start < middle && middle < *end)
        .and_then(|(_, _, bend)| bend);
    let mark = |station: Length, row: &FrameRow, side: Side| Mark {
        place: wall.line.place(station).beside(side, row.offset(side)),
        level_m: (row.board() - row.rise(side)).si(),
    };
    let [left, right] = Side::BOTH.map(|side| mark(from, first, side));
    // A ring taped to the centimetre ends near its first frame; the tape goes to the frame.
    let end = if second.station < to && second.station < from {
        second.station
    } else {
        to
    };
    let [next_left, next_right] = Side::BOTH.map(|side| mark(end, second, side));
    let mean = |side| (first.offset(side) + second.offset(side)) / 2.0;
    Bay {
        from,
        to,
        length: to - from,
        bend,
        taped: [left.to(next_left), right.to(next_right)],
        diagonals: [left.to(next_right), right.to(next_left)],
        bow: Side::BOTH
            .map(|side| bend.map_or(metres(0.0), |bend| bow(bend, side, mean(side), to - from))),
    }
}

/// A mark on the ground.
#[derive(Clone, Copy)]
struct Mark {
    place: Place,
    level_m: f64,
}

impl Mark {
    /// What a tape pulled straight between two marks reads.
    fn to(self, other: Self) -> Length {
        let along = (other.place.x_m - self.place.x_m).hypot(other.place.y_m - self.place.y_m);
        metres(along.hypot(other.level_m - self.level_m))
    }
}

/// How far a straight string between two frames is off the face at the middle of a bay, the
/// sagitta: `r (1 - cos(b / 2R))`, with R the radius of the centre line, b the bay along it
/// and r the radius of the face that stands `offset` beside it.
pub fn bow(bend: Bend, side: Side, offset: Length, bay: Length) -> Length {
    let turned = (bay / bend.radius).get::<uom::si::ratio::ratio>();
    bend.radius_at(side, offset) * (1.0 - (turned / 2.0).cos())
}

/// The longest bay that keeps the bow at a face under a tolerance t:
/// `b = 2 R acos(1 - t / r)`; half a circle where the tolerance is as large as the radius.
pub fn spacing_for(bend: Bend, side: Side, offset: Length, tolerance: Length) -> Length {
    let radius = bend.radius_at(side, offset);
    let share = (tolerance / radius).get::<uom::si::ratio::ratio>();
    if (0.0..1.0).contains(&share) {
        bend.radius * (2.0 * (1.0 - share).acos())
    } else {
        bend.radius * PI
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn bend(radius: f64) -> Bend {
        Bend {
            radius: metres(radius),
            turn: Side::Left,
        }
    }

    /// By hand: 1.7 m on a radius of 6 m is about `1.7² / (8 · 6)` = 60 mm off; for 25 mm,
    /// `sqrt(8 · 6 · 0.025)` = 1.1 m.
    #[test]
    fn a_long_bay_is_far_off_the_curve() {
        let off = bow(bend(6.0), Side::Left, metres(0.0), metres(1.7)).si();
        assert!((off - 0.060).abs() < 0.0005, "{off}");
        let apart = spacing_for(bend(6.0), Side::Left, metres(0.0), metres(0.025)).si();
        assert!((apart - 1.1).abs() < 0.01, "{apart}");
    }

    #[test]
    fn the_spacing_for_a_bow_gives_that_bow() {
        for (radius, offset, tolerance) in [(6.0, 0.4, 0.025), (1.5, 0.35, 0.1), (30.0, 0.0, 0.01)]
        {
            let (offset, tolerance) = (metres(offset), metres(tolerance));
            let apart = spacing_for(bend(radius), Side::Right, offset, tolerance);
            let off = bow(bend(radius), Side::Right, offset, apart);
            assert!((off - tolerance).si().abs() < 1e-12);
        }
        let any = spacing_for(bend(2.0), Side::Left, metres(0.5), metres(2.0)).si();
        assert!((any - 2.0 * PI).abs() < 1e-12);
    }
}
