//! Tools in written figures.

use crate::clock::{Clock, list};
use chrono::NaiveDate;
use craft::kit::{Held, KitLine as Line, Taken, total_mass};
use craft::quantity::{Units, show_mass};
use craft::tables::Way;
use serde::Serialize;
use ts_rs::TS;

/// The tools.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenKit")]
pub struct Kit {
    /// One line a tool.
    pub lines: Vec<KitLine>,
    /// All that are needed.
    pub mass: String,
    /// How many lines are short.
    pub short: usize,
}

/// One line of the tool list.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "WrittenKitLine")]
#[allow(missing_docs)]
pub struct KitLine {
    pub item: String,
    /// `8`, `3 pairs`.
    pub need: String,
    /// Empty if nobody has counted.
    pub have: String,
    /// Empty if nobody has counted or none is missing.
    pub short: String,
    /// What to do about what is short; which course has it, where one has. Empty if none is.
    pub cure: String,
    /// How many of those held need care or are broken, in words; empty for none.
    pub state: String,
    /// Whose they are; empty for the instructor's own.
    pub owners: String,
    /// What to do to it before the course; empty for nothing.
    pub prepare: String,
    pub why: String,
    /// Who says so, or that the rule was changed.
    pub source: String,
    /// The rule it comes from, by name.
    pub rule: String,
    pub mass: String,
    pub place: String,
    pub safety_critical: bool,
    pub consumable: bool,
}

impl Kit {
    pub(super) fn of(lines: &[Line], units: Units, clock: &Clock) -> Self {
        Self {
            mass: show_mass(total_mass(lines), units),
            short: lines
                .iter()
                .filter(|line| line.short.is_some_and(|short| 0 < short))
                .count(),
            lines: lines
                .iter()
                .map(|line| KitLine::of(line, units, clock))
                .collect(),
        }
    }
}

impl KitLine {
    fn of(line: &Line, units: Units, clock: &Clock) -> Self {
        let counted = |count: usize| counted(count, &line.unit);
        Self {
            item: line.item.clone(),
            need: counted(line.need),
            have: line.have.map(counted).unwrap_or_default(),
            short: line
                .short
                .filter(|short| 0 < *short)
                .map(counted)
                .unwrap_or_default(),
            cure: cure(line, clock),
            state: line.held.as_ref().map(state).unwrap_or_default(),
            owners: line
                .held
                .as_ref()
                .map(|held| list(&held.owners))
                .unwrap_or_default(),
            prepare: line.prepare.clone(),
            source: line.source.clone(),
            rule: line.rule.clone(),
            why: line.why.clone(),
            mass: show_mass(line.mass, units),
            place: line.place.clone(),
            safety_critical: line.safety_critical,
            consumable: line.consumable,
        }
    }
}

/// `8`, `1 pair`, `3 pairs`, `20 kg`.
pub(super) fn counted(count: usize, unit: &str) -> String {
    match unit {
        "" => count.to_string(),
        unit if count == 1 || unit.len() <= 2 => format!("{count} {unit}"),
        unit => format!("{count} {unit}s"),
    }
}

/// `Borrow 2.`; `Hire 2: Upper Dale day has booked 4 for 24 and 25 April 2027.`
fn cure(line: &Line, clock: &Clock) -> String {
    let Some(short) = line.short.filter(|short| 0 < *short) else {
        return String::new();
    };
    let way = match line.way {
        Way::Borrow => "Borrow",
        Way::Hire => "Hire",
        Way::Buy => "Buy",
    };
    let clashes = clashes(&line.clash, clock);
    if clashes.is_empty() {
        format!("{way} {short}.")
    } else {
        format!("{way} {short}: {}.", list(&clashes))
    }
}

/// For each other course how many it has booked, and for which days.
fn clashes(taken: &[Taken], clock: &Clock) -> Vec<String> {
    let mut courses: Vec<(&str, u32, Vec<NaiveDate>)> = Vec::new();
    for it in taken {
        match courses.iter_mut().find(|(course, ..)| *course == it.course) {
            Some((_, most, dates)) => {
                *most = it.count.max(*most);
                dates.push(it.date);
            }
            None => courses.push((&it.course, it.count, vec![it.date])),
        }
    }
    let told = |(course, most, mut dates): (&str, u32, Vec<NaiveDate>)| {
        dates.sort_unstable();
        dates.dedup();
        format!("{course} has booked {most} for {}", clock.dates(&dates))
    };
    courses.into_iter().map(told).collect()
}

fn state(held: &Held) -> String {
    let count = |count: u32, state: &str| (0 < count).then(|| format!("{count} {state}"));
    let words = [
        count(held.care, "in need of care"),
        count(held.broken, "broken"),
    ];
    list(&words.into_iter().flatten().collect::<Vec<_>>())
}
