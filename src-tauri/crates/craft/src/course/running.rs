//! How the days are run, as the instructor says: wishes, what is left out, what is done already.

use super::WallSize;
use chrono::NaiveTime;

/// How the days are run; left alone, the program arranges them by itself.
#[derive(Debug, Clone, PartialEq)]
pub struct Running {
    /// Short breaks are added where people would work too long without one.
    pub short_breaks: bool,
    /// The wall is lit, so that building goes on before dawn and after dusk.
    pub lamplight: bool,
    /// Lessons that are not given, by id.
    pub left_out: Vec<String>,
    /// Lessons that are given though nothing else calls for them, by id. What is left out
    /// stays out.
    pub asked: Vec<String>,
    /// Lessons that are given at a certain time.
    pub wishes: Vec<Wish>,
    /// Stages the instructor has done before the course begins, by id.
    pub beforehand: Vec<String>,
    /// Effects on pace that are not counted.
    pub without: Vec<Effect>,
    /// What has been built, in order of time.
    pub progress: Vec<Report>,
}

impl Default for Running {
    fn default() -> Self {
        Self {
            short_breaks: true,
            lamplight: false,
            left_out: Vec::new(),
            asked: Vec::new(),
            wishes: Vec::new(),
            beforehand: Vec::new(),
            without: Vec::new(),
            progress: Vec::new(),
        }
    }
}

impl Running {
    /// Whether an effect on pace counts.
    pub fn counts(&self, effect: Effect) -> bool {
        !self.without.contains(&effect)
    }

    /// Whether the course asks for a lesson by its id: as such, or by a wish for its time.
    pub fn asks_for(&self, lesson: &str) -> bool {
        let wished = self.wishes.iter().any(|wish| wish.lesson == lesson);
        wished || self.asked.iter().any(|id| id == lesson)
    }
}

/// A lesson that is to be given at a certain time.
#[derive(Debug, Clone, PartialEq)]
pub struct Wish {
    /// The lesson's id.
    pub lesson: String,
    /// Which day, counted from 0.
    pub day: usize,
    /// When; first thing that day if it is not said.
    pub at: Option<NaiveTime>,
}

/// What makes a group slower or faster than the rates alone say.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Effect {
    /// Students wait for help where too few teach.
    Teaching,
    /// Who has never laid stone is slower at first.
    Learning,
    /// People tire in the course of a day.
    Fatigue,
    /// Heat asks for rest.
    Heat,
    /// Rain slows the work.
    Rain,
}

impl Effect {
    /// All of them.
    pub const ALL: [Self; 5] = [
        Self::Teaching,
        Self::Learning,
        Self::Fatigue,
        Self::Heat,
        Self::Rain,
    ];

    /// The word a course file uses.
    pub fn word(self) -> &'static str {
        match self {
            Self::Teaching => "teaching",
            Self::Learning => "learning",
            Self::Fatigue => "fatigue",
            Self::Heat => "heat",
            Self::Rain => "rain",
        }
    }
}

/// How far a stage has come at a certain time.
#[derive(Debug, Clone, PartialEq)]
pub struct Report {
    /// Which day, counted from 0.
    pub day: usize,
    /// When it was looked at.
    pub time: NaiveTime,
    /// The stage's id.
    pub stage: String,
    /// Which bay, counted from 0; all of them if it is not said.
    pub bay: Option<usize>,
    /// The share that is done, from 0 to 1.
    pub done: f64,
    /// The wall it is a share of; as the course has it now if it is not said.
    pub wall: Option<WallSize>,
}
