//! The kit rules as the window shows and changes them.

use craft::course::Course;
use craft::kit::{Standing, changed, same_tool};
use craft::tables::{Each, KitRule, Per, Tables};
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// One rule as it holds for the open course.
#[derive(Debug, Clone, Serialize, TS)]
pub struct Rule {
    /// The tool.
    pub item: String,
    /// What it is counted in; empty for pieces.
    pub unit: String,
    /// What it is counted by, as the file writes it.
    pub per: String,
    /// How many people share one; empty where it is not counted so.
    pub every: String,
    /// So many to each, as typed; by heat three figures with commas.
    pub each: String,
    /// Share carried beyond the need.
    pub spare: String,
    /// The smallest number worth carrying.
    pub least: String,
    /// It counts for nothing.
    pub off: bool,
    /// Who says so; that it was changed, where it was.
    pub source: String,
    /// Whether this course changes it.
    pub changed_here: bool,
    /// Whether the instructor has changed it for good.
    pub changed_for_good: bool,
}

/// One key of a rule as it was typed.
#[derive(Debug, Clone, Deserialize, TS)]
#[allow(missing_docs)]
pub struct RuleKey {
    pub key: String,
    pub typed: String,
}

impl Rule {
    /// All rules in order, those that are off among them. `own` names the tools whose rules
    /// the instructor has changed for good.
    pub fn all(tables: &Tables, course: &Course, own: &[String]) -> Vec<Self> {
        let changes = &course.kit.changes;
        // A course whose changes can't be made was refused before it came here.
        let rules = changed(&tables.kit, changes, Standing::ThisCourse, &tables.stages)
            .unwrap_or_else(|_| tables.kit.clone());
        rules
            .iter()
            .map(|rule| {
                let of_rule = |item: &str| same_tool(item, &rule.item);
                Self {
                    changed_here: changes.iter().any(|it| of_rule(&it.item)),
                    changed_for_good: own.iter().any(|item| of_rule(item)),
                    ..Self::of(rule)
                }
            })
            .collect()
    }

    fn of(rule: &KitRule) -> Self {
        Self {
            item: rule.item.clone(),
            unit: rule.unit.clone(),
            per: rule.per.word().to_owned(),
            every: match rule.per {
                Per::People { every } => every.to_string(),
                _ => String::new(),
            },
            each: match rule.each {
                Each::Same(each) => each.to_string(),
                Each::ByHeat(each) => each.map(|it| it.to_string()).join(", "),
            },
            spare: rule.spare.to_string(),
            least: rule.least.to_string(),
            off: rule.off,
            source: rule.source.clone(),
            changed_here: false,
            changed_for_good: false,
        }
    }
}
