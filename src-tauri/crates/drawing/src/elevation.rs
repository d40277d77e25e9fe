//! The wall seen from the side: frames, stints, through rows, copes, ends, stations.

use crate::dimension::{Across, Outside, every_so_many, figure_row, shown as shown_places, tick};
use crate::face::{Face, STANDING_MM};
use crate::hatching::hatched_ground;
use crate::pen::Pen;
use crate::scale::{Scale, strip, times_larger};
use crate::scene::{Anchor, Point, Room, Scene};
use crate::sheet::{FIGURE_MM, Heading, Sheet, WORD_MM, line_of};
use crate::side_notes::{Note, Towards, side_notes};
use crate::stint_band::{Writing, stint_band, writing};
use crate::stretches::{Stretch, fitted_in_stretches};
use crate::words::{self, shown};
use craft::course::{Course, End};
use craft::plan::Plan;
use craft::quantity::{Length, Read, show_count};

/// The wall is drawn at least so high, its cope included.
const LEAST_HEIGHT_MM: f64 = 22.0;
/// From the drawing to the upright lines beside it.
const LANE_MM: f64 = 4.0;
/// Between two stretches.
const APART_MM: f64 = 7.0;
/// The ring round a frame's number.
const RING_MM: f64 = 3.7;
/// More through rows than this are written in one line each.
const FEW_ROWS: usize = 2;

/// The wall seen from the side, station 0 at the left; a long wall in stretches.
pub fn elevation(plan: &Plan, course: &Course, room: Room) -> Scene {
    let (scale, sheet, room) = fitted_in_stretches(plan, room, |scale, room, parts| {
        seen(plan, course, scale, room, parts)
    });
    let heading = Heading {
        name: "elevation",
        title: "The wall seen from the side".to_owned(),
        description: description(plan, course, scale),
    };
    sheet.into_scene(heading, scale, room)
}

fn times(plan: &Plan, course: &Course, scale: Scale) -> u32 {
    let high = plan.section.height() + course.wall.cope_height;
    times_larger(scale.mm(high), LEAST_HEIGHT_MM)
}

fn description(plan: &Plan, course: &Course, scale: Scale) -> String {
    let [start, finish] = course.wall.ends.map(words::end);
    let stints: Vec<String> = plan
        .stints
        .iter()
        .map(|stint| {
            let names: Vec<String> = stint
                .members
                .iter()
                .map(|student| student.name.clone())
                .collect();
            format!(
                "{} from {} to {}",
                words::list(&names),
                shown(course, stint.from),
                shown(course, stint.to)
            )
        })
        .collect();
    [
        format!(
            "The right face at 1:{}, station 0 at the left, {} long.",
            scale.n(),
            shown(course, plan.sizing.length)
        ),
        exaggerated(times(plan, course, scale)).unwrap_or_default(),
        format!("At station 0: {start}. At the far end: {finish}."),
        words::body(plan, course),
        words::cope(plan, course),
        words::footing(plan, course),
        words::throughs(plan, course),
        words::frames(plan, course),
        format!("Stints: {}.", stints.join("; ")),
    ]
    .into_iter()
    .filter(|sentence| !sentence.is_empty())
    .collect::<Vec<_>>()
    .join(" ")
}

fn exaggerated(times: u32) -> Option<String> {
    (1 < times).then(|| format!("Heights are drawn {times} times larger than lengths."))
}

