//! When the group does less than usual: tired, in the heat, in the rain, with people away.

use super::Fatigue;
use super::calendar::{Rated, Span, left_of, minutes_to};
use crate::course::{Day, Effect, Running};
use crate::people::Presence;
use crate::tables::{PaceTable, WeatherTable};
use crate::weather::{Slowed, hot_share, rain_shares};

/// Minutes in an hour.
const HOUR: f64 = 60.0;

/// What changes the rate of a course.
#[derive(Debug, Clone, Copy)]
pub struct Asked<'a> {
    /// The course days.
    pub days: &'a [Day],
    /// How they are run.
    pub running: &'a Running,
    /// How people tire.
    pub pace: &'a PaceTable,
    /// What weather does.
    pub weather: &'a WeatherTable,
    /// Who is there when, day by day.
    pub present: &'a [Vec<Presence>],
    /// What is no time to build in.
    pub closed: &'a [Span],
}

/// Every stretch with a rate of its own.
pub fn rates(asked: &Asked<'_>) -> Vec<Rated> {
    let mut rated = Vec::new();
    for (number, day) in asked.days.iter().enumerate() {
        let counts = |effect| asked.running.counts(effect);
        let between = |from, to, rate| Rated {
            span: Span {
                from: minutes_to(asked.days, day.date, from),
                to: minutes_to(asked.days, day.date, to),
            },
            rate,
        };
        let slowed = |slowed: Slowed| between(slowed.from, slowed.to, slowed.share);
        let parts = asked.present.get(number).into_iter().flatten();
        let fewer = parts.filter(|part| part.share < 1.0);
        rated.extend(fewer.map(|part| between(part.from, part.to, part.share)));
        if counts(Effect::Fatigue) {
            rated.extend(tiring(asked, day));
        }
        if counts(Effect::Heat) {
            rated.extend(hot_share(&day.weather, asked.weather).map(slowed));
        }
        if counts(Effect::Rain) {
            let rain = rain_shares(&day.weather, asked.weather).into_iter();
            rated.extend(rain.map(slowed));
        }
    }
    rated
}

/// Working hour by working hour of a day, each at the rate of its middle.
fn tiring(asked: &Asked<'_>, day: &Day) -> Vec<Rated> {
    let hours = Span {
        from: minutes_to(asked.days, day.date, day.start),
        to: minutes_to(asked.days, day.date, day.finish),
    };
    let mut worked = 0.0;
    let mut rated = Vec::new();
    for free in left_of(hours, asked.closed) {
        let mut from = free.from;
        while from < free.to {
            let to = (from + to_the_next_hour(worked)).min(free.to);
            if to <= from {
                // Far from the first day a clock in minutes is coarser than what is left.
                break;
            }
            let rate = factor(&asked.pace.fatigue, worked);
            if rate < 1.0 {
                let span = Span { from, to };
                rated.push(Rated { span, rate });
            }
            worked += to - from;
            from = to;
        }
    }
    rated
}

/// Minutes until so many worked are a whole number of hours; a whole hour from there.
fn to_the_next_hour(worked: f64) -> f64 {
    HOUR - worked % HOUR
}

/// The rate in the middle of the hour that so many minutes of work fall into.
fn factor(fatigue: &Fatigue, worked: f64) -> f64 {
    fatigue.factor((worked / HOUR + 1e-9).floor() + 0.5)
}
