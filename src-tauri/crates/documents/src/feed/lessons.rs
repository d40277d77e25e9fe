//! The lessons taught on a course: handouts for students, cards for who teaches.

use super::Feed;
use crate::Course;
use crate::drawings::{Drawings, Picture};
use crate::filled::filled;
use craft::pace::timetable::Of;
use craft::tables::{Before, Lesson};
use files::{Block, COURSE_DRAWINGS, Card, Span, Wording};
use serde_json::{Value, json};

/// The cards of who teaches: what to show, what goes wrong, what to ask and what is right.
pub(crate) fn lesson_cards(course: &Course) -> Feed<'_> {
    let taught = taught(course);
    let lessons: Vec<Value> = taught.iter().map(|it| it.card_of(course)).collect();
    with_drawings(course, &taught, json!({ "lessons": lessons }))
}

/// The sheets that students take home. What opens each later day is not among them: it is
/// said, and about that day.
pub(crate) fn lesson_handouts(course: &Course) -> Feed<'_> {
    let mut taught = taught(course);
    taught.retain(|it| it.lesson.before != Before::EachDay);
    let lessons: Vec<Value> = taught.iter().map(|it| it.handout_of(course)).collect();
    with_drawings(course, &taught, json!({ "lessons": lessons }))
}

/// A lesson that this course teaches.
struct Taught<'a> {
    lesson: &'a Lesson,
    card: &'a Card,
    /// When it is given by the timetable, once for each day: `day 1, 09:30`.
    times: Vec<String>,
}

/// The lessons taught in the order of the timetable; then those the days do not reach.
fn taught(course: &Course) -> Vec<Taught<'_>> {
    let timetable = course.plan.timetable.iter();
    let given = timetable.filter_map(|entry| match entry.of {
        Some(Of::Lesson(lesson)) => Some(lesson),
        _ => None,
    });
    let mut order: Vec<usize> = Vec::new();
    for lesson in given.chain(course.plan.taught.iter().copied()) {
        if !order.contains(&lesson) {
            order.push(lesson);
        }
    }
    let library = &course.library;
    let one = |number: usize| {
        let lesson = library.tables.lessons.get(number)?;
        let card = library.cards.iter().find(|card| card.id == lesson.id)?;
        let times = times(course, number);
        Some(Taught {
            lesson,
            card,
            times,
        })
    };
    order.into_iter().filter_map(one).collect()
}

/// When a lesson begins on each day it is given.
fn times(course: &Course, lesson: usize) -> Vec<String> {
    let mut times = Vec::new();
    for day in &course.written.days {
        let entries = course.plan.timetable.iter();
        let mut of_day = entries
            .filter(|entry| entry.day + 1 == day.number)
            .zip(&day.entries);
        let given = of_day.find(|(entry, _)| entry.of == Some(Of::Lesson(lesson)));
        if let Some((_, shown)) = given {
            times.push(format!("day {}, {}", day.number, shown.start));
        }
    }
    times
}

impl Taught<'_> {
    fn card_of(&self, course: &Course) -> Value {
        let card = self.card;
        let all = |texts: &[Wording]| filled_all(course, texts);
        let cautions = course.written.cautions.iter();
        let hazards: Vec<&str> = cautions
            .filter(|caution| card.hazards.contains(&caution.id))
            .map(|caution| caution.text.as_str())
            .collect();
        let questions = card.questions.iter().map(
            |it| json!({ "ask": filled(course, &it.ask), "answer": filled(course, &it.answer) }),
        );
        json!({
            "title": self.lesson.title,
            "minutes": self.lesson.minutes,
            "safety": self.lesson.safety,
            "before": self.before(course),
            "times": self.times,
            "aims": all(&card.aims),
            "show": all(&card.show),
            "kit": card.kit,
            "hazards": hazards,
            "mistakes": all(&card.mistakes),
            "questions": questions.collect::<Vec<_>>(),
            "drawings": card.drawings.iter().map(|it| drawing(it)).collect::<Vec<_>>(),
        })
    }

    /// Without the answers and what the instructor watches for, which are not for students.
    fn handout_of(&self, course: &Course) -> Value {
        let card = self.card;
        let all = |texts: &[Wording]| filled_all(course, texts);
        let questions = card.questions.iter().map(|it| filled(course, &it.ask));
        json!({
            "title": self.lesson.title,
            "minutes": self.lesson.minutes,
            "times": self.times,
            "aims": all(&card.aims),
            "text": blocks(course, &card.text),
            "questions": questions.collect::<Vec<_>>(),
            "drawings": card.drawings.iter().map(|it| drawing(it)).collect::<Vec<_>>(),
        })
    }

    /// What it comes before, in words.
    fn before(&self, course: &Course) -> String {
        match &self.lesson.before {
            Before::Course => "First thing on day 1".to_owned(),
            Before::EachDay => "First thing on every later day".to_owned(),
            Before::Stage(id) => {
                let stage = course.library.tables.stages.iter().find(|it| it.id == *id);
                stage.map(|it| it.name.clone()).unwrap_or_default()
            }
        }
    }
}

fn filled_all(course: &Course, texts: &[Wording]) -> Vec<String> {
    texts.iter().map(|text| filled(course, text)).collect()
}

