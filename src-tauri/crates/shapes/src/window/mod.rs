//! What the desktop program and its window say to each other.

mod pace;
mod rules;
mod store;

pub use pace::{PaceBook, PaceCourse, PaceRow};
pub use rules::{Rule, RuleKey};
pub use store::{
    BookedCourse, BookedItem, CountedHome, KitListPreview, KitStore, Lot, LotTyped, ReturnTyped,
};

use crate::plan::Plan;
use crate::written::Written;
use craft::quantity::Read;
use craft::tables::{Bar, Lesson, Per, Rock, Tables};
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
    /// Whether there is something to undo.
    pub can_undo: bool,
    /// Whether there is something to redo.
    pub can_redo: bool,
    /// The date on this machine, as `2027-04-24`: what is due before it is late.
    pub today: String,
    /// Every value of the course file as typed, by key.
    pub values: BTreeMap<String, String>,
    /// Whether students are named one by one.
    pub roster: bool,
    /// What the tables offer to choose from.
    pub choices: Choices,
    /// The kit rules as they hold for this course.
    pub rules: Vec<Rule>,
    /// Every number of the plan.
    pub plan: Plan,
    /// The same as a person reads it.
    pub written: Written,
    /// The drawings.
    pub drawings: Drawings,
    /// What the last change moved, as `stone 12.4 t -> 13.9 t`.
    pub moved: Vec<Moved>,
}

/// What the tables offer, each as the word of the course file and the name a person reads.
#[derive(Debug, Clone, Serialize, TS)]
#[allow(missing_docs)]
pub struct Choices {
    pub rocks: Vec<(String, String)>,
    pub bars: Vec<(String, String)>,
    /// What a kit rule counts by.
    pub pers: Vec<String>,
    pub lessons: Vec<(String, String)>,
    /// Stages that can be done before the course.
    pub beforehand: Vec<(String, String)>,
}

impl Choices {
    /// What the tables hold.
    pub fn of(tables: &Tables) -> Self {
        let rock = |rock: &Rock| (rock.key.clone(), rock.name.clone());
        let bar = |bar: &Bar| {
            let millimetres = bar.diameter.si() * 1000.0;
            (
                bar.key.clone(),
                format!("{} ({millimetres:.0} mm across)", bar.key),
            )
        };
        let beforehand = tables.stages.iter().filter(|stage| stage.beforehand);
        let lesson = |it: &Lesson| (it.id.clone(), it.title.clone());
        Self {
            rocks: tables.stone.rocks.iter().map(rock).collect(),
            bars: tables.bars.iter().map(bar).collect(),
            pers: Per::ALL.iter().map(|per| per.word().to_owned()).collect(),
            lessons: tables.lessons.iter().map(lesson).collect(),
            beforehand: beforehand
                .map(|stage| (stage.id.clone(), stage.name.clone()))
                .collect(),
        }
    }
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

/// A figure that the last change moved.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
#[allow(missing_docs)]
pub struct Moved {
    pub what: String,
    pub before: String,
    pub after: String,
}

/// A refusal, ready to show.
#[derive(Debug, Clone, Serialize, TS)]
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

/// A document that can be printed.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "DocumentName")]
pub struct Document {
    /// Its file's name without the ending.
    pub name: String,
    /// What a person reads.
    pub title: String,
    /// What it is for.
    pub what: String,
}

/// Documents that were printed.
#[derive(Debug, Clone, Serialize, TS)]
pub struct Printed {
    /// The folder they are in.
    pub folder: String,
    /// Their files' names.
    pub files: Vec<String>,
    /// Characters that no bundled font holds, if any; a sign stands in their place.
    pub unprintable: String,
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
