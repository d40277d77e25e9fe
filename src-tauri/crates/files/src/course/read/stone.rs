//! The stone of a course.

use crate::Fault;
use crate::course::node::{Entry, Section};
use craft::course::{OnSite, StoneGiven, StoneKind};
use craft::quantity::kilograms;

pub(super) fn stone(section: &Section<'_>) -> Result<StoneGiven, Fault> {
    section.only(&[
        "kind",
        "density",
        "voids",
        "hearting_share",
        "waste",
        "on_site",
        "load",
        "most",
        "lead_days",
    ])?;
    let share = |key: &str| section.get(key).map(|entry| entry.share()).transpose();
    Ok(StoneGiven {
        kind: section
            .get("kind")
            .map(|it| it.text().map(str::to_owned))
            .transpose()?,
        density: section.get("density").map(|it| it.density()).transpose()?,
        voids: share("voids")?,
        hearting_share: share("hearting_share")?,
        waste: share("waste")?,
        on_site: section
            .get("on_site")
            .map_or(Ok(OnSite::Heap(kilograms(0.0))), |entry| on_site(&entry))?,
        load: section.get("load").map(|it| it.mass(false)).transpose()?,
        most: section.get("most").map(|it| it.mass(true)).transpose()?,
        lead_days: section
            .get("lead_days")
            .map(|it| it.whole(0, 250))
            .transpose()?,
    })
}

fn on_site(entry: &Entry<'_>) -> Result<OnSite, Fault> {
    if !entry.is_table() {
        return Ok(OnSite::Heap(entry.mass(true)?));
    }
    let table = entry.table()?;
    table.only(&StoneKind::ALL.map(StoneKind::word))?;
    let kinds = StoneKind::ALL
        .iter()
        .filter_map(|kind| table.get(kind.word()).map(|entry| (*kind, entry)))
        .map(|(kind, entry)| Ok((kind, entry.mass(true)?)))
        .collect::<Result<_, Fault>>()?;
    Ok(OnSite::ByKind(kinds))
}
