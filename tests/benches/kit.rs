//! How long it takes to say what is not ready, and what clashes, for an instructor with 200 courses
//! and 5,000 items.

use chrono::{Days, NaiveDate};
use craft::plan::{Asked, Memory};
use documents::{Course, FromStore};
use files::Library;
use files::course::CourseFile;
use std::fmt::Write;
use std::path::{Path, PathBuf};
use store::{CourseEntry, KitList, Mode, Store};

const ITEMS: usize = 5_000;
const COURSES: u64 = 200;
/// So many items are booked by each course.
const EACH: usize = 100;

/// The tools of the example's own kit list, and others up to 5,000.
fn items() -> Vec<String> {
    let library = Library::built_in().expect("the library");
    let file = CourseFile::parse(Library::example(false)).expect("sound");
    let plan = file.plan(&library).expect("it can be planned");
    let own = plan.kit.iter().map(|line| line.item.clone());
    let others = (0..).map(|number| format!("Walling item {number}"));
    own.chain(others).take(ITEMS).collect()
}

/// A store in which 200 courses, each of two days, two of three in a week, have booked the tools.
fn filled(folder: &Path) {
    let items = items();
    let mut text = "item,owner,good,mass kg\n".to_owned();
    for (number, item) in items.iter().enumerate() {
        let _ = writeln!(text, "\"{item}\",,{},1.5", number % 12 + 3);
    }
    let list = folder.join("kit.csv");
    std::fs::write(&list, text).expect("a file");
    let mut store = Store::open(folder).expect("a store");
    let list = KitList::read(&list).expect("a list");
    let preview = store.preview(&list).expect("a preview");
    store.apply(&preview, Mode::Replace).expect("taken in");
    let first = NaiveDate::from_ymd_opt(2028, 4, 1).expect("a date");
    for number in 0..COURSES {
        let days = [0, 1].map(|day| first + Days::new(number * 3 / 4 + day));
        let booked: Vec<(String, u32)> = (0..EACH)
            .map(|at| (at * ITEMS / EACH + number as usize * 7) % ITEMS)
            .map(|at| (items[at].clone(), 4))
            .collect();
        let entry = CourseEntry {
            path: PathBuf::from(format!("/courses/{number}.walling")),
            title: format!("Course {number}"),
            days: days.to_vec(),
        };
        store.book(&entry, &booked).expect("booked");
    }
}

/// From the file and the store on disk to the list of what is not ready, with every clash: all that
/// `coursewright check --store` works out.
#[divan::bench(args = [false, true], sample_count = 50)]
fn readiness_and_clashes(bencher: divan::Bencher<'_, '_>, imperial: bool) {
    let folder = tempfile::tempdir().expect("a folder");
    filled(folder.path());
    let library = Library::built_in().expect("the library");
    bencher.bench_local(|| {
        let file = CourseFile::parse(Library::example(imperial)).expect("sound");
        let days: Vec<NaiveDate> = file.course.days.iter().map(|day| day.date).collect();
        let store = Store::read(folder.path()).expect("the store");
        let held = FromStore::read(&store, None, &days).expect("held");
        let mut memory = Memory::default();
        let course = Course::plan_again(file, &library, held, Asked::Figures, &mut memory);
        let course = course.expect("it can be planned");
        let clashes = store.clashes().expect("clashes").clashes;
        assert!(!clashes.is_empty() && !course.plan.to_do.is_empty());
        (course.plan.to_do.len(), clashes.len())
    });
}
