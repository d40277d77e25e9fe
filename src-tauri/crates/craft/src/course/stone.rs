//! The stone of a course as the instructor knows it.

use crate::quantity::{Density, Length, Mass};
use crate::wall::Footing;
use chrono::NaiveDate;

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
    /// An old wall that is stripped out and used again.
    pub old_wall: Option<OldWall>,
    /// The pitch has been built and taken down before: its stone lies there, sorted.
    pub practice_pitch: bool,
    /// One delivery.
    pub load: Option<Mass>,
    /// No more than this can be had.
    pub most: Option<Mass>,
    /// Working days from order to delivery.
    pub lead_days: Option<u32>,
    /// Weekdays on which the quarry does not work.
    pub closed: Vec<NaiveDate>,
}

/// An old wall by its own measurements.
#[derive(Debug, Clone, PartialEq)]
pub struct OldWall {
    /// How much of it is stripped out.
    pub length: Length,
    /// Ground to the underside of the cope.
    pub height: Length,
    /// At the ground.
    pub base_width: Length,
    /// Under the cope.
    pub top_width: Length,
    /// 0 m if its cope is gone.
    pub cope_height: Length,
    /// Its footing, where that is dug out too.
    pub footing: Option<Footing>,
    /// Share of its stone that is used again; of the table if it is not said.
    pub reused: Option<f64>,
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
