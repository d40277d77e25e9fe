//! The one door into the sums: a course and the tables go in, the whole plan comes out.

mod advice;
mod as_told;
mod built;
mod changes;
mod cures;
mod days;
mod frames;
mod given;
mod hazards;
mod heaps;
mod kit;
mod lessons;
mod lifting;
mod memory;
mod ready;
#[cfg(test)]
pub(crate) mod sample;
mod search;
mod size;
mod time;
mod today;
mod wishes;

pub use advice::{Advice, Lift, TwoWalls};
pub use changes::Change;
pub use days::Days;
pub use memory::Memory;
pub use today::{Cure, CureKind, Today};

use crate::Error;
use crate::cautions::{self, Shown};
use crate::conditions::Conditions;
use crate::course::{Course, WallKind};
use crate::deliveries::{Delivery, deliveries};
use crate::frames::{Fittings, Frames, Leapfrog};
use crate::hazards::Shown as Hazard;
use crate::heaps::Heaps;
use crate::kit::KitLine;
use crate::lifting::Guide;
use crate::loads::Loads;
use crate::money::Money;
use crate::pace::SAMPLES;
use crate::pace::book::{Book, BookRate};
use crate::pace::crew::AtOnce;
use crate::pace::forecast::Forecast;
use crate::pace::sizing::Sizing;
use crate::pace::timetable::Entry;
use crate::people::{Stint, stints};
use crate::readiness::{Planned, ToDo};
use crate::retaining::Retaining;
use crate::stone::Stone;
use crate::sun::{SunDay, Suns};
use crate::tables::{KitRule, PaceTable, Tables};
use crate::timber::TimberPlan;
use crate::wall::{Ground, Section, Volumes, Wall, WallEnd};
use built::Built;
use size::Sized;
use std::borrow::Cow;
use std::rc::Rc;
use time::{Chances, Time};

/// The stage whose rates set how long each pair's stint is.
const LAYING: &str = "first-lift";

/// Everything that follows from a course.
#[derive(Debug, Clone, PartialEq)]
pub struct Plan {
    /// The section of the wall at station 0.
    pub section: Section,
    /// The wall as it stands on its ground along its line.
    pub wall: Wall,
    /// Its length, what decided it and what had a say.
    pub sizing: Sizing,
    /// What that length holds.
    pub volumes: Volumes,
    /// Its ends; a ring has none.
    pub ends: Vec<WallEnd>,
    /// The setting-out.
    pub frames: Frames,
    /// What goes with the frames.
    pub fittings: Fittings,
    /// The timber frames and the lumber for them, where they are of timber.
    pub timber: Option<TimberPlan>,
    /// What building in bays does, where frames are moved along.
    pub leapfrog: Option<Leapfrog>,
    /// The bank behind it, if it holds one back.
    pub retaining: Option<Retaining>,
    /// The stone.
    pub stone: Stone,
    /// Where it lies before it is built in.
    pub heaps: Heaps,
    /// Which of its stones one person may lift, and what moves the others.
    pub lifting: Guide,
    /// What of it is ordered, and by when.
    pub deliveries: Vec<Delivery>,
    /// The tools.
    pub kit: Vec<KitLine>,
    /// What travels in which vehicle, where vehicles are given.
    pub loads: Option<Loads>,
    /// What it costs and takes, where prices are given.
    pub money: Option<Money>,
    /// Who builds where.
    pub stints: Vec<Stint>,
    /// Students to one instructor.
    pub students_per_instructor: f64,
    /// The amount of work of each stage and the clock hours it usually takes.
    pub work: Vec<StageWork>,
    /// The days.
    pub timetable: Vec<Entry>,
    /// The lessons it teaches, by their places in their table, reached in its days or not.
    pub taught: Vec<usize>,
    /// The chance of finishing.
    pub forecast: Forecast,
    /// Weather, people and fixed times, day by day.
    pub days: Days,
    /// What could be done otherwise.
    pub advice: Advice,
    /// The pace table before and after what was recorded of earlier courses; nothing without.
    pub book: Vec<BookRate>,
    /// How it stands on the day, once something has been built.
    pub today: Option<Today>,
    /// Daylight.
    pub sun: Vec<SunDay>,
    /// What to mind.
    pub cautions: Vec<Shown>,
    /// What can hurt someone, the highest remaining risk first.
    pub hazards: Vec<Hazard>,
    /// What there is to see to, by date.
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
    /// Who is at it at once.
    pub at_once: AtOnce,
}

