//! Words clear of each other, and in large print large enough wherever they stand, in drawings too.

use super::letters::{height_of, page};
use checks::paper::{Paper, Word};
use documents::Edition;
use std::sync::OnceLock;

/// Words that share so much of their place, in points, lie on each other.
const SHARED: f64 = 1.5;

/// The part of a word's box over and under most of its letters.
const OVER: f64 = 0.3;
const UNDER: f64 = 0.25;

/// In large print nothing is smaller, whatever it is part of.
const LEAST_POINTS: u32 = 14;

/// A word of fewer letters may be higher than it is long, though it lies.
const LONG: usize = 6;

/// Whether a word is long enough to tell by its place how it lies. What stands for a sign in the
/// list of words (`&quot;`) is no word's length.
fn is_long(word: &Word) -> bool {
    LONG <= word.text.chars().count() && !word.text.contains('&')
}

/// Where the letters of a word are, without the air over and under them; a long word that is
/// higher than wide stands upright.
fn letters_of(word: &Word) -> [f64; 4] {
    let [left, top, right, bottom] = word.place;
    let (wide, high) = (right - left, bottom - top);
    // A short word's air may be on either side.
    let across = wide < high || !is_long(word);
    let down = high <= wide || !is_long(word);
    let part = |taken: bool, length: f64| if taken { length } else { 0.0 };
    let (wide, high) = (part(across, wide), part(down, high));
    [
        left + OVER * wide,
        top + OVER * high,
        right - UNDER * wide,
        bottom - UNDER * high,
    ]
}

/// Words printed over one another.
pub fn on_each_other(paper: &Paper) -> Vec<String> {
    let mut words: Vec<(Word, [f64; 4])> = paper
        .words()
        .into_iter()
        .map(|word| {
            let place = letters_of(&word);
            (word, place)
        })
        .collect();
    words.sort_by(|(a, at), (b, to)| a.page.cmp(&b.page).then(at[0].total_cmp(&to[0])));
    let mut found = Vec::new();
    for (number, (word, place)) in words.iter().enumerate() {
        let near = words[number + 1..]
            .iter()
            .take_while(|(other, at)| other.page == word.page && at[0] + SHARED < place[2]);
        for (other, at) in near {
            let shared = [
                place[2].min(at[2]) - at[0],
                place[3].min(at[3]) - place[1].max(at[1]),
            ];
            if shared.iter().all(|it| SHARED < *it) {
                let (page, a, b) = (word.page, &word.text, &other.text);
                found.push(format!("page {page}: {a:?} and {b:?} lie on each other"));
            }
        }
    }
    found
}

/// Words of the large-print edition in smaller letters than it allows; the figures of a fraction
/// are parts of a letter.
pub fn too_small(paper: &Paper, edition: Edition) -> Vec<String> {
    static LEAST: OnceLock<f64> = OnceLock::new();
    if edition == Edition::Usual {
        return Vec::new();
    }
    let least = LEAST.get_or_init(|| height_of(LEAST_POINTS) - 0.2);
    let words = paper.words().into_iter().filter(|word| {
        let [left, top, right, bottom] = word.place;
        let fraction = word.text.chars().all(|it| it.is_ascii_digit() || it == '/');
        is_long(word) && !fraction && (right - left).min(bottom - top) < *least
    });
    words
        .map(|word| {
            format!(
                "page {}: {:?} is smaller than {LEAST_POINTS} point",
                word.page, word.text
            )
        })
        .collect()
}

#[test]
fn words_on_each_other_are_found() {
    let laid = "#place(dx: 20mm)[mortar]\n#place(dx: 25mm)[through]\n#v(20mm)\nhearting";
    let found = on_each_other(&page(laid, Edition::Usual));
    assert_eq!(found.len(), 1, "{found:?}");
    let apart = "#place(dx: 20mm)[mortar]\n#place(dx: 45mm)[through]\n#v(20mm)\nhearting";
    assert!(on_each_other(&page(apart, Edition::Usual)).is_empty());
}

#[test]
fn small_letters_are_found_lying_and_standing() {
    let set = |points: u32| {
        let words = format!(
            "#text(size: {points}pt)[hearting]\n\n#rotate(-90deg, reflow: true, text(size: {points}pt)[throughs])"
        );
        too_small(&page(&words, Edition::LargePrint), Edition::LargePrint)
    };
    assert_eq!(set(12).len(), 2);
    assert!(set(14).is_empty(), "{:?}", set(14));
}
