//! Round scales, the scale bar, and the strip of words under a drawing.

use crate::paper::pen::Pen;
use crate::paper::scene::{Anchor, Point};
use crate::paper::sheet::{FIGURE_MM, Sheet, WORD_MM, line_of};
use crate::paper::text_box::{width, wrap};
use craft::quantity::{FOOT_M, Length, Read, Units, metres, show_length};

/// The n of 1:n, from large drawings to small.
const SERIES: [u32; 25] = [
    4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 75, 100, 125, 150, 200, 250, 300, 400, 500,
    600, 750, 1000,
];

/// A scale of 1:n.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Scale(u32);

impl Scale {
    pub(crate) const SMALLEST: Self = Self(1000);

    /// All scales, the largest first.
    pub(crate) fn all() -> impl Iterator<Item = Self> {
        SERIES.into_iter().map(Self)
    }

    pub(crate) fn n(self) -> u32 {
        self.0
    }

    /// Paper millimetres for a metre of wall.
    pub(crate) fn mm_per_m(self) -> f64 {
        1000.0 / f64::from(self.0)
    }

    /// Paper millimetres for a length.
    pub(crate) fn mm(self, length: Length) -> f64 {
        length.si() * self.mm_per_m()
    }
}

/// How many times larger one direction is drawn so that `mm` comes to `wanted_mm`.
pub(crate) fn times_larger(mm: f64, wanted_mm: f64) -> u32 {
    [1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25]
        .into_iter()
        .find(|times| wanted_mm <= mm * f64::from(*times))
        .unwrap_or(25)
}

/// The least length of a scale bar.
const BAR_MM: f64 = 28.0;
const BAR_HEIGHT_MM: f64 = 1.6;
/// Between the drawing and the strip, and between lines of the strip.
const GAP_MM: f64 = 5.0;
const LINE_MM: f64 = WORD_MM * 1.3;

/// Under all that is drawn: a scale bar, the scale, and notes.
pub(crate) fn strip(sheet: &mut Sheet, scale: Scale, units: Units, notes: &[String], room_mm: f64) {
    let extent = sheet.extent();
    let (left, top) = (extent.left, extent.bottom + GAP_MM);
    let right = scale_bar(sheet, Point::new(left, top + WORD_MM + 1.5), scale, units);
    let said = format!("Scale 1:{}", scale.n());
    let base = top + WORD_MM + 1.5 + BAR_HEIGHT_MM;
    sheet.figure(Point::new(right + 6.0, base), &said, Anchor::Start);
    let room_mm = extent.width().max(120.0).min(room_mm - 4.0).max(60.0);
    let mut base = base + 1.0;
    for line in notes.iter().flat_map(|note| wrap(note, WORD_MM, room_mm)) {
        base += LINE_MM;
        sheet.word(Point::new(left, base), &line, Anchor::Start);
    }
}

/// Two halves, dark and light, figured at both ends and in the middle. Gives its right end.
fn scale_bar(sheet: &mut Sheet, at: Point, scale: Scale, units: Units) -> f64 {
    let half = half_bar(scale, units);
    let figures = [
        plain_nothing(units).to_owned(),
        show_length(half, units),
        show_length(half * 2.0, units),
    ];
    let half_mm = scale.mm(half);
    let under = Point::new(at.x + half_mm, at.y + BAR_HEIGHT_MM);
    sheet.rectangle(Pen::Solid, at, under);
    let ends = [at.x, under.x, under.x + half_mm];
    sheet.rectangle(
        Pen::Dimension,
        Point::new(ends[1], at.y),
        Point::new(ends[2], under.y),
    );
    for (x, figure) in ends.into_iter().zip(&figures) {
        let anchor = if x <= at.x {
            Anchor::Start
        } else {
            Anchor::Middle
        };
        sheet.word(Point::new(x, at.y - 1.4), figure, anchor);
    }
    ends[2] + width(&figures[2], WORD_MM, false) / 2.0
}

/// Half the scale bar: the least round length that is long enough and leaves its figures
/// apart.
fn half_bar(scale: Scale, units: Units) -> Length {
    let (round, unit): (&[f64], f64) = match units {
        Units::Metric => (
            &[0.05, 0.1, 0.2, 0.25, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0],
            1.0,
        ),
        Units::Imperial => (
            &[0.25, 0.5, 1.0, 2.0, 3.0, 5.0, 10.0, 20.0, 50.0, 100.0],
            FOOT_M,
        ),
    };
    let lengths = || round.iter().map(|length| metres(length * unit));
    let apart = |length: &Length| {
        let figure = |length| width(&show_length(length, units), WORD_MM, false);
        let (middle, end) = (figure(*length), figure(*length * 2.0));
        let first = width(plain_nothing(units), WORD_MM, false);
        let needed = (first + middle / 2.0).max((middle + end) / 2.0) + 2.0;
        needed.max(BAR_MM / 2.0) <= scale.mm(*length)
    };
    lengths()
        .find(apart)
        .or_else(|| lengths().next_back())
        .unwrap_or_else(|| metres(1.0))
}

fn plain_nothing(units: Units) -> &'static str {
    match units {
        Units::Metric => "0 m",
        Units::Imperial => "0 ft",
    }
}

/// A letter or number in a ring, which counts as one mark to the eye.
pub(crate) fn ringed(sheet: &mut Sheet, centre: Point, radius_mm: f64, letter: &str) {
    sheet.circle(Pen::Dimension, centre, radius_mm);
    let base = Point::new(centre.x, centre.y + 0.34 * FIGURE_MM);
    sheet.text(line_of(base, letter, FIGURE_MM, Anchor::Middle).bold());
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_scale_bar_is_long_enough_and_not_too_long() {
        for units in [Units::Metric, Units::Imperial] {
            for scale in Scale::all().filter(|scale| scale.n() <= 500) {
                let mm = scale.mm(half_bar(scale, units));
                assert!((BAR_MM / 2.0..=70.0).contains(&mm), "1:{} {mm}", scale.n());
            }
        }
    }

    #[test]
    fn one_in_ten_makes_a_tenth() {
        assert!((Scale(10).mm(metres(1.0)) - 100.0).abs() < 1e-9);
        assert_eq!(times_larger(10.0, 9.0), 1);
        assert_eq!(times_larger(10.0, 28.0), 3);
    }
}
