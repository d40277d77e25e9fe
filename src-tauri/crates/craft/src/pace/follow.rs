//! Courses followed through their programme and the calendar.
//!
//! Every bay goes from stage to stage by itself, except where all must be ready. Times within
//! are working minutes without lessons; a lesson stops everybody, so that it is time put into
//! the clock where it is given, and nothing else moves.
//!
//! `T(stage, bay) = max(T(stage before, bay), gate) + usual · slowness · string + learning`
//!
//! Some courses go abreast: all of them through one step before the next, because a processor does
//! the same sum for several numbers in hardly more time than for one. None knows of the others.

mod scratch;

use super::calendar::{Calendar, Span};
use super::luck::Course;
use super::programme::{Programme, Step};
pub(super) use scratch::Followed;
pub use scratch::Scratch;
use scratch::Taught;
use std::array::from_fn;

/// Who watches a programme being followed. A course is told by its place among those abreast.
pub trait Witness {
    /// Whether it asks when each step is done and what that took, which takes a while to note.
    const ASKS_WHEN: bool = true;

    /// A lesson is given, after waiting for it from a clock time on.
    fn lesson(&mut self, _course: usize, _lesson: usize, _waited_from: f64, _span: Span) {}
    /// The course ends before the lessons of this step can be given.
    fn stopped(&mut self, _course: usize, _step: usize) {}
    /// A step is done in every bay; the clock is infinite when the course ended first. Told of
    /// all steps in order when the whole course has been followed: a lesson for bays ahead stops
    /// a bay that is still at the step before.
    fn done(&mut self, _course: usize, _step: usize, _clock: f64) {}
}

/// Nobody watches.
impl Witness for () {
    const ASKS_WHEN: bool = false;
}

/// A number for each of the courses abreast.
type Each<const N: usize> = [f64; N];

