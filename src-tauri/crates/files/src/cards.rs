//! Lesson cards and emergency numbers, as their files hold them.

pub mod draft;
mod head;
mod markdown;
pub mod own;
mod wording;

pub use markdown::{Block, Span};
pub use wording::{Figure, Wording, whole};

use crate::Error;
use crate::course::nearest;
use crate::shelf::Text;
use craft::tables::{Applies, Caution, Stage};
use serde::Deserialize;
use serde::de::{Deserializer, Error as _};

/// A lesson card.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Card {
    /// The word other tables use; the file's name.
    pub id: String,
    /// What a person reads.
    pub title: String,
    /// What it is about.
    pub kind: Kind,
    /// How long it lasts.
    pub minutes: u32,
    /// A stage's id, `start` or `day`.
    pub before: String,
    /// It is taught where any of these holds; with none of them, only where it is asked for.
    #[serde(default = "always", deserialize_with = "when")]
    pub when: Vec<Applies>,
    /// Drawings of the course and sketches, by name.
    #[serde(default)]
    pub drawings: Vec<String>,
    /// What students can do afterwards.
    pub aims: Vec<Wording>,
    /// What the instructor shows.
    pub show: Vec<Wording>,
    /// What is used.
    pub kit: Vec<String>,
    /// The cautions that go with it, by id.
    pub hazards: Vec<String>,
    /// What to watch for.
    pub mistakes: Vec<Wording>,
    /// What to ask.
    pub questions: Vec<Question>,
    /// What is said.
    #[serde(skip)]
    pub text: Vec<Block>,
}

/// What a lesson is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Kind {
    /// Walling.
    Lesson,
    /// Staying whole.
    Safety,
}

/// A question with its answer.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Question {
    /// What is asked.
    pub ask: Wording,
    /// What is right.
    pub answer: Wording,
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

/// The word of a lesson that is taught only where it is asked for.
const ASKED: &str = "asked";

fn always() -> Vec<Applies> {
    vec![Applies::Always]
}

/// The words for when a lesson is taught.
fn when<'de, D: Deserializer<'de>>(reader: D) -> Result<Vec<Applies>, D::Error> {
    let given = Vec::<String>::deserialize(reader)?;
    if given == [ASKED] {
        return Ok(Vec::new());
    }
    if given.is_empty() {
        let what = "an empty list would never be taught; write [\"always\"], or [\"asked\"] for where a course asks for it";
        return Err(D::Error::custom(what));
    }
    let one = |word: &String| {
        let known = Applies::ALL.into_iter().find(|it| it.word() == word);
        known.ok_or_else(|| match word.as_str() {
            ASKED => D::Error::custom(
                "\"asked\" stands alone: any lesson is taught where a course asks for it",
            ),
            _ => D::Error::custom(unknown("condition", word, &condition_words())),
        })
    };
    given.iter().map(one).collect()
}

fn condition_words() -> Vec<&'static str> {
    let words = Applies::ALL.into_iter().map(Applies::word);
    words.chain([ASKED]).collect()
}

/// `there is no stage "x"; did you mean "y"? There are ...`
fn unknown(what: &str, given: &str, known: &[&str]) -> String {
    let all = known.join(", ");
    match nearest(given, known.iter().copied()) {
        Some(near) => {
            format!("there is no {what} \"{given}\"; did you mean \"{near}\"? There are {all}")
        }
        None => format!("there is no {what} \"{given}\"; there are {all}"),
    }
}

/// The drawings of a course that a lesson can name.
pub const COURSE_DRAWINGS: [&str; 7] = [
    "section",
    "elevation",
    "line-plan",
    "setting-out",
    "frame",
    "gauge",
    "heap-plan",
];

/// What a card's names must be among.
pub(crate) struct Names<'a> {
    pub(crate) stages: &'a [Stage],
    pub(crate) cautions: &'a [Caution],
    pub(crate) sketches: &'a [&'a str],
}

/// The line between which the head of a lesson stands.
const FENCE: &str = "+++\n";

/// A card from its file: a TOML head between two lines of `+++`, then Markdown.
pub(crate) fn card(file: &Text, names: &Names<'_>) -> Result<Card, Error> {
    let no_head = || {
        file.fault(
            "no-head",
            0,
            "a lesson begins with its head between two lines of +++",
        )
    };
    let rest = file.text.strip_prefix(FENCE).ok_or_else(no_head)?;
    let end = rest.find(draft::CLOSES).ok_or_else(no_head)?;
    head::figures_are_sound(file, &rest[..end], FENCE.len())?;
    let mut card: Card = file.toml_part(&rest[..end], FENCE.len())?;
    if file.name != format!("{}.md", card.id) {
        return Err(file.fault(
            "wrong-id",
            place(file, "id", &card.id),
            "a lesson's id is its file's name without .md",
        ));
    }
    if !MINUTES.contains(&card.minutes) {
        return Err(file.fault(
            "odd-minutes",
            place(file, "minutes", &card.minutes.to_string()),
            "a lesson lasts from 5 minutes to 4 hours",
        ));
    }
    card.text = markdown::blocks(file, FENCE.len() + end + draft::CLOSES.len())?;
    all_known(file, &card, names)?;
    Ok(card)
}

/// So long a lesson may last: nobody listens for longer, and a slip of the pen would take a
/// whole day.
const MINUTES: std::ops::RangeInclusive<u32> = 5..=240;

/// Whether all that a card names is there: the stage it comes before, its drawings, and in a
/// card of the instructor's own its cautions. (In a built-in one a test sees to these, for an
/// instructor's own cautions need not have them all.)
fn all_known(file: &Text, card: &Card, names: &Names<'_>) -> Result<(), Error> {
    let stages = names.stages.iter().map(|stage| stage.id.as_str());
    let stages: Vec<&str> = ["start", "day"].into_iter().chain(stages).collect();
    let drawings = COURSE_DRAWINGS.into_iter();
    let drawings: Vec<&str> = drawings.chain(names.sketches.iter().copied()).collect();
    let cautions: Vec<&str> = names.cautions.iter().map(|it| it.id.as_str()).collect();
    let before = std::slice::from_ref(&card.before);
    let hazards = if file.own { &card.hazards[..] } else { &[] };
    for (code, key, what, given, known) in [
        ("unknown-stage", "before", "stage", before, stages),
        (
            "unknown-drawing",
            "drawings",
            "drawing",
            &card.drawings[..],
            drawings,
        ),
        ("unknown-caution", "hazards", "caution", hazards, cautions),
    ] {
        if let Some(given) = given.iter().find(|it| !known.contains(&it.as_str())) {
            let at = place(file, key, given);
            return Err(file.fault(code, at, &unknown(what, given, &known)));
        }
    }
    Ok(())
}

/// Where a value stands after its key in the head of a lesson.
fn place(file: &Text, key: &str, value: &str) -> usize {
    let mut lines = file.text.match_indices('\n').map(|(at, _)| at + 1);
    let is_key = |at: &usize| {
        let line = file.text[*at..].trim_start();
        let after = line.strip_prefix(key).map(str::trim_start);
        after.is_some_and(|after| after.starts_with('='))
    };
    let at = lines.find(is_key).unwrap_or_default();
    let value = file.text[at..].find(&format!("\"{value}\""));
    at + value.unwrap_or_default()
}

#[cfg(test)]
mod tests;
