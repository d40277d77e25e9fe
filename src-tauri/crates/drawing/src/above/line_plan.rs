//! The line on the ground, seen from above, at one scale in both directions.

use crate::above::ground_edge::{beyond, corners, face};
use crate::above::ground_view::GroundView;
use crate::above::line_words::{front, is_straight, line, outset, same};
use crate::above::pegs::{centres, ground_taken, list, pegs};
use crate::above::plan_words::{PlanWords, Said};
use crate::paper::fitting::{fitted, sound};
use crate::paper::free_place::Ink;
use crate::paper::scale::{Scale, strip};
use crate::paper::scene::{Room, Scene};
use crate::paper::sheet::{Heading, Sheet};
use crate::paper::words::{self, shown};
use craft::course::{Course, End};
use craft::plan::Plan;
use craft::quantity::{Length, Read};
use craft::wall::{Place, Side};
use std::f64::consts::{FRAC_PI_2, PI};

/// The wall is drawn at least so long.
const LEAST_LENGTH_MM: f64 = 45.0;
/// Round the wall for words.
const WORDS_MM: f64 = 40.0;
/// The scale bar and the notes under it.
const STRIP_MM: f64 = 26.0;
/// Between the plan and the list of pegs.
const APART_MM: f64 = 8.0;
/// A centre is drawn where the wall keeps this share of the scale it would have without.
const CENTRE_SHARE: f64 = 0.8;
/// So finely an arc is followed to find how the plan lies best.
const COARSE_RAD: f64 = 0.1;

/// The line as it lies on the ground, turned as it fits the room best.
pub fn line_plan(plan: &Plan, course: &Course, room: Room) -> Scene {
    let room = sound(room);
    let lie = Lie::best(plan, course, room);
    let longest = lie.extent().into_iter().fold(0.0, f64::max);
    let legible = |scale: Scale| LEAST_LENGTH_MM < longest * scale.mm_per_m();
    let (scale, sheet, room) = fitted(room, legible, |scale, room| {
        // The list goes where it was reckoned to fit better, or else where it does fit.
        let drawn = |beside| seen((plan, course), scale, room, &lie, beside);
        let first = drawn(lie.beside);
        if first.fits(room) {
            return first;
        }
        let other = drawn(!lie.beside);
        if other.fits(room) { other } else { first }
    });
    let heading = Heading {
        name: "line-plan",
        title: "The line on the ground, seen from above".to_owned(),
        description: description(plan, course, scale),
    };
    sheet.into_scene(heading, scale, room)
}

/// How the plan lies on the paper.
struct Lie {
    /// Radians anticlockwise from the paper's right to the first direction.
    turn: f64,
    /// Which arcs' centres are drawn.
    centres: Vec<bool>,
    /// The list of pegs stands beside the plan, not below.
    beside: bool,
    /// Corners of the wall and of the centres drawn, in metres.
    corners: Vec<(f64, f64)>,
}

impl Lie {
    fn best(plan: &Plan, course: &Course, room: Room) -> Self {
        let wall = outline(plan, course);
        let mut corners = wall.clone();
        let mut best = lies_best(plan, course, room, &corners);
        let without = best.2;
        let mut drawn = Vec::new();
        for centre in centres(plan) {
            corners.push((centre.x_m, centre.y_m));
            let with = lies_best(plan, course, room, &corners);
            let keeps = CENTRE_SHARE * without <= with.2;
            if keeps {
                best = with;
            } else {
                corners.pop();
            }
            drawn.push(keeps);
        }
        Self {
            turn: best.0,
            centres: drawn,
            beside: best.1,
            corners,
        }
    }

    /// Width and height on paper, in metres.
    fn extent(&self) -> [f64; 2] {
        extent(&self.corners, self.turn)
    }
}

fn outline(plan: &Plan, course: &Course) -> Vec<(f64, f64)> {
    let (line, by) = (&plan.wall.line, outset(course));
    let edge = |side| corners(line, side, &beyond(&face(&plan.wall, side), by), COARSE_RAD);
    let place = |place: Place| (place.x_m, place.y_m);
    Side::BOTH.into_iter().flat_map(edge).map(place).collect()
}

pub(crate) fn extent(corners: &[(f64, f64)], turn: f64) -> [f64; 2] {
    let (sin, cos) = turn.sin_cos();
    let [wide, high] = [(cos, -sin), (sin, cos)].map(|(a, b)| {
        let along = corners.iter().map(|(x, y)| a * x + b * y);
        along.fold((f64::INFINITY, f64::NEG_INFINITY), |(least, most), it| {
            (least.min(it), most.max(it))
        })
    });
    [wide.1 - wide.0, high.1 - high.0]
}

/// Every turn that is tried, with how well it is liked: best to the right, then upwards, so
/// that left is left; a slant only where it gains much.
pub(crate) fn turns(plan: &Plan) -> Vec<(f64, f64)> {
    let mut turns = vec![(0.0, 1.0), (FRAC_PI_2, 0.97)];
    if !is_straight(plan) {
        turns.extend([(-FRAC_PI_2, 0.85), (PI, 0.8)]);
        let slants = (-11..12).filter(|slant| slant % 6 != 0);
        turns.extend(slants.map(|slant| (f64::from(slant) * PI / 12.0, 0.8)));
    }
    turns
}

