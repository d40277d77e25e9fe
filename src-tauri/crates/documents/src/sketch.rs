//! One sketch of the lessons by itself, to be looked at.

use files::Library;
use press::{Job, Press};
use serde_json::Value;
use std::collections::BTreeMap;

/// A sketch and what it shows.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sketch {
    /// The sketch as SVG, one point to a unit.
    pub svg: String,
    /// What it shows, for who can't see it.
    pub words: String,
}

/// The file that sets a sketch alone; what it says differs, its name never.
const MAIN: &str = "sketch.typ";

/// A sketch by its name, as a lesson names it, from the pages of a [`Library`]; nothing where
/// there is none of that name.
///
/// # Errors
/// [`press::Error`] if its template is broken, and so is the built-in one of that name.
pub fn sketch(
    pages: &BTreeMap<String, String>,
    name: &str,
    press: &Press,
) -> Option<Result<Sketch, press::Error>> {
    let file = format!("sketches/{name}.typ");
    let text = pages.get(&file)?;
    let built_in = Library::built_in_page(&file);
    if Some(text.as_str()) == built_in {
        let own = built_in_files(pages);
        return Some(set(&own, &file, text, |job| press.page(job, 1)));
    }
    let all: Vec<(&str, &str)> = pages
        .iter()
        .map(|(name, text)| (&**name, &**text))
        .collect();
    Some(
        match (
            set(&all, &file, text, |job| press.page_apart(job, 1)),
            built_in,
        ) {
            (Err(_), Some(text)) => set(&built_in_files(pages), &file, text, |job| {
                press.page(job, 1)
            }),
            (done, _) => done,
        },
    )
}

fn built_in_files(pages: &BTreeMap<String, String>) -> Vec<(&str, &'static str)> {
    let names = pages.keys().map(String::as_str);
    names
        .filter_map(|name| Some((name, Library::built_in_page(name)?)))
        .collect()
}

fn set(
    sources: &[(&str, &str)],
    file: &str,
    text: &str,
    page: impl Fn(&Job<'_>) -> Result<press::Page, press::Error>,
) -> Result<Sketch, press::Error> {
    let main = format!(
        "#set page(width: auto, height: auto, margin: 1mm)\n#import \"{file}\": drawing\n#drawing\n"
    );
    let sources: Vec<(&str, &str)> = sources
        .iter()
        .copied()
        .chain([(MAIN, main.as_str())])
        .collect();
    let made = page(&Job {
        main: MAIN,
        sources: &sources,
        data: &Value::Null,
        pictures: &[],
    })?;
    Ok(Sketch {
        svg: made.svg,
        words: words(text).to_owned(),
    })
}

/// What a sketch says of itself: its `#let words = "..."`.
fn words(text: &str) -> &str {
    let rest = text.split_once("#let words = \"").map_or("", |it| it.1);
    rest.split_once('"').map_or("", |it| it.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sketch_stands_alone_with_its_words() {
        let library = Library::built_in().expect("the built-in library is sound");
        let press = Press::new();
        let through = sketch(&library.pages, "through-on-both-faces", &press);
        let through = through.expect("there").expect("sets");
        assert!(through.svg.starts_with("<svg"), "{:.80}", through.svg);
        assert!(through.words.contains("through"), "{}", through.words);
        assert!(sketch(&library.pages, "none", &press).is_none());
    }

    /// One of the instructor's own that is broken gives way to the built-in one.
    #[test]
    fn a_broken_one_gives_way() {
        let mut pages = BTreeMap::clone(&Library::built_in().expect("sound").pages);
        let file = "sketches/bulge.typ".to_owned();
        pages.insert(
            file,
            "#let words = \"mine\"\n#let drawing = nothing".to_owned(),
        );
        let bulge = sketch(&pages, "bulge", &Press::new()).expect("there");
        assert!(
            bulge
                .expect("the built-in one")
                .words
                .starts_with(|it: char| it.is_alphabetic())
        );
        pages.insert(
            "sketches/new.typ".to_owned(),
            "#let drawing = nothing".to_owned(),
        );
        assert!(
            sketch(&pages, "new", &Press::new())
                .expect("there")
                .is_err()
        );
    }
}
