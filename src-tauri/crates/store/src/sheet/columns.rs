//! The columns of a kit list: their headings, in any order, and what is wrong with them.

use super::cells::{Cell, Row};
use super::faults::{Column, Fault, Faults, quoted};
use crate::lots::Lot;

/// The most columns that are looked at; a file with more is no kit list.
pub(super) const MOST_COLUMNS: usize = 100;

/// What a column holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Field {
    Item,
    Unit,
    Owner,
    Good,
    Care,
    Broken,
    Mass,
    Note,
}

impl Field {
    /// In the order in which they are written.
    pub(super) const ALL: [Self; 8] = [
        Self::Item,
        Self::Unit,
        Self::Owner,
        Self::Good,
        Self::Care,
        Self::Broken,
        Self::Mass,
        Self::Note,
    ];

    /// Without these a list says nothing.
    const NEEDED: [Self; 2] = [Self::Item, Self::Good];

    pub(super) fn heading(self) -> &'static str {
        match self {
            Self::Item => "item",
            Self::Unit => "unit",
            Self::Owner => "owner",
            Self::Good => "good",
            Self::Care => "needs care",
            Self::Broken => "broken",
            Self::Mass => "mass kg",
            Self::Note => "note",
        }
    }

    /// By its heading, whatever the capitals, spaces and brackets.
    pub(super) fn of(heading: &str) -> Option<Self> {
        let given = letters(heading);
        Self::ALL
            .into_iter()
            .find(|field| letters(field.heading()) == given)
    }

    /// What a mistyped heading is most like, if it is like any.
    fn nearest(heading: &str) -> Option<Self> {
        let given = letters(heading);
        let alike = |field: &Self| strsim::jaro_winkler(&given, &letters(field.heading()));
        Self::ALL
            .into_iter()
            .filter(|field| 0.75 <= alike(field))
            .max_by(|a, b| alike(a).total_cmp(&alike(b)))
    }
}

fn letters(heading: &str) -> String {
    let letters = heading.chars().filter(|c| c.is_alphanumeric());
    letters.flat_map(char::to_lowercase).collect()
}

/// Where each field stands.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Columns {
    placed: Vec<(u32, Field)>,
}

impl Columns {
    /// From the header's row.
    ///
    /// `None` if it is no use going on: a needed column is missing.
    pub(super) fn of(header: &Row, faults: &mut Faults) -> Option<Self> {
        if MOST_COLUMNS < header.cells.len() {
            faults.add(too_many(header));
            return None;
        }
        let mut columns = Self::default();
        let mut unknown: Vec<(u32, &str)> = Vec::new();
        for (index, cell) in &header.cells {
            let heading = match cell {
                Cell::Text(heading) => heading.trim(),
                _ => "",
            };
            match Field::of(heading) {
                Some(field) => columns.place(*index, field, header.number, faults),
                None if heading.is_empty() => faults.add(no_words(*index, header.number)),
                None => unknown.push((*index, heading)),
            }
        }
        if columns.placed.is_empty() && unknown.iter().all(|(_, it)| Field::nearest(it).is_none()) {
            faults.add(no_header(header));
            return None;
        }
        let missing: Vec<Field> = Field::NEEDED
            .into_iter()
            .filter(|field| columns.find(*field).is_none())
            .collect();
        for field in &missing {
            faults.add(missing_fault(*field, header, &unknown));
        }
        // A heading that is told as a near miss of a missing one is not told again.
        unknown.retain(|(_, heading)| {
            !Field::nearest(heading).is_some_and(|field| missing.contains(&field))
        });
        for (index, heading) in unknown {
            faults.add(unknown_fault(index, heading).in_row(header.number));
        }
        missing.is_empty().then_some(columns)
    }

    fn place(&mut self, index: u32, field: Field, row: u32, faults: &mut Faults) {
        match self.find(field) {
            None => self.placed.push((index, field)),
            Some(first) => {
                let letters = Column::new(first, "").letters;
                let what = format!("column {letters} is called \"{}\" too", field.heading());
                let fault = Fault::new("doubled-heading", what, "Leave in one of the two.");
                let column = Column::new(index, field.heading());
                faults.add(fault.in_row(row).in_column(column));
            }
        }
    }

