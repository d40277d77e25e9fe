//! Printing: one document as a PDF, or a whole pack into a folder.

use crate::{Course, Document};
use press::{Job, Press, Printed};
use std::path::{Path, PathBuf};

/// Why a page could not be made.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum Error {
    /// The press refused a template.
    #[error("{document}: {cause}")]
    Press {
        /// The document's name.
        document: &'static str,
        /// What the press says.
        cause: press::Error,
    },
    /// A page could not be saved.
    #[error(transparent)]
    Save(#[from] files::Error),
    /// The folder can't be made.
    #[error("{}: this folder can't be made: {cause}. Choose another.", path.display())]
    Folder {
        /// The folder.
        path: PathBuf,
        /// What the system says.
        cause: std::io::Error,
    },
}

impl Error {
    /// A short, fixed name for programs. Never changes once shipped.
    pub fn code(&self) -> &'static str {
        match self {
            Self::Press { cause, .. } => cause.code(),
            Self::Save(cause) => cause.code(),
            Self::Folder { .. } => "can-not-make-folder",
        }
    }
}

/// A printed pack.
#[derive(Debug, Clone, Default)]
pub struct Pack {
    /// The files written.
    pub files: Vec<PathBuf>,
    /// Characters that could not be printed as typed, each once.
    pub unprintable: Vec<char>,
}

/// One document as a PDF.
///
/// # Errors
/// [`Error::Press`] if its template is broken.
pub fn print(course: &Course, document: &Document, press: &Press) -> Result<Printed, Error> {
    let feed = (document.feed)(course);
    let sources: Vec<(&str, &str)> = course
        .library
        .pages
        .iter()
        .map(|(name, text)| (name.as_str(), text.as_str()))
        .collect();
    let pictures: Vec<(&str, &str)> = feed
        .pictures
        .iter()
        .map(|(name, svg)| (*name, svg.as_str()))
        .collect();
    let job = Job {
        main: document.template,
        sources: &sources,
        data: &feed.data,
        pictures: &pictures,
    };
    press.pdf(&job).map_err(|cause| Error::Press {
        document: document.name,
        cause,
    })
}

/// Prints documents into a folder, which is made if it is not there. `done` is told of each
/// and answers whether to go on.
///
/// # Errors
/// Any [`Error`]; pages that were there before are whole.
pub fn pack(
    course: &Course,
    documents: &[&Document],
    press: &Press,
    folder: &Path,
    mut done: impl FnMut(&Document) -> bool,
) -> Result<Pack, Error> {
    std::fs::create_dir_all(folder).map_err(|cause| Error::Folder {
        path: folder.to_owned(),
        cause,
    })?;
    let mut pack = Pack::default();
    for document in documents {
        let printed = print(course, document, press)?;
        let path = folder.join(format!("{}.pdf", document.name));
        files::save(&path, &printed.pdf)?;
        pack.files.push(path);
        for unprintable in printed.unprintable {
            if !pack.unprintable.contains(&unprintable) {
                pack.unprintable.push(unprintable);
            }
        }
        if !done(document) {
            break;
        }
    }
    Ok(pack)
}
