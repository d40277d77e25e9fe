//! The kit list and the pace book as files of rows and columns: read with every fault at its place,
//! written so that reading one gives the same.

mod cells;
mod columns;
mod csv;
mod encoding;
mod faults;
mod fields;
mod guard;
mod number;
mod pace;
mod read;
mod reader;
mod rows;
mod write;
mod xlsx;

pub use faults::{Column, Fault, Refusal};
pub use pace::PaceList;
pub use rows::{is_kit_list, is_pace_book, rows_of};

use crate::Error;
use crate::lots::Lot;
use columns::Columns;
use faults::Faults;
use fields::Field;
use std::path::Path;

pub(crate) use pace::write as write_pace_book;
pub(crate) use write::write;

/// The most rows a kit list may have below its header.
pub const MOST_ROWS: u32 = 20_000;

/// What a file is, by the ending of its name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// Text with separators, `.csv`.
    Csv,
    /// A workbook, `.xlsx`.
    Xlsx,
}

impl Kind {
    /// By the ending of the name.
    ///
    /// # Errors
    /// [`Error::Sheet`] for any other ending.
    pub fn of(path: &Path) -> Result<Self, Error> {
        faults::kind_of(path).map_err(|fault| Refusal::of(path, fault).into())
    }
}

/// A kit list from a file, sound in all its rows.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct KitList {
    /// In the order of the file.
    pub(crate) lots: Vec<Lot>,
    /// What the file says of each lot.
    pub(crate) columns: Columns<Field>,
}

impl KitList {
    /// Reads a kit list: CSV or XLSX by the ending of its name.
    ///
    /// The first row that is not blank names the columns, in any order, whatever the capitals
    /// and spaces: item, unit, owner, good, needs care, broken, mass kg, note. Only `item` and
    /// `good` must be there. Of a workbook it is the first sheet that is not hidden.
    ///
    /// # Errors
    /// [`Error::Sheet`] with every fault at its row and column, up to 20 of them.
    pub fn read(path: &Path) -> Result<Self, Error> {
        let list = faults::kind_of(path)
            .map_err(Faults::from)
            .and_then(|kind| match kind {
                Kind::Csv => csv::read(path),
                Kind::Xlsx => xlsx::read(path),
            })
            .and_then(read::list);
        list.map_err(|faults| faults.in_file(path).into())
    }

    /// The lots, in the order of the file. What a file has no column for is empty here.
    pub fn lots(&self) -> &[Lot] {
        &self.lots
    }
}
