//! A course says the same in millimetres, in inches, and shown in either system.

use super::drawn::{Wall, course, millimetres, wall};
use checks::courses::{list, numbers, with};
use proptest::prelude::*;
use serde_json::Value;

/// Lengths of the drawn wall are taken as sixteenths of an inch: 1.5875 mm each.
fn in_inches(sixteenths: u32) -> String {
    let (whole, part) = (sixteenths / 16, sixteenths % 16);
    match (whole, part) {
        (whole, 0) => format!("{whole} in"),
        (0, part) => format!("{part}/16 in"),
        (whole, part) => format!("{whole} {part}/16 in"),
    }
}

fn in_feet(sixteenths: u32) -> String {
    let (feet, rest) = (sixteenths / 192, sixteenths % 192);
    format!("{feet}'{}\"", f64::from(rest) / 16.0)
}

fn in_metres(sixteenths: u32) -> String {
    format!("{} mm", f64::from(sixteenths) * 1.5875)
}

/// Fails where two plans differ in a number or in shape. Words may differ: they name units.
pub fn same(path: &str, a: &Value, b: &Value) -> Result<(), TestCaseError> {
    match (a, b) {
        (Value::Number(a), Value::Number(b)) => {
            let [a, b] = [a, b].map(|it| it.as_f64().expect("a number"));
            prop_assert!(
                (a - b).abs() <= a.abs() * 1e-9 + 1e-12,
                "{path}: {a} and {b}"
            );
        }
        (Value::Array(a), Value::Array(b)) => {
            prop_assert_eq!(a.len(), b.len(), "{} differ in number", path);
            for (at, (a, b)) in a.iter().zip(b).enumerate() {
                same(&format!("{path}/{at}"), a, b)?;
            }
        }
        (Value::Object(a), Value::Object(b)) => {
            prop_assert!(a.keys().eq(b.keys()), "{path}: other keys");
            for (key, a) in a {
                same(&format!("{path}/{key}"), a, &b[key])?;
            }
        }
        (Value::String(_), Value::String(_)) => {}
        (a, b) => prop_assert_eq!(a, b, "{}", path),
    }
    Ok(())
}

/// Fits the bounds of a course file when its numbers are read as sixteenths: all a bit bigger.
fn small(wall: Wall) -> Wall {
    Wall {
        top: wall.top.min(700),
        height: wall.height.min(1500),
        ..wall
    }
}

proptest! {
    #![proptest_config(checks::cases(24))]

    #[test]
    fn inches_feet_and_millimetres_give_the_same_plan(wall in wall()) {
        let wall = small(wall);
        let metric = numbers(&course("metric", &wall.text(in_metres)));
        for write in [in_inches, in_feet] {
            same("", &metric, &numbers(&course("metric", &wall.text(write))))?;
        }
    }

    #[test]
    fn the_system_shown_changes_words_only(wall in wall()) {
        let text = wall.text(millimetres);
        same("", &numbers(&course("metric", &text)), &numbers(&course("imperial", &text)))?;
    }
}

/// By hand: a frame stands in the middle of the wall, and the ground changes its slope there or
/// 20 cm before it.
#[test]
fn a_frame_stands_where_the_ground_changes_its_slope_in_feet_as_in_metres() {
    for (length, spacing, station, told) in [
        ("5.9944 m", "2.9972 m", "2.9972 m", false),
        ("19 ft 8 in", "9 ft 10 in", "9 ft 10 in", false),
        ("5.9944 m", "2.9972 m", "2.7972 m", true),
    ] {
        let ground = format!(
            "top = \"follows ground\"\nground = [ {{ station = \"{station}\", level = \"0.1 m\" }} ]"
        );
        let plan = numbers(&with(&[
            ("length = \"6 m\"", &format!("length = \"{length}\"")),
            (
                "spacing_straight = \"3 m\"",
                &format!("spacing_straight = \"{spacing}\""),
            ),
            ("top = \"level\"", &ground),
        ]));
        let mut cautions = list(&plan, "/cautions").iter();
        assert_eq!(
            cautions.any(|it| it["id"] == "top-bends"),
            told,
            "{station} of {length}"
        );
    }
}
