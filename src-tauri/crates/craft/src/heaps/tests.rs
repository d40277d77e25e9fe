//! Heaps worked by hand, and what must hold of them in plain cases.

use super::*;
use crate::quantity::{kg_per_m3, metres, tonnes};
use crate::tables::{ClearTable, Lie, Lying, RowTable, TipTable};
use crate::wall::{Batter, Bend, Ground, Line, Section, Stretch, Survey, Top};
use std::f64::consts::{PI, TAU};

/// A table with round figures.
pub(crate) fn table() -> HeapTable {
    let source = || "made up for tests".to_owned();
    let heaped = |height: f64| Lie::Heaped {
        repose_degrees: 45.0,
        height: metres(height),
    };
    let laid = |width: f64, height: f64| Lie::Laid {
        width: metres(width),
        height: metres(height),
    };
    let lying = |loose_voids: f64, lie: Lie| Lying {
        loose_voids,
        lie,
        source: source(),
    };
    HeapTable {
        stone: [
            (StoneKind::Footing, lying(0.5, heaped(0.5))),
            (StoneKind::Face, lying(0.4, heaped(1.0))),
            (StoneKind::Hearting, lying(0.4, heaped(0.8))),
            (StoneKind::Throughs, lying(0.2, laid(0.6, 0.15))),
            (StoneKind::Copes, lying(0.2, laid(0.4, 0.3))),
        ],
        drainage: heaped(1.0),
        clear: ClearTable {
            strip: metres(1.3),
            strip_source: source(),
            trench: metres(0.61),
            trench_depths: 1.0,
            trench_source: source(),
            way: metres(1.0),
            way_every: metres(5.0),
            way_source: source(),
        },
        rows: RowTable {
            foot_room: metres(0.6),
            between: metres(0.3),
            reach: metres(10.0),
            shortest: metres(5.0),
            beyond_end: metres(3.0),
            hearting_every: metres(4.5),
            low: metres(0.25),
            least: cubic_metres(0.1),
            source: source(),
        },
        tip: TipTable {
            load: tonnes(10.0),
            height: metres(1.2),
            source: source(),
        },
    }
}

fn section() -> Section {
    let six = Batter::one_in(6.0).expect("sound");
    Section::new(metres(1.2), metres(0.4), six, six).expect("sound")
}

pub(super) fn wall(line: Line) -> Wall {
    Wall {
        section: section(),
        line,
        ground: Ground::default(),
        top: Top::Level,
    }
}

pub(super) fn asked<'a>(wall: &'a Wall, stone: &'a [(StoneKind, Mass)]) -> HeapsAsked<'a> {
    HeapsAsked {
        stone,
        density: kg_per_m3(2500.0),
        drainage: None,
        longest_through: None,
        wall,
        footing: None,
        bank: None,
        ends: [End::Head; 2],
        stint_joints: &[],
        load: None,
    }
}

