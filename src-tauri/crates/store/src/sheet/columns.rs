//! The columns of a list: their headings, in any order, and what is wrong with them.

use super::cells::{Cell, Row};
use super::faults::{Column, Fault, Faults, quoted};

/// The most columns that are looked at; a file with more is no list of ours.
pub(super) const MOST_COLUMNS: usize = 100;

/// What the columns of one sort of list hold.
pub(crate) trait Heading: Copy + PartialEq + 'static {
    /// In the order in which they are written.
    const ALL: &'static [Self];
    /// Without these a list says nothing.
    const NEEDED: &'static [Self];
    /// What such a list is called: `kit list`.
    const LIST: &'static str;

    fn heading(self) -> &'static str;

    /// By its heading, whatever the capitals, spaces and brackets.
    fn of(heading: &str) -> Option<Self> {
        let given = letters(heading);
        let mut all = Self::ALL.iter().copied();
        all.find(|field| letters(field.heading()) == given)
    }

    /// What a mistyped heading is most like, if it is like any.
    fn nearest(heading: &str) -> Option<Self> {
        let given = letters(heading);
        let alike = |field: &Self| strsim::jaro_winkler(&given, &letters(field.heading()));
        let all = Self::ALL.iter().copied();
        all.filter(|field| 0.75 <= alike(field))
            .max_by(|a, b| alike(a).total_cmp(&alike(b)))
    }
}

fn letters(heading: &str) -> String {
    let letters = heading.chars().filter(|c| c.is_alphanumeric());
    letters.flat_map(char::to_lowercase).collect()
}

/// Where each field stands.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Columns<F> {
    placed: Vec<(u32, F)>,
}

impl<F> Default for Columns<F> {
    fn default() -> Self {
        Self { placed: Vec::new() }
    }
}

impl<F: Heading> Columns<F> {
    /// From the header's row.
    ///
    /// `None` if it is no use going on: a needed column is missing.
    pub(super) fn of(header: &Row, faults: &mut Faults) -> Option<Self> {
        if MOST_COLUMNS < header.cells.len() {
            faults.add(too_many::<F>(header));
            return None;
        }
        let mut columns = Self::default();
        let mut unknown: Vec<(u32, &str)> = Vec::new();
        for (index, cell) in &header.cells {
            let heading = match cell {
                Cell::Text(heading) => heading.trim(),
                _ => "",
            };
            match F::of(heading) {
                Some(field) => columns.place(*index, field, header.number, faults),
                None if heading.is_empty() => faults.add(no_words(*index, header.number)),
                None => unknown.push((*index, heading)),
            }
        }
        if columns.placed.is_empty() && unknown.iter().all(|(_, it)| F::nearest(it).is_none()) {
            faults.add(no_header::<F>(header));
            return None;
        }
        let missing: Vec<F> = F::NEEDED
            .iter()
            .copied()
            .filter(|field| columns.find(*field).is_none())
            .collect();
        for field in &missing {
            faults.add(missing_fault(*field, header, &unknown));
        }
        // A heading that is told as a near miss of a missing one is not told again.
        unknown.retain(|(_, heading)| {
            !F::nearest(heading).is_some_and(|field| missing.contains(&field))
        });
        for (index, heading) in unknown {
            faults.add(unknown_fault::<F>(index, heading).in_row(header.number));
        }
        missing.is_empty().then_some(columns)
    }

    fn place(&mut self, index: u32, field: F, row: u32, faults: &mut Faults) {
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
    pub(super) fn find(&self, field: F) -> Option<u32> {
        let mut placed = self.placed.iter();
        placed.find(|(_, it)| *it == field).map(|(index, _)| *index)
    }

    /// All that have a column.
    pub(super) fn fields(&self) -> impl Iterator<Item = F> {
        self.placed.iter().map(|(_, field)| *field)
    }

    /// What stands in a column.
    pub(super) fn at(&self, index: u32) -> Option<F> {
        let mut placed = self.placed.iter();
        placed.find(|(it, _)| *it == index).map(|(_, field)| *field)
    }
}

/// The words of the row, as many as such a list has columns.
fn found<F: Heading>(header: &Row) -> String {
    let words = header.cells.iter().filter_map(|(_, cell)| match cell {
        Cell::Text(heading) => Some(quoted(heading.trim())),
        _ => None,
    });
    let words: Vec<String> = words.take(F::ALL.len()).collect();
    words.join(", ")
}

fn all_headings<F: Heading>() -> String {
    let all: Vec<&str> = F::ALL.iter().map(|it| it.heading()).collect();
    all.join(", ")
}

/// Not one column is named: the names were left out, or this is another list altogether.
fn no_header<F: Heading>(row: &Row) -> Fault {
    let what = match found::<F>(row) {
        found if found.is_empty() => "this row should name the columns".to_owned(),
        found => format!("this row should name the columns; what was found is {found}"),
    };
    let cure = format!(
        "Write the columns' names above the rows: {}. Only {} must be there.",
        all_headings::<F>(),
        needed::<F>()
    );
    Fault::new("missing-heading", what, cure).in_row(row.number)
}

fn missing_fault<F: Heading>(field: F, header: &Row, unknown: &[(u32, &str)]) -> Fault {
    let heading = field.heading();
    let what = format!(
        "there is no column \"{heading}\"; what was found is {}",
        found::<F>(header)
    );
    let meant = unknown
        .iter()
        .find(|(_, given)| F::nearest(given) == Some(field));
    let cure = match meant {
        Some((_, given)) => format!("Did you mean {}? Call it \"{heading}\".", quoted(given)),
        None => format!(
            "Name the columns in the first row: {} there must be.",
            needed::<F>()
        ),
    };
    Fault::new("missing-heading", what, cure).in_row(header.number)
}

/// `"item" and "good"`
fn needed<F: Heading>() -> String {
    let named = |it: &F| format!("\"{}\"", it.heading());
    match F::NEEDED {
        [] => String::new(),
        [one] => named(one),
        [before @ .., last] => {
            let before: Vec<String> = before.iter().map(named).collect();
            format!("{} and {}", before.join(", "), named(last))
        }
    }
}

fn unknown_fault<F: Heading>(index: u32, heading: &str) -> Fault {
    let what = format!("a {} has no column {}", F::LIST, quoted(heading));
    let cure = match F::nearest(heading) {
        Some(field) => format!("Did you mean \"{}\"?", field.heading()),
        None => format!("Take it out; the columns are {}.", all_headings::<F>()),
    };
    Fault::new("unknown-heading", what, cure).in_column(Column::new(index, ""))
}

fn too_many<F: Heading>(header: &Row) -> Fault {
    let what = format!("a file of {} columns is no {}", header.cells.len(), F::LIST);
    let cure = format!("Leave in these: {}.", all_headings::<F>());
    Fault::new("too-many-columns", what, cure).in_row(header.number)
}

fn no_words(index: u32, row: u32) -> Fault {
    let what = "the heading is not a word";
    let cure = "Write the column's name as plain text.";
    let fault = Fault::new("unknown-heading", what, cure);
    fault.in_row(row).in_column(Column::new(index, ""))
}
