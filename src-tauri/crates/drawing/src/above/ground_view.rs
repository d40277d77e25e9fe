//! The ground plan at one scale: from places on the ground to places on paper, without words.

use crate::above::ground_edge::{Edge, beyond, centre, corners, face, offset_at};
use crate::above::pitch::BAR_MM;
use crate::paper::free_place::onward;
use crate::paper::pen::Pen;
use crate::paper::scale::Scale;
use crate::paper::scene::Point;
use crate::paper::sheet::Sheet;
use crate::paper::strewn::steps;
use craft::course::{Course, End, WallKind};
use craft::plan::Plan;
use craft::quantity::Length;
use craft::wall::{Bend, Place, Side, Wall};

/// An arc is drawn in straight pieces that turn no more than this: at 0.2 m on paper they
/// are 0.03 mm off.
const TURN_RAD: f64 = 0.035;
/// Standing wall, or wall to be carried on, is drawn so far beyond the end.
pub(crate) const BEYOND_MM: f64 = 7.0;
const HATCH_STEP_MM: f64 = 1.5;
/// Strokes that stand for the bank, and how far apart they are.
pub(crate) const BANK_MM: f64 = 4.0;
const BANK_STEP_MM: f64 = 2.2;
/// Rings that stand for drainage stone.
const STONE_MM: f64 = 0.45;
const STONE_STEP_MM: f64 = 1.7;

/// A wall seen from above at a scale, turned on the paper.
pub(crate) struct GroundView<'a> {
    pub(crate) plan: &'a Plan,
    pub(crate) course: &'a Course,
    pub(crate) scale: Scale,
    /// How far the first direction is turned anticlockwise from the paper's right, in radians.
    pub(crate) turn: f64,
}

