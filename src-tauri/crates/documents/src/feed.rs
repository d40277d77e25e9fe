//! What each template is fed: one JSON value and its pictures.

use crate::drawings::{Drawings, Picture};
use crate::{Course, spelling};
use serde::Serialize;
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

pub(crate) fn setting_out(course: &Course) -> Feed {
    let drawings = Drawings::on_paper(course);
    let written = &course.written;
    let own = json!({
        "wall": written.wall,
        "frames": written.frames,
        "timber": written.timber,
        "retaining": written.retaining,
    });
    Feed::new(course, own)
        .with("section.svg", "section_words", drawings.section)
        .with("line-plan.svg", "line_plan_words", drawings.line_plan)
        .with("frame.svg", "frame_words", drawings.frame)
        .with("setting-out.svg", "setting_out_words", drawings.setting_out)
        .with("elevation.svg", "elevation_words", drawings.elevation)
        .with("gauge.svg", "gauge_words", drawings.gauge)
}

pub(crate) fn run_sheet(course: &Course) -> Feed {
    let written = &course.written;
    let of_this_plan: Vec<_> = written
        .cautions
        .iter()
        .filter(|caution| caution.of_this_plan)
        .collect();
    let own = json!({
        "days": written.days,
        "stints": written.stints,
        "chance": written.chance,
        "cautions": of_this_plan,
        "wall": written.wall,
    });
    Feed::new(course, own)
}

pub(crate) fn stone_order(course: &Course) -> Feed {
    let written = &course.written;
    let by = written
        .to_do
        .iter()
        .find(|it| it.id == "stone")
        .map(|it| it.by.clone());
    let own = json!({
        "stone": written.stone,
        "retaining": written.retaining,
        "wall": written.wall,
        "order_by": by.unwrap_or_default(),
        "first_day": written.days.first().map(|day| day.date.clone()).unwrap_or_default(),
        "lead_source": course.library.tables.stone.lead_source,
    });
    Feed::new(course, own)
}

/// The tools under the place where each is used, in the order the places are first met.
pub(crate) fn load_list(course: &Course) -> Feed {
    let kit = &course.written.kit;
    let mut places: Vec<(&str, Vec<&shapes::written::KitLine>)> = Vec::new();
    for line in &kit.lines {
        match places.iter_mut().find(|(place, _)| *place == line.place) {
            Some((_, lines)) => lines.push(line),
            None => places.push((&line.place, vec![line])),
        }
    }
    let places: Vec<Value> = places
        .into_iter()
        .map(|(place, lines)| json!({ "place": place, "lines": lines }))
        .collect();
    let own = json!({
        "places": places,
        "mass": kit.mass,
        "short": kit.short,
        "bars": course.written.frames.bars,
        "frames": course.written.frames.count,
    });
    Feed::new(course, own)
}

pub(crate) fn safety_handout(course: &Course) -> Feed {
    let venue = &course.file.course.venue;
    let cautions: Vec<_> = course
        .written
        .cautions
        .iter()
        .filter(|caution| caution.for_students)
        .collect();
    let own = json!({
        "cautions": cautions,
        "emergency": course.library.emergency(venue.country.as_deref()),
        "latitude": degrees(venue.latitude, "N", "S"),
        "longitude": degrees(venue.longitude, "E", "W"),
    });
    Feed::new(course, own)
}

/// `54.20000° N`: five decimals are about a metre on the ground.
fn degrees(value: f64, positive: &str, negative: &str) -> String {
    let side = if value < 0.0 { negative } else { positive };
    format!("{:.5}° {side}", value.abs())
}

/// One student's sheet.
#[derive(Serialize)]
struct Sheet {
    name: String,
    questions: Vec<Question>,
}

#[derive(Serialize)]
struct Question {
    code: &'static str,
    title: String,
    ask: String,
    choices: Vec<String>,
    working: String,
    answer: String,
    tolerance: String,
}

fn sheets(course: &Course) -> Vec<Sheet> {
    let given = &course.file.course;
    let own = |text: &str| spelling::text(text, course.file.language);
    let question = |it: craft::worksheet::Question| Question {
        code: it.kind.code(),
        title: own(it.kind.title()),
        ask: own(&it.ask),
        choices: it.choices,
        working: own(&it.working),
        answer: own(&it.answer),
        tolerance: own(&it.tolerance),
    };
    given
        .group
        .students
        .iter()
        .enumerate()
        .map(|(number, student)| Sheet {
            name: student.name.clone(),
            questions: craft::worksheet::sheet(given, &course.library.tables, number)
                .into_iter()
                .map(question)
                .collect(),
        })
        .collect()
}

fn parts(drawings: &Drawings) -> Vec<Value> {
    drawings
        .parts
        .iter()
        .map(|(letter, part)| json!({ "letter": letter, "part": part }))
        .collect()
}

pub(crate) fn worksheets(course: &Course) -> Feed {
    let drawings = Drawings::on_paper(course);
    let own = json!({ "sheets": sheets(course), "parts": parts(&drawings) });
    Feed::new(course, own).with("section-blank.svg", "section_words", drawings.section_blank)
}

pub(crate) fn worksheets_key(course: &Course) -> Feed {
    worksheets(course)
}
