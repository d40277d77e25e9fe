//! The calendar on disk: over an older one of ours, never over anything else.

use super::{Calendar, WRITER};
use files::Error;
use std::fs::File;
use std::io::{self, Read};
use std::path::Path;

/// The first lines of our own files end well within so many bytes.
const HEAD: u64 = 300;

/// Saves a calendar. A slip in the name must not cost anybody a file, so only a calendar that
/// this program wrote is replaced.
///
/// # Errors
/// [`Error::Exists`] if something else is there; [`Error::Read`] if what is there can't be looked
/// at; [`Error::Write`]. What was there before is whole.
pub fn save(path: &Path, calendar: &Calendar) -> Result<(), Error> {
    let content = calendar.text.as_bytes();
    match ours(path) {
        Ok(true) => files::save(path, content),
        Ok(false) => Err(Error::Exists {
            path: path.to_owned(),
        }),
        Err(cause) if cause.kind() == io::ErrorKind::NotFound => files::save_new(path, content),
        Err(cause) => Err(Error::Read {
            path: path.to_owned(),
            cause,
        }),
    }
}

/// Whether the file there is a calendar of ours.
fn ours(path: &Path) -> io::Result<bool> {
    let mut head = Vec::new();
    File::open(path)?.take(HEAD).read_to_end(&mut head)?;
    let head = String::from_utf8_lossy(&head);
    let mut lines = head.lines();
    Ok(lines.next() == Some("BEGIN:VCALENDAR")
        && lines.any(|line| line.strip_prefix("PRODID:") == Some(WRITER)))
}
