//! Volumes by other roads: rings of revolution, slices summed, and what must not matter.

use super::*;
use crate::wall::{Batter, Bend, Ground, Line, Stretch, Survey, Top};
use proptest::prelude::*;
use std::f64::consts::TAU;

fn section(height: f64, top: f64, left: f64, right: f64) -> Section {
    let batter = |n| Batter::one_in(n).expect("more than nothing");
    Section::new(metres(height), metres(top), batter(left), batter(right)).expect("sound")
}

fn arc(length: f64, radius: f64, turn: Side) -> Stretch {
    Stretch {
        length: metres(length),
        bend: Some(Bend {
            radius: metres(radius),
            turn,
        }),
    }
}

fn survey(station: f64, level: f64) -> Survey {
    Survey {
        station: metres(station),
        level: metres(level),
        left: metres(level),
        right: metres(level),
    }
}

fn wall(section: Section, stretches: &[Stretch], ground: Vec<Survey>) -> Wall {
    Wall {
        section,
        line: Line::of_length(stretches, crate::wall::total(stretches)),
        ground: Ground::new(ground),
        top: Top::Level,
    }
}

fn body_of(wall: &Wall) -> f64 {
    Volumes::of(wall, None, metres(0.0)).body.si()
}

/// A ring is a solid of revolution: by thin shells at the faces, `∫ 2π r h(r) dr` summed over
/// level rings `π (r_out² - r_in²) dz`. Nothing here uses a centroid.
#[test]
fn a_ring_with_unequal_batters_is_a_solid_of_revolution() {
    let radius = 2.5;
    for (turn, outer, inner) in [(Side::Left, 8.0, 5.0), (Side::Right, 5.0, 8.0)] {
        let ring = wall(
            section(1.2, 0.4, 5.0, 8.0),
            &[arc(TAU * radius, radius, turn)],
            vec![],
        );
        assert!(ring.is_ring());
        let slices = 20_000;
        let thick = 1.2 / f64::from(slices);
        let summed: f64 = (0..slices)
            .map(|slice| {
                let depth = (f64::from(slice) + 0.5) * thick;
                let (out, within) = (radius + 0.2 + depth / outer, radius - 0.2 - depth / inner);
                TAU / 2.0 * (out * out - within * within) * thick
            })
            .sum();
        assert!((body_of(&ring) / summed - 1.0).abs() < 1e-8, "{turn:?}");
        let footing = Footing {
            depth: metres(0.15),
            outset: metres(0.05),
        };
        let volumes = Volumes::of(&ring, Some(footing), metres(0.25));
        let (out, within) = (radius + 0.25 + 1.2 / outer, radius - 0.25 - 1.2 / inner);
        let trench = TAU / 2.0 * (out * out - within * within) * 0.15;
        assert!((volumes.footing.si() / trench - 1.0).abs() < 1e-12);
    }
}

/// By hand: a wedge-ended wall, the top level, the ground rising evenly from 1.2 m below the
/// top to 0.6 m: Simpson's rule (the prismoidal formula) on the end and middle sections.
#[test]
fn a_slope_by_the_prismoidal_formula() {
    let it = section(1.2, 0.4, 6.0, 6.0);
    let wall = wall(
        it,
        &[Stretch {
            length: metres(9.0),
            bend: None,
        }],
        vec![survey(0.0, 0.0), survey(9.0, 0.6)],
    );
    // 0.4 · 1.2 + 1.2²/6 = 0.72; 0.4 · 0.9 + 0.9²/6 = 0.495; 0.4 · 0.6 + 0.6²/6 = 0.3.
    let prismoid = 9.0 / 6.0 * (0.72 + 4.0 * 0.495 + 0.3);
    assert!((body_of(&wall) - prismoid).abs() < 1e-12);
    let faces = Volumes::of(&wall, None, metres(0.0)).face.si();
    assert!((faces - 9.0 * 0.9).abs() < 1e-12);
}

/// Where the ground rises past a row there is nothing of the wall below it.
#[test]
fn what_lies_above_a_row_where_the_ground_rises_past_it() {
    let wall = wall(
        section(1.0, 0.4, 8.0, 8.0),
        &[Stretch {
            length: metres(10.0),
            bend: None,
        }],
        vec![survey(0.0, 0.0), survey(10.0, 0.8)],
    );
    let slices = 40_000;
    let step = 10.0 / f64::from(slices);
    let summed: f64 = (0..slices)
        .map(|slice| {
            let height = 1.0 - 0.08 * (f64::from(slice) + 0.5) * step;
            let depth = height.min(1.0 - 0.4);
            (0.4 * depth + depth * depth / 8.0) * step
        })
        .sum();
    assert!((wall.body_above(metres(0.4)).si() - summed).abs() < 1e-7);
}

