//! Checks on the plans of made-up lines: winding, on uneven ground, before banks, round.

use crate::fixture::{self, lie};
use crate::overlap::{faults, words};
use crate::paper::scene::{Mark, Point, Room};
use crate::paper::strewn::chance;
use craft::course::{Course, CurveSpacing, End, FrameKind, WallKind};
use craft::plan::Plan;
use craft::quantity::{Length, Read, Units, metres};
use craft::wall::{Batter, Side, Survey, Top};
use std::f64::consts::TAU;

const PAGE: Room = Room {
    width_mm: 180.0,
    height_mm: 240.0,
};
const HALF: Room = Room {
    width_mm: 180.0,
    height_mm: 135.0,
};

/// A course whose line, ground, top and bank hang on the key.
pub(crate) fn made_up(key: u64) -> Course {
    let dice = |salt: u64| chance(key * 1000 + salt);
    let between = |salt: u64, low: f64, high: f64| low + (high - low) * dice(salt);
    let side = |salt: u64| {
        if dice(salt) < 0.5 {
            Side::Left
        } else {
            Side::Right
        }
    };
    let mut course = fixture::weekend();
    if dice(0) < 0.3 {
        course.units = Units::Imperial;
    }
    if dice(1) < 0.3 {
        course.frames.kind = FrameKind::Timber;
    }
    if dice(2) < 0.3 {
        course.frames.curve = CurveSpacing::KeepsUnderTolerance;
    }
    let wall = &mut course.wall;
    wall.right = Batter::one_in(between(3, 4.0, 14.0)).expect("sound");
    wall.line = if dice(4) < 0.15 {
        let radius = between(5, 1.5, 6.0);
        vec![lie::arc(TAU * radius, radius, side(6))]
    } else {
        (0..1 + (dice(7) * 5.0) as u64)
            .map(|at| {
                let salt = 100 + at * 10;
                let length = between(salt, 1.0, 6.0);
                if dice(salt + 1) < 0.35 {
                    lie::straight(length)
                } else {
                    lie::arc(length, between(salt + 2, 1.8, 15.0), side(salt + 3))
                }
            })
            .collect()
    };
    let length = wall.line.iter().fold(0.0, |sum, one| sum + one.length.si());
    wall.length = Some(metres(length));
    if dice(8) < 0.5 {
        wall.ground = [0.0, 0.4, 1.0]
            .map(|share| survey(length * share, &between))
            .to_vec();
    }
    wall.top = match dice(9) {
        low if low < 0.4 => Top::Level,
        low if low < 0.7 => Top::FollowsGround,
        _ => Top::Stepped {
            length: metres(2.0),
            height: metres(0.1),
        },
    };
    if dice(10) < 0.3 {
        wall.kind = WallKind::Retaining(lie::bank(side(11)));
    }
    let end = |salt: u64| [End::Head, End::Joined, End::Raked][(dice(salt) * 3.0) as usize];
    wall.ends = [end(12), end(13)];
    course
}

fn survey(station: f64, between: &dyn Fn(u64, f64, f64) -> f64) -> Survey {
    let salt = 500 + (station * 7.0) as u64;
    let level = between(salt, -0.3, 0.1);
    lie::survey(
        station,
        [level, level + between(salt + 1, -0.08, 0.08), level],
    )
}

fn plans() -> impl Iterator<Item = (u64, Course, Plan)> {
    (0..60).map(|key| {
        let course = made_up(key);
        let plan = fixture::plan(&course);
        (key, course, plan)
    })
}

#[test]
fn every_text_of_every_line_is_clear() {
    let mut all = Vec::new();
    for (key, course, plan) in plans() {
        let room = if key % 2 == 0 { PAGE } else { HALF };
        for scene in [
            crate::line_plan(&plan, &course, room),
            crate::setting_out(&plan, &course, room),
        ] {
            let found = faults(&scene);
            all.extend(
                found
                    .into_iter()
                    .map(|it| format!("{key}, {}: {it}", scene.name)),
            );
        }
    }
    assert!(all.is_empty(), "{} faults\n{}", all.len(), all.join("\n"));
}

/// Nothing a line is pegged by may be left out for want of room.
#[test]
fn joints_radii_and_left_and_right_always_find_a_place() {
    for (key, course, plan) in plans() {
        let scene = crate::line_plan(&plan, &course, PAGE);
        let words = words(&scene);
        let shown = |length: Length| crate::paper::words::shown(&course, length);
        for word in ["left", "right", "station 0"] {
            assert!(words.contains(&word), "{key}: {word} in {words:?}");
        }
        for joint in plan.wall.line.joints() {
            assert!(words.contains(&shown(joint).as_str()), "{key}: {joint:?}");
        }
        for curve in &plan.fittings.curves {
            let radius = shown(curve.bend.radius);
            let bare = words.contains(&radius.as_str());
            let led = words.contains(&format!("radius {radius}").as_str());
            assert!(bare || led, "{key}: {radius} in {words:?}");
        }
    }
}

/// The bars of the ground plan as dots: where a tape pulled on the paper reads what the plan
/// says, times the scale.
#[test]
fn the_ground_plan_is_to_scale() {
    for (key, course, plan) in plans() {
        if plan.frames.bars.is_none() {
            continue;
        }
        let scene = crate::line_plan(&plan, &course, PAGE);
        let k = 1000.0 / f64::from(scene.scale.expect("to scale"));
        let dots: Vec<(Point, f64)> = scene
            .marks
            .iter()
            .filter_map(|mark| match mark {
                Mark::Circle {
                    pen: crate::Pen::Solid,
                    centre,
                    radius_mm,
                } => Some((*centre, *radius_mm)),
                _ => None,
            })
            .collect();
        assert_eq!(dots.len(), 2 * plan.frames.rows.len(), "{key}");
        for (row, pair) in plan.frames.rows.iter().zip(dots.chunks(2)) {
            let apart = (pair[0].0.x - pair[1].0.x).hypot(pair[0].0.y - pair[1].0.y);
            // The dots lie outside the faces.
            let inner = apart - pair[0].1 - pair[1].1;
            assert!((inner - row.base_width().si() * k).abs() < 1e-6, "{key}");
        }
    }
}
