//! The ground beside a line: where a station and an offset lie, how long a path beside the
//! line is, and how far out a place is nearer to its own stretch than to any other.

use super::shape::where_it_is;
use crate::quantity::{Length, Read, metres};
use crate::wall::{Bend, Line, Place, Side};

/// The line is looked at in steps of this.
const STEP_M: f64 = 0.2;
/// And in no more of them for each of its stretches.
const MOST_STEPS: f64 = 2000.0;
/// No more than this, of a step or in metres, is rounding: the same length written in inches may come
/// out a hair longer or shorter.
pub(super) const ROUNDING: f64 = 1e-9;
/// Nearer along the line than this a bend's own radius says how far out there is room.
const OWN_M: f64 = 1.0;
/// Stretches nearer to each other than this are one wall on another: no room for anything.
const SAME_M: f64 = 0.2;
/// Going on straight beyond an end, another stretch of the line must not come nearer than
/// the end itself.
const NEARER: f64 = 0.999;

/// So many steps for a length. What is a hair longer than whole steps has no step more for it.
fn steps_along(length: f64) -> f64 {
    (length / STEP_M - ROUNDING).ceil().clamp(0.0, MOST_STEPS)
}

/// Where a station lies, beyond the ends straight on.
pub fn place_along(line: &Line, station: Length) -> Place {
    let (station, length) = (station.si(), line.length().si());
    let held = station.clamp(0.0, length);
    let place = line.place(metres(held));
    let beyond = station - held;
    Place {
        x_m: place.x_m + beyond * place.heading.cos(),
        y_m: place.y_m + beyond * place.heading.sin(),
        ..place
    }
}

/// The ground beside a line, in metres.
pub(super) struct Field<'a> {
    line: &'a Line,
    pub(super) ring: bool,
    /// Stations the ground is used from and to; beyond the ends of the line it goes on straight.
    pub(super) from: f64,
    pub(super) to: f64,
    /// Stations with the room left and right of each; empty beside a straight.
    room: Vec<(f64, [f64; 2])>,
}

impl<'a> Field<'a> {
    /// The ground beside a line as far out as `reach`, and beyond its ends as far as it goes on
    /// freely.
    pub(super) fn new(line: &'a Line, ring: bool, beyond: [f64; 2], reach: f64) -> Self {
        let length = line.length().si();
        let free = [0, 1].map(|end| freely_beyond(line, end, beyond[end]));
        let mut field = Self {
            line,
            ring,
            from: -free[0],
            to: length + free[1],
            room: Vec::new(),
        };
        if line.spans().any(|(_, _, bend)| bend.is_some()) {
            field.room = field.measured(reach);
        }
        field
    }

    /// Whether it bends nowhere.
    pub(super) fn is_straight(&self) -> bool {
        self.room.is_empty()
    }

    pub(super) fn length(&self) -> f64 {
        self.line.length().si()
    }

    pub(super) fn place(&self, station: f64) -> Place {
        place_along(self.line, metres(station))
    }

    /// A station of the line; on a ring one counted on past its end or before its start.
    pub(super) fn around(&self, station: f64) -> f64 {
        if self.ring {
            station.rem_euclid(self.length())
        } else {
            station
        }
    }

    pub(super) fn beside(&self, side: Side, station: f64, offset: f64) -> Place {
        self.place(station).beside(side, metres(offset))
    }

    /// By how many radians the line turns towards a side between two stations.
    pub(super) fn turned(&self, side: Side, from: f64, to: f64) -> f64 {
        turned(self.line, side, from, to)
    }

    /// The length of a path at an offset.
    pub(super) fn path(&self, side: Side, from: f64, to: f64, offset: f64) -> f64 {
        path(self.line, side, from, to, offset)
    }

    /// How much of a length along the line is left at an offset, where it shrinks most; never
    /// nothing, so that one may divide by it.
    pub(super) fn least_share(&self, side: Side, from: f64, to: f64, offset: f64) -> f64 {
        let bends = bends(self.line, side, from, to);
        bends.fold(1.0, |least: f64, (_, curvature)| {
            least.min((1.0 - curvature * offset).max(0.1))
        })
    }

    /// The stations about the middle of two others between which a path at an offset is so
    /// long, as far as there is room.
    pub(super) fn about_the_middle(
        &self,
        side: Side,
        (from, to): (f64, f64),
        offset: f64,
        long: f64,
    ) -> (f64, f64) {
        let (middle, most) = ((from + to) / 2.0, (to - from) / 2.0);
        let path = |half: f64| self.path(side, middle - half, middle + half, offset);
        if path(most) <= long {
            return (from, to);
        }
        let half = where_it_is(long, 0.0, most, path);
        (middle - half, middle + half)
    }

