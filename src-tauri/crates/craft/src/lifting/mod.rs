//! Lifting by hand: two published guides, and what they say of stones.
//!
//! Guidance, never permission: both guides take for granted a good floor, a good grip, an
//! unhurried healthy adult and two hands, and a field gives few of these. What they leave
//! out stands in `lessons/tables/lifting.toml` and belongs beside every figure. Read in
//! this order:
//!
//! - `niosh`: the revised NIOSH lifting equation, a load constant times six multipliers;
//!   `system` holds its constants, `frequency` its table of lifts by the minute and
//!   `work_time` how long the lifting counts as
//! - `composite`: several lifting tasks in one job
//! - `filter`: the UK filter weights, by the zones the hands pass through
//! - `answer`: who or what moves a stone of a given mass; `size`: how big such a stone is
//! - `guide`: both guides put to the stages of a wall
//!
//! # Sources
//! *Applications Manual for the Revised NIOSH Lifting Equation*, DHHS (NIOSH) Publication
//! 94-110, revised September 2021: page numbers here are its own, seen in transcriptions of
//! it. Health and Safety Executive (UK), *Manual handling at work: a brief guide* (INDG143),
//! and *Manual handling: guidance on regulations* (L23), seen in restatements.

mod answer;
mod composite;
mod filter;
mod frequency;
mod guide;
mod niosh;
#[cfg(test)]
mod properties;
#[cfg(test)]
pub(crate) mod sample;
mod size;
mod system;
mod work_time;

pub use answer::{Answer, Heavy, Step, Team, steps};
pub use composite::{Composite, Single, Task};
pub use filter::{Body, People, Reach, Zone};
pub use frequency::{Band, PerMinute};
pub use guide::{Guide, GuideLift, StoneAnswers, guide};
pub use niosh::{Grip, Hands, Lift, Multipliers, index};
pub use size::StoneSize;
pub use system::System;
pub use work_time::{Session, WorkTime};
