//! Sunrise, sunset and civil twilight at the venue on each course day.
//!
//! Computed with the solar position algorithm of Reda and Andreas (2003), through the
//! `solar-positioning` crate: the sun's centre at -0.8333° for rise and set, at -6° for
//! civil twilight, at sea level.

use crate::course::Venue;
use chrono::{DateTime, NaiveDate};
use chrono_tz::Tz;
use solar_positioning::delta_t::estimate_from_date_like;
use solar_positioning::{Horizon, Location, SolarEvents};

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
}

/// The sun at the venue on a date.
pub fn sun(venue: &Venue, date: NaiveDate) -> SunDay {
    let (sunrise, sunset) = crossing(venue, date, Horizon::SunriseSunset);
    let (civil_dawn, civil_dusk) = crossing(venue, date, Horizon::CivilTwilight);
    SunDay {
        date,
        sunrise,
        sunset,
        civil_dawn,
        civil_dusk,
    }
}

type Crossing = (Option<DateTime<Tz>>, Option<DateTime<Tz>>);

/// The first rise and the last set of the date. A date the algorithm can't reckon has none.
fn crossing(venue: &Venue, date: NaiveDate, horizon: Horizon) -> Crossing {
    let here = Location {
        latitude: venue.latitude,
        longitude: venue.longitude,
    };
    let delta_t = estimate_from_date_like(&date).unwrap_or(DELTA_T_SECONDS);
    SolarEvents::new()
        .for_date(date, &venue.time_zone, here, delta_t, horizon)
        .map(|events| (events.rises.first().copied(), events.sets.last().copied()))
        .unwrap_or((None, None))
}
