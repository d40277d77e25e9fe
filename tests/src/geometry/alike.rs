//! Walls that must come out alike: surveyed finer, seen in a mirror, hardly bent, a ring.

use super::drawn::{Wall, course, millimetres, wall};
use super::line::{Bend, Line, Stretch, Surveyed};
use super::model::metres;
use super::spelling::same;
use checks::courses::{changed, list, number, numbers, plain, with};
use proptest::prelude::*;
use serde_json::Value;
use std::f64::consts::{PI, TAU};

fn planned(wall: &Wall) -> Value {
    numbers(&course("metric", &wall.text(millimetres)))
}

/// The ground with a station half-way between every two, where nothing new is found.
fn finer(ground: &[Surveyed]) -> Vec<Surveyed> {
    let mut all = Vec::new();
    for pair in ground.windows(2) {
        let face = |side: usize| {
            let [from, to] = [pair[0], pair[1]].map(|one| one.faces[side].unwrap_or(one.level));
            Some((from + to) / 2)
        };
        all.push(pair[0]);
        all.push(Surveyed {
            station: (pair[0].station + pair[1].station) / 2,
            level: (pair[0].level + pair[1].level) / 2,
            faces: [face(0), face(1)],
        });
    }
    all.extend(ground.last());
    all
}

fn mirrored(mut wall: Wall) -> Wall {
    wall.batter.swap(0, 1);
    wall.retained = wall.retained.map(|side| 1 - side);
    for surveyed in &mut wall.ground {
        surveyed.faces.swap(0, 1);
    }
    for bend in wall.line.stretches.iter_mut().flat_map(|it| &mut it.bend) {
        bend.left = !bend.left;
    }
    wall
}

/// The same line with all its arcs of one radius, or straight.
fn bent(mut wall: Wall, radius: Option<u32>) -> Wall {
    for stretch in &mut wall.line.stretches {
        let left = |bend: Bend| bend.left;
        let left = stretch.bend.is_some_and(left);
        let bend = stretch.bend.and(radius);
        stretch.bend = bend.map(|radius| Bend { radius, left });
    }
    wall.line.ring = false;
    wall.frames.spacing[1] = wall.frames.spacing[0];
    wall
}

/// A wall too long to close, hardly bent: its radius in metres is the most a course takes.
const HARDLY_BENT: u32 = 10_000;

const VOLUMES: [&str; 5] = [
    "/wall/body_volume_m3",
    "/wall/footing_volume_m3",
    "/wall/cope_volume_m3",
    "/wall/face_area_m2",
    "/wall/raked_away_m3",
];

