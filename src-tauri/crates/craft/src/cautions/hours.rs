//! Cautions about the hours of the days: dark, nobody there, no talk about safety, no break.

use super::{COMMON, Shown};
use crate::course::{Course, Day};
use crate::pace::calendar::{Span, left_of, minutes_to, to_the_minute};
use crate::pace::fixed::What;
use crate::pace::shut::{Reason, because};
use crate::pace::{Entry, EntryKind};
use crate::plan::Days;
use crate::tables::Rests;

/// Rounding, in minutes.
const HAIR: f64 = 1e-6;

/// What is looked at.
#[derive(Debug, Clone, Copy)]
pub struct Hours<'a> {
    /// The course.
    pub course: &'a Course,
    /// How long people work without a break.
    pub rests: &'a Rests,
    /// The days.
    pub days: &'a Days,
    /// Their timetable.
    pub timetable: &'a [Entry],
}

/// The cautions that follow from the hours of each day.
pub fn of_the_hours(hours: Hours<'_>) -> Vec<Shown> {
    let cautions = [
        hours.safety_first(),
        hours.safety_later(),
        hours.nobody(),
        hours.dark(),
        hours.without_a_break(),
    ];
    cautions.into_iter().flatten().collect()
}

fn shown(id: &str, text: String) -> Shown {
    Shown {
        id: id.to_owned(),
        text,
        source: COMMON.to_owned(),
        for_students: false,
    }
}

impl<'a> Hours<'a> {
    /// The days by number, counted from 0, with their hours.
    fn by_day(&self) -> impl Iterator<Item = (usize, Span)> {
        let days = &self.course.days;
        let at = |day: &Day, time| minutes_to(days, day.date, time);
        days.iter().enumerate().map(move |(number, day)| {
            let (from, to) = (at(day, day.start), at(day, day.finish));
            (number, Span { from, to })
        })
    }

    /// What of these stretches lies within others.
    fn within(whole: Span, spans: &[Span]) -> Vec<Span> {
        let outside = left_of(whole, spans);
        left_of(whole, &outside)
    }

    fn is_empty(&self, hours: Span) -> bool {
        left_of(hours, &because(&self.days.shut, Reason::Nobody)).is_empty()
    }

    fn first(&self, day: usize, kind: EntryKind) -> Option<f64> {
        let mut entries = self.timetable.iter();
        let found = entries.find(|it| it.day == day && it.kind == kind);
        found.map(|it| it.from)
    }

    /// The first day opens with a talk about safety, before anybody works.
    fn safety_first(&self) -> Option<Shown> {
        let (number, _) = self.by_day().find(|(_, hours)| !self.is_empty(*hours))?;
        let talk = self.first(number, EntryKind::Safety);
        let work = self.first(number, EntryKind::Build);
        let what = match (talk, work) {
            (None, _) => "has no talk about safety at all",
            (Some(talk), Some(work)) if work < talk => {
                "has its talk about safety only after work has begun"
            }
            _ => return None,
        };
        Some(shown(
            "no-safety-talk-first",
            format!(
                "Day {} {what}. Nobody should pick up a stone before they have heard how help is called, what to wear, how to lift and where not to stand: give that talk first thing, whatever else is cut.",
                number + 1
            ),
        ))
    }

    fn safety_later(&self) -> Option<Shown> {
        let peopled = self.by_day().filter(|(_, hours)| !self.is_empty(*hours));
        let without = peopled
            .skip(1)
            .filter(|(number, _)| self.first(*number, EntryKind::Safety).is_none());
        let days: Vec<String> = without
            .map(|(number, _)| (number + 1).to_string())
            .collect();
        (!days.is_empty()).then(|| {
            let days = listed("day", &days);
            let text = format!(
                "No talk about safety on {days}. Before anybody builds, walk along the wall together: what has moved or filled with water overnight, what is new today, and what those who missed the first talk must know."
            );
            shown("no-safety-talk", text)
        })
    }

