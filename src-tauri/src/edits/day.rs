//! Edits of how the days run: weather, lessons moved, people away, and what is told on the day.

use crate::desk::{Desk, Error};
use crate::kit::NotTyped;
use chrono::NaiveTime;
use craft::course::Report;
use files::course;

impl Desk {
    /// One more spell of rain in a day, counted from 0.
    pub(crate) fn add_rain(&mut self, day: usize) -> Result<(), Error> {
        let text = course::add_rain(self.text(), day)?;
        self.change(text)
    }

    /// One spell of rain of a day fewer.
    pub(crate) fn remove_rain(&mut self, day: usize, at: usize) -> Result<(), Error> {
        let text = course::remove_rain(self.text(), day, at)?;
        self.change(text)
    }

    /// A lesson on a day, counted from 0, at a time, or first thing where none is typed; where
    /// it falls by itself if no day is given.
    pub(crate) fn wish(&mut self, lesson: &str, day: Option<usize>, at: &str) -> Result<(), Error> {
        let text = match day {
            None => course::unwish(self.text(), lesson)?,
            Some(day) if at.trim().is_empty() => course::wish(self.text(), lesson, day, None)?,
            Some(day) => course::wish(self.text(), lesson, day, Some(time(at)?))?,
        };
        self.change(text)
    }

    /// One more absence.
    pub(crate) fn add_absence(&mut self) -> Result<(), Error> {
        let text = course::add_absence(self.text())?;
        self.change(text)
    }

    /// One absence fewer.
    pub(crate) fn remove_absence(&mut self, at: usize) -> Result<(), Error> {
        let text = course::remove_absence(self.text(), at)?;
        self.change(text)
    }

    /// How far a stage has come, in one bay or in all of them.
    pub(crate) fn tell(&mut self, told: &Told<'_>) -> Result<(), Error> {
        let report = Report {
            day: told.day,
            time: time(told.time)?,
            stage: told.stage.to_owned(),
            bay: told.bay,
            done: share(told.done)?,
            wall: None,
        };
        let text = course::tell(self.text(), &report, self.course.plan.sizing.length)?;
        self.change(text)
    }

    /// One report fewer.
    pub(crate) fn untell(&mut self, at: usize) -> Result<(), Error> {
        let text = course::untell(self.text(), at)?;
        self.change(text)
    }
}

/// A report as it was tapped or typed; day and bay are counted from 0.
pub(crate) struct Told<'a> {
    pub(crate) day: usize,
    pub(crate) time: &'a str,
    pub(crate) stage: &'a str,
    /// All bays where it is none.
    pub(crate) bay: Option<usize>,
    /// `done`, `half`, or per cent.
    pub(crate) done: &'a str,
}

fn time(typed: &str) -> Result<NaiveTime, NotTyped> {
    let typed = typed.trim();
    course::time_of_day(typed).ok_or_else(|| NotTyped {
        field: "time".to_owned(),
        what: if typed.is_empty() {
            "there is no time".to_owned()
        } else {
            format!("\"{typed}\" is not a time of day")
        },
        cure: "write hours and minutes, such as 13:40, or 1:40 pm",
    })
}

/// A share of the work, from 0 to 1.
fn share(typed: &str) -> Result<f64, NotTyped> {
    let typed = typed.trim();
    match typed.to_lowercase().as_str() {
        "done" => return Ok(1.0),
        "half" => return Ok(0.5),
        _ => {}
    }
    let bare = typed.strip_suffix('%').unwrap_or(typed).trim_end();
    // A share of one typed as 0.6 would be taken for less than one per cent.
    let sound = |percent: &f64| *percent == 0.0 || (1.0..=100.0).contains(percent);
    let percent = bare.replace(',', ".").parse().ok().filter(sound);
    percent
        .map(|percent: f64| percent / 100.0)
        .ok_or_else(|| NotTyped {
            field: "done".to_owned(),
            what: if typed.is_empty() {
                "nothing is said of how much is done".to_owned()
            } else {
                format!("\"{typed}\" is not a share of the work")
            },
            cure: "write per cent from 0 to 100, such as 60 %; or half, or done",
        })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_share_is_read_as_it_is_said() {
        for (typed, meant) in [
            ("done", 1.0),
            ("Half", 0.5),
            ("60 %", 0.6),
            ("60%", 0.6),
            (" 25 ", 0.25),
            ("0", 0.0),
            ("100", 1.0),
        ] {
            let read = share(typed).expect(typed);
            assert!((read - meant).abs() < 1e-12, "{typed}: {read}");
        }
        for typed in ["", "0.6", "101", "-1", "most of it", "NaN", "inf"] {
            let wrong = share(typed).expect_err(typed);
            assert_eq!(wrong.field, "done");
        }
    }

    #[test]
    fn a_time_is_read_with_or_without_seconds() {
        let meant = NaiveTime::from_hms_opt(11, 40, 0);
        assert_eq!(time("11:40").ok(), meant);
        assert_eq!(time(" 11:40:00 ").ok(), meant);
        for typed in ["", "25:00", "noon"] {
            assert_eq!(time(typed).expect_err(typed).field, "time");
        }
    }
}