    /// The parts of a stretch beside which there is room as far out as an offset.
    pub(super) fn open(&self, side: Side, from: f64, to: f64, offset: f64) -> Vec<(f64, f64)> {
        if self.is_straight() {
            return vec![(from, to)];
        }
        let at = usize::from(side == Side::Right);
        let inside = self.looked_at(from, to);
        let mut open: Vec<(f64, f64)> = Vec::new();
        let mut begun: Option<(f64, f64)> = None;
        for (number, (station, room)) in inside.iter().enumerate() {
            if room[at] < offset {
                open.extend(begun.take());
                continue;
            }
            // What is open at the first or the last station looked at is open to the end.
            let begins = if number == 0 { from } else { *station };
            let ends = if number + 1 == inside.len() {
                to
            } else {
                *station
            };
            begun = Some((begun.map_or(begins, |(first, _)| first), ends));
        }
        open.extend(begun);
        open.retain(|(first, last)| first < last);
        open
    }

    /// The least room beside a stretch, looked at a step beyond either end as well.
    pub(super) fn room(&self, side: Side, from: f64, to: f64) -> f64 {
        let at = usize::from(side == Side::Right);
        let near = self.looked_at(from - STEP_M, to + STEP_M).iter();
        near.fold(f64::INFINITY, |least, (_, room)| least.min(room[at]))
    }

    /// The stations looked at between two others.
    fn looked_at(&self, from: f64, to: f64) -> &[(f64, [f64; 2])] {
        let first = self.room.partition_point(|(station, _)| *station <= from);
        let last = self.room.partition_point(|(station, _)| *station < to);
        self.room.get(first..last).unwrap_or_default()
    }

    /// Stations all along, closer on an arc, so that as far out as `reach` they are still no
    /// farther apart than a step.
    fn stations(&self, reach: f64) -> Vec<f64> {
        let length = self.length();
        let spans = self.line.spans();
        let spans = spans.map(|(from, to, bend)| (from.si(), to.si(), bend));
        let before = (self.from, 0.0, None);
        let after = (length, self.to, None);
        let mut stations = vec![self.from];
        for (from, to, bend) in [before].into_iter().chain(spans).chain([after]) {
            let wider = bend.map_or(1.0, |bend| 1.0 + reach / bend.radius.si());
            let count = steps_along((to - from) * wider);
            let steps = (1_u32..).map(f64::from).take_while(|step| *step <= count);
            stations.extend(steps.map(|step| from + (to - from) * step / count));
        }
        stations
    }

    /// The room beside each station looked at. The point so far out that another station is
    /// as near to it as its own is the middle of a circle through that station which touches
    /// the line here: with w from there to here and n straight out, its radius is
    /// `w² / (-2 w n)`. The least of all radii is the room; where the line bends it is no
    /// more than the radius of the bend.
    fn measured(&self, reach: f64) -> Vec<(f64, [f64; 2])> {
        let placed = |stations: Vec<f64>| -> Vec<(f64, Place)> {
            let with_place = |at| (at, self.place(at));
            stations.into_iter().map(with_place).collect()
        };
        let (here, places) = (placed(self.stations(reach)), placed(self.stations(0.0)));
        let beside = |(station, place): &(f64, Place)| {
            let mut room = Side::BOTH.map(|side| self.within_the_bend(side, *station));
            let (sin, cos) = place.heading.sin_cos();
            for (other, far) in &places {
                if self.apart(*station, *other) < OWN_M {
                    continue;
                }
                let (x, y) = (place.x_m - far.x_m, place.y_m - far.y_m);
                if x.hypot(y) < SAME_M {
                    room = [0.0; 2];
                    break;
                }
                let leftwards = y * cos - x * sin;
                let radius = (x * x + y * y) / (2.0 * leftwards.abs()).max(1e-9);
                let at = usize::from(0.0 < leftwards);
                room[at] = room[at].min(radius);
            }
            (*station, room)
        };
        here.iter().map(beside).collect()
    }

    /// Along the line, the shorter way round where it is closed.
    pub(super) fn apart(&self, one: f64, other: f64) -> f64 {
        let apart = (one - other).abs();
        if self.ring {
            apart.min(self.length() - apart)
        } else {
            apart
        }
    }

    fn within_the_bend(&self, side: Side, station: f64) -> f64 {
        let near = bends(self.line, side, station - OWN_M, station + OWN_M);
        near.fold(f64::INFINITY, |least, (_, curvature)| {
            if 0.0 < curvature {
                least.min(1.0 / curvature)
            } else {
                least
            }
        })
    }
}

/// How the line bends towards a side between two stations: pieces with their length, and one
/// over the radius, more than nothing where the side is the inside.
fn bends(line: &Line, side: Side, from: f64, to: f64) -> impl Iterator<Item = (f64, f64)> {
    line.spans().filter_map(move |(begins, ends, bend)| {
        let along = to.min(ends.si()) - from.max(begins.si());
        (0.0 < along).then(|| (along, bend.map_or(0.0, |bend| towards(bend, side))))
    })
}

/// By how many radians a line turns towards a side between two stations.
fn turned(line: &Line, side: Side, from: f64, to: f64) -> f64 {
    let bends = bends(line, side, from, to);
    bends.map(|(along, curvature)| along * curvature).sum()
}

/// The length of a path beside a line at an offset: `∫ (1 - c o) ds`, with c the curvature
/// towards its side.
pub(super) fn path(line: &Line, side: Side, from: f64, to: f64, offset: f64) -> f64 {
    (to - from) - turned(line, side, from, to) * offset
}

