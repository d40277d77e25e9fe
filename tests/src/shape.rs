//! The shape of the house: who may lean on whom, how files open, how long they may be.

use checks::root;
use std::collections::HashMap;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::{LazyLock, Mutex};

/// Our own crates, by their package names.
const OURS: [&str; 11] = [
    "craft",
    "store",
    "drawing",
    "shapes",
    "files",
    "press",
    "documents",
    "terminal",
    "xtask",
    "checks",
    "coursewright-desktop",
];

/// What draws windows; only the desktop program may reach any of it.
const WINDOWS: [&str; 5] = ["tauri", "wry", "tao", "webkit2gtk", "gtk"];

/// Files a crate reaches, and what it serialises with, that the sums know nothing of.
const NOT_FOR_SUMS: [&str; 8] = [
    "serde",
    "serde_json",
    "serde_core",
    "toml_edit",
    "typst",
    "include_dir",
    "tempfile",
    "ts-rs",
];

/// Packages a crate reaches, directly or through others, itself left out. Asked for once.
fn reached(package: &str) -> Vec<String> {
    static KNOWN: LazyLock<Mutex<HashMap<String, Vec<String>>>> = LazyLock::new(Mutex::default);
    let mut known = KNOWN.lock().unwrap_or_else(|broken| broken.into_inner());
    let tree = known
        .entry(package.to_owned())
        .or_insert_with(|| tree(package));
    tree.clone()
}

fn tree(package: &str) -> Vec<String> {
    let output = Command::new(env!("CARGO"))
        .args(["tree", "-p", package, "-e", "normal", "--prefix", "none"])
        .args(["--format", "{p}"])
        .current_dir(root())
        .output()
        .expect("cargo tree runs");
    let said = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{said}");
    let tree = String::from_utf8_lossy(&output.stdout).into_owned();
    let mut names: Vec<String> = tree
        .lines()
        .filter_map(|line| line.split(' ').next())
        .filter(|name| !name.is_empty() && *name != package)
        .map(str::to_owned)
        .collect();
    names.sort();
    names.dedup();
    names
}

/// Those of `banned` that a crate reaches.
fn strays(package: &str, banned: impl Fn(&str) -> bool) -> Vec<String> {
    reached(package)
        .into_iter()
        .filter(|name| banned(name))
        .map(|name| format!("{package} must not reach {name}"))
        .collect()
}

fn none(faults: &[String]) {
    assert!(faults.is_empty(), "\n{}\n", faults.join("\n"));
}

#[test]
fn the_sums_know_of_no_files_no_json_and_no_screen() {
    let banned = |name: &str| {
        NOT_FOR_SUMS.contains(&name)
            || OURS.contains(&name)
            || WINDOWS.contains(&name)
            || name.starts_with("typst")
    };
    none(&strays("craft", banned));
}

/// Of our own crates each may reach those named beside it, and no other.
#[test]
fn crates_lean_only_downwards() {
    let lean: [(&str, &[&str]); 8] = [
        ("craft", &[]),
        ("press", &[]),
        ("xtask", &[]),
        ("drawing", &["craft"]),
        ("shapes", &["craft"]),
        ("files", &["craft"]),
        ("store", &["craft"]),
        (
            "documents",
            &["craft", "drawing", "shapes", "files", "press", "store"],
        ),
    ];
    let mut faults = Vec::new();
    for (package, may) in lean {
        faults.extend(strays(package, |name| {
            OURS.contains(&name) && !may.contains(&name)
        }));
    }
    none(&faults);
}

#[test]
fn drawings_need_nothing_beyond_the_sums() {
    let through_craft = reached("craft");
    let banned = |name: &str| name != "craft" && !through_craft.iter().any(|it| it == name);
    none(&strays("drawing", banned));
}

#[test]
fn only_the_press_and_what_prints_with_it_reach_the_typesetter() {
    let mut faults = Vec::new();
    for package in ["drawing", "shapes", "files", "xtask"] {
        faults.extend(strays(package, |name| name.starts_with("typst")));
    }
    none(&faults);
    assert!(reached("press").iter().any(|name| name == "typst"));
}

#[test]
fn only_the_desktop_program_reaches_the_window() {
    let banned = |name: &str| {
        WINDOWS.contains(&name) || name.starts_with("tauri") || name.starts_with("webkit")
    };
    let mut faults = Vec::new();
    for package in OURS {
        if package != "coursewright-desktop" {
            faults.extend(strays(package, banned));
        }
    }
    none(&faults);
    let desktop = reached("coursewright-desktop");
    assert!(
        desktop.iter().any(|name| name == "tauri"),
        "this check looks at nothing"
    );
}