    /// A cure that fits: longer hours help nobody who is not there.
    fn nobody(&self) -> Option<Shown> {
        let empty = because(&self.days.shut, Reason::Nobody);
        let mut whole = false;
        let mut parts = Vec::new();
        for (number, hours) in self.by_day() {
            if self.is_empty(hours) {
                whole = true;
                parts.push(format!("all of day {}", number + 1));
                continue;
            }
            let gone = Self::within(hours, &empty).into_iter();
            parts.extend(gone.map(|it| format!("day {} from {}", number + 1, from_to(it))));
        }
        (!parts.is_empty()).then(|| {
            let cure = if whole {
                "Take such a day out of the course, or mend who is away when"
            } else {
                "End the day earlier or begin it later, or mend who is away when"
            };
            let when = listed("", &parts);
            shown(
                "nobody-there",
                format!("Nobody is there {when}: everybody is away, and nothing is built. {cure}."),
            )
        })
    }

    /// The hours that the dark takes, beside those that breaks, talks and tidying take anyway.
    fn dark(&self) -> Option<Shown> {
        let dark = because(&self.days.shut, Reason::Dark);
        let closed = self.days.timed.closed();
        let lost = self.by_day().filter_map(|(number, hours)| {
            let dark = Self::within(hours, &dark);
            let open = dark.iter().flat_map(|it| left_of(*it, &closed));
            let minutes: f64 = open.map(|it| it.to - it.from).sum();
            let when: Vec<String> = dark.iter().map(|it| from_to(*it)).collect();
            (1.0 <= minutes).then(|| {
                let (day, when) = (number + 1, when.join(" and "));
                format!("{} of day {day} (dark {when})", long(minutes))
            })
        });
        let lost: Vec<String> = lost.collect();
        (!lost.is_empty()).then(|| {
            shown(
                "dark-hours",
                format!(
                    "Nobody builds in the dark. Before civil dawn or after civil dusk, and counted for nothing: {}. Move these hours into daylight; if the wall is lit well enough to see hands and gaps, set lamplight = true under [timetable].",
                    listed("", &lost)
                ),
            )
        })
    }

    /// Stretches longer than people should work without a break, talks and tidying included.
    fn without_a_break(&self) -> Option<Shown> {
        let fixed = self.days.timed.fixed.iter();
        let breaks = fixed.filter(|it| matches!(it.what, What::Break { .. }));
        let shut = self.days.shut.iter().map(|it| it.span);
        let rests: Vec<Span> = breaks.map(|it| it.span).chain(shut).collect();
        let limit = self.rests.longest + self.rests.grace;
        let too_long = self.by_day().flat_map(|(number, hours)| {
            let stretches = left_of(hours, &rests).into_iter();
            let too_long = stretches.filter(|it| limit + HAIR < it.to - it.from);
            too_long
                .map(|it| format!("day {} from {}", number + 1, from_to(it)))
                .collect::<Vec<_>>()
        });
        let too_long: Vec<String> = too_long.collect();
        (!too_long.is_empty()).then(|| {
            shown(
                "no-break",
                format!(
                    "Too long without a break: {}. After about two hours people lift badly and miss what their hands do: give the day another break, or leave room for one between the talks.",
                    listed("", &too_long)
                ),
            )
        })
    }
}

/// `day 1`, `days 1 and 2`, `days 1, 2 and 3`; of parts without a word of their own just these.
fn listed(word: &str, parts: &[String]) -> String {
    let all = match parts {
        [] => String::new(),
        [one] => one.clone(),
        [some @ .., last] => format!("{} and {last}", some.join(", ")),
    };
    match (word, parts.len()) {
        ("", _) => all,
        (_, 1) => format!("{word} {all}"),
        _ => format!("{word}s {all}"),
    }
}

fn from_to(span: Span) -> String {
    format!("{} to {}", clock(span.from), clock(span.to))
}

fn clock(minutes: f64) -> String {
    let minutes = to_the_minute(minutes).rem_euclid(1440.0);
    format!("{:02.0}:{:02.0}", (minutes / 60.0).floor(), minutes % 60.0)
}

/// `45 min`, `2 h`, `2 h 35 min`.
fn long(minutes: f64) -> String {
    let minutes = minutes.round();
    let (hours, rest) = ((minutes / 60.0).floor(), minutes % 60.0);
    match (hours >= 1.0, rest >= 1.0) {
        (false, _) => format!("{rest:.0} min"),
        (true, false) => format!("{hours:.0} h"),
        (true, true) => format!("{hours:.0} h {rest:.0} min"),
    }
}
