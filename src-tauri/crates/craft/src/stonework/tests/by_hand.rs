//! The eye tried on small tables of stones that were never laid by the generator.

use super::super::{
    Expectations, ExpectedCut, ExpectedRow, Fault, FaultKind, Role, Stone, check, check_cut,
};
use super::walls::point;
use crate::quantity::{Read, metres};
use crate::wall::{Batter, Section};

/// A plain block: from, to, low, high and into in millimetres.
type Block = [f64; 5];

fn stones(blocks: &[Block]) -> Vec<Stone> {
    blocks
        .iter()
        .map(|block| stone(*block, Role::Face))
        .collect()
}

fn stone(block: Block, role: Role) -> Stone {
    let [from, to, low, high, into] = block.map(|mm| mm / 1000.0);
    Stone {
        outline: vec![
            point(from, low),
            point(to, low),
            point(to, high),
            point(from, high),
        ],
        role,
        course: 0,
        into: metres(into),
    }
}

fn seen(blocks: &[Block]) -> Vec<Fault> {
    check(&stones(blocks), &Expectations::default())
}

#[test]
fn a_sound_bond_has_no_fault() {
    assert!(
        seen(&[
            [0.0, 200.0, 0.0, 100.0, 300.0],
            [208.0, 400.0, 0.0, 100.0, 300.0],
            [0.0, 100.0, 108.0, 200.0, 300.0],
            [108.0, 300.0, 108.0, 200.0, 300.0],
            [308.0, 400.0, 108.0, 200.0, 300.0],
        ])
        .is_empty()
    );
}

/// The joint at 204 mm is through both courses; the one above is 100 mm off.
#[test]
fn a_joint_over_a_joint_runs() {
    let found = seen(&[
        [0.0, 200.0, 0.0, 100.0, 300.0],
        [208.0, 400.0, 0.0, 100.0, 300.0],
        [0.0, 210.0, 108.0, 200.0, 300.0],
        [218.0, 400.0, 108.0, 200.0, 300.0],
        [0.0, 100.0, 208.0, 300.0, 300.0],
        [108.0, 400.0, 208.0, 300.0, 400.0],
    ]);
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!(found[0].kind, FaultKind::RunningJoint);
    assert_eq!(found[0].stones, [0, 1, 2, 3]);
    assert!((found[0].at.x.si() - 0.209).abs() < 1e-9);
    assert!((found[0].at.y.si() - 0.1).abs() < 1e-9);
    assert!((found[0].size.si() - 0.2).abs() < 1e-9);
}

#[test]
fn a_joint_through_three_courses_runs() {
    let found = seen(&[
        [0.0, 200.0, 0.0, 100.0, 300.0],
        [208.0, 400.0, 0.0, 100.0, 300.0],
        [0.0, 205.0, 108.0, 200.0, 300.0],
        [213.0, 400.0, 108.0, 200.0, 300.0],
        [0.0, 195.0, 208.0, 300.0, 300.0],
        [203.0, 400.0, 208.0, 300.0, 300.0],
    ]);
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!(found[0].kind, FaultKind::RunningJoint);
    assert!((found[0].size.si() - 0.3).abs() < 1e-9);
}

/// Two courses beside one tall stone, and three: the joint is that stone's own end.
#[test]
fn thin_stones_beside_a_tall_one_are_sound() {
    for thin in [2, 3] {
        let rise = 200.0 / f64::from(thin);
        let mut blocks = vec![[0.0, 200.0, 0.0, 200.0, 300.0]];
        for i in 0..thin {
            let low = rise * f64::from(i);
            blocks.push([208.0, 400.0, low, low + rise - 8.0, 300.0]);
        }
        blocks.push([0.0, 400.0, 208.0, 300.0, 500.0]);
        assert!(seen(&blocks).is_empty(), "{thin}");
    }
}

