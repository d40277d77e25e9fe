//! Pages printed from a template and one JSON value: a PDF to print, or SVG to look at or to hand to a printer.
//!
//! The crate knows nothing of the trade. A [`Job`] brings the templates, the data and the
//! pictures; the [`Press`] brings the fonts. The same job always gives the same bytes.
//!
//! # What a template may rely on
//!
//! Templates are written in Typst 0.15. A template sees
//! - its data: `json("data.json")`, the value of [`Job::data`];
//! - the pictures of the job: `image("wall.svg")`;
//! - the other templates of the job: `#import "look.typ": sheet`;
//! - two font families, [`TEXT_FAMILY`] and [`FALLBACK_FAMILY`]. Text is set in the first, and
//!   in the second where the first lacks a letter, without any `set text(font: ..)`. A template
//!   that sets the font must name both families. Bold and italic are there; there is no
//!   monospaced font and no font for equations;
//! - the elements `pdf.header-cell` and `pdf.table-summary`, for tables read aloud;
//! - the label [`PIECE_END`], to mark where a part ends that has pages of its own: [`Page::ends`] tells of each.
//!
//! It sees no other file, no package, no network and no clock: `datetime.today()` fails. A date
//! to be printed must be in the data.
//!
//! Texts in the data are printed as they were typed. A template must use them as values
//! (`#d.title`), never `eval` them. They have been cleaned: line feeds, but no other control
//! characters (a tab becomes a space); no marks that reverse the direction of reading; ▯ for a
//! character no font holds. Keys are not cleaned, so a template must not print a key that a
//! person typed.
//!
//! # What is asked of a template
//!
//! A PDF is made to the accessibility standard ISO 14289-1 (PDF/UA-1), and refused otherwise:
//! - `#set document(title: ..)`; and `#set text(lang: ..)`, or it is read aloud as English;
//! - the first heading of level 1, and no level skipped;
//! - each picture in `figure(alt: "..", image(..))`. A drawing outside a `figure` with an `alt`
//!   is passed over in silence by a screen reader, and nothing here warns of it;
//! - `table.header(..)` in each table. This too is for the author to remember;
//! - no warnings: each is an error here, for a warning may mean a page without text.
//!
//! Bind what a header or footer needs with `#let` and use that name in it: one that reaches into
//! the whole data is set afresh on every page whenever anything changes.
//!
//! A template that runs for ever is stopped only by [`Press::pdf_apart`],
//! [`Press::page_apart`] and [`Press::sheets_apart`], which are for templates whose author may have made a mistake.

mod apart;
mod clean;
mod error;
mod explain;
mod fonts;
mod inline;
mod kept;
mod letters;
mod outline;
mod pieces;
mod sheets;
mod stand_ins;
#[cfg(test)]
mod tests;
mod words;
mod world;

use std::collections::BTreeSet;
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};

use serde_json::Value;
use typst::diag::Warned;
use typst::foundations::{Bytes, Element, Recipe, Styles, Transformation};
use typst::syntax::{Source, Span};
use typst::text::{FontFamily, FontList, RawElem, TextElem};
use typst::utils::LazyHash;
use typst::{Feature, Library, LibraryExt};
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards};
use typst_svg::SvgOptions;

pub use apart::{Apart, Limits, serve};
pub use error::{Error, Flaw};
pub use fonts::{FALLBACK_FAMILY, FONT_LICENCES, TEXT_FAMILY};
pub use pieces::PIECE_END;
pub use sheets::{Sheet, Sheets};

use clean::Cleaner;
use explain::explain;
use fonts::Fonts;
use kept::Kept;
use world::JobWorld;

/// The name under which a template finds its data.
pub const DATA_FILE: &str = "data.json";

/// After so many jobs each time, what none of them and none of as many before had a use for is
/// forgotten. With nothing forgotten memory grows with every change to a long document; to look
/// through all after each job takes a tenth of its time.
const JOBS_REMEMBERED: usize = 5;

/// What is to be printed.
///
/// Every file name ever used stays in memory, and there is room for 65,000: take them from a
/// fixed set ("wall.svg"), never make one up for each course or student.
#[derive(Debug, Clone, Copy)]
pub struct Job<'a> {
    /// The file name of the template to print, which must be among `sources`.
    pub main: &'a str,
    /// All templates it may import, as (file name, text).
    pub sources: &'a [(&'a str, &'a str)],
    /// The data, found by the template as [`DATA_FILE`].
    pub data: &'a Value,
    /// The pictures, as (file name ending in `.svg`, SVG text). Their words should ask for
    /// [`TEXT_FAMILY`]. A run of words with one character it lacks, such as an arrow, is set
    /// wholly in [`FALLBACK_FAMILY`]: give such a character a `<text>` of its own.
    pub pictures: &'a [(&'a str, &'a str)],
}

