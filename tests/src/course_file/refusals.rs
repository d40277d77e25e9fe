//! Files that are refused: the place, what is wrong, what would be right; and left as they were.

use checks::courses::{library, with};
use checks::{Found, Row, every_row};
use files::course::CourseFile;
use files::{Error, Refusal};
use std::path::Path;

/// What opening and planning a file on the disk ends in, the file looked at before and after.
fn refused(path: &Path, content: &[u8]) -> Result<Box<Refusal>, String> {
    std::fs::write(path, content).expect("the file is written");
    let answer = match CourseFile::open(path) {
        Err(Error::Refused(refusal)) => Ok(refusal),
        Err(other) => Err(format!("not refused, but: {other}")),
        Ok((file, text)) => match file.plan(library()) {
            Err(fault) => Ok(Box::new(fault.in_file(&path.display().to_string(), &text))),
            Ok(_) => Err("not refused".to_owned()),
        },
    };
    let after = std::fs::read(path).expect("the file is still there");
    assert_eq!(after, content, "a refused file was changed");
    answer
}

/// The whole message, as the terminal shows it.
fn said(path: &Path, content: &[u8]) -> Result<String, String> {
    refused(path, content).map(|refusal| refusal.to_string())
}

fn mutated(row: &Row) -> String {
    let lines = |column: &str| row.text(column).replace("\\n", "\n");
    with(&[(&lines("find"), &lines("with"))])
}

fn is_refused(row: &Row) -> Found {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("course.walling");
    let said = said(&path, mutated(row).as_bytes()).map_err(|what| row.fault(&what))?;
    let [place, what, cure] = ["place", "what", "cure"].map(|column| row.text(column));
    let expected = format!("{}:{place}: {what}\n{cure}", path.display());
    row.same("the refusal", &said, &expected)
}

#[test]
fn each_mistake_is_refused_at_its_place_with_its_cure() {
    every_row("refusals.csv", is_refused);
}

#[test]
fn the_course_the_mistakes_are_made_in_is_sound() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("course.walling");
    let answer = refused(&path, with(&[]).as_bytes());
    assert_eq!(answer.expect_err("not refused"), "not refused");
}

#[test]
fn a_file_that_is_empty_or_no_text_is_refused() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("course.walling");
    let shown = path.display();
    for (content, place_and_what) in [
        (&b""[..], "1:1: the file is empty"),
        (&b" \n\t\n"[..], "1:1: the file is empty"),
        (&b"\xff\xfe\x00t"[..], "1:1: this is not text in UTF-8"),
        (
            &b"format = 1\ntitle = \"caf\xe9\"\n"[..],
            "2:13: this is not text in UTF-8",
        ),
        (
            &b"%PDF-1.7\n%\xe2\xe3\xcf\xd3\n"[..],
            "2:2: this is not text in UTF-8",
        ),
    ] {
        let said = said(&path, content).expect("refused");
        let mut lines = said.lines();
        let first = format!("{shown}:{place_and_what}");
        assert_eq!(lines.next(), Some(&*first));
        assert!(lines.next().is_some_and(|cure| !cure.is_empty()), "{said}");
    }
}

/// Columns count characters, not bytes, as an editor does.
#[test]
fn a_place_behind_accents_is_where_an_editor_shows_it() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("course.walling");
    let text = with(&[("{ name = \"Lunch\", ", "{ name = \"Dîner à midi\", ")]);
    let text = text.replace("minutes = 45", "minuten = 45");
    let refusal = refused(&path, text.as_bytes()).expect("refused");
    let line = text.lines().nth(refusal.line - 1).expect("the line");
    let from_there: String = line.chars().skip(refusal.column - 1).collect();
    assert!(from_there.starts_with("minuten = 45"), "{from_there}");
}

#[test]
fn a_number_beyond_all_numbers_is_refused() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("course.walling");
    let nines = "9".repeat(400);
    for bad in [format!("\"{nines} m\""), format!("\"1/{nines} m\""), nines] {
        let text = with(&[("\"6 m\"", &bad)]);
        let refusal = refused(&path, text.as_bytes()).expect("refused");
        assert_eq!(refusal.line, 41, "{refusal}");
    }
}

/// Every refusal of the table has a code of its own kind, for programs.
#[test]
fn each_refusal_names_its_key_and_a_code() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("course.walling");
    for row in checks::rows("refusals.csv") {
        let Ok(refusal) = refused(&path, mutated(&row).as_bytes()) else {
            continue;
        };
        let plain = refusal
            .code
            .chars()
            .all(|c| c.is_ascii_lowercase() || c == '-');
        assert!(plain && !refusal.code.is_empty(), "{}", refusal.code);
        let whole = ["not-toml", "empty", "not-text"].contains(&refusal.code);
        assert!(whole || !refusal.key.is_empty(), "{}", row.fault("no key"));
    }
}