/// Two stones of different height on each side interlock nowhere: a straight joint.
#[test]
fn a_zigzag_of_beds_does_not_hide_a_straight_joint() {
    let found = seen(&[
        [0.0, 200.0, 0.0, 150.0, 300.0],
        [0.0, 200.0, 158.0, 300.0, 300.0],
        [208.0, 400.0, 0.0, 80.0, 300.0],
        [208.0, 400.0, 88.0, 220.0, 300.0],
        [208.0, 400.0, 228.0, 300.0, 300.0],
    ]);
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!(found[0].kind, FaultKind::RunningJoint);
    assert_eq!(found[0].stones.len(), 5);
}

/// By hand: laps of 30 and 45 mm, under and over the least of 35.
#[test]
fn a_lap_counts_from_its_least() {
    for (lap, faults) in [(30.0, 1), (45.0, 0)] {
        let found = seen(&[
            [0.0, 200.0, 0.0, 100.0, 300.0],
            [208.0, 400.0, 0.0, 100.0, 300.0],
            [0.0, 200.0 + lap, 108.0, 200.0, 300.0],
            [208.0 + lap, 400.0, 108.0, 200.0, 300.0],
        ]);
        assert_eq!(found.len(), faults, "{lap}: {found:?}");
    }
}

/// A thin stone, even one 28 mm thick, crosses the joint it lies on.
#[test]
fn a_thin_stone_crosses_a_joint() {
    let found = seen(&[
        [0.0, 200.0, 0.0, 100.0, 300.0],
        [208.0, 400.0, 0.0, 100.0, 300.0],
        [0.0, 400.0, 104.0, 132.0, 500.0],
        [0.0, 200.0, 136.0, 230.0, 300.0],
        [208.0, 400.0, 136.0, 230.0, 300.0],
    ]);
    assert!(found.is_empty(), "{found:?}");
}

/// A pinning of 30 by 40 mm in the joint neither makes nor hides one.
#[test]
fn a_pinning_hides_no_joint() {
    let found = seen(&[
        [0.0, 180.0, 0.0, 100.0, 300.0],
        [182.0, 206.0, 60.0, 100.0, 80.0],
        [208.0, 400.0, 0.0, 100.0, 300.0],
        [0.0, 180.0, 108.0, 200.0, 300.0],
        [188.0, 400.0, 108.0, 200.0, 300.0],
    ]);
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!(found[0].kind, FaultKind::RunningJoint);
}

/// The course a stone says it is in and what it says it does count for nothing.
#[test]
fn only_outlines_count() {
    let mut all = stones(&[
        [0.0, 200.0, 0.0, 100.0, 300.0],
        [208.0, 400.0, 0.0, 100.0, 300.0],
        [0.0, 200.0, 108.0, 200.0, 300.0],
        [208.0, 400.0, 108.0, 200.0, 300.0],
    ]);
    let plain = check(&all, &Expectations::default());
    for (i, one) in all.iter_mut().enumerate() {
        one.course = 17 * i % 5;
        one.role = [Role::EndLong, Role::Footing, Role::EndShort, Role::Face][i];
    }
    assert_eq!(plain.len(), 1);
    assert_eq!(check(&all, &Expectations::default()), plain);
    all.reverse();
    assert_eq!(check(&all, &Expectations::default()).len(), 1);
}

/// 400 mm along and 200 mm in is half: traced. 250 mm in is more than 0.6: not.
#[test]
fn a_stone_with_its_length_along_is_traced() {
    let found = seen(&[
        [0.0, 400.0, 0.0, 100.0, 200.0],
        [410.0, 810.0, 0.0, 100.0, 250.0],
    ]);
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!(found[0].kind, FaultKind::Traced);
    assert_eq!(found[0].stones, [0]);
}

#[test]
fn copes_have_no_bond() {
    let mut all = Vec::new();
    for low in [0.0, 108.0, 216.0] {
        all.push(stone([0.0, 100.0, low, low + 100.0, 400.0], Role::Cope));
        all.push(stone([104.0, 200.0, low, low + 100.0, 40.0], Role::Cope));
    }
    assert!(check(&all, &Expectations::default()).is_empty());
}

