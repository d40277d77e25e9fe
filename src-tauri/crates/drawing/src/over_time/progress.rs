//! The day's progress against the forecast: what was thought, what was seen, what is thought now.

use crate::over_time::clock::Clock;
use crate::over_time::day_axis::DayAxis;
use crate::over_time::flags::{Flag, raise};
use crate::over_time::key::{SAMPLE_MM, Sample, key};
use crate::over_time::plot::{Plot, at, filling, written_share};
use crate::over_time::progress_words::{description, reported};
use crate::paper::fitting::fitted_chart;
use crate::paper::pen::Pen;
use crate::paper::scene::{Anchor, Point, Room, Scene};
use crate::paper::sheet::{FIGURE_MM, Heading, Sheet, WORD_MM, line_of};
use crate::paper::strewn::steps;

/// What the picture is made of. Times are minutes of the course calendar, shares of the whole
/// work run from 0 to 1.
#[derive(Debug, Clone, PartialEq)]
pub struct Progress {
    /// The course days in order.
    pub days: Vec<ProgressDay>,
    /// As forecast before the course.
    pub before: Band,
    /// As reported on the day, in order of time.
    pub told: Vec<(f64, f64)>,
    /// As forecast from now on.
    pub after: Band,
    /// When the course ends.
    pub ends: f64,
    /// The chance of finishing, as forecast now.
    pub chance: f64,
}

/// One course day.
#[derive(Debug, Clone, PartialEq)]
pub struct ProgressDay {
    /// `Day 1`, as it stands under its hours.
    pub name: String,
    /// When it begins.
    pub starts: f64,
    /// When it ends.
    pub ends: f64,
    /// From when to when nobody works.
    pub breaks: Vec<(f64, f64)>,
}

impl ProgressDay {
    /// How long it is, without telling breaks from work.
    pub(crate) fn minutes(&self) -> f64 {
        (self.ends - self.starts).max(0.0)
    }
}

/// Shares done against time, each in order of time; empty where nothing is forecast.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Band {
    /// The 10th percentile: no more than this is done in one course of ten.
    pub low: Vec<(f64, f64)>,
    /// The 50th percentile.
    pub middle: Vec<(f64, f64)>,
    /// The 90th percentile: more than this is done in one course of ten.
    pub high: Vec<(f64, f64)>,
}

const DOT_MM: f64 = 1.3;
const STROKES_APART_MM: f64 = 1.3;

/// The share of the whole work done against time over the course days: the forecast from
/// before the course as dashed edges with a thin middle, the reports as dots, the forecast from
/// now on hatched with a thick middle, the end of the course with the chance beside it.
pub fn progress_against_forecast(progress: &Progress, clock: Clock, room: Room) -> Scene {
    let (sheet, room) = fitted_chart(room, |room| {
        let width_mm = room.width_mm;
        filling(room, |plot| draw(progress, clock, plot, width_mm))
    });
    let heading = Heading {
        name: "progress",
        title: "Progress against the forecast".to_owned(),
        description: description(progress, clock),
    };
    sheet.into_scene(heading, None, room)
}

fn draw(progress: &Progress, clock: Clock, plot: Plot, room_mm: f64) -> Sheet {
    let mut sheet = Sheet::default();
    let axis = DayAxis::new(&progress.days, plot);
    plot.shares(&mut sheet, "share of the work done");
    axis.draw(&mut sheet, clock);
    let on_paper = |line: &[(f64, f64)]| -> Vec<Point> {
        let sound = line
            .iter()
            .filter(|(time, share)| time.is_finite() && share.is_finite());
        sound
            .map(|(time, share)| Point::new(axis.x(*time), plot.y(*share)))
            .collect()
    };
    let lines = |band: &Band| [&band.low, &band.middle, &band.high].map(|line| on_paper(line));
    let [low, middle, high] = lines(&progress.before);
    curve(&mut sheet, Pen::Forecast, low);
    curve(&mut sheet, Pen::Forecast, high);
    curve(&mut sheet, Pen::Bar, middle);
    let [low, middle, high] = lines(&progress.after);
    strokes_between(&mut sheet, &plot, &low, &high);
    curve(&mut sheet, Pen::Spread, low);
    curve(&mut sheet, Pen::Spread, high);
    curve(&mut sheet, Pen::Curve, middle);
    let mut flags = Vec::new();
    let told = on_paper(&progress.told);
    for point in &told {
        sheet.circle(Pen::Solid, *point, DOT_MM);
    }
    if let (Some(point), Some(last)) = (told.last(), progress.told.last()) {
        let [when, done] = reported(progress, clock, *last);
        let words = format!("reported {when}");
        let flag = Flag::new(point.x, point.y, Pen::Leader, &words).and(&done);
        flags.push(flag.bold());
    }
    end(&mut sheet, &plot, axis.x(progress.ends), progress.chance);
    // A dot may stand on the upper edge.
    raise(&mut sheet, -DOT_MM, flags);
    let left = sheet.extent().left;
    key(&mut sheet, left, room_mm - 6.0, &samples(progress), &[]);
    sheet
}

