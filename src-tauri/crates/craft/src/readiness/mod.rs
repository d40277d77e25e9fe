//! What is not ready: one list across all parts of a course, by date.
//!
//! Three kinds of entries stand in it: what the plan works out (stone to order, tools short),
//! what tools want before they leave (charge, sharpen), and what has to be arranged, from the
//! table. The instructor's marks in the course file say what of it is done.

mod arranged;
mod marks;
#[cfg(test)]
mod tests;
mod tools;
mod worked_out;

pub use crate::tables::Part;
pub use marks::{check_marks, known_ids};
pub use worked_out::WORKED_OUT;

use crate::conditions::Conditions;
use crate::course::Course;
use crate::deliveries::{Delivery, working_days_before};
use crate::frames::Frames;
use crate::kit::KitLine;
use crate::loads::Loads;
use crate::money::Money;
use crate::pace::{Entry, Forecast, fixed};
use crate::people;
use crate::retaining::Retaining;
use crate::stone::Stone;
use crate::tables::{Lesson, ReadyTable};
use crate::timber::TimberPlan;
use chrono::{Days, NaiveDate};
use std::collections::HashSet;

/// One thing to see to.
#[derive(Debug, Clone, PartialEq)]
pub struct ToDo {
    /// A word for it that stays, unique in the list: `stone`, `kit:walling-hammer`.
    pub id: String,
    /// Where it belongs.
    pub part: Part,
    /// What, with the numbers.
    pub text: String,
    /// By when, where that matters.
    pub by: Option<NaiveDate>,
    /// The instructor has marked it done.
    pub done: bool,
    /// It keeps the course from being ready. What is done does not; nor does what has to be
    /// arranged or prepared while the instructor keeps no list of what is done, for then
    /// nobody knows.
    pub counts: bool,
}

impl ToDo {
    /// What the plan itself shows to be missing.
    fn found(id: impl Into<String>, part: Part, text: String) -> Self {
        Self {
            id: id.into(),
            part,
            text,
            by: None,
            done: false,
            counts: true,
        }
    }

    /// What only the instructor knows to be done.
    fn reminder(id: impl Into<String>, part: Part, text: String, course: &Course) -> Self {
        Self {
            counts: course.ready.is_some(),
            ..Self::found(id, part, text)
        }
    }

    fn by(self, by: Option<NaiveDate>) -> Self {
        Self { by, ..self }
    }
}

/// What of a plan there is something to see to about.
#[derive(Debug, Clone, Copy)]
pub struct Planned<'a> {
    /// The stone of the wall.
    pub stone: &'a Stone,
    /// What is ordered.
    pub deliveries: &'a [Delivery],
    /// The bank behind it.
    pub retaining: Option<&'a Retaining>,
    /// The frames.
    pub frames: &'a Frames,
    /// The timber ones among them.
    pub timber: Option<&'a TimberPlan>,
    /// The tools.
    pub kit: &'a [KitLine],
    /// What they travel in.
    pub loads: Option<&'a Loads>,
    /// What it costs.
    pub money: Option<&'a Money>,
    /// The chance of finishing.
    pub forecast: &'a Forecast,
    /// The same from where the wall stands, once something has been built.
    pub from_here: Option<&'a Forecast>,
    /// The days by the clock.
    pub timetable: &'a [Entry],
    /// Lessons that can't be given when they are wished.
    pub wishes: &'a [fixed::Unmet],
    /// Wishes that the pairs do not meet.
    pub pairs: &'a [people::Unmet],
    /// The lessons there are.
    pub lessons: &'a [Lesson],
    /// What holds of the course.
    pub conditions: &'a Conditions,
    /// What has to be arranged, and the times it takes.
    pub ready: &'a ReadyTable,
}

/// Everything to see to, by date and then in the order of the work: what is ordered, what is
/// borrowed, what is prepared, what is arranged; last what has no date.
pub fn to_do(course: &Course, planned: Planned<'_>) -> Vec<ToDo> {
    let dates = Dates::of(course);
    let mut list = worked_out::worked_out(course, planned, &dates);
    list.extend(tools::tools(course, planned, &dates));
    list.extend(arranged::arranged(course, planned, &dates));
    tell_apart(&mut list);
    let done = course.ready.as_ref().map(|ready| &ready.done[..]);
    for it in &mut list {
        it.done = done.unwrap_or_default().contains(&it.id);
        it.counts &= !it.done;
    }
    list.sort_by_key(|it| (it.by.is_none(), it.by));
    list
}

/// A second entry of one id gets a number behind it, so that each can be marked by itself.
fn tell_apart(list: &mut [ToDo]) {
    let mut seen: HashSet<String> = HashSet::new();
    for it in list {
        let (id, mut number) = (it.id.clone(), 2);
        while !seen.insert(it.id.clone()) {
            it.id = format!("{id}-{number}");
            number += 1;
        }
    }
}

/// The dates of a course by which things are seen to.
struct Dates {
    first: Option<NaiveDate>,
    last: Option<NaiveDate>,
    closed: Vec<NaiveDate>,
}

impl Dates {
    fn of(course: &Course) -> Self {
        Self {
            first: course.days.first().map(|day| day.date),
            last: course.days.last().map(|day| day.date),
            closed: course.stone.closed.clone(),
        }
    }

    /// So many calendar days before the course.
    fn before(&self, days: u32) -> Option<NaiveDate> {
        let first = self.first?;
        first
            .checked_sub_days(Days::new(days.into()))
            .or(Some(first))
    }

    /// So many working days before the course.
    fn working_days_before(&self, days: u32) -> Option<NaiveDate> {
        let first = self.first?;
        Some(working_days_before(first, days, &self.closed))
    }

    /// So many calendar days after the course.
    fn after(&self, days: u32) -> Option<NaiveDate> {
        let last = self.last?;
        last.checked_add_days(Days::new(days.into())).or(Some(last))
    }
}

/// A name as part of an id: letters and figures in lower case, hyphens for the rest.
fn hyphened(name: &str) -> String {
    let words = name.split(|sign: char| !sign.is_alphanumeric());
    let words: Vec<String> = words
        .filter(|word| !word.is_empty())
        .map(str::to_lowercase)
        .collect();
    words.join("-")
}
