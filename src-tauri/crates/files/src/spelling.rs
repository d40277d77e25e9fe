//! British words and what they are in American English, as `lessons/tables/spelling.toml` holds them.

use crate::shelf;
use serde::Deserialize;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::OnceLock;

/// What the program's own texts say instead where a course is in American English.
#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct American {
    /// The same word otherwise spelled, by the British one.
    spelling: BTreeMap<String, String>,
    /// Another word for the same thing.
    words: BTreeMap<String, String>,
    /// Words that are others only beside each other.
    phrases: BTreeMap<String, String>,
}

impl American {
    /// The built-in table.
    pub fn built_in() -> &'static Self {
        static TABLE: OnceLock<American> = OnceLock::new();
        TABLE.get_or_init(|| {
            let text = shelf::built_in("tables/spelling.toml").unwrap_or_default();
            // Its own test reads it; British words are no reason to print nothing.
            toml_edit::de::from_str(text).unwrap_or_default()
        })
    }

    /// A text with every British word replaced. Numbers, names of other letters and what stands
    /// between words are left as they are.
    pub fn of(&self, text: &str) -> String {
        self.but(text, &BTreeSet::new())
    }

    /// The same, but for these words, as they stand.
    pub fn but(&self, text: &str, left: &BTreeSet<String>) -> String {
        let mut text = text.to_owned();
        for (british, american) in &self.phrases {
            if text.contains(british.as_str()) {
                text = text.replace(british, american);
            }
            let (british, american) = (capital(british), capital(american));
            if text.contains(&british) {
                text = text.replace(&british, &american);
            }
        }
        let mut out = String::with_capacity(text.len());
        let mut rest = text.as_str();
        while !rest.is_empty() {
            let word = rest.find(|it: char| !it.is_alphabetic());
            let (word, after) = rest.split_at(word.unwrap_or(rest.len()));
            let american = self.word(word).filter(|_| !left.contains(word));
            out.push_str(american.as_deref().unwrap_or(word));
            let between = after.find(char::is_alphabetic).unwrap_or(after.len());
            out.push_str(&after[..between]);
            rest = &after[between..];
        }
        out
    }

    /// The words of a text that are others in American English, as they stand.
    pub fn words_of(&self, text: &str) -> BTreeSet<String> {
        let words = text.split(|it: char| !it.is_alphabetic());
        let ours = words.filter(|word| self.word(word).is_some());
        ours.map(str::to_owned).collect()
    }

    /// Every word with its American one, with small first letters and with capitals.
    pub fn pairs(&self) -> impl Iterator<Item = (String, String)> {
        let all = self.spelling.iter().chain(&self.words);
        all.flat_map(|(british, american)| {
            let large = (capital(british), capital(american));
            [(british.clone(), american.clone()), large]
        })
    }

    /// The American word for one word, if it is another.
    fn word(&self, word: &str) -> Option<String> {
        let find = |word: &str| self.spelling.get(word).or_else(|| self.words.get(word));
        if let Some(american) = find(word) {
            return Some(american.clone());
        }
        let first = word.chars().next()?;
        if !first.is_uppercase() {
            return None;
        }
        let american = find(&word.to_lowercase())?;
        let all_large = 1 < word.len() && word.chars().all(char::is_uppercase);
        Some(if all_large {
            american.to_uppercase()
        } else {
            capital(american)
        })
    }
}

fn capital(word: &str) -> String {
    let mut letters = word.chars();
    let first = letters.next().into_iter().flat_map(char::to_uppercase);
    first.chain(letters).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_table_can_be_read() {
        let text = shelf::built_in("tables/spelling.toml").expect("the table is there");
        let table: American = toml_edit::de::from_str(text).expect("TOML");
        assert!(50 < table.spelling.len() && !table.words.is_empty());
        for (british, american) in table.pairs() {
            assert_ne!(british, american);
        }
    }

    #[test]
    fn words_are_met_whole_and_keep_their_capitals() {
        let american = American::built_in();
        for (british, is) in [
            ("Centre line, grey stone", "Center line, gray stone"),
            ("CENTRE", "CENTER"),
            ("a lorry or a tipper", "a truck or a dump truck"),
            ("Greystone parametres", "Greystone parametres"),
            ("whom to ring, the ring", "whom to call, the ring"),
            (
                "neighbours' joint: 2.5 metres",
                "neighbors' joint: 2.5 meters",
            ),
            ("d.centre_line", "d.center_line"),
            ("", ""),
        ] {
            assert_eq!(american.of(british), is);
        }
    }

    #[test]
    fn typed_words_are_left_as_they_were_typed() {
        let american = American::built_in();
        let typed = american.words_of("The Centre, grey slate");
        assert_eq!(
            american.but("The Centre: grey at the centre", &typed),
            "The Centre: grey at the center"
        );
    }

    /// Said twice it is not said otherwise: what was American is left alone.
    #[test]
    fn american_words_are_british_ones_nowhere() {
        let american = American::built_in();
        for (_, it) in american.pairs() {
            assert_eq!(american.of(&it), it);
        }
    }
}
