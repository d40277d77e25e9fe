//! What weather asks for on a course, and what it slows: heat, cold, ice, wind, rain, lightning.

use crate::quantity::{Speed, Temperature, TemperatureRise};
use crate::weather::Ask;
use chrono::NaiveTime;

/// All that is known of weather, beside the two published formulas.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct WeatherTable {
    /// Heat.
    pub heat: HeatTable,
    /// Bands of cold, the mildest first.
    pub cold: Vec<ColdBand>,
    /// Ice on stone and in the ground.
    pub ice: IceTable,
    /// Bands of wind, the weakest first.
    pub wind: Vec<WindBand>,
    /// Rain.
    pub rain: RainTable,
    /// Thunder.
    pub lightning: LightningTable,
}

/// Heat: its bands, the sun, and the hot part of the day.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct HeatTable {
    /// Bands by heat index, the mildest first.
    pub bands: Vec<HeatBand>,
    /// What full sun adds to a heat index, at most.
    pub full_sun_adds: TemperatureRise,
    /// The heat index in the shade from which full sun is added.
    pub full_sun_from: Temperature,
    /// Who says so of both.
    pub full_sun_source: String,
    /// The hot part of the day begins, on the local clock.
    pub hot_from: NaiveTime,
    /// It ends.
    pub hot_to: NaiveTime,
    /// Who says so of both.
    pub hot_source: String,
    /// Asked for first on a day beyond the published chart; may name what a band may, but for how
    /// hot it feels.
    pub beyond_chart: Ask,
    /// Asked for on a warm day whose humidity is not known.
    pub no_humidity: Ask,
}

/// A band of heat, from a heat index up to the next band.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct HeatBand {
    /// The word programs use.
    pub id: String,
    /// What a person reads.
    pub name: String,
    /// The heat index it begins at.
    pub from: Temperature,
    /// Who says where it begins.
    pub source: String,
    /// Minutes of rest in each hour of moderate to heavy work, from 0 to 60.
    pub rest_minutes: u32,
    /// Who says so.
    pub rest_source: String,
    /// What it asks for; complete, without the milder bands.
    pub asks: Vec<Ask>,
}

/// A band of cold, from a felt temperature down to the next band.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ColdBand {
    /// The word programs use.
    pub id: String,
    /// What a person reads.
    pub name: String,
    /// The wind chill, or the air's temperature where it is calm, it begins at.
    pub at_or_below: Temperature,
    /// Who says where it begins.
    pub source: String,
    /// What it asks for; complete, without the milder bands.
    pub asks: Vec<Ask>,
}

/// Ice. It goes by the air: wind chills people, never stone below the air it stands in.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct IceTable {
    /// The low of the day at which ice is reckoned with.
    pub at_or_below: Temperature,
    /// Who says so.
    pub source: String,
    /// What it asks for.
    pub asks: Vec<Ask>,
}

/// A band of wind, from a speed up to the next band.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct WindBand {
    /// The word programs use.
    pub id: String,
    /// What a person reads.
    pub name: String,
    /// The speed it begins at.
    pub from: Speed,
    /// Who says where it begins.
    pub source: String,
    /// What it asks for; complete, without the weaker bands.
    pub asks: Vec<Ask>,
}

/// Rain on people who lay stone.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct RainTable {
    /// The share of the usual rate at which work goes on, above 0 and up to 1.
    pub rate: f64,
    /// Who says so.
    pub source: String,
    /// What it asks for.
    pub asks: Vec<Ask>,
}

/// Thunder: the 30-30 rule.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct LightningTable {
    /// Everyone goes in when thunder follows lightning within so many seconds.
    pub seconds: u32,
    /// Nobody comes out until so many minutes after the last thunder.
    pub wait_minutes: u32,
    /// Who says so of both.
    pub source: String,
    /// What it asks for.
    pub asks: Vec<Ask>,
}
