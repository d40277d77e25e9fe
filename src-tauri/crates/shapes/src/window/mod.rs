//! What the desktop program and its window say to each other.

mod choices;
mod courses;
mod drops;
mod handles;
mod keeping;
mod lessons;
mod numbers;
mod pace;
mod pages;
mod paper;
mod renewed;
mod rules;
mod store;
mod words;

pub use choices::{Choices, LessonChoice, in_words};
pub use courses::{
    AnswersChecked, BeginChoices, ComesTo, CountryChoice, ExampleCourse, Readiness, RecentCourse,
    YourCourses,
};
pub use drops::{Dropped, RosterPreview};
pub use handles::{DayEntry, DayHandles, DayPlaces, Handle, HandleStop, Handles};
pub use keeping::{Keeping, Kept, Outside};
pub use lessons::{
    LessonChange, LessonDraft, LessonFault, LessonKept, LessonParts, LessonShelf, ShelfLesson,
};
pub use numbers::Numbers;
pub use pace::{PaceBook, PaceCourse, PacePreview, PaceRow};
pub use pages::{Document, PagePreview, PagesAsked, Printed, Printing};
pub use paper::{PaperEnd, PaperSheet, PaperSheets};
pub use renewed::{Difference, Renewed};
pub use rules::{Rule, RuleKey};
pub use store::{
    BookedCourse, BookedItem, CountedHome, KitListPreview, KitStore, Lot, LotTyped, ReturnTyped,
};
pub use words::{Sketch, Term};

use crate::written::Written;
use serde::Serialize;
use std::collections::BTreeMap;
use ts_rs::TS;

/// An open course as the window shows it.
#[derive(Debug, Clone, Serialize, TS)]
pub struct View {
    /// The file's name, or a word for a course not yet saved.
    pub file: String,
    /// Whether the file on the disk is older than what is shown.
    pub unsaved: bool,
    /// What undoing would take back; null when there is nothing to undo.
    pub undo: Option<Vec<Changed>>,
    /// What redoing would do again; null when nothing was undone.
    pub redo: Option<Vec<Changed>>,
    /// Whether what could be done otherwise has been worked out: what would make the wall longer,
    /// the curve of chance, what would help on the day.
    pub advised: bool,
    /// The date on this machine, as `2027-04-24`: what is due before it is late.
    pub today: String,
    /// Every value of the course file as typed, by key.
    pub values: BTreeMap<String, String>,
    /// What of the instructor's own lessons, tables and templates can't be used; the built-in
    /// ones count.
    pub own: Vec<Trouble>,
    /// Whether students are named one by one.
    pub roster: bool,
    /// The students' names in their order: whose pages may be chosen.
    pub students: Vec<String>,
    /// What the tables offer to choose from.
    pub choices: Choices,
    /// The kit rules as they hold for this course.
    pub rules: Vec<Rule>,
    /// The plan's numbers it goes by.
    pub plan: Numbers,
    /// The same as a person reads it.
    pub written: Written,
    /// The drawings.
    pub drawings: Drawings,
    /// What can be taken hold of in them.
    pub handles: Handles,
    /// What the last change moved, as `stone 12.4 t -> 13.9 t`.
    pub moved: Vec<Moved>,
}

/// The drawings of a course as SVG.
#[derive(Debug, Clone, Serialize, TS)]
#[allow(missing_docs)]
pub struct Drawings {
    pub section: String,
    pub elevation: String,
    pub line_plan: String,
    pub setting_out: String,
    pub frame: String,
    pub gauge: String,
    pub heap_plan: String,
    pub timetable: String,
    /// Null where only one length was asked.
    pub chance_curve: Option<String>,
    /// Null before anything was told.
    pub progress: Option<String>,
}

/// A value of the course file that a change set to something else, as typed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct Changed {
    /// Its key, as `wall.height`.
    pub key: String,
    /// What it was; null for one that was not there.
    pub from: Option<String>,
    /// What it is; null for one that is no longer there.
    pub to: Option<String>,
}

/// A figure that the last change moved.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
#[allow(missing_docs)]
pub struct Moved {
    pub what: String,
    pub before: String,
    pub after: String,
}

/// A refusal, ready to show.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct Trouble {
    /// A fixed word; the window may branch on this, never on a sentence.
    pub code: String,
    /// The key of the course file it is about; empty if it is about none.
    pub key: String,
    /// What is wrong.
    pub what: String,
    /// What would be right.
    pub cure: String,
}

/// The figures a change is told by: the headlines of a plan, before and after.
pub fn moved(before: &Written, after: &Written) -> Vec<Moved> {
    let headline = |it: &Written| {
        [
            ("length", it.wall.length.clone()),
            ("base width", it.wall.base_width.clone()),
            ("stone built in", it.stone.built.clone()),
            ("stone to order", it.stone.high.clone()),
            ("frames", it.frames.count.to_string()),
            (
                "bars",
                it.frames
                    .bars
                    .as_ref()
                    .map(|bars| bars.length.clone())
                    .unwrap_or_default(),
            ),
            ("throughs", it.stone.through_count.to_string()),
            ("copes", it.stone.copes.to_string()),
            ("chance", it.chance.chance.clone()),
            ("short tools", it.kit.short.to_string()),
        ]
    };
    headline(before)
        .into_iter()
        .zip(headline(after))
        .filter(|((_, before), (_, after))| before != after)
        .map(|((what, before), (_, after))| Moved {
            what: what.to_owned(),
            before,
            after,
        })
        .collect()
}
