//! Ground, standing wall and broken-off edges: what is there but not measured.

use crate::pen::Pen;
use crate::scene::Point;
use crate::sheet::Sheet;
use crate::stones::steps;

/// Strokes under the line of the ground.
const HATCH_MM: f64 = 2.6;
const HATCH_STEP_MM: f64 = 1.9;

/// A line of ground from left to right with strokes below it.
pub(crate) fn hatched_ground(sheet: &mut Sheet, from: f64, to: f64, y: f64) {
    if to <= from {
        return;
    }
    sheet.line(Pen::Ground, Point::new(from, y), Point::new(to, y));
    let strokes = ((to - from - HATCH_MM) / HATCH_STEP_MM).floor();
    for stroke in steps(strokes + 1.0) {
        let x = from + HATCH_MM + stroke * HATCH_STEP_MM;
        sheet.line(
            Pen::Hatch,
            Point::new(x, y),
            Point::new(x - HATCH_MM, y + HATCH_MM),
        );
    }
}

/// Slanting strokes that fill a box, each cut off where it leaves it.
pub(crate) fn hatched_box(sheet: &mut Sheet, (left, right): (f64, f64), (top, bottom): (f64, f64)) {
    const STEP_MM: f64 = 1.5;
    let strokes = ((right - left + bottom - top) / STEP_MM).floor();
    for stroke in steps(strokes) {
        // The line x + y = c, from where it enters the box to where it leaves.
        let c = left + top + (stroke + 1.0) * STEP_MM;
        let from = (c - bottom).max(left);
        let to = (c - top).min(right);
        if from < to {
            sheet.line(
                Pen::Hatch,
                Point::new(from, c - from),
                Point::new(to, c - to),
            );
        }
    }
}

/// An upright edge with a kink, which says that there is more beyond it.
pub(crate) fn broken_edge(sheet: &mut Sheet, x: f64, (top, bottom): (f64, f64)) {
    let middle = (top + bottom) / 2.0;
    let corners = [
        (x, bottom),
        (x, middle + 2.0),
        (x - 1.5, middle + 0.7),
        (x + 1.5, middle - 0.7),
        (x, middle - 2.0),
        (x, top),
    ];
    let corners = corners.map(|(x, y)| Point::new(x, y)).to_vec();
    sheet.polyline(Pen::Dimension, corners);
}
