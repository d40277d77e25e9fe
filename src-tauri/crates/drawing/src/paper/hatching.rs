//! Ground, standing wall and broken-off edges: what is there but not measured.

use crate::paper::pen::Pen;
use crate::paper::scene::Point;
use crate::paper::sheet::Sheet;
use crate::paper::strewn::steps;

/// Strokes under the line of the ground.
const HATCH_MM: f64 = 2.6;
const HATCH_STEP_MM: f64 = 1.9;

/// A line of ground from left to right with strokes below it.
pub(crate) fn hatched_ground(sheet: &mut Sheet, from: f64, to: f64, y: f64) {
    if to <= from {
        return;
    }
    hatched_below(sheet, &[Point::new(from, y), Point::new(to, y)]);
}

/// Ground that rises and falls, given from left to right, with strokes below it.
pub(crate) fn hatched_below(sheet: &mut Sheet, ground: &[Point]) {
    let [first, .., last] = ground else {
        return;
    };
    if let [from, to] = ground {
        sheet.line(Pen::Ground, *from, *to);
    } else {
        sheet.polyline(Pen::Ground, ground.to_vec());
    }
    let strokes = ((last.x - first.x - HATCH_MM) / HATCH_STEP_MM).floor();
    for stroke in steps(strokes + 1.0) {
        let x = first.x + HATCH_MM + stroke * HATCH_STEP_MM;
        let (Some(from), Some(under)) = (level_at(ground, x), level_at(ground, x - HATCH_MM))
        else {
            continue;
        };
        // Where the ground falls away steeply to the left, a stroke must not come out of it.
        let to = (from + HATCH_MM).max(under + HATCH_MM / 3.0);
        sheet.line(
            Pen::Hatch,
            Point::new(x, from),
            Point::new(x - HATCH_MM, to),
        );
    }
}

/// How far down a line given from left to right is at `x`.
fn level_at(line: &[Point], x: f64) -> Option<f64> {
    line.windows(2).find_map(|pair| {
        let [from, to] = pair else {
            return None;
        };
        let inside = from.x <= x && x <= to.x && from.x < to.x;
        inside.then(|| from.y + (to.y - from.y) * ((x - from.x) / (to.x - from.x)))
    })
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
