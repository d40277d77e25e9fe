//! Upright dimension lines: chains of heights beside a drawing, and the lines that lead to
//! them, which give way to words.

use crate::paper::dimension::tick;
use crate::paper::pen::Pen;
use crate::paper::scene::{Mark, Point};
use crate::paper::sheet::Sheet;
use crate::paper::side_notes::{Note, Towards, side_notes};
use crate::paper::text_box::TextBox;

/// How far a line that leads to a dimension runs past it.
pub(crate) const PAST_MM: f64 = 1.2;
/// Clear paper where a line gives way to a text.
const GAP_MM: f64 = 0.8;
/// A piece of line shorter than this is not worth drawing.
const LEAST_PIECE_MM: f64 = 0.8;

/// The dot a leader begins with.
const DOT_MM: f64 = 0.7;

/// One height in a chain, on paper.
pub(crate) struct Step {
    pub(crate) low: Level,
    pub(crate) high: Level,
    pub(crate) figure: String,
    pub(crate) word: String,
}

/// A level that a dimension runs to, and where the line that leads from there begins.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Level {
    pub(crate) y: f64,
    pub(crate) from: f64,
}

impl Level {
    /// Of a place that is drawn, a little clear of it.
    pub(crate) fn of(at: Point, towards: Towards) -> Self {
        Self {
            y: at.y,
            from: towards.out(at.x, 1.0),
        }
    }
}

/// A chain of heights along an upright line, with further notes beside it.
pub(crate) struct Upright {
    pub(crate) x: f64,
    pub(crate) towards: Towards,
    pub(crate) steps: Vec<Step>,
    pub(crate) notes: Vec<Note>,
}

impl Upright {
    pub(crate) fn draw(self, sheet: &mut Sheet) {
        let Self {
            x,
            towards,
            steps,
            mut notes,
        } = self;
        for step in &steps {
            for level in [step.low, step.high] {
                let lies_before = 0.0 < (x - level.from) * (towards.out(0.0, 1.0));
                let from = if lies_before { level.from } else { x };
                across(sheet, level.y, from, towards.out(x, PAST_MM));
                tick(sheet, Point::new(x, level.y));
            }
            let ends = [step.low, step.high].map(|level| Point::new(x, level.y));
            sheet.line(Pen::Dimension, ends[0], ends[1]);
        }
        notes.extend(steps.into_iter().map(|step| Note {
            y: (step.low.y + step.high.y) / 2.0,
            figure: step.figure,
            word: step.word,
        }));
        side_notes(sheet, towards.out(x, PAST_MM), towards, &notes);
    }
}

/// A note led to from what it speaks of.
pub(crate) struct Led {
    pub(crate) at: Point,
    pub(crate) figure: String,
    pub(crate) word: String,
    /// A dot shows where in a shape the leader begins.
    pub(crate) dot: bool,
}

impl Led {
    /// To something that is drawn by a line.
    pub(crate) fn from(at: Point, figure: String, word: &str) -> Self {
        Self {
            at,
            figure,
            word: word.to_owned(),
            dot: false,
        }
    }

    /// To something within a shape.
    pub(crate) fn within(at: Point, figure: String, word: &str) -> Self {
        Self {
            dot: true,
            ..Self::from(at, figure, word)
        }
    }
}

/// Leads level from each place past the upright line at `x`; gives the notes to stand there.
pub(crate) fn led(sheet: &mut Sheet, x: f64, towards: Towards, notes: Vec<Led>) -> Vec<Note> {
    let past = towards.out(x, PAST_MM);
    let lead = |note: Led| {
        sheet.line(Pen::Leader, note.at, Point::new(past, note.at.y));
        if note.dot {
            sheet.circle(Pen::Solid, note.at, DOT_MM);
        }
        Note {
            y: note.at.y,
            figure: note.figure,
            word: note.word,
        }
    };
    notes.into_iter().map(lead).collect()
}

/// A level line that leads to a dimension, broken where it would run through words.
pub(crate) fn across(sheet: &mut Sheet, y: f64, from: f64, to: f64) {
    let gaps = texts(sheet)
        .filter(|text| text.top - GAP_MM < y && y < text.bottom + GAP_MM)
        .map(|text| (text.left, text.right));
    for (left, right) in beside(gaps.collect(), from, to) {
        sheet.line(Pen::Dimension, Point::new(left, y), Point::new(right, y));
    }
}

/// The same for an upright line.
pub(crate) fn down(sheet: &mut Sheet, x: f64, from: f64, to: f64) {
    let gaps = texts(sheet)
        .filter(|text| text.left - GAP_MM < x && x < text.right + GAP_MM)
        .map(|text| (text.top, text.bottom));
    for (top, bottom) in beside(gaps.collect(), from, to) {
        sheet.line(Pen::Dimension, Point::new(x, top), Point::new(x, bottom));
    }
}

/// What is left of a line beside what stands in its way.
fn beside(mut in_the_way: Vec<(f64, f64)>, from: f64, to: f64) -> Vec<(f64, f64)> {
    in_the_way.sort_by(|a, b| a.0.total_cmp(&b.0));
    let (mut at, end) = (from.min(to), from.max(to));
    let mut pieces = Vec::new();
    for (low, high) in in_the_way {
        pieces.push((at, (low - GAP_MM).min(end)));
        at = at.max(high + GAP_MM);
    }
    pieces.push((at, end));
    pieces.retain(|(low, high)| LEAST_PIECE_MM <= high - low);
    pieces
}

fn texts(sheet: &Sheet) -> impl Iterator<Item = TextBox> {
    sheet.marks().iter().filter_map(|mark| match mark {
        Mark::Text(text) => Some(TextBox::of(text)),
        _ => None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::paper::scene::Anchor;

    /// By hand: "0.39 m" is 3.296 times its size wide, at 4.6 mm 15.16 mm; about x = 0 it
    /// reaches from -7.58 to 7.58, and 0.8 mm more stays clear on either side.
    #[test]
    fn a_line_gives_way_to_words() {
        let mut sheet = Sheet::default();
        sheet.figure(Point::new(0.0, 1.0), "0.39 m", Anchor::Middle);
        across(&mut sheet, 0.0, 20.0, -20.0);
        across(&mut sheet, 9.0, 20.0, -20.0);
        let lines: Vec<(f64, f64)> = sheet
            .marks()
            .iter()
            .filter_map(|mark| match mark {
                Mark::Line { from, to, .. } => Some((from.x, to.x)),
                _ => None,
            })
            .collect();
        let hand = [(-20.0, -8.38), (8.38, 20.0), (-20.0, 20.0)];
        assert_eq!(lines.len(), hand.len());
        for (drawn, hand) in lines.iter().zip(hand) {
            assert!((drawn.0 - hand.0).abs() < 0.01 && (drawn.1 - hand.1).abs() < 0.01);
        }
    }
}
