//! What keeps people whole: the safety handout and the lifting card.

use super::Feed;
use super::emergency::{number, place, words};
use crate::Course;
use serde_json::json;

pub(crate) fn safety_handout(course: &Course) -> Feed<'_> {
    let cautions: Vec<_> = course
        .written
        .cautions
        .iter()
        .filter(|caution| caution.for_students)
        .collect();
    let own = json!({
        "cautions": cautions,
        "lifts": course.written.lifting.lifts,
        "heavier": course.written.lifting.heavier,
        "number": number(course),
        "place": place(course),
        "emergency": words(course),
    });
    Feed::new(course, own)
}

/// The cautions that stand on the lifting card, by id: those about taking up a stone.
const OF_LIFTING: [&str; 5] = [
    "lifting",
    "fingers",
    "heavy-footings",
    "throughs-lift",
    "copes-lift",
];

pub(crate) fn lifting_card(course: &Course) -> Feed<'_> {
    let written = &course.written;
    let cautions = written.cautions.iter();
    let cautions: Vec<_> = cautions
        .filter(|caution| OF_LIFTING.contains(&caution.id.as_str()))
        .collect();
    let own = json!({
        "lifting": written.lifting,
        "cautions": cautions,
        "rock": written.stone.rock,
        "density": written.stone.density,
        "height": written.wall.height,
    });
    Feed::new(course, own)
}
