//! The frames as the instructor has them.

use super::wall::optional_length;
use crate::Fault;
use crate::course::node::Section;
use craft::course::{CurveSpacing, FrameKind, FramesGiven};
use craft::quantity::{FOOT_M, Length, metres};

pub(super) fn frames(
    section: &Section<'_>,
    footing_depth: Option<Length>,
) -> Result<FramesGiven, Fault> {
    section.only(&[
        "kind",
        "in_stock",
        "set_size",
        "leapfrog",
        "spacing_straight",
        "spacing_curve",
        "curve_tolerance",
        "lumber_lengths",
        "bar",
        "stock_lengths",
        "embedment",
        "projection",
    ])?;
    let beyond_footing = 0.45 + footing_depth.map_or(0.0, |depth| depth.value);
    Ok(FramesGiven {
        kind: section.get("kind").map_or(Ok(FrameKind::Bar), |entry| {
            entry.word(&[("bar", FrameKind::Bar), ("timber", FrameKind::Timber)])
        })?,
        in_stock: section
            .get("in_stock")
            .map(|entry| entry.whole(0, 10_000))
            .transpose()?,
        set_size: section
            .get("set_size")
            .map_or(Ok(1), |entry| entry.whole(1, 100))?,
        leapfrog: section
            .get("leapfrog")
            .map_or(Ok(false), |entry| entry.truth())?,
        spacing: optional_length(section, "spacing_straight", 0.3, 20.0, 3.0)?,
        curve: curve(section)?,
        tolerance: optional_length(section, "curve_tolerance", 0.001, 1.0, 0.025)?,
        lumber_lengths: lengths(section, "lumber_lengths")?.unwrap_or_default(),
        bar: section
            .get("bar")
            .map_or(Ok("No. 5"), |entry| entry.text())?
            .to_owned(),
        // 5, 6 and 8 ft if none is given: common practice, no source.
        stock_lengths: lengths(section, "stock_lengths")?
            .unwrap_or_else(|| [5.0, 6.0, 8.0].map(|feet| metres(feet * FOOT_M)).to_vec()),
        embedment: optional_length(section, "embedment", 0.0, 3.0, beyond_footing)?,
        projection: optional_length(section, "projection", 0.0, 1.0, 0.14)?,
    })
}

/// A spacing given for curves counts; without one a given tolerance decides, and without
/// either 1.5 m (common practice, no source).
fn curve(section: &Section<'_>) -> Result<CurveSpacing, Fault> {
    let only_tolerance =
        section.get("spacing_curve").is_none() && section.get("curve_tolerance").is_some();
    if only_tolerance {
        return Ok(CurveSpacing::KeepsUnderTolerance);
    }
    optional_length(section, "spacing_curve", 0.3, 20.0, 1.5).map(CurveSpacing::AtMost)
}

/// The lengths something is bought in.
fn lengths(section: &Section<'_>, key: &str) -> Result<Option<Vec<Length>>, Fault> {
    section
        .get(key)
        .map(|entry| {
            let list = entry.list()?;
            list.iter().map(|one| one.length(0.3, 12.0)).collect()
        })
        .transpose()
}
