//! Units of length, mass, density, temperature and speed, as a course file spells them.

use checks::{Found, Row, every_row};
use craft::quantity::Read;
use files::quantity::{density, length, mass, speed, temperature};

fn is_worth(row: &Row) -> Found {
    let text = row.text("text");
    let ours = match row.text("kind") {
        "length" => length(text).map(Read::si),
        "mass" => mass(text).map(Read::si),
        "density" => density(text).map(Read::si),
        "temperature" => temperature(text).map(Read::si),
        "speed" => speed(text).map(Read::si),
        other => return Err(row.fault(&format!("no such kind: {other}"))),
    };
    let ours = ours.map_err(|wrong| row.fault(&wrong.what))?;
    let theirs = row.number("si");
    row.near(text, ours, theirs, theirs * 1e-11)
}

#[test]
fn units_are_worth_what_they_are_worth() {
    every_row("units.csv", is_worth);
}
