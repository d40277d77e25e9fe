//! Why the figures of a course are what they are, in the language of the course.

use crate::Course;
use crate::course::date_style;
use crate::spelling;
use shapes::written::Reason;

/// The reasons of a course, in the order of the places.
pub fn reasons(course: &Course) -> Vec<Reason> {
    let language = course.file.language;
    let mut all = shapes::written::reasons(
        &course.plan,
        &course.file.course,
        &course.library.tables,
        &course.written,
        date_style(language),
    );
    for reason in &mut all {
        let steps = reason.steps.iter_mut().map(|it| &mut it.what);
        let sources = reason.sources.iter_mut().map(|it| &mut it.what);
        let texts = reason.sentences.iter_mut().chain(steps).chain(sources);
        for text in texts.chain([&mut reason.title]) {
            *text = spelling::text(text, language);
        }
    }
    all
}
