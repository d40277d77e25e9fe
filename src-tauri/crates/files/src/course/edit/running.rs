//! What is told on the day, and lessons wished at a time, put into a course file.

use super::tables::{put_in, take_out};
use super::{checked, no_such, parsed, text_value};
use crate::Fault;
use crate::course::CourseFile;
use chrono::NaiveTime;
use craft::course::Report;
use toml_edit::Value;

/// The text with a report of progress, in its place by time. It replaces one of the same time,
/// stage and bay.
///
/// # Errors
/// The [`Fault`] that the changed text would have.
pub fn tell(text: &str, told: &Report) -> Result<String, Fault> {
    let course = CourseFile::parse(text)?.course;
    let mut document = parsed(text)?;
    let reports = &course.running.progress;
    let same = |it: &Report| {
        (it.day, it.time, &it.stage, it.bay) == (told.day, told.time, &told.stage, told.bay)
    };
    let old = reports.iter().position(same);
    if let Some(at) = old {
        take_out(&mut document, "progress", at);
    }
    let before = reports.iter().filter(|it| !same(it));
    let at = before
        .filter(|it| (it.day, it.time) <= (told.day, told.time))
        .count();
    let mut keys = vec![
        ("day", whole(told.day + 1)?),
        ("time", time(told.time)?),
        ("stage", text_value(&told.stage)),
    ];
    if let Some(bay) = told.bay {
        keys.push(("bay", whole(bay + 1)?));
    }
    keys.push(("done", told.done.into()));
    put_in(&mut document, "progress", Some(at), &keys)?;
    checked(document)
}

/// The text without one report, counted from 0.
///
/// # Errors
/// The [`Fault`] that the changed text would have.
pub fn untell(text: &str, at: usize) -> Result<String, Fault> {
    let mut document = parsed(text)?;
    take_out(&mut document, "progress", at);
    checked(document)
}

/// The text with a lesson wished on a day, counted from 0, at a time or first thing; it
/// replaces what was wished of that lesson before.
///
/// # Errors
/// The [`Fault`] that the changed text would have.
pub fn wish(text: &str, lesson: &str, day: usize, at: Option<NaiveTime>) -> Result<String, Fault> {
    let mut document = document_without(text, lesson)?;
    let mut keys = vec![("lesson", text_value(lesson)), ("day", whole(day + 1)?)];
    if let Some(at) = at {
        keys.push(("at", time(at)?));
    }
    put_in(&mut document, "wish", None, &keys)?;
    checked(document)
}

/// The text without a wish for a lesson.
///
/// # Errors
/// The [`Fault`] that the changed text would have.
pub fn unwish(text: &str, lesson: &str) -> Result<String, Fault> {
    checked(document_without(text, lesson)?)
}

fn document_without(text: &str, lesson: &str) -> Result<toml_edit::DocumentMut, Fault> {
    let wishes = CourseFile::parse(text)?.course.running.wishes;
    let mut document = parsed(text)?;
    for (at, _) in wishes
        .iter()
        .enumerate()
        .rev()
        .filter(|(_, it)| it.lesson == lesson)
    {
        take_out(&mut document, "wish", at);
    }
    Ok(document)
}

fn whole(number: usize) -> Result<Value, Fault> {
    let number = i64::try_from(number).map_err(|_| no_such("day"))?;
    Ok(number.into())
}

fn time(time: NaiveTime) -> Result<Value, Fault> {
    let text = time.format("%H:%M:%S").to_string();
    text.parse().map_err(|_| no_such("time"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Library;

    fn at(hour: u32, minute: u32) -> NaiveTime {
        NaiveTime::from_hms_opt(hour, minute, 0).expect("a time")
    }

    fn report(stage: &str, hour: u32, bay: Option<usize>, done: f64) -> Report {
        Report {
            day: 0,
            time: at(hour, 40),
            stage: stage.to_owned(),
            bay,
            done,
        }
    }

    fn told(text: &str) -> Vec<Report> {
        CourseFile::parse(text)
            .expect("sound")
            .course
            .running
            .progress
    }

    #[test]
    fn progress_is_kept_in_order_of_time() {
        let text = Library::example(false);
        let late = report("footing", 14, None, 1.0);
        let early = report("dig", 11, Some(1), 0.5);
        let one = tell(text, &late).expect("one");
        let two = tell(&one, &early).expect("two");
        assert_eq!(told(&two), [early.clone(), late.clone()]);
        let corrected = report("dig", 11, Some(1), 0.75);
        let again = tell(&two, &corrected).expect("corrected");
        assert_eq!(told(&again), [corrected, late.clone()]);
        let less = untell(&again, 0).expect("one less");
        assert_eq!(told(&less), [late]);
        assert_eq!(untell(&less, 0).expect("none"), text);
    }

    #[test]
    fn a_lesson_has_one_wish_at_most() {
        let text = Library::example(false);
        let wishes = |text: &str| {
            CourseFile::parse(text)
                .expect("sound")
                .course
                .running
                .wishes
        };
        let first = wish(text, "copes", 1, None).expect("first thing");
        assert_eq!(wishes(&first)[0].at, None);
        let later = wish(&first, "copes", 2, Some(at(9, 30))).expect("at a time");
        assert_eq!(wishes(&later).len(), 1);
        assert_eq!(
            (wishes(&later)[0].day, wishes(&later)[0].at),
            (2, Some(at(9, 30)))
        );
        assert_eq!(unwish(&later, "copes").expect("none"), text);
        let nowhere = tell(text, &report("footing", 3, None, 1.0)).expect_err("at night");
        assert_eq!(nowhere.code, "outside-the-day");
    }
}
