//! How sure it is when a stage is done: from early to late, cut into pieces day by day.

use crate::over_time::clock::Clock;
use crate::over_time::timetable::{Timetable, TimetableDay, WhenDone, short};

/// The part of a whisker that lies in one day.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Piece {
    /// The line, if any time is reached at all.
    pub(crate) line: Option<Line>,
    /// The stage, and what is said of its times in plain words.
    pub(crate) name: String,
    /// The time that stands out, and what is said after it.
    pub(crate) time: String,
    pub(crate) after: &'static str,
}

/// From when to when, in minutes of the calendar.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Line {
    pub(crate) from: f64,
    pub(crate) to: f64,
    /// The middle, if it falls on this day.
    pub(crate) middle: Option<f64>,
    /// It comes from the day before.
    pub(crate) enters: bool,
    /// How it goes on.
    pub(crate) leaves: Leaves,
}

/// How a line goes on at the end of a day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Leaves {
    /// It ends here.
    No,
    /// On the next day.
    NextDay,
    /// Beyond the course.
    Beyond,
}

/// The pieces of every stage that lie in one of the days, in order of the stages.
pub(crate) fn pieces(timetable: &Timetable, day: usize) -> Vec<Piece> {
    let stages = timetable.stages.iter();
    stages
        .filter_map(|stage| piece(stage, &timetable.days, day, timetable.clock))
        .collect()
}

/// The day a time counts to: the first that is not over before it; none after the course.
fn day_of(days: &[TimetableDay], time: f64) -> Option<usize> {
    days.iter().position(|day| time <= day.ends)
}

fn piece(stage: &WhenDone, days: &[TimetableDay], at: usize, clock: Clock) -> Option<Piece> {
    let day = days.get(at)?;
    let last = days.len().checked_sub(1)?;
    let placed = |time: Option<f64>| {
        let time = time.filter(|time| time.is_finite())?;
        Some((time, day_of(days, time)?))
    };
    let [early, middle, late] = stage.done.map(placed);
    let name = short(&stage.name);
    let Some((early, first)) = early else {
        return (at == last).then(|| Piece {
            line: None,
            name: format!("{name}: not within the course"),
            time: String::new(),
            after: "",
        });
    };
    let ends_on = late.map_or(last, |(_, day)| day);
    if at < first || ends_on < at {
        return None;
    }
    let leaves = match late {
        _ if at < ends_on => Leaves::NextDay,
        Some(_) => Leaves::No,
        None => Leaves::Beyond,
    };
    let within = |time: f64| time.clamp(day.starts, day.ends);
    let line = Line {
        from: if at == first {
            within(early)
        } else {
            day.starts
        },
        to: late
            .filter(|(_, day)| *day == at)
            .map_or(day.ends, |(time, _)| within(time)),
        middle: middle
            .filter(|(_, day)| *day == at)
            .map(|(time, _)| within(time)),
        enters: first < at,
        leaves,
    };
    let beyond = match (leaves, middle) {
        (Leaves::Beyond, None) => "(likely not within the course)",
        (Leaves::Beyond, Some(_)) => "(late: not within the course)",
        _ => "",
    };
    let (word, time) = match (line.middle, middle) {
        (Some(time), _) => ("", clock.time(time)),
        (None, Some((_, day))) if day < at && leaves == Leaves::No => ("by", clock.time(line.to)),
        (None, _) if at == first => ("from", clock.time(line.from)),
        _ => ("", String::new()),
    };
    let (name, time) = if line.middle.is_some() || time.is_empty() {
        (name.into_owned(), time)
    } else {
        (format!("{name} {word} {time}"), String::new())
    };
    Some(Piece {
        line: Some(line),
        name,
        time,
        after: beyond,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::over_time::sample;

    fn of(done: [Option<f64>; 3], day: usize) -> Option<Piece> {
        let mut timetable = sample::weekend_days();
        timetable.stages = vec![WhenDone {
            name: "Set the copes".to_owned(),
            done,
        }];
        pieces(&timetable, day).pop()
    }

    fn clock(day: f64, hour: f64, minute: f64) -> Option<f64> {
        Some((day - 1.0) * 1440.0 + hour * 60.0 + minute)
    }

    fn said(piece: &Option<Piece>) -> String {
        let words = |piece: &Piece| {
            let parts = [piece.name.as_str(), &piece.time, piece.after];
            parts
                .into_iter()
                .filter(|part| !part.is_empty())
                .collect::<Vec<_>>()
                .join(" ")
        };
        piece.as_ref().map(words).unwrap_or_default()
    }

    #[test]
    fn a_whisker_over_two_nights_has_a_piece_on_each_day() {
        let done = [
            clock(1.0, 15.0, 0.0),
            clock(2.0, 12.0, 0.0),
            clock(3.0, 10.0, 30.0),
        ];
        let [one, two, three] = [0, 1, 2].map(|day| of(done, day));
        assert_eq!(said(&one), "Set the copes from 15:00");
        assert_eq!(said(&two), "Set the copes 12:00");
        assert_eq!(said(&three), "Set the copes by 10:30");
        let line = |piece: Option<Piece>| piece.and_then(|it| it.line);
        let leaves = |piece| line(piece).map(|it| (it.enters, it.leaves));
        assert_eq!(leaves(one), Some((false, Leaves::NextDay)));
        assert_eq!(leaves(two), Some((true, Leaves::NextDay)));
        assert_eq!(leaves(three), Some((true, Leaves::No)));
    }

    #[test]
    fn what_is_not_reached_is_said_on_the_last_day() {
        let none = of([None; 3], 2);
        assert_eq!(said(&none), "Set the copes: not within the course");
        assert_eq!(of([None; 3], 1), None);
        let late = of([clock(3.0, 9.0, 30.0), clock(3.0, 11.0, 0.0), None], 2);
        assert_eq!(
            said(&late),
            "Set the copes 11:00 (late: not within the course)"
        );
        let half = of([clock(2.0, 9.0, 30.0), None, None], 2);
        assert_eq!(said(&half), "Set the copes (likely not within the course)");
        let edge = of([clock(1.0, 17.0, 0.0); 3], 0).and_then(|it| it.line);
        assert_eq!(
            edge.map(|it| it.leaves),
            Some(Leaves::No),
            "done as the day ends"
        );
    }
}
