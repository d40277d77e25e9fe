//! `print`: which files come out, and which do not.

use super::desk::{Desk, names};
use checks::courses::{plain, with};
use checks::paper::Paper;
use checks::program::run;

/// Documents other programs rely on by name.
const PROMISED: [&str; 7] = [
    "setting-out",
    "run-sheet",
    "stone-order",
    "load-list",
    "safety-handout",
    "worksheets",
    "worksheets-key",
];

fn listed() -> Vec<String> {
    let ran = run(&["print", "--list"]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    ran.out
        .lines()
        .map(|line| {
            let (name, what) = line.split_once(' ').expect("a name and what it is for");
            assert!(!what.trim().is_empty(), "{name} is for nothing");
            name.to_owned()
        })
        .collect()
}

#[test]
fn the_list_names_every_document_in_lower_case_with_hyphens() {
    let listed = listed();
    for name in PROMISED {
        assert!(listed.iter().any(|it| it == name), "no {name}");
    }
    for name in listed {
        let plain = name.chars().all(|c| c.is_ascii_lowercase() || c == '-');
        assert!(plain, "{name}");
    }
}

#[test]
fn the_whole_pack_is_printed_under_its_names() {
    let desk = Desk::with_course(&plain());
    // The folder is made, with those above it.
    let out = desk.file("pages/of/the/course");
    let ran = desk.call("print", &["--out", &out.display().to_string()]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    // This course gives no prices, so it has nothing for the sheet of them; what is private is
    // printed when it is named.
    let left_out = ["money-sheet", "contacts-sheet"];
    let wanted = listed()
        .into_iter()
        .filter(|name| !left_out.contains(&&**name));
    let mut due: Vec<String> = wanted.map(|name| format!("{name}.pdf")).collect();
    due.sort();
    assert_eq!(names(&out), due);
    for name in due {
        let bytes = std::fs::read(out.join(&name)).expect("a document");
        assert!(bytes.starts_with(b"%PDF-"), "{name}");
        assert!(ran.out.contains(&name), "{}", ran.out);
    }
}

/// Left out of the pack only where it has nothing to say; by name it is printed always.
#[test]
fn the_money_sheet_is_printed_with_prices_or_by_name() {
    for (more, asked, printed) in [
        ("", false, false),
        ("", true, true),
        ("[money]\nfee = 150\n", false, true),
    ] {
        let desk = Desk::with_course(&(plain() + more));
        let out = desk.file("out").display().to_string();
        let mut arguments = vec!["--out", &out];
        if asked {
            arguments.extend(["--only", "money-sheet"]);
        }
        let ran = desk.call("print", &arguments);
        assert_eq!(ran.code, Some(0), "{}", ran.err);
        assert_eq!(
            ran.out.contains("money-sheet.pdf"),
            printed,
            "{more}{asked}"
        );
    }
}

#[test]
fn only_what_was_asked_for_is_printed_and_twice_the_same() {
    let desk = Desk::with_course(&plain());
    let print = |folder: &str| {
        let out = desk.file(folder);
        let shown = out.display().to_string();
        let ran = desk.call(
            "print",
            &["--out", &shown, "--only", "stone-order,run-sheet"],
        );
        assert_eq!(ran.code, Some(0), "{}", ran.err);
        assert_eq!(names(&out), ["run-sheet.pdf", "stone-order.pdf"]);
        std::fs::read(out.join("run-sheet.pdf")).expect("a document")
    };
    let first = print("one");
    assert_eq!(first, print("two"));
    // Over the old one.
    assert_eq!(first, print("one"));
}

#[test]
fn an_unknown_document_prints_nothing_and_names_those_there_are() {
    let desk = Desk::with_course(&plain());
    let out = desk.file("out").display().to_string();
    let ran = desk.call(
        "print",
        &["--out", &out, "--only", "run-sheet,setting-outt"],
    );
    assert_eq!(ran.code, Some(2));
    assert!(ran.err.contains("setting-outt"), "{}", ran.err);
    for name in PROMISED {
        assert!(ran.err.contains(name), "{}", ran.err);
    }
    assert!(!desk.file("out").exists());
}

#[test]
fn private_notes_are_on_no_page() {
    let roster = "[[student]]\nname = \"Ash Grove\"\nprivate = { emergency_contact = \
                  \"07700 900123\", medical = \"bee stings\" }\n[wall]\n";
    let desk = Desk::with_course(&with(&[("[wall]\n", roster)]));
    let out = desk.file("out");
    let ran = desk.call("print", &["--out", &out.display().to_string()]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let mut named = false;
    for name in names(&out) {
        let bytes = std::fs::read(out.join(&name)).expect("a document");
        let letters = Paper::new(&bytes).letters();
        named |= letters.contains("AshGrove");
        for secret in ["900123", "beestings"] {
            assert!(!letters.contains(secret), "{secret} in {name}");
        }
    }
    assert!(
        named,
        "the student is on no page: this check looks at nothing"
    );
}

#[test]
fn what_can_not_be_printed_as_typed_is_told() {
    let desk = Desk::with_course(&with(&[("Plain course", "Wall \u{1F9F1} course")]));
    let out = desk.file("out").display().to_string();
    let ran = desk.call("print", &["--out", &out, "--only", "stone-order"]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert!(ran.out.contains('\u{1F9F1}'), "{}", ran.out);
}
