//! The one door into the sums: a course and the tables go in, the whole plan comes out.

mod size;

use crate::Error;
use crate::cautions::{self, Shown};
use crate::course::{Course, GivenRate};
use crate::frames::Frames;
use crate::kit::{self, Counted, KitLine};
use crate::pace::SAMPLES;
use crate::pace::calendar::Calendar;
use crate::pace::crew::{self, Gang};
use crate::pace::draws::{Draws, Luck};
use crate::pace::forecast::Forecast;
use crate::pace::programme::Programme;
use crate::pace::sizing::Sizing;
use crate::pace::timetable::{Entry, Words, timetable};
use crate::pace::work::Amounts;
use crate::people::{Stint, stints};
use crate::quantity::{Length, Volume};
use crate::readiness::{ToDo, to_do};
use crate::stone::Stone;
use crate::sun::{SunDay, sun};
use crate::tables::{Before, PaceTable, Rate, Stage, Tables, Work};
use crate::wall::{Section, Volumes, raked_away};
use std::borrow::Cow;
use std::rc::Rc;

/// The stage whose rates set how long each pair's stint is.
const LAYING: &str = "first-lift";

/// Everything that follows from a course.
#[derive(Debug, Clone, PartialEq)]
pub struct Plan {
    /// The section of the wall.
    pub section: Section,
    /// Its length, what decided it and what had a say.
    pub sizing: Sizing,
    /// What that length holds.
    pub volumes: Volumes,
    /// What raked ends leave out of the body.
    pub raked_away: Volume,
    /// The setting-out.
    pub frames: Frames,
    /// The stone.
    pub stone: Stone,
    /// The tools.
    pub kit: Vec<KitLine>,
    /// Who builds where.
    pub stints: Vec<Stint>,
    /// Students to one instructor.
    pub students_per_instructor: f64,
    /// The amount of work of each stage and the clock hours it usually takes.
    pub work: Vec<StageWork>,
    /// The days.
    pub timetable: Vec<Entry>,
    /// The chance of finishing.
    pub forecast: Forecast,
    /// Daylight.
    pub sun: Vec<SunDay>,
    /// What to mind.
    pub cautions: Vec<Shown>,
    /// What is not ready.
    pub to_do: Vec<ToDo>,
}

/// A stage of this course.
#[derive(Debug, Clone, PartialEq)]
pub struct StageWork {
    /// The stage's place in the table.
    pub stage: usize,
    /// In the unit of its rate.
    pub amount: f64,
    /// Clock hours of the whole group at its usual pace.
    pub hours: f64,
}

/// The plan of a course.
///
/// # Errors
/// Any [`Error`]: what the course asks can't be built or is not in the tables.
pub fn plan(course: &Course, tables: &Tables) -> Result<Plan, Error> {
    Planner::new(course, tables)?.plan()
}

/// What does not depend on the length of the wall.
struct Planner<'a> {
    course: Cow<'a, Course>,
    tables: &'a Tables,
    pace: PaceTable,
    section: Section,
    calendar: Calendar,
    luck: Rc<Luck<'a>>,
}

/// What a certain length of wall takes.
struct Built {
    length: Length,
    volumes: Volumes,
    frames: Frames,
    stone: Stone,
}

impl<'a> Planner<'a> {
    fn new(course: &'a Course, tables: &'a Tables) -> Result<Self, Error> {
        if course.group.students.is_empty() {
            return Err(Error::NoStudents);
        }
        known_tools(course, tables)?;
        sound(tables)?;
        let pace = with_given_rates(&tables.pace, &course.rates, &tables.stages)?;
        Ok(Self {
            section: course.wall.section()?,
            calendar: Calendar::new(&course.days, &tables.lessons, pace.places.tidy_minutes),
            luck: Rc::new(Luck::new(
                course.seed,
                SAMPLES,
                &tables.stages,
                pace.spread.clone(),
            )),
            course: Cow::Borrowed(course),
            tables,
            pace,
        })
    }

    fn plan(&self) -> Result<Plan, Error> {
        let sizing = self.size()?;
        let built = self.build(sizing.length)?;
        let programme = self.programme(&built);
        let draws = self.draws(&built);
        let forecast = Forecast::of(&programme, &self.calendar, &draws, self.course.seed);
        let sun: Vec<SunDay> = self
            .course
            .days
            .iter()
            .map(|day| sun(&self.course.venue, day.date))
            .collect();
        let kit = self.kit(&built);
        let gang = self.gang(&built);
        let ratio = gang.students_per_instructor();
        let lower = self.lower_wall(&sizing);
        let mut cautions =
            cautions::of_this_plan(&self.course, self.tables, &sizing, gang.room, ratio, lower);
        cautions.extend(cautions::general(
            &self.course,
            self.tables,
            &built.stone,
            &sun,
        ));
        Ok(Plan {
            to_do: to_do(
                &self.course,
                &built.stone,
                &built.frames,
                &kit,
                &forecast,
                &self.tables.stone,
            ),
            timetable: self.timetable(&programme, &draws),
            work: self.work(&built),
            stints: stints(&self.course.group, built.length, &self.pace, LAYING),
            raked_away: self.raked_away(),
            section: self.section,
            sizing,
            volumes: built.volumes,
            frames: built.frames,
            stone: built.stone,
            kit,
            students_per_instructor: ratio,
            forecast,
            sun,
            cautions,
        })
    }

