//! The setting-out seen from above, straightened out along the centre line: stations, bars,
//! trench, offsets, diagonals, bays, arcs.

use crate::above::line_words::{front, is_straight, outset, string_beside};
use crate::above::pegs::letter;
use crate::above::pitch::Pitch;
use crate::above::pitch_words::PitchWords;
use crate::above::taped::Taped;
use crate::along::elevation::in_stretches;
use crate::along::stretches::{Stretch, each_by_itself, fitted_in_stretches, told_with_the_first};
use crate::paper::scale::{Scale, strip, times_larger};
use crate::paper::scene::{Room, Scene};
use crate::paper::sheet::{Heading, Sheet};
use crate::paper::words::{self, shown};
use craft::course::Course;
use craft::plan::Plan;

/// The base of the wall is drawn at least so wide; where many rows of figures stand round
/// it, no wider than it needs to be.
const LEAST_WIDTH_MM: f64 = 34.0;
const LEAST_WIDTH_AMONG_ROWS_MM: f64 = 24.0;
/// Between two stretches.
const APART_MM: f64 = 8.0;

/// The setting-out seen from above, straightened out, station 0 at the left; a long wall in
/// stretches.
pub fn setting_out(plan: &Plan, course: &Course, room: Room) -> Scene {
    let taped = Taped::of(plan);
    let (scale, sheet, room) = fitted_in_stretches(plan, room, |scale, room, parts| {
        seen((plan, course, &taped), scale, room, parts)
    });
    let heading = Heading {
        name: "setting-out",
        title: "The setting-out seen from above".to_owned(),
        description: description(plan, course, &taped, scale),
    };
    sheet.into_scene(heading, scale, room)
}

/// The same with each stretch in a picture of its own, where the letters of one picture would come
/// out too small; nothing where that is no help.
pub fn setting_out_in_parts(plan: &Plan, course: &Course, room: Room) -> Vec<Scene> {
    let taped = Taped::of(plan);
    let drawn = each_by_itself(plan, room, |scale, room, parts| {
        seen((plan, course, &taped), scale, room, parts)
    });
    let Some((scale, sheets)) = drawn else {
        return Vec::new();
    };
    let count = sheets.len();
    let scene = |(at, sheet): (usize, Sheet)| {
        let heading = Heading {
            name: "setting-out",
            title: "The setting-out seen from above".to_owned(),
            description: match at {
                0 => description(plan, course, &taped, scale),
                _ => told_with_the_first("the setting-out", at, count),
            },
        };
        sheet.into_scene(heading, scale, room)
    };
    sheets.into_iter().enumerate().map(scene).collect()
}

