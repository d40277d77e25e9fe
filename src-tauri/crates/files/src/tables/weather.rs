//! `weather.toml` as the sums want it.

use super::rows::weather as rows;
use craft::quantity::fahrenheit_degrees;
use craft::tables::{
    ColdBand, HeatBand, HeatTable, IceTable, LightningTable, RainTable, WeatherTable, WindBand,
};
use craft::weather::Ask;

/// What weather asks for, and what it slows.
pub(super) fn weather(file: rows::Weather) -> WeatherTable {
    let rows = file.rows;
    WeatherTable {
        heat: heat(rows.heat),
        cold: rows.cold.into_iter().map(cold_band).collect(),
        ice: IceTable {
            at_or_below: rows.ice.at_or_below.0,
            source: rows.ice.source,
            asks: asks(rows.ice.asks),
        },
        wind: rows.wind.into_iter().map(wind_band).collect(),
        rain: RainTable {
            rate: rows.rain.rate,
            source: rows.rain.source,
            asks: asks(rows.rain.asks),
        },
        lightning: LightningTable {
            seconds: rows.lightning.seconds,
            wait_minutes: rows.lightning.wait_minutes,
            source: rows.lightning.source,
            asks: asks(rows.lightning.asks),
        },
    }
}

fn heat(row: rows::Heat) -> HeatTable {
    HeatTable {
        bands: row.band.into_iter().map(heat_band).collect(),
        full_sun_adds: fahrenheit_degrees(row.full_sun.adds_degrees_f),
        full_sun_from: row.full_sun.from.0,
        full_sun_source: row.full_sun.source,
        hot_from: row.hot_part.from,
        hot_to: row.hot_part.to,
        hot_source: row.hot_part.source,
        beyond_chart: ask(row.beyond_chart),
        no_humidity: ask(row.no_humidity),
    }
}

fn heat_band(row: rows::HeatBand) -> HeatBand {
    HeatBand {
        id: row.id,
        name: row.name,
        from: row.from.0,
        source: row.source,
        rest_minutes: row.rest_minutes,
        rest_source: row.rest_source,
        asks: asks(row.asks),
    }
}

fn cold_band(row: rows::Cold) -> ColdBand {
    ColdBand {
        id: row.id,
        name: row.name,
        at_or_below: row.at_or_below.0,
        source: row.source,
        asks: asks(row.asks),
    }
}

fn wind_band(row: rows::Wind) -> WindBand {
    WindBand {
        id: row.id,
        name: row.name,
        from: row.from.0,
        source: row.source,
        asks: asks(row.asks),
    }
}

fn asks(rows: Vec<rows::Ask>) -> Vec<Ask> {
    rows.into_iter().map(ask).collect()
}

