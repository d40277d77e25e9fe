//! What can go wrong in printing a page, told so that the owner of a page template can mend it.

use std::fmt;

/// Why a page could not be printed.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
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

    /// A template is wrong, or was given data it cannot use.
    #[error("{0}")]
    Template(Box<Flaw>),
}

/// What is wrong with a template, and where.
#[derive(Debug, Clone, PartialEq, Eq)]
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

const MEND: &str = "If this is your own copy, mend it, or remove it to go back to the one that \
                    came with the program; if it is not, please report a fault in the program.";

impl Error {
    /// A short, fixed name for programs. It never changes once shipped.
    #[must_use]
    pub fn code(&self) -> &'static str {
        match self {
            Self::NoTemplate { .. } => "template-missing",
            Self::BadName { .. } => "template-file-name",
            Self::SameName { .. } => "template-same-name",
            Self::Fault { .. } => "print-fault",
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
