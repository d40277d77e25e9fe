//! How the ground and the top of a wall run along its line, at the face that is looked at.

use craft::course::{Course, WallKind};
use craft::plan::Plan;
use craft::quantity::{Read, metres};
use craft::wall::{Across, Piece, Side, Wall};

/// A place in metres: along the centre line, and its level.
pub(crate) type Place = (f64, f64);

/// Ground steeper than this is benched for the footing (common practice, no source).
const STEEP: f64 = 0.1;

/// The face that is looked at: the right one, or the open one of a wall before a bank.
pub(crate) fn seen_side(course: &Course) -> Side {
    match &course.wall.kind {
        WallKind::Retaining(bank) => bank.side.other(),
        WallKind::Freestanding => Side::Right,
    }
}

/// Levels along a wall.
pub(crate) struct Lie<'a> {
    wall: &'a Wall,
    pieces: Vec<Piece>,
    pub(crate) side: Side,
}

impl<'a> Lie<'a> {
    pub(crate) fn of(plan: &'a Plan, course: &Course) -> Self {
        Self {
            wall: &plan.wall,
            pieces: plan.wall.pieces(),
            side: seen_side(course),
        }
    }

    /// The level of the ground at the face that is looked at.
    pub(crate) fn ground(&self, at: f64) -> f64 {
        let across = Across::Face(self.side);
        self.wall.ground.level(across, metres(at)).si()
    }

    /// The underside of the board, or of the cope; at a step, the higher side's.
    pub(crate) fn top(&self, at: f64) -> f64 {
        self.wall.board_level(metres(at)).si()
    }

    /// The ground from one station to another.
    pub(crate) fn ground_line(&self, from: f64, to: f64) -> Vec<Place> {
        self.line(from, to, |_, at| self.ground(at))
    }

    /// The top from one station to another; a step is two places at one station.
    pub(crate) fn top_line(&self, from: f64, to: f64) -> Vec<Place> {
        self.line(from, to, |piece, at| {
            let [start, end] = piece.top.map(Read::si);
            let share = (at - piece.from.si()) / (piece.to - piece.from).si();
            start + (end - start) * share
        })
    }

    fn line(&self, from: f64, to: f64, level: impl Fn(&Piece, f64) -> f64) -> Vec<Place> {
        let mut line: Vec<Place> = Vec::new();
        for piece in &self.pieces {
            let (start, end) = (piece.from.si().max(from), piece.to.si().min(to));
            if end <= start {
                continue;
            }
            for at in [start, end] {
                let place = (at, level(piece, at));
                if line.last().is_none_or(|last| !near(*last, place)) {
                    line.push(place);
                }
            }
        }
        line
    }

    /// The bottom of a trench so deep: parallel to the ground, and where that is steep in
    /// level benches that are as deep on the average.
    pub(crate) fn trench(&self, from: f64, to: f64, deep: f64) -> Vec<Place> {
        let mut bottom = Vec::new();
        for (start, end) in pairs(&self.ground_line(from, to)) {
            if !is_steep(start, end) {
                bottom.extend([(start.0, start.1 - deep), (end.0, end.1 - deep)]);
                continue;
            }
            // No bench is a higher step than the trench is deep.
            let count = ((end.1 - start.1).abs() / deep).ceil().max(1.0);
            for bench in crate::paper::strewn::steps(count) {
                let at = |share: f64| start.0 + (end.0 - start.0) * share / count;
                let level = start.1 + (end.1 - start.1) * (bench + 0.5) / count - deep;
                bottom.extend([(at(bench), level), (at(bench + 1.0), level)]);
            }
        }
        bottom
    }

    pub(crate) fn is_benched(&self) -> bool {
        let all = self.ground_line(0.0, self.length());
        pairs(&all).any(|(start, end)| is_steep(start, end))
    }

    /// The ground at station 0 on the centre line, from which heights are given.
    pub(crate) fn zero(&self) -> f64 {
        self.wall.ground.level(Across::Centre, metres(0.0)).si()
    }

    pub(crate) fn length(&self) -> f64 {
        self.wall.length().si()
    }

    /// Lowest ground and highest top between two stations.
    pub(crate) fn span(&self, from: f64, to: f64) -> (f64, f64) {
        let low = self.ground_line(from, to).into_iter().map(|place| place.1);
        let high = self.top_line(from, to).into_iter().map(|place| place.1);
        (
            low.fold(f64::INFINITY, f64::min),
            high.fold(f64::NEG_INFINITY, f64::max),
        )
    }

    /// Whether the top is at one level all along.
    pub(crate) fn top_is_level(&self) -> bool {
        let top = self.top_line(0.0, self.length());
        pairs(&top).all(|(start, end)| (start.1 - end.1).abs() < 1e-9)
    }

    /// Where the top steps, and by how much it rises there.
    pub(crate) fn steps(&self) -> Vec<(f64, f64)> {
        let top = self.top_line(0.0, self.length());
        pairs(&top)
            .filter(|(start, end)| end.0 - start.0 < 1e-9)
            .map(|(start, end)| (start.0, end.1 - start.1))
            .collect()
    }

