//! The value of one key: taken as what is due there, or refused with its place and a cure.

mod weather;

use super::{Entry, Found, Section, nearest};
use crate::Fault;
use crate::quantity::{self, NotAQuantity};
use chrono::{NaiveDate, NaiveTime};
use craft::quantity::{Density, Length, Mass, Read, metres};
use toml_edit::{TableLike, Value};

impl<'a> Entry<'a> {
    /// A fault at this key.
    pub(in crate::course) fn fault(&self, code: &'static str, what: &str, cure: &str) -> Fault {
        Fault {
            code,
            key: self.path.clone(),
            at: self.at,
            what: format!("{}: {what}", said(&self.path)),
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
    pub(in crate::course) fn table(&self) -> Result<Section<'a>, Fault> {
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
    pub(in crate::course) fn is_table(&self) -> bool {
        match self.value {
            Found::Item(item) => item.is_table_like(),
            Found::Value(value) => value.is_inline_table(),
        }
    }

    /// The values of a list.
    pub(in crate::course) fn list(&self) -> Result<Vec<Entry<'a>>, Fault> {
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
    pub(in crate::course) fn text(&self) -> Result<&'a str, Fault> {
        self.value()
            .and_then(Value::as_str)
            .ok_or_else(|| self.wrong_kind("text", "put it in double quotes"))
    }

    /// One of a few words.
    pub(in crate::course) fn word<T: Copy>(&self, known: &[(&str, T)]) -> Result<T, Fault> {
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
    pub(in crate::course) fn as_word(&self) -> Option<&'a str> {
        self.value().and_then(Value::as_str)
    }

    /// True or false.
    pub(in crate::course) fn truth(&self) -> Result<bool, Fault> {
        self.value()
            .and_then(Value::as_bool)
            .ok_or_else(|| self.wrong_kind("true or false", "write true or false"))
    }

    /// A length between two bounds, given in metres.
    pub(in crate::course) fn length(&self, least_m: f64, most_m: f64) -> Result<Length, Fault> {
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

    /// A mass up to ten thousand tonnes: from nothing, or from a kilogram.
    pub(in crate::course) fn mass(&self, or_none: bool) -> Result<Mass, Fault> {
        let cure = "write it with its unit, in quotes: \"4 t\" or \"2 short tons\"";
        let mass = self.quantity(quantity::mass, "a mass", cure)?;
        let (least_kg, bounds) = if or_none {
            (0.0, "from nothing to 10,000 t")
        } else {
            (1.0, "from a kilogram to 10,000 t")
        };
        self.between(mass.si(), least_kg, 1.0e7, bounds)?;
        Ok(mass)
    }

    /// The density of a stone.
    pub(in crate::course) fn density(&self) -> Result<Density, Fault> {
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
    pub(in crate::course) fn number(&self, least: f64, most: f64) -> Result<f64, Fault> {
        let cure = format!("a number from {least} to {most}");
        let number = self.any_number(&cure)?;
        self.between(number, least, most, &cure)?;
        Ok(number)
    }

    /// Any number at all, to be looked at further.
    pub(in crate::course) fn any_number(&self, cure: &str) -> Result<f64, Fault> {
        self.value()
            .and_then(|value| {
                // A whole number a person writes is far below where a float loses count.
                value
                    .as_float()
                    .or_else(|| value.as_integer().map(|whole| whole as f64))
            })
            .ok_or_else(|| self.wrong_kind("a number", cure))
    }

    /// A share from 0 up to, but not quite, 1.
    pub(in crate::course) fn share(&self) -> Result<f64, Fault> {
        let cure = "a share from 0 to below 1, such as 0.25";
        let share = self.any_number(cure)?;
        self.between(share, 0.0, 1.0, cure)?;
        if 1.0 <= share {
            return Err(self.fault("out-of-range", "all of it is too much: 1", cure));
        }
        Ok(share)
    }

    /// A count.
    pub(in crate::course) fn whole(&self, least: u32, most: u32) -> Result<u32, Fault> {
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
    pub(in crate::course) fn date(&self) -> Result<NaiveDate, Fault> {
        let cure = "write a date as 2027-04-24, without quotes";
        let given = self.value().and_then(Value::as_datetime);
        let date = given.and_then(|it| it.date.filter(|_| it.time.is_none()));
        let date = date.ok_or_else(|| self.wrong_kind("a date", cure))?;
        NaiveDate::from_ymd_opt(date.year.into(), date.month.into(), date.day.into())
            .filter(|_| 1900 <= date.year)
            .ok_or_else(|| self.fault("out-of-range", "there is no such date", cure))
    }

    /// A time of day.
    pub(in crate::course) fn time(&self) -> Result<NaiveTime, Fault> {
        let cure = AS_A_TIME;
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
    craft::quantity::show_mark(metres(value), craft::quantity::Units::Metric)
}

/// How a time of day stands in a file.
pub(in crate::course) const AS_A_TIME: &str = "write a time as 09:00:00, without quotes";

/// A key as people count: `day.1.date` is the date of day 2.
pub(in crate::course) fn said(path: &str) -> String {
    let counted = |step: &str| {
        step.parse::<usize>()
            .map(|number| format!(" {}", number + 1))
    };
    let mut said = String::new();
    for step in path.split('.') {
        match counted(step) {
            Ok(number) => said.push_str(&number),
            Err(_) if said.is_empty() => said.push_str(step),
            Err(_) => {
                said.push('.');
                said.push_str(step);
            }
        }
    }
    said
}
