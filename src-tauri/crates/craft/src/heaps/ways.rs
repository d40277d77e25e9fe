//! Barrow ways through the rows, and the stretches of row they leave.

use super::field::{Field, ROUNDING};
use crate::quantity::{Length, Read, metres};
use crate::wall::Side;

/// A way moves to the joint of two stints where one is no farther off than this share of the
/// distance between ways.
const MOVES_BY: f64 = 0.25;

/// So often what a way takes of the line is looked at again; each time it changes less.
const NARROWED: u32 = 6;

/// The line is looked at in steps of this where a way takes more of it than its own bend tells.
const STEP_M: f64 = 0.05;

/// What lies no farther within a way than this lies beside it.
const BESIDE_M: f64 = 1e-6;

/// A barrow way, straight out from the wall through every row.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Way {
    /// Its middle.
    pub station: Length,
    /// Of the way.
    pub width: Length,
    /// How far out it runs on the left and on the right, as offsets from the centre line;
    /// nothing where no row stands for it to pass, or a bend leaves it no room.
    pub reaches: [Option<Length>; 2],
}

impl Way {
    /// How far out it runs on one side.
    pub fn reach(&self, side: Side) -> Option<Length> {
        let [left, right] = self.reaches;
        match side {
            Side::Left => left,
            Side::Right => right,
        }
    }

    /// The same way with its reach on a side: past the outermost row, as far as the ground is
    /// its own.
    pub(super) fn reaching(self, field: &Field<'_>, side: Side, near: f64, far: f64) -> Self {
        let mut reach = far;
        // The farther out, the more of the line it takes on the inside of a bend.
        for _ in 0..NARROWED {
            let (from, to) = self.taken(field, side, reach);
            reach = reach.min(field.room(side, from, to));
        }
        let reach = Some(metres(reach)).filter(|reach| near < reach.si());
        let mut reaches = self.reaches;
        reaches[usize::from(side == Side::Right)] = reach;
        Self { reaches, ..self }
    }

    /// The stations between which it takes the line where a row reaches `far` out.
    fn taken(&self, field: &Field<'_>, side: Side, far: f64) -> (f64, f64) {
        let (station, half) = (self.station.si(), self.width.si() / 2.0);
        let mut taken = half;
        // The line may bend more sharply a little farther on, and then the way takes more of it.
        for _ in 0..NARROWED {
            let near = 2.0 * taken;
            let share = field.least_share(side, station - near, station + near, far);
            taken = taken.max(half_of_line(half, share, far));
        }
        let (before, after) = (station - taken, station + taken);
        if field.is_straight() {
            return (before, after);
        }
        let covers = |station: f64| self.covers(field, side, station, far);
        let (first, last) = if field.ring {
            let half_round = field.length() / 2.0;
            (station - half_round, station + half_round)
        } else {
            (field.from, field.to)
        };
        (
            stepped(before, before.min(first), covers),
            stepped(after, after.max(last), covers),
        )
    }

    /// Whether the place beside a station as far out as `far` lies in the way. Near the middle
    /// of a bend the way is wider than the ground left to it, and runs over into the ground of
    /// what comes before the bend and after it.
    fn covers(&self, field: &Field<'_>, side: Side, station: f64, far: f64) -> bool {
        let station = field.around(station);
        let foot = field.place(self.station.si());
        let place = field.beside(side, station, far);
        let (x, y) = (place.x_m - foot.x_m, place.y_m - foot.y_m);
        let (sin, cos) = foot.heading.sin_cos();
        let (along, leftwards) = (x * cos + y * sin, y * cos - x * sin);
        let out = match side {
            Side::Left => leftwards,
            Side::Right => -leftwards,
        };
        along.abs() < self.width.si() / 2.0 - BESIDE_M
            && 0.0 < out
            && out < field.room(side, station, station)
    }
}

/// Ways no farther apart than `every`, evenly spread, and at a joint of stints where one is
/// near. A ring has one at its start, so that none of its rows runs on past it.
pub(super) fn ways(field: &Field<'_>, every: f64, width: f64, joints: &[f64]) -> Vec<Way> {
    let whole = field.to - field.from;
    let stretches = (whole / every.max(0.1) - ROUNDING).ceil().max(1.0);
    let apart = whole / stretches;
    let first = if field.ring { 0_u32 } else { 1 };
    (first..)
        .map(f64::from)
        .take_while(|number| *number < stretches)
        .map(|number| {
            let even = field.from + apart * number;
            let at_start = field.ring && number < 0.5;
            Way {
                station: metres(if at_start {
                    even
                } else {
                    at_joint(even, apart * MOVES_BY, joints)
                }),
                width: metres(width),
                reaches: [None; 2],
            }
        })
        .collect()
}

fn at_joint(even: f64, most: f64, joints: &[f64]) -> f64 {
    let off = |joint: &f64| (joint - even).abs();
    let nearest = joints
        .iter()
        .copied()
        .min_by(|a, b| off(a).total_cmp(&off(b)));
    nearest.filter(|joint| off(joint) <= most).unwrap_or(even)
}

