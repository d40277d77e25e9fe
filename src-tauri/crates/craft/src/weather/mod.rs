//! Weather: how hot or cold it feels, what that asks for, and what it slows.
//!
//! Figures of the forecast come in as [`WeatherGiven`](crate::course::WeatherGiven), bands
//! and words as [`WeatherTable`](crate::tables::WeatherTable). [`heat_index`](fn@heat_index)
//! and [`wind_chill`](fn@wind_chill) are the published formulas; [`bands`] finds the band of
//! a day; [`work_share`] says at what share of the usual rate work goes on, and when;
//! [`day`] puts it all together for the person who has to decide.

mod asks;
pub mod bands;
pub mod day;
mod heat_index;
#[cfg(test)]
mod sample;
mod wind_chill;
pub mod work_share;

pub use asks::{Ask, COLD_WORDS, HEAT_WORDS, ICE_WORDS, LIGHTNING_WORDS, RAIN_WORDS, WIND_WORDS};
pub use day::DayWeather;
pub use heat_index::{heat_index, is_beyond_the_chart};
pub use wind_chill::wind_chill;
pub use work_share::{Slowed, hot_share, rain_shares};
