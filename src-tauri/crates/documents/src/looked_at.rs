//! A page that is looked at: set with its whole document, or, while somebody types, with its piece alone.

use crate::feed::Feed;
use crate::made::{Made, Replaced, Tried, feed_of, made};
use crate::pack::Error;
use crate::{Course, Document};
use press::{Job, Press};
use serde_json::{Value, json};

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
}

/// One of the pieces, among the others.
struct Piece<'a> {
    all: &'a [usize],
    /// Which it is, from 0.
    number: usize,
    /// How many pages come before it and after it.
    before: usize,
    after: usize,
}

impl Pieces {
    /// The piece that this page belongs to, if there are others.
    fn with(&self, page: usize) -> Option<Piece<'_>> {
        let all = self.ends.as_slice();
        let number = all.iter().position(|end| page <= *end)?;
        let before = number.checked_sub(1).and_then(|at| all.get(at));
        Some(Piece {
            all,
            number,
            before: before.copied().unwrap_or(0),
            after: all.last()? - all.get(number)?,
        })
        .filter(|_| 1 < all.len())
    }
}

impl Piece<'_> {
    /// What was set of this piece alone, as it is in its document. Nothing where that can't be
    /// told any more: the template knows of no such piece, or it has fewer pages by now.
    fn in_whole(&self, page: usize, alone: Preview) -> Option<Preview> {
        if alone.pieces.ends != [alone.pages] || self.before + alone.pages < page {
            return None;
        }
        let was = *self.all.get(self.number)?;
        let is = self.before + alone.pages;
        let moved = |(at, end): (usize, &usize)| {
            if at < self.number {
                *end
            } else {
                *end + is - was
            }
        };
        Some(Preview {
            pages: is + self.after,
            pieces: Pieces {
                ends: self.all.iter().enumerate().map(moved).collect(),
            },
            alone: true,
            ..alone
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
    let mut feed = feed_of(course, document);
    tell(&mut feed, "on_screen", Value::Bool(true));
    if let Some(piece) = known.with(page) {
        let Piece {
            number,
            before,
            after,
            ..
        } = piece;
        tell(
            &mut feed,
            "looked_at",
            json!({ "piece": number, "before": before, "after": after }),
        );
        let alone = set(course, document, &feed, page - before, press)?;
        if let Some(preview) = piece.in_whole(page, alone) {
            return Ok(preview);
        }
        tell(&mut feed, "looked_at", Value::Null);
    }
    set(course, document, &feed, page, press)
}

fn tell(feed: &mut Feed, key: &str, value: Value) {
    if let Value::Object(all) = &mut feed.data {
        all.insert(key.to_owned(), value);
    }
}

/// A page of all that this feed makes.
fn set(
    course: &Course,
    document: &Document,
    feed: &Feed,
    page: usize,
    press: &Press,
) -> Result<Preview, Error> {
    let own = |job: &Job<'_>| press.page_apart(job, page);
    let built_in = |job: &Job<'_>| press.page(job, page);
    let Made { made, replaced } = made(course, document, feed, &Tried::default(), own, built_in)?;
    Ok(Preview {
        svg: made.svg,
        pages: made.pages,
        pieces: Pieces { ends: made.ends },
        alone: false,
        replaced,
    })
}
