//! Pegs from one base line: where the line's joints, its ends and its arcs' centres lie, along
//! the first direction and beside it.

use crate::above::ground_edge::{beyond, corners, face};
use crate::paper::pen::Pen;
use crate::paper::scene::{Anchor, Point};
use crate::paper::sheet::{Sheet, WORD_MM, line_of};
use crate::paper::text_box::width;
use crate::paper::words::shown;
use craft::course::Course;
use craft::plan::Plan;
use craft::quantity::{Length, Read, metres};
use craft::wall::{Place, Side};

/// Less than this is nothing to a tape.
const NOTHING_M: f64 = 0.0005;
/// So finely an arc is followed when the ground it takes is measured.
const FINE_RAD: f64 = 0.003;

/// One peg.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Peg {
    /// `frame 3` or `centre A`.
    pub(crate) name: String,
    /// Along the wall; a centre has none.
    pub(crate) station: Option<Length>,
    pub(crate) place: Place,
}

/// The letter of an arc's centre, the first being A.
pub(crate) fn letter(arc: usize) -> char {
    char::from(b'A' + u8::try_from(arc % 26).unwrap_or_default())
}

/// The centres of the arcs in order.
pub(crate) fn centres(plan: &Plan) -> Vec<Place> {
    let line = &plan.wall.line;
    line.spans()
        .filter_map(|(from, _, bend)| {
            bend.map(|bend| line.place(from).beside(bend.turn, bend.radius))
        })
        .collect()
}

/// Start, then stretch by stretch its centre, if it is an arc, and its end; a ring's last end
/// is its start.
pub(crate) fn pegs(plan: &Plan) -> Vec<Peg> {
    let line = &plan.wall.line;
    let mut pegs = vec![at_frame(plan, metres(0.0))];
    let mut arcs = 0;
    let all_centres = centres(plan);
    for (_, to, bend) in line.spans() {
        if bend.is_some() {
            pegs.extend(all_centres.get(arcs).map(|place| Peg {
                name: format!("centre {}", letter(arcs)),
                station: None,
                place: *place,
            }));
            arcs += 1;
        }
        let round = plan.wall.is_ring() && to == plan.wall.length();
        if !round {
            pegs.push(at_frame(plan, to));
        }
    }
    pegs
}

/// Every joint and both ends have a frame.
fn at_frame(plan: &Plan, station: Length) -> Peg {
    let near = |other: Length| (other - station).si().abs() < NOTHING_M;
    let rows = &plan.frames.rows;
    let frame = rows.iter().position(|row| near(row.station));
    Peg {
        name: frame.map_or_else(|| "joint".to_owned(), |at| format!("frame {}", at + 1)),
        station: Some(station),
        place: plan.wall.line.place(station),
    }
}

impl Peg {
    /// `4.00 m`, or `0.50 m back` behind station 0.
    fn along(&self, course: &Course) -> String {
        with_side(course, self.place.x_m, ["", " back"])
    }

    /// `0.73 m left`.
    fn beside(&self, course: &Course) -> String {
        with_side(course, self.place.y_m, [" left", " right"])
    }

    /// `frame 3 at 4.00 m along and 0.73 m left`.
    pub(crate) fn in_words(&self, course: &Course) -> String {
        let along = self.along(course);
        let beside = if self.place.y_m.abs() < NOTHING_M {
            "on the line".to_owned()
        } else {
            self.beside(course)
        };
        format!("{} at {along} along and {beside}", self.name)
    }
}

fn with_side(course: &Course, value_m: f64, words: [&str; 2]) -> String {
    let figure = shown(course, metres(value_m.abs()));
    if value_m.abs() < NOTHING_M {
        figure
    } else {
        let word = words[usize::from(value_m < 0.0)];
        format!("{figure}{word}")
    }
}

/// The ground taken along the first direction and across it, with the trench if there is one.
pub(crate) fn ground_taken(plan: &Plan, course: &Course) -> [Length; 2] {
    let outset = course
        .wall
        .footing
        .map_or(metres(0.0), |footing| footing.outset);
    let places = Side::BOTH.into_iter().flat_map(|side| {
        let edge = beyond(&face(&plan.wall, side), outset);
        corners(&plan.wall.line, side, &edge, FINE_RAD)
    });
    let (mut least, mut most) = ([f64::INFINITY; 2], [f64::NEG_INFINITY; 2]);
    for place in places {
        for (at, value) in [place.x_m, place.y_m].into_iter().enumerate() {
            least[at] = value.min(least[at]);
            most[at] = value.max(most[at]);
        }
    }
    [0, 1].map(|at| metres(most[at] - least[at]))
}

