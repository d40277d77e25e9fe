//! A planned retaining wall: its bank, its drainage stone and the teaching check.

use super::{Bank, Check, Verdict, base_share, check};
use crate::Error;
use crate::course::{BankGiven, WallGiven};
use crate::quantity::{Density, Length, Mass, Read, Volume, metres};
use crate::tables::RetainingTable;
use crate::wall::{Section, Wall};

/// What is to be known of a planned wall that holds back a bank.
#[derive(Debug, Clone, PartialEq)]
pub struct Retaining {
    /// As it was given, the side the bank lies on among the rest.
    pub given: BankGiven,
    /// The bank the check reckons with.
    pub bank: Bank,
    /// Where the wall is highest: what is checked.
    pub highest: Length,
    /// The check for one metre there.
    pub check: Check,
    /// Against the table's limits.
    pub verdict: Verdict,
    /// Base width for each unit of height where it is highest.
    pub base_share: f64,
    /// Bottom of the footing to the top with its cope, where it is highest.
    pub from_footing: Length,
    /// Higher than is usually free of a permit, or with a load above, or near a boundary or
    /// a building.
    pub must_ask: bool,
    /// Thickness of the drainage stone, measured level.
    pub drainage: Length,
    /// The drainage stone, as it lies.
    pub backfill: Volume,
    /// Its mass.
    pub backfill_mass: Mass,
}

impl Retaining {
    /// What is to be known of this wall. `built`: its density as it stands, air included.
    ///
    /// # Errors
    /// As [`check`].
    pub fn of(
        given: &BankGiven,
        asked: &WallGiven,
        wall: &Wall,
        built: Density,
        table: &RetainingTable,
    ) -> Result<Self, Error> {
        let section = tallest(wall)?;
        let bank = bank(given, &section, table);
        let check = check(&section, given.side, &bank, built)?;
        let below = asked.footing.map_or(metres(0.0), |footing| footing.depth);
        let from_footing = section.height() + asked.cope_height + below;
        let drainage = given.drainage.unwrap_or(table.drainage);
        let backfill = wall.behind(given.side, drainage);
        Ok(Self {
            highest: section.height(),
            verdict: check.verdict(&table.limits),
            base_share: base_share(&section),
            must_ask: table.limits.must_ask(from_footing, &bank)
                || given.near_boundary
                || given.near_building,
            given: given.clone(),
            bank,
            check,
            from_footing,
            drainage,
            backfill,
            backfill_mass: backfill * table.drainage_density,
        })
    }
}

/// The section where the wall is highest.
fn tallest(wall: &Wall) -> Result<Section, Error> {
    let heights = wall.pieces().into_iter().flat_map(|piece| piece.height);
    let highest = heights.fold(0.0, |most, height| f64::max(most, height.si()));
    let section = &wall.section;
    let [left, right] = crate::wall::Side::BOTH.map(|side| section.batter(side));
    Section::new(metres(highest), section.top_width(), left, right)
}

fn bank(given: &BankGiven, section: &Section, table: &RetainingTable) -> Bank {
    let usual = &table.bank;
    Bank {
        retained: given.height.unwrap_or(section.height()),
        fill: given.fill.unwrap_or(usual.fill),
        friction_degrees: given.friction_degrees.unwrap_or(usual.friction_degrees),
        wall_friction_degrees: given
            .wall_friction_degrees
            .unwrap_or(usual.wall_friction_degrees),
        slope_degrees: given.slope_degrees.unwrap_or(usual.slope_degrees),
        load_kpa: given.load_kpa.unwrap_or(usual.load_kpa),
        base_friction_degrees: given
            .base_friction_degrees
            .unwrap_or(usual.base_friction_degrees),
    }
}
