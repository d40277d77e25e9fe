//! What a roster says of its students in confidence.

use std::fmt;

/// Private notes of one student: for the one page that is made for them, and for nothing else.
///
/// They are no part of the course that is planned, and are shown in no debug output, so that
/// no plan, answer or log can hold them.
#[derive(Clone, PartialEq, Eq, Default)]
pub struct Private {
    /// Whom to ring if something happens; empty if nobody is named.
    pub emergency_contact: String,
    /// What the first aider has to know; empty if nothing is noted.
    pub medical: String,
}

impl fmt::Debug for Private {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("Private")
    }
}

#[cfg(test)]
mod tests {
    use crate::course::{CourseFile, Private};

    const ROSTER: &str = "[[student]]\nname = \"Ash\"\nprivate = { emergency_contact = \" Elm, \
        07700 900123 \", medical = \"bee stings\" }\n[[student]]\nname = \"Oak\"\n";

    fn parse(more: &str) -> CourseFile {
        let text = format!("{}\n{more}", crate::Library::example(false));
        CourseFile::parse(&text).expect("a course")
    }

    #[test]
    fn notes_are_read_beside_the_students_and_not_into_the_course() {
        let file = parse(ROSTER);
        let ash = Private {
            emergency_contact: "Elm, 07700 900123".to_owned(),
            medical: "bee stings".to_owned(),
        };
        assert_eq!(file.private, [ash, Private::default()]);
        assert!(file.roster);
        let names = file.course.group.students.iter().map(|it| &*it.name);
        assert_eq!(names.collect::<Vec<_>>(), ["Ash", "Oak"]);
    }

    #[test]
    fn without_a_roster_there_are_none() {
        let file = parse("");
        assert!(file.private.is_empty() && !file.roster);
    }

    #[test]
    fn no_debug_output_shows_them() {
        let shown = format!("{:#?}", parse(ROSTER));
        assert!(shown.contains("\"Ash\"") && shown.contains("Private"));
        for secret in ["900123", "bee"] {
            assert!(!shown.contains(secret), "{secret}");
        }
    }

    /// What is wrong with a note is said without the note.
    #[test]
    fn no_refusal_quotes_them() {
        for (wrong, code) in [
            ("private = { medical = 900123 }", "wrong-kind"),
            ("private = \"bee 900123\"", "wrong-kind"),
            ("private = { medicine = \"bee 900123\" }", "unknown-key"),
            ("private = { medical = \"bee 900123 }", "not-toml"),
        ] {
            let example = crate::Library::example(false);
            let text = format!("{example}\n[[student]]\nname = \"Ash\"\n{wrong}\n");
            let fault = CourseFile::parse(&text).expect_err(wrong);
            assert_eq!(fault.code, code, "{wrong}");
            let told = fault.in_file("course", &text).to_string();
            for secret in ["900123", "bee"] {
                assert!(!told.contains(secret), "{told}");
            }
        }
    }
}
