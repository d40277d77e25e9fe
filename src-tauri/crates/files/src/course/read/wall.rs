//! The wall: its section, throughs, footing, top and ends.

use super::{bank, ground, line};
use crate::Fault;
use crate::course::node::{Entry, Section};
use craft::course::{End, ThroughReach, ThroughSize, WallGiven};
use craft::quantity::{Length, metres};
use craft::wall::{Batter, Footing, Top};

pub(super) fn wall(section: &Section<'_>) -> Result<WallGiven, Fault> {
    section.only(&[
        "kind",
        "retained",
        "bank",
        "height",
        "top_width",
        "batter",
        "cope_height",
        "cope_thickness",
        "length",
        "through_rows",
        "through_spacing",
        "through_size",
        "throughs",
        "footing",
        "ends",
        "head_batter",
        "top",
        "steps",
        "line",
        "ground",
    ])?;
    let height = section.need("height", "give the height to the cope, such as \"1.07 m\"")?;
    let height = self::height(&height)?;
    let (left, right) =
        batter(&section.need("batter", "give the n of 1 in n, such as batter = 6")?)?;
    let line = line::line(section)?;
    Ok(WallGiven {
        kind: bank::kind(section)?,
        height,
        top_width: section
            .need(
                "top_width",
                "give the width under the cope, such as \"0.40 m\"",
            )?
            .length(0.1, 2.0)?,
        left,
        right,
        cope_height: cope_height(section)?,
        cope_thickness: optional_length(section, "cope_thickness", 0.02, 1.0, 0.1)?,
        length: line::length(section, &line)?,
        line,
        ground: ground::ground(section)?,
        top: top(section)?,
        through_rows: through_rows(section, height)?,
        through_spacing: optional_length(section, "through_spacing", 0.2, 10.0, 0.9)?,
        through: through_size(&section.section("through_size")?)?,
        through_reach: section
            .get("throughs")
            .map_or(Ok(ThroughReach::Across), |it| {
                it.word(&[
                    ("across", ThroughReach::Across),
                    ("three-quarter", ThroughReach::ThreeQuarters),
                ])
            })?,
        footing: footing(&section.section("footing")?)?,
        trench_dug: section
            .section("footing")?
            .get("dug")
            .map_or(Ok(false), |it| it.truth())?,
        ends: ends(&section.section("ends")?)?,
        head_batter: head_batter(section)?,
    })
}

/// Ground to the underside of the cope.
pub(super) fn height(entry: &Entry<'_>) -> Result<Length, Fault> {
    entry.length(0.2, 5.0)
}

/// None is set where it is left out.
pub(super) fn cope_height(section: &Section<'_>) -> Result<Length, Fault> {
    optional_length(section, "cope_height", 0.0, 1.0, 0.0)
}

/// Level all along, following the ground, or level in steps.
fn top(section: &Section<'_>) -> Result<Top, Fault> {
    let follows = match section.get("top") {
        Some(entry) => entry.word(&[("level", false), ("follows ground", true)])?,
        None => false,
    };
    let Some(entry) = section.get("steps") else {
        return Ok(if follows {
            Top::FollowsGround
        } else {
            Top::Level
        });
    };
    if follows {
        return Err(entry.fault(
            "contradiction",
            "a top that follows the ground has no steps",
            "leave steps out, or write top = \"level\"",
        ));
    }
    let steps = entry.table()?;
    steps.only(&["length", "height"])?;
    let cure = "give each step's length and height: { length = \"3 m\", height = \"0.15 m\" }";
    Ok(Top::Stepped {
        length: steps.need("length", cure)?.length(0.3, 100.0)?,
        height: steps.need("height", cure)?.length(0.01, 2.0)?,
    })
}

pub(super) fn optional_length(
    section: &Section<'_>,
    key: &str,
    least_m: f64,
    most_m: f64,
    otherwise_m: f64,
) -> Result<Length, Fault> {
    section.get(key).map_or(Ok(metres(otherwise_m)), |entry| {
        entry.length(least_m, most_m)
    })
}

