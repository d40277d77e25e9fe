//! Drawings of a planned wall: one scene in paper millimetres, shown on screen and in print.
//!
//! A [`Scene`] is a list of marks with a description in words; [`Scene::svg`] writes it.
//! Nothing in a drawing depends on colour: what a line means is told by its weight, its
//! dashes and its hatching ([`Pen`]). Read the modules in this order:
//!
//! - `paper`: what every drawing is made of: pens, scenes, texts with room round them,
//!   dimensions, scales, hatching, words
//! - `across`: the section; `along`: the elevation, in stretches where the wall is long, and a
//!   face with faults to be found;
//!   `above`: the line on the ground, the heaps beside it and the setting-out along it;
//!   `frame`: a frame put together, and the gauge
//! - `over_time`: the days as bars, the chance of finishing against the length, the day's progress
//!   against the forecast
//! - `turns`: which face a three-quarter through comes from, in all of them

mod above;
mod across;
mod along;
mod frame;
mod over_time;
mod paper;
mod turns;

#[cfg(test)]
mod fixture;
#[cfg(test)]
mod made_up_heaps;
#[cfg(test)]
mod made_up_lines;
#[cfg(test)]
mod overlap;
#[cfg(test)]
mod written;

pub use above::heap_plan::{heap_plan, heap_plan_in_parts};
pub use above::line_plan::line_plan;
pub use above::setting_out::{setting_out, setting_out_in_parts};
pub use across::parts::section_blank;
pub use across::section::section;
pub use along::elevation::{elevation, elevation_in_parts};
pub use along::find_fault::find_the_fault;
pub use frame::assembly::frame;
pub use frame::gauge::gauge;
pub use over_time::chance_curve::{ChanceCurve, chance_curve};
pub use over_time::clock::Clock;
pub use over_time::progress::{Band, Progress, ProgressDay, progress_against_forecast};
pub use over_time::timetable::{Bar, Timetable, TimetableDay, WhenDone};
pub use over_time::timetable_bars::{timetable_bars, timetable_in_parts};
pub use paper::day_row::DayRow;
pub use paper::handle::{Axis, Handle, Moves, Stop};
pub use paper::pen::Pen;
pub use paper::scene::{Anchor, Mark, Point, Room, Scene, Text};
