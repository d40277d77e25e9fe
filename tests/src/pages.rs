//! Every document for courses of every sort: sound, tagged, whole, readable, inside its margins.

#[path = "pages/matrix.rs"]
mod matrix;
#[path = "pages/pdf.rs"]
mod pdf;

use checks::courses::planned;
use documents::{Course, DOCUMENTS, named, print};
use matrix::{ODD_NAMES, courses};
use pdf::Pdf;
use press::Press;
use std::sync::OnceLock;

/// Room every page keeps free at its edges, for printers that can't reach them.
const MARGIN_PT: f64 = 6.0 / 25.4 * 72.0;

fn press() -> &'static Press {
    static PRESS: OnceLock<Press> = OnceLock::new();
    PRESS.get_or_init(Press::new)
}

fn printed(course: &Course, name: &str) -> Pdf {
    let document = named(name).expect(name);
    let printed = print(course, document, press()).unwrap_or_else(|wrong| panic!("{wrong}"));
    Pdf::new(printed.pdf)
}

#[test]
fn every_document_of_every_course_meets_the_accessibility_standard() {
    for (case, text) in courses() {
        let course = planned(&text);
        for document in DOCUMENTS {
            let pdf = printed(&course, document.name);
            assert!(pdf.conforms(), "{case}, {}: not PDF/UA-1", document.name);
        }
    }
}

/// `conforms` above can fail: the same page with its language taken out does.
#[test]
fn a_damaged_page_does_not_conform() {
    let (_, text) = courses().swap_remove(0);
    let pdf = printed(&planned(&text), "stone-order");
    assert!(pdf.conforms());
    for word in [&b"/Lang"[..], b"/MarkInfo"] {
        assert!(
            !pdf.without(word).conforms(),
            "{}",
            String::from_utf8_lossy(word)
        );
    }
}

#[test]
fn the_same_course_prints_the_same_bytes() {
    let (_, text) = courses().swap_remove(0);
    let (course, again) = (planned(&text), planned(&text));
    for document in DOCUMENTS {
        let first = print(&course, document, press()).expect("prints").pdf;
        let second = print(&again, document, &Press::new()).expect("prints").pdf;
        assert!(first == second, "{}", document.name);
    }
}

#[test]
fn fonts_are_embedded_and_every_table_has_its_heads() {
    for (case, text) in courses() {
        let course = planned(&text);
        for document in DOCUMENTS {
            let pdf = printed(&course, document.name);
            assert_eq!(pdf.fonts_not_embedded(), 0, "{case}, {}", document.name);
            let bare = pdf.tables_without_heads();
            assert_eq!(bare, 0, "{case}, {}: tables without heads", document.name);
        }
    }
}

#[test]
fn nothing_stands_outside_the_margins() {
    for (case, text) in courses() {
        let course = planned(&text);
        for document in DOCUMENTS {
            for word in printed(&course, document.name).words() {
                assert!(
                    word.inside(MARGIN_PT),
                    "{case}, {}: \"{}\" stands at the edge of page {}",
                    document.name,
                    word.text,
                    word.page
                );
            }
        }
    }
}

/// The figures on paper are those of the plan, word for word.
#[test]
fn pages_hold_the_plans_own_figures() {
    for (case, text) in courses() {
        let course = planned(&text);
        let (wall, stone) = (&course.written.wall, &course.written.stone);
        for (name, figures) in [
            (
                "setting-out",
                vec![
                    &wall.length,
                    &wall.base_width,
                    &wall.top_width,
                    &wall.height,
                ],
            ),
            ("stone-order", vec![&stone.high, &stone.mid, &stone.low]),
            (
                "run-sheet",
                vec![&course.written.chance.chance, &course.written.days[0].date],
            ),
        ] {
            let shown = printed(&course, name).plain_text();
            for figure in figures {
                assert!(
                    shown.contains(&pdf::plain(figure)),
                    "{case}, {name}: {figure} is missing"
                );
            }
        }
    }
}

#[test]
fn what_people_typed_is_printed_as_typed() {
    let course = planned(&matrix::with_odd_names());
    let shown = printed(&course, "worksheets").plain_text();
    for name in ODD_NAMES {
        assert!(shown.contains(&pdf::plain(name)), "{name}");
    }
}

#[test]
fn a_character_no_font_holds_is_told_and_stops_nothing() {
    let text =
        checks::courses::with(&[("title = \"Plain course\"", "title = \"Wall \u{1f642} two\"")]);
    let document = named("run-sheet").expect("the run sheet");
    let printed = print(&planned(&text), document, press()).expect("prints all the same");
    assert_eq!(printed.unprintable, ['\u{1f642}']);
}

#[test]
fn each_student_has_a_sheet_of_their_own() {
    for (case, text) in courses() {
        let course = planned(&text);
        let students = course.file.course.group.students.len();
        let sheets = printed(&course, "worksheets");
        assert!(
            students <= sheets.pages(),
            "{case}: {} pages for {students}",
            sheets.pages()
        );
        let shown = sheets.plain_text();
        for student in &course.file.course.group.students {
            assert!(
                shown.contains(&pdf::plain(&student.name)),
                "{case}: {}",
                student.name
            );
        }
    }
}
