//! The rows of a pace book: a stage of a course each.

use super::{PaceField, PaceList};
use crate::PaceRecord;
use crate::bookings::MOST_OF_TITLE;
use crate::error::day;
use crate::pace_book::{MOST_TIED, may_be_tied};
use crate::sheet::cells::Cell;
use crate::sheet::faults::{Fault, Faults, quoted};
use crate::sheet::reader::{Cells, Content, Reader, formula};
use crate::sheet::{MOST_ROWS, number};
use crate::text::MOST_OF_NAME;
use chrono::NaiveDate;
use craft::pace::book::{Record, StageRecord};
use std::collections::HashMap;
use std::path::PathBuf;

/// Characters of a course file's name with its folders.
const MOST_OF_PATH: usize = 4_096;

/// The courses in the order of the file.
#[derive(Default)]
pub(super) struct Courses {
    records: Vec<PaceRecord>,
    /// Where the record of each course file is, and its first row.
    places: HashMap<PathBuf, (usize, u32)>,
    /// The row of each stage of a course.
    rows: HashMap<(usize, String), u32>,
}

/// The book, if there is no fault in it.
pub(super) fn list(reader: Reader<Courses>) -> Result<PaceList, Faults> {
    let (Courses { records, .. }, _) = reader.finish()?;
    Ok(PaceList { records })
}

impl Content for Courses {
    type Field = PaceField;
    const MOST_ROWS: u32 = MOST_ROWS;
    const TOO_MANY: &'static str = "Import it in several files, each course whole.";
    const EMPTY: &'static str = "Write the columns' names into the first row, as an exported pace book has them, and a row for each stage of a course below.";
    const NO_ROWS: &'static str = "Write a row for each stage of a course.";

    fn take(&mut self, cells: &mut Cells<'_, PaceField>) {
        let stage = StageRecord {
            stage: cells.stage(),
            usual_minutes: cells.minutes(PaceField::Usual),
            taken_minutes: cells.minutes(PaceField::Taken),
            tied: cells.tied(),
        };
        let record = PaceRecord {
            path: cells.file(),
            first_day: cells.date(PaceField::FirstDay),
            recorded_on: cells.date(PaceField::RecordedOn),
            record: Record {
                course: cells.text(PaceField::Course, MOST_OF_TITLE),
                stages: vec![stage],
            },
        };
        if cells.sound() && can_be(cells, &record) {
            self.keep(cells, record);
        }
    }

    fn is_empty(&self) -> bool {
        self.records.is_empty()
    }
}

impl Courses {
    fn keep(&mut self, cells: &mut Cells<'_, PaceField>, mut given: PaceRecord) {
        let row = cells.number();
        let new = (self.records.len(), row);
        let (place, first) = *self.places.entry(given.path.clone()).or_insert(new);
        let Some(known) = self.records.get_mut(place) else {
            let stages = given.record.stages.iter();
            self.rows
                .extend(stages.map(|it| ((place, it.stage.clone()), row)));
            self.records.push(given);
            return;
        };
        for (field, same) in [
            (
                PaceField::Course,
                known.record.course == given.record.course,
            ),
            (PaceField::FirstDay, known.first_day == given.first_day),
            (
                PaceField::RecordedOn,
                known.recorded_on == given.recorded_on,
            ),
        ] {
            if !same {
                let what =
                    format!("this differs from row {first}, which is of the same course file");
                let cure = "Write the same in all rows of a course.";
                cells.wrong(field, Fault::new("two-ways", what, cure));
                return;
            }
        }
        for stage in given.record.stages.drain(..) {
            match self.rows.insert((place, stage.stage.clone()), row) {
                None => known.record.stages.push(stage),
                Some(before) => {
                    let what = format!(
                        "the stage {} of this course is in row {before} already",
                        quoted(&stage.stage)
                    );
                    let cure = "Add its times up in one row.";
                    cells.wrong(PaceField::Stage, Fault::new("stage-twice", what, cure));
                }
            }
        }
    }
}

