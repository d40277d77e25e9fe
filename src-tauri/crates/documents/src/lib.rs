//! Documents: which there are, what each template is fed, and a pack printed into a folder.
//!
//! A [`Course`] here is a course file that was planned, with its figures written out and its
//! drawings made: what the terminal, the window and the pages all show.

pub mod booking;
mod course;
mod drawings;
mod feed;
mod list;
mod pack;
mod spelling;

pub use course::Course;
pub use drawings::{Drawings, Picture};
pub use list::{DOCUMENTS, Document, named, wanted};
pub use pack::{Error, Pack, pack, print};
