//! What stands at fixed times: breaks, tidying, the talks that open a day, talks by wish.

use super::calendar::{Span, left_of, minutes_to};
use crate::course::{Day, Running, Wish};
use crate::tables::{Before, Lesson, Rests};

/// Times on paper go to the quarter hour (common practice, no source).
pub const QUARTER: f64 = 15.0;

/// A break found no place at its time may move by so many quarter hours.
const MOVES: i32 = 3;

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
        let mut timed = Self::default();
        for day in 0..asked.days.len() {
            let mut one = OneDay::new(asked, day);
            one.wished_at_a_time(&mut timed.unmet);
            one.opening();
            one.wished_first_thing(&mut timed.unmet);
            one.short_breaks();
            one.fixed
                .sort_by(|a, b| a.span.from.total_cmp(&b.span.from));
            timed.fixed.append(&mut one.fixed);
        }
        timed
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

struct OneDay<'a> {
    asked: &'a Asked<'a>,
    number: usize,
    day: &'a Day,
    /// From arriving to leaving.
    hours: Span,
    /// Until when there is building.
    close: f64,
    fixed: Vec<Fixed>,
}

impl<'a> OneDay<'a> {
    fn new(asked: &'a Asked<'a>, number: usize) -> Self {
        let day = &asked.days[number];
        let at = |time| minutes_to(asked.days, day.date, time);
        let hours = Span {
            from: at(day.start),
            to: at(day.finish),
        };
        let close = hours.from.max(hours.to - asked.tidy);
        let breaks: Vec<Fixed> = day
            .breaks
            .iter()
            .map(|it| Fixed {
                span: Span {
                    from: at(it.start),
                    to: at(it.start) + f64::from(it.minutes),
                },
                what: What::Break {
                    name: it.name.clone(),
                    added: false,
                },
            })
            .collect();
        let taken: Vec<Span> = breaks.iter().map(|it| it.span).collect();
        let tidying = left_of(
            Span {
                from: close,
                to: hours.to,
            },
            &taken,
        );
        let tidy = tidying.into_iter().map(|span| Fixed {
            span,
            what: What::Tidy,
        });
        let fixed = tidy.chain(breaks).collect();
        Self {
            asked,
            number,
            day,
            hours,
            close,
            fixed,
        }
    }

    fn free(&self) -> Vec<Span> {
        let closed: Vec<Span> = self.fixed.iter().map(|it| it.span).collect();
        left_of(
            Span {
                from: self.hours.from,
                to: self.close,
            },
            &closed,
        )
    }

    fn wishes(&self, timed: bool) -> Vec<(usize, &'a Wish, usize)> {
        let lessons = self.asked.lessons;
        let wishes = self.asked.running.wishes.iter().enumerate();
        wishes
            .filter(|(_, wish)| wish.day == self.number && wish.at.is_some() == timed)
            .filter_map(|(at, wish)| {
                let lesson = lessons.iter().position(|it| it.id == wish.lesson)?;
                Some((at, wish, lesson))
            })
            .collect()
    }

    fn wished_at_a_time(&mut self, unmet: &mut Vec<Unmet>) {
        for (wish, given, lesson) in self.wishes(true) {
            let at = given.at.unwrap_or(self.day.start);
            let from = minutes_to(self.asked.days, self.day.date, at);
            let span = Span {
                from,
                to: from + f64::from(self.asked.lessons[lesson].minutes),
            };
            match self.against(span, lesson) {
                None => self.give(span, lesson, true),
                Some(why) => unmet.push(Unmet { wish, why }),
            }
        }
    }

    /// Why a lesson can't be given just then, if it can't.
    fn against(&self, span: Span, lesson: usize) -> Option<Why> {
        if self.left_out(&self.asked.lessons[lesson]) {
            return Some(Why::LeftOut);
        }
        if span.from < self.hours.from || self.close < span.to {
            return Some(Why::OutsideHours(Span {
                from: self.hours.from,
                to: self.close,
            }));
        }
        let other = self
            .fixed
            .iter()
            .find(|it| span.from < it.span.to && it.span.from < span.to)?;
        Some(match &other.what {
            What::Break { name, .. } => Why::IntoBreak(name.clone()),
            What::Lesson { lesson, .. } => Why::IntoWish(self.asked.lessons[*lesson].title.clone()),
            What::Tidy => Why::NoRoom,
        })
    }

