//! Kit rules, written with the same keys wherever they stand: in the table `kit.toml`, in the
//! instructor's own `kit-own.toml`, and as `[[kit.rule]]` in a course file.

use super::document;
use crate::Fault;
use crate::course::fault_at;
use crate::course::node::{Entry, Section};
use craft::kit::{RuleChange, Standing, changed, same_tool};
use craft::tables::{Applies, Each, KitRule, Per, Stage, Way};
use std::cell::RefCell;

const KEYS: [&str; 22] = [
    "item",
    "off",
    "unit",
    "per",
    "every",
    "each",
    "spare",
    "least",
    "applies",
    "from_people",
    "to_people",
    "by_size",
    "limits_frames",
    "safety_critical",
    "consumable",
    "mass",
    "where",
    "needed_for",
    "when_short",
    "prepare",
    "why",
    "source",
];

/// What a rule of the table can't do without, and what to write.
const NEEDED: [(&str, &str); 8] = [
    ("per", "say what it is counted by, such as per = \"pair\""),
    ("each", "say how many to each, such as each = 1"),
    ("mass", "say what one weighs, such as mass = \"1.6 kg\""),
    (
        "where",
        "say where it is used, such as where = \"at the wall\"",
    ),
    (
        "needed_for",
        "name the stage it is first needed for, or write needed_for = \"all\"",
    ),
    (
        "when_short",
        "say how to come by more: when_short = \"borrow\", \"hire\" or \"buy\"",
    ),
    ("why", "say why it is needed"),
    (
        "source",
        "say where the figures come from, or write source = \"common practice, no source\"",
    ),
];

/// The most people a rule counts, and the most of anything to each of them.
const MOST: f64 = 1000.0;
const MOST_PEOPLE: u32 = 1000;

/// The rules of a whole table.
pub(crate) fn kit_rules(text: &str, stages: &[Stage]) -> Result<Vec<KitRule>, Fault> {
    let (document, places) = (document(text)?, RefCell::default());
    let root = Section::root(document.as_table(), &places);
    root.only(&["rule"])?;
    root.need("rule", "begin each rule with [[rule]]")?;
    let mut rules: Vec<KitRule> = Vec::new();
    for (at, section) in root.tables("rule")?.iter().enumerate() {
        let change = change(section)?;
        for (key, cure) in NEEDED {
            section.need(key, cure)?;
        }
        if rules.iter().any(|rule| same_tool(&rule.item, &change.item)) {
            let item = section.need("item", "")?;
            let what = format!("\"{}\" has a rule already", change.item);
            return Err(item.fault("rule-twice", &what, "leave one of the two out"));
        }
        change
            .has_its_stage(at, stages)
            .map_err(|error| own_fault(&error, &places))?;
        rules.extend(change.rule());
    }
    Ok(rules)
}

/// The rules with the instructor's own changes made, which hold for good.
pub(crate) fn own_kit_rules(
    text: &str,
    rules: &[KitRule],
    stages: &[Stage],
) -> Result<Vec<KitRule>, Fault> {
    let places = RefCell::default();
    let changes = own_changes_at(text, &places)?;
    changed(rules, &changes, Standing::ForGood, stages).map_err(|error| own_fault(&error, &places))
}

/// The changes in a text of the instructor's own.
pub(crate) fn own_changes(text: &str) -> Result<Vec<RuleChange>, Fault> {
    own_changes_at(text, &RefCell::default())
}

type Places = RefCell<std::collections::BTreeMap<String, usize>>;

fn own_changes_at(text: &str, places: &Places) -> Result<Vec<RuleChange>, Fault> {
    let document = document(text)?;
    let root = Section::root(document.as_table(), places);
    root.only(&["rule"])?;
    changes(&root)
}

/// A refusal of the sums, in a file that holds nothing but rules.
fn own_fault(error: &craft::Error, places: &Places) -> Fault {
    let key = error.key().unwrap_or_default();
    let key = key.strip_prefix("kit.").unwrap_or(&key).to_owned();
    fault_at(error, key, &places.borrow())
}

/// The changes below this table, in order.
pub(super) fn changes(section: &Section<'_>) -> Result<Vec<RuleChange>, Fault> {
    section.tables("rule")?.iter().map(change).collect()
}

