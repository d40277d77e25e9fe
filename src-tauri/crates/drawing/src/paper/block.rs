//! Words that stay together: a figure with what it measures, a frame's number in its ring.

use crate::paper::pen::Pen;
use crate::paper::scene::{Anchor, Mark, Point, Text};
use crate::paper::sheet::{FIGURE_MM, WORD_MM, line_of};
use crate::paper::text_box::width;

/// The ring round a frame's number.
pub(crate) const RING_MM: f64 = 3.7;
/// Between a ring and the words that belong to it.
const GAP_MM: f64 = 1.0;
const NUMBER_MM: f64 = WORD_MM * 1.08;
/// Letters stand 0.76 over and 0.21 under the base line.
const UP: f64 = 0.76;
const LINE: f64 = 1.08;

/// Words that stay together.
#[derive(Debug, Clone, Default)]
pub(crate) struct Block {
    lines: Vec<Line>,
    /// A number in a ring, before the words.
    ringed: Option<String>,
    /// The words follow the ring beside it, not below.
    beside: bool,
}

#[derive(Debug, Clone)]
struct Line {
    words: String,
    size_mm: f64,
    bold: bool,
}

impl Block {
    pub(crate) fn figure(words: &str) -> Self {
        Self::default().line(words, FIGURE_MM, true)
    }

    pub(crate) fn word(words: &str) -> Self {
        Self::default().line(words, WORD_MM, false)
    }

    /// The same with words below.
    pub(crate) fn and_word(self, words: &str) -> Self {
        self.line(words, WORD_MM, false)
    }

    /// A number in a ring.
    pub(crate) fn ringed(number: usize) -> Self {
        Self {
            ringed: Some(number.to_string()),
            ..Self::default()
        }
    }

    /// The same with a figure, beside the ring or over or under it, as it stands `towards` the
    /// wall's outside: the ring is nearest to the wall.
    pub(crate) fn and_figure(mut self, words: &str, size_mm: f64, beside: bool) -> Self {
        self.beside = beside;
        self.line(words, size_mm, true)
    }

    fn line(mut self, words: &str, size_mm: f64, bold: bool) -> Self {
        self.lines.push(Line {
            words: words.to_owned(),
            size_mm,
            bold,
        });
        self
    }

    /// Width and height of the words alone, as they are read.
    fn words_size(&self) -> (f64, f64) {
        let widths = self
            .lines
            .iter()
            .map(|line| width(&line.words, line.size_mm, line.bold));
        let heights = self.lines.iter().map(|line| line.size_mm * LINE);
        (widths.fold(0.0, f64::max), heights.sum())
    }

    /// Half the width and half the height on paper.
    pub(crate) fn half(&self) -> (f64, f64) {
        let (wide, high) = self.words_size();
        let (wide, high) = match &self.ringed {
            None => (wide, high),
            Some(_) if self.lines.is_empty() => (2.0 * RING_MM, 2.0 * RING_MM),
            Some(_) if self.beside => (wide + 2.0 * RING_MM + GAP_MM, high.max(2.0 * RING_MM)),
            Some(_) => (wide.max(2.0 * RING_MM), high + 2.0 * RING_MM + GAP_MM),
        };
        (wide / 2.0, high / 2.0)
    }

    /// Its marks round a middle. `towards`: away from the wall, which tells on which side of
    /// the words a ring stands.
    pub(crate) fn marks(&self, middle: Point, towards: Point) -> Vec<Mark> {
        let mut marks = Vec::new();
        let (half_wide, half_high) = self.half();
        let mut at = middle;
        if let Some(number) = &self.ringed {
            let room = |half: f64| (half - RING_MM, RING_MM + GAP_MM / 2.0);
            let (mut ring, by) = (middle, if self.beside { towards.x } else { towards.y });
            let sign = if by < 0.0 { -1.0 } else { 1.0 };
            if !self.lines.is_empty() && self.beside {
                let (out, back) = room(half_wide);
                ring.x -= sign * out;
                at.x += sign * back;
            } else if !self.lines.is_empty() {
                let (out, back) = room(half_high);
                ring.y -= sign * out;
                at.y += sign * back;
            }
            marks.push(Mark::Circle {
                pen: Pen::Dimension,
                centre: ring,
                radius_mm: RING_MM,
            });
            let base = Point::new(ring.x, ring.y + 0.34 * NUMBER_MM);
            marks.push(Mark::Text(
                line_of(base, number, NUMBER_MM, Anchor::Middle).bold(),
            ));
        }
        marks.extend(self.texts(at).into_iter().map(Mark::Text));
        marks
    }

    fn texts(&self, middle: Point) -> Vec<Text> {
        let (_, high) = self.words_size();
        let mut down = -high / 2.0;
        self.lines
            .iter()
            .map(|line| {
                let base = down + UP * line.size_mm + (LINE - 0.97) * line.size_mm / 2.0;
                down += line.size_mm * LINE;
                let at = Point::new(middle.x, middle.y + base);
                let mut text = line_of(at, &line.words, line.size_mm, Anchor::Middle);
                text.bold = line.bold;
                text
            })
            .collect()
    }
}
