//! The courses opened lately: a small list beside the instructor's store, newest first.

use std::path::{Path, PathBuf};
use toml_edit::{ArrayOfTables, DocumentMut, Item, Table, value};

/// So many are remembered: a few years of courses.
const MOST: usize = 40;

const ABOUT: &str = "# The courses opened lately, newest first. Coursewright writes this list; \
taking a course off it leaves the course's own file alone.\n";

/// A course that was opened, as it was then: a file that has moved can still be named.
#[derive(Debug, Clone, PartialEq, Eq)]
#[allow(missing_docs)]
pub struct Recent {
    pub path: PathBuf,
    pub title: String,
    pub place: String,
    /// In words, as the course's language writes dates.
    pub dates: String,
}

/// The list, newest first.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct RecentList {
    /// The courses.
    pub courses: Vec<Recent>,
}

impl RecentList {
    /// The list in a text; nothing if it is no such list. An entry without a path is passed over.
    pub fn parse(text: &str) -> Option<Self> {
        let document: DocumentMut = text.parse().ok()?;
        let courses = match document.get("course") {
            None => Vec::new(),
            Some(item) => item
                .as_array_of_tables()?
                .iter()
                .filter_map(recent)
                .collect(),
        };
        Some(Self { courses })
    }

    /// The list as a text. A path that is no Unicode text is left out: TOML has no words for it.
    pub fn to_text(&self) -> String {
        let mut rows = ArrayOfTables::new();
        for course in &self.courses {
            let Some(path) = course.path.to_str() else {
                continue;
            };
            let mut row = Table::new();
            row.insert("path", value(path));
            row.insert("title", value(&course.title));
            row.insert("place", value(&course.place));
            row.insert("dates", value(&course.dates));
            row.decor_mut().set_prefix("\n");
            rows.push(row);
        }
        let mut document = DocumentMut::new();
        document.insert("course", Item::ArrayOfTables(rows));
        format!("{ABOUT}{document}")
    }

    /// Puts a course first; it stands there once.
    pub fn put_first(&mut self, course: Recent) {
        self.take_off(&course.path);
        self.courses.insert(0, course);
        self.courses.truncate(MOST);
    }

    /// Takes a course off the list.
    pub fn take_off(&mut self, path: &Path) {
        self.courses.retain(|it| it.path != path);
    }
}

fn recent(row: &Table) -> Option<Recent> {
    let text = |key: &str| row.get(key).and_then(Item::as_str).map(str::to_owned);
    Some(Recent {
        path: text("path").filter(|it| !it.is_empty())?.into(),
        title: text("title").unwrap_or_default(),
        place: text("place").unwrap_or_default(),
        dates: text("dates").unwrap_or_default(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn course(path: &str, title: &str) -> Recent {
        Recent {
            path: path.into(),
            title: title.to_owned(),
            place: "Thorn \"Beck\"".to_owned(),
            dates: "24 and 25 April 2027".to_owned(),
        }
    }

    #[test]
    fn the_list_is_read_as_it_was_written() {
        let mut list = RecentList::default();
        assert_eq!(RecentList::parse(&list.to_text()), Some(list.clone()));
        list.put_first(course("/a b/one.walling", "One"));
        list.put_first(course("/two.walling", "Two"));
        let text = list.to_text();
        assert!(text.starts_with("# "), "{text}");
        assert_eq!(RecentList::parse(&text), Some(list));
    }

    #[test]
    fn a_course_stands_there_once_with_its_newest_name() {
        let mut list = RecentList::default();
        for (path, title) in [("/one", "One"), ("/two", "Two"), ("/one", "Eins")] {
            list.put_first(course(path, title));
        }
        let titles: Vec<&str> = list.courses.iter().map(|it| it.title.as_str()).collect();
        assert_eq!(titles, ["Eins", "Two"]);
        list.take_off(Path::new("/one"));
        assert_eq!(list.courses.len(), 1);
        for number in 0..100 {
            list.put_first(course(&format!("/{number}"), "Many"));
        }
        assert_eq!(list.courses.len(), MOST);
    }

    #[test]
    fn what_is_no_list_is_none() {
        assert_eq!(RecentList::parse("course = 3"), None);
        assert_eq!(RecentList::parse("[[course"), None);
        let some =
            RecentList::parse("[[course]]\ntitle = \"no path\"\n[[course]]\npath = \"/a\"\n");
        assert_eq!(some.expect("a list").courses.len(), 1);
    }
}
