//! What each call does.

use crate::arguments::Calendar;
use crate::text;
use chrono::NaiveDate;
use craft::plan::{Asked, Memory};
use craft::quantity::show_count;
use documents::calendar::{self, Detail};
use documents::{Course, FromStore, asked_by_pages};
use files::course::CourseFile;
use files::{Fault, Library, save_new};
use std::error::Error;
use std::fmt::Write;
use std::path::Path;
use std::process::ExitCode;
use store::Store;

/// A refusal says what is wrong and what would be right.
pub(crate) type Done = Result<ExitCode, Box<dyn Error>>;

pub(crate) fn new(file: &Path, imperial: bool, out: &mut String) -> Done {
    save_new(file, Library::example(imperial).as_bytes())?;
    writeln!(
        out,
        "{}: an example course. Change it, then: coursewright plan {0}",
        file.display()
    )?;
    Ok(ExitCode::SUCCESS)
}

pub(crate) fn plan(file: &Path, json: bool, store: Option<&Path>, out: &mut String) -> Done {
    let course = open(file, store)?;
    if json {
        writeln!(out, "{}", serde_json::to_string_pretty(&course.numbers())?)?;
    } else {
        out.push_str(&text::plan(&course.written));
    }
    Ok(ExitCode::SUCCESS)
}

pub(crate) fn check(file: &Path, store: Option<&Path>, names: bool, out: &mut String) -> Done {
    // The list does not rest on what could be done otherwise, which takes longer than all the rest.
    let course = opened(file, store, |_| Asked::Figures)?;
    let names = if names {
        text::Names::Shown
    } else {
        text::Names::Hidden
    };
    out.push_str(&text::check(&course.written, names));
    let open = course.written.to_do.iter().any(|it| it.counts);
    Ok(ExitCode::from(u8::from(open)))
}

pub(crate) fn calendar(asked: &Calendar, out: &mut String) -> Done {
    let course = open(&asked.file, asked.store.as_deref())?;
    let detail = if asked.days {
        Detail::Days
    } else {
        Detail::Entries
    };
    let calendar = calendar::calendar(&course, detail, asked.made);
    calendar::save(&asked.out, &calendar)?;
    let days = show_count(calendar.days, "day", "days");
    let held = match detail {
        Detail::Entries => {
            let lines = show_count(calendar.entries, "line", "lines");
            format!("{days} and {lines} of the timetable")
        }
        Detail::Days => days,
    };
    writeln!(
        out,
        "{}: {held}, {}, in the clock of {}",
        asked.out.display(),
        course.written.dates,
        course.file.course.venue.time_zone.name()
    )?;
    Ok(ExitCode::SUCCESS)
}

pub(crate) fn licences(out: &mut String) -> Done {
    for (font, licence) in press::FONT_LICENCES {
        writeln!(out, "{font}\n\n{licence}\n")?;
    }
    Ok(ExitCode::SUCCESS)
}

pub(crate) fn open(path: &Path, store: Option<&Path>) -> Result<Course, Box<dyn Error>> {
    opened(path, store, |_| Asked::Advice)
}

/// As much of it as its pages tell.
pub(crate) fn open_for_pages(path: &Path, store: Option<&Path>) -> Result<Course, Box<dyn Error>> {
    opened(path, store, asked_by_pages)
}

fn opened(
    path: &Path,
    store: Option<&Path>,
    asked: fn(&CourseFile) -> Asked,
) -> Result<Course, Box<dyn Error>> {
    let (file, text) = CourseFile::open(path)?;
    let asked = asked(&file);
    let course = planned_for(file, path, store, asked)?
        .map_err(|fault| fault.in_file(&path.display().to_string(), &text))?;
    Ok(course)
}

/// The library of an instructor's store. What is wrong with a lesson of theirs is told, and the
/// built-in one counts.
pub(crate) fn library(store: &Path) -> Result<Library, files::Error> {
    let library = Library::with_store(store)?;
    for fault in &library.faults {
        crate::tell(&fault.to_string());
    }
    Ok(library)
}

/// The plan of a course file, with what the store holds for it.
pub(crate) fn planned(
    file: CourseFile,
    path: &Path,
    store: Option<&Path>,
) -> Result<Result<Course, Fault>, Box<dyn Error>> {
    planned_for(file, path, store, Asked::Advice)
}

fn planned_for(
    file: CourseFile,
    path: &Path,
    store: Option<&Path>,
    asked: Asked,
) -> Result<Result<Course, Fault>, Box<dyn Error>> {
    let days: Vec<NaiveDate> = file.course.days.iter().map(|day| day.date).collect();
    let (library, stored) = match store {
        Some(store) => (
            library(store)?,
            FromStore::read(&Store::read(store)?, Some(path), &days)?,
        ),
        None => (Library::built_in()?, FromStore::default()),
    };
    let mut memory = Memory::default();
    Ok(Course::plan_again(
        file,
        &library,
        stored,
        asked,
        &mut memory,
    ))
}
