//! How the stones of the elevation are drawn: cut to the stretch and to the ground.

use crate::along::face::Face;
use crate::along::laid::{Laid, LaidStone, span};
use crate::along::lie::{Lie, Place, level_of};
use crate::along::through_row::other_throughs;
use crate::paper::pen::Pen;
use crate::paper::scene::Point;
use crate::paper::sheet::Sheet;
use crate::paper::strewn::steps;
use craft::stonework::Role;

/// Copes thinner than this on paper are drawn as one band, and below the next as lightly as
/// other stones.
const COPE_MM: f64 = 0.95;
const HEAVY_COPE_MM: f64 = 2.5;
const COPE_STROKE_MM: f64 = 1.3;
/// Corners nearer to each other on paper are one, as are stones smaller than this nothing.
const CORNER_MM: f64 = 0.3;
const LEAST_STONE_MM2: f64 = 0.25;

/// The stones of a stretch above the ground.
pub(crate) fn masonry(sheet: &mut Sheet, face: &Face<'_>, laid: &Laid) {
    let band = copes_in_a_band(face);
    for stone in &laid.stones {
        if !(band && stone.role == Role::Cope) {
            draw(sheet, face, stone);
        }
    }
    if band {
        cope_band(sheet, face);
    }
    for row in 0..face.plan.stone.throughs.len() {
        other_throughs(sheet, face, row, laid.in_row(row));
    }
}

fn draw(sheet: &mut Sheet, face: &Face<'_>, stone: &LaidStone) {
    let (least, most) = span(&stone.outline);
    let (from, to) = (face.from(), face.to());
    if most <= from || to <= least {
        return;
    }
    let mut shape = above_ground(&stone.outline, face.lie);
    if least < from {
        shape = beyond(&shape, |place| place.0 - from);
    }
    if to < most {
        shape = beyond(&shape, |place| to - place.0);
    }
    let corners = apart(face.on_paper(&shape));
    // A stone that is cut belongs to the stretch its middle stands in.
    let middle = (least + most) / 2.0;
    let own = from < middle && middle <= to;
    let heavy = HEAVY_COPE_MM <= cope_mm(face);
    let pen = match stone.role {
        Role::Through if own => Pen::Through,
        Role::Cope if heavy => Pen::Cope,
        _ => Pen::Stone,
    };
    if 2 < corners.len() && (pen != Pen::Stone || LEAST_STONE_MM2 <= area(&corners)) {
        sheet.polygon(pen, corners);
    }
}

/// What of a stone stands above the ground, taken as straight under the stone.
pub(crate) fn above_ground(outline: &[Place], lie: &Lie<'_>) -> Vec<Place> {
    let (least, most) = span(outline);
    let (start, end) = (lie.ground(least), lie.ground(most));
    let ground = |at: f64| start + (end - start) * ((at - least) / (most - least).max(1e-9));
    let buried = |place: &Place| place.1 < ground(place.0);
    if !outline.iter().any(buried) {
        return outline.to_vec();
    }
    beyond(outline, |place| place.1 - ground(place.0))
}

/// The part of a shape where `over` is more than nothing (Sutherland and Hodgman's clipping,
/// 1974); `over` changes evenly from corner to corner.
fn beyond(shape: &[Place], over: impl Fn(Place) -> f64) -> Vec<Place> {
    let mut kept = Vec::with_capacity(shape.len() + 2);
    let before = shape
        .iter()
        .skip(shape.len().saturating_sub(1))
        .chain(shape);
    for (&from, &to) in before.zip(shape) {
        let (was, is) = (over(from), over(to));
        if (was < 0.0) != (is < 0.0) {
            let share = was / (was - is);
            kept.push((
                from.0 + (to.0 - from.0) * share,
                from.1 + (to.1 - from.1) * share,
            ));
        }
        if 0.0 <= is {
            kept.push(to);
        }
    }
    kept
}

/// Corners with none so near to the one before it that they can't be told apart.
fn apart(corners: Vec<Point>) -> Vec<Point> {
    let mut kept: Vec<Point> = Vec::with_capacity(corners.len());
    for corner in corners {
        let far = |last: &Point| CORNER_MM <= (last.x - corner.x).hypot(last.y - corner.y);
        if kept.last().is_none_or(far) {
            kept.push(corner);
        }
    }
    kept
}

/// Half the sum of the cross products of neighbouring corners.
fn area(corners: &[Point]) -> f64 {
    let after = corners.iter().cycle().skip(1);
    let twice: f64 = corners
        .iter()
        .zip(after)
        .map(|(a, b)| a.x * b.y - b.x * a.y)
        .sum();
    twice.abs() / 2.0
}

/// Whether copes are too thin on paper to be drawn one by one.
pub(crate) fn copes_in_a_band(face: &Face<'_>) -> bool {
    cope_mm(face) < COPE_MM
}

fn cope_mm(face: &Face<'_>) -> f64 {
    face.scale.mm(face.course.wall.cope_thickness)
}

/// Copes stand on edge, so that a band of them is upright strokes.
fn cope_band(sheet: &mut Sheet, face: &Face<'_>) {
    let (Some((from, to)), true) = (face.reach_here(0.0), 0.0 < face.cope()) else {
        return;
    };
    let low = face.below_top(from, to, 0.0);
    let high = face.below_top(from, to, -face.cope());
    let mut band = face.on_paper(&low);
    band.extend(face.on_paper(&high).into_iter().rev());
    sheet.polygon(Pen::Cope, band);
    let step = COPE_STROKE_MM / face.scale.mm_per_m();
    for stroke in steps((to - from) / step - 0.5) {
        let at = from + (stroke + 1.0) * step;
        if let Some(top) = level_of(&low, at) {
            let over = face.at((at, top + face.cope()));
            sheet.line(Pen::Hatch, face.at((at, top)), over);
        }
    }
}
