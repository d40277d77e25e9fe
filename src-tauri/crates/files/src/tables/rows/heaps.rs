//! The rows of `heaps.toml`.

use crate::tables::figures::{self, WrittenLength};
use serde::{Deserialize, Deserializer, de::Error};

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Heaps {
    pub(crate) footing: Heaped,
    pub(crate) face: Heaped,
    pub(crate) hearting: Heaped,
    pub(crate) throughs: Laid,
    pub(crate) copes: Laid,
    pub(crate) drainage: HeapedByVolume,
    pub(crate) strip: Strip,
    pub(crate) trench: Trench,
    pub(crate) ways: Ways,
    pub(crate) rows: HeapRows,
    pub(crate) tip: Tip,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Heaped {
    #[serde(deserialize_with = "figures::share")]
    pub(crate) loose_voids: f64,
    #[serde(deserialize_with = "slope")]
    pub(crate) repose_degrees: f64,
    pub(crate) height: WrittenLength,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Laid {
    #[serde(deserialize_with = "figures::share")]
    pub(crate) loose_voids: f64,
    pub(crate) width: WrittenLength,
    pub(crate) height: WrittenLength,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct HeapedByVolume {
    #[serde(deserialize_with = "slope")]
    pub(crate) repose_degrees: f64,
    pub(crate) height: WrittenLength,
    #[serde(rename = "source")]
    _source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Strip {
    pub(crate) working: WrittenLength,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Trench {
    pub(crate) clear: WrittenLength,
    #[serde(deserialize_with = "figures::not_negative")]
    pub(crate) depths: f64,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Ways {
    pub(crate) width: WrittenLength,
    pub(crate) every: WrittenLength,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct HeapRows {
    pub(crate) foot_room: WrittenLength,
    pub(crate) between: WrittenLength,
    pub(crate) reach: WrittenLength,
    pub(crate) shortest: WrittenLength,
    pub(crate) beyond_end: WrittenLength,
    pub(crate) hearting_every: WrittenLength,
    pub(crate) low: WrittenLength,
    #[serde(deserialize_with = "figures::positive")]
    pub(crate) least_m3: f64,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Tip {
    #[serde(deserialize_with = "figures::positive")]
    pub(crate) load_t: f64,
    pub(crate) height: WrittenLength,
    pub(crate) source: String,
}

/// A slope loose stone can lie at.
fn slope<'de, D: Deserializer<'de>>(reader: D) -> Result<f64, D::Error> {
    let degrees = f64::deserialize(reader)?;
    if (10.0..=60.0).contains(&degrees) {
        return Ok(degrees);
    }
    Err(D::Error::custom(format!(
        "{degrees} stands where a slope from 10 to 60 degrees is due"
    )))
}
