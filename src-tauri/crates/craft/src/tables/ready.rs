//! What has to be arranged and by when, how long it takes to come by tools, what vehicles
//! are reckoned with.

use super::Applies;
use crate::quantity::Mass;

/// All that readiness and loading are given.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ReadyTable {
    /// What has to be arranged, in order.
    pub tasks: Vec<Task>,
    /// How long before the course what is short is seen to.
    pub times: ComeByTimes,
    /// What vehicles are reckoned with.
    pub loading: LoadingTable,
}

/// One thing to arrange.
#[derive(Debug, Clone, PartialEq)]
pub struct Task {
    /// The word a course file uses to mark it done.
    pub id: String,
    /// What to do, and why in a few words.
    pub text: String,
    /// By when.
    pub when: When,
    /// Where it belongs.
    pub part: Part,
    /// On which courses it matters.
    pub applies: Applies,
    /// Who says so.
    pub source: String,
}

/// By when something has to be seen to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum When {
    /// So many calendar days before the first course day.
    DaysBefore(u32),
    /// So many working days before the first course day.
    WorkingDaysBefore(u32),
    /// So many calendar days after the last course day.
    DaysAfter(u32),
}

/// The part of a course that something still to do belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[allow(missing_docs)]
pub enum Part {
    Venue,
    People,
    Wall,
    Frames,
    Stone,
    Kit,
    Days,
    Papers,
    Money,
}

impl Part {
    /// All parts.
    pub const ALL: [Self; 9] = [
        Self::Venue,
        Self::People,
        Self::Wall,
        Self::Frames,
        Self::Stone,
        Self::Kit,
        Self::Days,
        Self::Papers,
        Self::Money,
    ];

    /// The word for it in tables and programs.
    pub fn word(self) -> &'static str {
        match self {
            Self::Venue => "venue",
            Self::People => "people",
            Self::Wall => "wall",
            Self::Frames => "frames",
            Self::Stone => "stone",
            Self::Kit => "kit",
            Self::Days => "days",
            Self::Papers => "papers",
            Self::Money => "money",
        }
    }
}

/// How many calendar days before the course tools that are short are seen to.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ComeByTimes {
    /// Borrowed from a neighbour, another instructor or the venue.
    pub borrow_days: u32,
    /// Hired from a yard.
    pub hire_days: u32,
    /// Bought.
    pub buy_days: u32,
    /// Who says so.
    pub source: String,
}

/// What vehicles are reckoned with.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct LoadingTable {
    /// One person with what they carry.
    pub person: Mass,
    /// Who says so.
    pub person_source: String,
    /// What no sum of masses knows, for whoever drives.
    pub notes: Vec<LoadingNote>,
}

/// What no sum of masses knows.
#[derive(Debug, Clone, PartialEq)]
pub struct LoadingNote {
    /// What to mind.
    pub text: String,
    /// Who says so.
    pub source: String,
}