fn change(section: &Section<'_>) -> Result<RuleChange, Fault> {
    section.only(&KEYS)?;
    let text = |key: &str| {
        let entry = section.get(key);
        entry.map(|it| it.text().map(str::to_owned)).transpose()
    };
    let truth = |key: &str| section.get(key).map(|it| it.truth()).transpose();
    let whole = |key: &str, least: u32, most: u32| {
        let entry = section.get(key);
        entry.map(|it| it.whole(least, most)).transpose()
    };
    let cure = "name the tool: item = \"Spade\"";
    let item = named(&section.need("item", cure)?, cure)?;
    let per = per(section)?;
    sizes_are_for_people(section, per)?;
    people_in_order(section)?;
    let spare = section.get("spare");
    Ok(RuleChange {
        item,
        off: truth("off")?,
        unit: text("unit")?,
        per,
        each: section.get("each").map(|it| each(&it)).transpose()?,
        spare: spare.map(|it| it.number(0.0, 10.0)).transpose()?,
        least: whole("least", 0, 10_000)?,
        applies: one_of(section, "applies", Applies::ALL, Applies::word)?,
        from_people: whole("from_people", 1, MOST_PEOPLE)?,
        to_people: whole("to_people", 1, MOST_PEOPLE)?,
        by_size: truth("by_size")?,
        limits_frames: truth("limits_frames")?,
        safety_critical: truth("safety_critical")?,
        consumable: truth("consumable")?,
        mass: section.get("mass").map(|it| it.mass(true)).transpose()?,
        place: section
            .get("where")
            .map(|it| named(&it, "say where it is used, such as where = \"at the wall\""))
            .transpose()?,
        needed_for: text("needed_for")?,
        way: one_of(section, "when_short", Way::ALL, Way::word)?,
        prepare: text("prepare")?,
        why: text("why")?,
        source: text("source")?,
    })
}

/// Text of more than nothing.
fn named(entry: &Entry<'_>, cure: &str) -> Result<String, Fault> {
    let name = entry.text()?.trim();
    if name.is_empty() {
        return Err(entry.fault("empty-text", "this is empty", cure));
    }
    Ok(name.to_owned())
}

fn one_of<T: Copy, const N: usize>(
    section: &Section<'_>,
    key: &str,
    all: [T; N],
    word: fn(T) -> &'static str,
) -> Result<Option<T>, Fault> {
    let entry = section.get(key);
    entry
        .map(|it| it.word(&all.map(|one| (word(one), one))))
        .transpose()
}

/// What it is counted by. `every` by itself says that so many people share one.
fn per(section: &Section<'_>) -> Result<Option<Per>, Fault> {
    let per = one_of(section, "per", Per::ALL, Per::word)?;
    let people = matches!(per, None | Some(Per::People { .. }));
    match section.get("every") {
        Some(entry) if people => {
            let every = entry.whole(1, MOST_PEOPLE)?;
            Ok(Some(Per::People { every }))
        }
        Some(entry) => Err(entry.fault(
            "contradiction",
            "only what is shared by so many people has an every",
            "write per = \"people\", or leave every out",
        )),
        None if per.is_some() && people => {
            let cure = "say how many people share one, such as every = 10";
            section.need("every", cure).map(|_| per)
        }
        None => Ok(per),
    }
}

/// A number, or one for each heat.
fn each(entry: &Entry<'_>) -> Result<Each, Fault> {
    if !entry.is_table() {
        return Ok(Each::Same(entry.number(0.0, MOST)?));
    }
    let by_heat = entry.table()?;
    by_heat.only(&["mild", "warm", "hot"])?;
    let heat = |key: &str| {
        let cure = "give all three: each = { mild = 0.25, warm = 0.5, hot = 0.75 }";
        by_heat.need(key, cure)?.number(0.0, MOST)
    };
    Ok(Each::ByHeat([heat("mild")?, heat("warm")?, heat("hot")?]))
}

fn sizes_are_for_people(section: &Section<'_>, per: Option<Per>) -> Result<(), Fault> {
    match (section.get("by_size"), per) {
        (_, None | Some(Per::Student | Per::Person)) | (None, _) => Ok(()),
        (Some(entry), _) if !entry.truth()? => Ok(()),
        (Some(entry), _) => Err(entry.fault(
            "contradiction",
            "only students wear a size",
            "write per = \"student\" or per = \"person\", or leave by_size out",
        )),
    }
}

fn people_in_order(section: &Section<'_>) -> Result<(), Fault> {
    let (Some(from), Some(to)) = (section.get("from_people"), section.get("to_people")) else {
        return Ok(());
    };
    let (least, most) = (from.whole(1, MOST_PEOPLE)?, to.whole(1, MOST_PEOPLE)?);
    if most < least {
        return Err(to.fault(
            "contradiction",
            &format!("no group has at least {least} and at most {most} people"),
            "let to_people be no less than from_people",
        ));
    }
    Ok(())
}

#[cfg(test)]
mod tests;
