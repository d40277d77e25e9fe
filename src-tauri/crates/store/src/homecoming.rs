//! Counting the kit home: what came back, what broke, what was used up or lost.

use crate::courses::{date_text, first_day, home_on, id_of, identity, known};
use crate::text::{MOST_OF_NAME, tidy};
use crate::{Error, Store};
use chrono::NaiveDate;
use craft::kit::name_key;
use rusqlite::{Connection, params};
use std::collections::BTreeMap;
use std::path::Path;

/// What became of one item of a course. The counts together are what was counted home.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Return {
    /// The item, as it was booked.
    pub item: String,
    /// Whose they were, where that matters: `Some("")` for the instructor's own. `None`
    /// takes from the instructor's own first, then by owner.
    pub owner: Option<String>,
    /// Came back as they went.
    pub back: u32,
    /// Came back with something to see to.
    pub care: u32,
    /// Came back broken.
    pub broken: u32,
    /// Will not come back: used up.
    pub used_up: u32,
    /// Will not come back: lost.
    pub lost: u32,
}

/// What to tell the person after the kit was counted home.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Homecoming {
    /// Booked and not counted: they stay in the store as they were.
    pub uncounted: Vec<(String, u32)>,
    /// Said to need care, to be broken, used up or lost, beyond what the store holds: the
    /// store knows nothing of these.
    pub not_in_store: Vec<(String, u32)>,
}

/// A count that has been made.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CountedHome {
    /// The day given.
    pub on: NaiveDate,
    /// What was counted, in the order in which it was.
    pub returns: Vec<Return>,
}

impl Return {
    fn counted(&self) -> u64 {
        [self.back, self.care, self.broken, self.used_up, self.lost]
            .into_iter()
            .map(u64::from)
            .sum()
    }
}

impl Store {
    /// Counts a course's kit home, on the day given: those that need care and those that broke
    /// change their condition, those used up or lost leave the store, and the course holds
    /// nothing any more. All of it or, on a refusal, none.
    ///
    /// Good ones go out and are lost, used up or broken before those that need care. What is
    /// not counted counts as back.
    ///
    /// # Errors
    /// [`Error::NoSuchCourse`], [`Error::AlreadyHome`], [`Error::HomeTooEarly`],
    /// [`Error::NotBooked`], [`Error::MoreThanBooked`], [`Error::CoursePath`];
    /// [`Error::ReadOnly`], [`Error::Busy`], [`Error::DiskFull`].
    pub fn home(
        &mut self,
        path: &Path,
        returns: &[Return],
        on: NaiveDate,
    ) -> Result<Homecoming, Error> {
        self.writing(|change| {
            let (course, title) = known(change, path)?;
            if let Some(on) = home_on(change, course)? {
                return Err(Error::AlreadyHome { title, on });
            }
            if let Some(first) = first_day(change, course)?.filter(|first| on < *first) {
                return Err(Error::HomeTooEarly { title, first, on });
            }
            let mut answer = Homecoming {
                uncounted: uncounted(change, course, &title, returns)?,
                not_in_store: Vec::new(),
            };
            let close = "INSERT INTO homecoming (course, date, closes) VALUES (?1, ?2, 1)";
            change.execute(close, params![course, date_text(on)])?;
            let homecoming = change.last_insert_rowid();
            for it in returns {
                note(change, homecoming, it)?;
                let beyond = follow(change, homecoming, it)?;
                if 0 < beyond {
                    answer.not_in_store.push((it.item.clone(), beyond));
                }
            }
            Ok(answer)
        })
    }
}

impl Store {
    /// What was counted home from a course; `None` if its kit is still out or is not known.
    ///
    /// # Errors
    /// [`Error::CoursePath`]; [`Error::Busy`], [`Error::Damaged`],
    /// [`Error::NewerUnreadable`].
    pub fn counted_home(&self, path: &Path) -> Result<Option<CountedHome>, Error> {
        let identity = identity(path)?;
        self.reading(|db| {
            let Some(course) = id_of(db, &identity)? else {
                return Ok(None);
            };
            let Some(on) = home_on(db, course)? else {
                return Ok(None);
            };
            let mut ask = db.prepare(
                "SELECT item, owner, back, care, broken, used_up, lost FROM came_home
                 JOIN homecoming ON homecoming.id = came_home.homecoming
                 WHERE course = ?1 AND closes ORDER BY came_home.rowid",
            )?;
            let returns = ask.query_map([course], |row| {
                Ok(Return {
                    item: row.get(0)?,
                    owner: row.get(1)?,
                    back: row.get(2)?,
                    care: row.get(3)?,
                    broken: row.get(4)?,
                    used_up: row.get(5)?,
                    lost: row.get(6)?,
                })
            })?;
            let returns = returns.collect::<Result<_, _>>()?;
            Ok(Some(CountedHome { on, returns }))
        })
    }
}

