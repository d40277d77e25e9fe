//! A fault asked for is found where it was asked for, and nothing else is.

use super::super::{
    Fault, FaultKind, PlantedFault, PlantedKind, Point, check, check_cut, cut, lay,
};
use super::walls::{all_shapes, face, sections};
use crate::quantity::{Read, metres};

const IN_A_FACE: [(PlantedKind, FaultKind); 3] = [
    (PlantedKind::RunningJoint, FaultKind::RunningJoint),
    (PlantedKind::Traced, FaultKind::Traced),
    (PlantedKind::MissingThrough, FaultKind::MissingThrough),
];

fn planted(kind: PlantedKind, x: f64, y: f64) -> PlantedFault {
    PlantedFault::new(kind, metres(x), metres(y))
}

fn apart(fault: &Fault, near: Point) -> f64 {
    let [x, y] = fault.at.in_metres();
    let [a, b] = near.in_metres();
    (x - a).hypot(y - b)
}

#[test]
fn each_fault_is_found_where_it_was_planted_and_nothing_else() {
    for seed in 0..12 {
        for (kind, found_as) in IN_A_FACE {
            let face = face(8.0, &[[0.0, 0.0]], &[[0.0, 1.2]], seed);
            let fault = planted(kind, 2.5 + 0.3 * seed as f64, 0.5);
            let found = check(&lay(&face, &[fault]), &face.expectations());
            assert_eq!(found.len(), 1, "{seed} {kind:?}: {found:?}");
            assert_eq!(found[0].kind, found_as, "{seed}: {found:?}");
            let off = apart(&found[0], fault.near);
            assert!(off < 0.8, "{seed} {kind:?}: {off} {found:?}");
        }
    }
}

#[test]
fn a_planted_joint_runs_through_three_courses() {
    for seed in 0..6 {
        let face = face(8.0, &[[0.0, 0.0]], &[[0.0, 1.2]], seed);
        let faults = [planted(PlantedKind::RunningJoint, 4.0, 0.5)];
        let found = check(&lay(&face, &faults), &face.expectations());
        let high = found[0].size.si();
        assert!((0.25..0.5).contains(&high), "{high}");
        assert_eq!(found[0].stones.len(), 6);
    }
}

#[test]
fn four_faults_in_one_wall_are_all_found() {
    for seed in 0..8 {
        let face = face(14.0, &[[0.0, 0.0]], &[[0.0, 1.2]], seed);
        let faults = [
            planted(PlantedKind::RunningJoint, 2.5, 0.4),
            planted(PlantedKind::Traced, 5.5, 0.3),
            planted(PlantedKind::RunningJoint, 8.5, 0.8),
            planted(PlantedKind::MissingThrough, 11.2, 0.65),
        ];
        let mut found = check(&lay(&face, &faults), &face.expectations());
        found.sort_by(|a, b| a.at.x.si().total_cmp(&b.at.x.si()));
        let kinds: Vec<FaultKind> = found.iter().map(|one| one.kind).collect();
        let wanted = [
            FaultKind::RunningJoint,
            FaultKind::Traced,
            FaultKind::RunningJoint,
            FaultKind::MissingThrough,
        ];
        assert_eq!(kinds, wanted, "{seed}: {found:?}");
    }
}

#[test]
fn faults_are_found_on_slopes_and_under_steps() {
    for seed in 0..3 {
        for (name, face) in all_shapes(seed) {
            for (kind, found_as) in IN_A_FACE {
                let none = kind == PlantedKind::MissingThrough && face.throughs.is_empty();
                if none || name == "short" {
                    continue;
                }
                let top = super::super::levels::Levels::new(&face.top).at(3.0);
                let fault = planted(kind, 3.0, top - 0.55);
                let found = check(&lay(&face, &[fault]), &face.expectations());
                assert_eq!(found.len(), 1, "{name} {seed} {kind:?}: {found:?}");
                assert_eq!(found[0].kind, found_as, "{name} {seed}: {found:?}");
                assert!(apart(&found[0], fault.near) < 1.6, "{name}: {found:?}");
            }
        }
    }
}

/// A stretch of 1 m between built ends has no room for six stones beside a joint.
#[test]
fn a_fault_that_has_no_room_is_left_out() {
    let face = face(1.0, &[[0.0, 0.0]], &[[0.0, 1.0]], 3);
    let fault = planted(PlantedKind::RunningJoint, 0.5, 0.5);
    assert_eq!(lay(&face, &[fault]), lay(&face, &[]));
}

#[test]
fn each_fault_of_a_section_is_found_and_nothing_else() {
    for seed in 0..24 {
        for crossing in sections(seed) {
            let side = if seed % 2 == 0 { -0.3 } else { 0.3 };
            for (kind, found_as, x, y) in [
                (PlantedKind::Traced, FaultKind::Traced, side, 0.25),
                (
                    PlantedKind::MissingThrough,
                    FaultKind::MissingThrough,
                    0.0,
                    0.85,
                ),
                (
                    PlantedKind::HollowHearting,
                    FaultKind::HollowHearting,
                    0.0,
                    0.3,
                ),
            ] {
                let fault = planted(kind, x, y);
                let found = check_cut(&cut(&crossing, &[fault]), &crossing.expectations());
                assert_eq!(found.len(), 1, "{seed} {kind:?}: {found:?}");
                assert_eq!(found[0].kind, found_as);
                assert!(apart(&found[0], fault.near) < 0.3, "{seed}: {found:?}");
            }
        }
    }
}
