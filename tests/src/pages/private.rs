//! Private notes stand on the one document made for them, and nowhere else.

use super::look::printed;
use checks::courses::{planned, with};
use checks::paper::Paper;
use documents::calendar::{Detail, calendar};
use documents::{Course, DOCUMENTS, named, wanted};
use files::course::values;

/// Found again in any text, whatever stands round them.
const MARKED: [&str; 2] = ["QZXCONTACT", "QZXMEDICAL"];

fn text() -> String {
    let roster = "[[student]]\nname = \"Ash Grove\"\nprivate = { emergency_contact = \"QZXCONTACT \
                  07700 900123\", medical = \"QZXMEDICAL bee stings\" }\n[[student]]\n\
                  name = \"Elm Hurst\"\n[wall]\n";
    with(&[("[wall]\n", roster)])
}

fn holds(text: &str) -> bool {
    MARKED.iter().any(|mark| text.contains(mark))
}

#[test]
fn only_the_contacts_sheet_says_what_is_private() {
    let course = planned(&text());
    let mut named_on = 0;
    for document in DOCUMENTS {
        let printed = printed(&course, document);
        let letters = Paper::new(&printed.pdf).letters();
        assert_eq!(holds(&letters), document.is_private(), "{}", document.name);
        named_on += usize::from(letters.contains("AshGrove"));
    }
    assert!(
        4 < named_on,
        "the student is on {named_on} pages: this looks at nothing"
    );
}

#[test]
fn the_contacts_sheet_holds_all_of_it_and_is_in_no_pack() {
    let course = planned(&text());
    let sheet = named("contacts-sheet").expect("a sheet");
    let letters = Paper::new(&printed(&course, sheet).pdf).letters();
    for mark in MARKED
        .into_iter()
        .chain(["900123", "beestings", "ElmHurst"])
    {
        assert!(letters.contains(mark), "{mark}");
    }
    assert!(wanted(&course).iter().all(|it| !it.is_private()));
    assert_eq!(DOCUMENTS.iter().filter(|it| it.is_private()).count(), 1);
}

/// Everything that is worked out or shown of a course, as other programs and logs would see it.
#[test]
fn nothing_that_is_worked_out_holds_it() {
    let text = text();
    let course: Course = planned(&text);
    let numbers = serde_json::to_string(&course.numbers()).expect("JSON");
    let written = serde_json::to_string(&course.written).expect("JSON");
    let calendar = calendar(&course, Detail::Entries, None).text;
    for (what, shown) in [
        ("the plan as JSON", numbers),
        ("the written figures", written),
        ("the calendar", calendar),
        ("a course in a log", format!("{course:#?}")),
        ("the values of the window", format!("{:?}", values(&text))),
    ] {
        assert!(!holds(&shown), "{what}");
        assert!(500 < shown.len(), "{what}: this looks at nothing");
    }
}
