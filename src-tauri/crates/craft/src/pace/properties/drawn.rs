//! Programmes and days drawn at random.

use crate::course::{Break, Day, Running, Spell, WeatherGiven, Wish};
use crate::pace::belief::Belief;
use crate::pace::luck::Luck;
use crate::pace::programme::{Learning, Programme, Step};
use crate::pace::ties::Ties;
use crate::tables::{Along, Crew, PaceSpread, Stage, Work};
use crate::worksheet::sample;
use chrono::{NaiveDate, NaiveTime, TimeDelta};
use proptest::collection::vec;
use proptest::prelude::*;

/// The longest lesson drawn, in minutes.
pub(super) const LONGEST: u32 = 45;

/// So many stages at most.
const STEPS: usize = 6;

/// A programme by its figures, short enough to be read where it fails.
#[derive(Debug, Clone)]
pub(super) struct Drawn {
    steps: Vec<(Vec<f64>, [bool; 3], Vec<u32>)>,
    pairs: f64,
    /// The share that is new to it.
    novices: f64,
}

/// One to six bays, one to six steps of five minutes to three hours, up to two lessons before
/// each.
pub(super) fn programme() -> impl Strategy<Value = Drawn> {
    (1..=6_usize, 1..=STEPS, 1.0..4.0, 0.0..1.0).prop_flat_map(|(bays, steps, pairs, novices)| {
        let lessons = vec(5..=LONGEST, 0..=2);
        let step = (vec(5.0..180.0, bays), any::<[bool; 3]>(), lessons);
        vec(step, steps).prop_map(move |steps| Drawn {
            steps,
            pairs,
            novices,
        })
    })
}

impl Drawn {
    pub(super) fn without_beginners(self) -> Self {
        Self {
            novices: 0.0,
            ..self
        }
    }

    pub(super) fn programme(&self) -> Programme {
        let mut lesson_minutes = Vec::new();
        let mut strings = 0;
        let steps = self.steps.iter().enumerate();
        let steps = steps.map(|(stage, (usual, [together, string, laying], lessons))| {
            let first = lesson_minutes.len();
            lesson_minutes.extend(lessons.iter().copied().map(f64::from));
            strings += usize::from(*string);
            Step {
                stage,
                usual: usual.clone(),
                together: *together,
                string: string.then(|| strings - 1),
                laying: *laying,
                lessons: (first..lesson_minutes.len()).collect(),
                after: None,
                crowding: 0.0,
            }
        });
        let steps: Vec<Step> = steps.collect();
        let bays = steps.first().map_or(1, |step| step.usual.len());
        Programme {
            steps,
            bays,
            lesson_minutes,
            ties: Ties::new(self.pairs, 0.1),
            laid: vec![0.0; bays],
            learning: Learning::new(self.novices, 1.5, 2.0),
        }
    }
}

/// As many stages as a programme may have, each with a string.
pub(super) fn stages() -> Vec<Stage> {
    (0..STEPS)
        .map(|number| Stage {
            id: format!("stage-{number}"),
            name: format!("Stage {number}"),
            work: Work::Metres,
            crew: Crew::Everyone,
            string: true,
            along: Along::BayByBay,
            beforehand: false,
            note: String::new(),
            if_left: String::new(),
        })
        .collect()
}

/// Courses with the spreads of the sample.
pub(super) fn luck(seed: u64, samples: usize, bays: usize) -> Luck {
    let spread: PaceSpread = sample::tables().pace.spread;
    let stages = stages();
    let belief = Belief::built_in(&stages, &spread);
    Luck::new(seed, samples, &stages, &belief, bays)
}

pub(super) fn clock(minutes: u32) -> NaiveTime {
    NaiveTime::from_hms_opt(minutes / 60, minutes % 60, 0).expect("a time of day")
}

/// A day of 1 to 14 hours with up to three breaks and up to two spells of rain.
fn day() -> impl Strategy<Value = Day> {
    let breaks = proptest::collection::btree_set(0..1000_u32, 0..7);
    let rain = proptest::collection::btree_set(0..1000_u32, 0..5);
    (300..540_u32, 60..840_u32, breaks, rain).prop_map(|(start, long, breaks, rain)| {
        let stretches = |cuts: std::collections::BTreeSet<u32>| {
            let cuts: Vec<u32> = cuts
                .into_iter()
                .map(|part| start + part * long / 1000)
                .collect();
            let pairs = cuts.chunks_exact(2).map(|pair| (pair[0], pair[1]));
            pairs.filter(|(from, to)| from < to).collect::<Vec<_>>()
        };
        let breaks = stretches(breaks)
            .into_iter()
            .map(|(from, to)| Break {
                name: format!("Break at {from}"),
                start: clock(from),
                minutes: to - from,
            })
            .collect();
        let rain = stretches(rain)
            .into_iter()
            .map(|(from, to)| Spell {
                start: clock(from),
                minutes: to - from,
            })
            .collect();
        Day {
            date: NaiveDate::default(),
            start: clock(start),
            finish: clock(start + long),
            breaks,
            weather: WeatherGiven {
                rain,
                ..WeatherGiven::default()
            },
        }
    })
}

/// One to four days, some with others between them.
pub(super) fn days() -> impl Strategy<Value = Vec<Day>> {
    vec((day(), 1..4_i64), 1..=4).prop_map(|days| {
        let mut date = NaiveDate::from_ymd_opt(2027, 4, 23).expect("a date");
        days.into_iter()
            .map(|(day, gap)| {
                date += TimeDelta::days(gap);
                Day { date, ..day }
            })
            .collect()
    })
}

/// Up to three lessons wished on one of four days, at a time or first thing, and one left out.
pub(super) fn running() -> impl Strategy<Value = Running> {
    let lesson = || (0..12_usize).prop_map(|number| format!("lesson-{number}"));
    let at = proptest::option::of((300..1200_u32).prop_map(clock));
    let wish = (lesson(), 0..4_usize, at).prop_map(|(lesson, day, at)| Wish { lesson, day, at });
    (
        vec(wish, 0..=3),
        proptest::option::of(lesson()),
        any::<bool>(),
    )
        .prop_map(|(mut wishes, left_out, short_breaks)| {
            wishes.sort_by(|a, b| a.lesson.cmp(&b.lesson));
            wishes.dedup_by(|a, b| a.lesson == b.lesson);
            Running {
                wishes,
                left_out: left_out.into_iter().collect(),
                short_breaks,
                ..Running::default()
            }
        })
}
