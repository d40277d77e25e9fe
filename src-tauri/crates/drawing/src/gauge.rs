//! The batter gauge: the right triangle that holds a face to its slope.

use crate::dimension::{Across, Outside, tick};
use crate::pen::Pen;
use crate::scale::{Scale, strip};
use crate::scene::{Anchor, Point, Room, Scene};
use crate::sheet::{FIGURE_MM, Heading, Sheet, WORD_MM, fitted};
use crate::side_notes::{Note, Towards, side_notes};
use crate::words::{self, shown};
use craft::course::Course;
use craft::plan::Plan;
use craft::quantity::{FOOT_M, Length, Units, metres};
use craft::wall::{Batter, Side};

/// The plumb edge of a gauge in metres (common practice, no source).
const GAUGE_LENGTH_METRIC_M: f64 = 1.2;
/// The plumb edge of a gauge in feet (common practice, no source).
const GAUGE_LENGTH_IMPERIAL_FT: f64 = 4.0;

/// The gauge for each batter of the wall: one, or two where the faces differ.
pub fn gauge(plan: &Plan, course: &Course, room: Room) -> Scene {
    let gauges = gauges(plan, course);
    let (scale, sheet, room) = fitted(
        room,
        |_| true,
        |scale, room| cut_out(&gauges, course, scale, room),
    );
    let heading = Heading {
        name: "gauge",
        title: if gauges.len() == 1 {
            "Batter gauge"
        } else {
            "Batter gauges"
        }
        .to_owned(),
        description: description(&gauges, course, scale),
    };
    sheet.into_scene(heading, scale, room)
}

/// One gauge, measured.
struct Gauge {
    /// What it is for: `both faces`, `the left face`, `the right face`.
    face: &'static str,
    batter: Batter,
    /// The plumb edge.
    rise: Length,
}

impl Gauge {
    /// `rise / n`: how wide it is at the top.
    fn width(&self) -> Length {
        self.rise * self.batter.lean()
    }

    /// `rise · sqrt(1 + 1/n²)`: the edge that lies on the face.
    fn slope(&self) -> Length {
        self.rise * self.batter.slope_factor()
    }
}

fn gauges(plan: &Plan, course: &Course) -> Vec<Gauge> {
    let rise = match course.units {
        Units::Metric => metres(GAUGE_LENGTH_METRIC_M),
        Units::Imperial => metres(GAUGE_LENGTH_IMPERIAL_FT * FOOT_M),
    };
    let [left, right] = [Side::Left, Side::Right].map(|side| plan.section.batter(side));
    let gauge = |face, batter| Gauge { face, batter, rise };
    if left == right {
        vec![gauge("both faces", left)]
    } else {
        vec![gauge("the left face", left), gauge("the right face", right)]
    }
}

fn description(gauges: &[Gauge], course: &Course, scale: Scale) -> String {
    let said: Vec<String> = gauges
        .iter()
        .map(|gauge| {
            if gauge.batter.n().is_none() {
                return format!(
                    "Plumb, for {}: a straight edge with a level is enough.",
                    gauge.face
                );
            }
            format!(
                "For {}: a right triangle, plumb edge {}, {} wide at the top, sloping edge \
                 {}; the slope is {}.",
                gauge.face,
                shown(course, gauge.rise),
                shown(course, gauge.width()),
                shown(course, gauge.slope()),
                words::batter(gauge.batter)
            )
        })
        .collect();
    let use_of_it = how_to_use(gauges).join(" ");
    format!("At 1:{}. {} {use_of_it}", scale.n(), said.join(" "))
}

const USE: &str = "Lay the sloping edge on the face, narrow end down: the face is right when a \
                   level on the plumb edge reads upright.";
const PLUMB_USE: &str = "Stand the straight edge against the plumb face: the face is right when a \
                         level on the edge reads upright.";
const FINE_POINT: &str = "A point too thin to cut may be left any width, if the same is added all \
                          the way up.";
/// A straight edge with a level, where a face is plumb.
const STRAIGHT_EDGE_MM: f64 = 5.0;

