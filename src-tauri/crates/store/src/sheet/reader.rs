//! Row by row from cells to what a list holds, collecting every fault on the way.

use super::cells::{Cell, Marks, Row};
use super::columns::{Columns, Heading, MOST_COLUMNS};
use super::faults::{Column, Fault, Faults, quoted};
use crate::Error;
use crate::text::tidy;
use std::collections::BTreeSet;

/// What the rows of one sort of list come to.
pub(super) trait Content: Default {
    type Field: Heading;
    /// The most rows below the header.
    const MOST_ROWS: u32;
    /// What to do about more.
    const TOO_MANY: &'static str;
    /// What to do about an empty file.
    const EMPTY: &'static str;
    /// What to write below the header.
    const NO_ROWS: &'static str;

    /// Takes a row that is not blank.
    fn take(&mut self, cells: &mut Cells<'_, Self::Field>);

    fn is_empty(&self) -> bool;
}

/// Takes rows in the order of the file.
pub(super) struct Reader<C: Content> {
    marks: Marks,
    columns: Option<Columns<C::Field>>,
    content: C,
    /// Columns without a heading that were told already.
    told: BTreeSet<u32>,
    faults: Faults,
    count: u32,
}

impl<C: Content> Reader<C> {
    pub(super) fn new(marks: Marks) -> Self {
        Self {
            marks,
            columns: None,
            content: C::default(),
            told: BTreeSet::new(),
            faults: Faults::default(),
            count: 0,
        }
    }

    /// Takes a row; `false` if it is no use reading on.
    pub(super) fn row(&mut self, row: &Row) -> bool {
        if row.cells.is_empty() {
            return true;
        }
        let Some(columns) = self.columns.take() else {
            self.columns = Columns::of(row, &mut self.faults);
            // What is wrong with a heading is told, and not again for what stands below it.
            self.told.extend(row.cells.iter().map(|(index, _)| *index));
            return self.columns.is_some();
        };
        self.count += 1;
        if C::MOST_ROWS < self.count {
            self.faults.add_first(too_many::<C>(row.number));
            return false;
        }
        self.without_heading(&columns, row);
        self.content.take(&mut Cells {
            columns: &columns,
            row,
            marks: self.marks,
            faults: &mut self.faults,
            sound: true,
        });
        self.columns = Some(columns);
        true
    }

    pub(super) fn fault(&mut self, fault: Fault) {
        self.faults.add(fault);
    }

    /// What the list holds and in which columns, if there is no fault in it.
    pub(super) fn finish(mut self) -> Result<(C, Columns<C::Field>), Faults> {
        if self.faults.is_empty() && self.content.is_empty() {
            self.faults.add(match self.columns {
                None => Fault::new("empty", "the file is empty", C::EMPTY),
                Some(_) => {
                    let what = "there is no row below the columns' names";
                    Fault::new("no-rows", what, C::NO_ROWS)
                }
            });
        }
        match (self.faults.is_empty(), self.columns) {
            (true, Some(columns)) => Ok((self.content, columns)),
            _ => Err(self.faults),
        }
    }

    /// Something stands where no heading says what it is: told once for each column.
    fn without_heading(&mut self, columns: &Columns<C::Field>, row: &Row) {
        for (index, cell) in &row.cells {
            if columns.at(*index).is_some() || MOST_COLUMNS < self.told.len() {
                continue;
            }
            if !self.told.insert(*index) {
                continue;
            }
            let what = match cell {
                Cell::Text(text) => quoted(text),
                Cell::Number(number) => number.to_string(),
                Cell::Formula | Cell::Other(_) => "something".to_owned(),
            };
            let what = format!("{what} stands in a column without a name");
            let cure = "Name the column in the first row, or clear it.";
            let fault = Fault::new("no-heading", what, cure);
            let column = Column::new(*index, "");
            self.faults.add(fault.in_row(row.number).in_column(column));
        }
    }
}

fn too_many<C: Content>(row: u32) -> Fault {
    let most = C::MOST_ROWS;
    let what = format!(
        "this is one row more than the {most} a {} may have",
        C::Field::LIST
    );
    Fault::new("too-many-rows", what, C::TOO_MANY).in_row(row)
}

/// The cells of one row, asked for by field.
pub(super) struct Cells<'a, F> {
    columns: &'a Columns<F>,
    row: &'a Row,
    pub(super) marks: Marks,
    faults: &'a mut Faults,
    sound: bool,
}

impl<F: Heading> Cells<'_, F> {
    /// The row, counted from 1.
    pub(super) fn number(&self) -> u32 {
        self.row.number
    }

    /// Whether nothing is wrong with the row so far.
    pub(super) fn sound(&self) -> bool {
        self.sound
    }

    pub(super) fn get(&self, field: F) -> Option<&Cell> {
        let index = self.columns.find(field)?;
        let mut cells = self.row.cells.iter();
        cells.find(|(at, _)| *at == index).map(|(_, cell)| cell)
    }

    /// A name or a note, tidied; nothing where the cell is blank.
    pub(super) fn text(&mut self, field: F, most: usize) -> String {
        let text = match self.get(field) {
            None => return String::new(),
            Some(Cell::Text(text)) => tidy(field.heading(), text, most).map_err(not_kept),
            // A size or a year as a name.
            Some(Cell::Number(number)) => Ok(number.to_string()),
            Some(Cell::Formula) => Err(formula()),
            Some(Cell::Other(what)) => Err(Fault::new(
                "not-text",
                what,
                "Format the cell as text and type it again.",
            )),
        };
        self.sound_or_told(field, text)
    }

    /// What was read of a cell, or its fault at its place.
    pub(super) fn sound_or_told<T: Default>(&mut self, field: F, read: Result<T, Fault>) -> T {
        read.unwrap_or_else(|fault| {
            self.wrong(field, fault);
            T::default()
        })
    }

    /// Tells a fault of a cell at its place.
    pub(super) fn wrong(&mut self, field: F, fault: Fault) {
        self.sound = false;
        let index = self.columns.find(field).unwrap_or_default();
        let column = Column::new(index, field.heading());
        self.faults
            .add(fault.in_row(self.row.number).in_column(column));
    }
}

pub(super) fn formula() -> Fault {
    let what = "this is a formula";
    Fault::new("formula", what, "Paste its value instead.")
}

/// A text the store would not keep.
fn not_kept(cause: Error) -> Fault {
    let code = cause.code();
    match cause {
        Error::TooLong { given, most, .. } => {
            let what = format!("this has {given} characters, and {most} at most can be kept");
            Fault::new(code, what, "Shorten it.")
        }
        Error::Unshowable { character, .. } => {
            let number = u32::from(character);
            let what = format!("this holds a character that can't be shown (U+{number:04X})");
            Fault::new(code, what, "Type it again without it.")
        }
        other => Fault::new(code, other.to_string(), "Type it again."),
    }
}
