//! Who comes to a course, whom they would build with, and when they are away.

use chrono::NaiveTime;

/// Who comes: staff as counts, students one by one.
#[derive(Debug, Clone, PartialEq)]
pub struct Group {
    /// People who teach.
    pub instructors: u32,
    /// People who help to teach.
    pub assistants: u32,
    /// The students; names are unique.
    pub students: Vec<Student>,
    /// What counts when pairs are made.
    pub pairing: Pairing,
}

/// What counts when pairs are made. People who are not to be put together are kept apart
/// whatever it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Pairing {
    /// Each novice with someone who has built before, then wishes, then pairs of equal pace.
    #[default]
    Mixed,
    /// Wishes first, then as [`Pairing::Mixed`].
    Friends,
    /// Like with like, then wishes.
    Alike,
}

/// One student.
#[derive(Debug, Clone, PartialEq)]
pub struct Student {
    /// Unique in the group.
    pub name: String,
    /// How much wall they have built before.
    pub experience: Experience,
    /// The size of their gloves, if they have said so.
    pub gloves: Option<GloveSize>,
    /// Names of those they would like to build with.
    pub with: Vec<String>,
    /// Names of those they are not to be put together with.
    pub apart: Vec<String>,
}

impl Student {
    /// A student of whom nothing more is known.
    pub fn new(name: impl Into<String>, experience: Experience) -> Self {
        Self {
            name: name.into(),
            experience,
            gloves: None,
            with: Vec::new(),
            apart: Vec::new(),
        }
    }
}

/// A time somebody is away.
#[derive(Debug, Clone, PartialEq)]
pub struct Absence {
    /// The student's name.
    pub who: String,
    /// The course day, counted from 0.
    pub day: usize,
    /// When they leave; from the start of the day if it is not said.
    pub from: Option<NaiveTime>,
    /// When they are back; not that day if it is not said.
    pub until: Option<NaiveTime>,
}

/// A size of gloves.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs)]
pub enum GloveSize {
    Xs,
    S,
    M,
    L,
    Xl,
    Xxl,
}

impl GloveSize {
    /// All sizes, the smallest first.
    pub const ALL: [Self; 6] = [Self::Xs, Self::S, Self::M, Self::L, Self::Xl, Self::Xxl];

    /// As it stands on the glove.
    pub fn word(self) -> &'static str {
        match self {
            Self::Xs => "XS",
            Self::S => "S",
            Self::M => "M",
            Self::L => "L",
            Self::Xl => "XL",
            Self::Xxl => "XXL",
        }
    }
}

/// How much someone has built before.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Experience {
    /// Never built before.
    Novice,
    /// A course or two behind them.
    Improver,
    /// An experienced amateur.
    Experienced,
}
