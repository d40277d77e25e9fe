//! What the checks work with: a folder, lots, courses, dates.

use chrono::NaiveDate;
use std::path::{Path, PathBuf};
use store::{CourseEntry, KitList, Lot, Mode, Store};
use tempfile::TempDir;

/// A folder that is gone afterwards.
pub(crate) struct Desk {
    folder: TempDir,
}

impl Desk {
    pub(crate) fn new() -> Self {
        Self {
            folder: tempfile::tempdir().expect("a folder"),
        }
    }

    pub(crate) fn path(&self) -> &Path {
        self.folder.path()
    }

    pub(crate) fn file(&self, name: &str) -> PathBuf {
        self.path().join(name)
    }

    pub(crate) fn put(&self, name: &str, content: impl AsRef<[u8]>) -> PathBuf {
        let path = self.file(name);
        std::fs::write(&path, content).expect("a file");
        path
    }

    pub(crate) fn store(&self) -> Store {
        let store = Store::open(self.path()).expect("a store");
        assert_eq!(store.notice(), None);
        store
    }

    /// A store with these lots.
    pub(crate) fn with(&self, lots: &[Lot]) -> Store {
        let mut store = self.store();
        for lot in lots {
            store.add_lot(lot).expect("a lot");
        }
        store
    }

    /// A course whose file would be in this folder.
    pub(crate) fn course(&self, title: &str, days: &[NaiveDate]) -> CourseEntry {
        CourseEntry {
            path: self.file(&format!("{title}.walling")),
            title: title.to_owned(),
            days: days.to_vec(),
        }
    }

    /// What a file is refused with, without the folder's name.
    pub(crate) fn refusal(&self, name: &str, content: impl AsRef<[u8]>) -> String {
        let path = self.put(name, content);
        let refused = KitList::read(&path).map(|list| list.lots().to_vec());
        self.words(&refused.expect_err(name).to_string())
    }

    /// Words without the folder's name.
    pub(crate) fn words(&self, text: &str) -> String {
        text.replace(&format!("{}/", self.path().display()), "")
            .replace(&self.path().display().to_string(), "FOLDER")
    }

    /// The lots of a sound file.
    pub(crate) fn list(&self, name: &str, content: impl AsRef<[u8]>) -> Vec<Lot> {
        let path = self.put(name, content);
        let list = KitList::read(&path).unwrap_or_else(|refused| panic!("{refused}"));
        list.lots().to_vec()
    }

    pub(crate) fn import(&self, store: &mut Store, text: &str, mode: Mode) {
        let list = KitList::read(&self.put("kit.csv", text)).expect("a sound list");
        let preview = store.preview(&list).expect("a preview");
        store.apply(&preview, mode).expect("taken in");
    }
}

/// A day of April 2027.
pub(crate) fn april(day: u32) -> NaiveDate {
    NaiveDate::from_ymd_opt(2027, 4, day).expect("a date")
}

/// So many good ones of the instructor's own.
pub(crate) fn lot(item: &str, good: u32) -> Lot {
    Lot {
        item: item.to_owned(),
        good,
        ..Lot::default()
    }
}

pub(crate) fn owned(item: &str, owner: &str, [good, care, broken]: [u32; 3]) -> Lot {
    Lot {
        owner: owner.to_owned(),
        care,
        broken,
        ..lot(item, good)
    }
}

pub(crate) fn items(items: &[(&str, u32)]) -> Vec<(String, u32)> {
    let items = items.iter();
    items
        .map(|(item, count)| ((*item).to_owned(), *count))
        .collect()
}
