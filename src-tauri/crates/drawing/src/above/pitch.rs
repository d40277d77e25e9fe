//! The ground along the centre line, straightened out, without any words: trench, faces,
//! strings, diagonals, frames.

use crate::above::ground_edge::{beyond, face, part};
use crate::above::line_words::{front, is_ring_end, outset, same};
use crate::along::stretches::Stretch;
use crate::paper::hatching::broken_edge;
use crate::paper::pen::Pen;
use crate::paper::scale::Scale;
use crate::paper::scene::Point;
use crate::paper::sheet::Sheet;
use crate::paper::strewn::steps;
use craft::course::Course;
use craft::frames::{Bay, FrameRow};
use craft::plan::Plan;
use craft::quantity::Length;
use craft::wall::Side;

/// From the last frame to the broken edge.
const BROKEN_MM: f64 = 3.0;
/// The dot that stands for a bar.
pub(crate) const BAR_MM: f64 = 0.9;
/// Strokes that stand for the bank.
const BANK_MM: f64 = 3.0;
const BANK_STEP_MM: f64 = 1.9;
/// A bow is drawn in so many straight pieces.
const BOW_PIECES: f64 = 12.0;

/// A stretch of ground seen from above at a scale; left of the wall is up.
pub(crate) struct Pitch<'a> {
    pub(crate) plan: &'a Plan,
    pub(crate) course: &'a Course,
    pub(crate) stretch: &'a Stretch<'a>,
    pub(crate) scale: Scale,
    /// How many times larger the drawing is across the wall.
    pub(crate) times: u32,
}

/// A frame in its place.
pub(crate) struct Standing<'a> {
    /// Counted from 1 at station 0.
    pub(crate) number: usize,
    pub(crate) station: Length,
    pub(crate) row: &'a FrameRow,
}

impl<'a> Pitch<'a> {
    /// Paper millimetres from the first frame of the stretch.
    pub(crate) fn along(&self, station: Length) -> f64 {
        self.scale.mm(station - self.stretch.from())
    }

    /// Paper millimetres for a distance from the centre line.
    pub(crate) fn across(&self, offset: Length) -> f64 {
        self.scale.mm(offset) * f64::from(self.times)
    }

    /// Paper millimetres down for a distance to one side.
    pub(crate) fn down(&self, side: Side, offset: Length) -> f64 {
        match side {
            Side::Left => -self.across(offset),
            Side::Right => self.across(offset),
        }
    }

