//! The courses on this machine that count on the store, each known by its file.

use crate::{Error, Store, pace_book};
use chrono::NaiveDate;
use rusqlite::{Connection, OptionalExtension, params};
use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

/// A course, as its file tells.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CourseEntry {
    /// The course file. It is the course's identity: links are followed, so that two ways to
    /// one file are one course.
    pub path: PathBuf,
    /// What a person reads.
    pub title: String,
    /// The days on which the kit is out.
    pub days: Vec<NaiveDate>,
}

/// A course with what it has booked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Booked {
    /// The course; its days in order.
    pub course: CourseEntry,
    /// Items and how many of each, by item.
    pub items: Vec<(String, u32)>,
    /// When its kit was counted home; from then on it holds nothing.
    pub home_on: Option<NaiveDate>,
}

impl Store {
    /// All courses that have booked kit, by their first day, then by title.
    ///
    /// # Errors
    /// [`Error::Busy`], [`Error::Damaged`], [`Error::NewerUnreadable`].
    pub fn courses(&self) -> Result<Vec<Booked>, Error> {
        self.reading(|db| {
            let mut courses: Vec<Booked> = all(db)?.into_values().collect();
            courses.sort_by(|a, b| {
                let order =
                    |it: &Booked| (it.course.days.first().copied(), it.course.title.clone());
                order(a).cmp(&order(b))
            });
            Ok(courses)
        })
    }

    /// Lets go of all a course has booked and forgets it, with what came home from it; what is
    /// recorded of its pace stays. Tells whether it was known.
    ///
    /// # Errors
    /// [`Error::ReadOnly`], [`Error::Busy`], [`Error::DiskFull`], [`Error::CoursePath`].
    pub fn release(&mut self, path: &Path) -> Result<bool, Error> {
        let path = identity(path)?;
        self.writing(|change| Ok(0 < change.execute("DELETE FROM course WHERE path = ?1", [path])?))
    }

    /// Follows a course file that was moved or renamed, with all that is kept of it. Tells whether the course was known.
    ///
    /// # Errors
    /// [`Error::CourseThere`] if the new file's name is that of another course;
    /// [`Error::ReadOnly`], [`Error::Busy`], [`Error::DiskFull`], [`Error::CoursePath`].
    pub fn move_course(&mut self, old: &Path, new: &Path) -> Result<bool, Error> {
        let (from, to) = (identity(old)?, identity(new)?);
        self.writing(|change| {
            let known = |path: &str| {
                let booked = id_of(change, path)?.is_some();
                Ok::<_, Error>(booked || pace_book::is_recorded(change, path)?)
            };
            if from == to || !known(&from)? {
                return Ok(from == to && known(&from)?);
            }
            if known(&to)? {
                return Err(Error::CourseThere {
                    path: new.to_owned(),
                });
            }
            pace_book::follow(change, &from, &to)?;
            change.execute("UPDATE course SET path = ?2 WHERE path = ?1", [from, to])?;
            Ok(true)
        })
    }
}

/// What a course file is known by: its real place, links followed. Of a file that is not
/// there (any more) it is the real place of its folder, and the name.
pub(crate) fn identity(path: &Path) -> Result<String, Error> {
    let real = path.canonicalize().or_else(|_| {
        let absolute = std::path::absolute(path)?;
        let folder = absolute.parent().and_then(|it| it.canonicalize().ok());
        Ok::<_, std::io::Error>(match (folder, absolute.file_name()) {
            (Some(folder), Some(name)) => folder.join(name),
            _ => absolute,
        })
    });
    real.ok()
        .and_then(|real| real.into_os_string().into_string().ok())
        .ok_or_else(|| Error::CoursePath {
            path: path.to_owned(),
        })
}

pub(crate) fn id_of(db: &Connection, identity: &str) -> Result<Option<i64>, Error> {
    let ask = "SELECT id FROM course WHERE path = ?1";
    Ok(db.query_row(ask, [identity], |row| row.get(0)).optional()?)
}

