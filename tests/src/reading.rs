//! How hard a text is to read: the grade of an American school in which it is understood.
//!
//! Flesch-Kincaid grade: `0.39 words / sentences + 11.8 syllables / words - 15.59`, from
//! Kincaid, Fishburne, Rogers and Chissom, "Derivation of new readability formulas for Navy
//! enlisted personnel", Research Branch Report 8-75, 1975.

/// What a text is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Counted {
    /// What ends with a full stop, a question or an exclamation mark, or at the end of a
    /// paragraph.
    pub sentences: usize,
    /// What has a letter in it: figures alone are not read as words.
    pub words: usize,
    /// Of all words.
    pub syllables: usize,
}

impl Counted {
    /// Counts paragraphs.
    pub fn of<'t>(paragraphs: impl Iterator<Item = &'t str>) -> Self {
        let mut all = Self::default();
        for paragraph in paragraphs {
            let mut open = false;
            for word in paragraph.split_whitespace() {
                if word.chars().any(char::is_alphabetic) {
                    all.words += 1;
                    all.syllables += syllables(word);
                    open = true;
                }
                let end = word.trim_end_matches(['"', '\'', ')', '”', '’']);
                if open && end.ends_with(['.', '!', '?']) {
                    all.sentences += 1;
                    open = false;
                }
            }
            all.sentences += usize::from(open);
        }
        all
    }

    /// The grade; none for a text without words.
    pub fn grade(self) -> Option<f64> {
        if self.words == 0 {
            return None;
        }
        let [sentences, words, syllables] =
            [self.sentences, self.words, self.syllables].map(|it| it as f64);
        Some(0.39 * words / sentences + 11.8 * syllables / words - 15.59)
    }
}

/// The syllables of an English word, by its spelling: groups of vowels, without the silent ones
/// at its end and with those that stand beside each other and are both heard.
pub fn syllables(word: &str) -> usize {
    // Each part of a word with a hyphen in it is one.
    let parts = word.split(|c: char| !c.is_alphabetic() && c != '\'' && c != '’');
    parts.map(part).sum::<usize>().max(1)
}

fn part(word: &str) -> usize {
    let word: Vec<char> = word
        .split(['\'', '’'])
        .next()
        .unwrap_or_default()
        .to_lowercase()
        .chars()
        .collect();
    if word.is_empty() {
        return 0;
    }
    let vowel = |at: usize| {
        let y = at != 0 && word[at] == 'y';
        y || "aeiou".contains(word[at])
    };
    let groups = (0..word.len())
        .filter(|&at| vowel(at) && (at == 0 || !vowel(at - 1)))
        .count();
    let text: String = word.iter().collect();
    let apart = [
        "ia", "io", "iu", "eo", "ua", "iet", "uou", "yi", "yo", "eing", "oing",
    ];
    // In `-tion`, `-cial`, `-geon`, `-quar` the two make one sound.
    let together = [
        "tion", "sion", "cion", "gion", "tial", "cial", "cian", "tious", "cious", "gious", "geon",
        "qua", "gua", "people",
    ];
    let both: usize = apart.iter().map(|it| text.matches(it).count()).sum();
    let one: usize = together.iter().map(|it| text.matches(it).count()).sum();
    // `area`, `idea`; but `sea`.
    let ea = usize::from(3 < text.len() && text.ends_with("ea"));
    (groups + ea + both.saturating_sub(one))
        .saturating_sub(silent(&text) + silent_within(&text))
        .max(1)
}

/// An e that was silent and stays so within a longer word: `safety`, `careful`, `someone`.
fn silent_within(text: &str) -> usize {
    let ends = ["ety", "eful", "eless", "ely", "ement", "eness"];
    let stem = ends.iter().find_map(|end| text.strip_suffix(end));
    let after_consonant = stem.and_then(|it| it.chars().last());
    let ending = after_consonant.is_some_and(|c| !"aeiouylr".contains(c))
        || stem.is_some_and(|it| it.ends_with("ar"));
    usize::from(ending || text.starts_with("some") || text.starts_with("every"))
}

/// Endings whose vowel is not heard: `stone`, `stones`, `worked`; but `table`, `courses`, `needed`.
fn silent(text: &str) -> usize {
    let after = |ending: &str, heard: &[&str]| {
        let stem = text.strip_suffix(ending);
        let quiet = stem.is_some_and(|stem| {
            let last = stem.chars().last();
            let after_consonant = last.is_some_and(|c| !"aeiouy".contains(c));
            after_consonant && !heard.iter().any(|end| stem.ends_with(end))
        });
        usize::from(quiet)
    };
    let le = |stem: &str| {
        let before = stem.strip_suffix('l').and_then(|it| it.chars().last());
        before.is_some_and(|c| !"aeiouylrw".contains(c))
    };
    if let Some(stem) = text.strip_suffix('e') {
        return if le(stem) { 0 } else { after("e", &[]) };
    }
    if let Some(stem) = text.strip_suffix("es") {
        let hissing = ["s", "x", "z", "ch", "sh", "c", "g"];
        return if le(stem) { 0 } else { after("es", &hissing) };
    }
    if let Some(stem) = text.strip_suffix("ed") {
        return if le(stem) {
            0
        } else {
            after("ed", &["t", "d"])
        };
    }
    0
}
