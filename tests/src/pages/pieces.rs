//! A page set with its piece alone, while somebody types, is the page that the whole document has.

use checks::courses::{planned, with};
use documents::{Course, DOCUMENTS, Document, Edition, Pieces, Preview, named, preview};
use files::examples;
use press::Press;
use std::sync::LazyLock;

fn looked_at(course: &Course, document: &Document, page: usize, known: &Pieces) -> Preview {
    static PRESS: LazyLock<Press> = LazyLock::new(Press::new);
    preview(course, document, page, known, &PRESS).unwrap_or_else(|fault| panic!("{fault}"))
}

fn whole(course: &Course, document: &Document, page: usize) -> Preview {
    looked_at(course, document, page, &Pieces::default())
}

/// How many of every so many pages of a document can be set with their piece alone; each is then the
/// same page, and so it is when the pictures that its piece asked for are known.
fn alone(course: &Course, document: &Document, every: usize) -> usize {
    let first = whole(course, document, 1);
    let is_alone = |page: &usize| {
        let alone = looked_at(course, document, *page, &first.pieces);
        if !alone.alone {
            return false;
        }
        let whole = whole(course, document, *page);
        let what = format!("page {page} of {} of {}", first.pages, document.name);
        assert!(whole.svg == alone.svg, "{what} is another one");
        assert_eq!(
            (whole.pages, whole.pieces.ends()),
            (alone.pages, alone.pieces.ends()),
            "{what}"
        );
        let again = looked_at(course, document, *page, &alone.pieces);
        assert!(again == alone, "{what} is another one the second time");
        true
    };
    (1..=first.pages).step_by(every).filter(is_alone).count()
}

#[test]
fn a_page_is_the_same_with_its_piece_alone() {
    for (at, example) in examples().iter().enumerate() {
        let mut course = planned(example.text);
        if at == 1 {
            course.edition = Edition::LargePrint;
        }
        let every = if at == 0 { 1 } else { 4 };
        let in_pieces = DOCUMENTS.iter().filter(|it| 0 < alone(&course, it, every));
        let in_pieces: Vec<_> = in_pieces.map(|it| it.name).collect();
        assert_eq!(
            in_pieces,
            [
                "fitness-declaration",
                "stone-order",
                "setting-out",
                "run-sheet",
                "lesson-cards",
                "lesson-handouts",
                "worksheets",
                "worksheets-key",
            ],
            "{}",
            example.name
        );
    }
}

/// What was known of the pieces is of before the change that is looked at.
#[test]
fn a_page_beyond_its_piece_has_the_whole_document_set() {
    let document = named("worksheets").expect("there");
    let known = whole(&planned(&with(&[])), document, 1);
    let less = planned(&(with(&[]) + "\n[worksheets]\nquestions = 3\n"));
    assert!(whole(&less, document, 1).pages < known.pages);
    let last = looked_at(&less, document, known.pages, &known.pieces);
    assert_eq!(last, whole(&less, document, known.pages));
    // Of students who are not there any more no piece is known to the template.
    let fewer = planned(&with(&[("novices = 6", "novices = 1")]));
    let last = looked_at(&fewer, document, known.pages, &known.pieces);
    assert_eq!(last, whole(&fewer, document, known.pages));
}

/// The line of a wall takes the place of its frames, which asked for another picture.
#[test]
fn a_piece_that_asks_for_other_pictures_than_before_has_them() {
    let document = named("setting-out").expect("there");
    let straight = planned(&with(&[]));
    let pieces = whole(&straight, document, 1).pieces;
    let frames = looked_at(&straight, document, 2, &pieces);
    assert!(frames.alone);
    let line = r#"[wall]
line = [{ straight = "4 m" }, { arc = "3 m", radius = "6 m", turn = "left" }]"#;
    let free = (r#"length = "6 m""#, r#"length = "7 m""#);
    let bent = planned(&with(&[("[wall]", line), free]));
    let line = looked_at(&bent, document, 2, &frames.pieces);
    assert!(line.alone);
    assert!(line == looked_at(&bent, document, 2, &pieces));
}

/// A piece that grew moves those after it; how long they are is from before.
#[test]
fn a_piece_that_is_longer_moves_the_others() {
    let document = named("worksheets").expect("there");
    let short = planned(&(with(&[]) + "\n[worksheets]\nquestions = 3\n"));
    let long = planned(&with(&[]));
    let known = whole(&short, document, 1);
    let first = looked_at(&long, document, 1, &known.pieces);
    assert!(first.alone);
    let each = whole(&long, document, 1).pages / 8;
    assert_eq!(first.pages, known.pages - known.pages / 8 + each);
}
