//! The rows of `frames.toml` and `retaining.toml`.

use crate::tables::figures::{self, WrittenLength};
use serde::Deserialize;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Frames {
    pub(crate) board: Board,
    pub(crate) string: MasonsString,
    pub(crate) footing: FootingGaps,
    pub(crate) timber: TimberFrame,
    pub(crate) head: Head,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Board {
    pub(crate) width: WrittenLength,
    pub(crate) thickness: WrittenLength,
    pub(crate) overhang: WrittenLength,
    pub(crate) play: WrittenLength,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct MasonsString {
    #[serde(deserialize_with = "figures::positive")]
    pub(crate) mass_g_per_m: f64,
    #[serde(deserialize_with = "figures::positive")]
    pub(crate) pull_n: f64,
    pub(crate) tail: WrittenLength,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct FootingGaps {
    pub(crate) play: WrittenLength,
    pub(crate) least_grip: WrittenLength,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct TimberFrame {
    pub(crate) width: WrittenLength,
    pub(crate) thickness: WrittenLength,
    pub(crate) projection: WrittenLength,
    pub(crate) overhang: WrittenLength,
    pub(crate) lower_rail: WrittenLength,
    pub(crate) kerf: WrittenLength,
    pub(crate) end_waste: WrittenLength,
    pub(crate) stock_lengths: Vec<WrittenLength>,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Head {
    pub(crate) course: WrittenLength,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Retaining {
    pub(crate) limits: RetainingLimits,
    pub(crate) bank: Bank,
    pub(crate) drainage: Drainage,
    pub(crate) ask: Ask,
    pub(crate) assumption: Vec<Assumption>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct RetainingLimits {
    pub(crate) overturning: Figure,
    pub(crate) sliding: Figure,
    pub(crate) base_share: Figure,
    pub(crate) permit_height: LengthFigure,
}

/// A figure with who says so.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Figure {
    #[serde(deserialize_with = "figures::not_negative")]
    pub(crate) value: f64,
    #[serde(rename = "source")]
    _source: String,
}

/// A length with who says so.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct LengthFigure {
    pub(crate) value: WrittenLength,
    #[serde(rename = "source")]
    _source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Bank {
    pub(crate) friction_degrees: Figure,
    pub(crate) wall_friction_degrees: Figure,
    pub(crate) base_friction_degrees: Figure,
    pub(crate) slope_degrees: Figure,
    pub(crate) fill_kg_m3: Figure,
    pub(crate) load_kpa: Figure,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Drainage {
    pub(crate) thickness: WrittenLength,
    #[serde(deserialize_with = "figures::positive")]
    pub(crate) kg_m3: f64,
    #[serde(rename = "source")]
    _source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Ask {
    pub(crate) text: String,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Assumption {
    pub(crate) text: String,
}
