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
    /// On which courses it belongs among the pages; on all of them where nothing is said.
    wanted: Option<fn(&Course) -> bool>,
}

impl Document {
    /// Whether this course has anything for it to say. Asked for by name it is printed all
    /// the same, and says how to give what it lacks.
    pub fn wanted(&self, course: &Course) -> bool {
        self.wanted.is_none_or(|wanted| wanted(course))
    }
}

/// All documents, in the order in which they are needed.
pub const DOCUMENTS: &[Document] = &[
    Document {
        name: "ready-list",
        title: "Ready list",
        what: "What is to be seen to before the course, by date, with boxes to tick",
        template: "ready-list.typ",
        feed: feed::ready_list,
        wanted: None,
    },
    Document {
        name: "stone-order",
        title: "Stone order",
        what: "What to order, of what kind and by when, to be read out over the telephone",
        template: "stone-order.typ",
        feed: feed::stone_order,
        wanted: None,
    },
    Document {
        name: "load-list",
        title: "Load list",
        what: "Every tool to pack, by vehicle and run where vehicles are given, with boxes to tick",
        template: "load-list.typ",
        feed: feed::load_list,
        wanted: None,
    },
    Document {
        name: "setting-out",
        title: "Setting-out sheet",
        what: "Section to scale, frames, bars and string heights",
        template: "setting-out.typ",
        feed: feed::setting_out,
        wanted: None,
    },
    Document {
        name: "run-sheet",
        title: "Run sheet",
        what: "The days by the clock, who builds where, when each stage is done, and what if it slips",
        template: "run-sheet.typ",
        feed: feed::run_sheet,
        wanted: None,
    },
    Document {
        name: "progress-sheet",
        title: "Progress sheet",
        what: "For the clipboard: when each bay came how far, asked at every break",
        template: "progress-sheet.typ",
        feed: feed::progress_sheet,
        wanted: None,
    },
    Document {
        name: "safety-handout",
        title: "Safety handout",
        what: "What every student is told before the first stone",
        template: "safety-handout.typ",
        feed: feed::safety_handout,
        wanted: None,
    },
    Document {
        name: "lifting-card",
        title: "Lifting card",
        what: "What one person may lift at each stage, and who or what moves the rest",
        template: "lifting-card.typ",
        feed: feed::lifting_card,
        wanted: None,
    },
    Document {
        name: "worksheets",
        title: "Student worksheets",
        what: "A sheet for each student, with their own numbers",
        template: "worksheets.typ",
        feed: feed::worksheets,
        wanted: None,
    },
    Document {
        name: "worksheets-key",
        title: "Worksheet answers",
        what: "The instructor's key: answers, working and how far off is still right",
        template: "worksheets-key.typ",
        feed: feed::worksheets_key,
        wanted: None,
    },
    Document {
        name: "return-list",
        title: "Return list",
        what: "Everything that went out, counted back in: broken, lost, used up, and whose it is",
        template: "return-list.typ",
        feed: feed::return_list,
        wanted: None,
    },
    Document {
        name: "money-sheet",
        title: "Money sheet",
        what: "Costs, cost per head and break-even, for the instructor alone",
        template: "money-sheet.typ",
        feed: feed::money_sheet,
        wanted: Some(|course| course.written.money.is_some()),
    },
];

/// The documents this course has anything to say in.
pub fn wanted(course: &Course) -> Vec<&'static Document> {
    let all = DOCUMENTS.iter();
    all.filter(|document| document.wanted(course)).collect()
}

/// The document of a name.
pub fn named(name: &str) -> Option<&'static Document> {
    DOCUMENTS.iter().find(|document| document.name == name)
}
