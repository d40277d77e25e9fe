//! Earth pressure as handbooks have it, and full-size trial walls that stood or fell.

use checks::{Found, Row, every_row};
use craft::quantity::{Length, kg_per_m3};
use craft::retaining::{Angles, Bank, Profile, rankine};
use files::quantity::{density, length};

/// Standard gravity in m/s2, exact by definition.
const GRAVITY: f64 = 9.80665;

/// Loose earth as the trial walls held it, in kN/m3 (common practice, no source).
const LOOSE_EARTH: f64 = 15.0;

/// Wall friction as a share of the fill's own, of a rough back (common practice, no source).
const ROUGH: f64 = 2.0 / 3.0;

fn presses(row: &Row) -> Found {
    let [friction, slope] = ["friction", "slope"].map(|column| row.number(column));
    let ours = match row.text("theory") {
        "rankine" => rankine(friction, slope),
        "coulomb" => Angles {
            friction_degrees: friction,
            wall_friction_degrees: row.number("wall_friction"),
            lean_degrees: row.number("back"),
            slope_degrees: slope,
        }
        .coulomb(),
        other => return Err(row.fault(&format!("no such theory: {other}"))),
    };
    let ours = ours.map_err(|error| row.fault(&error.to_string()))?;
    let [theirs, within] = ["coefficient", "within"].map(|column| row.number(column));
    row.near("the coefficient", ours, theirs, within)
}

#[test]
fn a_bank_presses_as_handbooks_say() {
    every_row("earth_pressure.csv", presses);
}

/// The fill behind a trial wall.
#[derive(Clone, Copy)]
struct Fill {
    weight_kn_m3: f64,
    friction: f64,
    /// Wall friction as a share of the fill's own.
    roughness: f64,
}

fn measure(row: &Row, column: &str) -> Length {
    length(row.text(column)).expect("a length")
}

fn checked(row: &Row, fill: Fill, retained: Length) -> craft::retaining::Check {
    let [front, back] = ["front", "back"].map(|column| row.number(column));
    let [height, top] = ["height", "top_width"].map(|column| measure(row, column));
    let bank = Bank {
        retained,
        fill: kg_per_m3(fill.weight_kn_m3 * 1000.0 / GRAVITY),
        friction_degrees: fill.friction,
        wall_friction_degrees: fill.friction * fill.roughness,
        slope_degrees: 0.0,
        load_kpa: 0.0,
        base_friction_degrees: 30.0,
    };
    let built = density(row.text("built")).expect("a density");
    Profile::new(height, top, front, back)
        .and_then(|profile| profile.check(&bank, built))
        .unwrap_or_else(|error| panic!("{}", row.fault(&error.to_string())))
}

/// Safety against overturning, filled to the top.
fn full(row: &Row, fill: Fill) -> f64 {
    checked(row, fill, measure(row, "height")).overturning
}

fn weighs(row: &Row) -> Found {
    let fill = Fill {
        weight_kn_m3: LOOSE_EARTH,
        friction: 33.0,
        roughness: ROUGH,
    };
    let ours = checked(row, fill, measure(row, "height")).weight_kn_m;
    row.near("kN/m", ours, row.number("weight_kn_m"), 0.001)
}

#[test]
fn the_trial_walls_weigh_the_same() {
    every_row("trial_walls.csv", weighs);
}

/// The one unknown of the trials, the fill's friction, from the one wall whose end is known:
/// such that it is just about to tip when filled as high as it was.
fn fitted(weight_kn_m3: f64, roughness: f64) -> Fill {
    let rows = checks::rows("trial_walls.csv");
    let known = |row: &&Row| row.given("fell_at").is_some();
    let fell = rows.iter().find(known).expect("a wall whose end is known");
    let at = measure(fell, "fell_at");
    let with = |friction| Fill {
        weight_kn_m3,
        friction,
        roughness,
    };
    let [mut loose, mut tight] = [15.0, 50.0];
    for _ in 0..50 {
        let middle = f64::midpoint(loose, tight);
        if checked(fell, with(middle), at).overturning < 1.0 {
            loose = middle;
        } else {
            tight = middle;
        }
    }
    let found = with(loose);
    let left = (checked(fell, found, at).overturning - 1.0).abs();
    assert!(left < 1e-9, "no friction makes the wall tip just there");
    found
}

