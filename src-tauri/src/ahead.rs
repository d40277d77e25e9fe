//! The page that is looked at, begun anew as soon as the course is another: while the window is told the
//! figures, the page is being set.

use crate::aside::{LOOKED_AT, Waiting};
use crate::desk::{Desk, Error};
use crate::print_job::PrintJob;
use craft::plan::Asked;
use documents::asked_by_pages;
use shapes::window::{PagePreview, PagesAsked};

/// A page as the window asks for it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct PageWanted {
    /// The name of its document.
    pub(crate) document: String,
    /// From 1.
    pub(crate) page: usize,
    pub(crate) asked: PagesAsked,
}

type Begun = Waiting<Result<PagePreview, Error>>;

/// What was begun before it was asked for.
#[derive(Default)]
pub(crate) struct Ahead {
    /// The page that was asked for last, as long as somebody comes for it.
    watched: Option<PageWanted>,
    begun: Option<Begun>,
    /// What was begun is of a course before this one.
    late: bool,
}

impl Ahead {
    /// Another course is on the desk: nothing is known of what is looked at.
    pub(crate) fn forget(&mut self) {
        *self = Self::default();
    }

    /// Whether a page has been begun that nobody has come for yet.
    #[cfg(test)]
    pub(crate) fn has_begun(&self) -> bool {
        self.begun.is_some()
    }

    /// Waits until what was begun is done.
    #[cfg(test)]
    pub(crate) fn wait(&self) {
        while self.begun.as_ref().is_some_and(Waiting::is_at_work) {
            std::thread::yield_now();
        }
    }

    /// Whether the page that is looked at is to be begun. One that is still being set is not begun
    /// again for every letter typed; one that nobody came for is not looked at any more.
    fn is_wanted(&mut self) -> bool {
        match self.begun.take() {
            Some(begun) if begun.is_at_work() => {
                self.begun = Some(begun);
                self.late = true;
                false
            }
            Some(_) => {
                self.forget();
                false
            }
            None => self.watched.is_some(),
        }
    }

    /// What was begun of this page; nothing where it was another, or is late.
    fn taken(&mut self, asked: &PageWanted) -> Option<Begun> {
        let begun = self.begun.take();
        let same = self.watched.as_ref() == Some(asked);
        let late = std::mem::take(&mut self.late);
        self.watched = Some(asked.clone());
        begun.filter(|_| same && !late)
    }
}

impl Desk {
    /// The page asked for, which may have been begun already.
    pub(crate) fn page(&mut self, asked: PageWanted) -> Result<Begun, Error> {
        if let Some(begun) = self.ahead.taken(&asked) {
            return Ok(begun);
        }
        let job = self.print_job(asked.asked.clone())?;
        Ok(begin(job, asked))
    }

    /// Begins the page that is looked at, where it waits for nothing but the figures.
    pub(crate) fn begin_page(&mut self) {
        let wanted = self.ahead.is_wanted();
        let figures_do = asked_by_pages(&self.course.file) == Asked::Figures;
        if let Some(asked) = self.ahead.watched.clone()
            && wanted
            && figures_do
        {
            let job = PrintJob::new(&self.course, &self.press, asked.asked.clone());
            self.ahead.begun = Some(begin(job, asked));
        }
    }
}

fn begin(job: PrintJob, asked: PageWanted) -> Begun {
    LOOKED_AT.begin(move || job.page(&asked.document, asked.page))
}
