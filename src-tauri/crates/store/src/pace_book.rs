//! The pace book: how long each stage of past courses took, recorded and taken back.

use crate::bookings::MOST_OF_TITLE;
use crate::courses::{date_of, date_text, identity};
use crate::text::{MOST_OF_NAME, tidy};
use crate::{Error, Store};
use chrono::NaiveDate;
use craft::pace::book::{Record, StageRecord};
use rusqlite::{Connection, OptionalExtension, Row, params};
use std::collections::HashSet;
use std::path::{Path, PathBuf};

/// More pairs than ever stand at one string.
pub(crate) const MOST_TIED: f64 = 1_000.0;

/// What is recorded of one course.
#[derive(Debug, Clone, PartialEq)]
pub struct PaceRecord {
    /// The course file, which is the course's identity.
    pub path: PathBuf,
    /// The course's first day.
    pub first_day: NaiveDate,
    /// The day on which it was recorded.
    pub recorded_on: NaiveDate,
    /// Its title, and how long its stages took.
    pub record: Record,
}

impl Store {
    /// Records how long the stages of a course took. An earlier record of the course counts no
    /// longer, and is kept: see [`Store::take_back_record`].
    ///
    /// # Errors
    /// [`Error::AbsurdPace`], [`Error::NothingRecorded`], [`Error::UnnamedStage`],
    /// [`Error::StageTwice`], [`Error::TiedPairs`], [`Error::RecordedTooEarly`];
    /// [`Error::TooLong`] and [`Error::Unshowable`] for title and stages;
    /// [`Error::CoursePath`], [`Error::ReadOnly`], [`Error::Busy`], [`Error::DiskFull`].
    pub fn record(&mut self, record: &PaceRecord) -> Result<(), Error> {
        let path = identity(&record.path)?;
        let it = sound(record)?;
        let record = PaceRecord {
            record: it,
            ..record.clone()
        };
        self.writing(|change| put(change, &path, &record))
    }

    /// Takes the record of a course back: the one before it counts again. Tells which that is;
    /// `None` where there was none.
    ///
    /// # Errors
    /// [`Error::NotRecorded`]; [`Error::CoursePath`], [`Error::ReadOnly`], [`Error::Busy`],
    /// [`Error::DiskFull`].
    pub fn take_back_record(&mut self, path: &Path) -> Result<Option<PaceRecord>, Error> {
        let identity = identity(path)?;
        self.writing(|change| {
            let newest = "DELETE FROM pace_record WHERE path = ?1 AND counts";
            if change.execute(newest, [&identity])? == 0 {
                return Err(Error::NotRecorded {
                    path: path.to_owned(),
                });
            }
            let before = "UPDATE pace_record SET counts = 1
                WHERE id = (SELECT max(id) FROM pace_record WHERE path = ?1) RETURNING id";
            let before = change.query_row(before, [&identity], |row| row.get(0));
            before.optional()?.map(|id| one(change, id)).transpose()
        })
    }

    /// The records that count, by the courses' first day, then by title.
    ///
    /// # Errors
    /// [`Error::Busy`], [`Error::Damaged`], [`Error::NewerUnreadable`].
    pub fn pace_records(&self) -> Result<Vec<PaceRecord>, Error> {
        self.reading(counting)
    }
}

/// The records that count, in their order.
pub(crate) fn counting(db: &Connection) -> Result<Vec<PaceRecord>, Error> {
    let ask = "SELECT id FROM pace_record WHERE counts ORDER BY first_day, title, path";
    let mut ask = db.prepare(ask)?;
    let ids = ask.query_map([], |row| row.get(0))?;
    let ids: Vec<i64> = ids.collect::<Result<_, _>>()?;
    ids.into_iter().map(|id| one(db, id)).collect()
}