/// A finished document.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Printed {
    /// The PDF file.
    pub pdf: Vec<u8>,
    /// How many pages it has.
    pub pages: usize,
    /// The characters of the data and the pictures that could not be printed as typed, each
    /// once, in the order they were met. Those no font holds are printed as ▯; control
    /// characters and marks that reverse the direction of reading are left out, and so are marks
    /// over or under letters where they would have stopped the whole document.
    pub unprintable: Vec<char>,
}

/// One page to be looked at.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Page {
    /// The page as SVG, one point to a unit.
    pub svg: String,
    /// How many pages the document has.
    pub pages: usize,
    /// The page on which each piece ends that the template marks with [`PIECE_END`], from 1.
    pub ends: Vec<usize>,
    /// The pictures of the job that were asked for, and maybe some more: without the others the page
    /// would be the same. Nothing where that is not known.
    pub pictures: Option<BTreeSet<String>>,
}

/// The fonts and the typesetter, ready to print. Make one and keep it; a clone shares it.
#[derive(Clone)]
pub struct Press {
    kit: Arc<Kit>,
    apart: Option<Arc<Apart>>,
}

/// What every job shares.
struct Kit {
    fonts: Fonts,
    library: LazyHash<Library>,
    /// Templates as they were parsed.
    parsed: Kept<Source>,
    /// Pictures as they were drawn with their words as outlines; none where nothing is to be.
    outlined: Kept<Option<Bytes>>,
    /// So many jobs were done.
    jobs: AtomicUsize,
}

/// The ways to make a PDF, each giving up more than the one before for the standard's sake.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Way {
    /// Nothing given up.
    Usual,
    /// Words in pictures drawn as outlines.
    Outlined,
    /// That, and letters without the marks set over or under them as characters of their own.
    Unmarked,
}

impl Press {
    /// Reads the fonts and sets up the typesetter.
    #[must_use]
    pub fn new() -> Self {
        let kit = Kit {
            fonts: Fonts::built_in(),
            library: LazyHash::new(library()),
            parsed: Kept::new(),
            outlined: Kept::new(),
            jobs: AtomicUsize::new(0),
        };
        Self {
            kit: Arc::new(kit),
            apart: None,
        }
    }

    /// The same press with a second process beside it, for [`Press::pdf_apart`].
    #[must_use]
    pub fn beside(self, apart: Apart) -> Self {
        Self {
            apart: Some(Arc::new(apart)),
            ..self
        }
    }

    /// The job as a tagged PDF/UA-1 file, with no time stamp. A long job takes seconds.
    ///
    /// Words in pictures stay words, to be searched and copied. Should that break the standard,
    /// they are all drawn as outlines; should that not do, marks set over or under letters are
    /// left out, and told.
    ///
    /// # Errors
    /// [`Error::NoTemplate`], [`Error::BadName`], [`Error::SameName`] for files that do not
    /// fit together; [`Error::Template`] if a template is wrong or breaks the standard.
    pub fn pdf(&self, job: &Job<'_>) -> Result<Printed, Error> {
        self.remembering(|| {
            let usual = match self.try_pdf(job, Way::Usual)? {
                Ok(printed) => return Ok(printed),
                Err(error) => error,
            };
            for way in [Way::Outlined, Way::Unmarked] {
                if let Ok(printed) = self.try_pdf(job, way)? {
                    return Ok(printed);
                }
            }
            Err(usual)
        })
    }

    /// As [`Press::pdf`], in the second process, which is ended if the job takes more than its
    /// limits. Without a second process the job is done here, and nothing stops it.
    ///
    /// # Errors
    /// As for [`Press::pdf`]; [`Error::TooLong`], [`Error::TooLarge`], [`Error::BrokeDown`].
    pub fn pdf_apart(&self, job: &Job<'_>) -> Result<Printed, Error> {
        match &self.apart {
            Some(apart) => apart.pdf(job),
            None => self.pdf(job),
        }
    }

    /// One page of the job as SVG, to be shown on screen; `number` counts from 1, and one beyond
    /// the last gives the last. All pages are set, because each may depend on the others, but
    /// only what has changed since the last time is set anew, and only this page is drawn.
    ///
    /// Links of the template are links of the SVG. It is to be shown where there are the fonts
    /// [`TEXT_FAMILY`] and [`FALLBACK_FAMILY`]: what the first of them sets alike by itself comes as
    /// words, and a picture that can be is a part of the page; other words come as outlines. It is not
    /// held to the accessibility standard: [`Press::pdf`] may still refuse.
    ///
    /// # Errors
    /// As for [`Press::pdf`].
    pub fn page(&self, job: &Job<'_>, number: usize) -> Result<Page, Error> {
        let (world, _) = self.prepare(job, Way::Usual)?;
        let (world, put_aside) = world.put_aside();
        let world = world.outlined();
        self.on_a_worker(|| {
            let document = typeset(&world)?;
            let pages = document.pages();
            let at = number.min(pages.len()).saturating_sub(1);
            let page = pages.get(at).ok_or_else(|| fault("it has no pages"))?;
            Ok(Page {
                svg: inline::inlined(&words::svg(page), &put_aside),
                pages: pages.len(),
                ends: pieces::ends(&document),
                pictures: Some(world.pictures_asked_for()),
            })
        })
    }

