//! The kit store: what an instructor owns, which course has booked it, what came home; and the
//! pace book, what their courses have taught of pace.
//!
//! One SQLite file for each instructor, `kit.db` in a folder the caller names. Every change
//! is one transaction: after a crash the store is the old one or the new one. Dates and
//! folders come in from the caller; nothing here asks the clock.
//!
//! - [`Store::open`] to change it, [`Store::read`] for a program that only plans
//! - [`Lot`]: so many of an item that one person owns
//! - [`CourseEntry`], [`Store::book`], [`Store::held_for`], [`Store::clashes`]: who counts on
//!   what, on which days
//! - [`Store::home`], [`Store::take_back_home`]: what came back, broke, was used up or lost
//! - [`PaceRecord`], [`Store::record`], [`Store::take_back_record`]: how long the stages took
//! - [`PaceList`], [`Store::preview_pace`], [`Store::apply_pace`], [`Store::export_pace`]: the pace
//!   book as a CSV file
//! - [`KitList`], [`Store::preview`], [`Store::apply`], [`Store::export`]: the kit list as a
//!   CSV or XLSX file

mod bookings;
mod clashes;
mod courses;
mod error;
mod held;
mod homecoming;
mod import;
mod lots;
mod migrations;
mod notice;
mod open;
mod pace_book;
mod pace_import;
mod sheet;
mod taking_back;
mod text;

pub use clashes::{Claim, Clash, Clashes, NotInStore};
pub use courses::{Booked, CourseEntry};
pub use error::Error;
pub use homecoming::{CountedHome, Homecoming, Return};
pub use import::{Changed, Mode, Preview};
pub use lots::{Lot, MOST_MASS_KG, MOST_OF_ONE};
pub use notice::ReadOnly;
pub use open::{FILE_NAME, Store};
pub use pace_book::PaceRecord;
pub use pace_import::{PaceChanged, PacePreview};
pub use sheet::{
    Column, Fault, Kind, KitList, MOST_ROWS, PaceList, Refusal, is_kit_list, is_pace_book, rows_of,
};
