//! The field of a chart: shares of a whole upwards, with lines to read them by.

use crate::paper::pen::Pen;
use crate::paper::scene::{Anchor, Point, Room};
use crate::paper::sheet::{Sheet, WORD_MM, line_of};
use crate::paper::strewn::steps;
use craft::quantity::show_share;

/// Over and under which a field is too flat or needlessly high for its width.
const LOWEST_MM: f64 = 38.0;
const HIGHEST_SHARE: f64 = 0.6;
/// White paper a scene puts round a drawing, left and right together.
const MARGINS_MM: f64 = 4.0;

/// Where the field lies on paper; its upper edge is at 0.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Plot {
    pub(crate) left: f64,
    pub(crate) right: f64,
    pub(crate) high_mm: f64,
}

impl Plot {
    /// The height of a share, held within the field.
    pub(crate) fn y(&self, share: f64) -> f64 {
        self.high_mm * (1.0 - sound_share(share))
    }

    /// Level lines at every fifth of the whole with their figures left of the field, and what
    /// they measure.
    pub(crate) fn shares(&self, sheet: &mut Sheet, what: &str) {
        for fifth in steps(6.0) {
            let share = fifth / 5.0;
            let y = self.y(share);
            let pen = if fifth < 1.0 { Pen::Ground } else { Pen::Grid };
            sheet.line(pen, Point::new(self.left, y), Point::new(self.right, y));
            let at = Point::new(self.left - 1.6, y + 0.27 * WORD_MM);
            sheet.word(at, &show_share(share), Anchor::End);
        }
        let beside = sheet.extent().left - 1.6;
        let at = Point::new(beside, self.high_mm / 2.0);
        sheet.text(line_of(at, what, WORD_MM, Anchor::Middle).turned());
    }

    pub(crate) fn upright(&self, sheet: &mut Sheet, pen: Pen, x: f64) {
        sheet.line(pen, Point::new(x, 0.0), Point::new(x, self.high_mm));
    }
}

/// A share held between nothing and all; nothing for what is no number.
pub(crate) fn sound_share(share: f64) -> f64 {
    if share.is_nan() {
        0.0
    } else {
        share.clamp(0.0, 1.0)
    }
}

/// A share as it is written.
pub(crate) fn written_share(share: f64) -> String {
    show_share(sound_share(share))
}

/// Draws a chart for a room: its field as wide as the words beside it leave, and as high.
pub(crate) fn filling(room: Room, draw: impl Fn(Plot) -> Sheet) -> Sheet {
    let wished = room.height_mm.min(HIGHEST_SHARE * room.width_mm);
    let mut plot = Plot {
        left: 0.0,
        right: room.width_mm * 0.8,
        high_mm: LOWEST_MM,
    };
    let mut sheet = draw(plot);
    // Words over the field take other places when it grows or shrinks: a few rounds settle it.
    for _ in 0..4 {
        let extent = sheet.extent();
        let spare = room.width_mm - MARGINS_MM - extent.width();
        plot.right = (plot.right + spare).max(40.0);
        let high = plot.high_mm + wished - MARGINS_MM - extent.height();
        plot.high_mm = high.max(LOWEST_MM);
        sheet = draw(plot);
    }
    while room.width_mm - MARGINS_MM < sheet.extent().width() && 42.0 < plot.right {
        plot.right -= 2.0;
        sheet = draw(plot);
    }
    while room.height_mm - MARGINS_MM < sheet.extent().height() && LOWEST_MM + 2.0 < plot.high_mm {
        plot.high_mm -= 2.0;
        sheet = draw(plot);
    }
    sheet
}

/// A line that stands where a curve of (across, up) is at a place; nothing beyond its ends.
pub(crate) fn at(curve: &[Point], x: f64) -> Option<f64> {
    curve.windows(2).find_map(|pair| {
        let [from, to] = pair else {
            return None;
        };
        let within = from.x <= x && x <= to.x && from.x < to.x;
        within.then(|| from.y + (to.y - from.y) * (x - from.x) / (to.x - from.x))
    })
}
