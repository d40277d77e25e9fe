//! When there is time: the open stretches of the course days, and how much gets done in them.
//!
//! Positions on the clock are minutes since midnight of the first day, days at 1,440 minutes.
//! *Working minutes* count what gets done: a minute at a rate of 0.5 is half a working minute.
//! The same calendar serves the simulated courses and the printed timetable.

mod hand;

pub use hand::Hand;

use crate::course::Day;
use chrono::{NaiveDate, NaiveTime, Timelike};

/// Minutes in a day on the wall clock.
pub const DAY_MINUTES: f64 = 1440.0;

/// Minutes as a clock without seconds shows them: to the nearest whole one, half a minute up.
/// Every time that people read goes through here, so that no two pages differ by a minute.
pub fn to_the_minute(minutes: f64) -> f64 {
    (minutes + 0.5).floor()
}

/// A stretch of the clock.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Span {
    /// When it begins.
    pub from: f64,
    /// When it ends.
    pub to: f64,
}

/// A stretch during which the group does more or less than usual in a minute.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rated {
    /// When.
    pub span: Span,
    /// So many times the usual.
    pub rate: f64,
}

/// An open stretch at one rate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Open {
    /// Which day, counted from 0.
    pub day: usize,
    /// When it begins.
    pub from: f64,
    /// When it ends.
    pub to: f64,
    /// Working minutes in a minute.
    pub rate: f64,
    /// Working minutes of the course before it.
    before: f64,
    /// When the open time it is part of ends, whatever the rates.
    until: f64,
    /// The longest unbroken open time after that, in minutes.
    longest_after: f64,
}

/// All open stretches of a course in order.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Calendar {
    open: Vec<Open>,
    /// Where each of them begins, on the clock and in working minutes: to look times up in.
    from: Vec<f64>,
    before: Vec<f64>,
}

impl Calendar {
    /// What is left of the days' hours when `closed` stretches are taken out, at the product of
    /// the rates that hold.
    pub fn new(days: &[Day], closed: &[Span], rated: &[Rated]) -> Self {
        let mut open = Vec::new();
        for (number, day) in days.iter().enumerate() {
            let hours = Span {
                from: minutes_to(days, day.date, day.start),
                to: minutes_to(days, day.date, day.finish),
            };
            for free in left_of(hours, closed) {
                open.extend(pieces(number, free, rated));
            }
        }
        Self::of(open)
    }

    /// Adds up what is before and after each stretch.
    fn of(open: Vec<Open>) -> Self {
        let mut calendar = Self {
            open,
            ..Self::default()
        };
        calendar.count();
        let column = |of: fn(&Open) -> f64| calendar.open.iter().map(of).collect();
        let (from, before) = (column(|it| it.from), column(|it| it.before));
        Self {
            from,
            before,
            ..calendar
        }
    }

    fn count(&mut self) {
        let mut before = 0.0;
        for open in &mut self.open {
            open.before = before;
            before += (open.to - open.from) * open.rate;
        }
        let mut longest = 0.0;
        let mut after = 0.0;
        let mut until = f64::INFINITY;
        for open in self.open.iter_mut().rev() {
            if (open.until - until).abs() > 0.0 {
                longest = f64::max(longest, after);
                until = open.until;
            }
            open.longest_after = longest;
            after = open.until - open.from;
        }
    }

    /// The open stretches.
    pub fn open(&self) -> &[Open] {
        &self.open
    }

    /// From when to when there is open time around a stretch, whatever the rates.
    pub fn unbroken(&self, open: &Open) -> (f64, f64) {
        let same = self.open.iter().filter(|it| it.until <= open.until);
        let first = same.filter(|it| open.until <= it.until).map(|it| it.from);
        (first.fold(open.from, f64::min), open.until)
    }

    /// The clock when the course begins; infinite without any open time.
    pub fn begins(&self) -> f64 {
        self.open.first().map_or(f64::INFINITY, |open| open.from)
    }

