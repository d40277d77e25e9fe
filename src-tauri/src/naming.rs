//! What a course's file may be called, where the person says nothing else.

use crate::desk::Desk;
use std::path::Path;

/// Letters of a name that still reads well in a list of files.
const MOST: usize = 60;

impl Desk {
    /// The name of the file it has, or one made of its title; without the ending.
    pub(crate) fn name_to_save(&self) -> String {
        let stem = self.path().and_then(Path::file_stem);
        stem.map_or_else(
            || from_title(&self.course.file.course.title),
            |it| it.to_string_lossy().into_owned(),
        )
    }
}

/// `Hollin Bank, June 2028` as `hollin-bank-june-2028`.
fn from_title(title: &str) -> String {
    let title = title.to_lowercase().replace(['\'', '\u{2019}'], "");
    let mut name = String::new();
    for word in title.split(|sign: char| !sign.is_alphanumeric()) {
        let longer = name.chars().count() + word.chars().count();
        if word.is_empty() || (MOST <= longer && !name.is_empty()) {
            continue;
        }
        if !name.is_empty() {
            name.push('-');
        }
        name.extend(word.chars().take(MOST));
    }
    if name.is_empty() {
        "course".to_owned()
    } else {
        name
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_title_makes_a_name_that_every_system_takes() {
        for (title, name) in [
            ("Hollin Bank, June 2028", "hollin-bank-june-2028"),
            ("  Walls & gaps: 1/2 ", "walls-gaps-1-2"),
            ("O'Brien's wall", "obriens-wall"),
            ("Trockenmauer \u{dc}bung", "trockenmauer-\u{fc}bung"),
            ("../../etc", "etc"),
            ("CON?*|<>", "con"),
            ("", "course"),
            ("\u{1F9F1}", "course"),
        ] {
            assert_eq!(from_title(title), name);
        }
        assert!(from_title(&"long ".repeat(40)).chars().count() <= MOST);
        assert_eq!(from_title(&"x".repeat(400)).chars().count(), MOST);
    }

    #[test]
    fn a_course_that_has_a_file_keeps_its_name() {
        let folder = tempfile::tempdir().expect("a folder");
        let new = Desk::set_up(None, folder.path()).expect("opens");
        assert_eq!(
            new.name_to_save(),
            from_title(&new.course.file.course.title)
        );
        let path = folder.path().join("My walls.walling");
        std::fs::write(&path, files::Library::example(false)).expect("writes");
        let open = Desk::set_up(Some(path), folder.path()).expect("opens");
        assert_eq!(open.name_to_save(), "My walls");
    }
}
