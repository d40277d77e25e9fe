//! One document made: what its template is fed, as a PDF, as sheets of paper.
//!
//! Built-in templates are printed here and now. One that the instructor wrote or changed is
//! printed apart, because it may run for ever, and where it fails the built-in one is printed
//! and the fault told.

use crate::pack::Error;
use crate::side_by_side::side_by_side;
use crate::spelling;
use crate::templates::{Templates, sources};
use crate::{Course, Document};
use press::{Job, Press, Printed, Sheet};
use serde_json::Value;
use std::sync::{Mutex, PoisonError};

/// A document for which the instructor's own templates could not be used.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Replaced {
    /// The document's name.
    pub document: &'static str,
    /// The file names of the instructor's own templates that were left aside.
    pub own: Vec<String>,
    /// What is wrong with them.
    pub why: press::Error,
}

/// Whose own templates could not be used so far in one print.
#[derive(Debug, Default)]
pub(crate) struct Tried(Mutex<Vec<Replaced>>);

/// A document, and what stood in for what.
pub(crate) struct Made<T> {
    pub(crate) made: T,
    pub(crate) replaced: Option<Replaced>,
}

/// What a template is fed.
#[derive(Debug, Clone, PartialEq)]
pub struct Fed {
    /// The one value.
    pub data: Value,
    /// The drawings, as file name and SVG.
    pub drawings: Vec<(String, String)>,
}

/// A document as sheets of paper, for a printer.
#[derive(Debug, Clone, PartialEq)]
pub struct Sheets {
    /// In their order; at least one.
    pub sheets: Vec<Sheet>,
    /// Characters that could not be printed as typed, each once.
    pub unprintable: Vec<char>,
    /// Whether the instructor's own template could not be used.
    pub replaced: Option<Replaced>,
}

/// What a document's template is fed.
pub fn fed(course: &Course, document: &Document) -> Fed {
    fed_with(course, document, |_| true)
}

/// What it is fed with those of its drawings that are wanted.
pub(crate) fn fed_with(course: &Course, document: &Document, wanted: impl Fn(&str) -> bool) -> Fed {
    let mut fed = (document.feed)(course).drawn(wanted);
    spelling::data(&mut fed.data, course);
    fed
}

/// One document as a PDF, in the edition of the course. Where the instructor's own template
/// can't be used it is the built-in one's; [`crate::pack`] tells.
///
/// # Errors
/// [`Error::Press`] if the built-in template is broken.
pub fn print(course: &Course, document: &Document, press: &Press) -> Result<Printed, Error> {
    Ok(printed(course, document, press, &Tried::default())?.made)
}

/// Every page of documents as it lies on paper, in the edition of the course, several at a time.
/// `take` is given each in their order, and answers whether to go on.
///
/// # Errors
/// [`Error::Press`] if a built-in template is broken.
pub fn sheets(
    course: &Course,
    documents: &[&Document],
    press: &Press,
    mut take: impl FnMut(Sheets) -> bool,
) -> Result<(), Error> {
    let set = |document: &Document, tried: &Tried| {
        let fed = fed(course, document);
        let own = |job: &Job<'_>| press.sheets_apart(job);
        let built_in = |job: &Job<'_>| press.sheets(job);
        made(course, document, &fed, tried, own, built_in)
    };
    each(documents, set, |_, Made { made, replaced }| {
        take(Sheets {
            sheets: made.sheets,
            unprintable: made.unprintable,
            replaced,
        })
    })
}

/// Documents made side by side and taken in their order, for as long as `take` says yes.
pub(crate) fn each<T: Send>(
    documents: &[&Document],
    make: impl Fn(&Document, &Tried) -> Result<Made<T>, Error> + Sync,
    mut take: impl FnMut(&Document, Made<T>) -> bool,
) -> Result<(), Error> {
    let tried = Tried::default();
    let mut broken = None;
    let make = |document: &&Document| make(document, &tried);
    side_by_side(documents, make, |document, made| match made {
        Ok(made) => take(document, made),
        Err(error) => {
            broken = Some(error);
            false
        }
    });
    broken.map_or(Ok(()), Err)
}

/// As [`print`], telling what was replaced.
pub(crate) fn printed(
    course: &Course,
    document: &Document,
    press: &Press,
    tried: &Tried,
) -> Result<Made<Printed>, Error> {
    let fed = fed(course, document);
    let own = |job: &Job<'_>| press.pdf_apart(job);
    let built_in = |job: &Job<'_>| press.pdf(job);
    made(course, document, &fed, tried, own, built_in)
}

pub(crate) fn made<T>(
    course: &Course,
    document: &Document,
    fed: &Fed,
    tried: &Tried,
    own: impl Fn(&Job<'_>) -> Result<T, press::Error>,
    built_in: impl Fn(&Job<'_>) -> Result<T, press::Error>,
) -> Result<Made<T>, Error> {
    let drawings = fed.drawings.iter();
    let pictures: Vec<_> = drawings
        .map(|(name, svg)| (name.as_str(), svg.as_str()))
        .collect();
    let templates = Templates::of(course, document.template);
    let own_and_built_in = sources(&templates.all);
    let in_language = templates.built_in();
    let built_in_ones = sources(&in_language);
    let job = |sources| Job {
        main: document.template,
        sources,
        data: &fed.data,
        pictures: &pictures,
    };
    let mut replaced = None;
    if !templates.own.is_empty() {
        match tried.own(&templates.own, document.name, || {
            own(&job(&own_and_built_in))
        }) {
            Ok(made) => {
                return Ok(Made {
                    made,
                    replaced: None,
                });
            }
            Err(instead) => replaced = Some(instead),
        }
    }
    let made = built_in(&job(&built_in_ones)).map_err(|cause| Error::Press {
        document: document.name,
        cause,
    })?;
    Ok(Made { made, replaced })
}

impl Tried {
    /// What `set` makes of templates of the instructor's own, or why others stand in for them.
    /// One document at a time: what had to be stopped once would have to be again wherever it is
    /// used.
    fn own<T>(
        &self,
        own: &[&str],
        document: &'static str,
        set: impl FnOnce() -> Result<T, press::Error>,
    ) -> Result<T, Replaced> {
        let mut before = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        let known = before.iter().find(|it| {
            let here = |name: &String| own.contains(&name.as_str());
            it.why.was_stopped() && it.own.iter().all(here)
        });
        let set = match known {
            Some(known) => Err(known.why.clone()),
            None => set(),
        };
        set.map_err(|why| {
            let replaced = Replaced {
                document,
                own: own.iter().map(|it| (*it).to_owned()).collect(),
                why,
            };
            before.push(replaced.clone());
            replaced
        })
    }
}
