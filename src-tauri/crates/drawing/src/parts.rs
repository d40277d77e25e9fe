//! The wall cut across with letters in place of measurements, for naming the parts.

use crate::cut::{Cut, STRING_RING_MM, outwards};
use crate::pen::Pen;
use crate::scale::{Scale, ringed};
use crate::scene::{Point, Room, Scene};
use crate::sheet::{Heading, Sheet, fitted};
use crate::side_notes::{Towards, spread};
use crate::stones::{Bed, beds};
use craft::course::Course;
use craft::plan::Plan;
use craft::quantity::Read;
use craft::wall::Side;

/// A wall lower than this on paper has parts too small to point at.
const LEAST_HEIGHT_MM: f64 = 25.0;
/// The ring round a letter.
const RING_MM: f64 = 4.0;
/// From the drawing to where the leaders bend, and from there to the rings.
const LANE_MM: f64 = 3.0;
const BEND_MM: f64 = 9.0;

const STRING: &str = "string";

/// A part: its name, a place on it, and the side its letter stands on.
struct Part {
    name: &'static str,
    at: Point,
    towards: Towards,
    /// Has no dot on it, which would hide it.
    small: bool,
}

/// The section with letters in place of measurements, and what each letter points at.
///
/// Parts the wall does not have are left out; letters follow one another all the same.
pub fn section_blank(
    plan: &Plan,
    course: &Course,
    room: Room,
) -> (Scene, Vec<(char, &'static str)>) {
    let (scale, sheet, room) = fitted(
        room,
        |scale| LEAST_HEIGHT_MM < scale.mm(plan.section.height()),
        |scale, _| lettered(plan, course, scale).0,
    );
    let (_, key) = lettered(plan, course, scale);
    let last = key.last().map_or('A', |(letter, _)| *letter);
    let heading = Heading {
        name: "parts",
        title: "The wall cut across, parts to be named".to_owned(),
        // The names are the answer, so they are not in the words either.
        description: format!(
            "Cross-section at 1:{} of a wall and its frame, seen looking along the wall. \
             Letters A to {last} point at parts whose names are asked for.",
            scale.n()
        ),
    };
    (sheet.into_scene(heading, scale, room), key)
}

fn lettered(plan: &Plan, course: &Course, scale: Scale) -> (Sheet, Vec<(char, &'static str)>) {
    let cut = Cut {
        plan,
        course,
        scale,
    };
    let mut sheet = Sheet::default();
    cut.draw(&mut sheet);
    let drawn = sheet.extent();
    cut.ground(&mut sheet, drawn.left - LANE_MM, drawn.right + LANE_MM);
    let parts = parts(&cut);
    let letters = || ('A'..='Z').zip(&parts);
    for (towards, x) in [
        (Towards::Left, drawn.left - LANE_MM),
        (Towards::Right, drawn.right + LANE_MM),
    ] {
        let here: Vec<(char, &Part)> = letters()
            .filter(|(_, part)| part.towards == towards)
            .collect();
        put_letters(&mut sheet, x, towards, here);
    }
    (
        sheet,
        letters()
            .map(|(letter, part)| (letter, part.name))
            .collect(),
    )
}

fn put_letters(sheet: &mut Sheet, x: f64, towards: Towards, mut parts: Vec<(char, &Part)>) {
    parts.sort_by(|a, b| a.1.at.y.total_cmp(&b.1.at.y));
    let wanted: Vec<(f64, f64)> = parts
        .iter()
        .map(|(_, part)| (part.at.y, 2.0 * RING_MM + 3.0))
        .collect();
    for ((letter, part), y) in parts.into_iter().zip(spread(&wanted)) {
        let ring = Point::new(towards.out(x, BEND_MM + RING_MM), y);
        let leader = vec![
            part.at,
            Point::new(x, part.at.y),
            Point::new(towards.out(x, BEND_MM), y),
        ];
        sheet.polyline(Pen::Leader, leader);
        if !part.small {
            sheet.circle(Pen::Solid, part.at, 0.8);
        }
        ringed(sheet, ring, RING_MM, &letter.to_string());
    }
}

/// The parts this wall has, in the order their letters are given.
fn parts(cut: &Cut<'_>) -> Vec<Part> {
    let beds = beds(cut.plan, cut.course);
    let plain: Vec<&Bed> = beds.iter().filter(|bed| bed.throughs.is_none()).collect();
    let middle = |bed: &Bed| (bed.from + bed.to) / 2.0;
    let top = cut.top();
    let mut parts = Vec::new();
    let mut add = |name, (x, y): (f64, f64), towards| {
        parts.push(Part {
            name,
            at: cut.at(x, y),
            towards,
            small: name == STRING,
        });
    };
    if 0.0 < cut.cope() {
        let half = cut.plan.section.top_width().si() / 2.0;
        add("cope", (half * 0.4, top + cut.cope() * 0.7), Towards::Right);
    }
    if let Some(bed) = beds.iter().find(|bed| bed.throughs.is_some()) {
        let y = middle(bed);
        add(
            "through",
            (cut.face(Side::Left, y) * 0.45, y),
            Towards::Left,
        );
    }
    if let Some(bed) = plain.get(plain.len() / 2).or(plain.first()) {
        add("hearting", (0.0, middle(bed) + 0.01), Towards::Right);
    }
    if let Some(bed) = plain.first() {
        let y = middle(bed);
        add(
            "face stone",
            (cut.face(Side::Left, y) * 0.7, y),
            Towards::Left,
        );
    }
    if let Some((edge, deep)) = cut.trench(Side::Right) {
        add("footing", (edge * 0.75, -deep / 2.0), Towards::Right);
    }
    // High on the face and off every bed, so that the point is on the face alone.
    if let Some(bed) = plain.last() {
        let y = middle(bed);
        add(
            "batter of the face",
            (cut.face(Side::Left, y), y),
            Towards::Left,
        );
    }
    if let Some(string) = cut.plan.frames.strings.first() {
        let y = string.height.si();
        let ring = STRING_RING_MM / cut.scale.mm_per_m();
        let x = cut.face(Side::Right, y) + cut.bar_width(Side::Right) / 2.0 + ring;
        add(STRING, (x, y), Towards::Right);
    }
    let (deep, _) = cut.bar_ends(Side::Left);
    let hold = cut.trench(Side::Left).map_or(0.0, |(_, depth)| depth);
    let y = -(hold + deep.max(hold)) / 2.0;
    let x = cut.face(Side::Left, y) + outwards(Side::Left) * cut.bar_width(Side::Left) / 2.0;
    add("bar", (x, y), Towards::Left);
    parts
}
