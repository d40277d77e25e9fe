//! What every document of every course must stand: printing, the standard, fonts, margins.

use super::area::outside;
use super::clear::on_each_other;
use super::standard::fails;
use checks::paper::Paper;
use documents::{Course, DOCUMENTS, Document, print};
use press::{Press, Printed};
use std::sync::OnceLock;

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
    faults.extend(faults_of_file(paper));
    faults.extend(outside(paper, course.edition));
    faults.extend(on_each_other(paper));
    if let Some(empty) = paper.pages().iter().position(|page| page.trim().is_empty()) {
        faults.push(format!("page {} is empty", empty + 1));
    }
    faults
}

/// What is wrong with a file, whatever it says: its build, fonts, tables, figures.
pub fn faults_of_file(paper: &Paper) -> Vec<String> {
    let mut faults: Vec<String> = paper.broken().into_iter().collect();
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
    let told = paper.alternatives();
    let untold = told.iter().filter(|text| text.trim().is_empty()).count();
    if 0 < untold {
        faults.push(format!("{untold} of {} figures say nothing", told.len()));
    }
    faults
}
