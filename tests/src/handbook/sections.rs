//! Walls cut across, batters, and the weight of a cubic metre of wall.

use checks::{Found, Row, every_row};
use craft::quantity::{FOOT_M, Length, Read, metres};
use craft::wall::{Batter, Section, Side, Volumes, Wall};
use files::quantity::length;

pub(super) fn metres_in(row: &Row, column: &str) -> Length {
    length(row.text(column)).unwrap_or_else(|wrong| panic!("{}", row.fault(&wrong.what)))
}

pub(super) fn batter(row: &Row, column: &str) -> Batter {
    if row.text(column) == "plumb" {
        return Batter::PLUMB;
    }
    Batter::one_in(row.number(column)).expect("a batter")
}

/// `6.75 ft2`, `4.125 yd3` in SI.
pub(super) fn measured(text: &str) -> f64 {
    let (number, unit) = text.split_once(' ').expect("a number and its unit");
    let yard = 3.0 * FOOT_M;
    let size = match unit {
        "m2" | "m3" => 1.0,
        "ft2" => FOOT_M.powi(2),
        "ft3" => FOOT_M.powi(3),
        "yd3" => yard.powi(3),
        other => panic!("no such unit: {other}"),
    };
    number.parse::<f64>().expect("a number") * size
}

/// Six figures of the table must agree; it gives no more.
pub(super) fn near(row: &Row, what: &str, ours: f64, theirs: f64) -> Found {
    row.near(what, ours, theirs, theirs * 1e-6)
}

fn adds_up(row: &Row) -> Found {
    let [height, top] = ["height", "top_width"].map(|column| metres_in(row, column));
    let section = Section::new(height, top, batter(row, "left"), batter(row, "right"))
        .map_err(|error| row.fault(&error.to_string()))?;
    if row.given("base_width").is_some() {
        let theirs = metres_in(row, "base_width").si();
        near(
            row,
            "width at the ground",
            section.base_width().si(),
            theirs,
        )?;
        let halves = [Side::Left, Side::Right].map(|side| section.offset(side, height).si());
        near(row, "both offsets together", halves.iter().sum(), theirs)?;
    }
    if let Some(area) = row.given("area") {
        near(row, "area in m2", section.area().si(), measured(area))?;
    }
    if let Some(volume) = row.given("volume") {
        let long = metres_in(row, "length");
        let body = Volumes::of(&Wall::plain(section, long), None, metres(0.0)).body;
        near(row, "volume in m3", body.si(), measured(volume))?;
    }
    Ok(())
}

#[test]
fn sections_add_up() {
    every_row("sections.csv", adds_up);
}

fn leans(row: &Row) -> Found {
    let batter = batter(row, "n");
    let degrees = batter.lean().atan().to_degrees();
    row.near("degrees", degrees, row.number("degrees"), 0.000_05)?;
    let inches = batter.lean() * 12.0;
    row.near("in/ft", inches, row.number("inches_per_foot"), 0.000_01)?;
    let slope = batter.slope_factor();
    row.near("slope length", slope, row.number("slope_factor"), 0.000_001)
}

#[test]
fn batters_lean_as_they_should() {
    every_row("batters.csv", leans);
}