    /// Whether the ground lies at other levels at the faces than on the centre line.
    pub(crate) fn leans_across(&self) -> bool {
        let surveyed = self.wall.ground.surveyed();
        surveyed
            .iter()
            .any(|it| it.level != it.left || it.level != it.right)
    }
}

/// Each place of a line with the next.
pub(crate) fn pairs(line: &[Place]) -> impl Iterator<Item = (Place, Place)> + '_ {
    line.windows(2).filter_map(|pair| match pair {
        [start, end] => Some((*start, *end)),
        _ => None,
    })
}

/// The level of a line at a station.
pub(crate) fn level_of(line: &[Place], at: f64) -> Option<f64> {
    pairs(line)
        .find(|(start, end)| start.0 <= at && at <= end.0 && start.0 < end.0)
        .map(|(start, end)| start.1 + (end.1 - start.1) * ((at - start.0) / (end.0 - start.0)))
}

fn near(a: Place, b: Place) -> bool {
    (a.0 - b.0).abs() < 1e-9 && (a.1 - b.1).abs() < 1e-9
}

fn is_steep(start: Place, end: Place) -> bool {
    STEEP * (end.0 - start.0) * (1.0 + 1e-9) < (end.1 - start.1).abs()
}

/// A level as this course writes it.
pub(crate) fn level_shown(course: &Course, level: f64) -> String {
    crate::paper::words::shown(course, craft::quantity::metres(level))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture;

    fn course(name: &str) -> Course {
        let all = fixture::courses();
        let found = all.into_iter().find(|(own, _)| *own == name);
        found.expect("there is such a course").1
    }

    /// By hand: at the right face the ground falls from -0.03 at 0 m to -0.30 at 4 m and
    /// -0.40 at 9 m; the top stays 1.07 m above the centre line's 0 at station 0.
    #[test]
    fn levels_are_those_of_the_face_that_is_seen() {
        let course = course("falling ground, level top");
        let plan = fixture::plan(&course);
        let lie = Lie::of(&plan, &course);
        let ground = lie.ground_line(2.0, 9.0);
        let by_hand = [(2.0, -0.165), (4.0, -0.30), (9.0, -0.40)];
        assert_eq!(ground.len(), 3);
        for (place, hand) in ground.iter().zip(by_hand) {
            assert!((place.0 - hand.0).abs() < 1e-9 && (place.1 - hand.1).abs() < 1e-9);
        }
        assert!(lie.top_is_level() && (lie.top(9.0) - 1.07).abs() < 1e-9);
        assert!(lie.leans_across() && lie.steps().is_empty());
    }

    /// By hand: level lengths of 2 m; at their middles the ground on the centre line has
    /// fallen 0.1875 (3 m), 0.28 (5 m), 0.34 (7 m) and 0.40 m (9 m): one, two, two and three
    /// steps of 0.15 m.
    #[test]
    fn a_stepped_top_has_two_places_at_each_step() {
        let course = course("falling ground, stepped top, raked end");
        let plan = fixture::plan(&course);
        let lie = Lie::of(&plan, &course);
        let steps = lie.steps();
        let by_hand = [(2.0, -0.15), (4.0, -0.15), (8.0, -0.15)];
        assert_eq!(steps.len(), 3);
        for (step, hand) in steps.iter().zip(by_hand) {
            assert!((step.0 - hand.0).abs() < 1e-9 && (step.1 - hand.1).abs() < 1e-9);
        }
        assert!((lie.top(2.0) - 1.07).abs() < 1e-9);
        assert!((lie.top(2.1) - 0.92).abs() < 1e-9);
        let here = lie.top_line(1.0, 3.0);
        assert_eq!(here.len(), 4, "{here:?}");
        assert!((level_of(&here, 2.5).expect("it is there") - 0.92).abs() < 1e-9);
    }

    /// By hand: 1 in 8 over 4 m rises 0.5 m: four benches in a trench 0.15 m deep, the first
    /// 0.0625 m above the lower end's depth.
    #[test]
    fn a_trench_is_benched_only_where_the_ground_is_steep() {
        let mut course = fixture::weekend();
        course.wall.ground = vec![
            fixture::lie::survey(0.0, [0.0; 3]),
            fixture::lie::survey(4.0, [0.5; 3]),
            fixture::lie::survey(9.0, [1.0; 3]),
        ];
        course.wall.top = craft::wall::Top::FollowsGround;
        let plan = fixture::plan(&course);
        let lie = Lie::of(&plan, &course);
        let trench = lie.trench(0.0, 9.0, 0.15);
        assert!(lie.is_benched());
        assert_eq!(trench.len(), 2 * 4 + 2);
        assert!((trench[0].1 - (0.0625 - 0.15)).abs() < 1e-9, "{trench:?}");
        assert!((trench[9].1 - 0.85).abs() < 1e-9);
    }
}
