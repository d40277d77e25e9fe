//! Words over a row of places: each on a pole of its own, so high that none meets another.

use crate::paper::pen::Pen;
use crate::paper::scene::{Anchor, Point};
use crate::paper::sheet::{Sheet, WORD_MM, line_of};
use crate::paper::text_box::{width, wrap};

/// From one line of words to the next.
const LINE_MM: f64 = WORD_MM * 1.22;
/// Between a pole and its words, and between words and the next pole.
const BESIDE_MM: f64 = 0.9;
/// Between the row and the lowest words.
const OVER_MM: f64 = 0.8;
/// Words are broken where they would be longer.
const LONGEST_MM: f64 = 37.0;

/// Words on a pole; they stand to the right of it.
#[derive(Debug, Clone)]
pub(crate) struct Flag {
    /// Where the pole stands.
    pub(crate) x: f64,
    /// How far down it reaches.
    pub(crate) foot: f64,
    /// What the pole is drawn with.
    pub(crate) pen: Pen,
    lines: Vec<String>,
    bold: bool,
}

impl Flag {
    pub(crate) fn new(x: f64, foot: f64, pen: Pen, words: &str) -> Self {
        let lines = wrap(words, WORD_MM, LONGEST_MM);
        Self {
            x,
            foot,
            pen,
            lines,
            bold: false,
        }
    }

    /// The same with more words on a line of their own.
    pub(crate) fn and(mut self, words: &str) -> Self {
        self.lines.extend(wrap(words, WORD_MM, LONGEST_MM));
        self
    }

    pub(crate) fn bold(mut self) -> Self {
        self.bold = true;
        self
    }

    /// The right edge of its words.
    fn right(&self) -> f64 {
        let widths = self
            .lines
            .iter()
            .map(|line| width(line, WORD_MM, self.bold));
        self.x + BESIDE_MM + widths.fold(0.0, f64::max)
    }
}

/// Draws flags over a row at the height `over`. From right to left each gets the lowest place
/// above the poles that stand within its words: so no pole runs through words and no words
/// meet, however close the places are.
pub(crate) fn raise(sheet: &mut Sheet, over: f64, mut flags: Vec<Flag>) {
    flags.retain(|flag| flag.x.is_finite());
    flags.sort_by(|a, b| a.x.total_cmp(&b.x));
    let mut tops: Vec<(f64, f64)> = Vec::new();
    for flag in flags.iter().rev() {
        let right = flag.right() + BESIDE_MM;
        let under = tops.iter().filter(|(x, _)| *x <= right);
        let lowest = under.map(|(_, top)| *top).fold(over - OVER_MM, f64::min);
        let top = flag.put(sheet, lowest);
        tops.push((flag.x, top));
    }
}

impl Flag {
    /// Its words with their lower edge at a height. Gives their upper edge.
    fn put(&self, sheet: &mut Sheet, bottom: f64) -> f64 {
        let high = self.lines.iter().map(|_| LINE_MM).sum::<f64>();
        let top = bottom - high;
        let mut base = top + 0.78 * LINE_MM;
        for line in &self.lines {
            let at = Point::new(self.x + BESIDE_MM, base);
            let mut text = line_of(at, line, WORD_MM, Anchor::Start);
            text.bold = self.bold;
            sheet.text(text);
            base += LINE_MM;
        }
        let ends = [self.foot, top + 0.5].map(|y| Point::new(self.x, y));
        sheet.line(self.pen, ends[0], ends[1]);
        top
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::paper::scene::Mark;
    use crate::paper::text_box::TextBox;

    fn tops(places: &[(f64, &str)]) -> Vec<(String, f64)> {
        let mut sheet = Sheet::default();
        let flags = places
            .iter()
            .map(|(x, words)| Flag::new(*x, 0.0, Pen::Leader, words));
        raise(&mut sheet, 0.0, flags.collect());
        let texts = sheet.marks().iter().filter_map(|mark| match mark {
            Mark::Text(text) => Some((text.words.clone(), TextBox::of(text).top)),
            _ => None,
        });
        texts.collect()
    }

    #[test]
    fn words_far_apart_stand_level_and_close_ones_rise_to_the_left() {
        let far = tops(&[(0.0, "Throughs"), (40.0, "Copes")]);
        assert!((far[0].1 - far[1].1).abs() < 1e-9);
        let close = tops(&[(0.0, "Throughs"), (4.0, "Copes"), (5.0, "Heads")]);
        let [heads, copes, throughs] = [&close[0], &close[1], &close[2]];
        assert_eq!(
            (heads.0.as_str(), throughs.0.as_str()),
            ("Heads", "Throughs")
        );
        assert!(throughs.1 < copes.1 && copes.1 < heads.1);
    }

    #[test]
    fn long_words_take_more_lines() {
        let lines = tops(&[(
            0.0,
            "A lesson whose title is far longer than any pole holds",
        )]);
        assert!(1 < lines.len());
    }
}
