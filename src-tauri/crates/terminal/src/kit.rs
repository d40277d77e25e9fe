//! The kit store on the command line: list, import, export, book, count home.

use crate::arguments::{CountedHome, Kit};
use crate::run::{Done, open};
use chrono::NaiveDate;
use craft::quantity::Read;
use documents::{Course, booking};
use std::fmt::Write;
use std::path::Path;
use std::process::ExitCode;
use store::{Clashes, Kind, KitList, Lot, Mode, Preview, Return, Store};

pub(crate) fn kit(call: &Kit, out: &mut String) -> Done {
    match call {
        Kit::List { store } => list(&Store::read(there(store)?)?, out),
        Kit::Import {
            file,
            replace,
            look,
            store,
        } => import(file, *replace, *look, &mut Store::open(store)?, out),
        Kit::Export { file, store } => export(file, &Store::read(there(store)?)?, out),
        Kit::Book { course, store } => {
            let mut shed = Store::open(store)?;
            book(course, &open(course, Some(store))?, &mut shed, out)
        }
        Kit::Release { course, store } => release(course, &mut Store::open(there(store)?)?, out),
        Kit::Home(counted) => home(counted, out),
        Kit::NotHome { course, store } => {
            Store::open(there(store)?)?.take_back_home(course)?;
            writeln!(
                out,
                "The store is as it was before its kit was counted home."
            )?;
            Ok(ExitCode::SUCCESS)
        }
    }
}

/// A folder that is not there is a mistyped one: nothing is made and nothing guessed.
pub(crate) fn there(store: &Path) -> Result<&Path, String> {
    if store.is_dir() {
        return Ok(store);
    }
    Err(format!(
        "{}: there is no such folder\nname the folder of your store; coursewright kit import, coursewright pace import and coursewright pace record make a new one",
        store.display()
    ))
}

fn list(store: &Store, out: &mut String) -> Done {
    if let Some(notice) = store.notice().filter(|it| **it != store::ReadOnly::Asked) {
        writeln!(out, "{notice}\n")?;
    }
    for lot in store.lots()? {
        writeln!(out, "{}", said(&lot))?;
    }
    for booked in store.courses()? {
        let days: Vec<String> = booked.course.days.iter().map(ToString::to_string).collect();
        let stands = booked.home_on.map_or_else(
            || format!("{} items booked", booked.items.len()),
            |on| format!("home on {on}"),
        );
        writeln!(
            out,
            "{}, {}: {stands} ({})",
            booked.course.title,
            days.join(", "),
            booked.course.path.display()
        )?;
    }
    told(&store.clashes()?, out)
}

/// Clashes make the exit code 1: there is something to do.
fn told(clashes: &Clashes, out: &mut String) -> Done {
    for clash in &clashes.clashes {
        writeln!(out, "! {clash}")?;
    }
    if !clashes.not_in_store.is_empty() {
        writeln!(
            out,
            "{} booked items are not in the store, so nobody has counted them",
            clashes.not_in_store.len()
        )?;
    }
    Ok(ExitCode::from(u8::from(!clashes.clashes.is_empty())))
}

/// `Spade: 4 good, 1 needs care, of Upper Dale Club`.
fn said(lot: &Lot) -> String {
    let mut words = format!("{}: {} good", lot.item, lot.good);
    for (count, state) in [(lot.care, "in need of care"), (lot.broken, "broken")] {
        if 0 < count {
            words.push_str(&format!(", {count} {state}"));
        }
    }
    if let Some(mass) = lot.mass {
        words.push_str(&format!(", {} kg each", mass.si()));
    }
    if !lot.owner.is_empty() {
        words.push_str(&format!(", of {}", lot.owner));
    }
    words
}

fn import(file: &Path, replace: bool, look: bool, store: &mut Store, out: &mut String) -> Done {
    let preview = store.preview(&KitList::read(file)?)?;
    show(&preview, replace, out)?;
    if look {
        writeln!(out, "Nothing was changed.")?;
        return Ok(ExitCode::SUCCESS);
    }
    let mode = if replace { Mode::Replace } else { Mode::Merge };
    store.apply(&preview, mode)?;
    Ok(ExitCode::SUCCESS)
}

fn show(preview: &Preview, replace: bool, out: &mut String) -> std::fmt::Result {
    for lot in &preview.added {
        writeln!(out, "new      {}", said(lot))?;
    }
    for it in &preview.changed {
        writeln!(
            out,
            "changed  {}  (was: {})",
            said(&it.after),
            said(&it.before)
        )?;
    }
    let other = if replace { "gone" } else { "kept" };
    for lot in &preview.not_in_file {
        writeln!(out, "{other}     {}", said(lot))?;
    }
    writeln!(out, "{} as they were", preview.same.len())
}

