//! What is dropped onto the window: a course, a kit list, a pace book, a list of people, or nothing known. Only what
//! was dropped is read.

use crate::desk::{Desk, Error};
use crate::shown::trouble;
use files::{course, roster};
use shapes::window::{Dropped, RosterPreview, Trouble};
use std::path::{Path, PathBuf};

/// What right would be.
const KNOWN: &str = "Drop a course (.walling), a kit list or a list of people (.csv or .xlsx) or a pace book (.csv), one file at a time.";

impl Desk {
    /// What some dropped files are; nothing is changed yet.
    pub(crate) fn dropped(&mut self, paths: &[PathBuf]) -> Dropped {
        let [path] = paths else {
            return Dropped::Refused(unknown(format!(
                "{} files at once are too many.",
                paths.len()
            )));
        };
        let ending = path
            .extension()
            .map(|it| it.to_string_lossy().to_lowercase());
        match ending.as_deref() {
            Some("walling") => Dropped::Course,
            Some("csv" | "xlsx") => self
                .dropped_list(path)
                .unwrap_or_else(|error| Dropped::Refused(trouble(error))),
            _ => Dropped::Refused(unknown(format!("{} is nothing known here.", name(path)))),
        }
    }

    fn dropped_list(&mut self, path: &Path) -> Result<Dropped, Error> {
        let rows = store::rows_of(path)?;
        if store::is_kit_list(&rows) {
            return Ok(Dropped::KitList(self.look_at_kit_list(path)?));
        }
        if store::is_pace_book(&rows) {
            return Ok(Dropped::PaceBook(self.look_at_pace_file(path)?));
        }
        if !roster::has_heading(&rows) && roster::read(&rows).is_err() {
            let what = format!(
                "{} is neither a kit list nor a pace book nor a list of people.",
                name(path)
            );
            return Ok(Dropped::Refused(unknown(format!(
                "{what} A kit list has the headings Item and Good, a pace book Stage and Taken minutes, a list of people Name."
            ))));
        }
        // A tab behind the last cell makes a single column cells as well, whatever commas are in it.
        let line = |row: &Vec<String>| row.iter().map(|it| flat(it) + "\t").collect::<String>();
        let lines: Vec<String> = rows.iter().map(line).collect();
        Ok(Dropped::Roster(lines.join("\n")))
    }

    /// What taking in a pasted list of people would change.
    pub(crate) fn look_at_roster(&self, pasted: &str) -> Result<RosterPreview, Error> {
        let people = people(pasted)?;
        let all = roster::compared(self.text(), &people);
        Ok(RosterPreview {
            added: all.added,
            changed: all.changed,
            same: all.same,
            not_in_list: all.not_in_list,
        })
    }

    /// Takes in a pasted list of people; `whole`: who is not in it goes.
    pub(crate) fn take_in_roster(&mut self, pasted: &str, whole: bool) -> Result<(), Error> {
        let text = course::take_in_roster(self.text(), &people(pasted)?, whole)?;
        self.change(text)
    }
}

fn people(pasted: &str) -> Result<Vec<roster::Named>, Error> {
    roster::read(&roster::cells(pasted)).map_err(Error::NotARoster)
}

fn unknown(what: String) -> Trouble {
    Trouble {
        code: "dropped".to_owned(),
        key: String::new(),
        what,
        cure: KNOWN.to_owned(),
    }
}

fn name(path: &Path) -> String {
    let name = path.file_name().unwrap_or(path.as_os_str());
    name.to_string_lossy().into_owned()
}

/// A cell on one line, without a tab of its own.
fn flat(cell: &str) -> String {
    cell.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use files::Library;

    fn desk() -> (tempfile::TempDir, Desk) {
        let folder = tempfile::tempdir().expect("a folder");
        let desk = Desk::set_up(None, &folder.path().join("store")).expect("opens");
        (folder, desk)
    }

    #[test]
    fn a_dropped_file_is_known_by_what_is_in_it() {
        let (folder, mut desk) = desk();
        let mut dropped = |name: &str, content: &str| {
            let path = folder.path().join(name);
            std::fs::write(&path, content).expect("writes");
            desk.dropped(&[path])
        };
        assert!(matches!(dropped("a.walling", ""), Dropped::Course));
        assert!(
            matches!(dropped("kit.csv", "Item,Good\nSpade,4\n"), Dropped::KitList(it) if it.added.len() == 1)
        );
        let Dropped::Roster(pasted) =
            dropped("names.CSV", "Name,Experience\n\"Ash, Ann\",novice\nBen,\n")
        else {
            panic!("a list of people");
        };
        assert!(matches!(
            dropped("one.csv", "Ann\nBen\n"),
            Dropped::Roster(_)
        ));
        for (name, content) in [("a.pdf", "x"), ("bad.csv", "a,b\nc,d\n"), ("bad.xlsx", "x")] {
            assert!(
                matches!(dropped(name, content), Dropped::Refused(it) if !it.what.is_empty()),
                "{name}"
            );
        }
        assert!(matches!(desk.dropped(&[]), Dropped::Refused(_)));
        let preview = desk.look_at_roster(&pasted).expect("a list");
        assert_eq!(preview.added, ["Ash, Ann, novice", "Ben, novice"]);
    }

    #[test]
    fn a_pasted_roster_is_taken_in_and_undone() {
        let (_folder, mut desk) = desk();
        let pasted: String = (0..300)
            .map(|at| format!("Person {at}\timprover\n"))
            .collect();
        assert_eq!(
            desk.look_at_roster(&pasted).expect("a list").added.len(),
            300
        );
        desk.take_in_roster(&pasted, true).expect("takes it in");
        assert_eq!(desk.view().students.len(), 300);
        desk.undo().expect("undoes");
        assert_eq!(desk.text(), Library::example(false));
        let refused = desk
            .take_in_roster("Ann, mason", true)
            .expect_err("no experience");
        assert!(trouble(refused).cure.contains("row 1"));
    }
}
