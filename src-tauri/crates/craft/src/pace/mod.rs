//! How fast the wall rises: work by stage, simulated courses, the length that fits, the
//! timetable.
//!
//! [`work`] says how much there is to do, [`crew`] how fast the group does it, [`draws`]
//! how surely, [`calendar`] when there is time; [`forecast`], [`sizing`] and [`timetable`]
//! ask all four.

pub mod calendar;
pub mod crew;
pub mod draws;
pub mod forecast;
pub mod programme;
pub mod sizing;
pub mod timetable;
pub mod work;

pub use forecast::{Forecast, SAMPLES};
pub use sizing::{Binding, Bound, Kept, Limit, Sizing};
pub use timetable::{Entry, EntryKind};
