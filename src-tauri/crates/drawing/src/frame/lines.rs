//! What is cut and marked for a frame: dimension lines along bars and legs, rails and brace.

use crate::across::cut::{Cut, outwards};
use crate::across::section_words::short;
use crate::frame::assembly::{head, same_at_both};
use crate::paper::dimension::tick;
use crate::paper::pen::Pen;
use crate::paper::scene::Point;
use crate::paper::sheet::Sheet;
use crate::paper::upright::{Led, PAST_MM};
use crate::paper::words::shown;
use craft::timber::Part;
use craft::wall::Side;

/// From a bar to the dimension line along it.
const ALONG_MM: f64 = 6.0;

/// A dimension line along a bar or a leg, with ticks at these levels of its inner face.
struct AlongLine {
    points: Vec<Point>,
}

impl AlongLine {
    fn draw(cut: &Cut<'_>, sheet: &mut Sheet, side: Side, levels: &[f64]) -> Self {
        let batter = cut.plan.section.batter(side);
        let (slope, out) = (batter.slope_factor(), outwards(side));
        // On paper, square to the bar and away from it.
        let square = Point::new(out / slope, -batter.lean() / slope);
        let thick = cut.bar_width(side) / slope * cut.scale.mm_per_m();
        let beside = |y: f64, by: f64| {
            let on = cut.at(cut.face(side, y), y);
            Point::new(on.x + square.x * by, on.y + square.y * by)
        };
        let points: Vec<Point> = levels
            .iter()
            .map(|&y| beside(y, thick + ALONG_MM))
            .collect();
        for (at, &y) in points.iter().zip(levels) {
            let ends = (
                beside(y, thick + 1.0),
                beside(y, thick + ALONG_MM + PAST_MM),
            );
            sheet.line(Pen::Dimension, ends.0, ends.1);
            tick(sheet, *at);
        }
        if let [first, .., last] = points.as_slice() {
            sheet.line(Pen::Dimension, *first, *last);
        }
        Self { points }
    }

    /// The place between two ticks.
    fn between(&self, step: usize, share: f64) -> Point {
        let end = |at: usize| self.points.get(at).copied().unwrap_or(Point::new(0.0, 0.0));
        let (a, b) = (end(step), end(step + 1));
        Point::new(a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share)
    }
}

/// In the ground, to the board and above it: what is marked along one bar.
pub(crate) fn marks(cut: &Cut<'_>, sheet: &mut Sheet, side: Side) -> Vec<Led> {
    let Some(marks) = cut.marks(side) else {
        return Vec::new();
    };
    let (foot, _) = cut.bar_ends(side);
    let levels = [foot, cut.ground(side), cut.top(), head(cut, side, &marks)];
    let line = AlongLine::draw(cut, sheet, side, &levels);
    [
        (marks.in_ground, "in the ground"),
        (marks.to_board, "ground to board"),
        (marks.above, "over the board"),
    ]
    .into_iter()
    .enumerate()
    .map(|(step, (length, word))| {
        Led::from(line.between(step, 0.5), shown(cut.course, length), word)
    })
    .collect()
}

/// The whole bar, where both are marked alike.
pub(crate) fn whole_bar(cut: &Cut<'_>, sheet: &mut Sheet) -> Option<Led> {
    let marks = cut.marks(Side::Left)?;
    let (foot, _) = cut.bar_ends(Side::Left);
    let levels = [foot, head(cut, Side::Left, &marks)];
    let line = AlongLine::draw(cut, sheet, Side::Left, &levels);
    let bars = cut.plan.frames.bars.as_ref()?;
    let what = if bars.chosen.is_some() {
        "bar"
    } else {
        "bar needed"
    };
    let word = format!("{what}, {}", cut.course.frames.bar);
    Some(Led::from(
        line.between(0, 0.2),
        shown(cut.course, marks.length()),
        &word,
    ))
}

/// A leg's length and how it is sawn.
pub(crate) fn leg(cut: &Cut<'_>, sheet: &mut Sheet, side: Side) -> Option<Led> {
    let timber = cut.timber.as_ref()?;
    let part = match side {
        Side::Left => Part::LeftLeg,
        Side::Right => Part::RightLeg,
    };
    let piece = timber.piece(part)?;
    let [low, high, ..] = timber.leg(cut, side);
    let line = AlongLine::draw(cut, sheet, side, &[low.1, high.1]);
    let which = if same_at_both(cut) { "each leg" } else { "leg" };
    let word = format!("{which}, {}°", short(piece.ends_degrees[0]));
    Some(Led::from(
        line.between(0, 0.8),
        shown(cut.course, piece.length),
        &word,
    ))
}

/// Rails and brace, each with its length and how it is sawn.
pub(crate) fn across_the_legs(cut: &Cut<'_>) -> Vec<Led> {
    let Some(timber) = &cut.timber else {
        return Vec::new();
    };
    let length = |part| {
        timber
            .piece(part)
            .map(|piece| shown(cut.course, piece.length))
    };
    let mut notes = Vec::new();
    let mut rail = |y: f64, part, word: &str| {
        if let Some(length) = length(part) {
            let [.., up, low] = timber.rail(cut, y);
            let at = cut.at(low.0, (low.1 + up.1) / 2.0);
            notes.push(Led::from(at, length, word));
        }
    };
    rail(cut.top(), Part::TopRail, "top rail");
    let Some(y) = timber.lower_rail(cut) else {
        return notes;
    };
    rail(y, Part::LowerRail, "lower rail");
    if let (Some(brace), Some(piece)) = (timber.brace(cut), timber.piece(Part::Brace)) {
        let on = |a: f64, b: f64| a + (b - a) * 0.72;
        let (foot, head) = (brace[3], brace[2]);
        let [low, high] = piece.ends_degrees.map(|end| short(end.abs()));
        let word = format!("brace, {low}° and {high}°");
        let at = cut.at(on(foot.0, head.0), on(foot.1, head.1));
        notes.push(Led::from(at, shown(cut.course, piece.length), &word));
    }
    notes
}
