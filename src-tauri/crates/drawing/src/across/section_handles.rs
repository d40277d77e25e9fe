//! What can be taken hold of in the section: the top of the wall, and the foot of each face.

use crate::across::cut::{Cut, outwards};
use crate::paper::handle::{Axis, Handle, Moves, Stop};
use crate::paper::words::{self, shown};
use craft::quantity::{INCH_M, Read, Units, metres};
use craft::wall::{Batter, Side};

/// Heights a wall is taught at, in steps of 5 cm: from 0.3 m to 2.5 m; and in inches, from 1 ft
/// to 8 ft (common practice, no source). What lies outside can be typed.
const CENTIMETRES: (u32, u32, usize) = (30, 250, 5);
const INCHES: (u32, u32, usize) = (12, 96, 1);
/// Batters in steps of a half, doubled: from 1 in 3 to 1 in 20 (common practice, no source).
const HALVES: (u32, u32) = (6, 40);

/// The handles of the section, in the order of a person who reads: the top, then the feet.
pub(crate) fn handles(cut: &Cut<'_>) -> Vec<Handle> {
    let feet = Side::BOTH.map(|side| foot(cut, side));
    std::iter::once(top(cut)).chain(feet).collect()
}

fn top(cut: &Cut<'_>) -> Handle {
    let stop = |height: f64| {
        let words = shown(cut.course, metres(height));
        Stop {
            typed: words.clone(),
            words,
            place_mm: cut.at(0.0, height).y,
        }
    };
    let (unit, (least, most, step)) = match cut.course.units {
        Units::Metric => (0.01, CENTIMETRES),
        Units::Imperial => (INCH_M, INCHES),
    };
    let heights = (least..=most).step_by(step);
    Handle::new(
        (Moves::Height, Axis::Upright),
        (cut.at(0.0, cut.top()), cut.at(0.0, 0.0)),
        cut.scale.mm_per_m(),
        stop(cut.top()),
        heights.map(|units| stop(f64::from(units) * unit)),
    )
}

fn foot(cut: &Cut<'_>, side: Side) -> Handle {
    let ground = cut.ground(side);
    let edge = cut.plan.section.top_width().si() / 2.0;
    let stop = |batter: Batter| Stop {
        typed: typed(batter),
        words: words::batter(batter),
        place_mm: cut
            .at(
                outwards(side) * (edge + (cut.top() - ground) * batter.lean()),
                ground,
            )
            .x,
    };
    let (least, most) = HALVES;
    let battered = (least..=most).filter_map(|n| Batter::one_in(f64::from(n) / 2.0).ok());
    let (toe, level) = cut.toe(side);
    Handle::new(
        (Moves::Face(side), Axis::Across),
        (cut.at(toe, level), cut.at(0.0, 0.0)),
        cut.scale.mm_per_m(),
        stop(cut.plan.section.batter(side)),
        battered.chain([Batter::PLUMB]).map(stop),
    )
}

/// A batter as it stands in a course file: the n of 1 in n, or `plumb`.
fn typed(batter: Batter) -> String {
    batter.n().map_or_else(
        || "plumb".to_owned(),
        |n| ((n * 1000.0).round() / 1000.0).to_string(),
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture;
    use crate::paper::pen::Pen;
    use crate::paper::scale::Scale;
    use crate::paper::scene::{Mark, Point, Room};

    /// Every corner of the wall's edge as it is drawn.
    fn edge(scene: &crate::Scene) -> Vec<Point> {
        let corners = scene.marks.iter().filter_map(|mark| match mark {
            Mark::Polyline { pen, points } | Mark::Polygon { pen, points }
                if *pen == Pen::Outline =>
            {
                Some(points.clone())
            }
            Mark::Line { pen, from, to } if *pen == Pen::Outline => Some(vec![*from, *to]),
            _ => None,
        });
        corners.flatten().collect()
    }

    /// The drawn edge is asked, not the sums behind it: the foot is a corner of it, and the top
    /// lies as high as its highest corner.
    #[test]
    fn handles_lie_on_the_drawn_edge() {
        let room = Room {
            width_mm: 130.0,
            height_mm: 130.0,
        };
        for (name, course) in fixture::courses() {
            let plan = fixture::plan(&course);
            let scene = crate::section(&plan, &course, room);
            let edge = edge(&scene);
            let [top, left, right] = scene.handles.as_slice() else {
                panic!("{name}: three handles");
            };
            let highest = edge.iter().map(|it| it.y).fold(f64::INFINITY, f64::min);
            assert!((top.at.y - highest).abs() < 1e-6, "{name}: {}", top.at.y);
            for foot in [left, right] {
                let near = |it: &Point| (it.x - foot.at.x).hypot(it.y - foot.at.y) < 1e-6;
                assert!(edge.iter().any(near), "{name}: {:?}", foot.at);
            }
        }
    }

    /// A stop lies where the drawing of a course with that value, at the same scale, has its
    /// handle.
    #[test]
    fn a_stop_is_where_its_value_is_drawn() {
        for units in [Units::Metric, Units::Imperial] {
            let mut course = fixture::weekend();
            course.units = units;
            course.wall.through_rows = Vec::new();
            let here = fixture::plan(&course);
            let before = handles(&Cut::new(&here, &course, Scale::SMALLEST));
            for n in [3.0, 4.5, 12.0] {
                let mut other = course.clone();
                other.wall.left = Batter::one_in(n).expect("sound");
                let plan = fixture::plan(&other);
                let after = &handles(&Cut::new(&plan, &other, Scale::SMALLEST))[1];
                let stop = before[1].stops.iter().find(|it| it.typed == n.to_string());
                let stop = stop.expect("a stop");
                assert!((stop.place_mm - after.at.x).abs() < 1e-9, "1 in {n}");
                assert_eq!(after.stops[after.now].typed, n.to_string());
            }
            let unit = if units == Units::Metric { 0.05 } else { INCH_M };
            let mut other = course.clone();
            other.wall.height = metres(20.0 * unit);
            let plan = fixture::plan(&other);
            let after = &handles(&Cut::new(&plan, &other, Scale::SMALLEST))[0];
            let words = shown(&other, other.wall.height);
            let stop = before[0].stops.iter().find(|it| it.words == words);
            let stop = stop.expect("a stop");
            assert!((stop.place_mm - after.at.y).abs() < 1e-9, "{words}");
        }
    }

    #[test]
    fn stops_go_from_left_to_right_and_upwards() {
        let course = fixture::weekend();
        let plan = fixture::plan(&course);
        let [top, left, right] = handles(&Cut::new(&plan, &course, Scale::SMALLEST))
            .try_into()
            .expect("three");
        let ends = |it: &Handle| {
            let typed = |at: Option<&Stop>| at.map(|it| it.typed.clone()).unwrap_or_default();
            (typed(it.stops.first()), typed(it.stops.last()))
        };
        assert_eq!(ends(&top), ("0.30 m".to_owned(), "2.50 m".to_owned()));
        assert_eq!(ends(&left), ("3".to_owned(), "plumb".to_owned()));
        assert_eq!(ends(&right), ("plumb".to_owned(), "3".to_owned()));
    }
}
