//! What goes out to each student before the course: the joining letter, and the declaration
//! that they are fit to take part.

use super::Feed;
use super::emergency::{place, words};
use super::protection::protection;
use crate::Course;
use craft::quantity::{Read, kilograms, show_mass};
use serde_json::{Value, json};
use shapes::written::{Day, lasts};

/// A letter for each student of a roster, or one for all where nobody is named.
pub(crate) fn joining_letter(course: &Course) -> Feed<'_> {
    let letters: Vec<Value> = if course.file.roster {
        let students = course.chosen_students();
        students
            .map(|(_, it)| json!({ "name": it.name, "gloves": it.gloves.map(|size| size.word()) }))
            .collect()
    } else {
        vec![json!({ "name": null, "gloves": null })]
    };
    let days = course.written.days.iter();
    let own = json!({
        "letters": letters,
        "days": days.map(day).collect::<Vec<_>>(),
        "place": place(course),
        "emergency": words(course),
        "wall": course.written.wall,
        "rock": course.written.stone.rock,
        "built": course.written.stone.built,
        "protection": protection(course),
        "lifts": lifts(course),
        "hot": is_told(course, "heat"),
        "cold": is_told(course, "cold-hands"),
        "bars": is_told(course, "bar-ends"),
    });
    Feed::new(course, own)
}

/// A declaration for each student, by name where there is a roster.
pub(crate) fn fitness_declaration(course: &Course) -> Feed<'_> {
    let students = course.chosen_students();
    let names: Vec<Value> = students
        .map(|(_, it)| json!(course.file.roster.then_some(&it.name)))
        .collect();
    let written = &course.written;
    let own = json!({
        "names": names,
        "days": written.days.len(),
        "outdoors": outdoors(course),
        "lifts": lifts(course),
        "heavy": written.lifting.stones,
        "heavier": written.lifting.heavier,
        "share": share(course),
        "rock": written.stone.rock,
        "height": written.wall.height,
        "low": low_work(course),
        "hot": is_told(course, "heat"),
        "cold": is_told(course, "cold-hands"),
        "bars": is_told(course, "bar-ends"),
    });
    Feed::new(course, own)
}

/// The stages worked at on one's knees, by id. Common practice, no source.
const LOW: [&str; 2] = ["footing", "first-lift"];

/// How long the group is usually at each of them, to the quarter hour.
fn low_work(course: &Course) -> Vec<Value> {
    let stages = &course.library.tables.stages;
    let work = course.plan.work.iter();
    let both = work.filter_map(|work| Some((stages.get(work.stage)?, work.hours)));
    both.filter(|(stage, _)| LOW.contains(&stage.id.as_str()))
        .map(|(stage, hours)| {
            let quarters = (hours * 4.0).round().max(1.0);
            json!({ "stage": stage.name, "usually": lasts(quarters * 15.0) })
        })
        .collect()
}

/// When a day begins and ends, and its breaks.
fn day(day: &Day) -> Value {
    let breaks = day.entries.iter().filter(|it| it.kind == "break");
    let breaks: Vec<Value> = breaks
        .map(|it| json!({ "what": it.what, "start": it.start, "lasts": it.lasts }))
        .collect();
    json!({ "date": day.date, "start": day.start, "finish": day.finish, "breaks": breaks })
}

/// What one person lifts alone: the least and the most that the guides allow anywhere at this
/// wall, with the ways it is lifted; null where nothing is lifted.
fn lifts(course: &Course) -> Value {
    let guide = course.plan.lifting.lifts.iter();
    let told = course.written.lifting.lifts.iter();
    let mut both: Vec<_> = guide
        .zip(told)
        .filter(|(lift, _)| kilograms(0.0) < lift.one_person)
        .collect();
    both.sort_by(|(a, _), (b, _)| a.one_person.si().total_cmp(&b.one_person.si()));
    let [(_, least), .., (_, most)] = both[..] else {
        return Value::Null;
    };
    json!({ "least": least, "most": most })
}

/// The longest and the shortest day, from arriving to leaving.
fn outdoors(course: &Course) -> Value {
    let days = course.file.course.days.iter();
    let mut minutes: Vec<i32> = days
        .filter_map(|day| i32::try_from((day.finish - day.start).num_minutes()).ok())
        .collect();
    minutes.sort_unstable();
    let said = |minutes: Option<&i32>| minutes.map(|it| lasts(f64::from(*it)));
    json!({ "least": said(minutes.first()), "most": said(minutes.last()) })
}

/// The stone of the finished wall, shared out among the students.
fn share(course: &Course) -> String {
    let given = &course.file.course;
    let many = u32::try_from(given.group.students.len()).unwrap_or(u32::MAX);
    let mass = course.plan.stone.built() / f64::from(many.max(1));
    show_mass(mass, given.units)
}

/// Whether this course is told of a caution.
fn is_told(course: &Course, id: &str) -> bool {
    course.written.cautions.iter().any(|it| it.id == id)
}
