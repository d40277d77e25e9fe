//! What must hold of every heap plan, drawn at random: sums, clearances, nothing over another.

use super::shape::{laid, ridge};
use super::tests::{asked, by_kind, table};
use super::*;
use crate::quantity::{kg_per_m3, metres};
use crate::tables::Lie;
use crate::wall::{Batter, Bend, Ground, Line, Place, Section, Stretch, Survey, Top, total};
use proptest::prelude::*;
use std::f64::consts::TAU;

/// Rounding, in metres, and what an arc taken in straight pieces is off.
const OFF_M: f64 = 0.004;

/// A wall and what has to be laid beside it.
#[derive(Debug, Clone)]
struct Case {
    wall: Wall,
    stone: Vec<(StoneKind, Mass)>,
    drainage: f64,
    footing: Option<Footing>,
    bank: Option<Side>,
    ends: [End; 2],
    joints: Vec<Length>,
}

impl Case {
    fn asked(&self) -> HeapsAsked<'_> {
        HeapsAsked {
            density: kg_per_m3(2600.0),
            drainage: Some((
                cubic_metres(self.drainage),
                kilograms(self.drainage * 1600.0),
            )),
            longest_through: Some(metres(0.65)),
            footing: self.footing,
            bank: self.bank,
            ends: self.ends,
            stint_joints: &self.joints,
            ..asked(&self.wall, &self.stone)
        }
    }

    fn edge(&self, side: Side, station: f64) -> (f64, f64) {
        let face = self.wall.offset(side, metres(station)).si();
        (face, face + self.footing.map_or(0.0, |it| it.outset.si()))
    }
}

fn side() -> impl Strategy<Value = Side> {
    prop_oneof![Just(Side::Left), Just(Side::Right)]
}

fn end() -> impl Strategy<Value = End> {
    prop_oneof![Just(End::Head), Just(End::Joined), Just(End::Raked)]
}

/// Short and long, straight, winding, closed.
fn line() -> impl Strategy<Value = Line> {
    let stretch = (0.3_f64..25.0, 0.9_f64..14.0, side(), prop::bool::ANY).prop_map(
        |(length, radius, turn, bent)| Stretch {
            // An arc of more than a whole turn would run into itself.
            length: metres(if bent {
                length.min(TAU * radius)
            } else {
                length
            }),
            bend: bent.then_some(Bend {
                radius: metres(radius),
                turn,
            }),
        },
    );
    let winding = prop::collection::vec(stretch, 1..6);
    let winding = winding.prop_map(|it| Line::of_length(&it, total(&it)));
    let ring = (1.0_f64..9.0, side()).prop_map(|(radius, turn)| {
        let whole = Stretch {
            length: metres(TAU * radius),
            bend: Some(Bend {
                radius: metres(radius),
                turn,
            }),
        };
        Line::of_length(&[whole], whole.length)
    });
    prop_oneof![
        1 => (0.02_f64..3.0).prop_map(|length| Line::straight(metres(length))),
        2 => (3.0_f64..100.0).prop_map(|length| Line::straight(metres(length))),
        4 => winding,
        1 => ring,
    ]
}

fn mass() -> impl Strategy<Value = f64> {
    prop_oneof![
        1 => Just(0.0),
        1 => 1e-7_f64..1e-3,
        5 => 0.05_f64..30.0,
        1 => 30.0_f64..30_000.0,
    ]
}

