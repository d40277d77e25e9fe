//! The stones of the wall cut across: footing, face stones and hearting, throughs, cope.
//!
//! Which stone lies where is made up, the same every time; what the course gives is to scale:
//! the faces, the trench, throughs and cope.

use crate::across::cut::{Cut, outwards};
use crate::paper::pen::Pen;
use crate::paper::sheet::Sheet;
use crate::paper::strewn::Corner;
use crate::turns::comes_from;
use craft::course::Course;
use craft::plan::Plan;
use craft::quantity::{Read, metres};
use craft::stonework::{self, Crossing, CutReach, CutThrough, Role, Stone};
use craft::wall::{Footing, Section, Side};

/// Height of a usual course at the ground and under the cope (common practice, no source:
/// large stones low, small ones high).
const COURSES_M: [f64; 2] = [0.2, 0.12];
/// A footing thinner than this is drawn without stones.
const THIN_M: f64 = 0.02;

/// The stones of the wall where it is cut, in metres from the middle of the top and up from
/// the ground on the centre line.
pub(crate) struct Laid {
    stones: Vec<(Role, Side, Vec<Corner>)>,
}

/// No stones, for what shows none.
pub(crate) static NO_STONES: Laid = Laid { stones: Vec::new() };

impl Laid {
    /// The stones at station 0. Beds are level, so that they begin at the lowest ground.
    pub(crate) fn at_station_0(plan: &Plan, course: &Course) -> Self {
        let cut = Cut::new(plan, course, crate::paper::scale::Scale::SMALLEST);
        let base = Side::BOTH.map(|side| cut.ground(side));
        let base = base[0].min(base[1]).min(0.0);
        let Some(crossing) = crossing(&cut, base) else {
            return Self { stones: Vec::new() };
        };
        let stones = stonework::cut(&crossing, &[]);
        Self {
            stones: stones
                .iter()
                .map(|stone| placed(&cut, stone, base))
                .collect(),
        }
    }

    fn of(&self, role: Role) -> impl Iterator<Item = &[Corner]> {
        let own = move |stone: &&(Role, Side, Vec<Corner>)| stone.0 == role;
        self.stones
            .iter()
            .filter(own)
            .map(|(.., corners)| corners.as_slice())
    }
}

/// A through where the wall is cut.
pub(crate) struct Through {
    /// Levels of its bed and of its upper side.
    pub(crate) bed: f64,
    pub(crate) over: f64,
    /// From end to end.
    long: f64,
    /// The face it comes from, if it does not cross the wall.
    pub(crate) from: Option<Side>,
}

/// The section down to a level, as the stonework is asked for it.
fn crossing(cut: &Cut<'_>, base: f64) -> Option<Crossing> {
    let (section, wall) = (&cut.plan.section, &cut.course.wall);
    let [left, right] = Side::BOTH.map(|side| section.batter(side));
    let height = section.height() - metres(base);
    let footing = wall.footing.map(|footing| Footing {
        depth: footing.depth + metres(base),
        outset: footing.outset,
    });
    let throughs = cut.throughs().into_iter().map(|through| CutThrough {
        bed: metres(through.bed - base),
        reach: match through.from {
            None => CutReach::Across,
            Some(side) => CutReach::From(side, metres(through.long) - wall.through.projection),
        },
    });
    Some(Crossing {
        section: Section::new(height, section.top_width(), left, right).ok()?,
        throughs: throughs.collect(),
        through_thickness: wall.through.thickness,
        through_projection: wall.through.projection,
        footing: footing.filter(|footing| THIN_M < footing.depth.si()),
        cope_height: metres(0.0),
        course_heights: COURSES_M.map(metres),
        seed: cut.course.seed,
    })
}

