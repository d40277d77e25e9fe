//! One day's weather for the person who has to decide: figures, bands, and what to do.

use super::asks::filled;
use super::bands::{
    chill, cold_band, felt_cold, felt_heat, heat_band, in_sun, is_beyond, shade_index,
};
use super::{
    Ask, COLD_WORDS, HEAT_WORDS, ICE_WORDS, LIGHTNING_WORDS, RAIN_WORDS, WIND_WORDS, bands,
};
use crate::course::{Spell, WeatherGiven};
use crate::quantity::{Temperature, Units, show_speed, show_temperature};
use crate::tables::{ColdBand, HeatBand, WeatherTable};
use chrono::NaiveTime;

/// What a day's weather comes to.
#[derive(Debug, Clone, PartialEq)]
pub struct DayWeather {
    /// It is hotter than the published chart of the heat index goes.
    pub beyond_the_chart: bool,
    /// In the shade; None beyond the chart, where high or humidity is not said, or it is too cold for one.
    pub heat_index: Option<Temperature>,
    /// The same with what full sun adds at most; None where there is no full sun, or it is
    /// too cool for the sun to count.
    pub full_sun_heat_index: Option<Temperature>,
    /// The band of heat, by the hotter of the two; by the thermometer alone where the
    /// humidity is not said.
    pub heat_band: Option<HeatBand>,
    /// In the coldest hour; None where it is not cold, calm, or not said.
    pub wind_chill: Option<Temperature>,
    /// The band of cold, by the wind chill or in calm air by the air.
    pub cold_band: Option<ColdBand>,
    /// What the day asks for, the most pressing first.
    pub asks: Vec<Ask>,
}

impl DayWeather {
    /// What this weather comes to; in the sentences figures are written in these units.
    pub fn of(given: &WeatherGiven, table: &WeatherTable, units: Units) -> Self {
        let beyond = is_beyond(given, &table.heat);
        let heat_index = shade_index(given).filter(|_| !beyond);
        let heat_band = heat_band(given, &table.heat);
        let cold_band = cold_band(given, table, units);
        let asks = [
            heat_asks(heat_band, given, table, units),
            lightning_asks(heat_band, given, table),
            cold_asks(cold_band, given, units),
            ice_asks(given, table, units),
            wind_asks(given, table, units),
            rain_asks(given, table),
        ];
        Self {
            beyond_the_chart: beyond,
            heat_index,
            full_sun_heat_index: heat_index.and_then(|shade| in_sun(shade, given, &table.heat)),
            heat_band: heat_band.cloned(),
            wind_chill: chill(given, units),
            cold_band: cold_band.cloned(),
            asks: asks.concat(),
        }
    }
}

/// What the band asks for; on a warm day of unknown humidity first of all to say it.
fn heat_asks(
    band: Option<&HeatBand>,
    given: &WeatherGiven,
    table: &WeatherTable,
    units: Units,
) -> Vec<Ask> {
    let heat = &table.heat;
    let (Some(band), Some(felt)) = (band, felt_heat(given, heat)) else {
        return Vec::new();
    };
    let figures = [
        show_temperature(felt, units),
        band.rest_minutes.to_string(),
        clock(heat.hot_from),
        clock(heat.hot_to),
    ];
    let unknown = given.humidity.is_none().then(|| heat.no_humidity.clone());
    let beyond = is_beyond(given, heat);
    let first = beyond.then(|| heat.beyond_chart.clone());
    // Beyond the chart there is no figure for how hot it feels.
    let named = |ask: &&Ask| !beyond || !ask.text.contains("{felt}");
    let asks = first.iter().chain(band.asks.iter().filter(named)).cloned();
    let asks = filled(&asks.collect::<Vec<_>>(), HEAT_WORDS, &figures);
    unknown.into_iter().chain(asks).collect()
}

/// Thunder comes with rain and with heat; a forecast's other words are not typed in.
fn lightning_asks(
    heat_band: Option<&HeatBand>,
    given: &WeatherGiven,
    table: &WeatherTable,
) -> Vec<Ask> {
    if heat_band.is_none() && given.rain.is_empty() {
        return Vec::new();
    }
    let lightning = &table.lightning;
    let figures = [lightning.seconds, lightning.wait_minutes].map(|figure| figure.to_string());
    filled(&lightning.asks, LIGHTNING_WORDS, &figures)
}

fn cold_asks(band: Option<&ColdBand>, given: &WeatherGiven, units: Units) -> Vec<Ask> {
    let (Some(band), Some(felt)) = (band, felt_cold(given, units)) else {
        return Vec::new();
    };
    filled(&band.asks, COLD_WORDS, &[show_temperature(felt, units)])
}

/// Ice goes by the low; where none is said the high is the least that is known.
fn ice_asks(given: &WeatherGiven, table: &WeatherTable, units: Units) -> Vec<Ask> {
    let low = given.low.or(given.high);
    match low.filter(|low| *low <= table.ice.at_or_below) {
        Some(low) => filled(&table.ice.asks, ICE_WORDS, &[show_temperature(low, units)]),
        None => Vec::new(),
    }
}

fn wind_asks(given: &WeatherGiven, table: &WeatherTable, units: Units) -> Vec<Ask> {
    match (bands::wind_band(given, table), given.wind) {
        (Some(band), Some(wind)) => filled(&band.asks, WIND_WORDS, &[show_speed(wind, units)]),
        _ => Vec::new(),
    }
}

