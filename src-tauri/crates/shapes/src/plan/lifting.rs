//! The lifting guide as JSON.

use craft::lifting::{Answer, GuideLift};
use craft::quantity::Read;
use serde::Serialize;

/// What two published guides say of lifting this wall's stones: guidance, never permission.
#[derive(Debug, Clone, Serialize)]
pub struct Lifting {
    /// The lifts of the work, in its order.
    pub lifts: Vec<Lift>,
    /// Who or what moves this wall's own heavy stones.
    pub stones: Vec<HeavyStone>,
    /// What the guides leave out.
    pub limits: Vec<String>,
}

/// One lift, and what one person may lift so.
#[derive(Debug, Clone, Serialize)]
#[allow(missing_docs)]
pub struct Lift {
    pub stage: String,
    pub from: String,
    pub to: String,
    pub from_height_m: f64,
    pub to_height_m: f64,
    /// The revised NIOSH equation, in its metric form.
    pub niosh_kg: f64,
    /// The UK filter, for men.
    pub filter_men_kg: f64,
    /// The UK filter, for women.
    pub filter_women_kg: f64,
    /// The least of the three.
    pub one_person_kg: f64,
    /// The edge of a cube of that mass.
    pub cube_m: f64,
    /// Length, depth and height of a flat stone of that mass.
    pub flat_m: [f64; 3],
}

/// A stone of this wall, and who or what moves it in each of the lifts.
#[derive(Debug, Clone, Serialize)]
#[allow(missing_docs)]
pub struct HeavyStone {
    pub stone: String,
    pub mass_kg: f64,
    /// One word for each lift, in their order.
    pub answers: Vec<String>,
}

impl Lifting {
    pub(super) fn of(guide: &craft::lifting::Guide) -> Self {
        Self {
            lifts: guide.lifts.iter().map(Lift::of).collect(),
            stones: guide
                .stones
                .iter()
                .map(|it| HeavyStone {
                    stone: it.name.clone(),
                    mass_kg: it.mass.si(),
                    answers: it.answers.iter().map(word).collect(),
                })
                .collect(),
            limits: guide.limits.clone(),
        }
    }
}

fn word(answer: &Answer) -> String {
    answer.id().to_owned()
}

impl Lift {
    fn of(lift: &GuideLift) -> Self {
        Self {
            stage: lift.stage.clone(),
            from: lift.from.clone(),
            to: lift.to.clone(),
            from_height_m: lift.from_height.si(),
            to_height_m: lift.to_height.si(),
            niosh_kg: lift.niosh.si(),
            filter_men_kg: lift.men.si(),
            filter_women_kg: lift.women.si(),
            one_person_kg: lift.one_person.si(),
            cube_m: lift.size.cube.si(),
            flat_m: lift.size.flat.map(Read::si),
        }
    }
}
