//! Where the bars of a day lie in a picture of the days, so that one can be laid elsewhere.

use crate::paper::scene::Point;

/// The row of one day's bars.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DayRow {
    /// Which day, counted from 0.
    pub day: usize,
    /// The upper left corner of the bars' room.
    pub from: Point,
    /// The lower right corner.
    pub to: Point,
    /// The minutes after midnight at its left and at its right end.
    pub minutes: (f64, f64),
}

impl DayRow {
    /// Where a minute after midnight stands, in millimetres to the right.
    pub fn x(&self, minute: f64) -> f64 {
        let (first, last) = self.minutes;
        self.from.x + (self.to.x - self.from.x) * (minute - first) / (last - first)
    }

    pub(crate) fn shift(&mut self, by: Point) {
        for corner in [&mut self.from, &mut self.to] {
            corner.x += by.x;
            corner.y += by.y;
        }
    }
}
