//! When there is time: the open stretches of the course days, and a walk through them.
//!
//! The same walk serves the simulated courses and the printed timetable. Positions are
//! minutes on the local wall clock since midnight of the first day, days at 1,440 minutes.

use crate::course::Day;
use crate::tables::{Before, Lesson};
use chrono::{NaiveDate, NaiveTime, Timelike};

/// Minutes in a day on the wall clock.
pub const DAY_MINUTES: f64 = 1440.0;

/// Minutes too few to count: a millionth of a second or so.
const NO_TIME: f64 = 1e-8;

/// A stretch of time in which work can go on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Open {
    /// Which day, counted from 0.
    pub day: usize,
    /// When it begins.
    pub from: f64,
    /// When it ends.
    pub to: f64,
    /// It opens its day.
    pub first_of_day: bool,
}

/// All open stretches, and the lesson that begins each later day.
#[derive(Debug, Clone, PartialEq)]
pub struct Calendar {
    open: Vec<Open>,
    /// For each stretch, how long the longest after it is.
    longest_after: Vec<f64>,
    morning: Vec<(usize, f64)>,
}

/// What a walk does with a piece of time.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Spent {
    /// Building the stage the walk was asked for.
    Work,
    /// The lesson the walk was asked for.
    Lesson,
    /// The lesson that begins each later day, by its number in the lesson table.
    Morning(usize),
    /// Too little is left before a break for the next lesson.
    Gap,
}

/// A place in the calendar that moves forward as time is spent.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Walk<'a> {
    calendar: &'a Calendar,
    stretch: usize,
    now: f64,
}

impl Calendar {
    /// The open stretches of `days`: their hours less breaks, and less the time it takes to
    /// tidy and make safe at the end of each.
    pub fn new(days: &[Day], lessons: &[Lesson], tidy_minutes: u32) -> Self {
        let mut open = Vec::new();
        for (number, day) in days.iter().enumerate() {
            let base = minutes_to(days, day.date, NaiveTime::MIN);
            let close = base + clock(day.finish) - f64::from(tidy_minutes);
            let mut from = base + clock(day.start);
            let mut first_of_day = true;
            let breaks = day
                .breaks
                .iter()
                .map(|it| (base + clock(it.start), f64::from(it.minutes)));
            for (start, minutes) in breaks.chain(std::iter::once((close, 0.0))) {
                let to = start.min(close);
                if from < to {
                    open.push(Open {
                        day: number,
                        from,
                        to,
                        first_of_day,
                    });
                    first_of_day = false;
                }
                from = from.max(start + minutes);
            }
        }
        let morning = lessons
            .iter()
            .enumerate()
            .filter(|(_, lesson)| lesson.before == Before::EachDay)
            .map(|(number, lesson)| (number, f64::from(lesson.minutes)))
            .collect();
        let mut longest_after = vec![0.0; open.len()];
        for stretch in (1..open.len()).rev() {
            let length = open[stretch].to - open[stretch].from;
            longest_after[stretch - 1] = f64::max(longest_after[stretch], length);
        }
        Self {
            open,
            longest_after,
            morning,
        }
    }

    /// The open stretches.
    pub fn open(&self) -> &[Open] {
        &self.open
    }

    fn longest_after(&self, stretch: usize) -> f64 {
        self.longest_after.get(stretch).copied().unwrap_or(0.0)
    }

    /// A walk that stands at the beginning.
    pub fn walk(&self) -> Walk<'_> {
        Walk {
            calendar: self,
            stretch: 0,
            now: self.open.first().map_or(f64::INFINITY, |open| open.from),
        }
    }
}

impl Walk<'_> {
    /// Where the walk stands; infinite when the course is over.
    pub fn now(&self) -> f64 {
        self.now
    }

    /// Works for so many minutes, across breaks and nights; tells `saw` of each piece.
    pub fn work(&mut self, minutes: f64, saw: &mut impl FnMut(Spent, f64, f64)) {
        self.spend(minutes, Spent::Work, saw);
    }

    /// Gives a lesson in one piece: if it does not fit before the next break it waits for
    /// the stretch after; a lesson longer than any stretch is cut by the break.
    pub fn lesson(&mut self, minutes: f64, saw: &mut impl FnMut(Spent, f64, f64)) {
        self.settle(saw);
        while let Some(open) = self.calendar.open.get(self.stretch) {
            let fits_here = self.now + minutes <= open.to;
            let fits_later = minutes <= self.calendar.longest_after(self.stretch);
            if fits_here || !fits_later {
                break;
            }
            saw(Spent::Gap, self.now, open.to);
            self.next_stretch(saw);
            self.settle(saw);
        }
        self.spend(minutes, Spent::Lesson, saw);
    }

    fn spend(&mut self, minutes: f64, what: Spent, saw: &mut impl FnMut(Spent, f64, f64)) {
        let mut left = minutes;
        // What is less than rounding leaves would never move the clock on.
        while NO_TIME < left {
            self.settle(saw);
            let Some(open) = self.calendar.open.get(self.stretch) else {
                self.now = f64::INFINITY;
                return;
            };
            let until = open.to.min(self.now + left);
            // Far from the first day a clock in minutes is coarser than what is left.
            if until <= self.now {
                return;
            }
            saw(what, self.now, until);
            left -= until - self.now;
            self.now = until;
        }
    }

    /// Leaves every stretch that is used up.
    fn settle(&mut self, saw: &mut impl FnMut(Spent, f64, f64)) {
        while self
            .calendar
            .open
            .get(self.stretch)
            .is_some_and(|open| open.to <= self.now)
        {
            self.next_stretch(saw);
        }
    }

    /// Goes to the next stretch; where that opens a new day, its lesson comes first.
    fn next_stretch(&mut self, saw: &mut impl FnMut(Spent, f64, f64)) {
        self.stretch += 1;
        let Some(next) = self.calendar.open.get(self.stretch) else {
            self.now = f64::INFINITY;
            return;
        };
        self.now = next.from;
        if next.first_of_day {
            for &(lesson, minutes) in &self.calendar.morning {
                let until = next.to.min(self.now + minutes);
                saw(Spent::Morning(lesson), self.now, until);
                self.now = until;
            }
        }
    }
}

/// A time of a course day in minutes since midnight of the first day.
pub fn minutes_to(days: &[Day], date: NaiveDate, time: NaiveTime) -> f64 {
    let first = days.first().map_or(date, |day| day.date);
    (date - first).num_days() as f64 * DAY_MINUTES + clock(time)
}

/// The course day that holds a position, counted from 0; the last one for a later position.
pub fn day_at(days: &[Day], minutes: f64) -> usize {
    days.iter()
        .rposition(|day| minutes_to(days, day.date, NaiveTime::MIN) <= minutes)
        .unwrap_or(0)
}

fn clock(time: NaiveTime) -> f64 {
    f64::from(time.num_seconds_from_midnight()) / 60.0
}
