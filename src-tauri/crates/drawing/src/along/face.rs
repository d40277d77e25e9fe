//! The wall seen from the side, without any words: its edges, its ends, trench and frames.

use crate::along::counted::{Counting, reach};
use crate::along::laid::{Laid, larger};
use crate::along::lie::{Lie, Place};
use crate::along::masonry::masonry;
use crate::along::stretches::Stretch;
use crate::paper::hatching::{broken_edge, hatched_box};
use crate::paper::pen::Pen;
use crate::paper::scale::Scale;
use crate::paper::scene::Point;
use crate::paper::sheet::Sheet;
use craft::course::{Course, End};
use craft::frames::FrameRow;
use craft::plan::Plan;
use craft::quantity::Read;
use craft::wall::Side;

/// How much of a standing wall is drawn.
pub(crate) const STANDING_MM: f64 = 5.0;
/// The end of a board, as it is seen from the side.
const BOARD_MM: (f64, f64) = (2.2, 1.1);
const BAR_MM: f64 = 0.8;
/// A leg of a timber frame, seen on edge (common practice, no source).
const LEG_M: f64 = 0.025;

/// A stretch of wall from the side, unrolled along the centre line.
pub(crate) struct Face<'a> {
    pub(crate) plan: &'a Plan,
    pub(crate) course: &'a Course,
    pub(crate) lie: &'a Lie<'a>,
    pub(crate) stretch: &'a Stretch<'a>,
    pub(crate) scale: Scale,
    /// How many times larger heights are drawn than lengths.
    pub(crate) times: u32,
    /// The stones; left out where only the room is measured.
    pub(crate) laid: Option<&'a Laid>,
}

/// One end of a stretch.
#[derive(Clone, Copy)]
pub(crate) struct EndAt {
    /// The station.
    pub(crate) at: f64,
    /// Away from the wall along its line.
    pub(crate) out: f64,
    /// How the wall ends here; nothing where it goes on.
    pub(crate) kind: Option<End>,
    /// How the end itself leans.
    pub(crate) lean: f64,
}

