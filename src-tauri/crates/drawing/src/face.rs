//! The wall seen from the side, without any words: courses, throughs, copes, ends, frames.

use crate::hatching::{broken_edge, hatched_box};
use crate::pen::Pen;
use crate::scale::Scale;
use crate::scene::Point;
use crate::sheet::Sheet;
use crate::stones::{Bed, beds, chance, rough, steps};
use crate::stretches::Stretch;
use craft::course::{Course, End};
use craft::plan::Plan;
use craft::quantity::Read;

/// Paper between stones.
const JOINT_MM: f64 = 0.22;
/// Face stones along the wall: the shortest and what the longest has more (common practice,
/// no source), and the shortest drawn.
const STONE_M: f64 = 0.2;
const STONE_MORE_M: f64 = 0.25;
const STONE_MM: f64 = 3.4;
/// Copes thinner than this on paper are drawn as one band.
const COPE_MM: f64 = 0.95;
const COPE_STROKE_MM: f64 = 1.3;
/// How much of a standing wall is drawn.
pub(crate) const STANDING_MM: f64 = 8.0;
/// The end of a board, as it is seen from the side.
const BOARD_MM: (f64, f64) = (2.2, 1.1);
const BAR_MM: f64 = 0.8;

/// A stretch of wall from the side, with the ground at its first frame as its zero.
pub(crate) struct Face<'a> {
    pub(crate) plan: &'a Plan,
    pub(crate) course: &'a Course,
    pub(crate) stretch: &'a Stretch<'a>,
    pub(crate) scale: Scale,
    /// How many times larger heights are drawn than lengths.
    pub(crate) times: u32,
}

