//! The library of a course: tables, lesson cards, page templates, examples, words.
//!
//! Each file comes from the built-in copy of `lessons/`, unless the instructor's own folder
//! holds a file of the same name: then that one counts.

use crate::cards::{self, Card, Country, Names};
use crate::course::nearest;
use crate::first_aid::{Injuries, Injury};
use crate::glossary::{self, Term};
use crate::own_kit;
use crate::shelf::{self, Shelf, Text};
use crate::tables;
use crate::{Error, Refusal};
use craft::tables::Tables;
use std::collections::BTreeMap;
use std::path::Path;
use std::sync::Arc;

/// The folder of the sketches that lessons name.
const SKETCHES: &str = "sketches";

/// The file there that is no sketch but what sketches share.
pub(crate) const HAND: &str = "hand";

/// Everything a course is planned and printed with. Every key press takes a copy, so what is large is shared.
#[derive(Debug, Clone)]
pub struct Library {
    /// The figures.
    pub tables: Arc<Tables>,
    /// The lessons, in the order of their files' names.
    pub cards: Arc<Vec<Card>>,
    /// Page templates by file name, and the sketches of lessons as `sketches/NAME.typ`.
    pub pages: Arc<BTreeMap<String, String>>,
    /// Words of the trade, by the alphabet; the instructor's own over and among them.
    pub terms: Vec<Term>,
    /// Emergency numbers.
    pub countries: Vec<Country>,
    /// What to do about the injuries that are likely at a wall.
    pub first_aid: Vec<Injury>,
    /// Tools whose kit rules this instructor has changed for good.
    pub own_rules: Vec<String>,
    /// What is wrong with lessons of the instructor's own; the built-in ones count instead.
    pub faults: Vec<Refusal>,
    /// Page templates of the instructor's own that could not be read, or that no page is made
    /// with, so that the built-in ones count: what is wrong with each.
    pub pages_unread: Vec<String>,
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
    /// holds their files. A lesson of theirs that is broken is named among the
    /// [`Library::faults`], and the built-in one is used.
    ///
    /// # Errors
    /// [`Error::Refused`] naming the file and the line of a table that is broken;
    /// [`Error::Read`].
    pub fn with_store(store: &Path) -> Result<Self, Error> {
        if !store.is_dir() {
            return Err(Error::NoFolder {
                path: store.to_owned(),
            });
        }
        Self::load(Some(store))
    }

    fn load(store: Option<&Path>) -> Result<Self, Error> {
        let shelf = Shelf {
            own: store.map(|store| store.join("lessons")),
        };
        let mut tables = tables::tables(&shelf)?;
        let (pages, mut pages_unread) = shelf.folder_or_built_in("pages", "typ");
        let (sketches, unread) = shelf.folder_or_built_in(SKETCHES, "typ");
        pages_unread.extend(unread);
        pages_unread.extend(unused(&pages));
        let stems = sketches
            .iter()
            .filter_map(|it| it.name.strip_suffix(".typ"));
        let stems: Vec<&str> = stems.filter(|stem| *stem != HAND).collect();
        let terms = glossary::terms(&shelf, &stems)?;
        let names = Names {
            stages: &tables.stages,
            cautions: &tables.cautions,
            sketches: &stems,
        };
        let (cards, faults) = read_cards(&shelf, &names)?;
        tables.lessons = cards.iter().map(tables::lesson).collect();
        let pages = pages.into_iter().map(|page| (page.name, page.text));
        let sketch = |it: Text| (format!("{SKETCHES}/{}", it.name), it.text);
        let pages = pages.chain(sketches.into_iter().map(sketch)).collect();
        Ok(Self {
            tables: Arc::new(tables),
            cards: Arc::new(cards),
            faults,
            pages: Arc::new(pages),
            pages_unread,
            terms,
            countries: shelf
                .table::<tables::Countries>("tables/countries.toml")?
                .country,
            first_aid: shelf.table::<Injuries>("tables/first-aid.toml")?.injury,
            own_rules: own_kit::items(&shelf)?,
        })
    }

    /// A page template or a sketch as it came with the program, by its name among the
    /// [`Library::pages`]; nothing if none of that name did.
    pub fn built_in_page(name: &str) -> Option<&'static str> {
        shelf::built_in(&Self::path_of_page(name))
    }

    /// Where a page template or a sketch lies in `lessons/`.
    pub fn path_of_page(name: &str) -> String {
        if name.starts_with(SKETCHES) {
            name.to_owned()
        } else {
            format!("pages/{name}")
        }
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

/// Templates of the instructor's own that nothing is printed with: no document has a template of
/// that name, and no other template names it. Mostly they are mistyped.
fn unused(pages: &[Text]) -> Vec<String> {
    let named = |name: &str| {
        pages
            .iter()
            .any(|it| it.name != name && it.text.contains(name))
    };
    let known = |name: &str| shelf::built_in(&Library::path_of_page(name)).is_some();
    let own = pages.iter().filter(|it| it.own);
    own.filter(|it| !known(&it.name) && !named(&it.name))
        .map(|it| {
            let names = pages.iter().filter(|it| !it.own || known(&it.name));
            let like = nearest(&it.name, names.map(|it| it.name.as_str()));
            let cure = match like {
                Some(like) => format!("did you mean {like}?"),
                None => "name it as the template that it takes the place of, or import it in one"
                    .to_owned(),
            };
            format!(
                "{}: no page is made with a template of this name\n{cure}",
                it.shown()
            )
        })
        .collect()
}

/// The lesson cards, and what is wrong with those of the instructor's own. In place of such a
/// one stands the built-in card of that name, if there is one.
fn read_cards(shelf: &Shelf, names: &Names<'_>) -> Result<(Vec<Card>, Vec<Refusal>), Error> {
    let (mut all, mut faults) = (Vec::new(), Vec::new());
    let read = |text: Text| cards::card(&text.with_plain_lines(), names);
    for path in shelf.paths("cards", "md") {
        match shelf.text(&path).and_then(read) {
            Ok(card) => all.push(card),
            Err(error) if shelf.is_own(&path) => {
                let built_in = Text::built_in(&path);
                faults.push(told(error, built_in.is_some()));
                all.extend(built_in.map(read).transpose()?);
            }
            Err(error) => return Err(error),
        }
    }
    Ok((all, faults))
}

/// What is wrong with a card, and what happens until it is mended.
fn told(error: Error, has_built_in: bool) -> Refusal {
    let cure = if has_built_in {
        "the built-in lesson of this name is used until it is mended"
    } else {
        "this lesson is not there until it is mended"
    };
    let mut refusal = match error {
        Error::Refused(refusal) => *refusal,
        Error::Read { path, cause } | Error::Write { path, cause } => unreadable(&path, &cause),
        Error::NoFolder { path } => unreadable(&path, &std::io::ErrorKind::NotFound.into()),
        Error::Exists { path } => unreadable(&path, &std::io::ErrorKind::AlreadyExists.into()),
    };
    // What would be right comes first, then what happens meanwhile.
    refusal.cure = match refusal.cure.as_str() {
        "" | crate::shelf::MEND => cure.to_owned(),
        right => format!("{right}; {cure}"),
    };
    refusal
}

fn unreadable(path: &Path, cause: &std::io::Error) -> Refusal {
    Refusal {
        file: path.display().to_string(),
        line: 1,
        column: 1,
        code: "can-not-read",
        key: String::new(),
        what: format!("can't be read: {cause}"),
        cure: String::new(),
    }
}