proptest! {
    #![proptest_config(checks::cases(16))]

    #[test]
    fn a_finer_survey_of_the_same_ground_changes_nothing(
        wall in wall().prop_filter("too little ground", |wall| 1 < wall.ground.len()),
    ) {
        let finer = Wall { ground: finer(&wall.ground), ..wall.clone() };
        let [mut before, mut after] = [&wall, &finer].map(planned);
        // The one list with a row for each station surveyed; its figures are in all the others.
        for plan in [&mut before, &mut after] {
            let rows = plan.pointer_mut("/wall/profile").map(Value::take);
            prop_assert!(rows.is_some_and(|rows| rows.is_array()), "no profile");
        }
        same("", &before, &after)?;
    }

    #[test]
    fn a_mirror_swaps_left_and_right_and_nothing_else(wall in wall()) {
        let [ours, theirs] = [planned(&wall), planned(&mirrored(wall))];
        let [ours, theirs] = [&ours, &theirs];
        let rows = [ours, theirs].map(|plan| list(plan, "/frames/rows"));
        prop_assert_eq!(rows[0].len(), rows[1].len());
        for (ours, theirs) in rows[0].iter().zip(rows[1]) {
            for key in ["station_m", "ground_m", "height_m", "base_width_m"] {
                same(key, &ours[key], &theirs[key])?;
            }
            for key in ["offset_m", "rise_m"] {
                let [left, right] = ["left", "right"].map(|side| format!("{side}_{key}"));
                same(key, &ours[&left], &theirs[&right])?;
                same(key, &ours[&right], &theirs[&left])?;
            }
        }
        for part in ["/stone", "/frames/bars", "/frames/strings", "/frames/moves", "/finish"] {
            let [ours, theirs] = [ours, theirs].map(|plan| plan.pointer(part));
            same(part, ours.expect("a part"), theirs.expect("a part"))?;
        }
        for path in VOLUMES {
            let [ours, theirs] = [ours, theirs].map(|plan| plan.pointer(path));
            same(path, ours.expect("a volume"), theirs.expect("a volume"))?;
        }
    }

    /// A strip so far off the centre line is longer or shorter by that over the radius, no more.
    #[test]
    fn a_line_hardly_bent_is_a_straight(wall in wall()) {
        let arcs = planned(&bent(wall.clone(), Some(HARDLY_BENT * 1000)));
        let straight = planned(&bent(wall.clone(), None));
        same("", &straight["frames"]["bars"], &arcs["frames"]["bars"])?;
        let rows = [&straight, &arcs].map(|plan| list(plan, "/frames/rows"));
        prop_assert_eq!(rows[0].len(), rows[1].len());
        for (straight, arc) in rows[0].iter().zip(rows[1]) {
            for key in ["station_m", "height_m", "left_offset_m", "right_offset_m"] {
                same(key, &straight[key], &arc[key])?;
            }
        }
        let widest = wall.width(-1.0);
        for path in VOLUMES {
            let [straight, arc] = [&straight, &arcs].map(|plan| number(plan, path));
            let most = straight * widest / f64::from(HARDLY_BENT);
            prop_assert!((straight - arc).abs() <= most + 1e-12, "{path}: {straight} and {arc}");
        }
    }

    #[test]
    fn an_arc_in_two_holds_as_much_as_in_one(wall in wall(), share in 0.2..0.8_f64) {
        let halved = Wall {
            line: Line { stretches: parted(&wall.line.stretches, share), ..wall.line },
            ..wall.clone()
        };
        let [whole, halved] = [&wall, &halved].map(planned);
        for path in VOLUMES {
            let [whole, halved] = [&whole, &halved].map(|plan| plan.pointer(path));
            same(path, whole.expect("a volume"), halved.expect("a volume"))?;
        }
    }
}

/// Each stretch as two of the same bend.
fn parted(stretches: &[Stretch], share: f64) -> Vec<Stretch> {
    let parts = stretches.iter().flat_map(|stretch| {
        let first = (f64::from(stretch.length) * share) as u32;
        [first, stretch.length - first].map(|length| Stretch { length, ..*stretch })
    });
    parts.collect()
}

/// The plain course on a line that comes back to its beginning: stretches of metres and, where
/// bent, the radius.
fn closed(stretches: &[(f64, Option<u32>)]) -> Value {
    let all: Vec<String> = stretches
        .iter()
        .map(|(length, radius)| match radius {
            None => format!("{{ straight = \"{length} m\" }}"),
            Some(mm) => {
                format!("{{ arc = \"{length} m\", radius = \"{mm} mm\", turn = \"left\" }}")
            }
        })
        .collect();
    let line = format!("line = [ {} ]", all.join(", "));
    numbers(&changed(
        plain(),
        &[
            ("length = \"6 m\"", &line),
            ("longest_wall = \"40 m\"\n", ""),
        ],
    ))
}

/// The stations of frames agree with these to a hundredth of a millimetre.
fn stand_at(plan: &Value, due: &[f64]) {
    let rows = list(plan, "/frames/rows");
    let stations: Vec<f64> = rows.iter().map(|row| number(row, "/station_m")).collect();
    assert_eq!(stations.len(), due.len(), "{stations:?}");
    for (ours, due) in stations.iter().zip(due) {
        assert!((ours - due).abs() < 1e-5, "{ours} and {due}");
    }
    let count = due.len() as f64;
    assert_eq!(number(plan, "/frames/count"), count);
    assert_eq!(number(plan, "/frames/bars/count"), 2.0 * count);
}

