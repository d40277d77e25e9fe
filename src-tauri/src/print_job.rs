//! Pages that are set while the desk is free.

use crate::desk::Error;
use crate::shown;
use documents::{Course, Document, Edition, Pack, pack, preview};
use press::Press;
use shapes::window::{PagePreview, PagesAsked, Printing};
use std::path::Path;

/// A course to make pages of, as it was when they were asked for.
pub(crate) struct PrintJob {
    course: Course,
    press: Press,
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
        let document = documents::named(name).ok_or_else(|| Error::NoDocument(name.to_owned()))?;
        let made = preview(&self.course, document, page, &self.press)?;
        Ok(PagePreview {
            page: page.clamp(1, made.pages.max(1)),
            pages: made.pages,
            svg: made.svg,
            own: shown::own(&self.course.library, made.replaced.as_slice()),
        })
    }

    /// Prints the documents of these names into a folder. `tell` hears of each before it is set
    /// and answers whether to go on.
    pub(crate) fn run(
        &self,
        names: &[String],
        folder: &Path,
        tell: impl Fn(Printing) -> bool,
    ) -> Result<Pack, Error> {
        let chosen: Vec<&Document> = names
            .iter()
            .filter_map(|name| documents::named(name))
            .collect();
        let next = |at: usize| {
            chosen.get(at).is_none_or(|document| {
                tell(Printing {
                    at: at + 1,
                    of: chosen.len(),
                    title: document.title.to_owned(),
                })
            })
        };
        let mut done = 0;
        if !next(done) {
            return Ok(Pack::default());
        }
        let mut pack = pack(&self.course, &chosen, &self.press, folder, |_| {
            done += 1;
            next(done)
        })?;
        // The others are printed; the first that could not be written is told.
        match pack.unsaved.pop() {
            Some(unsaved) => Err(unsaved.into()),
            None => Ok(pack),
        }
    }

    /// What of the instructor's own could not be used in a pack.
    pub(crate) fn own(&self, pack: &Pack) -> Vec<shapes::window::Trouble> {
        shown::own(&self.course.library, &pack.replaced)
    }
}
