//! The press tried whole: what prints, what is refused, and what the refusal says.
#![allow(clippy::unwrap_used, clippy::panic)]

mod looked_at;
mod on_paper;

use page_validation::{ValidationOptions, ValidationProfile, validate_pdf_bytes};
use serde_json::{Value, json};
use typst::layout::{Frame, FrameItem};

use super::{Error, FALLBACK_FAMILY, Flaw, Job, Press, Printed, TEXT_FAMILY, Way, typeset};

/// Two pages: a heading and a note on each, a table with headers both ways, a picture.
const SHEET: &str = r#"
#import "look.typ": sheet
#let d = json("data.json")
#let title = d.title
#show: sheet.with(title)
= #title
#d.note
#figure(table(
  columns: 2,
  table.header[Part][Length],
  pdf.header-cell(scope: "row")[Base], d.base,
))
#pagebreak()
== A picture
#figure(alt: "A wall, seen from the side", image("wall.svg", width: 8cm))
*#d.note* _#d.note _
"#;

const LOOK: &str = r#"
#let sheet(title, body) = {
  set document(title: title)
  set text(lang: "en")
  set page(width: 15cm, height: 20cm, footer: title)
  body
}
"#;

const WALL: &str = r#"<svg xmlns="http://www.w3.org/2000/svg" width="200" height="100">
<rect width="180" height="60" fill="none" stroke="black"/>
<text x="20" y="40" font-family="Atkinson Hyperlegible Next" font-size="14">Base → βάση</text>
</svg>"#;

/// Markup that must not act, marks that must not be changed, and letters of five scripts.
const AWKWARD: &str = "#read(\"/etc/passwd\") * _ $ @ref <label> \\ ~ -- ... // /* */ [ ] { } \
                       'quoted' \"quoted\" ½ ≤ √ → ✓ ☐ Ελλάδα Київ שלום سلام";

fn data(note: &str) -> Value {
    json!({ "title": "Setting out", "base": "0.7 m", "note": note })
}

fn sheet<'a>(data: &'a Value, pictures: &'a [(&'a str, &'a str)]) -> Job<'a> {
    Job {
        main: "sheet.typ",
        sources: &[("sheet.typ", SHEET), ("look.typ", LOOK)],
        data,
        pictures,
    }
}

fn print(note: &str, picture: &str) -> Result<Printed, Error> {
    let data = data(note);
    Press::new().pdf(&sheet(&data, &[("wall.svg", picture)]))
}

fn printed(note: &str) -> Printed {
    print(note, WALL).unwrap()
}

/// What the press says to a template of one file.
fn refusal(template: &str) -> Error {
    let job = Job {
        main: "sheet.typ",
        sources: &[("sheet.typ", template), ("look.typ", LOOK)],
        data: &data(""),
        pictures: &[],
    };
    Press::new().pdf(&job).unwrap_err()
}

fn flaw(error: Error) -> Flaw {
    match error {
        Error::Template(flaw) => *flaw,
        other => panic!("refused for another reason: {other}"),
    }
}

/// The characters set on all pages, spaces left out. Panics at a character no font could draw.
fn set_text(job: &Job<'_>) -> String {
    let (world, _) = Press::new().prepare(job, Way::Usual).unwrap();
    let mut text = String::new();
    for page in typeset(&world).unwrap().pages() {
        gather(&page.frame, &mut text);
    }
    text.retain(|c| !c.is_whitespace());
    text
}

fn gather(frame: &Frame, text: &mut String) {
    for (_, item) in frame.items() {
        match item {
            FrameItem::Group(group) => gather(&group.frame, text),
            FrameItem::Text(run) => {
                assert!(run.glyphs.iter().all(|glyph| glyph.id != 0), "{}", run.text);
                text.push_str(&run.text);
            }
            _ => {}
        }
    }
}

fn assert_accessible(pdf: &[u8]) {
    let options = ValidationOptions::default().profile(ValidationProfile::PdfUa1);
    let report = validate_pdf_bytes(pdf, &options).unwrap();
    assert!(report.is_compliant, "{report}");
}

#[test]
fn a_sheet_is_printed_to_the_accessibility_standard() {
    let printed = printed("Mind the **fingers**.");
    assert_eq!(printed.pages, 2);
    assert!(printed.unprintable.is_empty());
    assert!(printed.pdf.starts_with(b"%PDF-"));
    assert_accessible(&printed.pdf);
}