/// A drawing of the course by its file, the key of its words and that of its further parts; a
/// sketch by its name.
fn drawing(name: &str) -> Value {
    if COURSE_DRAWINGS.contains(&name) {
        json!({ "file": format!("{name}.svg"), "words": words_key(name), "more": more_key(name) })
    } else {
        json!({ "sketch": name })
    }
}

fn words_key(name: &str) -> String {
    format!("{}_words", name.replace('-', "_"))
}

fn more_key(name: &str) -> String {
    format!("{}_more", name.replace('-', "_"))
}

/// The data with those drawings of the course that a lesson shows.
fn with_drawings<'a>(course: &'a Course, taught: &[Taught<'_>], own: Value) -> Feed<'a> {
    let mut feed = Feed::new(course, own);
    let shown = |name: &str| {
        let mut names = taught.iter().flat_map(|it| &it.card.drawings);
        names.any(|it| it == name)
    };
    let drawings = Drawings::on_card(course);
    for name in COURSE_DRAWINGS.into_iter().filter(|name| shown(name)) {
        let (file, draw): (_, fn(Drawings<'a>) -> Vec<Picture>) = match name {
            "section" => ("section.svg", |it| vec![it.section()]),
            "elevation" => ("elevation.svg", |it| it.elevation_in_parts()),
            "line-plan" => ("line-plan.svg", |it| vec![it.line_plan()]),
            "setting-out" => ("setting-out.svg", |it| it.setting_out_in_parts()),
            "frame" => ("frame.svg", |it| vec![it.frame()]),
            "gauge" => ("gauge.svg", |it| vec![it.gauge()]),
            "heap-plan" => ("heap-plan.svg", |it| it.heap_plan_in_parts()),
            _ => continue,
        };
        feed = feed.with_parts(file, words_key(name), more_key(name), move || {
            draw(drawings)
        });
    }
    feed
}

fn blocks(course: &Course, text: &[Block]) -> Vec<Value> {
    let block = |block: &Block| match block {
        Block::Heading(it) => json!({ "kind": "heading", "spans": spans(course, it) }),
        Block::Paragraph(it) => json!({ "kind": "paragraph", "spans": spans(course, it) }),
        Block::List { numbered, items } => {
            let items: Vec<_> = items.iter().map(|item| blocks(course, item)).collect();
            json!({ "kind": "list", "numbered": numbered, "items": items })
        }
    };
    text.iter().map(block).collect()
}

fn spans(course: &Course, all: &[Span]) -> Vec<Value> {
    let span = |span: &Span| match span {
        Span::Words(words) => json!({ "kind": "words", "text": filled(course, words) }),
        Span::Strong(it) => json!({ "kind": "strong", "spans": spans(course, it) }),
        Span::Emphasis(it) => json!({ "kind": "emphasis", "spans": spans(course, it) }),
    };
    all.iter().map(span).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use files::Library;
    use files::course::CourseFile;

    fn course(more: &str) -> Course {
        let text = crate::feed::bare_example() + more;
        let library = Library::built_in().expect("the built-in library is sound");
        let file = CourseFile::parse(&text).expect("a course");
        Course::plan(file, &library).expect("a plan")
    }

    fn titles(feed: &Feed<'_>) -> Vec<String> {
        let lessons = feed.data["lessons"].as_array().expect("lessons");
        let titles = lessons.iter().filter_map(|it| it["title"].as_str());
        titles.map(str::to_owned).collect()
    }

    #[test]
    fn lessons_come_in_the_order_of_the_timetable() {
        let course = course("");
        let feed = lesson_cards(&course);
        let mut given: Vec<String> = Vec::new();
        let entries = course.written.days.iter().flat_map(|day| &day.entries);
        for entry in entries.filter(|it| ["lesson", "safety"].contains(&it.kind.as_str())) {
            if !given.contains(&entry.what) {
                given.push(entry.what.clone());
            }
        }
        let titles = titles(&feed);
        assert!(titles.starts_with(&given), "{titles:?} and {given:?}");
        assert_eq!(titles.len(), course.plan.taught.len());
        let first = &feed.data["lessons"][0];
        assert_eq!(first["before"], "First thing on day 1");
        assert_eq!(first["times"][0], "day 1, 09:00");
    }

    #[test]
    fn a_handout_holds_no_answer() {
        let course = course("");
        let handouts = lesson_handouts(&course).data.to_string();
        let cards = lesson_cards(&course).data.to_string();
        let mut seen = 0;
        for taught in taught(&course) {
            for question in &taught.card.questions {
                let answer = json!(filled(&course, &question.answer)).to_string();
                assert!(cards.contains(&answer), "{answer}");
                assert!(!handouts.contains(&answer), "{answer}");
                seen += 1;
            }
        }
        assert!(10 < seen, "{seen}");
    }

    #[test]
    fn a_drawing_of_the_course_comes_with_its_words() {
        let course = course("");
        let feed = lesson_cards(&course).drawn(|_| true);
        let lessons = feed.data["lessons"].as_array().expect("lessons");
        let drawings = lessons
            .iter()
            .flat_map(|it| it["drawings"].as_array().expect("a list"));
        for drawing in drawings.filter(|it| it["file"].is_string()) {
            let key = drawing["words"].as_str().expect("a key");
            assert!(feed.data[key].is_string(), "{key}");
            let file = drawing["file"].as_str().expect("a file");
            assert!(
                feed.drawings.iter().any(|(name, _)| *name == file),
                "{file}"
            );
        }
    }
}
