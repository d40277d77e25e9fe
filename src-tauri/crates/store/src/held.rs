//! What is held of each item, and what other courses have booked of it on given days.

use crate::courses::{date_of, date_text, identity};
use crate::{Error, Store, lots};
use chrono::NaiveDate;
use craft::kit::{Held, Taken, name_key};
use rusqlite::Connection;
use std::collections::{BTreeSet, HashMap};
use std::path::Path;

impl Store {
    /// Every item of the store: its counts over all owners, whose they are, and what courses
    /// other than `course_path` have booked of it on each of `days`.
    ///
    /// Courses whose kit was counted home hold nothing. What is booked of items that no lot
    /// holds is told by [`Store::clashes`].
    ///
    /// # Errors
    /// [`Error::CoursePath`]; [`Error::Busy`], [`Error::Damaged`],
    /// [`Error::NewerUnreadable`].
    pub fn held_for(
        &self,
        course_path: Option<&Path>,
        days: &[NaiveDate],
    ) -> Result<Vec<Held>, Error> {
        let own = course_path.map(identity).transpose()?;
        let days: BTreeSet<String> = days.iter().copied().map(date_text).collect();
        self.reading(|db| {
            let mut held = totals(db)?;
            let places: HashMap<String, usize> = (0..)
                .zip(&held)
                .map(|(place, held)| (name_key(&held.item), place))
                .collect();
            for day in &days {
                for (item, taken) in taken_on(db, day, own.as_deref())? {
                    let place = places.get(&item).copied();
                    if let Some(held) = place.and_then(|place| held.get_mut(place)) {
                        held.taken.push(taken);
                    }
                }
            }
            Ok(held)
        })
    }
}

/// All lots of an item as one, under the spelling of the first.
fn totals(db: &Connection) -> Result<Vec<Held>, Error> {
    let mut all: Vec<Held> = Vec::new();
    let mut last = String::new();
    for lot in lots::all(db)? {
        let of = name_key(&lot.item);
        if of != last {
            all.push(Held::counted(lot.item, 0));
            last = of;
        }
        // Lots come sorted by item, so the item's total is the last one.
        if let Some(held) = all.last_mut() {
            held.good = held.good.saturating_add(lot.good);
            held.care = held.care.saturating_add(lot.care);
            held.broken = held.broken.saturating_add(lot.broken);
            if !lot.owner.is_empty() {
                held.owners.push(lot.owner);
            }
        }
    }
    Ok(all)
}

/// What courses have booked on a day, by item key; in the order of their titles.
fn taken_on(db: &Connection, day: &str, but: Option<&str>) -> Result<Vec<(String, Taken)>, Error> {
    let mut ask = db.prepare(
        "SELECT item_key, title, count FROM course_day
         JOIN course ON course.id = course_day.course
         JOIN booking ON booking.course = course.id
         WHERE course_day.date = ?1 AND path IS NOT ?2
           AND NOT EXISTS (SELECT 1 FROM homecoming
                           WHERE homecoming.course = course.id AND closes)
         ORDER BY title, path",
    )?;
    let date = date_of(day)?;
    let taken = ask.query_map((day, but), |row| {
        let taken = Taken {
            course: row.get(1)?,
            date,
            count: row.get(2)?,
        };
        Ok((row.get(0)?, taken))
    })?;
    Ok(taken.collect::<Result<_, _>>()?)
}
