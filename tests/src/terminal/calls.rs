//! Calls and exit codes: new, plan, check, print, help.

use checks::courses::with;
use checks::program::{Ran, path, run};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

fn here() -> tempfile::TempDir {
    tempfile::tempdir().expect("a folder")
}

fn written(folder: &Path, text: &str) -> PathBuf {
    let file = folder.join("one.walling");
    fs::write(&file, text).expect("writes");
    file
}

fn call(words: &[&str], file: &Path, rest: &[&str]) -> Ran {
    let file = file.display().to_string();
    let all: Vec<&str> = words
        .iter()
        .copied()
        .chain([file.as_str()])
        .chain(rest.iter().copied())
        .collect();
    run(&all)
}

#[test]
fn new_writes_an_example_that_can_be_planned_and_never_overwrites() {
    for imperial in [&[][..], &["--imperial"][..]] {
        let folder = here();
        let file = folder.path().join("new.walling");
        assert_eq!(call(&["new"], &file, imperial).code, Some(0));
        assert_eq!(call(&["plan"], &file, &[]).code, Some(0));
        let text = fs::read(&file).expect("reads");
        let again = call(&["new"], &file, imperial);
        assert_eq!(again.code, Some(2));
        assert!(
            again
                .err
                .contains("is there already and is not overwritten"),
            "{}",
            again.err
        );
        assert_eq!(fs::read(&file).expect("reads"), text);
    }
}

#[test]
fn a_refused_file_is_told_with_its_place_and_cure_and_stays_as_it_was() {
    let folder = here();
    let text = with(&[("height = \"1.07 m\"", "height = 1.07")]);
    let file = written(folder.path(), &text);
    for call_of in [&["plan"][..], &["check"][..]] {
        let ran = call(call_of, &file, &[]);
        assert_eq!(ran.code, Some(2));
        let mut lines = ran.err.lines();
        let first = lines.next().expect("what is wrong");
        let place = format!("{}:36:1: wall.height: a bare number stands", file.display());
        assert!(first.starts_with(&place), "{first}");
        assert!(
            lines.next().is_some_and(|cure| cure.contains("1.07 m")),
            "{}",
            ran.err
        );
        assert_eq!(ran.out, "");
        assert_eq!(fs::read_to_string(&file).expect("reads"), text);
    }
}

#[test]
fn check_says_0_nothing_1_something_2_refused() {
    let folder = here();
    let to_do = written(folder.path(), &with(&[]));
    let ran = call(&["check"], &to_do, &[]);
    assert_eq!(ran.code, Some(1));
    assert!(ran.out.contains("Order stone"), "{}", ran.out);
    // Stone enough on site, a short low wall, and hours to spare.
    let ready = with(&[
        ("on_site = \"4 t\"", "on_site = \"40 t\""),
        ("height = \"1.07 m\"", "height = \"0.6 m\""),
        ("length = \"6 m\"", "length = \"1 m\""),
        ("chance = 0.8", "chance = 0.5"),
    ]);
    let ran = call(&["check"], &written(folder.path(), &ready), &[]);
    assert_eq!(ran.code, Some(0), "{}", ran.out);
    assert!(ran.out.starts_with("Nothing to do"), "{}", ran.out);
    assert!(
        ran.out.contains("Cautions"),
        "cautions are told all the same"
    );
}

#[test]
fn print_names_its_documents_and_prints_those_asked_for() {
    let folder = here();
    let listed = run(&["print", "--list"]);
    assert_eq!(listed.code, Some(0));
    let names: Vec<&str> = listed
        .out
        .lines()
        .filter_map(|line| line.split_whitespace().next())
        .collect();
    for name in [
        "setting-out",
        "run-sheet",
        "stone-order",
        "load-list",
        "safety-handout",
        "worksheets",
        "worksheets-key",
    ] {
        assert!(names.contains(&name), "{name} is not listed");
    }
    let file = written(folder.path(), &with(&[]));
    let out = folder.path().join("pages");
    let ran = call(
        &["print"],
        &file,
        &[
            "--out",
            &out.display().to_string(),
            "--only",
            "run-sheet,load-list",
        ],
    );
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let mut printed: Vec<_> = fs::read_dir(&out)
        .expect("the folder")
        .map(|entry| {
            entry
                .expect("an entry")
                .file_name()
                .into_string()
                .expect("text")
        })
        .collect();
    printed.sort();
    assert_eq!(printed, ["load-list.pdf", "run-sheet.pdf"]);
}

#[test]
fn a_document_that_does_not_exist_is_refused_with_those_that_do() {
    let folder = here();
    let file = written(folder.path(), &with(&[]));
    let ran = call(
        &["print"],
        &file,
        &["--out", "/nowhere", "--only", "poster"],
    );
    assert_eq!(ran.code, Some(2));
    assert!(
        ran.err.contains("there is no document poster"),
        "{}",
        ran.err
    );
    assert!(ran.err.contains("setting-out"), "{}", ran.err);
}

#[test]
fn help_teaches_and_a_wrong_call_is_2() {
    let help = run(&["--help"]);
    assert_eq!(help.code, Some(0));
    for word in ["new", "plan", "check", "print", "First steps", "Exit codes"] {
        assert!(help.out.contains(word), "{word}");
    }
    assert!(
        help.out.lines().all(|line| line.chars().count() <= 90),
        "no line runs over"
    );
    assert_eq!(run(&["plna"]).code, Some(2));
    assert_eq!(run(&["plan"]).code, Some(2));
    assert_eq!(run(&["plan", "/no/such/file.walling"]).code, Some(2));
}

#[test]
fn a_reader_that_goes_away_is_no_trouble() {
    let folder = here();
    let file = written(folder.path(), &with(&[]));
    let mut running = Command::new(path())
        .arg("plan")
        .arg(file)
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("runs");
    drop(running.stdout.take());
    let ran = running.wait_with_output().expect("ends");
    assert_eq!(String::from_utf8_lossy(&ran.stderr), "");
    assert_eq!(ran.status.code(), Some(0));
}

#[test]
fn control_characters_do_not_reach_the_terminal() {
    let folder = here();
    let text = with(&[(
        "title = \"Plain course\"",
        "title = \"Red \\u001b[31m wall\"",
    )]);
    let ran = call(&["plan"], &written(folder.path(), &text), &[]);
    assert_eq!(ran.code, Some(0));
    assert!(!ran.out.contains('\u{1b}'), "an escape went out");
}