    fn build(&self, length: Length) -> Result<Built, Error> {
        let wall = &self.course.wall;
        let volumes = Volumes::of(&self.section, length, wall.footing, wall.cope_height);
        let frames = Frames::set_out(
            wall,
            &self.section,
            length,
            &self.course.frames,
            &self.tables.bars,
        )?;
        let stone = Stone::of(
            wall,
            &self.section,
            length,
            &volumes,
            &self.course.stone,
            &self.tables.stone,
        )?;
        Ok(Built {
            length,
            volumes,
            frames,
            stone,
        })
    }

    fn gang(&self, built: &Built) -> Gang<'_> {
        let frames = &self.course.frames;
        let in_use = frames.in_stock.filter(|_| frames.leapfrog);
        Gang {
            group: &self.course.group,
            pace: &self.pace,
            room: crew::room(built.length, built.frames.rows.len(), in_use),
        }
    }

    fn amounts<'b>(&'b self, built: &'b Built) -> Amounts<'b> {
        Amounts {
            wall: &self.course.wall,
            section: &self.section,
            length: built.length,
            volumes: &built.volumes,
            frames: &built.frames,
            stone: &built.stone,
        }
    }

    /// The luck of the pairs that have a place at this wall.
    fn draws(&self, built: &Built) -> Rc<Draws> {
        self.luck.of(self.gang(built).pairs_at_work())
    }

    fn programme(&self, built: &Built) -> Programme {
        Programme::new(
            &self.tables.stages,
            &self.tables.lessons,
            &self.pace,
            &self.amounts(built),
            &self.gang(built),
        )
    }

    fn work(&self, built: &Built) -> Vec<StageWork> {
        let (amounts, gang) = (self.amounts(built), self.gang(built));
        self.tables
            .stages
            .iter()
            .enumerate()
            .map(|(stage, row)| {
                let amount = amounts.of(row);
                StageWork {
                    stage,
                    amount,
                    hours: gang.clock_hours(row, amount),
                }
            })
            .filter(|work| 0.0 < work.hours)
            .collect()
    }

    fn timetable(&self, programme: &Programme, draws: &Draws) -> Vec<Entry> {
        let words = Words {
            stages: &self.tables.stages,
            lessons: &self.tables.lessons,
        };
        let slowness = draws.medians();
        timetable(
            &self.course.days,
            programme,
            &self.calendar,
            &slowness,
            words,
        )
    }

    fn kit(&self, built: &Built) -> Vec<KitLine> {
        let frames = &self.course.frames;
        let counted = Counted {
            group: &self.course.group,
            frames: &built.frames,
            frames_standing: kit::frames_standing(&built.frames, frames.leapfrog, frames.in_stock),
            length: built.length,
        };
        kit::kit(&self.tables.kit, &counted, &self.course.kit_on_hand)
    }

    fn raked_away(&self) -> Volume {
        let raked = self
            .course
            .wall
            .ends
            .iter()
            .filter(|end| **end == crate::course::End::Raked)
            .count();
        raked_away(&self.section) * raked as f64
    }
}

fn with_given_rates(
    table: &PaceTable,
    given: &[GivenRate],
    stages: &[Stage],
) -> Result<PaceTable, Error> {
    let mut table = table.clone();
    for rate in given {
        if !stages.iter().any(|stage| stage.id == rate.stage) {
            return Err(Error::UnknownStage {
                given: rate.stage.clone(),
                known: stages.iter().map(|stage| stage.id.clone()).collect(),
            });
        }
        table.rates.retain(|row| row.stage != rate.stage);
        table.rates.push(Rate {
            stage: rate.stage.clone(),
            hours: rate.hours,
            source: "given in the course file".to_owned(),
        });
    }
    Ok(table)
}

/// Every tool counted must be one that a rule names, or it would count for nothing.
fn known_tools(course: &Course, tables: &Tables) -> Result<(), Error> {
    let known = |item: &str| {
        tables
            .kit
            .iter()
            .any(|rule| rule.item.eq_ignore_ascii_case(item))
    };
    match course.kit_on_hand.iter().find(|(item, _)| !known(item)) {
        None => Ok(()),
        Some((item, _)) => Err(Error::UnknownTool {
            given: item.clone(),
            known: tables.kit.iter().map(|rule| rule.item.clone()).collect(),
        }),
    }
}

/// Tables are edited by hand: each stage that is work needs a rate, and each lesson a stage.
fn sound(tables: &Tables) -> Result<(), Error> {
    let has_rate = |stage: &Stage| {
        matches!(stage.work, Work::Minutes(_))
            || tables.pace.rates.iter().any(|rate| rate.stage == stage.id)
    };
    if let Some(stage) = tables.stages.iter().find(|stage| !has_rate(stage)) {
        return Err(Error::Table {
            table: "tables/pace.toml",
            missing: stage.id.clone(),
        });
    }
    let homeless = tables
        .lessons
        .iter()
        .find_map(|lesson| match &lesson.before {
            Before::Stage(id) if !tables.stages.iter().any(|stage| stage.id == *id) => Some(id),
            _ => None,
        });
    match homeless {
        Some(id) => Err(Error::Table {
            table: "tables/stages.toml",
            missing: id.clone(),
        }),
        None => Ok(()),
    }
}