fn ask(row: rows::Ask) -> Ask {
    Ask {
        text: row.text,
        source: row.source,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::shelf::{Shelf, built_in};
    use craft::course::{Spell, WeatherGiven};
    use craft::quantity::{Units, celsius, fahrenheit, in_fahrenheit, kilometres_per_hour};
    use craft::weather::{DayWeather, hot_share};

    fn table() -> WeatherTable {
        let shelf = Shelf { own: None };
        weather(shelf.table("tables/weather.toml").expect("the table"))
    }

    /// The thresholds of the National Weather Service's classification.
    #[test]
    fn the_bands_begin_where_the_weather_service_has_them() {
        let table = table();
        for (name, from_f) in [
            ("caution", 80.0),
            ("extreme caution", 90.0),
            ("danger", 103.0),
            ("extreme danger", 125.0),
        ] {
            let band = table.heat.bands.iter().find(|band| band.name == name);
            let from = band.map(|band| in_fahrenheit(band.from));
            assert!(
                from.is_some_and(|from| (from - from_f).abs() < 1e-9),
                "{name}"
            );
        }
        for (id, from_f) in [
            ("frostbite-30", -18.0),
            ("frostbite-10", -32.0),
            ("frostbite-5", -48.0),
        ] {
            let band = table.cold.iter().find(|band| band.id == id);
            let from = band.map(|band| in_fahrenheit(band.at_or_below));
            assert!(
                from.is_some_and(|from| (from - from_f).abs() < 1e-9),
                "{id}"
            );
        }
    }

    /// Whatever the day, no word in braces is left in what an instructor reads, and each
    /// sentence says where it comes from.
    #[test]
    fn no_sentence_keeps_a_word_in_braces() {
        let table = table();
        let noon = chrono::NaiveTime::from_hms_opt(12, 0, 0).expect("a time");
        for high_c in -60..=60 {
            for (wind, humidity) in [
                (0.0, None),
                (25.0, Some(0.4)),
                (45.0, Some(0.9)),
                (70.0, Some(0.6)),
            ] {
                let given = WeatherGiven {
                    high: Some(celsius(high_c.into())),
                    wind: Some(kilometres_per_hour(wind)),
                    humidity,
                    full_sun: true,
                    rain: vec![Spell {
                        start: noon,
                        minutes: 30,
                    }],
                    ..WeatherGiven::default()
                };
                let day = DayWeather::of(&given, &table, Units::Metric);
                assert!(!day.asks.is_empty());
                for ask in day.asks {
                    assert!(!ask.text.contains(['{', '}']), "{}", ask.text);
                    assert!(!ask.source.is_empty(), "{}", ask.text);
                }
            }
        }
    }

    /// A mild day asks for nothing; the worst of the chart stops the work.
    #[test]
    fn a_mild_day_is_let_alone_and_the_worst_stops_the_work() {
        let table = table();
        let mut given = WeatherGiven {
            high: Some(celsius(22.0)),
            low: Some(celsius(9.0)),
            humidity: Some(0.6),
            wind: Some(kilometres_per_hour(15.0)),
            full_sun: true,
            rain: Vec::new(),
        };
        assert!(
            DayWeather::of(&given, &table, Units::Metric)
                .asks
                .is_empty()
        );
        assert_eq!(hot_share(&given, &table), None);
        (given.high, given.humidity) = (Some(fahrenheit(100.0)), Some(0.6));
        let share = hot_share(&given, &table).map(|slowed| slowed.share);
        assert!(share.is_some_and(|share| share.abs() < 1e-12));
    }

    /// The built-in table with one text in place of another, and how it is refused.
    fn refused(old: &str, new: &str) -> String {
        let text = built_in("tables/weather.toml").expect("the table");
        assert!(text.contains(old), "no {old} to change");
        let changed = text.replacen(old, new, 1);
        match toml_edit::de::from_str::<rows::Weather>(&changed) {
            Ok(_) => panic!("\"{new}\" was taken"),
            Err(error) => error.message().to_owned(),
        }
    }

    #[test]
    fn what_no_row_can_be_is_refused_in_words() {
        for (old, new, says) in [
            (
                "from = \"90 F\"",
                "from = \"79 F\"",
                "the mildest comes first",
            ),
            (
                "from = \"90 F\"",
                "from = \"90\"",
                "a temperature without a unit",
            ),
            (
                "at_or_below = \"-10 C\"",
                "at_or_below = \"10 C\"",
                "the mildest comes first",
            ),
            (
                "from = \"39 km/h\"",
                "from = \"39 furlongs\"",
                "not a unit of speed",
            ),
            (
                "id = \"danger\"",
                "id = \"caution\"",
                "have the id \"caution\"",
            ),
            (
                "rest_minutes = 60",
                "rest_minutes = 61",
                "61 minutes of an hour",
            ),
            ("rest_minutes = 60", "rest_minutes = 40", "rests less"),
            ("rate = 0.6", "rate = 1.2", "above 0 and up to 1"),
            ("rate = 0.6", "rate = 0", "above 0 and up to 1"),
            (
                "from = 11:00:00",
                "from = 18:00:00",
                "the hot part of the day ends",
            ),
            (
                "from = 11:00:00",
                "from = 2027-04-24",
                "a time of day is due",
            ),
            (
                "{felt} today. Put",
                "{fellt} today. Put",
                "no figure {fellt} here",
            ),
            (
                "{minutes} minutes after",
                "{rest} minutes after",
                "no figure {rest} here",
            ),
            (
                "humidity as well.",
                "humidity {felt}.",
                "no figure can stand here",
            ),
        ] {
            let message = refused(old, new);
            assert!(message.contains(says), "{new}: {message}");
        }
    }
}
