//! A page that is looked at: set with its whole document, or, while somebody types, with its piece alone.

use crate::made::{Fed, Made, Replaced, Tried, fed_with, made};
use crate::pack::Error;
use crate::{Course, Document};
use press::{Job, Page, Press};
use serde_json::{Value, json};
use std::collections::BTreeSet;

/// A page of a document, to be looked at.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Preview {
    /// The page as SVG. A link of it to `place:wall` leads to the questions that feed the part
    /// it lies on: venue, group, wall, line, frames, stone, kit, days, lessons, pages, today.
    pub svg: String,
    /// How many pages the document has.
    pub pages: usize,
    /// Where its pieces end, to set one of them alone the next time.
    pub pieces: Pieces,
    /// Only the piece that the page belongs to was set: how long the others are is from before.
    pub alone: bool,
    /// Whether the instructor's own template could not be used.
    pub replaced: Option<Replaced>,
}

/// The pieces of a document, each on pages of its own: the sheet of a student, a lesson, a day.
/// None are known of a document that was not set yet, or has none.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Pieces {
    /// The page each ends on, from 1.
    ends: Vec<usize>,
    /// Of the piece that was set alone last: which it is, from 0, and the pictures it asked for.
    asked: Option<(usize, BTreeSet<String>)>,
}

/// One of the pieces, among the others.
struct Piece<'a> {
    all: &'a [usize],
    /// Which it is, from 0.
    number: usize,
    /// How many pages come before it and after it.
    before: usize,
    after: usize,
    /// The pictures it asked for the last time, if that is known.
    pictures: Option<&'a BTreeSet<String>>,
}

impl Pieces {
    /// The page each ends on, from 1.
    #[must_use]
    pub fn ends(&self) -> &[usize] {
        &self.ends
    }

    /// The same, to set the whole document again.
    #[must_use]
    pub fn of_the_whole(&self) -> Self {
        Self {
            ends: Vec::new(),
            asked: self.asked.clone(),
        }
    }

    /// The piece that this page belongs to, if there are others.
    fn with(&self, page: usize) -> Option<Piece<'_>> {
        let all = self.ends.as_slice();
        let number = all.iter().position(|end| page <= *end)?;
        let before = number.checked_sub(1).and_then(|at| all.get(at));
        let asked = self.asked.as_ref().filter(|(of, _)| *of == number);
        Some(Piece {
            all,
            number,
            before: before.copied().unwrap_or(0),
            after: all.last()? - all.get(number)?,
            pictures: asked.map(|(_, pictures)| pictures),
        })
        .filter(|_| 1 < all.len())
    }
}

impl Piece<'_> {
    /// What was set of this piece alone, as it is in its document. Nothing where that can't be
    /// told any more: the template knows of no such piece, or it has fewer pages by now.
    fn in_whole(&self, page: usize, alone: Made<Page>) -> Option<Preview> {
        let Made { made, replaced } = alone;
        if made.ends != [made.pages] || self.before + made.pages < page {
            return None;
        }
        let was = *self.all.get(self.number)?;
        let is = self.before + made.pages;
        let moved = |(at, end): (usize, &usize)| {
            if at < self.number {
                *end
            } else {
                *end + is - was
            }
        };
        Some(Preview {
            svg: made.svg,
            pages: is + self.after,
            pieces: Pieces {
                ends: self.all.iter().enumerate().map(moved).collect(),
                asked: made.pictures.map(|pictures| (self.number, pictures)),
            },
            alone: true,
            replaced,
        })
    }
}

/// One page of a document to be looked at, in the edition of the course. `page` counts from 1;
/// beyond the last it is the last. Of a document whose pieces are `known` only the one with this
/// page is set; that leaves the others as long as they were.
///
/// # Errors
/// [`Error::Press`] if the built-in template is broken.
pub fn preview(
    course: &Course,
    document: &Document,
    page: usize,
    known: &Pieces,
    press: &Press,
) -> Result<Preview, Error> {
    let setting = Setting {
        course,
        document,
        press,
    };
    if let Some(piece) = known.with(page)
        && let Some(preview) = setting.alone(&piece, page)?
    {
        return Ok(preview);
    }
    let Made { made, replaced } = setting.page(setting.fed(|_| true), page)?;
    Ok(Preview {
        svg: made.svg,
        pages: made.pages,
        pieces: Pieces {
            ends: made.ends,
            asked: known.asked.clone(),
        },
        alone: false,
        replaced,
    })
}

/// What a page is made of, and with.
struct Setting<'a> {
    course: &'a Course,
    document: &'a Document,
    press: &'a Press,
}

impl Setting<'_> {
    /// A page of one piece; nothing where that can't be told alone. It is tried with the pictures that
    /// the piece asked for the last time: to draw them takes a good part of the time.
    fn alone(&self, piece: &Piece<'_>, page: usize) -> Result<Option<Preview>, Error> {
        let set = |wanted: &dyn Fn(&str) -> bool| {
            let mut fed = self.fed(wanted);
            let (number, before, after) = (piece.number, piece.before, piece.after);
            let which = json!({ "piece": number, "before": before, "after": after });
            tell(&mut fed, "looked_at", which);
            self.page(fed, page - before)
        };
        if let Some(pictures) = piece.pictures
            && let Ok(made) = set(&|file| pictures.contains(file))
            && made.replaced.is_none()
            && let Some(preview) = piece.in_whole(page, made)
        {
            return Ok(Some(preview));
        }
        Ok(piece.in_whole(page, set(&|_| true)?))
    }

    fn fed(&self, wanted: impl Fn(&str) -> bool) -> Fed {
        let mut fed = fed_with(self.course, self.document, wanted);
        tell(&mut fed, "on_screen", Value::Bool(true));
        fed
    }

    fn page(&self, fed: Fed, page: usize) -> Result<Made<Page>, Error> {
        let own = |job: &Job<'_>| self.press.page_apart(job, page);
        let built_in = |job: &Job<'_>| self.press.page(job, page);
        let tried = Tried::default();
        made(self.course, self.document, &fed, &tried, own, built_in)
    }
}

fn tell(fed: &mut Fed, key: &str, value: Value) {
    if let Value::Object(all) = &mut fed.data {
        all.insert(key.to_owned(), value);
    }
}
