//! What has been ticked off the load list of a course: kept in the data folder, for the course file is
//! the plan, and a tick of one morning is no part of it.

use crate::claim;
use crate::desk::{Desk, Error};
use serde::{Deserialize, Serialize};
use std::path::{Path, PathBuf};
use std::{fs, io};

/// Where the ticks lie in the data folder.
const FOLDER: &str = "ticks";
/// The form of a file of ticks.
const FORMAT: u32 = 1;

/// A file of ticks.
#[derive(Serialize, Deserialize)]
struct Ticks {
    format: u32,
    /// The lines that are ticked, as the window names them.
    ticked: Vec<String>,
}

impl Desk {
    /// The lines of the load list that are ticked. A course that was never saved has none, and what
    /// can't be read is ticked anew.
    pub(crate) fn ticks(&self) -> Vec<String> {
        let file = self.path().map(|course| file(&self.folder, course));
        let text = file.and_then(|file| fs::read(file).ok());
        let ticks: Option<Ticks> = text.and_then(|text| serde_json::from_slice(&text).ok());
        ticks
            .filter(|it| it.format == FORMAT)
            .map(|it| it.ticked)
            .unwrap_or_default()
    }

    /// Keeps the lines that are ticked; those of a course that was never saved last as long as the
    /// window.
    pub(crate) fn keep_ticks(&self, ticked: Vec<String>) -> Result<(), Error> {
        let Some(course) = self.path() else {
            return Ok(());
        };
        let file = file(&self.folder, course);
        if ticked.is_empty() {
            return match fs::remove_file(&file) {
                Err(error) if error.kind() != io::ErrorKind::NotFound => Err(not_kept(&error)),
                _ => Ok(()),
            };
        }
        let folder = file.parent().unwrap_or(&self.folder);
        fs::create_dir_all(folder).map_err(|error| not_kept(&error))?;
        let ticks = Ticks {
            format: FORMAT,
            ticked,
        };
        let content = serde_json::to_vec(&ticks).map_err(|error| not_kept(&error.into()))?;
        Ok(files::save(&file, &content)?)
    }
}

/// Named as the course's lock and its journal are.
fn file(data: &Path, course: &Path) -> PathBuf {
    let place = claim::place_of(course);
    data.join(FOLDER).join(format!("{place}.json"))
}

fn not_kept(error: &io::Error) -> Error {
    Error::Show(format!("the ticks of the load list can't be kept: {error}"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use files::Library;

    fn course(folder: &Path, name: &str) -> PathBuf {
        let path = folder.join(name);
        fs::write(&path, Library::example(false)).expect("a course");
        path
    }

    #[test]
    fn ticks_are_there_when_the_course_is_opened_again() {
        let folder = tempfile::tempdir().expect("a folder");
        let (data, path) = (
            folder.path().join("store"),
            course(folder.path(), "one.walling"),
        );
        let open = |path: &Path| Desk::set_up(Some(path.to_owned()), &data).expect("opens");
        let lines = vec![
            "1\nVan\nSpade\n4".to_owned(),
            "1\nVan\nBucket\n2".to_owned(),
        ];
        let desk = open(&path);
        assert!(desk.ticks().is_empty());
        desk.keep_ticks(lines.clone()).expect("kept");
        drop(desk);
        assert_eq!(open(&path).ticks(), lines);
        let other = course(folder.path(), "two.walling");
        assert!(open(&other).ticks().is_empty(), "each course has its own");
        let desk = open(&path);
        desk.keep_ticks(Vec::new()).expect("let go");
        desk.keep_ticks(Vec::new()).expect("nothing left to let go");
        assert!(open(&path).ticks().is_empty());
        let left = fs::read_dir(data.join(FOLDER)).expect("a folder").count();
        assert_eq!(left, 0, "nothing is left of an empty list");
    }

    #[test]
    fn what_can_not_be_read_or_was_never_saved_is_ticked_anew() {
        let folder = tempfile::tempdir().expect("a folder");
        let (data, path) = (
            folder.path().join("store"),
            course(folder.path(), "one.walling"),
        );
        let desk = Desk::set_up(Some(path.clone()), &data).expect("opens");
        desk.keep_ticks(vec!["1".to_owned()]).expect("kept");
        for broken in ["", "{\"format\": 2, \"ticked\": [\"1\"]}", "[]"] {
            fs::write(file(&data, &path), broken).expect("writes");
            assert!(desk.ticks().is_empty(), "{broken}");
        }
        let new = Desk::set_up(None, &data).expect("opens");
        new.keep_ticks(vec!["1".to_owned()])
            .expect("nothing to keep it by");
        assert!(new.ticks().is_empty());
    }
}