/// The course's id and title, which must be known.
pub(crate) fn known(db: &Connection, path: &Path) -> Result<(i64, String), Error> {
    let ask = "SELECT id, title FROM course WHERE path = ?1";
    let found = db.query_row(ask, [identity(path)?], |row| Ok((row.get(0)?, row.get(1)?)));
    found.optional()?.ok_or_else(|| Error::NoSuchCourse {
        path: path.to_owned(),
    })
}

/// When its kit was counted home, if that is so.
pub(crate) fn home_on(db: &Connection, course: i64) -> Result<Option<NaiveDate>, Error> {
    let ask = "SELECT date FROM homecoming WHERE course = ?1 AND closes";
    let date: Option<String> = db.query_row(ask, [course], |row| row.get(0)).optional()?;
    date.map(|date| date_of(&date)).transpose()
}

pub(crate) fn first_day(db: &Connection, course: i64) -> Result<Option<NaiveDate>, Error> {
    let ask = "SELECT min(date) FROM course_day WHERE course = ?1";
    let date: Option<String> = db.query_row(ask, [course], |row| row.get(0))?;
    date.map(|date| date_of(&date)).transpose()
}

/// Title and days, new or over what was there.
pub(crate) fn put(db: &Connection, course: &CourseEntry) -> Result<i64, Error> {
    let put = "INSERT INTO course (path, title) VALUES (?1, ?2)
        ON CONFLICT (path) DO UPDATE SET title = ?2 RETURNING id";
    let named = params![identity(&course.path)?, course.title];
    let id: i64 = db.query_row(put, named, |row| row.get(0))?;
    db.execute("DELETE FROM course_day WHERE course = ?1", [id])?;
    let mut day = db.prepare("INSERT INTO course_day (course, date) VALUES (?1, ?2)")?;
    for date in course.days.iter().collect::<BTreeSet<_>>() {
        day.execute(params![id, date_text(*date)])?;
    }
    Ok(id)
}

/// Every course by its id.
fn all(db: &Connection) -> Result<BTreeMap<i64, Booked>, Error> {
    let mut courses = BTreeMap::new();
    let mut ask = db.prepare(
        "SELECT course.id, path, title, date FROM course
         LEFT JOIN homecoming ON homecoming.course = course.id AND closes",
    )?;
    let mut rows = ask.query([])?;
    while let Some(row) = rows.next()? {
        let home_on: Option<String> = row.get(3)?;
        let course = CourseEntry {
            path: PathBuf::from(row.get::<_, String>(1)?),
            title: row.get(2)?,
            days: Vec::new(),
        };
        let booked = Booked {
            course,
            items: Vec::new(),
            home_on: home_on.map(|date| date_of(&date)).transpose()?,
        };
        courses.insert(row.get(0)?, booked);
    }
    let mut ask = db.prepare("SELECT course, date FROM course_day ORDER BY course, date")?;
    let mut rows = ask.query([])?;
    while let Some(row) = rows.next()? {
        if let Some(booked) = courses.get_mut(&row.get::<_, i64>(0)?) {
            booked.course.days.push(date_of(&row.get::<_, String>(1)?)?);
        }
    }
    let mut ask =
        db.prepare("SELECT course, item, count FROM booking ORDER BY course, item_key")?;
    let mut rows = ask.query([])?;
    while let Some(row) = rows.next()? {
        if let Some(booked) = courses.get_mut(&row.get::<_, i64>(0)?) {
            booked.items.push((row.get(1)?, row.get(2)?));
        }
    }
    Ok(courses)
}

/// `2027-04-24`, as dates are kept.
pub(crate) fn date_text(date: NaiveDate) -> String {
    date.format("%Y-%m-%d").to_string()
}

pub(crate) fn date_of(text: &str) -> Result<NaiveDate, Error> {
    NaiveDate::parse_from_str(text, "%Y-%m-%d").map_err(|_| Error::Unexpected {
        what: format!("\"{text}\" is kept where a date should be"),
    })
}