fn seen(
    (plan, course, taped): (&Plan, &Course, &Taped),
    scale: Scale,
    room: Room,
    parts: &[Stretch<'_>],
) -> Sheet {
    let mut all = Sheet::default();
    let mut every = 1;
    for stretch in parts {
        let pitch = Pitch {
            plan,
            course,
            stretch,
            scale,
            times: times(plan, scale),
        };
        let mut sheet = Sheet::default();
        let words = PitchWords {
            pitch: &pitch,
            taped,
        };
        every = every.max(words.write(&mut sheet));
        all.stack(sheet, APART_MM);
    }
    let begins = parts.first().is_none_or(|stretch| stretch.first);
    let mut notes = if begins {
        vec![signs(plan, course, times(plan, scale), every, parts.len())]
    } else {
        goes_on(every)
    };
    if begins {
        notes.extend(taped.alike_in_words(plan, course));
        notes.extend(arcs(plan, course));
    }
    strip(&mut all, scale, course.units, &notes, room.width_mm);
    all
}

/// How many times larger the drawing is across the wall.
fn times(plan: &Plan, scale: Scale) -> u32 {
    let taped = Taped::of(plan);
    let wanted = if taped.frames_alike && taped.sides_as_the_bay {
        LEAST_WIDTH_MM
    } else {
        LEAST_WIDTH_AMONG_ROWS_MM
    };
    times_larger(scale.mm(plan.section.base_width()), wanted)
}

fn exaggerated(times: u32) -> Option<String> {
    (1 < times).then(|| format!("Across the wall drawn {times} times larger than along it."))
}

fn straightened(plan: &Plan) -> Option<String> {
    let said = "The strip is straightened out: on the ground it bends.";
    (!is_straight(plan)).then(|| said.to_owned())
}

fn signs(plan: &Plan, course: &Course, times: u32, every: usize, stretches: usize) -> String {
    let mut notes: Vec<String> = straightened(plan).into_iter().collect();
    notes.extend(exaggerated(times));
    if 1 < stretches {
        notes.push(in_stretches(shown(course, plan.sizing.length), stretches));
    }
    notes.push("Left is left when looking along the wall from station 0.".to_owned());
    if let Some(front) = front(plan) {
        notes.push(format!(
            "Set out from the front face, the {} one.",
            front.word()
        ));
    }
    notes.push(
        match plan.frames.bars {
            Some(_) => "Dots: bars, measured to their inner faces.",
            None => "Squares: legs of the frames, measured to their inner faces.",
        }
        .to_owned(),
    );
    if course.wall.footing.is_some() {
        notes.push(format!(
            "Dashed: edge of the trench, {} beyond each face.",
            shown(course, outset(course))
        ));
    }
    if Taped::of(plan).frames_alike {
        notes.push("All frames alike.".to_owned());
    }
    if 1 < every {
        notes.push(one_in(every));
    }
    notes.join(" ")
}

/// What is said under a stretch that has a picture of its own: all that holds for the whole
/// line stands under the first.
fn goes_on(every: usize) -> Vec<String> {
    let mut notes = vec!["Drawn as the first part, where its signs are told.".to_owned()];
    if 1 < every {
        notes.push(one_in(every));
    }
    notes
}

fn one_in(every: usize) -> String {
    format!("One figure in {every} is written.")
}

/// Every arc with its letter, and how a straight string lies beside it.
fn arcs(plan: &Plan, course: &Course) -> Vec<String> {
    let curves = plan.fittings.curves.iter().enumerate();
    curves
        .map(|(at, curve)| {
            format!(
                "Arc {}, {} to {}: radius {}, turning {}. String over {}: {}.",
                letter(at),
                shown(course, curve.from),
                shown(course, curve.to),
                shown(course, curve.bend.radius),
                curve.bend.turn.word(),
                shown(course, curve.bay),
                string_beside(course, curve)
            )
        })
        .collect()
}

fn description(plan: &Plan, course: &Course, taped: &Taped, scale: Scale) -> String {
    let mut said = vec![format!(
        "Plan at 1:{} along the wall, station 0 at the left, left of the centre line at the top.",
        scale.n()
    )];
    said.extend(straightened(plan));
    said.extend(exaggerated(times(plan, scale)));
    said.push(words::frames(plan, course));
    if plan.wall.is_ring() {
        said.push(format!(
            "The last bay closes the ring: it comes back to frame 1 at {}.",
            shown(course, plan.wall.length())
        ));
    }
    said.extend(front(plan).map(|front| {
        format!(
            "The {} face is the front, from which the wall is set out; the bank lies on the {}.",
            front.word(),
            front.other().word()
        )
    }));
    said.extend(offsets_in_words(plan, course, taped));
    let bays = plan.frames.bays.iter();
    let bays: Vec<String> = bays.map(|bay| shown(course, bay.length)).collect();
    said.push(format!(
        "Bays from station 0, along the centre line: {}.",
        words::list(&bays)
    ));
    said.extend(taped.in_words(plan, course));
    said.extend(arcs(plan, course));
    said.push(trench(plan, course, taped));
    said.join(" ")
}

/// The trench, whose width changes with the offsets of the frames.
fn trench(plan: &Plan, course: &Course, taped: &Taped) -> String {
    let footing = match course.wall.footing {
        Some(footing) if !taped.frames_alike => footing,
        _ => return words::footing(plan, course),
    };
    let rows = plan.frames.rows.iter();
    let widths = rows.map(|row| shown(course, row.base_width() + footing.outset * 2.0));
    format!(
        "The footing lies in a trench {} deep, {} beyond each face: at the frames in turn it is \
         {} wide.",
        shown(course, footing.depth),
        shown(course, footing.outset),
        words::list(&widths.collect::<Vec<_>>())
    )
}

fn offsets_in_words(plan: &Plan, course: &Course, taped: &Taped) -> Vec<String> {
    let rows = plan.frames.rows.iter().enumerate();
    let alike = if taped.frames_alike { 1 } else { usize::MAX };
    rows.take(alike)
        .map(|(at, row)| {
            let who = if taped.frames_alike {
                "Every frame".to_owned()
            } else {
                format!("Frame {}", at + 1)
            };
            format!(
                "{who}: left {} {}, right {0} {} from the centre line, {} between their inner \
                 faces.",
                if plan.frames.bars.is_some() {
                    "bar"
                } else {
                    "leg"
                },
                shown(course, row.left_offset),
                shown(course, row.right_offset),
                shown(course, row.base_width())
            )
        })
        .collect()
}
