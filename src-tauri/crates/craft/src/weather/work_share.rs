//! At what share of the usual rate work goes on in heat and rain, and when.
//!
//! Pure figures for the calendar, which multiplies them where they meet.

use super::bands::heat_band;
use crate::course::WeatherGiven;
use crate::tables::WeatherTable;
use chrono::NaiveTime;

/// Minutes in an hour.
const HOUR: u32 = 60;

/// A part of the day in which work goes on at a share of the usual rate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Slowed {
    /// When it begins, on the local clock.
    pub from: NaiveTime,
    /// When it ends, later than it begins.
    pub to: NaiveTime,
    /// From 0, where no work is done, up to 1, the usual rate.
    pub share: f64,
}

/// The hot part of the day with the share of each hour that is worked, `(60 - rest) / 60`.
/// None where the day reaches no band of heat, or one that asks for no rest.
///
/// The rest of a band is beside the day's own breaks: those are no time of work at all.
pub fn hot_share(given: &WeatherGiven, table: &WeatherTable) -> Option<Slowed> {
    let heat = &table.heat;
    let rest = heat_band(given, heat)?.rest_minutes.min(HOUR);
    (0 < rest && heat.hot_from < heat.hot_to).then(|| Slowed {
        from: heat.hot_from,
        to: heat.hot_to,
        share: f64::from(HOUR - rest) / f64::from(HOUR),
    })
}

/// The spells of rain, each with the rate at which work goes on in it.
pub fn rain_shares(given: &WeatherGiven, table: &WeatherTable) -> Vec<Slowed> {
    let slowed = |spell: &crate::course::Spell| Slowed {
        from: spell.start,
        to: spell.end(),
        share: table.rain.rate.clamp(0.0, 1.0),
    };
    given.rain.iter().map(slowed).collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::{given, table, time};
    use super::*;
    use crate::course::Spell;
    use crate::quantity::fahrenheit;
    use proptest::prelude::*;

    /// By hand: 90 °F at 50 % feels like 95, which asks for 15 minutes of rest: 45 of 60.
    #[test]
    fn rest_is_taken_off_the_hours_of_heat() {
        let mut hot = given(90.0);
        hot.humidity = Some(0.5);
        let slowed = hot_share(&hot, &table()).expect("slowed");
        assert_eq!((slowed.from, slowed.to), (time(11, 0), time(17, 0)));
        assert!((slowed.share - 0.75).abs() < 1e-12);
        // 132 °F: no work at all.
        hot.humidity = Some(1.0);
        assert!(hot_share(&hot, &table()).expect("slowed").share.abs() < 1e-12);
        assert_eq!(hot_share(&given(70.0), &table()), None);
        assert_eq!(hot_share(&WeatherGiven::default(), &table()), None);
    }

    #[test]
    fn each_spell_of_rain_slows_its_own_minutes() {
        let spells = [(10, 30, 45), (14, 0, 90)].map(|(hour, minute, minutes)| Spell {
            start: time(hour, minute),
            minutes,
        });
        let wet = WeatherGiven {
            rain: spells.to_vec(),
            ..WeatherGiven::default()
        };
        let ours: Vec<_> = rain_shares(&wet, &table())
            .into_iter()
            .map(|slowed| (slowed.from, slowed.to))
            .collect();
        assert_eq!(
            ours,
            [(time(10, 30), time(11, 15)), (time(14, 0), time(15, 30))]
        );
        assert!(rain_shares(&WeatherGiven::default(), &table()).is_empty());
    }

    proptest! {
        /// Hotter days are never worked more of.
        #[test]
        fn shares_lie_between_none_and_all(
            high_f in -60.0..140.0, humidity in 0.0..=1.0, sun: bool, more in 0.0..20.0
        ) {
            let share = |high_f: f64| {
                let mut given = given(high_f);
                (given.humidity, given.full_sun) = (Some(humidity), sun);
                hot_share(&given, &table()).map_or(1.0, |slowed| slowed.share)
            };
            prop_assert!((0.0..=1.0).contains(&share(high_f)));
            // Below 40 % the published formula itself is not steady.
            if 0.4 <= humidity && 80.0 <= high_f && high_f + more <= 110.0 {
                prop_assert!(share(high_f + more) <= share(high_f));
            }
        }

        #[test]
        fn sun_never_makes_it_cooler(high_f in -20.0..120.0, humidity in 0.0..=1.0) {
            let felt = |sun| {
                let mut given = given(high_f);
                (given.humidity, given.full_sun) = (Some(humidity), sun);
                super::super::bands::felt_heat(&given, &table().heat)
            };
            prop_assert!(felt(false) <= felt(true));
            prop_assert_eq!(felt(true).is_some(), fahrenheit(40.0) <= fahrenheit(high_f));
        }
    }
}
