//! What stands at fixed times: breaks, tidying, the talks that open a day, talks by wish.

mod one_day;
mod rests;
#[cfg(test)]
mod tests;

use super::calendar::Span;
use crate::course::{Day, Running};
use crate::tables::{Before, Lesson, Rests};
use one_day::OneDay;

/// Times on paper go to the quarter hour (common practice, no source).
pub const QUARTER: f64 = 15.0;

/// Something at a fixed time.
#[derive(Debug, Clone, PartialEq)]
pub struct Fixed {
    /// When.
    pub span: Span,
    /// What.
    pub what: What,
}

/// What stands at a fixed time.
#[derive(Debug, Clone, PartialEq)]
pub enum What {
    /// A break the course file gives, or one added so that nobody works too long.
    Break {
        /// Its name.
        name: String,
        /// It was added.
        added: bool,
    },
    /// A lesson, by its place in its table.
    Lesson {
        /// In the table of lessons.
        lesson: usize,
        /// The instructor wished it there.
        wished: bool,
    },
    /// Tools in, site made safe.
    Tidy,
}

/// A wish that can't be had.
#[derive(Debug, Clone, PartialEq)]
pub struct Unmet {
    /// Its place among the wishes.
    pub wish: usize,
    /// Why not.
    pub why: Why,
}

/// Why a wish can't be had.
#[derive(Debug, Clone, PartialEq)]
pub enum Why {
    /// It would begin before the day or end after its building time.
    OutsideHours(Span),
    /// It would run into a break of this name.
    IntoBreak(String),
    /// It would run into another wished lesson.
    IntoWish(String),
    /// No stretch of the day is long enough.
    NoRoom,
    /// It is left out of the course.
    LeftOut,
    /// It is given by another wish already, on this day, counted from 0.
    GivenOn(usize),
    /// The day opens with a talk of this title in its place.
    OpensWith(String),
    /// Nobody is there then.
    NobodyThere,
}

/// What stands at fixed times, and the wishes that can't.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Timed {
    /// In order of time.
    pub fixed: Vec<Fixed>,
    /// The wishes that can't be had.
    pub unmet: Vec<Unmet>,
}

/// What the fixed times are worked out from.
#[derive(Debug, Clone, Copy)]
pub struct Asked<'a> {
    /// The course days.
    pub days: &'a [Day],
    /// How they are run.
    pub running: &'a Running,
    /// The lessons.
    pub lessons: &'a [Lesson],
    /// How long people work without a break.
    pub rests: &'a Rests,
    /// Minutes to tidy at the end of each day.
    pub tidy: f64,
}

impl Timed {
    /// Everything that stands at a fixed time, day by day.
    pub fn of(asked: &Asked<'_>) -> Self {
        let timed = Self::day_by_day(asked, &[]);
        // A talk that opens the course is not lost because the time wished for it can't be had.
        let lost: Vec<usize> = (0..asked.lessons.len())
            .filter(|number| {
                let lesson = &asked.lessons[*number];
                lesson.before == Before::Course
                    && !asked.running.left_out.contains(&lesson.id)
                    && timed.lesson(*number).is_none()
            })
            .collect();
        if lost.is_empty() {
            return timed;
        }
        Self::day_by_day(asked, &lost)
    }

    /// The same, with these talks opening the course whatever is wished.
    fn day_by_day(asked: &Asked<'_>, anyway: &[usize]) -> Self {
        let mut timed = Self::default();
        for day in 0..asked.days.len() {
            let one = OneDay::new(asked, day, &timed.fixed, anyway);
            let (mut fixed, mut unmet) = one.arranged();
            timed.fixed.append(&mut fixed);
            timed.unmet.append(&mut unmet);
        }
        timed
    }

    /// Takes out what nobody would be there for, and added breaks from work that is not done.
    /// `shut` is when there is no work, `empty` when nobody is there.
    pub fn clear_of(&mut self, shut: &[Span], empty: &[Span], asked: &Asked<'_>) {
        let within = |span: Span, others: &[Span]| {
            let mut others = others.iter();
            others.any(|other| other.from <= span.from && span.to <= other.to)
        };
        let lost = |it: &Fixed| {
            let is_added = matches!(it.what, What::Break { added: true, .. });
            within(it.span, empty) || is_added && within(it.span, shut)
        };
        for it in self.fixed.iter().filter(|it| lost(it)) {
            let What::Lesson {
                lesson,
                wished: true,
            } = it.what
            else {
                continue;
            };
            let day = super::calendar::day_at(asked.days, it.span.from);
            let mut wishes = asked.running.wishes.iter();
            let id = &asked.lessons[lesson].id;
            let wish = wishes.position(|wish| wish.lesson == *id && wish.day == day);
            self.unmet.extend(wish.map(|wish| Unmet {
                wish,
                why: Why::NobodyThere,
            }));
        }
        self.fixed.retain(|it| !lost(it));
    }

    /// All of it as closed stretches.
    pub fn closed(&self) -> Vec<Span> {
        self.fixed.iter().map(|it| it.span).collect()
    }

    /// When a lesson is given, if at a fixed time.
    pub fn lesson(&self, number: usize) -> Option<Span> {
        let found = self
            .fixed
            .iter()
            .find(|it| matches!(it.what, What::Lesson { lesson, .. } if lesson == number));
        found.map(|it| it.span)
    }
}
