//! Squareness of a bay, strings on a curve and sagging, the batter gauge as its drawing says it.

use checks::courses::{library, parsed, with};
use checks::{Found, Row, every_row};
use craft::frames;
use craft::plan::plan;
use craft::quantity::{Length, Read, kg_per_m, metres, newtons};
use craft::wall::{Bend, Side};
use drawing::Room;
use files::quantity::length;

/// Standard gravity in m/s2, exact by definition.
const GRAVITY: f64 = 9.80665;

fn is_square(row: &Row) -> Found {
    let [bay, width, diagonal] =
        ["bay", "width", "diagonal"].map(|column| length(row.text(column)).expect("a length"));
    let mut course = parsed(&with(&[("batter = 6", "batter = \"plumb\"")])).course;
    course.wall.top_width = width;
    course.wall.length = Some(bay);
    course.frames.spacing = bay;
    let plan = plan(&course, &library().tables).map_err(|error| row.fault(&error.to_string()))?;
    let bay = plan.frames.bays.first();
    let diagonals = bay
        .ok_or_else(|| row.fault("there is no bay"))?
        .diagonals
        .map(Read::si);
    for ours in diagonals {
        let theirs = diagonal.si();
        row.near(
            "the diagonal in metres",
            ours,
            theirs,
            row.number("within_m"),
        )?;
    }
    Ok(())
}

#[test]
fn a_bay_is_square_when_its_diagonal_says_so() {
    every_row("diagonals.csv", is_square);
}

/// Both ways: the bow that a chord has, and the chord that a bow allows.
fn bows(row: &Row) -> Found {
    let [radius, chord, bow, within, chord_within] =
        ["radius", "chord", "bow", "within", "chord_within"]
            .map(|column| length(row.text(column)).expect("a length"));
    let bend = Bend {
        radius,
        turn: Side::Left,
    };
    let half = |chord: Length| chord.si() / 2.0 / radius.si();
    let bay = radius * (2.0 * half(chord).asin());
    let on_the_line = metres(0.0);
    let ours = frames::bow(bend, Side::Left, on_the_line, bay).si();
    row.near("the bow in metres", ours, bow.si(), within.si())?;
    let apart = frames::spacing_for(bend, Side::Left, on_the_line, bow);
    let straight = 2.0 * radius.si() * half(apart).sin();
    row.near(
        "the chord in metres",
        straight,
        chord.si(),
        chord_within.si(),
    )
}

#[test]
fn a_string_on_a_curve_is_off_it_by_the_sagitta() {
    every_row("bows.csv", bows);
}

fn sags(row: &Row) -> Found {
    let bay = length(row.text("bay")).expect("a length");
    let mass = kg_per_m(row.number("weight_n_m") / GRAVITY);
    let ours = frames::sag(bay, mass, newtons(row.number("pull_n"))).si() * 1000.0;
    // The last figure printed is the sixth behind the point.
    row.near("the sag in mm", ours, row.number("sag_mm"), 0.000_001)
}

#[test]
fn a_string_hangs_in_a_catenary() {
    every_row("sags.csv", sags);
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
