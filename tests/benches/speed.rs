//! How long a plan and a page take. Run with `cargo xtask bench`; nothing here fails a build.

use craft::frames::{Fittings, Frames};
use craft::quantity::metres;
use craft::stonework::{Face, FaceEnd, Point, ThroughRow, lay};
use craft::wall::{Batter, Section, Volumes};
use documents::{Course, named, print};
use files::Library;
use files::course::{CourseFile, set};
use press::Press;

mod days;
mod kit;
mod pages;

/// As in the programs.
#[cfg(unix)]
#[global_allocator]
static ALLOCATOR: tikv_jemallocator::Jemalloc = tikv_jemallocator::Jemalloc;

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

/// A wall of 100 stations on a winding line and uneven ground.
fn winding() -> Course {
    let library = Library::built_in().expect("the library");
    let bends: Vec<String> = (0..10)
        .map(|at| {
            let turn = if at % 2 == 0 { "left" } else { "right" };
            format!(
                "{{ straight = \"5 m\" }}, {{ arc = \"5 m\", radius = \"8 m\", turn = \"{turn}\" }}"
            )
        })
        .collect();
    let levels: Vec<String> = (0..=20)
        .map(|at| {
            let level = f64::from(at % 5) * 0.04;
            format!(
                "{{ station = \"{} m\", level = \"{level} m\", left = \"{} m\" }}",
                at * 5,
                level + 0.02
            )
        })
        .collect();
    let text = Library::example(false).replace(
        "length = \"auto\"",
        &format!(
            "line = [ {} ]\nground = [ {} ]\nlength = \"100 m\"",
            bends.join(", "),
            levels.join(", ")
        ),
    );
    let text = text.replace("spacing_straight = \"3 m\"", "spacing_straight = \"1 m\"");
    example(
        &text.replace("# spacing_curve = \"1.5 m\"", "spacing_curve = \"1 m\""),
        &library,
    )
}

/// Exact geometry of 100 stations: volumes, frames, bays, strings and boards.
#[divan::bench(sample_count = 100)]
fn geometry_of_a_hundred_stations(bencher: divan::Bencher<'_, '_>) {
    let library = Library::built_in().expect("the library");
    let course = winding();
    let given = &course.file.course;
    let frames = &course.library.tables.frames;
    assert_eq!(course.plan.frames.rows.len(), 101);
    bencher.bench_local(|| {
        let wall = &course.plan.wall;
        let volumes = Volumes::of(wall, given.wall.footing, given.wall.cope_height);
        let bars = &library.tables.bars;
        let rows = Frames::set_out(&given.wall, wall, &given.frames, bars).expect("sound");
        let fittings = Fittings::of(&given.wall, wall, &rows, &given.frames, frames);
        (volumes, rows, fittings)
    });
}

/// All drawings of the example, at the size of a page.
#[divan::bench(sample_count = 50)]
fn all_drawings(bencher: divan::Bencher<'_, '_>) {
    let library = Library::built_in().expect("the library");
    let course = example(Library::example(false), &library);
    bencher.bench_local(|| {
        let drawings = documents::Drawings::on_paper(&course);
        [
            drawings.section(),
            drawings.elevation(),
            drawings.line_plan(),
            drawings.setting_out(),
            drawings.frame(),
            drawings.gauge(),
            drawings.heap_plan(),
            drawings.timetable(),
        ]
    });
}

/// 100 m of wall laid stone by stone.
#[divan::bench(sample_count = 20)]
fn a_hundred_metres_stone_by_stone(bencher: divan::Bencher<'_, '_>) {
    let point = |x: f64, y: f64| Point {
        x: metres(x),
        y: metres(y),
    };
    let batter = Batter::one_in(8.0).expect("sound");
    let face = Face {
        length: metres(100.0),
        ground: vec![point(0.0, 0.0), point(100.0, 0.0)],
        top: vec![point(0.0, 1.2), point(100.0, 1.2)],
        section: Section::new(metres(1.2), metres(0.4), batter, batter).expect("sound"),
        throughs: vec![ThroughRow {
            below_top: metres(0.65),
            spacing: metres(1.0),
            width: metres(0.3),
            thickness: metres(0.12),
        }],
        cope_height: metres(0.25),
        cope_thickness: metres(0.1),
        footing_depth: metres(0.15),
        ends: [FaceEnd::Head(Batter::PLUMB), FaceEnd::Joined],
        course_heights: [metres(0.18), metres(0.1)],
        stone_lengths: [metres(0.15), metres(0.45)],
        seed: 7,
    };
    bencher.bench_local(|| lay(&face, &[]).len());
}