fn row(at: &[f64]) -> (Vec<Stone>, Expectations) {
    let stones = at
        .iter()
        .map(|x| stone([x - 150.0, x + 150.0, 550.0, 660.0, 600.0], Role::Through))
        .collect();
    let line = vec![point(0.0, 0.55), point(4.0, 0.55)];
    let spacing = metres(1.0);
    let rows = vec![ExpectedRow { line, spacing }];
    (stones, Expectations { rows })
}

#[test]
fn gaps_in_a_row_of_throughs_are_found() {
    for (at, gaps) in [
        (vec![500.0, 1500.0, 2500.0, 3500.0], vec![]),
        (vec![500.0, 1500.0, 3500.0], vec![2.5]),
        (vec![1500.0, 2500.0, 3500.0], vec![0.75]),
        (vec![500.0, 1500.0], vec![2.75]),
        (vec![], vec![2.0]),
    ] {
        let (stones, expected) = row(&at);
        let found: Vec<f64> = check(&stones, &expected)
            .iter()
            .filter(|one| one.kind == FaultKind::MissingThrough)
            .map(|one| one.at.x.si())
            .collect();
        assert_eq!(found, gaps, "{at:?}");
    }
}

/// A section 0.4 m wide and 0.3 m high, its faces plumb, all in blocks but for one place.
fn section(gap: f64) -> (Vec<Stone>, ExpectedCut) {
    let plumb = Batter::PLUMB;
    let section = Section::new(metres(0.3), metres(0.4), plumb, plumb).expect("sound");
    let mut all = Vec::new();
    for low in [0.0, 100.0, 200.0] {
        all.push(stone([-200.0, -60.0, low, low + 98.0, 140.0], Role::Face));
        all.push(stone([60.0, 200.0, low, low + 98.0, 140.0], Role::Face));
        let from = if low > 50.0 && low < 150.0 {
            -58.0 + gap
        } else {
            -58.0
        };
        all.push(stone([from, 58.0, low, low + 98.0, 116.0], Role::Hearting));
    }
    let through_rows = Vec::new();
    (
        all,
        ExpectedCut {
            section,
            through_rows,
        },
    )
}

/// The gap is between 100 and 198 mm up, from -60 mm on.
#[test]
fn a_hole_in_the_hearting_is_found_by_its_width() {
    for (gap, faults) in [(0.0, 0), (40.0, 0), (85.0, 1)] {
        let (stones, expected) = section(gap);
        let found = check_cut(&stones, &expected);
        assert_eq!(found.len(), faults, "{gap}: {found:?}");
        for one in &found {
            assert_eq!(one.kind, FaultKind::HollowHearting);
            assert!((one.size.si() - 0.085).abs() < 0.015, "{one:?}");
            assert!((one.at.x.si() + 0.017).abs() < 0.02, "{one:?}");
            assert!((one.at.y.si() - 0.15).abs() < 0.02, "{one:?}");
        }
    }
}

#[test]
fn a_skin_and_a_missing_through_are_found_in_a_section() {
    let (mut stones, mut expected) = section(0.0);
    stones[0] = stone([-200.0, -140.0, 0.0, 98.0, 60.0], Role::Face);
    stones.push(stone([-138.0, -60.0, 0.0, 98.0, 78.0], Role::Hearting));
    expected.through_rows = vec![metres(0.1)];
    let kinds: Vec<FaultKind> = check_cut(&stones, &expected)
        .iter()
        .map(|one| one.kind)
        .collect();
    assert_eq!(kinds, [FaultKind::Traced, FaultKind::MissingThrough]);
    stones.push(stone([-220.0, 220.0, 100.0, 198.0, 440.0], Role::Through));
    assert_eq!(check_cut(&stones, &expected).len(), 1);
}