/// A stone in its place. Every second one of the back, the long ones, reaches into the
/// drainage stone of a bank; those in a row of throughs are in no course and count for none.
fn placed(cut: &Cut<'_>, stone: &Stone, base: f64) -> (Role, Side, Vec<Corner>) {
    let mut corners: Vec<Corner> = stone
        .outline
        .iter()
        .map(|point| (point.x.si(), point.y.si() + base))
        .collect();
    let (left, right) = span(&corners);
    let middle = (left + right) / 2.0;
    let side = if middle < 0.0 {
        Side::Left
    } else {
        Side::Right
    };
    let top = corners
        .iter()
        .fold(f64::NEG_INFINITY, |top, at| top.max(at.1));
    if let Some(bank) = cut.bank() {
        let tied = stone.role == Role::Face
            && side == bank.side
            && 0 < stone.course
            && is_long(side, stone.course)
            && top < bank.level();
        for (x, _) in corners.iter_mut().filter(|_| tied) {
            if 0.0 < (*x - middle) * outwards(side) {
                *x += outwards(side) * bank.tie();
            }
        }
    }
    (stone.role, side, corners)
}

/// Long and short stones of a face lie by turns, and opposite a long one lies a short one.
fn is_long(side: Side, course: usize) -> bool {
    course.is_multiple_of(2) == (side == Side::Right)
}

/// From the leftmost to the rightmost corner.
fn span(corners: &[Corner]) -> (f64, f64) {
    let all = (f64::INFINITY, f64::NEG_INFINITY);
    corners
        .iter()
        .fold(all, |(left, right), (x, _)| (left.min(*x), right.max(*x)))
}

fn middle(corners: &[Corner]) -> Corner {
    let count = corners.len() as f64;
    let sum = corners
        .iter()
        .fold((0.0, 0.0), |sum, at| (sum.0 + at.0, sum.1 + at.1));
    (sum.0 / count, sum.1 / count)
}

