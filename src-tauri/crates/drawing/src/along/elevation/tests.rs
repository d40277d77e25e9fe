//! Checks on the elevation of walls that bend, rise and fall.

use super::elevation;
use crate::fixture::{self, lie};
use crate::overlap::{faults, words};
use crate::paper::pen::Pen;
use crate::paper::scene::{Mark, Room, Scene};
use craft::course::{Course, End, ThroughReach, WallKind};
use craft::plan::Plan;
use craft::quantity::{Length, Read, metres};
use craft::wall::{Batter, Side, Top};
use std::f64::consts::TAU;

const ROOMS: [(f64, f64); 3] = [(180.0, 125.0), (180.0, 240.0), (135.0, 78.0)];

fn room(at: usize) -> Room {
    let (width_mm, height_mm) = ROOMS[at % ROOMS.len()];
    Room {
        width_mm,
        height_mm,
    }
}

fn course(name: &str) -> Course {
    let all = fixture::courses();
    let found = all.into_iter().find(|(own, _)| *own == name);
    found.expect("there is such a course").1
}

fn drawn(name: &str) -> (Plan, Scene) {
    let course = course(name);
    let plan = fixture::plan(&course);
    let scene = elevation(&plan, &course, room(1));
    (plan, scene)
}

/// By hand: at the right face the ground falls from -0.03 m to -0.40 m.
#[test]
fn the_ground_falls_on_paper_as_it_does_in_the_field() {
    let (_, scene) = drawn("falling ground, level top");
    let ground = scene.marks.iter().find_map(|mark| match mark {
        Mark::Polyline {
            pen: Pen::Ground,
            points,
        } => Some(points),
        _ => None,
    });
    let ground = ground.expect("there is ground");
    let falls = ground[ground.len() - 1].y - ground[0].y;
    let mm_per_m = 1000.0 / f64::from(scene.scale.expect("to scale"));
    assert!((falls - 0.37 * mm_per_m).abs() < 1e-9, "{falls}");
    for figure in [
        "-0.03 m", "-0.233 m", "-0.34 m", "-0.40 m", "1.10 m", "1.47 m",
    ] {
        assert!(words(&scene).contains(&figure), "{figure}");
    }
    let said = &scene.description;
    assert!(said.contains("The top is level at 1.07 m."), "{said}");
    let last = "at 9.00 m ground -0.40 m, top 1.07 m, 1.47 m high";
    assert!(said.contains(last), "{said}");
    let first = "at 0.00 m ground -0.03 m (0.00 m on the centre line), top 1.07 m";
    assert!(said.contains(first), "{said}");
}

/// By hand: a bar at 1 in 6 leans by sqrt(1 + 1/36) = 1.013794: the 0.14 m above the board
/// rise 0.1381 m, the 0.60 m in the ground go down 0.5918 m; the rises are 1.07 m more than
/// the ground lies below 0.
#[test]
fn bars_rise_by_their_own_rise() {
    let (plan, scene) = drawn("falling ground, level top");
    let mm_per_m = 1000.0 / f64::from(scene.scale.expect("to scale"));
    let heights = |wanted: Pen| -> Vec<f64> {
        let bars = scene
            .marks
            .iter()
            .filter(|mark| matches!(mark, Mark::Polygon { pen, .. } if *pen == wanted));
        bars.map(|mark| mark.extent().height() / mm_per_m).collect()
    };
    let over: Vec<f64> = plan
        .frames
        .rows
        .iter()
        .map(|row| row.right_rise.si())
        .collect();
    assert_eq!(heights(Pen::Bar).len(), over.len());
    for (bar, rise) in heights(Pen::Bar).iter().zip(&over) {
        assert!((bar - rise - 0.1381).abs() < 1e-4, "{bar} {rise}");
    }
    assert!(
        heights(Pen::HiddenBar)
            .iter()
            .all(|deep| (deep - 0.5918).abs() < 1e-4)
    );
}

#[test]
fn a_ring_comes_back_to_its_first_frame() {
    let (plan, scene) = drawn("a ring");
    let texts = words(&scene);
    assert!(texts.contains(&"closes on station 0"));
    assert!(!texts.iter().any(|text| text.ends_with(" end")));
    assert_eq!(texts.iter().filter(|text| **text == "1").count(), 2);
    // By hand: 2 pi 2.5 m = 15.708 m.
    assert!(texts.contains(&"15.708 m"));
    assert!(texts.contains(&"arc to the right, radius 2.50 m"));
    assert!(scene.description.contains("closed ring"));
    // Each frame has a bar; the one that comes again at the end has none in front.
    let is_bar = |mark: &&Mark| matches!(mark, Mark::Polygon { pen: Pen::Bar, .. });
    let bars = scene.marks.iter().filter(is_bar).count();
    let in_stretches = |count| -> usize {
        let parts = crate::along::stretches::stretches(&plan, count);
        parts.iter().map(|part| part.rows.len()).sum()
    };
    assert!((1..=4).any(|count| bars == in_stretches(count)), "{bars}");
}

/// Who looks at the left face has station 0 at the right.
#[test]
fn a_bank_on_the_right_shows_the_left_face() {
    let (_, scene) = drawn("holding a bank on the right");
    let x = |wanted: &str| {
        let mut texts = scene.marks.iter().filter_map(|mark| match mark {
            Mark::Text(text) if text.words == wanted => Some(text.at.x),
            _ => None,
        });
        texts.next_back().expect("it is written")
    };
    assert!(x("3.00 m") < x("0.00 m") && x("joined end") < x("built end"));
    assert!(scene.description.starts_with("The open left face"));
    let other = drawn("holding a sloping bank on the left, no cope").1;
    assert!(other.description.starts_with("The open right face"));
}

