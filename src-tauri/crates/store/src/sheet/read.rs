//! Row by row from cells to lots, collecting every fault on the way.

use super::cells::{Cell, Marks, Row};
use super::columns::{Columns, Field, MOST_COLUMNS};
use super::faults::{Column, Fault, Faults, quoted};
use super::{KitList, MOST_ROWS, number};
use crate::Error;
use crate::lots::Lot;
use crate::text::{MOST_OF_NAME, MOST_OF_NOTE, tidy};
use craft::quantity;
use std::collections::{BTreeSet, HashMap};

/// Takes rows in the order of the file.
pub(super) struct Reader {
    marks: Marks,
    columns: Option<Columns>,
    lots: Vec<Lot>,
    /// The row of each lot, by its item's and owner's keys.
    rows: HashMap<(String, String), u32>,
    /// Columns without a heading that were told already.
    told: BTreeSet<u32>,
    faults: Faults,
    count: u32,
}

impl Reader {
    pub(super) fn new(marks: Marks) -> Self {
        Self {
            marks,
            columns: None,
            lots: Vec::new(),
            rows: HashMap::new(),
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
        if MOST_ROWS < self.count {
            self.faults.add_first(too_many(row.number));
            return false;
        }
        self.without_heading(&columns, row);
        if let Some(lot) = self.lot(&columns, row) {
            self.keep(&columns, lot, row.number);
        }
        self.columns = Some(columns);
        true
    }

    pub(super) fn fault(&mut self, fault: Fault) {
        self.faults.add(fault);
    }

    /// The list, if there is no fault in it.
    pub(super) fn finish(mut self) -> Result<KitList, Faults> {
        if self.faults.is_empty() && self.lots.is_empty() {
            self.faults.add(match self.columns {
                None => Fault::new(
                    "empty",
                    "the file is empty",
                    "Write the columns' names into the first row, \"item\" and \"good\" at least, and a row for each item below.",
                ),
                Some(_) => Fault::new(
                    "no-rows",
                    "there is no row below the columns' names",
                    "Write a row for each item.",
                ),
            });
        }
        match (self.faults.is_empty(), self.columns) {
            (true, Some(columns)) => Ok(KitList {
                lots: self.lots,
                columns,
            }),
            _ => Err(self.faults),
        }
    }

    /// Something stands where no heading says what it is: told once for each column.
    fn without_heading(&mut self, columns: &Columns, row: &Row) {
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

    /// The row's lot; `None` if anything is wrong with it.
    fn lot(&mut self, columns: &Columns, row: &Row) -> Option<Lot> {
        let mut cells = Cells {
            columns,
            row,
            marks: self.marks,
            faults: &mut self.faults,
            sound: true,
        };
        let lot = Lot {
            item: cells.text(Field::Item, MOST_OF_NAME),
            unit: cells.text(Field::Unit, MOST_OF_NAME),
            owner: cells.text(Field::Owner, MOST_OF_NAME),
            good: cells.count(Field::Good),
            care: cells.count(Field::Care),
            broken: cells.count(Field::Broken),
            mass: cells.kilograms(Field::Mass).map(quantity::kilograms),
            note: cells.text(Field::Note, MOST_OF_NOTE),
        };
        cells.sound.then_some(lot)
    }

    fn keep(&mut self, columns: &Columns, lot: Lot, row: u32) {
        if let Some(first) = self.rows.get(&lot.key()) {
            let (whose, cure) = if lot.owner.is_empty() {
                (
                    String::new(),
                    "Put both into one row, or name their owners.",
                )
            } else {
                (
                    format!(" of {}", quoted(&lot.owner)),
                    "Put both into one row.",
                )
            };
            let what = format!("{}{whose} is in row {first} already", quoted(&lot.item));
            let column = columns.find(Field::Item).unwrap_or_default();
            let fault = Fault::new("doubled", what, cure).in_row(row);
            let column = Column::new(column, Field::Item.heading());
            self.faults.add(fault.in_column(column));
            return;
        }
        self.rows.insert(lot.key(), row);
        self.lots.push(lot);
    }
}

fn too_many(row: u32) -> Fault {
    let what = format!("this is one row more than the {MOST_ROWS} a kit list may have");
    let cure = "Leave in what is kit, or import it in several files.";
    Fault::new("too-many-rows", what, cure).in_row(row)
}

/// The cells of one row, asked for by field.
struct Cells<'a> {
    columns: &'a Columns,
    row: &'a Row,
    marks: Marks,
    faults: &'a mut Faults,
    sound: bool,
}

impl Cells<'_> {
    fn get(&self, field: Field) -> Option<&Cell> {
        let index = self.columns.find(field)?;
        let mut cells = self.row.cells.iter();
        cells.find(|(at, _)| *at == index).map(|(_, cell)| cell)
    }

    fn text(&mut self, field: Field, most: usize) -> String {
        let text = match self.get(field) {
            None if field == Field::Item => Err(Fault::new(
                "empty-item",
                "the item has no name, but the row is not blank",
                "Write what it is, or clear the row.",
            )),
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

    fn count(&mut self, field: Field) -> u32 {
        let marks = self.marks;
        let count = match self.get(field) {
            None if field == Field::Good => Err(Fault::new(
                "empty-count",
                "nothing says how many there are",
                "Write a whole number; 0 if there is none.",
            )),
            None => return 0,
            Some(Cell::Text(text)) => number::count(text, marks),
            Some(Cell::Number(number)) => number::count_of(*number),
            Some(Cell::Formula) => Err(formula()),
            Some(Cell::Other(what)) => Err(Fault::new(
                "not-a-number",
                what,
                "Write a whole number in digits, such as 6.",
            )),
        };
        self.sound_or_told(field, count)
    }

    fn kilograms(&mut self, field: Field) -> Option<f64> {
        let marks = self.marks;
        let mass = match self.get(field)? {
            Cell::Text(text) => number::kilograms(text, marks),
            Cell::Number(number) => number::kilograms_of(*number),
            Cell::Formula => Err(formula()),
            Cell::Other(what) => Err(Fault::new(
                "not-a-number",
                what,
                "Write kilograms in digits, such as 1.5.",
            )),
        };
        Some(self.sound_or_told(field, mass))
    }

    fn sound_or_told<T: Default>(&mut self, field: Field, read: Result<T, Fault>) -> T {
        read.unwrap_or_else(|fault| {
            self.sound = false;
            let index = self.columns.find(field).unwrap_or_default();
            let column = Column::new(index, field.heading());
            self.faults
                .add(fault.in_row(self.row.number).in_column(column));
            T::default()
        })
    }
}

fn formula() -> Fault {
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
