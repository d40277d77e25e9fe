//! The words of the trade as their file holds them, with the instructor's own over and among them.

use crate::cards::COURSE_DRAWINGS;
use crate::course::nearest;
use crate::shelf::{Shelf, Text};
use crate::{Error, Fault};
use serde::Deserialize;

const FILE: &str = "glossary.toml";

/// Who says so, where a file of the instructor's own does not say.
const YOURS: &str = "your own words";

/// A word of the trade.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Term {
    /// The word.
    pub word: String,
    /// Other words for the same thing, and other forms of it that are not an `s` at its end.
    #[serde(default)]
    pub also: Vec<String>,
    /// What it means, in a sentence or two.
    pub meaning: String,
    /// A sketch, or a drawing of the course, by its name.
    #[serde(default)]
    pub drawing: Option<String>,
    /// It is a word of everyday speech as well, so that only the other words are marked in texts.
    #[serde(default)]
    pub everyday: bool,
    /// Who says so.
    #[serde(default = "yours")]
    pub source: String,
}

fn yours() -> String {
    YOURS.to_owned()
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Terms {
    term: Vec<Term>,
}

/// The built-in words with the instructor's own in place of those of the same word and beside
/// the others, by the alphabet. A drawing must be one of the course or one of these sketches.
pub(crate) fn terms(shelf: &Shelf, sketches: &[&str]) -> Result<Vec<Term>, Error> {
    let built_in = Text::built_in(FILE).map(|text| read(&text, sketches));
    let mut all = built_in.transpose()?.unwrap_or_default();
    if let Some(own) = shelf.own(FILE)? {
        let own = read(&own, sketches)?;
        all.retain(|term| !own.iter().any(|it| same(&it.word, &term.word)));
        // A word that was another word for something is now what its owner says.
        for term in &mut all {
            term.also
                .retain(|word| !own.iter().any(|it| same(&it.word, word)));
        }
        all.extend(own);
    }
    all.sort_by_key(|term| term.word.to_lowercase());
    Ok(all)
}

fn same(one: &str, other: &str) -> bool {
    one.to_lowercase() == other.to_lowercase()
}

fn read(text: &Text, sketches: &[&str]) -> Result<Vec<Term>, Error> {
    let terms = text.toml::<Terms>()?.term;
    let mut seen: Vec<&str> = Vec::new();
    for term in &terms {
        for word in std::iter::once(&term.word).chain(&term.also) {
            if word.trim().is_empty() {
                return Err(refused(
                    text,
                    "empty-word",
                    (word, 0),
                    "a word is empty",
                    "write the word",
                ));
            }
            if seen.iter().any(|it| same(it, word)) {
                let what = format!("\"{word}\" is there twice");
                let cure = "say it once, under the word it belongs to";
                return Err(refused(text, "word-twice", (word, 1), &what, cure));
            }
            seen.push(word);
        }
        if term.meaning.trim().is_empty() {
            let what = format!("\"{}\" has no meaning", term.word);
            let cure = "write a sentence or two";
            return Err(refused(text, "no-meaning", (&term.word, 0), &what, cure));
        }
        if let Some(drawing) = &term.drawing {
            let known: Vec<&str> = COURSE_DRAWINGS
                .iter()
                .copied()
                .chain(sketches.iter().copied())
                .collect();
            if !known.contains(&drawing.as_str()) {
                let what = format!("there is no drawing \"{drawing}\"");
                let cure = match nearest(drawing, known.iter().copied()) {
                    Some(near) => format!("did you mean \"{near}\"?"),
                    None => "name a file of lessons/sketches without its ending, or a drawing of the course".to_owned(),
                };
                return Err(refused(text, "unknown-drawing", (drawing, 0), &what, &cure));
            }
        }
    }
    Ok(terms)
}

/// A fault at the so-many-eth place where a text stands in quotation marks.
fn refused(
    text: &Text,
    code: &'static str,
    (at, nth): (&str, usize),
    what: &str,
    cure: &str,
) -> Error {
    let quoted = format!("\"{at}\"");
    let places: Vec<usize> = text.text.match_indices(&quoted).map(|it| it.0).collect();
    // The same word in other letters stands only once as it is written.
    let at = places
        .get(nth)
        .or(places.last())
        .copied()
        .unwrap_or_default();
    text.refuse(Fault {
        code,
        key: String::new(),
        at,
        what: what.to_owned(),
        cure: cure.to_owned(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Library;

    fn with(own: &str) -> Result<Vec<Term>, String> {
        let folder = tempfile::tempdir().expect("a folder");
        std::fs::write(folder.path().join(FILE), own).expect("a file");
        let shelf = Shelf {
            own: Some(folder.path().to_owned()),
        };
        terms(&shelf, &["bulge"]).map_err(|error| error.to_string())
    }

    fn built_in() -> Vec<Term> {
        Library::built_in()
            .expect("the built-in library is sound")
            .terms
    }

    /// One or two plain sentences and who says so: it is read beside what somebody is typing.
    #[test]
    fn every_word_is_short_has_a_source_and_no_two_are_alike() {
        let all = built_in();
        assert!(60 <= all.len(), "{} words", all.len());
        for term in &all {
            let sentences = term.meaning.matches(['.', '?', '!']).count();
            assert!(
                (1..=3).contains(&sentences),
                "{}: {}",
                term.word,
                term.meaning
            );
            assert!(
                term.meaning.len() <= 220,
                "{}: {}",
                term.word,
                term.meaning.len()
            );
            assert!(
                term.source.starts_with("common practice") || term.source.contains(','),
                "{}",
                term.word
            );
        }
        for due in [
            "batter",
            "cope",
            "hearting",
            "through",
            "footing",
            "face",
            "lift",
            "head",
            "stint",
            "frame",
            "bar",
            "board",
            "string",
            "gauge",
            "heap",
            "course",
            "coursing",
            "running joint",
            "pin",
            "bed",
            "bond",
            "smoot",
            "cripple hole",
        ] {
            assert!(all.iter().any(|it| it.word == due), "nothing of {due}");
        }
    }

    #[test]
    fn most_words_for_things_have_a_drawing() {
        let all = built_in();
        let drawn = all.iter().filter(|it| it.drawing.is_some()).count();
        assert!(all.len() * 2 < drawn * 3, "{drawn} of {}", all.len());
    }

    /// A word of one's own takes the place of the built-in one, and a new one stands in its place
    /// by the alphabet; nothing else is lost.
    #[test]
    fn an_own_word_counts_and_the_others_stay() {
        let all = with(
            "[[term]]\nword = \"Batter\"\nmeaning = \"Mine.\"\ndrawing = \"bulge\"\n[[term]]\nword = \"beck\"\nmeaning = \"A stream.\"\n",
        );
        // The built-in file names sketches that are not among these.
        let message = all.expect_err("the built-in sketches are not there");
        assert!(message.contains("there is no drawing"), "{message}");
        let folder = tempfile::tempdir().expect("a folder");
        let lessons = folder.path().join("lessons");
        std::fs::create_dir(&lessons).expect("a folder");
        std::fs::write(lessons.join(FILE), "[[term]]\nword = \"Batter\"\nmeaning = \"Mine.\"\n[[term]]\nword = \"beck\"\nmeaning = \"A stream.\"\n").expect("a file");
        let all = Library::with_store(folder.path()).expect("sound").terms;
        assert_eq!(all.len(), built_in().len() + 1);
        let one = |word: &str| all.iter().find(|it| it.word == word).expect("there");
        assert_eq!(
            (
                one("Batter").meaning.as_str(),
                one("Batter").source.as_str()
            ),
            ("Mine.", YOURS)
        );
        assert!(!all.iter().any(|it| it.word == "batter"));
        let at = |word: &str| all.iter().position(|it| it.word == word).expect("there");
        assert!(at("bed") - 1 == at("beck"));
    }

    #[test]
    fn what_is_wrong_is_named_with_its_file_and_line() {
        let sketches: Vec<String> = Vec::new();
        let sketches: Vec<&str> = sketches.iter().map(String::as_str).collect();
        let term = "[[term]]\nword = \"beck\"\nmeaning = \"A stream.\"\n";
        for (text, line, said) in [
            (format!("{term}{term}"), 5, "\"beck\" is there twice"),
            (
                format!("{term}also = [\"Beck\"]\n"),
                4,
                "\"Beck\" is there twice",
            ),
            (
                format!("{term}drawing = \"bulgy\"\n"),
                4,
                "there is no drawing \"bulgy\"",
            ),
            (
                "[[term]]\nword = \"beck\"\nmeaning = \" \"\n".to_owned(),
                2,
                "\"beck\" has no meaning",
            ),
            (
                "[[term]]\nword = \"\"\nmeaning = \"x\"\n".to_owned(),
                2,
                "a word is empty",
            ),
            (format!("{term}colour = 1\n"), 4, "unknown field"),
        ] {
            let text = Text::of(std::path::Path::new("mine/glossary.toml"), text);
            let message = read(&text, &sketches).expect_err("refused").to_string();
            let place = format!("mine/glossary.toml:{line}:");
            assert!(
                message.starts_with(&place) && message.contains(said),
                "{message}"
            );
        }
    }
}
