//! The pace book written as CSV, with the columns' names above.

use super::PaceField;
use crate::sheet::columns::Heading;
use crate::sheet::guard;
use crate::sheet::write::{BYTE_ORDER_MARK, failed};
use crate::{Error, PaceRecord};
use ::csv::{Terminator, WriterBuilder};
use craft::pace::book::StageRecord;

/// The records as a file's content. Minutes stand there unrounded, so that reading the file gives the
/// same book.
pub(crate) fn write(records: &[PaceRecord]) -> Result<Vec<u8>, Error> {
    let mut file = WriterBuilder::new()
        .terminator(Terminator::CRLF)
        .from_writer(BYTE_ORDER_MARK.to_vec());
    let headings = PaceField::ALL.iter().map(|it| it.heading());
    file.write_record(headings).map_err(failed)?;
    for record in records {
        // The store keeps paths as text, so none is lost here.
        let path = record.path.to_string_lossy();
        for stage in &record.record.stages {
            let cells = PaceField::ALL.iter();
            let cells = cells.map(|field| said(record, &path, stage, *field));
            file.write_record(cells).map_err(failed)?;
        }
    }
    file.into_inner().map_err(failed)
}

fn said(record: &PaceRecord, path: &str, stage: &StageRecord, field: PaceField) -> String {
    match field {
        PaceField::Course => guard::put(&record.record.course).into_owned(),
        PaceField::FirstDay => record.first_day.to_string(),
        PaceField::RecordedOn => record.recorded_on.to_string(),
        PaceField::Stage => guard::put(&stage.stage).into_owned(),
        PaceField::Usual => stage.usual_minutes.to_string(),
        PaceField::Taken => stage.taken_minutes.to_string(),
        PaceField::Tied => stage.tied.map(|it| it.to_string()).unwrap_or_default(),
        PaceField::File => guard::put(path).into_owned(),
    }
}
