//! The kit rules: those of `kit.toml`, changed for good by the instructor's `kit-own.toml`.

use super::stages;
use crate::Error;
use crate::course::{kit_rules, own_kit_rules};
use crate::shelf::{Shelf, Text};
use craft::tables::{KitRule, Stage};

/// The instructor's own changes of kit rules, beside the tables they replace.
pub(crate) const KIT_OWN: &str = "tables/kit-own.toml";

/// The rules as they hold for every course of this instructor.
pub(super) fn rules(shelf: &Shelf, stages: &[Stage]) -> Result<Vec<KitRule>, Error> {
    let rules = table(shelf, stages)?;
    match shelf.own(KIT_OWN)? {
        Some(own) => own_kit_rules(&own.text, &rules, stages).map_err(|fault| own.refuse(fault)),
        None => Ok(rules),
    }
}

/// The rules as they would hold with this text of the instructor's own changes.
pub(crate) fn rules_with(shelf: &Shelf, own: &Text) -> Result<Vec<KitRule>, Error> {
    let stages = stages(shelf)?;
    let rules = table(shelf, &stages)?;
    own_kit_rules(&own.text, &rules, &stages).map_err(|fault| own.refuse(fault))
}

fn table(shelf: &Shelf, stages: &[Stage]) -> Result<Vec<KitRule>, Error> {
    let table = shelf.text("tables/kit.toml")?;
    kit_rules(&table.text, stages).map_err(|fault| table.refuse(fault))
}

#[cfg(test)]
mod tests;
