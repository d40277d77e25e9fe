//! The shelf of lessons as the window shows it, and a lesson while it is written.

use super::View;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// All lessons, and the words a lesson can be put together from.
#[derive(Debug, Clone, Serialize, TS)]
pub struct LessonShelf {
    /// In the order they would be taught in.
    pub lessons: Vec<ShelfLesson>,
    /// What a lesson can come before: word and name.
    pub stages: Vec<(String, String)>,
    /// When a lesson is taught: word and name.
    pub conditions: Vec<(String, String)>,
    /// The cautions that can go with a lesson: word and sentence.
    pub cautions: Vec<(String, String)>,
    /// Drawings of the course and sketches, by name.
    pub drawings: Vec<String>,
    /// Figures of the course that a text can name in braces.
    pub figures: Vec<String>,
    /// Where the instructor's own lessons lie.
    pub folder: String,
}

/// A lesson on the shelf.
#[derive(Debug, Clone, Serialize, TS)]
pub struct ShelfLesson {
    /// Its file's name without the ending.
    pub id: String,
    /// What a person reads.
    pub title: String,
    /// When it is given; empty for one that can't be used.
    pub before: String,
    /// How long it lasts; empty for one that can't be used.
    pub lasts: String,
    /// `built-in`, `own`, or `replaces` for one's own in place of a built-in one.
    pub whose: String,
    /// This course teaches it.
    pub taught: bool,
    /// Why it is taught, or why not.
    pub why: String,
    /// What is wrong with the instructor's own; empty if it is sound.
    pub fault: String,
}

/// A lesson as it is written.
#[derive(Debug, Clone, Serialize, TS)]
pub struct LessonDraft {
    /// Its file's name without the ending.
    pub id: String,
    /// The whole file.
    pub text: String,
    /// Its parts; null where its head can't be read, so that it is mended as a whole.
    pub parts: Option<LessonParts>,
    /// What keeps it from being used; null if it is sound.
    pub fault: Option<LessonFault>,
    /// `built-in`, `own`, `replaces`, or `new` for one that is not on the shelf.
    pub whose: String,
    /// It stands on the shelf just so.
    pub saved: bool,
    /// It has a handout: what opens every later day is only said.
    pub handout: bool,
}

/// The parts of a lesson, as typed.
#[derive(Debug, Clone, Serialize, TS)]
#[allow(missing_docs)]
pub struct LessonParts {
    pub title: String,
    pub kind: String,
    pub minutes: String,
    pub before: String,
    pub when: Vec<String>,
    pub drawings: Vec<String>,
    pub aims: Vec<String>,
    pub show: Vec<String>,
    pub kit: Vec<String>,
    pub hazards: Vec<String>,
    pub mistakes: Vec<String>,
    /// What is asked and what is right.
    pub questions: Vec<(String, String)>,
    pub body: String,
}

/// What is wrong with a lesson, and where.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct LessonFault {
    /// The part it lies in: a key of the head, `body`, or empty for the whole.
    pub part: String,
    /// The line, counted from 1: of the text in the body, of the file elsewhere.
    pub line: usize,
    /// What is wrong.
    pub what: String,
    /// What would be right; empty if that is plain.
    pub cure: String,
}

/// One part of a lesson as it was typed.
#[derive(Debug, Clone, Deserialize, TS)]
#[serde(tag = "part", content = "typed", rename_all = "kebab-case")]
pub enum LessonChange {
    /// `title`, `kind`, `minutes` or `before`.
    Word(String, String),
    /// A list of the head, line by line.
    Lines(String, Vec<String>),
    /// What is asked and what is right.
    Questions(Vec<(String, String)>),
    /// What is said.
    Body(String),
    /// The whole file.
    Whole(String),
}

/// A lesson after it was put on the shelf or taken from it, with the course planned anew.
#[derive(Debug, Clone, Serialize, TS)]
pub struct LessonKept {
    /// The lesson as it is written.
    pub draft: LessonDraft,
    /// The shelf.
    pub shelf: LessonShelf,
    /// The course.
    pub view: View,
}
