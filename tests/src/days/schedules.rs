//! Courses without luck against schedules that a solver proves to be the shortest.

use super::case::{Case, told};
use checks::{Found, Row, rows};
use craft::pace::calendar::Span;
use craft::pace::follow::{Scratch, Witness};
use craft::pace::luck::Course;

/// Rounding, in minutes; the table has three places.
const OFF: f64 = 0.001;

/// When lessons begin.
struct Lessons(Vec<f64>);

impl Witness for Lessons {
    fn lesson(&mut self, _course: usize, _lesson: usize, _waited_from: f64, span: Span) {
        self.0.push(span.from);
    }
}

/// When the course ends at the usual pace, and when its lessons begin.
fn followed(case: &Case) -> (f64, Vec<f64>) {
    let programme = case.programme();
    let usual = vec![1.0; programme.steps.len()];
    let mut lessons = Lessons(Vec::new());
    let mut scratch = Scratch::new(&programme);
    let course = Course::middling(&usual);
    let [end] = programme.follow(&case.calendar(), [course], &mut scratch, &mut lessons);
    (end, lessons.0)
}

/// Lessons where the solver puts them when each is to be as early as can be; the course as short
/// as it can then be, and never shorter than the shortest there is. That one may be shorter: a
/// lesson put off into slower hours costs less of the work.
fn agrees(row: &Row, case: &Case) -> Found {
    let (end, lessons) = followed(case);
    if row.text("end") == "never" {
        return if end.is_infinite() {
            Ok(())
        } else {
            Err(row.fault(&format!("it is done by {end}, the table says never")))
        };
    }
    row.near("the end", end, row.number("end"), OFF)?;
    row.between("the end", end, row.number("best") - OFF, f64::INFINITY)?;
    let theirs: Vec<f64> = row
        .text("lessons")
        .split_whitespace()
        .map(|time| time.parse().expect("a time"))
        .collect();
    let same = lessons.len() == theirs.len()
        && lessons
            .iter()
            .zip(&theirs)
            .all(|(ours, theirs)| (ours - theirs).abs() <= OFF);
    if same {
        Ok(())
    } else {
        Err(row.fault(&format!(
            "lessons begin at {lessons:?}, the table says {theirs:?}"
        )))
    }
}

#[test]
fn no_schedule_with_lessons_as_early_as_can_be_is_shorter() {
    let (rows, cases) = (rows("schedules.csv"), told("schedules.toml"));
    assert_eq!(rows.len(), cases.len(), "run models/schedules.py");
    let mut faults = Vec::new();
    for (row, case) in rows.iter().zip(&cases) {
        assert_eq!(row.text("case"), case.name, "run models/schedules.py");
        faults.extend(agrees(row, case).err());
    }
    assert!(faults.is_empty(), "\n{}\n", faults.join("\n"));
}
