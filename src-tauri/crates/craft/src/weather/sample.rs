//! A weather table for tests. Bands as the National Weather Service draws them, words invented.

use super::Ask;
use crate::course::WeatherGiven;
use crate::quantity::{celsius, fahrenheit, fahrenheit_degrees, kilometres_per_hour};
use crate::tables::{
    ColdBand, HeatBand, HeatTable, IceTable, LightningTable, RainTable, WeatherTable, WindBand,
};
use chrono::NaiveTime;

const SOURCE: &str = "made up for tests";

pub(super) fn time(hour: u32, minute: u32) -> NaiveTime {
    NaiveTime::from_hms_opt(hour, minute, 0).expect("a time")
}

/// A day with this high and nothing else said.
pub(super) fn given(high_f: f64) -> WeatherGiven {
    WeatherGiven {
        high: Some(fahrenheit(high_f)),
        ..WeatherGiven::default()
    }
}

pub(super) fn table() -> WeatherTable {
    WeatherTable {
        heat: heat(),
        cold: vec![
            cold("cold", 41.0),
            cold("frostbite-30", -18.0),
            cold("frostbite-10", -32.0),
        ],
        ice: IceTable {
            at_or_below: celsius(0.0),
            source: SOURCE.to_owned(),
            asks: asks("Ice at {low}."),
        },
        wind: vec![WindBand {
            id: "strong".to_owned(),
            name: "strong wind".to_owned(),
            from: kilometres_per_hour(39.0),
            source: SOURCE.to_owned(),
            asks: asks("Tie down the sheets in {wind}."),
        }],
        rain: RainTable {
            rate: 0.6,
            source: SOURCE.to_owned(),
            asks: asks("Wet stone is slippery {rain}."),
        },
        lightning: LightningTable {
            seconds: 30,
            wait_minutes: 25,
            source: SOURCE.to_owned(),
            asks: asks("In at {seconds} s, out after {minutes} min."),
        },
    }
}

fn heat() -> HeatTable {
    HeatTable {
        bands: [
            ("caution", 80.0, 5),
            ("extreme-caution", 90.0, 15),
            ("danger", 103.0, 30),
            ("extreme-danger", 125.0, 60),
        ]
        .map(|(id, from_f, rest_minutes)| HeatBand {
            id: id.to_owned(),
            name: id.replace('-', " "),
            from: fahrenheit(from_f),
            source: SOURCE.to_owned(),
            rest_minutes,
            rest_source: SOURCE.to_owned(),
            asks: asks("Like {felt}: rest {rest} from {from} to {to}."),
        })
        .to_vec(),
        full_sun_adds: fahrenheit_degrees(15.0),
        full_sun_from: fahrenheit(80.0),
        full_sun_source: SOURCE.to_owned(),
        hot_from: time(11, 0),
        hot_to: time(17, 0),
        hot_source: SOURCE.to_owned(),
        beyond_chart: Ask {
            text: "Off the chart: nothing heavy from {from} to {to}.".to_owned(),
            source: SOURCE.to_owned(),
        },
        no_humidity: Ask {
            text: "Say how damp it is.".to_owned(),
            source: SOURCE.to_owned(),
        },
    }
}

fn cold(id: &str, at_or_below_f: f64) -> ColdBand {
    ColdBand {
        id: id.to_owned(),
        name: id.to_owned(),
        at_or_below: fahrenheit(at_or_below_f),
        source: SOURCE.to_owned(),
        asks: asks("Feels like {felt}."),
    }
}

fn asks(text: &str) -> Vec<Ask> {
    vec![Ask {
        text: text.to_owned(),
        source: SOURCE.to_owned(),
    }]
}
