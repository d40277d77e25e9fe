//! The room a page has for words: between the margins, and in the strips of its head and foot.

use super::look::press;
use checks::paper::Paper;
use documents::Edition;
use press::Job;
use serde_json::Value;

/// Millimetres in points.
const MM: f64 = 72.0 / 25.4;

/// Text is 180 mm wide on both papers, in the middle.
const WIDE: f64 = 180.0 * MM;

/// The place of a word goes by its letters' own width, which reaches over a little.
const OVER: f64 = 1.0;

/// Where the middle of a word may stand, from the top: the strip of the head, the text, the
/// strip of the foot. The margins are those of `look.typ`, 5 mm of them clear.
fn strips(edition: Edition, high: f64) -> [(f64, f64); 3] {
    let (top, bottom) = match edition {
        Edition::Usual => (21.0, 18.0),
        Edition::LargePrint => (24.0, 21.0),
    };
    [
        (7.0 * MM, (top - 5.0) * MM),
        (top * MM, high - bottom * MM),
        (high - (bottom - 5.0) * MM, high - 7.0 * MM),
    ]
}

/// Words outside the room for them.
pub fn outside(paper: &Paper, edition: Edition) -> Vec<String> {
    let words = paper.words();
    let strays = words.iter().filter(|word| {
        let [width, height] = word.paper;
        let [left, top, right, bottom] = word.place;
        let side = (width - WIDE) / 2.0 - OVER;
        let middle = (top + bottom) / 2.0;
        let strips = strips(edition, height);
        let within = |(from, to): &(f64, f64)| *from <= middle && middle <= *to;
        left < side || width - side < right || !strips.iter().any(within)
    });
    strays
        .map(|word| {
            let [left, top, ..] = word.place.map(|at| at / MM);
            let said = format!("page {}: {:?} stands at", word.page, word.text);
            format!("{said} {left:.0} mm from the left, {top:.0} mm from the top")
        })
        .collect()
}

/// A page with a word at a place, in millimetres from the top left of the text.
fn page(across: f64, down: f64) -> Paper {
    let template = format!(
        "#import \"look.typ\": *\n#show: sheet.with(title: \"Test\")\n\
         #place(top + left, dx: {across}mm, dy: {down}mm)[word]\n"
    );
    let look = include_str!("../../../lessons/pages/look.typ");
    let data: Value = serde_json::json!({
        "title": "T", "venue": "V", "dates": "D", "group": "", "paper": "a4", "language": "en-GB",
    });
    let job = Job {
        main: "test.typ",
        sources: &[("test.typ", &template), ("look.typ", look)],
        data: &data,
        pictures: &[],
    };
    Paper::new(&press().pdf(&job).expect("prints").pdf)
}

#[test]
fn a_word_outside_is_seen_and_one_inside_is_not() {
    for (across, down, seen) in [
        (0.0, 20.0, false),
        (170.0, 250.0, false),
        (-3.0, 20.0, true),
        (175.0, 20.0, true),
        (50.0, 258.0, true),
        (50.0, -4.5, true),
    ] {
        let found = outside(&page(across, down), Edition::Usual);
        assert_eq!(!found.is_empty(), seen, "{across} {down}: {found:?}");
    }
}
