//! Files: the course file, the tables and lessons, and saving without loss.
//!
//! A course file is read into a [`course::CourseFile`] or refused with a place, a cause and
//! a cure; it is edited as text, so that comments and spelling stay; it is saved whole or
//! not at all. Tables and lessons come from the built-in copy of `lessons/`, with the
//! instructor's own files over them.

#[cfg(test)]
mod bare;
mod cards;
pub mod course;
mod error;
mod examples;
mod first_aid;
mod glossary;
mod library;
pub mod own_kit;
#[cfg(test)]
mod planned_days;
pub mod quantity;
pub mod recent;
pub mod roster;
mod save;
mod shelf;
mod spelling;
mod tables;
mod zones;

pub use cards::draft;
pub use cards::own as own_cards;
pub use cards::{
    Block, COURSE_DRAWINGS, Card, Country, Figure, Kind, Question, Span, Wording, whole,
};
pub use error::{Error, Fault, Refusal};
pub use examples::{Example, examples};
pub use first_aid::Injury;
pub use glossary::Term;
pub use library::Library;
pub use save::{clear_leftovers, save, save_new};
pub use spelling::American;
pub use zones::{Zone, Zones};
