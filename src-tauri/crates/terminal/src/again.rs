//! The same course again on other dates, written to a new file.

use crate::arguments::Again;
use crate::run::{Done, open};
use documents::Course;
use files::course::{CourseFile, again};
use files::{Fault, Library, save_new};
use std::fmt::Write;
use std::process::ExitCode;

pub(crate) fn written(asked: &Again, out: &mut String) -> Done {
    // A file with a mistake of its own is refused with its line.
    open(&asked.file, None)?;
    let text = CourseFile::open(&asked.file)?.1;
    let text = again(&text, asked.from).map_err(not_written)?;
    let file = CourseFile::parse(&text).map_err(not_written)?;
    let course = Course::plan(file, &Library::built_in()?).map_err(not_written)?;
    save_new(&asked.out, text.as_bytes())?;
    writeln!(
        out,
        "{}: {}, {}. What was told on the day, ticked off and forecast is left out. \
         Look at it, then: coursewright plan {0}",
        asked.out.display(),
        course.written.title,
        course.written.dates
    )?;
    Ok(ExitCode::SUCCESS)
}

/// What can't be on the new dates is no fault of a line of the old file.
fn not_written(fault: Fault) -> String {
    format!("{}\n{}\nnothing was written", fault.what, fault.cure)
}
