//! Minutes of the course calendar as people read them off a clock.

use craft::pace::calendar::{DAY_MINUTES, to_the_minute};

const HOUR: f64 = 60.0;

/// How the time of day is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Clock {
    /// `16:30`.
    #[default]
    TwentyFour,
    /// `4:30 pm`.
    Twelve,
}

impl Clock {
    /// The time of day of a position in the calendar, to the minute.
    pub(crate) fn time(self, minutes: f64) -> String {
        let within = to_the_minute(minutes).rem_euclid(DAY_MINUTES);
        let (hour, minute) = ((within / HOUR).floor(), within % HOUR);
        match self {
            Self::TwentyFour => format!("{hour:02}:{minute:02}"),
            Self::Twelve => {
                let (hour, half) = twelve(hour);
                format!("{hour}:{minute:02} {half}")
            }
        }
    }

    /// A whole hour of a day as it stands on an axis: `9`, `16`; `9 am`, `4 pm`.
    pub(crate) fn hour(self, hour: f64) -> String {
        match self {
            Self::TwentyFour => format!("{hour}"),
            Self::Twelve => {
                let (hour, half) = twelve(hour);
                format!("{hour} {half}")
            }
        }
    }
}

fn twelve(hour: f64) -> (f64, &'static str) {
    let half = if hour.rem_euclid(24.0) < 12.0 {
        "am"
    } else {
        "pm"
    };
    let hour = hour.rem_euclid(12.0);
    (if hour < 1.0 { 12.0 } else { hour }, half)
}

/// The midnight a position in the calendar comes after.
pub(crate) fn midnight_before(minutes: f64) -> f64 {
    (minutes / DAY_MINUTES).floor() * DAY_MINUTES
}

/// The whole hours of a day from one to another, both counted from its midnight in minutes,
/// every so many of them.
pub(crate) fn whole_hours(from: f64, to: f64, every: f64) -> impl Iterator<Item = f64> {
    let first = (from / HOUR / every).ceil() * every;
    let count = ((to / HOUR - first) / every + 1e-9).floor() + 1.0;
    crate::paper::strewn::steps(count).map(move |step| first + step * every)
}

/// How long something lasts: `45 min`, `2 h`, `1 h 15 min`.
pub(crate) fn lasting(minutes: f64) -> String {
    let minutes = minutes.round();
    let (hours, left) = ((minutes / HOUR).floor(), minutes % HOUR);
    match (hours < 1.0, left < 1.0) {
        (true, _) => format!("{left} min"),
        (false, true) => format!("{hours} h"),
        (false, false) => format!("{hours} h {left} min"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn times_are_read_off_either_clock() {
        for (minutes, day, halves) in [
            (0.0, "00:00", "12:00 am"),
            (545.0, "09:05", "9:05 am"),
            (720.0, "12:00", "12:00 pm"),
            (1440.0 + 990.4, "16:30", "4:30 pm"),
            (1439.8, "00:00", "12:00 am"),
        ] {
            assert_eq!(Clock::TwentyFour.time(minutes), day);
            assert_eq!(Clock::Twelve.time(minutes), halves);
        }
        assert_eq!(Clock::Twelve.hour(12.0), "12 pm");
        assert_eq!(Clock::TwentyFour.hour(9.0), "9");
        assert!((midnight_before(3000.0) - 2880.0).abs() < 1e-9);
    }

    #[test]
    fn whole_hours_lie_within() {
        let hours = |from, to, every| whole_hours(from, to, every).collect::<Vec<f64>>();
        assert_eq!(hours(540.0, 720.0, 1.0), [9.0, 10.0, 11.0, 12.0]);
        assert_eq!(hours(550.0, 710.0, 1.0), [10.0, 11.0]);
        assert_eq!(hours(540.0, 1020.0, 4.0), [12.0, 16.0]);
        assert_eq!(hours(550.0, 560.0, 1.0), [] as [f64; 0]);
    }

    #[test]
    fn lengths_of_time_are_short() {
        assert_eq!(
            [45.0, 120.0, 75.0].map(lasting),
            ["45 min", "2 h", "1 h 15 min"]
        );
    }
}
