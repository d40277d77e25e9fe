//! Checks on the heap plans of made-up walls: straight, winding, before banks, round.

use crate::fixture::heaps::{heaps_of, heaps_of_share};
use crate::overlap::{faults, words};
use crate::paper::pen::Pen;
use crate::paper::scene::{Mark, Point, Room, Scene};
use crate::{fixture, made_up_lines};
use craft::course::Course;
use craft::heaps::Heaps;
use craft::plan::Plan;
use craft::quantity::Read;
use craft::wall::Side;

/// The room of a page and of a pane.
const PAPER: Room = Room {
    width_mm: 180.0,
    height_mm: 190.0,
};
const SCREEN: Room = Room {
    width_mm: 135.0,
    height_mm: 105.0,
};

/// Made-up lines with little stone, the usual and much.
fn made_up() -> impl Iterator<Item = (u64, Course, Plan, Heaps)> {
    (0..60).map(|key| {
        let course = made_up_lines::made_up(key);
        let plan = fixture::plan(&course);
        let share = [1.0, 0.02, 1.0, 4.0][(key % 4) as usize];
        let heaps = heaps_of_share(&plan, &course, share);
        (key, course, plan, heaps)
    })
}

#[test]
fn every_text_of_every_heap_plan_is_clear() {
    let mut all = Vec::new();
    for (key, course, plan, heaps) in made_up() {
        let room = if key % 2 == 0 { PAPER } else { SCREEN };
        let found = faults(&crate::heap_plan(&plan, &course, &heaps, room));
        all.extend(found.into_iter().map(|it| format!("{key}: {it}")));
    }
    for (name, course) in fixture::courses() {
        let plan = fixture::plan(&course);
        let heaps = heaps_of(&plan, &course);
        for room in [PAPER, SCREEN] {
            let found = faults(&crate::heap_plan(&plan, &course, &heaps, room));
            all.extend(found.into_iter().map(|it| format!("{name}: {it}")));
        }
    }
    assert!(all.is_empty(), "{} faults\n{}", all.len(), all.join("\n"));
}

/// The outlines of heaps, those of the key left out: they are the last ones drawn.
fn outlines(scene: &Scene, heaps: &Heaps) -> Vec<Vec<Point>> {
    let all = scene.marks.iter().filter_map(|mark| match mark {
        Mark::Polygon {
            pen: Pen::Through,
            points,
        } => Some(points.clone()),
        _ => None,
    });
    all.take(heaps.heaps.len()).collect()
}

fn apart(one: Point, other: Point) -> f64 {
    (one.x - other.x).hypot(one.y - other.y)
}

/// Two roads to one answer: areas on paper against areas by the theorem of Pappus, a rectangle
/// as long as the heap's middle and a circle for both round ends.
#[test]
fn heaps_are_drawn_to_scale() {
    for (key, course, plan, heaps) in made_up() {
        let scene = crate::heap_plan(&plan, &course, &heaps, PAPER);
        let k = 1000.0 / f64::from(scene.scale.expect("to scale"));
        let outlines = outlines(&scene, &heaps);
        assert_eq!(outlines.len(), heaps.heaps.len(), "{key}");
        for (heap, outline) in heaps.heaps.iter().zip(outlines) {
            let next = outline.iter().cycle().skip(1);
            let twice: f64 = outline
                .iter()
                .zip(next)
                .map(|(a, b)| a.x * b.y - b.x * a.y)
                .sum();
            let (long, wide) = (heap.length.si() * k, heap.base_width().si() * k);
            let round = std::f64::consts::PI / 4.0;
            let area = if heap.laid {
                long * wide
            } else {
                (long - wide) * wide + round * wide * wide
            };
            // Arcs and round ends are drawn in straight pieces.
            let off = (twice.abs() / 2.0 - area).abs();
            assert!(off < 0.02 * area + 0.01, "{key} {heap:?}: {area} {twice}");
        }
    }
}

