//! The desk and the pace book's file: looked at, taken in, written.

use crate::desk::{Desk, Error};
use shapes::Clock;
use shapes::window::PacePreview;
use std::path::Path;
use store::{PaceList, PaceRecord};

impl Desk {
    /// What taking in a pace book would change; kept until it is taken in, and nothing is changed yet.
    pub(crate) fn look_at_pace_file(&mut self, file: &Path) -> Result<PacePreview, Error> {
        let clock = self.clock();
        let kit = self.kit_to_change()?;
        let preview = kit.store.preview_pace(&PaceList::read(file)?)?;
        let told = |it: &PaceRecord| said(it, &clock);
        let shown = PacePreview {
            file: file
                .file_name()
                .map(|name| name.to_string_lossy().into_owned())
                .unwrap_or_default(),
            added: preview.added.iter().map(told).collect(),
            changed: preview
                .changed
                .iter()
                .map(|it| {
                    format!(
                        "{} (was: {})",
                        told(&it.after),
                        recorded(&it.before, &clock)
                    )
                })
                .collect(),
            same: preview.same.len(),
            not_in_file: preview.not_in_file.iter().map(told).collect(),
        };
        kit.pace_looked_at = Some(preview);
        Ok(shown)
    }

    /// Takes in the pace book that was looked at last; the open course is planned with it.
    pub(crate) fn take_in_pace_file(&mut self) -> Result<(), Error> {
        let kit = self.kit_to_change()?;
        let Some(preview) = kit.pace_looked_at.take() else {
            return Ok(());
        };
        kit.store.apply_pace(&preview)?;
        let text = self.text().to_owned();
        self.show(&text)?;
        Ok(())
    }

    /// Writes the pace book to a file the person has chosen.
    pub(crate) fn export_pace_book(&self, file: &Path) -> Result<(), Error> {
        PaceList::may_be_called(file)?;
        let content = self.kit_or_why()?.store.export_pace()?;
        Ok(files::save(file, &content)?)
    }
}

/// `Hollin Bank, 24 April 2027: 3 stages, recorded on 25 April 2027`
fn said(it: &PaceRecord, clock: &Clock) -> String {
    format!(
        "{}, {}: {}",
        it.record.course,
        clock.date(it.first_day),
        recorded(it, clock)
    )
}

fn recorded(it: &PaceRecord, clock: &Clock) -> String {
    let stages = match it.record.stages.len() {
        1 => "1 stage".to_owned(),
        many => format!("{many} stages"),
    };
    format!("{stages}, recorded on {}", clock.date(it.recorded_on))
}

#[cfg(test)]
mod tests {
    use crate::desk::Desk;
    use crate::shown::trouble;
    use shapes::window::Dropped;

    const BOOK: &str = "course,first day,recorded on,stage,usual minutes,taken minutes,course file\n\
        Hollin Bank,2026-04-25,2026-04-26,first-lift,200,300,/walls/hollin.walling\n";

    #[test]
    fn a_dropped_pace_book_is_looked_at_taken_in_and_written_again() {
        let folder = tempfile::tempdir().expect("a folder");
        let file = folder.path().join("pace.csv");
        std::fs::write(&file, BOOK).expect("writes");
        let mut desk = Desk::set_up(None, &folder.path().join("store")).expect("opens");
        let Dropped::PaceBook(preview) = desk.dropped(std::slice::from_ref(&file)) else {
            panic!("a pace book");
        };
        assert_eq!(
            preview.added,
            ["Hollin Bank, Sat 25 April 2026: 1 stage, recorded on Sun 26 April 2026"]
        );
        assert!(desk.pace_book().expect("a book").courses.is_empty());
        desk.take_in_pace_file().expect("takes it in");
        let book = desk.pace_book().expect("a book");
        assert_eq!(book.courses.len(), 1);
        assert!(!book.rates.is_empty());
        desk.take_in_pace_file().expect("nothing left to take in");
        let written = folder.path().join("written.csv");
        desk.export_pace_book(&written).expect("writes");
        let same = desk.look_at_pace_file(&written).expect("a book");
        assert_eq!((same.added.len(), same.changed.len(), same.same), (0, 0, 1));
        assert!(
            desk.export_pace_book(&folder.path().join("pace.xlsx"))
                .is_err()
        );
    }

    #[test]
    fn a_fault_is_told_at_its_place_and_nothing_is_kept() {
        let folder = tempfile::tempdir().expect("a folder");
        let file = folder.path().join("pace.csv");
        std::fs::write(&file, BOOK.replace("300", "3")).expect("writes");
        let mut desk = Desk::set_up(None, &folder.path().join("store")).expect("opens");
        let refused = trouble(desk.look_at_pace_file(&file).expect_err("absurd"));
        assert!(refused.cure.contains("row 2, column F"), "{refused:?}");
        desk.take_in_pace_file().expect("nothing was looked at");
        assert!(desk.pace_book().expect("a book").courses.is_empty());
    }
}
