//! The page that is looked at, begun anew as soon as the course is another: while the window is told the
//! figures, the page is being set.

use crate::aside::{LOOKED_AT, Waiting};
use crate::desk::{Desk, Error};
use crate::print_job::PrintJob;
use craft::plan::Asked;
use documents::{Pieces, asked_by_pages};
use shapes::window::{PagePreview, PagesAsked};
use std::sync::{Arc, Mutex, PoisonError};

/// A page as the window asks for it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct PageWanted {
    /// The name of its document.
    pub(crate) document: String,
    /// From 1.
    pub(crate) page: usize,
    pub(crate) asked: PagesAsked,
}

impl PageWanted {
    /// The other is a page of the same document, in the same size and for the same students.
    fn is_beside(&self, other: &Self) -> bool {
        (&self.document, &self.asked) == (&other.document, &other.asked)
    }
}

type Begun = Waiting<Result<PagePreview, Error>>;

/// What was begun before it was asked for.
#[derive(Default)]
pub(crate) struct Ahead {
    /// The page that was asked for last, as long as somebody comes for it.
    watched: Option<PageWanted>,
    /// The pieces of its document, as it was set last.
    pieces: Arc<Mutex<Pieces>>,
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

    /// The page that is looked at, if it is to be begun. One that is still being set is not begun
    /// again for every letter typed; one that nobody came for is not looked at any more.
    fn wanted(&mut self) -> Option<PageWanted> {
        match self.begun.take() {
            Some(begun) if begun.is_at_work() => {
                self.begun = Some(begun);
                self.late = true;
                None
            }
            Some(_) => {
                self.forget();
                None
            }
            None => self.watched.clone(),
        }
    }

    /// What was begun of this page; nothing where it was another, or is late. This one is looked at
    /// from now on.
    fn taken(&mut self, wanted: &PageWanted) -> Option<Begun> {
        let begun = self.begun.take();
        let late = std::mem::take(&mut self.late);
        let before = self.watched.replace(wanted.clone());
        if !before.as_ref().is_some_and(|it| it.is_beside(wanted)) {
            self.pieces = Arc::default();
        }
        begun.filter(|_| before.as_ref() == Some(wanted) && !late)
    }
}

impl Desk {
    /// The page asked for, which may have been begun already.
    pub(crate) fn page(&mut self, wanted: PageWanted) -> Result<Begun, Error> {
        if let Some(begun) = self.ahead.taken(&wanted) {
            return Ok(begun);
        }
        let job = self.print_job(wanted.asked.clone())?;
        Ok(self.begun(job, wanted))
    }

    /// Begins the page that is looked at, where it waits for nothing but the figures.
    pub(crate) fn begin_page(&mut self) {
        let wanted = self.ahead.wanted();
        if asked_by_pages(&self.course.file) == Asked::Figures
            && let Some(wanted) = wanted
        {
            let job = PrintJob::new(&self.course, &self.press, wanted.asked.clone());
            self.ahead.begun = Some(self.begun(job, wanted));
        }
    }

    /// Nobody looks at pages any more: what would make the next one quicker, some 10 MB, is let go of.
    pub(crate) fn leave_pages(&mut self) {
        self.ahead.forget();
        let press = self.press.clone();
        // On the thread that sets them, so that nothing is let go of under one that is being set.
        LOOKED_AT.begin(move || press.forget());
    }

    /// As long as somebody types, which is until the course is advised, a document is not set whole
    /// where its pieces are known.
    fn begun(&self, job: PrintJob, wanted: PageWanted) -> Begun {
        let typing = self.course.asked != Asked::Advice;
        let pieces = Arc::clone(&self.ahead.pieces);
        LOOKED_AT.begin(move || {
            let mut pieces = pieces.lock().unwrap_or_else(PoisonError::into_inner);
            let known = if typing {
                pieces.clone()
            } else {
                pieces.of_the_whole()
            };
            let (page, now) = job.page_of(&wanted.document, wanted.page, &known)?;
            *pieces = now;
            Ok(page)
        })
    }
}
