//! The desk and the pace book: the open course put into it, taken out, and what all of it says.

use crate::desk::{Desk, Error};
use crate::kit::real;
use craft::pace::book::{Book, Record};
use files::course::Language;
use shapes::window::{PaceBook, PaceCourse, PaceRow};
use shapes::written::book;
use shapes::{Clock, DateStyle};
use store::PaceRecord;

impl Desk {
    /// The pace book, for the open course.
    pub(crate) fn pace_book(&self) -> Result<PaceBook, Error> {
        let store = &self.kit_or_why()?.store;
        let records = store.pace_records()?;
        let path = self.path().map(real);
        let is_this = |it: &PaceRecord| Some(&it.path) == path.as_ref();
        let kept = records.iter().find(|it| is_this(it));
        let told = self.told();
        let clock = self.clock();
        Ok(PaceBook {
            notice: store.notice().map(ToString::to_string).unwrap_or_default(),
            recorded: kept.is_some(),
            changed: kept.is_some_and(|kept| told.is_some_and(|told| differs(&kept.record, told))),
            record: told
                .or(kept.map(|it| &it.record))
                .map(|it| PaceRow::all(it, &self.course.library.tables))
                .unwrap_or_default(),
            rates: self.rates(&records),
            courses: records
                .iter()
                .map(|it| PaceCourse {
                    title: it.record.course.clone(),
                    first_day: clock.date(it.first_day),
                    recorded_on: clock.date(it.recorded_on),
                    stages: it.record.stages.len(),
                    this: is_this(it),
                })
                .collect(),
        })
    }

    /// Puts what was told of the open course into the pace book.
    pub(crate) fn record_pace(&mut self) -> Result<(), Error> {
        let path = self.lives_in()?;
        let record = self.told().cloned().ok_or(Error::NothingTold)?;
        // Every course that was read has a day.
        let days = &self.course.file.course.days;
        let first_day = days.first().map(|day| day.date).unwrap_or_default();
        let record = PaceRecord {
            path,
            first_day,
            recorded_on: chrono::Local::now().date_naive(),
            record,
        };
        self.kit_to_change()?.store.record(&record)?;
        Ok(())
    }

    /// Takes the newest record of the open course back.
    pub(crate) fn take_back_pace(&mut self) -> Result<(), Error> {
        let path = self.lives_in()?;
        self.kit_to_change()?.store.take_back_record(&path)?;
        Ok(())
    }

    /// Takes the newest record of one course of the book back, by its place in it, counted from 0; one
    /// that is not there is gone already.
    pub(crate) fn take_back_pace_of(&mut self, at: usize) -> Result<(), Error> {
        let store = &mut self.kit_to_change()?.store;
        if let Some(record) = store.pace_records()?.get(at) {
            store.take_back_record(&record.path)?;
        }
        let text = self.text().to_owned();
        self.show(&text)?;
        Ok(())
    }

    /// The clock of the open course, which writes dates as its language does.
    pub(crate) fn clock(&self) -> Clock {
        let file = &self.course.file;
        let style = match file.language {
            Language::EnGb => DateStyle::British,
            Language::EnUs => DateStyle::American,
        };
        Clock::new(&file.course, style)
    }

    /// How long the stages took, as far as was told.
    fn told(&self) -> Option<&Record> {
        let today = self.course.plan.today.as_ref()?;
        Some(&today.record).filter(|record| !record.stages.is_empty())
    }

    /// The pace table before and after all records, this course's own among them.
    fn rates(&self, records: &[PaceRecord]) -> Vec<shapes::written::BookRow> {
        if records.is_empty() {
            return Vec::new();
        }
        let records: Vec<Record> = records.iter().map(|it| it.record.clone()).collect();
        let tables = &self.course.library.tables;
        // The store takes in no record that the book refuses.
        Book::of(&records, &tables.stages, &tables.pace.spread)
            .map(|it| book(&it.rates(&tables.pace), tables))
            .unwrap_or_default()
    }
}

/// Whether the stages or their times are others; the title may change freely.
fn differs(kept: &Record, told: &Record) -> bool {
    kept.stages != told.stages
}
