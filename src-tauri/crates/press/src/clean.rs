//! Text made fit to print: characters that would spoil a page are taken out or replaced.
//!
//! One character that no font holds would stop the whole document, and a hidden mark that
//! turns the direction of reading could make a line say something else than was typed. So
//! every text is gone through before it is set, and what could not be printed is told.

use serde_json::Value;

use crate::Way;
use crate::fonts::Fonts;

/// What stands in print for a character that no font holds: an empty upright box.
pub(crate) const STAND_IN: char = '\u{25AF}';

/// Goes through texts and keeps note of what could not be printed.
pub(crate) struct Cleaner<'a> {
    fonts: &'a Fonts,
    way: Way,
    unprintable: Vec<char>,
}

/// What becomes of one character.
enum Fate {
    Keep,
    /// Printed as another that means the same on paper.
    Swap(char),
    /// Left out; nothing is lost on paper.
    Drop,
    /// Left out, and told.
    Refuse,
    /// Printed as [`STAND_IN`], and told.
    Missing,
}

impl<'a> Cleaner<'a> {
    pub(crate) fn new(fonts: &'a Fonts, way: Way) -> Self {
        Self {
            fonts,
            way,
            unprintable: Vec::new(),
        }
    }

    /// The characters left out or replaced so far, each once, in the order they were met.
    pub(crate) fn into_unprintable(self) -> Vec<char> {
        self.unprintable
    }

    /// The same value with every text in it cleaned. Keys stay as they are.
    pub(crate) fn value(&mut self, value: &Value) -> Value {
        match value {
            Value::String(text) => Value::String(self.text(text)),
            Value::Array(list) => list.iter().map(|item| self.value(item)).collect(),
            Value::Object(map) => map
                .iter()
                .map(|(key, item)| (key.clone(), self.value(item)))
                .collect(),
            Value::Null | Value::Bool(_) | Value::Number(_) => value.clone(),
        }
    }

    /// The same text, cleaned.
    pub(crate) fn text(&mut self, text: &str) -> String {
        let mut out = String::with_capacity(text.len());
        let mut rest = text;
        while let Some((at, c)) = rest.char_indices().find(|(_, c)| !is_plain(*c)) {
            let (plain, from_here) = rest.split_at(at);
            out.push_str(plain);
            rest = &from_here[c.len_utf8()..];
            // Both together end one line.
            if c != '\r' || !rest.starts_with('\n') {
                out.extend(self.printed(c));
            }
        }
        out.push_str(rest);
        out
    }

    /// The same SVG, cleaned, with characters written as numbers (`&#x1F9F1;`) looked at too.
    pub(crate) fn svg(&mut self, svg: &str) -> String {
        let mut out = String::with_capacity(svg.len());
        let mut rest = svg;
        while let Some(start) = rest.find("&#") {
            let (before, reference) = rest.split_at(start);
            out.push_str(&self.text(before));
            let end = reference.find(';').map_or(reference.len(), |at| at + 1);
            let (reference, after) = reference.split_at(end);
            self.reference(reference, &mut out);
            rest = after;
        }
        out.push_str(&self.text(rest));
        out
    }

    /// Writes a character reference on, or what stands for it. One that names no character
    /// is written on for the SVG reader to complain about.
    fn reference(&mut self, reference: &str, out: &mut String) {
        match referred(reference) {
            Some(c) => match self.printed(c) {
                Some(kept) if kept == c => out.push_str(reference),
                other => out.extend(other),
            },
            None => out.push_str(&self.text(reference)),
        }
    }

    /// What is printed for a character, if anything; notes it when that is not what was typed.
    fn printed(&mut self, c: char) -> Option<char> {
        match self.fate(c) {
            Fate::Keep => Some(c),
            Fate::Swap(other) => Some(other),
            Fate::Drop => None,
            Fate::Refuse => {
                self.note(c);
                None
            }
            Fate::Missing => {
                self.note(c);
                Some(STAND_IN)
            }
        }
    }

