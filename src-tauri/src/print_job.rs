//! Pages that are set while the desk is free.

use crate::desk::{Desk, Error};
use crate::leads;
use crate::paper;
use crate::shown;
use craft::plan::Asked;
use documents::{Course, Document, Edition, Pack, Pieces};
use documents::{asked_by_pages, pack, preview, sheets};
use files::course::Paper;
use press::Press;
use shapes::window::{PagePreview, PagesAsked, PaperSheets, Printing};
use std::path::Path;

/// A course to make pages of, as it was when they were asked for.
pub(crate) struct PrintJob {
    course: Course,
    press: Press,
}

impl Desk {
    /// What pages are made of, so that the desk is free meanwhile.
    pub(crate) fn print_job(&mut self, asked: PagesAsked) -> Result<PrintJob, Error> {
        if asked_by_pages(&self.course.file) == Asked::Advice {
            self.advise()?;
        }
        Ok(PrintJob::new(&self.course, &self.press, asked))
    }
}

impl PrintJob {
    /// A job on a course as it is now, in the size and for the students that are asked for.
    pub(crate) fn new(course: &Course, press: &Press, asked: PagesAsked) -> Self {
        let mut course = course.clone();
        course.chosen = asked.students;
        course.edition = if asked.large_print {
            Edition::LargePrint
        } else {
            Edition::Usual
        };
        Self {
            course,
            press: press.clone(),
        }
    }

    /// One page of a document, from 1; beyond the last it is the last.
    pub(crate) fn page(&self, name: &str, page: usize) -> Result<PagePreview, Error> {
        Ok(self.page_of(name, page, &Pieces::default())?.0)
    }

    /// The same, and the pieces of the document; where they are `known`, only the one with this page
    /// is set.
    pub(crate) fn page_of(
        &self,
        name: &str,
        page: usize,
        known: &Pieces,
    ) -> Result<(PagePreview, Pieces), Error> {
        let document = documents::named(name).ok_or_else(|| Error::NoDocument(name.to_owned()))?;
        let made = preview(&self.course, document, page, known, &self.press)?;
        let (svg, places) = leads::made_ready(&made.svg);
        let preview = PagePreview {
            page: page.clamp(1, made.pages.max(1)),
            pages: made.pages,
            alone: made.alone,
            svg,
            places,
            own: shown::own(&self.course.library, made.replaced.as_slice()),
        };
        Ok((preview, made.pieces))
    }

    /// Prints the documents of these names into a folder. `tell` hears of each before it is set
    /// and answers whether to go on.
    pub(crate) fn run(
        &self,
        names: &[String],
        folder: &Path,
        tell: impl Fn(Printing) -> bool,
    ) -> Result<Pack, Error> {
        let chosen = chosen(names);
        let mut progress = Progress::new(&chosen, tell);
        if !progress.goes_on() {
            return Ok(Pack::default());
        }
        let mut pack = pack(&self.course, &chosen, &self.press, folder, |_, pages| {
            progress.has_set(pages);
            progress.goes_on()
        })?;
        // The others are printed; the first that could not be written is told.
        match pack.unsaved.pop() {
            Some(unsaved) => Err(unsaved.into()),
            None => Ok(pack),
        }
    }

    /// Sets the documents of these names for a printer. `tell` as for [`PrintJob::run`]; nothing
    /// where it says no, for half a pack of paper is nobody's wish.
    pub(crate) fn sheets(
        &self,
        names: &[String],
        tell: impl Fn(Printing) -> bool,
    ) -> Result<Option<PaperSheets>, Error> {
        let chosen = chosen(names);
        let mut progress = Progress::new(&chosen, tell);
        let letter = self.course.file.paper == Paper::Letter;
        if !progress.goes_on() {
            return Ok(None);
        }
        let (mut all, mut replaced, mut unprintable) = (Vec::new(), Vec::new(), Vec::new());
        let mut stopped = false;
        sheets(&self.course, &chosen, &self.press, |made| {
            progress.has_set(made.sheets.len());
            all.extend(made.sheets.into_iter().map(|it| paper::laid(it, letter)));
            replaced.extend(made.replaced);
            for sign in made.unprintable {
                if !unprintable.contains(&sign) {
                    unprintable.push(sign);
                }
            }
            stopped = !progress.goes_on();
            !stopped
        })?;
        if stopped {
            return Ok(None);
        }
        Ok(Some(PaperSheets {
            sheets: all,
            letter,
            unprintable: unprintable.iter().collect(),
            own: shown::own(&self.course.library, &replaced),
        }))
    }

    /// What of the instructor's own could not be used in a pack.
    pub(crate) fn own(&self, pack: &Pack) -> Vec<shapes::window::Trouble> {
        shown::own(&self.course.library, &pack.replaced)
    }
}

/// The documents of these names; what is none is left out.
fn chosen(names: &[String]) -> Vec<&'static Document> {
    names
        .iter()
        .filter_map(|name| documents::named(name))
        .collect()
}

/// How far a print has come, and who is told.
struct Progress<'a, Tell> {
    chosen: &'a [&'static Document],
    tell: Tell,
    /// How many documents are set.
    done: usize,
    /// Their pages together.
    pages: usize,
    /// The pages of the last of them.
    last: usize,
}

impl<'a, Tell: Fn(Printing) -> bool> Progress<'a, Tell> {
    fn new(chosen: &'a [&'static Document], tell: Tell) -> Self {
        Self {
            chosen,
            tell,
            done: 0,
            pages: 0,
            last: 0,
        }
    }

    fn has_set(&mut self, pages: usize) {
        self.done += 1;
        self.pages += pages;
        self.last = pages;
    }

    /// Tells of the document that comes next, if there is one.
    fn goes_on(&self) -> bool {
        self.chosen.get(self.done).is_none_or(|document| {
            (self.tell)(Printing {
                at: self.done + 1,
                of: self.chosen.len(),
                title: document.title.to_owned(),
                pages: self.pages,
                last: self.last,
            })
        })
    }
}
