//! The stone of a course.

use crate::Fault;
use crate::course::node::{Entry, Section};
use chrono::NaiveDate;
use craft::course::{OldWall, OnSite, StoneGiven, StoneKind, WallGiven};
use craft::quantity::{Length, kilograms, metres};
use craft::wall::Footing;

pub(super) fn stone(section: &Section<'_>, wall: &WallGiven) -> Result<StoneGiven, Fault> {
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
        "closed",
        "old_wall",
        "practice_pitch",
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
        closed: closed(section)?,
        old_wall: section
            .get("old_wall")
            .map(|it| old_wall(&it.table()?, wall))
            .transpose()?,
        practice_pitch: section
            .get("practice_pitch")
            .map_or(Ok(false), |it| it.truth())?,
    })
}

fn closed(section: &Section<'_>) -> Result<Vec<NaiveDate>, Fault> {
    let Some(entry) = section.get("closed") else {
        return Ok(Vec::new());
    };
    entry.list()?.iter().map(Entry::date).collect()
}

/// An old wall to strip out, by its own measurements; what is not said is as in the
/// new wall, save that it has a cope and a footing only where they are given.
fn old_wall(section: &Section<'_>, wall: &WallGiven) -> Result<OldWall, Fault> {
    section.only(&[
        "length",
        "height",
        "base_width",
        "top_width",
        "cope_height",
        "footing",
        "reused",
    ])?;
    let like = |key: &str, new: Length| {
        section
            .get(key)
            .map_or(Ok(new), |entry| entry.length(0.05, 5.0))
    };
    let (height, top) = (
        like("height", wall.height)?,
        like("top_width", wall.top_width)?,
    );
    // It leans as the new wall does.
    let lean = wall
        .section()
        .map_or(metres(0.0), |it| it.base_width() - wall.top_width);
    let base = top + lean * (height / wall.height);
    Ok(OldWall {
        length: section
            .need(
                "length",
                "say how much of the old wall is stripped out, such as \"9 m\"",
            )?
            .length(0.05, 400.0)?,
        height,
        base_width: like("base_width", base)?,
        top_width: top,
        cope_height: section
            .get("cope_height")
            .map_or(Ok(metres(0.0)), |it| it.length(0.0, 1.0))?,
        footing: section
            .get("footing")
            .map(|it| footing(&it.table()?))
            .transpose()?,
        reused: section.get("reused").map(|it| it.share()).transpose()?,
    })
}

fn footing(section: &Section<'_>) -> Result<Footing, Fault> {
    section.only(&["depth", "outset"])?;
    Ok(Footing {
        depth: section
            .need("depth", "give the depth of the old footing")?
            .length(0.0, 3.0)?,
        outset: section
            .get("outset")
            .map_or(Ok(metres(0.0)), |it| it.length(0.0, 2.0))?,
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
