//! The workings of the trade: pure sums from measurements to answers.
//!
//! Nothing here reads a file, asks the time or knows that a screen exists. Everything
//! needed comes in as a [`course::Course`] and [`tables::Tables`]; everything found out
//! goes back as a [`plan::Plan`]. Read the modules in this order:
//!
//! - [`quantity`]: lengths, masses and the like, and how a person writes them
//! - [`course`] and [`tables`]: what is given
//! - [`wall`]: section, line, ground and volumes; [`frames`]: stations, bars and strings;
//!   [`timber`]: nailed frames and the lumber for them
//! - [`retaining`]: a bank behind the wall, for teaching
//! - [`stone`], [`deliveries`], [`heaps`]: what stone, when it is ordered and where it lies;
//!   [`lifting`]: which stones one person may lift, and what moves the others
//! - [`people`], [`kit`]: who and what is needed; [`loads`]: what travels in which vehicle;
//!   [`money`]: what it costs
//! - [`pace`]: work by stage, the simulated courses, the length that fits, the timetable
//! - [`weather`]: heat index, wind chill, and what a day's forecast asks for
//! - [`conditions`]: when a caution or a kit rule counts; [`hazards`]: what can hurt someone on
//!   this course, how likely, how badly, and what is done about it
//! - [`sun`], [`cautions`], [`readiness`], [`worksheet`]: daylight, safety, what is still
//!   to do, questions
//! - [`plan`]: the one door through which all of it is asked

pub mod cautions;
pub mod conditions;
pub mod course;
pub mod deliveries;
mod error;
pub mod frames;
pub mod hazards;
pub mod heaps;
pub mod kit;
pub mod lifting;
pub mod loads;
pub mod money;
pub mod pace;
pub mod people;
pub mod plan;
pub mod quantity;
pub mod readiness;
pub mod retaining;
pub mod stone;
pub mod stonework;
pub mod sun;
pub mod tables;
pub mod timber;
pub mod wall;
pub mod weather;
pub mod worksheet;

pub use error::Error;
