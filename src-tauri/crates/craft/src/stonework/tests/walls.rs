//! Walls to lay in tests.

use super::super::{Crossing, CutReach, CutThrough, Face, FaceEnd, Point, ThroughRow};
use crate::quantity::{Length, metres};
use crate::wall::{Batter, Footing, Section, Side};

pub(super) fn point(x: f64, y: f64) -> Point {
    Point {
        x: metres(x),
        y: metres(y),
    }
}

fn batter(n: f64) -> Batter {
    Batter::one_in(n).expect("more than zero")
}

fn line(points: &[[f64; 2]]) -> Vec<Point> {
    points.iter().map(|[x, y]| point(*x, *y)).collect()
}

/// A usual wall between built ends; its ground and top as given, in metres.
pub(super) fn face(length: f64, ground: &[[f64; 2]], top: &[[f64; 2]], seed: u64) -> Face {
    let head = FaceEnd::Head(batter(14.0));
    Face {
        length: metres(length),
        ground: line(ground),
        top: line(top),
        section: Section::new(metres(1.1), metres(0.4), batter(6.0), batter(6.0)).expect("sound"),
        throughs: vec![ThroughRow {
            below_top: metres(0.55),
            spacing: metres(0.9),
            width: metres(0.3),
            thickness: metres(0.11),
        }],
        cope_height: metres(0.25),
        cope_thickness: metres(0.1),
        footing_depth: metres(0.15),
        ends: [head, head],
        course_heights: [metres(0.15), metres(0.09)],
        stone_lengths: [metres(0.13), metres(0.45)],
        seed,
    }
}

/// Six metres on the level, 1.1 m to the cope.
pub(super) fn level(seed: u64) -> Face {
    face(6.0, &[[0.0, 0.0]], &[[0.0, 1.1]], seed)
}

/// Walls of many shapes, each with a name.
pub(super) fn all_shapes(seed: u64) -> Vec<(&'static str, Face)> {
    let slope = [[0.0, 0.0], [6.0, 0.9]];
    let two_rows = |mut face: Face| {
        let mut upper = face.throughs[0];
        upper.below_top = metres(0.45);
        face.throughs[0].below_top = metres(1.0);
        face.throughs.push(upper);
        face
    };
    let bare = |mut face: Face| {
        face.footing_depth = metres(0.0);
        face
    };
    let ends = |mut face: Face, start: FaceEnd, finish: FaceEnd| {
        face.ends = [start, finish];
        face
    };
    let small = |mut face: Face| {
        face.course_heights = [metres(0.11), metres(0.07)];
        face.stone_lengths = [metres(0.1), metres(0.3)];
        face
    };
    let none = |mut face: Face| {
        face.throughs.clear();
        face.cope_height = metres(0.0);
        face
    };
    vec![
        ("level", level(seed)),
        ("slope", face(6.0, &slope, &[[0.0, 1.5]], seed)),
        ("bare slope", bare(face(6.0, &slope, &[[0.0, 1.5]], seed))),
        (
            "follows",
            face(
                6.0,
                &[[0.0, 0.0], [3.0, 0.6], [6.0, 0.7]],
                &[[0.0, 1.1], [3.0, 1.7], [6.0, 1.8]],
                seed,
            ),
        ),
        (
            "falls",
            bare(face(
                7.0,
                &[[0.0, 0.0], [7.0, -1.0]],
                &[[0.0, 1.0], [7.0, 0.0]],
                seed,
            )),
        ),
        (
            "stepped",
            face(
                6.0,
                &slope,
                &[
                    [0.0, 1.1],
                    [2.0, 1.1],
                    [2.0, 1.4],
                    [4.0, 1.4],
                    [4.0, 1.7],
                    [6.0, 1.7],
                ],
                seed,
            ),
        ),
        ("raked", ends(level(seed), FaceEnd::Raked, FaceEnd::OnAndOn)),
        ("joined", ends(level(seed), FaceEnd::Joined, FaceEnd::Raked)),
        ("short", face(2.0, &[[0.0, 0.0]], &[[0.0, 1.1]], seed)),
        ("small stone", small(level(seed))),
        (
            "two rows",
            two_rows(face(8.0, &[[0.0, 0.0]], &[[0.0, 1.5]], seed)),
        ),
        ("plain", none(face(5.0, &[[0.0, 0.0]], &[[0.0, 0.9]], seed))),
    ]
}

fn across(bed: f64) -> CutThrough {
    CutThrough {
        bed: metres(bed),
        reach: CutReach::Across,
    }
}

/// A freestanding wall cut through two rows of throughs; a retaining one has a plumb side.
pub(super) fn crossing(seed: u64, retaining: bool) -> Crossing {
    let right = if retaining {
        Batter::PLUMB
    } else {
        batter(6.0)
    };
    let height: Length = metres(1.2);
    Crossing {
        section: Section::new(height, metres(0.42), batter(6.0), right).expect("sound"),
        throughs: [0.45, 0.85].map(across).to_vec(),
        through_thickness: metres(0.1),
        through_projection: metres(0.03),
        footing: Some(Footing {
            depth: metres(0.15),
            outset: metres(0.05),
        }),
        cope_height: metres(0.25),
        course_heights: [metres(0.15), metres(0.09)],
        seed,
    }
}

/// The same where no stone crosses the wall: three quarters of the width at the bed, the
/// lower through from the left and the upper one from the right, or the other way round.
pub(super) fn short_throughs(seed: u64, retaining: bool) -> Crossing {
    let mut crossing = crossing(seed, retaining);
    for (at, one) in crossing.throughs.iter_mut().enumerate() {
        let side = if (seed as usize + at).is_multiple_of(2) {
            Side::Left
        } else {
            Side::Right
        };
        one.reach = CutReach::From(side, crossing.section.width_at(one.bed) * 0.75);
    }
    crossing
}

/// Sections of both kinds of wall with both kinds of throughs.
pub(super) fn sections(seed: u64) -> [Crossing; 4] {
    [
        crossing(seed, false),
        crossing(seed, true),
        short_throughs(seed, false),
        short_throughs(seed, true),
    ]
}
