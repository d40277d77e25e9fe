//! The words of the trade with their drawings, as the window shows them.

use serde::Serialize;
use ts_rs::TS;

/// A word of the trade.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct Term {
    /// The word.
    pub word: String,
    /// Other words for the same thing.
    pub also: Vec<String>,
    /// What it means.
    pub meaning: String,
    /// A sketch, or a drawing of the course, by its name; null where a drawing would not help.
    pub drawing: Option<String>,
    /// It is a word of everyday speech as well: only the other words are marked in texts.
    pub everyday: bool,
    /// Who says so.
    pub source: String,
}

/// A sketch of the lessons, or a drawing of the open course.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct Sketch {
    /// The sketch as SVG.
    pub svg: String,
    /// What it shows, for who can't see it.
    pub words: String,
    /// It is a drawing of the open course, which changes with it.
    pub of_the_course: bool,
}
