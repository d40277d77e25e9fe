//! The students' worksheets and the instructor's key: every sheet with its own numbers.

use super::Feed;
use crate::drawings::Drawings;
use crate::{Course, Edition, spelling};
use craft::course::Student;
use craft::worksheet::{Asked, FaultWall, Kind, Level, Table, sheet};
use drawing::Room;
use rayon::prelude::*;
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
    prompts: Vec<String>,
    table: Option<TableRows>,
    /// The file name and the words of a drawing of the question's own.
    picture: Option<String>,
    words: String,
    /// Lines to answer on.
    blanks: usize,
    /// Sixths of a page.
    room: usize,
    working: String,
    answer: String,
    tolerance: String,
}

#[derive(Serialize)]
struct TableRows {
    head: Vec<String>,
    rows: Vec<Vec<String>>,
}

/// Whether the faults of a wall are ringed.
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
enum For {
    Students,
    Key,
}

/// A sheet while it is made, with its drawings.
struct Drawn<'a> {
    course: &'a Course,
    whom: For,
    pictures: Vec<(String, String)>,
}

/// Every student's sheet, and the drawings of all by their file names.
fn sheets(course: &Course, whom: For) -> (Vec<Sheet>, Vec<(String, String)>) {
    let asked = Asked {
        course: &course.file.course,
        tables: &course.library.tables,
        frames: &course.plan.frames,
        fault_wall,
    };
    let of_student = |(place, student): (usize, &Student)| {
        let mut drawn = Drawn {
            course,
            whom,
            pictures: Vec::new(),
        };
        let questions = sheet(&asked, place).into_iter();
        let made = Sheet {
            name: student.name.clone(),
            questions: questions.map(|it| drawn.question(it, place)).collect(),
        };
        (made, drawn.pictures)
    };
    let students: Vec<(usize, &Student)> = course.chosen_students().collect();
    let made: Vec<_> = students.into_par_iter().map(of_student).collect();
    let (sheets, pictures): (Vec<_>, Vec<_>) = made.into_iter().unzip();
    (sheets, pictures.into_iter().flatten().collect())
}

impl Drawn<'_> {
    fn question(&mut self, it: craft::worksheet::Question, place: usize) -> Question {
        let own = |text: &str| spelling::text(text, self.course.file.language);
        // Stages are the instructor's own words; all other choices are the program's.
        let choice = |text: &String| match it.kind {
            Kind::OrderOfWork => text.clone(),
            _ => own(text),
        };
        let (choices, prompts) = (
            it.choices.iter().map(choice).collect(),
            it.prompts.iter().map(|text| own(text)).collect(),
        );
        let mut question = Question {
            code: it.kind.code(),
            title: own(it.kind.title()),
            ask: own(&it.ask),
            choices,
            prompts,
            table: it.table.as_ref().map(|table| rows(table, own)),
            picture: None,
            words: String::new(),
            blanks: blanks(it.kind, self.course.file.course.worksheets.level),
            room: it.kind.sixths_of_a_page(),
            working: own(&it.working),
            answer: own(&it.answer),
            tolerance: own(&it.tolerance),
        };
        if it.wall.is_some()
            && let Some((file, words)) = self.draw(place)
        {
            question.picture = Some(file);
            question.words = words;
        }
        question
    }

    /// The face of a student by the student's place in the group.
    fn draw(&mut self, place: usize) -> Option<(String, String)> {
        let course = &self.course.file.course;
        let level = course.worksheets.level_of(Kind::FindTheFault);
        let (svg, words) = drawn(course.seed, level, place, self.whom, self.course.edition)?;
        let file = format!("fault-{place}.svg");
        self.pictures.push((file.clone(), svg));
        Some((file, words))
    }
}

/// The face of one student, remembered: it stays the same whatever is changed of the course but
/// its seed and its level.
#[comemo::memoize]
fn fault_wall(seed: u64, level: Level, student: usize) -> Option<FaultWall> {
    craft::worksheet::fault_wall(seed, level, student)
}

/// Its drawing as SVG and in words, remembered as well.
#[comemo::memoize]
fn drawn(
    seed: u64,
    level: Level,
    student: usize,
    whom: For,
    edition: Edition,
) -> Option<(String, String)> {
    let wall = fault_wall(seed, level, student)?;
    // In large print it is enlarged to the whole width, so much that its letters are 14 point.
    let width_mm = match (whom, edition) {
        (For::Key, _) => 100.0,
        (For::Students, Edition::Usual) => 180.0,
        (For::Students, Edition::LargePrint) => 180.0 / 1.1,
    };
    let room = Room {
        width_mm,
        height_mm: 80.0,
    };
    let scene = drawing::find_the_fault(&wall, room, whom == For::Key);
    Some((scene.svg(), scene.description))
}

fn rows(table: &Table, own: impl Fn(&str) -> String) -> TableRows {
    TableRows {
        head: table.head.iter().map(|it| own(it)).collect(),
        rows: table.rows.clone(),
    }
}

/// Where the number of answers would tell too much, there are lines to spare.
fn blanks(kind: Kind, level: Level) -> usize {
    match (kind, level) {
        (Kind::FindTheFault, Level::Easy) => 1,
        (Kind::FindTheFault, Level::Usual) => 2,
        (Kind::FindTheFault, Level::Hard) => 4,
        _ => 1,
    }
}

fn parts(parts: &[(char, &str)]) -> Vec<Value> {
    parts
        .iter()
        .map(|(letter, part)| json!({ "letter": letter, "part": part }))
        .collect()
}

fn feed<'a>(course: &'a Course, whom: For) -> Feed<'a> {
    let (section, letters) = Drawings::on_paper(course).section_blank();
    let (sheets, pictures) = sheets(course, whom);
    let own = json!({ "sheets": sheets, "parts": parts(&letters) });
    let feed = Feed::new(course, own).with("section-blank.svg", "section_words", || section);
    let add = |feed: Feed<'a>, (file, svg)| feed.with_svg(file, svg);
    pictures.into_iter().fold(feed, add)
}

pub(crate) fn worksheets(course: &Course) -> Feed<'_> {
    feed(course, For::Students)
}

pub(crate) fn worksheets_key(course: &Course) -> Feed<'_> {
    feed(course, For::Key)
}
