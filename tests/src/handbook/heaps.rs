//! Heaps of stone: what handbooks say they hold, how loose they lie and how far off a trench.

use super::sections::measured;
use checks::{Found, Row, every_row};
use craft::course::StoneKind;
use craft::heaps::loose_volume;
use craft::heaps::shape::{cone, frustum, laid, ridge};
use craft::quantity::{Length, Read, Volume, kg_per_m3, metres, tonnes};
use craft::tables::{HeapTable, Lie};
use files::quantity::length;
use std::f64::consts::PI;

fn size(row: &Row, column: &str) -> Length {
    length(row.text(column)).unwrap_or_else(|wrong| panic!("{}", row.fault(&wrong.what)))
}

fn holds(row: &Row) -> Found {
    let [width, height] = ["width", "height"].map(|column| size(row, column));
    let ours = match row.text("shape") {
        "cone" => cone(width / 2.0, height),
        "frustum" => frustum(width / 2.0, size(row, "top") / 2.0, height),
        "ridge" => ridge(size(row, "length"), width, height),
        "laid" => laid(size(row, "length"), width, height),
        other => return Err(row.fault(&format!("no such shape: {other}"))),
    };
    let [theirs, within] = ["volume", "within"].map(|column| measured(row.text(column)));
    row.near("volume in m3", ours.si(), theirs, within)?;
    let by_slices = prismoidal(row, width, height);
    row.near(
        "volume by the prismoidal rule",
        by_slices,
        ours.si(),
        1e-9 * theirs,
    )
}

/// `h (A0 + 4 Am + A1) / 6`, exact because all these shapes grow evenly narrower upwards.
fn prismoidal(row: &Row, width: Length, height: Length) -> f64 {
    let wide = width.si();
    let area = |up: f64| {
        let left = wide * (1.0 - up);
        match row.text("shape") {
            "cone" => PI / 4.0 * left * left,
            "frustum" => {
                let top = size(row, "top").si();
                PI / 4.0 * (wide + (top - wide) * up).powi(2)
            }
            "ridge" => left * (size(row, "length").si() - wide) + PI / 4.0 * left * left,
            _ => wide * size(row, "length").si(),
        }
    };
    height.si() * (area(0.0) + 4.0 * area(0.5) + area(1.0)) / 6.0
}

#[test]
fn heaps_hold_what_handbooks_say() {
    every_row("heaps.csv", holds);
}

fn table() -> HeapTable {
    files::Library::built_in()
        .expect("the built-in tables")
        .tables
        .heaps
        .clone()
}

fn kind_of(row: &Row, word: &str) -> Result<StoneKind, String> {
    let found = StoneKind::ALL.into_iter().find(|kind| kind.word() == word);
    found.ok_or_else(|| row.fault(&format!("no such kind: {word}")))
}

fn lies(row: &Row) -> Found {
    let table = table();
    let [low, high] = ["low", "high"].map(|column| row.number(column));
    for word in row.text("kinds").split_whitespace() {
        let (voids, lie) = if word == "drainage" {
            (None, table.drainage)
        } else {
            let lying = table.stone(kind_of(row, word)?);
            (Some(lying.loose_voids), lying.lie)
        };
        let ours = match (row.text("figure"), lie) {
            ("voids", _) => voids,
            ("repose", Lie::Heaped { repose_degrees, .. }) => Some(repose_degrees),
            _ => None,
        };
        let ours = ours.ok_or_else(|| row.fault(&format!("{word} has no such figure")))?;
        row.between(
            &format!("{} of {word}", row.text("figure")),
            ours,
            low,
            high,
        )?;
    }
    Ok(())
}

#[test]
fn loose_stone_lies_as_handbooks_say() {
    every_row("loose_stone.csv", lies);
}

/// 29 CFR 1926.651(j)(2): spoil at least 2 ft from the edge of an excavation.
#[test]
fn heaps_keep_as_far_off_a_trench_as_the_regulation_says() {
    assert!(metres(0.61) <= table().clear.trench);
}

/// By hand: 5.8 t of stone of 2500 kg/m3, 0.42 of the heap being air, is 5800 / 1450 = 4 m3.
#[test]
fn mass_to_loose_volume() {
    let volume: Volume = loose_volume(tonnes(5.8), kg_per_m3(2500.0), 0.42);
    assert!((volume.si() - 4.0).abs() < 1e-12, "{volume:?}");
}
