//! The rows of a kit list: a lot each, none twice.

use super::cells::Cell;
use super::columns::Columns;
use super::faults::{Fault, quoted};
use super::fields::Field;
use super::reader::{Cells, Content, Reader, formula};
use super::{Faults, KitList, MOST_ROWS, number};
use crate::lots::Lot;
use crate::text::{MOST_OF_NAME, MOST_OF_NOTE};
use craft::quantity;
use std::collections::HashMap;

/// Lots in the order of the file.
#[derive(Default)]
pub(super) struct Lots {
    lots: Vec<Lot>,
    /// The row of each lot, by its item's and owner's keys.
    rows: HashMap<(String, String), u32>,
}

/// The list, if there is no fault in it.
pub(super) fn list(reader: Reader<Lots>) -> Result<KitList, Faults> {
    let (Lots { lots, .. }, columns): (Lots, Columns<Field>) = reader.finish()?;
    Ok(KitList { lots, columns })
}

impl Content for Lots {
    type Field = Field;
    const MOST_ROWS: u32 = MOST_ROWS;
    const TOO_MANY: &'static str = "Leave in what is kit, or import it in several files.";
    const EMPTY: &'static str = "Write the columns' names into the first row, \"item\" and \"good\" at least, and a row for each item below.";
    const NO_ROWS: &'static str = "Write a row for each item.";

    fn take(&mut self, cells: &mut Cells<'_, Field>) {
        let lot = Lot {
            item: cells.item(),
            unit: cells.text(Field::Unit, MOST_OF_NAME),
            owner: cells.text(Field::Owner, MOST_OF_NAME),
            good: cells.count(Field::Good),
            care: cells.count(Field::Care),
            broken: cells.count(Field::Broken),
            mass: cells.kilograms(Field::Mass).map(quantity::kilograms),
            note: cells.text(Field::Note, MOST_OF_NOTE),
        };
        if !cells.sound() {
            return;
        }
        if let Some(first) = self.rows.get(&lot.key()) {
            cells.wrong(Field::Item, doubled(&lot, *first));
            return;
        }
        self.rows.insert(lot.key(), cells.number());
        self.lots.push(lot);
    }

    fn is_empty(&self) -> bool {
        self.lots.is_empty()
    }
}

fn doubled(lot: &Lot, first: u32) -> Fault {
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
    Fault::new("doubled", what, cure)
}

impl Cells<'_, Field> {
    fn item(&mut self) -> String {
        if self.get(Field::Item).is_none() {
            let what = "the item has no name, but the row is not blank";
            let cure = "Write what it is, or clear the row.";
            self.wrong(Field::Item, Fault::new("empty-item", what, cure));
        }
        self.text(Field::Item, MOST_OF_NAME)
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
}
