//! What the wall is for, and the bank behind a retaining wall.

use crate::Fault;
use crate::course::node::Section;
use craft::course::{BankGiven, WallKind};
use craft::wall::Side;

/// Freestanding, or retaining with its bank.
pub(super) fn kind(section: &Section<'_>) -> Result<WallKind, Fault> {
    let retaining = match section.get("kind") {
        Some(entry) => entry.word(&[("freestanding", false), ("retaining", true)])?,
        None => false,
    };
    if retaining {
        return bank(section).map(WallKind::Retaining);
    }
    match section.get("retained").or_else(|| section.get("bank")) {
        None => Ok(WallKind::Freestanding),
        Some(entry) => Err(entry.fault(
            "contradiction",
            "only a retaining wall has a bank",
            "write kind = \"retaining\", or leave this out",
        )),
    }
}

fn bank(section: &Section<'_>) -> Result<BankGiven, Fault> {
    let side = section
        .need(
            "retained",
            "say on which side the bank is, looking from station 0: retained = \"left\" or \"right\"",
        )?
        .word(&[("left", Side::Left), ("right", Side::Right)])?;
    let bank = section.section("bank")?;
    bank.only(&[
        "drainage",
        "height",
        "fill",
        "friction_degrees",
        "wall_friction_degrees",
        "base_friction_degrees",
        "slope_degrees",
        "load_kpa",
        "near_boundary",
        "near_building",
    ])?;
    let length = |key: &str| {
        bank.get(key)
            .map(|entry| entry.length(0.0, 5.0))
            .transpose()
    };
    let number = |key: &str, least: f64, most: f64| {
        let given = bank.get(key);
        given.map(|entry| entry.number(least, most)).transpose()
    };
    let said = |key: &str| bank.get(key).map_or(Ok(false), |entry| entry.truth());
    Ok(BankGiven {
        side,
        drainage: length("drainage")?,
        height: length("height")?,
        fill: bank.get("fill").map(|entry| entry.density()).transpose()?,
        friction_degrees: number("friction_degrees", 1.0, 60.0)?,
        wall_friction_degrees: number("wall_friction_degrees", 0.0, 60.0)?,
        base_friction_degrees: number("base_friction_degrees", 1.0, 60.0)?,
        slope_degrees: number("slope_degrees", 0.0, 60.0)?,
        load_kpa: number("load_kpa", 0.0, 100.0)?,
        near_boundary: said("near_boundary")?,
        near_building: said("near_building")?,
    })
}
