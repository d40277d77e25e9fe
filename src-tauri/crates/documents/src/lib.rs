//! Documents: which there are, what each template is fed, a pack printed into a folder, and the
//! days as a calendar file.
//!
//! A [`Course`] here is a course file that was planned, with its figures written out and its
//! drawings made: what the terminal, the window and the pages all show.

pub mod booking;
pub mod calendar;
mod course;
mod drawings;
mod edition;
mod feed;
mod filled;
mod list;
mod looked_at;
mod made;
mod one_lesson;
mod over_time;
mod pack;
mod reasons;
mod side_by_side;
mod sketch;
mod spelling;
mod stored;
mod templates;

pub use course::Course;
/// What can be taken hold of in a [`Picture`].
pub use drawing::{Axis, DayRow, Handle, Moves, Point, Stop};
pub use drawings::{Drawings, Picture};
pub use edition::Edition;
pub use filled::filled;
pub use list::{DOCUMENTS, Document, asked_by_pages, named, wanted};
pub use looked_at::{Pieces, Preview, preview};
pub use made::{Fed, Replaced, Sheets, fed, print, sheets};
pub use pack::{Error, Pack, pack};
pub use reasons::reasons;
pub use sketch::{Sketch, sketch};
pub use stored::FromStore;