#[test]
fn awkward_text_is_set_as_typed() {
    let data = data(AWKWARD);
    let text = set_text(&sheet(&data, &[("wall.svg", WALL)]));
    let latin = AWKWARD.split(" שלום").next().unwrap().replace(' ', "");
    assert!(text.contains(&latin), "{text}");
    assert!(text.contains("שלום") && text.contains("سلام"), "{text}");
    let printed = printed(AWKWARD);
    assert!(printed.unprintable.is_empty());
    assert_accessible(&printed.pdf);
}

#[test]
fn what_no_font_holds_is_told_and_does_not_stop_the_page() {
    let printed = printed("Stone 🧱\u{0} and 石 \u{202E}reversed\u{202C} 🧱");
    assert_eq!(
        printed.unprintable,
        ['🧱', '\0', '石', '\u{202E}', '\u{202C}']
    );
    assert_accessible(&printed.pdf);
}

#[test]
fn what_no_font_holds_in_a_picture_is_told_too() {
    let picture = WALL.replace("Base", "石 &#x1F9F1; &#0; &#9650;");
    let printed = print("", &picture).unwrap();
    assert_eq!(printed.unprintable, ['石', '🧱', '\0']);
    assert_accessible(&printed.pdf);
}

#[test]
fn a_letter_put_together_from_parts_is_printed_in_a_picture() {
    // As words these break the standard, so the picture is drawn another way.
    let printed = print("", &WALL.replace("Base", "Nguyễn z\u{309} עִ")).unwrap();
    assert!(printed.unprintable.is_empty());
    assert_accessible(&printed.pdf);
}

#[test]
fn a_mark_that_stops_the_page_is_left_out_and_told() {
    let printed = print("\n\u{5C7}", WALL).unwrap();
    assert_eq!(printed.unprintable, ['\u{5C7}']);
    assert_accessible(&printed.pdf);
}

#[test]
fn the_same_job_gives_the_same_bytes() {
    let press = Press::new();
    let pdf = |note| {
        let data = data(note);
        press.pdf(&sheet(&data, &[("wall.svg", WALL)])).unwrap().pdf
    };
    let first = pdf(AWKWARD);
    assert_eq!(first, pdf(AWKWARD));
    // Nothing may be remembered from the first times.
    press.forget();
    assert_eq!(first, pdf(AWKWARD));
    assert_ne!(pdf("a"), pdf("b"));
}

#[test]
fn the_words_of_a_picture_are_set_in_our_fonts() {
    let pdf = printed("").pdf;
    let without = print("", &WALL.replace("Base → βάση", "")).unwrap().pdf;
    // The picture alone has Greek, so it alone brings the second family into the file.
    assert!(holds(&pdf, "DejaVuSans") && !holds(&without, "DejaVuSans"));
}

fn holds(pdf: &[u8], words: &str) -> bool {
    pdf.windows(words.len())
        .any(|part| part == words.as_bytes())
}

#[test]
fn the_default_font_needs_no_setting() {
    let job = Job {
        main: "plain.typ",
        sources: &[("plain.typ", "Plain *bold* _italic_ → βάση")],
        data: &Value::Null,
        pictures: &[],
    };
    let (world, _) = Press::new().prepare(&job, Way::Usual).unwrap();
    let document = typeset(&world).unwrap();
    let mut faces = Vec::new();
    families(&document.pages()[0].frame, &mut faces);
    faces.dedup();
    assert_eq!(faces.first().map(String::as_str), Some(TEXT_FAMILY));
    assert_eq!(faces.last().map(String::as_str), Some(FALLBACK_FAMILY));
}

fn families(frame: &Frame, found: &mut Vec<String>) {
    for (_, item) in frame.items() {
        match item {
            FrameItem::Group(group) => families(&group.frame, found),
            FrameItem::Text(run) => found.push(run.font.font().info().family.clone()),
            _ => {}
        }
    }
}

