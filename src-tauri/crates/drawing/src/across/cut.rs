//! The wall cut across at station 0, without any words: stones, cope, frame, bank and ground.

use crate::across::bank::Bank;
use crate::across::cut_stones::{Laid, NO_STONES};
use crate::across::timber::TimberFrame;
use crate::paper::hatching::hatched_ground;
use crate::paper::pen::Pen;
use crate::paper::scale::Scale;
use crate::paper::scene::Point;
use crate::paper::sheet::Sheet;
use crate::paper::strewn::Corner;
use craft::course::{Course, WallKind};
use craft::frames::{BarMarks, FrameRow};
use craft::plan::Plan;
use craft::quantity::Read;
use craft::wall::Side;

/// A bar is never drawn thinner than this.
const BAR_MM: f64 = 0.7;

/// The cross-section at a scale, with the middle of the wall at the ground as its zero.
pub(crate) struct Cut<'a> {
    pub(crate) plan: &'a Plan,
    pub(crate) course: &'a Course,
    pub(crate) scale: Scale,
    /// The frame that stands there, if it is of timber.
    pub(crate) timber: Option<TimberFrame<'a>>,
    /// The stones that show.
    pub(crate) laid: &'a Laid,
}

impl<'a> Cut<'a> {
    pub(crate) fn new(plan: &'a Plan, course: &'a Course, scale: Scale) -> Self {
        Self {
            plan,
            course,
            scale,
            timber: TimberFrame::first(plan),
            laid: &NO_STONES,
        }
    }

    /// The same with stones in it.
    pub(crate) fn built_of(self, laid: &'a Laid) -> Self {
        Self { laid, ..self }
    }

    /// The first frame, at station 0.
    pub(crate) fn row(&self) -> Option<&FrameRow> {
        self.plan.frames.rows.first()
    }

    /// A place in the section, in metres to the right of the centre line and above ground.
    pub(crate) fn at(&self, x: f64, y: f64) -> Point {
        let mm = self.scale.mm_per_m();
        Point::new(x * mm, -y * mm)
    }

    /// Ground on the centre line to the underside of the cope.
    pub(crate) fn top(&self) -> f64 {
        self.plan.section.height().si()
    }

    pub(crate) fn cope(&self) -> f64 {
        self.course.wall.cope_height.si()
    }

    /// Level of the ground at a face, above that on the centre line.
    pub(crate) fn ground(&self, side: Side) -> f64 {
        self.row()
            .map_or(0.0, |row| self.top() - row.rise(side).si())
    }

    /// Whether the ground is as high at both faces as on the centre line.
    pub(crate) fn is_level(&self) -> bool {
        Side::BOTH
            .iter()
            .all(|side| self.ground(*side).abs() < 1e-9)
    }

    /// Where the face stands at a height, below the ground as if it went on.
    pub(crate) fn face(&self, side: Side, y: f64) -> f64 {
        let section = &self.plan.section;
        let out = section.top_width().si() / 2.0 + (self.top() - y) * section.batter(side).lean();
        outwards(side) * out
    }

    /// Where the face meets the ground.
    pub(crate) fn toe(&self, side: Side) -> Corner {
        let y = self.ground(side);
        (self.face(side, y), y)
    }

    /// Where the trench ends on a side, and the level of its bottom.
    pub(crate) fn trench(&self, side: Side) -> Option<Corner> {
        let footing = self.course.wall.footing?;
        let (toe, ground) = self.toe(side);
        let edge = toe + outwards(side) * footing.outset.si();
        Some((edge, ground.min(-footing.depth.si())))
    }

    /// The edge of what is dug or built on at a side.
    pub(crate) fn ground_edge(&self, side: Side) -> f64 {
        self.trench(side).map_or(self.toe(side).0, |(edge, _)| edge)
    }

    /// The level of the lowest that is dug.
    pub(crate) fn lowest_dug(&self) -> f64 {
        let level = |side| {
            self.trench(side)
                .map_or(self.ground(side), |(_, deep)| deep)
        };
        level(Side::Left).min(level(Side::Right))
    }