/// What to do with these gauges, in sentences.
fn how_to_use(gauges: &[Gauge]) -> Vec<String> {
    let plumb = |gauge: &Gauge| gauge.batter.n().is_none();
    let mut notes = Vec::new();
    if !gauges.iter().all(plumb) {
        notes.extend([USE.to_owned(), FINE_POINT.to_owned()]);
    }
    if gauges.iter().any(plumb) {
        notes.push(PLUMB_USE.to_owned());
    }
    notes
}

fn cut_out(gauges: &[Gauge], course: &Course, scale: Scale, room: Room) -> Sheet {
    let mut sheet = Sheet::default();
    let mut left = 0.0;
    for gauge in gauges {
        let mut one = Sheet::default();
        put_gauge(&mut one, gauge, course, scale);
        left = sheet.join(one, left) + 12.0;
    }
    let notes = how_to_use(gauges);
    strip(&mut sheet, scale, course.units, &notes, room.width_mm);
    sheet
}

/// The plumb edge stands at the left, the point down; the wall would be at the right.
fn put_gauge(sheet: &mut Sheet, gauge: &Gauge, course: &Course, scale: Scale) {
    let high = scale.mm(gauge.rise);
    let plumb = gauge.batter.n().is_none();
    let wide = if plumb {
        STRAIGHT_EDGE_MM
    } else {
        scale.mm(gauge.width())
    };
    let mut corners = vec![
        Point::new(0.0, 0.0),
        Point::new(0.0, -high),
        Point::new(wide, -high),
    ];
    if plumb {
        corners.push(Point::new(wide, 0.0));
    }
    sheet.polygon(Pen::Outline, corners);
    let x = -6.0;
    for y in [0.0, -high] {
        sheet.line(Pen::Dimension, Point::new(-1.0, y), Point::new(x - 1.2, y));
        tick(sheet, Point::new(x, y));
    }
    sheet.line(Pen::Dimension, Point::new(x, 0.0), Point::new(x, -high));
    let note = |y: f64, length, word: &str| Note {
        y,
        figure: shown(course, length),
        word: word.to_owned(),
    };
    side_notes(
        sheet,
        x,
        Towards::Left,
        &[note(-high / 2.0, gauge.rise, "plumb edge")],
    );
    if plumb {
        return name(sheet, gauge, wide);
    }
    let middle = Point::new(wide * 0.5, -high * 0.5);
    let aside = wide + 3.0;
    sheet.line(Pen::Leader, middle, Point::new(aside, middle.y));
    side_notes(
        sheet,
        aside,
        Towards::Right,
        &[note(middle.y, gauge.slope(), "sloping edge")],
    );
    let y = -high - 8.0;
    for x in [0.0, wide] {
        sheet.line(
            Pen::Dimension,
            Point::new(x, -high - 1.0),
            Point::new(x, y - 1.2),
        );
    }
    Across {
        y,
        from: 0.0,
        to: wide,
        figure: &shown(course, gauge.width()),
        word: "width at the top",
        outside: Outside::Right(wide + 3.0),
    }
    .draw(sheet);
    name(sheet, gauge, wide);
}

/// The batter and whose face it is, under the point.
fn name(sheet: &mut Sheet, gauge: &Gauge, wide: f64) {
    let y = 3.0 + FIGURE_MM;
    let x = wide / 2.0;
    sheet.figure(
        Point::new(x, y),
        &words::batter(gauge.batter),
        Anchor::Middle,
    );
    let below = Point::new(x, y + WORD_MM * 1.3);
    sheet.word(below, &format!("for {}", gauge.face), Anchor::Middle);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture;

    /// By hand: 4 ft is 48 in; 48 / 6 = 8 in; sqrt(48² + 8²) = 48.66 in, 4 ft 5/8 in.
    #[test]
    fn a_four_foot_gauge_at_one_in_six_is_eight_inches_wide() {
        let course = fixture::imperial();
        let gauges = gauges(&fixture::plan(&course), &course);
        assert_eq!(gauges.len(), 1);
        assert_eq!(shown(&course, gauges[0].width()), "8 in");
        assert_eq!(shown(&course, gauges[0].slope()), "4 ft 5/8 in");
    }
}
