//! The courses of an instructor as the window shows them: those opened lately, the examples, and
//! what is asked for a new one.

use super::Trouble;
use crate::written::{ToDo, Written};
use serde::Serialize;
use std::collections::BTreeMap;
use ts_rs::TS;

/// What there is to open.
#[derive(Debug, Clone, Serialize, TS)]
pub struct YourCourses {
    /// Nothing of the person's own lies on the desk yet.
    pub start_here: bool,
    /// Newest first.
    pub recent: Vec<RecentCourse>,
    /// What came with the program.
    pub examples: Vec<ExampleCourse>,
    /// What became of a list that could not be read; empty if it could.
    pub notice: String,
}

/// A course opened lately.
#[derive(Debug, Clone, Serialize, TS)]
pub struct RecentCourse {
    /// Its file, as the list knows it.
    pub path: String,
    /// The file's name.
    pub file: String,
    /// The folder it lies in.
    pub folder: String,
    /// What it is called.
    pub title: String,
    /// Where it is held.
    pub place: String,
    /// All its dates in short.
    pub dates: String,
    /// The first day that is offered for the same course again, as `2028-04-22`.
    pub again: String,
    /// It lies on the desk.
    pub open: bool,
    /// Why it can't be opened; null if it can.
    pub trouble: Option<Trouble>,
}

/// An example course.
#[derive(Debug, Clone, Serialize, TS)]
pub struct ExampleCourse {
    /// The word by which it is opened.
    pub name: String,
    /// What it is called.
    pub title: String,
    /// What it shows.
    pub about: String,
}

/// How ready a course is, at a glance.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct Readiness {
    /// `3 to do, 1 late`, `nothing left to do`, `over`.
    pub words: String,
    /// Something should have been done by now.
    pub late: bool,
}

/// What a new course may be answered with.
#[derive(Debug, Clone, Serialize, TS)]
pub struct BeginChoices {
    /// By the key of the course file that it becomes.
    pub usual: BTreeMap<String, String>,
    /// Countries whose emergency number is known.
    pub countries: Vec<CountryChoice>,
    /// Every time zone.
    pub zones: Vec<String>,
    /// Kinds of stone: the word of the course file, and what a person reads.
    pub rocks: Vec<(String, String)>,
}

/// A country, and what goes with it.
#[derive(Debug, Clone, Serialize, TS)]
pub struct CountryChoice {
    /// Two letters.
    pub code: String,
    /// What a person reads.
    pub name: String,
    /// The units it builds in.
    pub units: String,
    /// Whether its courses have American spelling, dates and times.
    pub american: bool,
    /// Its time zones, the usual one first.
    pub zones: Vec<String>,
}

/// What some answers come to.
#[derive(Debug, Clone, Serialize, TS)]
pub struct AnswersChecked {
    /// What can't be, each at its key.
    pub troubles: Vec<Trouble>,
    /// The course they make; null while something can't be.
    pub comes_to: Option<ComesTo>,
}

/// The headlines of a course that is not made yet.
#[derive(Debug, Clone, Serialize, TS)]
#[allow(missing_docs)]
pub struct ComesTo {
    pub dates: String,
    pub group: String,
    pub length: String,
    /// Why it is that long.
    pub reason: String,
    pub height: String,
    pub chance: String,
    pub stone: String,
    pub frames: usize,
    /// What to mind in this plan.
    pub to_mind: Vec<String>,
}

impl Readiness {
    /// `last_day` and `today` as `2027-04-24`. What is left to do of a course that is over is
    /// no longer told.
    pub fn of(to_do: &[ToDo], last_day: &str, today: &str) -> Self {
        if last_day < today {
            return Self {
                words: "over".to_owned(),
                late: false,
            };
        }
        let left: Vec<&ToDo> = to_do.iter().filter(|it| it.counts).collect();
        let is_late = |it: &&&ToDo| !it.date.is_empty() && it.date.as_str() < today;
        let late = left.iter().filter(is_late).count();
        let words = match (left.len(), late) {
            (0, _) => "nothing left to do".to_owned(),
            (left, 0) => format!("{left} to do"),
            (left, late) => format!("{left} to do, {late} late"),
        };
        Self {
            words,
            late: 0 < late,
        }
    }
}

impl ComesTo {
    /// Of a plan as it is written.
    pub fn of(written: &Written) -> Self {
        Self {
            dates: written.dates.clone(),
            group: written.group.clone(),
            length: written.wall.length.clone(),
            reason: written.wall.reason.clone(),
            height: written.wall.height.clone(),
            chance: written.chance.chance.clone(),
            stone: written.stone.high.clone(),
            frames: written.frames.count,
            to_mind: written
                .cautions
                .iter()
                .filter(|it| it.of_this_plan)
                .map(|it| it.text.clone())
                .collect(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn to_do(counts: bool, date: &str) -> ToDo {
        ToDo {
            id: String::new(),
            part: String::new(),
            text: String::new(),
            by: String::new(),
            date: date.to_owned(),
            done: !counts,
            counts,
        }
    }

    #[test]
    fn what_is_late_is_told_apart() {
        let due = ["2027-04-01", "2027-04-09", "2027-04-10", ""].map(|date| to_do(true, date));
        let done = to_do(false, "2027-04-01");
        let told = |list: &[ToDo], today: &str| Readiness::of(list, "2027-04-25", today).words;
        assert_eq!(told(&due, "2027-04-10"), "4 to do, 2 late");
        assert_eq!(told(&due, "2027-04-01"), "4 to do");
        assert_eq!(told(&[done], "2027-04-10"), "nothing left to do");
        assert_eq!(told(&due, "2027-04-25"), "4 to do, 3 late");
        assert_eq!(told(&due, "2027-04-26"), "over");
    }
}
