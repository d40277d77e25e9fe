//! The tools of a course: what is counted of each, how hot it will be, and rules changed.

use super::rules;
use crate::Fault;
use crate::course::node::Section;
use craft::course::KitGiven;
use craft::kit::{Heat, Held};

pub(super) fn kit(section: &Section<'_>) -> Result<KitGiven, Fault> {
    section.only(&["heat", "on_hand", "rule"])?;
    let held = section
        .section("on_hand")?
        .entries()
        .into_iter()
        .map(|(item, entry)| {
            entry
                .whole(0, 100_000)
                .map(|count| Held::counted(item, count))
        })
        .collect::<Result<_, Fault>>()?;
    let heat = section.get("heat");
    Ok(KitGiven {
        held,
        heat: heat
            .map(|entry| entry.word(&Heat::ALL.map(|heat| (heat.word(), heat))))
            .transpose()?,
        changes: rules::changes(section)?,
    })
}
