//! The rows of `weather.toml`.

use crate::tables::figures::{self, WrittenSpeed, WrittenTemperature};
use craft::weather::{COLD_WORDS, HEAT_WORDS, ICE_WORDS, LIGHTNING_WORDS, RAIN_WORDS, WIND_WORDS};
use serde::Deserialize;
use toml_edit::Datetime;

#[derive(Deserialize)]
#[serde(try_from = "WeatherRows")]
pub(crate) struct Weather {
    pub(crate) rows: WeatherRows,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct WeatherRows {
    pub(crate) heat: Heat,
    pub(crate) cold: Vec<Cold>,
    pub(crate) ice: Ice,
    pub(crate) wind: Vec<Wind>,
    pub(crate) rain: Rain,
    pub(crate) lightning: Lightning,
}

/// Minutes in an hour, the most that can be rested of one.
const HOUR: u32 = 60;

impl TryFrom<WeatherRows> for Weather {
    type Error = String;

    /// Refuses what no single row can see: bands out of order, a worse band with less rest,
    /// and asks that name a figure there is not.
    fn try_from(rows: WeatherRows) -> Result<Self, String> {
        let heat = &rows.heat;
        in_order("heat", &heat.band, |row| (&row.id, row.from.0.value))?;
        in_order("cold", &rows.cold, |row| {
            (&row.id, -row.at_or_below.0.value)
        })?;
        in_order("wind", &rows.wind, |row| (&row.id, row.from.0.value))?;
        for row in &heat.band {
            known_words(&row.asks, &HEAT_WORDS)?;
            if HOUR < row.rest_minutes {
                let (id, minutes) = (&row.id, row.rest_minutes);
                return Err(format!(
                    "\"{id}\" rests {minutes} minutes of an hour of {HOUR}"
                ));
            }
        }
        for (mild, worse) in heat.band.iter().zip(heat.band.iter().skip(1)) {
            if worse.rest_minutes < mild.rest_minutes {
                let (worse, mild) = (&worse.id, &mild.id);
                return Err(format!(
                    "\"{worse}\" is hotter than \"{mild}\" and rests less"
                ));
            }
        }
        rows.cold
            .iter()
            .try_for_each(|row| known_words(&row.asks, &COLD_WORDS))?;
        rows.wind
            .iter()
            .try_for_each(|row| known_words(&row.asks, &WIND_WORDS))?;
        known_words(&rows.ice.asks, &ICE_WORDS)?;
        known_words(&rows.rain.asks, &RAIN_WORDS)?;
        known_words(&rows.lightning.asks, &LIGHTNING_WORDS)?;
        known_words(std::slice::from_ref(&heat.no_humidity), &[])?;
        known_words(std::slice::from_ref(&heat.beyond_chart), &HEAT_WORDS[1..])?;
        Ok(Self { rows })
    }
}

/// Refuses bands that do not go from the mildest to the worst, and two of one name.
fn in_order<T>(kind: &str, bands: &[T], of: impl Fn(&T) -> (&String, f64)) -> Result<(), String> {
    for (at, band) in bands.iter().enumerate() {
        let (id, begins) = of(band);
        if bands.iter().take(at).any(|other| of(other).0 == id) {
            return Err(format!("two bands of {kind} have the id \"{id}\""));
        }
        let before = at
            .checked_sub(1)
            .and_then(|before| bands.get(before))
            .map(&of);
        if let Some((mild, _)) = before.filter(|(_, mild)| begins <= *mild) {
            return Err(format!(
                "the band of {kind} \"{id}\" is not beyond \"{mild}\"; the mildest comes first"
            ));
        }
    }
    Ok(())
}

/// Refuses words in braces that name no figure of this part.
fn known_words(asks: &[Ask], known: &[&str]) -> Result<(), String> {
    for ask in asks {
        for piece in ask.text.split('{').skip(1) {
            let word = piece.split('}').next().unwrap_or_default();
            if !known.contains(&word) {
                return Err(match known {
                    [] => format!("no figure can stand here: {{{word}}}"),
                    _ => format!(
                        "there is no figure {{{word}}} here, only {}",
                        known.join(", ")
                    ),
                });
            }
        }
    }
    Ok(())
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Ask {
    pub(crate) text: String,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Heat {
    pub(crate) full_sun: FullSun,
    pub(crate) hot_part: HotPart,
    pub(crate) beyond_chart: Ask,
    pub(crate) no_humidity: Ask,
    pub(crate) band: Vec<HeatBand>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct FullSun {
    #[serde(deserialize_with = "figures::not_negative")]
    pub(crate) adds_degrees_f: f64,
    pub(crate) from: WrittenTemperature,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(try_from = "WrittenHotPart")]
pub(crate) struct HotPart {
    pub(crate) from: chrono::NaiveTime,
    pub(crate) to: chrono::NaiveTime,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct WrittenHotPart {
    from: Datetime,
    to: Datetime,
    source: String,
}

impl TryFrom<WrittenHotPart> for HotPart {
    type Error = String;

    fn try_from(written: WrittenHotPart) -> Result<Self, String> {
        let [from, to] = [written.from, written.to].map(of_day);
        let (from, to) = (from?, to?);
        if to <= from {
            return Err(format!(
                "the hot part of the day ends at {to}, not after {from}"
            ));
        }
        Ok(Self {
            from,
            to,
            source: written.source,
        })
    }
}

/// A time of day without a date.
fn of_day(written: Datetime) -> Result<chrono::NaiveTime, String> {
    let time = written.time.filter(|_| written.date.is_none());
    time.and_then(|time| {
        let second = u32::from(time.second.unwrap_or_default());
        chrono::NaiveTime::from_hms_opt(time.hour.into(), time.minute.into(), second)
    })
    .ok_or_else(|| format!("{written} stands where a time of day is due, such as 11:00:00"))
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct HeatBand {
    pub(crate) id: String,
    pub(crate) name: String,
    pub(crate) from: WrittenTemperature,
    pub(crate) source: String,
    pub(crate) rest_minutes: u32,
    pub(crate) rest_source: String,
    pub(crate) asks: Vec<Ask>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Cold {
    pub(crate) id: String,
    pub(crate) name: String,
    pub(crate) at_or_below: WrittenTemperature,
    pub(crate) source: String,
    pub(crate) asks: Vec<Ask>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Ice {
    pub(crate) at_or_below: WrittenTemperature,
    pub(crate) source: String,
    pub(crate) asks: Vec<Ask>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Wind {
    pub(crate) id: String,
    pub(crate) name: String,
    pub(crate) from: WrittenSpeed,
    pub(crate) source: String,
    pub(crate) asks: Vec<Ask>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Rain {
    #[serde(deserialize_with = "figures::part")]
    pub(crate) rate: f64,
    pub(crate) source: String,
    pub(crate) asks: Vec<Ask>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Lightning {
    pub(crate) seconds: u32,
    pub(crate) wait_minutes: u32,
    pub(crate) source: String,
    pub(crate) asks: Vec<Ask>,
}