/// The stretches of a row between ways on one side, as stations. On the inside of a bend a
/// way takes more of the line than it is wide, the more the farther out the row reaches.
pub(super) fn between(field: &Field<'_>, ways: &[Way], side: Side, far: f64) -> Vec<(f64, f64)> {
    let taken = |way: &Way| way.taken(field, side, far);
    // The way at the start of a ring is at its end as well.
    let (start, inner) = match ways.split_first() {
        Some((start, inner)) if field.ring => (Some(taken(start)), inner),
        _ => (None, ways),
    };
    let mut from = start.map_or(field.from, |(_, after)| after);
    let mut stretches = Vec::new();
    for (before, after) in inner.iter().map(taken) {
        stretches.push((from, before));
        from = after;
    }
    let to = start.map_or(field.to, |(before, _)| field.to + before);
    stretches.push((from, to));
    stretches.retain(|(from, to)| from < to);
    stretches
}

/// Half the line that a way half so wide takes where a row reaches `far` out and only a share
/// of the line's length is left there. In a bend of radius R that is R - far, the way's edge
/// stands half its width off the middle, and the angle between them is asin(half / (R - far)).
fn half_of_line(half: f64, share: f64, far: f64) -> f64 {
    let straight = half / share;
    let sine = (straight * (1.0 - share) / far.max(1e-9)).min(1.0);
    if sine <= 1e-9 {
        return straight;
    }
    straight * (sine.asin() / sine)
}

/// The first station from one on towards a last one that a way no longer covers.
fn stepped(from: f64, last: f64, covers: impl Fn(f64) -> bool) -> f64 {
    let step = STEP_M.copysign(last - from);
    let mut steps = (0_u32..)
        .map(f64::from)
        .map(|number| from + step * number)
        .take_while(|at| (*at - from).abs() <= (last - from).abs());
    steps.find(|at| !covers(*at)).unwrap_or(last)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::wall::{Bend, Line, Stretch, total};

    fn stations(length: f64, joints: &[f64]) -> Vec<f64> {
        let line = Line::straight(metres(length));
        let field = Field::new(&line, false, [0.0; 2], 10.0);
        let ways = ways(&field, 5.0, 1.0, joints);
        ways.iter().map(|way| way.station.si()).collect()
    }

    /// By hand: 9 m are two stretches of 4.5 m, and a joint within 1.125 m draws the way to it;
    /// 12 m are three of 4 m; 5 m need none.
    #[test]
    fn ways_lie_at_the_joints_of_stints() {
        assert_eq!(stations(9.0, &[]), [4.5]);
        assert_eq!(stations(9.0, &[2.0, 4.9, 7.0]), [4.9]);
        assert_eq!(stations(9.0, &[2.0, 7.0]), [4.5]);
        assert_eq!(stations(12.0, &[3.2, 6.0, 9.1]), [3.2, 8.0]);
        assert!(stations(5.0, &[2.5]).is_empty());
    }

    #[test]
    fn rows_leave_the_ways_free() {
        let line = Line::straight(metres(9.0));
        let field = Field::new(&line, false, [0.0; 2], 10.0);
        let ways = ways(&field, 5.0, 1.0, &[]);
        let rows = between(&field, &ways, Side::Left, 3.0);
        assert_eq!(rows, [(0.0, 4.0), (5.0, 9.0)]);
    }

    /// By hand: a bend of radius 8 m and 0.4 m of ground left to its middle. A way 1 m wide,
    /// 5.3 m along the bend, covers all of that ground, and of the straight before the bend, at
    /// an angle of 5.3/8, what lies nearer to its middle line than 0.5 m: the last
    /// `(0.5 - 0.4 sin(5.3/8)) / cos(5.3/8)`.
    #[test]
    fn near_the_middle_of_a_bend_a_way_takes_of_the_straight_before_it() {
        let stretches = [
            Stretch {
                length: metres(10.0),
                bend: None,
            },
            Stretch {
                length: metres(12.0),
                bend: Some(Bend {
                    radius: metres(8.0),
                    turn: Side::Left,
                }),
            },
        ];
        let line = Line::of_length(&stretches, total(&stretches));
        let field = Field::new(&line, false, [0.0; 2], 10.0);
        let way = Way {
            station: metres(15.3),
            width: metres(1.0),
            reaches: [None; 2],
        };
        let (before, _) = way.taken(&field, Side::Left, 7.6);
        let angle: f64 = 5.3 / 8.0;
        let by_hand = 10.0 - (0.5 - 0.4 * angle.sin()) / angle.cos();
        assert!((by_hand - STEP_M..=by_hand).contains(&before), "{before}");
        // Outside the bend it takes no more than it is wide.
        let (before, after) = way.taken(&field, Side::Right, 7.6);
        assert!((before - 14.8).abs() < 1e-9 && (after - 15.8).abs() < 1e-9);
    }
}