impl Face<'_> {
    /// A place, in metres along the whole wall and above the ground.
    pub(crate) fn at(&self, x: f64, y: f64) -> Point {
        let mm = self.scale.mm_per_m();
        let along = x - self.stretch.from().si();
        Point::new(along * mm, -y * mm * f64::from(self.times))
    }

    pub(crate) fn top(&self) -> f64 {
        self.plan.section.height().si()
    }

    pub(crate) fn cope(&self) -> f64 {
        self.course.wall.cope_height.si()
    }

    /// The two ends of the stretch: along the wall, outwards, and how the wall ends there;
    /// nothing where it goes on.
    fn ends(&self) -> [(f64, f64, Option<End>); 2] {
        let [start, finish] = self.course.wall.ends;
        [
            (
                self.stretch.from().si(),
                -1.0,
                self.stretch.first.then_some(start),
            ),
            (
                self.stretch.to().si(),
                1.0,
                self.stretch.last.then_some(finish),
            ),
        ]
    }

    /// Where a course of this stretch begins and ends: a raked end steps back one along for
    /// one up (common practice, no source). Nothing where two raked ends have met below.
    pub(crate) fn reach(&self, from: f64, to: f64) -> Option<(f64, f64)> {
        let back = |end: End| match end {
            End::Raked => (from + to) / 2.0,
            End::Head | End::Joined => 0.0,
        };
        let [start, finish] = self.course.wall.ends.map(back);
        let start = start.max(self.stretch.from().si());
        let finish = (self.plan.sizing.length.si() - finish).min(self.stretch.to().si());
        (start + 0.05 < finish).then_some((start, finish))
    }

    pub(crate) fn draw(&self, sheet: &mut Sheet) {
        let beds = beds(self.plan, self.course);
        self.later(sheet);
        self.beyond(sheet);
        self.footing(sheet);
        for (at, bed) in beds.iter().enumerate() {
            self.course_of_stones(sheet, bed, (at + 100 * self.stretch.before) as u64);
        }
        self.throughs(sheet, &beds);
        self.copes(sheet, &beds);
        self.outline(sheet, &beds);
        self.frames(sheet);
    }

    /// The full wall, where a raked end leaves part of it to be carried on.
    fn later(&self, sheet: &mut Sheet) {
        for (at, out, end) in self.ends() {
            if end != Some(End::Raked) {
                continue;
            }
            let [(from, ..), (to, ..)] = self.ends();
            let inner = (at - out * self.top()).clamp(from, to);
            let corners = [(at, 0.0), (at, self.top()), (inner, self.top())];
            let corners = corners.map(|(x, y)| self.at(x, y)).to_vec();
            sheet.polyline(Pen::Later, corners);
        }
    }

    /// Standing wall that the new wall joins, hatched; or a broken edge where it goes on.
    fn beyond(&self, sheet: &mut Sheet) {
        let low = self.at(0.0, 0.0).y;
        let high = self.at(0.0, self.top() + self.cope()).y;
        for (at, out, end) in self.ends() {
            let near = self.at(at, 0.0).x;
            match end {
                None => broken_edge(sheet, near + out * BAR_MM, (high, low)),
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
        let deep = -footing.depth.si();
        let [(from, _, start), (to, _, finish)] = self.ends();
        let mut corners = vec![self.at(from, deep), self.at(to, deep)];
        if start.is_some() {
            corners.insert(0, self.at(from, 0.0));
        }
        if finish.is_some() {
            corners.push(self.at(to, 0.0));
        }
        sheet.polyline(Pen::Trench, corners);
    }

    fn course_of_stones(&self, sheet: &mut Sheet, bed: &Bed, key: u64) {
        let Some((start, finish)) = self.reach(bed.from, bed.to) else {
            return;
        };
        let (low, high) = (self.at(0.0, bed.from).y, self.at(0.0, bed.to).y);
        let (mut x, end) = (self.at(start, 0.0).x, self.at(finish, 0.0).x);
        let mm = self.scale.mm_per_m();
        let mut stone = 0;
        while x < end {
            let salt = key * 10_000 + stone;
            let real = (STONE_M + STONE_MORE_M * chance(salt)) * mm;
            let long = real.max(STONE_MM * (0.8 + chance(salt + 1)));
            // No slivers at the end: the last stone takes what is left.
            let to = if end < x + 1.5 * long { end } else { x + long };
            let place = [(x, low), (x, high), (to, high), (to, low)];
            shape(sheet, Pen::Stone, &rough(place, JOINT_MM, salt));
            x = to;
            stone += 1;
        }
    }

    /// As many as the plan counts, at equal distances; those in the part left to be carried
    /// on are dotted.
    fn throughs(&self, sheet: &mut Sheet, beds: &[Bed]) {
        let (length, mm) = (self.plan.sizing.length.si(), self.scale.mm_per_m());
        let [(from, ..), (to, ..)] = self.ends();
        for bed in beds {
            let Some(row) = bed.throughs.and_then(|at| self.plan.stone.throughs.get(at)) else {
                continue;
            };
            let apart = length / row.count as f64;
            let wide = (self.course.wall.through.width.si() * mm).max(1.4);
            let half = (wide / 2.0).min(0.42 * apart * mm);
            let built = self.reach(bed.from, bed.to);
            let all = (0..row.count).map(|at| (at as f64 + 0.5) * apart);
            for along in all.filter(|along| from < *along && *along <= to) {
                let stands = built.is_some_and(|(from, to)| from <= along && along <= to);
                let low = self.at(along, bed.from);
                let high = self.at(along, bed.to).y.min(low.y - 0.8);
                let pen = if stands { Pen::Through } else { Pen::Later };
                let upper = Point::new(low.x + half, high);
                sheet.rectangle(pen, Point::new(low.x - half, low.y), upper);
            }
        }
    }

    /// Whether copes are too thin on paper to be drawn one by one.
    pub(crate) fn copes_in_a_band(&self) -> bool {
        self.course.wall.cope_thickness.si() * self.scale.mm_per_m() < COPE_MM
    }

    fn copes(&self, sheet: &mut Sheet, beds: &[Bed]) {
        let topmost = beds.last().and_then(|bed| self.reach(bed.from, bed.to));
        let (Some((start, finish)), true) = (topmost, 0.0 < self.cope()) else {
            return;
        };
        let thick = self.course.wall.cope_thickness.si();
        let low = self.at(0.0, self.top()).y;
        let high = self.at(0.0, self.top() + self.cope()).y;
        if self.copes_in_a_band() {
            let (from, to) = (self.at(start, 0.0).x, self.at(finish, 0.0).x);
            sheet.rectangle(Pen::Cope, Point::new(from, low), Point::new(to, high));
            // Copes stand on edge, so that a band of them is upright strokes.
            for stroke in steps((to - from) / COPE_STROKE_MM - 0.5) {
                let x = from + (stroke + 1.0) * COPE_STROKE_MM;
                sheet.line(Pen::Hatch, Point::new(x, low), Point::new(x, high));
            }
            return;
        }
        for at in 0..self.plan.stone.copes {
            let from = (at as f64 * thick).max(start);
            let to = ((at as f64 + 1.0) * thick).min(finish);
            if from + thick * 0.2 < to {
                let (from, to) = (self.at(from, 0.0).x, self.at(to, 0.0).x);
                let high = high + 0.12 * (low - high) * chance(77 + at as u64);
                let place = [(from, low), (from, high), (to, high), (to, low)];
                shape(sheet, Pen::Cope, &rough(place, JOINT_MM / 3.0, at as u64));
            }
        }
    }

    /// The edge of what is built, in steps at a raked end, open where the wall goes on.
    fn outline(&self, sheet: &mut Sheet, beds: &[Bed]) {
        let (mut up, mut down) = (Vec::new(), Vec::new());
        for bed in beds {
            let Some((start, finish)) = self.reach(bed.from, bed.to) else {
                break;
            };
            up.extend([self.at(start, bed.from), self.at(start, bed.to)]);
            down.extend([self.at(finish, bed.from), self.at(finish, bed.to)]);
        }
        up.extend(down.into_iter().rev());
        let open: Vec<f64> = self
            .ends()
            .into_iter()
            .filter(|(_, _, end)| end.is_none())
            .map(|(at, ..)| self.at(at, 0.0).x)
            .collect();
        let on = |a: &Point, b: &Point| {
            open.iter()
                .any(|x| (a.x - x).abs() < 1e-6 && (b.x - x).abs() < 1e-6)
        };
        for run in up.chunk_by(|a, b| !on(a, b)).filter(|run| 1 < run.len()) {
            sheet.polyline(Pen::Outline, run.to_vec());
        }
    }

    fn frames(&self, sheet: &mut Sheet) {
        let frames = &self.course.frames;
        let half = (self
            .plan
            .frames
            .bars
            .as_ref()
            .map_or(0.05, |bars| bars.diameter.si())
            * self.scale.mm_per_m())
        .max(BAR_MM)
            / 2.0;
        let (deep, high) = (-frames.embedment.si(), self.top() + frames.projection.si());
        for row in self.stretch.rows {
            let x = row.station.si();
            let (foot, ground, head) = (self.at(x, deep), self.at(x, 0.0), self.at(x, high));
            sheet.rectangle(
                Pen::HiddenBar,
                Point::new(foot.x - half, foot.y),
                Point::new(ground.x + half, ground.y),
            );
            sheet.rectangle(
                Pen::Bar,
                Point::new(ground.x - half, ground.y),
                Point::new(head.x + half, head.y),
            );
            let board = self.at(x, self.top());
            sheet.rectangle(
                Pen::Solid,
                Point::new(board.x - BOARD_MM.0 / 2.0, board.y),
                Point::new(board.x + BOARD_MM.0 / 2.0, board.y - BOARD_MM.1),
            );
        }
    }
}

fn shape(sheet: &mut Sheet, pen: Pen, corners: &[(f64, f64)]) {
    sheet.polygon(
        pen,
        corners.iter().map(|&(x, y)| Point::new(x, y)).collect(),
    );
}
