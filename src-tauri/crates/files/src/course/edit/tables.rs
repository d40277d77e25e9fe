//! Rows of a list of tables, `[[vehicle]]` for one, put in and taken out however they are written.

use super::no_such;
use crate::Fault;
use toml_edit::{ArrayOfTables, DocumentMut, InlineTable, Item, Table, TableLike, Value};

/// Puts a row with these keys in a place of the list, counted from 0, or at its end; a list
/// that is not there is begun.
///
/// # Errors
/// A [`Fault`] where something else stands under that name.
pub(super) fn put_in(
    document: &mut DocumentMut,
    list: &str,
    at: Option<usize>,
    keys: &[(&str, Value)],
) -> Result<(), Fault> {
    let fill = |table: &mut dyn TableLike| {
        for (key, value) in keys {
            table.insert(key, Item::Value(value.clone()));
        }
    };
    let item = document
        .entry(list)
        .or_insert_with(|| Item::ArrayOfTables(ArrayOfTables::new()));
    match item {
        Item::ArrayOfTables(rows) => {
            let mut table = Table::new();
            fill(&mut table);
            match at.filter(|at| *at < rows.len()) {
                None => rows.push(table),
                Some(at) => insert(rows, at, table),
            }
        }
        Item::Value(Value::Array(rows)) => {
            let mut table = InlineTable::new();
            fill(&mut table);
            let mut one = Value::InlineTable(table);
            if let Some(like) = rows.get(0) {
                *one.decor_mut() = like.decor().clone();
            }
            rows.insert_formatted(at.unwrap_or(rows.len()).min(rows.len()), one);
        }
        _ => return Err(no_such(list)),
    }
    Ok(())
}

/// The library can't put a table between others: those behind it are taken off and put on again.
fn insert(rows: &mut ArrayOfTables, at: usize, table: Table) {
    let mut behind: Vec<Table> = Vec::new();
    while at < rows.len() {
        let last = rows.len() - 1;
        behind.extend(rows.get(last).cloned());
        rows.remove(last);
    }
    rows.push(table);
    for mut row in behind.into_iter().rev() {
        // Its old place in the file is taken now.
        row.set_position(None);
        rows.push(row);
    }
}

/// Takes out a row, counted from 0, and the list with its last one. A row that is not there is
/// no fault.
pub(super) fn take_out(document: &mut DocumentMut, list: &str, at: usize) {
    let is_empty = match document.get_mut(list) {
        Some(Item::ArrayOfTables(rows)) => {
            if at < rows.len() {
                rows.remove(at);
            }
            rows.is_empty()
        }
        Some(Item::Value(Value::Array(rows))) => {
            if at < rows.len() {
                rows.remove(at);
            }
            rows.is_empty()
        }
        _ => false,
    };
    if is_empty {
        document.remove(list);
    }
}
