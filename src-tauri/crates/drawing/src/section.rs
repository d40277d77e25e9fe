//! The wall cut across: with its measurements, or with letters for naming the parts.

use crate::cut::{Cut, outwards};
use crate::dimension::{Across, CLEAR_MM, Outside, ROW_MM, tick};
use crate::pen::Pen;
use crate::scale::{Scale, strip};
use crate::scene::{Anchor, Point, Room, Scene};
use crate::sheet::{FIGURE_MM, Heading, Sheet, WORD_MM, fitted};
use crate::side_notes::{Note, Towards, side_notes};
use crate::words::{self, shown};
use craft::course::Course;
use craft::plan::Plan;
use craft::quantity::{Length, Read};
use craft::wall::Side;

/// How far a line that leads to a dimension runs past it.
const PAST_MM: f64 = 1.2;
/// From the drawing to the nearest upright dimension line.
const LANE_MM: f64 = 4.0;
/// How far the centre line runs up past the drawing.
const CENTRE_PAST_MM: f64 = 2.0;
/// What a batter's figure and word take in height.
const BATTER_MM: f64 = FIGURE_MM + WORD_MM + 2.0;

/// The wall cut across, to scale, with its measurements.
pub fn section(plan: &Plan, course: &Course, room: Room) -> Scene {
    // The words at the faces need the height of the wall beside them.
    let legible = |scale: Scale| BATTER_MM < scale.mm(plan.section.height());
    let draw = |scale, room| measured(plan, course, scale, room);
    let (scale, sheet, room) = fitted(room, legible, draw);
    let heading = Heading {
        name: "section",
        title: "The wall cut across, with its measurements".to_owned(),
        description: description(plan, course, scale),
    };
    sheet.into_scene(heading, scale, room)
}

fn description(plan: &Plan, course: &Course, scale: Scale) -> String {
    let row = plan.frames.rows.first();
    let offsets = row.map_or_else(String::new, |row| {
        format!(
            "At the ground the bars stand {} left and {} right of the centre line, {} of bar in \
             the ground; the underside of the board is the top of the wall.",
            shown(course, row.left_offset),
            shown(course, row.right_offset),
            shown(course, course.frames.embedment),
        )
    });
    [
        format!(
            "Cross-section at 1:{}, seen looking along the wall from station 0.",
            scale.n()
        ),
        words::body(plan, course),
        words::cope(plan, course),
        words::footing(plan, course),
        words::throughs(plan, course),
        offsets,
        words::strings(plan, course),
        "Inside are two faces of large stones with small hearting between them.".to_owned(),
    ]
    .join(" ")
}

fn measured(plan: &Plan, course: &Course, scale: Scale, room: Room) -> Sheet {
    let mut sheet = Sheet::default();
    let cut = Cut {
        plan,
        course,
        scale,
    };
    cut.draw(&mut sheet);
    let drawn = sheet.extent();
    let batters = [Side::Left, Side::Right].map(|side| batter(&mut sheet, &cut, side));
    let with_batters = sheet.extent();
    let lines = Lines {
        left: with_batters.left.min(drawn.left) - LANE_MM,
        right: with_batters.right.max(drawn.right) + LANE_MM,
    };
    cut.ground(&mut sheet, lines.left, lines.right);
    through_heights(&mut sheet, &cut, lines.left, batters[0]);
    heights(&mut sheet, &cut, lines.right);
    let upper = drawn.top;
    top_width(&mut sheet, &cut, upper);
    widths(&mut sheet, &cut, upper - CENTRE_PAST_MM);
    strip(
        &mut sheet,
        scale,
        course.units,
        &notes(course),
        room.width_mm,
    );
    sheet
}

/// Where the upright dimension lines stand.
struct Lines {
    left: f64,
    right: f64,
}

fn notes(course: &Course) -> Vec<String> {
    let mut notes = vec![
        "Seen looking along the wall from station 0. Rings on the bars: string heights.".to_owned(),
    ];
    if 0.0 < course.wall.cope_height.si() {
        notes.push("Board and bars come off before the cope is set.".to_owned());
    }
    notes
}