    /// Where a field stands.
    pub(super) fn find(&self, field: Field) -> Option<u32> {
        let mut placed = self.placed.iter();
        placed.find(|(_, it)| *it == field).map(|(index, _)| *index)
    }

    /// What stands in a column.
    pub(super) fn at(&self, index: u32) -> Option<Field> {
        let mut placed = self.placed.iter();
        placed.find(|(it, _)| *it == index).map(|(_, field)| *field)
    }

    /// A lot of the store after one of the file: what the file has no column for stays.
    pub(crate) fn over(&self, before: &Lot, given: &Lot) -> Lot {
        let mut after = before.clone();
        for (_, field) in &self.placed {
            match field {
                Field::Item => after.item.clone_from(&given.item),
                Field::Unit => after.unit.clone_from(&given.unit),
                Field::Owner => after.owner.clone_from(&given.owner),
                Field::Good => after.good = given.good,
                Field::Care => after.care = given.care,
                Field::Broken => after.broken = given.broken,
                Field::Mass => after.mass = given.mass,
                Field::Note => after.note.clone_from(&given.note),
            }
        }
        after
    }
}

/// The words of the row, as many as a kit list has columns.
fn found(header: &Row) -> String {
    let words = header.cells.iter().filter_map(|(_, cell)| match cell {
        Cell::Text(heading) => Some(quoted(heading.trim())),
        _ => None,
    });
    let words: Vec<String> = words.take(Field::ALL.len()).collect();
    words.join(", ")
}

fn all_headings() -> String {
    Field::ALL.map(Field::heading).join(", ")
}

/// Not one column is named: the names were left out, or this is another list altogether.
fn no_header(row: &Row) -> Fault {
    let what = match found(row) {
        found if found.is_empty() => "this row should name the columns".to_owned(),
        found => format!("this row should name the columns; what was found is {found}"),
    };
    let cure = format!(
        "Write the columns' names above the rows: {}. Only {} must be there.",
        all_headings(),
        both(Field::NEEDED)
    );
    Fault::new("missing-heading", what, cure).in_row(row.number)
}

fn missing_fault(field: Field, header: &Row, unknown: &[(u32, &str)]) -> Fault {
    let heading = field.heading();
    let what = format!(
        "there is no column \"{heading}\"; what was found is {}",
        found(header)
    );
    let meant = unknown
        .iter()
        .find(|(_, given)| Field::nearest(given) == Some(field));
    let cure = match meant {
        Some((_, given)) => format!("Did you mean {}? Call it \"{heading}\".", quoted(given)),
        None => format!(
            "Name the columns in the first row: {} there must be.",
            both(Field::NEEDED)
        ),
    };
    Fault::new("missing-heading", what, cure).in_row(header.number)
}

fn both([one, other]: [Field; 2]) -> String {
    format!("\"{}\" and \"{}\"", one.heading(), other.heading())
}

fn unknown_fault(index: u32, heading: &str) -> Fault {
    let what = format!("a kit list has no column {}", quoted(heading));
    let cure = match Field::nearest(heading) {
        Some(field) => format!("Did you mean \"{}\"?", field.heading()),
        None => format!("Take it out; the columns are {}.", all_headings()),
    };
    Fault::new("unknown-heading", what, cure).in_column(Column::new(index, ""))
}

fn too_many(header: &Row) -> Fault {
    let what = format!("a file of {} columns is no kit list", header.cells.len());
    let cure = format!("Leave in these: {}.", all_headings());
    Fault::new("too-many-columns", what, cure).in_row(header.number)
}

fn no_words(index: u32, row: u32) -> Fault {
    let what = "the heading is not a word";
    let cure = "Write the column's name as plain text.";
    let fault = Fault::new("unknown-heading", what, cure);
    fault.in_row(row).in_column(Column::new(index, ""))
}