/// By hand at the paper's scale: a heap's near edge lies as far from the face as it says.
#[test]
fn heaps_lie_as_far_off_as_they_should() {
    let course = fixture::weekend();
    let plan = fixture::plan(&course);
    let heaps = heaps_of(&plan, &course);
    let scene = crate::heap_plan(&plan, &course, &heaps, PAPER);
    let k = 1000.0 / f64::from(scene.scale.expect("to scale"));
    let faces: Vec<Point> = scene
        .marks
        .iter()
        .filter_map(|mark| match mark {
            Mark::Polyline {
                pen: Pen::Outline,
                points,
            } => points.first().copied(),
            _ => None,
        })
        .collect();
    let [left, right] = faces.as_slice() else {
        panic!("two faces: {faces:?}");
    };
    // By hand: 0.41 m and 1.07 / 6 m on either side.
    assert!((apart(*left, *right) - k * (0.41 + 1.07 / 3.0)).abs() < 1e-6);
    for (heap, outline) in heaps.heaps.iter().zip(outlines(&scene, &heaps)) {
        let face = if heap.side == Side::Left { left } else { right };
        let nearest = outline
            .iter()
            .map(|corner| (corner.y - face.y).abs())
            .fold(f64::MAX, f64::min);
        let strip = heaps.strips.iter().find(|strip| strip.side == heap.side);
        let off = heap.near - strip.expect("a strip").face;
        assert!((nearest - off.si() * k).abs() < 1e-6, "{heap:?}");
        assert!(1.3 - 1e-9 <= off.si());
    }
}

/// Which end is which, both sides, every kind and the tip find a place on every page, unless the
/// ground is so full that there is none.
#[test]
fn what_is_needed_always_finds_a_place() {
    for (key, course, plan, heaps) in made_up() {
        if key % 4 == 3 {
            continue;
        }
        let scene = crate::heap_plan(&plan, &course, &heaps, PAPER);
        let words = words(&scene);
        for word in ["left", "right", "station 0"] {
            assert!(words.contains(&word), "{key}: {word} in {words:?}");
        }
        let tip = |word: &&str| word.starts_with("tip");
        assert!(words.iter().any(tip), "{key}: {words:?}");
        for (at, kind) in heaps.kinds().into_iter().enumerate() {
            let letter = ["A", "B", "C", "D", "E", "F"][at];
            assert!(words.contains(&letter), "{key}: {letter} in {words:?}");
            let named = |word: &&str| word.starts_with(kind.word());
            assert!(words.iter().any(named), "{key}: {words:?}");
        }
    }
}

/// By hand for the weekend's wall: footing stone (0.867 + 0.1) x 0.15 x 9 m x 2600 x 0.75 kg/m3 is
/// 2.28 t, 2.85 t with what is left over, at 2600 x 0.55 kg/m3 1.99 m3, half of it on each side.
#[test]
fn the_words_hold_the_real_figures() {
    let course = fixture::weekend();
    let plan = fixture::plan(&course);
    let heaps = heaps_of(&plan, &course);
    let scene = crate::heap_plan(&plan, &course, &heaps, PAPER);
    for said in [
        "At station 0: built end. At the far end: joined to standing wall.",
        "On the left 1.30 m from the face stay clear, to work in.",
        "On the left, from station 0 to 9.00 m, outwards: footing 1.4 t, 1.00 m³ loose, in 2 heaps,",
        "copes 1.0 t, 0.58 m³ loose, in 2 lots, on edge,",
        "The lorry may tip beyond station 0: a load of 10.0 t lies 3.95 m across there.",
    ] {
        assert!(
            scene.description.contains(said),
            "{said}\n{}",
            scene.description
        );
    }
}

#[test]
fn nothing_to_lay_is_a_wall_alone() {
    let course = fixture::weekend();
    let plan = fixture::plan(&course);
    let heaps = heaps_of_share(&plan, &course, 0.0);
    let scene = crate::heap_plan(&plan, &course, &heaps, SCREEN);
    assert!(faults(&scene).is_empty());
    assert!(scene.description.contains("There is nothing to lay out."));
    assert!(outlines(&scene, &heaps).is_empty());
}
