//! The wall seen from the side: frames, stints, through rows, copes, ends, stations, levels.

use crate::along::beside::beside;
use crate::along::counted::buried;
use crate::along::face::Face;
use crate::along::ground_handles::handles;
use crate::along::laid::{Laid, larger};
use crate::along::lie::{Lie, level_shown};
use crate::along::line_row::{LineWriting, letters_explained, line_writing};
use crate::along::masonry::copes_in_a_band;
use crate::along::stint_band::{Place, Writing, stint_band, writing};
use crate::along::stretches::{Stretch, each_by_itself, laid_out, stretches, told_with_the_first};
use crate::along::told;
use crate::along::underneath::underneath;
use crate::paper::hatching::hatched_below;
use crate::paper::pen::Pen;
use crate::paper::scale::{Scale, strip, times_larger};
use crate::paper::scene::{Point, Room, Scene};
use crate::paper::sheet::{Heading, Sheet};
use crate::paper::words::shown;
use craft::course::{Course, End, WallKind};
use craft::plan::Plan;
use craft::quantity::{Read, show_count};

/// The wall is drawn at least so high, its cope included.
const LEAST_HEIGHT_MM: f64 = 12.5;
/// Unless the ground would then rise and fall by more than this over one stretch.
const MOST_RANGE_MM: f64 = 60.0;
/// Face stones drawn so many times larger than they are are said to be.
const MUCH_LARGER: f64 = 1.25;
/// From the drawing to the upright lines beside it.
const LANE_MM: f64 = 2.5;
/// Between two stretches.
const APART_MM: f64 = 7.0;

/// The wall seen from the side, unrolled along its line; a long wall in stretches.
pub fn elevation(plan: &Plan, course: &Course, room: Room) -> Scene {
    let lie = Lie::of(plan, course);
    let mut view = View {
        plan,
        course,
        lie: &lie,
        laid: None,
    };
    let (fitted, _) = laid_out(plan, room, |scale, room, parts| {
        view.too_long(scale, room, parts)
            .unwrap_or_else(|| view.seen(scale, room, parts))
    });
    // Stones take no room of their own, so that they are laid and drawn once.
    let parts = stretches(plan, fitted.count);
    let times = view.times(fitted.scale, &parts);
    let laid = Laid::of(plan, course, &lie, fitted.scale, times);
    view.laid = Some(&laid);
    let sheet = view.seen(fitted.scale, fitted.room, &parts);
    let heading = Heading {
        name: "elevation",
        title: "The wall seen from the side".to_owned(),
        description: told::elevation(plan, course, &lie, fitted.scale, exaggerated(times)),
    };
    sheet.into_scene(heading, fitted.scale, fitted.room)
}

/// The same with each stretch in a picture of its own, where the letters of one picture would come
/// out too small; nothing where that is no help.
pub fn elevation_in_parts(plan: &Plan, course: &Course, room: Room) -> Vec<Scene> {
    let lie = Lie::of(plan, course);
    let mut view = View {
        plan,
        course,
        lie: &lie,
        laid: None,
    };
    let drawn = each_by_itself(plan, room, |scale, room, parts| {
        view.too_long(scale, room, parts)
            .unwrap_or_else(|| view.seen(scale, room, parts))
    });
    let Some((scale, sheets)) = drawn else {
        return Vec::new();
    };
    let parts = stretches(plan, sheets.len());
    // Each stretch has the heights it has room for: the stones of the whole wall are laid once,
    // for heights drawn alike.
    let alike = |part: &Stretch<'_>| view.times(scale, std::slice::from_ref(part));
    let times: Vec<u32> = parts.iter().map(alike).collect();
    let laid = match times.as_slice() {
        [first, rest @ ..] if rest.iter().all(|it| it == first) => {
            Some(Laid::of(plan, course, &lie, scale, *first))
        }
        _ => None,
    };
    view.laid = laid.as_ref();
    let scene = |(at, part): (usize, &Stretch<'_>)| {
        let heading = Heading {
            name: "elevation",
            title: "The wall seen from the side".to_owned(),
            description: match (at, times.first()) {
                (0, Some(first)) => told::elevation(plan, course, &lie, scale, exaggerated(*first)),
                _ => told_with_the_first("the wall seen from the side", at, parts.len()),
            },
        };
        let sheet = view.seen(scale, room, std::slice::from_ref(part));
        sheet.into_scene(heading, scale, room)
    };
    parts.iter().enumerate().map(scene).collect()
}