/// The turn, whether the list stands beside, and how large the wall gets by them.
fn lies_best(plan: &Plan, course: &Course, room: Room, corners: &[(f64, f64)]) -> (f64, bool, f64) {
    let list = listed(plan, course).map_or((0.0, 0.0), |list| {
        let extent = list.extent();
        (extent.width() + APART_MM, extent.height() + APART_MM)
    });
    let mut best = (0.0, false, 0.0);
    for (turn, liking) in turns(plan) {
        for beside in [false, true] {
            let [wide, high] = extent(corners, turn);
            let (across, down) = if beside { (list.0, 0.0) } else { (0.0, list.1) };
            let across = room.width_mm - WORDS_MM - across;
            let down = room.height_mm - WORDS_MM - STRIP_MM - down;
            let size = liking * (across.max(1.0) / wide).min(down.max(1.0) / high);
            if best.2 < size {
                best = (turn, beside, size);
            }
        }
    }
    best
}

/// The list of pegs; a single straight needs none.
fn listed(plan: &Plan, course: &Course) -> Option<Sheet> {
    (!is_straight(plan)).then(|| list(plan, course))
}

fn seen(
    (plan, course): (&Plan, &Course),
    scale: Scale,
    room: Room,
    lie: &Lie,
    beside: bool,
) -> Sheet {
    let view = GroundView {
        plan,
        course,
        scale,
        turn: lie.turn,
    };
    let mut sheet = Sheet::default();
    view.draw(&mut sheet);
    let said = PlanWords {
        view: &view,
        centres: &lie.centres,
    }
    .write(&mut sheet, &mut Ink::default());
    if let Some(list) = listed(plan, course) {
        let drawn = sheet.extent();
        if beside {
            sheet.beside(list, APART_MM);
        } else {
            sheet.under(list, drawn.left, APART_MM);
        }
    }
    let notes = notes(plan, course, said);
    strip(&mut sheet, scale, course.units, &notes, room.width_mm);
    sheet
}

/// What the signs stand for, then the line and how it is pegged, then the ground it takes.
fn notes(plan: &Plan, course: &Course, said: Said) -> Vec<String> {
    let mut signs = vec![match plan.frames.bars {
        Some(_) => "Dots: bars, outside the faces.",
        None => "Squares: legs of the frames, outside the faces.",
    }];
    if course.wall.footing.is_some() {
        signs.push("Dashed: edge of the trench.");
    }
    if plan.ends.iter().any(|end| end.kind == End::Raked) {
        signs.push("Dotted: left to be carried on.");
    }
    if !said.every_frame {
        signs.push("Not every frame is numbered.");
    } else if !said.every_station {
        signs.push("Stations not written here stand in the setting-out.");
    }
    let [along, across] = ground_taken(plan, course).map(|taken| shown(course, taken));
    signs.push("Ground taken:");
    let mut notes = vec![format!(
        "{} {along} along the first direction, {across} across it.",
        signs.join(" ")
    )];
    if !is_straight(plan) {
        notes.push(format!("Line: {}.", line(plan, course)));
        notes.push(
            "Base line: from station 0 in the first direction. Right angles by 3, 4 and 5; \
             arcs by tape from their centres."
                .to_owned(),
        );
    }
    notes
}

fn description(plan: &Plan, course: &Course, scale: Scale) -> String {
    let mut said = vec![
        format!(
            "Ground plan at 1:{} in both directions, seen from above; left and right as seen \
             looking along the wall from station 0.",
            scale.n()
        ),
        format!("The centre line: {}.", line(plan, course)),
    ];
    if plan.wall.is_ring() {
        said.push("It closes on itself at station 0.".to_owned());
    }
    if !is_straight(plan) {
        let pegs = pegs(plan);
        let pegs: Vec<String> = pegs.iter().map(|peg| peg.in_words(course)).collect();
        said.push(format!(
            "Measured from station 0 along a base line in the first direction, and beside it: \
             {}.",
            pegs.join("; ")
        ));
    }
    said.push(words::frames(plan, course));
    said.push(faces(plan, course));
    let ends: Vec<String> = plan
        .ends
        .iter()
        .zip(["At station 0", "At the far end"])
        .map(|(end, at)| format!("{at}: {}.", words::end(end.kind)))
        .collect();
    said.extend(ends);
    if let (Some(front), Some(retaining)) = (front(plan), plan.retaining.as_ref()) {
        said.push(format!(
            "The {} face is the front; behind the {} face lie {} of drainage stone and then \
             the bank.",
            front.word(),
            front.other().word(),
            shown(course, retaining.drainage)
        ));
    }
    let [along, across] = ground_taken(plan, course).map(|taken| shown(course, taken));
    said.push(format!(
        "The wall{} takes {along} along the first direction and {across} across it.",
        if course.wall.footing.is_some() {
            " with its trench"
        } else {
            ""
        }
    ));
    said.join(" ")
}

/// How far the faces stand off the centre line: at all frames, or from the least to the most.
fn faces(plan: &Plan, course: &Course) -> String {
    let sides = Side::BOTH.map(|side| {
        let offsets = plan.frames.rows.iter().map(|row| row.offset(side));
        let (least, most) = range(offsets);
        let far = if same(least, most) {
            shown(course, least)
        } else {
            format!("{} to {}", shown(course, least), shown(course, most))
        };
        format!("{far} {}", side.word())
    });
    format!(
        "At the ground the faces stand {} and {} of it.",
        sides[0], sides[1]
    )
}

fn range(lengths: impl Iterator<Item = Length>) -> (Length, Length) {
    let mut lengths = lengths.peekable();
    let first = lengths.peek().copied().unwrap_or_default();
    lengths.fold((first, first), |(least, most), it| {
        (
            if it.si() < least.si() { it } else { least },
            if most.si() < it.si() { it } else { most },
        )
    })
}
