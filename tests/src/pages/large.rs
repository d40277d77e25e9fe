//! The large-print edition: every document of many courses, within its margins and in large letters.

use super::clear::too_small;
use super::look::every_document;
use super::words::has_its_words;
use checks::courses::{planned, with};
use documents::{Course, Edition};
use files::Library;

fn large(text: &str) -> Course {
    let mut course = planned(text);
    course.edition = Edition::LargePrint;
    course
}

/// Every letter is large, in drawings too.
fn prints(text: &str) {
    let course = large(text);
    every_document(&course, |document, _, paper| {
        has_its_words(&course, document, paper);
        let small = too_small(paper, course.edition);
        assert!(small.is_empty(), "{}: {small:?}", document.name);
    });
}

#[test]
fn the_metric_example_in_large_print() {
    prints(Library::example(false));
}

#[test]
fn the_imperial_example_in_large_print() {
    prints(Library::example(true));
}

#[test]
fn timber_frames_on_a_slope_in_large_print() {
    prints(include_str!("../../../lessons/examples/thorn-beck.walling"));
}

#[test]
fn a_bank_and_long_names_in_large_print() {
    prints(&with(&[
        (
            "kind = \"freestanding\"",
            "kind = \"retaining\"\nretained = \"left\"\nbank = { slope_degrees = 12.5, height = \"0.9 m\" }",
        ),
        (
            "\"Long Meadow\"",
            "\"The Long Meadow behind the Old Schoolhouse at Upper Thornbeck\"",
        ),
        ("\"6 m\"", "\"16 m\""),
        ("in_stock = 6", "in_stock = 3"),
        ("leapfrog = false", "leapfrog = true"),
    ]));
}

#[test]
fn fourteen_students_in_large_print() {
    prints(&with(&[
        ("novices = 6\nimprovers = 2", "novices = 14"),
        ("instructors = 1", "instructors = 2"),
        ("\"6 m\"", "\"12 m\""),
    ]));
}
