//! The desk and the kit store together: what is done to the store, and the plan after it.

use crate::desk::{Desk, Error};
use crate::kit::{self, Kit};
use shapes::window::{CountedHome, KitListPreview, KitStore, LotTyped, ReturnTyped};
use std::path::{Path, PathBuf};

impl Desk {
    /// All of the store, for the open course.
    pub(crate) fn kit_store(&self) -> Result<KitStore, Error> {
        let kit = self.kit_or_why()?;
        Ok(kit.shown(self.path())?)
    }

    /// Puts a lot in place of the one of this item and owner, or beside the others.
    pub(crate) fn put_lot(
        &mut self,
        was: Option<(&str, &str)>,
        typed: &LotTyped,
    ) -> Result<(), Error> {
        let lot = kit::lot(typed)?;
        self.in_store(|kit| kit.put(was, &lot))
    }

    pub(crate) fn remove_lot(&mut self, item: &str, owner: &str) -> Result<(), Error> {
        self.in_store(|kit| kit.remove(item, owner))
    }

    /// Books the load list of the open course for its days.
    pub(crate) fn book_kit(&mut self) -> Result<(), Error> {
        let path = self.lives_in()?;
        let course = self.course.clone();
        self.in_store(|kit| kit.book(&course, &path))
    }

    pub(crate) fn release_kit(&mut self) -> Result<(), Error> {
        let path = self.lives_in()?;
        self.in_store(|kit| kit.release(&path))
    }

    /// Counts the kit of the open course home, on its last day.
    pub(crate) fn kit_home(&mut self, typed: &[ReturnTyped]) -> Result<CountedHome, Error> {
        let path = self.lives_in()?;
        let returns = kit::returns(typed)?;
        let days = &self.course.file.course.days;
        // Every course that was read has a day.
        let on = days.last().map(|day| day.date).unwrap_or_default();
        let home = self.in_store(|kit| kit.home(&path, on, &returns))?;
        Ok(CountedHome {
            view: self.view(),
            uncounted: kit::items(&home.uncounted),
            not_in_store: kit::items(&home.not_in_store),
        })
    }

    /// The store as it was before the kit was counted home.
    pub(crate) fn kit_not_home(&mut self) -> Result<(), Error> {
        let path = self.lives_in()?;
        self.in_store(|kit| kit.not_home(&path))
    }

    /// What taking in a kit list would change; nothing is changed yet.
    pub(crate) fn look_at_kit_list(&mut self, file: &Path) -> Result<KitListPreview, Error> {
        let units = self.course.file.course.units;
        Ok(self.kit_to_change()?.look_at(file, units)?)
    }

    /// Takes in the list that was looked at last.
    pub(crate) fn take_in_kit_list(&mut self, replace: bool) -> Result<(), Error> {
        self.in_store(|kit| kit.take_in(replace))
    }

    /// Writes the kit list to a file the person has chosen.
    pub(crate) fn export_kit_list(&self, file: &Path) -> Result<(), Error> {
        let content = self.kit_or_why()?.export(file)?;
        Ok(files::save(file, &content)?)
    }

    /// Does something to the store; what the course has and lacks follows.
    fn in_store<T>(
        &mut self,
        change: impl FnOnce(&mut Kit) -> Result<T, store::Error>,
    ) -> Result<T, Error> {
        let done = change(self.kit_to_change()?)?;
        let text = self.text().to_owned();
        self.show(&text)?;
        Ok(done)
    }

    /// The store to look at, or why there is none.
    pub(crate) fn kit_or_why(&self) -> Result<&Kit, Error> {
        self.kit.as_ref().map_err(no_store)
    }

    /// The store to change, or why there is none.
    pub(crate) fn kit_to_change(&mut self) -> Result<&mut Kit, Error> {
        self.kit.as_mut().map_err(|why| no_store(why))
    }

    pub(crate) fn lives_in(&self) -> Result<PathBuf, Error> {
        self.path().map(Path::to_owned).ok_or(Error::NeverSaved)
    }
}

fn no_store(why: &store::Error) -> Error {
    Error::NoStore(why.to_string())
}
