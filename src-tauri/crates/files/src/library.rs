//! The library of a course: tables, lesson cards, page templates, examples, words.
//!
//! Each file comes from the built-in copy of `lessons/`, unless the instructor's own folder
//! holds a file of the same name: then that one counts.

use crate::tables;
use crate::{Error, Fault};
use craft::tables::Tables;
use include_dir::{Dir, include_dir};
use serde::Deserialize;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

static BUILT_IN: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/../../../lessons");

/// Everything a course is planned and printed with.
#[derive(Debug, Clone)]
pub struct Library {
    /// The figures.
    pub tables: Tables,
    /// The lessons, in the order of their files' names.
    pub cards: Vec<Card>,
    /// Page templates by file name.
    pub pages: BTreeMap<String, String>,
    /// Words of the trade.
    pub terms: Vec<Term>,
    /// Emergency numbers.
    pub countries: Vec<Country>,
    /// Tools counted in the instructor's store, by item.
    pub kit_on_hand: Vec<(String, u32)>,
}

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

impl Library {
    /// The built-in library alone.
    ///
    /// # Errors
    /// [`Error::Refused`] if a file of it is broken.
    pub fn built_in() -> Result<Self, Error> {
        Self::load(None)
    }

    /// The built-in library with an instructor's store over it: `lessons/` in the store
    /// holds their own files, `kit.toml` what they have counted.
    ///
    /// # Errors
    /// [`Error::Refused`] naming the file and the line of what is broken; [`Error::Read`].
    pub fn with_store(store: &Path) -> Result<Self, Error> {
        Self::load(Some(store))
    }

    fn load(store: Option<&Path>) -> Result<Self, Error> {
        let shelf = Shelf {
            own: store.map(|store| store.join("lessons")),
        };
        let cards = shelf.folder("cards", "md")?;
        let cards: Vec<Card> = cards.iter().map(Text::card).collect::<Result<_, _>>()?;
        let tables = tables::tables(&shelf, &cards)?;
        Ok(Self {
            kit_on_hand: tables::kit_on_hand(store, &tables)?,
            tables,
            cards,
            pages: shelf
                .folder("pages", "typ")?
                .into_iter()
                .map(|page| (page.name, page.text))
                .collect(),
            terms: shelf.table::<tables::Terms>("glossary.toml")?.term,
            countries: shelf
                .table::<tables::Countries>("tables/countries.toml")?
                .country,
        })
    }

    /// The text of a built-in example course.
    pub fn example(imperial: bool) -> &'static str {
        let name = if imperial {
            "examples/quarry-pasture.walling"
        } else {
            "examples/hollin-bank.walling"
        };
        BUILT_IN
            .get_file(name)
            .and_then(|file| file.contents_utf8())
            .unwrap_or_default()
    }

    /// The number to ring where the course is held, if the country is known.
    pub fn emergency(&self, code: Option<&str>) -> Option<&str> {
        let country = self
            .countries
            .iter()
            .find(|country| Some(country.code.as_str()) == code)?;
        Some(&country.emergency)
    }
}

/// Where files of the library are looked for.
pub(crate) struct Shelf {
    own: Option<PathBuf>,
}

/// One file of the library.
pub(crate) struct Text {
    /// Its path as a person would name it.
    shown: String,
    /// Its file name.
    name: String,
    text: String,
}

impl Shelf {
    /// A table, from the instructor's own file or the built-in one.
    pub(crate) fn table<T: serde::de::DeserializeOwned>(&self, path: &str) -> Result<T, Error> {
        self.text(path)?.toml()
    }

    fn text(&self, path: &str) -> Result<Text, Error> {
        let name = path.rsplit('/').next().unwrap_or(path).to_owned();
        if let Some(file) = self
            .own
            .as_ref()
            .map(|own| own.join(path))
            .filter(|file| file.is_file())
        {
            return Text::read(&file, name);
        }
        let text = BUILT_IN
            .get_file(path)
            .and_then(|file| file.contents_utf8());
        text.map(|text| Text {
            shown: format!("lessons/{path}"),
            name,
            text: text.to_owned(),
        })
        .ok_or_else(|| Error::Read {
            path: path.into(),
            cause: std::io::ErrorKind::NotFound.into(),
        })
    }

    /// The files of a folder by name: the built-in ones, the instructor's own over and
    /// beside them.
    fn folder(&self, folder: &str, ending: &str) -> Result<Vec<Text>, Error> {
        let mut names: Vec<String> = BUILT_IN
            .get_dir(folder)
            .into_iter()
            .flat_map(|folder| folder.files())
            .filter_map(|file| Some(file.path().file_name()?.to_str()?.to_owned()))
            .collect();
        if let Some(own) = &self.own
            && let Ok(entries) = std::fs::read_dir(own.join(folder))
        {
            names.extend(
                entries
                    .flatten()
                    .filter_map(|entry| entry.file_name().into_string().ok()),
            );
        }
        names.retain(|name| Path::new(name).extension().is_some_and(|it| it == ending));
        names.sort();
        names.dedup();
        names
            .iter()
            .map(|name| self.text(&format!("{folder}/{name}")))
            .collect()
    }
}

impl Text {
    pub(crate) fn read(file: &Path, name: String) -> Result<Self, Error> {
        let text = std::fs::read_to_string(file).map_err(|cause| Error::Read {
            path: file.to_owned(),
            cause,
        })?;
        Ok(Self {
            shown: file.display().to_string(),
            name,
            text,
        })
    }

    pub(crate) fn toml<T: serde::de::DeserializeOwned>(&self) -> Result<T, Error> {
        self.toml_part(&self.text, 0)
    }

    fn toml_part<T: serde::de::DeserializeOwned>(
        &self,
        part: &str,
        from: usize,
    ) -> Result<T, Error> {
        toml_edit::de::from_str(part).map_err(|error| {
            let at = from + error.span().map_or(0, |span| span.start);
            self.fault("broken-table", at, error.message())
        })
    }

    /// A card: a TOML head between two lines of `+++`, then Markdown.
    fn card(&self) -> Result<Card, Error> {
        let no_head = || {
            self.fault(
                "no-head",
                0,
                "a lesson begins with its head between two lines of +++",
            )
        };
        let head = self.text.strip_prefix("+++\n").ok_or_else(no_head)?;
        let (head, text) = head.split_once("\n+++\n").ok_or_else(no_head)?;
        let card: Card = self.toml_part(head, "+++\n".len())?;
        if self.name != format!("{}.md", card.id) {
            return Err(self.fault(
                "wrong-id",
                0,
                "a lesson's id is its file's name without .md",
            ));
        }
        Ok(Card {
            text: text.trim().to_owned(),
            ..card
        })
    }

    pub(crate) fn fault(&self, code: &'static str, at: usize, what: &str) -> Error {
        let fault = Fault {
            code,
            key: String::new(),
            at,
            what: what.trim().replace('\n', ", "),
            cure: "mend it, or remove your own copy so that the built-in one is used".to_owned(),
        };
        fault.in_file(&self.shown, &self.text).into()
    }
}