impl Cut<'_> {
    /// The trench and what lies in it.
    pub(crate) fn footing(&self, sheet: &mut Sheet) {
        let (Some((left, left_deep)), Some((right, right_deep))) =
            (self.trench(Side::Left), self.trench(Side::Right))
        else {
            return;
        };
        for stone in self.laid.of(Role::Footing) {
            self.shape(sheet, Pen::Stone, stone);
        }
        let [(_, left_up), (_, right_up)] = Side::BOTH.map(|side| self.toe(side));
        self.shape(
            sheet,
            Pen::Outline,
            &[
                (left, left_up),
                (left, left_deep),
                (right, right_deep),
                (right, right_up),
            ],
        );
    }

    /// The stones of the body.
    pub(crate) fn body(&self, sheet: &mut Sheet) {
        for (role, pen) in [
            (Role::Hearting, Pen::Hearting),
            (Role::Pinning, Pen::Stone),
            (Role::Face, Pen::Stone),
        ] {
            for stone in self.laid.of(role) {
                self.shape(sheet, pen, stone);
            }
        }
    }

    /// The outline of the body, and the throughs over it.
    pub(crate) fn outline(&self, sheet: &mut Sheet) {
        let [left, right] = Side::BOTH.map(|side| self.toe(side));
        let top = Side::BOTH.map(|side| (self.face(side, self.top()), self.top()));
        self.shape(
            sheet,
            Pen::Outline,
            &[left, top[0], top[1], right, (0.0, 0.0)],
        );
        for through in self.throughs() {
            let (bed, over) = (through.bed, through.over);
            let [left, right] = self.through_ends(&through);
            self.shape(
                sheet,
                Pen::Through,
                &[(left, bed), (left, over), (right, over), (right, bed)],
            );
        }
    }

    /// The first through of every row, from the lowest up.
    pub(crate) fn throughs(&self) -> Vec<Through> {
        let thick = self.course.wall.through.thickness.si();
        let mut throughs: Vec<Through> = self
            .plan
            .stone
            .throughs
            .iter()
            .enumerate()
            .map(|(row, it)| Through {
                bed: it.height.si(),
                over: self.top(),
                long: it.length.si(),
                from: comes_from(self.plan, self.course, row, 0),
            })
            .collect();
        throughs.sort_by(|a, b| a.bed.total_cmp(&b.bed));
        let mut next = self.top();
        for through in throughs.iter_mut().rev() {
            through.over = (through.bed + thick).min(next);
            next = through.bed;
        }
        throughs
    }

    /// Where a through ends at the left and at the right: as far apart as the wall is wide at
    /// its bed, and what stands out of both faces; or its own length from the face it comes from.
    pub(crate) fn through_ends(&self, through: &Through) -> [f64; 2] {
        let out = self.course.wall.through.projection.si();
        let mut ends = Side::BOTH.map(|side| self.face(side, through.bed) + outwards(side) * out);
        match through.from {
            None => {}
            Some(Side::Left) => ends[1] = ends[0] + through.long,
            Some(Side::Right) => ends[0] = ends[1] - through.long,
        }
        ends
    }

    /// One cope stone on edge: as wide as the top, as high as the cope, its back rounded.
    pub(crate) fn cope_stone(&self, sheet: &mut Sheet) {
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

    /// The middle of a stone of this kind on a side, the one nearest to a level.
    pub(crate) fn stone_near(&self, role: Role, side: Side, y: f64) -> Option<Corner> {
        let own = self.laid.stones.iter();
        let own = own.filter(|(its, at, _)| *its == role && *at == side);
        own.map(|(.., corners)| middle(corners))
            .min_by(|a, b| (a.1 - y).abs().total_cmp(&(b.1 - y).abs()))
    }

    /// The hearting stone nearest to the middle of the wall at a level.
    pub(crate) fn hearting_near(&self, y: f64) -> Option<Corner> {
        let off = |at: &Corner| at.0.hypot(at.1 - y);
        self.laid
            .of(Role::Hearting)
            .map(middle)
            .min_by(|a, b| off(a).total_cmp(&off(b)))
    }

    /// A place on the tail of the uppermost stone that is tied back into the bank.
    pub(crate) fn tied_stone(&self) -> Option<Corner> {
        let bank = self.bank()?;
        let reach = |corners: &[Corner]| {
            let (_, y) = middle(corners);
            let (left, right) = span(corners);
            let out = if bank.side == Side::Left { left } else { right };
            let beyond = (out - bank.behind(bank.tie() * 0.6, y)) * outwards(bank.side);
            (0.0 < beyond).then_some(y)
        };
        let y = self
            .laid
            .of(Role::Face)
            .filter_map(reach)
            .max_by(f64::total_cmp)?;
        Some((bank.behind(bank.tie() * 0.5, y), y))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture;

    /// The stones keep within the faces, but for the long ones of a back.
    #[test]
    fn stones_keep_within_the_wall() {
        for (name, course) in fixture::courses() {
            let plan = fixture::plan(&course);
            let laid = Laid::at_station_0(&plan, &course);
            let cut = Cut::new(&plan, &course, crate::paper::scale::Scale::SMALLEST);
            assert!(0 < laid.of(Role::Face).count(), "{name}");
            for (role, side, corners) in &laid.stones {
                if !matches!(role, Role::Face | Role::Hearting) {
                    continue;
                }
                let bank = cut.bank().filter(|bank| bank.side == *side);
                let tie = bank.map_or(0.0, |bank| bank.tie());
                for &(x, y) in corners {
                    let out = (x - cut.face(*side, y)) * outwards(*side);
                    assert!(
                        out < tie + 0.02 && y < cut.top() + 0.01,
                        "{name}: {role:?} {out} {y}"
                    );
                }
            }
        }
    }

    #[test]
    fn a_back_has_tied_stones_and_a_free_wall_has_none() {
        for (name, course) in fixture::courses() {
            let plan = fixture::plan(&course);
            let laid = Laid::at_station_0(&plan, &course);
            let cut =
                Cut::new(&plan, &course, crate::paper::scale::Scale::SMALLEST).built_of(&laid);
            assert_eq!(cut.tied_stone().is_some(), cut.bank().is_some(), "{name}");
        }
    }
}