fn rain_asks(given: &WeatherGiven, table: &WeatherTable) -> Vec<Ask> {
    if given.rain.is_empty() {
        return Vec::new();
    }
    let spell = |spell: &Spell| format!("{} to {}", clock(spell.start), clock(spell.end()));
    let spells: Vec<String> = given.rain.iter().map(spell).collect();
    filled(&table.rain.asks, RAIN_WORDS, &[spells.join(" and ")])
}

fn clock(time: NaiveTime) -> String {
    time.format("%H:%M").to_string()
}

#[cfg(test)]
mod tests {
    use super::super::sample::{given, table, time};
    use super::*;
    use crate::quantity::{celsius, in_celsius, in_fahrenheit, kilometres_per_hour};

    fn asked(given: &WeatherGiven, units: Units) -> Vec<String> {
        let day = DayWeather::of(given, &table(), units);
        day.asks.into_iter().map(|ask| ask.text).collect()
    }

    #[test]
    fn nothing_said_asks_for_nothing() {
        let day = DayWeather::of(&WeatherGiven::default(), &table(), Units::Metric);
        let nothing = DayWeather {
            beyond_the_chart: false,
            heat_index: None,
            full_sun_heat_index: None,
            heat_band: None,
            wind_chill: None,
            cold_band: None,
            asks: Vec::new(),
        };
        assert_eq!(day, nothing);
    }

    /// The chart: 90 °F at 50 % feels like 95 (94.6); in full sun 15 more is 109.6 °F, 43 °C.
    #[test]
    fn a_hot_day_says_when_to_rest() {
        let mut hot = given(90.0);
        (hot.humidity, hot.full_sun) = (Some(0.5), true);
        let day = DayWeather::of(&hot, &table(), Units::Imperial);
        let shade = day.heat_index.map(in_fahrenheit).expect("an index");
        let sun = day
            .full_sun_heat_index
            .map(in_fahrenheit)
            .expect("an index");
        assert!((shade.round() - 95.0).abs() < 1e-9 && (sun - shade - 15.0).abs() < 1e-9);
        assert_eq!(
            asked(&hot, Units::Metric),
            [
                "Like 43 °C: rest 30 from 11:00 to 17:00.",
                "In at 30 s, out after 25 min."
            ]
        );
        assert!(asked(&hot, Units::Imperial)[0].starts_with("Like 110 °F"));
    }

    /// 107.6 °F at 70 % would be 195 °F by the formula, 40 °F beyond what anybody charted.
    #[test]
    fn beyond_the_chart_there_is_no_figure() {
        let mut hot = given(107.6);
        hot.humidity = Some(0.7);
        let day = DayWeather::of(&hot, &table(), Units::Metric);
        assert!(day.beyond_the_chart);
        assert_eq!((day.heat_index, day.full_sun_heat_index), (None, None));
        let band = day.heat_band.map(|band| band.id);
        assert_eq!(band.as_deref(), Some("extreme-danger"));
        assert_eq!(
            asked(&hot, Units::Metric),
            [
                "Off the chart: nothing heavy from 11:00 to 17:00.",
                "In at 30 s, out after 25 min.",
            ]
        );
        // In the sun alone: 129 °F in the shade at 100 °F and 60 %.
        (hot.high, hot.humidity, hot.full_sun) = (given(100.0).high, Some(0.6), true);
        assert!(DayWeather::of(&hot, &table(), Units::Metric).beyond_the_chart);
        hot.full_sun = false;
        let day = DayWeather::of(&hot, &table(), Units::Metric);
        assert!(!day.beyond_the_chart && day.heat_index.is_some());
    }

    #[test]
    fn a_hot_day_of_unknown_humidity_asks_for_it() {
        let day = DayWeather::of(&given(95.0), &table(), Units::Imperial);
        assert_eq!((day.heat_index, day.full_sun_heat_index), (None, None));
        assert_eq!(day.asks[0].text, "Say how damp it is.");
        assert!(day.asks[1].text.starts_with("Like 95 °F"));
        assert!(asked(&given(75.0), Units::Imperial).is_empty());
    }

    /// The metric form by hand: V^0.16 = 1.8044 at 40 km/h; 13.12 - 0.6215 * 4 - 20.516 -
    /// 0.7154 * 4 = -12.74 °C.
    #[test]
    fn a_wild_winter_day_asks_for_it_all() {
        let mut day = WeatherGiven {
            high: Some(celsius(3.0)),
            low: Some(celsius(-4.0)),
            wind: Some(kilometres_per_hour(40.0)),
            ..WeatherGiven::default()
        };
        day.rain = [(10, 90), (14, 30)]
            .map(|(hour, minutes)| Spell {
                start: time(hour, 0),
                minutes,
            })
            .to_vec();
        let felt = DayWeather::of(&day, &table(), Units::Metric).wind_chill;
        assert!(felt.is_some_and(|felt| (in_celsius(felt) + 12.74).abs() < 0.01));
        assert_eq!(
            asked(&day, Units::Metric),
            [
                "In at 30 s, out after 25 min.",
                "Feels like -13 °C.",
                "Ice at -4 °C.",
                "Tie down the sheets in 40 km/h.",
                "Wet stone is slippery 10:00 to 11:30 and 14:00 to 14:30.",
            ]
        );
    }
}
