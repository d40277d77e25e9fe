//! What is done to the open course, or to the rules it is planned by, one edit at a time.

mod day;

pub(crate) use day::Told;

use crate::desk::{Desk, Error};
use files::course;
use files::{Fault, Library, own_kit};
use shapes::window::RuleKey;

impl Desk {
    /// Sets one key to what was typed; refused, nothing changes.
    pub(crate) fn edit(&mut self, key: &str, typed: &str, goes_on: bool) -> Result<(), Error> {
        let text = course::set(&self.typed_over(key, goes_on), key, typed)?;
        self.change_in(text, Some(key), goes_on)
    }

    /// One more course day.
    pub(crate) fn add_day(&mut self) -> Result<(), Error> {
        let text = course::add_day(self.text())?;
        self.change(text)
    }

    /// The last course day fewer.
    pub(crate) fn remove_day(&mut self) -> Result<(), Error> {
        let text = course::remove_day(self.text())?;
        self.change(text)
    }

    /// One more break in a day.
    pub(crate) fn add_break(&mut self, day: usize) -> Result<(), Error> {
        let text = course::add_break(self.text(), day)?;
        self.change(text)
    }

    /// One break of a day fewer.
    pub(crate) fn remove_break(&mut self, day: usize, at: usize) -> Result<(), Error> {
        let text = course::remove_break(self.text(), day, at)?;
        self.change(text)
    }

    /// One more stretch at the end of the line.
    pub(crate) fn add_stretch(&mut self, bent: bool) -> Result<(), Error> {
        let text = course::add_stretch(self.text(), bent)?;
        self.change(text)
    }

    /// One more surveyed station.
    pub(crate) fn add_survey(&mut self) -> Result<(), Error> {
        let text = course::add_survey(self.text())?;
        self.change(text)
    }

    /// One row of the line or of the survey fewer.
    pub(crate) fn remove_row(&mut self, key: &str, at: usize) -> Result<(), Error> {
        let text = course::remove_row(self.text(), key, at)?;
        self.change(text)
    }

    /// Ticks or unticks a thing to see to.
    pub(crate) fn mark(&mut self, id: &str, done: bool) -> Result<(), Error> {
        let text = course::mark(self.text(), id, done)?;
        self.change(text)
    }

    /// One more vehicle.
    pub(crate) fn add_vehicle(&mut self) -> Result<(), Error> {
        let text = course::add_vehicle(self.text())?;
        self.change(text)
    }

    /// One vehicle fewer.
    pub(crate) fn remove_vehicle(&mut self, at: usize) -> Result<(), Error> {
        let text = course::remove_vehicle(self.text(), at)?;
        self.change(text)
    }

    /// A kit rule changed for this course.
    pub(crate) fn change_rule(&mut self, item: &str, keys: &[RuleKey]) -> Result<(), Error> {
        let text = course::change_rule(self.text(), item, &typed(keys))?;
        self.change(text)
    }

    /// A kit rule as it is without this course's change.
    pub(crate) fn take_back_rule(&mut self, item: &str) -> Result<(), Error> {
        let text = course::take_back_rule(self.text(), item)?;
        self.change(text)
    }

    /// A kit rule changed for all courses of this instructor.
    pub(crate) fn change_rule_for_good(
        &mut self,
        item: &str,
        keys: &[RuleKey],
    ) -> Result<(), Error> {
        // A file of rules that is broken is told by its name and line; once it is known to be
        // sound, what is refused is what was typed.
        if self.folder.is_dir() {
            Library::with_store(&self.folder)?;
        }
        own_kit::save_change(&self.folder, item, &typed(keys)).map_err(typed_wrong)?;
        self.read_library_again()
    }

    /// A kit rule as it was before it was changed for good.
    pub(crate) fn take_back_rule_for_good(&mut self, item: &str) -> Result<(), Error> {
        own_kit::save_taken_back(&self.folder, item)?;
        self.read_library_again()
    }

    pub(crate) fn read_library_again(&mut self) -> Result<(), Error> {
        self.library = Library::with_store(&self.folder)?;
        self.own_broken = None;
        let text = self.text().to_owned();
        self.show(&text)?;
        Ok(())
    }
}

/// A refusal of what was typed, without the file it never came into.
fn typed_wrong(error: files::Error) -> Error {
    match error {
        files::Error::Refused(refusal) => Error::Fault(Fault {
            code: refusal.code,
            key: refusal.key,
            at: 0,
            what: refusal.what,
            cure: refusal.cure,
        }),
        other => Error::Files(other),
    }
}

fn typed(keys: &[RuleKey]) -> Vec<(&str, &str)> {
    keys.iter()
        .map(|it| (it.key.as_str(), it.typed.as_str()))
        .collect()
}
