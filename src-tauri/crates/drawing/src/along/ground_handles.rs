//! What can be taken hold of in the elevation: the ground at each station that was surveyed.

use crate::along::face::Face;
use crate::paper::handle::{Axis, Handle, Moves, Stop};
use crate::paper::words::shown;
use craft::quantity::{INCH_M, Read, Units, metres};

/// So many steps up and down from a whole quarter of a metre, or ten inches, near the ground: half
/// a metre, or 20 inches. While it is moved a little the stops stay the same.
const STEPS: (i32, i32) = (50, 40);

/// The handles of the ground within a stretch. A station where two stretches meet belongs to the
/// first of them; one beyond the end of the wall has none.
pub(crate) fn handles(face: &Face<'_>) -> Vec<Handle> {
    let (from, to) = (face.from(), face.to());
    let begins = |station: f64| {
        if face.stretch.first {
            from - 1e-9 <= station
        } else {
            from + 1e-9 < station
        }
    };
    let surveyed = face.course.wall.ground.iter().enumerate();
    surveyed
        .map(|(at, survey)| (at, survey.station.si()))
        .filter(|(_, station)| begins(*station) && *station <= to + 1e-9)
        .map(|(at, station)| handle(face, at, station))
        .collect()
}

fn handle(face: &Face<'_>, at: usize, station: f64) -> Handle {
    let level = face.lie.ground(station);
    let stop = |level: f64| {
        let words = shown(face.course, metres(level));
        Stop {
            typed: words.clone(),
            words,
            place_mm: face.y(level),
        }
    };
    let (step, reach) = match face.course.units {
        Units::Metric => (0.01, STEPS.0),
        Units::Imperial => (INCH_M / 2.0, STEPS.1),
    };
    let quarter = f64::from(reach / 2);
    let middle = (level / step / quarter).round() * quarter;
    let levels = (-reach..=reach).map(|steps| (middle + f64::from(steps)) * step);
    Handle::new(
        (Moves::Ground(at, face.lie.side), Axis::Upright),
        (face.at((station, level)), face.at((face.from(), 0.0))),
        face.scale.mm_per_m() * f64::from(face.times),
        stop(level),
        levels.map(stop),
    )
}

#[cfg(test)]
mod tests {
    use crate::fixture;
    use crate::paper::pen::Pen;
    use crate::paper::scene::{Mark, Point, Room};
    use craft::course::Course;
    use craft::quantity::{Length, Units, metres};
    use craft::wall::Survey;

    const ROOM: Room = Room {
        width_mm: 135.0,
        height_mm: 78.0,
    };

    fn surveyed(units: Units) -> Course {
        let mut course = fixture::weekend();
        course.units = units;
        course.wall.length = Some(metres(8.0));
        let level = |station: f64, level: Length| Survey {
            station: metres(station),
            level,
            left: level,
            right: level,
        };
        course.wall.ground = vec![
            level(0.0, metres(0.0)),
            level(3.0, metres(-0.12)),
            level(8.0, metres(0.06)),
            level(40.0, metres(1.0)),
        ];
        course
    }

    fn ground(scene: &crate::Scene) -> Vec<(Point, Point)> {
        let mut lines = Vec::new();
        for mark in &scene.marks {
            match mark {
                Mark::Polyline { pen, points } if *pen == Pen::Ground => {
                    lines.extend(points.windows(2).map(|pair| (pair[0], pair[1])));
                }
                Mark::Line { pen, from, to } if *pen == Pen::Ground => lines.push((*from, *to)),
                _ => {}
            }
        }
        lines
    }

    /// The drawn line of the ground is asked: each handle is on it.
    #[test]
    fn each_station_on_the_wall_has_a_handle_on_the_drawn_ground() {
        for units in [Units::Metric, Units::Imperial] {
            let course = surveyed(units);
            let plan = fixture::plan(&course);
            let scene = crate::elevation(&plan, &course, ROOM);
            assert_eq!(scene.handles.len(), 3, "the fourth lies beyond the wall");
            let lines = ground(&scene);
            assert!(!lines.is_empty());
            for handle in &scene.handles {
                let at = handle.at;
                let on = |(from, to): &(Point, Point)| {
                    let long = (to.x - from.x).hypot(to.y - from.y);
                    let before = (at.x - from.x).hypot(at.y - from.y);
                    let after = (to.x - at.x).hypot(to.y - at.y);
                    (before + after - long).abs() < 1e-6
                };
                assert!(lines.iter().any(on), "{at:?} of {lines:?}");
                let now = &handle.stops[handle.now];
                assert!((now.place_mm - at.y).abs() < 1e-9);
            }
        }
    }

    #[test]
    fn ground_that_was_not_surveyed_has_no_handles() {
        let course = fixture::weekend();
        let plan = fixture::plan(&course);
        assert!(course.wall.ground.is_empty());
        assert!(crate::elevation(&plan, &course, ROOM).handles.is_empty());
    }
}
