//! An axis of course days: nights cut out, breaks hatched, hours under it.

use crate::over_time::clock::{Clock, midnight_before, whole_hours};
use crate::over_time::plot::Plot;
use crate::over_time::progress::ProgressDay;
use crate::paper::hatching::hatched_box;
use crate::paper::pen::Pen;
use crate::paper::scene::{Anchor, Point};
use crate::paper::sheet::{Sheet, WORD_MM, line_of};
use crate::paper::text_box::width;

/// White paper for a night.
const NIGHT_MM: f64 = 3.0;
/// The ribbon under the field in which breaks are hatched.
const RIBBON_MM: f64 = 2.6;
/// Clear paper between two hours.
const APART_MM: f64 = 1.6;

/// The days side by side.
#[derive(Debug, Clone, Copy)]
pub(crate) struct DayAxis<'a> {
    days: &'a [ProgressDay],
    plot: Plot,
    mm_per_minute: f64,
}

impl<'a> DayAxis<'a> {
    pub(crate) fn new(days: &'a [ProgressDay], plot: Plot) -> Self {
        let open: f64 = days.iter().map(ProgressDay::minutes).sum();
        let nights: f64 = days.iter().skip(1).map(|_| NIGHT_MM).sum();
        let room = (plot.right - plot.left - nights).max(1.0);
        Self {
            days,
            plot,
            mm_per_minute: room / open.max(1.0),
        }
    }

    /// Where each day begins and ends on paper.
    pub(crate) fn edges(&self) -> Vec<(f64, f64)> {
        let mut left = self.plot.left;
        let edge = |day: &ProgressDay| {
            let from = left;
            let to = from + day.minutes() * self.mm_per_minute;
            left = to + NIGHT_MM;
            (from, to)
        };
        self.days.iter().map(edge).collect()
    }

    /// Where a time stands; one out of hours at the end of the day before it.
    pub(crate) fn x(&self, minutes: f64) -> f64 {
        let mut x = self.plot.left;
        for (day, (from, to)) in self.days.iter().zip(self.edges()) {
            if day.starts <= minutes {
                x = (from + (minutes - day.starts) * self.mm_per_minute).min(to);
            }
        }
        x
    }

    /// The edges of the days in the field, the ribbon under it, hours and names of the days.
    pub(crate) fn draw(&self, sheet: &mut Sheet, clock: Clock) {
        let top = self.plot.high_mm + 0.9;
        let bottom = top + RIBBON_MM;
        let hours_every = self.hours_every(clock);
        let mut base = bottom + 1.6 + 0.76 * WORD_MM;
        if let Some(every) = hours_every {
            for day in self.days {
                self.hours(sheet, clock, day, every, bottom);
            }
            base += 1.3 * WORD_MM;
        }
        for (day, (from, to)) in self.days.iter().zip(self.edges()) {
            for x in [from, to] {
                self.plot.upright(sheet, Pen::Dimension, x);
            }
            for (starts, ends) in &day.breaks {
                let edges = (self.x(*starts), self.x(*ends));
                hatched_box(sheet, edges, (top, bottom));
                for x in [edges.0, edges.1] {
                    sheet.line(Pen::Hatch, Point::new(x, top), Point::new(x, bottom));
                }
            }
            sheet.rectangle(Pen::Grid, Point::new(from, top), Point::new(to, bottom));
            let middle = (from + to) / 2.0;
            // A day too narrow for `Day 1` is called `1`.
            let wide = width(&day.name, WORD_MM, true) + APART_MM;
            let number = day.name.split_whitespace().next_back();
            let name = if wide <= to - from + NIGHT_MM {
                day.name.as_str()
            } else {
                number.unwrap_or_default()
            };
            let at = Point::new(middle, base);
            sheet.text(line_of(at, name, WORD_MM, Anchor::Middle).bold());
        }
    }

    fn hours(&self, sheet: &mut Sheet, clock: Clock, day: &ProgressDay, every: f64, top: f64) {
        let midnight = midnight_before(day.starts);
        for hour in whole_hours(day.starts - midnight, day.ends - midnight, every) {
            let x = self.x(midnight + hour * 60.0);
            sheet.line(Pen::Dimension, Point::new(x, top), Point::new(x, top + 0.9));
            let base = Point::new(x, top + 1.6 + 0.76 * WORD_MM);
            sheet.word(base, &clock.hour(hour), Anchor::Middle);
        }
    }

    /// The least step in hours at which no two figures meet, on any day.
    fn hours_every(&self, clock: Clock) -> Option<f64> {
        let fits = |every: &f64| {
            let mut right = f64::NEG_INFINITY;
            self.days.iter().all(|day| {
                let midnight = midnight_before(day.starts);
                let hours = whole_hours(day.starts - midnight, day.ends - midnight, *every);
                hours.into_iter().all(|hour| {
                    let x = self.x(midnight + hour * 60.0);
                    let half = width(&clock.hour(hour), WORD_MM, false) / 2.0;
                    let clear = right + APART_MM <= x - half;
                    right = x + half;
                    clear
                })
            })
        };
        [1.0, 2.0, 3.0, 4.0, 6.0].into_iter().find(fits)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: two days of 8 h on 103 mm with a night of 3 mm: 50 mm each.
    #[test]
    fn a_night_takes_no_time() {
        let day = |starts: f64| ProgressDay {
            name: "Day".to_owned(),
            starts,
            ends: starts + 480.0,
            breaks: Vec::new(),
        };
        let days = [day(540.0), day(540.0 + 1440.0)];
        let plot = Plot {
            left: 0.0,
            right: 103.0,
            high_mm: 40.0,
        };
        let axis = DayAxis::new(&days, plot);
        for (time, x) in [
            (0.0, 0.0),
            (540.0, 0.0),
            (780.0, 25.0),
            (1020.0, 50.0),
            (1500.0, 50.0),
            (1980.0, 53.0),
            (2460.0, 103.0),
            (9000.0, 103.0),
        ] {
            assert!((axis.x(time) - x).abs() < 1e-9, "{time}: {}", axis.x(time));
        }
    }
}
