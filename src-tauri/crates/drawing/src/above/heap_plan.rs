//! Where the stone lies, seen from above, at one scale in both directions.

use crate::above::ground_edge::{beyond, corners, face};
use crate::above::ground_view::GroundView;
use crate::above::heap_key::key;
use crate::above::heap_told::{description, rough, taken};
use crate::above::heap_view::HeapView;
use crate::above::heap_words::HeapWords;
use crate::above::line_plan::{extent, turns};
use crate::above::line_words::outset;
use crate::along::stretches::told_with_the_first;
use crate::paper::fitting::{fitted, sound};
use crate::paper::free_place::Ink;
use crate::paper::pen::Pen;
use crate::paper::scale::{Scale, strip};
use crate::paper::scene::{Point, Room, Scene};
use crate::paper::sheet::{Heading, Sheet};
use crate::paper::words;
use craft::course::{Course, End};
use craft::heaps::Heaps;
use craft::plan::Plan;
use craft::quantity::Read;
use craft::wall::Side;
use std::cell::Cell;

/// The plan is drawn at least so large.
const LEAST_LENGTH_MM: f64 = 60.0;
/// Round the heaps for words.
const WORDS_MM: f64 = 16.0;
/// The scale bar and the notes under it.
const STRIP_MM: f64 = 22.0;
/// Between the plan and the key.
const APART_MM: f64 = 6.0;
/// So finely an arc is followed to find how the plan lies best.
const COARSE_RAD: f64 = 0.1;
/// No more ways for it to lie are tried at a scale.
const MOST_LIES: usize = 8;
/// So much of the room a plan may seem to overfill and still be tried.
const TRIED: f64 = 1.02;

/// The heaps beside the wall as they lie on the ground, turned as it fits the room best, with
/// the key of their stones.
pub fn heap_plan(plan: &Plan, course: &Course, heaps: &Heaps, room: Room) -> Scene {
    drawn((plan, course, heaps), room, true)
}

/// The plan and its key in a picture each, where the letters of one picture would come out too
/// small; nothing where there is no key.
pub fn heap_plan_in_parts(plan: &Plan, course: &Course, heaps: &Heaps, room: Room) -> Vec<Scene> {
    if heaps.kinds().is_empty() {
        return Vec::new();
    }
    let room = sound(room);
    let heading = Heading {
        name: "heap-plan",
        title: "What lies in the heaps".to_owned(),
        description: told_with_the_first("the plan of the heaps", 1, 2),
    };
    let listed = key_within(heaps, course, 2, true, room.width_mm);
    vec![
        drawn((plan, course, heaps), room, false),
        listed.into_scene(heading, None, room),
    ]
}

fn drawn((plan, course, heaps): (&Plan, &Course, &Heaps), room: Room, keyed: bool) -> Scene {
    let room = sound(room);
    let lies = Lie::all((plan, course, heaps), room, keyed);
    let longest = lies
        .first()
        .map_or(1.0, |lie| lie.size.into_iter().fold(0.0, f64::max));
    let legible = |scale: Scale| LEAST_LENGTH_MM < longest * scale.mm_per_m();
    let used = Cell::new(0);
    let (scale, mut sheet, room) = fitted(room, legible, |scale, room| {
        // The best liked of those that fit at this scale.
        let mut least = f64::INFINITY;
        for (at, lie) in lies.iter().enumerate() {
            let needed = lie.needed(scale, room);
            if TRIED < needed && scale != Scale::SMALLEST {
                least = least.min(needed / TRIED);
                continue;
            }
            let sheet = seen((plan, course, heaps), scale, room, lie);
            let times = sheet.times(room);
            if times <= 1.0 {
                used.set(at);
                return sheet;
            }
            least = least.min(times);
        }
        so_much_too_large(room, least)
    });
    // Stones make no drawing larger, so they are strewn once it is known how it lies.
    if let Some(lie) = lies.get(used.get()) {
        let ground = lie.ground(plan, course, scale);
        let view = HeapView {
            ground: &ground,
            heaps,
        };
        view.stones(&mut sheet);
    }
    let heading = Heading {
        name: "heap-plan",
        title: "Where the stone lies, seen from above".to_owned(),
        description: description(plan, course, heaps, scale),
    };
    sheet.into_scene(heading, scale, room)
}

