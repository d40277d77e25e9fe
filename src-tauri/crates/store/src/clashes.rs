//! Clashes: days on which courses count on more of an item than there is.

use crate::courses::date_of;
use crate::error::day;
use crate::{Error, Store};
use chrono::NaiveDate;
use rusqlite::Connection;
use std::collections::hash_map::Entry;
use std::collections::{BTreeMap, HashMap};
use std::fmt;
use std::path::PathBuf;

/// All that can't be as it is booked.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Clashes {
    /// By date, then by item.
    pub clashes: Vec<Clash>,
    /// Booked items that no lot holds, by item.
    pub not_in_store: Vec<NotInStore>,
}

/// One item on one day: booked beyond what is usable. A single course can do that too, when
/// some of what it booked has broken or left the store.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Clash {
    /// The item, as the store names it.
    pub item: String,
    /// The day.
    pub date: NaiveDate,
    /// Good ones and those that need care, of all owners.
    pub usable: u32,
    /// Who counts on how many, by title.
    pub courses: Vec<Claim>,
}

/// An item that is booked, and that the store does not know.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NotInStore {
    /// The item, as it was booked.
    pub item: String,
    /// Who counts on how many, by title.
    pub courses: Vec<Claim>,
}

/// So many for one course.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Claim {
    /// The course's title.
    pub title: String,
    /// The course file.
    pub path: PathBuf,
    /// How many.
    pub count: u32,
}

impl fmt::Display for Clash {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let booked: u64 = self.courses.iter().map(|it| u64::from(it.count)).sum();
        let (item, date, usable) = (&self.item, day(self.date), self.usable);
        write!(
            f,
            "{item} on {date}: {usable} usable, {booked} booked ({}).",
            by_whom(&self.courses)
        )
    }
}

impl fmt::Display for NotInStore {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let whom = by_whom(&self.courses);
        write!(f, "{}: booked ({whom}), but not in the store.", self.item)
    }
}

/// `Hollin Bank 6, Quarry Pasture 4`.
fn by_whom(claims: &[Claim]) -> String {
    let claims = claims.iter();
    let named: Vec<String> = claims
        .map(|it| format!("{} {}", it.title, it.count))
        .collect();
    named.join(", ")
}

impl Store {
    /// What all courses on this machine have booked between them that can't be.
    ///
    /// On a day an item clashes when the courses of that day have booked more of it than is
    /// usable. Courses whose kit was counted home have booked nothing.
    ///
    /// # Errors
    /// [`Error::Busy`], [`Error::Damaged`], [`Error::NewerUnreadable`].
    pub fn clashes(&self) -> Result<Clashes, Error> {
        self.reading(|db| {
            let courses = open_courses(db)?;
            let mut found = Clashes::default();
            for item in overbooked(db, &courses)? {
                match item.usable {
                    Some(usable) => found.clashes.extend(item.by_day(usable, &courses)),
                    None => found.not_in_store.push(NotInStore {
                        item: item.name,
                        courses: sorted(item.claims.into_iter().map(|(_, claim)| claim)),
                    }),
                }
            }
            // Items come in order of their keys, and the sort keeps that order on each day.
            found.clashes.sort_by_key(|clash| clash.date);
            Ok(found)
        })
    }
}

/// A course that has not come home.
struct Open {
    title: String,
    path: PathBuf,
    days: Vec<NaiveDate>,
}

impl Open {
    fn claim(&self, count: u32) -> Claim {
        Claim {
            title: self.title.clone(),
            path: self.path.clone(),
            count,
        }
    }
}

/// An item of which more is booked, over all days together, than is usable.
struct Overbooked {
    name: String,
    usable: Option<u32>,
    claims: Vec<(i64, Claim)>,
}

impl Overbooked {
    /// Its clashes: the days on which the sum is too large.
    fn by_day(self, usable: u32, courses: &HashMap<i64, Open>) -> Vec<Clash> {
        let mut days: BTreeMap<NaiveDate, Vec<&Claim>> = BTreeMap::new();
        for (id, claim) in &self.claims {
            for date in courses.get(id).map_or(&[][..], |course| &course.days) {
                days.entry(*date).or_default().push(claim);
            }
        }
        let too_many = |claims: &[&Claim]| {
            let sum: u64 = claims.iter().map(|claim| u64::from(claim.count)).sum();
            u64::from(usable) < sum
        };
        days.into_iter()
            .filter(|(_, claims)| too_many(claims))
            .map(|(date, claims)| Clash {
                item: self.name.clone(),
                date,
                usable,
                courses: sorted(claims.into_iter().cloned()),
            })
            .collect()
    }
}