fn exaggerated(times: u32) -> Option<String> {
    (1 < times).then(|| format!("Heights are drawn {times} times larger than lengths."))
}

/// What is drawn, whatever its scale.
struct View<'a> {
    plan: &'a Plan,
    course: &'a Course,
    lie: &'a Lie<'a>,
    laid: Option<&'a Laid>,
}

impl View<'_> {
    /// How many times larger heights are drawn than lengths.
    fn times(&self, scale: Scale, parts: &[Stretch<'_>]) -> u32 {
        let high = self.plan.section.height() + self.course.wall.cope_height;
        let range = parts
            .iter()
            .map(|part| {
                let (low, high) = self.lie.span(part.from().si(), part.to().si());
                high - low
            })
            .fold(0.0, f64::max);
        let wanted = times_larger(scale.mm(high), LEAST_HEIGHT_MM);
        let most = (MOST_RANGE_MM / (range * scale.mm_per_m()))
            .floor()
            .max(1.0);
        (1..=wanted)
            .rev()
            .find(|times| f64::from(*times) <= most)
            .unwrap_or(1)
    }

    /// A mere line where the wall alone is longer than the room: nothing else need be drawn
    /// to see that it does not fit.
    fn too_long(&self, scale: Scale, room: Room, parts: &[Stretch<'_>]) -> Option<Sheet> {
        let longs = parts.iter().map(|part| scale.mm(part.to() - part.from()));
        let long = longs.fold(0.0, f64::max);
        (room.width_mm < long).then(|| {
            let mut sheet = Sheet::default();
            let ends = [0.0, long].map(|x| Point::new(x, 0.0));
            sheet.line(Pen::Outline, ends[0], ends[1]);
            sheet
        })
    }

    fn seen(&self, scale: Scale, room: Room, parts: &[Stretch<'_>]) -> Sheet {
        let writing = writing(&self.plan.stints, parts, scale);
        let line = line_writing(self.plan, self.course, parts, scale);
        let times = self.times(scale, parts);
        let faces = parts.iter().map(|stretch| Face {
            plan: self.plan,
            course: self.course,
            lie: self.lie,
            stretch,
            scale,
            times,
            laid: self.laid,
        });
        let mut all = Sheet::default();
        let mut every = 1;
        for face in faces.clone() {
            let mut sheet = Sheet::default();
            every = every.max(one_stretch(&mut sheet, &face, writing.as_ref(), line));
            all.stack(sheet, APART_MM);
        }
        let notes: Vec<String> = faces
            .take(1)
            .map(|face| notes(&face, every, parts.len(), line))
            .collect();
        strip(&mut all, scale, self.course.units, &notes, room.width_mm);
        all
    }
}

/// One stretch with all its words. Gives how many stations go to one figure.
fn one_stretch(
    sheet: &mut Sheet,
    face: &Face<'_>,
    writing: Option<&Writing>,
    line: LineWriting,
) -> usize {
    face.draw(sheet);
    let drawn = sheet.extent();
    let (left, right) = (drawn.left - LANE_MM, drawn.right + LANE_MM);
    hatched_below(sheet, &face.ground_on_paper(left, right));
    beside(sheet, face, (left, right));
    if face.laid.is_some() {
        for handle in handles(face) {
            sheet.handle(handle);
        }
    }
    let place = Place {
        y: sheet.extent().top - 4.0,
        x: &|at| face.x(at.si()),
        wall: &|at| face.y(face.lie.top(at.si()) + face.cope()) - 1.0,
    };
    stint_band(sheet, &place, &face.plan.stints, face.stretch, writing);
    underneath(sheet, face, line)
}

fn notes(face: &Face<'_>, every: usize, stretches: usize, line: LineWriting) -> String {
    let (plan, course) = (face.plan, face.course);
    let mut notes: Vec<String> = exaggerated(face.times).into_iter().collect();
    if 1 < stretches {
        notes.push(in_stretches(shown(course, plan.sizing.length), stretches));
    }
    notes.push(looked_at(face));
    notes.extend(turns_note(face));
    notes.extend(line_notes(face));
    if line == LineWriting::Letters {
        notes.push(letters_explained(plan, course));
    }
    if 1 < every {
        notes.push(format!("One station in {every} is figured."));
    }
    notes.extend(ground_notes(face));
    if 0 < plan.stone.copes && copes_in_a_band(face) {
        notes.push("Copes are not drawn one by one.".to_owned());
    }
    if MUCH_LARGER <= larger(face.scale) {
        notes.push("Face stones are drawn larger than they are.".to_owned());
    }
    let ends = || plan.ends.iter().map(|end| end.kind);
    if ends().any(|end| end == End::Joined) {
        notes.push("Slanting lines: standing wall.".to_owned());
    }
    if ends().any(|end| end == End::Raked) {
        notes.push("Dotted: left to be carried on.".to_owned());
    }
    notes.join(" ")
}

/// Which face it is, and from where it is seen.
fn looked_at(face: &Face<'_>) -> String {
    let side = face.lie.side.word();
    let mut said = format!("The {side} face, seen from the {side}");
    if let WallKind::Retaining(bank) = &face.course.wall.kind {
        said += &format!(
            ", in the open; the bank lies behind, on the {}",
            bank.side.word()
        );
    }
    if face.mirrored() {
        said += ". Station 0 is at the right";
    }
    said + "."
}

/// How many three-quarter throughs show their ends in this face.
fn turns_note(face: &Face<'_>) -> Option<String> {
    let (here, all) = told::shown_throughs(face.plan, face.course, face.lie)?;
    let said = match here {
        0 => ", dashed: from the other face.".to_owned(),
        some if some < all => {
            format!(": {here} of {all} come from this face; dashed: those from the other.")
        }
        _ => ", from this face.".to_owned(),
    };
    Some(format!("Three-quarter throughs{said}"))
}

fn line_notes(face: &Face<'_>) -> Option<String> {
    let wall = &face.plan.wall;
    if wall.is_ring() {
        return Some(
            "A closed ring, cut open at station 0 and unrolled along its centre line.".to_owned(),
        );
    }
    let bends = wall.line.stretches().iter().any(|one| one.bend.is_some());
    bends.then(|| "Unrolled along the centre line, on which stations are measured.".to_owned())
}

fn ground_notes(face: &Face<'_>) -> Vec<String> {
    let (plan, course, lie) = (face.plan, face.course, face.lie);
    let mut notes = Vec::new();
    if plan.frames.bars.is_none() {
        notes.push("Timber frames stand on the ground.".to_owned());
    }
    if leaning_heads(plan) {
        notes.push("End profiles lean with the heads.".to_owned());
    }
    if plan.wall.ground.is_level() {
        return notes;
    }
    if lie.leans_across() {
        notes.push(format!(
            "Ground and heights are those at the {} face.",
            lie.side.word()
        ));
    }
    if lie.top_is_level() {
        notes.push(format!(
            "The top lies level at {}.",
            level_shown(course, lie.top(0.0))
        ));
    } else {
        notes.push("Rows run parallel to the top; beds are level.".to_owned());
    }
    let buried = buried(plan, lie, course.wall.through.thickness.si());
    if 0 < buried {
        let counted = show_count(buried, "counted through", "counted throughs");
        notes.push(format!("{counted} would lie in the ground."));
    }
    if course.wall.footing.is_some() && lie.is_benched() {
        notes.push("The footing is benched where the ground is steeper than 1 in 10.".to_owned());
    }
    notes
}

fn leaning_heads(plan: &Plan) -> bool {
    let mut heads = plan.ends.iter().filter(|end| end.kind == End::Head);
    heads.any(|end| end.batter.n().is_some())
}

/// What is said of a wall that is drawn in parts.
pub(crate) fn in_stretches(length: String, stretches: usize) -> String {
    format!("The wall is {length} long, drawn in {stretches} stretches from the top down.")
}

#[cfg(test)]
mod tests;
