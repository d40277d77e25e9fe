//! A spreadsheet as plain rows of words, for lists that are no kit list.

use super::cells::{Cell, Row};
use super::columns::{Heading, MOST_COLUMNS};
use super::faults::{Fault, Faults};
use super::fields::Field;
use super::pace::PaceField;
use super::{Kind, csv, faults, xlsx};
use crate::Error;
use std::path::Path;

/// More rows than this are no list of people.
const MOST_ROWS: usize = 1_000;

/// The rows of a spreadsheet, CSV or XLSX by the ending of its name: words as they stand, blank rows
/// left out, at most a thousand.
///
/// # Errors
/// [`Error::Sheet`] for a file that can't be read, or is neither.
pub fn rows_of(path: &Path) -> Result<Vec<Vec<String>>, Error> {
    let rows = faults::kind_of(path)
        .map_err(Faults::from)
        .and_then(|kind| {
            let mut rows = Vec::new();
            let mut take = |row: &Row| {
                if !row.cells.is_empty() {
                    rows.push(words(row));
                }
                rows.len() < MOST_ROWS
            };
            match kind {
                Kind::Csv => csv::each_row(path, &mut take)?,
                Kind::Xlsx => xlsx::each_row(path, &mut take)?,
            }
            if rows.is_empty() {
                let cure = "Write a name into each row.";
                return Err(Fault::new("empty", "the file is empty", cure).into());
            }
            Ok(rows)
        });
    rows.map_err(|faults| faults.in_file(path).into())
}

/// Whether the first row names the columns that a kit list must have.
pub fn is_kit_list(rows: &[Vec<String>]) -> bool {
    names_columns(rows, Field::NEEDED)
}

/// Whether the first row names columns that only a pace book has.
pub fn is_pace_book(rows: &[Vec<String>]) -> bool {
    names_columns(rows, &[PaceField::Stage, PaceField::Taken])
}

fn names_columns<F: Heading>(rows: &[Vec<String>], fields: &[F]) -> bool {
    let has = |field: &F| {
        let first = rows.first().into_iter().flatten();
        first.filter_map(|it| F::of(it)).any(|it| it == *field)
    };
    fields.iter().all(has)
}

fn words(row: &Row) -> Vec<String> {
    let mut words = Vec::new();
    for (column, cell) in &row.cells {
        let at = usize::try_from(*column).unwrap_or(usize::MAX);
        if MOST_COLUMNS <= at {
            break;
        }
        words.resize(at.max(words.len()), String::new());
        words.push(match cell {
            Cell::Text(text) => text.trim().to_owned(),
            Cell::Number(number) => number.to_string(),
            Cell::Formula | Cell::Other(_) => String::new(),
        });
    }
    words
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rows(name: &str, content: &[u8]) -> Result<Vec<Vec<String>>, Error> {
        let folder = tempfile::tempdir().expect("a folder");
        let path = folder.path().join(name);
        std::fs::write(&path, content).expect("writes");
        rows_of(&path)
    }

    #[test]
    fn rows_come_as_words_with_their_columns() {
        let list = rows(
            "names.csv",
            b"Name;;Experience\n\"Ash; Ann\";x;novice\n\nBen\n",
        )
        .expect("reads");
        assert_eq!(
            list,
            [
                vec!["Name", "", "Experience"],
                vec!["Ash; Ann", "x", "novice"],
                vec!["Ben"]
            ]
        );
        assert!(!is_kit_list(&list));
        let kit = rows("kit.csv", b"Item,Good\nSpade,4\n").expect("reads");
        assert!(is_kit_list(&kit) && !is_pace_book(&kit));
        let pace = rows("pace.csv", b"Stage;taken MINUTES;Usual\ndig;1,5;1\n").expect("reads");
        assert!(is_pace_book(&pace) && !is_kit_list(&pace));
    }

    #[test]
    fn what_is_no_spreadsheet_is_refused() {
        for (name, content) in [
            ("a.txt", &b"Ann"[..]),
            ("a.csv", b""),
            ("a.xlsx", b"Ann"),
            ("b.xlsx", b"PK\x03\x04junk"),
        ] {
            assert!(rows(name, content).is_err(), "{name}");
        }
    }
}