#[test]
fn a_template_reaches_nothing_but_its_own_files() {
    for (template, says) in [
        (
            r#"#read("/etc/passwd")"#,
            "etc/passwd is not one of the files",
        ),
        (r#"#read("../../secret")"#, "escape"),
        (
            r#"#image("https://example.org/a.png")"#,
            "is not one of the files",
        ),
        (
            r#"#import "@preview/cetz:0.3.0": canvas"#,
            "can use no packages",
        ),
        (r#"#import "other.typ": x"#, "look.typ, sheet.typ"),
        (r#"#plugin("a.wasm")"#, "a.wasm is not one of the files"),
        ("#datetime.today()", "date"),
    ] {
        let flaw = flaw(refusal(template));
        assert!(flaw.what.contains(says), "{template}: {}", flaw.what);
        assert_eq!(flaw.file, "sheet.typ", "{template}");
        assert_eq!(flaw.line, Some(1), "{template}");
    }
}

#[test]
fn a_picture_reaches_no_file() {
    let picture = r#"<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9">
        <image href="file:///etc/passwd" width="9" height="9"/></svg>"#;
    let what = flaw(print("", picture).unwrap_err()).what;
    assert!(what.contains("failed to load linked image"), "{what}");
}

#[test]
fn an_unknown_font_is_an_error() {
    let error = refusal("#set document(title: [x])\n#set text(font: \"Nonesuch Sans\")\nText");
    assert_eq!(error.code(), "template");
    assert_eq!(
        error.to_string(),
        "The page template sheet.typ can't be used: line 2, column 17: unknown font family: \
         nonesuch sans. Hint: the fonts are Atkinson Hyperlegible Next and DejaVu Sans. Is this \
         your own copy? Mend it, or remove it: then the one that came with the program is used. \
         If it is not yours, please report a fault."
    );
}

#[test]
fn an_error_names_file_line_and_column() {
    let error = refusal("#let d = json(\"data.json\")\n\n= £ #d.titel");
    assert_eq!(
        flaw(error),
        Flaw {
            file: "sheet.typ".to_owned(),
            line: Some(3),
            column: Some(8),
            what: "dictionary does not contain key \"titel\"".to_owned(),
            called_from: None,
            hints: vec![],
        }
    );
}

#[test]
fn an_error_in_an_imported_template_names_both_files() {
    let look = "#let metres(x) = [#calc.round(x, digits: 2) m]";
    let job = Job {
        main: "sheet.typ",
        sources: &[
            (
                "sheet.typ",
                "#import \"look.typ\": metres\n\n#metres(\"tall\")",
            ),
            ("look.typ", look),
        ],
        data: &Value::Null,
        pictures: &[],
    };
    let error = Press::new().pdf(&job).unwrap_err().to_string();
    assert!(
        error.starts_with(
            "The page template look.typ can't be used: line 1, column 31: expected integer, \
             float, or decimal, found string. It was called from sheet.typ line 3, column 2. Is"
        ),
        "{error}"
    );
}

#[test]
fn what_breaks_the_accessibility_standard_is_refused() {
    for (template, says) in [
        ("No title", "missing document title"),
        (
            "#set document(title: [x])\n#figure(rect())",
            "missing alt text",
        ),
        (
            "#set document(title: [x])\n== Too deep",
            "first heading must be of level 1",
        ),
        ("#set document(title: [x])\n🧱", "could not be displayed"),
    ] {
        let error = refusal(template).to_string();
        assert!(error.contains(says), "{error}");
    }
}

#[test]
fn files_that_do_not_fit_together_are_refused() {
    let data = data("");
    let job = sheet(&data, &[]);
    let press = Press::new();
    let refused = |job: Job<'_>| press.pdf(&job).unwrap_err().code();
    assert_eq!(
        refused(Job {
            main: "no.typ",
            ..job
        }),
        "template-missing"
    );
    let pictures = [("../wall.svg", WALL)];
    assert_eq!(
        refused(Job {
            pictures: &pictures,
            ..job
        }),
        "template-file-name"
    );
    let pictures = [("data.json", WALL)];
    assert_eq!(
        refused(Job {
            pictures: &pictures,
            ..job
        }),
        "template-same-name"
    );
    let sources = [("sheet.typ", SHEET), ("./sheet.typ", LOOK)];
    assert_eq!(
        refused(Job {
            sources: &sources,
            ..job
        }),
        "template-same-name"
    );
}

#[test]
fn a_mark_left_by_an_editor_is_not_printed() {
    let job = Job {
        main: "plain.typ",
        sources: &[("plain.typ", "\u{FEFF}#let x = 1\r\nText")],
        data: &Value::Null,
        pictures: &[],
    };
    assert_eq!(set_text(&job), "Text");
}
