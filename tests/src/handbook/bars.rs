//! What bars weigh, and which stock length a frame takes.

use checks::courses::{library, plan, with};
use checks::{Found, Row, every_row};
use craft::quantity::{FOOT_M, POUND_KG, Read};
use files::quantity::length;

/// One pound to the foot in kilograms to the metre.
const LB_PER_FT: f64 = POUND_KG / FOOT_M;

fn weighs(row: &Row) -> Found {
    let bar = library()
        .tables
        .bars
        .iter()
        .find(|bar| bar.key == row.text("bar"))
        .ok_or_else(|| row.fault("there is no such bar"))?;
    let unit = match row.text("unit") {
        "lb/ft" => LB_PER_FT,
        "kg/m" => 1.0,
        other => return Err(row.fault(&format!("no such unit: {other}"))),
    };
    let theirs = row.number("mass") * unit;
    row.near(
        "the mass of a metre",
        bar.mass.si(),
        theirs,
        theirs * row.number("within") / 100.0,
    )?;
    let diameter = length(row.text("diameter")).map_err(|wrong| row.fault(&wrong.what))?;
    row.near("the diameter", bar.diameter.si(), diameter.si(), 1e-9)
}

#[test]
fn bars_weigh_what_the_standard_says() {
    every_row("bars.csv", weighs);
}

#[test]
fn every_bar_of_the_table_is_vouched_for() {
    let rows = checks::rows("bars.csv");
    for bar in &library().tables.bars {
        let named = rows.iter().any(|row| row.text("bar") == bar.key);
        assert!(named, "bars.csv has no row for {}", bar.key);
    }
}

fn serves(row: &Row) -> Found {
    let plan = plan(&with(&[
        ("\"1.07 m\"", &format!("\"{}\"", row.text("height"))),
        ("batter = 6", &format!("batter = {}", row.text("batter"))),
        ("\"0.45 m\"", &format!("\"{}\"", row.text("embedment"))),
        ("\"0.14 m\"", &format!("\"{}\"", row.text("projection"))),
    ]));
    let ours = plan.frames.bars.and_then(|bars| bars.chosen).map(Read::si);
    let theirs = row
        .given("chosen")
        .map(|text| length(text).expect("a length").si());
    match (ours, theirs) {
        (None, None) => Ok(()),
        (Some(ours), Some(theirs)) => row.near("the bar in metres", ours, theirs, 1e-9),
        _ => Err(row.fault(&format!("the bar is {ours:?}, the table says {theirs:?}"))),
    }
}

#[test]
fn the_shortest_bar_that_serves_is_taken() {
    every_row("bar_lengths.csv", serves);
}
