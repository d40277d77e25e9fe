//! What each template is fed: one JSON value and its pictures.
//!
//! - `wall`: setting out
//! - `days`: how the days run, and what is written down of them
//! - `stone`: what is ordered
//! - `kit`: what goes out, in what, and what comes home
//! - `field`: what is carried to the wall: cards, the inspection and the poster of stints
//! - `hazards`: what can hurt someone, and what is said of it first thing
//! - `lessons`: what is taught, for students and for who teaches
//! - `safety`: what students are told, and what one person may lift
//! - `office`: what the instructor keeps in order: dates and money
//! - `worksheets`: what students work out
//! - `beforehand`: what goes out to each student before the course
//! - `attendance`: who was there, and what they were there for
//! - `emergency`: when somebody is hurt
//! - `contacts`: the one page of private notes

mod attendance;
mod beforehand;
mod contacts;
mod days;
mod emergency;
mod field;
mod hazards;
mod kit;
mod lessons;
mod office;
mod protection;
mod safety;
mod stone;
mod wall;
mod worksheets;

pub(crate) use attendance::{attendance_slip, feedback_sheet, register};
pub(crate) use beforehand::{fitness_declaration, joining_letter};
pub(crate) use contacts::contacts_sheet;
pub(crate) use days::{progress_sheet, run_sheet};
pub(crate) use emergency::emergency_sheet;
pub(crate) use field::{frame_card, inspection_sheet, site_card, stints_poster};
pub(crate) use hazards::{risk_assessment, safety_briefing};
pub(crate) use kit::{load_list, return_list};
pub(crate) use lessons::{lesson_cards, lesson_handouts};
pub(crate) use office::{money_sheet, ready_list};
pub(crate) use safety::{lifting_card, safety_handout};
pub(crate) use stone::stone_order;
pub(crate) use wall::setting_out;
pub(crate) use worksheets::{worksheets, worksheets_key};

use crate::Course;
use crate::drawings::Picture;
use crate::spelling;
use serde_json::{Value, json};
use std::borrow::Cow;

/// What a template is fed.
pub(crate) struct Feed {
    pub(crate) data: Value,
    /// File name and SVG. Names are from a fixed set: every one ever used stays in memory.
    pub(crate) pictures: Vec<(Cow<'static, str>, String)>,
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
            "edition": course.edition.word(),
            "american": spelling::for_templates(file.language),
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
        self.pictures.push((file.into(), picture.svg));
        self
    }

    /// Adds a picture in parts: the first as [`Feed::with`] does, the others as `file` and `words`
    /// in a list under `more`.
    fn with_parts(
        mut self,
        file: &'static str,
        (key, more): (&str, &str),
        parts: Vec<Picture>,
    ) -> Self {
        let mut others = Vec::new();
        let stem = file.trim_end_matches(".svg");
        for (at, part) in parts.into_iter().enumerate() {
            if at == 0 {
                self = self.with(file, key, part);
                continue;
            }
            let file = format!("{stem}-{}.svg", at + 1);
            others.push(json!({ "file": file, "words": part.description }));
            self.pictures.push((file.into(), part.svg));
        }
        if let Value::Object(all) = &mut self.data {
            all.insert(more.to_owned(), Value::Array(others));
        }
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
