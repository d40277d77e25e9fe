//! A print that runs while the desk is free.

use crate::desk::Error;
use documents::{Course, Document, Pack, pack};
use press::Press;
use std::path::PathBuf;

/// A course to print as it was when the print was asked for.
pub(crate) struct PrintJob {
    pub(crate) course: Course,
    pub(crate) press: Press,
    pub(crate) folder: PathBuf,
}

impl PrintJob {
    /// Prints the documents of these names.
    pub(crate) fn run(&self, names: &[String]) -> Result<Pack, Error> {
        let chosen: Vec<&Document> = names
            .iter()
            .filter_map(|name| documents::named(name))
            .collect();
        Ok(pack(
            &self.course,
            &chosen,
            &self.press,
            &self.folder,
            |_| true,
        )?)
    }
}
