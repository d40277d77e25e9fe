//! The chance of finishing against the length of the wall, with what limits that length.

use crate::over_time::flags::{Flag, raise};
use crate::over_time::key::{SAMPLE_MM, Sample, key};
use crate::over_time::length_axis::LengthAxis;
use crate::over_time::plot::{Plot, filling, written_share};
use crate::paper::fitting::fitted_chart;
use crate::paper::pen::Pen;
use crate::paper::scene::{Anchor, Point, Room, Scene};
use crate::paper::sheet::{FIGURE_MM, Heading, Sheet, WORD_MM, line_of};
use crate::paper::strewn::steps;
use crate::paper::words::list;
use craft::pace::{Binding, Bound, Limit};
use craft::quantity::{Length, Units, show_length};

/// What the picture is made of.
#[derive(Debug, Clone, PartialEq)]
pub struct ChanceCurve {
    /// Lengths with the chance of finishing each, from 0 to 1, in any order.
    pub points: Vec<(Length, f64)>,
    /// The chance wished for, from 0 to 1.
    pub wished: f64,
    /// The length to build, with its chance.
    pub chosen: (Length, f64),
    /// Everything that has a say in the length.
    pub limits: Vec<Limit>,
}

/// How far the strokes beside a limit reach.
const STROKE_MM: f64 = 2.2;
const STROKES_APART_MM: f64 = 3.0;
const DOT_MM: f64 = 1.5;

/// The chance of finishing, from 0 to 100 %, against the length of the wall: the curve, the
/// chance wished for as a dashed level line, the length chosen as a dot with its figures, and
/// each limit as an upright with strokes on the side it forbids.
pub fn chance_curve(curve: &ChanceCurve, units: Units, room: Room) -> Scene {
    let curve = &curve.sorted();
    let (sheet, room) = fitted_chart(room, |room| {
        let width_mm = room.width_mm;
        filling(room, |plot| draw(curve, units, plot, width_mm))
    });
    let heading = Heading {
        name: "chance-curve",
        title: "Chance of finishing against the length of the wall".to_owned(),
        description: description(curve, units),
    };
    sheet.into_scene(heading, None, room)
}

impl ChanceCurve {
    /// In order of length, without what is no number.
    fn sorted(&self) -> Self {
        let mut sorted = self.clone();
        let sound = |(length, chance): &(Length, f64)| length.is_finite() && chance.is_finite();
        sorted.points.retain(sound);
        sorted
            .points
            .sort_by(|a, b| a.0.value.total_cmp(&b.0.value));
        sorted.limits.retain(|limit| limit.length.is_finite());
        sorted
    }

    fn axis(&self, units: Units) -> LengthAxis {
        let mut must: Vec<Length> = self.points.iter().map(|(length, _)| *length).collect();
        must.push(self.chosen.0);
        let may: Vec<Length> = self.limits.iter().map(|limit| limit.length).collect();
        LengthAxis::of(units, &must, &may)
    }
}

fn draw(curve: &ChanceCurve, units: Units, plot: Plot, room_mm: f64) -> Sheet {
    let mut sheet = Sheet::default();
    let axis = curve.axis(units);
    plot.shares(&mut sheet, "chance of finishing");
    axis.draw(&mut sheet, &plot);
    let mut flags = Vec::new();
    let mut beyond = Vec::new();
    for limit in &curve.limits {
        let Some(x) = axis.x(limit.length, &plot) else {
            beyond.push(limit_in_a_sentence(limit, units));
            continue;
        };
        forbidden(&mut sheet, &plot, x, limit.bound);
        let [what, length] = limit_words(limit, units);
        flags.push(Flag::new(x, plot.high_mm, Pen::Spread, &what).and(&length));
    }
    wished(&mut sheet, &plot, curve.wished);
    let at = |(length, chance): &(Length, f64)| {
        axis.x(*length, &plot)
            .map(|x| Point::new(x, plot.y(*chance)))
    };
    let line: Vec<Point> = curve.points.iter().filter_map(at).collect();
    if 1 < line.len() {
        sheet.polyline(Pen::Curve, line);
    }
    if let Some(point) = at(&curve.chosen) {
        sheet.line(Pen::Leader, point, Point::new(point.x, plot.high_mm));
        sheet.circle(Pen::Solid, point, DOT_MM);
        let length = format!("chosen: {}", show_length(curve.chosen.0, units));
        let chance = format!("chance {}", written_share(curve.chosen.1));
        let flag = Flag::new(point.x, point.y, Pen::Leader, &length).and(&chance);
        flags.push(flag.bold());
    }
    // The dot may stand on the upper edge.
    raise(&mut sheet, -DOT_MM, flags);
    let left = sheet.extent().left;
    let notes = (!beyond.is_empty()).then(|| format!("Beyond the picture: {}.", list(&beyond)));
    let notes: Vec<String> = notes.into_iter().collect();
    key(&mut sheet, left, room_mm - 6.0, &samples(curve), &notes);
    sheet
}

