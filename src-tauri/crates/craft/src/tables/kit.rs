//! The rules of the tool list: what a course carries, counted by what.

use super::Applies;
use crate::kit::Heat;
use crate::quantity::Mass;

/// A tool, and how many of it a course needs.
#[derive(Debug, Clone, PartialEq)]
pub struct KitRule {
    /// The tool.
    pub item: String,
    /// The rule is switched off and counts for nothing.
    pub off: bool,
    /// What it is counted in; empty for pieces.
    pub unit: String,
    /// Per what.
    pub per: Per,
    /// So many to each.
    pub each: Each,
    /// Share carried beyond the need.
    pub spare: f64,
    /// The smallest number worth carrying; of each size, where it comes in sizes.
    pub least: u32,
    /// Only on courses of which this holds.
    pub applies: Applies,
    /// Only where at least so many people are there, staff included.
    pub from_people: Option<u32>,
    /// Only where at most so many people are there, staff included.
    pub to_people: Option<u32>,
    /// One line for each size of glove that students wear. Counts only where the rule is per
    /// student or per person: nobody else has a size.
    pub by_size: bool,
    /// A part of every frame, so that the store's count of it says how many frames there are.
    pub limits_frames: bool,
    /// Without it the work must not begin.
    pub safety_critical: bool,
    /// Used up by the course.
    pub consumable: bool,
    /// Mass of one.
    pub mass: Mass,
    /// Where it is used.
    pub place: String,
    /// A stage's id, or `all`.
    pub needed_for: String,
    /// How to come by what is short.
    pub way: Way,
    /// What to do to it before a course; empty for nothing.
    pub prepare: String,
    /// Why it is needed.
    pub why: String,
    /// Who says so.
    pub source: String,
}

impl KitRule {
    /// Whether each size of it is a line of its own.
    pub fn comes_in_sizes(&self) -> bool {
        self.by_size && matches!(self.per, Per::Student | Per::Person)
    }
}

/// How many to each of what a rule counts by.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Each {
    /// The same in all weathers.
    Same(f64),
    /// By heat: mild, warm, hot.
    ByHeat([f64; 3]),
}

impl Each {
    /// How many in this heat.
    pub fn at(self, heat: Heat) -> f64 {
        match (self, heat) {
            (Self::Same(each), _) | (Self::ByHeat([each, _, _]), Heat::Mild) => each,
            (Self::ByHeat([_, each, _]), Heat::Warm) => each,
            (Self::ByHeat([_, _, each]), Heat::Hot) => each,
        }
    }
}

/// How to come by a tool that is short.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Way {
    /// From a neighbour, another instructor or the venue.
    Borrow,
    /// From a yard that lets tools out.
    Hire,
    /// From a shop: cheap, worn or used up.
    Buy,
}

impl Way {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Borrow, Self::Hire, Self::Buy];

    /// The word the tables and the course file use.
    pub fn word(self) -> &'static str {
        match self {
            Self::Borrow => "borrow",
            Self::Hire => "hire",
            Self::Buy => "buy",
        }
    }
}

/// What a tool is counted by.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Per {
    /// Each student.
    Student,
    /// Each pair.
    Pair,
    /// Each stretch of wall that a pair works at; as many as find room there at a time.
    Stint,
    /// Each frame standing.
    Frame,
    /// Each instructor and assistant.
    Instructor,
    /// Everybody there.
    Person,
    /// Every so many people there, or part of so many; at least 1.
    People {
        /// How many share it.
        every: u32,
    },
    /// Everybody there, for each hour of the longest day, its breaks included.
    PersonHour,
    /// Each course day.
    Day,
    /// The group as a whole.
    Group,
    /// Each metre of wall.
    Metre,
}

impl Per {
    /// All of them; how many people share a thing is said apart.
    pub const ALL: [Self; 11] = [
        Self::Student,
        Self::Pair,
        Self::Stint,
        Self::Frame,
        Self::Instructor,
        Self::Person,
        Self::People { every: 1 },
        Self::PersonHour,
        Self::Day,
        Self::Group,
        Self::Metre,
    ];

    /// The word the tables and the course file use.
    pub fn word(self) -> &'static str {
        match self {
            Self::Student => "student",
            Self::Pair => "pair",
            Self::Stint => "stint",
            Self::Frame => "frame",
            Self::Instructor => "instructor",
            Self::Person => "person",
            Self::People { .. } => "people",
            Self::PersonHour => "person hour",
            Self::Day => "day",
            Self::Group => "group",
            Self::Metre => "metre",
        }
    }
}
