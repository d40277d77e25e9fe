//! Which band of heat, cold or wind a day falls into.

use super::{heat_index, is_beyond_the_chart, wind_chill};
use crate::course::WeatherGiven;
use crate::quantity::{Temperature, Units};
use crate::tables::{ColdBand, HeatBand, HeatTable, WeatherTable, WindBand};

/// The heat index of the day in the shade; None where high or humidity is not said, or the
/// index means nothing.
pub fn shade_index(given: &WeatherGiven) -> Option<Temperature> {
    heat_index(given.high?, given.humidity?)
}

/// How hot it feels at the wall: the heat index in the shade, and in full sun what the sun
/// adds. Where the humidity is not said the thermometer alone counts, which is mostly too
/// little in damp air and never taken for a heat index.
pub fn felt_heat(given: &WeatherGiven, table: &HeatTable) -> Option<Temperature> {
    let shade = match given.humidity {
        Some(_) => shade_index(given)?,
        None => given.high?,
    };
    Some(in_sun(shade, given, table).unwrap_or(shade))
}

/// A heat index of the shade in full sun, where there is full sun and it is hot enough for
/// that to count.
pub(super) fn in_sun(
    shade: Temperature,
    given: &WeatherGiven,
    table: &HeatTable,
) -> Option<Temperature> {
    let counts = given.full_sun && table.full_sun_from <= shade;
    counts.then(|| shade + table.full_sun_adds)
}

/// Whether the day goes beyond the published chart of the heat index, in full sun with what the
/// sun adds.
pub fn is_beyond(given: &WeatherGiven, table: &HeatTable) -> bool {
    let felt = given.high.zip(felt_heat(given, table));
    felt.is_some_and(|(air, felt)| is_beyond_the_chart(air, felt))
}

/// The band of heat the day reaches, if any; beyond the chart the hottest.
pub fn heat_band<'t>(given: &WeatherGiven, table: &'t HeatTable) -> Option<&'t HeatBand> {
    let felt = felt_heat(given, table)?;
    let beyond = is_beyond(given, table);
    let reached = table.bands.iter();
    let reached = reached.filter(|band| beyond || band.from <= felt);
    reached.max_by(|a, b| a.from.value.total_cmp(&b.from.value))
}

/// The coldest the air gets: the low, or the high where no low is said.
fn coldest(given: &WeatherGiven) -> Option<Temperature> {
    given.low.or(given.high)
}

/// The wind chill of the coldest hour; None where it is not cold, calm, or not said.
pub fn chill(given: &WeatherGiven, units: Units) -> Option<Temperature> {
    wind_chill(coldest(given)?, given.wind?, units)
}

/// How cold it feels in the coldest hour: the wind chill, or the air where there is none.
pub fn felt_cold(given: &WeatherGiven, units: Units) -> Option<Temperature> {
    chill(given, units).or_else(|| coldest(given))
}

/// The band of cold the day reaches, if any.
pub fn cold_band<'t>(
    given: &WeatherGiven,
    table: &'t WeatherTable,
    units: Units,
) -> Option<&'t ColdBand> {
    let felt = felt_cold(given, units)?;
    let reached = table.cold.iter().filter(|band| felt <= band.at_or_below);
    reached.min_by(|a, b| a.at_or_below.value.total_cmp(&b.at_or_below.value))
}

/// The band of wind the day reaches, if any.
pub fn wind_band<'t>(given: &WeatherGiven, table: &'t WeatherTable) -> Option<&'t WindBand> {
    let wind = given.wind?;
    let reached = table.wind.iter().filter(|band| band.from <= wind);
    reached.max_by(|a, b| a.from.value.total_cmp(&b.from.value))
}

#[cfg(test)]
mod tests {
    use super::super::sample::{given, table};
    use super::*;
    use crate::quantity::{celsius, fahrenheit, in_fahrenheit, miles_per_hour};

    /// The National Weather Service's chart: 90 °F feels like 95 at 50 %, 106 at 70 % and 132
    /// at 100 %; 15 °F more in full sun.
    #[test]
    fn heat_goes_by_index_and_sun() {
        for (high_f, humidity, sun, band) in [
            (78.0, Some(0.3), false, None),
            (78.0, Some(0.3), true, None),
            (84.0, Some(0.4), false, Some("caution")),
            (90.0, Some(0.5), false, Some("extreme-caution")),
            (90.0, Some(0.5), true, Some("danger")),
            (90.0, Some(0.7), false, Some("danger")),
            (90.0, Some(1.0), false, Some("extreme-danger")),
            (95.0, None, false, Some("extreme-caution")),
            (95.0, None, true, Some("danger")),
        ] {
            let mut given = given(high_f);
            (given.humidity, given.full_sun) = (humidity, sun);
            let table = table();
            let ours = heat_band(&given, &table.heat).map(|band| band.id.as_str());
            assert_eq!(ours, band, "{high_f} {humidity:?} {sun}");
        }
        assert_eq!(heat_band(&WeatherGiven::default(), &table().heat), None);
    }

    #[test]
    fn cold_goes_by_wind_chill_and_in_calm_air_by_the_air() {
        // The chart: 0 °F feels like -19 at 15 mph; skin freezes in 30 minutes from -18.
        let at = |low_f: f64, mph: Option<f64>| {
            let given = WeatherGiven {
                low: Some(fahrenheit(low_f)),
                wind: mph.map(miles_per_hour),
                ..WeatherGiven::default()
            };
            let table = table();
            cold_band(&given, &table, Units::Imperial).map(|band| band.id.clone())
        };
        assert_eq!(at(60.0, Some(30.0)), None);
        assert_eq!(at(5.0, None).as_deref(), Some("cold"));
        assert_eq!(at(5.0, Some(2.0)).as_deref(), Some("cold"));
        assert_eq!(at(0.0, Some(15.0)).as_deref(), Some("frostbite-30"));
    }

    #[test]
    fn without_a_low_the_high_is_the_coldest_that_is_known() {
        let given = WeatherGiven {
            high: Some(celsius(-5.0)),
            ..WeatherGiven::default()
        };
        let felt = felt_cold(&given, Units::Metric).map(in_fahrenheit);
        assert!(felt.is_some_and(|felt| (felt - 23.0).abs() < 1e-9));
    }
}
