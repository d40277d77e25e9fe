//! Pictures of a page that is looked at, put into the page as what they are.
//!
//! The typesetter puts a picture into its SVG as a closed image, which can use no font of who shows
//! it. As a part of the page it can, and its words need not be drawn as outlines. So the typesetter
//! is given a stand-in of the picture's size: to read all pictures, and to draw their words, would
//! take longer than all the rest of a page.

use crate::stand_ins::replaced;
use base64::Engine;
use base64::engine::general_purpose::STANDARD;

/// How the typesetter begins an image, how it ends one, and what comes before the picture in it.
const IMAGE: &str = "<image ";
const IMAGE_ENDS: &str = "/>";
const CODED: &str = "data:image/svg+xml;base64,";

/// A picture to be put into the finished page.
pub(crate) struct PutAside {
    /// What the typesetter is given: as large, and empty.
    pub(crate) stand_in: String,
    /// What the picture shows of its plane.
    view_box: String,
    marks: String,
}

impl PutAside {
    /// Nothing for a picture that can't be put into a page: one that does not say what it shows of
    /// its plane, or that has names or styles, which would get mixed up with those of the page.
    /// `number` tells its stand-in from others of its size.
    pub(crate) fn of(number: usize, picture: &str) -> Option<Self> {
        let (_, picture) = picture.split_once("<svg")?;
        let (head, marks) = picture.split_once('>')?;
        let marks = marks.trim_end().strip_suffix("</svg>")?;
        let marks = without(without(marks, "title"), "desc");
        let alone = [" id=", " style=", "<style", "<script", "<title", "<svg"];
        if alone.iter().any(|it| marks.contains(it)) {
            return None;
        }
        Some(Self {
            stand_in: format!("<svg{head}><desc>{number}</desc></svg>"),
            view_box: attribute(head, "viewBox")?.to_owned(),
            marks: marks.to_owned(),
        })
    }

    /// The picture in the place of its image, of the image's size.
    fn in_place_of(&self, image: &str) -> Option<String> {
        let (width, height) = (attribute(image, "width")?, attribute(image, "height")?);
        let moved = attribute(image, "transform").map(|it| format!(" transform=\"{it}\""));
        let Self {
            view_box, marks, ..
        } = self;
        Some(format!(
            "<g{}><svg width=\"{width}\" height=\"{height}\" viewBox=\"{view_box}\" \
             preserveAspectRatio=\"none\">{marks}</svg></g>",
            moved.unwrap_or_default()
        ))
    }
}

/// The page with the pictures in the places of their stand-ins.
pub(crate) fn inlined(page: &str, put_aside: &[PutAside]) -> String {
    replaced(page, IMAGE, IMAGE_ENDS, |image| {
        stands_for(image, put_aside)?.in_place_of(image)
    })
}

fn stands_for<'p>(image: &str, put_aside: &'p [PutAside]) -> Option<&'p PutAside> {
    let coded = attribute(image, "xlink:href")?.strip_prefix(CODED)?;
    let picture = STANDARD.decode(coded).ok()?;
    let mut all = put_aside.iter();
    all.find(|it| it.stand_in.as_bytes() == picture)
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

    const PICTURE: &str = "<svg width=\"90mm\" viewBox=\"0 0 90 40\">\n\
        <title id=\"a\">A wall</title>\n<desc id=\"b\">Its section</desc>\n<text x=\"3\">Base</text></svg>\n";

    fn image_of(picture: &str) -> String {
        let coded = STANDARD.encode(picture);
        format!(
            "<g><image transform=\"translate(2 3)\" xlink:href=\"{CODED}{coded}\" width=\"255\" \
             height=\"113\" preserveAspectRatio=\"none\"/></g>"
        )
    }

    #[test]
    fn a_picture_takes_the_place_of_its_own_stand_in_without_its_names() {
        let put_aside = |number, picture: &str| PutAside::of(number, picture).expect("it can be");
        let all = [
            put_aside(0, PICTURE),
            put_aside(1, &PICTURE.replace("Base", "Top")),
        ];
        let put = |words: &str| {
            format!(
                "<g><g transform=\"translate(2 3)\"><svg width=\"255\" height=\"113\" \
                 viewBox=\"0 0 90 40\" preserveAspectRatio=\"none\">\n<text x=\"3\">{words}</text></svg></g></g>"
            )
        };
        let page = [1, 0, 1].map(|at: usize| image_of(&all[at].stand_in));
        let expected = [put("Top"), put("Base"), put("Top")];
        assert_eq!(inlined(&page.concat(), &all), expected.concat());
    }

    #[test]
    fn what_stands_for_nothing_stays_as_it_is() {
        let all = [PutAside::of(0, PICTURE).expect("it can be put in")];
        for page in [&image_of(PICTURE), "<image broken", "no image"] {
            assert_eq!(inlined(page, &all), page);
        }
    }

    #[test]
    fn what_would_get_mixed_up_with_the_page_is_not_put_aside() {
        for (what, with) in [
            ("<text x", "<text id=\"a\" x"),
            ("<text x", "<text style=\"fill: red\" x"),
            ("<text x", "<style>text { fill: red }</style><text x"),
            ("<text x", "<script>alert()</script><text x"),
            (" viewBox=\"0 0 90 40\"", ""),
            ("</svg>", ""),
        ] {
            let picture = PICTURE.replace(what, with);
            assert!(PutAside::of(0, &picture).is_none(), "{picture}");
        }
    }
}
