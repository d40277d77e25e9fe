//! One frame put together, seen along the wall: what is cut, marked and measured to check it.

use crate::across::cut::{Cut, outwards};
use crate::frame::board::{board_from_below, board_on_edge};
use crate::frame::checks::{base_width_row, checks};
use crate::frame::lines::{across_the_legs, leg, marks, whole_bar};
use crate::frame::words::{board, description, notes};
use crate::paper::fitting::fitted;
use crate::paper::hatching::hatched_ground;
use crate::paper::pen::Pen;
use crate::paper::scale::{Scale, strip};
use crate::paper::scene::{Point, Room, Scene};
use crate::paper::sheet::{Heading, Sheet};
use crate::paper::side_notes::Towards;
use crate::paper::upright::{Led, Level, Step, Upright, led};
use crate::paper::words::shown;
use craft::course::Course;
use craft::frames::BarMarks;
use craft::plan::Plan;
use craft::quantity::Read;
use craft::wall::Side;

/// A frame lower than this on paper has no room for its figures.
const LEAST_HEIGHT_MM: f64 = 15.0;
/// From what is drawn to the next upright line.
const LANE_MM: f64 = 4.0;
/// The cap on a bar.
const CAP_MM: f64 = 1.3;
/// In a room lower than this fewer notes stand under the drawing; its description has all.
const SMALL_ROOM_MM: f64 = 160.0;
/// Between the frame and the view of its board.
const APART_MM: f64 = 8.0;

/// The first frame, to scale, with everything that is cut, marked and checked.
pub fn frame(plan: &Plan, course: &Course, room: Room) -> Scene {
    let legible = |scale: Scale| LEAST_HEIGHT_MM < scale.mm(plan.section.height());
    let few = room.height_mm < SMALL_ROOM_MM;
    let fit = |view: View| {
        fitted(room, legible, |scale, room| {
            put_together(&Cut::new(plan, course, scale), (view, few), room)
        })
    };
    let mut best = fit(View::Above);
    let others = [View::Beside, View::None];
    for other in others.into_iter().filter(|view| few || *view != View::None) {
        let other = fit(other);
        let (room, other_room) = (best.2.width_mm, other.2.width_mm);
        let far_larger = other.0.n() * 4 <= best.0.n() * 3;
        if other_room < room || (other_room <= room && far_larger) {
            best = other;
        }
    }
    let (scale, sheet, room) = best;
    let heading = Heading {
        name: "frame",
        title: "One frame put together".to_owned(),
        description: description(&Cut::new(plan, course, scale)),
    };
    sheet.into_scene(heading, scale, room)
}

/// Where the board is seen from below.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum View {
    /// Over the frame.
    Above,
    /// To the right of it.
    Beside,
    /// Nowhere: there is no room, and words tell of it.
    None,
}

/// The frame with the view of its board, and all notes or few.
fn put_together(cut: &Cut<'_>, (view, few): (View, bool), room: Room) -> Sheet {
    let mut sheet = Sheet::default();
    let mut standing = Sheet::default();
    assembled(cut, &mut standing);
    let from_below = board_from_below(cut).filter(|_| view != View::None);
    match from_below {
        Some(board) if view == View::Beside => {
            let left = standing.extent().right + APART_MM;
            sheet = standing;
            sheet.join(board, left);
        }
        Some(board) => {
            sheet = board;
            sheet.stack(standing, APART_MM);
        }
        None => sheet.stack(standing, 0.0),
    }
    // One paragraph, for a page is soon full of half-empty lines.
    let mut notes = notes(cut, few);
    notes.extend(board(cut).filter(|_| view == View::None));
    let notes = [notes.join(" ")];
    strip(
        &mut sheet,
        cut.scale,
        cut.course.units,
        &notes,
        room.width_mm,
    );
    sheet
}