/// Puts a sound record over what was recorded of the course.
pub(crate) fn put(db: &Connection, identity: &str, record: &PaceRecord) -> Result<(), Error> {
    let older = "UPDATE pace_record SET counts = 0 WHERE path = ?1";
    db.execute(older, [identity])?;
    let put = "INSERT INTO pace_record (path, title, first_day, recorded_on, counts)
        VALUES (?1, ?2, ?3, ?4, 1)";
    let (first_day, on) = (date_text(record.first_day), date_text(record.recorded_on));
    let title = &record.record.course;
    db.execute(put, params![identity, title, first_day, on])?;
    put_stages(db, db.last_insert_rowid(), &record.record.stages)
}

/// Whether a string can tie so many pairs together.
pub(crate) fn may_be_tied(pairs: f64) -> bool {
    (1.0..=MOST_TIED).contains(&pairs)
}

/// Whether a course has a record, whichever counts.
pub(crate) fn is_recorded(db: &Connection, identity: &str) -> Result<bool, Error> {
    let ask = "SELECT EXISTS (SELECT 1 FROM pace_record WHERE path = ?1)";
    Ok(db.query_row(ask, [identity], |row| row.get(0))?)
}

/// Lets the records follow a course file that has another name now.
pub(crate) fn follow(db: &Connection, from: &str, to: &str) -> Result<(), Error> {
    db.execute(
        "UPDATE pace_record SET path = ?2 WHERE path = ?1",
        [from, to],
    )?;
    Ok(())
}

/// The record as it is kept, if it can be.
fn sound(given: &PaceRecord) -> Result<Record, Error> {
    let title = tidy("title", &given.record.course, MOST_OF_TITLE)?;
    if given.recorded_on < given.first_day {
        return Err(Error::RecordedTooEarly {
            title,
            first: given.first_day,
            on: given.recorded_on,
        });
    }
    let mut record = Record {
        course: title,
        ..given.record.clone()
    };
    for row in &mut record.stages {
        row.stage = tidy("stage", &row.stage, MOST_OF_NAME)?;
    }
    if record.stages.is_empty() {
        return Err(Error::NothingRecorded {
            title: record.course,
        });
    }
    record.check()?;
    let mut seen = HashSet::new();
    for row in &record.stages {
        if row.stage.is_empty() {
            return Err(Error::UnnamedStage {
                title: record.course,
            });
        }
        if !seen.insert(&row.stage) {
            return Err(Error::StageTwice {
                stage: row.stage.clone(),
            });
        }
        let out = |pairs: &f64| !may_be_tied(*pairs);
        if let Some(given) = row.tied.filter(out) {
            return Err(Error::TiedPairs {
                stage: row.stage.clone(),
                given,
            });
        }
    }
    Ok(record)
}

fn put_stages(db: &Connection, record: i64, stages: &[StageRecord]) -> Result<(), Error> {
    let mut put = db.prepare(
        "INSERT INTO pace_record_stage (record, place, stage, usual_minutes, taken_minutes, tied)
         VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
    )?;
    for (place, row) in (0_i64..).zip(stages) {
        let (usual, taken) = (row.usual_minutes, row.taken_minutes);
        put.execute(params![record, place, row.stage, usual, taken, row.tied])?;
    }
    Ok(())
}

fn one(db: &Connection, id: i64) -> Result<PaceRecord, Error> {
    let ask = "SELECT path, title, first_day, recorded_on FROM pace_record WHERE id = ?1";
    let text =
        |row: &Row<'_>| Ok::<[String; 4], _>([row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?]);
    let [path, course, first_day, recorded_on] = db.query_row(ask, [id], text)?;
    let mut ask = db.prepare(
        "SELECT stage, usual_minutes, taken_minutes, tied FROM pace_record_stage
         WHERE record = ?1 ORDER BY place",
    )?;
    let stages = ask.query_map([id], |row| {
        Ok(StageRecord {
            stage: row.get(0)?,
            usual_minutes: row.get(1)?,
            taken_minutes: row.get(2)?,
            tied: row.get(3)?,
        })
    })?;
    let stages = stages.collect::<Result<_, _>>()?;
    Ok(PaceRecord {
        path: PathBuf::from(path),
        first_day: date_of(&first_day)?,
        recorded_on: date_of(&recorded_on)?,
        record: Record { course, stages },
    })
}
