//! The day as it really goes: what has been built, what that says of the rest, what would help.

use super::changes::Change;
use super::time::Chances;
use super::{Asked, Built, Planner};
use crate::Error;
use crate::pace::book::{Record, StageRecord};
use crate::pace::built::{Quick, SoFar, TooSoon};
use crate::pace::calendar::{Calendar, minutes_to};
use crate::pace::fixed::What;
use crate::pace::forecast::Forecast;
use crate::pace::programme::{Programme, Step};
use crate::pace::whole::Whole;
use crate::quantity::Length;

/// How it stands on the day.
#[derive(Debug, Clone, PartialEq)]
pub struct Today {
    /// The time of the last report, on the clock of the calendar.
    pub now: f64,
    /// The share of each stage that is done, bay by bay, in order of the programme.
    pub done: Vec<StageDone>,
    /// The share of the whole work that was done at the time of each report.
    pub told: Vec<(f64, f64)>,
    /// What the rest will take.
    pub forecast: Forecast,
    /// What would help, the most first.
    pub cures: Vec<Cure>,
    /// The stages the bays stand at, which say what makes them safe to leave; by their place in
    /// the table.
    pub stand_at: Vec<usize>,
    /// The stage that will probably be at work when the day ends.
    pub tonight: Option<usize>,
    /// When progress is asked for next: the next break, and its name.
    pub ask_at: Option<(f64, String)>,
    /// Reports of so much in so little time that they may be slips.
    pub quick: Vec<Quick>,
    /// What goes into the pace book when the course is over.
    pub record: Record,
}

/// How far one stage has come.
#[derive(Debug, Clone, PartialEq)]
pub struct StageDone {
    /// Its place in the table.
    pub stage: usize,
    /// Its share of the whole work.
    pub weight: f64,
    /// The share done, bay by bay.
    pub bays: Vec<f64>,
}

/// Something that would help.
#[derive(Debug, Clone, PartialEq)]
pub struct Cure {
    /// What.
    pub kind: CureKind,
    /// The chance of finishing with it.
    pub chance: f64,
    /// By how much that is better.
    pub gain: f64,
}

/// What would help on the day.
#[derive(Debug, Clone, PartialEq)]
pub enum CureKind {
    /// People go to the bay that is behind.
    MoveHelpers {
        /// That bay, counted from 0.
        bay: usize,
    },
    /// The wall ends at its throughs.
    StopAtThroughs,
    /// The last bays, whose footing is not in, are left out.
    Shorten {
        /// To this length.
        to: Length,
    },
    /// The course is changed.
    Change(Change),
}

impl Planner<'_> {
    /// How it stands; nothing before anything has been told.
    pub(super) fn today(
        &self,
        built: &Built,
        whole: &Programme,
        asked: Asked,
    ) -> Result<Option<Today>, Error> {
        if self.course.running.progress.is_empty() {
            return Ok(None);
        }
        let whole = self.whole(built, whole.clone());
        let walls = self.as_told(&whole)?;
        let chapters = self.chapters(&walls, &whole)?;
        let is_fixed = |step: &Step| self.tables.stages[step.stage].work.is_fixed();
        let calendar = &self.time.calendar;
        let (before, spread) = (&self.time.chances, &self.pace.spread);
        let believed = (&before.belief, spread);
        let so_far = SoFar::of(&chapters, &whole, &is_fixed, calendar, believed)
            .map_err(|it| self.too_soon(it))?;
        let looking = Looking {
            planner: self,
            built,
            chances: before.with(so_far.learned(&before.belief, spread)),
            rest: so_far.left(&whole.programme),
            whole: &whole,
            calendar: calendar.from(so_far.now),
            so_far,
        };
        let cures = match asked {
            Asked::Advice => looking.cures(),
            Asked::Figures => Vec::new(),
        };
        Ok(Some(looking.today(cures)))
    }

    fn too_soon(&self, it: TooSoon) -> Error {
        Error::TooSoon {
            at: it.report,
            stage: self.course.running.progress[it.report].stage.clone(),
            minutes: it.minutes,
            usual: it.usual,
        }
    }
}

/// The day being looked at.
pub(super) struct Looking<'a> {
    pub(super) planner: &'a Planner<'a>,
    pub(super) built: &'a Built,
    /// The wall as it is to be now.
    pub(super) whole: &'a Whole,
    pub(super) so_far: SoFar,
    pub(super) chances: Chances,
    /// What is left to do.
    pub(super) rest: Programme,
    /// The time that is left.
    pub(super) calendar: Calendar,
}

