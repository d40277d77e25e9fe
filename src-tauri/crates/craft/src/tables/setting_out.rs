//! What frames are set out with, and what holds for walls that hold back a bank.

use crate::quantity::{Density, Force, Length, LinearMassDensity};
use crate::retaining::{Bank, Limits};
use crate::timber::Timber;

/// Boards, strings and the rest that frames are set out with.
#[derive(Debug, Clone, PartialEq)]
pub struct FrameTable {
    /// The board of a bar frame.
    pub board: BoardTable,
    /// The string.
    pub string: StringTable,
    /// Timber frames and the lumber they are cut from.
    pub timber: Timber,
    /// Who says so.
    pub timber_source: String,
    /// Round a bar where it passes a footing.
    pub gap_play: Length,
    /// What a bar must have below a trench.
    pub least_grip: Length,
    /// Who says so of bars in a footing.
    pub footing_source: String,
    /// The height of one end stone.
    pub end_course: Length,
    /// Who says so.
    pub end_source: String,
}

/// The board of a bar frame.
#[derive(Debug, Clone, PartialEq)]
pub struct BoardTable {
    /// Along the wall.
    pub width: Length,
    /// Upwards.
    pub thickness: Length,
    /// Beyond the middle of each eye.
    pub overhang: Length,
    /// An eye is so much wider than the bar.
    pub play: Length,
    /// Who says so.
    pub source: String,
}

/// A mason's string.
#[derive(Debug, Clone, PartialEq)]
pub struct StringTable {
    /// Its mass to the length.
    pub mass: LinearMassDensity,
    /// How hard it is pulled by hand.
    pub pull: Force,
    /// Beyond a frame at each end, to tie it with.
    pub tail: Length,
    /// Who says so.
    pub source: String,
}

/// What holds for walls that hold back a bank.
#[derive(Debug, Clone, PartialEq)]
pub struct RetainingTable {
    /// What the teaching check is held against.
    pub limits: Limits,
    /// The bank, where a course says nothing of it.
    pub bank: Bank,
    /// Thickness of the drainage stone.
    pub drainage: Length,
    /// Of the drainage stone as it lies.
    pub drainage_density: Density,
    /// Whom to ask, and when.
    pub ask: String,
    /// Who says so.
    pub ask_source: String,
    /// What the check takes for granted.
    pub assumptions: Vec<String>,
}
