//! How fast the wall rises: work by stage, simulated courses, the length that fits, the
//! timetable.
//!
//! [`work`] says how much there is to do, [`crew`] how fast the group does it, [`belief`] and
//! [`luck`] how surely, [`fixed`], [`shut`], [`rates`] and [`calendar`] when there is time; [`programme`]
//! puts it in order, [`whole`] lays it along the wall and [`follow`] goes through it. [`forecast`], [`sizing`] and [`timetable`]
//! ask all of them. [`evidence`] is what a report on the day adds to what is believed, and
//! [`book`] what an instructor's past courses do; [`built`] is how far the wall has come.

pub mod belief;
mod between;
pub mod book;
pub mod built;
pub mod calendar;
pub mod crew;
pub mod evidence;
pub mod fatigue;
pub mod fixed;
pub mod follow;
pub mod forecast;
pub mod holdup;
pub mod luck;
pub mod programme;
#[cfg(test)]
mod properties;
pub mod rates;
mod said;
pub mod shut;
pub mod sizing;
mod telling;
pub mod ties;
pub mod timetable;
pub mod whole;
pub mod work;

pub use fatigue::Fatigue;
pub use forecast::{Forecast, SAMPLES};
pub use holdup::{Cause, Holdup};
pub use sizing::{Binding, Bound, Kept, Limit, Sizing};
pub use timetable::{Entry, EntryKind};
