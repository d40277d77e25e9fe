//! A kit list as a workbook: its first sheet that is not hidden, read cell by cell.

use super::cells::{Cell, Marks, Row};
use super::encoding::{COMPOUND, ZIP, load};
use super::faults::{Fault, Faults};
use super::guard;
use super::reader::{Content, Reader};
use calamine::{DataRef, Reader as _, SheetType, SheetVisible, Xlsx, XlsxError};
use std::io::{Cursor, Read};
use std::path::Path;
use zip::ZipArchive;

/// The most bytes that a workbook may unpack to.
const MOST_UNPACKED: u64 = 200_000_000;
/// The most parts that a workbook may be made of.
const MOST_PARTS: usize = 2_000;

pub(super) fn read<C: Content>(path: &Path) -> Result<Reader<C>, Faults> {
    let mut reader = Reader::new(Marks::Either);
    each_row(path, &mut |row| reader.row(row))?;
    Ok(reader)
}

/// Each row of the first sheet that is shown, as long as `take` says to go on.
pub(super) fn each_row(path: &Path, take: &mut dyn FnMut(&Row) -> bool) -> Result<(), Faults> {
    let bytes = load(path)?;
    if let Some(fault) = something_else(&bytes) {
        return Err(fault.into());
    }
    unpacks_to_a_bearable_size(&bytes)?;
    // The library panics on some of what a damaged workbook says of itself (a table that ends
    // before it begins), which is no reason to end the program.
    // What was taken until then is dropped with the fault.
    let all = std::panic::AssertUnwindSafe(|| first_sheet(bytes, take));
    let read = std::panic::catch_unwind(all);
    read.unwrap_or_else(|_| Err(damaged(XlsxError::Unexpected("a panic")).into()))
}

fn first_sheet(bytes: Vec<u8>, take: &mut dyn FnMut(&Row) -> bool) -> Result<(), Faults> {
    let mut book: Xlsx<_> = Xlsx::new(Cursor::new(bytes)).map_err(damaged)?;
    let sheets = book.sheets_metadata().iter();
    let mut shown =
        sheets.filter(|it| it.visible == SheetVisible::Visible && it.typ == SheetType::WorkSheet);
    let Some(sheet) = shown.next().map(|sheet| sheet.name.clone()) else {
        let what = "the workbook has no sheet that is shown";
        return Err(Fault::new("no-sheet", what, "Show the sheet with the kit list.").into());
    };
    rows(&mut book, &sheet, take)
}

/// Cells come row by row; a row is taken when the next one begins.
fn rows(
    book: &mut Xlsx<Cursor<Vec<u8>>>,
    sheet: &str,
    take: &mut dyn FnMut(&Row) -> bool,
) -> Result<(), Faults> {
    let mut cells = book.worksheet_cells_reader(sheet).map_err(damaged)?;
    let mut row = Row {
        number: 0,
        cells: Vec::new(),
    };
    while let Some(it) = cells.next_cell_with_formula_metadata().map_err(damaged)? {
        let number = it.pos.0.saturating_add(1);
        if number < row.number {
            return Err(damaged(XlsxError::Unexpected("rows out of order")).into());
        }
        if number != row.number {
            if !take(&row) {
                return Ok(());
            }
            row = Row {
                number,
                cells: Vec::new(),
            };
        }
        let cell = match it.formula {
            Some(_) => Some(Cell::Formula),
            None => cell(&it.value),
        };
        row.cells.extend(cell.map(|cell| (it.pos.1, cell)));
    }
    take(&row);
    Ok(())
}

fn cell(value: &DataRef<'_>) -> Option<Cell> {
    let text = |text: &str| {
        let text = guard::take_off(text);
        (!text.trim().is_empty()).then(|| Cell::Text(text.to_owned()))
    };
    let other = |what: &str| Some(Cell::Other(what.to_owned()));
    match value {
        DataRef::Empty => None,
        DataRef::String(it) => text(it),
        DataRef::SharedString(it) => text(it),
        DataRef::Int(it) => Some(Cell::Number(*it as f64)),
        DataRef::Float(it) if !it.is_finite() => other("this is not a number"),
        DataRef::Float(it) => Some(Cell::Number(*it)),
        DataRef::Bool(true) => other("this is a TRUE"),
        DataRef::Bool(false) => other("this is a FALSE"),
        DataRef::DateTime(_) | DataRef::DateTimeIso(_) => other("this is a date or time"),
        DataRef::DurationIso(_) => other("this is a length of time"),
        DataRef::Error(it) => other(&format!("this is the error {it}")),
    }
}

fn something_else(bytes: &[u8]) -> Option<Fault> {
    const SAVE_AS: &str = "Open it in a spreadsheet program and save it as .xlsx.";
    if bytes.starts_with(&ZIP) {
        return None;
    }
    if bytes.is_empty() {
        let cure = "Choose the workbook with the kit list.";
        return Some(Fault::new("empty", "the file is empty", cure));
    }
    if !bytes.starts_with(&COMPOUND) {
        let what = "this is not a workbook, whatever its name says";
        return Some(Fault::new("not-a-workbook", what, SAVE_AS));
    }
    // [MS-OFFCRYPTO] 2.3: a protected workbook is a stream of this name, in UTF-16.
    let name: Vec<u8> = "EncryptedPackage"
        .encode_utf16()
        .flat_map(u16::to_le_bytes)
        .collect();
    Some(if bytes.windows(name.len()).any(|it| it == name) {
        let cure = "Open it, save it without a password, and import that.";
        Fault::new("password", "the workbook is protected by a password", cure)
    } else {
        let what = "this is an old workbook (.xls) under a new name";
        Fault::new("not-a-workbook", what, SAVE_AS)
    })
}

/// Unpacks every part once, into nothing, before anything is kept in memory: what a workbook
/// says of its own size need not be true.
fn unpacks_to_a_bearable_size(bytes: &[u8]) -> Result<(), Fault> {
    let broken = |cause: zip::result::ZipError| damaged(XlsxError::Zip(cause));
    let too_large = || {
        let what = format!(
            "the workbook unpacks to more than the {} MB a kit list may have",
            MOST_UNPACKED / 1_000_000
        );
        let cure = "Copy the kit list alone into a new workbook and import that.";
        Fault::new("too-large", what, cure)
    };
    let mut parts = ZipArchive::new(Cursor::new(bytes)).map_err(broken)?;
    if MOST_PARTS < parts.len() {
        return Err(too_large());
    }
    let mut left = MOST_UNPACKED;
    for index in 0..parts.len() {
        let part = parts.by_index(index).map_err(broken)?;
        let mut part = part.take(left + 1);
        let size =
            std::io::copy(&mut part, &mut std::io::sink()).map_err(|cause| broken(cause.into()))?;
        left = left.checked_sub(size).ok_or_else(too_large)?;
    }
    Ok(())
}

/// What the library says of it would help nobody who has the file.
fn damaged(_: XlsxError) -> Fault {
    let what = "the workbook is damaged or not complete";
    let cure = "Open it in a spreadsheet program, save it as .xlsx and import that.";
    Fault::new("damaged-workbook", what, cure)
}
