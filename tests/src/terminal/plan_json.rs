//! The plan as JSON: every key that others rely on, with its kind, and the same bytes each time.

use checks::courses::with;
use checks::program::run;
use files::Library;
use serde_json::Value;

fn plan(text: &str) -> String {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("one.walling");
    std::fs::write(&file, text).expect("writes");
    let ran = run(&["plan", &file.display().to_string(), "--json"]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    ran.out
}

fn json(text: &str) -> Value {
    serde_json::from_str(&plan(text)).expect("JSON")
}

/// Keys with their kinds: n number, s text, a list, ? may be null.
const KEYS: &[(&str, &str)] = &[
    ("/wall/length_m", "n"),
    ("/wall/height_m", "n"),
    ("/wall/top_width_m", "n"),
    ("/wall/base_width_m", "n"),
    ("/wall/section_area_m2", "n"),
    ("/wall/body_volume_m3", "n"),
    ("/wall/footing_volume_m3", "n"),
    ("/wall/cope_volume_m3", "n"),
    ("/wall/face_area_m2", "n"),
    ("/wall/sizing/binding", "s"),
    ("/wall/sizing/limits", "a"),
    ("/wall/sizing/limits/0/limit", "s"),
    ("/wall/sizing/limits/0/bound", "s"),
    ("/wall/sizing/limits/0/length_m", "n"),
    ("/frames/count", "n"),
    ("/frames/sets", "n"),
    ("/frames/short", "n?"),
    ("/frames/rows", "a"),
    ("/frames/rows/0/station_m", "n"),
    ("/frames/rows/0/ground_m", "n"),
    ("/frames/rows/0/height_m", "n"),
    ("/frames/rows/0/base_width_m", "n"),
    ("/frames/rows/0/left_offset_m", "n"),
    ("/frames/rows/0/right_offset_m", "n"),
    ("/frames/rows/0/left_rise_m", "n"),
    ("/frames/rows/0/right_rise_m", "n"),
    ("/frames/bars/count", "n"),
    ("/frames/bars/length_m", "n?"),
    ("/frames/bars/needed_length_m", "n"),
    ("/frames/bars/diameter_mm", "n"),
    ("/frames/bars/mass_kg", "n?"),
    ("/frames/caps", "n"),
    ("/frames/moves", "a"),
    ("/frames/strings/0/height_m", "n"),
    ("/frames/strings/0/width_m", "n"),
    ("/stone/solid_density_kg_m3", "n"),
    ("/stone/built_t", "n"),
    ("/stone/to_deliver_t/low", "n"),
    ("/stone/to_deliver_t/mid", "n"),
    ("/stone/to_deliver_t/high", "n"),
    ("/stone/loads", "n?"),
    ("/stone/by_kind/footing_t", "n"),
    ("/stone/by_kind/face_t", "n"),
    ("/stone/by_kind/hearting_t", "n"),
    ("/stone/by_kind/throughs_t", "n"),
    ("/stone/by_kind/copes_t", "n"),
    ("/stone/throughs/count", "n"),
    ("/stone/throughs/rows/0/height_m", "n"),
    ("/stone/throughs/rows/0/length_m", "n"),
    ("/stone/throughs/rows/0/count", "n"),
    ("/stone/copes/count", "n"),
    ("/kit/0/item", "s"),
    ("/kit/0/need", "n"),
    ("/kit/0/have", "n?"),
    ("/kit/0/short", "n?"),
    ("/kit/0/why", "s"),
    ("/people/students", "n"),
    ("/people/pairs", "n"),
    ("/people/stints/0/from_m", "n"),
    ("/people/stints/0/to_m", "n"),
    ("/people/stints/0/members/0", "s"),
    ("/timetable/0/day", "n"),
    ("/timetable/0/start", "s"),
    ("/timetable/0/finish", "s"),
    ("/timetable/0/what", "s"),
    ("/timetable/0/kind", "s"),
    ("/finish/chance", "n"),
    ("/finish/samples", "n"),
    ("/finish/seed", "n"),
    ("/finish/by_stage/0/stage", "s"),
    ("/finish/by_stage/0/p10", "s?"),
    ("/finish/by_stage/0/p50", "s?"),
    ("/finish/by_stage/0/p90", "s?"),
    ("/sun/0/date", "s"),
    ("/sun/0/sunrise", "s?"),
    ("/sun/0/sunset", "s?"),
    ("/sun/0/civil_dawn", "s?"),
    ("/sun/0/civil_dusk", "s?"),
    ("/cautions/0/id", "s"),
    ("/cautions/0/text", "s"),
    ("/cautions/0/source", "s"),
];

#[test]
fn every_key_is_there_with_its_kind() {
    for text in [Library::example(false), Library::example(true)] {
        let plan = json(text);
        for (key, kind) in KEYS {
            let value = plan
                .pointer(key)
                .unwrap_or_else(|| panic!("{key} is missing"));
            let right = match kind.as_bytes()[0] {
                b'n' => value.is_number(),
                b's' => value.is_string(),
                _ => value.is_array(),
            };
            assert!(
                right || (kind.ends_with('?') && value.is_null()),
                "{key}: {value}"
            );
        }
    }
}

#[test]
fn the_same_file_gives_the_same_bytes() {
    assert!(plan(Library::example(false)) == plan(Library::example(false)));
}

/// The clocks go forward in Britain at 01:00 on 28 March 2027 (the last Sunday of March,
/// Summer Time Order 2002).
#[test]
fn times_carry_the_offset_of_their_own_day() {
    let plan = json(&with(&[
        ("date = 2027-04-24", "date = 2027-03-27"),
        ("date = 2027-04-25", "date = 2027-03-28"),
    ]));
    let entries = plan["timetable"].as_array().expect("a list");
    for entry in entries {
        let offset = if entry["day"] == 1 {
            "+00:00"
        } else {
            "+01:00"
        };
        for key in ["start", "finish"] {
            let time = entry[key].as_str().expect("text");
            assert!(time.ends_with(offset), "{time}");
            assert_eq!(time.len(), "2027-03-27T09:00:00+00:00".len(), "{time}");
        }
    }
    assert_eq!(plan["sun"][0]["date"], "2027-03-27");
}

#[test]
fn what_has_no_value_is_null() {
    let uncounted = json(&with(&[
        ("in_stock = 6\n", ""),
        ("[\"5 ft\", \"6 ft\", \"8 ft\"]", "[\"2 ft\"]"),
        ("load = \"10 t\"\n", ""),
    ]));
    for key in [
        "/frames/short",
        "/frames/bars/length_m",
        "/frames/bars/mass_kg",
        "/stone/loads",
    ] {
        assert!(uncounted.pointer(key).is_some_and(Value::is_null), "{key}");
    }
}