fn assembled(cut: &Cut<'_>, sheet: &mut Sheet) {
    trench(cut, sheet);
    match &cut.timber {
        Some(timber) => timber.alone(cut, sheet),
        None => bars(cut, sheet),
    }
    let mut left = checks(cut, sheet);
    let mut right = Vec::new();
    if cut.timber.is_some() {
        left.extend(leg(cut, sheet, Side::Left));
        if !same_at_both(cut) {
            right.extend(leg(cut, sheet, Side::Right));
        }
        right.extend(across_the_legs(cut));
    } else {
        right.extend(marks(cut, sheet, Side::Right));
        if same_at_both(cut) {
            left.extend(whole_bar(cut, sheet));
        } else {
            left.extend(marks(cut, sheet, Side::Left));
        }
        right.extend(cap(cut));
    }
    let lanes = Side::BOTH.map(|side| lane(sheet, side));
    for (side, out) in Side::BOTH.into_iter().zip(lanes) {
        ground(cut, sheet, side, out);
    }
    let near = |level: f64, side: Side| Level {
        y: cut.at(0.0, level).y,
        from: lanes[usize::from(side == Side::Right)],
    };
    let top = |side: Side| Level::of(cut.at(cut.board_end(side), cut.top()), towards(side));
    for (side, notes) in Side::BOTH.into_iter().zip([left, right]) {
        let x = lanes[usize::from(side == Side::Right)];
        let mut steps = Vec::new();
        let rise = cut.row().map(|row| row.rise(side));
        if let (Some(rise), true) = (rise, side == Side::Left || !same_at_both(cut)) {
            steps.push(Step {
                low: near(cut.ground(side), side),
                high: top(side),
                figure: shown(cut.course, rise),
                word: "rise, plumb".to_owned(),
            });
        }
        let chain = Upright {
            x,
            towards: towards(side),
            steps,
            notes: led(sheet, x, towards(side), notes),
        };
        chain.draw(sheet);
    }
    base_width_row(cut, sheet);
}

/// Whether both bars or legs are marked alike.
pub(crate) fn same_at_both(cut: &Cut<'_>) -> bool {
    let section = &cut.plan.section;
    let rises = Side::BOTH.map(|side| cut.ground(side));
    section.batter(Side::Left) == section.batter(Side::Right) && (rises[0] - rises[1]).abs() < 1e-9
}

fn towards(side: Side) -> Towards {
    match side {
        Side::Left => Towards::Left,
        Side::Right => Towards::Right,
    }
}

fn lane(sheet: &Sheet, side: Side) -> f64 {
    match side {
        Side::Left => sheet.extent().left - LANE_MM,
        Side::Right => sheet.extent().right + LANE_MM,
    }
}

fn trench(cut: &Cut<'_>, sheet: &mut Sheet) {
    let [left, right] = Side::BOTH.map(|side| cut.trench(side));
    let (Some(left), Some(right)) = (left, right) else {
        return;
    };
    let corners = [
        (left.0, cut.ground(Side::Left)),
        left,
        right,
        (right.0, cut.ground(Side::Right)),
    ];
    let points = corners.iter().map(|&(x, y)| cut.at(x, y)).collect();
    sheet.polyline(Pen::Trench, points);
}

fn ground(cut: &Cut<'_>, sheet: &mut Sheet, side: Side, out_mm: f64) {
    let at = cut.at(cut.ground_edge(side), cut.ground(side));
    hatched_ground(sheet, at.x.min(out_mm), at.x.max(out_mm), at.y);
}

/// Both bars from foot to head, the board on them, a cap on each.
fn bars(cut: &Cut<'_>, sheet: &mut Sheet) {
    for side in Side::BOTH {
        if let Some(marks) = cut.marks(side) {
            cut.bar(sheet, side, head(cut, side, &marks));
        }
    }
    board_on_edge(cut, sheet);
    for side in Side::BOTH {
        if let Some(at) = cap_at(cut, side) {
            sheet.circle(Pen::Bar, at, CAP_MM);
        }
    }
}

/// Level of a bar's head.
pub(crate) fn head(cut: &Cut<'_>, side: Side, marks: &BarMarks) -> f64 {
    cut.top() + marks.above.si() / cut.plan.section.batter(side).slope_factor()
}

fn cap_at(cut: &Cut<'_>, side: Side) -> Option<Point> {
    let y = head(cut, side, &cut.marks(side)?);
    let middle = outwards(side) * cut.bar_width(side) / 2.0;
    Some(cut.at(cut.face(side, y) + middle, y))
}

fn cap(cut: &Cut<'_>) -> Option<Led> {
    let mut at = cap_at(cut, Side::Right)?;
    at.x += CAP_MM;
    Some(Led::from(at, String::new(), "cap on each bar"))
}
