//! The tools a course needs: counted by rule from people, pairs, stints, frames, days and wall.
//!
//! `rules`: the table's rules as an instructor changes them; `count`: how many there are of what
//! a rule counts by; `heat`: for what is carried by heat; `line` and `sizes`: the list; `held`:
//! what there is of a tool; `named`: when two names are one tool; `frames`: how many frames that makes.

mod count;
mod frames;
mod heat;
mod held;
mod line;
mod named;
mod rules;
mod sizes;

pub use count::{Counted, frames_standing};
pub use frames::{FramesFree, frames_free};
pub use heat::{Heat, SaidBy, Weather};
pub use held::{Held, Taken};
pub use line::{BAR_ITEM, KitLine, kit, total_mass};
pub use named::{name_key, same_tool};
pub use rules::{NEEDED_FOR_ALL, RuleChange, Standing, changed, known_items};
pub use sizes::sized;

#[cfg(test)]
mod sample;
#[cfg(test)]
mod tests;
