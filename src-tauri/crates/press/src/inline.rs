//! Pictures of a page that is looked at, put into the page as what they are.
//!
//! The typesetter puts a picture into its SVG as a closed image, which can use no font of who shows
//! it. As a part of the page it can, and its words need not be drawn as outlines, which would take
//! longer than all the rest of the page.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;

/// How the typesetter begins an image, and what comes before the picture in it.
const IMAGE: &str = "<image ";
const CODED: &str = "data:image/svg+xml;base64,";

/// What of a picture can be put into a page.
struct Parts<'p> {
    view_box: &'p str,
    marks: &'p str,
}

/// Whether a picture can be put into a page: it says what it shows of its plane, and has neither
/// names nor styles, which would get mixed up with those of the page.
pub(crate) fn can_be(picture: &str) -> bool {
    parts(picture).is_some()
}

/// The page with those of `pictures` that can be put into it.
pub(crate) fn inlined(page: &str, pictures: &[&str]) -> String {
    let mut out = String::with_capacity(page.len());
    let mut rest = page;
    while let Some(at) = rest.find(IMAGE) {
        let (before, from_here) = rest.split_at(at);
        out.push_str(before);
        let end = from_here
            .find("/>")
            .map_or(from_here.len(), |end| end + "/>".len());
        let (image, after) = from_here.split_at(end);
        match inside(image, pictures) {
            Some(inside) => out.push_str(&inside),
            None => out.push_str(image),
        }
        rest = after;
    }
    out.push_str(rest);
    out
}

/// What takes the place of an image.
fn inside(image: &str, pictures: &[&str]) -> Option<String> {
    let coded = attribute(image, "xlink:href")?.strip_prefix(CODED)?;
    let picture = STANDARD.decode(coded).ok()?;
    let picture = pictures.iter().find(|it| it.as_bytes() == picture)?;
    let Parts { view_box, marks } = parts(picture)?;
    let (width, height) = (attribute(image, "width")?, attribute(image, "height")?);
    let moved = attribute(image, "transform").map(|it| format!(" transform=\"{it}\""));
    Some(format!(
        "<g{}><svg width=\"{width}\" height=\"{height}\" viewBox=\"{view_box}\" \
         preserveAspectRatio=\"none\">{marks}</svg></g>",
        moved.unwrap_or_default()
    ))
}

fn parts(picture: &str) -> Option<Parts<'_>> {
    let (_, picture) = picture.split_once("<svg")?;
    let (head, marks) = picture.split_once('>')?;
    let marks = marks.trim_end().strip_suffix("</svg>")?;
    let marks = without(without(marks, "title"), "desc");
    let alone = [" id=", " style=", "<style", "<script", "<title", "<svg"];
    let mixes = alone.iter().any(|it| marks.contains(it));
    let view_box = attribute(head, "viewBox")?;
    (!mixes).then_some(Parts { view_box, marks })
}

/// Marks without what they begin with, if that is an element of this name: the page says in other
/// places what a picture shows.
fn without<'p>(marks: &'p str, name: &str) -> &'p str {
    let begins = marks
        .trim_start()
        .strip_prefix('<')
        .is_some_and(|it| it.starts_with(name));
    match marks.split_once(&format!("</{name}>")) {
        Some((_, after)) if begins => after,
        _ => marks,
    }
}

fn attribute<'e>(element: &'e str, name: &str) -> Option<&'e str> {
    let (_, value) = element.split_once(&format!(" {name}=\""))?;
    Some(value.split_once('"')?.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    const PICTURE: &str = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"90mm\" viewBox=\"0 0 90 40\">\n\
        <title id=\"a\">A wall</title>\n<desc id=\"b\">Its section</desc>\n<text x=\"3\">Base</text></svg>\n";

    fn image_of(picture: &str) -> String {
        let coded = STANDARD.encode(picture);
        format!(
            "<g><image transform=\"translate(2 3)\" xlink:href=\"{CODED}{coded}\" width=\"255\" height=\"113\" preserveAspectRatio=\"none\"/></g>"
        )
    }

    #[test]
    fn a_picture_takes_the_place_of_its_image_without_its_names() {
        let page = image_of(PICTURE).repeat(2);
        let one = "<g><g transform=\"translate(2 3)\"><svg width=\"255\" height=\"113\" \
                   viewBox=\"0 0 90 40\" preserveAspectRatio=\"none\">\n<text x=\"3\">Base</text></svg></g></g>";
        assert_eq!(inlined(&page, &["<svg>", PICTURE]), one.repeat(2));
    }

    #[test]
    fn what_is_no_picture_of_the_job_or_would_get_mixed_up_stays_as_it_is() {
        let page = image_of(PICTURE);
        assert_eq!(inlined(&page, &["<svg>"]), page);
        for (what, with) in [
            ("<text x", "<text id=\"a\" x"),
            ("<text x", "<text style=\"fill: red\" x"),
            ("<text x", "<style>text { fill: red }</style><text x"),
            ("<text x", "<script>alert()</script><text x"),
            (" viewBox=\"0 0 90 40\"", ""),
            ("</svg>", ""),
        ] {
            let picture = PICTURE.replace(what, with);
            assert!(!can_be(&picture), "{picture}");
            let page = image_of(&picture);
            assert_eq!(inlined(&page, &[&picture]), page);
        }
        assert!(can_be(PICTURE));
        assert_eq!(inlined("<image broken", &[PICTURE]), "<image broken");
    }
}
