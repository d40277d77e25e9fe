//! The documents there are.

use crate::Course;
use crate::feed::{self, Feed};
use craft::plan::Asked;
use files::course::CourseFile;

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
    pub(crate) feed: fn(&Course) -> Feed<'_>,
    /// On which courses it belongs among the pages; on all of them where nothing is said.
    wanted: Option<fn(&Course) -> bool>,
}

impl Document {
    /// Whether it belongs in this course's pack: not where the course has nothing for it to
    /// say, and never where it is private. Asked for by name it is printed all the same, and
    /// says how to give what it lacks.
    pub fn wanted(&self, course: &Course) -> bool {
        !self.is_private() && self.wanted.is_none_or(|wanted| wanted(course))
    }

    /// Whether it holds what students have said in confidence: then it is printed only when a
    /// person names it.
    pub fn is_private(&self) -> bool {
        self.name == CONTACTS
    }
}

/// The one document that private notes stand on.
const CONTACTS: &str = "contacts-sheet";

/// How much of the plan of this course its pages tell: what could be done otherwise only once
/// something has been built.
pub fn asked_by_pages(file: &CourseFile) -> Asked {
    if file.course.running.progress.is_empty() {
        Asked::Figures
    } else {
        Asked::Advice
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
        name: "joining-letter",
        title: "Joining letter",
        what: "What each student has to know beforehand: where, when, what to bring and what the days are like",
        template: "joining-letter.typ",
        feed: feed::joining_letter,
        wanted: None,
    },
    Document {
        name: "fitness-declaration",
        title: "Fitness to take part",
        what: "For each student to read, think about and sign; under 18 with a parent or guardian",
        template: "fitness-declaration.typ",
        feed: feed::fitness_declaration,
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
        name: "site-card",
        title: "Site card",
        what: "The whole setting-out on one page, to be laminated and read at the wall",
        template: "site-card.typ",
        feed: feed::site_card,
        wanted: None,
    },
    Document {
        name: "frame-card",
        title: "Frame card",
        what: "How one frame is put together and checked, with its parts and its figures",
        template: "frame-card.typ",
        feed: feed::frame_card,
        wanted: None,
    },
    Document {
        name: "register",
        title: "Register",
        what: "Who is there, from when until when, and which protective gear they were given, day by day",
        template: "register.typ",
        feed: feed::register,
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
        name: "stints-poster",
        title: "Stints poster",
        what: "Who builds where, day by day, to be read from three metres away",
        template: "stints-poster.typ",
        feed: feed::stints_poster,
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
        name: "inspection-sheet",
        title: "Inspection sheet",
        what: "What to look for before coping, bay by bay, and how to mend it",
        template: "inspection-sheet.typ",
        feed: feed::inspection_sheet,
        wanted: None,
    },
    Document {
        name: "risk-assessment",
        title: "Risk assessment",
        what: "The hazards of this course with their controls, to be finished on the site",
        template: "risk-assessment.typ",
        feed: feed::risk_assessment,
        wanted: None,
    },
    Document {
        name: "safety-briefing",
        title: "Safety briefing",
        what: "Ten minutes for the instructor to read out before the first stone",
        template: "safety-briefing.typ",
        feed: feed::safety_briefing,
        wanted: None,
    },
    Document {
        name: "emergency-sheet",
        title: "Emergency sheet",
        what: "One sheet for the site: the number to ring, where this is, what to say, and first aid until help comes",
        template: "emergency-sheet.typ",
        feed: feed::emergency_sheet,
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
        name: "lesson-cards",
        title: "Lesson cards",
        what: "For the instructor: what to show, what goes wrong, what to ask, a lesson to a page",
        template: "lesson-cards.typ",
        feed: feed::lesson_cards,
        wanted: None,
    },
    Document {
        name: "lesson-handouts",
        title: "Lesson handouts",
        what: "For students: each lesson with its drawing, its mistakes, and questions to answer",
        template: "lesson-handouts.typ",
        feed: feed::lesson_handouts,
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
        name: "attendance-slip",
        title: "Attendance slips",
        what: "For each student to take home: dates, hours and what was practised; no qualification",
        template: "attendance-slip.typ",
        feed: feed::attendance_slip,
        wanted: None,
    },
    Document {
        name: "feedback-sheet",
        title: "Feedback sheet",
        what: "Ten questions about the course, without a name; copy it for everyone",
        template: "feedback-sheet.typ",
        feed: feed::feedback_sheet,
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
    Document {
        name: CONTACTS,
        title: "Contacts and medical notes",
        what: "PRIVATE: whom to ring for each student and what to know; printed only when named, destroyed afterwards",
        template: "contacts-sheet.typ",
        feed: feed::contacts_sheet,
        wanted: None,
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
