//! What must hold for every rule, group and change.

use crate::conditions::Conditions;
use crate::course::GloveSize;
use crate::kit::sample::{counted, days, group, rule, wearing};
use crate::kit::{Counted, RuleChange, Standing, changed, kit};
use crate::people::pair_count;
use crate::tables::{Applies, Each, KitRule, Per, Way};
use proptest::prelude::*;

fn per() -> impl Strategy<Value = Per> {
    let people = (1_u32..40).prop_map(|every| Per::People { every });
    prop_oneof![proptest::sample::select(Per::ALL.to_vec()), people]
}

/// A rule that does not give way to another in larger groups.
fn any_rule(item: &'static str) -> impl Strategy<Value = KitRule> {
    let figures = (
        0.0..3.0,
        0.0..1.0,
        0_u32..6,
        proptest::option::of(1_u32..30),
    );
    (per(), figures, any::<bool>()).prop_map(
        move |(per, (each, spare, least, from_people), by_size)| KitRule {
            spare,
            least,
            from_people,
            by_size,
            ..rule(item, per, each)
        },
    )
}

fn any_change() -> impl Strategy<Value = RuleChange> {
    let what = proptest::option::of(per());
    let each = proptest::option::of(0.0..3.0);
    let off = proptest::option::of(any::<bool>());
    (what, each, off, 0_u32..9).prop_map(|(per, each, off, least)| RuleChange {
        item: "Spade".to_owned(),
        per,
        each: each.map(Each::Same),
        off,
        least: Some(least),
        way: Some(Way::Hire),
        applies: Some(Applies::Always),
        ..RuleChange::default()
    })
}

/// How many there are of an item, all sizes together.
fn need(rules: &[KitRule], counted: &Counted<'_>, item: &str) -> usize {
    let lines = kit(rules, counted, &[]);
    let of_item = lines.iter().filter(|line| line.rule == item);
    of_item.map(|line| line.need).sum()
}

proptest! {
    #[test]
    fn more_students_never_need_fewer(rule in any_rule("Spade"), students in 1_usize..40, staff in 0_u32..5) {
        let (days, conditions) = (days(), Conditions::just(&[]));
        let (fewer, more) = (group(students, staff, 0), group(students + 1, staff, 0));
        let at = |group, pairs| Counted {
            // The same wall has room for six pairs.
            stints: pair_count(pairs).min(6),
            ..counted(group, &days, &conditions)
        };
        let rules = [rule];
        let few = need(&rules, &at(&fewer, students), "Spade");
        prop_assert!(few <= need(&rules, &at(&more, students + 1), "Spade"));
    }

    #[test]
    fn a_change_leaves_every_other_tool_alone(
        rules in (any_rule("Spade"), any_rule("Tape"), any_rule("Saw")),
        change in any_change(),
        students in 1_usize..40,
    ) {
        let rules = [rules.0, rules.1, rules.2];
        let after = changed(&rules, std::slice::from_ref(&change), Standing::ThisCourse, &[]).expect("changed");
        let (group, days, conditions) = (group(students, 1, 0), days(), Conditions::just(&[]));
        let counted = counted(&group, &days, &conditions);
        let others = |rules: &[KitRule]| {
            let mut lines = kit(rules, &counted, &[]);
            lines.retain(|line| line.rule != "Spade");
            lines
        };
        prop_assert_eq!(others(&rules), others(&after));
        if change.off == Some(true) {
            prop_assert!(kit(&after, &counted, &[]).iter().all(|line| line.rule != "Spade"));
        }
    }

    #[test]
    fn sizes_are_enough_for_all_and_one_to_spare_in_each(
        worn in proptest::collection::vec(0_usize..7, 1..30),
        staff in 0_u32..4,
        spare in 0.0..1.0,
    ) {
        let sizes: Vec<Option<GloveSize>> =
            worn.iter().map(|at| GloveSize::ALL.get(*at).copied()).collect();
        let mut group = wearing(&sizes);
        group.instructors = staff;
        let gloves = KitRule {
            by_size: true,
            spare,
            ..rule("Gloves", Per::Person, 1.0)
        };
        let (days, conditions) = (days(), Conditions::just(&[]));
        let lines = kit(&[gloves], &counted(&group, &days, &conditions), &[]);
        let people = sizes.len() + staff as usize;
        prop_assert!(people <= lines.iter().map(|line| line.need).sum());
        for size in GloveSize::ALL {
            let wear = sizes.iter().filter(|it| **it == Some(size)).count();
            let item = format!("Gloves, {}", size.word());
            match lines.iter().find(|line| line.item == item) {
                Some(line) => prop_assert!(0 < wear && wear < line.need),
                None => prop_assert_eq!(wear, 0),
            }
        }
    }
}
