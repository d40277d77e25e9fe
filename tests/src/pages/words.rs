//! What each document must say: the figures of the plan, as people read them.

use checks::paper::{Paper, letters};
use documents::{Course, Document};

/// Panics at the first thing a document should say and does not.
pub fn has_its_words(course: &Course, document: &Document, paper: &Paper) {
    let there = paper.letters();
    for words in due(course, document.name) {
        assert!(
            there.contains(&letters(&words)),
            "{}: no {words:?} in\n{}",
            document.name,
            paper.text()
        );
    }
    let students = course.file.course.group.students.len();
    if document.name == "worksheets" {
        let pages = paper.pages();
        assert!(
            students <= pages.len(),
            "{} pages for {students}",
            pages.len()
        );
    }
}

fn due(course: &Course, document: &str) -> Vec<String> {
    match document {
        "stone-order" => stone_order(course),
        "load-list" => load_list(course),
        "setting-out" => setting_out(course),
        "run-sheet" => run_sheet(course),
        "safety-handout" => safety_handout(course),
        "worksheets" | "worksheets-key" => names(course),
        // A new document says at least whose it is.
        _ => vec![course.written.title.clone()],
    }
}

fn stone_order(course: &Course) -> Vec<String> {
    let stone = &course.written.stone;
    let mut words = vec![stone.high.clone(), stone.mid.clone(), stone.low.clone()];
    words.extend(stone.kinds.iter().map(|kind| kind.wanted.clone()));
    let order = course.written.to_do.iter().find(|it| it.id == "stone");
    words.extend(order.map(|order| order.by.clone()));
    words
}

fn load_list(course: &Course) -> Vec<String> {
    let lines = course.written.kit.lines.iter();
    lines.map(|line| line.item.clone()).collect()
}

fn setting_out(course: &Course) -> Vec<String> {
    let (wall, frames) = (&course.written.wall, &course.written.frames);
    let mut words = vec![
        wall.length.clone(),
        wall.height.clone(),
        wall.base_width.clone(),
        wall.top_width.clone(),
        frames
            .bars
            .as_ref()
            .map_or_else(String::new, |bars| bars.needed.clone()),
    ];
    for row in &frames.rows {
        words.extend([
            row.station.clone(),
            row.left_offset.clone(),
            row.right_offset.clone(),
        ]);
    }
    for string in &frames.strings {
        words.extend([string.height.clone(), string.width.clone()]);
    }
    for one in &frames.moves {
        words.extend([one.from.clone(), one.to.clone(), one.built_to.clone()]);
    }
    words
}

fn run_sheet(course: &Course) -> Vec<String> {
    let mut words = vec![course.written.chance.chance.clone()];
    for day in &course.written.days {
        words.push(day.date.clone());
        for entry in &day.entries {
            words.extend([entry.start.clone(), entry.what.clone()]);
        }
    }
    for stint in &course.written.stints {
        words.extend([stint.from.clone(), stint.to.clone()]);
        words.extend(stint.members.iter().cloned());
    }
    words
}

fn safety_handout(course: &Course) -> Vec<String> {
    let told = course.written.cautions.iter();
    let told = told.filter(|caution| caution.for_students);
    let mut words: Vec<String> = told.map(|caution| caution.text.clone()).collect();
    let country = course.file.course.venue.country.as_deref();
    words.extend(course.library.emergency(country).map(str::to_owned));
    words
}

fn names(course: &Course) -> Vec<String> {
    let students = course.file.course.group.students.iter();
    students.map(|student| student.name.clone()).collect()
}
