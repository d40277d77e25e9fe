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

/// The page that a template makes with nothing to fill in.
fn page_of(template: &str) -> String {
    let job = Job {
        main: "plain.typ",
        sources: &[("plain.typ", template)],
        data: &Value::Null,
        pictures: &[],
    };
    Press::new().page(&job, 1).unwrap().svg
}

#[test]
fn what_the_font_sets_alike_by_itself_is_written_as_words() {
    for (template, written) in [
        ("Lay them *length in*", &["Lay them", "length in"][..]),
        (
            "_Mind_ #text(fill: red)[your] fingers",
            &["Mind", "your", "fingers"],
        ),
        ("Tom & Ann: 3 < 4", &["Tom &amp; Ann: 3 &lt; 4"]),
        ("#rotate(90deg)[Turned]", &["Turned"]),
    ] {
        let svg = page_of(template);
        for words in written {
            assert!(
                svg.contains(&format!(">{words}</text>")),
                "{template}: {svg}"
            );
        }
        assert!(!svg.contains("stands-for"), "{template}: {svg}");
    }
    let bold = page_of("*Bold*");
    assert!(bold.contains("font-weight=\"700\""), "{bold}");
}

#[test]
fn what_it_would_set_otherwise_stays_outlines() {
    for template in [
        "#text(fractions: true)[1/2]",
        "Ελλάδα",
        "#text(stroke: 1pt)[Hollow]",
        "#text(features: (\"sups\",))[12]",
        "#text(fill: gradient.linear(red, blue))[Blue]",
    ] {
        let svg = page_of(template);
        assert!(!svg.contains("<text"), "{template}: {svg}");
        assert!(svg.matches("<path").count() > 1, "{template}: {svg}");
    }
}

/// Where each character of the first run stands, in points behind the place of the run.
fn places(svg: &str) -> Vec<f64> {
    let (_, run) = svg.split_once("<text x=\"").unwrap();
    let (places, _) = run.split_once('"').unwrap();
    places.split(' ').map(|x| x.parse().unwrap()).collect()
}

#[test]
fn each_letter_stands_where_the_typesetter_has_put_it() {
    let plain = places(&page_of("two"));
    assert!(plain.len() == 3 && plain[0] == 0.0, "{plain:?}");
    let apart = places(&page_of("#text(tracking: 2pt)[two]"));
    let more: Vec<_> = plain.iter().zip(&apart).map(|(a, b)| b - a).collect();
    assert!(
        more.iter()
            .zip([0.0, 2.0, 4.0])
            .all(|(is, was)| (is - was).abs() < 0.02)
    );
    // A gap that fills the line is one space; what comes before the first word moves the word.
    let wide = page_of("#box(width: 3cm)[two#h(1fr) three]");
    assert!(wide.contains(">three</text>"), "{wide}");
    let raw = page_of("#text(size: 10pt)[#\"  a   b \"]");
    assert!(raw.contains(">a b</text>"), "{raw}");
    assert_eq!(places(&raw).len(), 3);
}
