//! Reading a TOML text key by key, with the place of each and a plain word for what is wrong.

use crate::Fault;
use crate::quantity::{self, NotAQuantity};
use chrono::{NaiveDate, NaiveTime};
use craft::quantity::{Density, Length, Mass, Read, metres};
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
                    what: format!("there is no key {path}"),
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
                what: format!("{path} is missing"),
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

impl<'a> Entry<'a> {
    /// A fault at this key.
    pub(super) fn fault(&self, code: &'static str, what: &str, cure: &str) -> Fault {
        Fault {
            code,
            key: self.path.clone(),
            at: self.at,
            what: format!("{}: {what}", self.path),
            cure: cure.to_owned(),
        }
    }

    fn value(&self) -> Option<&'a Value> {
        match self.value {
            Found::Item(item) => item.as_value(),
            Found::Value(value) => Some(value),
        }
    }

    fn wrong_kind(&self, wanted: &str, cure: &str) -> Fault {
        let given = match self.value().map(Value::type_name) {
            Some("integer" | "float") => "a bare number",
            Some("string") => "text",
            Some("boolean") => "true or false",
            Some("datetime") => "a date or time",
            Some("array") => "a list",
            _ => "a table",
        };
        self.fault(
            "wrong-kind",
            &format!("{given} stands where {wanted} is due"),
            cure,
        )
    }

    /// The table this value is.
    pub(super) fn table(&self) -> Result<Section<'a>, Fault> {
        let table = match self.value {
            Found::Item(item) => item.as_table_like(),
            Found::Value(value) => value.as_inline_table().map(|table| table as &dyn TableLike),
        };
        let table = table.ok_or_else(|| {
            self.wrong_kind("a group of keys", "write { key = value, ... } or a [table]")
        })?;
        Ok(Section {
            path: self.path.clone(),
            table: Some(table),
            at: self.at,
            places: self.places,
        })
    }

    /// Whether this value is a table.
    pub(super) fn is_table(&self) -> bool {
        match self.value {
            Found::Item(item) => item.is_table_like(),
            Found::Value(value) => value.is_inline_table(),
        }
    }

    /// The values of a list.
    pub(super) fn list(&self) -> Result<Vec<Entry<'a>>, Fault> {
        let array = self
            .value()
            .and_then(Value::as_array)
            .ok_or_else(|| self.wrong_kind("a list", "write [ ..., ... ]"))?;
        Ok(array
            .iter()
            .enumerate()
            .map(|(number, value)| {
                let path = format!("{}.{number}", self.path);
                self.places.borrow_mut().insert(path.clone(), self.at);
                Entry {
                    path,
                    at: self.at,
                    value: Found::Value(value),
                    places: self.places,
                }
            })
            .collect())
    }

    /// Text.
    pub(super) fn text(&self) -> Result<&'a str, Fault> {
        self.value()
            .and_then(Value::as_str)
            .ok_or_else(|| self.wrong_kind("text", "put it in double quotes"))
    }

    /// One of a few words.
    pub(super) fn word<T: Copy>(&self, known: &[(&str, T)]) -> Result<T, Fault> {
        let words: Vec<String> = known
            .iter()
            .map(|(word, _)| format!("\"{word}\""))
            .collect();
        let cure = format!("one of {}", words.join(", "));
        let given = self
            .value()
            .and_then(Value::as_str)
            .ok_or_else(|| self.wrong_kind("a word", &cure))?;
        known
            .iter()
            .find(|(word, _)| *word == given)
            .map(|(_, meaning)| *meaning)
            .ok_or_else(|| {
                let cure = nearest(given, known.iter().map(|(word, _)| *word))
                    .map_or(cure, |near| format!("did you mean \"{near}\"?"));
                self.fault(
                    "unknown-word",
                    &format!("there is no \"{given}\" here"),
                    &cure,
                )
            })
    }

    /// Whether a word stands here, and which.
    pub(super) fn as_word(&self) -> Option<&'a str> {
        self.value().and_then(Value::as_str)
    }

    /// True or false.
    pub(super) fn truth(&self) -> Result<bool, Fault> {
        self.value()
            .and_then(Value::as_bool)
            .ok_or_else(|| self.wrong_kind("true or false", "write true or false"))
    }

    /// A length between two bounds, given in metres.
    pub(super) fn length(&self, least_m: f64, most_m: f64) -> Result<Length, Fault> {
        let cure = "write it with its unit, in quotes: \"1.07 m\" or \"3 ft 6 in\"";
        let length = self.quantity(quantity::length, "a length", cure)?;
        let bounds = format!(
            "between {} and {}",
            plain_metres(least_m),
            plain_metres(most_m)
        );
        self.between(length.si(), least_m, most_m, &bounds)?;
        Ok(length)
    }

    /// A mass of more than nothing (or from nothing), up to ten thousand tonnes.
    pub(super) fn mass(&self, least_kg: f64) -> Result<Mass, Fault> {
        let cure = "write it with its unit, in quotes: \"4 t\" or \"2 short tons\"";
        let mass = self.quantity(quantity::mass, "a mass", cure)?;
        self.between(
            mass.si(),
            least_kg,
            1.0e7,
            "from a kilogram to 10,000 t, or \"0 t\" for none",
        )?;
        Ok(mass)
    }

    /// The density of a stone.
    pub(super) fn density(&self) -> Result<Density, Fault> {
        let cure = "write it with its unit, in quotes: \"2600 kg/m3\"";
        let density = self.quantity(quantity::density, "a density", cure)?;
        self.between(density.si(), 1000.0, 4000.0, "between 1000 and 4000 kg/m3")?;
        Ok(density)
    }

    fn quantity<T>(
        &self,
        read: fn(&str) -> Result<T, NotAQuantity>,
        kind: &str,
        cure: &str,
    ) -> Result<T, Fault> {
        let text = self
            .value()
            .and_then(Value::as_str)
            .ok_or_else(|| self.wrong_kind(kind, cure))?;
        read(text).map_err(|wrong| self.fault("not-a-quantity", &wrong.what, wrong.cure))
    }

    /// A number between two bounds.
    pub(super) fn number(&self, least: f64, most: f64) -> Result<f64, Fault> {
        let cure = format!("a number from {least} to {most}");
        let number = self
            .value()
            .and_then(|value| {
                // A whole number a person writes is far below where a float loses count.
                value
                    .as_float()
                    .or_else(|| value.as_integer().map(|whole| whole as f64))
            })
            .ok_or_else(|| self.wrong_kind("a number", &cure))?;
        self.between(number, least, most, &cure)?;
        Ok(number)
    }

    /// A share from 0 up to, but not quite, 1.
    pub(super) fn share(&self) -> Result<f64, Fault> {
        let share = self.number(0.0, 1.0)?;
        if 1.0 <= share {
            return Err(self.fault(
                "out-of-range",
                "all of it is too much",
                "a share from 0 to below 1",
            ));
        }
        Ok(share)
    }

    /// A count.
    pub(super) fn whole(&self, least: u32, most: u32) -> Result<u32, Fault> {
        let cure = format!("a whole number from {least} to {most}");
        let value = self.value();
        if let Some(float) = value.and_then(Value::as_float) {
            return Err(self.fault(
                "not-whole",
                &format!("{float} is not a whole number"),
                &cure,
            ));
        }
        let given = value
            .and_then(Value::as_integer)
            .ok_or_else(|| self.wrong_kind("a whole number", &cure))?;
        u32::try_from(given)
            .ok()
            .filter(|whole| (least..=most).contains(whole))
            .ok_or_else(|| {
                let what = if given < 0 {
                    format!("{given} is less than nothing")
                } else {
                    format!("{given} is out of range")
                };
                self.fault("out-of-range", &what, &cure)
            })
    }

    /// A date without a time.
    pub(super) fn date(&self) -> Result<NaiveDate, Fault> {
        let cure = "write a date as 2027-04-24, without quotes";
        let given = self.value().and_then(Value::as_datetime);
        let date = given.and_then(|it| it.date.filter(|_| it.time.is_none()));
        let date = date.ok_or_else(|| self.wrong_kind("a date", cure))?;
        NaiveDate::from_ymd_opt(date.year.into(), date.month.into(), date.day.into())
            .filter(|_| 1900 <= date.year)
            .ok_or_else(|| self.fault("out-of-range", "there is no such date", cure))
    }

    /// A time of day.
    pub(super) fn time(&self) -> Result<NaiveTime, Fault> {
        let cure = "write a time as 09:00:00, without quotes";
        let given = self.value().and_then(Value::as_datetime);
        let time = given.and_then(|it| it.time.filter(|_| it.date.is_none()));
        let time = time.ok_or_else(|| self.wrong_kind("a time of day", cure))?;
        let second = u32::from(time.second.unwrap_or_default());
        NaiveTime::from_hms_opt(time.hour.into(), time.minute.into(), second)
            .ok_or_else(|| self.fault("out-of-range", "there is no such time", cure))
    }

    fn between(&self, value: f64, least: f64, most: f64, cure: &str) -> Result<(), Fault> {
        // Written so that what is no number is outside.
        if least <= value && value <= most {
            return Ok(());
        }
        let what = if !value.is_finite() {
            "this is not a finite number"
        } else if value < 0.0 && 0.0 <= least {
            "this is less than nothing"
        } else if value < least {
            "this is too little"
        } else {
            "this is too much"
        };
        let given = self
            .value()
            .map_or_else(String::new, |value| value.to_string().trim().to_owned());
        Err(self.fault("out-of-range", &format!("{what}: {given}"), cure))
    }
}

fn plain_metres(value: f64) -> String {
    craft::quantity::show_length(metres(value), craft::quantity::Units::Metric)
}

/// The known word a mistyped one is most like, if it is like any.
pub(super) fn nearest<'k>(given: &str, known: impl Iterator<Item = &'k str>) -> Option<&'k str> {
    let given = given.to_lowercase();
    known
        .map(|word| (strsim::jaro_winkler(&given, &word.to_lowercase()), word))
        .filter(|(likeness, _)| 0.75 <= *likeness)
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, word)| word)
}
