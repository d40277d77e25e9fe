//! The instructor's own lesson cards: which there are beside the built-in ones, read as they are
//! written, judged before they are saved, put into their folder and taken out of it.

use super::draft::{self, Parts};
use super::{Card, MINUTES, Names, card};
use crate::save::save;
use crate::shelf::{MEND, Shelf, Text, built_in, plain_lines};
use crate::tables::lesson;
use crate::{Error, Library};
use craft::tables::Lesson;
use std::path::{Path, PathBuf};

/// Whose a lesson on the shelf is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Whose {
    /// It came with the program.
    BuiltIn,
    /// The instructor's own, in place of a built-in one.
    Replaces,
    /// The instructor's own, beside the built-in ones.
    Own,
}

/// What is wrong with a card, where a person can mend it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CardFault {
    /// The line of the whole file, counted from 1.
    pub line: usize,
    /// The line of its text below the head, counted from 1; nothing if it lies in the head.
    pub text_line: Option<usize>,
    /// The key of the head it lies in; empty if it lies in none.
    pub key: String,
    /// What is wrong.
    pub what: String,
    /// What would be right; empty if that is plain.
    pub cure: String,
}

/// The lessons there are, by the name of their file, and whose each is.
pub fn on_shelf(store: &Path) -> Vec<(String, Whose)> {
    let shelf = shelf(store);
    let ids = shelf.paths("cards", "md").into_iter().filter_map(|path| {
        let id = path.strip_prefix("cards/")?.strip_suffix(".md")?;
        Some((id.to_owned(), whose(&shelf, id)?))
    });
    ids.collect()
}

/// A card as it is written: the instructor's own, else the built-in one.
///
/// # Errors
/// [`Error::Read`] if there is none of this name, or if it is no text.
pub fn written(store: &Path, id: &str) -> Result<String, Error> {
    Ok(shelf(store).text(&path(id)?)?.text)
}

/// Whose a lesson is; nothing if there is none of this name.
pub fn whose_is(store: &Path, id: &str) -> Option<Whose> {
    whose(&shelf(store), id)
}

/// Puts a card into the instructor's own folder, in place of what was there.
///
/// # Errors
/// [`Error::Write`]; what was there is whole.
pub fn save_card(store: &Path, id: &str, text: &str) -> Result<(), Error> {
    let file = file(store, id)?;
    if let Some(folder) = file.parent() {
        std::fs::create_dir_all(folder).map_err(|cause| Error::Write {
            path: file.clone(),
            cause,
        })?;
    }
    save(&file, text.as_bytes())
}

/// Takes a card out of the instructor's own folder, so that the built-in one of its name counts,
/// if there is one. A card that is not there is gone already.
///
/// # Errors
/// [`Error::Write`].
pub fn take_away(store: &Path, id: &str) -> Result<(), Error> {
    let file = file(store, id)?;
    match std::fs::remove_file(&file) {
        Err(cause) if cause.kind() != std::io::ErrorKind::NotFound => {
            Err(Error::Write { path: file, cause })
        }
        _ => Ok(()),
    }
}

/// A name for a new card's file from its title: `Frost & stone` is `frost-stone`, with a number
/// behind it where there is one of this name.
pub fn name_for(title: &str, taken: &[&str]) -> String {
    let plain = title.to_lowercase();
    let words = plain.split(|sign: char| !sign.is_ascii_alphanumeric());
    let words: Vec<&str> = words.filter(|it| !it.is_empty()).take(8).collect();
    let name = if words.is_empty() {
        "lesson".to_owned()
    } else {
        words.join("-")
    };
    // No disk takes a longer name, and nobody would read it.
    let name = name.get(..60).unwrap_or(&name).trim_end_matches('-');
    let numbered = (2..).map(|number| format!("{name}-{number}"));
    let mut names = std::iter::once(name.to_owned()).chain(numbered);
    let free = names.find(|it| !taken.contains(&it.as_str()));
    free.unwrap_or_default()
}

/// How a new card begins: sound, and ready to be written over.
pub fn new_card(id: &str, title: &str) -> String {
    let title = toml_edit::Value::from(title);
    format!(
        "+++\nid = \"{id}\"\ntitle = {title}\nkind = \"lesson\"\nminutes = 15\nbefore = \"first-lift\"\n\
         when = [\"asked\"]\ndrawings = []\naims = []\nshow = []\nkit = []\nhazards = []\nmistakes = []\n\
         questions = []\n+++\n\nWhat students take home from this lesson.\n"
    )
}

