//! Timetables of days drawn at random: nothing overlaps, nothing leaves its day, all is taught.

use super::drawn::{clock, days, programme, running, stages};
use crate::course::{Day, Running, Wish};
use crate::pace::calendar::{Calendar, minutes_to};
use crate::pace::fixed::{self, Timed};
use crate::pace::programme::{Learning, Programme, Step};
use crate::pace::rates::{self, rates};
use crate::pace::ties::Ties;
use crate::pace::timetable::{self, Entry, EntryKind, Of, timetable};
use crate::tables::{Applies, Before, Lesson, Tables};
use crate::worksheet::sample;
use proptest::prelude::*;

/// Rounding, in minutes.
const HAIR: f64 = 1e-6;

/// A programme on days of its own.
struct Course<'a> {
    days: &'a [Day],
    running: &'a Running,
    programme: Programme,
    lessons: Vec<Lesson>,
    tables: Tables,
}

impl<'a> Course<'a> {
    /// The programme's lessons, and the two that open a course and a day.
    fn new(days: &'a [Day], running: &'a Running, programme: Programme) -> Self {
        let lesson = |number: usize, minutes: f64, before| Lesson {
            id: format!("lesson-{number}"),
            title: format!("Lesson {number}"),
            minutes: minutes as u32,
            before,
            safety: number.is_multiple_of(3),
            when: vec![Applies::Always],
        };
        let stages = stages();
        let mut lessons = Vec::new();
        for (number, minutes) in programme.lesson_minutes.iter().enumerate() {
            let due = programme
                .steps
                .iter()
                .find(|it| it.lessons.contains(&number));
            let stage = stages[due.expect("its step").stage].id.clone();
            lessons.push(lesson(number, *minutes, Before::Stage(stage)));
        }
        for before in [Before::Course, Before::EachDay] {
            lessons.push(lesson(100 + lessons.len(), 20.0, before));
        }
        Self {
            days,
            running,
            programme,
            lessons,
            tables: sample::tables(),
        }
    }

    fn timed(&self) -> Timed {
        Timed::of(&fixed::Asked {
            days: self.days,
            running: self.running,
            lessons: &self.lessons,
            rests: &self.tables.pace.rests,
            tidy: 25.0,
        })
    }

    fn calendar(&self, timed: &Timed) -> Calendar {
        let closed = timed.closed();
        let rated = rates(&rates::Asked {
            present: &[],
            days: self.days,
            running: self.running,
            pace: &self.tables.pace,
            weather: &self.tables.weather,
            closed: &closed,
        });
        Calendar::new(self.days, &closed, &rated)
    }

    /// The programme without lessons left out, and with those that have a time given then.
    fn programme(&self, timed: &Timed) -> Programme {
        let mut programme = self.programme.clone();
        for step in &mut programme.steps {
            step.lessons
                .retain(|lesson| !self.running.left_out.contains(&self.lessons[*lesson].id));
            let ends = |lesson: &usize| Some((*lesson, timed.lesson(*lesson)?.to));
            let pinned = step.lessons.iter().filter_map(ends);
            step.after = pinned.max_by(|a, b| a.1.total_cmp(&b.1));
            step.lessons
                .retain(|lesson| timed.lesson(*lesson).is_none());
        }
        programme
    }

    fn timetable(&self) -> Vec<Entry> {
        let timed = self.timed();
        timetable(&timetable::Asked {
            days: self.days,
            programme: &self.programme(&timed),
            calendar: &self.calendar(&timed),
            timed: &timed,
            shut: &[],
            middling: &vec![1.0; self.programme.steps.len()],
            stages: &stages(),
            lessons: &self.lessons,
        })
    }
}

/// One day from 9 to 11 with an opening talk to 9:20 and tidying from 10:35; half an hour of work
/// that waits for a lesson of so many minutes. What the timetable says, with minutes of the day.
fn one_morning(lesson: f64, wishes: Vec<Wish>) -> Vec<(f64, f64, String)> {
    let days = [Day {
        date: chrono::NaiveDate::default(),
        start: clock(540),
        finish: clock(660),
        breaks: Vec::new(),
        weather: Default::default(),
    }];
    let programme = Programme {
        bays: 1,
        steps: vec![Step {
            stage: 0,
            usual: vec![30.0],
            together: false,
            string: None,
            laying: false,
            lessons: vec![0],
            after: None,
            crowding: 0.0,
        }],
        lesson_minutes: vec![lesson],
        ties: Ties::new(1.0, 0.0),
        laid: vec![0.0],
        learning: Learning::new(0.0, 1.5, 2.0),
    };
    let running = Running {
        wishes,
        ..Running::default()
    };
    let entries = Course::new(&days, &running, programme).timetable();
    let said = entries.into_iter().map(|it| (it.from, it.to, it.what));
    said.skip(1).collect()
}

