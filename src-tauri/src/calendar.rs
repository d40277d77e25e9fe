//! The days of the open course as a calendar file, for the phone.

use crate::desk::{Desk, Error};
use chrono::NaiveDate;
use documents::calendar::{Detail, calendar, save};
use std::path::Path;

impl Desk {
    /// What a calendar file of the open course is called where the person says nothing else.
    pub(crate) fn calendar_name(&self) -> String {
        let stem = self.path().and_then(Path::file_stem);
        let stem = stem.map_or_else(|| "course".into(), |it| it.to_string_lossy());
        format!("{stem}.ics")
    }

    /// Writes the timetable, as it stands on the desk, as a calendar file. `made` is the day it
    /// is written on: a phone takes the newer of two entries.
    pub(crate) fn write_calendar(&self, file: &Path, made: NaiveDate) -> Result<(), Error> {
        let calendar = calendar(&self.course, Detail::Entries, Some(made));
        Ok(save(file, &calendar)?)
    }
}
