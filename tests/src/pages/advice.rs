//! Pages are set before it is worked out what could be done otherwise, unless they tell of it.

use checks::courses::{library, parsed, plain};
use craft::plan::{Asked, Memory};
use documents::{Course, DOCUMENTS, Fed, asked_by_pages, fed};
use files::{Library, examples};

const TOLD: &str = "\n[[progress]]\nday = 1\ntime = 15:00:00\nstage = \"line\"\ndone = 1.0\n";

fn planned(text: &str, asked: Asked) -> Course {
    let (store, mut memory) = (Default::default(), Memory::default());
    Course::plan_again(parsed(text), library(), store, asked, &mut memory)
        .unwrap_or_else(|fault| panic!("{}", fault.in_file("course", text)))
}

fn all_fed(course: &Course) -> Vec<Fed> {
    let fed = |document| fed(course, document);
    DOCUMENTS.iter().map(fed).collect()
}

/// The documents that are fed something else where less of the plan is asked for than its whole.
fn other(text: &str, asked: Asked) -> Vec<&'static str> {
    let [less, whole] = [asked, Asked::Advice].map(|asked| all_fed(&planned(text, asked)));
    let both = DOCUMENTS.iter().zip(less.iter().zip(&whole));
    let other = both.filter(|(_, (less, whole))| less != whole);
    other.map(|(document, _)| document.name).collect()
}

fn texts() -> Vec<String> {
    let examples = examples().into_iter().map(|it| it.text.to_owned());
    examples.chain([plain()]).collect()
}

#[test]
fn every_document_is_fed_the_same_as_when_everything_is_worked_out() {
    for text in texts() {
        for text in [format!("{text}{TOLD}"), text] {
            let asked = asked_by_pages(&parsed(&text));
            assert!(other(&text, asked).is_empty(), "{text}");
        }
    }
}

#[test]
fn pages_wait_for_it_only_where_something_is_built() {
    for text in texts() {
        assert_eq!(asked_by_pages(&parsed(&text)), Asked::Figures, "{text}");
    }
    // With less they would lack what would help.
    let told = format!("{}{TOLD}", Library::example(false));
    let tell_of_it = other(&told, Asked::Figures);
    assert_eq!(tell_of_it, ["run-sheet", "progress-sheet"]);
}
