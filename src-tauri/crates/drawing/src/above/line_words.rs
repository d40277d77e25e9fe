//! The line in words: straights, arcs, and how a straight string lies beside an arc.

use crate::paper::words::{self, shown};
use craft::course::Course;
use craft::frames::Curve;
use craft::plan::Plan;
use craft::quantity::{Length, Read, metres};
use craft::wall::{Bend, Side};

/// Measurements closer than this are the same to a tape.
const SAME_M: f64 = 0.0005;

/// Whether two measurements are the same to a tape.
pub(crate) fn same(a: Length, b: Length) -> bool {
    (a - b).si().abs() < SAME_M
}

/// Whether the line is one straight.
pub(crate) fn is_straight(plan: &Plan) -> bool {
    plan.wall.line.spans().all(|(_, _, bend)| bend.is_none())
}

/// `radius 6.00 m, turning left`.
pub(crate) fn bend(course: &Course, bend: Bend) -> String {
    let radius = shown(course, bend.radius);
    format!("radius {radius}, turning {}", bend.turn.word())
}

/// `straight 4.00 m; arc 3.00 m, radius 6.00 m, turning left; straight 2.00 m`.
pub(crate) fn line(plan: &Plan, course: &Course) -> String {
    let stretches: Vec<String> = plan
        .wall
        .line
        .spans()
        .map(|(from, to, bent)| {
            let length = shown(course, to - from);
            match bent {
                None => format!("straight {length}"),
                Some(bent) => format!("arc {length}, {}", bend(course, bent)),
            }
        })
        .collect();
    stretches.join("; ")
}

/// How far a straight string is off each face of an arc at the middle of its longest bay:
/// inside the wall at the outer face, clear of it at the inner.
pub(crate) fn string_beside(course: &Course, curve: &Curve) -> String {
    let off = Side::BOTH.map(|side| {
        let bow = match side {
            Side::Left => curve.bow[0],
            Side::Right => curve.bow[1],
        };
        let how = if side == curve.bend.turn {
            "clear of"
        } else {
            "inside"
        };
        format!("{} {how} the {} face", shown(course, bow), side.word())
    });
    words::list(&off)
}

/// Whether a station is the one where a ring comes back to its first frame.
pub(crate) fn is_ring_end(plan: &Plan, station: Length) -> bool {
    plan.wall.is_ring() && same(station, plan.wall.length())
}

/// The side the front face is on, for a wall that holds a bank.
pub(crate) fn front(plan: &Plan) -> Option<Side> {
    let retaining = plan.retaining.as_ref()?;
    Some(retaining.given.side.other())
}

/// The trench beyond the faces, or nothing.
pub(crate) fn outset(course: &Course) -> Length {
    let footing = course.wall.footing;
    footing.map_or(metres(0.0), |footing| footing.outset)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::{self, lie};

    /// By hand: bays of 1.5 m on a radius of 6 m turn 0.25 rad; 1 - cos 0.125 = 0.0078023; the
    /// faces stand 0.38333 m off, on radii of 5.61667 m and 6.38333 m: 0.0438 m and 0.0498 m.
    #[test]
    fn a_bend_in_words() {
        let mut course = fixture::weekend();
        course.wall.line = vec![lie::straight(4.0), lie::arc(3.0, 6.0, Side::Left)];
        course.wall.length = Some(metres(7.0));
        let plan = fixture::plan(&course);
        assert_eq!(
            line(&plan, &course),
            "straight 4.00 m; arc 3.00 m, radius 6.00 m, turning left"
        );
        assert_eq!(
            string_beside(&course, &plan.fittings.curves[0]),
            "0.044 m clear of the left face and 0.05 m inside the right face"
        );
        assert!(!is_straight(&plan) && front(&plan).is_none());
    }
}
