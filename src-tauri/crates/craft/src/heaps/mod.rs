//! Where the stone lies: heaps along both sides of a wall by kind, with room to work.
//!
//! A waller lays stone out in the order it is used. Nearest to the wall, but clear of the
//! working strip and of the trench, a low row of footing stones; behind it face stone in
//! ridges with hearting in small heaps beside them; drainage stone where a bank is held;
//! then throughs laid flat by themselves; last the copes. A row that is full goes on in a
//! second one farther out. Every kind is shared between both sides, or all on the open side
//! of a retaining wall, and between the stretches that the barrow ways leave.
//!
//! Places are told as station along the line and offset from the centre line. That is sound
//! where each place lies nearer to its own stretch than to any other, and heaps stand only
//! there (`field`): nothing reaches past the centre of a bend, nor do heaps of two legs of
//! a hairpin meet.
//!
//! - `shape`: volumes; `field`: the ground beside a line; `strip`: what stays clear; `ways`:
//!   barrow ways
//! - `parts` shares a row out, `row` fills it, `place` lays row after row; `outline`: heaps on
//!   the ground plan
//! - `tip`: where the lorry tips, and how far barrows go; `notes`: what has to be said

mod field;
mod notes;
mod outline;
mod parts;
mod place;
mod row;
pub mod shape;
mod strip;
mod tip;
mod ways;

#[cfg(test)]
mod properties;
#[cfg(test)]
pub(crate) mod tests;

pub use field::place_along;
pub use notes::Note;
pub use strip::{ClearedBy, Strip};
pub use tip::{Tip, TipAt};
pub use ways::Way;

use crate::course::{End, StoneKind};
use crate::quantity::{Density, Length, Mass, Read, Volume, cubic_metres, kilograms};
use crate::tables::HeapTable;
use crate::wall::{Footing, Side, Wall};

/// What has to be laid out, and beside what.
#[derive(Debug, Clone, Copy)]
pub struct HeapsAsked<'a> {
    /// All the stone that must be at hand by kind, what will be left over included.
    pub stone: &'a [(StoneKind, Mass)],
    /// Of the solid stone.
    pub density: Density,
    /// Drainage stone as it comes: its loose volume and its mass.
    pub drainage: Option<(Volume, Mass)>,
    /// Of the longest through, if there are any.
    pub longest_through: Option<Length>,
    /// The wall as it stands.
    pub wall: &'a Wall,
    /// Its trench, if one is dug.
    pub footing: Option<Footing>,
    /// The side a bank lies on, where nothing may stand.
    pub bank: Option<Side>,
    /// How it ends at station 0 and at its far end.
    pub ends: [End; 2],
    /// Where two stints meet.
    pub stint_joints: &'a [Length],
    /// One load, if that is known.
    pub load: Option<Mass>,
}

/// What lies in a heap.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HeapKind {
    /// Stone for the wall.
    Stone(StoneKind),
    /// Clean stone for behind a retaining wall.
    Drainage,
}

impl HeapKind {
    /// All kinds in the order they lie out from the wall.
    pub const ALL: [Self; 6] = [
        Self::Stone(StoneKind::Footing),
        Self::Stone(StoneKind::Face),
        Self::Stone(StoneKind::Hearting),
        Self::Drainage,
        Self::Stone(StoneKind::Throughs),
        Self::Stone(StoneKind::Copes),
    ];

    /// The trade's word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Stone(kind) => kind.word(),
            Self::Drainage => "drainage stone",
        }
    }
}

/// One heap, or stones laid side by side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Heap {
    /// What lies in it.
    pub kind: HeapKind,
    /// The side of the wall.
    pub side: Side,
    /// The row it stands in, counted from the wall, the first being 1.
    pub row: usize,
    /// Station where it begins; less than nothing before station 0.
    pub from: Length,
    /// Station where it ends.
    pub to: Length,
    /// Centre line to its near edge.
    pub near: Length,
    /// Centre line to its far edge.
    pub far: Length,
    /// Ground to its top.
    pub height: Length,
    /// Along its middle, over all.
    pub length: Length,
    /// Laid flat, with upright sides; otherwise a ridge with rounded ends or a cone.
    pub laid: bool,
    /// As it lies, air included.
    pub volume: Volume,
    /// Of its stone.
    pub mass: Mass,
}