fn curve(sheet: &mut Sheet, pen: Pen, line: Vec<Point>) {
    if 1 < line.len() {
        sheet.polyline(pen, line);
    }
}

/// Upright strokes from one curve to the other, over the stretch that both have.
fn strokes_between(sheet: &mut Sheet, plot: &Plot, low: &[Point], high: &[Point]) {
    for stroke in steps(((plot.right - plot.left) / STROKES_APART_MM).floor()) {
        let x = plot.left + (stroke + 0.5) * STROKES_APART_MM;
        if let (Some(low), Some(high)) = (at(low, x), at(high, x)) {
            sheet.line(Pen::Hatch, Point::new(x, low), Point::new(x, high));
        }
    }
}

/// The end of the course, and the chance right of the field.
fn end(sheet: &mut Sheet, plot: &Plot, x: f64, chance: f64) {
    plot.upright(sheet, Pen::Outline, x);
    let x = plot.right + 2.2;
    let figure_base = 0.76 * FIGURE_MM;
    let at = Point::new(x, figure_base);
    let figure = written_share(chance);
    sheet.text(line_of(at, &figure, FIGURE_MM, Anchor::Start).bold());
    let mut base = figure_base;
    for line in ["chance of", "finishing by", "the end"] {
        base += 1.25 * WORD_MM;
        sheet.word(Point::new(x, base), line, Anchor::Start);
    }
}

fn samples(progress: &Progress) -> Vec<Sample> {
    let mut samples = Vec::new();
    if progress.before != Band::default() {
        let words = "forecast before the course: middle, and edges that hold 8 courses of 10";
        samples.push(Sample::new(words, |sheet, at| {
            levels(sheet, at, Pen::Forecast, Pen::Bar);
        }));
    }
    if progress.after != Band::default() {
        samples.push(Sample::new("forecast now, the same way", |sheet, at| {
            for stroke in steps((SAMPLE_MM.0 / STROKES_APART_MM).floor()) {
                let x = at.x + (stroke + 0.5) * STROKES_APART_MM;
                let ends = [at.y, at.y + SAMPLE_MM.1].map(|y| Point::new(x, y));
                sheet.line(Pen::Hatch, ends[0], ends[1]);
            }
            levels(sheet, at, Pen::Spread, Pen::Curve);
        }));
    }
    if !progress.told.is_empty() {
        samples.push(Sample::new("as reported", |sheet, at| {
            let middle = Point::new(at.x + SAMPLE_MM.0 / 2.0, at.y + SAMPLE_MM.1 / 2.0);
            sheet.circle(Pen::Solid, middle, DOT_MM);
        }));
    }
    samples.push(Sample::new("end of the course", |sheet, at| {
        let x = at.x + SAMPLE_MM.0 / 2.0;
        let ends = [at.y, at.y + SAMPLE_MM.1].map(|y| Point::new(x, y));
        sheet.line(Pen::Outline, ends[0], ends[1]);
    }));
    if progress.days.iter().any(|day| !day.breaks.is_empty()) {
        samples.push(Sample::new("break", |sheet, at| {
            let across = (at.x, at.x + SAMPLE_MM.0);
            crate::paper::hatching::hatched_box(sheet, across, (at.y + 0.8, at.y + 3.4));
            let corners = [(across.0, at.y + 0.8), (across.1, at.y + 3.4)];
            let [one, other] = corners.map(|(x, y)| Point::new(x, y));
            sheet.rectangle(Pen::Grid, one, other);
        }));
    }
    samples
}

fn levels(sheet: &mut Sheet, at: Point, edges: Pen, middle: Pen) {
    let levels = [(0.0, edges), (0.5, middle), (1.0, edges)];
    for (down, pen) in levels {
        let y = at.y + down * SAMPLE_MM.1;
        sheet.line(pen, Point::new(at.x, y), Point::new(at.x + SAMPLE_MM.0, y));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::over_time::sample;
    use crate::overlap::words;
    use crate::paper::scene::Mark;

    const HALF: Room = Room {
        width_mm: 180.0,
        height_mm: 110.0,
    };

    fn dots(scene: &Scene) -> usize {
        let dot = |mark: &&Mark| matches!(mark, Mark::Circle { .. });
        scene.marks.iter().filter(dot).count()
    }

    #[test]
    fn every_report_is_a_dot_and_the_last_is_told() {
        let mut progress = sample::weekend_progress();
        let scene = progress_against_forecast(&progress, Clock::TwentyFour, HALF);
        // One more in the key.
        assert_eq!(dots(&scene), 3 + 1);
        let said = words(&scene).join(" ");
        for figure in ["reported Day 1, 14:30 22 % done", "71 % chance of", "Day 2"] {
            assert!(said.contains(figure), "{figure}\n{said}");
        }
        progress.told.clear();
        progress.after = Band::default();
        let scene = progress_against_forecast(&progress, Clock::TwentyFour, HALF);
        let said = words(&scene).join(" ");
        assert_eq!(dots(&scene), 0);
        assert!(!said.contains("forecast now") && !said.contains("reported"));
    }
}
