//! The library of a course: tables, lesson cards, page templates, examples, words.
//!
//! Each file comes from the built-in copy of `lessons/`, unless the instructor's own folder
//! holds a file of the same name: then that one counts.

use crate::Error;
use crate::cards::{self, Card, Country, Term};
use crate::own_kit;
use crate::shelf::{self, Shelf};
use crate::tables;
use craft::tables::Tables;
use std::collections::BTreeMap;
use std::path::Path;

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
    /// Tools whose kit rules this instructor has changed for good.
    pub own_rules: Vec<String>,
}

impl Library {
    /// The built-in library alone.
    ///
    /// # Errors
    /// [`Error::Refused`] if a file of it is broken.
    pub fn built_in() -> Result<Self, Error> {
        Self::load(None)
    }

    /// The built-in library with an instructor's own over it: `lessons/` in their folder
    /// holds their files.
    ///
    /// # Errors
    /// [`Error::Refused`] naming the file and the line of what is broken; [`Error::Read`].
    pub fn with_store(store: &Path) -> Result<Self, Error> {
        if !store.is_dir() {
            let cause = std::io::ErrorKind::NotFound.into();
            return Err(Error::Read {
                path: store.to_owned(),
                cause,
            });
        }
        Self::load(Some(store))
    }

    fn load(store: Option<&Path>) -> Result<Self, Error> {
        let shelf = Shelf {
            own: store.map(|store| store.join("lessons")),
        };
        let texts = shelf.folder("cards", "md")?;
        let cards: Vec<Card> = texts.iter().map(cards::card).collect::<Result<_, _>>()?;
        let tables = tables::tables(&shelf, &cards)?;
        for (text, card) in texts.iter().zip(&cards) {
            cards::has_its_place(text, card, &tables.stages)?;
        }
        Ok(Self {
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
            own_rules: own_kit::items(&shelf)?,
        })
    }

    /// The text of a built-in example course.
    pub fn example(imperial: bool) -> &'static str {
        let name = if imperial {
            "examples/quarry-pasture.walling"
        } else {
            "examples/hollin-bank.walling"
        };
        shelf::built_in(name).unwrap_or_default()
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
