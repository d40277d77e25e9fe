//! What each call does.

use crate::arguments::{Calendar, Print};
use crate::text;
use chrono::NaiveDate;
use craft::quantity::show_count;
use documents::calendar::{self, Detail};
use documents::{Course, DOCUMENTS, Document, FromStore, named, wanted};
use files::course::CourseFile;
use files::{Fault, Library, save_new};
use press::Press;
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
    let course = open(file, store)?;
    let names = if names {
        text::Names::Shown
    } else {
        text::Names::Hidden
    };
    out.push_str(&text::check(&course.written, names));
    let open = course.written.to_do.iter().any(|it| it.counts);
    Ok(ExitCode::from(u8::from(open)))
}

pub(crate) fn print(asked: &Print, out: &mut String) -> Done {
    if asked.list {
        for document in DOCUMENTS {
            writeln!(out, "{:16} {}", document.name, document.what)?;
        }
        return Ok(ExitCode::SUCCESS);
    }
    let (Some(file), Some(folder)) = (&asked.file, &asked.out) else {
        return Err("say which course to print and --out which folder".into());
    };
    let named = chosen(&asked.only)?;
    let course = open(file, asked.store.as_deref())?;
    let documents = if named.is_empty() {
        wanted(&course)
    } else {
        named
    };
    let pack = documents::pack(&course, &documents, &Press::new(), folder, |_| true)?;
    for file in &pack.files {
        writeln!(out, "{}", file.display())?;
    }
    if !pack.unprintable.is_empty() {
        let signs: String = pack.unprintable.iter().collect();
        writeln!(
            out,
            "These characters can't be printed; a sign stands in their place: {signs}"
        )?;
    }
    Ok(ExitCode::SUCCESS)
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

/// The documents asked for by name; none where none was.
fn chosen(only: &[String]) -> Result<Vec<&'static Document>, Box<dyn Error>> {
    only.iter()
        .map(|name| {
            named(name.trim()).ok_or_else(|| {
                let names: Vec<_> = DOCUMENTS.iter().map(|document| document.name).collect();
                format!(
                    "there is no document {name}\nthere are: {}",
                    names.join(", ")
                )
                .into()
            })
        })
        .collect()
}

pub(crate) fn open(path: &Path, store: Option<&Path>) -> Result<Course, Box<dyn Error>> {
    let (file, text) = CourseFile::open(path)?;
    let course = planned(file, path, store)?
        .map_err(|fault| fault.in_file(&path.display().to_string(), &text))?;
    Ok(course)
}

/// The plan of a course file, with what the store holds for it.
pub(crate) fn planned(
    file: CourseFile,
    path: &Path,
    store: Option<&Path>,
) -> Result<Result<Course, Fault>, Box<dyn Error>> {
    let days: Vec<NaiveDate> = file.course.days.iter().map(|day| day.date).collect();
    let (library, stored) = match store {
        Some(store) => (
            Library::with_store(store)?,
            FromStore::read(&Store::read(store)?, Some(path), &days)?,
        ),
        None => (Library::built_in()?, FromStore::default()),
    };
    Ok(Course::plan_with(file, &library, stored))
}
