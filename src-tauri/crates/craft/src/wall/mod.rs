//! The wall itself: its section, its line and ground, and what it holds.

mod behind;
mod ends;
mod ground;
mod line;
mod section;
mod standing;
mod volume;

pub use ends::{EndStones, WallEnd};
pub use ground::{Across, Ground, Survey};
pub use line::{Bend, Line, Place, Stretch, all_but_the_last_straight, total};
pub use section::{Batter, Section, Side};
pub use standing::{Piece, Top, Wall};
pub use volume::{Footing, Volumes};
