//! `plan --json`: every key that was promised is there, with a value of its kind.

use super::desk::Desk;
use checks::courses::with;
use checks::{Found, Row, every_row};
use chrono::{DateTime, NaiveDate};
use files::Library;
use serde_json::Value;

fn json(text: &str) -> Value {
    let ran = Desk::with_course(text).call("plan", &["--json"]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    serde_json::from_str(&ran.out).expect("JSON and nothing else")
}

const LUNCH: &str = "breaks = [ { name = \"Lunch\"";

const HOT: &str = "weather = { high = \"33 C\", low = \"2 C\", humidity = 0.7, wind = \"30 km/h\", full_sun = true }\n";

/// A wish that can't be had, somebody away, and the first of the wall.
const TOLD: &str = r#"
[[wish]]
lesson = "copes"
day = 1
at = 12:20:00
[[absence]]
who = "Student 3"
day = 2
[[progress]]
day = 1
time = 13:30:00
stage = "dig"
"#;

/// Courses that between them fill every list and have every null.
fn plans() -> Vec<(&'static str, Value)> {
    let leapfrog = with(&[
        ("\"6 m\"", "\"20 m\""),
        ("in_stock = 6", "in_stock = 3"),
        ("leapfrog = false", "leapfrog = true"),
        (
            "stock_lengths = [\"5 ft\", \"6 ft\", \"8 ft\"]",
            "stock_lengths = [\"3 ft\"]",
        ),
        ("load = \"10 t\"\n", ""),
    ]);
    let polar = with(&[
        ("54.2", "78"),
        ("-2.4", "15.6"),
        ("Europe/London", "Arctic/Longyearbyen"),
        ("in_stock = 6\n", ""),
    ]);
    let day = with(&[(LUNCH, &format!("{HOT}{LUNCH}"))]) + TOLD;
    let crowd = with(&[("novices = 6", "novices = 38"), ("\"6 m\"", "\"auto\"")]);
    vec![
        ("a day that is being built", json(&day)),
        ("a crowd", json(&crowd)),
        ("the metric example", json(Library::example(false))),
        ("the imperial example", json(Library::example(true))),
        ("a leapfrog", json(&leapfrog)),
        ("in the polar day", json(&polar)),
    ]
}

/// The values at a path such as `kit[].item`.
fn at<'v>(plan: &'v Value, path: &str) -> Option<Vec<&'v Value>> {
    let mut values = vec![plan];
    for step in path.split('.') {
        // What is null has nothing below it.
        values.retain(|value| !value.is_null());
        let (key, list) = step
            .strip_suffix("[]")
            .map_or((step, false), |key| (key, true));
        values = values
            .into_iter()
            .map(|it| it.get(key))
            .collect::<Option<_>>()?;
        if list {
            let lists: Option<Vec<&Vec<Value>>> = values.iter().map(|it| it.as_array()).collect();
            values = lists?.into_iter().flatten().collect();
        }
    }
    Some(values)
}

fn is_of_kind(value: &Value, kind: &str) -> bool {
    if let Some(kind) = kind.strip_suffix(" or null") {
        return value.is_null() || is_of_kind(value, kind);
    }
    let text = value.as_str();
    match kind {
        "number" => value.as_f64().is_some_and(f64::is_finite),
        "count" => value.as_u64().is_some(),
        "text" => text.is_some_and(|text| !text.trim().is_empty()),
        "time" => text.is_some_and(|text| {
            let offset = text.len() == 25 && text.as_bytes()[10] == b'T';
            offset && DateTime::parse_from_rfc3339(text).is_ok()
        }),
        "date" => text.is_some_and(|text| text.parse::<NaiveDate>().is_ok()),
        words => text.is_some_and(|text| words.split('|').any(|word| word == text)),
    }
}