/// The plan of a course.
///
/// # Errors
/// Any [`Error`]: what the course asks can't be built or is not in the tables.
pub fn plan(course: &Course, tables: &Tables) -> Result<Plan, Error> {
    again(course, tables, Asked::Advice, &mut Memory::default())
}

/// The plan of a course that is being changed, with what the plan before it has reckoned already.
///
/// # Errors
/// As [`plan`].
pub fn again(
    course: &Course,
    tables: &Tables,
    asked: Asked,
    memory: &mut Memory,
) -> Result<Plan, Error> {
    // On one of the workers that the simulated courses are shared among: a plan hands work to them
    // some fifty times, and a thread outside them waits for its turn at the processor each time.
    rayon::scope(|_| {
        let planner = Planner::new(course, tables, memory)?;
        let plan = planner.plan(asked)?;
        memory.keep(&planner);
        Ok(plan)
    })
}

/// How much is asked of a plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Asked {
    /// What the course comes to, for someone who is still typing: [`Plan::advice`] and the cures
    /// of the day are left out, which take longer than all the rest.
    Figures,
    /// And what could be done otherwise.
    Advice,
}

/// What does not depend on the length of the wall.
struct Planner<'a> {
    course: Cow<'a, Course>,
    tables: &'a Tables,
    /// The kit rules as they hold for this course.
    rules: Vec<KitRule>,
    pace: PaceTable,
    section: Section,
    ground: Ground,
    book: Rc<Book>,
    time: Rc<Time>,
}

impl<'a> Planner<'a> {
    fn new(course: &'a Course, tables: &'a Tables, memory: &Memory) -> Result<Self, Error> {
        if course.group.students.is_empty() {
            return Err(Error::NoStudents);
        }
        let rules = given::kit_rules(course, tables)?;
        given::sound(tables)?;
        given::running(course, tables)?;
        let suns = Rc::new(Suns::known_of(memory.suns(&course.venue)));
        let course =
            lessons::with_the_taught(given::with_frames_free(course, &rules), tables, &suns);
        let pace = given::with_rates(&tables.pace, &course.rates, &tables.stages)?;
        let book = Book::of(&course.recorded, &tables.stages, &pace.spread)?;
        let belief = book.belief();
        let drawn = memory.luck(course.seed, &belief, &tables.stages);
        let chances = Rc::new(Chances::new(belief, course.seed, SAMPLES).drawn_before(drawn));
        Ok(Self {
            section: course.wall.section()?,
            ground: Ground::new(course.wall.ground.clone()),
            time: Rc::new(Time::new(&course, tables, &pace, chances, suns)),
            course,
            rules,
            tables,
            book: Rc::new(book),
            pace,
        })
    }

