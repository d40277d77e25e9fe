//! When there is time, and what may come: the calendar of a course and its luck.

use super::{LAYING, Planner};
use crate::course::{Course, Day};
use crate::pace::belief::Belief;
use crate::pace::calendar::{Calendar, Span, minutes_to};
use crate::pace::fixed::{self, Timed};
use crate::pace::forecast::{self, Forecast};
use crate::pace::luck::Luck;
use crate::pace::programme::Programme;
use crate::pace::rates::{self, rates};
use crate::pace::shut::{self, Reason, Shut, because, shut};
use crate::pace::timetable::{self, Entry, timetable};
use crate::people::{Presence, presence};
use crate::sun::Suns;
use crate::tables::{PaceTable, Stage, Tables, Work};
use std::cell::RefCell;
use std::rc::Rc;
use std::sync::Arc;

/// Luck is drawn for so many bays at least, so that most walls never need it drawn anew.
const BAYS: usize = 8;

/// What does not depend on how much there is to build.
pub(super) struct Time {
    /// What stands at fixed times.
    pub(super) timed: Timed,
    /// When nothing is built although the day runs.
    pub(super) shut: Vec<Shut>,
    /// When there is time to build.
    pub(super) calendar: Calendar,
    pub(super) chances: Rc<Chances>,
    pub(super) suns: Rc<Suns>,
    day_one_ends: f64,
}

/// What may come: what is believed of pace, and the luck drawn from that.
pub(super) struct Chances {
    /// How many times slower than usual each stage goes in the middle.
    pub(super) middling: Vec<f64>,
    pub(super) belief: Belief,
    seed: u64,
    samples: usize,
    /// Drawn when it is asked for, and drawn anew for a wall of more bays.
    luck: RefCell<Option<Arc<Luck>>>,
}

impl Chances {
    pub(super) fn new(belief: Belief, seed: u64, samples: usize) -> Self {
        Self {
            middling: (0..belief.len())
                .map(|stage| belief.mean(stage).exp())
                .collect(),
            belief,
            seed,
            samples,
            luck: RefCell::default(),
        }
    }

    /// With luck that was drawn from the same before.
    pub(super) fn drawn_before(self, luck: Option<Arc<Luck>>) -> Self {
        Self {
            luck: RefCell::new(luck),
            ..self
        }
    }

    /// The luck, if it was asked for.
    pub(super) fn drawn(&self) -> Option<Arc<Luck>> {
        self.luck.borrow().clone()
    }

    /// The same courses when something else is believed of pace.
    pub(super) fn with(&self, belief: Belief) -> Self {
        Self::new(belief, self.seed, self.samples)
    }

    /// The luck of all simulated courses, at a wall of so many bays.
    pub(super) fn luck(&self, stages: &[Stage], bays: usize) -> Arc<Luck> {
        let mut kept = self.luck.borrow_mut();
        if let Some(luck) = kept.as_ref().filter(|luck| bays <= luck.bays()) {
            return Arc::clone(luck);
        }
        let bays = bays.max(BAYS).next_power_of_two();
        let luck = Luck::new(self.seed, self.samples, stages, &self.belief, bays);
        let luck = Arc::new(luck);
        *kept = Some(Arc::clone(&luck));
        luck
    }
}

impl Time {
    pub(super) fn new(
        course: &Course,
        tables: &Tables,
        pace: &PaceTable,
        chances: Rc<Chances>,
        suns: Rc<Suns>,
    ) -> Self {
        let asked = fixed::Asked {
            days: &course.days,
            running: &course.running,
            lessons: &tables.lessons,
            rests: &pace.rests,
            tidy: tidy_minutes(&tables.stages),
        };
        let mut timed = Timed::of(&asked);
        let present = presence(course, pace, LAYING);
        let shut = shut_hours(course, &present, &suns);
        let spans: Vec<Span> = shut.iter().map(|it| it.span).collect();
        timed.clear_of(&spans, &because(&shut, Reason::Nobody), &asked);
        let closed = [timed.closed(), spans].concat();
        let rated = rates(&rates::Asked {
            days: &course.days,
            running: &course.running,
            pace,
            weather: &tables.weather,
            present: &present,
            closed: &closed,
        });
        Self {
            calendar: Calendar::new(&course.days, &closed, &rated),
            timed,
            shut,
            chances,
            suns,
            day_one_ends: course.days.first().map_or(0.0, |day| finish(course, day)),
        }
    }

    pub(super) fn forecast(&self, programme: &Programme, stages: &[Stage]) -> Forecast {
        self.forecast_from(programme, &self.calendar, &self.chances, stages)
    }

    /// The forecast of what is left from a time on, by what is believed then.
    pub(super) fn forecast_from(
        &self,
        programme: &Programme,
        calendar: &Calendar,
        chances: &Chances,
        stages: &[Stage],
    ) -> Forecast {
        Forecast::of(&forecast::Asked {
            programme,
            calendar,
            luck: &chances.luck(stages, programme.bays),
            middling: &chances.middling,
            day_one_ends: self.day_one_ends,
            seed: chances.seed,
        })
    }

    /// The first of the simulated courses by number, in the order in which they will likely finish.
    pub(super) fn quickest_first(
        &self,
        programme: &Programme,
        stages: &[Stage],
        courses: usize,
    ) -> Vec<u32> {
        let luck = self.chances.luck(stages, programme.bays);
        forecast::quickest_first(programme, &luck, courses)
    }

    /// When each of some simulated courses finishes; infinite for one that does not.
    pub(super) fn ends(
        &self,
        programme: &Programme,
        stages: &[Stage],
        courses: &[u32],
    ) -> Vec<f64> {
        let luck = self.chances.luck(stages, programme.bays);
        forecast::ends(programme, &self.calendar, &luck, courses)
    }
}

impl Planner<'_> {
    pub(super) fn timetable(&self, programme: &Programme) -> Vec<Entry> {
        timetable(&timetable::Asked {
            days: &self.course.days,
            programme,
            calendar: &self.time.calendar,
            timed: &self.time.timed,
            shut: &self.time.shut,
            middling: &self.time.chances.middling,
            stages: &self.tables.stages,
            lessons: &self.tables.lessons,
        })
    }
}

/// When nothing is built: in the dark, unless lamps are lit, and with nobody there.
fn shut_hours(course: &Course, present: &[Vec<Presence>], suns: &Suns) -> Vec<Shut> {
    let suns = suns.of(course).into_iter();
    let lit = (!course.running.lamplight).then(|| suns.map(|day| day.light).collect::<Vec<_>>());
    shut(&shut::Asked {
        days: &course.days,
        light: lit.as_deref(),
        present,
    })
}

fn tidy_minutes(stages: &[Stage]) -> f64 {
    let minutes = stages.iter().map(|stage| match stage.work {
        Work::EachDay(minutes) => f64::from(minutes),
        _ => 0.0,
    });
    minutes.sum()
}

fn finish(course: &Course, day: &Day) -> f64 {
    minutes_to(&course.days, day.date, day.finish)
}
