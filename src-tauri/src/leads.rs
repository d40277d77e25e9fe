//! A page made ready for the window: its links become places the window knows how to lead to, and
//! nothing of it can be followed.

/// What a link to a place begins with.
const PLACE: &str = "place:";

/// The page without addresses to follow: what was a link to `place:wall` keeps `wall` as its
/// `data-place`. Pictures lose their styles, for the window allows none inside a page. And the places,
/// each once, in the order of the page.
pub(crate) fn made_ready(page: &str) -> (String, Vec<String>) {
    let mut out = String::with_capacity(page.len());
    let mut places: Vec<String> = Vec::new();
    let mut rest = page;
    while let Some((before, name, attributes, after)) = next_element(rest) {
        out.push_str(before);
        out.push('<');
        out.push_str(name);
        for (key, value) in pairs(attributes) {
            let led = value.strip_prefix(PLACE).filter(|_| key == "href");
            if let Some(place) = led {
                push(&mut out, "data-place", place);
                if !places.iter().any(|it| it == place) {
                    places.push(place.to_owned());
                }
            }
            let address = name == "a" && (key == "href" || key == "xlink:href");
            if !address && key != "style" {
                push(&mut out, key, value);
            }
        }
        rest = after;
    }
    out.push_str(rest);
    (out, places)
}

fn push(out: &mut String, key: &str, value: &str) {
    for part in [" ", key, "=\"", value, "\""] {
        out.push_str(part);
    }
}

/// What comes before the next link or picture, its name, its attributes, and what comes after them.
fn next_element(page: &str) -> Option<(&str, &str, &str, &str)> {
    let (at, name) = ["a", "image"]
        .iter()
        .filter_map(|name| Some((page.find(&format!("<{name} "))?, *name)))
        .min()?;
    let inside = &page[at + 1 + name.len()..];
    // An address with a `>` in it, as a person's own template may have, would end here and lead nowhere.
    let end = inside
        .find("/>")
        .into_iter()
        .chain(inside.find('>'))
        .min()?;
    Some((&page[..at], name, &inside[..end], &inside[end..]))
}

/// The attributes, as they were written.
fn pairs(attributes: &str) -> impl Iterator<Item = (&str, &str)> {
    let mut rest = attributes;
    std::iter::from_fn(move || {
        let (key, after) = rest.trim_start().split_once("=\"")?;
        let (value, after) = after.split_once('"')?;
        rest = after;
        Some((key, value))
    })
}

#[cfg(test)]
mod tests {
    use super::made_ready;

    fn link(word: &str) -> String {
        format!(
            "<a transform=\"translate(1 2)\" href=\"{word}\" xlink:href=\"{word}\">\
             <rect width=\"3\" height=\"4\" fill=\"transparent\"/></a>"
        )
    }

    #[test]
    fn links_become_places_each_told_once_and_lead_nowhere_else() {
        let words = [
            "place:wall",
            "place:frames",
            "place:wall",
            "https://example.org",
        ];
        let page: String = words.map(link).concat();
        let (ready, places) = made_ready(&format!("<svg>{page}</svg>"));
        assert_eq!(places, ["wall", "frames"]);
        assert!(!ready.contains("href"), "{ready}");
        let led = "<a transform=\"translate(1 2)\" data-place=\"wall\"><rect";
        assert_eq!(ready.matches(led).count(), 2);
        assert!(ready.ends_with("<a transform=\"translate(1 2)\"><rect width=\"3\" height=\"4\" fill=\"transparent\"/></a></svg>"));
    }

    #[test]
    fn pictures_stay_and_lose_their_styles() {
        let picture = |style: &str| {
            format!("<g><image xlink:href=\"data:image/png;base64,AA=\" width=\"3\"{style}/></g>")
        };
        let (ready, places) = made_ready(&picture(" style=\"image-rendering: auto\""));
        assert_eq!((ready, places.len()), (picture(""), 0));
    }

    #[test]
    fn what_is_neither_stays_byte_for_byte() {
        for page in [
            "<svg><use xlink:href=\"#g1\"/><text>a < b, style=\"x\"</text></svg>",
            "<a ",
            "<animate x=\"1\"/>",
            "",
        ] {
            assert_eq!(made_ready(page), (page.to_owned(), Vec::new()));
        }
    }
}
