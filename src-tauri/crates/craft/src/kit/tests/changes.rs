//! Rules changed, added, switched off and on again.

use crate::Error;
use crate::kit::sample::rule;
use crate::kit::{RuleChange, Standing, changed, known_items};
use crate::quantity::kilograms;
use crate::tables::{Crew, Each, KitRule, Per, Stage, Way, Work};

fn table() -> Vec<KitRule> {
    vec![
        rule("Spade", Per::Pair, 1.0),
        KitRule {
            by_size: true,
            ..rule("Gloves", Per::Person, 1.0)
        },
    ]
}

fn stages() -> Vec<Stage> {
    vec![Stage {
        id: "dig".to_owned(),
        name: "Dig".to_owned(),
        work: Work::TrenchCubicMetres,
        crew: Crew::Diggers,
        string: false,
        along: crate::tables::Along::BayByBay,
        beforehand: false,
        note: String::new(),
        if_left: String::new(),
    }]
}

fn change(item: &str) -> RuleChange {
    RuleChange {
        item: item.to_owned(),
        ..RuleChange::default()
    }
}

fn with(changes: &[RuleChange]) -> Result<Vec<KitRule>, Error> {
    changed(&table(), changes, Standing::ThisCourse, &stages())
}

#[test]
fn what_is_not_said_stays_and_the_later_change_wins() {
    let one = RuleChange {
        each: Some(Each::Same(2.0)),
        mass: Some(kilograms(1.6)),
        ..change(" spade ")
    };
    let later = RuleChange {
        each: Some(Each::Same(3.0)),
        ..change("SPADE")
    };
    let rules = with(&[one, later]).expect("changed");
    let due = KitRule {
        each: Each::Same(3.0),
        mass: kilograms(1.6),
        source: "changed for this course".to_owned(),
        ..table().remove(0)
    };
    assert_eq!(rules, [due, table().remove(1)]);
}

#[test]
fn for_good_comes_before_this_course() {
    let good = RuleChange {
        off: Some(true),
        source: Some("weighed at home".to_owned()),
        ..change("Spade")
    };
    let rules = changed(&table(), &[good], Standing::ForGood, &stages()).expect("changed");
    assert!(rules[0].off);
    assert_eq!(rules[0].source, "changed for good: weighed at home");
    let on = RuleChange {
        off: Some(false),
        ..change("Spade")
    };
    let again = changed(&rules, &[on], Standing::ThisCourse, &stages()).expect("changed");
    assert!(!again[0].off);
    assert_eq!(again[0].source, "changed for this course");
}

#[test]
fn a_new_tool_needs_what_it_is_counted_by() {
    let kettle = RuleChange {
        per: Some(Per::Group),
        each: Some(Each::Same(1.0)),
        consumable: Some(true),
        needed_for: Some("dig".to_owned()),
        ..change("Kettle")
    };
    let rules = with(std::slice::from_ref(&kettle)).expect("added");
    let new = &rules[2];
    assert_eq!((new.item.as_str(), new.way), ("Kettle", Way::Buy));
    assert_eq!(new.source, "added for this course");
    let without = RuleChange {
        per: None,
        ..kettle
    };
    let error = with(&[change("Spade"), without]).expect_err("refused");
    assert_eq!(error.key().as_deref(), Some("kit.rule.1.item"));
    assert_eq!(
        error.to_string(),
        "no kit rule is named \"Kettle\", and a new one needs both per and each"
    );
    assert_eq!(
        error.cure_with("Spade"),
        "did you mean \"Spade\"? Else say how a new one is counted, such as per = \"pair\" and each = 1"
    );
}

#[test]
fn one_size_of_a_tool_has_no_rule_of_its_own() {
    let medium = RuleChange {
        per: Some(Per::Group),
        each: Some(Each::Same(1.0)),
        ..change("gloves, m")
    };
    let error = with(&[medium]).expect_err("refused");
    assert_eq!(error.code(), "one-size");
    assert_eq!(
        error.to_string(),
        "\"gloves, m\" is one size of \"Gloves\", whose sizes are counted by one rule"
    );
}

#[test]
fn a_tool_is_needed_for_a_stage_there_is() {
    let misspelt = RuleChange {
        needed_for: Some("digging".to_owned()),
        ..change("Spade")
    };
    let error = with(&[misspelt]).expect_err("refused");
    assert_eq!(error.key().as_deref(), Some("kit.rule.0.needed_for"));
    assert_eq!(error.cure(), "there are: all, dig");
}

#[test]
fn tools_are_known_by_name_and_by_size_even_when_off() {
    let off = RuleChange {
        off: Some(true),
        ..change("Spade")
    };
    let items = known_items(&with(&[off]).expect("changed"));
    assert_eq!(items[..3], ["Spade", "Gloves", "Gloves, XS"]);
    assert_eq!(
        items.last().map(String::as_str),
        Some("Gloves, size not known")
    );
    assert_eq!(items.len(), 9);
}
