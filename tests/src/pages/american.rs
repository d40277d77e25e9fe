//! Pages in American English: no British word on any of them, and times as Americans write them.

use super::look::printed;
use checks::courses::planned;
use checks::paper::Paper;
use checks::rows;
use documents::{Course, DOCUMENTS};
use files::Library;

fn texts(course: &Course) -> Vec<(&'static str, String)> {
    let all = DOCUMENTS.iter();
    let text = |document| Paper::new(&printed(course, document).pdf).text();
    all.map(|document| (document.name, text(document)))
        .collect()
}

/// The words of a text, in small letters.
fn words(text: &str) -> Vec<String> {
    let words = text.split(|it: char| !it.is_alphabetic());
    let words = words.filter(|word| !word.is_empty());
    words.map(str::to_lowercase).collect()
}

/// What is looked for: a whole word, or the beginning of words.
fn british() -> Vec<(String, bool)> {
    let rows = rows("british.csv");
    let words = rows.iter().map(|row| row.text("word").to_owned());
    words
        .map(|word| match word.strip_prefix("whole:") {
            Some(whole) => (whole.to_owned(), true),
            None => (word, false),
        })
        .collect()
}

fn is_one_of(word: &str, british: &[(String, bool)]) -> bool {
    british.iter().any(|(it, whole)| {
        if *whole {
            word == it
        } else {
            word.starts_with(it.as_str())
        }
    })
}

/// `13:30`, in twenty-four hours; in American pages `am` or `pm` follows.
fn bare_times(text: &str) -> Vec<String> {
    let parts: Vec<&str> = text.split_whitespace().collect();
    let time = |word: &str| {
        let word = word.trim_matches(|it: char| !it.is_ascii_digit());
        let (hours, minutes) = word.split_once(':')?;
        let number = |it: &str| it.len() <= 2 && it.chars().all(|it| it.is_ascii_digit());
        let both = !hours.is_empty() && minutes.len() == 2 && number(hours) && number(minutes);
        both.then(|| word.to_owned())
    };
    let mut bare = Vec::new();
    for (at, word) in parts.iter().enumerate() {
        // `Scale 1:50` is none.
        if 0 < at && parts[at - 1] == "Scale" {
            continue;
        }
        let next = parts.get(at + 1).copied().unwrap_or_default();
        let half = |it: &str| it.starts_with("am") || it.starts_with("pm");
        let said = word.contains("am") || word.contains("pm") || half(next);
        if let Some(time) = time(word).filter(|_| !said) {
            bare.push(time);
        }
    }
    bare
}

#[test]
fn no_page_in_american_english_has_a_british_word() {
    let british = british();
    let mut found = Vec::new();
    for (document, text) in texts(&planned(Library::example(true))) {
        let here = words(&text);
        let own = here.iter().filter(|word| is_one_of(word, &british));
        found.extend(own.map(|word| format!("{document}: {word}")));
    }
    found.dedup();
    assert!(found.is_empty(), "\n{}\n", found.join("\n"));
}

/// The check must see them where they are.
#[test]
fn british_pages_have_british_words() {
    let british = british();
    let course = planned(Library::example(false));
    let all = texts(&course);
    let has = |(_, text): &(_, String)| words(text).iter().any(|it| is_one_of(it, &british));
    assert!(5 < all.iter().filter(|it| has(it)).count());
}

#[test]
fn times_are_written_in_twelve_hours_everywhere() {
    let mut found = Vec::new();
    for (document, text) in texts(&planned(Library::example(true))) {
        found.extend(
            bare_times(&text)
                .iter()
                .map(|it| format!("{document}: {it}")),
        );
    }
    assert!(found.is_empty(), "\n{}\n", found.join("\n"));
    assert_eq!(bare_times("at 13:30, or 1:30 pm – 2:00pm"), ["13:30"]);
}

/// What a person typed is printed as it was typed.
#[test]
fn typed_words_keep_their_spelling() {
    let text = Library::example(true).replace("\"Quarry Pasture\"", "\"Grey Lorry Centre\"");
    let course = planned(&text);
    let all = texts(&course);
    let (_, letter) = all.iter().find(|it| it.0 == "joining-letter").expect("it");
    assert!(letter.contains("Grey Lorry Centre"), "{letter}");
}
