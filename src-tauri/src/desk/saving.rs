//! Saving, and all that stands in its way: nothing another program wrote is overwritten unasked.

use super::{Desk, Error};
use crate::journal::Entry;
use crate::outside::{self, Found, Outside};
use files::course::CourseFile;
use files::{save, save_new};
use std::path::{Path, PathBuf};

impl Desk {
    /// Whether the disk does not hold what is shown.
    pub(crate) fn unsaved(&self) -> bool {
        match (&self.outside, &self.on_disk) {
            (Outside::Mine(_) | Outside::Gone, _) => true,
            (_, Some(text)) => text != self.text(),
            // An example nobody has touched is no loss.
            (_, None) => self.history.undo_of().is_some(),
        }
    }

    /// What the disk holds as far as the desk knows, or what a course never saved began from.
    pub(crate) fn base(&self) -> &str {
        self.on_disk.as_deref().unwrap_or(self.history.first())
    }

    /// Where the file on the disk stands.
    pub(crate) fn outside(&self) -> &Outside {
        &self.outside
    }

    /// Whether this is what the desk last read or wrote.
    pub(crate) fn knows(&self, found: &Found) -> bool {
        let known = self.on_disk.as_ref().map(String::as_bytes);
        matches!(found, Found::Content(it) if Some(it.as_slice()) == known)
    }

    /// Somebody has looked at the file of the course.
    pub(crate) fn noticed(&mut self, found: Found) {
        // Another program has written the very same: all is saved.
        if found == Found::Content(self.text().as_bytes().to_vec()) {
            self.on_disk = Some(self.text().to_owned());
        }
        let before = std::mem::take(&mut self.outside);
        self.outside = before.after(found, self.on_disk.as_deref());
    }

    fn look(&mut self, path: &Path) -> Result<(), Error> {
        let found = outside::look(path).map_err(|cause| files::Error::Read {
            path: path.to_owned(),
            cause,
        })?;
        self.noticed(found);
        Ok(())
    }

    /// Saves to the file the course came from, unless that has been changed meanwhile.
    pub(crate) fn save(&mut self, path: &Path) -> Result<(), Error> {
        self.look(path)?;
        match self.outside {
            Outside::Same | Outside::Gone => self.write(path),
            Outside::Changed(_) | Outside::Mine(_) => Err(Error::ChangedOutside(path.to_owned())),
        }
    }

    /// Saves over what another program has written, which the person was told of; not over
    /// anything newer.
    pub(crate) fn save_over(&mut self) -> Result<(), Error> {
        let path = self.lives_in()?;
        let told = self.outside.theirs().map(<[u8]>::to_vec);
        self.look(&path)?;
        if told.as_deref() == self.outside.theirs() {
            return self.write(&path);
        }
        self.save(&path)
    }

    fn write(&mut self, path: &Path) -> Result<(), Error> {
        save(path, self.text().as_bytes())?;
        self.on_disk = Some(self.text().to_owned());
        self.outside = Outside::Same;
        if let Ok(kit) = &mut self.kit {
            kit.follow(&self.course, path);
        }
        Ok(())
    }

    /// Saves to a file the person has just chosen and, where there was one, agreed to replace.
    pub(crate) fn save_as(&mut self, path: PathBuf) -> Result<(), Error> {
        if path.exists() {
            save(&path, self.text().as_bytes())?;
        } else {
            save_new(&path, self.text().as_bytes())?;
        }
        self.on_disk = Some(self.text().to_owned());
        self.outside = Outside::Same;
        self.path = Some(path);
        Ok(())
    }

    /// The person keeps their own and not what another program wrote; saving will ask.
    pub(crate) fn keep_mine(&mut self) {
        if let Outside::Changed(theirs) = &self.outside {
            self.outside = Outside::Mine(theirs.clone());
        }
    }

    /// Puts on the desk what the disk holds now, as one step that can be undone.
    pub(crate) fn read_anew(&mut self) -> Result<(), Error> {
        let (_, text) = CourseFile::open(&self.lives_in()?)?;
        self.change(text.clone())?;
        self.on_disk = Some(text);
        self.outside = Outside::Same;
        Ok(())
    }

    /// Puts on the desk what the journal kept, as one step from what the disk holds. Where that
    /// has been changed since, it is as if it had been changed with the course open.
    pub(crate) fn take(&mut self, kept: Entry) -> Result<(), Error> {
        let path = kept.path();
        if path.is_none() || path.as_deref() != self.path() {
            *self = self.course_of(path.clone(), &kept)?;
        }
        self.change(kept.text)?;
        if let Some(path) = path {
            self.on_disk = Some(kept.base);
            self.look(&path)?;
        }
        Ok(())
    }

    /// A desk with the course of a file as it is now, or as it was before what was kept of it.
    fn course_of(&self, path: Option<PathBuf>, kept: &Entry) -> Result<Self, Error> {
        if let Some(path) = &path
            && let Ok(desk) = Self::set_up(Some(path.clone()), &self.folder)
        {
            return Ok(desk);
        }
        Ok(Self::with(path, kept.base.clone(), &self.folder)?)
    }
}
