//! What people have to know when somebody is hurt: who helps, and how help finds the place.

use crate::Fault;
use crate::course::Emergency;
use crate::course::node::Section;

pub(super) fn emergency(root: &Section<'_>) -> Result<Emergency, Fault> {
    let section = root.section("emergency")?;
    section.only(&[
        "first_aider",
        "first_aid_kit",
        "hospital",
        "access",
        "meeting_point",
        "signal",
    ])?;
    let words = |key: &str| -> Result<String, Fault> {
        let text = section.get(key).map_or(Ok(""), |entry| entry.text())?;
        Ok(text.trim().to_owned())
    };
    Ok(Emergency {
        first_aider: words("first_aider")?,
        first_aid_kit: words("first_aid_kit")?,
        hospital: words("hospital")?,
        access: words("access")?,
        meeting_point: words("meeting_point")?,
        signal: words("signal")?,
    })
}

#[cfg(test)]
mod tests {
    use crate::Library;
    use crate::course::{CourseFile, Emergency, set, values};

    #[test]
    fn what_is_not_said_is_a_blank() {
        let plain = CourseFile::parse(include_str!(
            "../../../../../../tests/courses/plain.walling"
        ));
        assert_eq!(plain.expect("a course").emergency, Emergency::default());
        let example = CourseFile::parse(Library::example(false)).expect("a course");
        assert!(!example.emergency.access.is_empty());
    }

    #[test]
    fn every_word_is_set_by_its_key_and_taken_out_again() {
        let mut text = Library::example(true).to_owned();
        let long = "by the lane ".repeat(33);
        let keys = [
            "first_aider",
            "first_aid_kit",
            "hospital",
            "access",
            "meeting_point",
            "signal",
        ];
        for key in keys {
            let key = format!("emergency.{key}");
            text = set(&text, &key, &long).expect("any words will do");
            assert_eq!(values(&text)[&key], long.trim());
        }
        let read = CourseFile::parse(&text).expect("a course").emergency;
        let Emergency {
            first_aider,
            first_aid_kit,
            hospital,
            access,
            meeting_point,
            signal,
        } = read;
        for words in [
            first_aider,
            first_aid_kit,
            hospital,
            access,
            meeting_point,
            signal,
        ] {
            assert_eq!(words, long.trim());
        }
        for key in keys {
            text = set(&text, &format!("emergency.{key}"), "").expect("nothing will do too");
        }
        let read = CourseFile::parse(&text).expect("a course").emergency;
        assert_eq!(read, Emergency::default());
    }

    #[test]
    fn a_mistyped_key_and_a_number_are_refused_at_their_place() {
        for (more, code, cure) in [
            (
                "[emergency]\nhospitle = \"A\"",
                "unknown-key",
                "did you mean hospital?",
            ),
            (
                "[emergency]\nsignal = 2",
                "wrong-kind",
                "put it in double quotes",
            ),
        ] {
            let plain = include_str!("../../../../../../tests/courses/plain.walling");
            let text = format!("{plain}\n{more}\n");
            let fault = CourseFile::parse(&text).expect_err(more);
            assert_eq!((fault.code, &*fault.cure), (code, cure));
            assert!(fault.key.starts_with("emergency."), "{}", fault.key);
        }
    }
}
