//! A whole pack printed into a folder.

use crate::made::{Made, Replaced, Tried, each, printed};
use crate::{Course, Document};
use press::{Press, Printed};
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
#[derive(Debug, Default)]
pub struct Pack {
    /// The files written.
    pub files: Vec<PathBuf>,
    /// How many pages are in them.
    pub pages: usize,
    /// Characters that could not be printed as typed, each once.
    pub unprintable: Vec<char>,
    /// Documents printed from the built-in template, because the instructor's own is broken.
    pub replaced: Vec<Replaced>,
    /// Files that could not be written, as when another program holds them open.
    pub unsaved: Vec<files::Error>,
}

/// Prints documents into a folder, which is made if it is not there, in the edition of the
/// course, several at a time. `done` is told of each in their order with how many pages it has,
/// and answers whether to go on. A file that can't be written does not keep the others from being
/// printed.
///
/// # Errors
/// Any [`Error`], as where not one file could be written; pages that were there before are
/// whole.
pub fn pack(
    course: &Course,
    documents: &[&Document],
    press: &Press,
    folder: &Path,
    mut done: impl FnMut(&Document, usize) -> bool,
) -> Result<Pack, Error> {
    std::fs::create_dir_all(folder).map_err(|cause| Error::Folder {
        path: folder.to_owned(),
        cause,
    })?;
    let mut pack = Pack::default();
    let set = |document: &Document, tried: &Tried| printed(course, document, press, tried);
    each(documents, set, |document, made| {
        let pages = made.made.pages;
        let name = course.edition.file_name(document.name);
        pack.take(made, folder.join(name));
        done(document, pages)
    })?;
    if pack.files.is_empty() && !pack.unsaved.is_empty() {
        return Err(pack.unsaved.swap_remove(0).into());
    }
    Ok(pack)
}

impl Pack {
    fn take(&mut self, made: Made<Printed>, path: PathBuf) {
        match files::save(&path, &made.made.pdf) {
            Ok(()) => {
                self.files.push(path);
                self.pages += made.made.pages;
            }
            Err(unsaved) => self.unsaved.push(unsaved),
        }
        self.replaced.extend(made.replaced);
        for unprintable in made.made.unprintable {
            if !self.unprintable.contains(&unprintable) {
                self.unprintable.push(unprintable);
            }
        }
    }
}