    /// As [`Press::page`], in the second process, like [`Press::pdf_apart`]; where pieces end is
    /// not told of templates that may be wrong.
    ///
    /// # Errors
    /// As for [`Press::pdf_apart`].
    pub fn page_apart(&self, job: &Job<'_>, number: usize) -> Result<Page, Error> {
        match &self.apart {
            Some(apart) => apart.page(job, number),
            None => self.page(job, number),
        }
    }

    /// Lets go of all that was remembered of jobs, for when there will be none for a while: the next
    /// takes as long as the first did.
    pub fn forget(&self) {
        self.kit.parsed.forget();
        self.kit.outlined.forget();
        typst::comemo::evict(0);
    }

    /// The outer error is that of the job's files or the typesetting, the inner one that of
    /// making a PDF that meets the standard.
    fn try_pdf(&self, job: &Job<'_>, way: Way) -> Result<Result<Printed, Error>, Error> {
        let (world, unprintable) = self.prepare(job, way)?;
        let world = match way {
            Way::Usual => world,
            Way::Outlined | Way::Unmarked => world.outlined(),
        };
        let document = typeset(&world)?;
        let pdf = typst_pdf::pdf(&document, &pdf_options()?);
        let pages = document.pages().len();
        Ok(pdf
            .map(|pdf| Printed {
                pdf,
                pages,
                unprintable,
            })
            .map_err(|complaints| explain(&world, &complaints)))
    }

    /// Does a job, and now and then lets go of what the last few had no use for.
    fn remembering<T>(&self, job: impl FnOnce() -> T) -> T {
        let done = job();
        let jobs = self.kit.jobs.fetch_add(1, Ordering::Relaxed) + 1;
        if jobs.is_multiple_of(JOBS_REMEMBERED) {
            typst::comemo::evict(1);
        }
        done
    }

    /// The same on one of the threads among which the typesetter shares out its work: from any
    /// other, each of the many times it does so waits until one of them is woken.
    fn on_a_worker<T: Send>(&self, job: impl FnOnce() -> T + Send) -> T {
        rayon::scope(|_| self.remembering(job))
    }

    /// Cleans the texts of a job and lays out its files.
    fn prepare(&self, job: &Job<'_>, way: Way) -> Result<(JobWorld, Vec<char>), Error> {
        let mut cleaner = Cleaner::new(&self.kit.fonts, way);
        let data = cleaner.value(job.data);
        let data = serde_json::to_vec(&data).map_err(|e| fault(&e.to_string()))?;
        let pictures = job.pictures.iter();
        let pictures = pictures.map(|(name, svg)| (*name, cleaner.svg(svg)));
        let pictures = pictures.collect();
        let world = JobWorld::new(Arc::clone(&self.kit), job, data, pictures)?;
        Ok((world, cleaner.into_unprintable()))
    }
}

impl Default for Press {
    fn default() -> Self {
        Self::new()
    }
}

impl std::fmt::Debug for Press {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Press").finish_non_exhaustive()
    }
}

fn library() -> Library {
    let features = [Feature::A11yExtras].into_iter().collect();
    let mut library = Library::builder().with_features(features).build();
    let families = FontList([TEXT_FAMILY, FALLBACK_FAMILY].map(FontFamily::new).to_vec());
    // Raw text asks for a family of its own, which we have not got, unless told otherwise.
    let mut raw = Styles::new();
    raw.set(TextElem::font, families.clone());
    library.styles.set(TextElem::font, families);
    library.styles.push(Recipe::new(
        Some(Element::of::<RawElem>().select()),
        Transformation::Style(raw),
        Span::detached(),
    ));
    library
}

fn typeset(world: &JobWorld) -> Result<PagedDocument, Error> {
    let Warned { output, warnings } = typst::compile::<PagedDocument>(world);
    let document = output.map_err(|complaints| explain(world, &complaints))?;
    if warnings.is_empty() {
        Ok(document)
    } else {
        Err(explain(world, &warnings))
    }
}

/// A page as SVG, its letters joined.
fn svg(page: &typst_layout::Page) -> String {
    letters::joined(&typst_svg::svg(page, &SvgOptions::default()))
}

fn pdf_options() -> Result<PdfOptions, Error> {
    let standards =
        PdfStandards::new(&[PdfStandard::Ua_1]).map_err(|e| fault(e.message().as_str()))?;
    Ok(PdfOptions {
        standards,
        timestamp: None,
        ..PdfOptions::default()
    })
}

pub(crate) fn fault(why: &str) -> Error {
    Error::Fault {
        why: why.to_owned(),
    }
}
