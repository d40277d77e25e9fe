//! Rules as an instructor changes them: for one course, or for good.

use super::{same_tool, sizes};
use crate::Error;
use crate::quantity::{Mass, kilograms};
use crate::tables::{Applies, Each, KitRule, Per, Stage, Way};

/// A rule added, changed or switched off: what is not said stays as it was.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct RuleChange {
    /// The tool, as the rule to change names it; any other name adds a rule.
    pub item: String,
    /// The rule counts for nothing; or, if false, it counts again.
    pub off: Option<bool>,
    /// What it is counted in.
    pub unit: Option<String>,
    /// Per what.
    pub per: Option<Per>,
    /// So many to each.
    pub each: Option<Each>,
    /// Share carried beyond the need.
    pub spare: Option<f64>,
    /// The smallest number worth carrying.
    pub least: Option<u32>,
    /// Only on courses of which this holds.
    pub applies: Option<Applies>,
    /// Only where at least so many people are there.
    pub from_people: Option<u32>,
    /// Only where at most so many people are there.
    pub to_people: Option<u32>,
    /// One line for each size of glove.
    pub by_size: Option<bool>,
    /// A part of every frame.
    pub limits_frames: Option<bool>,
    /// Without it the work must not begin.
    pub safety_critical: Option<bool>,
    /// Used up by the course.
    pub consumable: Option<bool>,
    /// Mass of one.
    pub mass: Option<Mass>,
    /// Where it is used.
    pub place: Option<String>,
    /// A stage's id, or `all`.
    pub needed_for: Option<String>,
    /// How to come by what is short.
    pub way: Option<Way>,
    /// What to do to it before a course.
    pub prepare: Option<String>,
    /// Why it is needed.
    pub why: Option<String>,
    /// Who says so, beside that it was changed.
    pub source: Option<String>,
}

/// How long a change holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Standing {
    /// For every course of this instructor.
    ForGood,
    /// For one course.
    ThisCourse,
}

impl Standing {
    fn words(self) -> &'static str {
        match self {
            Self::ForGood => "for good",
            Self::ThisCourse => "for this course",
        }
    }
}

/// The word of [`KitRule::needed_for`] for what is needed from the first hour on.
pub const NEEDED_FOR_ALL: &str = "all";

/// The rules with these changes made in order: of two of one tool the later one wins.
///
/// # Errors
/// [`Error::NewTool`] for a tool no rule names, without what a new rule needs;
/// [`Error::OneSize`] for a rule of one size alone; [`Error::NeededFor`] for a stage that does
/// not exist.
pub fn changed(
    rules: &[KitRule],
    changes: &[RuleChange],
    standing: Standing,
    stages: &[Stage],
) -> Result<Vec<KitRule>, Error> {
    let mut rules = rules.to_vec();
    for (at, change) in changes.iter().enumerate() {
        change.has_its_stage(at, stages)?;
        let known = rules
            .iter_mut()
            .find(|rule| same_tool(&rule.item, &change.item));
        match known {
            Some(rule) => {
                change.make(rule);
                rule.source = change.source_said("changed", standing);
            }
            None => {
                let mut rule = new_rule(at, change, &rules)?;
                rule.source = change.source_said("added", standing);
                rules.push(rule);
            }
        }
    }
    Ok(rules)
}

/// The names a tool may be counted under: every rule's, those that are off too, and each size.
pub fn known_items(rules: &[KitRule]) -> Vec<String> {
    let names = rules.iter().flat_map(|rule| {
        let sizes = rule.comes_in_sizes().then(|| sizes::names(&rule.item));
        [rule.item.clone()]
            .into_iter()
            .chain(sizes.into_iter().flatten())
    });
    names.collect()
}

/// The rule a change adds, where none is there to change.
fn new_rule(at: usize, change: &RuleChange, rules: &[KitRule]) -> Result<KitRule, Error> {
    let of_one_size = rules.iter().find(|rule| {
        rule.comes_in_sizes() && sizes::names(&rule.item).any(|it| same_tool(&it, &change.item))
    });
    if let Some(rule) = of_one_size {
        return Err(Error::OneSize {
            at,
            given: change.item.clone(),
            rule: rule.item.clone(),
        });
    }
    change.rule().ok_or_else(|| Error::NewTool {
        at,
        given: change.item.clone(),
        known: rules.iter().map(|rule| rule.item.clone()).collect(),
    })
}

impl RuleChange {
    /// The rule that this makes by itself; `None` without what it is counted by and how many
    /// to each. What is not said is as plain as can be.
    pub fn rule(&self) -> Option<KitRule> {
        let mut rule = KitRule {
            item: self.item.clone(),
            off: false,
            unit: String::new(),
            per: self.per?,
            each: self.each?,
            spare: 0.0,
            least: 0,
            applies: Applies::Always,
            from_people: None,
            to_people: None,
            by_size: false,
            limits_frames: false,
            safety_critical: false,
            consumable: false,
            mass: kilograms(0.0),
            place: "at the wall".to_owned(),
            needed_for: NEEDED_FOR_ALL.to_owned(),
            way: match self.consumable {
                Some(true) => Way::Buy,
                _ => Way::Borrow,
            },
            prepare: String::new(),
            why: "a rule of your own".to_owned(),
            source: self.source.clone().unwrap_or_default(),
        };
        self.make(&mut rule);
        Some(rule)
    }

    /// Whether the stage it is needed for exists; this is the change numbered `at` from 0.
    ///
    /// # Errors
    /// [`Error::NeededFor`] if it does not.
    pub fn has_its_stage(&self, at: usize, stages: &[Stage]) -> Result<(), Error> {
        let ids = stages.iter().map(|stage| stage.id.as_str());
        let known = [NEEDED_FOR_ALL].into_iter().chain(ids);
        match &self.needed_for {
            Some(given) if !known.clone().any(|id| id == given) => Err(Error::NeededFor {
                at,
                given: given.clone(),
                known: known.map(str::to_owned).collect(),
            }),
            _ => Ok(()),
        }
    }

    fn source_said(&self, how: &str, standing: Standing) -> String {
        let words = standing.words();
        match &self.source {
            Some(source) => format!("{how} {words}: {source}"),
            None => format!("{how} {words}"),
        }
    }

    fn make(&self, rule: &mut KitRule) {
        put(&mut rule.off, &self.off);
        put(&mut rule.unit, &self.unit);
        put(&mut rule.per, &self.per);
        put(&mut rule.each, &self.each);
        put(&mut rule.spare, &self.spare);
        put(&mut rule.least, &self.least);
        put(&mut rule.applies, &self.applies);
        rule.from_people = self.from_people.or(rule.from_people);
        rule.to_people = self.to_people.or(rule.to_people);
        put(&mut rule.by_size, &self.by_size);
        put(&mut rule.limits_frames, &self.limits_frames);
        put(&mut rule.safety_critical, &self.safety_critical);
        put(&mut rule.consumable, &self.consumable);
        put(&mut rule.mass, &self.mass);
        put(&mut rule.place, &self.place);
        put(&mut rule.needed_for, &self.needed_for);
        put(&mut rule.way, &self.way);
        put(&mut rule.prepare, &self.prepare);
        put(&mut rule.why, &self.why);
    }
}

fn put<T: Clone>(field: &mut T, said: &Option<T>) {
    if let Some(said) = said {
        field.clone_from(said);
    }
}
