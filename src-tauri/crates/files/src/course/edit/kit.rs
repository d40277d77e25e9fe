//! Kit rules added, changed and switched off for a course, and taken back.

use super::{checked, no_such, parsed, plain_value, text_value};
use crate::Fault;
use craft::kit::same_tool;
use toml_edit::{Array, ArrayOfTables, InlineTable, Item, Table, TableLike, Value};

/// Where the changes stand, in a course as in a file of one's own.
const LIST: &str = "rule";

/// Keys whose values are text, whatever is typed.
const TEXTS: [&str; 10] = [
    "unit",
    "per",
    "applies",
    "mass",
    "where",
    "needed_for",
    "when_short",
    "prepare",
    "why",
    "source",
];

/// The text with the rule of a tool changed for this course: each key set to what a person
/// typed, an empty text removing it, the others as they were.
///
/// Keys are those of a rule: `[("each", "2")]` changes, `[("off", "true")]` switches off, and
/// for a tool that no rule names `[("per", "pair"), ("each", "1")]` adds a rule. How many by
/// heat are typed as `0.25, 0.5, 0.75`: mild, warm, hot.
///
/// # Errors
/// The [`Fault`] that the changed text would have. Whether a new tool has all it needs shows
/// when the course is planned, because only the tables know which tools are new.
pub fn change_rule(text: &str, item: &str, keys: &[(&str, &str)]) -> Result<String, Fault> {
    let mut document = parsed(text)?;
    let kit = document.entry("kit").or_insert_with(|| {
        let mut kit = Table::new();
        kit.set_implicit(true);
        Item::Table(kit)
    });
    change_in(kit, item, keys)?;
    checked(document, text)
}

/// The text without what it changes of the rule of a tool.
///
/// # Errors
/// The [`Fault`] that the changed text would have.
pub fn take_back_rule(text: &str, item: &str) -> Result<String, Fault> {
    let mut document = parsed(text)?;
    if let Some(kit) = document.get_mut("kit") {
        take_back_in(kit, item);
    }
    checked(document, text)
}

/// Changes the rule of a tool in a table that holds a list of changes, or will.
pub(crate) fn change_in(holder: &mut Item, item: &str, keys: &[(&str, &str)]) -> Result<(), Fault> {
    let change = entry(holder, item).ok_or_else(|| no_such(LIST))?;
    for (key, typed) in keys {
        put(change, key, typed.trim());
    }
    if change.iter().all(|(key, _)| key == "item") {
        take_back_in(holder, item);
    }
    Ok(())
}

/// Removes every change of the rule of a tool, and the list with the last of them.
pub(crate) fn take_back_in(holder: &mut Item, item: &str) {
    let Some(table) = holder.as_table_like_mut() else {
        return;
    };
    let left = match table.get_mut(LIST) {
        Some(Item::ArrayOfTables(tables)) => {
            tables.retain(|one| !is_of(one, item));
            tables.len()
        }
        Some(Item::Value(Value::Array(array))) => {
            array.retain(|one| !one.as_inline_table().is_some_and(|one| is_of(one, item)));
            array.len()
        }
        _ => return,
    };
    if left == 0 {
        table.remove(LIST);
    }
}

fn is_of(change: &dyn TableLike, item: &str) -> bool {
    let named = change.get("item").and_then(Item::as_str);
    named.is_some_and(|named| same_tool(named, item))
}

/// The last change of a tool's rule, because it is the one that counts; a new one if there is
/// none.
fn entry<'d>(holder: &'d mut Item, item: &str) -> Option<&'d mut dyn TableLike> {
    let inline = holder.is_inline_table();
    let list = holder
        .as_table_like_mut()?
        .entry(LIST)
        .or_insert_with(|| match inline {
            true => Item::Value(Value::Array(Array::new())),
            false => Item::ArrayOfTables(ArrayOfTables::new()),
        });
    match list {
        Item::ArrayOfTables(tables) => {
            let of_tool = |(at, one): (usize, &Table)| is_of(one, item).then_some(at);
            let last = tables.iter().enumerate().filter_map(of_tool).last();
            if last.is_none() {
                let mut new = Table::new();
                new.insert("item", Item::Value(text_value(item.trim())));
                tables.push(new);
            }
            let at = last.unwrap_or(tables.len() - 1);
            tables.get_mut(at).map(|it| it as &mut dyn TableLike)
        }
        Item::Value(Value::Array(array)) => {
            let of_tool =
                |(at, one): (usize, &Value)| is_of(one.as_inline_table()?, item).then_some(at);
            let last = array.iter().enumerate().filter_map(of_tool).last();
            if last.is_none() {
                let mut new = InlineTable::new();
                new.insert("item", text_value(item.trim()));
                array.push(new);
            }
            let at = last.unwrap_or(array.len() - 1);
            let table = array.get_mut(at)?.as_inline_table_mut()?;
            Some(table as &mut dyn TableLike)
        }
        _ => None,
    }
}

/// Puts a value in place of the old one, with the space and the comment round it kept.
fn put(change: &mut dyn TableLike, key: &str, typed: &str) {
    if typed.is_empty() {
        change.remove(key);
        return;
    }
    let mut value = value_of(key, typed);
    if let Some(old) = change.get(key).and_then(Item::as_value) {
        *value.decor_mut() = old.decor().clone();
    }
    match change.get_mut(key) {
        Some(item) => *item = Item::Value(value),
        None => {
            change.insert(key, Item::Value(value));
        }
    }
}

fn value_of(key: &str, typed: &str) -> Value {
    let as_text = || text_value(typed);
    if TEXTS.contains(&key) {
        return as_text();
    }
    let by_heat = (key == "each").then(|| by_heat(typed)).flatten();
    by_heat
        .or_else(|| plain_value(typed))
        .unwrap_or_else(as_text)
}

