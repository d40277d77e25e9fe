//! Private notes: no call of the program says them, and they are printed only when named.

use super::desk::{Desk, names};
use checks::courses::with;
use checks::paper::Paper;

const MARKED: [&str; 2] = ["QZXCONTACT", "QZXMEDICAL"];

fn desk() -> Desk {
    let roster = "[[student]]\nname = \"Ash Grove\"\nprivate = { emergency_contact = \"QZXCONTACT\", \
                  medical = \"QZXMEDICAL\" }\n[wall]\n";
    Desk::with_course(&with(&[("[wall]\n", roster)]))
}

#[test]
fn no_call_says_what_is_private() {
    let desk = desk();
    let file = |name: &str| desk.file(name).display().to_string();
    let (out, ics, store) = (file("out"), file("days.ics"), file("store"));
    for (call, rest) in [
        ("plan", &[][..]),
        ("plan", &["--json"]),
        ("check", &["--names"]),
        ("calendar", &["--out", &ics]),
        ("print", &["--out", &out]),
        ("print", &["--out", &out, "--only", "contacts-sheet"]),
        ("told", &["dig", "--at", "11:00"]),
    ] {
        let ran = desk.call(call, rest);
        assert!(
            ran.code == Some(0) || call == "check",
            "{call}: {}",
            ran.err
        );
        for mark in MARKED {
            assert!(!ran.out.contains(mark) && !ran.err.contains(mark), "{call}");
        }
    }
    std::fs::create_dir(&store).expect("a folder");
    for call in [&["kit", "book"][..], &["pace", "record"]] {
        let course = desk.course().display().to_string();
        let ran = checks::program::run(&[call, &[&course, "--store", &store]].concat());
        assert_eq!(ran.code, Some(0), "{call:?}: {}", ran.err);
    }
    let written: Vec<_> = names(desk.path())
        .into_iter()
        .map(|name| desk.file(&name))
        .collect();
    let stored = names(&desk.file("store"));
    let stored = stored.iter().map(|name| desk.file("store").join(name));
    for path in written.into_iter().chain(stored) {
        let bytes = std::fs::read(&path).expect("a file");
        let text = String::from_utf8_lossy(&bytes);
        // The course itself keeps them.
        let kept = path == desk.course();
        for mark in MARKED {
            assert_eq!(text.contains(mark), kept, "{}", path.display());
        }
    }
}

#[test]
fn the_contacts_sheet_is_printed_when_it_is_named_and_never_otherwise() {
    let desk = desk();
    let out = desk.file("out");
    let shown = out.display().to_string();
    let ran = desk.call("print", &["--out", &shown]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert!(
        !names(&out).iter().any(|name| name.contains("contacts")),
        "{}",
        ran.out
    );
    let ran = desk.call("print", &["--out", &shown, "--only", "contacts-sheet"]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let sheet = std::fs::read(out.join("contacts-sheet.pdf")).expect("the sheet");
    let letters = Paper::new(&sheet).letters();
    for mark in MARKED {
        assert!(letters.contains(mark), "{mark}");
    }
}