/// How the plan lies on the paper, and where its key stands.
struct Lie {
    /// Radians anticlockwise from the paper's right to the first direction.
    turn: f64,
    /// Width and height of all that is on the ground, in metres.
    size: [f64; 2],
    /// Columns of the key, none where it has a picture of its own or nothing is in it.
    columns: usize,
    /// The key stands beside the plan, not below.
    beside: bool,
    /// Width and height of the key.
    key_mm: [f64; 2],
}

impl Lie {
    /// Every lie worth trying, the one that lets the plan be largest first.
    fn all((plan, course, heaps): (&Plan, &Course, &Heaps), room: Room, keyed: bool) -> Vec<Self> {
        let corners = outlines(plan, course, heaps);
        let mut lies: Vec<(f64, Self)> = Vec::new();
        for (turn, liking) in turns(plan) {
            let size = extent(&corners, turn);
            let keys = [(1, true), (1, false), (2, false), (3, false)];
            let keys = if keyed && !heaps.kinds().is_empty() {
                &keys[..]
            } else {
                &[(0, false)]
            };
            for &(columns, beside) in keys {
                let key_mm = if columns == 0 {
                    [0.0; 2]
                } else {
                    let listed = key(heaps, course, columns, false).extent();
                    [listed.width(), listed.height()]
                };
                let lie = Self {
                    turn,
                    size,
                    columns,
                    beside,
                    key_mm,
                };
                lies.push((liking * lie.scale(room), lie));
            }
        }
        lies.sort_by(|a, b| b.0.total_cmp(&a.0));
        // Of slants that serve no better than these nobody is glad.
        lies.truncate(MOST_LIES);
        lies.into_iter().map(|(_, lie)| lie).collect()
    }

    fn ground<'a>(&self, plan: &'a Plan, course: &'a Course, scale: Scale) -> GroundView<'a> {
        GroundView {
            plan,
            course,
            scale,
            turn: self.turn,
        }
    }

    /// Paper millimetres for a metre at which it would just fill the room.
    fn scale(&self, room: Room) -> f64 {
        let [wide, high] = self.size.map(|it| it.max(0.1));
        let [across, down] = self.left_over(room);
        if across <= 0.0 || down <= 0.0 {
            return 0.0;
        }
        (across / wide).min(down / high)
    }

    /// What the key, the words and the strip below leave.
    fn left_over(&self, room: Room) -> [f64; 2] {
        let [key_wide, key_high] = self.key_mm;
        let across = if self.beside {
            key_wide + APART_MM
        } else {
            0.0
        };
        let down = if self.beside {
            0.0
        } else {
            key_high + APART_MM
        };
        [
            room.width_mm - WORDS_MM - across,
            room.height_mm - WORDS_MM - STRIP_MM - down,
        ]
    }

    /// How many times larger the room would have to be at least for it at this scale.
    fn needed(&self, scale: Scale, room: Room) -> f64 {
        // Words may need no room beyond the heaps.
        let wider = Room {
            width_mm: room.width_mm + WORDS_MM,
            height_mm: room.height_mm + WORDS_MM,
        };
        scale.mm_per_m() / self.scale(wider)
    }
}

