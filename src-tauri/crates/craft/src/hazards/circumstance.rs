//! When a hazard is met: what cautions and tool rules count by, and what only a finished plan
//! knows.

use super::because::{self, because};
use crate::conditions::Conditions;
use crate::course::Course;
use crate::frames::Frames;
use crate::lifting::{Answer, Guide};
use crate::stone::Stone;
use crate::tables::{Applies, HazardTable, Places};
use crate::wall::Wall;

/// When a hazard is met.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Circumstance {
    /// Where this holds of the course.
    Course(Applies),
    /// Where the wall, with its cope, reaches the knee.
    OverKnee,
    /// Where the wall, with its cope, reaches the waist.
    OverWaist,
    /// Where a stone of the wall is more than one person's guide at every place it is lifted.
    HeavyStones,
    /// Where an instructor has more students than the pace table calls enough.
    ManyStudents,
    /// Where rain was typed in from the forecast.
    Rain,
}

impl Circumstance {
    /// Those that are not words of [`Applies`].
    const OWN: [Self; 5] = [
        Self::OverKnee,
        Self::OverWaist,
        Self::HeavyStones,
        Self::ManyStudents,
        Self::Rain,
    ];

    /// All of them.
    pub fn all() -> impl Iterator<Item = Self> {
        let course = Applies::ALL.into_iter().map(Self::Course);
        course.chain(Self::OWN)
    }

    /// The word the table uses.
    pub fn word(self) -> &'static str {
        match self {
            Self::Course(applies) => applies.word(),
            Self::OverKnee => "over-knee",
            Self::OverWaist => "over-waist",
            Self::HeavyStones => "heavy-stones",
            Self::ManyStudents => "many-students",
            Self::Rain => "rain",
        }
    }
}

/// The parts of a plan that circumstances look at.
#[derive(Debug, Clone, Copy)]
#[allow(missing_docs)]
pub struct Met<'a> {
    pub course: &'a Course,
    pub conditions: &'a Conditions,
    pub wall: &'a Wall,
    pub frames: &'a Frames,
    pub stone: &'a Stone,
    pub lifting: &'a Guide,
    /// Students to one instructor.
    pub ratio: f64,
    pub places: &'a Places,
    pub table: &'a HazardTable,
}

/// What holds of one course, each with the reason for it in a few words.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Circumstances(Vec<(Circumstance, String)>);

impl Circumstances {
    /// What holds of this plan.
    pub fn of(met: &Met) -> Self {
        let holding = Circumstance::all().filter(|it| holds(*it, met));
        Self(holding.map(|it| (it, because(it, met))).collect())
    }

    /// Just these with their reasons.
    pub fn just(these: &[(Circumstance, &str)]) -> Self {
        let these = these.iter().map(|(it, why)| (*it, (*why).to_owned()));
        Self(these.collect())
    }

    /// The reasons for which any of these holds, those that need no saying left out; nothing
    /// where none of them holds.
    pub fn reasons(&self, any_of: &[Circumstance]) -> Option<Vec<String>> {
        let holding = self.0.iter().filter(|(it, _)| any_of.contains(it));
        let mut reasons: Vec<String> = holding.map(|(_, why)| why.clone()).collect();
        if reasons.is_empty() {
            return None;
        }
        reasons.retain(|why| !why.is_empty());
        Some(reasons)
    }
}

fn holds(it: Circumstance, met: &Met) -> bool {
    match it {
        Circumstance::Course(applies) => met.conditions.met(applies),
        Circumstance::OverKnee => met.table.knee <= because::highest(met),
        Circumstance::OverWaist => met.table.waist <= because::highest(met),
        Circumstance::HeavyStones => 0 < heavy_stones(met.lifting).count(),
        Circumstance::ManyStudents => met.places.students_per_instructor < met.ratio,
        Circumstance::Rain => met
            .course
            .days
            .iter()
            .any(|day| !day.weather.rain.is_empty()),
    }
}

/// The stones, each with its mass, that are beyond one person wherever they are lifted.
pub(super) fn heavy_stones(guide: &Guide) -> impl Iterator<Item = &crate::lifting::StoneAnswers> {
    guide.stones.iter().filter(|stone| {
        let easiest = guide.easiest(&stone.name, stone.mass);
        easiest.is_some_and(|answer| answer != Answer::OnePerson)
    })
}
