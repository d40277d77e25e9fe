//! What can go wrong in printing a page, told so that the owner of a page template can mend it.

use serde::{Deserialize, Serialize};
use std::fmt;

/// Why a page could not be printed.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error, Serialize, Deserialize)]
#[non_exhaustive]
pub enum Error {
    /// The template to print is not among the files given.
    #[error(
        "The page template {name} is missing. If you keep your own copies of the templates, \
         put it back or remove them all; otherwise install the program again."
    )]
    NoTemplate {
        /// The file name of the template asked for.
        name: String,
    },

    /// A file was given under a name no file can have.
    #[error(
        "\"{name}\" can't be the name of a file for a page template. \
         Use a plain name such as setting-out.typ."
    )]
    BadName {
        /// The name given.
        name: String,
    },

    /// Two files were given under one name.
    #[error("Two of the files for one page are called {name}. Rename one of them.")]
    SameName {
        /// The name given twice.
        name: String,
    },

    /// Something no template and no data should bring about.
    #[error("This page can't be printed: {why}. This is a fault in the program: please report it.")]
    Fault {
        /// What went wrong.
        why: String,
    },

    /// A job done apart was stopped, because it took too long.
    #[error(
        "The page template {name} can't be used: after {seconds} seconds it was not done. Look \
         for a loop over a very long range, there or in a file it imports. {mend}",
        mend = MEND
    )]
    TooLong {
        /// The template that was to be printed.
        name: String,
        /// How long it was given.
        seconds: u64,
    },

    /// A job done apart was stopped, because it took too much memory.
    #[error(
        "The page template {name} can't be used: it took more than {megabytes} MB of memory. \
         Look for a list or a text that grows without end, there or in a file it imports. {mend}",
        mend = MEND
    )]
    TooLarge {
        /// The template that was to be printed.
        name: String,
        /// How much it was given.
        megabytes: u64,
    },

    /// A job done apart brought the typesetter down.
    #[error(
        "The page template {name} can't be used: the typesetter broke down over it. Look for a \
         list of many millions or something that holds itself, there or in a file it imports. \
         {mend}",
        mend = MEND
    )]
    BrokeDown {
        /// The template that was to be printed.
        name: String,
    },

    /// A template is wrong, or was given data it cannot use.
    #[error("{0}")]
    Template(Box<Flaw>),
}

/// What is wrong with a template, and where.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Flaw {
    /// The file that is wrong.
    pub file: String,
    /// The line, from 1, if one can be named.
    pub line: Option<usize>,
    /// The column in that line, from 1, in characters.
    pub column: Option<usize>,
    /// What is wrong, without a full stop.
    pub what: String,
    /// Where in the main template the faulty part was called from, when it is in another file.
    pub called_from: Option<String>,
    /// What might mend it.
    pub hints: Vec<String>,
}

const MEND: &str = "Is this your own copy? Mend it, or remove it: then the one that came with \
                    the program is used. If it is not yours, please report a fault.";

impl Error {
    /// Whether it was stopped, and so would take as long again.
    #[must_use]
    pub fn was_stopped(&self) -> bool {
        matches!(
            self,
            Self::TooLong { .. } | Self::TooLarge { .. } | Self::BrokeDown { .. }
        )
    }

    /// A short, fixed name for programs. It never changes once shipped.
    #[must_use]
    pub fn code(&self) -> &'static str {
        match self {
            Self::NoTemplate { .. } => "template-missing",
            Self::BadName { .. } => "template-file-name",
            Self::SameName { .. } => "template-same-name",
            Self::Fault { .. } => "print-fault",
            Self::TooLong { .. } => "template-too-long",
            Self::TooLarge { .. } => "template-too-large",
            Self::BrokeDown { .. } => "template-broke-down",
            Self::Template(_) => "template",
        }
    }
}

impl fmt::Display for Flaw {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "The page template {} can't be used: ", self.file)?;
        if let (Some(line), Some(column)) = (self.line, self.column) {
            write!(f, "line {line}, column {column}: ")?;
        }
        write!(f, "{}.", self.what)?;
        if let Some(from) = &self.called_from {
            write!(f, " It was called from {from}.")?;
        }
        for hint in &self.hints {
            write!(f, " Hint: {hint}.")?;
        }
        write!(f, " {MEND}")
    }
}
