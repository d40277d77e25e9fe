//! The ranges held against plain sampling of the figures they rest on.

use super::*;
use crate::course::OldWall;
use crate::quantity::{Units, metres};
use crate::tables::StoneTable;
use crate::wall::{Batter, Ground, Line, Section, Top};
use crate::worksheet::sample;
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::SeedableRng;
use rand_distr::{Distribution, StandardNormal};

const DRAWS: usize = 40_000;

struct Case {
    name: &'static str,
    change: fn(&mut StoneGiven),
}

const CASES: &[Case] = &[
    Case {
        name: "everything to be delivered",
        change: |_| {},
    },
    Case {
        name: "half lies there in a heap",
        change: |given| given.on_site = OnSite::Heap(tonnes(8.0)),
    },
    Case {
        name: "some kinds lie there",
        change: |given| {
            given.on_site = OnSite::ByKind(vec![
                (StoneKind::Face, tonnes(3.0)),
                (StoneKind::Hearting, tonnes(1.0)),
            ]);
        },
    },
    Case {
        name: "an old wall is stripped out",
        change: |given| {
            given.old_wall = Some(OldWall {
                length: metres(6.0),
                height: metres(1.0),
                base_width: metres(0.7),
                top_width: metres(0.4),
                cope_height: metres(0.25),
                footing: None,
                reused: None,
            });
        },
    },
    Case {
        name: "almost enough lies there",
        change: |given| given.on_site = OnSite::Heap(tonnes(13.5)),
    },
];

fn table() -> StoneTable {
    let mut table = sample::tables().stone;
    table.voids.low = 0.2;
    table.voids.high = 0.35;
    table.waste.low = 0.1;
    table.waste.high = 0.3;
    table.hearting_share.low = 0.15;
    table.hearting_share.high = 0.3;
    table.reused.low = 0.65;
    table.reused.high = 0.9;
    table
}

/// A course with a wall of 9 m and a straight line for it to stand on.
fn wall() -> (crate::course::WallGiven, Wall) {
    let mut given = sample::course(Units::Metric, 1).wall;
    given.cope_height = metres(0.25);
    let section = Section::new(metres(1.0), metres(0.4), Batter::PLUMB, Batter::PLUMB);
    let standing = Wall {
        section: section.expect("a section"),
        line: Line::of_length(&[], metres(9.0)),
        ground: Ground::new(Vec::new()),
        top: Top::Level,
    };
    (given, standing)
}

/// The percentile of a sorted list.
fn at(sorted: &[f64], share: f64) -> f64 {
    sorted[whole_number(share * (sorted.len() - 1) as f64)]
}

#[test]
fn low_and_high_are_what_sampling_finds() {
    let (wall, standing) = wall();
    let volumes = Volumes::of(&standing, None, wall.cope_height);
    let table = table();
    for case in CASES {
        let mut given = sample::course(Units::Metric, 1).stone;
        (case.change)(&mut given);
        let stone = Stone::of(&wall, &standing, &volumes, &given, &table).expect("stone");
        let sums = Sums {
            makeup: &stone.makeup,
            volumes: &volumes,
            throughs: through_volume(&stone.throughs, stone.density),
            given: &given,
        };
        let mut luck = ChaCha8Rng::seed_from_u64(7);
        let mut drawn: Vec<[f64; 3]> = (0..DRAWS)
            .map(|_| {
                let z: [f64; FIGURES] = std::array::from_fn(|_| StandardNormal.sample(&mut luck));
                let at = sums.makeup.at(&z);
                let wanted = sums.wanted(&at);
                [
                    There::of(&given, &at).lacking(&wanted).si(),
                    kinds::total(&sums.built(&at)).si(),
                    kinds::one(&sums.built(&at), StoneKind::Hearting).si(),
                ]
            })
            .collect();
        let hearting = stone
            .kinds
            .iter()
            .find(|it| it.kind == StoneKind::Hearting)
            .expect("hearting");
        let ranges = [
            ("to deliver", stone.to_deliver),
            ("built", stone.built_range),
            ("hearting", hearting.built),
        ];
        for (column, (what, range)) in ranges.iter().enumerate() {
            drawn.sort_by(|a, b| a[column].total_cmp(&b[column]));
            let sorted: Vec<f64> = drawn.iter().map(|row| row[column]).collect();
            // Of what is wanted in all, so that a small remainder may be off by as much.
            let scale = kinds::total(&sums.wanted(&sums.makeup.centre())).si();
            let scale = if *what == "hearting" {
                range.mid.si()
            } else {
                scale
            };
            for (share, ours) in [(0.1, range.low), (0.5, range.mid), (0.9, range.high)] {
                let off = (ours.si() - at(&sorted, share)) / scale;
                assert!(
                    off.abs() < 0.03,
                    "{}, {what}, {share}: {} but sampling finds {}",
                    case.name,
                    ours.si(),
                    at(&sorted, share)
                );
            }
        }
    }
}