fn batter(entry: &Entry<'_>) -> Result<(Batter, Batter), Fault> {
    if !entry.is_table() {
        let both = one_batter(entry)?;
        return Ok((both, both));
    }
    let table = entry.table()?;
    table.only(&["left", "right"])?;
    let side = |key| one_batter(&table.need(key, "give both faces: { left = 6, right = 8 }")?);
    Ok((side("left")?, side("right")?))
}

fn one_batter(entry: &Entry<'_>) -> Result<Batter, Fault> {
    let cure =
        "write 6 for 1 in 6 (from 1 to 1000), or \"plumb\" for a face that rises straight up";
    match entry.as_word() {
        Some("plumb") => return Ok(Batter::PLUMB),
        Some(word) => {
            let what = format!("\"{word}\" is not a batter");
            return Err(entry.fault("not-a-batter", &what, cure));
        }
        None => {}
    }
    let n = entry.any_number(cure)?;
    if !(1.0..=1000.0).contains(&n) {
        return Err(entry.fault("not-a-batter", &format!("1 in {n} is not a batter"), cure));
    }
    Batter::one_in(n).map_err(|error| entry.fault(error.code(), &error.to_string(), cure))
}

fn through_rows(section: &Section<'_>, height: Length) -> Result<Vec<Length>, Fault> {
    let Some(entry) = section.get("through_rows") else {
        return Ok(Vec::new());
    };
    let mut rows = Vec::new();
    for row in entry.list()? {
        let at = row.length(0.0, 5.0)?;
        if height <= at || at <= metres(0.0) {
            return Err(row.fault(
                "through-row",
                &format!(
                    "a row of throughs at {} is not between the ground and the top",
                    row.as_word().unwrap_or_default()
                ),
                "lower the row, raise the wall, or leave the row out",
            ));
        }
        if rows.contains(&at) {
            return Err(row.fault(
                "through-row",
                "this row is there twice",
                "give each row once",
            ));
        }
        rows.push(at);
    }
    Ok(rows)
}

fn through_size(section: &Section<'_>) -> Result<ThroughSize, Fault> {
    section.only(&["width", "thickness", "projection"])?;
    Ok(ThroughSize {
        width: optional_length(section, "width", 0.05, 2.0, 0.3)?,
        thickness: optional_length(section, "thickness", 0.02, 1.0, 0.12)?,
        projection: optional_length(section, "projection", 0.0, 1.0, 0.0)?,
    })
}

fn footing(section: &Section<'_>) -> Result<Option<Footing>, Fault> {
    section.only(&["depth", "outset", "dug"])?;
    if section.entries().is_empty() {
        return Ok(None);
    }
    let depth = section.need("depth", "give the trench's depth, such as \"0.15 m\"")?;
    let footing = Footing {
        depth: depth.length(0.0, 1.5)?,
        outset: optional_length(section, "outset", 0.0, 1.0, 0.0)?,
    };
    Ok((metres(0.0) < footing.depth).then_some(footing))
}

fn ends(section: &Section<'_>) -> Result<[End; 2], Fault> {
    section.only(&["start", "finish"])?;
    let end = |key: &str| {
        section.get(key).map_or(Ok(End::Head), |entry| {
            entry.word(&[
                ("head", End::Head),
                ("joined", End::Joined),
                ("raked", End::Raked),
            ])
        })
    };
    Ok([end("start")?, end("finish")?])
}

/// The batter of built ends; plumb if none is given (common practice, no source).
fn head_batter(section: &Section<'_>) -> Result<[Batter; 2], Fault> {
    let Some(entry) = section.get("head_batter") else {
        return Ok([Batter::PLUMB; 2]);
    };
    if !entry.is_table() {
        return one_batter(&entry).map(|both| [both; 2]);
    }
    let table = entry.table()?;
    table.only(&["start", "finish"])?;
    let end = |key| match table.get(key) {
        Some(entry) => one_batter(&entry),
        None => Ok(Batter::PLUMB),
    };
    Ok([end("start")?, end("finish")?])
}