    fn fate(&self, c: char) -> Fate {
        match c {
            '\n' => Fate::Keep,
            // A tab would be printed as nothing, running two words together.
            '\t' => Fate::Swap(' '),
            // Other ways to end a line.
            '\r' | '\u{85}' | '\u{2028}' | '\u{2029}' => Fate::Swap('\n'),
            // A byte order mark, and the choice between plain and coloured forms of a sign.
            '\u{FEFF}' | '\u{FE00}'..='\u{FE0F}' => Fate::Drop,
            // Marks that turn or fence off the direction of reading.
            '\u{202A}'..='\u{202E}' | '\u{2066}'..='\u{2069}' => Fate::Refuse,
            c if c.is_control() => Fate::Refuse,
            c if self.way == Way::Unmarked && is_mark(c) => Fate::Refuse,
            c if self.fonts.cover(c) => Fate::Keep,
            c if c.is_whitespace() => Fate::Swap(' '),
            _ => Fate::Missing,
        }
    }

    fn note(&mut self, c: char) {
        if !self.unprintable.contains(&c) {
            self.unprintable.push(c);
        }
    }
}

/// Whether a character is printed as it is without a look at the fonts: nearly all of a drawing is.
fn is_plain(c: char) -> bool {
    matches!(c, '\n' | ' '..='~')
}

/// Whether a character is a mark set over, under or through the one before it, among those the
/// fonts hold: Latin and general, Cyrillic, Hebrew, Arabic, N'Ko, Lao, symbols.
fn is_mark(c: char) -> bool {
    const BLOCKS: [(char, char); 17] = [
        ('\u{300}', '\u{36F}'),
        ('\u{483}', '\u{489}'),
        ('\u{5B0}', '\u{5BD}'),
        ('\u{5BF}', '\u{5BF}'),
        ('\u{5C1}', '\u{5C2}'),
        ('\u{5C7}', '\u{5C7}'),
        ('\u{615}', '\u{615}'),
        ('\u{64B}', '\u{65F}'),
        ('\u{670}', '\u{670}'),
        ('\u{7EB}', '\u{7F3}'),
        ('\u{EB1}', '\u{EB1}'),
        ('\u{EB4}', '\u{EBC}'),
        ('\u{EC8}', '\u{ECD}'),
        ('\u{1DC4}', '\u{1DC9}'),
        ('\u{20D0}', '\u{20E1}'),
        ('\u{FB1E}', '\u{FB1E}'),
        ('\u{FE20}', '\u{FE23}'),
    ];
    BLOCKS
        .iter()
        .any(|&(first, last)| (first..=last).contains(&c))
}

/// The character a reference such as `&#9650;` or `&#x25B2;` names.
fn referred(reference: &str) -> Option<char> {
    let digits = reference.strip_prefix("&#")?.strip_suffix(';')?;
    let number = match digits.strip_prefix(['x', 'X']) {
        Some(hex) => u32::from_str_radix(hex, 16).ok()?,
        None => digits.parse().ok()?,
    };
    char::from_u32(number)
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::{Cleaner, STAND_IN};
    use crate::Way;
    use crate::fonts::Fonts;

    #[test]
    fn every_plain_character_is_one_that_the_fonts_hold() {
        let fonts = Fonts::built_in();
        let plain = || ('\0'..='\u{FF}').filter(|c| super::is_plain(*c));
        assert_eq!(plain().count(), 96);
        assert!(plain().all(|c| c == '\n' || fonts.cover(c)));
    }

    #[test]
    fn texts_are_cleaned_wherever_they_are_and_nothing_else_is() {
        let fonts = Fonts::built_in();
        let mut cleaner = Cleaner::new(&fonts, Way::Usual);
        let value = json!({ "🧱": ["a\tb\r\nc\u{2028}d", { "n": 1.5, "yes": true, "none": null }, "石\u{7}"] });
        assert_eq!(
            cleaner.value(&value),
            json!({ "🧱": ["a b\nc\nd", { "n": 1.5, "yes": true, "none": null }, "▯"] })
        );
        assert_eq!(
            cleaner.svg("<text>&lt;&#9650;&#x1F9F1;&#27;&amp;#x1F9F1; a&#b</text>"),
            "<text>&lt;&#9650;▯&amp;#x1F9F1; a&#b</text>"
        );
        assert_eq!(cleaner.into_unprintable(), ['石', '\u{7}', '🧱', '\u{1B}']);
    }

    #[test]
    fn the_stand_in_can_be_printed() {
        assert!(Fonts::built_in().cover(STAND_IN));
    }
}
