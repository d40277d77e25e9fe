//! Dates and times: minutes of the course calendar as local time, and as people write them.

use chrono::{
    DateTime, Datelike, Duration, NaiveDate, NaiveDateTime, SecondsFormat, TimeZone, Timelike,
};
use chrono_tz::Tz;
use craft::course::Course;
use craft::pace::calendar::{DAY_MINUTES, to_the_minute};

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

    /// `16:30`; `4:30 pm`, to the nearest minute.
    pub fn time(&self, minutes: f64) -> String {
        self.write_time(&self.local(to_the_minute(minutes)))
    }

    /// The time of day of a local time, to the nearest minute.
    pub fn write_time(&self, time: &impl Timelike) -> String {
        // A leap second, which would stand past the minute, is read as the second before it.
        let nanoseconds = f64::from(time.nanosecond().min(999_999_999)) / 1e9;
        let seconds = f64::from(time.num_seconds_from_midnight()) + nanoseconds;
        let of_day = to_the_minute(seconds / 60.0).rem_euclid(DAY_MINUTES);
        let (hour, minute) = ((of_day / 60.0).floor(), of_day % 60.0);
        match self.style {
            DateStyle::British => format!("{hour:02}:{minute:02}"),
            DateStyle::American => {
                let half = if hour < 12.0 { "am" } else { "pm" };
                let hour = (hour + 11.0) % 12.0 + 1.0;
                format!("{hour}:{minute:02} {half}")
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

#[cfg(test)]
mod tests {
    use super::*;
    use chrono::NaiveTime;

    fn clock(style: DateStyle) -> Clock {
        Clock {
            first: NaiveDate::default(),
            zone: Tz::UTC,
            style,
        }
    }

    #[test]
    fn times_are_written_to_the_nearest_minute() {
        for (minutes, british, american) in [
            (626.4, "10:26", "10:26 am"),
            (626.6, "10:27", "10:27 am"),
            // Less than half a minute, though it is half of one to the second.
            (626.495, "10:26", "10:26 am"),
            (719.6, "12:00", "12:00 pm"),
            (1439.7, "00:00", "12:00 am"),
            (780.0, "13:00", "1:00 pm"),
            (1440.0 + 59.5, "01:00", "1:00 am"),
        ] {
            assert_eq!(clock(DateStyle::British).time(minutes), british);
            assert_eq!(clock(DateStyle::American).time(minutes), american);
        }
        // Sunrise comes to the second.
        let sunrise = NaiveTime::from_hms_opt(5, 50, 41).expect("a time");
        assert_eq!(clock(DateStyle::British).write_time(&sunrise), "05:51");
        let before = NaiveTime::from_hms_opt(5, 50, 29).expect("a time");
        assert_eq!(clock(DateStyle::British).write_time(&before), "05:50");
    }
}
