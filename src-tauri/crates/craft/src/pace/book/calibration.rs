//! Whether promises made from a pace book are kept as often as they say.
//!
//! Instructors are made up whose true pace is not that of the tables. Each records ten courses;
//! then the book promises a number of minutes for an eleventh, which is drawn from the truth.

use super::{Book, Record, StageRecord};
use crate::pace::belief::tests::{normals, spread};
use crate::pace::belief::{Belief, Factor};
use crate::pace::evidence::slowest_luck;
use crate::tables::{Crew, Stage, Work};
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::SeedableRng;
use rand_distr::{Distribution, StandardUniform};

/// A course of two days: each stage's work, its usual minutes, and the pairs its string ties.
const COURSE: [(Work, f64, Option<f64>); 8] = [
    (Work::TrenchCubicMetres, 60.0, None),
    (Work::Frames, 30.0, None),
    (Work::FootingTonnes, 90.0, None),
    (Work::FirstLiftTonnes, 200.0, Some(4.0)),
    (Work::Throughs, 30.0, None),
    (Work::SecondLiftTonnes, 160.0, Some(4.0)),
    (Work::Minutes(15), 15.0, None),
    (Work::CopeMetres, 60.0, None),
];

/// Records before the promise.
const RECORDED: usize = 10;
/// Courses drawn from a belief for one promise.
const DRAWS: usize = 2_000;

/// The promises that are counted, in percent.
const CHANCES: [usize; 3] = [50, 80, 90];

fn stages() -> Vec<Stage> {
    let course = COURSE.iter();
    course
        .map(|(work, ..)| Stage {
            id: format!("{work:?}"),
            name: String::new(),
            work: *work,
            crew: Crew::Everyone,
            string: false,
            along: crate::tables::Along::BayByBay,
            beforehand: false,
            note: String::new(),
            if_left: String::new(),
        })
        .collect()
}

/// Chance, the same each time.
struct Fate {
    normal: Box<dyn FnMut() -> f64>,
    random: ChaCha8Rng,
}

impl Fate {
    fn new(seed: u64) -> Self {
        Self {
            normal: Box::new(normals(seed)),
            random: ChaCha8Rng::seed_from_u64(seed + 1_000_000),
        }
    }

    fn normal(&mut self, deviation: f64) -> f64 {
        deviation * (self.normal)()
    }

    /// How much longer each stage of a course takes than usual; written out anew, without any
    /// of what is checked but the luck of the slowest pair.
    fn course(&mut self, own: &[f64; 8]) -> [f64; 8] {
        let spread = spread();
        let rest = |whole: f64, part: f64| (whole * whole - part * part).sqrt();
        let course = self.normal(rest(spread.course, spread.instructor));
        std::array::from_fn(|stage| {
            let (work, _, tied) = COURSE[stage];
            if matches!(work, Work::Minutes(_)) {
                return 1.0;
            }
            let of_stage = self.normal(rest(spread.stage, spread.instructor_stage));
            (own[stage] + course + of_stage + self.slowest(tied)).exp()
        })
    }

    fn slowest(&mut self, tied: Option<f64>) -> f64 {
        tied.map_or(0.0, |pairs| {
            let luck: f64 = StandardUniform.sample(&mut self.random);
            spread().pair * slowest_luck(luck, pairs)
        })
    }

    /// What is written down of a course: times as a person notes them.
    fn record(&mut self, own: &[f64; 8]) -> Record {
        let slowness = self.course(own);
        let stages = COURSE.iter().zip(slowness);
        Record {
            course: "Hollin Bank weekend".to_owned(),
            stages: stages
                .map(|((work, usual, tied), slowness)| StageRecord {
                    stage: format!("{work:?}"),
                    usual_minutes: *usual,
                    taken_minutes: usual * slowness * self.normal(spread().reading).exp(),
                    tied: *tied,
                })
                .collect(),
        }
    }

    /// The minutes that a belief gives each of the chances of being enough.
    fn promises(&mut self, factor: &Factor) -> [f64; 3] {
        let mut totals: Vec<f64> = (0..DRAWS)
            .map(|_| {
                let z: [f64; 8] = std::array::from_fn(|_| self.normal(1.0));
                let mut x = [0.0; 8];
                factor.draw(&z, &mut x);
                let stages = COURSE.iter().zip(x);
                stages
                    .map(|((_, usual, tied), x)| usual * (x + self.slowest(*tied)).exp())
                    .sum()
            })
            .collect();
        totals.sort_by(f64::total_cmp);
        CHANCES.map(|percent| totals[percent * DRAWS / 100 - 1])
    }
}

/// The share of promises kept, for each of the chances: with the book, and without it.
fn kept(
    seed: u64,
    instructors: usize,
    mut own: impl FnMut(&mut Fate) -> [f64; 8],
) -> ([f64; 3], [f64; 3]) {
    let stages = stages();
    let mut fate = Fate::new(seed);
    let built_in = fate.promises(&Belief::built_in(&stages, &spread()).factor());
    let (mut with, mut without) = ([0.0; 3], [0.0; 3]);
    for _ in 0..instructors {
        let own = own(&mut fate);
        let records: Vec<Record> = (0..RECORDED).map(|_| fate.record(&own)).collect();
        let book = Book::of(&records, &stages, &spread()).expect("sound records");
        let slowness = fate.course(&own);
        let stages = COURSE.iter().zip(slowness);
        let taken: f64 = stages
            .map(|((_, usual, _), slowness)| usual * slowness)
            .sum();
        let promised = fate.promises(&book.belief().factor());
        for (kept, promised) in [(&mut with, promised), (&mut without, built_in)] {
            for (kept, minutes) in kept.iter_mut().zip(promised) {
                *kept += f64::from(taken <= minutes) / instructors as f64;
            }
        }
    }
    (with, without)
}

/// The share that should be kept, and three standard errors of what is counted.
fn due(percent: usize, instructors: usize) -> (f64, f64) {
    let chance = percent as f64 / 100.0;
    let error = (chance * (1.0 - chance) / instructors as f64).sqrt();
    (chance, 3.0 * error)
}

/// An instructor as different from the tables as instructors are.
fn any_instructor(fate: &mut Fate) -> [f64; 8] {
    let spread = spread();
    let whole = fate.normal(spread.instructor);
    std::array::from_fn(|_| whole + fate.normal(spread.instructor_stage))
}

#[test]
fn promises_after_ten_courses_are_kept_as_often_as_they_say() {
    const INSTRUCTORS: usize = 1_000;
    let (with, _) = kept(1, INSTRUCTORS, any_instructor);
    for (kept, percent) in with.into_iter().zip(CHANCES) {
        let (due, within) = due(percent, INSTRUCTORS);
        assert!((kept - due).abs() < within, "{percent} %: {kept}");
    }
}

/// Someone whose courses take 1.4 times as long as the tables say: nearly two standard
/// deviations from the usual instructor.
#[test]
fn a_slow_instructor_keeps_promises_with_the_book_and_not_without() {
    const INSTRUCTORS: usize = 1_000;
    let (with, without) = kept(2, INSTRUCTORS, |_| [1.4_f64.ln(); 8]);
    for ((with, without), percent) in with.into_iter().zip(without).zip(CHANCES) {
        let (due, within) = due(percent, INSTRUCTORS);
        assert!((with - due).abs() < within, "{percent} %: {with}");
        assert!(without < due - 0.25, "{percent} %: {without}");
    }
}
