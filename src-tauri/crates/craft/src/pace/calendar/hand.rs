//! A hand on the calendar that only moves on: looking times up in the order in which a course goes.
//!
//! It finds what [`Calendar::clock_at`], [`Calendar::talk`] and [`Calendar::working_at`] find, from
//! where it stands instead of from the beginning: most of a simulated course is looking times up.

use super::{Calendar, Open, Span};

/// Where a course has got to.
#[derive(Debug, Clone, Copy, Default)]
pub struct Hand {
    by_working: usize,
    by_clock: usize,
}

impl Calendar {
    /// [`Calendar::clock_at`] for a time no earlier than any that this hand was asked before.
    pub fn clock_on(&self, hand: &mut Hand, working: f64) -> f64 {
        hand.by_working = on(&self.before, hand.by_working, working);
        clock_in(self.open.get(hand.by_working), working)
    }

    /// [`Calendar::talk`] from a clock time no earlier than any that this hand was asked before,
    /// with the working minutes when it begins and ends.
    pub fn talk_on(&self, hand: &mut Hand, clock: f64, minutes: f64) -> Option<(Span, [f64; 2])> {
        hand.by_clock = on(&self.from, hand.by_clock, clock);
        let span = self.talk_in(hand.by_clock, clock, minutes)?;
        let mut working = |clock| {
            hand.by_clock = on(&self.from, hand.by_clock, clock);
            working_in(self.open.get(hand.by_clock), clock)
        };
        let begins = working(span.from);
        Some((span, [begins, working(span.to)]))
    }
}

/// The last of some rising numbers that is less than another, from a place before it on; the first
/// where none is.
fn on(numbers: &[f64], mut at: usize, than: f64) -> usize {
    while numbers.get(at + 1).is_some_and(|next| *next < than) {
        at += 1;
    }
    at
}

/// The clock at so many working minutes in a stretch that begins before them.
pub(super) fn clock_in(open: Option<&Open>, working: f64) -> f64 {
    let Some(open) = open else {
        return f64::INFINITY;
    };
    if open.rate <= 0.0 {
        return if working <= open.before {
            open.from
        } else {
            f64::INFINITY
        };
    }
    let clock = open.from + (working - open.before).max(0.0) / open.rate;
    if clock <= open.to {
        clock
    } else if clock <= open.to + super::HAIR {
        open.to
    } else {
        f64::INFINITY
    }
}

/// The working minutes at a clock time in or after a stretch.
pub(super) fn working_in(open: Option<&Open>, clock: f64) -> f64 {
    open.map_or(0.0, |open| {
        open.before + (clock.clamp(open.from, open.to) - open.from) * open.rate
    })
}

#[cfg(test)]
mod tests {
    use super::super::Rated;
    use super::*;
    use crate::course::Day;
    use chrono::{NaiveDate, NaiveTime};
    use proptest::prelude::*;

    fn calendar(rates: &[(f64, f64, f64)], breaks: &[(f64, f64)]) -> Calendar {
        let time = |hour| NaiveTime::from_hms_opt(hour, 0, 0).expect("a time");
        let day = |date| Day {
            date: NaiveDate::from_ymd_opt(2027, 4, date).expect("a date"),
            start: time(9),
            finish: time(17),
            breaks: Vec::new(),
            weather: Default::default(),
        };
        let span = |from: f64, long: f64| Span {
            from,
            to: from + long,
        };
        let rated = rates.iter().map(|(from, long, rate)| Rated {
            span: span(*from, *long),
            rate: *rate,
        });
        let closed: Vec<Span> = breaks
            .iter()
            .map(|(from, long)| span(*from, *long))
            .collect();
        Calendar::new(&[day(24), day(25)], &closed, &rated.collect::<Vec<_>>())
    }

    proptest! {
        /// Looked up on the way or from the beginning, to the last bit.
        #[test]
        fn a_hand_finds_what_is_found_from_the_beginning(
            rates in proptest::collection::vec((500.0..2500.0, 5.0..400.0, 0.0..1.2_f64), 0..6),
            breaks in proptest::collection::vec((500.0..2500.0, 5.0..60.0), 0..5),
            mut asked in proptest::collection::vec((0.0..900.0_f64, 500.0..2600.0_f64, 1.0..90.0_f64), 1..12),
        ) {
            let calendar = calendar(&rates, &breaks);
            let mut hand = Hand::default();
            asked.sort_by(|a, b| a.0.total_cmp(&b.0));
            for (working, ..) in &asked {
                let (on, anew) = (calendar.clock_on(&mut hand, *working), calendar.clock_at(*working));
                prop_assert!(on.total_cmp(&anew).is_eq(), "{on} {anew}");
            }
            let mut from = 0.0;
            for (_, clock, minutes) in &asked {
                from = f64::max(from, *clock);
                let talk = calendar.talk_on(&mut hand, from, *minutes);
                prop_assert_eq!(talk.map(|(span, _)| span), calendar.talk(from, *minutes));
                let Some((span, working)) = talk else { break };
                for (on, clock) in working.into_iter().zip([span.from, span.to]) {
                    let anew = calendar.working_at(clock);
                    prop_assert!(on.total_cmp(&anew).is_eq(), "{on} {anew}");
                }
                from = span.to;
            }
        }
    }
}