/// A face's batter in words beside it; gives whether lines to the through rows may cross
/// there without touching the words.
fn batter(sheet: &mut Sheet, cut: &Cut<'_>, side: Side) -> bool {
    let (figure, word) = match cut.plan.section.batter(side) {
        batter if batter.n().is_none() => ("plumb".to_owned(), "face"),
        batter => (words::batter(batter), "batter"),
    };
    let (middle, gap) = widest_gap(cut, side);
    let half_m = BATTER_MM / 2.0 / cut.scale.mm_per_m();
    let low = (middle - half_m).max(0.0);
    // The bar leans outwards going down, so that its foot beside the words is what counts.
    let bar = cut.face(side, low) + outwards(side) * cut.bar_width(side);
    let projection = outwards(side) * cut.course.wall.through.projection.si();
    let nearest = match side {
        Side::Left => bar.min(cut.face(side, low) + projection),
        Side::Right => bar.max(cut.face(side, low) + projection),
    };
    let near = cut.at(nearest, middle).x + outwards(side) * 4.0;
    let at = cut.at(cut.face(side, middle), middle);
    sheet.line(Pen::Leader, at, Point::new(near, at.y));
    let text = near + outwards(side) * CLEAR_MM;
    let anchor = match side {
        Side::Left => Anchor::End,
        Side::Right => Anchor::Start,
    };
    sheet.figure(Point::new(text, at.y - 0.4), &figure, anchor);
    sheet.word(Point::new(text, at.y + 0.6 + 0.78 * WORD_MM), word, anchor);
    BATTER_MM <= gap
}

/// The middle and the paper height of the widest stretch of face with no line across it:
/// on the left the lines of the through rows cross, on the right none do.
fn widest_gap(cut: &Cut<'_>, side: Side) -> (f64, f64) {
    let mut lines = vec![0.0, cut.top()];
    if side == Side::Left {
        lines.extend(cut.plan.stone.throughs.iter().map(|row| row.height.si()));
        lines.sort_by(f64::total_cmp);
    }
    let widest = lines
        .windows(2)
        .map(|pair| ((pair[0] + pair[1]) / 2.0, pair[1] - pair[0]))
        .max_by(|a, b| a.1.total_cmp(&b.1));
    let (middle, gap) = widest.unwrap_or((cut.top() / 2.0, cut.top()));
    let gap = gap * cut.scale.mm_per_m();
    // Where no gap is wide enough the words stand at half height, and the lines give way.
    if gap < BATTER_MM {
        (cut.top() / 2.0, gap)
    } else {
        (middle, gap)
    }
}

/// Heights of the through rows above the ground, and the bar's hold in the ground, along the
/// upright line at the left.
fn through_heights(sheet: &mut Sheet, cut: &Cut<'_>, x: f64, lines_may_cross: bool) {
    let mut notes = Vec::new();
    let from = |inner: f64| if lines_may_cross { inner } else { x + 3.0 };
    for row in &cut.plan.stone.throughs {
        let y = row.height.si();
        let end = cut.face(Side::Left, y) - cut.course.wall.through.projection.si();
        let level = cut.at(end, y);
        let start = from(level.x - 1.0);
        extend_across(sheet, level.y, start, x - PAST_MM);
        tick(sheet, Point::new(x, level.y));
        notes.push(Note {
            y: level.y,
            figure: shown(cut.course, row.height),
            word: "throughs".to_owned(),
        });
    }
    if let Some(highest) = notes.iter().map(|note| note.y).min_by(f64::total_cmp) {
        sheet.line(Pen::Dimension, Point::new(x, 0.0), Point::new(x, highest));
        tick(sheet, Point::new(x, 0.0));
    }
    let (deep, _) = cut.bar_ends(Side::Left);
    let below = cut.trench(Side::Left).map_or(0.0, |(_, depth)| depth);
    let y = -(below + deep.max(below)) / 2.0;
    let bar = cut.at(cut.face(Side::Left, y), y);
    extend_across(sheet, bar.y, bar.x, x);
    notes.push(Note {
        y: bar.y,
        figure: shown(cut.course, cut.course.frames.embedment),
        word: "of bar in the ground".to_owned(),
    });
    side_notes(sheet, x, Towards::Left, &notes);
}

