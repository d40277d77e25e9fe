//! The figures in the head of a lesson, checked where they stand: a list is told by its own line
//! and not by that of the key above it.

use super::wording::Wording;
use crate::shelf::Text;
use crate::{Error, Fault};
use toml_edit::{Document, Item, Value};

/// The keys whose texts may hold figures in braces.
const WORDINGS: [&str; 4] = ["aims", "show", "mistakes", "questions"];

/// Whether every figure in the texts of a head can be filled in. A head that is no TOML is
/// told by whoever reads the rest of it.
pub(super) fn figures_are_sound(file: &Text, head: &str, from: usize) -> Result<(), Error> {
    let Ok(document) = Document::parse(head) else {
        return Ok(());
    };
    let table = document.as_table().iter();
    for (_, item) in table.filter(|(key, _)| WORDINGS.contains(key)) {
        for text in texts(item) {
            sound(file, text, from)?;
        }
    }
    Ok(())
}

/// All texts under a key; none lies deeper than in the tables of a list.
fn texts(item: &Item) -> Vec<&Value> {
    let all: Vec<&Value> = match item {
        Item::Value(value) => in_list(value),
        Item::ArrayOfTables(tables) => {
            let items = tables.iter().flat_map(|table| table.iter());
            items.filter_map(|(_, item)| item.as_value()).collect()
        }
        Item::None | Item::Table(_) => Vec::new(),
    };
    all.into_iter().filter(|value| value.is_str()).collect()
}

fn in_list(value: &Value) -> Vec<&Value> {
    let values = value.as_array().into_iter().flatten();
    let mut all = Vec::new();
    for value in values {
        match value.as_inline_table() {
            Some(table) => all.extend(table.iter().map(|(_, value)| value)),
            None => all.push(value),
        }
    }
    all
}

fn sound(file: &Text, value: &Value, from: usize) -> Result<(), Error> {
    let text = value.as_str().unwrap_or_default();
    let Err(wrong) = Wording::read(text) else {
        return Ok(());
    };
    // Past the opening quote; escapes before the brace would only shift the column.
    let start = value.span().map_or(0, |span| span.start + 1);
    Err(file.refuse(Fault {
        code: "bad-figure",
        key: String::new(),
        at: from + start + wrong.at,
        what: wrong.what,
        cure: wrong.cure,
    }))
}
