//! Dates and times: minutes of the course calendar as local time, and as people write them.

use chrono::{
    DateTime, Datelike, Duration, NaiveDate, NaiveDateTime, SecondsFormat, TimeZone, Timelike,
};
use chrono_tz::Tz;
use craft::course::Course;

/// How dates are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DateStyle {
    /// Sat 24 April 2027, 16:30.
    British,
    /// Sat, April 24, 2027, 4:30 pm.
    American,
}

/// The clock at the venue.
#[derive(Debug, Clone, Copy)]
pub struct Clock {
    first: NaiveDate,
    zone: Tz,
    style: DateStyle,
}

impl Clock {
    /// The clock of a course; its calendar begins at midnight before the first day.
    pub fn new(course: &Course, style: DateStyle) -> Self {
        let first = course.days.first().map(|day| day.date).unwrap_or_default();
        Self {
            first,
            zone: course.venue.time_zone,
            style,
        }
    }

    /// Minutes of the calendar as a local time with its offset, to the second. A time the
    /// clock skips in spring is the one an hour later.
    pub fn local(&self, minutes: f64) -> DateTime<Tz> {
        // Seconds of a course of some days are far below where the cast could overflow.
        let seconds = Duration::seconds((minutes * 60.0).round() as i64);
        let wall: NaiveDateTime = self.first.and_hms_opt(0, 0, 0).unwrap_or_default() + seconds;
        self.zone
            .from_local_datetime(&wall)
            .earliest()
            .or_else(|| {
                self.zone
                    .from_local_datetime(&(wall + Duration::hours(1)))
                    .earliest()
            })
            .unwrap_or_else(|| self.zone.from_utc_datetime(&wall))
    }

    /// `2027-04-24T09:00:00+01:00`.
    pub fn iso(&self, minutes: f64) -> String {
        iso(&self.local(minutes))
    }

    /// `16:30`; `4:30 pm`.
    pub fn time(&self, minutes: f64) -> String {
        self.write_time(&self.local(minutes))
    }

    /// The time of day of a local time.
    pub fn write_time(&self, time: &impl Timelike) -> String {
        match self.style {
            DateStyle::British => format!("{:02}:{:02}", time.hour(), time.minute()),
            DateStyle::American => {
                let (afternoon, hour) = time.hour12();
                let half = if afternoon { "pm" } else { "am" };
                format!("{hour}:{:02} {half}", time.minute())
            }
        }
    }

    /// `Sat 24 April 2027`; `Sat, April 24, 2027`.
    pub fn date(&self, date: NaiveDate) -> String {
        match self.style {
            DateStyle::British => date.format("%a %-d %B %Y").to_string(),
            DateStyle::American => date.format("%a, %B %-d, %Y").to_string(),
        }
    }

    /// All course dates in short: `24 and 25 April 2027`; `May 7, 8 and 9, 2027`.
    pub fn dates(&self, dates: &[NaiveDate]) -> String {
        let one_month = dates
            .windows(2)
            .all(|pair| (pair[0].year(), pair[0].month()) == (pair[1].year(), pair[1].month()));
        let Some(last) = dates.last() else {
            return String::new();
        };
        if !one_month {
            return list(
                &dates
                    .iter()
                    .map(|date| self.date(*date))
                    .collect::<Vec<_>>(),
            );
        }
        let days = list(
            &dates
                .iter()
                .map(|date| date.day().to_string())
                .collect::<Vec<_>>(),
        );
        match self.style {
            DateStyle::British => format!("{days} {}", last.format("%B %Y")),
            DateStyle::American => format!("{} {days}, {}", last.format("%B"), last.year()),
        }
    }
}

/// `2027-04-24T09:00:00+01:00`.
pub(crate) fn iso(time: &DateTime<Tz>) -> String {
    time.to_rfc3339_opts(SecondsFormat::Secs, false)
}

/// `a, b and c`.
pub(crate) fn list(words: &[String]) -> String {
    match words {
        [] => String::new(),
        [one] => one.clone(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}
