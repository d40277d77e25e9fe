//! What would make the wall longer, how the chance falls with its length, and two walls for one.

use super::Planner;
use super::changes::Change;
use crate::course::{Course, Group};
use crate::pace::crew;
use crate::pace::sizing::{Binding, Bound, LONGEST_M, Sizing};
use crate::quantity::{Length, Read, metres};
use std::rc::Rc;

/// So many of the simulated courses are asked what a change would do. What they say of a length is
/// measured by what they say of the course as it is, which all of them were asked about.
const ASKED: usize = 2000;
/// And so many how the chance falls with the length.
const ASKED_FOR_THE_CURVE: u32 = 1000;
/// So many points the curve of chance has to either side.
const TO_EITHER_SIDE: u32 = 6;
/// A change that brings less is not worth naming.
const LEAST_LIFT_M: f64 = 0.25;
/// Every day so many minutes longer is one of the changes.
const LONGER: u32 = 30;
/// The wall by one course of stone lower is one of the changes.
const A_COURSE_M: f64 = 0.15;

/// What a change to the course would do to the length.
#[derive(Debug, Clone, PartialEq)]
pub struct Lift {
    /// The change.
    pub change: Change,
    /// The length it allows, not yet rounded down.
    pub length: Length,
    /// What would then decide.
    pub binding: Binding,
}

/// Two practice walls in place of one that is too long to teach at.
#[derive(Debug, Clone, PartialEq)]
pub struct TwoWalls {
    /// Students at each.
    pub students: [usize; 2],
    /// Teachers at each, one at least.
    pub instructors: [u32; 2],
    /// The length each allows.
    pub lengths: [Length; 2],
}

/// What an instructor could do otherwise.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Advice {
    /// What would make the wall longer, or the chance better where its length is given; the most
    /// first.
    pub lifts: Vec<Lift>,
    /// The chance of finishing by length.
    pub curve: Vec<(Length, f64)>,
    /// For a group too large for one wall.
    pub two_walls: Option<TwoWalls>,
    /// Where the length is given and its chance is below the wish: the greatest height that
    /// keeps it.
    pub highest: Option<Length>,
    /// Pairs that find no place at the wall.
    pub idle_pairs: usize,
}