impl Library {
    /// A card as this library would read it, and as a lesson of the timetable.
    ///
    /// # Errors
    /// The [`CardFault`] that would keep it from being used.
    pub fn read_card(&self, id: &str, text: &str) -> Result<(Card, Lesson), CardFault> {
        let plain = plain_lines(text);
        if let Some(parts) = draft::parts(&plain) {
            plainly_wrong(&plain, &parts)?;
        }
        let sketches = self.sketches();
        let names = Names {
            stages: &self.tables.stages,
            cautions: &self.tables.cautions,
            sketches: &sketches,
        };
        let file = Text::of(Path::new(&format!("{id}.md")), plain.clone());
        match card(&file, &names) {
            Ok(card) => {
                let lesson = lesson(&card);
                Ok((card, lesson))
            }
            Err(error) => Err(fault(&plain, error)),
        }
    }

    /// The sketches that a lesson can name.
    pub fn sketches(&self) -> Vec<&str> {
        let names = self.pages.keys().filter_map(|name| {
            let name = name.strip_prefix("sketches/")?;
            name.strip_suffix(".typ")
        });
        names.filter(|name| *name != crate::library::HAND).collect()
    }
}

/// What a person sees at the field better than in the words of a TOML reader.
fn plainly_wrong(plain: &str, parts: &Parts) -> Result<(), CardFault> {
    let minutes = parts.minutes.trim().parse::<u32>();
    let (key, what, cure) = if parts.title.trim().is_empty() {
        (
            "title",
            "this lesson has no title",
            "write what the timetable shall call it",
        )
    } else if !minutes.is_ok_and(|it| MINUTES.contains(&it)) {
        (
            "minutes",
            "this is no length of a lesson",
            "write minutes as a whole number, from 5 to 240",
        )
    } else {
        return Ok(());
    };
    let lines = plain.lines().enumerate();
    let mut at_key = lines.filter(|(_, line)| {
        let after = line.trim_start().strip_prefix(key);
        after.is_some_and(|after| after.trim_start().starts_with('='))
    });
    Err(CardFault {
        line: at_key.next().map_or(1, |(at, _)| at + 1),
        text_line: None,
        key: key.to_owned(),
        what: what.to_owned(),
        cure: cure.to_owned(),
    })
}

fn fault(plain: &str, error: Error) -> CardFault {
    let Error::Refused(refusal) = error else {
        return CardFault {
            line: 1,
            text_line: None,
            key: String::new(),
            what: error.to_string(),
            cure: String::new(),
        };
    };
    let above = draft::lines_above(plain);
    let text_line = refusal
        .line
        .checked_sub(above)
        .filter(|it| 0 < above && 0 < *it);
    CardFault {
        line: refusal.line,
        text_line,
        key: match text_line {
            Some(_) => String::new(),
            None => draft::key_at(plain, refusal.line).unwrap_or_default(),
        },
        what: refusal.what,
        cure: if refusal.cure == MEND {
            String::new()
        } else {
            refusal.cure
        },
    }
}

fn shelf(store: &Path) -> Shelf {
    Shelf {
        own: Some(store.join("lessons")),
    }
}

fn whose(shelf: &Shelf, id: &str) -> Option<Whose> {
    let path = path(id).ok()?;
    match (shelf.is_own(&path), built_in(&path).is_some()) {
        (true, true) => Some(Whose::Replaces),
        (true, false) => Some(Whose::Own),
        (false, true) => Some(Whose::BuiltIn),
        (false, false) => None,
    }
}

/// Where a card lies in a folder of lessons. A name that leads elsewhere is none.
fn path(id: &str) -> Result<String, Error> {
    let path = format!("cards/{id}.md");
    let leads_away = id.is_empty() || id.starts_with('.') || id.contains(['/', '\\', ':', '\0']);
    if leads_away {
        return Err(Error::Read {
            path: path.into(),
            cause: std::io::ErrorKind::InvalidInput.into(),
        });
    }
    Ok(path)
}

fn file(store: &Path, id: &str) -> Result<PathBuf, Error> {
    Ok(store.join("lessons").join(path(id)?))
}

#[cfg(test)]
mod tests;