/// Whether a group can have built so; else it is told.
fn can_be(cells: &mut Cells<'_, PaceField>, given: &PaceRecord) -> bool {
    if given.recorded_on < given.first_day {
        let what = format!(
            "the course begins on {}, so its pace can't be recorded on {}",
            day(given.first_day),
            day(given.recorded_on)
        );
        let fault = Fault::new("recorded-too-early", what, "Look at the dates.");
        cells.wrong(PaceField::RecordedOn, fault);
    }
    if let Err(absurd) = given.record.check() {
        let what = format!(
            "{} minutes where {} are usual is a pace no group has",
            absurd.taken_minutes, absurd.usual_minutes
        );
        let cure = "A stage takes between a tenth of its usual time and ten times as long: look for a slip of the pen, or leave the row out.";
        cells.wrong(PaceField::Taken, Fault::new("absurd-pace", what, cure));
    }
    cells.sound()
}

impl Cells<'_, PaceField> {
    fn stage(&mut self) -> String {
        self.must(
            PaceField::Stage,
            "Write the stage as an exported pace book names it, such as dig or first-lift.",
        );
        self.text(PaceField::Stage, MOST_OF_NAME)
    }

    /// The course file just as it stands there: it is what the store knows the course by.
    fn file(&mut self) -> PathBuf {
        let cure =
            "Write the course's file with its folder; rows with the same file are one course.";
        self.must(PaceField::File, cure);
        let file = match self.get(PaceField::File) {
            None => return PathBuf::new(),
            Some(Cell::Text(text)) if MOST_OF_PATH < text.chars().count() => {
                let what =
                    format!("this is longer than the {MOST_OF_PATH} characters a file's name has");
                Err(Fault::new("too-long", what, "Shorten it."))
            }
            Some(Cell::Text(text)) => Ok(PathBuf::from(text)),
            Some(Cell::Number(number)) => Ok(PathBuf::from(number.to_string())),
            Some(Cell::Formula | Cell::Other(_)) => Err(formula()),
        };
        self.sound_or_told(PaceField::File, file)
    }

    fn date(&mut self, field: PaceField) -> NaiveDate {
        let cure = "Write it as 2027-04-24: year, month, day.";
        self.must(field, cure);
        let date = match self.get(field) {
            None => return NaiveDate::default(),
            Some(Cell::Text(text)) => {
                NaiveDate::parse_from_str(text.trim(), "%Y-%m-%d").map_err(|_| {
                    Fault::new(
                        "not-a-date",
                        format!("{} is not a date", quoted(text)),
                        cure,
                    )
                })
            }
            Some(Cell::Number(number)) => Err(Fault::new(
                "not-a-date",
                format!("{number} is not a date"),
                cure,
            )),
            Some(Cell::Formula | Cell::Other(_)) => Err(formula()),
        };
        self.sound_or_told(field, date)
    }

    fn minutes(&mut self, field: PaceField) -> f64 {
        let cure = "Write minutes in digits, such as 90.";
        self.must(field, cure);
        self.amount(field, cure).unwrap_or_default()
    }

    /// Blank where nobody waited for a string.
    fn tied(&mut self) -> Option<f64> {
        let cure = "Count the pairs at the string, 1 or more; leave it blank where nobody waited for a string.";
        let pairs = self.amount(PaceField::Tied, cure)?;
        if self.sound() && !may_be_tied(pairs) {
            let what = format!("{pairs} is not from 1 to {MOST_TIED}");
            self.wrong(PaceField::Tied, Fault::new("tied-pairs", what, cure));
        }
        Some(pairs)
    }

    fn amount(&mut self, field: PaceField, cure: &str) -> Option<f64> {
        let marks = self.marks;
        let amount = match self.get(field)? {
            Cell::Text(text) => number::amount(text, marks, cure),
            Cell::Number(number) => Ok(*number),
            Cell::Formula | Cell::Other(_) => Err(formula()),
        };
        Some(self.sound_or_told(field, amount))
    }

    /// Tells a cell that is blank and must not be.
    fn must(&mut self, field: PaceField, cure: &str) {
        if self.get(field).is_none() {
            self.wrong(field, Fault::new("blank", "nothing stands here", cure));
        }
    }
}
