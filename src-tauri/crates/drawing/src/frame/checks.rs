//! What a frame is checked by: diagonals, top width and base width, inner face to inner face.

use crate::across::cut::Cut;
use crate::across::section_words::base_width;
use crate::paper::dimension::{Across, CLEAR_MM, Outside, tick};
use crate::paper::pen::Pen;
use crate::paper::scene::{Anchor, Point};
use crate::paper::sheet::{FIGURE_MM, Sheet, WORD_MM};
use crate::paper::text_box::width;
use crate::paper::upright::{Led, PAST_MM};
use crate::paper::words::shown;
use craft::frames::corner_diagonals;
use craft::wall::Side;

/// From the underside of the board to the dimension line of the top width, with its figure
/// between them, and without.
const WITH_FIGURE_MM: f64 = 7.4;
const WITHOUT_MM: f64 = 3.2;
/// From the ground to the words in the triangle under the diagonals.
const OVER_GROUND_MM: f64 = 2.6;
/// Clear paper between words and a diagonal.
const BESIDE_MM: f64 = 1.2;

/// Draws the diagonals and the top width with their figures; those for which there is no room
/// within the frame come back as notes for beside it.
pub(crate) fn checks(cut: &Cut<'_>, sheet: &mut Sheet) -> Vec<Led> {
    for side in Side::BOTH {
        let [foot, far] = diagonal(cut, side);
        sheet.line(Pen::Diagonal, foot, far);
    }
    let mut beside = diagonal_figures(cut, sheet);
    beside.extend(top_width(cut, sheet));
    beside
}

/// From the foot at the ground to the far inner corner under the board or rail, on paper.
fn diagonal(cut: &Cut<'_>, side: Side) -> [Point; 2] {
    let (foot, ground) = cut.toe(side);
    let far = cut.face(side.other(), cut.top());
    [cut.at(foot, ground), cut.at(far, cut.top())]
}

/// How far from the middle the diagonals are at a height on paper: the nearest on each side.
fn clear_at(cut: &Cut<'_>, y: f64) -> f64 {
    let ends = Side::BOTH.map(|side| diagonal(cut, side));
    ends.into_iter()
        .map(|[foot, far]| {
            let share = (y - far.y) / (foot.y - far.y);
            (far.x + (foot.x - far.x) * share).abs()
        })
        .fold(f64::INFINITY, f64::min)
}

/// In the triangle between the feet, if there is room.
fn diagonal_figures(cut: &Cut<'_>, sheet: &mut Sheet) -> Vec<Led> {
    let Some(row) = cut.row() else {
        return Vec::new();
    };
    let measures = corner_diagonals(row, cut.plan.section.top_width());
    let [left, right] = measures.map(|it| shown(cut.course, it));
    let on = |side: Side, share: f64| {
        let [foot, far] = diagonal(cut, side);
        Point::new(
            foot.x + (far.x - foot.x) * share,
            foot.y + (far.y - foot.y) * share,
        )
    };
    let notes = if left == right {
        vec![Led::from(on(Side::Left, 0.2), left, "both diagonals")]
    } else {
        vec![
            Led::from(on(Side::Right, 0.7), right, "from the right foot"),
            Led::from(on(Side::Left, 0.15), left, "from the left foot"),
        ]
    };
    // The lower rail and the brace of a timber frame take the room.
    if cut.timber.is_some() || !within_triangle(cut, sheet, &notes) {
        return notes;
    }
    Vec::new()
}

