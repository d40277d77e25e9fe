//! What others do to the file of the open course: a sync folder, an editor, somebody who tidies.
//!
//! The file is looked at on a timer and whenever the window comes to the front: its time and size,
//! and its content where those have changed. The system's own notices of changes were not taken:
//! network drives and sync folders do not send them, and a file put in place of another slips from
//! under them. One look costs some microseconds.

use std::path::{Path, PathBuf};
use std::time::SystemTime;
use std::{fs, io};

/// A file that is put anew is missing for a moment: it is gone when it has been missed so often.
const LOOKS_UNTIL_GONE: u8 = 3;

/// What the disk holds in place of the file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Found {
    Content(Vec<u8>),
    Nothing,
}

/// Where the file on the disk stands against what the desk knows of it.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(crate) enum Outside {
    /// As the desk knows it.
    #[default]
    Same,
    /// Another program has put this there.
    Changed(Vec<u8>),
    /// Another program has put this there, and the person keeps their own.
    Mine(Vec<u8>),
    /// There is no file any more.
    Gone,
}

impl Outside {
    /// Where it stands after another look. `known` is what the desk last read or wrote.
    pub(crate) fn after(self, found: Found, known: Option<&str>) -> Self {
        match found {
            // A course that has never been read or written has no file to miss.
            Found::Nothing if known.is_none() => Self::Same,
            Found::Nothing => Self::Gone,
            Found::Content(it) if known.is_some_and(|known| known.as_bytes() == it) => Self::Same,
            Found::Content(it) => match self {
                Self::Mine(before) if before == it => Self::Mine(it),
                _ => Self::Changed(it),
            },
        }
    }

    /// What another program has put there.
    pub(crate) fn theirs(&self) -> Option<&[u8]> {
        match self {
            Self::Changed(theirs) | Self::Mine(theirs) => Some(theirs),
            Self::Same | Self::Gone => None,
        }
    }

    /// As the window is told.
    pub(crate) fn shape(&self) -> shapes::window::Outside {
        match self {
            Self::Same => shapes::window::Outside::Same,
            Self::Changed(_) => shapes::window::Outside::Changed,
            Self::Mine(_) => shapes::window::Outside::Mine,
            Self::Gone => shapes::window::Outside::Gone,
        }
    }
}

/// What the disk holds at a path.
pub(crate) fn look(path: &Path) -> io::Result<Found> {
    match fs::read(path) {
        Ok(content) => Ok(Found::Content(content)),
        Err(wrong) if wrong.kind() == io::ErrorKind::NotFound => Ok(Found::Nothing),
        Err(wrong) => Err(wrong),
    }
}

/// Looks at one file again and again, and reads it only when it seems to have changed.
#[derive(Default)]
pub(crate) struct Watch {
    path: PathBuf,
    seen: Option<Stamp>,
    missed: u8,
}

/// What shows without reading that a file may be another.
type Stamp = (Option<SystemTime>, u64);

impl Watch {
    /// What is new at a path since the last look; `thoroughly`: whatever time and size say.
    pub(crate) fn look(&mut self, path: &Path, thoroughly: bool) -> Option<Found> {
        if self.path != path {
            *self = Self {
                path: path.to_owned(),
                ..Self::default()
            };
        }
        let stamp = match fs::metadata(path) {
            Ok(about) => (about.modified().ok(), about.len()),
            Err(wrong) if wrong.kind() == io::ErrorKind::NotFound => return self.missed(),
            // A drive that can't be asked just now tells nothing.
            Err(_) => return None,
        };
        self.missed = 0;
        if self.seen == Some(stamp) && !thoroughly {
            return None;
        }
        let found = look(path).ok()?;
        self.seen = Some(stamp);
        Some(found)
    }

    fn missed(&mut self) -> Option<Found> {
        self.seen = None;
        self.missed = self.missed.saturating_add(1);
        (self.missed == LOOKS_UNTIL_GONE).then_some(Found::Nothing)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn content(text: &str) -> Found {
        Found::Content(text.as_bytes().to_vec())
    }

    #[test]
    fn only_what_the_desk_does_not_know_is_a_change() {
        let [ours, theirs, third] = ["ours", "theirs", "third"].map(|it| move || content(it));
        let known = Some("ours");
        let same = Outside::Same.after(ours(), known);
        assert_eq!(same, Outside::Same);
        let changed = same.after(theirs(), known);
        assert_eq!(changed, Outside::Changed(b"theirs".to_vec()));
        assert_eq!(changed.clone().after(ours(), known), Outside::Same);
        assert_eq!(changed.after(Found::Nothing, known), Outside::Gone);
        assert_eq!(Outside::Gone.after(ours(), known), Outside::Same);

        let mine = Outside::Mine(b"theirs".to_vec());
        assert_eq!(mine.clone().after(theirs(), known), mine);
        let again = mine.after(third(), known);
        assert_eq!(again, Outside::Changed(b"third".to_vec()), "told again");
    }

    #[test]
    fn a_file_is_read_when_it_has_changed_and_when_it_is_asked_for() {
        let folder = tempfile::tempdir().expect("a folder");
        let path = folder.path().join("one.walling");
        fs::write(&path, "ours").expect("writes");
        let mut watch = Watch::default();
        assert_eq!(watch.look(&path, false), Some(content("ours")));
        assert_eq!(watch.look(&path, false), None);
        fs::write(&path, "theirs").expect("writes");
        assert_eq!(watch.look(&path, false), Some(content("theirs")));
        assert_eq!(watch.look(&path, true), Some(content("theirs")));
    }

    /// A program that puts another file in the place of the old one, with its time.
    #[test]
    fn a_file_put_in_place_of_another_is_noticed() {
        let folder = tempfile::tempdir().expect("a folder");
        let path = folder.path().join("one.walling");
        fs::write(&path, "ours").expect("writes");
        let mut watch = Watch::default();
        watch.look(&path, false);
        let beside = folder.path().join("beside");
        fs::write(&beside, "longer than ours").expect("writes");
        let long_ago = fs::FileTimes::new().set_modified(SystemTime::UNIX_EPOCH);
        let file = fs::File::options().write(true).open(&beside);
        file.and_then(|file| file.set_times(long_ago))
            .expect("sets its time");
        fs::rename(&beside, &path).expect("renames");
        assert_eq!(watch.look(&path, false), Some(content("longer than ours")));
    }

    #[test]
    fn a_file_is_gone_when_it_has_been_missed_for_a_while() {
        let folder = tempfile::tempdir().expect("a folder");
        let path = folder.path().join("one.walling");
        fs::write(&path, "ours").expect("writes");
        let mut watch = Watch::default();
        watch.look(&path, false);
        fs::remove_file(&path).expect("deletes");
        let looks: Vec<_> = (0..5).map(|_| watch.look(&path, false)).collect();
        assert_eq!(looks, [None, None, Some(Found::Nothing), None, None]);
        fs::write(&path, "ours").expect("writes");
        assert_eq!(watch.look(&path, false), Some(content("ours")));
    }
}
