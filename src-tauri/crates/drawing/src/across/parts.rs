//! The wall cut across with letters in place of measurements, for naming the parts.

use crate::across::cut::{Cut, STRING_RING_MM, outwards};
use crate::across::cut_stones::Laid;
use crate::paper::fitting::fitted;
use crate::paper::pen::Pen;
use crate::paper::scale::{Scale, ringed};
use crate::paper::scene::{Point, Room, Scene};
use crate::paper::sheet::{Heading, Sheet};
use crate::paper::side_notes::{Towards, spread};
use craft::course::Course;
use craft::plan::Plan;
use craft::quantity::Read;
use craft::stonework::Role;
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
    let laid = Laid::at_station_0(plan, course);
    let (scale, sheet, room) = fitted(
        room,
        |scale| LEAST_HEIGHT_MM < scale.mm(plan.section.height()),
        |scale, _| lettered(plan, course, &laid, scale).0,
    );
    let (_, key) = lettered(plan, course, &laid, scale);
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

fn lettered(
    plan: &Plan,
    course: &Course,
    laid: &Laid,
    scale: Scale,
) -> (Sheet, Vec<(char, &'static str)>) {
    let cut = Cut::new(plan, course, scale).built_of(laid);
    let mut sheet = Sheet::default();
    cut.draw(&mut sheet);
    let drawn = sheet.extent();
    cut.hatched_ground(&mut sheet, Side::Left, drawn.left - LANE_MM);
    cut.hatched_ground(&mut sheet, Side::Right, drawn.right + LANE_MM);
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

fn towards(side: Side) -> Towards {
    match side {
        Side::Left => Towards::Left,
        Side::Right => Towards::Right,
    }
}

/// The parts this wall has, in the order their letters are given.
fn parts(cut: &Cut<'_>) -> Vec<Part> {
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
    if let Some(through) = cut.throughs().first() {
        let y = (through.bed + through.over) / 2.0;
        let (name, side) = match through.from {
            None => ("through", Side::Left),
            Some(side) => ("three-quarter through", side),
        };
        add(name, (cut.face(side, y) * 0.45, y), towards(side));
    }
    if let Some(at) = cut.hearting_near(top * 0.5) {
        add("hearting", at, Towards::Right);
    }
    if let Some(at) = cut.stone_near(Role::Face, Side::Left, top * 0.1) {
        add("face stone", at, Towards::Left);
    }
    if let Some((edge, deep)) = cut.trench(Side::Right) {
        let y = (deep + cut.ground(Side::Right)) / 2.0;
        add("footing", (edge * 0.75, y), Towards::Right);
    }
    // High on the face and in the middle of a stone, so that the point is on the face alone.
    if let Some((_, y)) = cut.stone_near(Role::Face, Side::Left, top * 0.95) {
        add(
            "batter of the face",
            (cut.face(Side::Left, y), y),
            Towards::Left,
        );
    }
    if let Some(y) = cut.strings_above(Side::Right).next() {
        let ring = STRING_RING_MM / cut.scale.mm_per_m();
        let x = cut.string_at(Side::Right, y) + ring;
        add(STRING, (x, y), Towards::Right);
    }
    let front = cut.bank().map_or(Side::Left, |bank| bank.side.other());
    let (name, y) = match cut.timber {
        Some(_) => (
            "leg of the frame",
            cut.ground(front) + (top - cut.ground(front)) * 0.12,
        ),
        None => {
            let hold = cut
                .trench(front)
                .map_or(cut.ground(front), |(_, deep)| deep);
            ("bar", (hold + cut.bar_ends(front).0.min(hold)) / 2.0)
        }
    };
    let x = cut.face(front, y) + outwards(front) * cut.bar_width(front) / 2.0;
    add(name, (x, y), towards(front));
    if let Some(bank) = cut.bank() {
        let side = towards(bank.side);
        let foot = cut.ground(bank.side);
        let share = |share: f64| foot + (bank.level() - foot) * share;
        if let Some(tail) = cut.tied_stone() {
            add("long tie stone", tail, side);
        }
        let y = share(0.3);
        add("drainage stone", (bank.in_drainage(y), y), side);
        let y = share(0.55);
        add("bank", (bank.in_earth(y), y), side);
    }
    parts
}
