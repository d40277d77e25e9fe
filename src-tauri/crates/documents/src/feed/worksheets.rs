//! The students' worksheets and the instructor's key: every sheet with its own numbers.

use super::Feed;
use crate::drawings::Drawings;
use crate::{Course, spelling};
use serde::Serialize;
use serde_json::{Value, json};

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
    course
        .chosen_students()
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
