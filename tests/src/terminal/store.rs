//! An instructor's own folder: counted tools, own tables, lessons and pages.

use checks::courses::with;
use checks::program::{Ran, run};
use serde_json::Value;
use std::fs;
use std::path::Path;

struct Own {
    folder: tempfile::TempDir,
}

impl Own {
    fn with(files: &[(&str, &str)]) -> Self {
        let own = Self {
            folder: tempfile::tempdir().expect("a folder"),
        };
        own.put("course.walling", &with(&[]));
        for (path, text) in files {
            own.put(&format!("store/{path}"), text);
        }
        own
    }

    fn put(&self, path: &str, text: &str) {
        let file = self.path().join(path);
        fs::create_dir_all(file.parent().expect("a folder")).expect("makes the folder");
        fs::write(file, text).expect("writes");
    }

    fn path(&self) -> &Path {
        self.folder.path()
    }

    fn call(&self, call: &str, rest: &[&str]) -> Ran {
        let course = self.path().join("course.walling").display().to_string();
        let store = self.path().join("store").display().to_string();
        let mut words = vec![call, course.as_str(), "--store", store.as_str()];
        words.extend(rest);
        run(&words)
    }

    fn plan(&self) -> Value {
        let ran = self.call("plan", &["--json"]);
        assert_eq!(ran.code, Some(0), "{}", ran.err);
        serde_json::from_str(&ran.out).expect("JSON")
    }
}

fn line<'p>(plan: &'p Value, item: &str) -> &'p Value {
    let lines = plan["kit"].as_array().expect("a list");
    lines
        .iter()
        .find(|line| line["item"] == item)
        .expect("the tool")
}

#[test]
fn tools_counted_in_the_store_count_unless_the_course_has_counted_them() {
    let own = Own::with(&[(
        "kit.toml",
        "[on_hand]\n\"Spade\" = 1\n\"Walling hammer\" = 1\n",
    )]);
    let plan = own.plan();
    assert_eq!(line(&plan, "Spade")["have"], 1);
    assert_eq!(
        line(&plan, "Walling hammer")["have"],
        20,
        "the course says 20"
    );
    assert_eq!(line(&plan, "Mattock")["have"], Value::Null);
}

#[test]
fn an_own_lesson_takes_its_place_in_the_timetable() {
    let card = "+++\nid = \"knots\"\ntitle = \"Knots that hold\"\nkind = \"lesson\"\nminutes = 15\n\
                before = \"line\"\naims = []\nshow = []\nkit = []\nhazards = []\nmistakes = []\n\
                questions = []\n+++\nTie one.\n";
    let plan = Own::with(&[("lessons/cards/knots.md", card)]).plan();
    let entries = plan["timetable"].as_array().expect("a list");
    assert!(
        entries
            .iter()
            .any(|entry| entry["what"] == "Knots that hold")
    );
}

#[test]
fn an_own_page_is_printed_in_place_of_the_built_in_one() {
    let page = "#set document(title: \"Mine\")\n#let d = json(\"data.json\")\n= Mine: #d.title\n";
    let own = Own::with(&[("lessons/pages/stone-order.typ", page)]);
    let out = own.path().join("pages").display().to_string();
    let ran = own.call("print", &["--out", &out, "--only", "stone-order"]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let built_in = tempfile::tempdir().expect("a folder");
    let course = own.path().join("course.walling").display().to_string();
    let plain = built_in.path().display().to_string();
    assert_eq!(
        run(&["print", &course, "--out", &plain, "--only", "stone-order"]).code,
        Some(0)
    );
    let bytes = |folder: &Path| fs::read(folder.join("stone-order.pdf")).expect("reads");
    assert!(bytes(&own.path().join("pages")) != bytes(built_in.path()));
}

#[test]
fn what_is_broken_is_named_with_its_file_and_line() {
    for (path, text, place) in [
        (
            "kit.toml",
            "[on_hand]\n\"Spade\" = \"four\"\n",
            "kit.toml:2:",
        ),
        (
            "kit.toml",
            "[on_hand]\n\"Sonic spade\" = 4\n",
            "no kit rule names \"Sonic spade\"",
        ),
        (
            "lessons/cards/knots.md",
            "no head\n",
            "knots.md:1:1: a lesson begins with its head",
        ),
        (
            "lessons/tables/bars.toml",
            "[[bar]]\nkey = \"No. 5\"\ndiameter = 16\n",
            "bars.toml:3:",
        ),
    ] {
        let ran = Own::with(&[(path, text)]).call("plan", &[]);
        assert_eq!(ran.code, Some(2), "{path}");
        assert!(ran.err.contains(place), "{path}: {}", ran.err);
        assert!(
            ran.err.contains("so that the built-in one is used"),
            "{path}: {}",
            ran.err
        );
    }
}

#[test]
fn a_broken_page_is_named_with_its_line() {
    let own = Own::with(&[(
        "lessons/pages/stone-order.typ",
        "#set document(title: \"x\")\n#nonsense\n",
    )]);
    let out = own.path().join("pages").display().to_string();
    let ran = own.call("print", &["--out", &out, "--only", "stone-order"]);
    assert_eq!(ran.code, Some(2));
    assert!(ran.err.contains("stone-order.typ"), "{}", ran.err);
    assert!(ran.err.contains("line 2"), "{}", ran.err);
}