/// By hand: wished at ten o'clock for a quarter of an hour, the work waits 40 minutes and then
/// has 20 of its 30.
#[test]
fn work_waits_for_a_wished_lesson() {
    let at_ten = Wish {
        lesson: "lesson-0".to_owned(),
        day: 0,
        at: Some(clock(600)),
    };
    let said = one_morning(15.0, vec![at_ten]);
    assert!(
        said[0].2.starts_with("Waiting for \"Lesson 0\""),
        "{said:?}"
    );
    assert_eq!((said[0].0, said[0].1), (560.0, 600.0));
    assert_eq!(said[1], (600.0, 615.0, "Lesson 0".to_owned()));
    assert_eq!(said[2], (615.0, 635.0, "Stage 0".to_owned()));
}

/// 75 minutes are left, and the lesson takes 90.
#[test]
fn work_whose_lesson_comes_too_late_is_not_begun() {
    let said = one_morning(90.0, Vec::new());
    assert!(
        said[0].2.starts_with("Waiting for \"Lesson 0\""),
        "{said:?}"
    );
    assert_eq!((said[0].0, said[0].1), (560.0, 635.0));
}

proptest! {
    #[test]
    fn nothing_overlaps_and_nothing_leaves_its_day(
        days in days(), running in running(), drawn in programme(),
    ) {
        let course = Course::new(&days, &running, drawn.programme());
        let mut before = f64::NEG_INFINITY;
        for entry in course.timetable() {
            prop_assert!(entry.from < entry.to, "{entry:?}");
            prop_assert!(before <= entry.from + HAIR, "{entry:?} after {before}");
            before = entry.to;
            let day = &days[entry.day];
            let hours = [day.start, day.finish].map(|time| minutes_to(&days, day.date, time));
            prop_assert!(hours[0] - HAIR <= entry.from, "{entry:?} before {hours:?}");
            prop_assert!(entry.to <= hours[1] + HAIR, "{entry:?} after {hours:?}");
        }
    }

    #[test]
    fn what_stands_at_a_fixed_time_is_never_over_another(
        days in days(), running in running(), drawn in programme(),
    ) {
        let timed = Course::new(&days, &running, drawn.programme()).timed();
        for pair in timed.fixed.windows(2) {
            prop_assert!(pair[0].span.to <= pair[1].span.from + HAIR, "{pair:?}");
        }
    }

    #[test]
    fn every_break_given_stands_in_the_timetable(
        days in days(), running in running(), drawn in programme(),
    ) {
        let entries = Course::new(&days, &running, drawn.programme()).timetable();
        for day in &days {
            for given in &day.breaks {
                let from = minutes_to(&days, day.date, given.start);
                let there = entries.iter().any(|entry| {
                    entry.kind == EntryKind::Break
                        && entry.what == given.name
                        && (entry.from - from).abs() < HAIR
                        && (entry.to - from - f64::from(given.minutes)).abs() < HAIR
                });
                prop_assert!(there, "{given:?}");
            }
        }
    }

    /// No stage is worked at before its lessons are over, wished or not.
    #[test]
    fn no_stage_comes_before_its_lesson(
        days in days(), running in running(), drawn in programme(),
    ) {
        let course = Course::new(&days, &running, drawn.programme());
        let entries = course.timetable();
        let whole = &course.programme;
        for step in &whole.steps {
            let left_out = |lesson: &usize| running.left_out.contains(&course.lessons[*lesson].id);
            let due = step.lessons.iter().filter(|lesson| !left_out(lesson));
            let of = |of: Of| entries.iter().filter(move |entry| entry.of == Some(of));
            let Some(begins) = of(Of::Stage(step.stage)).map(|entry| entry.from).next() else {
                continue;
            };
            for lesson in due {
                // A very short one may vanish where times are put to the quarter hour.
                let Some(over) = of(Of::Lesson(*lesson)).map(|entry| entry.to).next() else {
                    continue;
                };
                prop_assert!(over <= begins + HAIR, "lesson {lesson}: {over} {begins}");
            }
        }
    }

    /// Stages come in order; none is worked at before one in front of it has begun.
    #[test]
    fn stages_come_in_order(days in days(), running in running(), drawn in programme()) {
        let entries = Course::new(&days, &running, drawn.programme()).timetable();
        let stages = entries.iter().filter_map(|entry| match entry.of {
            Some(Of::Stage(stage)) => Some(stage),
            _ => None,
        });
        prop_assert!(stages.collect::<Vec<_>>().is_sorted());
    }
}
