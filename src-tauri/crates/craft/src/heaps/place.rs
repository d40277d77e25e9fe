//! Laying row after row, from the wall outwards, in the order stone is used.

use super::field::Field;
use super::row::{Amount, Row};
use super::strip::Strip;
use super::ways::{Way, ways};
use super::{Heap, HeapKind, HeapsAsked, Waiting, loose_volume, sound_mass, sound_volume};
use crate::course::{End, StoneKind};
use crate::quantity::{Length, Read, cubic_metres, kilograms};
use crate::tables::{HeapTable, Lie, RowTable};
use crate::wall::{Line, Side};

/// More rows of one kind than any reach holds: the end of the search, not a number in use.
const MOST_ROWS: usize = 200;
/// Less than this, in m3, is nothing.
const NOTHING_M3: f64 = 1e-9;
/// Beside walls that are joined at both ends, rows are at least this share of the usual least.
const JOINED_SHARE: f64 = 0.5;

/// The ground beside a wall and what of it may be used.
pub(super) struct Layout<'a> {
    pub(super) field: Field<'a>,
    pub(super) ways: Vec<Way>,
    /// Of the sides where stone may lie.
    pub(super) strips: Vec<Strip>,
    /// The edges of the wall, or of its trench, left and right.
    pub(super) edges: [f64; 2],
    pub(super) line: &'a Line,
    table: &'a RowTable,
}

/// The layout of a wall's stone, with every heap and what found no room: beside the wall, and
/// past its ends as well where that leaves less over.
pub(super) fn laid_out<'a>(
    asked: &HeapsAsked<'a>,
    table: &'a HeapTable,
) -> (Layout<'a>, Vec<Heap>, Vec<Waiting>) {
    let amounts = amounts(asked, table);
    let beside = Layout::new(asked, table, usual(asked, &table.rows));
    let (heaps, waiting) = beside.lay(amounts.clone());
    if waiting.is_empty() || beside.field.ring {
        return (beside, heaps, waiting);
    }
    let past = Layout::new(asked, table, farthest(asked, &table.rows));
    let (more, fewer) = past.lay(amounts);
    let left = |waiting: &[Waiting]| waiting.iter().map(|it| it.volume.si()).sum::<f64>();
    if left(&fewer) < left(&waiting) {
        (past, more, fewer)
    } else {
        (beside, heaps, waiting)
    }
}

impl<'a> Layout<'a> {
    fn new(asked: &HeapsAsked<'a>, table: &'a HeapTable, beyond: [f64; 2]) -> Self {
        let (wall, clear) = (asked.wall, &table.clear);
        let ring = wall.is_ring();
        let beyond = if ring { [0.0; 2] } else { beyond };
        let both = Side::BOTH.map(|side| Strip::of(wall, asked.footing, side, clear));
        let farthest = both.iter().map(|strip| strip.near.si()).fold(0.0, f64::max);
        let reach = farthest + table.rows.reach.si();
        let field = Field::new(&wall.line, ring, beyond, reach);
        let joints: Vec<f64> = asked.stint_joints.iter().map(|at| at.si()).collect();
        let ways = ways(&field, clear.way_every.si(), clear.way.si(), &joints);
        let edges = both.map(|strip| strip.trench.unwrap_or(strip.face).si());
        let mut strips = both.to_vec();
        strips.retain(|strip| asked.bank != Some(strip.side));
        if wall.line.spans().any(|(_, _, bend)| bend.is_some()) {
            level(&mut strips);
        }
        Self {
            field,
            ways,
            strips,
            edges,
            line: &wall.line,
            table: &table.rows,
        }
    }

    /// Every heap, and what found no room.
    fn lay(&self, amounts: Vec<Amount>) -> (Vec<Heap>, Vec<Waiting>) {
        let mut sides = Side::BOTH.map(|side| self.begins(side));
        let (mut heaps, mut waiting) = (Vec::new(), Vec::new());
        let mut number = 0;
        for mut layer in layers(amounts) {
            for _ in 0..MOST_ROWS {
                let row = Row {
                    field: &self.field,
                    ways: &self.ways,
                    table: self.table,
                    number: number + 1,
                    sides,
                };
                let laid = row.fill(&mut layer);
                layer.retain(|amount| NOTHING_M3 < amount.left);
                if laid.is_empty() {
                    break;
                }
                number += 1;
                sides = self.moved_out(sides, &laid);
                heaps.extend(laid);
                if layer.is_empty() {
                    break;
                }
            }
            waiting.extend(layer.iter().map(|amount| Waiting {
                kind: amount.kind,
                volume: cubic_metres(amount.left),
                mass: kilograms(amount.left * amount.bulk),
            }));
        }
        (heaps, waiting)
    }

    /// Where the first row begins, and how far out the last may reach.
    fn begins(&self, side: Side) -> Option<(f64, f64)> {
        let strip = self.strips.iter().find(|strip| strip.side == side)?;
        Some((strip.near.si(), (strip.face + self.table.reach).si()))
    }

    /// Past the row just laid, equally far on both sides, so that one measurement serves both;
    /// a side that a bend has shut keeps its place.
    fn moved_out(&self, sides: [Option<(f64, f64)>; 2], laid: &[Heap]) -> [Option<(f64, f64)>; 2] {
        let widths = laid.iter().map(|heap| heap.base_width().si());
        let moved = widths.fold(0.0, f64::max) + self.table.foot_room.si();
        let mut sides = sides;
        for (begins, side) in sides.iter_mut().zip(Side::BOTH) {
            let used = self.field.is_straight() || laid.iter().any(|heap| heap.side == side);
            if let Some((near, _)) = begins.as_mut().filter(|_| used) {
                *near += moved;
            }
        }
        sides
    }

