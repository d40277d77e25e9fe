//! Lots of kit: so many of an item that one person owns, by condition.

use crate::text::{MOST_OF_NAME, MOST_OF_NOTE, tidy};
use crate::{Error, Store};
use craft::kit::name_key;
use craft::quantity::{Mass, Read, kilograms};
use rusqlite::{Connection, OptionalExtension, Row, params};

/// The largest count a lot may have of one condition, and a course of one booking.
pub const MOST_OF_ONE: u32 = 100_000;
/// The largest mass of a single one, in kilograms.
pub const MOST_MASS_KG: f64 = 10_000.0;

/// So many of an item that one person owns. Item and owner together name the lot; capitals
/// and spacing make no difference.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Lot {
    /// What it is, as the kit rules name it.
    pub item: String,
    /// What it is counted in; empty for pieces.
    pub unit: String,
    /// Whose it is; empty for the instructor's own.
    pub owner: String,
    /// Ready for use.
    pub good: u32,
    /// Usable, with something to see to first.
    pub care: u32,
    /// Not to be used.
    pub broken: u32,
    /// Of a single one, if it is known.
    pub mass: Option<Mass>,
    /// Anything worth remembering.
    pub note: String,
}

impl Lot {
    /// Fit to be taken along: good, or in need of care.
    pub fn usable(&self) -> u32 {
        self.good.saturating_add(self.care)
    }

    /// The lot as it is kept.
    ///
    /// # Errors
    /// [`Error::EmptyItem`], [`Error::TooLong`], [`Error::Unshowable`], [`Error::TooMany`],
    /// [`Error::Mass`].
    pub(crate) fn checked(&self) -> Result<Self, Error> {
        let item = item_name(&self.item)?;
        for (field, count) in [
            ("good", self.good),
            ("needs care", self.care),
            ("broken", self.broken),
        ] {
            count_of(&item, field, u64::from(count))?;
        }
        if let Some(mass) = self.mass {
            mass_of(&item, mass.si())?;
        }
        Ok(Self {
            unit: tidy("unit", &self.unit, MOST_OF_NAME)?,
            owner: tidy("owner", &self.owner, MOST_OF_NAME)?,
            note: tidy("note", &self.note, MOST_OF_NOTE)?,
            item,
            ..self.clone()
        })
    }

    pub(crate) fn key(&self) -> (String, String) {
        (name_key(&self.item), name_key(&self.owner))
    }
}

/// An item's name as it is kept.
pub(crate) fn item_name(item: &str) -> Result<String, Error> {
    let item = tidy("item", item, MOST_OF_NAME)?;
    if item.is_empty() {
        return Err(Error::EmptyItem);
    }
    Ok(item)
}

/// A count that somebody may have.
pub(crate) fn count_of(item: &str, field: &'static str, given: u64) -> Result<u32, Error> {
    u32::try_from(given)
        .ok()
        .filter(|count| *count <= MOST_OF_ONE)
        .ok_or_else(|| Error::TooMany {
            item: item.to_owned(),
            field,
            given,
            most: MOST_OF_ONE,
        })
}

fn mass_of(item: &str, given_kg: f64) -> Result<(), Error> {
    if (0.0..=MOST_MASS_KG).contains(&given_kg) {
        return Ok(());
    }
    Err(Error::Mass {
        item: item.to_owned(),
        given_kg,
        most_kg: MOST_MASS_KG,
    })
}

impl Store {
    /// All lots, by item and then by owner, the instructor's own first.
    ///
    /// # Errors
    /// [`Error::Busy`], [`Error::Damaged`], [`Error::NewerUnreadable`].
    pub fn lots(&self) -> Result<Vec<Lot>, Error> {
        self.reading(all)
    }

    /// Adds a lot.
    ///
    /// # Errors
    /// [`Error::LotThere`]; what a lot is refused for: [`Error::EmptyItem`],
    /// [`Error::TooLong`], [`Error::Unshowable`], [`Error::TooMany`], [`Error::Mass`]; what
    /// any change is refused for: [`Error::ReadOnly`], [`Error::Busy`], [`Error::DiskFull`].
    pub fn add_lot(&mut self, lot: &Lot) -> Result<(), Error> {
        let lot = lot.checked()?;
        self.writing(|change| match id_of(change, &lot.item, &lot.owner)? {
            Some(_) => Err(there(&lot)),
            None => put(change, &lot),
        })
    }

