//! A row of throughs as the plan counts it, beside the stones that are laid.

use crate::along::counted::{Counted, below_top};
use crate::along::face::Face;
use crate::along::masonry::above_ground;
use crate::paper::pen::Pen;
use crate::paper::sheet::Sheet;
use craft::quantity::Read;

/// Throughs of a row that are not among the stones: dotted, those in what a raked end leaves
/// to be carried on; dashed, those that come from the other face; plainly, those that found no
/// bond beside a head or a row too close. `laid`: the stations of those that are.
pub(crate) fn other_throughs(sheet: &mut Sheet, face: &Face<'_>, row: usize, laid: &[f64]) {
    let counting = face.counting();
    let (count, counted) = (counting.count(row), counting.row(row));
    let below = below_top(face.plan, row);
    let apart = face.lie.length() / count as f64;
    let free = |at: &&Counted| {
        laid.iter()
            .all(|other| 0.5 * apart < (other - at.along).abs())
    };
    let (hidden, shown): (Vec<Counted>, Vec<Counted>) =
        counted.built.iter().partition(|one| one.hidden);
    let half = face.course.wall.through.width.si() / 2.0;
    // Beside a leaning head, as near as it can lie.
    let (start, finish) = counted.reach;
    let within = |one: &Counted| one.along.min(finish - half).max(start + half);
    for one in &hidden {
        draw(sheet, face, Pen::HiddenThrough, (within(one), below), apart);
    }
    let wanted = count.saturating_sub(hidden.len() + laid.len());
    let later = counted.later.iter();
    let later: Vec<&Counted> = later.filter(|at| !counted.cut_out || free(at)).collect();
    for one in later.iter().take(wanted) {
        draw(sheet, face, Pen::Later, (one.along, below), apart);
    }
    let missing = shown.iter().filter(free);
    for one in missing.take(wanted.saturating_sub(later.len())) {
        draw(sheet, face, Pen::Through, (within(one), below), apart);
    }
}

/// One through of a row above the ground, where it has so much room along the wall.
fn draw(sheet: &mut Sheet, face: &Face<'_>, pen: Pen, (along, below): (f64, f64), room: f64) {
    if along <= face.from() || face.to() < along {
        return;
    }
    let size = face.course.wall.through;
    let half = (size.width.si() / 2.0).min(0.42 * room);
    let low = face.lie.top(along) - below;
    let high = low + size.thickness.si().min(below);
    let (left, right) = (along - half, along + half);
    let outline = [(left, low), (right, low), (right, high), (left, high)];
    let shape = above_ground(&outline, face.lie);
    if 2 < shape.len() {
        sheet.polygon(pen, face.on_paper(&shape));
    }
}