impl Face<'_> {
    pub(crate) fn from(&self) -> f64 {
        self.stretch.from().si()
    }

    pub(crate) fn to(&self) -> f64 {
        self.stretch.to().si()
    }

    /// Whether station 0 lies at the right: so it is for who looks at the left face.
    pub(crate) fn mirrored(&self) -> bool {
        self.lie.side == Side::Left
    }

    /// To the right on paper for a way along the line.
    pub(crate) fn right(&self, out: f64) -> f64 {
        if self.mirrored() { -out } else { out }
    }

    /// A station on paper; the left end of the stretch is the zero.
    pub(crate) fn x(&self, station: f64) -> f64 {
        let along = if self.mirrored() {
            self.to() - station
        } else {
            station - self.from()
        };
        along * self.scale.mm_per_m()
    }

    /// A level on paper; the ground at station 0 on the centre line is the zero.
    pub(crate) fn y(&self, level: f64) -> f64 {
        let zero = self.lie.zero();
        -(level - zero) * self.scale.mm_per_m() * f64::from(self.times)
    }

    pub(crate) fn at(&self, (station, level): Place) -> Point {
        Point::new(self.x(station), self.y(level))
    }

    pub(crate) fn on_paper(&self, line: &[Place]) -> Vec<Point> {
        line.iter().map(|place| self.at(*place)).collect()
    }

    /// The same from left to right.
    pub(crate) fn left_to_right(&self, line: &[Place]) -> Vec<Point> {
        let mut points = self.on_paper(line);
        if self.mirrored() {
            points.reverse();
        }
        points
    }

    pub(crate) fn cope(&self) -> f64 {
        self.course.wall.cope_height.si()
    }

    /// The two ends of the stretch, in order of station.
    pub(crate) fn ends(&self) -> [EndAt; 2] {
        let whole = |end: usize| self.plan.ends.get(end);
        [
            (self.from(), -1.0, self.stretch.first, 0),
            (self.to(), 1.0, self.stretch.last, 1),
        ]
        .map(|(at, out, is_end, end)| {
            let own = whole(end).filter(|_| is_end);
            EndAt {
                at,
                out,
                kind: own.map(|own| own.kind),
                lean: own.map_or(0.0, |own| own.batter.lean()),
            }
        })
    }

    /// The rows of throughs as the plan counts them.
    pub(crate) fn counting(&self) -> Counting<'_> {
        Counting {
            plan: self.plan,
            course: self.course,
            lie: self.lie,
            exaggerated: 1 < self.times,
            larger: larger(self.scale),
        }
    }

    /// From where to where within this stretch the wall stands so far below its top.
    pub(crate) fn reach_here(&self, below_top: f64) -> Option<(f64, f64)> {
        let (start, finish) = reach(self.plan, self.lie, below_top)?;
        let (start, finish) = (start.max(self.from()), finish.min(self.to()));
        (start < finish).then_some((start, finish))
    }

    /// The top of this stretch, lowered by so much.
    pub(crate) fn below_top(&self, from: f64, to: f64, below: f64) -> Vec<Place> {
        let mut line = self.lie.top_line(from, to);
        for place in &mut line {
            place.1 -= below;
        }
        line
    }

    pub(crate) fn draw(&self, sheet: &mut Sheet) {
        self.later(sheet);
        self.beyond(sheet);
        self.footing(sheet);
        if let Some(laid) = self.laid {
            masonry(sheet, self, laid);
        }
        self.outline(sheet);
        self.through_rows(sheet);
        self.end_profiles(sheet);
        self.frames(sheet);
        self.closing(sheet);
    }

    /// The full wall, where a raked end leaves part of it to be carried on.
    fn later(&self, sheet: &mut Sheet) {
        for end in self.ends() {
            if end.kind != Some(End::Raked) {
                continue;
            }
            let high = self.lie.top(end.at) - self.lie.ground(end.at);
            let inner = (end.at - end.out * high).clamp(self.from(), self.to());
            let mut top = self.lie.top_line(inner.min(end.at), inner.max(end.at));
            if 0.0 < end.out {
                top.reverse();
            }
            let mut corners = vec![(end.at, self.lie.ground(end.at))];
            corners.extend(top);
            sheet.polyline(Pen::Later, self.on_paper(&corners));
        }
    }

    /// Standing wall that the new wall joins, hatched; or a broken edge where it goes on.
    fn beyond(&self, sheet: &mut Sheet) {
        for end in self.ends() {
            let (near, out) = (self.x(end.at), self.right(end.out));
            let low = self.y(self.lie.ground(end.at));
            let high = self.y(self.lie.top(end.at) + self.cope());
            match end.kind {
                None => broken_edge(sheet, near + out * 2.0 * BAR_MM, (high, low)),
                Some(End::Joined) => {
                    let far = near + out * STANDING_MM;
                    hatched_box(sheet, (near.min(far), near.max(far)), (high, low));
                    let level = [near, far].map(|x| Point::new(x, high)).to_vec();
                    sheet.polyline(Pen::Stone, level);
                    broken_edge(sheet, far, (high, low));
                }
                Some(End::Head | End::Raked) => {}
            }
        }
    }

    fn footing(&self, sheet: &mut Sheet) {
        let Some(footing) = self.course.wall.footing else {
            return;
        };
        let (from, to) = (self.from(), self.to());
        let mut corners = self.lie.trench(from, to, footing.depth.si());
        let [start, finish] = self.ends();
        if start.kind.is_some() {
            corners.insert(0, (from, self.lie.ground(from)));
        }
        if finish.kind.is_some() {
            corners.push((to, self.lie.ground(to)));
        }
        sheet.polyline(Pen::Trench, self.on_paper(&corners));
    }

    /// The edge of what is built; raked ends show theirs by their stones, and where the wall
    /// goes on there is none.
    fn outline(&self, sheet: &mut Sheet) {
        let Some((start, finish)) = self.reach_here(0.0) else {
            return;
        };
        let mut corners = self.lie.top_line(start, finish);
        let [first, last] = self.ends();
        let has_edge = |end: EndAt| matches!(end.kind, Some(End::Head | End::Joined));
        if has_edge(first) {
            corners.insert(0, (first.at, self.lie.ground(first.at)));
        }
        if has_edge(last) {
            corners.push((last.at, self.lie.ground(last.at)));
        }
        sheet.polyline(Pen::Outline, self.on_paper(&corners));
    }

    /// Where the top is not level, the line each row of throughs is measured to: stones lie
    /// on level beds beside it.
    fn through_rows(&self, sheet: &mut Sheet) {
        if self.lie.top_is_level() {
            return;
        }
        for row in &self.plan.stone.throughs {
            let below = (self.plan.section.height() - row.height).si();
            if let Some((from, to)) = self.reach_here(below) {
                for run in self.above_ground(&self.below_top(from, to, below)) {
                    sheet.polyline(Pen::Centre, self.on_paper(&run));
                }
            }
        }
    }

    /// The parts of a line that lie above the ground.
    pub(crate) fn above_ground(&self, line: &[Place]) -> Vec<Vec<Place>> {
        let over = |place: Place| place.1 - self.lie.ground(place.0);
        let mut runs: Vec<Vec<Place>> = Vec::new();
        let mut open = false;
        for (start, end) in crate::along::lie::pairs(line) {
            let (low, high) = (over(start), over(end));
            if low <= 0.0 && high <= 0.0 {
                open = false;
                continue;
            }
            let meets = |share: f64| {
                let at = start.0 + (end.0 - start.0) * share;
                (at, start.1 + (end.1 - start.1) * share)
            };
            let crossing = if low < high { -low } else { low } / (high - low).abs();
            let from = if low < 0.0 { meets(crossing) } else { start };
            let to = if high < 0.0 { meets(crossing) } else { end };
            match runs.last_mut().filter(|_| open && 0.0 <= low) {
                Some(run) => run.push(to),
                None => runs.push(vec![from, to]),
            }
            open = 0.0 <= high;
        }
        runs
    }

    /// A leaning head is built to a profile of its own; at a plumb one the frame is enough.
    fn end_profiles(&self, sheet: &mut Sheet) {
        for end in self.ends() {
            if end.kind != Some(End::Head) || end.lean <= 0.0 {
                continue;
            }
            let (low, high) = (self.lie.ground(end.at), self.lie.top(end.at));
            let foot = self.at((end.at, low));
            let head = self.at((end.at - end.out * end.lean * (high - low), high));
            let out = self.right(end.out) * BAR_MM;
            let corners = vec![
                foot,
                head,
                Point::new(head.x + out, head.y),
                Point::new(foot.x + out, foot.y),
            ];
            sheet.polygon(Pen::Bar, corners);
        }
    }

    fn frames(&self, sheet: &mut Sheet) {
        for row in self.stretch.rows {
            match &self.plan.frames.bars {
                Some(bars) => self.bar(sheet, row, bars.diameter.si()),
                None => self.leg(sheet, row),
            }
        }
    }

    /// A bar stands in the ground and beyond the board by lengths along itself.
    fn bar(&self, sheet: &mut Sheet, row: &FrameRow, thick: f64) {
        let frames = &self.course.frames;
        let slope = self.plan.section.batter(self.lie.side).slope_factor();
        let top = row.board().si();
        let ground = top - row.rise(self.lie.side).si();
        let foot = ground - frames.embedment.si() / slope;
        let head = top + frames.projection.si() / slope;
        let at = row.station.si();
        self.upright(sheet, Pen::HiddenBar, at, thick, (foot, ground));
        self.upright(sheet, Pen::Bar, at, thick, (ground, head));
        self.board(sheet, at, top);
    }

    /// A leg of a timber frame stands on the ground.
    fn leg(&self, sheet: &mut Sheet, row: &FrameRow) {
        let top = row.board().si();
        let ground = top - row.rise(self.lie.side).si();
        let at = row.station.si();
        self.upright(sheet, Pen::Bar, at, LEG_M, (ground, top));
        self.board(sheet, at, top);
    }

    /// Where a ring closes, its first frame comes again.
    fn closing(&self, sheet: &mut Sheet) {
        if self.closes() {
            let (low, high) = (self.lie.ground(self.to()), self.lie.top(self.to()));
            self.upright(sheet, Pen::HiddenBar, self.to(), LEG_M, (low, high));
        }
    }

    /// Whether this stretch comes back to station 0.
    pub(crate) fn closes(&self) -> bool {
        self.stretch.last && self.plan.wall.is_ring()
    }

    fn upright(&self, sheet: &mut Sheet, pen: Pen, at: f64, thick: f64, levels: (f64, f64)) {
        let half = (thick * self.scale.mm_per_m()).max(BAR_MM) / 2.0;
        let (low, high) = (self.at((at, levels.0)), self.at((at, levels.1)));
        sheet.rectangle(
            pen,
            Point::new(low.x - half, low.y),
            Point::new(high.x + half, high.y),
        );
    }

    fn board(&self, sheet: &mut Sheet, at: f64, level: f64) {
        let board = self.at((at, level));
        let half = BOARD_MM.0 / 2.0;
        sheet.rectangle(
            Pen::Solid,
            Point::new(board.x - half, board.y),
            Point::new(board.x + half, board.y - BOARD_MM.1),
        );
    }

    /// The ground from one place on paper to another, carried on level beyond the stretch.
    pub(crate) fn ground_on_paper(&self, left: f64, right: f64) -> Vec<Point> {
        let line = self.lie.ground_line(self.from(), self.to());
        let mut points = self.left_to_right(&line);
        if let (Some(first), Some(last)) = (points.first().copied(), points.last().copied()) {
            points.insert(0, Point::new(left, first.y));
            points.push(Point::new(right, last.y));
        }
        points
    }
}
