//! A row of throughs as the plan counts it, beside the stones that are laid.

use crate::along::face::Face;
use crate::along::laid::larger;
use crate::along::lie::Lie;
use crate::along::masonry::above_ground;
use crate::paper::pen::Pen;
use crate::paper::sheet::Sheet;
use craft::course::End;
use craft::plan::Plan;
use craft::quantity::Read;

/// A row no longer than a through and this, as its stones are laid, has none.
const LEAST_BESIDE_M: f64 = 0.25;

/// How far a row lies below the top.
pub(crate) fn below_top(plan: &Plan, row: usize) -> f64 {
    let row = plan.stone.throughs.get(row);
    row.map_or(0.0, |row| (plan.section.height() - row.height).si())
}

/// Throughs of the count that would lie wholly in the ground.
pub(crate) fn buried(plan: &Plan, lie: &Lie<'_>, thick: f64) -> usize {
    let length = lie.length();
    let in_row = |row: usize| {
        let count = plan.stone.throughs.get(row).map_or(0, |row| row.count);
        let under = |at: &f64| lie.top(*at) - below_top(plan, row) + thick <= lie.ground(*at);
        evenly(0.0, length, count).filter(under).count()
    };
    (0..plan.stone.throughs.len()).map(in_row).sum()
}

/// So many places at equal distances.
fn evenly(from: f64, to: f64, count: usize) -> impl Iterator<Item = f64> {
    let apart = (to - from) / count.max(1) as f64;
    (0..count).map(move |at| from + (at as f64 + 0.5) * apart)
}

/// Throughs of a row that are not among the stones: dotted, those in what a raked end leaves
/// to be carried on; plainly, those that found no bond beside a head or a row too close.
/// `laid`: the stations of those that are.
pub(crate) fn other_throughs(sheet: &mut Sheet, face: &Face<'_>, row: usize, laid: &[f64]) {
    let count = face.plan.stone.throughs.get(row).map_or(0, |row| row.count);
    let below = below_top(face.plan, row);
    let length = face.lie.length();
    let (start, finish) = face.reach(below).unwrap_or((length, length));
    let raked = [0, 1].map(|at| is_raked(face, at));
    // In a shape of their own stones are laid all along, and a rake is cut out after.
    let cut_out = 1 < face.times && raked.contains(&true);
    let (built, later): (Vec<f64>, Vec<f64>) = if cut_out {
        evenly(0.0, length, count).partition(|at| start <= *at && *at <= finish)
    } else {
        let from = if raked[0] { start } else { 0.0 };
        let to = if raked[1] { finish } else { length };
        let built = built(face, count, to - from).min(count);
        (
            evenly(from, to, built).collect(),
            left_out([from, to], length, count - built),
        )
    };
    let apart = length / count as f64;
    let free = |at: &&f64| laid.iter().all(|other| 0.5 * apart < (other - **at).abs());
    let wanted = count.saturating_sub(laid.len());
    let later: Vec<&f64> = later.iter().filter(|at| !cut_out || free(at)).collect();
    for along in later.iter().take(wanted) {
        draw(sheet, face, Pen::Later, (**along, below), apart);
    }
    let missing = built.iter().filter(free);
    let half = face.course.wall.through.width.si() / 2.0;
    for along in missing.take(wanted.saturating_sub(later.len())) {
        // Beside a leaning head, as near as it can lie.
        let along = along.min(finish - half).max(start + half);
        draw(sheet, face, Pen::Through, (along, below), apart);
    }
}

/// How many of a row's throughs come into what is built of it.
fn built(face: &Face<'_>, count: usize, long: f64) -> usize {
    if long < face.course.wall.through.width.si() + LEAST_BESIDE_M * larger(face.scale) {
        return 0;
    }
    let share = long / face.lie.length();
    ((count as f64 * share).round() as usize).max(1)
}

fn is_raked(face: &Face<'_>, at: usize) -> bool {
    let end = face.plan.ends.get(at);
    end.is_some_and(|end| end.kind == End::Raked)
}

/// So many places in what raked ends leave out: before `from` and after `to`.
fn left_out([from, to]: [f64; 2], length: f64, count: usize) -> Vec<f64> {
    let all = from + length - to;
    if all <= 0.0 {
        return Vec::new();
    }
    let before = ((from / all * count as f64).round() as usize).min(count);
    evenly(0.0, from, before)
        .chain(evenly(to, length, count - before))
        .collect()
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
