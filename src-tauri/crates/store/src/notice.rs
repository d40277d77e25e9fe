//! Why a store can be read but not changed.

use std::path::PathBuf;

/// Why a store is open for reading only. Shown to the person as it stands.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum ReadOnly {
    /// A newer program has written it.
    #[error(
        "The kit store was written by a newer Coursewright (its version is {written}, this program knows {known}), so it is open for reading only. Use the newer program to change it."
    )]
    Newer {
        /// The version of the store.
        written: u32,
        /// The newest version this program knows.
        known: u32,
    },
    /// The file or its folder can't be written.
    #[error(
        "The kit store in {} can't be written, so it is open for reading only. Allow writing to that folder, or make room on its disk, to change it.", folder.display()
    )]
    NotWritable {
        /// The folder of the store.
        folder: PathBuf,
    },
    /// The caller asked for no more than reading.
    #[error("The kit store was opened for reading only.")]
    Asked,
}
