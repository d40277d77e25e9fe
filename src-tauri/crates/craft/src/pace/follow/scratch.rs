//! Room for courses that go abreast, and what is noted of each on its way.

use super::{Each, Witness};
use crate::pace::calendar::{Calendar, Hand};
use crate::pace::programme::Programme;
use std::array::from_fn;

/// Room for following `N` courses after others without asking for memory.
#[derive(Debug, Clone)]
pub struct Scratch<const N: usize> {
    /// When each bay is ready for its next stage; the first of them, and all.
    pub(super) ready: Vec<Each<N>>,
    pub(super) first: Each<N>,
    pub(super) all: Each<N>,
    /// Minutes of laying behind each bay.
    pub(super) laid: Vec<Each<N>>,
    /// Course by course: the lessons given.
    pub(super) taught: [Taught; N],
    /// Step by step: when it is done in every bay.
    pub(super) done: Vec<Each<N>>,
    /// Step by step and bay by bay: what it took without learning, and what went by before it
    /// could begin.
    pub(super) took: Vec<[Each<N>; 2]>,
    /// For each step all bays wait for: the bay they waited for.
    pub(super) waited_for: Vec<[usize; N]>,
    /// The bay that was done last; told only to a witness that asks when.
    pub(super) last: [usize; N],
    /// The step at which a course ended too early for its lesson.
    pub(super) stopped: [Option<usize>; N],
}

/// The lessons given on one course.
#[derive(Debug, Clone)]
pub(super) struct Taught {
    /// From this working time on, so many working minutes went into lessons.
    pub(super) lessons: Vec<(f64, f64)>,
    /// The clock when the last of them ended.
    pub(super) until: f64,
    /// Where on the calendar that was.
    pub(super) hand: Hand,
}

/// One course of those that were followed.
#[derive(Debug, Clone, Copy)]
pub(in crate::pace) struct Followed<'a, const N: usize> {
    scratch: &'a Scratch<N>,
    course: usize,
}

impl<const N: usize> Scratch<N> {
    /// Room for a programme.
    pub fn new(programme: &Programme) -> Self {
        let (steps, bays) = (programme.steps.len(), programme.bays);
        let lessons = programme.steps.iter().map(|step| step.lessons.len()).sum();
        Self {
            ready: vec![[0.0; N]; bays],
            first: [0.0; N],
            all: [0.0; N],
            laid: vec![[0.0; N]; bays],
            taught: from_fn(|_| Taught::new(lessons)),
            done: vec![[0.0; N]; steps],
            took: vec![[[0.0; N]; 2]; steps * bays],
            waited_for: vec![[0; N]; steps],
            last: [0; N],
            stopped: [None; N],
        }
    }

    pub(super) fn begin(&mut self, programme: &Programme) {
        self.ready.fill([0.0; N]);
        (self.first, self.all) = ([0.0; N], [0.0; N]);
        for (laid, before) in self.laid.iter_mut().zip(&programme.laid) {
            *laid = [*before; N];
        }
        self.taught.iter_mut().for_each(Taught::begin);
        self.stopped = [None; N];
    }

    pub(super) fn last_bay(&self, course: usize) -> usize {
        let mut last = 0;
        for (bay, ready) in self.ready.iter().enumerate() {
            if self.ready[last][course] < ready[course] {
                last = bay;
            }
        }
        last
    }

    /// Tells when each step of a course was done.
    pub(super) fn tell(&mut self, course: usize, calendar: &Calendar, witness: &mut impl Witness) {
        let followed = match self.stopped[course] {
            Some(step) => step,
            None => {
                self.last[course] = self.last_bay(course);
                self.done.len()
            }
        };
        let (mut hand, mut given) = (Hand::default(), 0);
        let all = &self.taught[course].lessons;
        for (number, done) in self.done[..followed].iter().enumerate() {
            let done = done[course];
            // No step is done before the one it follows.
            let lessons = &all[given..];
            given += lessons.iter().take_while(|(from, _)| *from < done).count();
            let before = given.checked_sub(1).map(|last| all[last]);
            let taught = before.map_or(0.0, |(_, taught)| taught);
            witness.done(course, number, calendar.clock_on(&mut hand, done + taught));
        }
        for number in followed..self.done.len() {
            witness.done(course, number, f64::INFINITY);
        }
    }

    /// One of the courses that were followed.
    pub(in crate::pace) fn followed(&self, course: usize) -> Followed<'_, N> {
        Followed {
            scratch: self,
            course,
        }
    }
}

impl Taught {
    fn new(lessons: usize) -> Self {
        Self {
            lessons: Vec::with_capacity(lessons),
            until: f64::NEG_INFINITY,
            hand: Hand::default(),
        }
    }

    fn begin(&mut self) {
        self.lessons.clear();
        self.until = f64::NEG_INFINITY;
        self.hand = Hand::default();
    }

    /// All working minutes that went into lessons so far.
    pub(super) fn minutes(&self) -> f64 {
        self.lessons.last().map_or(0.0, |(_, taught)| *taught)
    }

    /// The clock at a working time without lessons. What is done just when a lesson begins is
    /// done before it.
    pub(super) fn clock(&self, working: f64, calendar: &Calendar) -> f64 {
        let before = self.lessons.iter().rev().find(|(from, _)| *from < working);
        calendar.clock_at(working + before.map_or(0.0, |(_, taught)| *taught))
    }
}

impl<const N: usize> Followed<'_, N> {
    /// What a step took in a bay without learning, and what went by before it could begin.
    pub(in crate::pace) fn took(&self, programme: &Programme, step: usize, bay: usize) -> [f64; 2] {
        let took = &self.scratch.took[step * programme.bays + bay];
        [took[0][self.course], took[1][self.course]]
    }

    /// The bay that all others waited for before a step.
    pub(in crate::pace) fn waited_for(&self, step: usize) -> usize {
        self.scratch.waited_for[step][self.course]
    }

    /// The bay that was done last.
    pub(in crate::pace) fn last(&self) -> usize {
        self.scratch.last[self.course]
    }

    /// The step at which the course ended too early for its lesson.
    pub(in crate::pace) fn stopped(&self) -> Option<usize> {
        self.scratch.stopped[self.course]
    }
}
