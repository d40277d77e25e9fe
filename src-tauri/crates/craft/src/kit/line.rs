//! The lines of the tool list: what is needed of each tool, what is held, what is short.

use super::count::Counted;
use super::named::HeldByName;
use super::sizes;
use super::{Held, Taken, same_tool};
use crate::quantity::{Mass, kilograms};
use crate::tables::{KitRule, Way};

/// One line of the tool list.
#[derive(Debug, Clone, PartialEq)]
pub struct KitLine {
    /// The tool, with its size where it comes in sizes.
    pub item: String,
    /// The tool as its rule names it.
    pub rule: String,
    /// What it is counted in; empty for pieces.
    pub unit: String,
    /// How many the course needs, spares included.
    pub need: usize,
    /// How many are there and free; `None` if nobody has counted.
    pub have: Option<usize>,
    /// How many are missing; `None` if nobody has counted.
    pub short: Option<usize>,
    /// Who has booked what is missing, on the day or days on which most is booked: filled
    /// where enough are held and other courses have taken them.
    pub clash: Vec<Taken>,
    /// How the need comes about.
    pub why: String,
    /// Mass of all that are needed.
    pub mass: Mass,
    /// Where it is used.
    pub place: String,
    /// Without it the work must not begin.
    pub safety_critical: bool,
    /// Used up by the course.
    pub consumable: bool,
    /// A stage's id, or `all`: when it is first needed.
    pub needed_for: String,
    /// Mass of one.
    pub each: Mass,
    /// How to come by what is short.
    pub way: Way,
    /// What to do to it before the course; empty for nothing.
    pub prepare: String,
    /// Who says that so many are needed, or that the rule was changed.
    pub source: String,
    /// What is held of it, if somebody has counted.
    pub held: Option<Held>,
}

/// The tool list of a course, in the rules' order: rules that are off or not meant for it
/// are left out, tools in sizes have a line for each size.
pub fn kit(rules: &[KitRule], counted: &Counted<'_>, held: &[Held]) -> Vec<KitLine> {
    let held = HeldByName::new(held);
    let meant = rules.iter().filter(|rule| counted.meets(rule));
    meant
        .flat_map(|rule| {
            if rule.comes_in_sizes() {
                return sizes::lines(rule, counted, &held);
            }
            let (need, why) = counted.need(rule);
            vec![line(
                rule,
                rule.item.clone(),
                (need, why),
                held.get(&rule.item),
                counted.bar,
            )]
        })
        .collect()
}

/// A line of so many, and why, with what is held of it. `bar`: the mass of a steel bar.
pub(super) fn line(
    rule: &KitRule,
    item: String,
    (need, why): (usize, String),
    held: Option<&Held>,
    bar: Option<Mass>,
) -> KitLine {
    let have = held.map(|held| held.free() as usize);
    let each = mass_of_one(rule, bar);
    KitLine {
        item,
        rule: rule.item.clone(),
        unit: rule.unit.clone(),
        need,
        have,
        short: have.map(|have| need.saturating_sub(have)),
        clash: held.map_or_else(Vec::new, |held| clash(held, need)),
        why,
        mass: each * need as f64,
        place: rule.place.clone(),
        safety_critical: rule.safety_critical,
        consumable: rule.consumable,
        needed_for: rule.needed_for.clone(),
        each,
        way: rule.way,
        prepare: rule.prepare.clone(),
        source: rule.source.clone(),
        held: held.cloned(),
    }
}

fn clash(held: &Held, need: usize) -> Vec<Taken> {
    let enough_but_for_others = (held.free() as usize) < need && need <= held.usable() as usize;
    if enough_but_for_others {
        held.busiest().into_iter().cloned().collect()
    } else {
        Vec::new()
    }
}

/// The item of the kit table that stands for the bars of the frames.
pub const BAR_ITEM: &str = "Steel bar";

/// What a rule says; a bar of which it says nothing weighs what follows from its length.
fn mass_of_one(rule: &KitRule, bar: Option<Mass>) -> Mass {
    match bar {
        Some(bar) if rule.mass <= kilograms(0.0) && same_tool(&rule.item, BAR_ITEM) => bar,
        _ => rule.mass,
    }
}

/// The mass of the whole list.
pub fn total_mass(lines: &[KitLine]) -> Mass {
    lines
        .iter()
        .fold(kilograms(0.0), |sum, line| sum + line.mass)
}
