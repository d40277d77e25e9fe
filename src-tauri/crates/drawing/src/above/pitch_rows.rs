//! The rows of figures over and under a stretch of the setting-out, each with its name.

use crate::above::line_words::front;
use crate::above::pitch::{Diagonals, Standing};
use crate::above::pitch_words::PitchWords;
use crate::paper::dimension::figure_row;
use crate::paper::scene::{Anchor, Point};
use crate::paper::sheet::{Sheet, WORD_MM};
use craft::frames::{Bay, FrameRow};
use craft::quantity::Length;
use craft::wall::Side;

/// Between the name of a row and its first figure.
const NAME_MM: f64 = 2.0;

/// Figures in a row, each over or under its place.
pub(crate) struct Row {
    name: &'static str,
    places: Vec<(f64, String)>,
}

impl Row {
    /// The row on a sheet of its own with its name before it, and how many places go to one
    /// figure.
    pub(crate) fn figures(&self) -> (Sheet, usize) {
        let mut sheet = Sheet::default();
        let every = figure_row(&mut sheet, 0.0, &self.places);
        let extent = sheet.extent();
        let x = extent.left.min(0.0) - NAME_MM;
        let y = (extent.top + extent.bottom) / 2.0 + 0.34 * WORD_MM;
        sheet.word(Point::new(x, y), self.name, Anchor::End);
        (sheet, every)
    }
}

impl PitchWords<'_> {
    fn at_frames(&self, name: &'static str, of: impl Fn(&FrameRow) -> Length) -> Row {
        let frames = self.pitch.frames();
        let place = |frame: &Standing<'_>| {
            let x = self.pitch.along(frame.station);
            (x, self.shown(of(frame.row)))
        };
        Row {
            name,
            places: frames.iter().map(place).collect(),
        }
    }

    fn in_bays(&self, name: &'static str, of: impl Fn(&Bay) -> Length) -> Row {
        let place = |bay: &Bay| {
            let x = self.pitch.along((bay.from + bay.to) / 2.0);
            (x, self.shown(of(bay)))
        };
        Row {
            name,
            places: self.pitch.bays().map(place).collect(),
        }
    }

    /// What a tape reads along one side; where it is the same in all bays, once.
    fn taped_along(&self, name: &'static str, side: usize) -> Option<Row> {
        if self.taped.sides_as_the_bay {
            return None;
        }
        let row = self.in_bays(name, |bay| bay.taped[side]);
        if self.taped.sides_alike {
            self.once(row)
        } else {
            Some(row)
        }
    }

    /// A row that is the same in all bays, written at the first.
    fn once(&self, mut row: Row) -> Option<Row> {
        row.places.truncate(1);
        self.pitch.stretch.first.then_some(row)
    }

    /// From the wall upwards: offsets to the left, what a tape reads there, the diagonals.
    pub(crate) fn rows_above(&self) -> Vec<Row> {
        let mut rows = Vec::new();
        if !self.taped.frames_alike {
            rows.push(match front(self.pitch.plan) {
                None => self.at_frames("left", |row| row.left_offset),
                Some(Side::Left) => self.at_frames("front to centre line", |row| row.left_offset),
                Some(Side::Right) => self.at_frames("front to back", FrameRow::base_width),
            });
        }
        rows.extend(self.taped_along("left, taped", 0));
        if self.diagonals() == Diagonals::OfEveryBay {
            if self.taped.square {
                rows.push(self.in_bays("both diagonals", |bay| bay.diagonals[0]));
            } else {
                rows.push(self.in_bays("left to next right", |bay| bay.diagonals[0]));
                rows.push(self.in_bays("right to next left", |bay| bay.diagonals[1]));
            }
        } else if !self.taped.sides_as_the_bay {
            rows.extend(self.once(self.in_bays("both diagonals", |bay| bay.diagonals[0])));
        }
        rows
    }

    /// From the wall downwards: offsets to the right, what a tape reads there, and overall.
    pub(crate) fn rows_below(&self) -> Vec<Row> {
        let mut rows = Vec::new();
        if !self.taped.frames_alike {
            match front(self.pitch.plan) {
                None => {
                    rows.push(self.at_frames("right", |row| row.right_offset));
                    rows.push(self.at_frames("overall", FrameRow::base_width));
                }
                Some(Side::Left) => {
                    rows.push(self.at_frames("front to back", FrameRow::base_width))
                }
                Some(Side::Right) => {
                    rows.push(self.at_frames("front to centre line", |row| row.right_offset));
                }
            }
        }
        rows.extend(self.taped_along("right, taped", 1));
        rows
    }
}