impl Planner<'_> {
    pub(super) fn advice(&self, sizing: &Sizing, room: Length, chance: f64) -> Advice {
        let given = sizing.binding == Binding::Given || sizing.kept.is_some();
        Advice {
            lifts: self.lifts(sizing),
            curve: self.curve(sizing, chance),
            two_walls: self.two_walls(),
            highest: (given && chance < self.course.chance)
                .then(|| self.highest(sizing.length, length_of(sizing, Binding::Pace)))
                .flatten(),
            idle_pairs: crew::idle(&self.course.group, &self.pace, room) / 2,
        }
    }

    /// Every change tried on the limit that decides; a given length is asked how much longer pace
    /// would allow.
    fn lifts(&self, sizing: &Sizing) -> Vec<Lift> {
        let limit = match sizing.binding {
            Binding::Given | Binding::ElbowRoom => Binding::Pace,
            binding => binding,
        };
        let now = length_of(sizing, limit);
        let by = match limit {
            Binding::Pace => self.measure(now),
            _ => 1.0,
        };
        let (was, _) = within_the_others(sizing, limit, now);
        let mut lifts: Vec<Lift> = self
            .changes(limit)
            .into_iter()
            .filter_map(|change| {
                let course = change.made_to(&self.course, self)?;
                let changed = self.changed(course)?;
                let length = changed.allowed(limit, now)? * by;
                let (length, binding) = within_the_others(sizing, limit, length);
                (was + metres(LEAST_LIFT_M) <= length).then_some(Lift {
                    change,
                    length,
                    binding,
                })
            })
            .collect();
        lifts.sort_by(|a, b| b.length.si().total_cmp(&a.length.si()));
        lifts
    }

    /// How much more pace allows than the courses asked about a change say it does.
    pub(super) fn measure(&self, pace: Length) -> f64 {
        let said = self.about_pace_from(pace, ASKED);
        if metres(0.0) < said {
            pace.si() / said.si()
        } else {
            1.0
        }
    }

    /// What one limit allows, worked out anew: that of pace by the courses that are asked about a
    /// change, looked for from a length near it.
    pub(super) fn allowed(&self, limit: Binding, near: Length) -> Option<Length> {
        match limit {
            Binding::Pace => Some(self.about_pace_from(near, ASKED)),
            Binding::Frames => Some(self.frames_limit().unwrap_or(metres(LONGEST_M))),
            Binding::Stone => self.stone_limit(),
            _ => None,
        }
    }

    fn changes(&self, limit: Binding) -> Vec<Change> {
        match limit {
            Binding::Frames => vec![Change::AnotherSet, Change::Leapfrog],
            Binding::Stone => vec![Change::AnotherLoad, Change::Lower(metres(A_COURSE_M))],
            Binding::Pace => {
                let stages = self.tables.stages.iter().enumerate();
                let running = &self.course.running;
                let open = stages.filter(|(_, it)| {
                    it.beforehand && !it.work.is_fixed() && !running.beforehand.contains(&it.id)
                });
                let mut changes: Vec<Change> =
                    open.map(|(number, _)| Change::Beforehand(number)).collect();
                changes.extend([
                    Change::LaterFinish(LONGER),
                    Change::AnotherDay,
                    Change::AnotherInstructor,
                    Change::WithoutCope,
                    Change::Lower(metres(A_COURSE_M)),
                ]);
                changes
            }
            _ => Vec::new(),
        }
    }

    /// The same with another course in place of this one.
    pub(super) fn changed(&self, course: Course) -> Option<Planner<'_>> {
        let time = super::Time::new(
            &course,
            self.tables,
            &self.pace,
            Rc::clone(&self.time.chances),
            Rc::clone(&self.time.suns),
        );
        self.on_the_same_days(course, Rc::new(time)).ok()
    }

    /// The chance at lengths about the chosen one, and at that one as it was forecast.
    fn curve(&self, sizing: &Sizing, chance: f64) -> Vec<(Length, f64)> {
        if !self.course.wall.line.is_empty() && sizing.kept.is_some() {
            return Vec::new();
        }
        let chosen = sizing.length;
        let by = chosen / f64::from(TO_EITHER_SIDE) * 0.75;
        let courses: Vec<u32> = (0..ASKED_FOR_THE_CURVE).collect();
        let Some(answers) = self.finishing(chosen, &courses) else {
            return Vec::new();
        };
        let (finish, fail) = parted(&courses, &answers);
        let above = (1..=TO_EITHER_SIDE).map(|step| chosen + by * f64::from(step));
        let below = (1..TO_EITHER_SIDE).map(|step| chosen - by * f64::from(step));
        let mut curve = self.curve_below(below, fail);
        curve.reverse();
        curve.push((chosen, chance));
        curve.extend(self.curve_above(above, finish));
        curve
    }

    /// Only courses that finished a shorter wall are asked about a longer one.
    fn curve_above(
        &self,
        lengths: impl Iterator<Item = Length>,
        mut finish: Vec<u32>,
    ) -> Vec<(Length, f64)> {
        let mut curve = Vec::new();
        for length in lengths {
            let Some(answers) = self.finishing(length, &finish) else {
                break;
            };
            (finish, _) = parted(&finish, &answers);
            curve.push((length, share_of_the_curve(finish.len())));
        }
        curve
    }

    /// Only courses that did not finish a longer wall are asked about a shorter one.
    fn curve_below(
        &self,
        lengths: impl Iterator<Item = Length>,
        mut fail: Vec<u32>,
    ) -> Vec<(Length, f64)> {
        let mut curve = Vec::new();
        for length in lengths {
            let Some(answers) = self.finishing(length, &fail) else {
                break;
            };
            (_, fail) = parted(&fail, &answers);
            curve.push((length, 1.0 - share_of_the_curve(fail.len())));
        }
        curve
    }

    /// Half the people at each of two walls, where they are too many for one.
    fn two_walls(&self) -> Option<TwoWalls> {
        let group = &self.course.group;
        let students = group.students.len();
        let too_many = self.pace.places.one_wall as usize;
        if students <= too_many {
            return None;
        }
        let half = |from: usize| {
            let students = group.students.iter().skip(from).step_by(2).cloned();
            Group {
                students: students.collect(),
                instructors: ((group.instructors + 1 - from as u32) / 2).max(1),
                assistants: (group.assistants + from as u32) / 2,
                pairing: group.pairing,
            }
        };
        let halves = [half(0), half(1)];
        let length = |group: &Group| {
            let mut course = Course::clone(&self.course);
            course.group = group.clone();
            course.absences.clear();
            self.changed(course).map(|half| half.about_pace(ASKED))
        };
        Some(TwoWalls {
            students: [halves[0].students.len(), halves[1].students.len()],
            instructors: [halves[0].instructors, halves[1].instructors],
            lengths: [length(&halves[0])?, length(&halves[1])?],
        })
    }
}

/// The length that is left when one limit allows so much, and what then decides.
pub(super) fn within_the_others(
    sizing: &Sizing,
    limit: Binding,
    length: Length,
) -> (Length, Binding) {
    let others = sizing.limits.iter();
    let others = others.filter(|it| it.bound == Bound::Most && it.limit != limit);
    others.fold((length, limit), |least, it| {
        if it.length < least.0 {
            (it.length, it.limit)
        } else {
            least
        }
    })
}

/// Those that finish, and those that do not.
fn parted(courses: &[u32], finishing: &[bool]) -> (Vec<u32>, Vec<u32>) {
    let answered = courses.iter().zip(finishing);
    let (finish, fail): (Vec<_>, Vec<_>) = answered.partition(|(_, finishes)| **finishes);
    let numbers = |some: Vec<(&u32, &bool)>| some.into_iter().map(|(number, _)| *number).collect();
    (numbers(finish), numbers(fail))
}

fn share_of_the_curve(courses: usize) -> f64 {
    courses as f64 / f64::from(ASKED_FOR_THE_CURVE)
}

/// What a limit allows as things stand.
pub(super) fn length_of(sizing: &Sizing, limit: Binding) -> Length {
    let mut limits = sizing.limits.iter();
    let limit = limits.find(|it| it.limit == limit && metres(0.0) < it.length);
    limit.map_or(sizing.length, |it| it.length)
}
