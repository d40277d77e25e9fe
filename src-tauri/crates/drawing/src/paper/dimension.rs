//! Dimension lines with their figures, laid so that no figure touches a line.

use crate::paper::pen::Pen;
use crate::paper::scene::{Anchor, Point};
use crate::paper::sheet::{FIGURE_MM, SMALL_MM, Sheet, WORD_MM, line_of};
use crate::paper::text_box::width;

/// From one row of dimensions to the next.
pub(crate) const ROW_MM: f64 = 11.6;
/// Half the slanting stroke that ends a dimension line.
const TICK_MM: f64 = 1.1;
/// Clear paper between a figure and the nearest line.
pub(crate) const CLEAR_MM: f64 = 1.4;

/// The slanting stroke that ends a dimension line.
pub(crate) fn tick(sheet: &mut Sheet, at: Point) {
    sheet.line(
        Pen::Tick,
        Point::new(at.x - TICK_MM, at.y + TICK_MM),
        Point::new(at.x + TICK_MM, at.y - TICK_MM),
    );
}

/// A dimension along the paper: the figure above its line and words below.
pub(crate) struct Across<'a> {
    /// The row it stands in.
    pub(crate) y: f64,
    /// Left end.
    pub(crate) from: f64,
    /// Right end.
    pub(crate) to: f64,
    /// The measurement.
    pub(crate) figure: &'a str,
    /// What is measured.
    pub(crate) word: &'a str,
    /// Where the text goes if it does not fit between the ends.
    pub(crate) outside: Outside,
}

/// A place beside all lines that cross the row.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Outside {
    /// Ends here.
    Left(f64),
    /// Begins here.
    Right(f64),
}

impl Across<'_> {
    /// Whether the text fits between the ends.
    pub(crate) fn holds_its_text(&self) -> bool {
        let text = width(self.figure, FIGURE_MM, true).max(width(self.word, WORD_MM, false));
        text + 2.0 * (TICK_MM + CLEAR_MM) <= self.to - self.from
    }

    pub(crate) fn draw(&self, sheet: &mut Sheet) {
        let inside = self.holds_its_text();
        let (mut left, mut right) = (self.from, self.to);
        if inside {
            self.text(sheet, (left + right) / 2.0, Anchor::Middle, CLEAR_MM);
        } else {
            match self.outside {
                Outside::Left(x) => {
                    left = left.min(x + CLEAR_MM);
                    self.text(sheet, x, Anchor::End, 0.6);
                }
                Outside::Right(x) => {
                    right = right.max(x - CLEAR_MM);
                    self.text(sheet, x, Anchor::Start, 0.6);
                }
            }
        }
        sheet.line(
            Pen::Dimension,
            Point::new(left, self.y),
            Point::new(right, self.y),
        );
        tick(sheet, Point::new(self.from, self.y));
        tick(sheet, Point::new(self.to, self.y));
    }

    fn text(&self, sheet: &mut Sheet, x: f64, anchor: Anchor, clear: f64) {
        sheet.figure(Point::new(x, self.y - clear), self.figure, anchor);
        let below = Point::new(x, self.y + clear.max(0.8) + 0.76 * WORD_MM);
        sheet.word(below, self.word, anchor);
    }
}

/// Figures at places along a row, all below `top`, with their size. Lying where there is
/// room for all of them, else turned; where even that is too close, every second one, and so
/// on, always with the first and the last. Gives how many places go to one figure.
pub(crate) fn figure_row(sheet: &mut Sheet, top: f64, places: &[(f64, String)]) -> usize {
    for (size, bold) in [(FIGURE_MM, true), (SMALL_MM, true)] {
        if lie_apart(places, size, bold) {
            for (x, words) in places {
                let at = Point::new(*x, top + 0.76 * size);
                let text = line_of(at, words, size, Anchor::Middle);
                sheet.text(if bold { text.bold() } else { text });
            }
            return 1;
        }
    }
    let size = WORD_MM;
    let every = every_so_many(places.iter().map(|(x, _)| *x), size * 0.97 + 0.9);
    for at in shown(places.len(), every) {
        let (x, words) = &places[at];
        // The letters stand 0.76 over and 0.21 under the base line: this centres them.
        let at = Point::new(x + 0.275 * size, top);
        sheet.text(line_of(at, words, size, Anchor::End).bold().turned());
    }
    every
}

/// Whether all figures of a row have room beside each other.
pub(crate) fn lie_apart(places: &[(f64, String)], size: f64, bold: bool) -> bool {
    places.windows(2).all(|pair| match pair {
        [(x, words), (next_x, next_words)] => {
            let halves = (width(words, size, bold) + width(next_words, size, bold)) / 2.0;
            halves + 2.0 <= next_x - x
        }
        _ => true,
    })
}

/// The least step at which places stand so far apart.
pub(crate) fn every_so_many(places: impl Iterator<Item = f64>, apart: f64) -> usize {
    let places: Vec<f64> = places.collect();
    let fits = |every: usize| {
        let shown = shown(places.len(), every);
        shown
            .windows(2)
            .all(|pair| apart <= places[pair[1]] - places[pair[0]])
    };
    (1..places.len())
        .find(|every| fits(*every))
        .unwrap_or(places.len().max(1))
}

/// Which of `count` places are shown at this step: the first, the last, and those between
/// that are a whole step from both.
pub(crate) fn shown(count: usize, every: usize) -> Vec<usize> {
    let Some(last) = count.checked_sub(1) else {
        return Vec::new();
    };
    let mut shown: Vec<usize> = (0..last)
        .step_by(every.max(1))
        .filter(|at| *at == 0 || every <= last - at)
        .collect();
    shown.push(last);
    shown
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_and_last_are_always_shown_and_none_too_close() {
        assert_eq!(shown(5, 1), [0, 1, 2, 3, 4]);
        assert_eq!(shown(6, 2), [0, 2, 5]);
        assert_eq!(shown(7, 3), [0, 3, 6]);
        assert_eq!(shown(1, 4), [0]);
        assert!(shown(0, 1).is_empty());
        let places = [0.0, 1.0, 2.0, 3.0, 3.5];
        assert_eq!(every_so_many(places.into_iter(), 1.5), 2);
    }

    #[test]
    fn a_figure_too_wide_for_its_line_stands_beside_it() {
        let mut sheet = Sheet::default();
        Across {
            y: 0.0,
            from: 0.0,
            to: 8.0,
            figure: "0.39 m",
            word: "left",
            outside: Outside::Left(-3.0),
        }
        .draw(&mut sheet);
        let extent = sheet.extent();
        assert!(extent.left < -15.0 && extent.right < 10.0);
    }
}
