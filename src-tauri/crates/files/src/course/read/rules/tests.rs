//! Rules of a table and changes of a course: read, and refused at their place.

use super::*;
use crate::Library;
use crate::course::CourseFile;
use craft::kit::Heat;
use craft::quantity::kilograms;

/// A table of one rule with one line of it exchanged for another.
fn with(old: &str, new: &str) -> String {
    let rule = "[[rule]]\nitem = \"Spade\"\nper = \"pair\"\neach = 1\nmass = \"2.2 kg\"\n\
                where = \"at the wall\"\nneeded_for = \"all\"\nwhen_short = \"borrow\"\n\
                why = \"to dig\"\nsource = \"common practice, no source\"\n";
    assert_eq!(rule.matches(old).count(), 1, "{old}");
    rule.replacen(old, new, 1)
}

#[test]
fn what_a_rule_does_not_say_is_as_plain_as_can_be() {
    let rules = kit_rules(&with("each = 1", "each = 1"), &[]).expect("sound");
    let [rule] = &rules[..] else {
        panic!("one rule")
    };
    assert_eq!(
        (rule.per, rule.each, rule.way),
        (Per::Pair, Each::Same(1.0), Way::Borrow)
    );
    assert_eq!((rule.mass, rule.applies), (kilograms(2.2), Applies::Always));
    assert_eq!((rule.spare, rule.least), (0.0, 0));
    assert!(!(rule.off || rule.by_size || rule.limits_frames));
    assert!(!(rule.safety_critical || rule.consumable));
    assert_eq!(rule.source, "common practice, no source");
}

#[test]
fn a_rule_that_could_not_be_is_refused_at_its_line() {
    for (old, new, line, what) in [
        (
            "source = \"common practice, no source\"\n",
            "",
            1,
            "rule 1.source is missing",
        ),
        ("mass = \"2.2 kg\"\n", "", 1, "rule 1.mass is missing"),
        (
            "mass = \"2.2 kg\"",
            "mass = 2.2",
            5,
            "rule 1.mass: a bare number stands where a mass is due",
        ),
        (
            "mass = \"2.2 kg\"",
            "mass_kg = 2.2",
            5,
            "there is no key rule 1.mass_kg",
        ),
        (
            "per = \"pair\"",
            "per = \"pear\"",
            3,
            "rule 1.per: there is no \"pear\" here",
        ),
        (
            "per = \"pair\"",
            "per = \"people\"",
            1,
            "rule 1.every is missing",
        ),
        (
            "per = \"pair\"",
            "per = \"pair\"\nevery = 3",
            4,
            "rule 1.every: only what is shared by so many people has an every",
        ),
        (
            "each = 1",
            "each = 1\nby_size = true",
            5,
            "rule 1.by_size: only students wear a size",
        ),
        (
            "each = 1",
            "each = { mild = 1, hot = 2 }",
            4,
            "rule 1.each.warm is missing",
        ),
        (
            "each = 1",
            "each = 1\nfrom_people = 9\nto_people = 8",
            6,
            "rule 1.to_people: no group has at least 9 and at most 8 people",
        ),
        (
            "each = 1",
            "each = nan",
            4,
            "rule 1.each: this is not a finite number: nan",
        ),
        (
            "item = \"Spade\"",
            "item = \" \"",
            2,
            "rule 1.item: this is empty",
        ),
        (
            "needed_for = \"all\"",
            "needed_for = \"dig\"",
            7,
            "rule 1.needed_for: \"dig\" is not a stage that something could be needed for",
        ),
    ] {
        let text = with(old, new);
        let fault = kit_rules(&text, &[]).expect_err(new);
        let refusal = fault.in_file("kit.toml", &text);
        assert_eq!((refusal.line, refusal.what.as_str()), (line, what), "{new}");
        assert!(!refusal.cure.is_empty());
    }
    let twice = with("each = 1", "each = 1") + &with("Spade", "spade");
    let fault = kit_rules(&twice, &[]).expect_err("twice");
    assert_eq!(fault.what, "rule 2.item: \"spade\" has a rule already");
    assert_eq!(kit_rules("", &[]).expect_err("nothing").code, "missing-key");
}

/// The example course with this below its other tables.
fn course(kit: &str) -> Result<CourseFile, Fault> {
    CourseFile::parse(&format!("{}\n{kit}", Library::example(true)))
}

#[test]
fn a_course_says_how_hot_it_is_and_what_it_changes() {
    let file = course("[kit]\nheat = \"hot\"\n[[kit.rule]]\nitem = \"Barrow\"\nevery = 4\n");
    let kit = file.expect("sound").course.kit;
    assert_eq!(kit.heat, Some(Heat::Hot));
    let due = RuleChange {
        item: "Barrow".to_owned(),
        per: Some(Per::People { every: 4 }),
        ..RuleChange::default()
    };
    assert_eq!(kit.changes, [due]);
    let fault = course("[kit]\nheat = \"warn\"\n").expect_err("a slip");
    assert_eq!(fault.cure, "did you mean \"warm\"?");
}

#[test]
fn a_change_that_can_not_be_made_is_refused_at_its_place() {
    let library = Library::built_in().expect("sound");
    for (kit, key, cure) in [
        (
            "[[kit.rule]]\nitem = \"Barow\"\neach = 2\n",
            "kit.rule.0.item",
            "did you mean \"Barrow\"? Else say how a new one is counted, such as per = \"pair\" and each = 1",
        ),
        (
            "[[kit.rule]]\nitem = \"Tape\"\nneeded_for = \"digg\"\n",
            "kit.rule.0.needed_for",
            "did you mean \"dig\"?",
        ),
        (
            "[kit.on_hand]\n\"Barow\" = 2\n",
            "kit.on_hand",
            "did you mean \"Barrow\"?",
        ),
    ] {
        let file = course(kit).expect("well written");
        let fault = file.plan(&library).expect_err(kit);
        assert_eq!((fault.key.as_str(), fault.cure.as_str()), (key, cure));
        let begins = Library::example(true).len();
        assert!(begins < fault.at, "{kit} is at {}", fault.at);
    }
    // Counted by size, by a new rule's name, and under a rule that is off.
    let known = "[kit.on_hand]\n\"working gloves, M\" = 4\nKettle = 1\nSpade = 2\n\
                 [[kit.rule]]\nitem = \"Kettle\"\nper = \"group\"\neach = 1\n\
                 [[kit.rule]]\nitem = \"spade\"\noff = true\n";
    let plan = course(known).expect("well written").plan(&library);
    let kit = plan.expect("a plan").kit;
    assert!(kit.iter().all(|line| line.item != "Spade"));
    let kettle = kit.last().expect("a line");
    assert_eq!((kettle.item.as_str(), kettle.short), ("Kettle", Some(0)));
}