impl Heap {
    /// Its base, out from the wall.
    pub fn base_width(&self) -> Length {
        self.far - self.near
    }
}

/// Stone for which there is no room within reach of the wall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Waiting {
    /// What it is.
    pub kind: HeapKind,
    /// As it lies.
    pub volume: Volume,
    /// Of its stone.
    pub mass: Mass,
}

/// Where the stone of one wall lies.
#[derive(Debug, Clone, PartialEq)]
pub struct Heaps {
    /// Every heap, row by row from the wall outwards and kind by kind.
    pub heaps: Vec<Heap>,
    /// Barrow ways in order of station; they run through every row on either side.
    pub ways: Vec<Way>,
    /// What stays clear on each side where stone may lie.
    pub strips: Vec<Strip>,
    /// What stays where it was tipped and is brought as room comes free.
    pub waiting: Vec<Waiting>,
    /// Where the lorry might tip; two places where one can't serve both sides.
    pub tips: Vec<Tip>,
    /// The farthest a barrow goes from the nearest tip to a heap, by the wall's end and along it.
    pub longest_run: Option<Length>,
    /// The room it all takes along the line's first direction and across it, the wall and its
    /// clear strips included and the tip left out.
    pub ground: [Length; 2],
    /// What has to be said about it.
    pub notes: Vec<Note>,
}

impl Heaps {
    /// The mass of one kind in all its heaps.
    pub fn laid_out(&self, kind: HeapKind) -> Mass {
        let own = self.heaps.iter().filter(|heap| heap.kind == kind);
        own.fold(kilograms(0.0), |sum, heap| sum + heap.mass)
    }

    /// The mass of one kind that waits for room.
    pub fn held_back(&self, kind: HeapKind) -> Mass {
        let own = self.waiting.iter().filter(|it| it.kind == kind);
        own.fold(kilograms(0.0), |sum, it| sum + it.mass)
    }

    /// The kinds that lie in heaps or wait for room, in the order they lie out from the wall.
    pub fn kinds(&self) -> Vec<HeapKind> {
        let there = |kind: &HeapKind| {
            self.heaps.iter().any(|heap| heap.kind == *kind)
                || self.waiting.iter().any(|it| it.kind == *kind)
        };
        HeapKind::ALL.into_iter().filter(there).collect()
    }
}

/// Loose volume: `mass / (solid density · (1 - loose voids))`.
pub fn loose_volume(mass: Mass, solid: Density, loose_voids: f64) -> Volume {
    mass / (solid * (1.0 - loose_voids))
}

/// Where the stone lies. A mass or a volume that is no number, or not more than nothing,
/// counts as nothing; with nothing to lay there are no heaps, ways or tips.
pub fn heaps(asked: &HeapsAsked<'_>, table: &HeapTable) -> Heaps {
    let (layout, heaps, waiting) = place::laid_out(asked, table);
    if heaps.is_empty() && waiting.is_empty() {
        return Heaps {
            heaps,
            ways: Vec::new(),
            ground: tip::ground(&layout, &[]),
            strips: layout.strips,
            waiting,
            tips: Vec::new(),
            longest_run: None,
            notes: Vec::new(),
        };
    }
    let outlines = heaps.iter().map(|heap| heap.outline(layout.line));
    let outlines: Vec<_> = outlines.collect();
    let tips = tip::tips(asked, &layout, &heaps, &outlines, table);
    Heaps {
        longest_run: tip::longest_run(&layout, &heaps, &tips),
        ground: tip::ground(&layout, &outlines),
        notes: notes::notes(asked, &layout, &heaps, &waiting, table),
        ways: layout.ways_through(&heaps),
        strips: layout.strips,
        heaps,
        waiting,
        tips,
    }
}

/// A mass that can be laid out.
fn sound_mass(mass: Mass) -> Mass {
    if mass.si().is_finite() && 0.0 < mass.si() {
        mass
    } else {
        kilograms(0.0)
    }
}

/// A volume that can be laid out.
fn sound_volume(volume: Volume) -> Volume {
    if volume.si().is_finite() && 0.0 < volume.si() {
        volume
    } else {
        cubic_metres(0.0)
    }
}
