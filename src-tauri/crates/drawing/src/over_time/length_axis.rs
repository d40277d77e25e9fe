//! An axis of lengths: which of them it holds, and round figures along it.

use crate::over_time::plot::Plot;
use crate::paper::pen::Pen;
use crate::paper::scene::{Anchor, Point};
use crate::paper::sheet::{Sheet, WORD_MM};
use crate::paper::strewn::steps;
use crate::paper::text_box::width;
use craft::quantity::{FOOT_M, Length, Read, Units};

/// Steps between figures, in the unit.
const STEPS: [f64; 11] = [
    0.25, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0,
];
/// Clear paper between two figures.
const APART_MM: f64 = 4.0;

/// The lengths on an axis, in the unit they are shown in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct LengthAxis {
    units: Units,
    from: f64,
    to: f64,
}

impl LengthAxis {
    /// One that holds the lengths it must, and those beside them that are not too far off.
    pub(crate) fn of(units: Units, must: &[Length], may: &[Length]) -> Self {
        let shown = |length: &Length| Some(in_units(*length, units)).filter(|it| it.is_finite());
        let ends = |lengths: &[Length], start: (f64, f64)| {
            let lengths = lengths.iter().filter_map(shown);
            lengths.fold(start, |(from, to), it| (from.min(it), to.max(it)))
        };
        let (from, to) = ends(must, (f64::INFINITY, f64::NEG_INFINITY));
        if to < from {
            return Self {
                units,
                from: 0.0,
                to: 10.0,
            };
        }
        let reach = 0.6 * (to - from).max(1.0);
        let near = |length: &&Length| {
            shown(length).is_some_and(|it| from - reach <= it && it <= to + reach)
        };
        let near: Vec<Length> = may.iter().filter(near).copied().collect();
        let (from, to) = ends(&near, (from, to));
        let edge = 0.05 * (to - from).max(1.0);
        Self {
            units,
            from: (from - edge).max(0.0),
            to: to + edge,
        }
    }

    /// Where a length stands, if the axis holds it.
    pub(crate) fn x(&self, length: Length, plot: &Plot) -> Option<f64> {
        let value = in_units(length, self.units);
        let within = self.from <= value && value <= self.to;
        within.then(|| self.along(value, plot))
    }

    fn along(&self, value: f64, plot: &Plot) -> f64 {
        plot.left + (plot.right - plot.left) * (value - self.from) / (self.to - self.from)
    }

    /// Strokes and figures under the field, and what they measure.
    pub(crate) fn draw(&self, sheet: &mut Sheet, plot: &Plot) {
        let per_unit = (plot.right - plot.left) / (self.to - self.from);
        let widest = width(&format!("{:.2}", self.to), WORD_MM, false);
        let fits = |step: &&f64| widest + APART_MM <= **step * per_unit;
        let step = STEPS.iter().find(fits).copied().unwrap_or(1000.0);
        let first = (self.from / step - 1e-9).ceil();
        let count = ((self.to / step + 1e-9).floor() - first + 1.0).max(0.0);
        let base = plot.high_mm + 1.8 + WORD_MM;
        for at in steps(count) {
            let value = (first + at) * step;
            let x = self.along(value, plot);
            let ends = [plot.high_mm, plot.high_mm + 1.2].map(|y| Point::new(x, y));
            sheet.line(Pen::Ground, ends[0], ends[1]);
            sheet.word(Point::new(x, base), &format!("{value}"), Anchor::Middle);
        }
        let unit = match self.units {
            Units::Metric => "length of the wall in metres",
            Units::Imperial => "length of the wall in feet",
        };
        let middle = (plot.left + plot.right) / 2.0;
        let at = Point::new(middle, base + 1.4 * WORD_MM);
        sheet.word(at, unit, Anchor::Middle);
    }
}

fn in_units(length: Length, units: Units) -> f64 {
    match units {
        Units::Metric => length.si(),
        Units::Imperial => length.si() / FOOT_M,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use craft::quantity::metres;

    const PLOT: Plot = Plot {
        left: 0.0,
        right: 100.0,
        high_mm: 50.0,
    };

    #[test]
    fn lengths_far_off_are_left_out() {
        let must = [metres(4.0), metres(12.0)];
        let axis = LengthAxis::of(Units::Metric, &must, &[metres(15.0), metres(60.0)]);
        assert!(axis.x(metres(15.0), &PLOT).is_some());
        assert_eq!(axis.x(metres(60.0), &PLOT), None);
        let from = axis.x(metres(4.0), &PLOT);
        assert!(from.is_some_and(|x| 0.0 < x && x < 10.0), "{from:?}");
    }

    #[test]
    fn nothing_to_show_is_still_an_axis() {
        let axis = LengthAxis::of(Units::Imperial, &[metres(f64::NAN)], &[]);
        let mut sheet = Sheet::default();
        axis.draw(&mut sheet, &PLOT);
        assert!(sheet.extent().width().is_finite());
    }
}
