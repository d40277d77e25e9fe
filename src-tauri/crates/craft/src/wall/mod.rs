//! The wall itself: its section, and what a length of it holds.

mod section;
mod volume;

pub use section::{Batter, Section, Side};
pub use volume::{Footing, Volumes, raked_away};
