//! The batter gauge: the right triangle that holds a face to its slope.

use crate::paper::dimension::{Across, Outside, tick};
use crate::paper::fitting::fitted;
use crate::paper::pen::Pen;
use crate::paper::scale::{Scale, strip};
use crate::paper::scene::{Anchor, Point, Room, Scene};
use crate::paper::sheet::{FIGURE_MM, Heading, Sheet, WORD_MM};
use crate::paper::side_notes::{Note, Towards, side_notes};
use crate::paper::words::{self, shown};
use craft::course::{Course, End};
use craft::frames::{Gauge, usual_plumb_edge};
use craft::plan::Plan;
use craft::wall::{Batter, Side, WallEnd};

/// The gauge for each batter of the wall: one, or more where faces or built ends differ.
pub fn gauge(plan: &Plan, course: &Course, room: Room) -> Scene {
    let gauges = gauges(plan, course);
    let drawn_mm = |scale: Scale| gauges.iter().map(move |one| scale.mm(one.gauge.rise));
    let (scale, sheet, room) = fitted(
        room,
        |scale| drawn_mm(scale).all(|high| LEAST_HEIGHT_MM <= high),
        |scale, room| cut_out(&gauges, plan, course, scale, room),
    );
    let heading = Heading {
        name: "gauge",
        title: if gauges.len() == 1 {
            "Batter gauge"
        } else {
            "Batter gauges"
        }
        .to_owned(),
        description: description(&gauges, plan, course, scale),
    };
    sheet.into_scene(heading, scale, room)
}

/// One gauge and what it is for.
struct For {
    /// `both faces`, `the left face`, `the right face`, `the built ends`.
    what: String,
    gauge: Gauge,
}

/// One for both faces or for each, and one for each batter of a head that no face has. A plumb
/// head needs none drawn.
fn gauges(plan: &Plan, course: &Course) -> Vec<For> {
    let highest = Side::BOTH.map(|side| plan.frames.highest(side));
    let highest = if highest[0] < highest[1] {
        highest[1]
    } else {
        highest[0]
    };
    let rise = usual_plumb_edge(highest, course.units);
    let gauge = |what: &str, batter| For {
        what: what.to_owned(),
        gauge: Gauge::of(batter, rise),
    };
    let [left, right] = Side::BOTH.map(|side| plan.section.batter(side));
    let mut gauges = if left == right {
        vec![gauge("both faces", left)]
    } else {
        vec![gauge("the left face", left), gauge("the right face", right)]
    };
    for (what, batter) in heads(plan) {
        let drawn = gauges.iter_mut().find(|one| one.gauge.batter == batter);
        match drawn {
            Some(one) => one.what = format!("{} and {what}", one.what),
            None if batter.n().is_some() => gauges.push(gauge(what, batter)),
            None => {}
        }
    }
    gauges
}

/// The batters of the built ends: one where they lean alike.
fn heads(plan: &Plan) -> Vec<(&'static str, Batter)> {
    let heads: Vec<&WallEnd> = plan
        .ends
        .iter()
        .filter(|end| end.kind == End::Head)
        .collect();
    match heads.as_slice() {
        [first, last] if first.batter == last.batter => vec![("both built ends", first.batter)],
        [first, last] => vec![
            ("the built end at 0", first.batter),
            ("the far built end", last.batter),
        ],
        [one] => vec![("the built end", one.batter)],
        _ => Vec::new(),
    }
}

fn description(gauges: &[For], plan: &Plan, course: &Course, scale: Scale) -> String {
    let said: Vec<String> = gauges
        .iter()
        .map(|one| {
            let (what, gauge) = (&one.what, one.gauge);
            if gauge.is_plumb() {
                return format!("Plumb, for {what}: a straight edge with a level is enough.");
            }
            format!(
                "For {what}: a right triangle, plumb edge {}, {} wide at the top, sloping edge \
                 {}; the slope is {}.",
                shown(course, gauge.rise),
                shown(course, gauge.width),
                shown(course, gauge.slope),
                words::batter(gauge.batter)
            )
        })
        .collect();
    let use_of_it = how_to_use(gauges, plan).join(" ");
    format!("At 1:{}. {} {use_of_it}", scale.n(), said.join(" "))
}

const USE: &str = "Lay the sloping edge on the face, narrow end down: the face is right when a \
                   level on the plumb edge reads upright.";
const PLUMB_USE: &str = "Stand the straight edge against the plumb face: the face is right when a \
                         level on the edge reads upright.";
const FINE_POINT: &str = "A point too thin to cut may be left any width, if the same is added all \
                          the way up.";
/// A gauge is drawn at least so high: smaller, its words hide it.
const LEAST_HEIGHT_MM: f64 = 14.0;
/// A straight edge with a level, where a face is plumb.
const STRAIGHT_EDGE_MM: f64 = 5.0;
/// Between two gauges, beside and below each other.
const APART_MM: f64 = 12.0;
/// The white paper on both sides of all gauges.
const SIDES_MM: f64 = 4.0;

/// What to do with these gauges, in sentences.
fn how_to_use(gauges: &[For], plan: &Plan) -> Vec<String> {
    let mut notes = Vec::new();
    if !gauges.iter().all(|one| one.gauge.is_plumb()) {
        notes.extend([USE.to_owned(), FINE_POINT.to_owned()]);
    }
    if gauges.iter().any(|one| one.gauge.is_plumb()) {
        notes.push(PLUMB_USE.to_owned());
        return notes;
    }
    let plumb_heads = heads(plan)
        .into_iter()
        .filter(|(_, batter)| batter.n().is_none());
    notes.extend(
        plumb_heads
            .map(|(what, _)| format!("Plumb, {what}: a straight edge with a level is enough.")),
    );
    notes
}

