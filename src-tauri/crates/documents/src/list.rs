//! The documents there are.

use crate::Course;
use crate::feed::{self, Feed};

/// One document.
pub struct Document {
    /// Its file's name without the ending.
    pub name: &'static str,
    /// What a person reads.
    pub title: &'static str,
    /// What it is for.
    pub what: &'static str,
    /// The template in `lessons/pages`.
    pub(crate) template: &'static str,
    /// What the template is fed.
    pub(crate) feed: fn(&Course) -> Feed,
}

/// All documents, in the order in which they are needed.
pub const DOCUMENTS: &[Document] = &[
    Document {
        name: "stone-order",
        title: "Stone order",
        what: "What to order, of what kind, and by when",
        template: "stone-order.typ",
        feed: feed::stone_order,
    },
    Document {
        name: "load-list",
        title: "Load list",
        what: "Every tool to pack and to bring home, with boxes to tick",
        template: "load-list.typ",
        feed: feed::load_list,
    },
    Document {
        name: "setting-out",
        title: "Setting-out sheet",
        what: "Section to scale, frames, bars and string heights",
        template: "setting-out.typ",
        feed: feed::setting_out,
    },
    Document {
        name: "run-sheet",
        title: "Run sheet",
        what: "The days by the clock, the stints, and where the wall should be when",
        template: "run-sheet.typ",
        feed: feed::run_sheet,
    },
    Document {
        name: "safety-handout",
        title: "Safety handout",
        what: "What every student is told before the first stone",
        template: "safety-handout.typ",
        feed: feed::safety_handout,
    },
    Document {
        name: "worksheets",
        title: "Student worksheets",
        what: "A sheet for each student, with their own numbers",
        template: "worksheets.typ",
        feed: feed::worksheets,
    },
    Document {
        name: "worksheets-key",
        title: "Worksheet answers",
        what: "The instructor's key: answers, working and how far off is still right",
        template: "worksheets-key.typ",
        feed: feed::worksheets_key,
    },
];

/// The document of a name.
pub fn named(name: &str) -> Option<&'static Document> {
    DOCUMENTS.iter().find(|document| document.name == name)
}
