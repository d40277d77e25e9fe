//! The sums at level 1: whole numbers, and one step to the answer.

pub(super) mod setting_out;
pub(super) mod stone;
pub(super) mod widths;
