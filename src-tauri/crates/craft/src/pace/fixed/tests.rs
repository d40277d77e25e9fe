//! Fixed times by hand: what opens a day, wishes that take its place, wishes that can't be had.

use super::{Asked, Fixed, Timed, Unmet, What, Why};
use crate::course::{Day, Running, Wish};
use crate::pace::calendar::Span;
use crate::tables::{Before, Lesson};
use crate::worksheet::sample;
use chrono::{NaiveDate, NaiveTime};

const WELCOME: usize = 0;
const BRIEFING: usize = 1;
const COPES: usize = 2;

fn time(hour: u32) -> NaiveTime {
    NaiveTime::from_hms_opt(hour, 0, 0).expect("a time")
}

fn lessons() -> Vec<Lesson> {
    let lesson = |id: &str, before, safety| Lesson {
        id: id.to_owned(),
        title: id.to_owned(),
        minutes: 30,
        before,
        safety,
        when: vec![crate::tables::Applies::Always],
    };
    vec![
        lesson("welcome", Before::Course, true),
        lesson("briefing", Before::EachDay, true),
        lesson("copes", Before::Stage("cope".to_owned()), false),
    ]
}

/// Two days from 9 to 11.
fn days() -> Vec<Day> {
    (23..=24)
        .map(|day| Day {
            date: NaiveDate::from_ymd_opt(2027, 4, day).expect("a date"),
            start: time(9),
            finish: time(11),
            breaks: Vec::new(),
            weather: Default::default(),
        })
        .collect()
}

fn wish(lesson: usize, day: usize, at: Option<u32>) -> Wish {
    Wish {
        lesson: lessons()[lesson].id.clone(),
        day,
        at: at.map(time),
    }
}

fn timed(running: &Running) -> Timed {
    Timed::of(&Asked {
        days: &days(),
        running,
        lessons: &lessons(),
        rests: &sample::tables().pace.rests,
        tidy: 0.0,
    })
}

/// The lessons with the minutes at which they begin, and the wishes that can't be had.
fn given(wishes: &[Wish]) -> (Vec<(usize, f64)>, Vec<Unmet>) {
    let timed = timed(&Running {
        wishes: wishes.to_vec(),
        ..Running::default()
    });
    let lesson = |it: &Fixed| match it.what {
        What::Lesson { lesson, .. } => Some((lesson, it.span.from)),
        _ => None,
    };
    (timed.fixed.iter().filter_map(lesson).collect(), timed.unmet)
}

const NINE: f64 = 540.0;
const NEXT_DAY: f64 = 1440.0;

#[test]
fn a_wished_briefing_takes_the_place_of_its_own_opening() {
    for at in [None, Some(10)] {
        let (given, unmet) = given(&[wish(BRIEFING, 1, at)]);
        let from = NEXT_DAY + at.map_or(NINE, |hour| f64::from(hour) * 60.0);
        assert_eq!(given, [(WELCOME, NINE), (BRIEFING, from)]);
        assert!(unmet.is_empty(), "{unmet:?}");
    }
}

#[test]
fn the_first_day_is_not_opened_twice() {
    let (opened, unmet) = given(&[wish(BRIEFING, 0, None)]);
    assert_eq!(opened, [(WELCOME, NINE), (BRIEFING, NEXT_DAY + NINE)]);
    assert_eq!(unmet[0].why, Why::OpensWith("welcome".to_owned()));
    // At a time of its own it is what the instructor asked for.
    let (given, unmet) = given(&[wish(BRIEFING, 0, Some(10))]);
    assert_eq!(given[..2], [(WELCOME, NINE), (BRIEFING, 600.0)]);
    assert!(unmet.is_empty());
}

#[test]
fn the_welcome_is_not_lost_with_a_wish_that_cannot_be_had() {
    let (given, unmet) = given(&[wish(WELCOME, 1, Some(20))]);
    assert_eq!(given[0], (WELCOME, NINE));
    assert!(matches!(unmet[0].why, Why::OutsideHours(_)));
}

#[test]
fn a_lesson_is_wished_once_and_a_briefing_once_a_day() {
    let (lessons, unmet) = given(&[wish(COPES, 1, Some(10)), wish(COPES, 0, Some(10))]);
    assert_eq!(lessons.iter().filter(|it| it.0 == COPES).count(), 1);
    let twice = Unmet {
        wish: 0,
        why: Why::GivenOn(0),
    };
    assert_eq!(unmet, [twice]);
    let (lessons, unmet) = given(&[
        wish(BRIEFING, 0, Some(10)),
        wish(BRIEFING, 1, Some(10)),
        wish(BRIEFING, 1, None),
    ]);
    assert_eq!(lessons.iter().filter(|it| it.0 == BRIEFING).count(), 2);
    assert_eq!((unmet.len(), &unmet[0].why), (1, &Why::GivenOn(1)));
}

#[test]
fn nobody_is_taught_while_nobody_is_there() {
    let running = Running {
        wishes: vec![wish(COPES, 1, Some(10))],
        ..Running::default()
    };
    let mut timed = timed(&running);
    let away = [Span {
        from: NEXT_DAY,
        to: 2.0 * NEXT_DAY,
    }];
    let (days, lessons, rests) = (days(), lessons(), sample::tables().pace.rests);
    timed.clear_of(
        &away,
        &away,
        &Asked {
            days: &days,
            running: &running,
            lessons: &lessons,
            rests: &rests,
            tidy: 0.0,
        },
    );
    assert!(timed.fixed.iter().all(|it| it.span.to <= NEXT_DAY));
    assert_eq!(
        (timed.unmet.len(), &timed.unmet[0].why),
        (1, &Why::NobodyThere)
    );
}