fn case() -> impl Strategy<Value = Case> {
    let section = (0.4_f64..2.2, 0.3_f64..0.8, 3.0_f64..20.0, 3.0_f64..20.0);
    let ground = prop::collection::vec((0.0_f64..40.0, -0.3_f64..0.3, -0.1_f64..0.1), 0..3);
    let footing = prop::option::of((0.05_f64..1.9, 0.0_f64..0.4));
    let stone = ([mass(), mass(), mass(), mass(), mass()], 0.0_f64..6.0);
    let ends = [end(), end()];
    let joints = prop::collection::vec(0.0_f64..40.0, 0..8);
    (
        line(),
        section,
        ground,
        footing,
        stone,
        (prop::option::weighted(0.3, side()), ends, joints),
    )
        .prop_filter_map("stands", |(line, section, ground, footing, stone, rest)| {
            let (height, top, left, right) = section;
            let batter = |n: f64| Batter::one_in(n).ok();
            let section =
                Section::new(metres(height), metres(top), batter(left)?, batter(right)?).ok()?;
            let surveyed = ground.into_iter().map(|(station, level, across)| Survey {
                station: metres(station),
                level: metres(level),
                left: metres(level + across),
                right: metres(level - across),
            });
            let wall = Wall {
                section,
                line,
                ground: Ground::new(surveyed.collect()),
                top: Top::FollowsGround,
            };
            let footing = footing.map(|(depth, outset)| Footing {
                depth: metres(depth),
                outset: metres(outset),
            });
            let (bank, ends, joints) = rest;
            wall.can_stand(footing.map_or(metres(0.0), |it| it.outset))
                .ok()?;
            Some(Case {
                wall,
                stone: by_kind(stone.0),
                drainage: stone.1,
                footing,
                bank,
                ends,
                joints: joints.into_iter().map(metres).collect(),
            })
        })
}

fn lies(table: &HeapTable, kind: HeapKind) -> Lie {
    match kind {
        HeapKind::Stone(kind) => table.stone(kind).lie,
        HeapKind::Drainage => table.drainage,
    }
}

/// Whether two closed outlines have ground in common: an edge of one crosses one of the other,
/// or one lies within the other.
fn overlap(one: &[Place], other: &[Place]) -> bool {
    let bounds = |outline: &[Place]| {
        outline.iter().fold(
            [f64::MAX, f64::MIN, f64::MAX, f64::MIN],
            |[l, r, b, t], p| [l.min(p.x_m), r.max(p.x_m), b.min(p.y_m), t.max(p.y_m)],
        )
    };
    let ([l, r, b, t], [ol, or, ob, ot]) = (bounds(one), bounds(other));
    if r < ol || or < l || t < ob || ot < b {
        return false;
    }
    let edges = |outline: &[Place]| -> Vec<(Place, Place)> {
        let next = outline.iter().cycle().skip(1);
        outline.iter().copied().zip(next.copied()).collect()
    };
    let turn = |a: Place, b: Place, c: Place| {
        (b.x_m - a.x_m) * (c.y_m - a.y_m) - (b.y_m - a.y_m) * (c.x_m - a.x_m)
    };
    let (ours, theirs) = (edges(one), edges(other));
    let crosses = ours.iter().any(|(a, b)| {
        theirs.iter().any(|(c, d)| {
            turn(*a, *b, *c) * turn(*a, *b, *d) < 0.0 && turn(*c, *d, *a) * turn(*c, *d, *b) < 0.0
        })
    });
    crosses || within(one, &theirs) || within(other, &ours)
}

/// Whether the first corner lies within the other outline.
fn within(one: &[Place], edges: &[(Place, Place)]) -> bool {
    let Some(corner) = one.first() else {
        return false;
    };
    let passes = |(a, b): &&(Place, Place)| {
        (a.y_m <= corner.y_m) != (b.y_m <= corner.y_m)
            && corner.x_m < a.x_m + (b.x_m - a.x_m) * (corner.y_m - a.y_m) / (b.y_m - a.y_m)
    };
    edges.iter().filter(passes).count() % 2 == 1
}

fn between(place: &Place, [a, b]: [Place; 2]) -> f64 {
    let (dx, dy) = (b.x_m - a.x_m, b.y_m - a.y_m);
    let square = dx * dx + dy * dy;
    let along = (place.x_m - a.x_m) * dx + (place.y_m - a.y_m) * dy;
    let share = if square <= 0.0 {
        0.0
    } else {
        (along / square).clamp(0.0, 1.0)
    };
    (place.x_m - a.x_m - share * dx).hypot(place.y_m - a.y_m - share * dy)
}

