//! One course followed through its programme and its calendar.
//!
//! Every bay goes from stage to stage by itself, except where all must be ready. Times within
//! are working minutes without lessons; a lesson stops everybody, so that it is time put into
//! the clock where it is given, and nothing else moves.
//!
//! `T(stage, bay) = max(T(stage before, bay), gate) + usual · slowness · string + learning`

use super::calendar::{Calendar, Hand, Span};
use super::luck::Course;
use super::programme::{Programme, Step};

/// Who watches a programme being followed.
pub trait Witness {
    /// Whether it asks when each step is done and what that took, which takes a while to note.
    const ASKS_WHEN: bool = true;

    /// A lesson is given, after waiting for it from a clock time on.
    fn lesson(&mut self, _lesson: usize, _waited_from: f64, _span: Span) {}
    /// The course ends before the lessons of this step can be given.
    fn stopped(&mut self, _step: usize) {}
    /// A step is done in every bay; the clock is infinite when the course ended first. Told of
    /// all steps in order when the whole course has been followed: a lesson for bays ahead stops
    /// a bay that is still at the step before.
    fn done(&mut self, _step: usize, _clock: f64) {}
}

/// Nobody watches.
impl Witness for () {
    const ASKS_WHEN: bool = false;
}

/// Room for following one course after another without asking for memory.
#[derive(Debug, Clone)]
pub struct Scratch {
    /// When each bay is ready for its next stage; the first of them, and all.
    ready: Vec<f64>,
    first: f64,
    all: f64,
    /// Minutes of laying behind each bay.
    laid: Vec<f64>,
    /// Lessons given: from this working time on, so many working minutes went into lessons.
    lessons: Vec<(f64, f64)>,
    /// The clock when the last of them ended.
    taught_until: f64,
    /// Where on the calendar that was.
    hand: Hand,
    /// Step by step: when it is done in every bay.
    done: Vec<f64>,
    /// Step by step and bay by bay: what it took without learning, and what went by before it
    /// could begin.
    pub(super) took: Vec<[f64; 2]>,
    /// For each step all bays wait for: the bay they waited for.
    pub(super) waited_for: Vec<usize>,
    /// The bay that was done last; told only to a witness that asks when.
    pub(super) last: usize,
    /// The step at which the course ended too early for its lesson.
    pub(super) stopped: Option<usize>,
}

impl Scratch {
    /// Room for a programme.
    pub fn new(programme: &Programme) -> Self {
        let (steps, bays) = (programme.steps.len(), programme.bays);
        let lessons = programme.steps.iter().map(|step| step.lessons.len()).sum();
        Self {
            ready: vec![0.0; bays],
            first: 0.0,
            all: 0.0,
            laid: vec![0.0; bays],
            lessons: Vec::with_capacity(lessons),
            taught_until: f64::NEG_INFINITY,
            hand: Hand::default(),
            done: vec![0.0; steps],
            took: vec![[0.0; 2]; steps * bays],
            waited_for: vec![0; steps],
            last: 0,
            stopped: None,
        }
    }

    fn begin(&mut self, programme: &Programme) {
        self.ready.fill(0.0);
        (self.first, self.all) = (0.0, 0.0);
        self.laid.copy_from_slice(&programme.laid);
        self.lessons.clear();
        self.taught_until = f64::NEG_INFINITY;
        self.hand = Hand::default();
        self.stopped = None;
    }

    fn last_bay(&self) -> usize {
        let mut last = 0;
        for (bay, ready) in self.ready.iter().enumerate() {
            if self.ready[last] < *ready {
                last = bay;
            }
        }
        last
    }

    /// All working minutes that went into lessons so far.
    fn taught(&self) -> f64 {
        self.lessons.last().map_or(0.0, |(_, taught)| *taught)
    }

    /// The clock at a working time without lessons. What is done just when a lesson begins is
    /// done before it.
    fn clock(&self, working: f64, calendar: &Calendar) -> f64 {
        let before = self.lessons.iter().rev().find(|(from, _)| *from < working);
        calendar.clock_at(working + before.map_or(0.0, |(_, taught)| *taught))
    }
}

