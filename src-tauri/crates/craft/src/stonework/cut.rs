//! The wall cut across: two faces, what ties them, and the hearting between.

use super::crossing::Shape;
use super::given::{Crossing, PlantedFault, PlantedKind};
use super::hearting::heart;
use super::luck::Luck;
use super::polygon::{P, Upright, bounds};
use super::setting::stone;
use super::shape::Room;
use super::stone::{Role, Stone};
use super::tied::{Tie, ties};
use crate::quantity::{Read, whole_number};
use crate::wall::Side;

/// A face stone reaches in by this share of the wall's width: a short one, and a long one
/// (common practice, no source).
const SHORT: [f64; 2] = [0.27, 0.35];
const LONG: [f64; 2] = [0.38, 0.47];
/// Between the inner ends of two faces there is room for hearting, in metres.
const HEARTING_M: f64 = 0.06;
/// A stone laid as a skin reaches in by this share of its height.
const SKIN: [f64; 2] = [0.5, 0.62];
/// A bed falls outwards by no more than this for each unit of width, to shed the rain
/// (common practice, no source).
const SHED: f64 = 0.05;

/// Lays the stones of a section; the rules are kept but for the faults asked for.
///
/// The same section and faults give the same stones on every machine.
pub fn cut(crossing: &Crossing, faults: &[PlantedFault]) -> Vec<Stone> {
    let mut work = Work {
        shape: Shape::new(crossing),
        luck: Luck::new(crossing.seed, 11),
        stones: Vec::new(),
    };
    work.footing(crossing);
    let ties = ties(crossing, faults);
    let mut packed = Vec::new();
    for side in [Side::Left, Side::Right] {
        let skin = faults
            .iter()
            .filter(|fault| fault.kind == PlantedKind::Traced)
            .map(PlantedFault::at)
            .find(|at| (at[0] < 0.0) == (side == Side::Left));
        work.side(side, crossing, &ties, skin);
        packed.extend(ties.iter().flat_map(|tie| work.behind(tie, side)));
    }
    for tie in &ties {
        work.through(tie, crossing.through_projection.si());
    }
    let hollow: Vec<P> = faults
        .iter()
        .filter(|fault| fault.kind == PlantedKind::HollowHearting)
        .map(PlantedFault::at)
        .collect();
    let hearting = heart(&work.shape, &work.stones, &packed, &hollow, &mut work.luck);
    work.stones.extend(hearting);
    work.cope(crossing.cope_height.si());
    work.stones
}

/// The section while it is laid.
pub(super) struct Work {
    pub(super) shape: Shape,
    pub(super) luck: Luck,
    stones: Vec<Stone>,
}

impl Work {
    /// One face from the ground to the top, course by course, leaving out the rows of throughs.
    fn side(&mut self, side: Side, crossing: &Crossing, ties: &[Tie], skin: Option<P>) {
        let mut courses = Vec::new();
        let mut from = 0.0;
        let top = [self.shape.height; 2];
        let rows = ties.iter().map(|tie| [tie.bed, tie.top]);
        for [bed, over] in rows.chain([top]) {
            courses.extend(self.courses(crossing, from, bed));
            from = over;
        }
        let skinned = skin.and_then(|at| {
            let off = |course: &[P; 2]| ((course[0][0] + course[1][0]) / 2.0 - at[1]).abs();
            (0..courses.len()).min_by(|a, b| off(&courses[*a]).total_cmp(&off(&courses[*b])))
        });
        for (i, course) in courses.iter().enumerate() {
            let long = i.is_multiple_of(2) == (side == Side::Left);
            self.face_stone(side, i, course, long, skinned == Some(i));
        }
    }

    /// Courses between two levels: of each, the level of its bed and how much that rises
    /// inwards, and the same of its top.
    fn courses(&mut self, crossing: &Crossing, from: f64, to: f64) -> Vec<[P; 2]> {
        let rise = to - from;
        if rise < 0.02 {
            return Vec::new();
        }
        let [low, high] = crossing.course_heights.map(Read::si);
        let usual = |y: f64| (low + (high - low) * (y / self.shape.height)).max(0.04);
        let count = whole_number((rise / usual(from + rise / 2.0)).round()).max(1);
        let mut heights: Vec<f64> = (0..count)
            .map(|i| usual(from + rise * (i as f64 + 0.5) / count as f64))
            .collect();
        for height in &mut heights {
            *height *= 1.0 + 0.25 * self.luck.bell();
        }
        let scale = rise / heights.iter().sum::<f64>();
        let mut bed = [from, 0.0];
        let mut courses = Vec::with_capacity(count);
        for (i, height) in heights.iter().enumerate() {
            let top = if i + 1 == count {
                [to, 0.0]
            } else {
                [bed[0] + height * scale, self.luck.between(0.0, SHED)]
            };
            courses.push([bed, top]);
            bed = top;
        }
        courses
    }

