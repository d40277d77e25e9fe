//! A dry stone wall drawn stone by stone, and an eye that finds its faults.
//!
//! Two parts that know nothing of each other. [`lay`] and [`cut`] lay irregular stones by
//! the rules of the trade, or break a rule where told to; [`check`] and [`check_cut`] look
//! at stones alone, never at how they came to be, and say what is wrong with them.
//!
//! - `given`, `stone`: what is asked for and what comes out; `luck`, `polygon`: both by seed
//! - `face` lays: `levels`, `heights` and `rows` plan its courses, `reserved` and `planted`
//!   hold places free, `valley` and `bond` find the next stone and cross the joints below,
//!   `setting` over `skyline` puts it there, `shape` gives it edges, `footing` and `copes`
//!   the first and the last
//! - `cut` lays what is seen of a wall cut across: `crossing` its outline, `tied` its throughs
//!   and what lies behind a tail, `hearting` its middle
//! - `check` over `joints`, and `check_cut`: the eye

mod bond;
mod check;
mod check_cut;
mod copes;
mod crossing;
mod cut;
mod face;
mod footing;
mod given;
mod hearting;
mod heights;
mod joints;
mod levels;
mod luck;
mod planted;
mod polygon;
mod reserved;
mod rows;
mod setting;
mod shape;
mod skyline;
mod stone;
mod tied;
mod valley;

#[cfg(test)]
mod tests;

pub use check::{
    Expectations, ExpectedRow, Fault, FaultKind, LEAST_LAP_M, LEAST_STONE_M2, LONGEST_ROW_GAP,
    RUNNING_COURSES, TRACED_SHARE, check,
};
pub use check_cut::{ExpectedCut, HOLLOW_M, SKIN_SHARE, check_cut};
pub use cut::cut;
pub use face::lay;
pub use given::{
    Crossing, CutReach, CutThrough, Face, FaceEnd, PlantedFault, PlantedKind, ThroughRow,
};
pub use stone::{Point, Role, Stone};
