//! What can hurt someone: the risk assessment, and the briefing read out before the first
//! stone.

use super::Feed;
use super::emergency::{number, place, words};
use super::field::cautions;
use crate::Course;
use craft::hazards::{Likelihood, Rating, Severity};
use craft::tables::Applies;
use serde_json::{Value, json};
use shapes::plan::Hazard;

/// The hazards of this course: those every course with its figures meets, and those that only
/// the place and the people can answer.
pub(crate) fn risk_assessment(course: &Course) -> Feed<'_> {
    let all = course.plan.hazards.iter().map(Hazard::of);
    let (asked, here): (Vec<Hazard>, Vec<Hazard>) = all.partition(|it| it.ask.is_some());
    let table = &course.library.tables.hazards;
    let group = &course.file.course.group;
    let own = json!({
        "hazards": here,
        "asked": asked,
        "matrix": matrix(),
        "matrix_source": table.matrix_source,
        "instructors": group.instructors,
        "local_rules": cautions(course, &["local-rules-first"]),
        "wall": course.written.wall,
    });
    Feed::new(course, own)
}

/// The words of the matrix: the severities, then for each likelihood its level by severity.
fn matrix() -> Value {
    let rows: Vec<Value> = Likelihood::ALL
        .into_iter()
        .map(|likelihood| {
            let level = |severity| Rating {
                likelihood,
                severity,
            };
            let levels = Severity::ALL.map(|severity| level(severity).level().word());
            json!({ "likelihood": likelihood.word(), "levels": levels })
        })
        .collect();
    json!({ "severities": Severity::ALL.map(Severity::word), "rows": rows })
}

/// What the instructor reads out, with the figures of this course.
pub(crate) fn safety_briefing(course: &Course) -> Feed<'_> {
    let (written, given) = (&course.written, &course.file.course);
    let conditions = craft::conditions::Conditions::of(given, &course.plan.sun);
    let met: Vec<&str> = Applies::ALL
        .into_iter()
        .filter(|it| conditions.met(*it))
        .map(Applies::word)
        .collect();
    let weather: Vec<Value> = written
        .running
        .weather
        .iter()
        .map(|it| json!({ "day": it.day, "figures": it.figures, "asks": it.asks }))
        .collect();
    let own = json!({
        "number": number(course),
        "place": place(course),
        "emergency": words(course),
        "met": met,
        "stones": written.lifting.stones,
        "lifts": written.lifting.lifts,
        "bars": written.frames.bars.as_ref().map(|bars| bars.count),
        "rock": written.stone.rock,
        "footing_depth": written.wall.footing_depth,
        "height": written.wall.height,
        "first_day": written.days.first(),
        "weather": weather,
        "students": given.group.students.len(),
    });
    Feed::new(course, own)
}
