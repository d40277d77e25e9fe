//! The data the sums are given: stone, bars, pace, stages, kit rules, lessons, cautions.
//!
//! The figures live in readable files with their sources; here is only their shape.

mod hazards;
mod heaps;
mod kit;
mod lifting;
mod ready;
mod setting_out;
mod stages;
mod weather;

pub use hazards::{Hazard, HazardTable};
pub use heaps::{ClearTable, HeapTable, Lie, Lying, RowTable, TipTable};
pub use kit::{Each, KitRule, Per, Way};
pub use lifting::{HowLifted, LiftingPlace, LiftingTable, PlaceHeight, StageLift};
pub use ready::{ComeByTimes, LoadingNote, LoadingTable, Part, ReadyTable, Task, When};
pub use setting_out::{BoardTable, FrameTable, RetainingTable, StringTable};
pub use stages::{Along, Before, Crew, Lesson, Stage, Work};
pub use weather::{
    ColdBand, HeatBand, HeatTable, IceTable, LightningTable, RainTable, WeatherTable, WindBand,
};

use crate::pace::Fatigue;
use crate::quantity::{Density, Length, LinearMassDensity};

/// All tables together.
#[derive(Debug, Clone, PartialEq)]
pub struct Tables {
    /// Rocks and the shares that go with them.
    pub stone: StoneTable,
    /// Steel bars.
    pub bars: Vec<Bar>,
    /// Boards, strings and the rest that frames are set out with.
    pub frames: FrameTable,
    /// What holds for walls that hold back a bank.
    pub retaining: RetainingTable,
    /// How fast people work, and how surely.
    pub pace: PaceTable,
    /// The stages in order of work.
    pub stages: Vec<Stage>,
    /// The tools a course needs.
    pub kit: Vec<KitRule>,
    /// How stone lies in heaps, and what is kept clear of it.
    pub heaps: HeapTable,
    /// How stone is lifted, and what moves what is too heavy.
    pub lifting: LiftingTable,
    /// What has to be arranged, and what vehicles are reckoned with.
    pub ready: ReadyTable,
    /// What the weather asks for, and what it slows.
    pub weather: WeatherTable,
    /// What is taught, and before which stage.
    pub lessons: Vec<Lesson>,
    /// What a responsible course warns of.
    pub cautions: Vec<Caution>,
    /// What can hurt someone, and what is done about it.
    pub hazards: HazardTable,
    /// Hazards and what is done about them, as worksheets ask for them.
    pub hazards_asked: Vec<HazardAsked>,
}

/// Rocks, and shares with their spread.
#[derive(Debug, Clone, PartialEq)]
pub struct StoneTable {
    /// The rocks.
    pub rocks: Vec<Rock>,
    /// Share of the built wall that is air.
    pub voids: Spread,
    /// Share of the body's solid stone that is hearting.
    pub hearting_share: Spread,
    /// Share of delivered stone not built in.
    pub waste: Spread,
    /// Share of the cope that is solid.
    pub cope_fill: Spread,
    /// Share of a stripped-out wall's stone that can be built in again.
    pub reused: Spread,
    /// Working days from order to delivery.
    pub lead_days: u32,
    /// Where the working days come from.
    pub lead_source: String,
}

/// A figure with the range that holds it four times in five.
#[derive(Debug, Clone, PartialEq)]
pub struct Spread {
    /// The middle.
    pub centre: f64,
    /// One in ten is below.
    pub low: f64,
    /// One in ten is above.
    pub high: f64,
    /// Who says so.
    pub source: String,
}

/// One rock.
#[derive(Debug, Clone, PartialEq)]
pub struct Rock {
    /// The word a course file uses.
    pub key: String,
    /// The name a person reads.
    pub name: String,
    /// The middle of its published range.
    pub density: Density,
    /// The range.
    pub low: Density,
    /// The range.
    pub high: Density,
    /// Who says so.
    pub source: String,
}

/// One size of steel bar.
#[derive(Debug, Clone, PartialEq)]
pub struct Bar {
    /// The word a course file uses.
    pub key: String,
    /// Its nominal diameter.
    pub diameter: Length,
    /// Its mass to the length.
    pub mass: LinearMassDensity,
    /// Who says so.
    pub source: String,
}

/// How fast people work, and how surely.
#[derive(Debug, Clone, PartialEq)]
pub struct PaceTable {
    /// Rates by stage.
    pub rates: Vec<Rate>,
    /// How much courses, stages and pairs differ: standard deviations of the log of pace.
    pub spread: PaceSpread,
    /// Room, ratios and the share of the clock with hands on stone.
    pub places: Places,
    /// How long people work without a break.
    pub rests: Rests,
    /// How people tire through the day.
    pub fatigue: Fatigue,
}