    /// The farthest a heap reaches from the centre line on one side, or where the first could
    /// begin.
    pub(super) fn reaches(&self, side: Side, heaps: &[Heap]) -> Option<f64> {
        let strip = self.strips.iter().find(|strip| strip.side == side)?;
        let own = heaps.iter().filter(|heap| heap.side == side);
        Some(
            own.map(|heap| heap.far.si())
                .fold(strip.near.si(), f64::max),
        )
    }

    /// The ways as far as rows stand beside them.
    pub(super) fn ways_through(&self, heaps: &[Heap]) -> Vec<Way> {
        let through = |way: &Way| {
            self.strips.iter().fold(*way, |way, strip| {
                let far = self.reaches(strip.side, heaps).unwrap_or_default();
                way.reaching(&self.field, strip.side, strip.near.si(), far)
            })
        };
        self.ways.iter().map(through).collect()
    }
}

/// Beside a line that bends, both sides begin equally far out: then nothing can come too near
/// to the other side of another stretch.
fn level(strips: &mut [Strip]) {
    let farthest = strips
        .iter()
        .map(|strip| (strip.near, strip.by))
        .reduce(|most, it| if most.0 < it.0 { it } else { most });
    if let Some((near, by)) = farthest {
        for strip in strips {
            (strip.near, strip.by) = (near, by);
        }
    }
}

/// How far rows go on beyond each end: not at all beside a wall of some length, beyond its
/// free ends beside a short one; beside standing wall only where nothing else is left.
fn usual(asked: &HeapsAsked<'_>, table: &RowTable) -> [f64; 2] {
    let length = asked.wall.length().si();
    let free = free_ends(asked);
    let least = if free == [false; 2] {
        table.shortest.si() * JOINED_SHARE
    } else {
        table.shortest.si()
    };
    let wanted = (least - length).max(0.0);
    let most = table.beyond_end.si();
    match free {
        [true, false] => [most.min(wanted), 0.0],
        [false, true] => [0.0, most.min(wanted)],
        [true, true] | [false, false] => [most.min(wanted / 2.0); 2],
    }
}

/// As far beyond the free ends as rows may go, or beyond both where none is free.
fn farthest(asked: &HeapsAsked<'_>, table: &RowTable) -> [f64; 2] {
    let free = free_ends(asked);
    let none = free == [false; 2];
    free.map(|free| {
        if free || none {
            table.beyond_end.si()
        } else {
            0.0
        }
    })
}

fn free_ends(asked: &HeapsAsked<'_>) -> [bool; 2] {
    asked.ends.map(|end| end != End::Joined)
}

/// All there is to lay.
fn amounts(asked: &HeapsAsked<'_>, table: &HeapTable) -> Vec<Amount> {
    let solid = asked.density;
    let dense = solid.si().is_finite() && 0.0 < solid.si();
    let stone = StoneKind::ALL.into_iter().map(|kind| {
        let lying = table.stone(kind);
        let own = asked.stone.iter().filter(|(its, _)| *its == kind);
        let mass = own.fold(kilograms(0.0), |sum, (_, mass)| sum + sound_mass(*mass));
        let volume = if dense {
            sound_volume(loose_volume(mass, solid, lying.loose_voids))
        } else {
            cubic_metres(0.0)
        };
        let lie = match kind {
            StoneKind::Throughs => as_wide_as(lying.lie, asked.longest_through),
            _ => lying.lie,
        };
        (HeapKind::Stone(kind), lie, volume, mass)
    });
    let (volume, mass) = asked.drainage.unwrap_or_default();
    let drainage = (
        HeapKind::Drainage,
        table.drainage,
        sound_volume(volume),
        sound_mass(mass),
    );
    stone
        .chain([drainage])
        .filter(|(_, _, volume, _)| NOTHING_M3 < volume.si())
        .map(|(kind, lie, volume, mass)| Amount {
            kind,
            lie,
            left: volume.si(),
            bulk: (mass / volume).si(),
        })
        .collect()
}

/// Throughs lie across their row, which is as wide as the longest is long.
fn as_wide_as(lie: Lie, longest: Option<Length>) -> Lie {
    match (lie, longest) {
        (Lie::Laid { height, .. }, Some(width)) if width.si().is_finite() && 0.0 < width.si() => {
            Lie::Laid { width, height }
        }
        _ => lie,
    }
}

/// What shares a row: face stone with hearting, everything else by itself.
fn layers(amounts: Vec<Amount>) -> Vec<Vec<Amount>> {
    let mut layers: [Vec<Amount>; 5] = Default::default();
    for amount in amounts {
        let layer = match amount.kind {
            HeapKind::Stone(StoneKind::Footing) => 0,
            HeapKind::Stone(StoneKind::Face | StoneKind::Hearting) => 1,
            HeapKind::Drainage => 2,
            HeapKind::Stone(StoneKind::Throughs) => 3,
            HeapKind::Stone(StoneKind::Copes) => 4,
        };
        layers[layer].push(amount);
    }
    layers
        .into_iter()
        .filter(|layer| !layer.is_empty())
        .collect()
}
