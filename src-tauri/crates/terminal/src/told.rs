//! What has been built, put into the course file, and what that says of the rest.

use crate::arguments::Told;
use crate::run::{Done, open, planned};
use crate::text;
use craft::course::Report;
use craft::quantity::{show_length, whole_number};
use documents::Course;
use files::course::{CourseFile, tell, untell};
use files::{Fault, save};
use std::fmt::Write;
use std::process::ExitCode;

pub(crate) fn told(asked: &Told, out: &mut String) -> Done {
    // A file with a mistake of its own is refused with its line before anything is added.
    let before = open(&asked.file, asked.store.as_deref())?;
    let text = CourseFile::open(&asked.file)?.1;
    let (text, said) = if asked.take_back {
        taken_back(&before, &text)?
    } else {
        added(asked, &before, &text)?
    };
    let file = CourseFile::parse(&text).map_err(not_written)?;
    let course = planned(file, &asked.file, asked.store.as_deref())?.map_err(not_written)?;
    save(&asked.file, text.as_bytes())?;
    writeln!(out, "{said}")?;
    match &course.written.running.today {
        Some(_) => {
            out.push('\n');
            out.push_str(&text::told(&course.written));
        }
        None => writeln!(
            out,
            "Nothing is told of it now. The chance of finishing is {}.",
            course.written.chance.chance
        )?,
    }
    Ok(ExitCode::SUCCESS)
}

/// The text with one report more, and what it says.
fn added(asked: &Told, before: &Course, text: &str) -> Result<(String, String), String> {
    let (Some(stage), Some(time)) = (&asked.stage, asked.at) else {
        return Err("say which stage, and --at what time you looked".to_owned());
    };
    let last = before.file.course.running.progress.last();
    let day = match asked.day {
        Some(day) => day as usize - 1,
        None => last.map_or(0, |report| report.day),
    };
    let days = before.file.course.days.len();
    if days <= day {
        return Err(format!(
            "there is no day {}; the course has {days}\ncount the course days from 1",
            day + 1
        ));
    }
    let report = Report {
        day,
        time,
        stage: stage.clone(),
        bay: asked.bay.map(|bay| bay as usize - 1),
        done: asked.done.unwrap_or(1.0),
        wall: None,
    };
    let length = before.plan.sizing.length;
    let text = tell(text, &report, length).map_err(not_written)?;
    let mut said = format!("Told: {}.", words(&report));
    let course = &before.file.course;
    if course.wall.length.is_none() {
        let length = show_length(length, course.units);
        write!(
            said,
            "\nThe wall is being built, so its length is written down: {length} in place of \"auto\"."
        )
        .map_err(|_| "no room to answer".to_owned())?;
    }
    Ok((text, said))
}

/// The text without the last report, and what it said.
fn taken_back(before: &Course, text: &str) -> Result<(String, String), String> {
    let reports = &before.file.course.running.progress;
    let Some(last) = reports.last() else {
        return Err(
            "there is no report to take back\nnothing has been told of this course".to_owned(),
        );
    };
    let text = untell(text, reports.len() - 1).map_err(not_written)?;
    Ok((text, format!("Taken back: {}.", words(last))))
}

/// `footing, bay 2, 60 % done on day 1 at 11:40`.
fn words(report: &Report) -> String {
    let bay = report
        .bay
        .map_or(String::new(), |bay| format!(", bay {}", bay + 1));
    let done = if 1.0 <= report.done {
        "done".to_owned()
    } else {
        format!("{} % done", whole_number((100.0 * report.done).round()))
    };
    format!(
        "{}{bay} {done} on day {} at {}",
        report.stage,
        report.day + 1,
        report.time.format("%H:%M")
    )
}

/// A report that can't be is the fault of what was typed, not of a line of the file.
fn not_written(fault: Fault) -> String {
    let what = match fault.what.split_once(": ") {
        Some((key, what)) if key.starts_with("progress ") => what,
        _ => &fault.what,
    };
    format!("{what}\n{}\nnothing was written", fault.cure)
}