fn export(file: &Path, store: &Store, out: &mut String) -> Done {
    let content = store.export(Kind::of(file)?)?;
    files::save_new(file, &content)?;
    writeln!(out, "{}", file.display())?;
    Ok(ExitCode::SUCCESS)
}

fn book(path: &Path, course: &Course, store: &mut Store, out: &mut String) -> Done {
    let booking = booking::of(course, path);
    store.book(&booking.course, &booking.items)?;
    writeln!(
        out,
        "{}: {} items booked for its days",
        booking.course.title,
        booking.items.len()
    )?;
    let mut clashes = store.clashes()?;
    let here = std::fs::canonicalize(path).unwrap_or_else(|_| path.to_owned());
    // Other courses' clashes are no news of this one.
    clashes
        .clashes
        .retain(|clash| clash.courses.iter().any(|it| it.path == here));
    clashes
        .not_in_store
        .retain(|it| it.courses.iter().any(|it| it.path == here));
    told(&clashes, out)
}

fn release(course: &Path, store: &mut Store, out: &mut String) -> Done {
    let path = std::fs::canonicalize(course).unwrap_or_else(|_| course.to_owned());
    let courses = store.courses()?;
    let home = courses.iter().find(|it| it.course.path == path);
    if home.is_some_and(|it| it.home_on.is_some()) {
        writeln!(
            out,
            "Its kit was counted home: nothing is booked for it, and the count is kept."
        )?;
        return Ok(ExitCode::SUCCESS);
    }
    let known = store.release(course)?;
    let said = if known {
        "Nothing is booked for it any more."
    } else {
        "Nothing was booked for it."
    };
    writeln!(out, "{said}")?;
    Ok(ExitCode::SUCCESS)
}

/// What is not named came back as it went.
fn home(counted: &CountedHome, out: &mut String) -> Done {
    let mut store = Store::open(there(&counted.store)?)?;
    let courses = store.courses()?;
    let path = std::fs::canonicalize(&counted.course).unwrap_or_else(|_| counted.course.clone());
    let booked = courses.iter().find(|it| it.course.path == path);
    let items = booked.map(|it| it.items.as_slice()).unwrap_or_default();
    let last = booked.and_then(|it| it.course.days.last().copied());
    let on: NaiveDate = counted
        .on
        .or(last)
        .ok_or("nothing is booked for this course; coursewright kit book books its kit")?;
    let home = store.home(&counted.course, &returns(counted, items)?, on)?;
    for (item, count) in &home.not_in_store {
        writeln!(
            out,
            "{item}: {count} more than the store holds; it knows nothing of these"
        )?;
    }
    writeln!(out, "Counted home on {on}. Undo: coursewright kit not-home")?;
    Ok(ExitCode::SUCCESS)
}

/// Where a count of one kind goes.
type Field = fn(&mut Return) -> &mut u32;

fn returns(counted: &CountedHome, items: &[(String, u32)]) -> Result<Vec<Return>, String> {
    let mut returns: Vec<Return> = items
        .iter()
        .map(|(item, count)| Return {
            item: item.clone(),
            back: *count,
            ..Return::default()
        })
        .collect();
    let said: [(&[String], Field); 4] = [
        (&counted.care, |it| &mut it.care),
        (&counted.broken, |it| &mut it.broken),
        (&counted.used_up, |it| &mut it.used_up),
        (&counted.lost, |it| &mut it.lost),
    ];
    for (given, field) in said {
        for one in given {
            let (item, count) = item_and_count(one)?;
            let line = returns
                .iter_mut()
                .find(|it| it.item.eq_ignore_ascii_case(item))
                .ok_or_else(|| format!("{item} was not booked\nname an item as the list shows it: coursewright kit list"))?;
            line.back = line.back.saturating_sub(count);
            *field(line) += count;
        }
    }
    Ok(returns)
}

/// `Spade=2`.
fn item_and_count(given: &str) -> Result<(&str, u32), String> {
    let parts = given.rsplit_once('=');
    parts
        .and_then(|(item, count)| Some((item.trim(), count.trim().parse().ok()?)))
        .ok_or_else(|| {
            format!("\"{given}\" does not say how many\nwrite ITEM=COUNT, such as \"Spade=2\"")
        })
}