/// Corners of everything on the ground, in metres.
fn outlines(plan: &Plan, course: &Course, heaps: &Heaps) -> Vec<(f64, f64)> {
    let line = &plan.wall.line;
    let by = outset(course);
    let edges = Side::BOTH.into_iter().flat_map(|side| {
        let edge = beyond(&face(&plan.wall, side), by);
        corners(line, side, &edge, COARSE_RAD)
    });
    let heaped = heaps.heaps.iter().flat_map(|heap| heap.outline(line));
    let mut corners: Vec<(f64, f64)> = edges
        .chain(heaped)
        .map(|place| (place.x_m, place.y_m))
        .collect();
    for tip in &heaps.tips {
        let (x, y, radius) = (tip.place.x_m, tip.place.y_m, tip.radius.si());
        let around = [(radius, 0.0), (-radius, 0.0), (0.0, radius), (0.0, -radius)];
        corners.extend(around.map(|(dx, dy)| (x + dx, y + dy)));
    }
    corners
}

/// The key in so many columns, or in fewer where they would be too wide.
fn key_within(
    heaps: &Heaps,
    course: &Course,
    columns: usize,
    offsets: bool,
    room_mm: f64,
) -> Sheet {
    let in_columns = |columns: usize| key(heaps, course, columns, offsets);
    let narrow = |sheet: &Sheet| sheet.extent().width() <= room_mm;
    (2..=columns)
        .rev()
        .map(in_columns)
        .find(narrow)
        .unwrap_or_else(|| in_columns(1))
}

/// A sheet so many times larger than the room, so that a smaller scale is tried.
fn so_much_too_large(room: Room, times: f64) -> Sheet {
    let mut sheet = Sheet::default();
    let far = Point::new(times * room.width_mm, times * room.height_mm);
    sheet.line(Pen::Dimension, Point::new(0.0, 0.0), far);
    sheet
}

fn seen(
    (plan, course, heaps): (&Plan, &Course, &Heaps),
    scale: Scale,
    room: Room,
    lie: &Lie,
) -> Sheet {
    let ground = lie.ground(plan, course, scale);
    let view = HeapView {
        ground: &ground,
        heaps,
    };
    let mut sheet = Sheet::default();
    view.draw(&mut sheet);
    let measured = HeapWords { view: &view }.write(&mut sheet, &mut Ink::default());
    if 0 < lie.columns {
        let drawn = sheet.extent();
        let taken = if lie.beside {
            drawn.width() + APART_MM
        } else {
            0.0
        };
        let listed = key_within(heaps, course, lie.columns, !measured, room.width_mm - taken);
        if lie.beside {
            sheet.beside(listed, APART_MM);
        } else {
            sheet.under(listed, drawn.left, APART_MM);
        }
    }
    let notes = [signs(plan, course, heaps)];
    strip(&mut sheet, scale, course.units, &notes, room.width_mm);
    sheet
}

/// What the signs stand for, then the ground it takes.
fn signs(plan: &Plan, course: &Course, heaps: &Heaps) -> String {
    let mut signs: Vec<String> = Vec::new();
    if course.wall.footing.is_some() {
        signs.push("Dashed: trench.".to_owned());
    }
    if plan.ends.iter().any(|end| end.kind == End::Raked) {
        signs.push("Dotted: left to be carried on.".to_owned());
    }
    if !heaps.strips.is_empty() {
        signs.push(format!(
            "Fine dashes: keep clear to here, {} from the face.",
            kept_clear(course, heaps)
        ));
    }
    if let Some(way) = heaps.ways.first() {
        let wide = rough(course, way.width);
        signs.push(format!("Arrows: barrow ways, {wide} wide."));
    }
    signs.push("Left and right as seen from station 0.".to_owned());
    let [along, across] = heaps.ground.map(|it| rough(course, it));
    signs.push(format!("{}.", taken(plan, &along, &across)));
    signs.join(" ")
}

/// `1.30 m`, or on each side its own.
fn kept_clear(course: &Course, heaps: &Heaps) -> String {
    let mut all: Vec<String> = Vec::new();
    let mut each: Vec<String> = Vec::new();
    for strip in &heaps.strips {
        let far = rough(course, strip.near - strip.face);
        each.push(format!("{far} {}", strip.side.word()));
        all.push(far);
    }
    all.dedup();
    match all.as_slice() {
        [same] => same.clone(),
        _ => words::list(&each),
    }
}