impl Looking<'_> {
    fn today(&self, cures: Vec<Cure>) -> Today {
        let stages = &self.planner.tables.stages;
        let time = &self.planner.time;
        let mut forecast = time.forecast_from(&self.rest, &self.calendar, &self.chances, stages);
        if self.rest.steps.is_empty() {
            forecast.chance = 1.0;
        }
        Today {
            now: self.so_far.now,
            done: self.done(),
            told: self.shares(),
            cures,
            stand_at: self.stand_at(),
            tonight: self.tonight(&forecast),
            ask_at: self.ask_at(),
            quick: self.so_far.quick.clone(),
            record: self.record(),
            forecast,
        }
    }

    fn done(&self) -> Vec<StageDone> {
        let minutes = |step: &Step| step.usual.iter().sum::<f64>();
        let all: f64 = self.steps().iter().map(minutes).sum();
        let steps = self.steps().iter().zip(&self.so_far.done);
        steps
            .map(|(step, done)| StageDone {
                stage: step.stage,
                weight: minutes(step) / all,
                bays: done.clone(),
            })
            .collect()
    }

    /// All there is to do, in order.
    pub(super) fn steps(&self) -> &[Step] {
        &self.whole.programme.steps
    }

    /// The share of the whole work done at each time something was told.
    fn shares(&self) -> Vec<(f64, f64)> {
        let whole: f64 = self.steps().iter().flat_map(|step| &step.usual).sum();
        let share = |done: &[Vec<f64>]| {
            let minutes = self.steps().iter().zip(done);
            let minutes = minutes.flat_map(|(step, done)| step.usual.iter().zip(done));
            minutes.map(|(usual, done)| usual * done).sum::<f64>() / whole
        };
        let history = self.so_far.history.iter();
        history.map(|(clock, done)| (*clock, share(done))).collect()
    }

    /// For each bay the last stage that was begun, each stage once.
    fn stand_at(&self) -> Vec<usize> {
        let mut at: Vec<usize> = (0..self.whole.programme.bays)
            .filter_map(|bay| {
                let begun = self.so_far.done.iter().rposition(|done| 0.0 < done[bay])?;
                Some(self.steps()[begun].stage)
            })
            .collect();
        at.sort_unstable();
        at.dedup();
        at
    }

    /// The first stage that is probably not done when the day of the last report ends.
    fn tonight(&self, forecast: &Forecast) -> Option<usize> {
        let days = &self.planner.course.days;
        let today = crate::pace::calendar::day_at(days, self.so_far.now);
        let ends = minutes_to(days, days[today].date, days[today].finish);
        let open = |times: &&crate::pace::forecast::StageTimes| {
            times.done[1].is_none_or(|done| ends < done)
        };
        forecast.by_stage.iter().find(open).map(|times| times.stage)
    }

    fn ask_at(&self) -> Option<(f64, String)> {
        let fixed = self.planner.time.timed.fixed.iter();
        let mut later = fixed.filter(|it| self.so_far.now < it.span.from);
        later.find_map(|it| match &it.what {
            What::Break { name, .. } => Some((it.span.from, name.clone())),
            What::Tidy => Some((it.span.from, "the end of the day".to_owned())),
            What::Lesson { .. } => None,
        })
    }

    /// What was built, stage by stage: minutes of a stretch are shared out by what was usual of
    /// each stage in it.
    fn record(&self) -> Record {
        let stages = self.planner.tables.stages.iter().enumerate();
        let rows = stages.map(|(number, stage)| {
            let stretches = self.so_far.stretches.iter();
            let worked = stretches.map(|it| (&it.worked, it.share * it.worked.weights[number]));
            let (usual, taken) = worked.fold((0.0, 0.0), |(usual, taken), (worked, own)| {
                (usual + worked.usual * own, taken + worked.minutes * own)
            });
            let tied = self.so_far.stretches.iter().rev();
            let mut tied = tied.filter(|it| 0.0 < it.worked.weights[number]);
            StageRecord {
                stage: stage.id.clone(),
                usual_minutes: usual,
                taken_minutes: taken,
                tied: tied.next().and_then(|it| it.worked.tied[number]),
            }
        });
        Record {
            course: self.planner.course.title.clone(),
            stages: rows.filter(|row| 0.0 < row.usual_minutes).collect(),
        }
    }
}