    fn left_out(&self, lesson: &Lesson) -> bool {
        self.asked.running.left_out.contains(&lesson.id)
    }

    fn is_wished(&self, lesson: &Lesson) -> bool {
        let mut wishes = self.asked.running.wishes.iter();
        wishes.any(|wish| wish.lesson == lesson.id)
    }

    /// The talks that open the course or a later day, one after another.
    fn opening(&mut self) {
        let when = if self.number == 0 {
            Before::Course
        } else {
            Before::EachDay
        };
        let lessons = self.asked.lessons;
        for (number, lesson) in lessons.iter().enumerate() {
            let given = lesson.before == when && !self.left_out(lesson);
            if !given || (self.number == 0 && self.is_wished(lesson)) {
                continue;
            }
            let free = self.free();
            let minutes = f64::from(lesson.minutes);
            let whole = free.iter().find(|it| minutes <= it.to - it.from);
            // A day too full for its opening talk gives it all the room there is.
            if let Some(span) = whole.or(free.first()) {
                let to = span.to.min(span.from + minutes);
                self.give(Span { to, ..*span }, number, false);
            }
        }
    }

    fn wished_first_thing(&mut self, unmet: &mut Vec<Unmet>) {
        for (wish, _, lesson) in self.wishes(false) {
            if self.left_out(&self.asked.lessons[lesson]) {
                unmet.push(Unmet {
                    wish,
                    why: Why::LeftOut,
                });
                continue;
            }
            let minutes = f64::from(self.asked.lessons[lesson].minutes);
            let free = self.free();
            match free.iter().find(|it| minutes <= it.to - it.from) {
                Some(span) => {
                    let to = span.from + minutes;
                    self.give(Span { to, ..*span }, lesson, true);
                }
                None => unmet.push(Unmet {
                    wish,
                    why: Why::NoRoom,
                }),
            }
        }
    }

    fn give(&mut self, span: Span, lesson: usize, wished: bool) {
        self.fixed.push(Fixed {
            span,
            what: What::Lesson { lesson, wished },
        });
    }

    /// Breaks in every stretch that is too long without one, at equal distances.
    fn short_breaks(&mut self) {
        let rests = self.asked.rests;
        if !self.asked.running.short_breaks {
            return;
        }
        let is_break = |it: &&Fixed| matches!(it.what, What::Break { .. });
        let breaks: Vec<Span> = self
            .fixed
            .iter()
            .filter(is_break)
            .map(|it| it.span)
            .collect();
        for long in left_of(self.hours, &breaks) {
            let minutes = long.to - long.from;
            if minutes <= rests.longest + rests.grace {
                continue;
            }
            let count = (minutes / rests.longest).ceil() - 1.0;
            let numbers = (1_u32..).map(f64::from).take_while(|it| *it <= count);
            for number in numbers {
                let about = long.from + minutes * number / (count + 1.0);
                self.rest_about(about);
            }
        }
    }

    /// A short break as near to a time as there is room, on the quarter hour.
    fn rest_about(&mut self, about: f64) {
        let rests = self.asked.rests;
        let wanted = ((about - rests.minutes / 2.0) / QUARTER).round() * QUARTER;
        let free = self.free();
        let has_room = |from: &f64| {
            let inside = |span: &Span| span.from <= *from && *from + rests.minutes <= span.to;
            free.iter().any(inside)
        };
        let near = (0..=MOVES).flat_map(|by| [by, -by]);
        let mut tried = near.map(|by| wanted + QUARTER * f64::from(by));
        if let Some(from) = tried.find(has_room) {
            self.fixed.push(Fixed {
                span: Span {
                    from,
                    to: from + rests.minutes,
                },
                what: What::Break {
                    name: rests.name.clone(),
                    added: true,
                },
            });
        }
    }
}
