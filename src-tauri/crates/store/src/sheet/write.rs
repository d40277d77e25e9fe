//! The kit list written as CSV or as a workbook.

use super::columns::Heading;
use super::fields::Field;
use super::{Kind, guard};
use crate::Error;
use crate::lots::Lot;
use ::csv::{Terminator, WriterBuilder};
use craft::quantity::Read;
use rust_xlsxwriter::{DocProperties, ExcelDateTime, Format, Workbook, Worksheet, XlsxError};
use std::fmt::Display;

/// Spreadsheets take a CSV file for UTF-8 when it begins with this.
pub(super) const BYTE_ORDER_MARK: &[u8] = b"\xEF\xBB\xBF";

/// The lots as a file's content.
pub(crate) fn write(lots: &[Lot], kind: Kind) -> Result<Vec<u8>, Error> {
    match kind {
        Kind::Csv => csv(lots),
        Kind::Xlsx => workbook(lots).map_err(failed),
    }
}

pub(super) fn failed(cause: impl Display) -> Error {
    Error::Export {
        what: cause.to_string(),
    }
}

/// What a lot says in a column.
enum Said<'a> {
    Text(&'a str),
    Number(f64),
    Nothing,
}

fn said(lot: &Lot, field: Field) -> Said<'_> {
    match field {
        Field::Item => Said::Text(&lot.item),
        Field::Unit => Said::Text(&lot.unit),
        Field::Owner => Said::Text(&lot.owner),
        Field::Good => Said::Number(lot.good.into()),
        Field::Care => Said::Number(lot.care.into()),
        Field::Broken => Said::Number(lot.broken.into()),
        Field::Mass => lot
            .mass
            .map_or(Said::Nothing, |mass| Said::Number(mass.si())),
        Field::Note => Said::Text(&lot.note),
    }
}

/// Lines end as RFC 4180 has it.
fn csv(lots: &[Lot]) -> Result<Vec<u8>, Error> {
    let mut file = WriterBuilder::new()
        .terminator(Terminator::CRLF)
        .from_writer(BYTE_ORDER_MARK.to_vec());
    let headings = Field::ALL.iter().map(|it| it.heading());
    file.write_record(headings).map_err(failed)?;
    for lot in lots {
        let cells = Field::ALL.iter().map(|field| match said(lot, *field) {
            Said::Text(text) => guard::put(text).into_owned(),
            Said::Number(number) => number.to_string(),
            Said::Nothing => String::new(),
        });
        file.write_record(cells).map_err(failed)?;
    }
    file.into_inner().map_err(failed)
}

fn workbook(lots: &[Lot]) -> Result<Vec<u8>, XlsxError> {
    let mut book = Workbook::new();
    // The library would put the time of day here, and no two files would be alike.
    let always = ExcelDateTime::from_ymd(2000, 1, 1)?;
    book.set_properties(&DocProperties::new().set_creation_datetime(&always));
    let sheet = book.add_worksheet();
    sheet.set_name("Kit")?;
    sheet.set_freeze_panes(1, 0)?;
    let bold = Format::new().set_bold();
    for (column, field) in (0..).zip(Field::ALL.iter().copied()) {
        sheet.write_string_with_format(0, column, field.heading(), &bold)?;
        sheet.set_column_width(column, width(field))?;
        for (row, lot) in (1..).zip(lots) {
            cell(sheet, row, column, said(lot, field))?;
        }
    }
    book.save_to_buffer()
}

fn cell(sheet: &mut Worksheet, row: u32, column: u16, said: Said<'_>) -> Result<(), XlsxError> {
    match said {
        Said::Text("") | Said::Nothing => {}
        Said::Text(text) => {
            sheet.write_string(row, column, guard::put(text))?;
        }
        Said::Number(number) => {
            sheet.write_number(row, column, number)?;
        }
    }
    Ok(())
}

/// In characters.
fn width(field: Field) -> f64 {
    match field {
        Field::Item => 28.0,
        Field::Owner => 20.0,
        Field::Note => 40.0,
        _ => 11.0,
    }
}
