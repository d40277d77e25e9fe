//! The shape of the tables of stages and lessons: what is done and taught, in which order.

use super::Applies;

/// One stage of the work.
#[derive(Debug, Clone, PartialEq)]
pub struct Stage {
    /// The word other tables use.
    pub id: String,
    /// What a person reads.
    pub name: String,
    /// What sets how much of it there is.
    pub work: Work,
    /// Who can be at it at once.
    pub crew: Crew,
    /// A string ties each bay to its slowest pair.
    pub string: bool,
    /// How it goes along the wall.
    pub along: Along,
    /// The instructor can have it done before the course begins.
    pub beforehand: bool,
    /// Why it stands where it stands, or what to mind.
    pub note: String,
    /// What makes the wall safe to leave if the work stops here.
    pub if_left: String,
}

/// How a stage goes along the wall.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Along {
    /// A bay may be at it while its neighbour is still at the stage before.
    BayByBay,
    /// It waits until every bay is ready.
    Together,
}

/// What sets how much work a stage is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Work {
    /// Tonnes of an old wall that is taken down.
    StrippedTonnes,
    /// Tonnes of unsorted stone.
    HeapTonnes,
    /// Cubic metres of trench.
    TrenchCubicMetres,
    /// Frames to set.
    Frames,
    /// Tonnes of footing.
    FootingTonnes,
    /// Tonnes from the footing to the first through row.
    FirstLiftTonnes,
    /// Throughs.
    Throughs,
    /// Tonnes from the first through row to the top, throughs taken off.
    SecondLiftTonnes,
    /// Built ends.
    Heads,
    /// Metres of wall.
    Metres,
    /// Metres of cope; none where there is no cope.
    CopeMetres,
    /// Ends of the cope; none where there is no cope.
    CopeEnds,
    /// A fixed time for the whole group.
    Minutes(u32),
    /// A fixed time for the whole group at the end of each day.
    EachDay(u32),
}

impl Work {
    /// It takes the time it takes, whoever is at it.
    pub fn is_fixed(self) -> bool {
        matches!(self, Self::Minutes(_) | Self::EachDay(_))
    }
}

/// Who can be at a stage at once.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Crew {
    /// Everybody.
    Everyone,
    /// Facing pairs; the slowest pair holds the string.
    FacingPairs,
    /// Diggers with room to swing.
    Diggers,
    /// Coping crews.
    CopingCrews,
}

/// A lesson, and the stage it comes before.
#[derive(Debug, Clone, PartialEq)]
pub struct Lesson {
    /// The word other tables use.
    pub id: String,
    /// What a person reads.
    pub title: String,
    /// How long it lasts.
    pub minutes: u32,
    /// When it is given.
    pub before: Before,
    /// It is about staying whole rather than about walling.
    pub safety: bool,
    /// It is taught where any of these holds; with none of them, only on a course that asks
    /// for it.
    pub when: Vec<Applies>,
}

/// When a lesson is given.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Before {
    /// First thing on the first day.
    Course,
    /// First thing on every later day.
    EachDay,
    /// Before a stage, by its id.
    Stage(String),
}
