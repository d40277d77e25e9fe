//! How long the store takes with 200 courses and 5,000 items. Run with
//! `cargo bench -p store`; nothing here fails a build.

#![allow(clippy::expect_used, reason = "it measures, and stops where it can't")]

use chrono::{Days, NaiveDate};
use std::fmt::Write;
use std::path::PathBuf;
use store::{CourseEntry, Kind, KitList, Mode, Store};
use tempfile::TempDir;

const ITEMS: u32 = 5_000;
const COURSES: u32 = 200;

fn main() {
    divan::main();
}

fn course(number: u32) -> CourseEntry {
    let first = NaiveDate::from_ymd_opt(2027, 4, 1).expect("a date");
    // Two of three days each, spread over a season, so that several are out at once.
    let days = [0, 1, 2].map(|day| first + Days::new(u64::from(number * 3 / 4 + day)));
    CourseEntry {
        path: PathBuf::from(format!("/courses/{number}.walling")),
        title: format!("Course {number}"),
        days: days.to_vec(),
    }
}

fn list() -> String {
    let mut text = "item,owner,good,mass kg\n".to_owned();
    for item in 0..ITEMS {
        let owner = ["", "Club"][(item % 2) as usize];
        let _ = writeln!(text, "Walling item {item},{owner},{},1.5", item % 12 + 3);
    }
    text
}

/// A store in which each course books so many items.
fn store(each: u32) -> (TempDir, Store) {
    let folder = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(folder.path()).expect("a store");
    let path = folder.path().join("kit.csv");
    std::fs::write(&path, list()).expect("a file");
    let list = KitList::read(&path).expect("a list");
    let preview = store.preview(&list).expect("a preview");
    store.apply(&preview, Mode::Replace).expect("taken in");
    for number in 0..COURSES {
        let items = (0..each).map(|n| {
            let item = (number * 7 + n * (ITEMS / each)) % ITEMS;
            (format!("Walling item {item}"), n % 4 + 1)
        });
        let items: Vec<(String, u32)> = items.collect();
        store.book(&course(number), &items).expect("booked");
    }
    let clashes = store.clashes().expect("clashes");
    assert!(!clashes.clashes.is_empty() && clashes.not_in_store.is_empty());
    (folder, store)
}

/// What one course finds free, and every clash on the machine. Each course books this many.
#[divan::bench(args = [25, 100, 1_000], sample_count = 50)]
fn held_and_clashes(bencher: divan::Bencher<'_, '_>, each: u32) {
    let (_folder, store) = store(each);
    let course = course(COURSES / 2);
    bencher.bench_local(|| {
        let held = store
            .held_for(Some(&course.path), &course.days)
            .expect("held");
        let clashes = store.clashes().expect("clashes");
        (held.len(), clashes.clashes.len())
    });
}

/// The first half of it alone.
#[divan::bench(args = [25, 100, 1_000], sample_count = 50)]
fn held(bencher: divan::Bencher<'_, '_>, each: u32) {
    let (_folder, store) = store(each);
    let course = course(COURSES / 2);
    bencher.bench_local(|| {
        store
            .held_for(Some(&course.path), &course.days)
            .expect("held")
    });
}

/// The same, with the opening of the file as a program that only plans does it.
#[divan::bench(sample_count = 50)]
fn opened_held_and_clashes(bencher: divan::Bencher<'_, '_>) {
    let (folder, _store) = store(100);
    let course = course(COURSES / 2);
    bencher.bench_local(|| {
        let store = Store::read(folder.path()).expect("the store");
        let held = store
            .held_for(Some(&course.path), &course.days)
            .expect("held");
        (held.len(), store.clashes().expect("clashes").clashes.len())
    });
}

/// Writing and reading the list of 5,000 items.
#[divan::bench(args = ["kit.csv", "kit.xlsx"], sample_count = 20)]
fn exported_and_read(bencher: divan::Bencher<'_, '_>, name: &str) {
    let (folder, store) = store(25);
    let path = folder.path().join(name);
    let kind = Kind::of(&path).expect("a kind");
    bencher.bench_local(|| {
        std::fs::write(&path, store.export(kind).expect("an export")).expect("a file");
        KitList::read(&path).expect("a list").lots().len()
    });
}

/// Taking in a list in which every item is different.
#[divan::bench(sample_count = 20)]
fn imported(bencher: divan::Bencher<'_, '_>) {
    let (folder, mut store) = store(25);
    let path = folder.path().join("kit.csv");
    let texts = [list(), list().replace(",1.5", ",2.5")];
    let mut turn = 0;
    bencher.bench_local(|| {
        turn += 1;
        std::fs::write(&path, &texts[turn % 2]).expect("a file");
        let list = KitList::read(&path).expect("a list");
        let preview = store.preview(&list).expect("a preview");
        store.apply(&preview, Mode::Replace).expect("taken in");
        preview.changed.len()
    });
}