impl Programme {
    /// Follows one course; tells the clock when all is done, infinite if the course ends first.
    pub fn follow<W: Witness>(
        &self,
        calendar: &Calendar,
        course: Course<'_>,
        scratch: &mut Scratch,
        witness: &mut W,
    ) -> f64 {
        scratch.begin(self);
        for (number, step) in self.steps.iter().enumerate() {
            if step.together {
                if W::ASKS_WHEN {
                    scratch.waited_for[number] = scratch.last_bay();
                }
                scratch.ready.fill(scratch.all);
                scratch.first = scratch.all;
            }
            let Some(gate) = self.gate(step, calendar, scratch, witness) else {
                scratch.stopped = Some(number);
                witness.stopped(number);
                scratch.done[number..].fill(f64::INFINITY);
                break;
            };
            self.work::<W>(number, step, gate, course, scratch);
            if W::ASKS_WHEN {
                scratch.done[number] = scratch.all;
            }
        }
        if W::ASKS_WHEN {
            scratch.last = scratch.last_bay();
            let (mut hand, mut given) = (Hand::default(), 0);
            for (number, &done) in scratch.done.iter().enumerate() {
                // No step is done before the one it follows.
                let lessons = &scratch.lessons[given..];
                given += lessons.iter().take_while(|(from, _)| *from < done).count();
                let before = given.checked_sub(1).map(|last| scratch.lessons[last]);
                let taught = before.map_or(0.0, |(_, taught)| taught);
                witness.done(number, calendar.clock_on(&mut hand, done + taught));
            }
        }
        if scratch.stopped.is_some() {
            return f64::INFINITY;
        }
        scratch.clock(scratch.all, calendar)
    }

    /// When a step may begin at the earliest: its lessons are given when the first bay is ready
    /// for it. Nothing if the course ends before they are.
    fn gate(
        &self,
        step: &Step,
        calendar: &Calendar,
        scratch: &mut Scratch,
        witness: &mut impl Witness,
    ) -> Option<f64> {
        let mut taught = scratch.taught();
        let mut gate = scratch.first;
        let pinned = step.after.map_or(f64::NEG_INFINITY, |(_, clock)| clock);
        if step.after.is_some() {
            gate = gate.max(calendar.working_at(pinned) - taught);
        }
        if step.lessons.is_empty() {
            return Some(gate);
        }
        // Where nothing gets done a lesson takes no working time, but the clock goes on.
        let over = scratch.taught_until.max(pinned);
        let hand = &mut scratch.hand;
        let mut ready = calendar.clock_on(hand, gate + taught).max(over);
        for &lesson in &step.lessons {
            let minutes = self.lesson_minutes[lesson];
            let (span, [begins, ends]) = calendar.talk_on(hand, ready, minutes)?;
            witness.lesson(lesson, ready, span);
            gate = gate.max(begins - taught);
            taught += ends - begins;
            scratch.lessons.push((gate, taught));
            ready = span.to;
            scratch.taught_until = span.to;
        }
        Some(gate)
    }

    fn work<W: Witness>(
        &self,
        number: usize,
        step: &Step,
        gate: f64,
        course: Course<'_>,
        scratch: &mut Scratch,
    ) {
        let slowness = course.slowness[step.stage];
        let learning = step.laying && self.learning.counts();
        let took = &mut scratch.took[number * self.bays..];
        let bays = scratch.ready.iter_mut().zip(&step.usual).zip(took);
        let (mut first, mut all) = (f64::INFINITY, 0.0);
        for (bay, ((ready, usual), took)) in bays.enumerate() {
            let mut without_learning = usual * slowness;
            if let Some(string) = step.string {
                without_learning *= self.ties.factor(course.tie(bay, string));
            }
            let mut minutes = without_learning;
            if learning {
                let laid = &mut scratch.laid[bay];
                let before = self.learning.adds(*laid);
                *laid += without_learning;
                minutes += self.learning.adds(*laid) - before;
            }
            let begins = ready.max(gate);
            if W::ASKS_WHEN {
                *took = [without_learning, begins - *ready];
            }
            *ready = begins + minutes;
            first = ready.min(first);
            all = ready.max(all);
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
        fn lesson(&mut self, _lesson: usize, _waited_from: f64, span: Span) {
            self.lessons.push([span.from, span.to]);
        }

        fn done(&mut self, _step: usize, clock: f64) {
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
        programme.follow(calendar, Course::middling(&[1.0]), &mut scratch, &mut seen);
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