fn ends_as_told(row: &Row, fill: Fill) -> Found {
    let safety = full(row, fill);
    let what = format!(
        "with fill of {} kN/m3 and {:.1} degrees the safety",
        fill.weight_kn_m3, fill.friction
    );
    match row.text("outcome") {
        "stood" => row.between(&what, safety, 1.0, f64::INFINITY),
        "fell" => row.between(&what, safety, 0.0, 1.0),
        other => Err(row.fault(&format!("no such outcome: {other}"))),
    }
}

/// One wall tells the fill; the other three are foretold. What is not known of the fill, its
/// weight and how it rubs on the wall, changes none of it.
#[test]
fn the_trial_walls_stand_and_fall_as_they_did() {
    for weight in [14.0, LOOSE_EARTH, 16.0, 17.0] {
        for roughness in [0.0, 1.0 / 3.0, 0.5, ROUGH, 1.0] {
            let fill = fitted(weight, roughness);
            every_row("trial_walls.csv", |row| ends_as_told(row, fill));
        }
    }
}

/// The loose earth that one wall's end tells of has a friction angle that loose earth has.
#[test]
fn the_fill_that_was_found_is_loose_earth() {
    let friction = fitted(LOOSE_EARTH, ROUGH).friction;
    assert!((30.0..=37.0).contains(&friction), "{friction}");
}

/// Whatever loose fill it was, if the plumb wall fell with 15 to 19 ft behind it: leaning
/// back is safer than a battered front, and that than a plumb front, with the same stone.
/// Fill of less than 28 degrees is not tried: it is no loose dry earth, and against a
/// perfectly rough back the first two come to the same there.
#[test]
fn the_same_stone_leaning_back_is_safer() {
    let rows = checks::rows("trial_walls.csv");
    let [a, b, c, d] = ["A", "B", "C", "D"].map(|name| {
        let named = |row: &&Row| row.text("wall") == name;
        rows.iter().find(named).expect("four walls")
    });
    let [low, high] = ["15 ft", "19 ft"].map(|text| length(text).expect("a length"));
    let mut tried = 0;
    for weight in 13..=17 {
        for roughness in [0.0, 0.25, 1.0 / 3.0, 0.5, ROUGH, 0.75, 1.0] {
            for half_degrees in 56..=100 {
                let fill = Fill {
                    weight_kn_m3: f64::from(weight),
                    friction: f64::from(half_degrees) / 2.0,
                    roughness,
                };
                let stands_low = 1.0 < checked(d, fill, low).overturning;
                if !stands_low || 1.0 < checked(d, fill, high).overturning {
                    continue;
                }
                tried += 1;
                let [a, b, c, d] = [a, b, c, d].map(|row| full(row, fill));
                let told = format!("{weight} kN/m3, {} degrees", fill.friction);
                assert!(b < a, "{told}, A {a}, B {b}");
                assert!(c.max(d) < b, "{told}, B {b}, C {c}, D {d}");
            }
        }
    }
    assert!(100 < tried, "only {tried} fills tried");
}

/// On firm ground (30 degrees, common practice, no source) none of the trial walls slides: they tip or stand.
#[test]
fn no_trial_wall_slides() {
    let fill = fitted(LOOSE_EARTH, ROUGH);
    let rows = checks::rows("trial_walls.csv");
    for row in &rows {
        let check = checked(row, fill, measure(row, "height"));
        assert!(1.0 < check.sliding, "{}", row.fault("it slides"));
    }
}
