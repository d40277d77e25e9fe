//! The marks of what is done: which ids there can be, and one that is none of them.

use super::tools::{CARE, PREPARATIONS, PREPARE, SHORT, id};
use super::worked_out::WISH;
use super::{ToDo, WORKED_OUT};
use crate::Error;
use crate::course::Course;
use crate::tables::{KitRule, ReadyTable};

/// Every id that the list of this course can hold, whatever stands in it at the moment: a mark
/// stays good when what it is about has been seen to and is no longer listed.
pub fn known_ids(course: &Course, ready: &ReadyTable, rules: &[KitRule]) -> Vec<String> {
    let mut known: Vec<String> = WORKED_OUT.map(str::to_owned).to_vec();
    known.extend(ready.tasks.iter().map(|task| task.id.clone()));
    let of_rules = rules.iter().map(|rule| rule.item.as_str());
    let of_course = course.kit.changes.iter().map(|change| change.item.as_str());
    for item in of_rules.chain(of_course) {
        known.extend([id(SHORT, item), id(CARE, item)]);
    }
    known.extend(PREPARATIONS.map(|(word, _)| id(PREPARE, word)));
    let wishes = course.running.wishes.iter();
    known.extend(wishes.map(|wish| id(WISH, &wish.lesson)));
    let mut seen = std::collections::HashSet::new();
    known.retain(|it| seen.insert(it.clone()));
    known
}

/// Every mark must be of something that this course's list holds or can hold, or it would
/// count for nothing.
///
/// # Errors
/// [`Error::UnknownTask`] for the first that is not.
pub fn check_marks(
    course: &Course,
    ready: &ReadyTable,
    rules: &[KitRule],
    list: &[ToDo],
) -> Result<(), Error> {
    let Some(given) = course.ready.as_ref().filter(|it| !it.done.is_empty()) else {
        return Ok(());
    };
    let mut known = known_ids(course, ready, rules);
    for it in list {
        // Each once: of two that are equally near a mistyped one, neither would be named.
        if !known.contains(&it.id) {
            known.push(it.id.clone());
        }
    }
    let stray = |mark: &&String| !known.contains(*mark);
    match given.done.iter().enumerate().find(|(_, mark)| stray(mark)) {
        None => Ok(()),
        Some((at, mark)) => Err(Error::UnknownTask {
            at,
            given: mark.clone(),
            known,
        }),
    }
}
