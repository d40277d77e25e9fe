//! The board of a bar frame: on edge as it lies on the bars, and seen from below with its eyes.

use crate::across::cut::{Cut, outwards};
use crate::paper::dimension::{Across, Outside, ROW_MM};
use crate::paper::pen::Pen;
use crate::paper::scene::{Anchor, Point};
use crate::paper::sheet::{FIGURE_MM, Sheet};
use crate::paper::side_notes::{Towards, side_notes};
use crate::paper::upright::{Led, PAST_MM, led};
use crate::paper::words::shown;
use craft::quantity::Length;
use craft::wall::Side;

/// An eye is never drawn smaller than this.
const EYE_MM: f64 = 1.2;
/// From the board to the notes beside it.
const LANE_MM: f64 = 5.0;

/// The board on edge; within it the bars are hidden.
pub(crate) fn board_on_edge(cut: &Cut<'_>, sheet: &mut Sheet) {
    let [left, right] = Side::BOTH.map(|side| cut.board_end(side));
    let (low, high) = (cut.top(), cut.board_top());
    cut.shape(
        sheet,
        Pen::Bar,
        &[(left, low), (left, high), (right, high), (right, low)],
    );
    for side in Side::BOTH {
        for by in [0.0, outwards(side) * cut.bar_width(side)] {
            let end = |y: f64| cut.at(cut.face(side, y) + by, y);
            sheet.line(Pen::HiddenBar, end(low), end(high));
        }
    }
}

/// The board from below, to the scale of the frame and in line with it.
pub(crate) fn board_from_below(cut: &Cut<'_>) -> Option<Sheet> {
    let board = cut.plan.fittings.board?;
    let mut sheet = Sheet::default();
    let ends = Side::BOTH.map(|side| cut.at(cut.board_end(side), 0.0).x);
    let eyes = Side::BOTH.map(|side| cut.at(cut.eye(side), 0.0).x);
    let deep = cut.scale.mm(board.width);
    sheet.rectangle(
        Pen::Bar,
        Point::new(ends[0], 0.0),
        Point::new(ends[1], deep),
    );
    let radius = (cut.scale.mm(board.eye) / 2.0).max(EYE_MM / 2.0);
    for x in eyes {
        sheet.circle(Pen::Bar, Point::new(x, deep / 2.0), radius);
    }
    let mut row = -FIGURE_MM - 2.6;
    let rows = [
        (eyes, deep / 2.0 - radius, board.eyes, "eye to eye"),
        (ends, 0.0, board.length, "board"),
    ];
    for (places, from, length, word) in rows {
        widths(cut, &mut sheet, row, (places, from), (length, word));
        row -= ROW_MM;
    }
    let x = sheet.extent().right.max(ends[1]) + LANE_MM;
    let size = format!(
        "{} by {}",
        shown(cut.course, board.width),
        shown(cut.course, board.thickness)
    );
    let eye = Point::new(eyes[1] + radius, deep / 2.0);
    let corner = Point::new(ends[1], deep);
    let notes = vec![
        Led::from(eye, shown(cut.course, board.eye), "across an eye"),
        Led::from(corner, size, "board, wide and thick"),
    ];
    let notes = led(&mut sheet, x, Towards::Right, notes);
    side_notes(&mut sheet, x + PAST_MM, Towards::Right, &notes);
    sheet.word(
        Point::new(ends[0], row + ROW_MM - FIGURE_MM - 3.0),
        "The board from below",
        Anchor::Start,
    );
    Some(sheet)
}

/// A dimension above the board.
fn widths(
    cut: &Cut<'_>,
    sheet: &mut Sheet,
    y: f64,
    ([left, right], from): ([f64; 2], f64),
    (length, word): (Length, &str),
) {
    for x in [left, right] {
        sheet.line(
            Pen::Dimension,
            Point::new(x, from - 1.0),
            Point::new(x, y - 1.2),
        );
    }
    let across = Across {
        y,
        from: left,
        to: right,
        figure: &shown(cut.course, length),
        word,
        outside: Outside::Right(cut.at(cut.board_end(Side::Right), 0.0).x + 3.0),
    };
    across.draw(sheet);
}
