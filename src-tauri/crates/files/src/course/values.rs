//! Every value of a course file as a person would type it, by key.

use std::collections::BTreeMap;
use toml_edit::{Item, TableLike, Value};

/// The values of a text by key, as `wall.height`, `day.0.start`; lists of texts or
/// dates are joined by commas, times are without seconds. A text that can't be read has none.
pub fn values(text: &str) -> BTreeMap<String, String> {
    let mut values = BTreeMap::new();
    if let Ok(document) = toml_edit::Document::parse(text) {
        table("", document.as_table(), &mut values);
    }
    values
}

fn table(path: &str, table: &dyn TableLike, values: &mut BTreeMap<String, String>) {
    for (key, item) in table.iter() {
        // Private notes stay in the file: nothing outside it needs them.
        if key == "private" {
            continue;
        }
        let path = if path.is_empty() {
            key.to_owned()
        } else {
            format!("{path}.{key}")
        };
        match item {
            Item::ArrayOfTables(tables) => {
                for (number, one) in tables.iter().enumerate() {
                    self::table(&format!("{path}.{number}"), one, values);
                }
            }
            Item::Table(inner) => self::table(&path, inner, values),
            Item::Value(one) => value(&path, one, values),
            Item::None => {}
        }
    }
}

/// A text, or a date, as it is typed in a list.
fn plain(one: &Value) -> Option<String> {
    match one {
        Value::String(text) => Some(text.value().clone()),
        Value::Datetime(when) => Some(when.value().to_string()),
        _ => None,
    }
}

fn value(path: &str, one: &Value, values: &mut BTreeMap<String, String>) {
    let typed = match one {
        Value::InlineTable(inner) => return table(path, inner, values),
        Value::Array(array) => match array.iter().map(plain).collect::<Option<Vec<_>>>() {
            Some(texts) => texts.join(", "),
            None => {
                for (number, one) in array.iter().enumerate() {
                    value(&format!("{path}.{number}"), one, values);
                }
                return;
            }
        },
        Value::String(text) => text.value().clone(),
        Value::Datetime(when) => {
            let text = when.value().to_string();
            // 09:00:00 is typed as 09:00.
            let of_day = when.value().date.is_none();
            text.strip_suffix(":00")
                .filter(|_| of_day)
                .map_or(text.clone(), str::to_owned)
        }
        Value::Integer(number) => number.value().to_string(),
        Value::Float(number) => number.value().to_string(),
        Value::Boolean(truth) => truth.value().to_string(),
    };
    values.insert(path.to_owned(), typed);
}
