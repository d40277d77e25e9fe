//! A list as CSV: separated by commas, semicolons or tabs, in UTF-8.

use super::cells::{Cell, Marks, Row};
use super::columns::{Heading, MOST_COLUMNS};
use super::encoding::{load, text};
use super::faults::{Column, Fault, Faults};
use super::fields::Field;
use super::guard;
use super::reader::{Content, Reader};
use ::csv::{ReaderBuilder, StringRecord};
use std::path::Path;

/// A last record of our own. If it does not come out as it went in, a quotation mark before
/// it was never closed.
const LAST: &str = "last record";

pub(super) fn read<C: Content>(path: &Path) -> Result<Reader<C>, Faults> {
    let text = text(&load(path)?)?;
    let (separator, text) = separator(&text);
    let mut reader = Reader::new(match separator {
        b',' => Marks::Point,
        b';' => Marks::Comma,
        _ => Marks::Either,
    });
    let mut read_on = true;
    let open = each_record(text, separator, |number, record| {
        read_on = reader.row(&row(number, record));
        read_on
    });
    if let Some((number, record)) = open.filter(|_| read_on) {
        let what = "a quotation mark opens here and is never closed";
        let cure = "Close it, or write it twice (\"\") where one is meant.";
        let fault = Fault::new("open-quotation", what, cure);
        let column = Column::new(last_column(&record), "");
        reader.fault(fault.in_row(number).in_column(column));
    }
    Ok(reader)
}

/// Each row, as long as `take` says to go on.
pub(super) fn each_row(path: &Path, take: &mut dyn FnMut(&Row) -> bool) -> Result<(), Faults> {
    let text = text(&load(path)?)?;
    let (separator, text) = separator(&text);
    each_record(text, separator, |number, record| take(&row(number, record)));
    Ok(())
}

/// Row and column at the end of a text.
pub(super) fn end(text: &str) -> (u32, Column) {
    let (separator, text) = separator(text);
    // A letter of our own stands for what comes next.
    let text = format!("{text}x");
    let mut headings = StringRecord::new();
    let mut last = (1, 0);
    let mut look = |number: u32, record: &StringRecord| {
        if headings.is_empty() {
            headings.clone_from(record);
        }
        last = (number, last_column(record));
        true
    };
    if let Some((number, record)) = each_record(&text, separator, &mut look) {
        look(number, &record);
    }
    let (number, column) = last;
    let heading = usize::try_from(column).ok().and_then(|at| headings.get(at));
    let heading = heading.and_then(Field::of).map_or("", Field::heading);
    (number, Column::new(column, heading))
}

fn last_column(record: &StringRecord) -> u32 {
    u32::try_from(record.len().saturating_sub(1)).unwrap_or(u32::MAX)
}

/// What separates the columns, and the text from its first row: as `sep=;` in the first line
/// says, or what finds most of the headings.
fn separator(text: &str) -> (u8, &str) {
    for known in [b',', b';', b'\t'] {
        let said = format!("sep={}\n", char::from(known));
        if let Some(rest) = text.strip_prefix(&said) {
            return (known, rest);
        }
    }
    let found = |separator: u8| {
        let mut score = (0, 0);
        each_record(text, separator, |_, record| {
            let cells = record.iter().take(MOST_COLUMNS);
            let named = cells.filter(|cell| Field::of(cell).is_some());
            score = (named.count(), record.len());
            false
        });
        score
    };
    // Of two that do equally well the last counts, so the comma comes last.
    let best = [b'\t', b';', b','].into_iter().max_by_key(|it| found(*it));
    (best.unwrap_or(b','), text)
}

/// Each record with its row, counted as a spreadsheet counts: blank lines are rows, and a line
/// break within quotation marks is not. Goes on while `take` says so.
///
/// Returns the record in which a quotation mark stayed open, if there is one.
fn each_record(
    text: &str,
    separator: u8,
    mut take: impl FnMut(u32, &StringRecord) -> bool,
) -> Option<(u32, StringRecord)> {
    let whole = format!("{text}\n{LAST}\n");
    let mut reader = ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .delimiter(separator)
        .from_reader(whole.as_bytes());
    let mut record = StringRecord::new();
    let mut held: Option<(u32, StringRecord)> = None;
    let mut within = 0;
    while reader.read_record(&mut record).unwrap_or(false) {
        if let Some((number, before)) = held.take()
            && !take(number, &before)
        {
            return None;
        }
        // The reader stands behind the record, at the beginning of a line.
        let breaks: u64 = record
            .iter()
            .map(|cell| cell.matches('\n').count() as u64)
            .sum();
        let row = reader.position().line() - 1 - within - breaks;
        within += breaks;
        held = Some((u32::try_from(row).unwrap_or(u32::MAX), record.clone()));
    }
    let (number, last) = held?;
    // An open record has no line end behind it, which the count above takes for granted.
    let open = last.len() != 1 || last.get(0) != Some(LAST);
    open.then_some((number.saturating_add(1), last))
}

fn row(number: u32, record: &StringRecord) -> Row {
    let cells = (0..).zip(record.iter());
    Row {
        number,
        cells: cells
            .filter(|(_, text)| !text.trim().is_empty())
            .map(|(index, text)| (index, cell(text)))
            .collect(),
    }
}

fn cell(text: &str) -> Cell {
    if text.starts_with('=') {
        Cell::Formula
    } else {
        Cell::Text(guard::take_off(text).to_owned())
    }
}