/// The wall across, every few centimetres: from face to face, from edge to edge of the trench,
/// and the trench's left corner.
fn cuts(case: &Case) -> Vec<[[Place; 2]; 2]> {
    let (line, length) = (&case.wall.line, case.wall.length().si());
    let count = (length / 0.06).ceil().max(1.0);
    (0_u32..)
        .map(f64::from)
        .take_while(|at| *at <= count)
        .map(|at| {
            let station = length * at / count;
            let place = line.place(metres(station));
            let at = |which: usize| {
                Side::BOTH.map(|side| {
                    let (face, edge) = case.edge(side, station);
                    place.beside(side, metres([face, edge][which]))
                })
            };
            [at(0), at(1)]
        })
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, ..ProptestConfig::default() })]

    /// Nothing is lost and nothing made, and every heap holds what its shape holds, lies no
    /// higher than it may and no steeper.
    #[test]
    fn all_stone_lies_somewhere(case in case()) {
        let (table, heaps) = (table(), heaps(&case.asked(), &table()));
        for kind in HeapKind::ALL {
            let laid_out = heaps.heaps.iter().filter(|heap| heap.kind == kind);
            let waiting = heaps.waiting.iter().filter(|it| it.kind == kind);
            let ours: Vec<(f64, f64)> = laid_out
                .map(|heap| (heap.volume.si(), heap.mass.si()))
                .chain(waiting.map(|it| (it.volume.si(), it.mass.si())))
                .collect();
            let [volume, mass] = [0, 1].map(|at| ours.iter().map(|it| [it.0, it.1][at]).sum::<f64>());
            let (asked_volume, asked_mass) = match kind {
                HeapKind::Drainage => (case.drainage, case.drainage * 1600.0),
                HeapKind::Stone(kind) => {
                    let own = case.stone.iter().find(|(its, _)| *its == kind);
                    let mass = own.map_or(0.0, |(_, mass)| mass.si());
                    let solid = 1.0 - table.stone(kind).loose_voids;
                    (mass / (2600.0 * solid), mass)
                }
            };
            // What is less than a thimble counts as nothing.
            prop_assert!((volume - asked_volume).abs() <= 1e-9 * asked_volume.max(2.0), "{kind:?}");
            prop_assert!((mass - asked_mass).abs() <= 1e-9 * asked_mass.max(5000.0), "{kind:?}");
        }
        for heap in &heaps.heaps {
            let shape = if heap.laid { laid } else { ridge };
            let held = shape(heap.length, heap.base_width(), heap.height).si();
            let volume = heap.volume.si();
            prop_assert!((held - volume).abs() <= 1e-6 * volume, "{heap:?} holds {held}");
            match lies(&table, heap.kind) {
                Lie::Heaped { height, .. } => {
                    prop_assert!(heap.height.si() <= height.si() + 1e-9, "{heap:?}");
                    // 45 degrees.
                    prop_assert!((heap.base_width() - heap.height * 2.0).si().abs() < 1e-9);
                    prop_assert!((heap.base_width() - heap.length).si() < 1e-6, "{heap:?}");
                }
                Lie::Laid { height, .. } => prop_assert_eq!(heap.height, height),
            }
        }
    }

    /// Seen as station and offset: rows clear of each other, heaps of a row beside each other,
    /// nothing in a way, on a bank, too near or too far out.
    #[test]
    fn rows_and_ways_stay_clear(case in case()) {
        let (table, heaps) = (table(), heaps(&case.asked(), &table()));
        for (at, heap) in heaps.heaps.iter().enumerate() {
            prop_assert!(Some(heap.side) != case.bank);
            let strip = heaps.strips.iter().find(|strip| strip.side == heap.side);
            let strip = strip.expect("a strip on every side with heaps");
            prop_assert!(strip.near <= heap.near + metres(1e-9));
            prop_assert!(heap.far <= strip.face + table.rows.reach + metres(1e-9));
            prop_assert!(heap.from < heap.to && heap.near < heap.far, "{heap:?}");
            for other in &heaps.heaps[at + 1..] {
                if other.side != heap.side {
                    continue;
                }
                let apart = (other.near - heap.far).si().max((heap.near - other.far).si());
                let beside = (other.from - heap.to).si().max((heap.from - other.to).si());
                let foot_room = table.rows.foot_room.si();
                let least = if other.row == heap.row { f64::INFINITY } else { foot_room };
                prop_assert!(
                    least - 1e-9 <= apart || table.rows.between.si() - 1e-9 <= beside,
                    "{heap:?} {other:?}"
                );
            }
            for way in &heaps.ways {
                let half = way.width.si() / 2.0 - 1e-9;
                let clear = (heap.from - way.station).si() >= half
                    || (way.station - heap.to).si() >= half;
                prop_assert!(clear, "{heap:?} {way:?}");
            }
        }
        for pair in heaps.ways.windows(2) {
            prop_assert!(pair[0].station < pair[1].station);
        }
    }

    /// On the ground, after bending: no heap over another, in a barrow way, before a face or at
    /// a trench; and the tip clear of them all.
    #[test]
    fn nothing_lies_over_anything_on_the_ground(case in case()) {
        let (table, heaps) = (table(), heaps(&case.asked(), &table()));
        let line = &case.wall.line;
        let outlines: Vec<Vec<Place>> = heaps.heaps.iter().map(|heap| heap.outline(line)).collect();
        let cuts = cuts(&case);
        let clear = case.footing.map_or(0.0, |it| it.depth.si().max(0.61));
        for (at, outline) in outlines.iter().enumerate() {
            prop_assert!(3 <= outline.len());
            for (other, heap) in outlines[at + 1..].iter().zip(&heaps.heaps[at + 1..]) {
                prop_assert!(!overlap(outline, other), "{:?} {heap:?}", heaps.heaps[at]);
            }
            for corner in outline.iter().step_by(3) {
                for [faces, edges] in &cuts {
                    let [face, edge] = [faces, edges].map(|it| between(corner, *it));
                    prop_assert!(1.3 - OFF_M <= face, "{face} {:?}", heaps.heaps[at]);
                    prop_assert!(clear - OFF_M <= edge, "{edge} {:?}", heaps.heaps[at]);
                }
            }
        }
        for way in &heaps.ways {
            for side in Side::BOTH {
                let Some(reach) = way.reach(side) else {
                    continue;
                };
                let run = way_on_the_ground(line, way, side, reach.si());
                for (heap, outline) in heaps.heaps.iter().zip(&outlines) {
                    prop_assert!(!overlap(&run, outline), "{way:?} {side:?} {heap:?}");
                }
            }
        }
        for tip in &heaps.tips {
            let clear = tip.radius.si() + table.clear.strip.si() - OFF_M;
            for corner in outlines.iter().flatten().chain(cuts.iter().flatten().flatten()) {
                let apart = (corner.x_m - tip.place.x_m).hypot(corner.y_m - tip.place.y_m);
                prop_assert!(clear <= apart, "{tip:?}");
            }
        }
        prop_assert!(heaps.ground.iter().all(|it| it.si().is_finite()));
        prop_assert!(heaps.longest_run.is_none_or(|it| it.si().is_finite()));
    }

    #[test]
    fn the_same_is_asked_the_same_is_answered(case in case()) {
        prop_assert_eq!(heaps(&case.asked(), &table()), heaps(&case.asked(), &table()));
    }
}

/// The ground of a barrow way from the wall out to an offset, a hair narrower.
fn way_on_the_ground(line: &Line, way: &Way, side: Side, far: f64) -> Vec<Place> {
    // Edges that lie in one line would seem to cross by rounding.
    let (half, far) = (way.width.si() / 2.0 - OFF_M, far - OFF_M);
    let middle = place_along(line, way.station);
    let (sin, cos) = middle.heading.sin_cos();
    let at = |along: f64, out: f64| {
        let place = middle.beside(side, metres(out));
        Place {
            x_m: place.x_m + along * cos,
            y_m: place.y_m + along * sin,
            ..place
        }
    };
    vec![at(-half, 0.5), at(half, 0.5), at(half, far), at(-half, far)]
}