/// A made-up wall on a bent line and on made-up ground.
fn any_wall() -> impl Strategy<Value = Wall> {
    let stretch =
        (0.5..6.0_f64, 1.5..30.0_f64, 0..3_u8).prop_map(|(length, radius, kind)| match kind {
            0 => Stretch {
                length: metres(length),
                bend: None,
            },
            1 => arc(length, radius, Side::Left),
            _ => arc(length, radius, Side::Right),
        });
    let levels = prop::collection::vec((0.0..20.0_f64, -0.5..0.5_f64), 0..5);
    let stretches = prop::collection::vec(stretch, 1..5);
    (
        stretches,
        levels,
        0.9..1.5_f64,
        0.3..0.5_f64,
        4.0..12.0_f64,
        4.0..12.0_f64,
    )
        .prop_map(|(stretches, levels, height, top, left, right)| {
            let ground = levels.into_iter().map(|(at, level)| survey(at, level));
            wall(
                section(height, top, left, right),
                &stretches,
                ground.collect(),
            )
        })
}

fn turned_over(wall: &Wall, at: impl Fn(Length) -> Length, swap: bool) -> Wall {
    let mut other = wall.clone();
    let ground = wall.ground.surveyed().iter().map(|survey| Survey {
        station: at(survey.station),
        ..*survey
    });
    other.ground = Ground::new(ground.collect());
    if swap {
        let [left, right] = [Side::Left, Side::Right].map(|side| wall.section.batter(side));
        let (height, top) = (wall.section.height(), wall.section.top_width());
        other.section = Section::new(height, top, right, left).expect("sound");
    }
    other
}

fn opposite(bend: Bend) -> Bend {
    Bend {
        turn: bend.turn.other(),
        ..bend
    }
}

fn all_of(wall: &Wall) -> [f64; 3] {
    let footing = Footing {
        depth: metres(0.2),
        outset: metres(0.05),
    };
    let volumes = Volumes::of(wall, Some(footing), metres(0.2));
    [volumes.body.si(), volumes.footing.si(), volumes.face.si()]
}

fn alike(one: [f64; 3], other: [f64; 3]) -> Result<(), TestCaseError> {
    for (one, other) in one.into_iter().zip(other) {
        prop_assert!(
            (one - other).abs() <= 1e-9 * (1.0 + other.abs()),
            "{one} {other}"
        );
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// A station more, at the level the ground has there anyway, and a stretch cut in two.
    #[test]
    fn refining_stations_changes_nothing(wall in any_wall(), at in 0.0..1.0_f64) {
        let station = wall.length() * at;
        let mut finer = wall.clone();
        let level = wall.ground.level(crate::wall::Across::Centre, station);
        let mut surveyed = wall.ground.surveyed().to_vec();
        if !surveyed.is_empty() {
            surveyed.push(survey(station.si(), level.si()));
        }
        finer.ground = Ground::new(surveyed);
        let halves = wall.line.stretches().iter().flat_map(|one| {
            let half = Stretch { length: one.length / 2.0, ..*one };
            [half, half]
        });
        finer.line = Line::of_length(&halves.collect::<Vec<_>>(), wall.length());
        alike(all_of(&wall), all_of(&finer))?;
    }

    /// The mirror image: left for right in every turn and both batters.
    #[test]
    fn left_and_right_turns_mirror(wall in any_wall()) {
        let mut mirrored = turned_over(&wall, |at| at, true);
        let turned: Vec<Stretch> = wall.line.stretches().iter().map(|one| Stretch {
            bend: one.bend.map(opposite),
            ..*one
        }).collect();
        mirrored.line = Line::of_length(&turned, wall.length());
        alike(all_of(&wall), all_of(&mirrored))?;
    }

    /// From the far end the same wall: stretches and ground in the other order, left for right.
    #[test]
    fn reversing_the_line_changes_nothing(wall in any_wall()) {
        let length = wall.length();
        let mut from_behind = turned_over(&wall, |at| length - at, true);
        let turned: Vec<Stretch> = wall.line.stretches().iter().rev().map(|one| Stretch {
            bend: one.bend.map(opposite),
            ..*one
        }).collect();
        from_behind.line = Line::of_length(&turned, length);
        // The height is given at station 0, which is now the other end.
        let (first, far) = (wall.top_level(metres(0.0)), length);
        let height = first - wall.ground.level(crate::wall::Across::Centre, far);
        let section = from_behind.section;
        from_behind.section = Section::new(
            height,
            section.top_width(),
            section.batter(Side::Left),
            section.batter(Side::Right),
        ).expect("sound");
        alike(all_of(&wall), all_of(&from_behind))?;
    }

    #[test]
    fn a_huge_radius_tends_to_the_straight(wall in any_wall()) {
        let bent: Vec<Stretch> = wall.line.stretches().iter().map(|one| {
            arc(one.length.si(), 1e9, Side::Left)
        }).collect();
        let mut vast = wall.clone();
        vast.line = Line::of_length(&bent, wall.length());
        let mut straight = wall.clone();
        straight.line = Line::straight(wall.length());
        for (one, other) in all_of(&vast).into_iter().zip(all_of(&straight)) {
            prop_assert!((one / other - 1.0).abs() < 1e-8);
        }
    }
}