/// The level line of the chance wished for, with its figure right of the field.
fn wished(sheet: &mut Sheet, plot: &Plot, chance: f64) {
    let y = plot.y(chance);
    let ends = [plot.left, plot.right + 1.5].map(|x| Point::new(x, y));
    sheet.line(Pen::Wished, ends[0], ends[1]);
    let x = plot.right + 2.6;
    let figure = line_of(
        Point::new(x, y + 0.27 * FIGURE_MM),
        &written_share(chance),
        FIGURE_MM,
        Anchor::Start,
    );
    sheet.text(figure.bold());
    let under = Point::new(x, y + 0.27 * FIGURE_MM + 1.2 * WORD_MM);
    sheet.word(under, "wished for", Anchor::Start);
}

/// Short strokes on the side of an upright that its limit forbids.
fn forbidden(sheet: &mut Sheet, plot: &Plot, x: f64, bound: Bound) {
    let side = match bound {
        Bound::Least => -STROKE_MM,
        Bound::Most => STROKE_MM,
    };
    if x + side < plot.left || plot.right < x + side {
        return;
    }
    for stroke in steps((plot.high_mm / STROKES_APART_MM).floor()) {
        let y = (stroke + 1.0) * STROKES_APART_MM;
        let end = Point::new(x + side, y - STROKE_MM);
        sheet.line(Pen::Hatch, Point::new(x, y), end);
    }
}

fn limit_words(limit: &Limit, units: Units) -> [String; 2] {
    let bound = match limit.bound {
        Bound::Least => "at least",
        Bound::Most => "at most",
    };
    let length = show_length(limit.length, units);
    match limit.limit {
        Binding::Given => ["as given".to_owned(), length],
        other => [other.word().to_owned(), format!("{bound} {length}")],
    }
}

fn limit_in_a_sentence(limit: &Limit, units: Units) -> String {
    let length = show_length(limit.length, units);
    match (limit.limit, limit.bound) {
        (Binding::Given, _) => format!("{length} as given"),
        // "Frames" is the one reason that stands in the plural.
        (Binding::Frames, Bound::Least) => format!("frames ask for at least {length}"),
        (Binding::Frames, Bound::Most) => format!("frames allow at most {length}"),
        (other, Bound::Least) => format!("{} asks for at least {length}", other.word()),
        (other, Bound::Most) => format!("{} allows at most {length}", other.word()),
    }
}

fn samples(curve: &ChanceCurve) -> Vec<Sample> {
    let level = |pen: Pen| {
        move |sheet: &mut Sheet, at: Point| {
            let y = at.y + SAMPLE_MM.1 / 2.0;
            sheet.line(pen, Point::new(at.x, y), Point::new(at.x + SAMPLE_MM.0, y));
        }
    };
    let mut samples = vec![
        Sample::new("chance of finishing", level(Pen::Curve)),
        Sample::new("chance wished for", level(Pen::Wished)),
        Sample::new("length chosen", |sheet, at| {
            let middle = Point::new(at.x + SAMPLE_MM.0 / 2.0, at.y + SAMPLE_MM.1 / 2.0);
            sheet.circle(Pen::Solid, middle, DOT_MM);
        }),
    ];
    if !curve.limits.is_empty() {
        samples.push(Sample::new(
            "limit, strokes on the side it forbids",
            |sheet, at| {
                let plot = Plot {
                    left: at.x,
                    right: at.x,
                    high_mm: SAMPLE_MM.1,
                };
                let mut one = Sheet::default();
                let x = SAMPLE_MM.0 / 2.0;
                plot.upright(&mut one, Pen::Spread, x);
                let strokes = [SAMPLE_MM.1 * 0.6, SAMPLE_MM.1];
                for y in strokes {
                    let end = Point::new(x + STROKE_MM, y - STROKE_MM);
                    one.line(Pen::Hatch, Point::new(x, y), end);
                }
                for mut mark in one.marks().iter().cloned() {
                    mark.shift(at);
                    sheet.mark(mark);
                }
            },
        ));
    }
    samples
}