/// Every crate in the tree is named in [`OURS`], or the checks above would pass it by.
#[test]
fn every_crate_of_ours_is_looked_at() {
    let mut faults = Vec::new();
    for file in files(&root(), &["toml"]) {
        if file.file_name().is_none_or(|name| name != "Cargo.toml") {
            continue;
        }
        let text = read(&file);
        let name = text
            .lines()
            .find_map(|line| line.strip_prefix("name = \"")?.strip_suffix('"'));
        let package = text.contains("[package]");
        if package && !name.is_some_and(|name| OURS.contains(&name)) {
            faults.push(format!("{}: a crate not looked at", file.display()));
        }
    }
    none(&faults);
}

/// Files with one of these endings, tools' own folders left out.
fn files(folder: &Path, endings: &[&str]) -> Vec<PathBuf> {
    let mut found = Vec::new();
    let mut queue = vec![folder.to_owned()];
    while let Some(folder) = queue.pop() {
        for entry in std::fs::read_dir(&folder).expect("a folder") {
            let path = entry.expect("an entry").path();
            let name = path.file_name().unwrap_or_default().to_string_lossy();
            let made = ["target", "node_modules", "dist"].contains(&&*name);
            if path.is_dir() && !made && !name.starts_with('.') {
                queue.push(path);
            } else if path
                .extension()
                .is_some_and(|it| endings.iter().any(|one| it == *one))
            {
                found.push(path);
            }
        }
    }
    found.sort();
    found
}

fn read(path: &Path) -> String {
    std::fs::read_to_string(path).unwrap_or_else(|cause| panic!("{}: {cause}", path.display()))
}

/// Files of one kind: how they must open, and how many lines they may have.
fn kept_short(folder: &str, endings: &[&str], opens: &str, most: usize) {
    let all = files(&root().join(folder), endings);
    assert!(!all.is_empty(), "no {endings:?} in {folder}");
    let mut faults = Vec::new();
    for path in all {
        let (text, shown) = (read(&path), path.display());
        if !text.starts_with(opens) {
            faults.push(format!("{shown}: open with {opens}, saying what it is for"));
        }
        let lines = text.lines().count();
        let generated = path
            .parent()
            .is_some_and(|folder| folder.ends_with("ui/src/bindings"));
        if most < lines && !generated {
            faults.push(format!(
                "{shown}: {lines} lines, {most} at most; split it by subject"
            ));
        }
    }
    none(&faults);
}

#[test]
fn rust_files_say_what_they_are_for_and_fit_in_one_sitting() {
    kept_short("src-tauri", &["rs"], "//! ", 400);
    kept_short("tests", &["rs"], "//! ", 400);
}

#[test]
fn files_of_the_window_fit_on_a_few_screens() {
    kept_short("ui/src", &["svelte", "ts"], "", 200);
}

#[test]
fn page_templates_say_what_they_are_and_need() {
    kept_short("lessons/pages", &["typ"], "// ", 400);
}

/// The window speaks to Rust in one place.
#[test]
fn only_one_file_of_the_window_speaks_to_rust() {
    let mut users = Vec::new();
    for path in files(&root().join("ui/src"), &["svelte", "ts", "js"]) {
        if read(&path).contains("@tauri-apps") {
            users.push(path);
        }
    }
    assert_eq!(users, [root().join("ui/src/backend.ts")]);
}

#[test]
fn the_top_holds_what_it_should_and_nothing_else() {
    let due = [
        "Cargo.lock",
        "Cargo.toml",
        "DEVELOPERS.md",
        "LICENSE",
        "README.md",
        "lessons",
        "src-tauri",
        "tests",
        "ui",
    ];
    let mut there: Vec<String> = std::fs::read_dir(root())
        .expect("the top")
        .map(|entry| entry.expect("an entry").file_name())
        .map(|name| name.to_string_lossy().into_owned())
        // Dot-files are the tools' own, and target is what a build leaves.
        .filter(|name| !name.starts_with('.') && name != "target")
        .collect();
    there.sort();
    assert_eq!(there, due);
    let ignored = read(&root().join(".gitignore"));
    assert!(
        ignored
            .lines()
            .any(|line| line.trim_matches('/') == "target")
    );
}
