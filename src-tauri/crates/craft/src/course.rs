//! A course as its instructor describes it: what is given, before anything is worked out.

mod around;
mod bank;
mod group;
mod running;
mod size;
mod stone;
mod weather;

pub use around::{MoneyGiven, PriceUnit, ReadyGiven, StonePrice, VehicleGiven};
pub use bank::BankGiven;
pub use group::{Absence, Experience, GloveSize, Group, Pairing, Student};
pub use running::{Effect, Report, Running, Wish};
pub use size::WallSize;
pub use stone::{OldWall, OnSite, StoneGiven, StoneKind};
pub use weather::{Spell, WeatherGiven};

use crate::Error;
use crate::kit::{Heat, Held, RuleChange};
use crate::pace::book::Record;
use crate::quantity::{Length, Units};
use crate::wall::{Batter, Footing, Section, Stretch, Survey, Top};
use crate::worksheet::WorksheetsGiven;
use chrono::{NaiveDate, NaiveTime};
use chrono_tz::Tz;

/// Everything the instructor has said about one course.
#[derive(Debug, Clone, PartialEq)]
pub struct Course {
    /// What the course is called.
    pub title: String,
    /// How quantities are shown.
    pub units: Units,
    /// Where it is held.
    pub venue: Venue,
    /// The course days in order, at least one.
    pub days: Vec<Day>,
    /// Who comes.
    pub group: Group,
    /// Who is away for part of the course.
    pub absences: Vec<Absence>,
    /// The wall asked for.
    pub wall: WallGiven,
    /// The stone it is built of.
    pub stone: StoneGiven,
    /// The frames it is set out with.
    pub frames: FramesGiven,
    /// The tools as the instructor has them.
    pub kit: KitGiven,
    /// What the tools travel in.
    pub vehicles: Vec<VehicleGiven>,
    /// What the course costs and takes, if anything of it is known.
    pub money: Option<MoneyGiven>,
    /// What has been seen to, if the instructor keeps the list.
    pub ready: Option<ReadyGiven>,
    /// Rates that replace the built-in pace table for this course.
    pub rates: Vec<GivenRate>,
    /// How the days are run.
    pub running: Running,
    /// What was recorded of the instructor's earlier courses.
    pub recorded: Vec<Record>,
    /// The chance of finishing that an `auto` length must keep.
    pub chance: f64,
    /// The seed of the simulated courses and of the worksheets.
    pub seed: u64,
    /// What is asked of the worksheets.
    pub worksheets: WorksheetsGiven,
}

/// The tools as the instructor has them.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct KitGiven {
    /// What is held of each tool; one not named has not been counted.
    pub held: Vec<Held>,
    /// How hot it will be; by the season if it is not said.
    pub heat: Option<Heat>,
    /// Rules added, changed or switched off for this course.
    pub changes: Vec<RuleChange>,
}

/// Where the course is held.
#[derive(Debug, Clone, PartialEq)]
pub struct Venue {
    /// The place's name.
    pub name: String,
    /// ISO 3166 country code, for the emergency number.
    pub country: Option<String>,
    /// Degrees north.
    pub latitude: f64,
    /// Degrees east.
    pub longitude: f64,
    /// The zone whose clock the course keeps.
    pub time_zone: Tz,
    /// The longest wall the site has room for.
    pub longest_wall: Option<Length>,
}

/// One course day on the local clock.
#[derive(Debug, Clone, PartialEq)]
pub struct Day {
    /// The date.
    pub date: NaiveDate,
    /// When students arrive.
    pub start: NaiveTime,
    /// When they leave.
    pub finish: NaiveTime,
    /// The breaks, in order.
    pub breaks: Vec<Break>,
    /// What the forecast says.
    pub weather: WeatherGiven,
}

/// A break with its place in the day.
#[derive(Debug, Clone, PartialEq)]
pub struct Break {
    /// `Lunch`, for one.
    pub name: String,
    /// When it begins.
    pub start: NaiveTime,
    /// How long it lasts.
    pub minutes: u32,
}

