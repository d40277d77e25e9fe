//! How stone lies in heaps beside a wall, and what is kept clear of it.

use crate::course::StoneKind;
use crate::quantity::{Length, Mass, Volume};

/// How stone lies in heaps beside a wall, and what is kept clear of it.
#[derive(Debug, Clone, PartialEq)]
pub struct HeapTable {
    /// The five kinds of walling stone.
    pub stone: [(StoneKind, Lying); 5],
    /// Drainage stone, which comes by volume.
    pub drainage: Lie,
    /// What is kept clear of stone.
    pub clear: ClearTable,
    /// Ways and rows.
    pub rows: RowTable,
    /// Where the lorry tips.
    pub tip: TipTable,
}

/// One kind of stone as it lies.
#[derive(Debug, Clone, PartialEq)]
pub struct Lying {
    /// Share of its heap that is air.
    pub loose_voids: f64,
    /// Its shape.
    pub lie: Lie,
    /// Who says so.
    pub source: String,
}

/// The shape stone lies in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Lie {
    /// Tipped or thrown: a cone, or a ridge with rounded ends.
    Heaped {
        /// The slope it comes to rest at, from level.
        repose_degrees: f64,
        /// No higher than a person safely picks from.
        height: Length,
    },
    /// Laid side by side, not heaped.
    Laid {
        /// Out from the wall.
        width: Length,
        /// One stone high.
        height: Length,
    },
}

/// What is kept clear of stone beside a wall.
#[derive(Debug, Clone, PartialEq)]
pub struct ClearTable {
    /// From each face, to work in.
    pub strip: Length,
    /// Who says so.
    pub strip_source: String,
    /// From the edge of the trench at least.
    pub trench: Length,
    /// From the edge of the trench for each unit of its depth.
    pub trench_depths: f64,
    /// Who says so.
    pub trench_source: String,
    /// The width of a barrow way.
    pub way: Length,
    /// The farthest two barrow ways may lie apart.
    pub way_every: Length,
    /// Who says so.
    pub way_source: String,
}

/// How rows of heaps stand.
#[derive(Debug, Clone, PartialEq)]
pub struct RowTable {
    /// Between one row and the next, to put one's feet.
    pub foot_room: Length,
    /// Between two heaps of a row.
    pub between: Length,
    /// The farthest a heap may reach from the face.
    pub reach: Length,
    /// Rows beside a short wall are at least so long.
    pub shortest: Length,
    /// The farthest they may reach beyond an end.
    pub beyond_end: Length,
    /// From one heap of hearting to the next.
    pub hearting_every: Length,
    /// A ridge lower than this is made shorter instead.
    pub low: Length,
    /// Less than this is not worth a heap of its own.
    pub least: Volume,
    /// Who says so.
    pub source: String,
}

/// Where the lorry tips unsorted stone.
#[derive(Debug, Clone, PartialEq)]
pub struct TipTable {
    /// One load, where nobody says how large it is.
    pub load: Mass,
    /// How high a tipped load lies.
    pub height: Length,
    /// Who says so.
    pub source: String,
}

impl HeapTable {
    /// How one kind of stone lies.
    pub fn stone(&self, kind: StoneKind) -> &Lying {
        let [first, ..] = &self.stone;
        let found = self.stone.iter().find(|(its, _)| *its == kind);
        &found.unwrap_or(first).1
    }
}
