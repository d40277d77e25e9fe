//! Who was there: the register of each day, each student's attendance slip, and the feedback
//! sheet about what they were there for.

use super::Feed;
use super::protection::protection;
use crate::Course;
use chrono::NaiveDate;
use craft::course::Student;
use craft::pace::timetable::{Entry, Of};
use craft::people::Attended;
use craft::tables::Before;
use serde_json::{Value, json};
use shapes::written::lasts;

/// A page or more for each day, to sign in and out on, with the gear that is handed out.
pub(crate) fn register(course: &Course) -> Feed<'_> {
    let written = &course.written;
    let students: Vec<Value> = course
        .file
        .course
        .group
        .students
        .iter()
        .map(|it| json!({ "name": it.name, "gloves": it.gloves.map(|size| size.word()) }))
        .collect();
    let days: Vec<Value> = written
        .days
        .iter()
        .map(|day| {
            let people = written.running.people.iter();
            let mut people = people.filter(|it| it.day == day.number);
            json!({
                "number": day.number,
                "date": day.date,
                "start": day.start,
                "finish": day.finish,
                "away": people.next().map_or(&[][..], |it| &it.away),
            })
        })
        .collect();
    let group = &course.file.course.group;
    let own = json!({
        "students": students,
        "named": course.file.roster,
        "days": days,
        "instructors": group.instructors,
        "assistants": group.assistants,
        "protection": protection(course),
        "meeting_point": course.file.emergency.meeting_point,
    });
    Feed::new(course, own)
}

/// What each student has been there for.
pub(crate) fn attendance_slip(course: &Course) -> Feed<'_> {
    let students = course.chosen_students();
    let slips: Vec<Value> = students.filter_map(|(_, it)| slip(course, it)).collect();
    let group = &course.file.course.group;
    let own = json!({
        "slips": slips,
        "wall": course.written.wall,
        "rock": course.written.stone.rock,
        "instructors": group.instructors,
    });
    Feed::new(course, own)
}

/// Nothing for who is away throughout.
fn slip(course: &Course, student: &Student) -> Option<Value> {
    let given = &course.file.course;
    let there = Attended::of(given, student);
    let dates: Vec<NaiveDate> = there
        .days()
        .iter()
        .filter_map(|at| given.days.get(*at).map(|day| day.date))
        .collect();
    if dates.is_empty() {
        return None;
    }
    let timetable = &course.plan.timetable;
    let seen = |entry: &Entry| there.takes_part(entry);
    Some(json!({
        "name": course.file.roster.then_some(&student.name),
        "dates": course.dates(&dates),
        "days": dates.len(),
        "hours": lasts(there.taught_minutes(timetable)),
        "lessons": lessons(course, seen),
        "stages": stages(course, seen),
    }))
}

/// Ten questions, about the lessons of this course by name.
pub(crate) fn feedback_sheet(course: &Course) -> Feed<'_> {
    let written = &course.written;
    let own = json!({
        "lessons": lessons(course, |_| true),
        "stages": stages(course, |_| true),
        "students": course.file.course.group.students.len(),
        "days": written.days.len(),
        "kind": written.wall.kind,
    });
    Feed::new(course, own)
}

/// The titles of lessons in the order they are given, each once; what opens each day is none.
fn lessons(course: &Course, seen: impl Fn(&Entry) -> bool) -> Vec<String> {
    let titles = |of: Of| match of {
        Of::Lesson(at) => {
            let lesson = course.library.tables.lessons.get(at)?;
            (lesson.before != Before::EachDay).then(|| lesson.title.clone())
        }
        Of::Stage(_) => None,
    };
    once(course, seen, titles)
}

/// The names of stages in the order they are worked at, each once.
fn stages(course: &Course, seen: impl Fn(&Entry) -> bool) -> Vec<String> {
    let names = |of: Of| match of {
        Of::Stage(at) => course
            .library
            .tables
            .stages
            .get(at)
            .map(|it| it.name.clone()),
        Of::Lesson(_) => None,
    };
    once(course, seen, names)
}

fn once(
    course: &Course,
    seen: impl Fn(&Entry) -> bool,
    name: impl Fn(Of) -> Option<String>,
) -> Vec<String> {
    let mut names: Vec<String> = Vec::new();
    for entry in course.plan.timetable.iter().filter(|it| seen(it)) {
        if let Some(name) = entry.of.and_then(&name)
            && !names.contains(&name)
        {
            names.push(name);
        }
    }
    names
}
