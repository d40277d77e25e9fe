//! Tools that come in sizes: a line for each size that students wear, and one for those whose
//! size nobody has said.

use super::count::{Counted, plain, spare, whole};
use super::line::{KitLine, line};
use super::named::HeldByName;
use crate::course::GloveSize;
use crate::tables::{KitRule, Per};

/// How a line in one size is named: `Working gloves, M`; `None` for a size not known.
pub fn sized(item: &str, size: Option<GloveSize>) -> String {
    let size = size.map_or("size not known", GloveSize::word);
    format!("{item}, {size}")
}

/// Every name that a line of this tool may have.
pub(super) fn names(item: &str) -> impl Iterator<Item = String> {
    let sizes = GloveSize::ALL.into_iter().map(Some).chain([None]);
    sizes.map(move |size| sized(item, size))
}

/// A line for each size, the smallest first, and one for those whose size is not known: staff
/// among them, where the rule is per person.
pub(super) fn lines(rule: &KitRule, counted: &Counted<'_>, held: &HeldByName<'_>) -> Vec<KitLine> {
    let students = &counted.group.students;
    let wear = |size| students.iter().filter(|it| it.gloves == size).count();
    let by_size = GloveSize::ALL.into_iter().filter_map(|size| {
        let people = wear(Some(size));
        (0 < people).then(|| of_size(rule, size, people, counted, held))
    });
    let staff = if rule.per == Per::Person {
        counted.staff()
    } else {
        0
    };
    let unsaid = wear(None) + staff;
    let not_known = (0 < unsaid).then(|| of_no_size(rule, unsaid, counted, held));
    by_size.chain(not_known).collect()
}

/// Spares are rounded up in each size, and there is at least one: who wears M can't change
/// into an L.
fn of_size(
    rule: &KitRule,
    size: GloveSize,
    people: usize,
    counted: &Counted<'_>,
    held: &HeldByName<'_>,
) -> KitLine {
    let each = counted.each(rule);
    let worn = each * people as f64;
    let one_spare = if 0.0 < worn { whole(worn) + 1 } else { 0 };
    let with_spares = whole(worn * (1.0 + rule.spare)).max(one_spare);
    let need = with_spares.max(rule.least as usize);
    let why = format!(
        "{} per {}, {people} who wear {}{}, at least one spare: {}",
        plain(each),
        rule.per.word(),
        size.word(),
        spare(rule),
        rule.why
    );
    let item = sized(&rule.item, Some(size));
    let known = held.get(&item);
    line(rule, item, (need, why), known, None)
}

/// Counted together, sizes mixed. What is held under the tool's own name counts here: nobody
/// has said which sizes it is.
fn of_no_size(
    rule: &KitRule,
    people: usize,
    counted: &Counted<'_>,
    held: &HeldByName<'_>,
) -> KitLine {
    let each = counted.each(rule);
    let worn = each * people as f64;
    let need = whole(worn * (1.0 + rule.spare)).max(rule.least as usize);
    let why = format!(
        "{} per {}, {people} whose size nobody has said (ask them){}: {}",
        plain(each),
        rule.per.word(),
        spare(rule),
        rule.why
    );
    let item = sized(&rule.item, None);
    let known = held.get(&item).or_else(|| held.get(&rule.item));
    line(rule, item, (need, why), known, None)
}