fn seen(plan: &Plan, course: &Course, scale: Scale, room: Room, parts: &[Stretch<'_>]) -> Sheet {
    let writing = writing(&plan.stints, parts, scale);
    let times = times(plan, course, scale);
    let faces = parts.iter().map(|stretch| Face {
        plan,
        course,
        stretch,
        scale,
        times,
    });
    let mut all = Sheet::default();
    let mut every = 1;
    for face in faces.clone() {
        let mut sheet = Sheet::default();
        every = every.max(one_stretch(&mut sheet, &face, writing.as_ref()));
        all.stack(sheet, APART_MM);
    }
    let notes: Vec<String> = faces
        .take(1)
        .map(|face| notes(&face, every, parts.len()))
        .collect();
    strip(&mut all, scale, course.units, &notes, room.width_mm);
    all
}

/// One stretch with all its words. Gives how many stations go to one figure.
fn one_stretch(sheet: &mut Sheet, face: &Face<'_>, writing: Option<&Writing>) -> usize {
    face.draw(sheet);
    let drawn = sheet.extent();
    let (left, right) = (drawn.left - LANE_MM, drawn.right + LANE_MM);
    hatched_ground(sheet, left, right, 0.0);
    if face.stretch.first {
        counts(sheet, face, left);
    }
    if face.stretch.last {
        heights(sheet, face, right);
    }
    let band = sheet.extent().top - 4.0;
    let wall = face.at(0.0, face.top() + face.cope()).y - 1.0;
    let stints = &face.plan.stints;
    stint_band(
        sheet,
        (band, wall),
        stints,
        face.stretch,
        face.scale,
        writing,
    );
    let every = stations(sheet, face);
    if face.stretch.first && face.stretch.last {
        length(sheet, face);
    }
    every
}

fn notes(face: &Face<'_>, every: usize, stretches: usize) -> String {
    let (plan, course) = (face.plan, face.course);
    let mut notes: Vec<String> = exaggerated(face.times).into_iter().collect();
    if 1 < stretches {
        notes.push(in_stretches(shown(course, plan.sizing.length), stretches));
    }
    notes.push("The right face, seen from the right.".to_owned());
    if 1 < every {
        notes.push(format!("One station in {every} is figured."));
    }
    if 0 < plan.stone.copes && face.copes_in_a_band() {
        notes.push("Copes are not drawn one by one.".to_owned());
    }
    let ends = &course.wall.ends;
    if ends.contains(&End::Joined) {
        notes.push("Slanting lines: standing wall.".to_owned());
    }
    if ends.contains(&End::Raked) {
        notes.push("Dotted: left to be carried on.".to_owned());
    }
    notes.join(" ")
}

/// What is said of a wall that is drawn in parts.
pub(crate) fn in_stretches(length: String, stretches: usize) -> String {
    format!("The wall is {length} long, drawn in {stretches} stretches from the top down.")
}

/// Copes, throughs and the left end, counted and named along the left.
fn counts(sheet: &mut Sheet, face: &Face<'_>, x: f64) {
    let plan = face.plan;
    let mut notes = vec![end_note(sheet, face, x, Towards::Left)];
    let mut lead = |y: f64| {
        let level = face.at(0.0, y).y;
        let near = match face.course.wall.ends[0] {
            End::Joined => -STANDING_MM - 1.0,
            End::Head | End::Raked => -1.0,
        };
        sheet.line(Pen::Leader, Point::new(near, level), Point::new(x, level));
        level
    };
    if 0 < plan.stone.copes {
        notes.push(Note {
            y: lead(face.top() + face.cope() * 0.6),
            figure: plan.stone.copes.to_string(),
            word: if plan.stone.copes == 1 {
                "cope"
            } else {
                "copes"
            }
            .to_owned(),
        });
    }
    let thick = face.course.wall.through.thickness.si();
    for row in &plan.stone.throughs {
        let middle = (row.height.si() + thick / 2.0).min((row.height.si() + face.top()) / 2.0);
        let counted = show_count(row.count, "through", "throughs");
        let at = shown(face.course, row.height);
        let y = lead(middle);
        notes.push(if plan.stone.throughs.len() <= FEW_ROWS {
            Note {
                y,
                figure: counted,
                word: format!("at {at}"),
            }
        } else {
            Note {
                y,
                figure: String::new(),
                word: format!("{counted} at {at}"),
            }
        });
    }
    side_notes(sheet, x, Towards::Left, &notes);
}

/// How an end is left, with a line to it low on the wall.
fn end_note(sheet: &mut Sheet, face: &Face<'_>, x: f64, towards: Towards) -> Note {
    let y = face.top() * 0.2;
    let (end, at) = match towards {
        Towards::Left => (face.course.wall.ends[0], 0.0),
        Towards::Right => (face.course.wall.ends[1], face.plan.sizing.length.si()),
    };
    let level = face.at(0.0, y).y;
    let edge = face.at(at, 0.0).x;
    let near = match end {
        End::Head => towards.out(edge, 1.0),
        End::Joined => towards.out(edge, STANDING_MM + 1.0),
        End::Raked => towards.out(edge, -y * face.scale.mm_per_m() / 2.0),
    };
    sheet.line(Pen::Leader, Point::new(near, level), Point::new(x, level));
    Note {
        y: level,
        figure: String::new(),
        word: match end {
            End::Head => "built end",
            End::Joined => "joined end",
            End::Raked => "raked end",
        }
        .to_owned(),
    }
}

/// Height and cope along the upright line at the right, and the right end.
fn heights(sheet: &mut Sheet, face: &Face<'_>, x: f64) {
    let mut notes = vec![end_note(sheet, face, x, Towards::Right)];
    let wall = &face.course.wall;
    let mut steps: Vec<(f64, f64, Length, &str)> =
        vec![(0.0, face.top(), wall.height, "ground to cope")];
    if 0.0 < face.cope() {
        steps.push((
            face.top(),
            face.top() + face.cope(),
            wall.cope_height,
            "cope",
        ));
    }
    let edge = face.at(face.plan.sizing.length.si(), 0.0).x + 1.0;
    for (low, high, length, word) in steps {
        let (from, to) = (face.at(0.0, low).y, face.at(0.0, high).y);
        sheet.line(Pen::Dimension, Point::new(x, from), Point::new(x, to));
        sheet.line(
            Pen::Dimension,
            Point::new(edge, to),
            Point::new(x + 1.2, to),
        );
        tick(sheet, Point::new(x, from));
        tick(sheet, Point::new(x, to));
        notes.push(Note {
            y: (from + to) / 2.0,
            figure: shown(face.course, length),
            word: word.to_owned(),
        });
    }
    side_notes(sheet, x + 1.2, Towards::Right, &notes);
}

/// Numbers of the frames and, below them, their stations. Gives how many stations go to one
/// figure.
fn stations(sheet: &mut Sheet, face: &Face<'_>) -> usize {
    let y = sheet.extent().bottom + 1.5 + RING_MM;
    let rows = face.stretch.rows.iter();
    let places: Vec<(f64, String)> = rows
        .map(|row| {
            let x = face.at(row.station.si(), 0.0).x;
            (x, shown(face.course, row.station))
        })
        .collect();
    frame_numbers(sheet, y, &places, face.stretch.before);
    figure_row(sheet, y + RING_MM + 1.8, &places)
}

/// Frames numbered from 1 at station 0, with `before` of them elsewhere: in rings where there
/// is room for rings.
pub(crate) fn frame_numbers(sheet: &mut Sheet, y: f64, places: &[(f64, String)], before: usize) {
    let all = || places.iter().map(|(x, _)| *x);
    let ringed = every_so_many(all(), 2.0 * RING_MM + 1.0) == 1;
    let every = if ringed { 1 } else { every_so_many(all(), 6.2) };
    for at in shown_places(places.len(), every) {
        let centre = Point::new(places[at].0, y);
        if ringed {
            sheet.circle(Pen::Dimension, centre, RING_MM);
        }
        let size = WORD_MM * 1.08;
        let base = Point::new(centre.x, y + 0.34 * size);
        let number = (before + at + 1).to_string();
        sheet.text(line_of(base, &number, size, Anchor::Middle).bold());
    }
}

fn length(sheet: &mut Sheet, face: &Face<'_>) {
    let y = sheet.extent().bottom + FIGURE_MM + 2.6;
    let to = face.scale.mm(face.plan.sizing.length);
    Across {
        y,
        from: 0.0,
        to,
        figure: &shown(face.course, face.plan.sizing.length),
        word: "length of wall",
        outside: Outside::Right(to + 3.0),
    }
    .draw(sheet);
}
