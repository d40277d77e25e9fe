//! Checks on whole drawings: no text over a line, over another text or over the edge.

use crate::fixture;
use crate::fixture::heaps::heaps_of;
use crate::paper::pen::Pen;
use crate::paper::scene::{Mark, Point, Room, Scene, Text};
use crate::paper::text_box::TextBox;
use craft::course::Course;

/// Paper a text keeps clear of ink on every side.
const CLEAR_MM: f64 = 0.2;
/// The smallest letters that are read on paper at arm's length.
const SMALLEST_MM: f64 = 2.8;

/// Rooms of a page upright and lying, of half a page, and of a narrow pane.
const ROOMS: [(f64, f64); 4] = [
    (180.0, 240.0),
    (255.0, 160.0),
    (180.0, 110.0),
    (120.0, 150.0),
];

fn scenes(course: &Course, rooms: &[(f64, f64)]) -> Vec<Scene> {
    let plan = fixture::plan(course);
    let heaps = heaps_of(&plan, course);
    let mut scenes = Vec::new();
    for &(width_mm, height_mm) in rooms {
        let room = Room {
            width_mm,
            height_mm,
        };
        scenes.push(crate::section(&plan, course, room));
        scenes.push(crate::section_blank(&plan, course, room).0);
        scenes.push(crate::elevation(&plan, course, room));
        scenes.push(crate::setting_out(&plan, course, room));
        scenes.push(crate::gauge(&plan, course, room));
        scenes.push(crate::line_plan(&plan, course, room));
        scenes.push(crate::frame(&plan, course, room));
        scenes.push(crate::heap_plan(&plan, course, &heaps, room));
    }
    scenes
}

fn texts(scene: &Scene) -> Vec<&Text> {
    scene
        .marks
        .iter()
        .filter_map(|mark| match mark {
            Mark::Text(text) => Some(text),
            _ => None,
        })
        .collect()
}

/// What the texts of a scene say.
pub(crate) fn words(scene: &Scene) -> Vec<&str> {
    texts(scene)
        .iter()
        .map(|text| text.words.as_str())
        .collect()
}

/// The straight pieces of everything inked but text.
fn pieces(scene: &Scene) -> Vec<(Pen, Point, Point)> {
    let mut pieces = Vec::new();
    let mut chain = |pen: Pen, points: &[Point], closed: bool| {
        for pair in points.windows(2) {
            pieces.push((pen, pair[0], pair[1]));
        }
        if let (true, [first, .., last]) = (closed, points) {
            pieces.push((pen, *last, *first));
        }
    };
    for mark in &scene.marks {
        match mark {
            Mark::Line { pen, from, to } => chain(*pen, &[*from, *to], false),
            Mark::Polyline { pen, points } => chain(*pen, points, false),
            Mark::Polygon { pen, points } => chain(*pen, points, true),
            Mark::Circle {
                pen,
                centre,
                radius_mm,
            } => {
                let around: Vec<Point> = (0..24)
                    .map(|at| {
                        let turn = f64::from(at) * std::f64::consts::TAU / 24.0;
                        Point::new(
                            centre.x + radius_mm * turn.cos(),
                            centre.y + radius_mm * turn.sin(),
                        )
                    })
                    .collect();
                chain(*pen, &around, true);
            }
            Mark::Text(_) => {}
        }
    }
    pieces
}

fn grown(text: &TextBox, by: f64) -> TextBox {
    TextBox {
        left: text.left - by,
        top: text.top - by,
        right: text.right + by,
        bottom: text.bottom + by,
    }
}

/// Whether a straight piece runs through a box (Liang and Barsky's clipping, 1984).
fn crosses(text: &TextBox, from: Point, to: Point) -> bool {
    let (dx, dy) = (to.x - from.x, to.y - from.y);
    let (mut enters, mut leaves) = (0.0_f64, 1.0_f64);
    for (step, room) in [
        (-dx, from.x - text.left),
        (dx, text.right - from.x),
        (-dy, from.y - text.top),
        (dy, text.bottom - from.y),
    ] {
        if step.abs() < 1e-12 {
            if room < 0.0 {
                return false;
            }
        } else if step < 0.0 {
            enters = enters.max(room / step);
        } else {
            leaves = leaves.min(room / step);
        }
    }
    enters <= leaves
}

/// Everything a reader would trip over.
pub(crate) fn faults(scene: &Scene) -> Vec<String> {
    let texts = texts(scene);
    let pieces = pieces(scene);
    let mut faults = Vec::new();
    for (at, text) in texts.iter().enumerate() {
        let here = TextBox::of(text);
        if text.size_mm < SMALLEST_MM {
            faults.push(format!("\"{}\" is {} mm", text.words, text.size_mm));
        }
        if here.left < 0.0
            || here.top < 0.0
            || scene.width_mm < here.right
            || scene.height_mm < here.bottom
        {
            faults.push(format!("\"{}\" leaves the sheet", text.words));
        }
        for other in &texts[at + 1..] {
            let there = TextBox::of(other);
            let apart = here.right <= there.left
                || there.right <= here.left
                || here.bottom <= there.top
                || there.bottom <= here.top;
            if !apart {
                faults.push(format!("\"{}\" lies over \"{}\"", text.words, other.words));
            }
        }
        for (pen, from, to) in &pieces {
            if crosses(&grown(&here, CLEAR_MM), *from, *to) {
                faults.push(format!("\"{}\" is crossed by {pen:?}", text.words));
            }
        }
    }
    faults.dedup();
    faults
}