/// Writes the notes one over the other above the ground, the last lowest; does nothing where
/// a diagonal would run through them.
fn within_triangle(cut: &Cut<'_>, sheet: &mut Sheet, notes: &[Led]) -> bool {
    let ground = Side::BOTH.map(|side| cut.at(0.0, cut.ground(side)).y);
    let crossing = {
        let [left, right] = Side::BOTH.map(|side| diagonal(cut, side));
        // Where both have run the share at which they are equally far to the right.
        let run = |[foot, far]: [Point; 2]| (far.x - foot.x) / (far.y - foot.y);
        let x_at_top = left[1].x - right[1].x;
        left[1].y - x_at_top / (run(left) - run(right))
    };
    let mut base = ground[0].min(ground[1]) - OVER_GROUND_MM;
    let mut lines = Vec::new();
    for note in notes.iter().rev() {
        for (words, size, bold) in [
            (&note.word, WORD_MM, false),
            (&note.figure, FIGURE_MM, true),
        ] {
            let top = base - 0.8 * size;
            let half = width(words, size, bold) / 2.0 + BESIDE_MM;
            if top < crossing + BESIDE_MM || clear_at(cut, top) < half {
                return false;
            }
            lines.push((base, words.clone(), bold));
            base = top - 1.0;
        }
    }
    for (base, words, bold) in lines {
        let at = Point::new(0.0, base);
        if bold {
            sheet.figure(at, &words, Anchor::Middle);
        } else {
            sheet.word(at, &words, Anchor::Middle);
        }
    }
    true
}

/// The top width under the board: with words or without, whichever is clear of the diagonals;
/// else a line that leads to a note beside the frame.
fn top_width(cut: &Cut<'_>, sheet: &mut Sheet) -> Option<Led> {
    let figure = shown(cut.course, cut.plan.section.top_width());
    let [left, right] = Side::BOTH.map(|side| cut.at(cut.face(side, cut.top()), cut.top()));
    let half = |words: &str, size, bold| width(words, size, bold) / 2.0 + BESIDE_MM;
    let row = left.y + WITH_FIGURE_MM;
    let figure_fits = half(&figure, FIGURE_MM, true) < clear_at(cut, row) && cut.timber.is_none();
    let under_words = row + CLEAR_MM + WORD_MM;
    let words_fit = half("top width", WORD_MM, false) < clear_at(cut, under_words);
    let row = if figure_fits {
        row
    } else {
        left.y + WITHOUT_MM
    };
    for x in [left.x, right.x] {
        let ends = [left.y + 0.6, row + PAST_MM].map(|y| Point::new(x, y));
        sheet.line(Pen::Dimension, ends[0], ends[1]);
        tick(sheet, Point::new(x, row));
    }
    let ends = [left.x, right.x].map(|x| Point::new(x, row));
    sheet.line(Pen::Dimension, ends[0], ends[1]);
    if !figure_fits {
        return Some(Led::from(ends[0], figure, "top width, inside"));
    }
    sheet.figure(Point::new(0.0, row - CLEAR_MM), &figure, Anchor::Middle);
    if words_fit {
        let base = row + CLEAR_MM + 0.76 * WORD_MM;
        sheet.word(Point::new(0.0, base), "top width", Anchor::Middle);
    }
    None
}

/// The base width, below the trench.
pub(crate) fn base_width_row(cut: &Cut<'_>, sheet: &mut Sheet) {
    let toes = Side::BOTH.map(|side| cut.toe(side));
    let [left, right] = toes.map(|(x, y)| cut.at(x, y));
    let mut across = Across {
        y: cut.at(0.0, cut.lowest_dug()).y + FIGURE_MM + 3.4,
        from: left.x,
        to: right.x,
        figure: &shown(cut.course, base_width(cut)),
        word: "base width, inside",
        outside: Outside::Left(left.x - 3.0),
    };
    if !across.holds_its_text() {
        across.word = "base width";
    }
    if !across.holds_its_text() {
        across.y = sheet.extent().bottom + FIGURE_MM + 2.6;
    }
    for toe in [left, right] {
        let ends = [toe.y + 1.0, across.y + PAST_MM].map(|y| Point::new(toe.x, y));
        sheet.line(Pen::Dimension, ends[0], ends[1]);
    }
    across.draw(sheet);
}
