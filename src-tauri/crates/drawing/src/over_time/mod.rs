//! Pictures whose axis is time or length: the days as bars, the chance of finishing, the day's
//! progress.

pub(crate) mod bars;
pub(crate) mod chance_curve;
pub(crate) mod clock;
pub(crate) mod day_axis;
pub(crate) mod flags;
pub(crate) mod hours;
pub(crate) mod key;
pub(crate) mod lanes;
pub(crate) mod length_axis;
#[cfg(test)]
mod made_up;
pub(crate) mod plot;
pub(crate) mod progress;
pub(crate) mod progress_words;
#[cfg(test)]
pub(crate) mod sample;
pub(crate) mod timetable;
pub(crate) mod timetable_bars;
pub(crate) mod timetable_words;
pub(crate) mod whiskers;
