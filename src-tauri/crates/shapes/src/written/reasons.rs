//! Why a figure is what it is: the sentence, the sum with this course's numbers put in, the sources.
//!
//! Every figure of a sum is the plan's own, written as it is written everywhere else. A check from
//! outside reads each line and works it out again.

mod frames;
mod line;
mod others;
mod stone;
mod time;
mod wall;

use super::Written;
use crate::clock::{Clock, DateStyle};
use craft::course::Course;
use craft::plan::Plan;
use craft::quantity::{
    Area, Length, Mass, Units, Volume, show_area, show_length, show_mark, show_mass, show_volume,
};
use craft::tables::Tables;
use serde::Serialize;
use ts_rs::TS;

/// Why one figure is what it is.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct Reason {
    /// A fixed word for programs, as `length`.
    pub id: String,
    /// What the figure is of.
    pub title: String,
    /// The figure as it is shown.
    pub figure: String,
    /// The reason in words; the first sentence is the answer.
    pub sentences: Vec<String>,
    /// The sum, line by line.
    pub steps: Vec<ReasonStep>,
    /// What went in that nobody gave, and who says so.
    pub sources: Vec<ReasonSource>,
}

/// One line of a sum.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct ReasonStep {
    /// What it works out.
    pub what: String,
    /// `2 × 1.07 m / 6 + 0.41 m = 0.767 m`; `9.00 m / 3.00 m = 3, rounded up: 3`.
    pub line: String,
}

/// A figure that went in, and who says so.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct ReasonSource {
    /// What it is; with its figure where it has one.
    pub what: String,
    /// Who says so.
    pub source: String,
}

/// The reasons of all figures of a course that somebody might doubt, in the order of the places.
pub fn reasons(
    plan: &Plan,
    course: &Course,
    tables: &Tables,
    written: &Written,
    style: DateStyle,
) -> Vec<Reason> {
    let of = Of {
        plan,
        course,
        tables,
        written,
        clock: Clock::new(course, style),
    };
    [
        time::reasons(&of),
        wall::reasons(&of),
        frames::reasons(&of),
        stone::reasons(&of),
        others::reasons(&of),
    ]
    .concat()
}

/// What reasons are read off.
struct Of<'a> {
    plan: &'a Plan,
    course: &'a Course,
    tables: &'a Tables,
    written: &'a Written,
    clock: Clock,
}

impl Of<'_> {
    fn units(&self) -> Units {
        self.course.units
    }

    fn length(&self, length: Length) -> String {
        show_length(length, self.units())
    }

    fn mark(&self, length: Length) -> String {
        show_mark(length, self.units())
    }

    fn mass(&self, mass: Mass) -> String {
        show_mass(mass, self.units())
    }

    fn volume(&self, volume: Volume) -> String {
        show_volume(volume, self.units())
    }

    fn area(&self, area: Area) -> String {
        show_area(area, self.units())
    }
}

impl Reason {
    fn new(id: &str, title: &str, figure: impl Into<String>) -> Self {
        Self {
            id: id.to_owned(),
            title: title.to_owned(),
            figure: figure.into(),
            sentences: Vec::new(),
            steps: Vec::new(),
            sources: Vec::new(),
        }
    }

    fn say(mut self, sentence: impl Into<String>) -> Self {
        self.sentences.push(sentence.into());
        self
    }

    fn step(mut self, what: impl Into<String>, line: String) -> Self {
        self.steps.push(ReasonStep {
            what: what.into(),
            line,
        });
        self
    }

    /// A source that is said already is not said again.
    fn source(mut self, what: impl Into<String>, source: impl Into<String>) -> Self {
        let row = ReasonSource {
            what: what.into(),
            source: source.into(),
        };
        if !self.sources.contains(&row) {
            self.sources.push(row);
        }
        self
    }

    /// The measures that are asked for, each with what holds while nothing is said.
    fn with_asked(self, what: &str, place: &str) -> Self {
        self.source(
            what,
            format!("as asked under {place}: given, or what is said there to hold while the question is left empty"),
        )
    }
}