    /// The frames of the stretch; where a ring closes, its first one once more.
    pub(crate) fn frames(&self) -> Vec<Standing<'a>> {
        let rows = &self.plan.frames.rows;
        let within =
            |station: Length| self.stretch.from() <= station && station <= self.stretch.to();
        let mut frames: Vec<Standing<'_>> = rows
            .iter()
            .enumerate()
            .filter(|(_, row)| within(row.station))
            .map(|(at, row)| Standing {
                number: at + 1,
                station: row.station,
                row,
            })
            .collect();
        if let (true, Some(row)) = (is_ring_end(self.plan, self.stretch.to()), rows.first()) {
            frames.push(Standing {
                number: 1,
                station: self.stretch.to(),
                row,
            });
        }
        frames
    }

    pub(crate) fn bays(&self) -> impl Iterator<Item = &'a Bay> {
        let (from, to) = (self.stretch.from(), self.stretch.to());
        let bays = self.plan.frames.bays.iter();
        bays.filter(move |bay| from <= bay.from && bay.to <= to)
    }

    pub(crate) fn end(&self) -> f64 {
        self.along(self.stretch.to())
    }

    pub(crate) fn draw(&self, sheet: &mut Sheet, diagonals: Diagonals) {
        self.bank(sheet);
        self.trench(sheet);
        self.faces(sheet);
        self.strings(sheet);
        self.diagonals(sheet, diagonals);
        self.boards_and_bars(sheet);
    }

    /// An edge on one side, as far as the stretch goes.
    fn edge(&self, side: Side, by: Length) -> Vec<Point> {
        let edge = beyond(&face(&self.plan.wall, side), by);
        part(&edge, self.stretch.from(), self.stretch.to())
            .into_iter()
            .map(|(station, offset)| Point::new(self.along(station), self.down(side, offset)))
            .collect()
    }

    /// The trench ends with the wall, and is open where the wall goes on.
    fn trench(&self, sheet: &mut Sheet) {
        if self.course.wall.footing.is_none() {
            return;
        }
        let [up, down] = Side::BOTH.map(|side| self.edge(side, outset(self.course)));
        for (ends, (_, closed)) in pairs(&up, &down).into_iter().zip(self.closed()) {
            if let (Some((up, down)), true) = (ends, closed) {
                sheet.line(Pen::Trench, up, down);
            }
        }
        sheet.polyline(Pen::Trench, up);
        sheet.polyline(Pen::Trench, down);
    }

    /// The two ends of the stretch, and whether the wall ends there.
    fn closed(&self) -> [(f64, bool); 2] {
        let ends = !self.plan.wall.is_ring();
        [
            (-BROKEN_MM, ends && self.stretch.first),
            (self.end() + BROKEN_MM, ends && self.stretch.last),
        ]
    }

    /// The two faces at the ground, and the ends of the wall.
    fn faces(&self, sheet: &mut Sheet) {
        let [up, down] = Side::BOTH.map(|side| self.edge(side, Length::default()));
        for (ends, (broken, closed)) in pairs(&up, &down).into_iter().zip(self.closed()) {
            match ends {
                Some((up, down)) if closed => sheet.line(Pen::Outline, up, down),
                Some((up, down)) => broken_edge(sheet, broken, (up.y, down.y)),
                None => {}
            }
        }
        sheet.polyline(Pen::Outline, up);
        sheet.polyline(Pen::Outline, down);
    }

    /// Where a straight string runs beside the faces of an arc: off to the side it turns to.
    fn strings(&self, sheet: &mut Sheet) {
        for bay in self.bays() {
            let Some(bend) = bay.bend else {
                continue;
            };
            let ends = [bay.from, bay.to].map(|at| self.along(at));
            for (side, bow) in Side::BOTH.into_iter().zip(bay.bow) {
                let off = self.down(bend.turn, bow);
                let marks = self.offsets(bay, side).map(|it| self.down(side, it));
                let points = steps(BOW_PIECES + 1.0).map(|step| {
                    let share = step / BOW_PIECES;
                    let face = marks[0] + (marks[1] - marks[0]) * share;
                    let x = ends[0] + (ends[1] - ends[0]) * share;
                    Point::new(x, face + off * 4.0 * share * (1.0 - share))
                });
                sheet.polyline(Pen::Dimension, points.collect());
            }
        }
    }

    /// The offsets of the two frames of a bay on one side.
    pub(crate) fn offsets(&self, bay: &Bay, side: Side) -> [Length; 2] {
        let rows = &self.plan.frames.rows;
        [bay.from, bay.to].map(|at| {
            let row = rows.iter().find(|row| row.station == at);
            row.or(rows.first())
                .map_or(Length::default(), |row| row.offset(side))
        })
    }

    fn diagonals(&self, sheet: &mut Sheet, diagonals: Diagonals) {
        let bays: Vec<&Bay> = match diagonals {
            Diagonals::OfTheFirstBay if !self.stretch.first => Vec::new(),
            Diagonals::OfTheFirstBay => self.bays().take(1).collect(),
            Diagonals::OfEveryBay => self.bays().collect(),
        };
        for bay in bays {
            for from in Side::BOTH {
                if from == Side::Right && same(bay.diagonals[0], bay.diagonals[1]) {
                    continue;
                }
                let near = self.down(from, self.offsets(bay, from)[0]);
                let far = self.down(from.other(), self.offsets(bay, from.other())[1]);
                sheet.line(
                    Pen::Diagonal,
                    Point::new(self.along(bay.from), near),
                    Point::new(self.along(bay.to), far),
                );
            }
        }
    }

    /// A frame from above: a board from mark to mark; bars, or legs of timber, outside the
    /// faces.
    fn boards_and_bars(&self, sheet: &mut Sheet) {
        let bars = self.plan.frames.bars.is_some();
        for frame in self.frames() {
            let x = self.along(frame.station);
            let up = self.down(Side::Left, frame.row.left_offset) - BAR_MM;
            let down = self.down(Side::Right, frame.row.right_offset) + BAR_MM;
            sheet.line(Pen::Bar, Point::new(x, up), Point::new(x, down));
            for y in [up, down] {
                if bars {
                    sheet.circle(Pen::Solid, Point::new(x, y), BAR_MM);
                } else {
                    let one = Point::new(x - BAR_MM, y - BAR_MM);
                    sheet.rectangle(Pen::Solid, one, Point::new(x + BAR_MM, y + BAR_MM));
                }
            }
        }
    }

    /// How far down the strokes of the bank begin, if there is a bank.
    pub(crate) fn bank_from(&self) -> Option<(Side, f64)> {
        let side = front(self.plan)?.other();
        let edge = self.edge(side, outset(self.course));
        let farthest = edge.iter().map(|point| point.y.abs()).fold(0.0, f64::max) + 2.4;
        Some((
            side,
            if side == Side::Left {
                -farthest
            } else {
                farthest
            },
        ))
    }

    fn bank(&self, sheet: &mut Sheet) {
        let Some((side, from)) = self.bank_from() else {
            return;
        };
        let to = if side == Side::Left {
            -BANK_MM
        } else {
            BANK_MM
        };
        sheet.line(
            Pen::Ground,
            Point::new(0.0, from),
            Point::new(self.end(), from),
        );
        for stroke in steps(((self.end() - BANK_MM) / BANK_STEP_MM).floor()) {
            let x = BANK_MM + stroke * BANK_STEP_MM;
            sheet.line(
                Pen::Hatch,
                Point::new(x, from),
                Point::new(x - BANK_MM, from + to),
            );
        }
    }
}

/// Which bays' diagonals are drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Diagonals {
    /// One says it for all.
    OfTheFirstBay,
    /// They differ.
    OfEveryBay,
}

/// First and last points of two edges.
fn pairs(up: &[Point], down: &[Point]) -> [Option<(Point, Point)>; 2] {
    [
        up.first().copied().zip(down.first().copied()),
        up.last().copied().zip(down.last().copied()),
    ]
}
