//! The instructor's own folder: tools counted, lessons, tables and pages of their own.

use super::desk::Desk;
use checks::courses::{plain, with};
use checks::paper::Paper;
use files::Library;
use serde_json::Value;

/// A desk with the plain course and one file in its store.
fn desk(name: &str, text: &str) -> Desk {
    let desk = Desk::with_course(&plain());
    desk.put(&format!("store/{name}"), text);
    desk
}

fn plan(desk: &Desk) -> Value {
    let store = desk.file("store").display().to_string();
    let ran = desk.call("plan", &["--json", "--store", &store]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    serde_json::from_str(&ran.out).expect("JSON")
}

/// What is wrong with the answer to `--store` with a mistake in one file: it should be exit 2,
/// the file and the line, and a cure.
fn faults(name: &str, text: &str, line: usize) -> Vec<String> {
    let desk = desk(name, text);
    let store = desk.file("store").display().to_string();
    let calls = [
        ("plan", &[][..]),
        ("check", &[]),
        ("print", &["--out", "nowhere"]),
    ];
    let mut faults = Vec::new();
    for (call, rest) in calls {
        let mut rest = rest.to_vec();
        rest.extend(["--store", &store]);
        let ran = desk.call(call, &rest);
        let place = format!("{store}/{name}:{line}:");
        let lines: Vec<&str> = ran.err.lines().collect();
        let named = lines.first().is_some_and(|first| first.starts_with(&place));
        if ran.code != Some(2) || !named || lines.len() < 2 {
            faults.push(format!("{call} with {text:?}: {:?} {}", ran.code, ran.err));
        }
    }
    faults
}

#[test]
fn a_mistake_in_a_file_of_ones_own_is_named_with_file_and_line() {
    let mut all = Vec::new();
    for (name, text, line) in [
        (
            "lessons/tables/kit-own.toml",
            "[[rule]]\nitem = \"Spade\"\neach = -4\n",
            3,
        ),
        (
            "lessons/tables/kit-own.toml",
            "[[rule]]\nitem = \"Moon ladder\"\neach = 1\n",
            2,
        ),
        (
            "lessons/tables/bars.toml",
            "[[bar]]\nkey = \"No. 5\"\ndiameter = 16\n",
            3,
        ),
        (
            "lessons/tables/bars.toml",
            "[[bar]]\nkey = \"No. 5\"\ndiameter = \"16\"\n",
            3,
        ),
        (
            "lessons/tables/stone.toml",
            "lead_working_days = 10\nled_source = \"x\"\n",
            2,
        ),
        ("lessons/tables/stone.toml", "", 1),
        ("lessons/glossary.toml", "[[term]]\nword = \"batter\"\n", 1),
    ] {
        all.extend(faults(name, text, line));
    }
    assert!(all.is_empty(), "\n{}", all.join("\n"));
}

/// A figure that no table may hold is refused as a mistyped word is.
#[test]
fn a_nonsensical_figure_in_a_table_of_ones_own_is_refused() {
    let built_in = |name: &str| {
        let path = checks::root().join("lessons/tables").join(name);
        std::fs::read_to_string(path).expect("a table")
    };
    let mut taken = Vec::new();
    for (name, old, new) in [
        (
            "stone.toml",
            "density_kg_m3 = 2450",
            "density_kg_m3 = -2450",
        ),
        ("stone.toml", "centre = 0.25", "centre = 1.5"),
        ("pace.toml", "novice = 5,", "novice = 0,"),
        (
            "pace.toml",
            "facing_pair = \"1.5 m\"",
            "facing_pair = \"0 m\"",
        ),
        ("bars.toml", "mass_kg_per_m = 0.9941", "mass_kg_per_m = nan"),
    ] {
        let text = built_in(name);
        assert_eq!(text.matches(old).count(), 1, "{old} in {name}");
        let desk = desk(
            &format!("lessons/tables/{name}"),
            &text.replacen(old, new, 1),
        );
        let store = desk.file("store").display().to_string();
        let ran = desk.call("plan", &["--store", &store]);
        if ran.code != Some(2) || !ran.err.contains(name) {
            taken.push(format!("{name} with {new}: {:?} {}", ran.code, ran.err));
        }
    }
    assert!(taken.is_empty(), "\n{}", taken.join("\n"));
}

/// A broken lesson is named, and the rest is there: the built-in one in its place.
#[test]
fn a_broken_lesson_of_ones_own_is_named_and_the_built_in_one_is_used() {
    for (name, text, place, cure) in [
        (
            "my-own.md",
            "no head\n".to_owned(),
            "1:1",
            "this lesson is not there",
        ),
        (
            "copes.md",
            card("copes", 15).replace("first-lift", "frist-lift"),
            "6:10",
            "the built-in lesson of this name is used",
        ),
        (
            "copes.md",
            card("copes", 15).replace("Text.", "Text of {7 hands}."),
            "15:9",
            "the built-in lesson of this name is used",
        ),
    ] {
        let path = format!("lessons/cards/{name}");
        let desk = desk(&path, &text);
        let store = desk.file("store").display().to_string();
        let ran = desk.call("plan", &["--store", &store]);
        assert_eq!(ran.code, Some(0), "{}", ran.err);
        let place = format!("{store}/{path}:{place}: ");
        assert!(ran.err.starts_with(&place), "{place} in {}", ran.err);
        assert!(ran.err.contains(cure), "{}", ran.err);
        assert_eq!(ran.out, desk.call("plan", &[]).out, "{name}");
    }
}

fn card(id: &str, minutes: u32) -> String {
    format!(
        "+++\nid = \"{id}\"\ntitle = \"Frost and stone\"\nkind = \"lesson\"\nminutes = {minutes}\n\
         before = \"first-lift\"\naims = [\"a\", \"b\", \"c\"]\nshow = [\"d\"]\nkit = []\n\
         hazards = []\nmistakes = [\"e\"]\nquestions = [ {{ ask = \"f\", answer = \"g\" }} ]\n\
         +++\n\nText.\n"
    )
}

#[test]
fn a_lesson_of_ones_own_is_in_the_timetable() {
    let desk = desk("lessons/cards/frost.md", &card("frost", 45));
    let plan = plan(&desk);
    let entries = plan["timetable"].as_array().expect("a timetable");
    let own = entries
        .iter()
        .find(|entry| entry["what"] == "Frost and stone");
    assert_eq!(own.expect("the lesson")["kind"], "lesson");
}

#[test]
fn a_table_of_ones_own_takes_the_place_of_the_built_in_one() {
    let path = checks::root().join("lessons/tables/stone.toml");
    let text = std::fs::read_to_string(path).expect("the table");
    let own = "[[stone]]\nkey = \"moonstone\"\nname = \"Moonstone\"\ndensity_kg_m3 = 2345\n\
               low_kg_m3 = 2300\nhigh_kg_m3 = 2400\nsource = \"weighed at home\"\n";
    let desk = Desk::with_course(&with(&[(
        "kind = \"limestone\"\ndensity = \"2600 kg/m3\"",
        "kind = \"moonstone\"",
    )]));
    assert_eq!(desk.call("plan", &[]).code, Some(2));
    desk.put("store/lessons/tables/stone.toml", &format!("{text}\n{own}"));
    assert_eq!(plan(&desk)["stone"]["solid_density_kg_m3"], 2345.0);
}

#[test]
fn a_page_of_ones_own_is_printed() {
    let page = "// My own order. Needs the title.\n#set document(title: \"Mine\")\n\
                = My own order\n#json(\"data.json\").title\n";
    let desk = desk("lessons/pages/stone-order.typ", page);
    let [store, out] = ["store", "out"].map(|name| desk.file(name).display().to_string());
    let rest = ["--out", &out, "--only", "stone-order", "--store", &store];
    let ran = desk.call("print", &rest);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let pdf = std::fs::read(desk.file("out/stone-order.pdf")).expect("a page");
    let text = Paper::new(&pdf).text();
    assert!(
        text.contains("My own order") && text.contains("Plain course"),
        "{text}"
    );
}

/// Without `--store` nothing outside the file counts.
#[test]
fn a_store_counts_only_when_it_is_named() {
    let desk = Desk::with_course(&plain());
    let list = desk.put("list.csv", "item,good\nSpade,99\n");
    let [list, store] = [list, desk.file("store")].map(|it| it.display().to_string());
    let filled = checks::program::run(&["kit", "import", &list, "--store", &store]);
    assert_eq!(filled.code, Some(0), "{}", filled.err);
    let mut command = std::process::Command::new(checks::program::path());
    command
        .args(["plan", "../course.walling", "--json"])
        .current_dir(desk.file("store"))
        .env("HOME", desk.path())
        .env("XDG_CONFIG_HOME", desk.file("store"))
        .env("XDG_DATA_HOME", desk.file("store"));
    let ran = checks::program::finish(command.output());
    assert_eq!(ran.out, desk.call("plan", &["--json"]).out);
}

/// A store that is not there is a mistyped one: nothing is guessed.
#[test]
fn a_store_that_is_not_there_is_told() {
    let desk = Desk::with_course(Library::example(false));
    let store = desk.file("no-such-store").display().to_string();
    let ran = desk.call("plan", &["--store", &store]);
    assert_eq!(
        ran.code,
        Some(2),
        "a store that is not there was passed over"
    );
    assert!(ran.err.contains("no-such-store"), "{}", ran.err);
}
