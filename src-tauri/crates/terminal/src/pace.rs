//! The pace book on the command line: list, record, take back, to and from a file.

use crate::arguments::Pace;
use crate::kit::there;
use crate::run::{Done, open};
use crate::text;
use craft::pace::book::{Book, Record};
use craft::quantity::show_count;
use files::Library;
use shapes::written::{BookRow, book};
use std::error::Error;
use std::fmt::Write;
use std::path::Path;
use std::process::ExitCode;
use store::{PaceList, PacePreview, PaceRecord, Store};

pub(crate) fn pace(call: &Pace, out: &mut String) -> Done {
    match call {
        Pace::List { store } => list(store, out),
        Pace::Record { course, on, store } => {
            // A store that is not there yet knows nothing; it is made once there is something to keep.
            let planned = open(course, store.is_dir().then_some(store.as_path()))?;
            let Some(today) = &planned.plan.today else {
                return Err("nothing has been told of this course\ntell what was built first: coursewright told FILE STAGE --at HH:MM".into());
            };
            let days = &planned.file.course.days;
            let (Some(first), Some(last)) = (days.first(), days.last()) else {
                return Err("the course has no day".into());
            };
            let record = PaceRecord {
                path: course.clone(),
                first_day: first.date,
                recorded_on: on.unwrap_or(last.date),
                record: today.record.clone(),
            };
            Store::open(store)?.record(&record)?;
            let written = planned.written.running.today.as_ref();
            for quick in written.iter().flat_map(|today| &today.quick) {
                writeln!(out, "! {quick} Then record the course again.")?;
            }
            writeln!(
                out,
                "Recorded: {}, {}. Undo: coursewright pace take-back",
                record.record.course,
                stages(&record.record)
            )?;
            shown(store, out)
        }
        Pace::Export { file, store } => export(file, &Store::read(there(store)?)?, out),
        Pace::Import { file, look, store } => import(file, *look, store, out),
        Pace::TakeBack { course, store } => {
            let before = Store::open(there(store)?)?.take_back_record(course)?;
            match before {
                Some(it) => writeln!(
                    out,
                    "Taken back: the record of {} counts again.",
                    it.recorded_on
                )?,
                None => writeln!(out, "Taken back: nothing is recorded of this course.")?,
            }
            shown(store, out)
        }
    }
}

fn list(store: &Path, out: &mut String) -> Done {
    for it in Store::read(there(store)?)?.pace_records()? {
        writeln!(out, "{}", said(&it))?;
    }
    shown(store, out)
}

/// `Hollin Bank, 2027-04-24, recorded on 2027-04-25: 3 stages (hollin.walling)`
fn said(it: &PaceRecord) -> String {
    format!(
        "{}, {}, recorded on {}: {} ({})",
        it.record.course,
        it.first_day,
        it.recorded_on,
        stages(&it.record),
        it.path.display()
    )
}

fn export(file: &Path, store: &Store, out: &mut String) -> Done {
    PaceList::may_be_called(file)?;
    files::save_new(file, &store.export_pace()?)?;
    writeln!(out, "{}", file.display())?;
    Ok(ExitCode::SUCCESS)
}

fn import(file: &Path, look: bool, folder: &Path, out: &mut String) -> Done {
    let list = PaceList::read(file)?;
    let mut store = Store::open(folder)?;
    let preview = store.preview_pace(&list)?;
    would_change(&preview, out)?;
    if look {
        writeln!(out, "Nothing was changed.")?;
        return Ok(ExitCode::SUCCESS);
    }
    store.apply_pace(&preview)?;
    shown(folder, out)
}

fn would_change(preview: &PacePreview, out: &mut String) -> std::fmt::Result {
    for it in &preview.added {
        writeln!(out, "new      {}", said(it))?;
    }
    for it in &preview.changed {
        writeln!(
            out,
            "changed  {}  (was: {}, recorded on {})",
            said(&it.after),
            stages(&it.before.record),
            it.before.recorded_on
        )?;
    }
    for it in &preview.not_in_file {
        writeln!(out, "kept     {}", said(it))?;
    }
    writeln!(out, "{} as they were", preview.same.len())
}

fn stages(record: &Record) -> String {
    show_count(record.stages.len(), "stage", "stages")
}

/// What the records say of each stage, before and after.
fn shown(store: &Path, out: &mut String) -> Done {
    let library = crate::run::library(store)?;
    let records = Store::read(store)?.pace_records()?;
    let records: Vec<Record> = records.into_iter().map(|it| it.record).collect();
    if records.is_empty() {
        writeln!(
            out,
            "No course is recorded: the built-in pace table counts."
        )?;
    } else {
        out.push_str(&text::book(&rows(&records, &library)?));
    }
    Ok(ExitCode::SUCCESS)
}

fn rows(records: &[Record], library: &Library) -> Result<Vec<BookRow>, Box<dyn Error>> {
    let tables = &library.tables;
    let known =
        Book::of(records, &tables.stages, &tables.pace.spread).map_err(craft::Error::from)?;
    Ok(book(&known.rates(&tables.pace), tables))
}
