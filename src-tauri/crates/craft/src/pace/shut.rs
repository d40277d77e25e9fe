//! When there is no work although the day runs: in the dark, and with nobody there.

use super::calendar::{Span, left_of, minutes_to};
use crate::course::Day;
use crate::people::Presence;

/// A stretch of a day in which nothing is built.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shut {
    /// When.
    pub span: Span,
    /// Why.
    pub why: Reason,
}

/// Why nothing is built.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reason {
    /// Before civil dawn or after civil dusk. Talks and tidying go on by lamplight.
    Dark,
    /// Everybody is away.
    Nobody,
}

/// What is shut of the days' hours.
#[derive(Debug, Clone, Copy)]
pub struct Asked<'a> {
    /// The course days.
    pub days: &'a [Day],
    /// When each of them is light, in minutes since its midnight; nothing where lamps are lit.
    pub light: Option<&'a [Vec<[f64; 2]>]>,
    /// Who is there when, day by day.
    pub present: &'a [Vec<Presence>],
}

/// Every stretch in which nothing is built, day by day in order of time. Where nobody is there it
/// does not matter that it is dark.
pub fn shut(asked: &Asked<'_>) -> Vec<Shut> {
    let days = asked.days.iter().enumerate();
    days.flat_map(|(number, day)| {
        let of = |why| move |span| Shut { span, why };
        let empty = empty(asked, number, day);
        let dark = dark(asked, number, day, &empty).into_iter();
        let mut all: Vec<Shut> = dark.map(of(Reason::Dark)).collect();
        all.extend(empty.into_iter().map(of(Reason::Nobody)));
        all.sort_by(|a, b| a.span.from.total_cmp(&b.span.from));
        all
    })
    .collect()
}

/// The stretches that are shut for this reason.
pub fn because(shut: &[Shut], why: Reason) -> Vec<Span> {
    let these = shut.iter().filter(|it| it.why == why);
    these.map(|it| it.span).collect()
}

fn empty(asked: &Asked<'_>, number: usize, day: &Day) -> Vec<Span> {
    let parts = asked.present.get(number).into_iter().flatten();
    parts
        .filter(|part| part.share <= 0.0)
        .map(|part| Span {
            from: minutes_to(asked.days, day.date, part.from),
            to: minutes_to(asked.days, day.date, part.to),
        })
        .collect()
}

fn dark(asked: &Asked<'_>, number: usize, day: &Day, empty: &[Span]) -> Vec<Span> {
    let Some(light) = asked.light.and_then(|light| light.get(number)) else {
        return Vec::new();
    };
    let midnight = minutes_to(asked.days, day.date, chrono::NaiveTime::MIN);
    let lit = light.iter().map(|[from, to]| Span {
        from: midnight + from,
        to: midnight + to,
    });
    let taken: Vec<Span> = lit.chain(empty.iter().copied()).collect();
    let hours = Span {
        from: minutes_to(asked.days, day.date, day.start),
        to: minutes_to(asked.days, day.date, day.finish),
    };
    left_of(hours, &taken)
}

#[cfg(test)]
mod tests {
    use super::*;
    use chrono::{NaiveDate, NaiveTime};

    fn time(hour: u32) -> NaiveTime {
        NaiveTime::from_hms_opt(hour, 0, 0).expect("a time")
    }

    fn days() -> Vec<Day> {
        (18..=19)
            .map(|day| Day {
                date: NaiveDate::from_ymd_opt(2027, 12, day).expect("a date"),
                start: time(7),
                finish: time(18),
                breaks: Vec::new(),
                weather: Default::default(),
            })
            .collect()
    }

    /// By hand: 7 to 18 o'clock, light from 8 to 16; on the second day nobody after 15.
    #[test]
    fn dark_hours_and_empty_ones_are_shut() {
        let days = days();
        let light = vec![vec![[480.0, 960.0]]; 2];
        let part = |from, to, share| Presence {
            from: time(from),
            to: time(to),
            share,
        };
        let present = [
            vec![part(7, 18, 1.0)],
            vec![part(7, 15, 0.5), part(15, 18, 0.0)],
        ];
        let mut asked = Asked {
            days: &days,
            light: Some(&light),
            present: &present,
        };
        let found = |asked: &Asked<'_>| -> Vec<(f64, f64, Reason)> {
            let shut = shut(asked).into_iter();
            shut.map(|it| (it.span.from, it.span.to, it.why)).collect()
        };
        let nobody = (2340.0, 2520.0, Reason::Nobody);
        assert_eq!(
            found(&asked),
            [
                (420.0, 480.0, Reason::Dark),
                (960.0, 1080.0, Reason::Dark),
                (1860.0, 1920.0, Reason::Dark),
                nobody,
            ]
        );
        asked.light = None;
        assert_eq!(found(&asked), [nobody]);
    }
}
