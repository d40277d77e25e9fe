//! What stays clear beside a wall: the strip people work in, and the edge of a trench.

use crate::quantity::{Length, metres};
use crate::tables::ClearTable;
use crate::wall::{Across, Footing, Side, Wall};

/// What stays clear on one side, as offsets from the centre line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Strip {
    /// The side.
    pub side: Side,
    /// The face at the ground, where it stands farthest out.
    pub face: Length,
    /// The edge of the trench, if one is dug.
    pub trench: Option<Length>,
    /// Where the first heap may begin.
    pub near: Length,
    /// What sets that.
    pub by: ClearedBy,
}

/// What sets how near heaps may come.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ClearedBy {
    /// The room to work in before the face.
    Working,
    /// The edge of the trench, which stone must not load nor roll over.
    Trench,
}

impl Strip {
    /// `near = max(face + strip, trench edge + max(least clearance, depth · share))`.
    pub(super) fn of(
        wall: &Wall,
        footing: Option<Footing>,
        side: Side,
        table: &ClearTable,
    ) -> Self {
        let face = farthest_out(wall, side);
        let working = face + table.strip;
        let trench = footing.map(|it| face + it.outset);
        let clear = footing.map_or(metres(0.0), |it| from_trench(it.depth, table));
        let from_edge = trench.map(|edge| edge + clear);
        let (near, by) = match from_edge {
            Some(edge) if working < edge => (edge, ClearedBy::Trench),
            _ => (working, ClearedBy::Working),
        };
        Self {
            side,
            face,
            trench,
            near,
            by,
        }
    }
}

/// Kept clear from the edge of a trench so deep.
fn from_trench(depth: Length, table: &ClearTable) -> Length {
    let deep = depth * table.trench_depths;
    if deep < table.trench {
        table.trench
    } else {
        deep
    }
}

/// The largest offset of a face at the ground.
fn farthest_out(wall: &Wall, side: Side) -> Length {
    let pieces = wall.pieces();
    let ends = pieces
        .iter()
        .flat_map(|piece| [(piece.from, piece.top[0]), (piece.to, piece.top[1])]);
    let offsets = ends.map(|(station, top)| {
        let rise = top - wall.ground.level(Across::Face(side), station);
        wall.section.offset(side, rise)
    });
    let usual = wall.section.offset(side, wall.section.height());
    offsets
        .reduce(|most, it| if most < it { it } else { most })
        .unwrap_or(usual)
}
