//! What goes with a course besides its wall: vehicles, money, and what has been seen to.

use crate::quantity::{Mass, SHORT_TON_KG, kilograms, tonnes};

/// A vehicle that brings the tools, with the limits its papers give.
#[derive(Debug, Clone, PartialEq)]
pub struct VehicleGiven {
    /// What it is called; unique among the vehicles.
    pub name: String,
    /// What it may carry, people included.
    pub payload: Mass,
    /// What its trailer may carry, if it pulls one.
    pub trailer: Option<Mass>,
    /// People who travel in it.
    pub people: u32,
}

/// What the course costs and takes: nothing of it is rounded, nothing is below nothing.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct MoneyGiven {
    /// The three letters of ISO 4217, if they are given.
    pub currency: Option<String>,
    /// Stone, by mass.
    pub stone: Option<StonePrice>,
    /// One delivery of stone.
    pub delivery: Option<f64>,
    /// Tools and machines hired.
    pub hire: Option<f64>,
    /// What one student uses up.
    pub consumables: Option<f64>,
    /// One instructor for a day.
    pub instructor: Option<f64>,
    /// One assistant for a day.
    pub assistant: Option<f64>,
    /// The venue for the course.
    pub venue: Option<f64>,
    /// All travel.
    pub travel: Option<f64>,
    /// Anything else.
    pub other: Option<f64>,
    /// What one student pays.
    pub fee: Option<f64>,
}

/// What stone costs by mass.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StonePrice {
    /// For one of the unit.
    pub amount: f64,
    /// The unit it is sold by.
    pub unit: PriceUnit,
}

/// A unit that stone is sold by.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[allow(missing_docs)]
pub enum PriceUnit {
    Tonne,
    ShortTon,
    Kilogram,
    Pound,
}

impl PriceUnit {
    /// All units.
    pub const ALL: [Self; 4] = [Self::Tonne, Self::ShortTon, Self::Kilogram, Self::Pound];

    /// As it is written behind the stroke of a price.
    pub fn word(self) -> &'static str {
        match self {
            Self::Tonne => "t",
            Self::ShortTon => "short ton",
            Self::Kilogram => "kg",
            Self::Pound => "lb",
        }
    }

    /// How much one of it is.
    pub fn mass(self) -> Mass {
        match self {
            Self::Tonne => tonnes(1.0),
            Self::ShortTon => kilograms(SHORT_TON_KG),
            Self::Kilogram => kilograms(1.0),
            Self::Pound => kilograms(crate::quantity::POUND_KG),
        }
    }
}

/// What has been seen to, as the instructor ticks it off.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ReadyGiven {
    /// The ids of what is done, as they stand in the list.
    pub done: Vec<String>,
}
