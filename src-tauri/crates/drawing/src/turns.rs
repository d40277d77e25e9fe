//! Which face a through comes from where none crosses the wall: one and the other in turn.
//!
//! Three-quarter throughs change faces along their row and from row to row, so that neighbours
//! never pull on the same face. All drawings of a wall follow the one rule of [`comes_from`].

use craft::course::{Course, ThroughReach, WallKind};
use craft::plan::Plan;
use craft::quantity::Read;
use craft::wall::Side;

/// The face a through comes from; nothing where throughs cross the wall. `row`: its place in
/// the plan's list; `at`: counted along its row from 0 at station 0.
///
/// The first of the lowest row comes from the left, or from the front of a wall before a bank.
pub(crate) fn comes_from(plan: &Plan, course: &Course, row: usize, at: usize) -> Option<Side> {
    if course.wall.through_reach == ThroughReach::Across {
        return None;
    }
    let first = match &course.wall.kind {
        WallKind::Freestanding => Side::Left,
        WallKind::Retaining(bank) => bank.side.other(),
    };
    let is_first = (from_below(plan, row) + at).is_multiple_of(2);
    Some(if is_first { first } else { first.other() })
}

/// How many of a row's throughs come to a face.
pub(crate) fn come_to(plan: &Plan, course: &Course, row: usize, side: Side) -> usize {
    let count = plan.stone.throughs.get(row).map_or(0, |row| row.count);
    let comes = |at: &usize| comes_from(plan, course, row, *at).is_none_or(|from| from == side);
    (0..count).filter(comes).count()
}

/// The lowest row's place in the plan's list.
pub(crate) fn lowest(plan: &Plan) -> usize {
    let mut rows = 0..plan.stone.throughs.len();
    rows.find(|row| from_below(plan, *row) == 0).unwrap_or(0)
}