fn towards(bend: Bend, side: Side) -> f64 {
    let curvature = 1.0 / bend.radius.si();
    if bend.turn == side {
        curvature
    } else {
        -curvature
    }
}

/// How far the ground goes on straight beyond an end before another stretch of the line is
/// nearer than the end.
fn freely_beyond(line: &Line, end: usize, wanted: f64) -> f64 {
    let length = line.length().si();
    let count = steps_along(length).max(1.0);
    let wall: Vec<Place> = (0_u32..)
        .map(f64::from)
        .take_while(|at| *at <= count)
        .map(|at| line.place(metres(length * at / count)))
        .collect();
    let free = |beyond: f64| {
        let station = if end == 0 { -beyond } else { length + beyond };
        let here = place_along(line, metres(station));
        let apart = |place: &Place| (place.x_m - here.x_m).hypot(place.y_m - here.y_m);
        wall.iter().all(|place| beyond * NEARER <= apart(place))
    };
    let steps = steps_along(wanted);
    let tried = (1_u32..).map(f64::from).take_while(|at| *at <= steps);
    let freely = tried
        .map(|at| wanted * at / steps)
        .take_while(|beyond| free(*beyond));
    freely.last().unwrap_or(0.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::wall::{Stretch, total};
    use std::f64::consts::{PI, TAU};

    fn line(stretches: &[(f64, Option<(f64, Side)>)]) -> Line {
        let stretches: Vec<Stretch> = stretches
            .iter()
            .map(|(length, bend)| Stretch {
                length: metres(*length),
                bend: bend.map(|(radius, turn)| Bend {
                    radius: metres(radius),
                    turn,
                }),
            })
            .collect();
        Line::of_length(&stretches, total(&stretches))
    }

    fn open(field: &Field<'_>, side: Side, offset: f64) -> f64 {
        let parts = field.open(side, 0.0, field.length(), offset);
        parts.iter().map(|(from, to)| to - from).sum()
    }

    /// By hand: a quarter turn of radius 4 to the left is 2 π long; 1 m inside it 1.5 π, 1 m
    /// outside 2.5 π.
    #[test]
    fn paths_are_shorter_inside_a_bend() {
        let quarter = line(&[(TAU, Some((4.0, Side::Left)))]);
        let field = Field::new(&quarter, false, [0.0; 2], 10.0);
        let path = |side| field.path(side, 0.0, TAU, 1.0);
        assert!((path(Side::Left) - 1.5 * PI).abs() < 1e-12);
        assert!((path(Side::Right) - 2.5 * PI).abs() < 1e-12);
        let (from, to) = field.about_the_middle(Side::Left, (0.0, TAU), 1.0, 1.5);
        assert!((field.path(Side::Left, from, to, 1.0) - 1.5).abs() < 1e-9);
        assert!((from + to - TAU).abs() < 1e-9);
    }

    /// Inside a ring there is room to its middle and no farther; outside there is no end.
    #[test]
    fn a_ring_has_room_to_its_middle() {
        let ring = line(&[(TAU * 3.0, Some((3.0, Side::Left)))]);
        let field = Field::new(&ring, true, [0.0; 2], 10.0);
        assert!((open(&field, Side::Left, 2.99) - TAU * 3.0).abs() < 1e-9);
        assert!(open(&field, Side::Left, 3.01) < 1e-9);
        assert!((open(&field, Side::Right, 50.0) - TAU * 3.0).abs() < 1e-9);
    }

    /// By hand: a hairpin of two straights 4 m apart leaves 2 m beside each within it.
    #[test]
    fn a_hairpin_has_room_to_half_way_across() {
        let half = PI * 2.0;
        let hairpin = line(&[(8.0, None), (half, Some((2.0, Side::Left))), (8.0, None)]);
        let field = Field::new(&hairpin, false, [0.0; 2], 10.0);
        assert!((open(&field, Side::Left, 1.98) - field.length()).abs() < 1e-9);
        assert!(open(&field, Side::Left, 2.1) < 1.0);
        assert!((open(&field, Side::Right, 9.0) - field.length()).abs() < 1e-9);
    }

    /// By hand: three quarters of a circle of radius 5 end heading past the start, which lies
    /// 5 m ahead and 5 m aside: 5 m on, the start is as near as the end.
    #[test]
    fn ground_beyond_an_end_stops_where_the_line_comes_near() {
        let bent = line(&[(TAU * 5.0 * 0.75, Some((5.0, Side::Left)))]);
        let field = Field::new(&bent, false, [0.0, 20.0], 10.0);
        let beyond = field.to - field.length();
        assert!((4.7..=5.1).contains(&beyond), "{beyond}");
        let straight = line(&[(4.0, None)]);
        let field = Field::new(&straight, false, [1.5, 3.0], 10.0);
        assert!((field.from + 1.5).abs() < 1e-12 && (field.to - 7.0).abs() < 1e-12);
        let place = place_along(&straight, metres(-1.5));
        assert!((place.x_m + 1.5).abs() < 1e-12 && place.y_m.abs() < 1e-12);
    }
}