/// How long people work without a break, and the break they then get.
#[derive(Debug, Clone, PartialEq)]
pub struct Rests {
    /// What it is called.
    pub name: String,
    /// Minutes without a break that are not too long.
    pub longest: f64,
    /// Minutes more before a break is added.
    pub grace: f64,
    /// Minutes it lasts.
    pub minutes: f64,
    /// Who says so.
    pub source: String,
}

/// Person-hours hands-on for one unit of a stage's work.
#[derive(Debug, Clone, PartialEq)]
pub struct Rate {
    /// The stage's id.
    pub stage: String,
    /// Novice, improver, experienced.
    pub hours: [f64; 3],
    /// Who says so.
    pub source: String,
}

/// Standard deviations of the log of pace.
#[derive(Debug, Clone, PartialEq)]
pub struct PaceSpread {
    /// Between whole courses, whoever teaches them.
    pub course: f64,
    /// Between stages of one course, whoever teaches it.
    pub stage: f64,
    /// The part of `course` that stays the same from one course of an instructor to the next.
    pub instructor: f64,
    /// The part of `stage` that stays the same from one course of an instructor to the next.
    pub instructor_stage: f64,
    /// Between pairs of one course.
    pub pair: f64,
    /// How exactly progress is judged: standard deviation of the log of what was done.
    pub reading: f64,
    /// How exactly a time is noted, in minutes.
    pub clock_minutes: f64,
    /// Who says so.
    pub source: String,
}

/// Room at the wall, ratios, and the share of the clock with hands on stone.
#[derive(Debug, Clone, PartialEq)]
pub struct Places {
    /// Share of the clock with hands on stone.
    pub hands_on: f64,
    /// Clock hours of laying during which people learn.
    pub learning_hours: f64,
    /// How many times slower laying goes in those hours.
    pub learning_factor: f64,
    /// The least wall a facing pair can work at.
    pub facing_pair: Length,
    /// Between two diggers.
    pub diggers: Length,
    /// Wall to one coping crew of two.
    pub coping_crew: Length,
    /// Students to one instructor up to which nobody waits.
    pub students_per_instructor: f64,
    /// Students to one instructor above which a strong caution is due.
    pub too_many_students: f64,
    /// Students above which two walls teach better than one.
    pub one_wall: u32,
    /// Who says so.
    pub source: String,
}

/// Something a responsible course warns of.
#[derive(Debug, Clone, PartialEq)]
pub struct Caution {
    /// The word other tables use.
    pub id: String,
    /// What to do or not to do.
    pub text: String,
    /// When it matters.
    pub applies: Applies,
    /// Students are told.
    pub for_students: bool,
    /// Who says so.
    pub source: String,
}

/// A hazard and what is done about it, for a worksheet: no other row's control may fit it as well.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HazardAsked {
    /// What can happen.
    pub hazard: String,
    /// What is done about it.
    pub control: String,
    /// Who says so.
    pub source: String,
}

/// When a caution, a hazard, a kit rule or a lesson counts; [`crate::conditions::Conditions`] says
/// which do.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Applies {
    /// On every course.
    Always,
    /// Where bar frames stand.
    Bars,
    /// Where a trench is dug.
    Footing,
    /// Where a cope is set.
    Cope,
    /// Where throughs are set.
    Throughs,
    /// Where an end is built.
    Heads,
    /// Where the wall holds back a bank.
    Retaining,
    /// Where the line bends.
    Curves,
    /// Where the ground is not level.
    Slopes,
    /// Where timber frames stand.
    Timber,
    /// Where stone of an old wall is taken down or used again.
    OldWall,
    /// In the cold months of the place.
    Cold,
    /// In the hot months of the place.
    Hot,
    /// When the day's hours reach past daylight.
    Dark,
}

impl Applies {
    /// All of them.
    pub const ALL: [Self; 14] = [
        Self::Always,
        Self::Bars,
        Self::Footing,
        Self::Cope,
        Self::Throughs,
        Self::Heads,
        Self::Retaining,
        Self::Curves,
        Self::Slopes,
        Self::Timber,
        Self::OldWall,
        Self::Cold,
        Self::Hot,
        Self::Dark,
    ];

    /// The word the tables and the course file use.
    pub fn word(self) -> &'static str {
        match self {
            Self::Always => "always",
            Self::Bars => "bars",
            Self::Footing => "footing",
            Self::Cope => "cope",
            Self::Throughs => "throughs",
            Self::Heads => "heads",
            Self::Retaining => "retaining",
            Self::Curves => "curves",
            Self::Slopes => "slopes",
            Self::Timber => "timber",
            Self::OldWall => "old-wall",
            Self::Cold => "cold",
            Self::Hot => "hot",
            Self::Dark => "dark",
        }
    }
}