const ROW_MM: f64 = 6.6;
const HEAD_MM: f64 = 5.6;
const FIGURE_MM: f64 = 4.2;
const BETWEEN_MM: f64 = 4.5;

/// The pegs as a list on a sheet of its own: name, station, along, beside.
pub(crate) fn list(plan: &Plan, course: &Course) -> Sheet {
    let rows: Vec<[String; 4]> = pegs(plan)
        .iter()
        .map(|peg| {
            let station = peg.station.map_or_else(String::new, |at| shown(course, at));
            [
                peg.name.clone(),
                station,
                peg.along(course),
                peg.beside(course),
            ]
        })
        .collect();
    let mut sheet = Sheet::default();
    let mut x = 0.0;
    let heads = ["peg", "station", "along the base line", "and beside it"];
    for (column, head) in heads.into_iter().enumerate() {
        let bold = 2 <= column;
        let size = if bold { FIGURE_MM } else { WORD_MM };
        let cells = || rows.iter().map(|row| row[column].as_str());
        let wide = cells()
            .map(|cell| width(cell, size, bold))
            .fold(width(head, WORD_MM, false), f64::max);
        sheet.word(Point::new(x, 0.0), head, Anchor::Start);
        for (at, cell) in cells().enumerate() {
            let y = HEAD_MM + 0.6 + ROW_MM * at as f64;
            let mut text = line_of(Point::new(x, y), cell, size, Anchor::Start);
            text.bold = bold;
            sheet.text(text);
        }
        x += wide + BETWEEN_MM;
    }
    let right = x - BETWEEN_MM;
    for y in (0..=rows.len()).map(|row| 1.9 + ROW_MM * row as f64) {
        sheet.line(Pen::Dimension, Point::new(0.0, y), Point::new(right, y));
    }
    sheet
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::{self, lie};
    use std::f64::consts::PI;

    /// By hand: 4 m straight, then a quarter turn to the left of radius 2 (3.1416 m), then 3 m:
    /// the arc's centre 4 m along and 2 m left, its end at (6, 2), the far end at (6, 5).
    #[test]
    fn pegs_of_a_quarter_turn() {
        let mut course = fixture::weekend();
        course.wall.line = vec![
            lie::straight(4.0),
            lie::arc(PI, 2.0, Side::Left),
            lie::straight(3.0),
        ];
        course.wall.length = Some(metres(7.0 + PI));
        let plan = fixture::plan(&course);
        let said: Vec<String> = pegs(&plan)
            .iter()
            .map(|peg| peg.in_words(&course))
            .collect();
        assert_eq!(
            said,
            [
                "frame 1 at 0.00 m along and on the line",
                "frame 3 at 4.00 m along and on the line",
                "centre A at 4.00 m along and 2.00 m left",
                "frame 6 at 6.00 m along and 2.00 m left",
                "frame 7 at 6.00 m along and 5.00 m left",
            ]
        );
        // The trench reaches 0.41 / 2 + 1.07 / 6 + 0.05 = 0.4333 m to either side: from
        // 0 to 6 + 0.4333 along, from -0.4333 to 5 across.
        let [along, across] = ground_taken(&plan, &course);
        assert!((along.si() - 6.4333).abs() < 1e-4, "{along:?}");
        assert!((across.si() - 5.4333).abs() < 1e-4, "{across:?}");
    }

    #[test]
    fn a_ring_has_its_start_and_its_centre() {
        let courses = lie::courses();
        let (_, ring) = courses
            .iter()
            .find(|(name, _)| *name == "a ring")
            .expect("there");
        let pegs = pegs(&fixture::plan(ring));
        let names: Vec<&str> = pegs.iter().map(|peg| peg.name.as_str()).collect();
        assert_eq!(names, ["frame 1", "centre A"]);
        assert!((pegs[1].place.y_m + 2.5).abs() < 1e-12);
    }
}
