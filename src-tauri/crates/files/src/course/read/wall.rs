//! The wall and its frames.

use super::NOT_YET;
use crate::Fault;
use crate::course::node::{Entry, Section};
use craft::course::{End, FramesGiven, ThroughSize, WallGiven};
use craft::quantity::{FOOT_M, Length, metres};
use craft::wall::{Batter, Footing};

pub(super) fn wall(section: &Section<'_>) -> Result<WallGiven, Fault> {
    section.only(&[
        "kind",
        "retained",
        "height",
        "top_width",
        "batter",
        "cope_height",
        "cope_thickness",
        "length",
        "through_rows",
        "through_spacing",
        "through_size",
        "footing",
        "ends",
        "top",
        "line",
        "ground",
    ])?;
    refuse_what_is_not_planned_yet(section)?;
    let height = section.need("height", "give the height to the cope, such as \"1.07 m\"")?;
    let height = height.length(0.2, 5.0)?;
    let (left, right) =
        batter(&section.need("batter", "give the n of 1 in n, such as batter = 6")?)?;
    let line = line(section)?;
    Ok(WallGiven {
        height,
        top_width: section
            .need(
                "top_width",
                "give the width under the cope, such as \"0.40 m\"",
            )?
            .length(0.1, 2.0)?,
        left,
        right,
        cope_height: optional_length(section, "cope_height", 0.0, 1.0, 0.0)?,
        cope_thickness: optional_length(section, "cope_thickness", 0.02, 1.0, 0.1)?,
        length: length(section, &line)?,
        joints: joints(&line),
        through_rows: through_rows(section, height)?,
        through_spacing: optional_length(section, "through_spacing", 0.2, 10.0, 0.9)?,
        through: through_size(&section.section("through_size")?)?,
        footing: footing(&section.section("footing")?)?,
        ends: ends(&section.section("ends")?)?,
    })
}

fn refuse_what_is_not_planned_yet(section: &Section<'_>) -> Result<(), Fault> {
    let not_yet = |entry: &Entry<'_>, what: &str| Err(entry.fault("not-yet", what, NOT_YET));
    if let Some(entry) = section.get("kind")
        && entry.word(&[("freestanding", false), ("retaining", true)])?
    {
        return not_yet(&entry, "a retaining wall can't be planned yet");
    }
    if let Some(entry) = section.get("retained") {
        entry.word(&[("left", ()), ("right", ())])?;
        return not_yet(&entry, "a retaining wall can't be planned yet");
    }
    if let Some(entry) = section.get("ground") {
        return not_yet(&entry, "uneven ground can't be planned yet");
    }
    if let Some(entry) = section.get("top") {
        // On level ground a level top and one that follows the ground are the same.
        entry.word(&[("level", ()), ("follows ground", ())])?;
    }
    Ok(())
}

fn optional_length(
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

/// The stretches of a given line, all straight; nothing if no line is given.
fn line(section: &Section<'_>) -> Result<Vec<Length>, Fault> {
    let mut stretches = Vec::new();
    for stretch in section.tables("line")? {
        stretch.only(&["straight", "arc", "radius", "turn"])?;
        if let Some(arc) = stretch.get("arc") {
            return Err(arc.fault("not-yet", "a curved wall can't be planned yet", NOT_YET));
        }
        for curved in ["radius", "turn"] {
            if let Some(entry) = stretch.get(curved) {
                return Err(entry.fault("not-yet", "only an arc has this", NOT_YET));
            }
        }
        let straight = stretch.need("straight", "give its length: { straight = \"4 m\" }")?;
        stretches.push(straight.length(0.1, 400.0)?);
    }
    Ok(stretches)
}

fn sum(line: &[Length]) -> Length {
    line.iter().fold(metres(0.0), |sum, stretch| sum + *stretch)
}

fn joints(line: &[Length]) -> Vec<Length> {
    (1..line.len())
        .map(|stretches| sum(&line[..stretches]))
        .collect()
}

/// The given length; a line's length is the sum of its stretches.
fn length(section: &Section<'_>, line: &[Length]) -> Result<Option<Length>, Fault> {
    let summed = (!line.is_empty()).then(|| sum(line));
    let Some(entry) = section.get("length") else {
        return Ok(summed);
    };
    if entry.as_word() == Some("auto") {
        if summed.is_some() {
            return Err(entry.fault(
                "not-yet",
                "the length of a given line can't be sized to the group yet",
                "leave length out, or leave the line out",
            ));
        }
        return Ok(None);
    }
    if entry
        .as_word()
        .is_some_and(|word| word.chars().all(char::is_alphabetic))
    {
        return entry.word(&[("auto", None)]);
    }
    let length = entry.length(0.25, 400.0)?;
    match summed {
        Some(sum) if 1e-6 < (length - sum).abs().value => Err(entry.fault(
            "line-and-length",
            &format!("the stretches of the line add up to {:.2} m", sum.value),
            "leave length out, or make the two agree",
        )),
        _ => Ok(Some(length)),
    }
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
    section.only(&["depth", "outset"])?;
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

pub(super) fn frames(
    section: &Section<'_>,
    footing_depth: Option<Length>,
) -> Result<FramesGiven, Fault> {
    section.only(&[
        "kind",
        "in_stock",
        "set_size",
        "leapfrog",
        "spacing_straight",
        "spacing_curve",
        "bar",
        "stock_lengths",
        "embedment",
        "projection",
    ])?;
    if let Some(entry) = section.get("kind")
        && entry.word(&[("bar", false), ("timber", true)])?
    {
        return Err(entry.fault("not-yet", "timber frames can't be planned yet", NOT_YET));
    }
    // Read so that a mistake is found; it matters only on curves.
    optional_length(section, "spacing_curve", 0.3, 20.0, 1.5)?;
    let beyond_footing = 0.45 + footing_depth.map_or(0.0, |depth| depth.value);
    Ok(FramesGiven {
        in_stock: section
            .get("in_stock")
            .map(|entry| entry.whole(0, 10_000))
            .transpose()?,
        set_size: section
            .get("set_size")
            .map_or(Ok(1), |entry| entry.whole(1, 100))?,
        leapfrog: section
            .get("leapfrog")
            .map_or(Ok(false), |entry| entry.truth())?,
        spacing: optional_length(section, "spacing_straight", 0.3, 20.0, 3.0)?,
        bar: section
            .get("bar")
            .map_or(Ok("No. 5"), |entry| entry.text())?
            .to_owned(),
        stock_lengths: stock_lengths(section)?,
        embedment: optional_length(section, "embedment", 0.0, 3.0, beyond_footing)?,
        projection: optional_length(section, "projection", 0.0, 1.0, 0.14)?,
    })
}

/// The lengths bars are bought in; 5, 6 and 8 ft if none is given (common practice, no
/// source).
fn stock_lengths(section: &Section<'_>) -> Result<Vec<Length>, Fault> {
    match section.get("stock_lengths") {
        Some(entry) => entry
            .list()?
            .iter()
            .map(|one| one.length(0.3, 12.0))
            .collect(),
        None => Ok([5.0, 6.0, 8.0].map(|feet| metres(feet * FOOT_M)).to_vec()),
    }
}
