//! One day's fixed times: what the file gives, talks by wish, the opening talks, added breaks.

use super::{Asked, Fixed, Unmet, What, Why, rests};
use crate::course::{Day, Wish};
use crate::pace::calendar::{Span, day_at, left_of, minutes_to};
use crate::tables::{Before, Lesson};

pub(super) struct OneDay<'a> {
    asked: &'a Asked<'a>,
    number: usize,
    day: &'a Day,
    /// From arriving to leaving.
    hours: Span,
    /// Until when there is building.
    close: f64,
    fixed: Vec<Fixed>,
    unmet: Vec<Unmet>,
    /// Of the days before, what was wished there: lesson and day.
    given: Vec<(usize, usize)>,
    /// Talks that open the course whatever is wished.
    anyway: &'a [usize],
}

impl<'a> OneDay<'a> {
    pub(super) fn new(
        asked: &'a Asked<'a>,
        number: usize,
        before: &[Fixed],
        anyway: &'a [usize],
    ) -> Self {
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
            unmet: Vec::new(),
            given: before
                .iter()
                .filter_map(|it| match it.what {
                    What::Lesson {
                        lesson,
                        wished: true,
                    } => Some((lesson, day_at(asked.days, it.span.from))),
                    _ => None,
                })
                .collect(),
            anyway,
        }
    }

    /// What stands at fixed times on the day, in order, and the wishes that can't be had.
    pub(super) fn arranged(mut self) -> (Vec<Fixed>, Vec<Unmet>) {
        self.wished_at_a_time();
        self.opening();
        self.wished_first_thing();
        self.short_breaks();
        self.fixed
            .sort_by(|a, b| a.span.from.total_cmp(&b.span.from));
        (self.fixed, self.unmet)
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

    fn wished_at_a_time(&mut self) {
        for (wish, given, lesson) in self.wishes(true) {
            let at = given.at.unwrap_or(self.day.start);
            let from = minutes_to(self.asked.days, self.day.date, at);
            let span = Span {
                from,
                to: from + f64::from(self.asked.lessons[lesson].minutes),
            };
            match self.already(lesson).or_else(|| self.against(span, lesson)) {
                None => self.give(span, lesson, true),
                Some(why) => self.unmet.push(Unmet { wish, why }),
            }
        }
    }

    /// A lesson is wished once; only what opens each day comes again, and never twice a day.
    fn already(&self, lesson: usize) -> Option<Why> {
        let again = self.asked.lessons[lesson].before == Before::EachDay;
        let mut before = self.given.iter();
        let earlier = before.find(|(given, _)| *given == lesson && !again);
        let day = earlier.map(|(_, day)| *day);
        day.or(self.is_given(lesson).then_some(self.number))
            .map(Why::GivenOn)
    }

    fn is_given(&self, number: usize) -> bool {
        let mut fixed = self.fixed.iter();
        fixed.any(|it| matches!(it.what, What::Lesson { lesson, .. } if lesson == number))
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

    /// The talks that open the course or a later day, one after another. One that is wished on
    /// this day takes the place of its own opening.
    fn opening(&mut self) {
        let when = if self.number == 0 {
            Before::Course
        } else {
            Before::EachDay
        };
        let lessons = self.asked.lessons;
        for (number, lesson) in lessons.iter().enumerate() {
            let due = lesson.before == when && !self.left_out(lesson);
            let mut first = self.wishes(false).into_iter();
            let elsewhere =
                self.number == 0 && self.is_wished(lesson) && !self.anyway.contains(&number);
            let wished = self.is_given(number) || first.any(|(_, _, it)| it == number);
            if !due || elsewhere || wished {
                continue;
            }
            self.open_with(number, false);
        }
    }

    /// A day too full for its opening talk gives it all the room there is.
    fn open_with(&mut self, lesson: usize, wished: bool) {
        let free = self.free();
        let minutes = f64::from(self.asked.lessons[lesson].minutes);
        let whole = free.iter().find(|it| minutes <= it.to - it.from);
        if let Some(span) = whole.or(free.first()) {
            let to = span.to.min(span.from + minutes);
            self.give(Span { to, ..*span }, lesson, wished);
        }
    }

    fn wished_first_thing(&mut self) {
        for (wish, _, lesson) in self.wishes(false) {
            if let Some(why) = self.against_first_thing(lesson) {
                self.unmet.push(Unmet { wish, why });
                continue;
            }
            let minutes = f64::from(self.asked.lessons[lesson].minutes);
            let free = self.free();
            let room = free.iter().find(|it| minutes <= it.to - it.from);
            let opens = 0 < self.number && self.asked.lessons[lesson].before == Before::EachDay;
            match room {
                Some(span) => {
                    let to = span.from + minutes;
                    self.give(Span { to, ..*span }, lesson, true);
                }
                None if opens => self.open_with(lesson, true),
                None => self.unmet.push(Unmet {
                    wish,
                    why: Why::NoRoom,
                }),
            }
        }
    }

    /// Why a lesson can't be given first thing, whatever room there is.
    fn against_first_thing(&self, lesson: usize) -> Option<Why> {
        if self.left_out(&self.asked.lessons[lesson]) {
            return Some(Why::LeftOut);
        }
        self.already(lesson)
            .or_else(|| self.opens_in_place_of(lesson))
    }

    /// The talk that opens the course opens its first day; another briefing right after it would
    /// say the same again.
    fn opens_in_place_of(&self, lesson: usize) -> Option<Why> {
        let lessons = self.asked.lessons;
        if self.number != 0 || lessons[lesson].before != Before::EachDay {
            return None;
        }
        let mut numbers = 0..lessons.len();
        let opens = numbers
            .find(|number| lessons[*number].before == Before::Course && self.is_given(*number))?;
        Some(Why::OpensWith(lessons[opens].title.clone()))
    }

    fn give(&mut self, span: Span, lesson: usize, wished: bool) {
        self.fixed.push(Fixed {
            span,
            what: What::Lesson { lesson, wished },
        });
    }

    /// Breaks in every stretch that is too long without one.
    fn short_breaks(&mut self) {
        if !self.asked.running.short_breaks {
            return;
        }
        let is_break = |it: &&Fixed| matches!(it.what, What::Break { .. });
        let breaks = self.fixed.iter().filter(is_break);
        let breaks: Vec<Span> = breaks.map(|it| it.span).collect();
        let rests = self.asked.rests;
        let free = self.free();
        for long in left_of(self.hours, &breaks) {
            let added = rests::within(long, &free, rests);
            self.fixed.extend(added.into_iter().map(|span| Fixed {
                span,
                what: What::Break {
                    name: rests.name.clone(),
                    added: true,
                },
            }));
        }
    }
}
