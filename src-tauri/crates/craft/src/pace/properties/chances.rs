//! Longer days, fewer and shorter lessons, less work: never a later end; and how percentiles stand.
//!
//! All at the usual rate. Where rates change, more can be less: a lesson that is moved out of a
//! slow hour into a good one costs more of the work. And every lesson fits into every stretch,
//! since one that is too long for all is cut by breaks, and one that is not waits.

use super::drawn::{LONGEST, clock, luck, programme};
use crate::course::Day;
use crate::pace::calendar::{Calendar, Span, minutes_to};
use crate::pace::follow::{Scratch, Witness};
use crate::pace::forecast::{self, Forecast};
use crate::pace::holdup::Cause;
use crate::pace::luck::Luck;
use crate::pace::programme::Programme;
use chrono::{NaiveDate, TimeDelta};
use proptest::prelude::*;

/// So many simulated courses for each programme drawn.
const SAMPLES: usize = 40;

/// Rounding, in minutes.
const HAIR: f64 = 1e-6;

/// Days from nine to a quarter past four and later by so many minutes each, with three breaks;
/// no stretch is shorter than an hour.
fn calendar(later: &[u32]) -> Calendar {
    let mut date = NaiveDate::from_ymd_opt(2027, 4, 23).expect("a date");
    let days: Vec<Day> = later
        .iter()
        .map(|later| {
            date += TimeDelta::days(1);
            Day {
                date,
                start: clock(9 * 60),
                finish: clock(16 * 60 + 15 + later),
                breaks: Vec::new(),
                weather: Default::default(),
            }
        })
        .collect();
    let breaks = [(645, 660), (750, 810), (900, 915)];
    let closed: Vec<Span> = days
        .iter()
        .flat_map(|day| {
            breaks.map(|(from, to)| Span {
                from: minutes_to(&days, day.date, clock(from)),
                to: minutes_to(&days, day.date, clock(to)),
            })
        })
        .collect();
    Calendar::new(&days, &closed, &[])
}

fn later() -> impl Strategy<Value = Vec<u32>> {
    proptest::collection::vec(0..180_u32, 1..=3)
}

fn ends(programme: &Programme, calendar: &Calendar, luck: &Luck) -> Vec<f64> {
    let mut scratch = Scratch::new(programme);
    (0..luck.len())
        .flat_map(|course| {
            let alone = [luck.course(course)];
            programme.follow(calendar, alone, &mut scratch, &mut ())
        })
        .collect()
}