#[test]
fn every_key_promised_is_there_and_of_its_kind() {
    let plans = plans();
    let check = |row: &Row| -> Found {
        let (path, kind) = (row.text("case"), row.text("kind"));
        let mut looked_at = 0;
        for (name, plan) in &plans {
            let values = at(plan, path).ok_or_else(|| row.fault(&format!("not in {name}")))?;
            looked_at += values.len();
            if let Some(odd) = values.into_iter().find(|value| !is_of_kind(value, kind)) {
                return Err(row.fault(&format!("in {name}: {odd} is not of kind {kind}")));
            }
        }
        if looked_at == 0 {
            return Err(row.fault("no course has one to look at"));
        }
        Ok(())
    };
    every_row("plan_keys.csv", check);
}

/// Where the table allows for null, some course must have it, or the allowance is idle.
#[test]
fn null_stands_where_there_is_no_value() {
    let plans = plans();
    for path in [
        "frames.short",
        "frames.bars.length_m",
        "frames.bars.mass_kg",
        "stone.loads",
        "kit[].have",
        "kit[].short",
        "sun[].sunrise",
        "finish.by_stage[].p90",
    ] {
        let null = plans
            .iter()
            .any(|(_, plan)| at(plan, path).is_some_and(|all| all.iter().any(|it| it.is_null())));
        assert!(null, "{path} is null in no course");
    }
}

#[test]
fn pace_and_elbow_room_are_always_among_the_limits() {
    for (name, plan) in plans() {
        let limits = plan["wall"]["sizing"]["limits"].as_array().expect("limits");
        for (reason, bound) in [("pace", "most"), ("elbow room", "least")] {
            let there = limits
                .iter()
                .any(|limit| limit["limit"] == reason && limit["bound"] == bound);
            assert!(there, "{name}: no {reason}");
        }
    }
}

/// A most wins over a least, and a caution says what would cure it.
#[test]
fn too_many_people_for_the_wall_are_told_what_would_cure_it() {
    let crowd = with(&[
        ("\"6 m\"", "\"auto\""),
        ("longest_wall = \"40 m\"", "longest_wall = \"5 m\""),
        ("novices = 6", "novices = 20"),
    ]);
    let plan = json(&crowd);
    let length = plan["wall"]["length_m"].as_f64().expect("a length");
    assert!(length <= 5.0, "{length}");
    let cautions = plan["cautions"].as_array().expect("cautions");
    let told = cautions.iter().find(|it| it["id"] == "short-of-elbow-room");
    let text = told.expect("a caution")["text"].as_str().expect("words");
    // 22 people are 11 pairs, each with 1.5 m to stand at (common practice, no source).
    assert!(text.contains("16.50 m") && text.contains("cure"), "{text}");
}

#[test]
fn the_same_course_gives_the_same_bytes_wherever_it_is_planned() {
    let text = Library::example(false);
    let here = Desk::with_course(text);
    let there = Desk::with_course(text);
    let first = here.call("plan", &["--json"]).out;
    let mut elsewhere = std::process::Command::new(checks::program::path());
    elsewhere
        .args(["plan", "course.walling", "--json"])
        .current_dir(there.path())
        .env("TZ", "Asia/Tokyo")
        .env("LANG", "de_DE.UTF-8")
        .env("LC_ALL", "tr_TR.UTF-8")
        .env("HOME", "/nowhere")
        .env("RAYON_NUM_THREADS", "1");
    assert_eq!(checks::program::finish(elsewhere.output()).out, first);
    assert_eq!(here.call("plan", &[]).out, here.call("plan", &[]).out);
}

/// What is private stays in the file.
#[test]
fn private_notes_are_in_no_answer() {
    let notes = "[[student]]\nname = \"Ash\"\nprivate = { emergency_contact = \"07700 900123\", \
                 medical = \"bee stings\" }\n[[student]]\nname = \"Elm\"\n[wall]\n";
    let desk = Desk::with_course(&with(&[("[wall]\n", notes)]));
    for (call, rest) in [("plan", &[][..]), ("plan", &["--json"]), ("check", &[])] {
        let ran = desk.call(call, rest);
        assert!(ran.out.contains("Ash") || call == "check", "{}", ran.out);
        for secret in ["900123", "bee stings"] {
            assert!(
                !ran.out.contains(secret) && !ran.err.contains(secret),
                "{call}"
            );
        }
    }
}
