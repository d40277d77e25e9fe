//! When somebody is hurt: the emergency sheet, and what of it stands on other pages.

use super::Feed;
use crate::{Course, spelling};
use serde_json::{Value, json};
use shapes::written::Coordinates;

/// The sheet for the site.
pub(crate) fn emergency_sheet(course: &Course) -> Feed<'_> {
    let own = |text: &str| spelling::text(text, course.file.language);
    let injuries: Vec<Value> = course
        .library
        .first_aid
        .iter()
        .map(|it| {
            let steps: Vec<String> = it.steps.iter().map(|step| own(step)).collect();
            json!({
                "name": own(&it.name),
                "ring": own(&it.ring),
                "steps": steps,
                "source": it.source,
            })
        })
        .collect();
    let own = json!({
        "number": number(course),
        "place": place(course),
        "emergency": words(course),
        "injuries": injuries,
        "people": course.file.course.group.students.len()
            + staff(course.file.course.group.instructors)
            + staff(course.file.course.group.assistants),
    });
    Feed::new(course, own)
}

fn staff(count: u32) -> usize {
    usize::try_from(count).unwrap_or(usize::MAX)
}

/// The number to ring, where the country is known.
pub(super) fn number(course: &Course) -> Option<&str> {
    let country = course.file.course.venue.country.as_deref();
    course.library.emergency(country)
}

/// Where the course is held, as it is read out.
pub(super) fn place(course: &Course) -> Coordinates {
    let venue = &course.file.course.venue;
    Coordinates::of(venue.latitude, venue.longitude)
}

/// What the instructor has said; empty words are blanks on the pages.
pub(super) fn words(course: &Course) -> Value {
    let said = &course.file.emergency;
    json!({
        "first_aider": said.first_aider,
        "first_aid_kit": said.first_aid_kit,
        "hospital": said.hospital,
        "access": said.access,
        "meeting_point": said.meeting_point,
        "signal": said.signal,
    })
}
