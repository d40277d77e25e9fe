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
        ("Lay them *length in*", &["Lay", "them", "length", "in"][..]),
        (
            "_Mind_ #text(fill: red)[your] fingers",
            &["Mind", "your", "fingers"],
        ),
        ("Tom & Ann: 3 < 4", &["Tom", "&amp;", "Ann:", "&lt;"]),
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

/// Each word of the first run, where it begins in points behind the place of the run, and how long
/// it is said to be.
fn words_of(svg: &str) -> Vec<(String, f64, f64)> {
    let (_, run) = svg.split_once("<text ").unwrap();
    let (run, _) = run.split_once("</g>").unwrap();
    let number = |of: &str, key: &str| {
        let (_, after) = of.split_once(&format!("{key}=\"")).unwrap_or(("", "0\""));
        after.split('"').next().unwrap().parse().unwrap()
    };
    run.split("<text ")
        .map(|word| {
            let (attributes, text) = word.split_once('>').unwrap();
            let text = text.trim_end_matches("</text>").to_owned();
            (
                text,
                number(attributes, "x"),
                number(attributes, "textLength"),
            )
        })
        .collect()
}

#[test]
fn each_word_stands_where_the_typesetter_has_put_it() {
    let of = |template: &str| words_of(&page_of(template));
    let plain = of("#text(size: 10pt)[two too]");
    let apart = of("#text(size: 10pt, tracking: 2pt)[two too]");
    let texts = |words: &[(String, f64, f64)]| -> Vec<String> {
        words.iter().map(|word| word.0.clone()).collect()
    };
    assert_eq!(texts(&plain), ["two", "too"]);
    assert!(plain[0].1.abs() < 0.01, "{plain:?}");
    // Two points more after each letter: four letters come before the second word, the last
    // letter of which has none behind it.
    let more = |at: usize| [apart[at].1 - plain[at].1, apart[at].2 - plain[at].2];
    for (is, was) in more(0).into_iter().chain(more(1)).zip([0.0, 6.0, 8.0, 4.0]) {
        assert!((is - was).abs() < 0.03, "{plain:?} {apart:?}");
    }
    // What stands behind a gap that fills the line is a run of its own; gaps are no words.
    let wide = page_of("#box(width: 3cm)[two#h(1fr) three]");
    assert_eq!(texts(&words_of(&wide)), ["two"]);
    assert!(wide.contains(">three</text>"), "{wide}");
    let raw = of("#text(size: 10pt)[#\"  a   b \"]");
    assert_eq!(texts(&raw), ["a", "b"]);
    assert!(raw[0].2 < 0.01 && raw[0].1 < raw[1].1, "{raw:?}");
}
