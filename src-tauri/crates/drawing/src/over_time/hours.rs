//! The axis of hours that all days share: its figures, and thin lines to read times by.

use crate::over_time::clock::{Clock, whole_hours};
use crate::over_time::timetable::TimetableDay;
use crate::paper::pen::Pen;
use crate::paper::scene::{Anchor, Mark, Point};
use crate::paper::sheet::{Sheet, WORD_MM};
use crate::paper::text_box::{TextBox, width};

/// From the bars to the base line of the figures.
pub(crate) const FIGURES_MM: f64 = 1.5 + WORD_MM;

/// The axis all days share: from which to which minute after midnight, and where on paper.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Hours {
    pub(crate) from: f64,
    pub(crate) to: f64,
    pub(crate) left: f64,
    pub(crate) right: f64,
}

impl Hours {
    pub(crate) fn of(days: &[TimetableDay], left: f64, right: f64) -> Self {
        let starts = days.iter().map(|day| day.starts - day.midnight());
        let ends = days.iter().map(|day| day.ends - day.midnight());
        let from = (starts.fold(f64::INFINITY, f64::min) / 60.0).floor() * 60.0;
        let to = (ends.fold(f64::NEG_INFINITY, f64::max) / 60.0).ceil() * 60.0;
        let (from, to) = if from < to {
            (from, to)
        } else {
            (540.0, 1020.0)
        };
        Self {
            from,
            to,
            left,
            right,
        }
    }

    /// Where a minute after midnight stands, held within the axis.
    pub(crate) fn x(&self, minute: f64) -> f64 {
        let share = (minute - self.from) / (self.to - self.from);
        self.left + (self.right - self.left) * share.clamp(0.0, 1.0)
    }

    /// Whether a minute falls within the axis, off its ends.
    pub(crate) fn holds(&self, minute: f64) -> bool {
        self.from < minute && minute < self.to
    }

    /// Strokes from `top` on at every hour, and as many figures as have room.
    pub(crate) fn figures(&self, sheet: &mut Sheet, clock: Clock, top: f64) {
        let per_hour = (self.right - self.left) / (self.to - self.from) * 60.0;
        let all = || whole_hours(self.from, self.to, 1.0);
        let widths = all().map(|hour| width(&clock.hour(hour), WORD_MM, false));
        let widest = widths.fold(0.0, f64::max) + 1.6;
        let every = [1.0, 2.0, 3.0, 4.0].into_iter();
        let every = every
            .filter(|every| widest <= every * per_hour)
            .fold(6.0, f64::min);
        for hour in all() {
            let x = self.x(hour * 60.0);
            let ends = [top, top + 1.0].map(|y| Point::new(x, y));
            sheet.line(Pen::Dimension, ends[0], ends[1]);
        }
        for hour in whole_hours(self.from, self.to, every) {
            let at = Point::new(self.x(hour * 60.0), top + FIGURES_MM - 0.6);
            sheet.word(at, &clock.hour(hour), Anchor::Middle);
        }
    }

    /// Thin uprights at the hours behind the lanes, broken where words stand.
    pub(crate) fn lines(&self, sheet: &mut Sheet, lanes: &Sheet, (top, bottom): (f64, f64)) {
        const CLEAR_MM: f64 = 0.7;
        let words: Vec<TextBox> = lanes
            .marks()
            .iter()
            .filter_map(|mark| match mark {
                Mark::Text(text) => Some(TextBox::of(text)),
                _ => None,
            })
            .collect();
        for hour in whole_hours(self.from, self.to, 1.0) {
            let x = self.x(hour * 60.0);
            let hit = |text: &&TextBox| text.left - CLEAR_MM < x && x < text.right + CLEAR_MM;
            let mut gaps: Vec<(f64, f64)> = words
                .iter()
                .filter(hit)
                .map(|text| (text.top - CLEAR_MM, text.bottom + CLEAR_MM))
                .collect();
            gaps.push((bottom, bottom));
            gaps.sort_by(|a, b| a.0.total_cmp(&b.0));
            let mut from = top;
            for (gap_from, gap_to) in gaps {
                if from + 0.5 < gap_from {
                    sheet.line(Pen::Grid, Point::new(x, from), Point::new(x, gap_from));
                }
                from = from.max(gap_to);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::over_time::sample;

    /// By hand: the sample's days run from 9 to 17; 13 is half-way.
    #[test]
    fn the_axis_holds_all_days_in_whole_hours() {
        let hours = Hours::of(&sample::weekend_days().days, 20.0, 180.0);
        assert!((hours.x(540.0) - 20.0).abs() < 1e-9);
        assert!((hours.x(780.0) - 100.0).abs() < 1e-9);
        assert!((hours.x(2000.0) - 180.0).abs() < 1e-9);
        assert!(hours.holds(541.0) && !hours.holds(540.0) && !hours.holds(1227.0));
    }

    /// A line that would run through words stops over them and goes on below.
    #[test]
    fn hour_lines_leave_words_out() {
        let hours = Hours::of(&sample::weekend_days().days, 0.0, 160.0);
        let mut lanes = Sheet::default();
        lanes.word(Point::new(30.0, 10.0), "first lift", Anchor::Start);
        let mut sheet = Sheet::default();
        hours.lines(&mut sheet, &lanes, (0.0, 20.0));
        // Nine hours from 9 to 17; the words lie over the line of 11 alone.
        assert_eq!(sheet.marks().len(), 9 + 1);
    }
}
