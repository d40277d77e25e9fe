//! Why a file was refused or could not be read or written, for the person who has it.

use std::path::PathBuf;

/// A fault at a place in a text, before it is known which file the text came from.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// A short, fixed name for programs. Never changes once shipped.
    pub code: &'static str,
    /// The key at fault, as `wall.height`; empty for the text as a whole.
    pub key: String,
    /// Where, in bytes from the beginning.
    pub at: usize,
    /// What is wrong.
    pub what: String,
    /// What would be right.
    pub cure: String,
}

/// A fault in a file, with its line and column counted from 1.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{file}:{line}:{column}: {what}\n{cure}")]
pub struct Refusal {
    /// The file, as the person named it.
    pub file: String,
    /// The line.
    pub line: usize,
    /// The column, in characters.
    pub column: usize,
    /// A short, fixed name for programs.
    pub code: &'static str,
    /// The key at fault; empty for the file as a whole.
    pub key: String,
    /// What is wrong.
    pub what: String,
    /// What would be right.
    pub cure: String,
}

impl Fault {
    /// The fault in its file. `text` is what the place is counted in.
    pub fn in_file(self, file: &str, text: &str) -> Refusal {
        let (line, column) = place(text, self.at);
        Refusal {
            file: file.to_owned(),
            line,
            column,
            code: self.code,
            key: self.key,
            what: self.what,
            cure: self.cure,
        }
    }
}

/// Line and column of a byte, both counted from 1, columns in characters.
fn place(text: &str, at: usize) -> (usize, usize) {
    let mut at = at.min(text.len());
    while !text.is_char_boundary(at) {
        at -= 1;
    }
    let before = &text[..at];
    let line = before.matches('\n').count() + 1;
    let column = before
        .rsplit('\n')
        .next()
        .unwrap_or_default()
        .chars()
        .count()
        + 1;
    (line, column)
}

/// Everything that can go wrong with files.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum Error {
    /// The file's content is refused.
    #[error(transparent)]
    Refused(#[from] Box<Refusal>),
    /// The file can't be read.
    #[error("{}: can't be read: {cause}", path.display())]
    Read {
        /// The file.
        path: PathBuf,
        /// What the system says.
        cause: std::io::Error,
    },
    /// The instructor's own folder is not there.
    #[error(
        "{}: there is no such folder\nname the folder that holds your own lessons or your kit store, \
         or make it first; to plan with what came with the program, name none",
        path.display()
    )]
    NoFolder {
        /// The folder.
        path: PathBuf,
    },
    /// The file can't be written; what was there is whole.
    #[error("{}: can't be saved: {}. What was there before is unharmed.", path.display(), said(cause))]
    Write {
        /// The file.
        path: PathBuf,
        /// What the system says.
        cause: std::io::Error,
    },
    /// A new file was asked for where one is.
    #[error("{}: is there already and is not overwritten. Choose another name.", path.display())]
    Exists {
        /// The file.
        path: PathBuf,
    },
}

impl Error {
    /// A short, fixed name for programs. Never changes once shipped.
    pub fn code(&self) -> &'static str {
        match self {
            Self::Refused(refusal) => refusal.code,
            Self::Read { .. } => "can-not-read",
            Self::NoFolder { .. } => "no-folder",
            Self::Write { .. } => "can-not-save",
            Self::Exists { .. } => "exists",
        }
    }
}

impl From<Refusal> for Error {
    fn from(refusal: Refusal) -> Self {
        Self::Refused(Box::new(refusal))
    }
}

/// The system's word for what went wrong, with what to do where that is plain.
fn said(cause: &std::io::Error) -> String {
    match cause.kind() {
        std::io::ErrorKind::StorageFull => {
            "the disk is full; make room or save elsewhere".to_owned()
        }
        std::io::ErrorKind::PermissionDenied | std::io::ErrorKind::ReadOnlyFilesystem => {
            "writing is not allowed there; save elsewhere".to_owned()
        }
        std::io::ErrorKind::NotFound => "the folder does not exist".to_owned(),
        _ => cause.to_string(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn places_are_counted_from_one_in_characters() {
        let text = "a = 1\nü = \"é\"\n";
        assert_eq!(place(text, 0), (1, 1));
        assert_eq!(place(text, 6), (2, 1));
        assert_eq!(place(text, 12), (2, 6));
        assert_eq!(place(text, 999), (3, 1));
    }
}