fn cut_out(gauges: &[For], plan: &Plan, course: &Course, scale: Scale, room: Room) -> Sheet {
    let mut sheet = Sheet::default();
    let mut row = Sheet::default();
    let mut left = 0.0;
    for gauge in gauges {
        let mut one = Sheet::default();
        put_gauge(&mut one, gauge, course, scale);
        // One that would stand out of the room begins a row of its own.
        if 0.0 < left && room.width_mm - SIDES_MM < left + one.extent().width() {
            sheet.stack(std::mem::take(&mut row), APART_MM);
            left = 0.0;
        }
        left = row.join(one, left) + APART_MM;
    }
    sheet.stack(row, APART_MM);
    let notes = how_to_use(gauges, plan);
    strip(&mut sheet, scale, course.units, &notes, room.width_mm);
    sheet
}

/// The plumb edge stands at the left, the point down; the wall would be at the right.
fn put_gauge(sheet: &mut Sheet, one: &For, course: &Course, scale: Scale) {
    let gauge = &one.gauge;
    let high = scale.mm(gauge.rise);
    let plumb = gauge.is_plumb();
    let wide = if plumb {
        STRAIGHT_EDGE_MM
    } else {
        scale.mm(gauge.width)
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
        return name(sheet, one, wide);
    }
    let middle = Point::new(wide * 0.5, -high * 0.5);
    let aside = wide + 3.0;
    sheet.line(Pen::Leader, middle, Point::new(aside, middle.y));
    side_notes(
        sheet,
        aside,
        Towards::Right,
        &[note(middle.y, gauge.slope, "sloping edge")],
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
        figure: &shown(course, gauge.width),
        word: "width at the top",
        outside: Outside::Right(wide + 3.0),
    }
    .draw(sheet);
    name(sheet, one, wide);
}

/// The batter and whose face it is, under the point.
fn name(sheet: &mut Sheet, one: &For, wide: f64) {
    let y = 3.0 + FIGURE_MM;
    let x = wide / 2.0;
    sheet.figure(
        Point::new(x, y),
        &words::batter(one.gauge.batter),
        Anchor::Middle,
    );
    let below = Point::new(x, y + WORD_MM * 1.3);
    sheet.word(below, &format!("for {}", one.what), Anchor::Middle);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture;
    use craft::quantity::Read;

    fn all(course: &Course) -> Vec<For> {
        gauges(&fixture::plan(course), course)
    }

    /// By hand: 4 ft is 48 in; 48 / 6 = 8 in; sqrt(48² + 8²) = 48.66 in, nearest sixteenth
    /// 4 ft 11/16 in.
    #[test]
    fn a_four_foot_gauge_at_one_in_six_is_eight_inches_wide() {
        let course = fixture::imperial();
        let gauges = all(&course);
        assert_eq!(gauges.len(), 1);
        assert_eq!(shown(&course, gauges[0].gauge.width), "8 in");
        assert_eq!(shown(&course, gauges[0].gauge.slope), "4 ft 11/16 in");
    }

    #[test]
    fn a_head_has_a_gauge_of_its_own_where_it_leans_like_no_face() {
        let what = |heads: [f64; 2], right: f64| -> Vec<String> {
            let mut course = fixture::weekend();
            course.wall.ends = [End::Head; 2];
            let one_in = |n: f64| Batter::one_in(n).expect("sound");
            course.wall.head_batter = heads.map(one_in);
            course.wall.right = one_in(right);
            all(&course).into_iter().map(|one| one.what).collect()
        };
        assert_eq!(what([6.0, 6.0], 6.0), ["both faces and both built ends"]);
        assert_eq!(what([8.0, 8.0], 6.0), ["both faces", "both built ends"]);
        assert_eq!(
            what([6.0, 9.0], 8.0),
            [
                "the left face and the built end at 0",
                "the right face",
                "the far built end"
            ]
        );
    }

    #[test]
    fn however_many_there_are_each_is_large_enough_to_be_seen() {
        let mut course = fixture::weekend();
        let one_in = |n: f64| Batter::one_in(n).expect("sound");
        course.wall.ends = [End::Head; 2];
        course.wall.head_batter = [one_in(12.0), one_in(9.0)];
        course.wall.right = one_in(10.0);
        let plan = fixture::plan(&course);
        for (width_mm, height_mm) in [(60.0, 60.0), (135.0, 90.0), (180.0, 92.0)] {
            let room = Room {
                width_mm,
                height_mm,
            };
            let scale = gauge(&plan, &course, room).scale.expect("a scale");
            let high = 1000.0 * gauges(&plan, &course)[0].gauge.rise.si() / f64::from(scale);
            assert!(LEAST_HEIGHT_MM <= high, "{high} mm in {room:?}");
        }
    }

    #[test]
    fn a_plumb_head_needs_no_gauge_but_is_spoken_of() {
        let course = fixture::weekend();
        let plan = fixture::plan(&course);
        let gauges = gauges(&plan, &course);
        assert_eq!(gauges.len(), 1);
        let said = how_to_use(&gauges, &plan).join(" ");
        assert!(said.ends_with("Plumb, the built end: a straight edge with a level is enough."));
    }
}