    /// The bank, where the wall holds one back.
    pub(crate) fn bank(&self) -> Option<Bank<'_>> {
        match &self.course.wall.kind {
            WallKind::Freestanding => None,
            WallKind::Retaining(given) => self.plan.retaining.as_ref().map(|retaining| Bank {
                cut: self,
                side: given.side,
                retaining,
            }),
        }
    }

    /// What is marked along a bar.
    pub(crate) fn marks(&self, side: Side) -> Option<BarMarks> {
        let (bars, row) = (self.plan.frames.bars.as_ref()?, self.row()?);
        Some(bars.marks(row, side, &self.plan.section, &self.course.frames))
    }

    /// The levels of a bar's foot and, with the projection that was asked for, of its head.
    pub(crate) fn bar_ends(&self, side: Side) -> (f64, f64) {
        let slope = self.plan.section.batter(side).slope_factor();
        let frames = &self.course.frames;
        (
            self.ground(side) - frames.embedment.si() / slope,
            self.top() + frames.projection.si() / slope,
        )
    }

    /// From the inner to the outer face of a bar or a leg, level.
    pub(crate) fn bar_width(&self, side: Side) -> f64 {
        let slope = self.plan.section.batter(side).slope_factor();
        let least = BAR_MM / self.scale.mm_per_m();
        let bars = self.plan.frames.bars.as_ref();
        let across = self.timber.as_ref().map(TimberFrame::width);
        let across = across.or(bars.map(|bars| bars.diameter.si()));
        across.unwrap_or(0.0).max(least) * slope
    }

    /// The end of the board or top rail on a side.
    pub(crate) fn board_end(&self, side: Side) -> f64 {
        if let Some(timber) = &self.timber {
            return self.face(side, self.top())
                + outwards(side) * (self.bar_width(side) + timber.overhang());
        }
        let board = self.plan.fittings.board.as_ref();
        // The board reaches as far beyond both eyes; its middle is that of the eyes.
        let (long, eyes) = board.map_or((0.0, 0.0), |it| (it.length.si(), it.eyes.si()));
        self.eye(side) + outwards(side) * (long - eyes) / 2.0
    }

    /// The middle of an eye at the underside of the board.
    pub(crate) fn eye(&self, side: Side) -> f64 {
        let slope = self.plan.section.batter(side).slope_factor();
        let bars = self.plan.frames.bars.as_ref();
        let half = bars.map_or(0.0, |bars| bars.diameter.si() * slope / 2.0);
        self.face(side, self.top()) + outwards(side) * half
    }

    /// The upper edge of the board or top rail.
    pub(crate) fn board_top(&self) -> f64 {
        let board = self.plan.fittings.board.as_ref();
        let thick = board.map(|board| board.thickness.si());
        let thick = thick.or(self.timber.as_ref().map(TimberFrame::width));
        self.top() + thick.unwrap_or(0.0)
    }

    /// Everything, from the back to the front.
    pub(crate) fn draw(&self, sheet: &mut Sheet) {
        if let Some(bank) = self.bank() {
            bank.draw(sheet);
        }
        match &self.timber {
            Some(timber) => timber.legs(self, sheet),
            None => Side::BOTH.iter().for_each(|side| {
                let (_, high) = self.bar_ends(*side);
                self.bar(sheet, *side, high);
            }),
        }
        self.body(sheet);
        self.footing(sheet);
        self.outline(sheet);
        self.cope_stone(sheet);
        self.board(sheet);
        if let Some(timber) = &self.timber {
            timber.within(self, sheet);
        }
        self.strings(sheet);
    }

    pub(crate) fn shape(&self, sheet: &mut Sheet, pen: Pen, corners: &[Corner]) {
        let points = corners.iter().map(|&(x, y)| self.at(x, y)).collect();
        sheet.polygon(pen, points);
    }

    /// A bar stands along its face, up to a level; below the ground it is hidden.
    pub(crate) fn bar(&self, sheet: &mut Sheet, side: Side, high: f64) {
        let (deep, _) = self.bar_ends(side);
        let thick = outwards(side) * self.bar_width(side);
        let piece = |from: f64, to: f64| {
            let (low, up) = (self.face(side, from), self.face(side, to));
            [(low, from), (up, to), (up + thick, to), (low + thick, from)]
        };
        let ground = self.ground(side);
        self.shape(sheet, Pen::HiddenBar, &piece(deep, ground));
        self.shape(sheet, Pen::Bar, &piece(ground, high));
    }

    /// The underside of the board is the top of the wall. Where the cope will stand it is
    /// dashed: board and cope are never there together.
    fn board(&self, sheet: &mut Sheet) {
        let (low, high) = (self.top(), self.board_top());
        let ends = Side::BOTH.map(|side| self.board_end(side));
        let piece = |from: f64, to: f64| [(from, low), (to, low), (to, high), (from, high)];
        if self.cope() <= 0.0 {
            self.shape(sheet, Pen::Bar, &piece(ends[0], ends[1]));
            return;
        }
        let half = self.plan.section.top_width().si() / 2.0;
        for (end, edge) in [(ends[0], -half), (ends[1], half)] {
            self.shape(sheet, Pen::Bar, &piece(edge, end));
        }
        let hidden = high.min(low + self.cope());
        sheet.line(
            Pen::HiddenBar,
            self.at(-half, hidden),
            self.at(half, hidden),
        );
        if self.timber.is_some() {
            return;
        }
        for side in Side::BOTH {
            let (_, up) = self.bar_ends(side);
            let up = up.min(low + self.cope());
            sheet.line(
                Pen::HiddenBar,
                self.at(self.face(side, low), low),
                self.at(self.face(side, up), up),
            );
        }
    }

    /// Where a string runs at a face: along the inner face of the bar or leg.
    pub(crate) fn string_at(&self, side: Side, y: f64) -> f64 {
        let ring = STRING_RING_MM / self.scale.mm_per_m();
        let out = (self.bar_width(side) / 2.0).min(ring);
        self.face(side, y) + outwards(side) * out
    }

    /// The heights of the strings above the ground at a side, from the ground up.
    pub(crate) fn strings_above(&self, side: Side) -> impl Iterator<Item = f64> {
        let ground = self.ground(side);
        let strings = self.plan.frames.strings.iter();
        strings
            .map(|string| string.height.si())
            .filter(move |y| ground + 0.01 < *y)
    }

    /// A string runs along the wall, so here it is a ring on each bar.
    fn strings(&self, sheet: &mut Sheet) {
        for side in Side::BOTH {
            for y in self.strings_above(side) {
                let at = self.at(self.string_at(side, y), y);
                sheet.circle(Pen::String, at, STRING_RING_MM);
            }
        }
    }

    /// The ground at a side, out to a paper position, hatched below. A bank draws its own.
    pub(crate) fn hatched_ground(&self, sheet: &mut Sheet, side: Side, out_mm: f64) {
        if self.bank().is_some_and(|bank| bank.side == side) {
            return;
        }
        let level = self.ground(side);
        let edge = self.at(self.ground_edge(side), level);
        hatched_ground(sheet, edge.x.min(out_mm), edge.x.max(out_mm), edge.y);
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