#[test]
fn steps_and_bends_are_written_with_their_figures() {
    let stepped = drawn("falling ground, stepped top, raked end").1;
    let steps = words(&stepped);
    assert!(steps.iter().filter(|text| **text == "down 0.15 m").count() >= 3);
    let all = "The top steps 0.15 m down at 2.00 m, 0.15 m down at 4.00 m and 0.15 m down at \
               8.00 m.";
    assert!(stepped.description.contains(all), "{}", stepped.description);
    let bent = drawn("rising ground in a bend, battered heads").1;
    let texts = words(&bent);
    assert!(
        texts
            .iter()
            .any(|text| text.contains("6.00 m") && text.contains("left"))
    );
    assert!(texts.contains(&"built end, 1 in 8"));
    assert!(
        bent.description
            .contains("3.00 m arc to the left, radius 6.00 m")
    );
}

/// A course on a made-up line and made-up ground; nothing where such a wall can't stand.
fn made_up(key: u64) -> Option<(Course, Plan)> {
    let dice = |salt: u64| crate::paper::strewn::chance(key * 1000 + 500 + salt);
    let mut course = fixture::made_up(key);
    if dice(0) < 0.6 {
        let turn = if dice(1) < 0.5 {
            Side::Left
        } else {
            Side::Right
        };
        let bend = lie::arc(0.5 + 5.0 * dice(2), 2.5 + 8.0 * dice(3), turn);
        course.wall.line = vec![lie::straight(0.5 + 4.0 * dice(4)), bend];
        if dice(5) < 0.5 {
            course.wall.line.push(lie::straight(0.5 + 3.0 * dice(6)));
        }
        if dice(7) < 0.2 {
            let radius = 1.6 + 3.0 * dice(8);
            course.wall.line = vec![lie::arc(TAU * radius, radius, turn)];
        }
        let sum = |sum: Length, one: &craft::wall::Stretch| sum + one.length;
        course.wall.length = Some(course.wall.line.iter().fold(metres(0.0), sum));
    }
    let length = course.wall.length?.si();
    let mut level = 20.0 * dice(9) - 10.0;
    for at in 0..4_u32 {
        let across = 0.2 * (dice(20 + u64::from(at)) - 0.5);
        let at_station = length * f64::from(at) / 3.0;
        let levels = [level, level + across, level - across];
        course.wall.ground.push(lie::survey(at_station, levels));
        level += (dice(30 + u64::from(at)) - 0.5) * length * 0.15;
    }
    course.wall.top = match dice(10) {
        low if low < 0.3 => Top::Level,
        high if 0.6 < high => Top::Stepped {
            length: metres(1.0 + 2.0 * dice(11)),
            height: metres(0.1 + 0.2 * dice(12)),
        },
        _ => Top::FollowsGround,
    };
    if dice(13) < 0.5 {
        course.wall.head_batter = [Batter::one_in(4.0 + 8.0 * dice(14)).expect("sound"); 2];
    }
    if dice(15) < 0.3 {
        let side = if dice(16) < 0.5 {
            Side::Left
        } else {
            Side::Right
        };
        course.wall.kind = WallKind::Retaining(lie::bank(side));
    }
    if dice(17) < 0.4 {
        course.wall.through_reach = ThroughReach::ThreeQuarters;
    }
    let plan = fixture::sound_plan(&course)?;
    Some((course, plan))
}

#[test]
fn no_text_touches_anything_on_two_hundred_made_up_walls() {
    let mut all = Vec::new();
    let mut seen = 0;
    for key in 0..300_u64 {
        let Some((course, plan)) = made_up(key) else {
            continue;
        };
        seen += 1;
        let scene = elevation(&plan, &course, room(key as usize));
        for fault in faults(&scene) {
            let (w, h) = (scene.width_mm, scene.height_mm);
            all.push(format!("{key}, {w:.0} x {h:.0}: {fault}"));
        }
    }
    assert!(200 <= seen, "{seen}");
    assert!(all.is_empty(), "{} faults\n{}", all.len(), all.join("\n"));
}

/// Throughs drawn, dashed, dotted and told to lie in the ground are all that the plan counts.
#[test]
fn no_through_is_lost_on_made_up_walls() {
    for key in 0..300_u64 {
        let Some((course, plan)) = made_up(key) else {
            continue;
        };
        let scene = elevation(&plan, &course, room(1));
        let with = |pen: Pen| {
            let own = |mark: &&Mark| matches!(mark, Mark::Polygon { pen: own, .. } if *own == pen);
            scene.marks.iter().filter(own).count()
        };
        let drawn = with(Pen::Through) + with(Pen::HiddenThrough) + with(Pen::Later);
        let counted = plan.stone.through_count();
        let lie = crate::along::lie::Lie::of(&plan, &course);
        let thick = course.wall.through.thickness.si();
        let buried = crate::along::counted::buried(&plan, &lie, thick);
        let raked = plan.ends.iter().any(|end| end.kind == End::Raked);
        assert!(drawn <= counted, "{key}: {drawn} of {counted}");
        // Where a raked end moves throughs along, some more or fewer may meet the ground.
        let mut slack = usize::from(raked) * plan.stone.throughs.len() + buried;
        // Rows closer to each other than a course is high get in each other's way.
        let rows = plan.stone.throughs.windows(2);
        let crowded =
            |pair: &[craft::stone::ThroughRow]| (pair[1].height - pair[0].height).si().abs() < 0.17;
        if rows.into_iter().any(crowded) {
            slack += counted / 20;
        }
        assert!(counted <= drawn + slack, "{key}: {drawn} of {counted}");
    }
}