    /// Puts a lot in, over the one of the same item and owner if there is one.
    ///
    /// # Errors
    /// As [`Store::add_lot`], but for a lot that is there.
    pub fn set_lot(&mut self, lot: &Lot) -> Result<(), Error> {
        let lot = lot.checked()?;
        self.writing(|change| put(change, &lot))
    }

    /// Changes the lot of this item and owner, its item and owner too if need be.
    ///
    /// # Errors
    /// As [`Store::add_lot`], and [`Error::NoSuchLot`].
    pub fn change_lot(&mut self, item: &str, owner: &str, lot: &Lot) -> Result<(), Error> {
        let lot = lot.checked()?;
        self.writing(|change| {
            let id = id_of(change, item, owner)?.ok_or_else(|| missing(item, owner))?;
            let of_that_name = id_of(change, &lot.item, &lot.owner)?;
            if of_that_name.is_some_and(|other| other != id) {
                return Err(there(&lot));
            }
            let name = "UPDATE lot SET item_key = ?2, owner_key = ?3 WHERE id = ?1";
            let (item_key, owner_key) = lot.key();
            change.execute(name, params![id, item_key, owner_key])?;
            put(change, &lot)
        })
    }

    /// Takes a lot out of the store.
    ///
    /// # Errors
    /// [`Error::NoSuchLot`], [`Error::ReadOnly`], [`Error::Busy`], [`Error::DiskFull`].
    pub fn remove_lot(&mut self, item: &str, owner: &str) -> Result<(), Error> {
        self.writing(|change| match remove(change, item, owner)? {
            true => Ok(()),
            false => Err(missing(item, owner)),
        })
    }
}

fn there(lot: &Lot) -> Error {
    Error::LotThere {
        item: lot.item.clone(),
        owner: lot.owner.clone(),
    }
}

fn missing(item: &str, owner: &str) -> Error {
    Error::NoSuchLot {
        item: item.to_owned(),
        owner: owner.to_owned(),
    }
}

const FIELDS: &str = "item, unit, owner, good, care, broken, mass_kg, note";

pub(crate) fn all(db: &Connection) -> Result<Vec<Lot>, Error> {
    let ask = format!("SELECT {FIELDS} FROM lot ORDER BY item_key, owner_key");
    let mut ask = db.prepare(&ask)?;
    let lots = ask.query_map([], lot_of)?.collect::<Result<_, _>>()?;
    Ok(lots)
}

fn lot_of(row: &Row<'_>) -> rusqlite::Result<Lot> {
    Ok(Lot {
        item: row.get(0)?,
        unit: row.get(1)?,
        owner: row.get(2)?,
        good: row.get(3)?,
        care: row.get(4)?,
        broken: row.get(5)?,
        mass: row.get::<_, Option<f64>>(6)?.map(kilograms),
        note: row.get(7)?,
    })
}

fn id_of(db: &Connection, item: &str, owner: &str) -> Result<Option<i64>, Error> {
    let ask = "SELECT id FROM lot WHERE item_key = ?1 AND owner_key = ?2";
    let id = db.query_row(ask, [name_key(item), name_key(owner)], |row| row.get(0));
    Ok(id.optional()?)
}

/// Writes a checked lot over the one of the same name, which keeps its id.
pub(crate) fn put(db: &Connection, lot: &Lot) -> Result<(), Error> {
    let (item_key, owner_key) = lot.key();
    let put = "INSERT INTO lot (item_key, owner_key, item, unit, owner, good, care, broken, mass_kg, note)
        VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)
        ON CONFLICT (item_key, owner_key) DO UPDATE SET
        item = ?3, unit = ?4, owner = ?5, good = ?6, care = ?7, broken = ?8, mass_kg = ?9, note = ?10";
    db.execute(
        put,
        params![
            item_key,
            owner_key,
            lot.item,
            lot.unit,
            lot.owner,
            lot.good,
            lot.care,
            lot.broken,
            lot.mass.map(|mass| mass.si()),
            lot.note,
        ],
    )?;
    Ok(())
}

/// Whether there was one to remove.
pub(crate) fn remove(db: &Connection, item: &str, owner: &str) -> Result<bool, Error> {
    let gone = "DELETE FROM lot WHERE item_key = ?1 AND owner_key = ?2";
    Ok(0 < db.execute(gone, [name_key(item), name_key(owner)])?)
}
