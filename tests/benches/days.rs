//! How long simulated courses take, by how many there are and by how many students come.

use craft::course::Effect;
use craft::pace::belief::Belief;
use craft::pace::calendar::{Calendar, DAY_MINUTES};
use craft::pace::crew::{self, Gang};
use craft::pace::fixed::{self, Timed};
use craft::pace::forecast::{self, Forecast};
use craft::pace::luck::Luck;
use craft::pace::programme::{Given, Programme};
use craft::pace::rates::{self, rates};
use craft::pace::work::Amounts;
use craft::plan::{Asked, Memory, Plan};
use files::Library;
use files::course::{CourseFile, set};

/// What is needed to simulate a course, planned once.
struct Days {
    library: Library,
    programme: Programme,
    calendar: Calendar,
    belief: Belief,
}

impl Days {
    /// The example as it stands.
    fn example() -> Self {
        Self::of(Library::example(false).to_owned())
    }

    /// The example with so many who have never built, and room and frames for all of them.
    fn of_students(students: usize) -> Self {
        Self::of(grown(students))
    }

    fn of(text: String) -> Self {
        let library = Library::built_in().expect("the library");
        let file = CourseFile::parse(&text).expect("the example is sound");
        let plan = file.plan(&library).expect("it can be planned");
        let (timed, calendar) = time(&file, &library);
        Self {
            programme: programme(&file, &library, &plan, &timed),
            belief: Belief::built_in(&library.tables.stages, &library.tables.pace.spread),
            calendar,
            library,
        }
    }

    fn luck(&self, samples: usize) -> Luck {
        let stages = &self.library.tables.stages;
        Luck::new(1, samples, stages, &self.belief, self.programme.bays)
    }

    fn forecast(&self, luck: &Luck) -> Forecast {
        Forecast::of(&forecast::Asked {
            programme: &self.programme,
            calendar: &self.calendar,
            luck,
            middling: &vec![1.0; self.belief.len()],
            day_one_ends: DAY_MINUTES,
            seed: 1,
        })
    }
}

fn grown(students: usize) -> String {
    let grown = Library::example(false).replace("novices = 6 ", &format!("novices = {students} "));
    let roomy = grown.replace("longest_wall = \"12 m\"", "");
    roomy.replace("in_stock = 6 ", "in_stock = 400 ")
}

fn time(file: &CourseFile, library: &Library) -> (Timed, Calendar) {
    let (course, tables) = (&file.course, &library.tables);
    let timed = Timed::of(&fixed::Asked {
        days: &course.days,
        running: &course.running,
        lessons: &tables.lessons,
        rests: &tables.pace.rests,
        tidy: 30.0,
    });
    let closed = timed.closed();
    let rated = rates(&rates::Asked {
        present: &[],
        days: &course.days,
        running: &course.running,
        pace: &tables.pace,
        weather: &tables.weather,
        closed: &closed,
    });
    let calendar = Calendar::new(&course.days, &closed, &rated);
    (timed, calendar)
}

fn programme(file: &CourseFile, library: &Library, plan: &Plan, timed: &Timed) -> Programme {
    let (course, tables) = (&file.course, &library.tables);
    let given = Given {
        stages: &tables.stages,
        lessons: &tables.lessons,
        pace: &tables.pace,
        running: &course.running,
        timed,
        spacing: course.frames.spacing,
    };
    let amounts = Amounts {
        wall: &course.wall,
        standing: &plan.wall,
        volumes: &plan.volumes,
        frames: &plan.frames,
        stone: &plan.stone,
    };
    let gang = Gang {
        group: &course.group,
        pace: &tables.pace,
        room: crew::room(plan.wall.length(), plan.frames.rows.len(), None),
        waits_for_help: course.running.counts(Effect::Teaching),
    };
    Programme::new(&given, &amounts, &gang)
}

/// Courses of the example drawn and followed, without planning anything.
#[divan::bench(args = [5_000, 10_000, 20_000], sample_count = 100)]
fn simulated_courses(bencher: divan::Bencher<'_, '_>, samples: usize) {
    let days = Days::example();
    bencher.bench_local(|| days.forecast(&days.luck(samples)));
}

/// The same followed only, on luck that has been drawn: what each length tried in sizing costs.
#[divan::bench(args = [5_000, 10_000, 20_000], sample_count = 100)]
fn courses_followed(bencher: divan::Bencher<'_, '_>, samples: usize) {
    let days = Days::example();
    let luck = days.luck(samples);
    bencher.bench_local(|| forecast::chance(&days.programme, &days.calendar, &luck, samples));
}

/// 10,000 courses drawn and followed for so many students on a wall of their own length.
#[divan::bench(args = [25, 50, 100, 200], sample_count = 20)]
fn simulated_courses_of_students(bencher: divan::Bencher<'_, '_>, students: usize) {
    let days = Days::of_students(students);
    bencher.bench_local(|| days.forecast(&days.luck(forecast::SAMPLES)));
}

/// What a key press waits for: the height typed anew, the figures of the plan, with what the plan
/// before it has reckoned.
#[divan::bench(args = [false, true], sample_count = 200)]
fn figures_after_a_key_press(bencher: divan::Bencher<'_, '_>, imperial: bool) {
    let library = Library::built_in().expect("the library");
    let heights = ["1.05 m", "1.06 m", "1.07 m", "1.08 m"];
    let typed =
        heights.map(|it| set(Library::example(imperial), "wall.height", it).expect("an edit"));
    let mut memory = Memory::default();
    let mut turn = 0;
    bencher.bench_local(|| {
        turn += 1;
        let file = CourseFile::parse(&typed[turn % typed.len()]).expect("sound");
        let figures = file.plan_again(&library, Asked::Figures, &mut memory);
        figures.expect("it can be planned")
    });
}

/// The whole plan for so many students: the wall sized, the courses simulated.
#[divan::bench(args = [25, 50, 100, 200], sample_count = 10)]
fn whole_plan_of_students(bencher: divan::Bencher<'_, '_>, students: usize) {
    let library = Library::built_in().expect("the library");
    let file = CourseFile::parse(&grown(students)).expect("the example is sound");
    bencher.bench_local(|| file.plan(&library).expect("it can be planned"));
}
