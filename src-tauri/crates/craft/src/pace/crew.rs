//! How fast the group works at each stage: its people, its teachers, its room at the wall.

use crate::course::{Experience, Group, Student};
use crate::frames::LEAST_IN_USE;
use crate::people::{facing_places, pair_count, speed};
use crate::quantity::{Length, Read, steps_to_cover, whole_number};
use crate::tables::{Crew, PaceTable, Stage, Work};

/// Who works where there is how much room.
#[derive(Debug, Clone, Copy)]
pub struct Gang<'a> {
    /// The group.
    pub group: &'a Group,
    /// Its pace.
    pub pace: &'a PaceTable,
    /// The stretch of wall that can be worked at once.
    pub room: Length,
    /// Students wait for help where too few teach.
    pub waits_for_help: bool,
}

/// Who is at a stage at once, and what they get done.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct AtOnce {
    /// People at it; a part of one changes over.
    pub people: f64,
    /// Units of the stage's work that they do in an hour hands-on, if nobody waits for help.
    pub together: f64,
    /// The share of it that is left where they wait for help, 1 where nobody does.
    pub teaching: f64,
}

impl Gang<'_> {
    /// Clock hours the group needs for `amount` of a stage at its usual pace.
    ///
    /// `hours = amount / (Σ speed of those at work · teaching · hands-on share)`
    pub fn clock_hours(&self, stage: &Stage, amount: f64) -> f64 {
        match stage.work {
            Work::Minutes(minutes) => return f64::from(minutes) / 60.0,
            Work::EachDay(_) => return 0.0,
            _ => {}
        }
        if amount <= 0.0 {
            return 0.0;
        }
        amount / (self.most_at_once(stage) * self.pace.places.hands_on)
    }

    /// The share of a stage's time that is lost because not every pair finds a place at the
    /// wall, or somebody to ask. That few can dig or set copes at once is the nature of the work.
    pub fn crowding(&self, stage: &Stage) -> f64 {
        if stage.work.is_fixed() || matches!(stage.crew, Crew::Diggers | Crew::CopingCrews) {
            return 0.0;
        }
        let speeds = self.group.students.iter();
        let all: f64 = speeds
            .map(|student| speed(self.pace, &stage.id, student.experience))
            .sum();
        1.0 - self.most_at_once(stage) / all
    }

    /// Students per instructor; an assistant counts half (common practice, no source).
    pub fn students_per_instructor(&self) -> f64 {
        self.group.students.len() as f64 / self.staff()
    }

    /// How many pairs stand at the wall at once, by changing over where a place is less than a
    /// whole one: at least one.
    pub fn pairs_at_once(&self) -> f64 {
        let places = self.places(Crew::FacingPairs) / 2.0;
        (pair_count(self.group.students.len()) as f64).min(places)
    }

    /// How many pairs stand at the wall at once: all of them, or as many as have a place.
    pub fn pairs_at_work(&self) -> usize {
        let places = steps_to_cover(self.room, self.pace.places.facing_pair);
        pair_count(self.group.students.len()).min(places)
    }

    /// The share of those at the wall that has never built before; who has built before finds
    /// a place first.
    pub fn share_of_novices(&self) -> f64 {
        let students = &self.group.students;
        let at_work = self.places(Crew::FacingPairs).min(students.len() as f64);
        let has_built = |student: &&Student| student.experience != Experience::Novice;
        let others = students.iter().filter(has_built).count() as f64;
        (at_work - others).max(0.0) / at_work
    }

    fn staff(&self) -> f64 {
        f64::from(self.group.instructors) + f64::from(self.group.assistants) / 2.0
    }

    /// Beyond the good ratio a person waits for help: the rate falls with the root of the
    /// ratio of those at work to those who teach, so that one more still adds to the group's
    /// total (common practice, no source). With nobody to teach, as with twice the good ratio
    /// or, in a large group, as with half an instructor.
    fn teaching(&self, at_work: f64) -> f64 {
        if !self.waits_for_help {
            return 1.0;
        }
        let good = self.pace.places.students_per_instructor;
        let ratio = match self.staff() {
            nobody if nobody <= 0.0 => (at_work / 0.5).max(2.0 * good),
            staff => at_work / staff,
        };
        if ratio <= good {
            1.0
        } else {
            (good / ratio).sqrt()
        }
    }

    /// What the group does in an hour with as many people at it as find a place.
    fn most_at_once(&self, stage: &Stage) -> f64 {
        let it = self.at_once(stage);
        it.together * it.teaching
    }

    /// Who is at a stage at once: the fastest ones, as many as get the most done. Who has no
    /// place brings stone and hearting; so one more person, however slow, never slows the others
    /// down.
    pub fn at_once(&self, stage: &Stage) -> AtOnce {
        let people = self.group.students.len() as f64;
        let at_work = self.places(stage.crew).min(people);
        let of = |student: &Student| speed(self.pace, &stage.id, student.experience);
        let mut speeds: Vec<f64> = self.group.students.iter().map(of).collect();
        speeds.sort_by(|a, b| b.total_cmp(a));
        let (mut together, mut best) = (0.0, AtOnce::default());
        for (before, speed) in speeds.iter().enumerate() {
            let share = (at_work - before as f64).clamp(0.0, 1.0);
            let people = before as f64 + share;
            together += speed * share;
            let teaching = self.teaching(people);
            if best.together * best.teaching < together * teaching {
                best = AtOnce {
                    people,
                    together,
                    teaching,
                };
            }
        }
        best
    }

    /// Places to work at. They are not rounded down: a stretch of one and a half places is
    /// kept busy for one and a half, by changing over. So a longer wall never takes less time.
    fn places(&self, crew: Crew) -> f64 {
        let along = |each: Length| self.room.si() / each.si();
        match crew {
            Crew::Everyone => f64::INFINITY,
            Crew::FacingPairs => 2.0 * along(self.pace.places.facing_pair).max(1.0),
            Crew::Diggers => along(self.pace.places.diggers) + 1.0,
            Crew::CopingCrews => 2.0 * (along(self.pace.places.coping_crew) + 1.0),
        }
    }
}

/// The stretch that can be worked at once: the whole line, or, where frames leapfrog, what
/// the frames in use span.
pub fn room(length: Length, stations: usize, in_stock: Option<u32>) -> Length {
    let bays = stations.saturating_sub(1).max(1);
    let in_use = in_stock.map_or(stations, |have| (have as usize).max(LEAST_IN_USE));
    if stations <= in_use {
        length
    } else {
        length * ((in_use - 1) as f64 / bays as f64)
    }
}

/// The least wall the group can stand at: a facing pair's place for every two.
pub fn elbow_room(group: &Group, pace: &PaceTable) -> Length {
    pace.places.facing_pair * facing_places(group.students.len()) as f64
}

/// Students that find no place at `room` of wall.
pub fn idle(group: &Group, pace: &PaceTable, room: Length) -> usize {
    let places =
        2 * whole_number((room / pace.places.facing_pair).get::<uom::si::ratio::ratio>() + 1e-9);
    group.students.len().saturating_sub(places)
}
