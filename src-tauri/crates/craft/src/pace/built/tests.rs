//! Checks of reports added up: what they say is done, and how long it took, by hand.

use super::{Chapter, SoFar, Told, TooSoon, standing};
use crate::course::Day;
use crate::pace::belief::tests::{built_in, near, spread};
use crate::pace::calendar::{Calendar, Span};
use crate::pace::programme::{Learning, Programme, Step};
use crate::pace::ties::Ties;
use crate::pace::whole::Whole;
use crate::quantity::metres;
use chrono::{NaiveDate, NaiveTime};

const BAYS: usize = 2;

/// Line (all together, 30 min by the clock), dig (60 min), footing (90 min after a lesson of 30),
/// a look together (15 min by the clock), copes (60 min after a lesson of 20).
pub(in crate::pace) fn programme() -> Programme {
    let step = |stage, minutes: f64, together, lessons: &[usize]| Step {
        stage,
        usual: vec![minutes; BAYS],
        together,
        string: None,
        laying: false,
        lessons: lessons.to_vec(),
        after: None,
        crowding: 0.0,
    };
    Programme {
        steps: vec![
            step(2, 30.0, true, &[]),
            step(0, 60.0, false, &[]),
            step(1, 90.0, false, &[0]),
            step(2, 15.0, true, &[]),
            step(3, 60.0, false, &[1]),
        ],
        bays: BAYS,
        lesson_minutes: vec![30.0, 20.0],
        ties: Ties::new(1.0, 0.0),
        laid: vec![0.0; BAYS],
        learning: Learning::new(0.0, 1.5, 2.0),
    }
}

/// A programme at a wall with its bays between these stations, the same to the metre everywhere.
pub(in crate::pace) fn whole(programme: Programme, stations: &[f64]) -> Whole {
    Whole {
        dense: vec![vec![1.0; programme.bays]; programme.steps.len()],
        stations: stations.iter().map(|at| metres(*at)).collect(),
        programme,
    }
}

/// From 9 to 17 o'clock with a break at the given time of so many minutes.
fn day(breaks: &[(f64, f64)]) -> Calendar {
    let time = |hour| NaiveTime::from_hms_opt(hour, 0, 0).expect("a time");
    let day = Day {
        date: NaiveDate::from_ymd_opt(2027, 4, 24).expect("a date"),
        start: time(9),
        finish: time(17),
        breaks: Vec::new(),
        weather: Default::default(),
    };
    let closed = breaks.iter().map(|(from, minutes)| Span {
        from: *from,
        to: from + minutes,
    });
    Calendar::new(&[day], &closed.collect::<Vec<_>>(), &[])
}

/// `hh:mm`, the step, the bay and the share.
fn told(reports: &[(f64, usize, Option<usize>, f64)]) -> Vec<Told> {
    let reports = reports.iter();
    reports
        .map(|(clock, step, bay, done)| Told {
            clock: *clock,
            step: *step,
            bay: *bay,
            done: *done,
        })
        .collect()
}

fn at(hour: u32, minute: u32) -> f64 {
    f64::from(60 * hour + minute)
}

fn so_far(calendar: &Calendar, reports: &[(f64, usize, Option<usize>, f64)]) -> SoFar {
    adding_up(calendar, reports).expect("possible")
}

fn adding_up(
    calendar: &Calendar,
    reports: &[(f64, usize, Option<usize>, f64)],
) -> Result<SoFar, TooSoon> {
    let is_fixed = |step: &Step| step.stage == 2;
    let whole = whole(programme(), &[0.0, 3.0, 6.0]);
    let chapter = Chapter {
        whole: &whole,
        told: told(reports),
    };
    SoFar::of(
        &[chapter],
        &whole,
        &is_fixed,
        calendar,
        (&built_in(), &spread()),
    )
}

#[test]
fn what_must_be_done_before_is_done_and_nothing_behind_is() {
    for (reports, due) in [
        // Nobody digs a bay before the line is pegged for all.
        (
            vec![(at(11, 0), 1, Some(0), 1.0)],
            [[1.0, 1.0], [1.0, 0.0], [0.0; 2], [0.0; 2], [0.0; 2]],
        ),
        // They look together when everything is in.
        (
            vec![(at(14, 0), 3, Some(0), 1.0)],
            [[1.0; 2], [1.0; 2], [1.0; 2], [1.0, 0.0], [0.0; 2]],
        ),
        // Less than before: what was thought to be on top of it is not there.
        (
            vec![(at(15, 0), 4, None, 1.0), (at(15, 5), 2, None, 0.5)],
            [[1.0; 2], [1.0; 2], [0.5; 2], [0.0; 2], [0.0; 2]],
        ),
        // Less in one bay: the other has its footing all the same.
        (
            vec![(at(13, 0), 2, None, 1.0), (at(13, 5), 2, Some(1), 0.5)],
            [[1.0; 2], [1.0; 2], [1.0, 0.5], [0.0; 2], [0.0; 2]],
        ),
    ] {
        let seen = so_far(&day(&[]), &reports);
        assert_eq!(seen.done, due, "{reports:?}");
    }
}

#[test]
fn a_report_that_a_later_one_denies_does_not_stand() {
    let reports = told(&[
        (at(10, 0), 1, None, 0.5),
        (at(11, 0), 4, None, 1.0),
        (at(11, 5), 1, None, 1.0),
        (at(12, 0), 2, Some(0), 0.5),
    ]);
    let stands: Vec<usize> = standing(&programme(), &reports)
        .into_iter()
        .map(|(at, _)| at)
        .collect();
    assert_eq!(stands, [0, 2, 3]);
}

