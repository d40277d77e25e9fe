//! Booking: what a course counts on, on each of its days.

use crate::courses::{self, CourseEntry, home_on};
use crate::lots::{count_of, item_name};
use crate::text::tidy;
use crate::{Error, Store};
use craft::kit::name_key;
use rusqlite::params;
use std::collections::BTreeMap;

/// Characters of a course's title.
pub(crate) const MOST_OF_TITLE: usize = 2_000;

impl Store {
    /// Books so many of each item for all days of a course, in place of what it had booked
    /// before. Counts of 0 book nothing; an item named twice counts together.
    ///
    /// A course whose kit was counted home may book again once all its days lie after that.
    ///
    /// # Errors
    /// [`Error::AlreadyHome`]; [`Error::EmptyItem`], [`Error::TooLong`],
    /// [`Error::Unshowable`], [`Error::TooMany`], [`Error::CoursePath`]; [`Error::ReadOnly`],
    /// [`Error::Busy`], [`Error::DiskFull`].
    pub fn book(&mut self, course: &CourseEntry, items: &[(String, u32)]) -> Result<(), Error> {
        let course = CourseEntry {
            title: tidy("title", &course.title, MOST_OF_TITLE)?,
            ..course.clone()
        };
        let items = together(items)?;
        self.writing(|change| {
            let id = courses::put(change, &course)?;
            if let Some(on) = home_on(change, id)? {
                if !course.days.iter().all(|day| on < *day) || course.days.is_empty() {
                    let title = course.title.clone();
                    return Err(Error::AlreadyHome { title, on });
                }
                let held_again = "UPDATE homecoming SET closes = 0 WHERE course = ?1";
                change.execute(held_again, [id])?;
            }
            change.execute("DELETE FROM booking WHERE course = ?1", [id])?;
            let book =
                "INSERT INTO booking (course, item_key, item, count) VALUES (?1, ?2, ?3, ?4)";
            let mut book = change.prepare(book)?;
            for (key, (item, count)) in &items {
                book.execute(params![id, key, item, count])?;
            }
            Ok(())
        })
    }
}

/// By key: the first spelling of each item, and the sum of its counts.
fn together(items: &[(String, u32)]) -> Result<BTreeMap<String, (String, u32)>, Error> {
    let mut sums: BTreeMap<String, (String, u32)> = BTreeMap::new();
    for (item, count) in items.iter().filter(|(_, count)| 0 < *count) {
        let item = item_name(item)?;
        let sum = sums
            .entry(name_key(&item))
            .or_insert_with(|| (item.clone(), 0));
        let wanted = u64::from(sum.1) + u64::from(*count);
        sum.1 = count_of(&item, "booked", wanted)?;
    }
    Ok(sums)
}