/// All that is told of each of `N` courses: lessons, steps and where it stopped, as told.
struct Told<const N: usize>([Vec<(&'static str, usize, f64)>; N]);

impl<const N: usize> Witness for Told<N> {
    fn lesson(&mut self, course: usize, lesson: usize, waited_from: f64, span: Span) {
        let times = [waited_from, span.from, span.to];
        self.0[course].extend(times.map(|time| ("lesson", lesson, time)));
    }

    fn stopped(&mut self, course: usize, step: usize) {
        self.0[course].push(("stopped", step, 0.0));
    }

    fn done(&mut self, course: usize, step: usize, clock: f64) {
        self.0[course].push(("done", step, clock));
    }
}

/// What is told of courses that go `N` abreast, when each ends and what held it up.
fn abreast<const N: usize>(programme: &Programme, calendar: &Calendar, luck: &Luck) -> Vec<String> {
    let mut scratch = Scratch::<N>::new(programme);
    let middling = vec![1.0; programme.steps.len()];
    let mut all = Vec::new();
    for first in (0..luck.len()).step_by(N) {
        let courses = std::array::from_fn(|at| luck.course(first + at));
        let mut told = Told::<N>(std::array::from_fn(|_| Vec::new()));
        let ends = programme.follow(calendar, courses, &mut scratch, &mut told);
        for (course, (told, end)) in told.0.iter().zip(ends).enumerate() {
            let cause = Cause::of(programme, scratch.followed(course), &middling);
            all.push(format!("{told:?} {end} {cause:?}"));
        }
    }
    all
}

/// No course of the first kind ends after the same course of the second.
fn never_later(sooner: &[f64], later: &[f64]) -> Result<(), TestCaseError> {
    for (sooner, later) in sooner.iter().zip(later) {
        prop_assert!(*sooner <= later + HAIR, "{sooner} {later}");
    }
    Ok(())
}

fn forecast_of(programme: &Programme, calendar: &Calendar, luck: &Luck) -> Forecast {
    Forecast::of(&forecast::Asked {
        programme,
        calendar,
        luck,
        middling: &vec![1.0; programme.steps.len()],
        day_one_ends: 1440.0,
        seed: 0,
    })
}

proptest! {
    #[test]
    fn a_course_goes_abreast_of_others_as_it_goes_alone(
        drawn in programme(), days in later(), seed in any::<u64>(), asked in 1..SAMPLES,
    ) {
        let programme = drawn.programme();
        let (luck, calendar) = (luck(seed, SAMPLES, programme.bays), calendar(&days));
        prop_assert_eq!(
            abreast::<8>(&programme, &calendar, &luck),
            abreast::<1>(&programme, &calendar, &luck)
        );
        // Any number of courses, also one that leaves places free.
        let some = forecast::ends(&programme, &calendar, &luck, &forecast::first(asked));
        prop_assert_eq!(some.as_slice(), &ends(&programme, &calendar, &luck)[..asked]);
    }

    #[test]
    fn no_course_ends_later_for_longer_days(
        drawn in programme(), days in later(), day in any::<prop::sample::Index>(),
        more in 1..90_u32, seed in any::<u64>(),
    ) {
        let programme = drawn.programme();
        let luck = luck(seed, SAMPLES, programme.bays);
        let mut longer = days.clone();
        longer[day.index(days.len())] += more;
        let [sooner, before] = [longer, days].map(|days| ends(&programme, &calendar(&days), &luck));
        never_later(&sooner, &before)?;
    }

    #[test]
    fn no_course_ends_sooner_for_one_more_lesson(
        drawn in programme(), days in later(), minutes in 1..=LONGEST,
        at in any::<prop::sample::Index>(), seed in any::<u64>(),
    ) {
        let programme = drawn.programme();
        let (luck, calendar) = (luck(seed, SAMPLES, programme.bays), calendar(&days));
        let mut more = programme.clone();
        let step = at.index(more.steps.len());
        more.steps[step].lessons.push(more.lesson_minutes.len());
        more.lesson_minutes.push(minutes.into());
        never_later(&ends(&programme, &calendar, &luck), &ends(&more, &calendar, &luck))?;
    }

    #[test]
    fn no_course_ends_later_for_shorter_lessons(
        drawn in programme(), days in later(), part in 0.1..1.0, seed in any::<u64>(),
    ) {
        let programme = drawn.programme();
        let (luck, calendar) = (luck(seed, SAMPLES, programme.bays), calendar(&days));
        let mut shorter = programme.clone();
        for minutes in shorter.lesson_minutes.iter_mut().step_by(2) {
            *minutes *= part;
        }
        never_later(&ends(&shorter, &calendar, &luck), &ends(&programme, &calendar, &luck))?;
    }

    #[test]
    fn no_course_ends_later_for_less_to_do(
        drawn in programme(), days in later(), part in 0.1..1.0,
        at in any::<prop::sample::Index>(), seed in any::<u64>(),
    ) {
        // With beginners it could: what they lay early on they are quicker at later.
        let programme = drawn.without_beginners().programme();
        let (luck, calendar) = (luck(seed, SAMPLES, programme.bays), calendar(&days));
        let mut less = programme.clone();
        let step = at.index(less.steps.len());
        less.steps[step].usual[0] *= part;
        never_later(&ends(&less, &calendar, &luck), &ends(&programme, &calendar, &luck))?;
    }

    #[test]
    fn early_is_before_late_and_each_stage_after_the_one_before(
        drawn in programme(), days in later(), seed in any::<u64>(),
    ) {
        let programme = drawn.programme();
        let luck = luck(seed, SAMPLES, programme.bays);
        let forecast = forecast_of(&programme, &calendar(&days), &luck);
        let never = |time: Option<f64>| time.unwrap_or(f64::INFINITY);
        let mut before = [0.0; 3];
        for stage in &forecast.by_stage {
            let done = stage.done.map(never);
            prop_assert!(done.is_sorted(), "{done:?}");
            for (before, done) in before.iter().zip(&done) {
                prop_assert!(before <= done, "{before} {done}");
            }
            before = done;
        }
        prop_assert!(forecast.by_stage.is_sorted_by(|a, b| b.on_day_one <= a.on_day_one));
        let last = forecast.by_stage.last().and_then(|stage| stage.done[2]);
        prop_assert_eq!(last.is_some(), 0.9 <= forecast.chance, "{:?}", forecast.chance);
    }

    #[test]
    fn the_same_seed_gives_the_same_answer(
        drawn in programme(), days in later(), seed in any::<u64>(),
    ) {
        let programme = drawn.programme();
        let calendar = calendar(&days);
        let [one, other] = [(); 2].map(|()| {
            forecast_of(&programme, &calendar, &luck(seed, 300, programme.bays))
        });
        prop_assert_eq!(&one, &other);
        let chance = forecast::chance(&programme, &calendar, &luck(seed, 300, programme.bays), 300);
        prop_assert!((one.chance - chance).abs() < 1e-12);
    }

    #[test]
    fn luck_for_more_bays_is_the_same_for_the_first(
        drawn in programme(), days in later(), more in 1..10_usize, seed in any::<u64>(),
    ) {
        let programme = drawn.programme();
        let calendar = calendar(&days);
        let few = luck(seed, SAMPLES, programme.bays);
        let many = luck(seed, SAMPLES, programme.bays + more);
        prop_assert_eq!(ends(&programme, &calendar, &few), ends(&programme, &calendar, &many));
    }
}
