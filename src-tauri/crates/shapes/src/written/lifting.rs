//! The lifting guide in written figures.

use craft::lifting::{Answer, Guide, GuideLift, StoneAnswers};
use craft::quantity::{Length, Mass, POUND_KG, Read, Units, show_mass, show_small};
use craft::tables::Tables;
use serde::Serialize;
use ts_rs::TS;

/// What two published guides say of lifting this wall's stones.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenLifting")]
pub struct Lifting {
    /// The lifts of the work, in its order.
    pub lifts: Vec<Lift>,
    /// This wall's own heavy stones.
    pub stones: Vec<HeavyStone>,
    /// What moves stones that two people may not lift, as a sentence.
    pub heavier: String,
    /// How stone is held and moved in all of these, as a sentence.
    pub held: String,
    /// Who says how it is held.
    pub held_source: String,
    /// What the guides leave out.
    pub limits: Vec<String>,
}

/// One lift, and what one person may lift so.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenLift")]
#[allow(missing_docs)]
pub struct Lift {
    pub stage: String,
    /// `the ground to knee height`.
    pub way: String,
    pub from: String,
    pub to: String,
    pub niosh: String,
    pub men: String,
    pub women: String,
    pub one_person: String,
    /// Together, one of them giving the word.
    pub two_people: String,
    /// What one person may lift as a flat stone: `20 by 14 by 7 cm`.
    pub flat: String,
}

/// A stone of this wall, and who or what moves it.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenHeavyStone")]
pub struct HeavyStone {
    /// What it is.
    pub stone: String,
    /// What it weighs.
    pub mass: String,
    /// What to do, as a sentence: the easiest of the ways to its place.
    pub answer: String,
}

impl Lifting {
    pub(super) fn of(guide: &Guide, tables: &Tables, units: Units) -> Self {
        let hands = &guide.hands;
        Self {
            lifts: guide
                .lifts
                .iter()
                .map(|lift| Lift::of(lift, tables, units))
                .collect(),
            stones: guide
                .stones
                .iter()
                .filter_map(|it| heavy(guide, it, units))
                .collect(),
            heavier: format!(
                "Near the ground a bar and rollers move up to {}, higher up a plank or ramp up to {}; anything heavier takes a machine or stays where it lies.",
                mass(tables.lifting.heavy.bar_most, units),
                mass(tables.lifting.heavy.ramp_most, units)
            ),
            held: format!(
                "Held {} from the body, turned {:.0} degrees to the side, a {} grip, {:.1} hours of it in a day.",
                show_small(hands.reach, units),
                hands.twist_degrees,
                hands.grip.word(),
                hands.hours
            ),
            held_source: hands.source.clone(),
            limits: guide.limits.clone(),
        }
    }
}

/// The stone of a stage, by the easiest way to its place.
fn heavy(guide: &Guide, it: &StoneAnswers, units: Units) -> Option<HeavyStone> {
    let easiest = guide.easiest(&it.name, it.mass)?;
    let stone = match it.name.as_str() {
        "footing" => "A footing stone",
        "throughs" => "A through",
        "cope" => "A cope",
        other => other,
    };
    Some(HeavyStone {
        stone: stone.to_owned(),
        mass: show_mass(it.mass, units),
        answer: easiest.sentence().to_owned(),
    })
}

impl Lift {
    fn of(lift: &GuideLift, tables: &Tables, units: Units) -> Self {
        let stage = tables.stages.iter().find(|it| it.id == lift.stage);
        let show = |it: Mass| mass(it, units);
        Self {
            stage: stage.map_or_else(|| lift.stage.clone(), |it| it.name.clone()),
            way: format!("{} to {}", lift.from, lift.to),
            from: lift.from.clone(),
            to: lift.to.clone(),
            niosh: show(lift.niosh),
            men: show(lift.men),
            women: show(lift.women),
            one_person: show(lift.one_person),
            two_people: show(two_people(lift)),
            flat: flat(lift.size.flat, units),
        }
    }
}

/// What two may lift together; no more than one where the guides know no more.
fn two_people(lift: &GuideLift) -> Mass {
    let two = lift.steps.iter().find(|it| it.answer == Answer::TwoPeople);
    two.and_then(|it| it.up_to).unwrap_or(lift.one_person)
}

/// To the half kilogram downwards, or the pound downwards: a limit is never rounded up.
fn mass(mass: Mass, units: Units) -> String {
    match units {
        Units::Metric => {
            let halves = (mass.si() * 2.0 + 1e-9).floor() / 2.0;
            format!("{halves} kg")
        }
        Units::Imperial => format!("{} lb", (mass.si() / POUND_KG + 1e-9).floor()),
    }
}

/// `20 by 14 by 7 cm`, to the whole centimetre or inch downwards.
fn flat(size: [Length; 3], units: Units) -> String {
    let (unit, one) = match units {
        Units::Metric => ("cm", 0.01),
        Units::Imperial => ("in", craft::quantity::INCH_M),
    };
    let [long, deep, high] = size.map(|it| (it.si() / one + 1e-9).floor());
    format!("{long} by {deep} by {high} {unit}")
}
