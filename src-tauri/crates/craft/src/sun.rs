//! Sunrise, sunset and civil twilight at the venue on each course day.
//!
//! Computed with the solar position algorithm of Reda and Andreas (2003), through the
//! `solar-positioning` crate: the sun's centre at -0.8333° for rise and set, at -6° for
//! civil twilight, at sea level.

use crate::course::{Course, Venue};
use chrono::{DateTime, NaiveDate, Timelike};
use chrono_tz::Tz;
use solar_positioning::delta_t::estimate_from_date_like;
use solar_positioning::{Events, Horizon, HorizonState, Location, SolarEvents};
use std::cell::RefCell;
use std::collections::BTreeMap;

/// Seconds between dynamical and universal time if none can be estimated; about today's.
const DELTA_T_SECONDS: f64 = 70.0;

/// The sun on one local date. A time is `None` on a date on which it does not come.
#[derive(Debug, Clone, PartialEq)]
pub struct SunDay {
    /// The date.
    pub date: NaiveDate,
    /// The upper edge appears.
    pub sunrise: Option<DateTime<Tz>>,
    /// The upper edge disappears.
    pub sunset: Option<DateTime<Tz>>,
    /// Light enough to work without lamps.
    pub civil_dawn: Option<DateTime<Tz>>,
    /// No longer so.
    pub civil_dusk: Option<DateTime<Tz>>,
    /// When it is light enough to work without lamps, in minutes since midnight: the whole date
    /// where the sun stays up or not far down, nothing where it stays farther down.
    pub light: Vec<[f64; 2]>,
}

/// Minutes in a day on the wall clock.
const DAY_MINUTES: f64 = 1440.0;

/// The sun at the venue on a date. On a date the algorithm can't reckon it neither rises nor sets,
/// and the date counts as light.
pub fn sun(venue: &Venue, date: NaiveDate) -> SunDay {
    let events = events(venue, date);
    let [at_rise, at_twilight] = [Horizon::SunriseSunset, Horizon::CivilTwilight].map(|horizon| {
        let mut events = events.iter();
        events.find(|(of, _)| *of == horizon).map(|(_, it)| it)
    });
    let first_rise = |events: &Events<DateTime<Tz>>| events.rises.first().copied();
    let last_set = |events: &Events<DateTime<Tz>>| events.sets.last().copied();
    SunDay {
        date,
        sunrise: at_rise.and_then(first_rise),
        sunset: at_rise.and_then(last_set),
        civil_dawn: at_twilight.and_then(first_rise),
        civil_dusk: at_twilight.and_then(last_set),
        light: at_twilight.map_or_else(|| vec![[0.0, DAY_MINUTES]], light),
    }
}

/// The sun at the venue. Every change to a course that is tried asks again about the same dates,
/// and reckoning one takes as long as following hundreds of courses.
#[derive(Debug, Default)]
pub(crate) struct Suns(RefCell<BTreeMap<NaiveDate, SunDay>>);

impl Suns {
    /// With these dates at the venue looked up before.
    pub(crate) fn known_of(days: BTreeMap<NaiveDate, SunDay>) -> Self {
        Self(RefCell::new(days))
    }

    /// Every date looked up so far.
    pub(crate) fn known(&self) -> BTreeMap<NaiveDate, SunDay> {
        self.0.borrow().clone()
    }

    /// The sun on each day of a course at this venue.
    pub(crate) fn of(&self, course: &Course) -> Vec<SunDay> {
        let mut known = self.0.borrow_mut();
        let days = course.days.iter().map(|day| day.date);
        days.map(|date| {
            let day = known.entry(date);
            day.or_insert_with(|| sun(&course.venue, date)).clone()
        })
        .collect()
    }
}

/// From civil dawn to civil dusk, in whole minutes since midnight and in order.
fn light(events: &Events<DateTime<Tz>>) -> Vec<[f64; 2]> {
    let minutes = |time: &DateTime<Tz>| f64::from(time.num_seconds_from_midnight()) / 60.0;
    let mut light = Vec::new();
    let mut since = (events.state_at_start != HorizonState::Below).then_some(0.0);
    let dawns = events.rises.iter().map(|it| (minutes(it).ceil(), true));
    let dusks = events.sets.iter().map(|it| (minutes(it).floor(), false));
    let mut changes: Vec<(f64, bool)> = dawns.chain(dusks).collect();
    changes.sort_by(|a, b| a.0.total_cmp(&b.0));
    for (at, is_dawn) in changes {
        match since {
            Some(from) if !is_dawn => {
                light.push([from, at]);
                since = None;
            }
            None if is_dawn => since = Some(at),
            _ => {}
        }
    }
    light.extend(since.map(|from| [from, DAY_MINUTES]));
    light
}

/// Rises and sets at both horizons; nothing of a date the algorithm can't reckon.
fn events(venue: &Venue, date: NaiveDate) -> Vec<(Horizon, Events<DateTime<Tz>>)> {
    let here = Location {
        latitude: venue.latitude,
        longitude: venue.longitude,
    };
    let delta_t = estimate_from_date_like(&date).unwrap_or(DELTA_T_SECONDS);
    let both = [Horizon::SunriseSunset, Horizon::CivilTwilight];
    SolarEvents::new()
        .for_date_multiple(date, &venue.time_zone, here, delta_t, both)
        .unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lit(latitude: f64, zone: Tz, date: [u32; 2]) -> Vec<[f64; 2]> {
        let venue = Venue {
            name: String::new(),
            country: None,
            latitude,
            longitude: -2.4,
            time_zone: zone,
            longest_wall: None,
        };
        let date = NaiveDate::from_ymd_opt(2027, date[0], date[1]).expect("a date");
        sun(&venue, date).light
    }

    /// At 54.2 degrees north and 2.4 west the sun sets at about 15:48 on 18 December and civil
    /// dusk comes some 40 minutes later (both from memory of the almanac, to a few minutes).
    #[test]
    fn a_winter_day_is_light_from_dawn_to_dusk() {
        let lit = lit(54.2, Tz::Europe__London, [12, 18]);
        assert_eq!(lit.len(), 1);
        let [dawn, dusk] = lit[0];
        assert!((460.0..470.0).contains(&dawn), "{dawn}");
        assert!((983.0..993.0).contains(&dusk), "{dusk}");
        assert!((dawn.fract() + dusk.fract()).abs() < 1e-12);
    }

    /// Beyond the polar circle: up all day in June, far down all day in December at 80 degrees.
    #[test]
    fn a_day_may_be_all_light_or_all_dark() {
        assert_eq!(lit(70.0, Tz::UTC, [6, 21]), [[0.0, 1440.0]]);
        assert_eq!(lit(80.0, Tz::UTC, [12, 21]), [[0.0; 2]; 0]);
    }

    /// Where the clock is far from the sun the evening's dusk comes after midnight.
    #[test]
    fn dusk_after_midnight_is_the_evening_before() {
        let lit = lit(54.2, Tz::Pacific__Kiritimati, [6, 21]);
        assert_eq!(lit.len(), 2, "{lit:?}");
        assert!(lit[0][0].abs() < 1e-12 && (lit[1][1] - 1440.0).abs() < 1e-12);
    }
}