fn description(curve: &ChanceCurve, units: Units) -> String {
    let shown = |(length, chance): &(Length, f64)| {
        let chance = written_share(*chance);
        format!("{chance} at {}", show_length(*length, units))
    };
    let (length, chance) = curve.chosen;
    let mut said = vec![format!(
        "A wall {} long is finished with a chance of {}; {} is wished for.",
        show_length(length, units),
        written_share(chance),
        written_share(curve.wished),
    )];
    if !curve.points.is_empty() {
        let points: Vec<String> = told(&curve.points).iter().map(shown).collect();
        said.push(format!("The chance against the length: {}.", list(&points)));
    }
    if !curve.limits.is_empty() {
        let limits = curve
            .limits
            .iter()
            .map(|limit| limit_in_a_sentence(limit, units));
        said.push(format!("Limits: {}.", list(&limits.collect::<Vec<_>>())));
    }
    said.join(" ")
}

/// No more points than can be listened to, always with the first and the last.
fn told(points: &[(Length, f64)]) -> Vec<(Length, f64)> {
    const MOST: usize = 9;
    let every = points.len().div_ceil(MOST).max(1);
    let last = points.len().saturating_sub(1);
    let wanted = |at: &usize| at.is_multiple_of(every) || *at == last;
    let told = points.iter().enumerate().filter(|(at, _)| wanted(at));
    told.map(|(_, point)| *point).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::over_time::sample;
    use crate::overlap::words;

    const HALF: Room = Room {
        width_mm: 180.0,
        height_mm: 110.0,
    };

    #[test]
    fn the_words_hold_the_figures() {
        let scene = chance_curve(&sample::weekend_curve(), Units::Metric, HALF);
        assert_eq!(
            scene.description,
            "A wall 7.00 m long is finished with a chance of 80 %; 80 % is wished for. The chance \
             against the length: over 99 % at 3.00 m, 99 % at 4.00 m, 96 % at 5.00 m, 90 % at \
             6.00 m, 80 % at 7.00 m, 63 % at 8.00 m, 42 % at 9.00 m and 14 % at 11.00 m. Limits: \
             elbow room asks for at least 6.00 m, pace allows at most 7.03 m, frames allow at most \
             15.00 m and site allows at most 40.00 m."
        );
        let texts = words(&scene).join(" ");
        for said in [
            "chosen: 7.00 m chance 80 %",
            "elbow room at least 6.00 m",
            "frames at most 15.00 m",
            "Beyond the picture: site allows at most 40.00 m.",
            "length of the wall in metres",
        ] {
            assert!(texts.contains(said), "{said}\n{texts}");
        }
    }

    #[test]
    fn feet_are_shown_as_feet() {
        let scene = chance_curve(&sample::weekend_curve(), Units::Imperial, HALF);
        let texts = words(&scene).join(" ");
        assert!(
            texts.contains("in feet") && texts.contains("49 ft 2 1/2 in"),
            "{texts}"
        );
    }

    #[test]
    fn points_out_of_order_or_no_numbers_draw_the_same_curve() {
        let sound = sample::weekend_curve();
        let mut mixed = sound.clone();
        mixed.points.reverse();
        mixed.points.push((sound.chosen.0, f64::NAN));
        let drawn = |curve| chance_curve(curve, Units::Metric, HALF);
        assert_eq!(drawn(&sound), drawn(&mixed));
    }
}
