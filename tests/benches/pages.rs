//! How long pages take to be looked at, and what many pages and many edits cost.

use divan::Bencher;
use divan::counter::ItemsCount;
use documents::{Course, Pieces, named, preview, print};
use files::Library;
use files::course::{CourseFile, set};
use press::Press;

fn course(height_mm: u32) -> Course {
    let library = Library::built_in().expect("the library");
    let height = format!("{height_mm} mm");
    let text = set(Library::example(false), "wall.height", &height).expect("an edit");
    let file = CourseFile::parse(&text).expect("sound");
    Course::plan(file, &library).expect("a plan")
}

/// The page one is on, drawn again after the height was changed, as while somebody types; without the
/// planning.
#[divan::bench(args = [("setting-out", 1), ("setting-out", 2), ("run-sheet", 1), ("run-sheet", 4), ("stone-order", 1), ("frame-card", 1), ("worksheets", 2), ("lesson-cards", 3), ("worksheets-key", 3)], sample_count = 40, sample_size = 1)]
fn page_redrawn(bencher: Bencher<'_, '_>, (name, page): (&str, usize)) {
    let press = Press::new();
    let document = named(name).expect("a document");
    // Each time another height, because the press remembers what it has set.
    let mut height_mm = 1000;
    let mut pieces = Pieces::default();
    bencher
        .with_inputs(|| {
            height_mm += 1;
            course(height_mm)
        })
        .bench_local_refs(|course| {
            let page = preview(course, document, page, &pieces, &press).expect("a page");
            pieces = page.pieces;
        });
}

/// A sheet for each of so many students, some 70 and 1,000 pages; the time is that of one page.
#[divan::bench(args = [15, 250], sample_count = 3, sample_size = 1)]
fn worksheets_of_students(bencher: Bencher<'_, '_>, students: usize) {
    let library = Library::built_in().expect("the library");
    let of_that_many = set(
        Library::example(false),
        "group.novices",
        &students.to_string(),
    );
    let of_that_many = of_that_many.expect("an edit");
    let document = named("worksheets").expect("worksheets");
    let press = Press::new();
    // Each time with other questions, because the press remembers what it has set.
    let mut seed = 0;
    let mut printed = || {
        seed += 1;
        let text = set(&of_that_many, "pace.seed", &seed.to_string()).expect("an edit");
        let file = CourseFile::parse(&text).expect("sound");
        let course = Course::plan(file, &library).expect("a plan");
        print(&course, document, &press).expect("prints").pages
    };
    let pages = printed();
    println!("{pages} pages");
    bencher.counter(ItemsCount::new(pages)).bench_local(printed);
}

/// What the program holds after so many edits of one page, told on the way.
#[divan::bench(sample_count = 1, sample_size = 1)]
fn memory_over_500_edits(bencher: Bencher<'_, '_>) {
    let press = Press::new();
    let document = named("run-sheet").expect("a document");
    bencher.bench_local(|| {
        for edit in 0..=500 {
            let mut course = course(1050);
            course.written.title = format!("Edit {edit}");
            preview(&course, document, 1, &Pieces::default(), &press).expect("a page");
            if edit % 100 == 0 {
                let held = std::fs::read_to_string("/proc/self/statm").unwrap_or_default();
                let pages = held
                    .split_whitespace()
                    .nth(1)
                    .and_then(|it| it.parse().ok());
                let pages: u64 = pages.unwrap_or(0);
                println!("after {edit} edits {} MB", pages * 4096 / 1_000_000);
            }
        }
    });
}
