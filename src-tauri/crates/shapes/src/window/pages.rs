//! Documents as the window shows and prints them.

use super::Trouble;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// A document that can be printed.
#[derive(Debug, Clone, Serialize, TS)]
#[ts(rename = "DocumentName")]
pub struct Document {
    /// Its file's name without the ending.
    pub name: String,
    /// What a person reads.
    pub title: String,
    /// What it is for.
    pub what: String,
    /// It holds what students have said in confidence.
    pub private: bool,
    /// It belongs among the pages of this course: it begins ticked.
    pub wanted: bool,
}

/// In what size pages are wanted, and for whom.
#[derive(Debug, Clone, Default, PartialEq, Eq, Deserialize, TS)]
pub struct PagesAsked {
    /// 18 point and set anew.
    pub large_print: bool,
    /// Whose own pages, as places in the group from 0; null for everybody's.
    pub students: Option<Vec<usize>>,
}

/// One page of a document.
#[derive(Debug, Clone, Serialize, TS)]
pub struct PagePreview {
    /// The page. A part of it with the `data-place` `wall` leads to the questions it rests on.
    pub svg: String,
    /// The places its parts lead to, each once, in the order of the page.
    pub places: Vec<String>,
    /// Which page it is, from 1.
    pub page: usize,
    /// How many the document has.
    pub pages: usize,
    /// Only the piece of the document that the page belongs to was set, while somebody types: how
    /// many pages the others have is from before.
    pub alone: bool,
    /// What of the instructor's own could not be used.
    pub own: Vec<Trouble>,
}

/// How far a print has come.
#[derive(Debug, Clone, Serialize, TS)]
pub struct Printing {
    /// Which document is being set, from 1.
    pub at: usize,
    /// How many are to be printed.
    pub of: usize,
    /// Its title.
    pub title: String,
    /// How many pages the documents before it have together.
    pub pages: usize,
    /// How many of them are the last one's; 0 before the first.
    pub last: usize,
}

/// Documents that were printed.
#[derive(Debug, Clone, Serialize, TS)]
pub struct Printed {
    /// The folder they are in.
    pub folder: String,
    /// Their files' names.
    pub files: Vec<String>,
    /// How many pages are in them.
    pub pages: usize,
    /// How many were left when the print was stopped; 0 if all are there.
    pub left: usize,
    /// Characters that no bundled font holds, if any; a sign stands in their place.
    pub unprintable: String,
    /// What of the instructor's own could not be used.
    pub own: Vec<Trouble>,
}