/// `0.25, 0.5, 0.75` as mild, warm and hot.
fn by_heat(typed: &str) -> Option<Value> {
    let numbers: Vec<Value> = typed
        .split([',', ';'])
        .map(|number| plain_value(number.trim()))
        .collect::<Option<_>>()?;
    let [mild, warm, hot] = <[Value; 3]>::try_from(numbers).ok()?;
    let mut table = InlineTable::new();
    for (heat, number) in [("mild", mild), ("warm", warm), ("hot", hot)] {
        table.insert(heat, number);
    }
    Some(Value::InlineTable(table))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Library;
    use crate::course::CourseFile;
    use craft::kit::RuleChange;
    use craft::tables::{Each, Per};

    fn changes(text: &str) -> Vec<RuleChange> {
        CourseFile::parse(text).expect("sound").course.kit.changes
    }

    #[test]
    fn a_rule_is_changed_key_by_key_and_taken_back() {
        let text = Library::example(false);
        let two = change_rule(text, "Spade", &[("each", "2")]).expect("changed");
        assert!(
            two.contains("\n[[kit.rule]]\nitem = \"Spade\"\neach = 2\n"),
            "{two}"
        );
        let why = change_rule(&two, "spade ", &[("why", "7"), ("mass", "2 kg")]).expect("changed");
        let [change] = &changes(&why)[..] else {
            panic!("{why}")
        };
        assert_eq!(change.each, Some(Each::Same(2.0)));
        assert_eq!(change.why.as_deref(), Some("7"));
        let less = change_rule(&why, "SPADE", &[("each", "")]).expect("changed");
        assert_eq!(changes(&less)[0].each, None);
        assert_eq!(take_back_rule(&less, "Spade").expect("taken back"), text);
        // A change that says nothing any more is none.
        let nothing = change_rule(&two, "Spade", &[("each", "")]).expect("changed");
        assert_eq!(nothing, text);
    }

    #[test]
    fn a_rule_is_switched_off_and_another_added() {
        let text = Library::example(true);
        let off = change_rule(text, "Pencil", &[("off", "true")]).expect("off");
        assert_eq!(changes(&off)[0].off, Some(true));
        let keys = [("every", "10"), ("each", "0.5, 1, 1.5"), ("unit", "flask")];
        let tea = change_rule(&off, "Tea", &keys).expect("added");
        let [_, tea] = &changes(&tea)[..] else {
            panic!("{tea}")
        };
        assert_eq!(tea.per, Some(Per::People { every: 10 }));
        assert_eq!(tea.each, Some(Each::ByHeat([0.5, 1.0, 1.5])));
    }

    #[test]
    fn comments_and_other_ways_of_writing_stay() {
        let head = "# Kit as we have it.\n";
        let text = Library::example(false).replace(
            "[kit.on_hand]                    # tools counted so far; what is not named has not been counted\n\"Walling hammer\" = 8\n\"Spade\" = 4\n",
            &format!("{head}[kit]\nrule = [\n  {{ item = \"Spade\", each = 1 }}, # one each\n]\n"),
        );
        assert!(text.contains(head));
        let two = change_rule(&text, "Spade", &[("each", "2")]).expect("changed");
        assert_eq!(two, text.replace("each = 1 }", "each = 2 }"));
        let more = change_rule(&two, "Tape", &[("least", "3")]).expect("changed");
        assert_eq!(changes(&more).len(), 2);
        assert!(more.contains("# one each"));
    }

    #[test]
    fn a_file_without_kit_and_one_with_all_of_it_in_one_line() {
        let text = Library::example(true);
        assert!(!text.lines().any(|line| line.starts_with("[kit")));
        let two = change_rule(text, "Spade", &[("each", "2")]).expect("changed");
        assert_eq!(changes(&two).len(), 1);
        assert_eq!(take_back_rule(&two, "Spade").expect("taken back"), text);
        let line = "kit = { on_hand = { Spade = 4 } }\n[venue]";
        let text = text.replacen("[venue]", line, 1);
        let two = change_rule(&text, "Spade", &[("each", "2")]).expect("changed");
        assert!(
            two.contains("rule = [{ item = \"Spade\", each = 2 }] }"),
            "{two}"
        );
        assert_eq!(take_back_rule(&two, "Spade").expect("taken back"), text);
    }

    #[test]
    fn a_tool_may_have_a_full_stop_in_its_name() {
        let keys = [("per", "group"), ("each", "2")];
        let rule = change_rule(Library::example(false), "No. 5 spanner", &keys).expect("added");
        let key = "kit.on_hand.No. 5 spanner";
        let counted = crate::course::set(&rule, key, "3").expect("counted");
        let held = CourseFile::parse(&counted).expect("sound").course.kit.held;
        assert_eq!(
            held.last(),
            Some(&craft::kit::Held::counted("No. 5 spanner", 3))
        );
        assert_eq!(
            crate::course::values(&counted).get(key).map(String::as_str),
            Some("3")
        );
    }

    #[test]
    fn what_the_file_would_refuse_is_refused() {
        let text = Library::example(false);
        for (keys, code) in [
            (("each", "many"), "wrong-kind"),
            (("each", "-1"), "out-of-range"),
            (("mass", "2"), "not-a-quantity"),
            (("when_short", "steal"), "unknown-word"),
            (("colour", "red"), "unknown-key"),
        ] {
            let fault = change_rule(text, "Spade", &[keys]).expect_err(keys.1);
            assert_eq!(fault.code, code, "{}", fault.what);
            assert!(fault.key.starts_with("kit.rule.0."), "{}", fault.key);
        }
    }
}
