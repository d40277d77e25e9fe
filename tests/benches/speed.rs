//! How long a plan and a page take. Run with `cargo xtask bench`; nothing here fails a build.

use documents::{Course, named, print};
use files::Library;
use files::course::{CourseFile, set};
use press::Press;

fn main() {
    divan::main();
}

fn example(text: &str, library: &Library) -> Course {
    let file = CourseFile::parse(text).expect("the example is sound");
    Course::plan(file, library).expect("it can be planned")
}

/// Reading the course, sizing the wall and simulating 10,000 courses.
#[divan::bench(sample_count = 50)]
fn whole_plan(bencher: divan::Bencher<'_, '_>) {
    let library = Library::built_in().expect("the library");
    bencher.bench_local(|| example(Library::example(false), &library));
}

/// The setting-out sheet, planned and printed again after the height was changed.
#[divan::bench(sample_count = 20)]
fn sheet_after_an_edit(bencher: divan::Bencher<'_, '_>) {
    let library = Library::built_in().expect("the library");
    let press = Press::new();
    let sheet = named("setting-out").expect("the sheet");
    let mut millimetres = 900;
    bencher.bench_local(|| {
        millimetres += 1;
        let height = format!("{millimetres} mm");
        let text = set(Library::example(false), "wall.height", &height).expect("an edit");
        print(&example(&text, &library), sheet, &press).expect("prints")
    });
}

/// The same without the planning: what the press alone takes.
#[divan::bench(sample_count = 20)]
fn sheet_printed_again(bencher: divan::Bencher<'_, '_>) {
    let library = Library::built_in().expect("the library");
    let press = Press::new();
    let sheet = named("setting-out").expect("the sheet");
    let courses: Vec<Course> = [900, 950]
        .iter()
        .map(|height| {
            set(
                Library::example(false),
                "wall.height",
                &format!("{height} mm"),
            )
        })
        .map(|text| example(&text.expect("an edit"), &library))
        .collect();
    let mut turn = 0;
    bencher.bench_local(|| {
        turn += 1;
        print(&courses[turn % 2], sheet, &press).expect("prints")
    });
}

/// The whole pack of the example.
#[divan::bench(sample_count = 10)]
fn whole_pack(bencher: divan::Bencher<'_, '_>) {
    let library = Library::built_in().expect("the library");
    let course = example(Library::example(false), &library);
    let press = Press::new();
    bencher.bench_local(|| {
        documents::DOCUMENTS
            .iter()
            .map(|it| print(&course, it, &press).expect("prints").pages)
            .sum::<usize>()
    });
}
