//! Reading a TOML text key by key, with the place of each and a plain word for what is wrong.

mod entry;

pub(super) use entry::{AS_A_TIME, said};

use crate::Fault;
use std::cell::RefCell;
use std::collections::BTreeMap;
use toml_edit::{Item, TableLike, Value};

/// A table of the file: its keys, and where it stands.
pub(super) struct Section<'a> {
    path: String,
    table: Option<&'a dyn TableLike>,
    at: usize,
    places: &'a RefCell<BTreeMap<String, usize>>,
}

/// One key with its value.
#[derive(Clone)]
pub(super) struct Entry<'a> {
    /// As `wall.height`.
    pub(super) path: String,
    /// Where the key stands.
    pub(super) at: usize,
    value: Found<'a>,
    places: &'a RefCell<BTreeMap<String, usize>>,
}

#[derive(Clone, Copy)]
enum Found<'a> {
    Item(&'a Item),
    Value(&'a Value),
}

impl<'a> Section<'a> {
    pub(super) fn root(
        table: &'a dyn TableLike,
        places: &'a RefCell<BTreeMap<String, usize>>,
    ) -> Self {
        Self {
            path: String::new(),
            table: Some(table),
            at: 0,
            places,
        }
    }

    /// Refuses any key that is not one of `known`.
    pub(super) fn only(&self, known: &[&str]) -> Result<(), Fault> {
        let Some(table) = self.table else {
            return Ok(());
        };
        for (key, _) in table.iter() {
            if !known.contains(&key) {
                let path = self.path_of(key);
                let cure = nearest(key, known.iter().copied()).map_or_else(
                    || format!("the keys here are: {}", known.join(", ")),
                    |near| format!("did you mean {near}?"),
                );
                return Err(Fault {
                    code: "unknown-key",
                    at: self.key_at(key),
                    what: format!("there is no key {}", said(&path)),
                    key: path,
                    cure,
                });
            }
        }
        Ok(())
    }

    /// All keys, for tables whose keys are names a person chose.
    pub(super) fn entries(&self) -> Vec<(String, Entry<'a>)> {
        let keys: Vec<String> = self
            .table
            .map(|table| table.iter().map(|(key, _)| key.to_owned()).collect())
            .unwrap_or_default();
        keys.into_iter()
            .filter_map(|key| self.get(&key).map(|entry| (key, entry)))
            .collect()
    }

    /// The value of a key, if it is there.
    pub(super) fn get(&self, key: &str) -> Option<Entry<'a>> {
        let item = self.table?.get(key)?;
        let (path, at) = (self.path_of(key), self.key_at(key));
        self.places.borrow_mut().insert(path.clone(), at);
        Some(Entry {
            path,
            at,
            value: Found::Item(item),
            places: self.places,
        })
    }

    /// The value of a key that must be there.
    pub(super) fn need(&self, key: &str, cure: &str) -> Result<Entry<'a>, Fault> {
        self.get(key).ok_or_else(|| {
            let path = self.path_of(key);
            Fault {
                code: "missing-key",
                at: self.at,
                what: format!("{} is missing", said(&path)),
                key: path,
                cure: cure.to_owned(),
            }
        })
    }

    /// A table below this one; an absent one is empty.
    pub(super) fn section(&self, key: &str) -> Result<Section<'a>, Fault> {
        match self.get(key) {
            Some(entry) => entry.table(),
            None => Ok(Section {
                path: self.path_of(key),
                table: None,
                at: self.at,
                places: self.places,
            }),
        }
    }

    /// The tables of an array of tables, or of an array of inline tables.
    pub(super) fn tables(&self, key: &str) -> Result<Vec<Section<'a>>, Fault> {
        let Some(entry) = self.get(key) else {
            return Ok(Vec::new());
        };
        if let Found::Item(Item::ArrayOfTables(array)) = entry.value {
            return Ok(array
                .iter()
                .enumerate()
                .map(|(number, table)| {
                    let path = format!("{}.{number}", entry.path);
                    let at = table.span().map_or(entry.at, |span| span.start);
                    self.places.borrow_mut().insert(path.clone(), at);
                    Section {
                        path,
                        table: Some(table),
                        at,
                        places: self.places,
                    }
                })
                .collect());
        }
        entry.list()?.iter().map(Entry::table).collect()
    }

    fn path_of(&self, key: &str) -> String {
        if self.path.is_empty() {
            key.to_owned()
        } else {
            format!("{}.{key}", self.path)
        }
    }

    fn key_at(&self, key: &str) -> usize {
        let Some((key, item)) = self.table.and_then(|table| table.get_key_value(key)) else {
            return self.at;
        };
        // A key that a header implies has no place of its own; its table's header has.
        key.span()
            .or_else(|| item.span())
            .map_or(self.at, |span| span.start)
    }

    /// A fault at the table itself.
    pub(super) fn fault(&self, code: &'static str, what: String, cure: &str) -> Fault {
        Fault {
            code,
            key: self.path.clone(),
            at: self.at,
            what,
            cure: cure.to_owned(),
        }
    }
}

/// The known word a mistyped one is most like, if it is like any; of two it is equally
/// like, neither.
pub fn nearest<'k>(given: &str, known: impl Iterator<Item = &'k str>) -> Option<&'k str> {
    let given = given.to_lowercase();
    let mut alike: Vec<(f64, &str)> = known
        .map(|word| (strsim::jaro_winkler(&given, &word.to_lowercase()), word))
        .filter(|(likeness, _)| 0.75 <= *likeness)
        .collect();
    alike.sort_by(|a, b| b.0.total_cmp(&a.0));
    match alike[..] {
        [(first, _), (second, _), ..] if first - second < 1e-9 => None,
        [(_, word), ..] => Some(word),
        [] => None,
    }
}
