//! Squareness of a bay, and the batter gauge as its drawing says it.

use checks::courses::{library, parsed, with};
use checks::{Found, Row, every_row};
use craft::plan::plan;
use craft::quantity::Read;
use drawing::Room;
use files::quantity::length;

fn is_square(row: &Row) -> Found {
    let [bay, width, diagonal] =
        ["bay", "width", "diagonal"].map(|column| length(row.text(column)).expect("a length"));
    let mut course = parsed(&with(&[("batter = 6", "batter = \"plumb\"")])).course;
    course.wall.top_width = width;
    course.wall.length = Some(bay);
    course.frames.spacing = bay;
    let plan = plan(&course, &library().tables).map_err(|error| row.fault(&error.to_string()))?;
    row.near(
        "the diagonal in metres",
        plan.frames.diagonal().si(),
        diagonal.si(),
        row.number("within_m"),
    )
}

#[test]
fn a_bay_is_square_when_its_diagonal_says_so() {
    every_row("diagonals.csv", is_square);
}

fn is_said(row: &Row) -> Found {
    let file = parsed(&with(&[
        ("\"metric\"", &format!("\"{}\"", row.text("units"))),
        ("batter = 6", &format!("batter = {}", row.text("batter"))),
    ]));
    let plan =
        plan(&file.course, &library().tables).map_err(|error| row.fault(&error.to_string()))?;
    let room = Room {
        width_mm: 85.0,
        height_mm: 120.0,
    };
    let words = drawing::gauge(&plan, &file.course, room).description;
    let says = format!(
        "plumb edge {}, {} wide at the top",
        row.text("plumb_edge"),
        row.text("width")
    );
    if words.contains(&says) {
        Ok(())
    } else {
        Err(row.fault(&format!("the drawing does not say \"{says}\": {words}")))
    }
}

#[test]
fn a_batter_gauge_is_as_wide_as_the_trade_makes_it() {
    every_row("gauges.csv", is_said);
}