    /// The same with another course that has this time.
    fn on_the_same_days(&self, course: Course, time: Rc<Time>) -> Result<Planner<'_>, Error> {
        Ok(Planner {
            section: course.wall.section()?,
            ground: self.ground.clone(),
            time,
            course: Cow::Owned(course),
            tables: self.tables,
            rules: self.rules.clone(),
            book: Rc::clone(&self.book),
            pace: self.pace.clone(),
        })
    }

    fn plan(&self, asked: Asked) -> Result<Plan, Error> {
        let sized = self.sized()?;
        let days = self.days(&sized.built, &sized.programme);
        let timetable = self.timetable(&sized.programme);
        let of_the_days = self.day_cautions(&sized, &days, &timetable);
        let Sized {
            sizing,
            built,
            programme,
            forecast,
        } = sized;
        let sun = self.time.suns.of(&self.course);
        let conditions = Conditions::of(&self.course, &sun);
        let kit = self.kit(&built, &conditions);
        let gang = self.gang(&built);
        let (ratio, room) = (gang.students_per_instructor(), gang.room);
        let lower = self.lower_wall(&sizing);
        let retaining = self.retaining(&built)?;
        let timber = self.timber(&built)?;
        let mut cautions =
            cautions::of_this_plan(&self.course, self.tables, &sizing, room, ratio, lower);
        let fittings = Fittings::of(
            &self.course.wall,
            &built.wall,
            &built.frames,
            &self.course.frames,
            &self.tables.frames,
        );
        let lie = cautions::Lie {
            wall: &built.wall,
            frames: &built.frames,
            fittings: &fittings,
            retaining: retaining.as_ref(),
        };
        cautions.extend(cautions::of_the_wall(&self.course, self.tables, lie));
        cautions.extend(cautions::of_the_stone(&self.course, &built.stone));
        cautions.extend(of_the_days);
        cautions.extend(cautions::general(self.tables, &conditions));
        let (loads, money) = (self.loads(&kit)?, self.money(&built.stone));
        let stints = stints(&self.course.group, built.length, &self.pace, LAYING);
        let heaps = self.heaps(&built, &stints, retaining.as_ref());
        let table = &self.tables.stone;
        let deliveries = deliveries(&self.course, &built.stone, retaining.as_ref(), table);
        let lifting = self.lifting(&built.stone);
        let hazards = self.hazards(&built, &conditions, &lifting, ratio);
        let today = self.today(&built, &programme, asked)?;
        let to_do = self.to_do(Planned {
            stone: &built.stone,
            deliveries: &deliveries,
            retaining: retaining.as_ref(),
            frames: &built.frames,
            timber: timber.as_ref(),
            kit: &kit,
            loads: loads.as_ref(),
            money: money.as_ref(),
            forecast: &forecast,
            from_here: today.as_ref().map(|today| &today.forecast),
            timetable: &timetable,
            wishes: &days.timed.unmet,
            pairs: &days.unmet,
            lessons: &self.tables.lessons,
            conditions: &conditions,
            ready: &self.tables.ready,
        })?;
        Ok(Plan {
            days,
            advice: match asked {
                Asked::Advice => self.advice(&sizing, room, forecast.chance),
                Asked::Figures => Advice::default(),
            },
            today,
            book: self.book_rates(),
            to_do,
            loads,
            money,
            timetable,
            taught: self.taught(&programme),
            work: self.work(&built),
            stints,
            ends: self.ends(&built.wall),
            fittings,
            leapfrog: self.leapfrog(&built),
            timber,
            retaining,
            section: self.section,
            wall: built.wall,
            sizing,
            volumes: built.volumes,
            frames: built.frames,
            heaps,
            lifting,
            stone: built.stone,
            deliveries,
            kit,
            students_per_instructor: ratio,
            forecast,
            sun,
            cautions,
            hazards,
        })
    }

    fn book_rates(&self) -> Vec<BookRate> {
        if self.course.recorded.is_empty() {
            return Vec::new();
        }
        self.book.rates(&self.pace)
    }

    fn ends(&self, wall: &Wall) -> Vec<WallEnd> {
        let given = &self.course.wall;
        WallEnd::both(
            wall,
            given.ends,
            given.head_batter,
            self.tables.frames.end_course,
        )
    }

    fn retaining(&self, built: &Built) -> Result<Option<Retaining>, Error> {
        let WallKind::Retaining(bank) = &self.course.wall.kind else {
            return Ok(None);
        };
        let density = built.stone.density * (1.0 - built.stone.voids);
        let (asked, table) = (&self.course.wall, &self.tables.retaining);
        Retaining::of(bank, asked, &built.wall, density, table)
            .map(Some)
            .map_err(|error| error.shown_in(self.course.units))
    }
}
