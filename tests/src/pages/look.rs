//! What every document of every course must stand: printing, the standard, fonts, margins.

use super::standard::fails;
use checks::paper::Paper;
use documents::{Course, DOCUMENTS, Document, print};
use press::{Press, Printed};
use std::sync::OnceLock;

/// Nothing that is read may stand closer to the edge of the paper: printers can't reach it.
/// The place of a word reaches a little beyond its letters, so this allows them about 8 mm.
const EDGE_MM: f64 = 7.0;

/// One press for all checks; fonts are read once.
pub fn press() -> &'static Press {
    static PRESS: OnceLock<Press> = OnceLock::new();
    PRESS.get_or_init(Press::new)
}

/// A document of a course; it must print.
pub fn printed(course: &Course, document: &Document) -> Printed {
    print(course, document, press()).unwrap_or_else(|error| panic!("{error}"))
}

/// Looks at every document of a course, and hands each on with what it says.
pub fn every_document(course: &Course, mut more: impl FnMut(&Document, &Printed, &Paper)) {
    let mut faults = Vec::new();
    for document in DOCUMENTS {
        let printed = printed(course, document);
        let paper = Paper::new(&printed.pdf);
        let found = faults_of(course, document, &printed, &paper);
        faults.extend(
            found
                .iter()
                .map(|fault| format!("{}: {fault}", document.name)),
        );
        more(document, &printed, &paper);
    }
    assert!(faults.is_empty(), "\n{}\n", faults.join("\n"));
}

fn faults_of(course: &Course, document: &Document, first: &Printed, paper: &Paper) -> Vec<String> {
    let mut faults = fails(&first.pdf);
    if *first != printed(course, document) {
        faults.push("printed twice it is not the same".to_owned());
    }
    if paper.pages().len() != first.pages {
        faults.push(format!("{} pages were promised", first.pages));
    }
    let fonts = paper.fonts_left_out();
    faults.extend(
        fonts
            .iter()
            .map(|font| format!("a font is left out: {font}")),
    );
    let heads = paper.tables_with_heads();
    let bare = heads.iter().filter(|head| !**head).count();
    if 0 < bare {
        faults.push(format!("{bare} of {} tables have no heads", heads.len()));
    }
    faults.extend(beyond_the_margins(paper));
    if let Some(empty) = paper.pages().iter().position(|page| page.trim().is_empty()) {
        faults.push(format!("page {} is empty", empty + 1));
    }
    faults
}

/// Words that stand too near the edge, or beyond it.
fn beyond_the_margins(paper: &Paper) -> Vec<String> {
    let edge = EDGE_MM / 25.4 * 72.0;
    paper
        .words()
        .iter()
        .filter(|word| {
            let [width, height] = word.paper;
            let [left, top, right, bottom] = word.place;
            left < edge || top < edge || width - edge < right || height - edge < bottom
        })
        .map(|word| {
            format!(
                "page {}: {:?} stands at {:?}",
                word.page, word.text, word.place
            )
        })
        .collect()
}
