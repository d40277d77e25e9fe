//! The one page with what is noted of students in confidence.

use super::Feed;
use crate::Course;
use serde_json::{Value, json};

/// Whom to ring and what to know, student by student; nothing else is fed any of it.
pub(crate) fn contacts_sheet(course: &Course) -> Feed<'_> {
    let students = course.chosen_students();
    let rows: Vec<Value> = students
        .map(|(place, student)| {
            let notes = course.file.private.get(place).cloned().unwrap_or_default();
            json!({
                "name": student.name,
                "contact": notes.emergency_contact,
                "medical": notes.medical,
            })
        })
        .collect();
    Feed::new(course, json!({ "rows": rows, "named": course.file.roster }))
}
