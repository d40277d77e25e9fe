//! What each template is fed: one JSON value and its pictures.
//!
//! - `wall`: setting out
//! - `days`: how the days run, and what is written down of them
//! - `stone`: what is ordered
//! - `kit`: what goes out, in what, and what comes home
//! - `safety`: what students are told, and what one person may lift
//! - `office`: what the instructor keeps in order: dates and money
//! - `worksheets`: what students work out

mod days;
mod kit;
mod office;
mod safety;
mod stone;
mod wall;
mod worksheets;

pub(crate) use days::{progress_sheet, run_sheet};
pub(crate) use kit::{load_list, return_list};
pub(crate) use office::{money_sheet, ready_list};
pub(crate) use safety::{lifting_card, safety_handout};
pub(crate) use stone::stone_order;
pub(crate) use wall::setting_out;
pub(crate) use worksheets::{worksheets, worksheets_key};

use crate::Course;
use crate::drawings::Picture;
use serde_json::{Value, json};

/// What a template is fed.
pub(crate) struct Feed {
    pub(crate) data: Value,
    /// File name and SVG.
    pub(crate) pictures: Vec<(&'static str, String)>,
}

impl Feed {
    /// The data every page has, with `own` beside it.
    fn new(course: &Course, own: Value) -> Self {
        let file = &course.file;
        let mut data = json!({
            "title": course.written.title,
            "venue": course.written.venue,
            "dates": course.written.dates,
            "group": course.written.group,
            "paper": match file.paper.word() { "letter" => "us-letter", other => other },
            "language": file.language.word(),
        });
        if let (Value::Object(all), Value::Object(own)) = (&mut data, own) {
            all.extend(own);
        }
        Self {
            data,
            pictures: Vec::new(),
        }
    }

    /// Adds a picture and, under its name, its description.
    fn with(mut self, file: &'static str, key: &str, picture: Picture) -> Self {
        if let Value::Object(all) = &mut self.data {
            all.insert(key.to_owned(), Value::String(picture.description));
        }
        self.pictures.push((file, picture.svg));
        self
    }
}

/// The metric example without its vehicles, prices and marks, for tests that give their own.
#[cfg(test)]
pub(crate) fn bare_example() -> String {
    let example = files::Library::example(false);
    let (before, rest) = example.split_once("[[vehicle]]").expect("vehicles");
    let (_, after) = rest.split_once("[pace]").expect("pace");
    format!("{before}[pace]{after}")
}
