//! The weather of one course day, as its instructor types it in from the forecast.

use crate::quantity::{Speed, Temperature};
use chrono::{NaiveTime, TimeDelta};

/// What the forecast says of a day; what it does not say is not guessed.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct WeatherGiven {
    /// The warmest it gets, in the shade.
    pub high: Option<Temperature>,
    /// The coldest it gets; never above `high`.
    pub low: Option<Temperature>,
    /// Relative humidity in the heat of the day, from 0 for dry to 1 for damp air.
    pub humidity: Option<f64>,
    /// The wind, without its gusts.
    pub wind: Option<Speed>,
    /// The wall lies in full sun and the sky is clear.
    pub full_sun: bool,
    /// When it rains: in order, within the day, none inside another.
    pub rain: Vec<Spell>,
}

/// A spell of rain on the local clock.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Spell {
    /// When it begins.
    pub start: NaiveTime,
    /// How long it lasts.
    pub minutes: u32,
}

impl Spell {
    /// When it ends. A spell read from a course file ends within its day.
    pub fn end(self) -> NaiveTime {
        self.start + TimeDelta::minutes(self.minutes.into())
    }
}
