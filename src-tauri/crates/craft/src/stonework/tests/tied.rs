//! Where no through crosses the wall: each ends short, and the row is closed behind its tail.

use super::super::polygon::{P, bounds, holds};
use super::super::{Crossing, CutReach, Role, Stone, check_cut, cut};
use super::walls::{crossing, short_throughs};
use crate::quantity::{Read, metres};
use crate::wall::{Batter, Section, Side};

/// The left and the right end, and the bed, of every through from below.
fn throughs(stones: &[Stone]) -> Vec<[f64; 3]> {
    let mut found: Vec<[f64; 3]> = stones
        .iter()
        .filter(|stone| stone.role == Role::Through)
        .map(|stone| bounds(&stone.corners()))
        .map(|[left, low, right, _]| [left, right, low])
        .collect();
    found.sort_by(|a, b| a[2].total_cmp(&b[2]));
    found
}

/// By hand: 0.42 + 0.75 / 3 = 0.67 m wide at 0.45 m, the left face 0.335 m off the middle,
/// and 0.67 * 0.75 = 0.5025 m from there 0.1675 m on the right; at 0.85 m 0.53667 m wide, and
/// from the right face at 0.26833 m 0.4025 m back 0.13417 m on the left. The joint at a tail
/// is no wider than 10 mm.
#[test]
fn a_through_from_one_face_ends_short_of_the_other() {
    for seed in (0..20).step_by(2) {
        let found = throughs(&cut(&short_throughs(seed, false), &[]));
        let [lower, upper] = found[..] else {
            panic!("{found:?}");
        };
        assert!(lower[0] < -0.335 && (lower[1] - 0.1675).abs() < 0.01);
        assert!(0.268 < upper[1] && (upper[0] + 0.13417).abs() < 0.01);
    }
}

/// Whether any of these stones covers a point.
fn covered(stones: &[&Stone], at: P) -> bool {
    stones.iter().any(|stone| holds(&stone.corners(), at))
}

/// Of every tail: the share of the room behind it that other stones fill, and of the face there
/// the share in which face stones stand; by looking at 40 by 40 places.
fn behind_tails(crossing: &Crossing, stones: &[Stone]) -> Vec<[f64; 2]> {
    const LOOKS: u32 = 40;
    let shares = || (0..LOOKS).map(|at| (f64::from(at) + 0.5) / f64::from(LOOKS));
    let with = |wanted: &dyn Fn(Role) -> bool| -> Vec<&Stone> {
        stones.iter().filter(|one| wanted(one.role)).collect()
    };
    let others = with(&|role| role != Role::Through);
    let faces = with(&|role| role == Role::Face);
    let section = &crossing.section;
    let out = |side: Side, y: f64| {
        let below = section.height().si() - y;
        section.top_width().si() / 2.0 + below * section.batter(side).lean()
    };
    let behind = |bed: f64, side: Side, reach: f64| {
        let right = if side == Side::Left { 1.0 } else { -1.0 };
        let tail = right * (reach - out(side, bed));
        let (mut filled, mut faced) = (0.0, 0.0);
        for y in shares().map(|share| bed + crossing.through_thickness.si() * share) {
            let face = right * out(side.other(), y);
            faced += f64::from(covered(&faces, [face - right * 0.03, y]));
            let places = shares().map(|share| [tail + (face - tail) * share, y]);
            filled += places
                .map(|at| f64::from(covered(&others, at)))
                .sum::<f64>();
        }
        let looks = f64::from(LOOKS);
        [filled / looks / looks, faced / looks]
    };
    let reaches = crossing.throughs.iter().filter_map(|one| match one.reach {
        CutReach::From(side, reach) => Some(behind(one.bed.si(), side, reach.si())),
        CutReach::Across => None,
    });
    reaches.collect()
}

/// Face stone and hearting fill what is behind a tail but for their joints, in walls from
/// slender to stout.
#[test]
fn behind_every_tail_the_row_is_full() {
    for seed in 0..20 {
        for top_width in [0.2, 0.3, 0.42, 0.8, 1.6] {
            let mut crossing = crossing(seed, false);
            let height = crossing.section.height();
            let six = Batter::one_in(6.0).expect("sound");
            crossing.section = Section::new(height, metres(top_width), six, six).expect("sound");
            for (one, side) in crossing.throughs.iter_mut().zip(Side::BOTH) {
                let reach = crossing.section.width_at(one.bed) * 0.75;
                one.reach = CutReach::From(side, reach);
            }
            let stones = cut(&crossing, &[]);
            let found = behind_tails(&crossing, &stones);
            assert_eq!(found.len(), 2);
            for [filled, faced] in found {
                assert!(
                    0.68 < filled && 0.8 <= faced,
                    "{top_width} {seed}: {filled} {faced}"
                );
            }
            let faults = check_cut(&stones, &crossing.expectations());
            assert!(faults.is_empty(), "{top_width} {seed}: {faults:?}");
        }
    }
}
