//! When a row of a table applies: what the course has, and what its days are like.

use crate::course::{Course, Day, End, FrameKind, Venue, WallKind};
use crate::kit::Heat;
use crate::quantity::metres;
use crate::sun::SunDay;
use crate::tables::Applies;
use crate::wall::Ground;
use chrono::Datelike;

/// What holds of one course, for cautions, kit rules and lessons that are not for every course.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Conditions(Vec<Applies>);

impl Conditions {
    /// What holds of this course in these days' light.
    pub fn of(course: &Course, sun: &[SunDay]) -> Self {
        let holds = |when: &Applies| match when {
            Applies::Always => true,
            Applies::Bars => course.frames.kind == FrameKind::Bar,
            Applies::Timber => course.frames.kind == FrameKind::Timber,
            Applies::Retaining => matches!(course.wall.kind, WallKind::Retaining(_)),
            Applies::Curves => course.wall.line.iter().any(|one| one.bend.is_some()),
            Applies::Slopes => !Ground::new(course.wall.ground.clone()).is_level(),
            Applies::Footing => course.wall.footing.is_some(),
            Applies::Cope => metres(0.0) < course.wall.cope_height,
            Applies::Throughs => !course.wall.through_rows.is_empty(),
            Applies::Heads => course.wall.ends.contains(&End::Head),
            Applies::OldWall => course.stone.old_wall.is_some(),
            Applies::Cold => in_season(course, Season::Cold),
            // The instructor knows the forecast, the calendar does not.
            Applies::Hot => in_season(course, Season::Hot) || course.kit.heat == Some(Heat::Hot),
            Applies::Dark => course
                .days
                .iter()
                .zip(sun)
                .any(|(day, sun)| reaches_dark(day, sun)),
        };
        Self(
            Applies::ALL
                .into_iter()
                .filter(|when| holds(when))
                .collect(),
        )
    }

    /// Just these, and what always holds.
    pub fn just(these: &[Applies]) -> Self {
        let all = [Applies::Always].into_iter().chain(these.iter().copied());
        Self(all.collect())
    }

    /// Whether a row with this word counts.
    pub fn met(&self, when: Applies) -> bool {
        self.0.contains(&when)
    }

    /// Whether one at least of these words counts.
    pub fn met_any(&self, these: &[Applies]) -> bool {
        these.iter().any(|when| self.met(*when))
    }
}

/// The time of year as people who work outdoors feel it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Season {
    /// Frost is likely.
    Cold,
    /// Neither.
    Mild,
    /// Sun and heat are likely.
    Hot,
}

/// By month, turned round south of the equator; within the tropics always hot. Common
/// practice, no source: the instructor looks at the forecast.
pub fn season(venue: &Venue, day: &Day) -> Season {
    if venue.latitude.abs() < 23.4 {
        return Season::Hot;
    }
    let month = if venue.latitude < 0.0 {
        (day.date.month() + 5) % 12 + 1
    } else {
        day.date.month()
    };
    match month {
        11 | 12 | 1..=3 => Season::Cold,
        6..=8 => Season::Hot,
        _ => Season::Mild,
    }
}

fn in_season(course: &Course, wanted: Season) -> bool {
    let mut days = course.days.iter();
    days.any(|day| season(&course.venue, day) == wanted)
}

/// The day's hours begin before civil dawn or end after civil dusk, or there is no day.
fn reaches_dark(day: &Day, sun: &SunDay) -> bool {
    let dawn = sun.civil_dawn.map(|time| time.time());
    let dusk = sun.civil_dusk.map(|time| time.time());
    match (dawn, dusk) {
        (Some(dawn), Some(dusk)) if dawn < dusk => day.start < dawn || dusk < day.finish,
        // Twilight all night, or a dusk after midnight: light enough in the day's hours.
        _ => sun.sunrise.is_none() && sun.sunset.is_none() && sun.civil_dawn.is_none(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::course::WeatherGiven;
    use chrono::{NaiveDate, NaiveTime};
    use chrono_tz::Tz;

    #[test]
    fn the_season_turns_round_south_of_the_equator() {
        let at = |latitude: f64, month: u32| {
            let venue = Venue {
                name: String::new(),
                country: None,
                latitude,
                longitude: 0.0,
                time_zone: Tz::UTC,
                longest_wall: None,
            };
            let day = Day {
                date: NaiveDate::from_ymd_opt(2027, month, 15).expect("a date"),
                start: NaiveTime::MIN,
                finish: NaiveTime::MIN,
                breaks: Vec::new(),
                weather: WeatherGiven::default(),
            };
            season(&venue, &day)
        };
        for (latitude, month, season) in [
            (54.0, 1, Season::Cold),
            (54.0, 4, Season::Mild),
            (54.0, 7, Season::Hot),
            (-38.0, 1, Season::Hot),
            (-38.0, 7, Season::Cold),
            (-38.0, 10, Season::Mild),
            (10.0, 1, Season::Hot),
        ] {
            assert_eq!(
                at(latitude, month),
                season,
                "{latitude} degrees, month {month}"
            );
        }
    }

    #[test]
    fn what_always_holds_needs_no_naming() {
        let bars = Conditions::just(&[Applies::Bars]);
        assert!(bars.met(Applies::Always) && bars.met(Applies::Bars));
        assert!(!bars.met(Applies::Timber));
    }
}
