//! A folder to work in, with a course file in it.

use checks::program::{Ran, run};
use std::path::{Path, PathBuf};

/// A folder that goes away with the check.
pub struct Desk {
    folder: tempfile::TempDir,
}

impl Desk {
    pub fn new() -> Self {
        Self {
            folder: tempfile::tempdir().expect("a folder"),
        }
    }

    /// A desk with one course file on it.
    pub fn with_course(text: &str) -> Self {
        let desk = Self::new();
        std::fs::write(desk.course(), text).expect("the course is written");
        desk
    }

    pub fn path(&self) -> &Path {
        self.folder.path()
    }

    pub fn file(&self, name: &str) -> PathBuf {
        self.path().join(name)
    }

    pub fn course(&self) -> PathBuf {
        self.file("course.walling")
    }

    /// Puts a file under the desk, folders and all.
    pub fn put(&self, name: &str, text: &str) -> PathBuf {
        let path = self.file(name);
        std::fs::create_dir_all(path.parent().expect("a folder")).expect("the folder is made");
        std::fs::write(&path, text).expect("the file is written");
        path
    }

    /// Runs `coursewright CALL course.walling REST`.
    pub fn call(&self, call: &str, rest: &[&str]) -> Ran {
        let course = self.course().display().to_string();
        let mut all = vec![call, &*course];
        all.extend(rest);
        run(&all)
    }

    /// The names of all files here, folders left out.
    pub fn names(&self) -> Vec<String> {
        names(self.path())
    }
}

/// The names of all files in a folder.
pub fn names(folder: &Path) -> Vec<String> {
    let mut names: Vec<String> = std::fs::read_dir(folder)
        .expect("a folder")
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.is_file())
        .filter_map(|path| Some(path.file_name()?.to_str()?.to_owned()))
        .collect();
    names.sort();
    names
}

/// A course with nothing left to do: sorted stone enough, frames enough, no tools counted
/// short, and time to spare.
pub fn ready() -> String {
    let stone = "on_site = { footing = \"9 t\", face = \"20 t\", hearting = \"9 t\", \
                 throughs = \"3 t\", copes = \"5 t\" }";
    checks::courses::with(&[
        ("on_site = \"4 t\"", stone),
        ("\"6 m\"", "\"1 m\""),
        ("novices = 6\nimprovers = 2", "experienced = 8"),
        ("experienced = 0\n\n", "\n"),
        ("\"Walling hammer\" = 20", "\"Walling hammer\" = 40"),
    ])
}