/// The wall asked for.
#[derive(Debug, Clone, PartialEq)]
pub struct WallGiven {
    /// What it is for.
    pub kind: WallKind,
    /// Ground to the underside of the cope.
    pub height: Length,
    /// Width under the cope.
    pub top_width: Length,
    /// The left face.
    pub left: Batter,
    /// The right face.
    pub right: Batter,
    /// Height of the cope; 0 m for none.
    pub cope_height: Length,
    /// Thickness of one cope along the wall.
    pub cope_thickness: Length,
    /// The length, if it is given.
    pub length: Option<Length>,
    /// The given line in order from station 0; empty for one straight.
    pub line: Vec<Stretch>,
    /// Surveyed ground in order of station; empty for level ground.
    pub ground: Vec<Survey>,
    /// How the top runs.
    pub top: Top,
    /// Heights of the through rows above the ground.
    pub through_rows: Vec<Length>,
    /// Between throughs along a row.
    pub through_spacing: Length,
    /// A through's width along the wall, thickness and projection from each face.
    pub through: ThroughSize,
    /// How far throughs reach.
    pub through_reach: ThroughReach,
    /// The trench, if one is dug.
    pub footing: Option<Footing>,
    /// The trench is open already, from a course before or dug beforehand.
    pub trench_dug: bool,
    /// How the wall ends at station 0 and at its far end.
    pub ends: [End; 2],
    /// The batter of a head at either end.
    pub head_batter: [Batter; 2],
}

/// What a wall is for.
#[derive(Debug, Clone, PartialEq)]
pub enum WallKind {
    /// Two faces in the open.
    Freestanding,
    /// One face in the open, the other against a bank.
    Retaining(BankGiven),
}

impl WallGiven {
    /// The section these measurements give.
    ///
    /// # Errors
    /// As [`Section::new`], and [`Error::ThroughRow`] for a row not between the ground and
    /// the top.
    pub fn section(&self) -> Result<Section, Error> {
        let section = Section::new(self.height, self.top_width, self.left, self.right)?;
        for &row in &self.through_rows {
            if row <= crate::quantity::metres(0.0) || self.height <= row {
                return Err(Error::ThroughRow {
                    row,
                    height: self.height,
                    units: None,
                });
            }
        }
        Ok(section)
    }
}

/// The size of one through; its length follows from the wall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ThroughSize {
    /// Along the wall.
    pub width: Length,
    /// Upwards.
    pub thickness: Length,
    /// Beyond each face.
    pub projection: Length,
}

/// How far throughs reach into the wall.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum ThroughReach {
    /// From face to face.
    #[default]
    Across,
    /// Three quarters of the width, from one face and the other in turn, where no stone is
    /// long enough.
    ThreeQuarters,
}

/// How a wall ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum End {
    /// A built end.
    Head,
    /// Built up against standing wall.
    Joined,
    /// Left stepped back, to be carried on.
    Raked,
}

/// What frames are made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FrameKind {
    /// Two steel bars joined by a board.
    Bar,
    /// Nailed of timber.
    Timber,
}

/// How close frames stand on a curve.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum CurveSpacing {
    /// No farther apart than this.
    AtMost(Length),
    /// So close that the string keeps within the tolerance.
    KeepsUnderTolerance,
}

/// Frames as the instructor has them.
#[derive(Debug, Clone, PartialEq)]
pub struct FramesGiven {
    /// What they are made of.
    pub kind: FrameKind,
    /// Frames owned, if they have been counted.
    pub in_stock: Option<u32>,
    /// Frames come in sets of so many.
    pub set_size: u32,
    /// Build in bays, so that the stock does not limit the length.
    pub leapfrog: bool,
    /// The farthest two frames may stand apart on a straight.
    pub spacing: Length,
    /// How close they stand on a curve.
    pub curve: CurveSpacing,
    /// How far a string may be off the outer face of a curve.
    pub tolerance: Length,
    /// The lengths lumber for timber frames is bought in; empty for those of the table.
    pub lumber_lengths: Vec<Length>,
    /// A key of the bar table.
    pub bar: String,
    /// The lengths bars are bought in.
    pub stock_lengths: Vec<Length>,
    /// In the ground, along the bar.
    pub embedment: Length,
    /// Above the board, along the bar.
    pub projection: Length,
}

/// A rate the instructor gives in place of the built-in one.
#[derive(Debug, Clone, PartialEq)]
pub struct GivenRate {
    /// The stage's id.
    pub stage: String,
    /// Person-hours hands-on by experience: novice, improver, experienced.
    pub hours: [f64; 3],
}