    /// The clock when the last open stretch ends.
    pub fn ends(&self) -> f64 {
        self.open.last().map_or(0.0, |open| open.to)
    }

    /// All working minutes.
    pub fn working(&self) -> f64 {
        let end = |open: &Open| open.before + (open.to - open.from) * open.rate;
        self.open.last().map_or(0.0, end)
    }

    /// Working minutes of one day, counted from 0.
    pub fn working_on(&self, day: usize) -> f64 {
        let of_day = self.open.iter().filter(|open| open.day == day);
        of_day.map(|open| (open.to - open.from) * open.rate).sum()
    }

    /// The earliest clock by which so many working minutes are over; infinite for more than
    /// there are. What rounding adds to the last of them does not count.
    pub fn clock_at(&self, working: f64) -> f64 {
        let at = less(&self.before, working);
        hand::clock_in(self.open.get(at.saturating_sub(1)), working)
    }

    /// Working minutes before a clock time.
    pub fn working_at(&self, clock: f64) -> f64 {
        let at = less(&self.from, clock);
        hand::working_in(self.open.get(at.saturating_sub(1)), clock)
    }

    /// When a talk of so many minutes is given at the earliest from a clock time on: in one
    /// piece. If it does not fit before the next break it waits for a stretch that is long
    /// enough; one that is longer than every stretch to come begins at once and goes on after
    /// the break. Nothing if the course is over before it ends.
    pub fn talk(&self, clock: f64, minutes: f64) -> Option<Span> {
        self.talk_in(less(&self.from, clock).saturating_sub(1), clock, minutes)
    }

    /// The same where the stretch is known that begins before the clock time.
    fn talk_in(&self, mut at: usize, clock: f64, minutes: f64) -> Option<Span> {
        if self.open.get(at).is_some_and(|open| open.to <= clock) {
            at += 1;
        }
        loop {
            let open = self.open.get(at)?;
            let from = open.from.max(clock);
            if from + minutes <= open.until + HAIR {
                return Some(Span {
                    from,
                    to: (from + minutes).min(open.until),
                });
            }
            if open.longest_after < minutes {
                return self.cut(at, from, minutes);
            }
            at += self.open[at..]
                .iter()
                .take_while(|it| it.until <= open.until)
                .count();
        }
    }

    /// A talk that breaks cut: it ends when so many open minutes are over.
    fn cut(&self, at: usize, from: f64, minutes: f64) -> Option<Span> {
        let mut left = minutes;
        for open in &self.open[at..] {
            let here = open.to - open.from.max(from);
            if left <= here + HAIR {
                let to = open.from.max(from) + left;
                return Some(Span { from, to });
            }
            left -= here;
        }
        None
    }

    /// The same calendar from a clock time on.
    pub fn from(&self, clock: f64) -> Self {
        let rest = self.open.iter().filter(|open| clock < open.to);
        let open = rest.map(|open| Open {
            from: open.from.max(clock),
            ..*open
        });
        Self::of(open.collect())
    }
}

/// How many numbers are less than another. Counting them all is quicker than halving as long as
/// there are but some dozens of stretches, since nothing branches.
fn less(numbers: &[f64], than: f64) -> usize {
    numbers.iter().filter(|number| **number < than).count()
}

/// Less than a millionth of a minute is what rounding leaves.
const HAIR: f64 = 1e-6;

/// What is left of a stretch when others are taken out.
pub fn left_of(whole: Span, closed: &[Span]) -> Vec<Span> {
    let mut closed: Vec<Span> = closed.to_vec();
    closed.sort_by(|a, b| a.from.total_cmp(&b.from));
    let mut left = Vec::new();
    let mut from = whole.from;
    for span in closed {
        if whole.to <= span.from {
            break;
        }
        if from < span.from {
            left.push(Span {
                from,
                to: span.from,
            });
        }
        from = from.max(span.to);
    }
    if from < whole.to {
        left.push(Span { from, to: whole.to });
    }
    left
}

