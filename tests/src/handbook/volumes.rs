//! Walls whose height changes against the prismoidal rule, and walls on a curve against cones.

use super::sections::{batter, measured, metres_in, near};
use checks::{Found, Row, every_row};
use craft::quantity::{Length, Read, metres};
use craft::wall::{Bend, Ground, Line, Section, Side, Stretch, Survey, Top, Volumes, Wall};
use files::quantity::length;
use std::f64::consts::TAU;

fn section(row: &Row, height: Length) -> Result<Section, String> {
    let top = metres_in(row, "top_width");
    Section::new(height, top, batter(row, "left"), batter(row, "right"))
        .map_err(|error| row.fault(&error.to_string()))
}

fn body(wall: &Wall) -> f64 {
    Volumes::of(wall, None, metres(0.0)).body.si()
}

/// One part of a prismoid: a wall with a level top on ground that rises evenly.
fn part(row: &Row, apart: Length, ends: [Length; 2]) -> Result<f64, String> {
    // Station 0 is the deeper end, for there the height is given.
    let [low, high] = ends.map(Read::si);
    let [deep, shallow] = [low.max(high), low.min(high)];
    let level = |station: Length, level: f64| Survey {
        station,
        level: metres(level),
        left: metres(level),
        right: metres(level),
    };
    let wall = Wall {
        section: section(row, metres(deep))?,
        line: Line::straight(apart),
        ground: Ground::new(vec![level(metres(0.0), 0.0), level(apart, deep - shallow)]),
        top: Top::Level,
    };
    Ok(body(&wall))
}

fn area(row: &Row, height: Length) -> Result<f64, String> {
    if height == metres(0.0) {
        return Ok(0.0);
    }
    Ok(section(row, height)?.area().si())
}

fn is_a_prismoid(row: &Row) -> Found {
    let apart = metres_in(row, "apart");
    let heights: Vec<Length> = row
        .text("heights")
        .split(';')
        .map(|text| length(text).expect("a height"))
        .collect();
    let [mut volume, mut end_areas] = [0.0, 0.0];
    for ends in heights.windows(2) {
        volume += part(row, apart, [ends[0], ends[1]])?;
        end_areas += (area(row, ends[0])? + area(row, ends[1])?) / 2.0 * apart.si();
    }
    let theirs = ["volume", "end_areas"].map(|column| measured(row.text(column)));
    near(row, "volume in m3", volume, theirs[0])?;
    near(row, "volume by end areas in m3", end_areas, theirs[1])
}

#[test]
fn a_wall_whose_height_changes_is_a_prismoid() {
    every_row("prismoids.csv", is_a_prismoid);
}

fn is_turned(row: &Row) -> Found {
    let radius = metres_in(row, "radius");
    let turn = match row.text("turn") {
        "left" => Side::Left,
        "right" => Side::Right,
        other => return Err(row.fault(&format!("no such turn: {other}"))),
    };
    let arc = Stretch {
        length: radius * (TAU * row.number("share")),
        bend: Some(Bend { radius, turn }),
    };
    let mut wall = Wall::plain(section(row, metres_in(row, "height"))?, arc.length);
    wall.line = Line::of_length(&[arc], arc.length);
    near(
        row,
        "volume in m3",
        body(&wall),
        measured(row.text("volume")),
    )
}

#[test]
fn a_wall_on_a_curve_is_turned_like_a_pot() {
    every_row("rings.csv", is_turned);
}
