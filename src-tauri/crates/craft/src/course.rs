//! A course as its instructor describes it: what is given, before anything is worked out.

use crate::Error;
use crate::quantity::{Density, Length, Mass, Units};
use crate::wall::{Batter, Footing, Section, Side, Stretch, Survey, Top};
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
    /// The wall asked for.
    pub wall: WallGiven,
    /// The stone it is built of.
    pub stone: StoneGiven,
    /// The frames it is set out with.
    pub frames: FramesGiven,
    /// Tools counted by item; an item not named has not been counted.
    pub kit_on_hand: Vec<(String, u32)>,
    /// Rates that replace the built-in pace table for this course.
    pub rates: Vec<GivenRate>,
    /// The chance of finishing that an `auto` length must keep.
    pub chance: f64,
    /// The seed of the simulated courses and of the worksheets.
    pub seed: u64,
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

/// Who comes: staff as counts, students one by one.
#[derive(Debug, Clone, PartialEq)]
pub struct Group {
    /// People who teach.
    pub instructors: u32,
    /// People who help to teach.
    pub assistants: u32,
    /// The students; names are unique.
    pub students: Vec<Student>,
}

/// One student.
#[derive(Debug, Clone, PartialEq)]
pub struct Student {
    /// Unique in the group.
    pub name: String,
    /// How much wall they have built before.
    pub experience: Experience,
}

/// How much someone has built before.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Experience {
    /// Never built before.
    Novice,
    /// A course or two behind them.
    Improver,
    /// An experienced amateur.
    Experienced,
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
    /// The trench, if one is dug.
    pub footing: Option<Footing>,
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

/// The bank behind a retaining wall; what is not said comes from the table.
#[derive(Debug, Clone, PartialEq)]
pub struct BankGiven {
    /// The side it lies on.
    pub side: Side,
    /// Thickness of the drainage stone behind the wall.
    pub drainage: Option<Length>,
    /// How high it leans against the wall; up to the top if it is not said.
    pub height: Option<Length>,
    /// What it is made of, as it lies.
    pub fill: Option<Density>,
    /// The friction angle within it, in degrees.
    pub friction_degrees: Option<f64>,
    /// The friction angle between it and the back of the wall, in degrees.
    pub wall_friction_degrees: Option<f64>,
    /// The friction angle under the wall, in degrees.
    pub base_friction_degrees: Option<f64>,
    /// How steeply the ground above rises from the wall, in degrees.
    pub slope_degrees: Option<f64>,
    /// What stands, drives or is stored above, in kN/m2.
    pub load_kpa: Option<f64>,
    /// It stands near a boundary.
    pub near_boundary: bool,
    /// It stands near a building.
    pub near_building: bool,
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

/// The stone as the instructor knows it; what is not said comes from the tables.
#[derive(Debug, Clone, PartialEq)]
pub struct StoneGiven {
    /// A key of the stone table.
    pub kind: Option<String>,
    /// The density of the solid stone.
    pub density: Option<Density>,
    /// Share of the built wall that is air.
    pub voids: Option<f64>,
    /// Share of the body's solid stone, throughs taken off, that is hearting.
    pub hearting_share: Option<f64>,
    /// Share of delivered stone left over or unusable.
    pub waste: Option<f64>,
    /// What lies there already.
    pub on_site: OnSite,
    /// One delivery.
    pub load: Option<Mass>,
    /// No more than this can be had.
    pub most: Option<Mass>,
    /// Working days from order to delivery.
    pub lead_days: Option<u32>,
}

/// Stone that lies at the site before the course.
#[derive(Debug, Clone, PartialEq)]
pub enum OnSite {
    /// An unsorted heap.
    Heap(Mass),
    /// Sorted stone by kind.
    ByKind(Vec<(StoneKind, Mass)>),
}

/// What a stone in the wall is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StoneKind {
    /// Below the ground.
    Footing,
    /// The two faces.
    Face,
    /// The filling between them.
    Hearting,
    /// Stones that cross the wall.
    Throughs,
    /// The row on top.
    Copes,
}

impl StoneKind {
    /// All kinds in the order they are laid.
    pub const ALL: [Self; 5] = [
        Self::Footing,
        Self::Face,
        Self::Hearting,
        Self::Throughs,
        Self::Copes,
    ];

    /// The trade's word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Footing => "footing",
            Self::Face => "face",
            Self::Hearting => "hearting",
            Self::Throughs => "throughs",
            Self::Copes => "copes",
        }
    }
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