/// One open stretch, broken wherever a rate changes.
fn pieces(day: usize, free: Span, rated: &[Rated]) -> Vec<Open> {
    let edges = rated.iter().flat_map(|it| [it.span.from, it.span.to]);
    let mut cuts: Vec<f64> = edges
        .filter(|edge| free.from < *edge && *edge < free.to)
        .collect();
    cuts.extend([free.from, free.to]);
    cuts.sort_by(f64::total_cmp);
    cuts.dedup();
    cuts.windows(2)
        .map(|edges| {
            let middle = (edges[0] + edges[1]) / 2.0;
            let holds = |it: &&Rated| it.span.from <= middle && middle < it.span.to;
            Open {
                day,
                from: edges[0],
                to: edges[1],
                rate: rated.iter().filter(holds).map(|it| it.rate).product(),
                before: 0.0,
                until: free.to,
                longest_after: 0.0,
            }
        })
        .collect()
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

#[cfg(test)]
mod tests {
    use super::*;

    fn day(hours: [u32; 2]) -> Day {
        let time = |hour| NaiveTime::from_hms_opt(hour, 0, 0).expect("a time");
        Day {
            date: NaiveDate::from_ymd_opt(2027, 4, 24).expect("a date"),
            start: time(hours[0]),
            finish: time(hours[1]),
            breaks: Vec::new(),
            weather: Default::default(),
        }
    }

    fn span(from: f64, to: f64) -> Span {
        Span { from, to }
    }

    /// By hand: 09:00 to 17:00 with lunch at 12:00 to 13:00 and half the pace from 15:00 on:
    /// 3 h, 2 h, and 2 h that count as one.
    fn calendar() -> Calendar {
        let slow = Rated {
            span: span(900.0, 1020.0),
            rate: 0.5,
        };
        Calendar::new(&[day([9, 17])], &[span(720.0, 780.0)], &[slow])
    }

    #[test]
    fn working_minutes_and_clock_are_each_other_s_inverse() {
        let calendar = calendar();
        assert!((calendar.working() - 360.0).abs() < 1e-9);
        for (working, clock) in [
            (0.0, 540.0),
            (180.0, 720.0),
            (181.0, 781.0),
            (300.0, 900.0),
            (330.0, 960.0),
            (360.0, 1020.0),
        ] {
            assert!(
                (calendar.clock_at(working) - clock).abs() < 1e-9,
                "{working}"
            );
            assert!(
                (calendar.working_at(clock) - working).abs() < 1e-9,
                "{clock}"
            );
        }
        assert!(calendar.clock_at(360.1).is_infinite());
        assert!((calendar.working_at(750.0) - 180.0).abs() < 1e-9);
    }

    #[test]
    fn a_talk_is_given_in_one_piece_if_it_can_be() {
        let calendar = calendar();
        let talk = |clock, minutes| calendar.talk(clock, minutes);
        assert_eq!(talk(540.0, 30.0), Some(span(540.0, 570.0)));
        assert_eq!(talk(700.0, 30.0), Some(span(780.0, 810.0)), "after lunch");
        assert_eq!(talk(890.0, 30.0), Some(span(890.0, 920.0)), "across a rate");
        assert_eq!(
            talk(700.0, 250.0),
            Some(span(700.0, 1010.0)),
            "cut by lunch"
        );
        assert_eq!(talk(1000.0, 30.0), None);
    }

    #[test]
    fn the_rest_of_a_calendar_counts_from_its_beginning() {
        let rest = calendar().from(840.0);
        assert!((rest.working() - 120.0).abs() < 1e-9);
        assert!((rest.clock_at(60.0) - 900.0).abs() < 1e-9);
        assert!((rest.begins() - 840.0).abs() < 1e-9);
    }

    #[test]
    fn a_day_that_is_all_closed_has_no_time() {
        let calendar = Calendar::new(&[day([9, 17])], &[span(0.0, 2000.0)], &[]);
        assert!(calendar.begins().is_infinite());
        assert!(calendar.clock_at(1.0).is_infinite());
        assert_eq!(calendar.talk(0.0, 5.0), None);
    }
}
