//! What the course asks of its worksheets: how hard, and which kinds of question.

use crate::Fault;
use crate::course::node::{Entry, Section};
use craft::worksheet::{Kind, Level, WorksheetsGiven};

/// Without any key the questions are of the usual level, and fill four pages.
pub(super) fn worksheets(section: &Section<'_>) -> Result<WorksheetsGiven, Fault> {
    section.only(&["level", "leave_out", "arithmetic", "questions"])?;
    let usual = WorksheetsGiven::default();
    Ok(WorksheetsGiven {
        level: section
            .get("level")
            .map_or(Ok(usual.level), |it| level(&it))?,
        left_out: kinds(section.get("leave_out"))?,
        arithmetic: section
            .get("arithmetic")
            .map_or(Ok(usual.arithmetic), |it| it.truth())?,
        questions: section
            .get("questions")
            .map(|it| it.whole(1, most()))
            .transpose()?
            .map(|count| count as usize),
    })
}

/// A sheet has at most one question of each kind.
fn most() -> u32 {
    u32::try_from(Kind::ALL.len()).unwrap_or(u32::MAX)
}

fn level(entry: &Entry<'_>) -> Result<Level, Fault> {
    let cure = "1 for whole numbers and one step, 2 as usual, 3 for more steps";
    let given = entry.whole(0, u32::MAX).map_err(|fault| Fault {
        cure: cure.to_owned(),
        ..fault
    })?;
    let level = Level::ALL.into_iter().find(|one| one.number() == given);
    level.ok_or_else(|| entry.fault("out-of-range", &format!("there is no level {given}"), cure))
}

/// Kinds of question by their codes, each once.
fn kinds(entry: Option<Entry<'_>>) -> Result<Vec<Kind>, Fault> {
    let known = Kind::ALL.map(|kind| (kind.code(), kind));
    let mut kinds = Vec::new();
    for entry in entry.map_or(Ok(Vec::new()), |it| it.list())? {
        let kind = entry.word(&known)?;
        if kinds.contains(&kind) {
            return Err(entry.fault(
                "named-twice",
                &format!("\"{}\" is there twice", kind.code()),
                "name each once",
            ));
        }
        kinds.push(kind);
    }
    Ok(kinds)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Library;
    use crate::course::{CourseFile, set};

    fn given(keys: &str) -> Result<WorksheetsGiven, Fault> {
        let text = format!("{}\n[worksheets]\n{keys}\n", Library::example(false));
        CourseFile::parse(&text).map(|file| file.course.worksheets)
    }

    #[test]
    fn what_is_not_said_is_usual() {
        assert_eq!(given("").expect("sound"), WorksheetsGiven::default());
        let file = CourseFile::parse(Library::example(true)).expect("sound");
        assert_eq!(file.course.worksheets.level, Level::Usual);
    }

    #[test]
    fn level_kinds_arithmetic_and_number_are_read() {
        let keys =
            "level = 3\nleave_out = [\"tonnes\", \"batter\"]\narithmetic = false\nquestions = 5";
        assert_eq!(
            given(keys).expect("sound"),
            WorksheetsGiven {
                level: Level::Hard,
                left_out: vec![Kind::Tonnes, Kind::Batter],
                arithmetic: false,
                questions: Some(5),
            }
        );
    }

    #[test]
    fn what_can_not_be_is_refused_with_its_key_and_a_cure() {
        for (keys, key, cure) in [
            (
                "leave_out = [\"tones\"]",
                "worksheets.leave_out.0",
                "did you mean \"tonnes\"?",
            ),
            (
                "leave_out = [\"batter\", \"batter\"]",
                "worksheets.leave_out.1",
                "name each once",
            ),
            ("level = 4", "worksheets.level", "1 for whole numbers"),
            (
                "level = \"hard\"",
                "worksheets.level",
                "1 for whole numbers",
            ),
            (
                "arithmetic = \"no\"",
                "worksheets.arithmetic",
                "write true or false",
            ),
            (
                "questions = 0",
                "worksheets.questions",
                "a whole number from 1 to 17",
            ),
            (
                "questions = 18",
                "worksheets.questions",
                "a whole number from 1 to 17",
            ),
            ("lewel = 1", "worksheets.lewel", "did you mean level?"),
        ] {
            let fault = given(keys).expect_err(keys);
            assert_eq!(fault.key, key);
            assert!(fault.cure.starts_with(cure), "{keys}: {}", fault.cure);
        }
    }

    #[test]
    fn the_window_sets_them_as_any_key() {
        let text = Library::example(false);
        let text = set(text, "worksheets.level", "1").expect("a level");
        let text = set(&text, "worksheets.leave_out", "tonnes, batter").expect("a list");
        let text = set(&text, "worksheets.arithmetic", "false").expect("a truth");
        let file = CourseFile::parse(&text).expect("sound");
        assert_eq!(file.course.worksheets.level, Level::Easy);
        assert_eq!(
            file.course.worksheets.left_out,
            [Kind::Tonnes, Kind::Batter]
        );
        assert!(!file.course.worksheets.arithmetic);
        assert!(set(&text, "worksheets.leave_out", "tones").is_err());
        let text = set(&text, "worksheets.leave_out", "").expect("none");
        let file = CourseFile::parse(&text).expect("sound");
        assert_eq!(file.course.worksheets.left_out, []);
    }
}