    fn face_stone(
        &mut self,
        side: Side,
        course: usize,
        [bed, top]: &[P; 2],
        long: bool,
        skin: bool,
    ) {
        let middle = (bed[0] + top[0]) / 2.0;
        let height = top[0] - bed[0];
        let width = self.shape.width(middle);
        let [low, high] = if long { LONG } else { SHORT };
        let usual = (width * self.luck.between(low, high)).max(1.15 * height);
        let into = if skin {
            height * self.luck.between(SKIN[0], SKIN[1])
        } else {
            usual.min((width - HEARTING_M) / 2.0)
        };
        let (which, inward) = match side {
            Side::Left => (0, 1.0),
            Side::Right => (1, -1.0),
        };
        let back = self.luck.between(0.0, 0.008);
        let outer = Upright {
            x: self.shape.faces(middle)[which] + inward * back,
            y: middle,
            lean: inward * self.shape.lean[which],
        };
        let inner = Upright {
            x: outer.x + inward * into,
            y: middle,
            lean: 0.2 * self.luck.bell() * if skin { 0.3 } else { 1.0 },
        };
        let level = |line: &P, x: f64| line[0] + line[1] * (x - outer.at(line[0])).abs();
        let ends = if which == 0 {
            [outer, inner]
        } else {
            [inner, outer]
        };
        let foot = ends.map(|end| end.at(bed[0])).map(|x| [x, level(bed, x)]);
        let head = ends.map(|end| level(top, end.at(top[0])) - 0.002);
        let edge = if which == 0 {
            [true, false]
        } else {
            [false, true]
        };
        let room = Room {
            sides: ends,
            edge,
            bed: &foot,
            top: head,
            squared: 0.45,
        };
        self.shaped(&room, Role::Face, course + 1);
    }

    pub(super) fn shaped(&mut self, room: &Room<'_>, role: Role, course: usize) {
        let shaped = room.fill(&mut self.luck);
        let mut push = |outline: &[P], role: Role| {
            let [left, _, right, _] = bounds(outline);
            self.stones.push(stone(outline, role, course, right - left));
        };
        push(&shaped.outline, role);
        if let Some(wedge) = &shaped.pinning {
            push(wedge, Role::Pinning);
        }
    }

    /// Two stones side by side in the trench.
    fn footing(&mut self, crossing: &Crossing) {
        let Some(footing) = crossing.footing else {
            return;
        };
        let (depth, outset) = (footing.depth.si(), footing.outset.si());
        if depth <= 0.0 {
            return;
        }
        let [left, right] = self.shape.faces(0.0);
        let joint = (left + right) / 2.0 + 0.12 * (right - left) * self.luck.bell();
        let joint = Upright {
            x: joint,
            y: 0.0,
            lean: 0.1 * self.luck.bell(),
        };
        let ends = [
            Upright::plumb(left - outset),
            Upright::plumb(right + outset),
        ];
        for (sides, edge) in [
            ([ends[0], joint], [true, false]),
            ([joint, ends[1]], [false, true]),
        ] {
            let low = [0, 1].map(|_| -depth * self.luck.between(0.86, 0.97));
            let foot = [0, 1].map(|i| [sides[i].at(low[i]), low[i]]);
            let head = [0, 1].map(|_| -0.003 - 0.006 * self.luck.unit());
            let room = Room {
                sides,
                edge,
                bed: &foot,
                top: head,
                squared: 0.5,
            };
            self.shaped(&room, Role::Footing, 0);
        }
    }

    /// One cope on edge across the whole top.
    fn cope(&mut self, height: f64) {
        if height <= 0.0 {
            return;
        }
        let (half, base) = (self.shape.top_width / 2.0, self.shape.height);
        let high = height * (1.0 + 0.1 * self.luck.bell());
        let corners = [
            (-1.0, 0.03),
            (-0.93, 0.006),
            (0.93, 0.006),
            (1.0, 0.03),
            (0.98, 0.6),
            (0.7, 0.93),
            (0.1, 1.0),
            (-0.62, 0.95),
            (-0.97, 0.62),
        ];
        let outline: Vec<P> = corners
            .into_iter()
            .map(|(across, up): (f64, f64)| {
                let off = 1.0 - 0.05 * self.luck.unit();
                [half * across * off, base + 0.004 + high * up * off]
            })
            .collect();
        self.stones.push(stone(&outline, Role::Cope, 0, 2.0 * half));
    }
}
