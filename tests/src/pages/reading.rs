//! What students are handed is easy to read.

use super::look::printed;
use checks::courses::{plain, planned};
use checks::paper::Paper;
use checks::reading::{Counted, syllables};
use checks::{Found, every_row};
use documents::DOCUMENTS;

/// What students are given to read.
const FOR_STUDENTS: [&str; 3] = ["safety-handout", "lesson-handouts", "joining-letter"];

/// A school grade: that of pupils of thirteen.
const HARDEST: f64 = 8.0;

/// Small print is for those who ask who says so: lines of less than 11 point are left out.
const SMALL_PRINT: f64 = 10.9 * 1.3;

fn grade(pdf: &[u8]) -> (f64, Counted) {
    let lines = Paper::new(pdf).lines();
    let mut paragraphs: Vec<(usize, String)> = Vec::new();
    for line in lines.iter().filter(|line| SMALL_PRINT <= line.height) {
        match paragraphs
            .last_mut()
            .filter(|(block, _)| *block == line.block)
        {
            Some((_, text)) => text.extend([" ", &line.text]),
            None => paragraphs.push((line.block, line.text.clone())),
        }
    }
    // Labels and heads are no sentences.
    let read = paragraphs.iter().map(|(_, text)| text.as_str());
    let read = read.filter(|text| 5 <= text.split_whitespace().count());
    let counted = Counted::of(read);
    (counted.grade().expect("there are words"), counted)
}

#[test]
fn what_students_are_handed_is_easy_to_read() {
    for text in [plain(), files::Library::example(true).to_owned()] {
        let course = planned(&text);
        let documents = DOCUMENTS.iter();
        for document in documents.filter(|it| FOR_STUDENTS.contains(&it.name)) {
            let (grade, counted) = grade(&printed(&course, document).pdf);
            println!("{}: grade {grade:.1}, {counted:?}", document.name);
            assert!(grade <= HARDEST, "{}: grade {grade:.1}", document.name);
            assert!(100 < counted.words, "{}: {counted:?}", document.name);
        }
    }
}

#[test]
fn syllables_are_counted_as_they_are_said() {
    every_row("syllables.csv", |row| -> Found {
        let word = row.text("word");
        let counted = u32::try_from(syllables(word)).expect("a small number");
        row.near(word, f64::from(counted), row.number("syllables"), 0.0)
    });
}

/// By hand: 13 words, 13 syllables, 2 sentences give 0.39 * 6.5 + 11.8 * 1 - 15.59 = -1.255;
/// 11 words and 41 syllables in one sentence 0.39 * 11 + 11.8 * 41/11 - 15.59 = 32.682.
#[test]
fn the_grade_follows_the_formula() {
    let grade = |text: &str| Counted::of(text.split('\n')).grade();
    let near = |text: &str, due: f64| {
        let grade = grade(text).expect("words");
        assert!((grade - due).abs() < 0.001, "{grade}, {due} is due: {text}");
    };
    near(
        "Set the stone on its bed. Fill each gap with care or ask.",
        -1.255,
    );
    near(
        "Responsible supervision necessitates continuous evaluation of environmental \
         conditions preceding mechanical excavation",
        32.682,
    );
    assert_eq!(grade("12 34.\n"), None);
    let all = Counted::of("A wall. No end\n3 m?".split('\n'));
    assert_eq!((all.sentences, all.words), (3, 5));
}
