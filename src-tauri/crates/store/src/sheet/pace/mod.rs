//! The pace book as a CSV file: a row for each stage of each course.

mod read;
mod write;

pub(crate) use write::write;

use super::columns::Heading;
use super::faults::{Fault, Faults, Refusal};
use super::{Kind, csv};
use crate::{Error, PaceRecord};
use std::path::Path;

/// What a column holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum PaceField {
    Course,
    FirstDay,
    RecordedOn,
    Stage,
    Usual,
    Taken,
    Tied,
    File,
}

impl Heading for PaceField {
    const ALL: &'static [Self] = &[
        Self::Course,
        Self::FirstDay,
        Self::RecordedOn,
        Self::Stage,
        Self::Usual,
        Self::Taken,
        Self::Tied,
        Self::File,
    ];
    const NEEDED: &'static [Self] = &[
        Self::Course,
        Self::FirstDay,
        Self::RecordedOn,
        Self::Stage,
        Self::Usual,
        Self::Taken,
        Self::File,
    ];
    const LIST: &'static str = "pace book";

    fn heading(self) -> &'static str {
        match self {
            Self::Course => "course",
            Self::FirstDay => "first day",
            Self::RecordedOn => "recorded on",
            Self::Stage => "stage",
            Self::Usual => "usual minutes",
            Self::Taken => "taken minutes",
            Self::Tied => "pairs at the string",
            Self::File => "course file",
        }
    }
}

/// A pace book from a file, sound in all its rows.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PaceList {
    /// In the order of the file.
    pub(crate) records: Vec<PaceRecord>,
}

impl PaceList {
    /// Reads a pace book from a CSV file.
    ///
    /// The first row that is not blank names the columns, in any order, whatever the capitals and
    /// spaces: course, first day, recorded on, stage, usual minutes, taken minutes, pairs at the
    /// string, course file. All must be there but `pairs at the string`. Rows with the same course
    /// file are stages of one course. Dates are written as 2027-04-24.
    ///
    /// # Errors
    /// [`Error::Sheet`] with every fault at its row and column, up to 20 of them.
    pub fn read(path: &Path) -> Result<Self, Error> {
        let list = match Kind::of(path) {
            Ok(Kind::Csv) => csv::read(path).and_then(read::list),
            _ => Err(Faults::from(not_csv())),
        };
        list.map_err(|faults| faults.in_file(path).into())
    }

    /// The courses, in the order of the file.
    pub fn records(&self) -> &[PaceRecord] {
        &self.records
    }

    /// Whether a pace book can be written to a file of this name.
    ///
    /// # Errors
    /// [`Error::Sheet`] for a name that does not end in `.csv`.
    pub fn may_be_called(path: &Path) -> Result<(), Error> {
        match Kind::of(path) {
            Ok(Kind::Csv) => Ok(()),
            _ => Err(Refusal::of(path, not_csv()).into()),
        }
    }
}

fn not_csv() -> Fault {
    let what = "the name of a pace book ends in .csv, and this one does not";
    Fault::new("ending", what, "Save it as CSV UTF-8 (.csv).")
}
