//! What the window is allowed: its own pages, the program's own commands, and nothing beyond.

use crate::{desktop, json, read};
use std::collections::BTreeSet;

/// Commands of Tauri itself that the window needs. There are none; a row here wants a reason.
const FROM_TAURI: [&str; 0] = [];

/// All that the pages may load from: themselves, and pictures written into them.
const SOURCES: [&str; 3] = ["'none'", "'self'", "data:"];

/// How the pages speak to the program. The host is no host: the webview takes it up itself.
const TO_THE_PROGRAM: [&str; 2] = ["ipc:", "http://ipc.localhost"];

/// What a list of sources allows beyond what it may.
fn beyond(directive: &str, sources: &str) -> Vec<String> {
    let may = |source: &str| {
        SOURCES.contains(&source)
            || (directive == "connect-src" && TO_THE_PROGRAM.contains(&source))
    };
    let sources = sources.split_whitespace();
    sources
        .filter(|source| !may(source))
        .map(|source| format!("{directive} must not allow {source}"))
        .collect()
}

#[test]
fn pages_load_nothing_from_elsewhere() {
    let settings = json("tauri.conf.json");
    let security = &settings["app"]["security"];
    let rules = security["csp"].as_object().expect("rules for the pages");
    let faults: Vec<String> = rules
        .iter()
        .flat_map(|(directive, sources)| beyond(directive, sources.as_str().expect("sources")))
        .collect();
    assert!(faults.is_empty(), "\n{}\n", faults.join("\n"));
    // What is named here does not fall back on default-src, or would run code.
    for directive in [
        "default-src",
        "object-src",
        "base-uri",
        "form-action",
        "frame-ancestors",
    ] {
        assert_eq!(rules[directive], "'none'", "{directive}");
    }
    for directive in ["script-src", "style-src"] {
        assert_eq!(rules[directive], "'self'", "{directive}");
    }
    for weaker in ["devCsp", "dangerousDisableAssetCspModification"] {
        assert!(security.get(weaker).is_none(), "{weaker}");
    }
    assert_eq!(security["assetProtocol"]["enable"], false);
    assert_eq!(security["freezePrototype"], true);
    assert_eq!(settings["app"]["withGlobalTauri"], false);
}

/// The check above is worth something: it finds what it is there for.
#[test]
fn a_host_elsewhere_is_found() {
    for source in [
        "https://example.org",
        "*",
        "https:",
        "'unsafe-eval'",
        "blob:",
        "ipc:",
    ] {
        assert_eq!(beyond("img-src", source).len(), 1, "{source}");
    }
    assert!(beyond("connect-src", "'self' ipc: http://ipc.localhost").is_empty());
    assert_eq!(beyond("connect-src", "ipc: http://localhost:1420").len(), 1);
}

/// Words in quotation marks in a piece of Rust between two marks.
fn named(text: &str, from: &str, to: &str) -> BTreeSet<String> {
    let inside = text.split(from).nth(1).and_then(|it| it.split(to).next());
    let inside = inside.unwrap_or_else(|| panic!("no {from}"));
    inside
        .split('"')
        .skip(1)
        .step_by(2)
        .map(str::to_owned)
        .collect()
}

#[test]
fn the_window_may_ask_for_the_programs_own_commands_and_nothing_else() {
    let declared = named(&read(&desktop("build.rs")), "COMMANDS: &[&str] = &[", "];");
    assert!(declared.contains("start"), "this check looks at nothing");

    let may = json("capabilities/main.json");
    let allowed: BTreeSet<String> = may["permissions"]
        .as_array()
        .expect("a list")
        .iter()
        .map(|it| {
            it.as_str()
                .expect("a name, and no scope beside it")
                .to_owned()
        })
        .collect();
    let mut due: BTreeSet<String> = declared
        .iter()
        .map(|name| format!("allow-{}", name.replace('_', "-")))
        .collect();
    due.extend(FROM_TAURI.map(str::to_owned));
    assert_eq!(allowed, due, "build.rs and capabilities/main.json differ");
    assert!(
        may.get("remote").is_none(),
        "no page from elsewhere may ask"
    );
    assert_eq!(may["windows"], serde_json::json!(["main"]));
}

/// A command that is declared and has nobody to answer it is a door left in the wall.
#[test]
fn every_command_that_is_allowed_is_answered() {
    let declared = named(&read(&desktop("build.rs")), "COMMANDS: &[&str] = &[", "];");
    let main = read(&desktop("src/main.rs"));
    let handler = main.split("generate_handler![").nth(1);
    let handler = handler.and_then(|it| it.split(']').next()).expect("a list");
    let answered: BTreeSet<String> = handler
        .split(',')
        .map(str::trim)
        .filter(|path| !path.is_empty())
        .filter_map(|path| path.rsplit("::").next())
        .map(str::to_owned)
        .collect();
    assert_eq!(answered, declared, "main.rs and build.rs differ");
}

#[test]
fn there_is_one_capability_and_it_is_the_one_that_counts() {
    let files = std::fs::read_dir(desktop("capabilities")).expect("a folder");
    let files: Vec<_> = files.map(|it| it.expect("a file").file_name()).collect();
    assert_eq!(files, ["main.json"]);
    let settings = json("tauri.conf.json");
    let counts = &settings["app"]["security"]["capabilities"];
    assert_eq!(*counts, serde_json::json!(["main"]));
}
