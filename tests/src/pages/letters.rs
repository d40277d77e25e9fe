//! Size of letters, length of lines, fractions: what makes a page readable.

use super::look::{press, printed};
use checks::courses::{plain, planned};
use checks::paper::{Line, Paper};
use documents::{Course, DOCUMENTS, Edition};
use files::Library;
use press::Job;
use serde_json::json;

/// No line holds more letters; print guidance asks for some 90 at most.
const LONGEST_LINE: usize = 100;

/// The words under a drawing are part of it, and as wide: they are 3.4 mm high, which is less
/// than the smallest letters of a page.
const OF_A_DRAWING: f64 = 9.8 * 1.3;

/// A page of one text, set as every page is.
pub fn page(text: &str, edition: Edition) -> Paper {
    let template =
        format!("#import \"look.typ\": *\n#show: sheet.with(title: \"Test\")\n\n{text}\n");
    let look = include_str!("../../../lessons/pages/look.typ");
    let data = json!({
        "title": "T", "venue": "V", "dates": "D", "group": "", "paper": "a4",
        "language": "en-GB", "edition": edition.word(),
    });
    let job = Job {
        main: "test.typ",
        sources: &[("test.typ", &template), ("look.typ", look)],
        data: &data,
        pictures: &[],
    };
    Paper::new(&press().pdf(&job).expect("prints").pdf)
}

/// How high a line of letters of so many points is.
pub fn height_of(points: u32) -> f64 {
    let paper = page(
        &format!("#text(size: {points}pt)[measured]"),
        Edition::Usual,
    );
    let lines = paper.lines();
    let line = lines.iter().find(|line| line.text == "measured");
    line.expect("the line is there").height
}

fn lines_of(course: &Course) -> Vec<(&'static str, Line)> {
    let all = DOCUMENTS.iter();
    all.flat_map(|document| {
        let lines = Paper::new(&printed(course, document).pdf).lines();
        lines.into_iter().map(|line| (document.name, line))
    })
    .collect()
}

fn course(edition: Edition) -> Course {
    let mut course = planned(&plain());
    course.edition = edition;
    course
}

/// What part of the letters in paragraphs stand in lines at least so high; a line of some length
/// belongs to one. The rest is small print and the notes under tables.
fn share_as_high(lines: &[(&str, Line)], long: usize, least: f64) -> f64 {
    let count = |lines: &mut dyn Iterator<Item = &(&str, Line)>| -> usize {
        lines.map(|(_, line)| line.text.chars().count()).sum()
    };
    let paragraphs = |(_, line): &&(&str, Line)| long <= line.text.chars().count();
    let all = count(&mut lines.iter().filter(paragraphs));
    let high = lines.iter().filter(paragraphs);
    let high = count(&mut high.filter(|(_, line)| least <= line.height));
    high as f64 / all as f64
}

#[test]
fn paragraphs_are_set_in_twelve_point_or_in_eighteen() {
    for (edition, long, points) in [(Edition::Usual, 60, 12), (Edition::LargePrint, 40, 18)] {
        let lines = lines_of(&course(edition));
        let share = share_as_high(&lines, long, height_of(points) - 0.2);
        assert!(
            0.5 < share,
            "{edition:?}: {share} at {points} point or more"
        );
    }
}

/// Small print is never smaller than 10 point, or than 16 in large print; only the likely times
/// in the corners of the progress sheet are, and they stand larger on the run sheet.
#[test]
fn small_print_can_be_read() {
    for (edition, points) in [(Edition::Usual, 10), (Edition::LargePrint, 16)] {
        let least = height_of(points) - 0.2;
        let course = course(edition);
        for name in [
            "safety-handout",
            "lifting-card",
            "load-list",
            "return-list",
            "ready-list",
        ] {
            let document = documents::named(name).expect("a document");
            for line in Paper::new(&printed(&course, document).pdf).lines() {
                assert!(least <= line.height, "{name}: {}", line.text);
            }
        }
    }
}

#[test]
fn no_line_is_too_long_to_find_the_next() {
    let mut long = Vec::new();
    for text in [plain(), Library::example(true).to_owned()] {
        for (document, line) in lines_of(&planned(&text)) {
            let letters = line.text.chars().count();
            if LONGEST_LINE < letters && OF_A_DRAWING < line.height {
                long.push(format!("{document}: {letters} letters: {}", line.text));
            }
        }
    }
    assert!(long.is_empty(), "\n{}\n", long.join("\n"));
}

/// Put together from small figures, and still copied and read aloud as it was written.
#[test]
fn inches_are_set_as_fractions_and_dates_are_not() {
    let paper = page("ab 5/8 in cd 5/8 zz ef 5/8/2027 gh", Edition::Usual);
    assert!(paper.text().contains("ab 5/8 in cd 5/8 zz ef 5/8/2027 gh"));
    let words = paper.words();
    let high = |text: &str| -> Vec<f64> {
        let same = words.iter().filter(|word| word.text == text);
        same.map(|word| word.place[3] - word.place[1]).collect()
    };
    // The first is of small figures, each by itself; the second is as large as all words.
    let whole = high("cd");
    assert_eq!(high("5/8"), whole, "{words:?}");
    for part in ["5", "8"] {
        let small = high(part);
        assert!(small.len() == 1 && small[0] < 0.8 * whole[0], "{words:?}");
    }
}

/// Feet and inches as they were typed, never as quotation marks of a book.
#[test]
fn feet_and_inches_are_printed_straight() {
    let paper = page(
        "#json(\"data.json\").at(\"none\", default: \"3\u{27}6\\\"\")",
        Edition::Usual,
    );
    assert!(paper.text().contains("3'6\""), "{}", paper.text());
}

/// The order in which a screen reader and a copy take the words is that of the page.
#[test]
fn days_and_cautions_are_read_in_their_order() {
    let course = planned(&plain());
    let text = |name: &str| {
        let document = documents::named(name).expect("a document");
        Paper::new(&printed(&course, document).pdf).letters()
    };
    let in_order = |text: &str, words: Vec<String>| {
        let mut from = 0;
        for word in words {
            let word = checks::paper::letters(&word);
            let at = text[from..].find(&word);
            from += at.unwrap_or_else(|| panic!("{word} does not follow")) + word.len();
        }
    };
    let days = course.written.days.iter();
    let entries = days.flat_map(|day| {
        let entries = day
            .entries
            .iter()
            .map(|it| it.start.clone() + "–" + &it.finish);
        std::iter::once(day.date.clone()).chain(entries)
    });
    in_order(&text("run-sheet"), entries.collect());
    let cautions = course.written.cautions.iter();
    let told = cautions.filter(|it| it.for_students && it.id != "local-rules-first");
    in_order(
        &text("safety-handout"),
        told.map(|it| it.text.clone()).collect(),
    );
}

/// What is drawn is also said: each picture a template is fed has its description on the page.
#[test]
fn every_drawing_is_told_in_words() {
    let text = include_str!("../../../lessons/examples/thorn-beck.walling");
    let course = planned(text);
    for document in DOCUMENTS {
        let fed = documents::fed(&course, document);
        let told = Paper::new(&printed(&course, document).pdf).alternatives();
        let told: Vec<String> = told.iter().map(|it| checks::paper::letters(it)).collect();
        for (key, words) in fed.data.as_object().expect("data") {
            if let (true, Some(words)) = (key.ends_with("_words"), words.as_str()) {
                let words = checks::paper::letters(words);
                assert!(
                    told.contains(&words),
                    "{}: {key} is told nowhere",
                    document.name
                );
            }
        }
    }
}