fn sorted(claims: impl Iterator<Item = Claim>) -> Vec<Claim> {
    let mut claims: Vec<Claim> = claims.collect();
    claims.sort();
    claims
}

const NOT_HOME: &str =
    "NOT EXISTS (SELECT 1 FROM homecoming WHERE homecoming.course = course.id AND closes)";

fn open_courses(db: &Connection) -> Result<HashMap<i64, Open>, Error> {
    let mut courses = HashMap::new();
    let ask = format!("SELECT id, title, path FROM course WHERE {NOT_HOME}");
    let mut ask = db.prepare(&ask)?;
    let mut rows = ask.query([])?;
    while let Some(row) = rows.next()? {
        let course = Open {
            title: row.get(1)?,
            path: PathBuf::from(row.get::<_, String>(2)?),
            days: Vec::new(),
        };
        courses.insert(row.get::<_, i64>(0)?, course);
    }
    let mut ask = db.prepare("SELECT course, date FROM course_day ORDER BY course, date")?;
    let mut rows = ask.query([])?;
    while let Some(row) = rows.next()? {
        if let Some(course) = courses.get_mut(&row.get::<_, i64>(0)?) {
            course.days.push(date_of(&row.get::<_, String>(1)?)?);
        }
    }
    Ok(courses)
}

/// Only items whose bookings exceed what is usable when all days are taken together can clash
/// on one of them, so the others are left out early. By item key.
fn overbooked(db: &Connection, courses: &HashMap<i64, Open>) -> Result<Vec<Overbooked>, Error> {
    let held = usable_by_key(db)?;
    let mut found = Vec::new();
    for_each_item(db, |key, bookings| {
        let bookings = bookings.iter().filter_map(|(id, count)| {
            let course = courses.get(id)?;
            Some((*id, course, *count))
        });
        let sum: u64 = bookings.clone().map(|(.., count)| u64::from(count)).sum();
        let lot = held.get(key);
        let enough = lot.map_or(0, |(_, usable)| u64::from(*usable));
        if sum <= enough {
            return Ok(());
        }
        let claims = bookings.map(|(id, course, count)| (id, course.claim(count)));
        found.push(Overbooked {
            name: match lot {
                Some((name, _)) => name.clone(),
                None => as_booked(db, key)?,
            },
            usable: lot.map(|(_, usable)| *usable),
            claims: claims.collect(),
        });
        Ok(())
    })?;
    Ok(found)
}

/// Every booked item with the courses that book it and how many each. By item key, which an
/// index holds in this order.
fn for_each_item(
    db: &Connection,
    mut item: impl FnMut(&str, &[(i64, u32)]) -> Result<(), Error>,
) -> Result<(), Error> {
    let ask = "SELECT item_key, course, count FROM booking ORDER BY item_key";
    let mut ask = db.prepare(ask)?;
    let mut rows = ask.query([])?;
    let mut key = String::new();
    let mut bookings = Vec::new();
    while let Some(row) = rows.next()? {
        let of = row.get_ref(0)?.as_str().map_err(rusqlite::Error::from)?;
        if of != key {
            item(&key, &bookings)?;
            bookings.clear();
            of.clone_into(&mut key);
        }
        bookings.push((row.get(1)?, row.get(2)?));
    }
    item(&key, &bookings)
}

/// An item's name where no lot gives it one.
fn as_booked(db: &Connection, key: &str) -> Result<String, Error> {
    let ask = "SELECT item FROM booking WHERE item_key = ?1 ORDER BY course";
    Ok(db.query_row(ask, [key], |row| row.get(0))?)
}

/// Each item's first spelling and what is usable of it, over all lots.
fn usable_by_key(db: &Connection) -> Result<HashMap<String, (String, u32)>, Error> {
    let mut held: HashMap<String, (String, u32)> = HashMap::new();
    let ask = "SELECT item_key, item, good, care FROM lot ORDER BY item_key, owner_key";
    let mut ask = db.prepare(ask)?;
    let mut rows = ask.query([])?;
    while let Some(row) = rows.next()? {
        let usable = row.get::<_, u32>(2)?.saturating_add(row.get(3)?);
        match held.entry(row.get(0)?) {
            Entry::Occupied(mut entry) => {
                let (_, sum) = entry.get_mut();
                *sum = sum.saturating_add(usable);
            }
            Entry::Vacant(entry) => {
                entry.insert((row.get(1)?, usable));
            }
        }
    }
    Ok(held)
}

#[cfg(test)]
mod tests;