fn straight(length: f64) -> Wall {
    wall(Line::straight(metres(length)))
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

fn of(heaps: &Heaps, kind: HeapKind) -> Vec<Heap> {
    let own = heaps.heaps.iter().filter(|heap| heap.kind == kind);
    own.copied().collect()
}

/// Tonnes in the order of [`StoneKind::ALL`].
pub(super) fn by_kind(tonnes_of: [f64; 5]) -> Vec<(StoneKind, Mass)> {
    let masses = tonnes_of.into_iter().map(tonnes);
    StoneKind::ALL.into_iter().zip(masses).collect()
}

fn near(ours: f64, by_hand: f64) -> bool {
    (ours - by_hand).abs() < 1e-9
}

/// By hand: faces 0.2 + 1.2 / 6 = 0.4 m off the centre line, rows from 1.7 m. 6 t of face stone
/// at 2500 · 0.6 = 1500 kg/m3 are 4 m3, 1 m3 for each of the two stretches of 4 m that a way in
/// the middle of 9 m leaves on each side. At 45 degrees a ridge of half width and height r holds
/// r² (4 - 2 r + π r / 3) = 1: r = 0.535 m.
#[test]
fn face_stone_lies_along_both_sides() {
    let wall = straight(9.0);
    let stone = [(StoneKind::Face, tonnes(6.0))];
    let heaps = heaps(&asked(&wall, &stone), &table());
    assert_eq!(heaps.heaps.len(), 4);
    assert!(heaps.waiting.is_empty());
    for heap in &heaps.heaps {
        assert!(near(heap.volume.si(), 1.0) && near(heap.mass.si(), 1500.0));
        assert!(near(heap.near.si(), 1.7), "{:?}", heap.near);
        let r = heap.height.si();
        assert!((r - 0.535).abs() < 5e-4, "{r}");
        assert!(near(r * r * (4.0 - 2.0 * r + PI * r / 3.0), 1.0));
        assert!(near(heap.base_width().si(), 2.0 * r));
        assert!(near(heap.length.si(), 4.0));
    }
    let from: Vec<f64> = heaps.heaps.iter().map(|heap| heap.from.si()).collect();
    assert_eq!(from, [0.0, 0.0, 5.0, 5.0]);
    assert_eq!(heaps.ways.len(), 1);
    // 1.7 m and the heap on each side, across; along no more than the wall.
    let across = 2.0 * (1.7 + 2.0 * heaps.heaps[0].height.si());
    assert!(near(heaps.ground[0].si(), 9.0) && near(heaps.ground[1].si(), across));
}

/// Footing stones nearest, then face with hearting between, throughs, copes; every row clear of
/// the one before by the foot room.
#[test]
fn kinds_lie_in_the_order_they_are_used() {
    let wall = straight(9.0);
    let stone = by_kind([2.0, 8.0, 1.0, 1.0, 2.0]);
    let heaps = heaps(&asked(&wall, &stone), &table());
    let kinds = heaps.kinds();
    assert_eq!(kinds.len(), 5);
    let mut before = 1.7 - 0.6;
    for row in 1..=heaps.heaps.iter().map(|heap| heap.row).max().unwrap_or(0) {
        let own = || heaps.heaps.iter().filter(|heap| heap.row == row);
        let least = own().map(|heap| heap.near.si()).fold(f64::MAX, f64::min);
        assert!(near(least, before + 0.6), "row {row}: {least} {before}");
        before = own().map(|heap| heap.far.si()).fold(0.0, f64::max);
    }
    let row = |kind| of(&heaps, HeapKind::Stone(kind))[0].row;
    assert_eq!(row(StoneKind::Face), row(StoneKind::Hearting));
    let order = [
        StoneKind::Footing,
        StoneKind::Face,
        StoneKind::Throughs,
        StoneKind::Copes,
    ];
    assert_eq!(order.map(row), [1, 2, 3, 4]);
    // One heap of hearting in each stretch on each side, next to one of face stone.
    let hearting = of(&heaps, HeapKind::Stone(StoneKind::Hearting));
    let face = of(&heaps, HeapKind::Stone(StoneKind::Face));
    assert_eq!((hearting.len(), face.len()), (4, 4));
    for heap in &hearting {
        let beside = |it: &&Heap| {
            let gap = (it.from - heap.to).si().max((heap.from - it.to).si());
            it.side == heap.side && (0.3 - 1e-9..0.6).contains(&gap)
        };
        assert_eq!(face.iter().filter(beside).count(), 1);
    }
}

/// By hand: a trench 0.9 m deep, its edge 0.5 m off, is kept clear for 0.9 m, less than the 1.3 m
/// before the face; one 1.4 m deep for 1.4 m, which is more: rows from 1.9 m.
#[test]
fn a_deep_trench_keeps_heaps_farther_off() {
    let wall = straight(9.0);
    let stone = [(StoneKind::Face, tonnes(3.0))];
    let mut asked = asked(&wall, &stone);
    for (depth, by, from) in [
        (0.2, ClearedBy::Working, 1.7),
        (0.9, ClearedBy::Working, 1.7),
        (1.4, ClearedBy::Trench, 1.9),
    ] {
        asked.footing = Some(Footing {
            depth: metres(depth),
            outset: metres(0.1),
        });
        let heaps = heaps(&asked, &table());
        for strip in &heaps.strips {
            assert_eq!(strip.by, by, "{depth}");
            assert!(near(strip.near.si(), from), "{depth}: {:?}", strip.near);
        }
    }
}

#[test]
fn nothing_stands_on_a_bank() {
    let wall = straight(12.0);
    let stone = by_kind([1.5, 4.0, 1.0, 0.4, 1.0]);
    let mut asked = asked(&wall, &stone);
    asked.bank = Some(Side::Right);
    asked.drainage = Some((cubic_metres(2.0), tonnes(3.2)));
    let heaps = heaps(&asked, &table());
    assert!(heaps.heaps.iter().all(|heap| heap.side == Side::Left));
    assert_eq!(heaps.strips.len(), 1);
    assert!(near(heaps.laid_out(HeapKind::Drainage).si(), 3200.0));
    assert_eq!(heaps.kinds().len(), 6);
    // The tip lies on the open side as well.
    assert!(heaps.tips.iter().all(|tip| 1.0 < tip.place.y_m));
}

#[test]
fn nothing_to_lay_is_an_empty_plan() {
    let wall = straight(9.0);
    let nothing = StoneKind::ALL.map(|kind| (kind, kilograms(0.0)));
    let odd = [
        (StoneKind::Face, kilograms(f64::NAN)),
        (StoneKind::Copes, kilograms(-3.0)),
        (StoneKind::Footing, kilograms(f64::INFINITY)),
    ];
    for stone in [&[][..], &nothing[..], &odd[..]] {
        let heaps = heaps(&asked(&wall, stone), &table());
        assert!(heaps.heaps.is_empty() && heaps.waiting.is_empty());
        assert!(heaps.ways.is_empty() && heaps.tips.is_empty() && heaps.notes.is_empty());
        assert!(near(heaps.ground[0].si(), 9.0));
    }
    let stone = [(StoneKind::Face, tonnes(3.0))];
    let mut weightless = asked(&wall, &stone);
    weightless.density = kg_per_m3(0.0);
    assert!(heaps(&weightless, &table()).heaps.is_empty());
}

/// By hand: 3 m past either end of 1 m of wall are 7 m of ground, two stretches of 3 m and a way
/// between. Rows begin at 1.7 m, 4.3 m and 6.9 m, each with two heaps 1 m high and 2 m wide that
/// hold 1 + π / 3 = 2.047 m3; from 9.5 m to 10.4 m, 10 m from the face, there is room for heaps
/// less than 0.45 m high, of 0.52 m3 at most. So each side has from 12.28 m3 to 13.33 m3, both
/// together 36.8 t to 40 t, and the rest waits.
#[test]
fn what_finds_no_room_waits_at_the_tip() {
    let wall = straight(1.0);
    let stone = [(StoneKind::Face, tonnes(200.0))];
    let heaps = heaps(&asked(&wall, &stone), &table());
    let laid = heaps.laid_out(heaps.heaps[0].kind).si();
    assert_eq!(heaps.waiting.len(), 1);
    assert!((laid + heaps.waiting[0].mass.si() - 200_000.0).abs() < 1e-6);
    assert!((36_800.0..40_000.0).contains(&laid), "{laid}");
    assert!(heaps.heaps.iter().all(|heap| heap.far <= metres(10.4)));
    assert!(matches!(heaps.notes[0], Note::Waits { .. }));
    let words = heaps.notes[1].words(crate::quantity::Units::Metric);
    assert_eq!(
        words,
        "For want of room beside the wall, heaps stand up to 3.00 m past either end."
    );
}

/// A barrowful of hearting is one heap, not eight.
#[test]
fn a_little_is_one_heap() {
    let wall = straight(20.0);
    let stone = [(StoneKind::Hearting, kilograms(90.0))];
    let heaps = heaps(&asked(&wall, &stone), &table());
    // 0.06 m3 as a cone at 45 degrees: π r³ / 3, r = 0.386 m; lower than 0.25 m it would be
    // longer, so it is a ridge 0.25 m high.
    assert_eq!(heaps.heaps.len(), 1);
    let heap = &heaps.heaps[0];
    assert!(near(heap.height.si(), 0.25) && near(heap.base_width().si(), 0.5));
    let by_hand = 0.5 + (0.06 - PI * 0.25_f64.powi(3) / 3.0) / 0.0625;
    assert!(near(heap.length.si(), by_hand), "{by_hand}");
}

/// By hand: rows begin 1.7 m off; inside a ring of radius 2.5 m there is no room beyond that
/// for a heap 0.5 m wide and 0.3 m more, so all of it lies outside.
#[test]
fn a_small_ring_has_its_heaps_outside() {
    let ring = |radius: f64| {
        wall(Line::of_length(
            &[arc(TAU * radius, radius, Side::Right)],
            metres(TAU * radius),
        ))
    };
    let stone = [(StoneKind::Face, tonnes(9.0))];
    let small = ring(2.4);
    let heaps_of = |wall: &Wall| heaps(&asked(wall, &stone), &table());
    let outside = heaps_of(&small);
    assert!(outside.heaps.iter().all(|heap| heap.side == Side::Left));
    assert!(outside.waiting.is_empty());
    assert!(matches!(
        outside.notes[0],
        Note::TightBend {
            side: Side::Right,
            other_side: true,
            ..
        }
    ));
    assert_eq!(outside.tips[0].at, TipAt::Beside(Side::Left));
    let large = ring(8.0);
    let both = heaps_of(&large);
    assert!(both.heaps.iter().any(|heap| heap.side == Side::Right));
    assert!(both.notes.contains(&Note::WithinTheRing));
}

#[test]
fn the_lorry_tips_where_barrows_run_downhill_and_nobody_is_shut_off() {
    let survey = |station: f64, level: f64, left: f64| Survey {
        station: metres(station),
        level: metres(level),
        left: metres(level + left),
        right: metres(level),
    };
    let mut wall = straight(9.0);
    let stone = [(StoneKind::Face, tonnes(9.0))];
    let at = |wall: &Wall, ends: [End; 2]| {
        let mut asked = asked(wall, &stone);
        asked.ends = ends;
        let heaps = heaps(&asked, &table());
        let tips: Vec<TipAt> = heaps.tips.iter().map(|tip| tip.at).collect();
        (tips, heaps.notes)
    };
    assert_eq!(at(&wall, [End::Head; 2]).0, [TipAt::Start]);
    assert_eq!(at(&wall, [End::Joined, End::Raked]).0, [TipAt::Finish]);
    let (both, notes) = at(&wall, [End::Joined; 2]);
    assert_eq!(both, Side::BOTH.map(TipAt::Beside));
    assert!(notes.contains(&Note::NoWayRound));
    wall.ground = Ground::new(vec![survey(0.0, 0.0, 0.0), survey(9.0, 0.3, 0.2)]);
    let (higher, notes) = at(&wall, [End::Head; 2]);
    assert_eq!(higher, [TipAt::Finish]);
    assert!(notes.contains(&Note::AboveTheWall { side: Side::Left }));
}

/// By hand: 10 t at 1500 kg/m3 are 6.667 m3. A cone 1.2 m high at 45 degrees holds 1.81 m3, so
/// the load is flat-topped: π 1.2 / 3 (R² + R r + r²) = 6.667 with r = R - 1.2 gives R = 1.884 m.
/// It lies 1.3 m and a way of 1 m beyond the end, 1.884 m more to its middle; from there to a heap
/// of the far stretch it is 4.184 m to the wall, 7 m along it and 1.7 m out.
#[test]
fn the_tip_has_room_for_a_load_and_the_run_is_measured() {
    let wall = straight(9.0);
    let stone = [(StoneKind::Face, tonnes(16.0))];
    let heaps = heaps(&asked(&wall, &stone), &table());
    let tip = &heaps.tips[0];
    let big = tip.radius.si();
    assert!((big - 1.884).abs() < 5e-4, "{big}");
    let small = big - 1.2;
    let held = PI * 0.4 * (big * big + big * small + small * small);
    assert!((held - 20.0 / 3.0).abs() < 1e-6);
    assert!(near(tip.place.x_m, -2.3 - big));
    let run = heaps.longest_run.map_or(0.0, Read::si);
    assert!(
        near(run, 2.3 + big + 7.0 + heaps.heaps[0].near.si()),
        "{run}"
    );
}
