//! What the columns of a kit list hold.

use super::columns::{Columns, Heading};
use crate::lots::Lot;

/// What a column holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Field {
    Item,
    Unit,
    Owner,
    Good,
    Care,
    Broken,
    Mass,
    Note,
}

impl Heading for Field {
    const ALL: &'static [Self] = &[
        Self::Item,
        Self::Unit,
        Self::Owner,
        Self::Good,
        Self::Care,
        Self::Broken,
        Self::Mass,
        Self::Note,
    ];
    const NEEDED: &'static [Self] = &[Self::Item, Self::Good];
    const LIST: &'static str = "kit list";

    fn heading(self) -> &'static str {
        match self {
            Self::Item => "item",
            Self::Unit => "unit",
            Self::Owner => "owner",
            Self::Good => "good",
            Self::Care => "needs care",
            Self::Broken => "broken",
            Self::Mass => "mass kg",
            Self::Note => "note",
        }
    }
}

impl Columns<Field> {
    /// A lot of the store after one of the file: what the file has no column for stays.
    pub(crate) fn over(&self, before: &Lot, given: &Lot) -> Lot {
        let mut after = before.clone();
        for field in self.fields() {
            match field {
                Field::Item => after.item.clone_from(&given.item),
                Field::Unit => after.unit.clone_from(&given.unit),
                Field::Owner => after.owner.clone_from(&given.owner),
                Field::Good => after.good = given.good,
                Field::Care => after.care = given.care,
                Field::Broken => after.broken = given.broken,
                Field::Mass => after.mass = given.mass,
                Field::Note => after.note.clone_from(&given.note),
            }
        }
        after
    }
}
