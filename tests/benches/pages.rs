//! How long pages take to be looked at, and what many pages and many edits cost.

use divan::Bencher;
use divan::counter::ItemsCount;
use documents::{Course, Drawings, fed, named, preview};
use files::Library;
use files::course::{CourseFile, set};
use press::{Job, Press};
use serde_json::Value;

fn course(height_mm: u32) -> Course {
    let library = Library::built_in().expect("the library");
    let height = format!("{height_mm} mm");
    let text = set(Library::example(false), "wall.height", &height).expect("an edit");
    let file = CourseFile::parse(&text).expect("sound");
    Course::plan(file, &library).expect("a plan")
}

/// The page one is on, drawn again after the height was changed; without the planning.
#[divan::bench(args = [("setting-out", 1), ("setting-out", 2), ("run-sheet", 1), ("stone-order", 1), ("worksheets", 2)], sample_count = 40)]
fn page_redrawn(bencher: Bencher<'_, '_>, (name, page): (&str, usize)) {
    let press = Press::new();
    let document = named(name).expect("a document");
    let courses = [course(900), course(950), course(1000), course(1050)];
    let mut turn = 0;
    bencher.bench_local(|| {
        turn += 1;
        preview(&courses[turn % courses.len()], document, page, &press).expect("a page")
    });
}

/// Worksheets until there are so many pages; the time is that of one page.
#[divan::bench(args = [60, 1000], sample_count = 3, sample_size = 1)]
fn worksheets_of_many_pages(bencher: Bencher<'_, '_>, pages: usize) {
    let course = course(1050);
    let mut data = fed(&course, named("worksheets").expect("worksheets"));
    let sheets = data["sheets"].as_array().expect("sheets").clone();
    let picture = Drawings::on_paper(&course).section_blank().0.svg;
    let press = Press::new();
    let mut printed = |students: usize| {
        let many = sheets.iter().cycle().take(students).enumerate();
        let named = many.map(|(at, sheet)| {
            // Each has a name of its own, so that none is the page of another.
            let mut sheet = sheet.clone();
            sheet["name"] = Value::String(format!("Student {at}"));
            sheet
        });
        data["sheets"] = named.collect();
        let job = Job {
            main: "worksheets.typ",
            sources: &[
                (
                    "worksheets.typ",
                    include_str!("../../lessons/pages/worksheets.typ"),
                ),
                ("look.typ", include_str!("../../lessons/pages/look.typ")),
            ],
            data: &data,
            pictures: &[("section-blank.svg", &picture)],
        };
        press.pdf(&job).expect("prints").pages
    };
    let each = printed(1);
    let students = pages.div_ceil(each);
    bencher
        .counter(ItemsCount::new(students * each))
        .bench_local(|| printed(students));
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
            preview(&course, document, 1, &press).expect("a page");
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
