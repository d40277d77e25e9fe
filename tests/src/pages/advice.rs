//! What could be done otherwise stands on no page, so that a page can be set before it is worked out.

use checks::courses::{library, parsed, plain};
use craft::plan::{Asked, Memory};
use documents::{Course, DOCUMENTS, fed};
use std::path::Path;

fn planned(text: &str, asked: Asked) -> Course {
    let (store, mut memory) = (Default::default(), Memory::default());
    Course::plan_again(parsed(text), library(), store, asked, &mut memory)
        .unwrap_or_else(|fault| panic!("{}", fault.in_file("course", text)))
}

#[test]
fn no_document_is_fed_what_could_be_done_otherwise() {
    let examples = Path::new(env!("CARGO_MANIFEST_DIR")).join("../lessons/examples");
    let texts = ["hollin-bank", "quarry-pasture", "thorn-beck"].map(|name| {
        let path = examples.join(format!("{name}.walling"));
        std::fs::read_to_string(path).expect("an example")
    });
    for text in texts.iter().chain(&[plain()]) {
        let [figures, advice] = [Asked::Figures, Asked::Advice].map(|asked| planned(text, asked));
        assert_ne!(figures.plan.advice, advice.plan.advice, "{text}");
        for document in DOCUMENTS {
            assert_eq!(
                fed(&figures, document),
                fed(&advice, document),
                "{}",
                document.name
            );
        }
    }
}