/// Every time on which the plan says so: the line till 9:30, digging till 10:30, the lesson till
/// 11:00, the footing till 12:30. Whenever it is told, nobody is slow or quick.
#[test]
fn who_is_as_quick_as_the_plan_looks_so() {
    for dug in [at(10, 30), at(10, 40), at(11, 0)] {
        for (clock, share) in [(at(11, 30), 1.0 / 3.0), (at(12, 30), 1.0)] {
            let seen = so_far(&day(&[]), &[(dug, 1, None, 1.0), (clock, 2, None, share)]);
            let minutes: f64 = seen.stretches.iter().map(|it| it.worked.minutes).sum();
            let usual: f64 = seen.stretches.iter().map(|it| it.worked.usual).sum();
            assert!(near(minutes, usual, 1e-6), "{dug} {clock}: {seen:?}");
            assert!(
                near(seen.stretches[0].worked.minutes, 60.0, 1e-6),
                "{seen:?}"
            );
        }
    }
    // Just begun, right after the lesson.
    let seen = so_far(
        &day(&[]),
        &[(at(11, 0), 1, None, 1.0), (at(11, 1), 2, None, 0.01)],
    );
    assert!(
        near(seen.stretches[0].worked.minutes, 60.0, 1e-6),
        "{seen:?}"
    );
}

/// A break at 10:40 leaves no room for the lesson: they sort stone for ten minutes, and hear it
/// from 11:00 to 11:30.
#[test]
fn waiting_for_a_lesson_is_no_building() {
    let calendar = day(&[(at(10, 40), 20.0)]);
    for dug in [at(10, 30), at(10, 40), at(11, 0), at(11, 20), at(11, 30)] {
        let seen = so_far(&calendar, &[(dug, 1, None, 1.0)]);
        assert!(
            near(seen.stretches[0].worked.minutes, 60.0, 1e-6),
            "{dug}: {seen:?}"
        );
        let seen = so_far(&calendar, &[(dug, 1, None, 1.0), (at(13, 0), 2, None, 1.0)]);
        assert!(
            near(seen.stretches[1].worked.minutes, 90.0, 1e-6),
            "{dug}: {seen:?}"
        );
    }
}

/// Slower than any lesson explains: the rest is slowness, and later nothing is lost or counted
/// twice. Quicker than the lesson allows: it was given before.
#[test]
fn every_minute_is_counted_once() {
    let calendar = day(&[]);
    let slow = so_far(&calendar, &[(at(11, 30), 1, None, 1.0)]);
    assert!(
        near(slow.stretches[0].worked.minutes, 90.0, 1e-6),
        "{slow:?}"
    );
    assert!(near(slow.given[2], 30.0, 1e-6), "{slow:?}");
    for (dug, laid) in [
        (at(10, 20), at(12, 10)),
        (at(10, 50), at(12, 15)),
        (at(11, 30), at(12, 40)),
    ] {
        let seen = so_far(&calendar, &[(dug, 1, None, 1.0), (laid, 2, None, 1.0)]);
        let minutes: f64 = seen.stretches.iter().map(|it| it.worked.minutes).sum();
        assert!(
            near(minutes, laid - at(9, 0) - 30.0 - 30.0, 1e-6),
            "{seen:?}"
        );
    }
}

/// Nothing more in an hour is an hour of slowness, told at once or later.
#[test]
fn standing_still_is_slow() {
    let calendar = day(&[]);
    let mean = |reports: &[(f64, usize, Option<usize>, f64)]| {
        let seen = so_far(&calendar, reports);
        seen.learned(&built_in(), &spread()).mean(1)
    };
    let first = (at(11, 30), 2, None, 0.3);
    let shares = [0.3, 0.31, 0.33, 0.34, 0.4, 0.5, 0.6, 0.9];
    let means = shares.map(|share| mean(&[first, (at(12, 30), 2, None, share)]));
    assert!(mean(&[first]) + 0.1 < means[0], "{means:?}");
    for pair in means.windows(2) {
        assert!(pair[1] < pair[0] + 1e-9, "{means:?}");
    }
    // A word more in between does not wipe the hour out.
    let last = (at(13, 0), 2, None, 1.0);
    let (one, two) = (
        mean(&[first, last]),
        mean(&[first, (at(12, 30), 2, None, 0.3), last]),
    );
    assert!((one - two).abs() < 0.12, "{one} {two}");
}

#[test]
fn what_is_too_quick_is_asked_about_or_refused() {
    let calendar = day(&[]);
    let seen = so_far(&calendar, &[(at(12, 30), 2, None, 1.0)]);
    assert!(seen.quick.is_empty());
    let seen = so_far(&calendar, &[(at(10, 15), 2, None, 1.0)]);
    assert_eq!(seen.quick.len(), 1, "{seen:?}");
    assert!(near(seen.quick[0].times, 4.0, 1e-6), "{seen:?}");
    // Corrected, nothing is asked.
    let corrected = [(at(10, 15), 2, None, 1.0), (at(10, 20), 1, None, 0.5)];
    assert!(so_far(&calendar, &corrected).quick.is_empty());
    let wrong = adding_up(&calendar, &[(at(9, 45), 2, None, 1.0)]).expect_err("too soon");
    assert_eq!(wrong.report, 0);
    assert!(near(wrong.usual, 180.0, 1e-6), "{wrong:?}");
}
