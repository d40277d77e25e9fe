//! What a course books of the kit store: everything on its load list, for its days.

use crate::Course;
use std::path::Path;
use store::{CourseEntry, MOST_OF_ONE};

/// A course as the store knows it, and what it books.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Booking {
    /// The course.
    pub course: CourseEntry,
    /// Items and how many of each.
    pub items: Vec<(String, u32)>,
}

/// The booking of a course that lives in this file.
pub fn of(course: &Course, path: &Path) -> Booking {
    let given = &course.file.course;
    let lines = course.plan.kit.iter().filter(|line| 0 < line.need);
    Booking {
        course: CourseEntry {
            path: path.to_owned(),
            title: given.title.clone(),
            days: given.days.iter().map(|day| day.date).collect(),
        },
        items: lines
            .map(|line| {
                let count = u32::try_from(line.need).unwrap_or(MOST_OF_ONE);
                (line.item.clone(), count.min(MOST_OF_ONE))
            })
            .collect(),
    }
}
