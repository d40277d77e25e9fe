//! Pages to be looked at on a screen.

use serde_json::Value;

use super::{WALL, data, sheet};
use crate::{Job, Press};

#[test]
fn a_page_to_look_at_is_each_page_and_no_words_left_in_pictures() {
    let data = data("Mind your fingers.");
    let bare = WALL.replace("Base → βάση", "");
    let press = Press::new();
    let page = |picture: &str, number| {
        let pictures = [("wall.svg", picture)];
        press.page(&sheet(&data, &pictures), number).unwrap()
    };
    let pages = [page(WALL, 1), page(WALL, 2)];
    let without = [page(&bare, 1), page(&bare, 2)];
    assert!(pages.iter().all(|page| page.svg.starts_with("<svg")));
    assert!(pages.iter().all(|page| page.pages == 2));
    assert_eq!(pages[0], without[0]);
    assert_ne!(pages[0].svg, pages[1].svg);
    // A page that is no more, because the text has become shorter.
    assert_eq!(page(WALL, 9), pages[1]);
    assert_eq!(page(WALL, 0), pages[0]);
    // Outlines of the words take room that the lack of words does not.
    assert!(pages[1].svg.len() > without[1].svg.len() + 1000);
}

#[test]
fn a_link_of_a_template_is_one_on_the_page() {
    let job = Job {
        main: "plain.typ",
        sources: &[("plain.typ", "#link(\"place:wall\")[Height]")],
        data: &Value::Null,
        pictures: &[],
    };
    let svg = Press::new().page(&job, 1).unwrap().svg;
    assert!(svg.contains("href=\"place:wall\""), "{svg}");
}

#[test]
fn where_pieces_end_is_told_with_each_page() {
    let end = format!("#metadata(none)<{}>", crate::PIECE_END);
    let text = format!("one{end}\n#pagebreak()\ntwo\n#pagebreak()\nstill two{end}");
    let job = Job {
        main: "pieces.typ",
        sources: &[("pieces.typ", &text)],
        data: &Value::Null,
        pictures: &[],
    };
    let page = Press::new().page(&job, 1).unwrap();
    assert_eq!((page.pages, page.ends), (3, vec![1, 3]));
}
