//! Words in pictures drawn as outlines, for when they cannot stay words.
//!
//! A picture inside an SVG page is a closed image, which cannot use the program's fonts: its words
//! would come out in some other type, of another width. And in a PDF not every word in
//! a picture can be kept as one: a letter put together from parts, as in Nguyễn, would break the
//! standard for accessible files.

use typst::World;
use typst::comemo::Track;
use typst::foundations::Bytes;
use typst::syntax::FileId;
use typst::visualize::SvgImage;

use crate::{FALLBACK_FAMILY, TEXT_FAMILY};

/// The SVG with its words as outlines; none if it has no words or cannot be read.
pub(crate) fn outlined(world: &dyn World, id: FileId, svg: &Bytes) -> Option<String> {
    // The reader of SVG does not count words that stand in a group, so it is not asked.
    if !svg.as_str().is_ok_and(|text| text.contains("<text")) {
        return None;
    }
    let families = [TEXT_FAMILY, FALLBACK_FAMILY];
    let image =
        SvgImage::with_fonts_images(svg.clone(), world.track(), &families, Some(id)).ok()?;
    Some(image.tree().to_string(&Default::default()))
}
