//! Notes beside a drawing, each at the height of what it speaks of or led to from there.

use crate::paper::dimension::CLEAR_MM;
use crate::paper::pen::Pen;
use crate::paper::scene::{Anchor, Point};
use crate::paper::sheet::{FIGURE_MM, Sheet, WORD_MM};

/// One note: a figure and, below it, words; either may be empty.
pub(crate) struct Note {
    /// The height it belongs to.
    pub(crate) y: f64,
    /// The measurement.
    pub(crate) figure: String,
    /// What it measures.
    pub(crate) word: String,
}

/// Which way the notes run from their line.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Towards {
    /// To the left.
    Left,
    /// To the right.
    Right,
}

impl Towards {
    /// So far outwards from a place.
    pub(crate) fn out(self, x: f64, by: f64) -> f64 {
        match self {
            Self::Left => x - by,
            Self::Right => x + by,
        }
    }

    fn anchor(self) -> Anchor {
        match self {
            Self::Left => Anchor::End,
            Self::Right => Anchor::Start,
        }
    }
}

/// Room a leader takes from the line to a note that stands elsewhere.
const LEADER_MM: f64 = 5.0;
/// Clear paper between two notes.
const APART_MM: f64 = 1.6;

/// Puts notes beside the upright line at `x`, none over another.
pub(crate) fn side_notes(sheet: &mut Sheet, x: f64, towards: Towards, notes: &[Note]) {
    let mut notes: Vec<&Note> = notes.iter().collect();
    notes.sort_by(|a, b| a.y.total_cmp(&b.y));
    let wanted: Vec<(f64, f64)> = notes.iter().map(|note| (note.y, note.height())).collect();
    let middles = spread(&wanted);
    let led = notes
        .iter()
        .zip(&middles)
        .any(|(note, middle)| 0.4 < (note.y - middle).abs());
    let start = towards.out(x, if led { LEADER_MM } else { 0.6 });
    for (note, middle) in notes.iter().zip(middles) {
        if led {
            sheet.line(
                Pen::Leader,
                Point::new(x, note.y),
                Point::new(start, middle),
            );
        }
        note.write(
            sheet,
            towards.out(start, CLEAR_MM),
            middle,
            towards.anchor(),
        );
    }
}

impl Note {
    fn height(&self) -> f64 {
        let mut height = APART_MM;
        if !self.figure.is_empty() {
            height += FIGURE_MM;
        }
        if !self.word.is_empty() {
            height += WORD_MM;
        }
        height
    }

    fn write(&self, sheet: &mut Sheet, x: f64, middle: f64, anchor: Anchor) {
        let mut base = middle - (self.height() - APART_MM) / 2.0;
        if !self.figure.is_empty() {
            base += 0.78 * FIGURE_MM;
            sheet.figure(Point::new(x, base), &self.figure, anchor);
            base += 0.22 * FIGURE_MM;
        }
        if !self.word.is_empty() {
            base += 0.82 * WORD_MM;
            sheet.word(Point::new(x, base), &self.word, anchor);
        }
    }
}

/// Middles as near as can be to those wanted, in their order, with no two blocks of the given
/// heights over each other: neighbours in each other's way are pushed apart as one group.
pub(crate) fn spread(wanted: &[(f64, f64)]) -> Vec<f64> {
    // A group: the sum of (wanted middle - place within the group), its count and height.
    let mut groups: Vec<Group> = Vec::new();
    for &(middle, height) in wanted {
        let mut group = Group {
            first: groups.iter().map(|group| group.count).sum(),
            count: 1,
            pull: middle - height / 2.0,
            height,
        };
        while let Some(above) = groups.last() {
            if above.top() + above.height <= group.top() {
                break;
            }
            group = above.joined(&group);
            groups.pop();
        }
        groups.push(group);
    }
    let mut middles = Vec::with_capacity(wanted.len());
    for group in &groups {
        let mut top = group.top();
        for (_, height) in wanted.iter().skip(group.first).take(group.count) {
            middles.push(top + height / 2.0);
            top += height;
        }
    }
    middles
}

struct Group {
    first: usize,
    count: usize,
    pull: f64,
    height: f64,
}

impl Group {
    /// The top that leaves its blocks nearest to where they want to be.
    fn top(&self) -> f64 {
        self.pull / self.count as f64
    }

    fn joined(&self, below: &Self) -> Self {
        Self {
            first: self.first,
            count: self.count + below.count,
            pull: self.pull + below.pull - self.height * below.count as f64,
            height: self.height + below.height,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn blocks_stay_where_they_can_and_never_overlap() {
        assert_eq!(spread(&[(0.0, 4.0), (10.0, 4.0)]), [0.0, 10.0]);
        // By hand: two blocks of 4 wanted at 0 and 2 share the way: -1 and 3.
        assert_eq!(spread(&[(0.0, 4.0), (2.0, 4.0)]), [-1.0, 3.0]);
        let crowd: Vec<(f64, f64)> = (0..9).map(|at| (f64::from(at) * 0.7, 5.0)).collect();
        for pair in spread(&crowd).windows(2) {
            assert!(5.0 - 1e-9 <= pair[1] - pair[0]);
        }
    }
}
