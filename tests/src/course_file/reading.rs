//! What a course file may say, and how it is understood.

use checks::courses::{changed, list, number, numbers, parsed, plain, with};
use checks::{Found, Row, every_row};
use craft::quantity::Read;
use craft::wall::Side;
use files::Library;
use files::quantity::{density, length, mass, speed, temperature};
use std::collections::BTreeSet;

fn is_read(row: &Row) -> Found {
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
    row.near(text, ours, row.number("si"), 1e-9)
}

#[test]
fn quantities_are_read_as_people_write_them() {
    every_row("quantities.csv", is_read);
}

/// The same spellings in a file: marks for feet and inches stand in either kind of quotes.
#[test]
fn a_file_takes_marks_in_either_kind_of_quotes() {
    for spelled in [r#""3'6\"""#, "'''3'6\"'''", "\"3 ft 6 in\"", "'42 in'"] {
        let text = with(&[("\"1.07 m\"", spelled)]);
        let height = parsed(&text).course.wall.height.si();
        assert!((height - 1.0668).abs() < 1e-12, "{spelled}: {height}");
    }
}

#[test]
fn the_examples_are_understood_and_say_what_they_are() {
    for imperial in [false, true] {
        let text = Library::example(imperial);
        let plan = numbers(text);
        let binding = plan["wall"]["sizing"]["binding"].as_str();
        assert_ne!(binding, Some("given"), "an example sizes its wall");
        assert!(1.0 < number(&plan, "/wall/length_m"));
        assert!(0.8 <= number(&plan, "/finish/chance"));
        let units = if imperial { "imperial" } else { "metric" };
        assert!(text.contains(&format!("units = \"{units}\"")));
        // Every table a course can have is shown in the example.
        for table in ["venue", "group", "wall", "stone", "frames", "pace"] {
            assert!(text.contains(&format!("\n[{table}]")), "{table}");
        }
    }
}

#[test]
fn what_is_left_out_has_its_default() {
    let course = parsed(
        "format = 1\ntitle = \"Bare\"\n[venue]\nlatitude = 54\nlongitude = -2\n\
         time_zone = \"Europe/London\"\n[[day]]\ndate = 2027-04-24\nstart = 09:00:00\n\
         finish = 16:00:00\n[group]\nnovices = 2\n[wall]\nheight = \"1 m\"\n\
         top_width = \"0.4 m\"\nbatter = 6\nfooting = { depth = \"0.2 m\" }\n",
    )
    .course;
    assert_eq!(course.wall.length, None);
    assert!(course.wall.through_rows.is_empty());
    assert!(course.wall.cope_height.si().abs() < 1e-12);
    assert!((course.chance - 0.8).abs() < 1e-12);
    assert_eq!(course.stone.voids, None);
    // In the ground: 0.45 m and the footing's depth.
    assert!((course.frames.embedment.si() - 0.65).abs() < 1e-12);
    assert_eq!(course.frames.in_stock, None);
}

#[test]
fn batters_are_one_number_two_or_a_word() {
    let leans = |batter: &str| {
        let text = with(&[("batter = 6", &format!("batter = {batter}"))]);
        let section = parsed(&text).course.wall.section().expect("a section");
        [Side::Left, Side::Right].map(|side| section.batter(side).n())
    };
    assert_eq!(leans("6"), [Some(6.0), Some(6.0)]);
    assert_eq!(leans("\"plumb\""), [None, None]);
    let [left, right] = leans("{ left = 6.5, right = \"plumb\" }");
    assert!(left.is_some_and(|n| (n - 6.5).abs() < 1e-12) && right.is_none());
}

#[test]
fn a_line_is_as_long_as_its_stretches() {
    let line = "line = [ { straight = \"4 m\" }, { straight = \"3.5 m\" } ]";
    let plan = numbers(&with(&[("length = \"6 m\"", line)]));
    assert!((number(&plan, "/wall/length_m") - 7.5).abs() < 1e-9);
    // A frame stands at the joint.
    let joint = list(&plan, "/frames/rows")
        .iter()
        .any(|row| (number(row, "/station_m") - 4.0).abs() < 1e-9);
    assert!(joint);
    // Stated as well, and agreeing, it is taken.
    let both = format!("{line}\nlength = \"7500 mm\"");
    let stated = numbers(&with(&[("length = \"6 m\"", &both)]));
    assert!((number(&stated, "/wall/length_m") - 7.5).abs() < 1e-9);
}

/// The names of a roster, as the stints have them.
fn names(roster: &str) -> BTreeSet<String> {
    let plan = numbers(&format!("{}\n{roster}", plain()));
    list(&plan, "/people/stints")
        .iter()
        .flat_map(|stint| list(stint, "/members"))
        .filter_map(|name| name.as_str().map(str::to_owned))
        .collect()
}

fn roster(names: &[&str]) -> String {
    names
        .iter()
        .map(|name| format!("[[student]]\nname = \"{name}\"\n"))
        .collect()
}

#[test]
fn a_roster_replaces_the_counts_and_its_names_become_unique() {
    assert_eq!(
        names(&roster(&["Ash", "Ash", "Birch", " Ash "])),
        ["Ash", "Ash (2)", "Ash (3)", "Birch"]
            .map(str::to_owned)
            .into()
    );
    // Someone is really called what a number would have made.
    let tricky = names(&roster(&["Ash (2)", "Ash", "Ash", "Ash (2)"]));
    assert_eq!(tricky.len(), 4, "{tricky:?}");
}

#[test]
fn names_stay_as_they_are_typed() {
    let awkward = "O'Brien-Δημήτρης <b>&amp; 石";
    assert!(names(&roster(&[awkward])).contains(awkward));
}

#[test]
fn a_pace_given_in_the_file_counts() {
    let quick = "footing = { novice = 0.1, improver = 0.1, experienced = 0.1 }";
    let slow = "footing = { novice = 9, improver = 9, experienced = 9 }";
    let old = "footing = { novice = 3, improver = 2, experienced = 1 }";
    let hours = |rate: &str| {
        let plan = numbers(&with(&[(old, rate)]));
        let stages = list(&plan, "/stages");
        let footing = stages.iter().find(|stage| stage["stage"] == "footing");
        number(footing.expect("a footing"), "/hours")
    };
    // Hours go as the rate: 90 times slower, 90 times longer.
    assert!((hours(slow) / hours(quick) - 90.0).abs() < 1e-6);
}

#[test]
fn a_seed_draws_other_courses_and_the_same_again() {
    let chance = |seed: u32| {
        let text = changed(plain(), &[("seed = 7", &format!("seed = {seed}"))]);
        numbers(&text)["finish"].to_string()
    };
    assert_eq!(chance(7), chance(7));
    assert_ne!(chance(7), chance(8));
}