/// Footing, height to the cope and cope, one above the other at the right.
fn heights(sheet: &mut Sheet, cut: &Cut<'_>, x: f64) {
    let wall = &cut.course.wall;
    let half = cut.plan.section.top_width().si() / 2.0;
    // (lower level, its start, upper level, its start, length, words)
    let mut steps: Vec<(f64, f64, Length, &str)> = Vec::new();
    if let (Some(footing), Some((_, deep))) = (wall.footing, cut.trench(Side::Right)) {
        steps.push((-deep, 0.0, footing.depth, "footing trench"));
    }
    steps.push((0.0, cut.top(), cut.plan.section.height(), "ground to cope"));
    if 0.0 < cut.cope() {
        steps.push((cut.top(), cut.top() + cut.cope(), wall.cope_height, "cope"));
    }
    let start = |level: f64| {
        if level < 0.0 {
            cut.trench(Side::Right).map_or(0.0, |(edge, _)| edge)
        } else if level <= 0.0 {
            x / cut.scale.mm_per_m()
        } else if level <= cut.top() {
            cut.board_end(Side::Right)
        } else {
            half
        }
    };
    let mut notes = Vec::new();
    for (low, high, length, word) in steps {
        for level in [low, high] {
            let inner = cut.at(start(level), level);
            extend_across(sheet, inner.y, (inner.x + 1.0).min(x), x + PAST_MM);
            tick(sheet, Point::new(x, inner.y));
        }
        let (from, to) = (cut.at(0.0, low).y, cut.at(0.0, high).y);
        sheet.line(Pen::Dimension, Point::new(x, from), Point::new(x, to));
        notes.push(Note {
            y: (from + to) / 2.0,
            figure: shown(cut.course, length),
            word: word.to_owned(),
        });
    }
    side_notes(sheet, x + PAST_MM, Towards::Right, &notes);
}

/// The width under the cope, above everything.
fn top_width(sheet: &mut Sheet, cut: &Cut<'_>, upper: f64) {
    let half = cut.plan.section.top_width().si() / 2.0;
    let y = sheet.extent().top.min(upper) - CENTRE_PAST_MM - WORD_MM - 2.6;
    let edge = cut.at(half, cut.top() + cut.cope().max(0.05));
    for x in [-edge.x, edge.x] {
        extend_down(sheet, x, edge.y - 1.0, y - PAST_MM);
    }
    Across {
        y,
        from: -edge.x,
        to: edge.x,
        figure: &shown(cut.course, cut.plan.section.top_width()),
        word: "top width",
        outside: Outside::Right(edge.x + 3.0),
    }
    .draw(sheet);
}

/// Under everything: offsets from the centre line, base width, trench width.
fn widths(sheet: &mut Sheet, cut: &Cut<'_>, highest: f64) {
    let section = &cut.plan.section;
    let faces = [Side::Left, Side::Right].map(|side| cut.at(cut.face(side, 0.0), 0.0).x);
    let trench =
        [Side::Left, Side::Right].map(|side| cut.trench(side).map(|(edge, _)| cut.at(edge, 0.0).x));
    let deep = cut.trench(Side::Left).map_or(0.0, |(_, deep)| deep);
    let under = cut.at(0.0, -deep).y + 1.0;
    let outer = [
        trench[0].unwrap_or(faces[0]).min(faces[0]) - 3.0,
        trench[1].unwrap_or(faces[1]).max(faces[1]) + 3.0,
    ];
    let mut y = sheet.extent().bottom + FIGURE_MM + 2.6;
    sheet.line(
        Pen::Centre,
        Point::new(0.0, highest),
        Point::new(0.0, y + 2.0 * PAST_MM),
    );
    let offset = |side| shown(cut.course, section.offset(side, section.height()));
    let sides = [
        (
            faces[0],
            0.0,
            Side::Left,
            "left of centre",
            Outside::Left(outer[0]),
        ),
        (
            0.0,
            faces[1],
            Side::Right,
            "right of centre",
            Outside::Right(outer[1]),
        ),
    ];
    for (from, to, side, word, outside) in sides {
        Across {
            y,
            from,
            to,
            figure: &offset(side),
            word,
            outside,
        }
        .draw(sheet);
    }
    y += ROW_MM;
    for x in faces {
        extend_down(sheet, x, under, y + PAST_MM);
    }
    Across {
        y,
        from: faces[0],
        to: faces[1],
        figure: &shown(cut.course, section.base_width()),
        word: "base width",
        outside: Outside::Left(outer[0]),
    }
    .draw(sheet);
    let (Some(footing), [Some(left), Some(right)]) = (cut.course.wall.footing, trench) else {
        return;
    };
    y += ROW_MM;
    for x in [left, right] {
        extend_down(sheet, x, under, y + PAST_MM);
    }
    Across {
        y,
        from: left,
        to: right,
        figure: &shown(cut.course, section.base_width() + footing.outset * 2.0),
        word: "footing trench",
        outside: Outside::Left(outer[0]),
    }
    .draw(sheet);
}

fn extend_across(sheet: &mut Sheet, y: f64, from: f64, to: f64) {
    sheet.line(Pen::Dimension, Point::new(from, y), Point::new(to, y));
}

fn extend_down(sheet: &mut Sheet, x: f64, from: f64, to: f64) {
    sheet.line(Pen::Dimension, Point::new(x, from), Point::new(x, to));
}
