//! The wall cut across, without any words: trench, stones, cope, frame and ground.

use crate::hatching::hatched_ground;
use crate::pen::Pen;
use crate::scale::Scale;
use crate::scene::Point;
use crate::sheet::Sheet;
use crate::stones::{Bed, Corner, beds, chance, rough, steps};
use craft::course::Course;
use craft::plan::Plan;
use craft::quantity::Read;
use craft::wall::Side;

/// Between stones, in metres of wall.
const JOINT_M: f64 = 0.008;
/// The longest face stones reach into the wall (common practice, no source).
const REACH_M: f64 = 0.45;
/// Thickness of a board and how far it stands out past the bars (common practice, no source).
const BOARD_M: f64 = 0.035;
const BOARD_PAST_M: f64 = 0.08;
/// A bar is never drawn thinner than this.
const BAR_MM: f64 = 0.7;

/// The cross-section at a scale, with the middle of the wall at the ground as its zero.
pub(crate) struct Cut<'a> {
    pub(crate) plan: &'a Plan,
    pub(crate) course: &'a Course,
    pub(crate) scale: Scale,
}

impl Cut<'_> {
    /// A place in the section, in metres to the right of the centre line and above ground.
    pub(crate) fn at(&self, x: f64, y: f64) -> Point {
        let mm = self.scale.mm_per_m();
        Point::new(x * mm, -y * mm)
    }

    /// Ground to the underside of the cope.
    pub(crate) fn top(&self) -> f64 {
        self.plan.section.height().si()
    }

    pub(crate) fn cope(&self) -> f64 {
        self.course.wall.cope_height.si()
    }

    /// Where the face stands at a height, below the ground as if it went on.
    pub(crate) fn face(&self, side: Side, y: f64) -> f64 {
        let section = &self.plan.section;
        let out = section.top_width().si() / 2.0 + (self.top() - y) * section.batter(side).lean();
        match side {
            Side::Left => -out,
            Side::Right => out,
        }
    }

    /// Where the trench ends on a side, and how deep it is.
    pub(crate) fn trench(&self, side: Side) -> Option<(f64, f64)> {
        let footing = self.course.wall.footing?;
        let edge = self.face(side, 0.0) + outwards(side) * footing.outset.si();
        Some((edge, footing.depth.si()))
    }

    /// How far a bar stands in the ground and above the underside of the board, plumb.
    pub(crate) fn bar_ends(&self, side: Side) -> (f64, f64) {
        let slope = self.plan.section.batter(side).slope_factor();
        let frames = &self.course.frames;
        (
            frames.embedment.si() / slope,
            self.top() + frames.projection.si() / slope,
        )
    }

    /// From the inner to the outer face of a bar, level.
    pub(crate) fn bar_width(&self, side: Side) -> f64 {
        let least = BAR_MM / self.scale.mm_per_m();
        let slope = self.plan.section.batter(side).slope_factor();
        self.plan
            .frames
            .bars
            .as_ref()
            .map_or(0.05, |bars| bars.diameter.si())
            .max(least)
            * slope
    }

    /// The end of the board on a side.
    pub(crate) fn board_end(&self, side: Side) -> f64 {
        self.face(side, self.top()) + outwards(side) * (self.bar_width(side) + BOARD_PAST_M)
    }

    /// The upper edge of the board.
    pub(crate) fn board_top(&self) -> f64 {
        self.top() + BOARD_M
    }

    /// Everything, from the back to the front.
    pub(crate) fn draw(&self, sheet: &mut Sheet) {
        self.bars(sheet);
        self.footing(sheet);
        self.body(sheet);
        self.cope_stone(sheet);
        self.board(sheet);
        self.strings(sheet);
    }

    fn shape(&self, sheet: &mut Sheet, pen: Pen, corners: &[Corner]) {
        let points = corners.iter().map(|&(x, y)| self.at(x, y)).collect();
        sheet.polygon(pen, points);
    }

    /// Bars stand along the faces; below the ground they are hidden.
    fn bars(&self, sheet: &mut Sheet) {
        for side in [Side::Left, Side::Right] {
            let (deep, high) = self.bar_ends(side);
            let thick = outwards(side) * self.bar_width(side);
            let piece = |from: f64, to: f64| {
                let (low, up) = (self.face(side, from), self.face(side, to));
                [(low, from), (up, to), (up + thick, to), (low + thick, from)]
            };
            self.shape(sheet, Pen::HiddenBar, &piece(-deep, 0.0));
            self.shape(sheet, Pen::Bar, &piece(0.0, high));
        }
    }

    fn footing(&self, sheet: &mut Sheet) {
        let (Some((left, deep)), Some((right, _))) =
            (self.trench(Side::Left), self.trench(Side::Right))
        else {
            return;
        };
        let courses = (deep / 0.25).round().clamp(1.0, 6.0);
        for at in steps(courses) {
            let (to, from) = (-deep * at / courses, -deep * (at + 1.0) / courses);
            let key = 9000 + at as u64;
            self.layer(sheet, (from, to), [(left, left), (right, right)], key);
        }
        self.shape(
            sheet,
            Pen::Outline,
            &[(left, 0.0), (left, -deep), (right, -deep), (right, 0.0)],
        );
    }

    fn body(&self, sheet: &mut Sheet) {
        let faces = |y: f64| (self.face(Side::Left, y), self.face(Side::Right, y));
        let beds = beds(self.plan, self.course);
        for (at, bed) in beds
            .iter()
            .enumerate()
            .filter(|(_, bed)| bed.throughs.is_none())
        {
            let (low, high) = (faces(bed.from), faces(bed.to));
            let sides = [(low.0, high.0), (low.1, high.1)];
            self.layer(sheet, (bed.from, bed.to), sides, at as u64);
        }
        let (low, high) = (faces(0.0), faces(self.top()));
        self.shape(
            sheet,
            Pen::Outline,
            &[
                (low.0, 0.0),
                (high.0, self.top()),
                (high.1, self.top()),
                (low.1, 0.0),
            ],
        );
        for bed in beds.iter().filter(|bed| bed.throughs.is_some()) {
            self.through(sheet, bed);
        }
    }

    /// A through is as long as the wall is wide at its bed, and what stands out.
    fn through(&self, sheet: &mut Sheet, bed: &Bed) {
        let out = self.course.wall.through.projection.si();
        let left = self.face(Side::Left, bed.from) - out;
        let right = self.face(Side::Right, bed.from) + out;
        self.shape(
            sheet,
            Pen::Through,
            &[
                (left, bed.from),
                (left, bed.to),
                (right, bed.to),
                (right, bed.from),
            ],
        );
    }

    /// Two face stones and hearting between them; sides as (at the bed, at the top).
    fn layer(&self, sheet: &mut Sheet, (from, to): (f64, f64), sides: [(f64, f64); 2], key: u64) {
        let [(left, left_up), (right, right_up)] = sides;
        let wide = (right - left).min(right_up - left_up);
        let reach = |salt: u64| ((0.33 + 0.11 * chance(key * 7 + salt)) * wide).min(REACH_M);
        let (inner_left, inner_right) = (left + reach(1), right - reach(2));
        let quad = |a: f64, b: f64, c: f64, d: f64| [(a, from), (b, to), (c, to), (d, from)];
        for (place, salt) in [
            (quad(left, left_up, inner_left, inner_left), 3),
            (quad(right, right_up, inner_right, inner_right), 4),
        ] {
            self.shape(sheet, Pen::Stone, &rough(place, JOINT_M, key * 11 + salt));
        }
        self.hearting(sheet, (inner_left, inner_right), (from, to), key);
    }

    /// Small stones in the middle, in no order.
    fn hearting(
        &self,
        sheet: &mut Sheet,
        (left, right): (f64, f64),
        (from, to): (f64, f64),
        key: u64,
    ) {
        let size = (2.4 / self.scale.mm_per_m()).max(0.075);
        let (wide, high) = (right - left, to - from);
        if wide < size / 2.0 {
            return;
        }
        let (columns, rows) = (
            (wide / size).round().max(1.0),
            (high / size).round().max(1.0),
        );
        for row in steps(rows) {
            for column in steps(columns) {
                let salt = key * 100_000 + (row * 1000.0 + column) as u64;
                // A corner is shared by four stones, so they all move it alike.
                let corner = |c: f64, r: f64| {
                    let knot = key * 100_000 + (r * 1000.0 + c) as u64;
                    let moved = |edge: bool, salt: u64| {
                        if edge {
                            0.0
                        } else {
                            0.5 * (chance(knot * 2 + salt) - 0.5)
                        }
                    };
                    let across = moved(c <= 0.0 || columns <= c, 0);
                    let up = moved(r <= 0.0 || rows <= r, 1);
                    (
                        left + wide * (c + across) / columns,
                        from + high * (r + up) / rows,
                    )
                };
                let place = [
                    corner(column, row),
                    corner(column, row + 1.0),
                    corner(column + 1.0, row + 1.0),
                    corner(column + 1.0, row),
                ];
                self.shape(sheet, Pen::Hearting, &rough(place, JOINT_M, salt));
            }
        }
    }

    /// One cope stone on edge: as wide as the top, as high as the cope, its back rounded.
    fn cope_stone(&self, sheet: &mut Sheet) {
        let (half, low, high) = (
            self.plan.section.top_width().si() / 2.0,
            self.top(),
            self.top() + self.cope(),
        );
        if high <= low {
            return;
        }
        let round = (self.cope() * 0.35).min(half * 0.5);
        self.shape(
            sheet,
            Pen::Cope,
            &[
                (-half, low),
                (-half, high - round),
                (-half + round * 0.4, high - round * 0.35),
                (-half + round * 1.1, high),
                (half - round * 1.1, high),
                (half - round * 0.4, high - round * 0.35),
                (half, high - round),
                (half, low),
            ],
        );
    }

    /// The underside of the board is the top of the wall. Where the cope will stand it is
    /// dashed: board and cope are never there together.
    fn board(&self, sheet: &mut Sheet) {
        let (low, high) = (self.top(), self.board_top());
        let ends = [Side::Left, Side::Right].map(|side| self.board_end(side));
        if self.cope() <= 0.0 {
            self.shape(
                sheet,
                Pen::Bar,
                &[
                    (ends[0], low),
                    (ends[0], high),
                    (ends[1], high),
                    (ends[1], low),
                ],
            );
            return;
        }
        let half = self.plan.section.top_width().si() / 2.0;
        for (end, edge) in [(ends[0], -half), (ends[1], half)] {
            self.shape(
                sheet,
                Pen::Bar,
                &[(edge, low), (end, low), (end, high), (edge, high)],
            );
        }
        sheet.line(Pen::HiddenBar, self.at(-half, high), self.at(half, high));
        for side in [Side::Left, Side::Right] {
            let (_, up) = self.bar_ends(side);
            let up = up.min(low + self.cope());
            sheet.line(
                Pen::HiddenBar,
                self.at(self.face(side, low), low),
                self.at(self.face(side, up), up),
            );
        }
    }

    /// A string runs along the wall, so here it is a ring on each bar.
    fn strings(&self, sheet: &mut Sheet) {
        for string in &self.plan.frames.strings {
            let y = string.height.si();
            for side in [Side::Left, Side::Right] {
                let x = self.face(side, y) + outwards(side) * self.bar_width(side) / 2.0;
                sheet.circle(Pen::String, self.at(x, y), STRING_RING_MM);
            }
        }
    }

    /// The ground on both sides, out to the given paper positions, hatched below.
    pub(crate) fn ground(&self, sheet: &mut Sheet, left_mm: f64, right_mm: f64) {
        let edge = |side: Side| {
            let edge = self
                .trench(side)
                .map_or_else(|| self.face(side, 0.0), |(edge, _)| edge);
            self.at(edge, 0.0).x
        };
        for (from, to) in [(left_mm, edge(Side::Left)), (edge(Side::Right), right_mm)] {
            hatched_ground(sheet, from, to, 0.0);
        }
    }
}

/// The ring that stands for a string.
pub(crate) const STRING_RING_MM: f64 = 0.85;

/// 1 to the right, -1 to the left.
pub(crate) fn outwards(side: Side) -> f64 {
    match side {
        Side::Left => -1.0,
        Side::Right => 1.0,
    }
}
