//! The sums at level 3: odd numbers, and a step or two more.

pub(super) mod setting_out;
pub(super) mod stone;
pub(super) mod throughs;
pub(super) mod widths;