/// How many rows lie below this one.
fn from_below(plan: &Plan, row: usize) -> usize {
    let height = |row: usize| {
        plan.stone
            .throughs
            .get(row)
            .map_or(0.0, |it| it.height.si())
    };
    let below = |other: &usize| (height(*other), *other) < (height(row), row);
    (0..plan.stone.throughs.len()).filter(below).count()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture;
    use crate::overlap::words;
    use crate::paper::pen::Pen;
    use crate::paper::scene::{Mark, Room, Scene};
    use crate::paper::text_box::TextBox;

    const PAGE: Room = Room {
        width_mm: 180.0,
        height_mm: 240.0,
    };

    fn course(name: &str) -> (Plan, Course) {
        let mut courses = fixture::courses().into_iter();
        let found = courses.find(|(its, _)| *its == name);
        let course = found.expect("a course of that name").1;
        (fixture::plan(&course), course)
    }

    fn drawn(scene: &Scene, pen: Pen) -> Vec<TextBox> {
        let own = |mark: &&Mark| matches!(mark, Mark::Polygon { pen: its, .. } if *its == pen);
        scene.marks.iter().filter(own).map(Mark::extent).collect()
    }

    const TWO_ROWS: &str = "three-quarter throughs, two rows in a bend, imperial";

    /// The rows are given from the upper one down.
    #[test]
    fn neighbours_along_and_above_come_from_different_faces() {
        let (plan, course) = course(TWO_ROWS);
        let from = |row, at| comes_from(&plan, &course, row, at);
        let (left, right) = (Some(Side::Left), Some(Side::Right));
        assert_eq!([from(1, 0), from(1, 1), from(1, 2)], [left, right, left]);
        assert_eq!([from(0, 0), from(0, 1), from(0, 2)], [right, left, right]);
    }

    #[test]
    fn throughs_across_come_to_both_faces() {
        let (plan, course) = course("weekend");
        assert_eq!(comes_from(&plan, &course, 0, 3), None);
        let both = Side::BOTH.map(|side| come_to(&plan, &course, 0, side));
        assert_eq!(both, [10, 10]);
    }

    /// Of nine the first face has five.
    #[test]
    fn before_a_bank_the_first_comes_from_the_front() {
        for (bank, front) in [(Side::Left, Side::Right), (Side::Right, Side::Left)] {
            let (_, mut course) = course("three-quarter throughs");
            course.wall.kind = WallKind::Retaining(fixture::lie::bank(bank));
            course.wall.length = Some(craft::quantity::metres(8.1));
            let plan = fixture::plan(&course);
            assert_eq!(comes_from(&plan, &course, 0, 0), Some(front));
            assert_eq!(come_to(&plan, &course, 0, front), 5);
            assert_eq!(come_to(&plan, &course, 0, bank), 4);
        }
    }

    /// By hand: ten throughs 0.9 m apart, the first 0.45 m from station 0 and from the left, so
    /// that the right face shows the second, the fourth and so on, about 1.35 m, 3.15 m ...
    /// along: the generator may shift one by 0.02 m.
    #[test]
    fn every_second_through_shows_its_end_in_the_face() {
        let (plan, course) = course("three-quarter throughs");
        let scene = crate::elevation(&plan, &course, PAGE);
        let mm_per_m = 1000.0 / f64::from(scene.scale.expect("to scale"));
        let start = drawn(&scene, Pen::Bar)
            .iter()
            .map(|bar| (bar.left + bar.right) / 2.0)
            .fold(f64::INFINITY, f64::min);
        for (pen, first) in [(Pen::Through, 1.35), (Pen::HiddenThrough, 0.45)] {
            let mut along: Vec<f64> = drawn(&scene, pen)
                .iter()
                .map(|one| ((one.left + one.right) / 2.0 - start) / mm_per_m)
                .collect();
            along.sort_by(f64::total_cmp);
            assert_eq!(along.len(), 5, "{pen:?}");
            for (at, along) in along.iter().enumerate() {
                let by_hand = first + 1.8 * at as f64;
                assert!((along - by_hand).abs() < 0.03, "{pen:?} {along} {by_hand}");
            }
        }
        assert!(words(&scene).contains(&"5 of 10 throughs"));
        for said in [
            "10 three-quarter throughs at 0.55 m, each ",
            "From station 0 on they come from the left and the right face in turn.",
            "5 of the 10 come from this face and show their ends; those from the other are dashed.",
        ] {
            let description = &scene.description;
            assert!(description.contains(said), "{said}\n{description}");
        }
    }

    /// In stretches, beside raked ends and with rows in the ground: as many of each as are
    /// counted for the face, but for those left to be carried on.
    #[test]
    fn each_face_shows_as_many_as_are_counted_for_it() {
        for (name, course) in fixture::courses() {
            let mut course = course;
            course.wall.through_reach = ThroughReach::ThreeQuarters;
            let plan = fixture::plan(&course);
            let scene = crate::elevation(&plan, &course, PAGE);
            let seen = crate::along::lie::seen_side(&course);
            let rows = || 0..plan.stone.throughs.len();
            let count = |side| rows().map(|row| come_to(&plan, &course, row, side)).sum();
            let (here, other): (usize, usize) = (count(seen), count(seen.other()));
            let [shown, hidden, later] =
                [Pen::Through, Pen::HiddenThrough, Pen::Later].map(|pen| drawn(&scene, pen).len());
            assert_eq!(shown + hidden + later, here + other, "{name}");
            assert!(shown <= here && hidden <= other, "{name}: {shown} {hidden}");
            assert!(here - shown <= later, "{name}: {shown} of {here}");
        }
    }

    /// By hand: 1:12, the wall 0.41 + 2 · 0.52 / 6 = 0.58333 m wide at the row; three quarters
    /// are 0.4375 m, 36.458 mm on paper, from the left face 0.29167 m = 24.306 mm off the middle.
    #[test]
    fn a_cut_through_ends_three_quarters_across() {
        let (plan, course) = course("three-quarter throughs");
        let scene = crate::section(&plan, &course, PAGE);
        assert_eq!(scene.scale, Some(12));
        let through = drawn(&scene, Pen::Through)[0];
        let body = *drawn(&scene, Pen::Outline).last().expect("the body");
        let middle = (body.left + body.right) / 2.0;
        assert!((through.width() - 36.458).abs() < 1e-3, "{through:?}");
        assert!((middle - through.left - 24.306).abs() < 1e-3, "{through:?}");
        let said = "Where the wall is cut, throughs come from the left face at 0.55 m; behind each \
                    tail the row is closed with face stone and tight hearting.";
        assert!(scene.description.contains(said), "{}", scene.description);
        let note = "Three-quarter throughs: the next along comes from the other face.";
        assert!(words(&scene).contains(&note));
    }

    /// By hand, two rows that stand out 0.05 m: 0.41 + 0.9 / 3 = 0.71 m wide at 0.5 m and 0.41
    /// + 0.45 / 3 = 0.56 m at 0.95 m, so 0.5825 m and 0.47 m long.
    #[test]
    fn rows_come_from_one_face_and_the_other_by_turns() {
        let (plan, course) = course(TWO_ROWS);
        let scene = crate::section(&plan, &course, PAGE);
        let mm_per_m = 1000.0 / f64::from(scene.scale.expect("to scale"));
        let body = *drawn(&scene, Pen::Outline).last().expect("the body");
        let middle = (body.left + body.right) / 2.0;
        let ends: Vec<[f64; 2]> = drawn(&scene, Pen::Through)
            .iter()
            .map(|one| [one.left, one.right].map(|x| (x - middle) / mm_per_m))
            .collect();
        let by_hand = [[-0.405, 0.1775], [-0.14, 0.33]];
        assert_eq!(ends.len(), 2);
        for (end, hand) in ends.iter().flatten().zip(by_hand.iter().flatten()) {
            assert!((end - hand).abs() < 1e-6, "{ends:?}");
        }
        let said = "in turn in the lower row, the other way round in the upper one.";
        assert!(scene.description.contains(said), "{}", scene.description);
    }

    #[test]
    fn the_part_to_be_named_is_a_three_quarter_through() {
        let (plan, course) = course("three-quarter throughs");
        let (scene, key) = crate::section_blank(&plan, &course, PAGE);
        assert!(key.contains(&('B', "three-quarter through")), "{key:?}");
        assert!(!scene.description.contains("through"));
    }
}
