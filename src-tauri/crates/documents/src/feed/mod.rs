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
use crate::made::Fed;
use crate::spelling;
use serde_json::{Value, json};

/// What a template is fed, before its pictures are drawn.
pub(crate) struct Feed<'a> {
    pub(crate) data: Value,
    pictures: Vec<Pictures<'a>>,
}

/// Some pictures that are drawn together, if they are wanted.
struct Pictures<'a> {
    /// The name of the first; the others have theirs from it. Names are from a fixed set: every one ever
    /// used stays in memory.
    file: String,
    draw: Box<dyn FnOnce() -> Drawn + 'a>,
}

/// Pictures by file name, as SVG, and what is said of them by its keys in the data.
#[derive(Default)]
struct Drawn {
    pictures: Vec<(String, String)>,
    said: Vec<(String, Value)>,
}

impl<'a> Feed<'a> {
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

    /// Adds a picture and, under its key, its description.
    fn with(
        self,
        file: &'static str,
        key: &'static str,
        draw: impl FnOnce() -> Picture + 'a,
    ) -> Self {
        self.with_drawn(file, || {
            let picture = draw();
            Drawn {
                pictures: vec![(file.to_owned(), picture.svg)],
                said: vec![(key.to_owned(), picture.description.into())],
            }
        })
    }

    /// Adds a picture in parts: the first as [`Feed::with`] does, the others as `file` and `words`
    /// in a list under `more`.
    fn with_parts(
        self,
        file: &'static str,
        key: impl Into<String>,
        more: impl Into<String>,
        draw: impl FnOnce() -> Vec<Picture> + 'a,
    ) -> Self {
        let (key, more) = (key.into(), more.into());
        self.with_drawn(file, move || {
            let (mut drawn, mut others) = (Drawn::default(), Vec::new());
            for (at, part) in draw().into_iter().enumerate() {
                let name = part_name(file, at);
                if at == 0 {
                    drawn.said.push((key.clone(), part.description.into()));
                } else {
                    others.push(json!({ "file": name, "words": part.description }));
                }
                drawn.pictures.push((name, part.svg));
            }
            drawn.said.push((more, Value::Array(others)));
            drawn
        })
    }

    /// Adds pictures of a kind, each as `file` and `words` in a list under `key`. `first` is the name
    /// of the first, with its number.
    fn with_list(
        self,
        first: &'static str,
        key: &'static str,
        draw: impl FnOnce() -> Vec<Picture> + 'a,
    ) -> Self {
        self.with_drawn(first, move || {
            let (mut drawn, mut told) = (Drawn::default(), Vec::new());
            for (at, picture) in draw().into_iter().enumerate() {
                let name = first.replace('1', &(at + 1).to_string());
                told.push(json!({ "file": name, "words": picture.description }));
                drawn.pictures.push((name, picture.svg));
            }
            drawn.said.push((key.to_owned(), Value::Array(told)));
            drawn
        })
    }

    /// Adds a picture that is drawn already, and whose description is in the data.
    fn with_svg(self, file: String, svg: String) -> Self {
        let name = file.clone();
        self.with_drawn(file, || Drawn {
            pictures: vec![(name, svg)],
            said: Vec::new(),
        })
    }

    fn with_drawn(mut self, file: impl Into<String>, draw: impl FnOnce() -> Drawn + 'a) -> Self {
        self.pictures.push(Pictures {
            file: file.into(),
            draw: Box::new(draw),
        });
        self
    }

    /// With the pictures that are wanted, by the file names of the first in each; the others are
    /// neither drawn nor described.
    pub(crate) fn drawn(self, wanted: impl Fn(&str) -> bool) -> Fed {
        let (mut data, mut drawings) = (self.data, Vec::new());
        for pictures in self.pictures.into_iter().filter(|it| wanted(&it.file)) {
            let drawn = (pictures.draw)();
            drawings.extend(drawn.pictures);
            if let Value::Object(all) = &mut data {
                all.extend(drawn.said);
            }
        }
        Fed { data, drawings }
    }
}

/// `elevation.svg`, `elevation-2.svg`, and so on.
fn part_name(file: &str, at: usize) -> String {
    if at == 0 {
        return file.to_owned();
    }
    format!("{}-{}.svg", file.trim_end_matches(".svg"), at + 1)
}

/// The metric example without its vehicles, prices and marks, for tests that give their own.
#[cfg(test)]
pub(crate) fn bare_example() -> String {
    let example = files::Library::example(false);
    let (before, rest) = example.split_once("[[vehicle]]").expect("vehicles");
    let (_, after) = rest.split_once("[pace]").expect("pace");
    format!("{before}[pace]{after}")
}
