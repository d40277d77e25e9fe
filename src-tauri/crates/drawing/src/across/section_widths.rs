//! Widths of the wall cut across: the top over it, and all others in rows under it.

use crate::across::cut::Cut;
use crate::across::section_words::{base_width, trench_width};
use crate::paper::dimension::{Across, Outside, ROW_MM};
use crate::paper::pen::Pen;
use crate::paper::scene::Point;
use crate::paper::sheet::{FIGURE_MM, Sheet, WORD_MM};
use crate::paper::upright::{PAST_MM, down};
use crate::paper::words::shown;
use craft::quantity::{Length, Read};
use craft::wall::Side;

/// How far the centre line runs up past the drawing.
pub(crate) const CENTRE_PAST_MM: f64 = 2.0;

/// The width under the cope, above everything.
pub(crate) fn top_width(sheet: &mut Sheet, cut: &Cut<'_>, upper: f64) {
    let half = cut.plan.section.top_width().si() / 2.0;
    let y = sheet.extent().top.min(upper) - CENTRE_PAST_MM - WORD_MM - 2.6;
    let edge = cut.at(half, cut.top() + cut.cope().max(0.05));
    for x in [-edge.x, edge.x] {
        down(sheet, x, edge.y - 1.0, y - PAST_MM);
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

/// Under everything: offsets from the centre line, base width, drainage stone, trench width.
pub(crate) fn widths(sheet: &mut Sheet, cut: &Cut<'_>, highest: f64) {
    let faces = Side::BOTH.map(|side| cut.at(cut.toe(side).0, 0.0).x);
    let edges = Side::BOTH.map(|side| cut.at(cut.ground_edge(side), 0.0).x);
    let under = cut.at(0.0, cut.lowest_dug()).y + 1.0;
    let drained = cut.bank().map(|bank| {
        let y = cut.ground(bank.side);
        (bank.side, cut.at(bank.edge(y), y).x)
    });
    let mut outer = [edges[0].min(faces[0]), edges[1].max(faces[1])];
    if let Some((_, x)) = drained {
        outer = [outer[0].min(x), outer[1].max(x)];
    }
    let outer = [outer[0] - 3.0, outer[1] + 3.0];
    let mut y = sheet.extent().bottom + FIGURE_MM + 2.6;
    sheet.line(
        Pen::Centre,
        Point::new(0.0, highest),
        Point::new(0.0, y + 2.0 * PAST_MM),
    );
    let mut put = |y: f64, (from, to): (f64, f64), figure: Length, word: &str, outside| {
        Across {
            y,
            from,
            to,
            figure: &shown(cut.course, figure),
            word,
            outside,
        }
        .draw(sheet);
    };
    let (left, right) = (Outside::Left(outer[0]), Outside::Right(outer[1]));
    if let Some(row) = cut.row() {
        put(y, (faces[0], 0.0), row.left_offset, "left of centre", left);
        put(
            y,
            (0.0, faces[1]),
            row.right_offset,
            "right of centre",
            right,
        );
    }
    y += ROW_MM;
    let base_row = y;
    let beside = match drained {
        Some((Side::Left, _)) => right,
        _ => left,
    };
    put(
        y,
        (faces[0], faces[1]),
        base_width(cut),
        "base width",
        beside,
    );
    if let (Some((side, x)), Some(bank)) = (drained, cut.bank()) {
        let (ends, outside) = match side {
            Side::Left => ((x, faces[0]), left),
            Side::Right => ((faces[1], x), right),
        };
        put(y, ends, bank.retaining.drainage, "drainage", outside);
    }
    if let Some(footing) = cut.course.wall.footing {
        y += ROW_MM;
        let width = trench_width(cut, footing.outset);
        put(y, (edges[0], edges[1]), width, "footing trench", beside);
        for x in edges {
            down(sheet, x, under, y + PAST_MM);
        }
    }
    for x in faces.into_iter().chain(drained.map(|(_, x)| x)) {
        down(sheet, x, under, base_row + PAST_MM);
    }
}
