//! Lesson cards, words of the trade and emergency numbers, as their files hold them.

use crate::Error;
use crate::shelf::Text;
use craft::tables::Stage;
use serde::Deserialize;

/// A lesson card.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Card {
    /// The word other tables use; the file's name.
    pub id: String,
    /// What a person reads.
    pub title: String,
    /// `lesson` or `safety`.
    pub kind: String,
    /// How long it lasts.
    pub minutes: u32,
    /// A stage's id, `start` or `day`.
    pub before: String,
    /// What students can do afterwards.
    pub aims: Vec<String>,
    /// What the instructor shows.
    pub show: Vec<String>,
    /// What is used.
    pub kit: Vec<String>,
    /// The cautions that go with it, by id.
    pub hazards: Vec<String>,
    /// What to watch for.
    pub mistakes: Vec<String>,
    /// What to ask.
    pub questions: Vec<Question>,
    /// What is said, in Markdown.
    #[serde(skip)]
    pub text: String,
}

/// A question with its answer.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Question {
    /// What is asked.
    pub ask: String,
    /// What is right.
    pub answer: String,
}

/// A word of the trade.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Term {
    /// The word.
    pub word: String,
    /// What it means.
    pub meaning: String,
}

/// The number to ring in a country.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Country {
    /// ISO 3166.
    pub code: String,
    /// What a person reads.
    pub name: String,
    /// The number.
    pub emergency: String,
    /// Who says so.
    pub source: String,
}

/// A card from its file: a TOML head between two lines of `+++`, then Markdown.
pub(crate) fn card(file: &Text) -> Result<Card, Error> {
    let no_head = || {
        file.fault(
            "no-head",
            0,
            "a lesson begins with its head between two lines of +++",
        )
    };
    let head = file.text.strip_prefix("+++\n").ok_or_else(no_head)?;
    let (head, text) = head.split_once("\n+++\n").ok_or_else(no_head)?;
    let card: Card = file.toml_part(head, "+++\n".len())?;
    if file.name != format!("{}.md", card.id) {
        let at = file.text.find("id =").unwrap_or_default();
        return Err(file.fault(
            "wrong-id",
            at,
            "a lesson's id is its file's name without .md",
        ));
    }
    Ok(Card {
        text: text.trim().to_owned(),
        ..card
    })
}

/// A lesson comes before a stage there is, or first thing.
pub(crate) fn has_its_place(file: &Text, card: &Card, stages: &[Stage]) -> Result<(), Error> {
    let known = || {
        ["start", "day"]
            .into_iter()
            .chain(stages.iter().map(|stage| stage.id.as_str()))
    };
    if known().any(|word| word == card.before) {
        return Ok(());
    }
    let at = file.text.find("before =").unwrap_or_default();
    let words: Vec<&str> = known().collect();
    let what = format!(
        "there is no \"{}\" to come before; there are {}",
        card.before,
        words.join(", ")
    );
    Err(file.fault("unknown-stage", at, &what))
}