/// A ring, its length worked out to the last digit, to the centimetre, or in two halves.
#[test]
fn a_ring_counts_its_first_frame_once() {
    for mm in [1000_u32, 1999, 2500, 3183, 6000, 9548] {
        let round = TAU * metres(mm);
        let taped = (round * 100.0).round() / 100.0;
        for length in [round, taped] {
            // The plain course has a frame each 1.5 m of arc.
            let bays = (length / 1.5).ceil();
            let due: Vec<f64> = (0..bays as u32)
                .map(|at| f64::from(at) * length / bays)
                .collect();
            stand_at(&closed(&[(length, Some(mm))]), &due);
            let half = (length / 3.0).ceil();
            let due: Vec<f64> = (0..2 * half as u32)
                .map(|at| f64::from(at) * length / 2.0 / half)
                .collect();
            let halves = [(length / 2.0, Some(mm)), (length / 2.0, Some(mm))];
            stand_at(&closed(&halves), &due);
        }
    }
}

/// Two straights and two half rings: a fold, closed as a ring is.
#[test]
fn a_fold_with_round_ends_counts_its_first_frame_once() {
    let arc = PI * 3.0;
    let plan = closed(&[
        (6.0, None),
        (arc, Some(3000)),
        (6.0, None),
        (arc, Some(3000)),
    ]);
    let mut due = Vec::new();
    for (from, length, bays) in [
        (0.0, 6.0, 2),
        (6.0, arc, 7),
        (6.0 + arc, 6.0, 2),
        (12.0 + arc, arc, 7),
    ] {
        due.extend((0..bays).map(|at| from + length * f64::from(at) / f64::from(bays)));
    }
    stand_at(&plan, &due);
}

/// A ring whose last metres are not built has two ends, and a frame at each.
#[test]
fn most_of_a_ring_is_no_ring() {
    let plan = closed(&[(TAU * 3.0 - 1.0, Some(3000))]);
    let due: Vec<f64> = (0..13)
        .map(|at| f64::from(at) * (TAU * 3.0 - 1.0) / 12.0)
        .collect();
    stand_at(&plan, &due);
}

/// An auto length stretches or shortens the last straight of a line and nothing else; a line
/// that can't be made so short stays as it is, and the plan says why.
#[test]
fn an_auto_length_changes_the_last_straight_alone() {
    let line = |last: &str, arc: &str| {
        let line = format!(
            "length = \"auto\"\nline = [ {{ straight = \"0.5 m\" }}, \
             {{ arc = \"{arc}\", radius = \"6 m\", turn = \"left\" }}, \
             {{ straight = \"{last}\" }} ]"
        );
        with(&[
            ("length = \"6 m\"", line.as_str()),
            ("height = \"1.07 m\"", "height = \"0.65 m\""),
        ])
    };
    let [short, long] = ["0.5 m", "30 m"].map(|last| numbers(&line(last, "0.3 m")));
    let length = number(&short, "/wall/length_m");
    assert!(0.8 < length && length < 30.0, "{length}");
    assert!((number(&long, "/wall/length_m") - length).abs() < 1e-9);
    assert!((number(&short, "/wall/line/1/to_m") - 0.8).abs() < 1e-9);
    assert!((number(&short, "/wall/line/2/to_m") - length).abs() < 1e-9);
    let kept = numbers(&line("0.5 m", "25 m"));
    assert!((number(&kept, "/wall/length_m") - 26.0).abs() < 1e-9);
    let told = list(&kept, "/cautions")
        .iter()
        .any(|caution| caution["id"] == "line-as-given");
    assert!(told, "no word of why the line stays as it is");
}