#[test]
fn no_text_touches_a_line_a_text_or_the_edge() {
    let mut all = Vec::new();
    for (name, course) in fixture::courses() {
        for scene in scenes(&course, &ROOMS) {
            for fault in faults(&scene) {
                let (w, h) = (scene.width_mm, scene.height_mm);
                all.push(format!("{name}, {} {w:.0} x {h:.0}: {fault}", scene.name));
            }
        }
    }
    assert!(all.is_empty(), "{} faults\n{}", all.len(), all.join("\n"));
}

#[test]
fn nor_where_each_stretch_has_a_picture_of_its_own() {
    let room = Room {
        width_mm: 120.0,
        height_mm: 150.0,
    };
    let mut all = Vec::new();
    for (name, course) in fixture::courses() {
        let plan = fixture::plan(&course);
        let elevation = crate::elevation_in_parts(&plan, &course, room);
        let setting_out = crate::setting_out_in_parts(&plan, &course, room);
        let heaps = crate::heap_plan_in_parts(&plan, &course, &plan.heaps, room);
        for scene in elevation.iter().chain(&setting_out) {
            assert!(scene.width_mm <= room.width_mm + 1e-6, "{name}");
        }
        for scene in elevation.iter().chain(&setting_out).chain(&heaps) {
            let found = faults(scene).into_iter();
            all.extend(found.map(|fault| format!("{name}, {}: {fault}", scene.name)));
        }
    }
    assert!(all.is_empty(), "{} faults\n{}", all.len(), all.join("\n"));
}

#[test]
fn nor_in_a_hundred_made_up_courses() {
    let mut all = Vec::new();
    for (key, room) in (0..100).zip(ROOMS.iter().cycle()) {
        for scene in scenes(&fixture::made_up(key), &[*room]) {
            for fault in faults(&scene) {
                let (w, h) = (scene.width_mm, scene.height_mm);
                all.push(format!("{key}, {} {w:.0} x {h:.0}: {fault}", scene.name));
            }
        }
    }
    assert!(all.is_empty(), "{} faults\n{}", all.len(), all.join("\n"));
}

/// Banks, timber frames and uneven ground, in the drawings of one station.
#[test]
fn nor_in_a_hundred_made_up_cuts_and_frames() {
    let mut all = Vec::new();
    for (key, (width_mm, height_mm)) in (0..100).zip(ROOMS.into_iter().cycle()) {
        let course = fixture::lie::made_up(key);
        let plan = fixture::plan(&course);
        let room = Room {
            width_mm,
            height_mm,
        };
        for scene in [
            crate::section(&plan, &course, room),
            crate::section_blank(&plan, &course, room).0,
            crate::frame(&plan, &course, room),
            crate::gauge(&plan, &course, room),
        ] {
            for fault in faults(&scene) {
                let (w, h) = (scene.width_mm, scene.height_mm);
                all.push(format!("{key}, {} {w:.0} x {h:.0}: {fault}", scene.name));
            }
        }
    }
    assert!(all.is_empty(), "{} faults\n{}", all.len(), all.join("\n"));
}

/// Throughs from one face and the other, in the drawings that show them.
#[test]
fn nor_in_sixty_made_up_walls_that_no_stone_crosses() {
    let mut all = Vec::new();
    for (key, (width_mm, height_mm)) in (0..60).zip(ROOMS.into_iter().cycle()) {
        let mut course = if key % 2 == 0 {
            fixture::made_up(key)
        } else {
            fixture::lie::made_up(key)
        };
        course.wall.through_reach = craft::course::ThroughReach::ThreeQuarters;
        let plan = fixture::plan(&course);
        let room = Room {
            width_mm,
            height_mm,
        };
        for scene in [
            crate::section(&plan, &course, room),
            crate::section_blank(&plan, &course, room).0,
            crate::elevation(&plan, &course, room),
        ] {
            for fault in faults(&scene) {
                let (w, h) = (scene.width_mm, scene.height_mm);
                all.push(format!("{key}, {} {w:.0} x {h:.0}: {fault}", scene.name));
            }
        }
    }
    assert!(all.is_empty(), "{} faults\n{}", all.len(), all.join("\n"));
}

/// The check itself must see what is wrong.
#[test]
fn a_text_over_a_line_is_found() {
    let course = fixture::weekend();
    let room = Room {
        width_mm: 180.0,
        height_mm: 240.0,
    };
    let mut scene = crate::section(&fixture::plan(&course), &course, room);
    assert!(faults(&scene).is_empty());
    let on = TextBox::of(texts(&scene)[0]);
    scene.marks.push(Mark::Line {
        pen: Pen::Dimension,
        from: Point::new(on.left - 3.0, on.top + 1.0),
        to: Point::new(on.right + 3.0, on.bottom - 1.0),
    });
    assert_eq!(faults(&scene).len(), 1);
    scene.marks.push(Mark::Text(texts(&scene)[0].clone()));
    assert!(
        faults(&scene)
            .iter()
            .any(|fault| fault.contains("lies over"))
    );
}

#[test]
fn every_mark_is_a_number_and_on_the_sheet() {
    for (name, course) in fixture::courses() {
        for scene in scenes(&course, &ROOMS) {
            for mark in &scene.marks {
                let extent = mark.extent();
                let inside = 0.0 <= extent.left
                    && 0.0 <= extent.top
                    && extent.right <= scene.width_mm
                    && extent.bottom <= scene.height_mm;
                assert!(inside, "{name}, {}: {mark:?}", scene.name);
            }
        }
    }
}
