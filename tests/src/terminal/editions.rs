//! `print`: the large-print edition, the pages of some students, and what a template is fed.

use super::desk::{Desk, names};
use checks::courses::{plain, with};
use checks::paper::Paper;
use serde_json::Value;

fn roster() -> Desk {
    let names = ["Ash Grove", "Birch, Hazel", "Rowan Beck"];
    let roster: String = names
        .iter()
        .map(|name| format!("[[student]]\nname = \"{name}\"\n"))
        .collect();
    Desk::with_course(&with(&[("[wall]\n", &format!("{roster}[wall]\n"))]))
}

fn text(desk: &Desk, file: &str) -> String {
    let pdf = std::fs::read(desk.file(file)).expect("a document");
    Paper::new(&pdf).text()
}

#[test]
fn large_print_lies_beside_the_usual_edition() {
    let desk = Desk::with_course(&plain());
    let out = desk.file("out").display().to_string();
    let rest = ["--out", &out, "--only", "stone-order"];
    assert_eq!(desk.call("print", &rest).code, Some(0));
    let ran = desk.call("print", &[&rest[..], &["--large-print"]].concat());
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let both = ["stone-order-large-print.pdf", "stone-order.pdf"];
    assert_eq!(names(&desk.file("out")), both);
    assert!(ran.out.contains(both[0]) && !ran.out.contains(both[1]));
    let pages = |file: &str| {
        let pdf = std::fs::read(desk.file(&format!("out/{file}"))).expect("a document");
        Paper::new(&pdf).pages().len()
    };
    assert!(pages(both[1]) < pages(both[0]));
}

#[test]
fn only_the_pages_of_the_students_named_are_printed() {
    let all = ["Ash Grove", "Birch, Hazel", "Rowan Beck"];
    for (asked, due) in [
        (&["--students", "Rowan Beck"][..], &[2][..]),
        (&["--students", "Ash Grove, Rowan Beck"], &[0, 2]),
        (&["--students", "Birch, Hazel"], &[1]),
        (
            &["--students", "Birch, Hazel", "--students", "Ash Grove"],
            &[0, 1],
        ),
        (&[], &[0, 1, 2]),
    ] {
        let desk = roster();
        let out = desk.file("out").display().to_string();
        let rest = ["--out", &out, "--only", "worksheets"];
        let ran = desk.call("print", &[&rest, asked].concat());
        assert_eq!(ran.code, Some(0), "{}", ran.err);
        let text = text(&desk, "out/worksheets.pdf");
        for (at, name) in all.iter().enumerate() {
            assert_eq!(text.contains(name), due.contains(&at), "{asked:?} {name}");
        }
    }
}

/// A student's own numbers are theirs, whoever else is printed.
#[test]
fn a_sheet_printed_alone_is_the_sheet_of_the_pack() {
    let desk = roster();
    let feed = |rest: &[&str]| -> Value {
        let ran = desk.call("print", &[&["--json", "worksheets"], rest].concat());
        serde_json::from_str(&ran.out).expect("JSON")
    };
    let alone = feed(&["--students", "Rowan Beck"]);
    assert_eq!(alone["sheets"][0], feed(&[])["sheets"][2]);
}

#[test]
fn an_unknown_student_is_refused_with_the_nearest_name() {
    for (asked, cure) in [
        ("Rowan Bekc", "did you mean Rowan Beck?"),
        ("Zzz", "there are: Ash Grove, Birch, Hazel, Rowan Beck"),
        ("Ash Grove,Ash Grov", "did you mean Ash Grove?"),
    ] {
        let desk = roster();
        let out = desk.file("out").display().to_string();
        let ran = desk.call("print", &["--out", &out, "--students", asked]);
        assert_eq!(ran.code, Some(2), "{asked}");
        assert!(ran.err.contains("there is no student"), "{}", ran.err);
        assert!(ran.err.contains(cure), "{}", ran.err);
        assert!(!desk.file("out").exists());
    }
}

#[test]
fn what_a_template_is_fed_is_shown_as_json() {
    let desk = Desk::with_course(&plain());
    let fed = |rest: &[&str]| -> Value {
        let ran = desk.call("print", rest);
        assert_eq!(ran.code, Some(0), "{}", ran.err);
        serde_json::from_str(&ran.out).expect("JSON")
    };
    let usual = fed(&["--json", "stone-order"]);
    assert_eq!(usual["title"], "Plain course");
    assert_eq!(usual["edition"], "usual");
    assert!(usual["stone"]["order"].is_string());
    let large = fed(&["--json", "stone-order", "--large-print"]);
    assert_eq!(large["edition"], "large");
    // Nothing is printed.
    assert_eq!(desk.names(), ["course.walling"]);
    let ran = desk.call("print", &["--json", "stone-ordr"]);
    assert_eq!(ran.code, Some(2));
    assert!(ran.err.contains("did you mean stone-order?"), "{}", ran.err);
    let ran = desk.call("print", &["--json", "stone-order", "--only", "stone-order"]);
    assert_eq!(ran.code, Some(2));
    // For who writes a template: the same as a file, and the drawings beside it.
    let folder = desk.file("fed");
    let out = folder.display().to_string();
    let ran = desk.call("print", &["--json", "stone-order", "--out", &out]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let data = std::fs::read_to_string(folder.join("data.json")).expect("a file");
    let data: serde_json::Value = serde_json::from_str(&data).expect("JSON");
    assert_eq!(data, usual);
    let heaps = std::fs::read_to_string(folder.join("heap-plan.svg")).expect("a file");
    assert!(heaps.starts_with("<svg"), "{heaps}");
}