/// What is booked and not counted, once nothing is counted that was not booked.
fn uncounted(
    db: &Connection,
    course: i64,
    title: &str,
    returns: &[Return],
) -> Result<Vec<(String, u32)>, Error> {
    let mut counted: BTreeMap<String, (&str, u64)> = BTreeMap::new();
    for it in returns {
        counted.entry(name_key(&it.item)).or_insert((&it.item, 0)).1 += it.counted();
    }
    let ask = "SELECT item_key, item, count FROM booking WHERE course = ?1 ORDER BY item_key";
    let mut ask = db.prepare(ask)?;
    let mut rows = ask.query([course])?;
    let mut left = Vec::new();
    while let Some(row) = rows.next()? {
        let (key, item, booked): (String, String, u32) = (row.get(0)?, row.get(1)?, row.get(2)?);
        let counted = counted.remove(&key).map_or(0, |(_, counted)| counted);
        let Some(rest) = u64::from(booked).checked_sub(counted) else {
            return Err(Error::MoreThanBooked {
                title: title.to_owned(),
                item,
                booked,
                counted,
            });
        };
        if 0 < rest {
            left.push((item, u32::try_from(rest).unwrap_or(booked)));
        }
    }
    match counted.into_values().find(|(_, counted)| 0 < *counted) {
        Some((item, _)) => Err(Error::NotBooked {
            title: title.to_owned(),
            item: item.to_owned(),
        }),
        None => Ok(left),
    }
}

fn note(db: &Connection, homecoming: i64, it: &Return) -> Result<(), Error> {
    let note = "INSERT INTO came_home (homecoming, item, owner, back, care, broken, used_up, lost)
        VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)";
    let item = tidy("item", &it.item, MOST_OF_NAME)?;
    let owner = it.owner.as_deref();
    let owner = owner.map(|owner| tidy("owner", owner, MOST_OF_NAME));
    let named = params![
        homecoming,
        item,
        owner.transpose()?,
        it.back,
        it.care,
        it.broken,
        it.used_up,
        it.lost
    ];
    db.execute(note, named)?;
    Ok(())
}

/// A lot while it is being changed.
struct Changing {
    id: i64,
    item: String,
    owner: String,
    before: [u32; 3],
    now: [u32; 3],
}

/// Conditions of a lot, by their place in [`Changing::now`].
const GOOD: usize = 0;
const CARE: usize = 1;
const BROKEN: usize = 2;

/// Lets the lots follow one return; how many of it no lot could follow.
fn follow(db: &Connection, homecoming: i64, it: &Return) -> Result<u32, Error> {
    let mut lots = lots_of(db, it)?;
    let (good, care) = (all(&lots, GOOD), all(&lots, CARE));
    let went_in_need_of_care = it.counted().saturating_sub(good).min(care);
    let gone = it.used_up.saturating_add(it.lost);
    let mut beyond = shift(&mut lots, gone, &[GOOD, CARE], None);
    beyond += shift(&mut lots, it.broken, &[GOOD, CARE], Some(BROKEN));
    // Those that went in need of care, and came back so, are no change.
    let no_change = went_in_need_of_care.saturating_sub(care - all(&lots, CARE));
    let newly = u64::from(it.care).saturating_sub(no_change);
    let newly = u32::try_from(newly).unwrap_or(it.care);
    beyond += shift(&mut lots, newly, &[GOOD], Some(CARE));
    for lot in lots.iter().filter(|lot| lot.before != lot.now) {
        write(db, homecoming, lot)?;
    }
    Ok(beyond)
}

/// How many there are of one condition.
fn all(lots: &[Changing], condition: usize) -> u64 {
    lots.iter().map(|lot| u64::from(lot.now[condition])).sum()
}

/// Takes so many out of conditions, lot by lot, and puts them into another; how many there
/// were not.
fn shift(lots: &mut [Changing], count: u32, from: &[usize], to: Option<usize>) -> u32 {
    let mut left = count;
    for condition in from {
        for lot in &mut *lots {
            let taken = left.min(lot.now[*condition]);
            lot.now[*condition] -= taken;
            if let Some(to) = to {
                lot.now[to] += taken;
            }
            left -= taken;
        }
    }
    left
}

/// The lots a return may come from, the instructor's own first.
fn lots_of(db: &Connection, it: &Return) -> Result<Vec<Changing>, Error> {
    let mut ask = db.prepare(
        "SELECT id, item, owner, good, care, broken FROM lot
         WHERE item_key = ?1 AND (?2 IS NULL OR owner_key = ?2) ORDER BY owner_key",
    )?;
    let owner = it.owner.as_deref().map(name_key);
    let lots = ask.query_map(params![name_key(&it.item), owner], |row| {
        let counts = [row.get(3)?, row.get(4)?, row.get(5)?];
        Ok(Changing {
            id: row.get(0)?,
            item: row.get(1)?,
            owner: row.get(2)?,
            before: counts,
            now: counts,
        })
    })?;
    Ok(lots.collect::<Result<_, _>>()?)
}

/// The lot's new counts, and by how much they changed.
fn write(db: &Connection, homecoming: i64, lot: &Changing) -> Result<(), Error> {
    let change = "UPDATE lot SET good = ?2, care = ?3, broken = ?4 WHERE id = ?1";
    let [good, care, broken] = lot.now;
    db.execute(change, params![lot.id, good, care, broken])?;
    let keep =
        "INSERT INTO changed_by_homecoming (homecoming, lot, item, owner, good, care, broken)
        VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)";
    let by = |condition: usize| i64::from(lot.now[condition]) - i64::from(lot.before[condition]);
    let (good, care, broken) = (by(GOOD), by(CARE), by(BROKEN));
    let changed = params![homecoming, lot.id, lot.item, lot.owner, good, care, broken];
    db.execute(keep, changed)?;
    Ok(())
}