impl Programme {
    /// Follows courses abreast; tells of each the clock when all is done, infinite if the course
    /// ends first.
    pub fn follow<const N: usize, W: Witness>(
        &self,
        calendar: &Calendar,
        courses: [Course<'_>; N],
        scratch: &mut Scratch<N>,
        witness: &mut W,
    ) -> Each<N> {
        scratch.begin(self);
        for (number, step) in self.steps.iter().enumerate() {
            if step.together {
                if W::ASKS_WHEN {
                    scratch.waited_for[number] = from_fn(|course| scratch.last_bay(course));
                }
                scratch.ready.fill(scratch.all);
                scratch.first = scratch.all;
            }
            let gates = self.gates(number, calendar, scratch, witness);
            if scratch.stopped.iter().all(Option::is_some) {
                break;
            }
            self.work::<N, W>(number, &gates, &courses, scratch);
            if W::ASKS_WHEN {
                scratch.done[number] = scratch.all;
            }
        }
        from_fn(|course| {
            if W::ASKS_WHEN {
                scratch.tell(course, calendar, witness);
            }
            if scratch.stopped[course].is_some() {
                return f64::INFINITY;
            }
            scratch.taught[course].clock(scratch.all[course], calendar)
        })
    }

    /// When a step may begin at the earliest. Where a course ends before its lessons that is never.
    fn gates<const N: usize, W: Witness>(
        &self,
        number: usize,
        calendar: &Calendar,
        scratch: &mut Scratch<N>,
        witness: &mut W,
    ) -> Each<N> {
        let step = &self.steps[number];
        if step.after.is_none() && step.lessons.is_empty() {
            return scratch.first;
        }
        from_fn(|course| {
            if scratch.stopped[course].is_some() {
                return f64::INFINITY;
            }
            let (first, taught) = (scratch.first[course], &mut scratch.taught[course]);
            let told = |lesson, from, span| witness.lesson(course, lesson, from, span);
            if let Some(gate) = self.gate(step, calendar, first, taught, told) {
                return gate;
            }
            scratch.stopped[course] = Some(number);
            if W::ASKS_WHEN {
                scratch.last[course] = scratch.last_bay(course);
            }
            witness.stopped(course, number);
            f64::INFINITY
        })
    }

    /// When a step may begin at the earliest on one course: its lessons are given when the first
    /// bay is ready for it. Nothing if the course ends before they are.
    fn gate(
        &self,
        step: &Step,
        calendar: &Calendar,
        first: f64,
        given: &mut Taught,
        mut told: impl FnMut(usize, f64, Span),
    ) -> Option<f64> {
        let mut taught = given.minutes();
        let mut gate = first;
        let pinned = step.after.map_or(f64::NEG_INFINITY, |(_, clock)| clock);
        if step.after.is_some() {
            gate = gate.max(calendar.working_at(pinned) - taught);
        }
        if step.lessons.is_empty() {
            return Some(gate);
        }
        // Where nothing gets done a lesson takes no working time, but the clock goes on.
        let over = given.until.max(pinned);
        let hand = &mut given.hand;
        let mut ready = calendar.clock_on(hand, gate + taught).max(over);
        for &lesson in &step.lessons {
            let minutes = self.lesson_minutes[lesson];
            let (span, [begins, ends]) = calendar.talk_on(hand, ready, minutes)?;
            told(lesson, ready, span);
            gate = gate.max(begins - taught);
            taught += ends - begins;
            given.lessons.push((gate, taught));
            ready = span.to;
            given.until = span.to;
        }
        Some(gate)
    }

    /// Takes all bays of the courses through one step, from when it may begin.
    fn work<const N: usize, W: Witness>(
        &self,
        number: usize,
        gates: &Each<N>,
        courses: &[Course<'_>; N],
        scratch: &mut Scratch<N>,
    ) {
        let step = &self.steps[number];
        let slowness: Each<N> = from_fn(|course| courses[course].slowness[step.stage]);
        let learning = step.laying && self.learning.counts();
        let took = &mut scratch.took[number * self.bays..];
        let bays = scratch.ready.iter_mut().zip(&step.usual).zip(took);
        let (mut first, mut all) = ([f64::INFINITY; N], [0.0; N]);
        for (bay, ((ready, usual), took)) in bays.enumerate() {
            let mut without_learning = slowness.map(|slowness| usual * slowness);
            if let Some(string) = step.string {
                for (minutes, course) in without_learning.iter_mut().zip(courses) {
                    *minutes *= self.ties.factor(course.tie(bay, string));
                }
            }
            let mut minutes = without_learning;
            if learning {
                let laid = &mut scratch.laid[bay];
                for course in 0..N {
                    let before = self.learning.adds(laid[course]);
                    laid[course] += without_learning[course];
                    minutes[course] += self.learning.adds(laid[course]) - before;
                }
            }
            let begins: Each<N> = from_fn(|course| ready[course].max(gates[course]));
            if W::ASKS_WHEN {
                *took = [
                    without_learning,
                    from_fn(|course| begins[course] - ready[course]),
                ];
            }
            *ready = from_fn(|course| begins[course] + minutes[course]);
            first = from_fn(|course| ready[course].min(first[course]));
            all = from_fn(|course| ready[course].max(all[course]));
        }
        (scratch.first, scratch.all) = (first, all);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::course::Day;
    use crate::pace::calendar::Rated;
    use crate::pace::programme::Learning;
    use crate::pace::ties::Ties;
    use chrono::{NaiveDate, NaiveTime};

    /// What was seen of a course.
    #[derive(Debug, Default, PartialEq)]
    struct Seen {
        lessons: Vec<[f64; 2]>,
        done: Vec<f64>,
    }

    impl Witness for Seen {
        fn lesson(&mut self, _course: usize, _lesson: usize, _waited_from: f64, span: Span) {
            self.lessons.push([span.from, span.to]);
        }

        fn done(&mut self, _course: usize, _step: usize, clock: f64) {
            self.done.push(clock);
        }
    }

    /// From 9 to 17 o'clock.
    fn day(rated: &[Rated]) -> Calendar {
        let time = |hour| NaiveTime::from_hms_opt(hour, 0, 0).expect("a time");
        let day = Day {
            date: NaiveDate::from_ymd_opt(2027, 4, 24).expect("a date"),
            start: time(9),
            finish: time(17),
            breaks: Vec::new(),
            weather: Default::default(),
        };
        Calendar::new(&[day], &[], rated)
    }

    /// Steps by their usual minutes in each bay and the minutes of their lessons.
    fn seen(steps: &[(&[f64], &[f64])], calendar: &Calendar) -> Seen {
        let mut lesson_minutes = Vec::new();
        let steps = steps.iter().map(|(usual, lessons)| {
            let first = lesson_minutes.len();
            lesson_minutes.extend_from_slice(lessons);
            Step {
                stage: 0,
                usual: usual.to_vec(),
                together: false,
                string: None,
                laying: false,
                lessons: (first..lesson_minutes.len()).collect(),
                after: None,
                crowding: 0.0,
            }
        });
        let steps: Vec<Step> = steps.collect();
        let bays = steps[0].usual.len();
        let programme = Programme {
            bays,
            steps,
            lesson_minutes,
            ties: Ties::new(1.0, 0.0),
            laid: vec![0.0; bays],
            learning: Learning::new(0.0, 1.5, 2.0),
        };
        let mut seen = Seen::default();
        let mut scratch = Scratch::new(&programme);
        programme.follow(
            calendar,
            [Course::middling(&[1.0])],
            &mut scratch,
            &mut seen,
        );
        seen
    }

    /// By hand: bay 1 is ready at 09:40 and the lesson, 15 min, stops bay 2 as well: its 80 min
    /// last until 10:35.
    #[test]
    fn a_lesson_for_the_bay_ahead_stops_the_one_behind() {
        let seen = seen(&[(&[40.0, 80.0], &[]), (&[60.0, 60.0], &[15.0])], &day(&[]));
        assert_eq!(seen.lessons, [[580.0, 595.0]]);
        assert_eq!(seen.done, [635.0, 695.0]);
    }

    /// By hand: nothing gets done from 10 to 11 o'clock, but two talks of 20 and 45 min that are
    /// due at 09:50 end at 10:10 and 10:55, and the next 30 min of work at 11:30.
    #[test]
    fn one_talk_follows_the_other_while_nothing_gets_done() {
        let dead = Rated {
            span: Span {
                from: 600.0,
                to: 660.0,
            },
            rate: 0.0,
        };
        let seen = seen(&[(&[50.0], &[]), (&[30.0], &[20.0, 45.0])], &day(&[dead]));
        assert_eq!(seen.lessons, [[590.0, 610.0], [610.0, 655.0]]);
        assert_eq!(seen.done, [590.0, 690.0]);
    }
}
