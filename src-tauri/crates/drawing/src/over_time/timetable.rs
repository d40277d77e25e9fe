//! The days as a picture of them needs them: numbers and names alone.

use crate::over_time::clock::{Clock, midnight_before};
use craft::course::Course;
use craft::pace::EntryKind;
use craft::pace::calendar::minutes_to;
use craft::plan::Plan;
use craft::sun::SunDay;
use craft::tables::Tables;
use std::borrow::Cow;

/// The days of a course with what stands in them. Times are minutes of the course calendar.
#[derive(Debug, Clone, PartialEq)]
pub struct Timetable {
    /// The days in order.
    pub days: Vec<TimetableDay>,
    /// When each stage is done, in order of work.
    pub stages: Vec<WhenDone>,
    /// How times are written.
    pub clock: Clock,
}

/// One day.
#[derive(Debug, Clone, PartialEq)]
pub struct TimetableDay {
    /// `Day 1`.
    pub name: String,
    /// `Saturday`; stands under the name.
    pub weekday: String,
    /// When it begins.
    pub starts: f64,
    /// When it ends.
    pub ends: f64,
    /// When the sun rises, if it does.
    pub sunrise: Option<f64>,
    /// When the sun sets, if it does.
    pub sunset: Option<f64>,
    /// What stands in it, in order.
    pub bars: Vec<Bar>,
}

impl TimetableDay {
    pub(crate) fn midnight(&self) -> f64 {
        midnight_before(self.starts)
    }
}

/// One line of the timetable.
#[derive(Debug, Clone, PartialEq)]
pub struct Bar {
    /// When it begins.
    pub from: f64,
    /// When it ends.
    pub to: f64,
    /// What happens.
    pub what: String,
    /// What sort of thing it is.
    pub kind: EntryKind,
}

/// When a stage is done.
#[derive(Debug, Clone, PartialEq)]
pub struct WhenDone {
    /// The stage.
    pub name: String,
    /// The 10th, 50th and 90th percentile; `None` for a time not reached within the course.
    pub done: [Option<f64>; 3],
}

impl Timetable {
    /// The days of a planned course. `tables` are those it was planned with: they have the
    /// names of the stages.
    pub fn of(plan: &Plan, course: &Course, tables: &Tables, clock: Clock) -> Self {
        let days = course.days.iter().enumerate().map(|(number, day)| {
            let at = |time| minutes_to(&course.days, day.date, time);
            let sun = plan.sun.iter().find(|sun| sun.date == day.date);
            let sun_at = |which: fn(&SunDay) -> Option<_>| sun.and_then(which).map(at);
            let own = plan.timetable.iter().filter(|entry| entry.day == number);
            TimetableDay {
                name: format!("Day {}", number + 1),
                weekday: day.date.format("%A").to_string(),
                starts: at(day.start),
                ends: at(day.finish),
                sunrise: sun_at(|sun| sun.sunrise.map(|it| it.time())),
                sunset: sun_at(|sun| sun.sunset.map(|it| it.time())),
                bars: own
                    .map(|entry| Bar {
                        from: entry.from,
                        to: entry.to,
                        what: entry.what.clone(),
                        kind: entry.kind,
                    })
                    .collect(),
            }
        });
        let stages = plan.forecast.by_stage.iter().filter_map(|times| {
            let stage = tables.stages.get(times.stage)?;
            Some(WhenDone {
                name: stage.name.clone(),
                done: times.done,
            })
        });
        Self {
            days: days.collect(),
            stages: stages.collect(),
            clock,
        }
    }
}

/// The letters of a name there is room for beside the bars of a day.
const LETTERS: usize = 30;

/// A name as short as a picture needs it: what stands before a colon or a comma, and of that no
/// more than there is room for; it stands in full beside the picture.
pub(crate) fn short(name: &str) -> Cow<'_, str> {
    let name = name.split([':', ',']).next().unwrap_or(name).trim();
    match name.char_indices().nth(LETTERS) {
        None => Cow::Borrowed(name),
        Some(_) => {
            let kept: String = name.chars().take(LETTERS - 1).collect();
            Cow::Owned(format!("{}…", kept.trim_end()))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture;
    use craft::course::Day;
    use craft::pace::forecast::StageTimes;
    use craft::pace::timetable::Entry;
    use craft::tables::{Along, Crew, Stage, Work};

    fn day(date: &str) -> Day {
        Day {
            date: date.parse().expect("a date"),
            start: "09:00:00".parse().expect("a time"),
            finish: "16:30:00".parse().expect("a time"),
            breaks: Vec::new(),
            weather: Default::default(),
        }
    }

    /// By hand: 25 April 2027 is a Sunday; its 09:00 is 1440 + 540 minutes after the first
    /// midnight. The sun rises at Hollin Bank a little before six then.
    #[test]
    fn a_plan_gives_its_days_and_the_names_of_its_stages() {
        let mut course = fixture::weekend();
        course.days = ["2027-04-24", "2027-04-25"].map(day).to_vec();
        let mut plan = fixture::plan(&course);
        plan.timetable = vec![Entry {
            day: 1,
            from: 1980.0,
            to: 2040.0,
            what: "Lay the footing".to_owned(),
            kind: EntryKind::Build,
            of: None,
        }];
        plan.forecast.by_stage = [0, 7]
            .map(|stage| StageTimes {
                stage,
                done: [Some(2000.0), Some(2040.0), None],
                on_day_one: 0.0,
            })
            .to_vec();
        let mut tables = fixture::tables::tables();
        tables.stages = vec![Stage {
            id: "footing".to_owned(),
            name: "Lay the footing".to_owned(),
            work: Work::FootingTonnes,
            crew: Crew::Everyone,
            string: false,
            along: Along::BayByBay,
            beforehand: false,
            note: String::new(),
            if_left: String::new(),
        }];
        let timetable = Timetable::of(&plan, &course, &tables, Clock::TwentyFour);
        let [saturday, sunday] = timetable.days.as_slice() else {
            panic!("two days: {timetable:?}");
        };
        assert_eq!((saturday.name.as_str(), saturday.bars.len()), ("Day 1", 0));
        assert_eq!((sunday.weekday.as_str(), sunday.bars.len()), ("Sunday", 1));
        assert_eq!((sunday.starts, sunday.ends), (1980.0, 2430.0));
        let rises = sunday.sunrise.expect("it rises");
        assert!((1440.0 + 330.0..1440.0 + 360.0).contains(&rises), "{rises}");
        // A stage the tables don't have is left out.
        assert_eq!(timetable.stages.len(), 1);
        assert_eq!(timetable.stages[0].name, "Lay the footing");
    }

    #[test]
    fn names_are_cut_where_they_begin_to_explain() {
        assert_eq!(short("First lift: footing to throughs"), "First lift");
        assert_eq!(short("Tidy, count the tools, make safe"), "Tidy");
        assert_eq!(short("Set the copes"), "Set the copes");
        // A break may have any name.
        let long = short(&"W".repeat(400)).into_owned();
        assert_eq!((long.chars().count(), long.ends_with("W…")), (30, true));
        assert_eq!(short(&"W".repeat(30)), "W".repeat(30));
    }
}
