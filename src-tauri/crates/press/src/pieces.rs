//! The pieces of a document: parts that begin on a page of their own, so that one can be set without the others.

use std::num::NonZeroUsize;

use typst::foundations::{Label, Selector};
use typst::introspection::Introspector;
use typst::utils::PicoStr;
use typst_layout::PagedDocument;

/// The label by which a template marks where a piece ends.
pub const PIECE_END: &str = "piece-end";

/// The page on which each piece ends, from 1, in their order.
pub(crate) fn ends(document: &PagedDocument) -> Vec<usize> {
    let Some(label) = Label::new(PicoStr::intern(PIECE_END)) else {
        return Vec::new();
    };
    let introspector = document.introspector();
    let marks = introspector.query(&Selector::Label(label));
    let page = |mark: &typst::foundations::Content| introspector.page(mark.location()?);
    marks
        .iter()
        .filter_map(page)
        .map(NonZeroUsize::get)
        .collect()
}
