//! Texts of lessons read, and refused.

use super::*;
use std::path::Path;

fn read(text: &str) -> Result<Vec<Block>, Error> {
    let file = Text::of(Path::new("my-own.md"), text.to_owned());
    blocks(&file, 0)
}

fn words(text: &str) -> Span {
    Span::Words(Wording::read(text).expect("sound words"))
}

#[test]
fn paragraphs_lists_and_headings_are_read() {
    let text = "One *stone* on **two,\n*two* on one**.\n\n## Then\n\n- first\n  - deeper\n- {2 m}\n  long\n\n1. counted\n\n2. twice\n";
    let blocks = read(text).expect("sound");
    let item = |text: &str| vec![Block::Paragraph(vec![words(text)])];
    let list = |numbered, items| Block::List { numbered, items };
    let mut deeper = item("first");
    deeper.push(list(false, vec![item("deeper")]));
    assert_eq!(
        blocks,
        [
            Block::Paragraph(vec![
                words("One "),
                Span::Emphasis(vec![words("stone")]),
                words(" on "),
                Span::Strong(vec![
                    words("two, "),
                    Span::Emphasis(vec![words("two")]),
                    words(" on one"),
                ]),
                words("."),
            ]),
            Block::Heading(vec![words("Then")]),
            list(false, vec![deeper, item("{2 m} long")]),
            list(true, vec![item("counted"), item("twice")]),
        ]
    );
}

#[test]
fn a_figure_may_stand_across_two_lines() {
    let blocks = read("so {1.5\nm} wide").expect("sound");
    assert_eq!(blocks, [Block::Paragraph(vec![words("so {1.5 m} wide")])]);
}

#[test]
fn what_has_no_place_is_named_with_its_line() {
    for (text, line, what) in [
        ("fine\n\n<b>loud</b>", 3, "HTML has no place in a lesson"),
        ("fine <b>loud</b>", 1, "HTML has no place"),
        ("a\n\n![wall](wall.png)", 3, "a picture has no place"),
        ("a\n[b](c)", 2, "a link has no place"),
        (
            "a\n\n| a | b |\n| - | - |\n| 1 | 2 |",
            3,
            "a table has no place",
        ),
        ("a\n\n# b", 3, "a heading other than ## has no place"),
        ("a\n\n### b", 3, "a heading other than ## has no place"),
        ("a\n\n> b", 3, "a quotation with > has no place"),
        (
            "a\n\n    b",
            3,
            "a line that four spaces or ``` make code has no place",
        ),
        ("a `b` c", 1, "code between ` has no place"),
        ("- a\n- [ ] b", 2, "a box to tick has no place"),
        ("a\n\n---\n\nb", 3, "a line across has no place"),
        ("a ~~b~~", 1, "text struck out with ~ has no place"),
        ("a\nb {heigth}", 2, "there is no figure {heigth}"),
        ("a **b\nc {5 mm** d", 2, "a { without its }"),
        (
            "- a\n  - {3 hands}",
            2,
            "{3 hands} is neither a length nor a mass",
        ),
    ] {
        let refused = read(text).expect_err(text);
        let Error::Refused(refusal) = refused else {
            panic!("another error: {refused}");
        };
        assert_eq!(refusal.line, line, "{text}: {refusal}");
        assert!(refusal.what.starts_with(what), "{text}: {refusal}");
    }
}

#[test]
fn the_column_is_that_of_the_brace() {
    let Err(Error::Refused(refusal)) = read("a *b* c {no} d") else {
        panic!("not refused");
    };
    assert_eq!((refusal.line, refusal.column), (1, 9));
}

#[test]
fn lists_without_end_in_lists_are_refused() {
    let deep = |levels: usize| -> String {
        let lines = (0..levels).map(|level| format!("{}- a\n", "  ".repeat(level)));
        lines.collect()
    };
    assert!(read(&deep(3)).is_ok());
    for levels in [20, 2000] {
        let refused = read(&deep(levels)).expect_err("too deep");
        assert_eq!(refused.code(), "too-deep");
    }
}