impl GroundView<'_> {
    /// The point on paper for a place on the ground; station 0 is at (0, 0).
    pub(crate) fn at(&self, x_m: f64, y_m: f64) -> Point {
        let (sin, cos) = self.turn.sin_cos();
        let k = self.scale.mm_per_m();
        Point::new((x_m * cos - y_m * sin) * k, -(x_m * sin + y_m * cos) * k)
    }

    pub(crate) fn point(&self, place: Place) -> Point {
        self.at(place.x_m, place.y_m)
    }

    /// Along a heading, on paper.
    pub(crate) fn along(&self, heading: f64) -> Point {
        let (sin, cos) = (heading + self.turn).sin_cos();
        Point::new(cos, -sin)
    }

    /// Straight out to one side of a heading, on paper.
    pub(crate) fn out(&self, heading: f64, side: Side) -> Point {
        let along = self.along(heading);
        match side {
            Side::Left => Point::new(along.y, -along.x),
            Side::Right => Point::new(-along.y, along.x),
        }
    }

    pub(crate) fn wall(&self) -> &Wall {
        &self.plan.wall
    }

    /// An edge, or the centre line, as straight pieces on paper; that of a ring comes back.
    pub(crate) fn run(&self, side: Side, edge: &Edge) -> Vec<Point> {
        let corners = corners(&self.wall().line, side, edge, TURN_RAD);
        let mut points: Vec<Point> = corners.into_iter().map(|place| self.point(place)).collect();
        if self.wall().is_ring() {
            points.extend(points.first().copied());
        }
        points
    }

    pub(crate) fn draw(&self, sheet: &mut Sheet) {
        self.bank(sheet);
        self.trench(sheet);
        self.centre_line(sheet);
        self.ends(sheet);
        for side in Side::BOTH {
            let edge = self.run(side, &face(self.wall(), side));
            sheet.polyline(Pen::Outline, edge);
        }
        self.frames(sheet);
    }

    pub(crate) fn trench(&self, sheet: &mut Sheet) {
        let Some(footing) = self.course.wall.footing else {
            return;
        };
        let [left, right] = Side::BOTH
            .map(|side| self.run(side, &beyond(&face(self.wall(), side), footing.outset)));
        if !self.wall().is_ring() {
            for ends in [(left.first(), right.first()), (left.last(), right.last())] {
                if let (Some(left), Some(right)) = ends {
                    sheet.line(Pen::Trench, *left, *right);
                }
            }
        }
        sheet.polyline(Pen::Trench, left);
        sheet.polyline(Pen::Trench, right);
    }

    fn centre_line(&self, sheet: &mut Sheet) {
        let edge = centre(&self.wall().line);
        sheet.polyline(Pen::Centre, self.run(Side::Left, &edge));
    }

    /// The frames from above: the board across, the bars, or the legs, outside the faces.
    fn frames(&self, sheet: &mut Sheet) {
        let bars = self.plan.frames.bars.is_some();
        for row in &self.plan.frames.rows {
            let place = self.wall().line.place(row.station);
            let marks = Side::BOTH.map(|side| {
                let face = self.point(place.beside(side, row.offset(side)));
                onward(face, self.out(place.heading, side), BAR_MM)
            });
            sheet.line(Pen::Bar, marks[0], marks[1]);
            for mark in marks {
                if bars {
                    sheet.circle(Pen::Solid, mark, BAR_MM);
                } else {
                    sheet.polygon(Pen::Solid, self.leg(mark, place.heading));
                }
            }
        }
    }

    fn leg(&self, middle: Point, heading: f64) -> Vec<Point> {
        let (along, across) = (self.along(heading), self.out(heading, Side::Left));
        [(1.0, 1.0), (1.0, -1.0), (-1.0, -1.0), (-1.0, 1.0)]
            .map(|(a, b)| onward(onward(middle, along, a * BAR_MM), across, b * BAR_MM))
            .to_vec()
    }

    pub(crate) fn ends(&self, sheet: &mut Sheet) {
        for (end, out) in self.plan.ends.iter().zip([-1.0, 1.0]) {
            let place = self.wall().line.place(end.station);
            let corners = Side::BOTH
                .map(|side| self.point(place.beside(side, self.wall().offset(side, end.station))));
            let along = self.along(place.heading);
            let out = Point::new(along.x * out, along.y * out);
            match end.kind {
                End::Head => sheet.line(Pen::Outline, corners[0], corners[1]),
                End::Joined => standing_wall(sheet, corners, out),
                End::Raked => {
                    sheet.line(Pen::Later, corners[0], corners[1]);
                    for corner in corners {
                        sheet.line(Pen::Later, corner, onward(corner, out, BEYOND_MM));
                    }
                }
            }
        }
    }

    /// Drainage stone behind the wall and, beyond it, strokes for the bank.
    pub(crate) fn bank(&self, sheet: &mut Sheet) {
        let (WallKind::Retaining(bank), Some(retaining)) =
            (&self.course.wall.kind, &self.plan.retaining)
        else {
            return;
        };
        let back = face(self.wall(), bank.side);
        for (at, station) in self.every(STONE_STEP_MM).enumerate() {
            let share = [0.3, 0.7][at % 2];
            if let Some(place) = self.behind(&back, bank.side, station, retaining.drainage * share)
            {
                sheet.circle(Pen::Stone, self.point(place), STONE_MM);
            }
        }
        let edge = self.run(bank.side, &self.held(&back, bank.side, retaining.drainage));
        sheet.polyline(Pen::Ground, edge);
        for station in self.every(BANK_STEP_MM) {
            let Some(place) = self.behind(&back, bank.side, station, retaining.drainage) else {
                continue;
            };
            let from = self.point(place);
            let out = self.out(place.heading, bank.side);
            let to = onward(
                onward(from, out, BANK_MM),
                self.along(place.heading),
                BANK_MM * 0.6,
            );
            sheet.line(Pen::Hatch, from, to);
        }
    }

    /// So far behind a face; in a tight arc no farther than its centre.
    fn held(&self, back: &Edge, side: Side, by: Length) -> Edge {
        let out = beyond(back, by);
        let held =
            |(station, offset): (Length, Length)| (station, self.least(side, station, offset));
        out.into_iter().map(held).collect()
    }

    fn least(&self, side: Side, station: Length, offset: Length) -> Length {
        match self.bend_at(station) {
            Some(bend) if bend.turn == side && bend.radius < offset => bend.radius,
            _ => offset,
        }
    }

    /// How the line bends at a station.
    pub(crate) fn bend_at(&self, station: Length) -> Option<Bend> {
        let here = |span: &(Length, Length, Option<Bend>)| span.0 <= station && station <= span.1;
        self.wall().line.spans().find(here).and_then(|span| span.2)
    }

    fn behind(&self, back: &Edge, side: Side, station: Length, by: Length) -> Option<Place> {
        let offset = offset_at(back, station)? + by;
        let offset = self.least(side, station, offset);
        Some(self.wall().line.place(station).beside(side, offset))
    }

    /// Stations so far apart on paper, all along the wall.
    fn every(&self, step_mm: f64) -> impl Iterator<Item = Length> + use<> {
        let length = self.wall().length();
        let count = (self.scale.mm(length) / step_mm).floor().max(1.0);
        steps(count).map(move |step| length * ((step + 0.5) / count))
    }
}

/// The beginning of the standing wall that is built up against, filled with slanting strokes.
fn standing_wall(sheet: &mut Sheet, [left, right]: [Point; 2], out: Point) {
    let wide = (right.x - left.x).hypot(right.y - left.y);
    let across = Point::new((right.x - left.x) / wide, (right.y - left.y) / wide);
    let at = |u: f64, v: f64| onward(onward(left, out, u), across, v);
    sheet.line(Pen::Outline, left, right);
    for v in [0.0, wide] {
        sheet.line(Pen::Ground, at(0.0, v), at(BEYOND_MM, v));
    }
    let strokes = ((BEYOND_MM + wide) / HATCH_STEP_MM).floor();
    for stroke in steps(strokes) {
        // The line u + v = c, from where it enters the wall to where it leaves.
        let c = (stroke + 1.0) * HATCH_STEP_MM;
        let (from, to) = ((c - wide).max(0.0), c.min(BEYOND_MM));
        if from < to {
            sheet.line(Pen::Hatch, at(from, c - from), at(to, c - to));
        }
    }
}
