//! What is wrong with a file, at its row and column, and what would be right.

use super::Kind;
use std::fmt;
use std::path::Path;

/// How many faults are told one by one.
const MOST_TOLD: usize = 20;
/// Characters of a cell that are quoted.
const MOST_QUOTED: usize = 40;

/// A file that is refused, with what is wrong in it. Nothing of it was taken in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Refusal {
    /// The file, as the person named it.
    pub file: String,
    /// The first faults, in the order of the file.
    pub faults: Vec<Fault>,
    /// How many there are beside these.
    pub more: usize,
}

/// One fault.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// A short, fixed name for programs. Never changes once shipped.
    pub code: &'static str,
    /// The row, counted from 1 as a spreadsheet does.
    pub row: Option<u32>,
    /// The column.
    pub column: Option<Column>,
    /// What is wrong.
    pub what: String,
    /// What would be right.
    pub cure: String,
}

/// A column as a spreadsheet shows it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Column {
    /// `A`, `B`, ... `AA`.
    pub letters: String,
    /// Its heading; empty if it has none.
    pub heading: String,
}

impl Refusal {
    pub(super) fn of(path: &Path, fault: Fault) -> Box<Self> {
        Faults::from(fault).in_file(path)
    }

    /// The name of the first fault, for programs.
    pub fn code(&self) -> &'static str {
        self.faults.first().map_or("refused", |fault| fault.code)
    }
}

impl std::error::Error for Refusal {}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: nothing was imported.", self.file)?;
        for fault in &self.faults {
            write!(f, "\n{fault}")?;
        }
        match self.more {
            0 => Ok(()),
            more => write!(f, "\nand {more} more"),
        }
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (self.row, &self.column) {
            (Some(row), Some(column)) => write!(f, "row {row}, {column}: ")?,
            (Some(row), None) => write!(f, "row {row}: ")?,
            (None, Some(column)) => write!(f, "{column}: ")?,
            (None, None) => {}
        }
        write!(f, "{}. {}", self.what, self.cure)
    }
}

impl fmt::Display for Column {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "column {}", self.letters)?;
        if self.heading.is_empty() {
            Ok(())
        } else {
            write!(f, " ({})", self.heading)
        }
    }
}

impl Column {
    /// Counted from 0.
    pub(super) fn new(index: u32, heading: &str) -> Self {
        let mut letters = Vec::new();
        let mut left = u64::from(index) + 1;
        while 0 < left {
            left -= 1;
            letters.push(char::from(
                b'A' + u8::try_from(left % 26).unwrap_or_default(),
            ));
            left /= 26;
        }
        Self {
            letters: letters.into_iter().rev().collect(),
            heading: shortened(heading),
        }
    }
}

impl Fault {
    /// A fault of the file as a whole.
    pub(super) fn new(
        code: &'static str,
        what: impl Into<String>,
        cure: impl Into<String>,
    ) -> Self {
        Self {
            code,
            row: None,
            column: None,
            what: what.into(),
            cure: cure.into(),
        }
    }

    pub(super) fn in_row(self, row: u32) -> Self {
        let row = Some(row);
        Self { row, ..self }
    }

    pub(super) fn in_column(self, column: Column) -> Self {
        let column = Some(column);
        Self { column, ..self }
    }
}

/// Faults while they are collected.
#[derive(Debug, Default)]
pub(super) struct Faults {
    first: Vec<Fault>,
    more: usize,
}

impl Faults {
    pub(super) fn add(&mut self, fault: Fault) {
        if self.first.len() < MOST_TOLD {
            self.first.push(fault);
        } else {
            self.more += 1;
        }
    }

    /// Told before the others, because it tells why the rest was not looked at.
    pub(super) fn add_first(&mut self, fault: Fault) {
        self.first.insert(0, fault);
        if MOST_TOLD < self.first.len() {
            self.first.pop();
            self.more += 1;
        }
    }

    pub(super) fn is_empty(&self) -> bool {
        self.first.is_empty()
    }

    pub(super) fn in_file(self, path: &Path) -> Box<Refusal> {
        Box::new(Refusal {
            file: path.display().to_string(),
            faults: self.first,
            more: self.more,
        })
    }
}

impl From<Fault> for Faults {
    fn from(fault: Fault) -> Self {
        Self {
            first: vec![fault],
            more: 0,
        }
    }
}

/// What the file is, by its ending.
pub(super) fn kind_of(path: &Path) -> Result<Kind, Fault> {
    let ending = path.extension().unwrap_or_default().to_string_lossy();
    match &*ending.to_lowercase() {
        "csv" => Ok(Kind::Csv),
        "xlsx" => Ok(Kind::Xlsx),
        other => {
            let what = match other {
                "" => {
                    "the name of a kit list ends in .csv or .xlsx, this one in neither".to_owned()
                }
                other => format!(
                    "a kit list ends in .csv or .xlsx, not in .{}",
                    shortened(other)
                ),
            };
            let cure = "Save it as a workbook (.xlsx) or as CSV UTF-8 (.csv).";
            Err(Fault::new("ending", what, cure))
        }
    }
}

/// A cell's words in quotation marks, short and on one line.
pub(super) fn quoted(text: &str) -> String {
    format!("\"{}\"", shortened(text))
}

/// On one line, and no longer than a person reads.
pub(super) fn shortened(text: &str) -> String {
    let one_line = |c: char| if c.is_control() { ' ' } else { c };
    let mut short: String = text.chars().take(MOST_QUOTED).map(one_line).collect();
    if text.chars().nth(MOST_QUOTED).is_some() {
        short.push_str("...");
    }
    short
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn columns_have_a_spreadsheets_letters() {
        for (index, letters) in [
            (0, "A"),
            (25, "Z"),
            (26, "AA"),
            (51, "AZ"),
            (701, "ZZ"),
            (702, "AAA"),
            (16_383, "XFD"),
        ] {
            assert_eq!(Column::new(index, "").letters, letters);
        }
    }

    #[test]
    fn twenty_are_told_and_the_others_counted() {
        let mut faults = Faults::default();
        for row in 1..=23 {
            faults.add(Fault::new("code", "it is wrong", "Mend it.").in_row(row));
        }
        faults.add_first(Fault::new("first", "it ends here", "Stop."));
        let told = faults.in_file(Path::new("kit.csv")).to_string();
        let lines: Vec<&str> = told.lines().collect();
        assert_eq!(lines.len(), 22);
        assert_eq!(lines[0], "kit.csv: nothing was imported.");
        assert_eq!(lines[1], "it ends here. Stop.");
        assert_eq!(lines[20], "row 19: it is wrong. Mend it.");
        assert_eq!(lines[21], "and 4 more");
    }
}
