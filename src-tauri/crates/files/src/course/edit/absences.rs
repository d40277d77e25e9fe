//! Absences added and dropped.

use super::tables::{put_in, take_out};
use super::{checked, no_such, parsed, text_value};
use crate::Fault;
use crate::course::CourseFile;

/// The text with one more absence: of the first student, on the whole of the last day, for the
/// name, the day and the times to be typed in.
///
/// # Errors
/// The [`Fault`] that the changed text would have.
pub fn add_absence(text: &str) -> Result<String, Fault> {
    let course = CourseFile::parse(text)?.course;
    let mut document = parsed(text)?;
    let who = course
        .group
        .students
        .first()
        .ok_or_else(|| no_such("who"))?;
    let day = i64::try_from(course.days.len()).map_err(|_| no_such("day"))?;
    let keys = [("who", text_value(&who.name)), ("day", day.into())];
    put_in(&mut document, "absence", None, &keys)?;
    checked(document, text)
}

/// The text without one absence, counted from 0.
///
/// # Errors
/// The [`Fault`] that the changed text would have.
pub fn remove_absence(text: &str, at: usize) -> Result<String, Fault> {
    let mut document = parsed(text)?;
    take_out(&mut document, "absence", at);
    checked(document, text)
}

#[cfg(test)]
mod tests {
    use super::super::{remove_day, set};
    use super::*;
    use crate::Library;
    use craft::course::{Absence, Pairing};

    fn absences(text: &str) -> Vec<Absence> {
        CourseFile::parse(text).expect("sound").course.absences
    }

    #[test]
    fn absences_come_and_go_and_leave_no_trace() {
        let text = Library::example(false);
        let course = CourseFile::parse(text).expect("sound").course;
        let one = add_absence(text).expect("one");
        let given = absences(&one);
        assert_eq!(given.len(), 1);
        assert_eq!(given[0].day, course.days.len() - 1);
        assert_eq!(given[0].who, course.group.students[0].name);
        let late = set(&one, "absence.0.until", "11:00").expect("late");
        assert!(late.contains("until = 11:00:00"), "{late}");
        let less = remove_absence(&add_absence(&late).expect("two"), 1).expect("one");
        assert_eq!(less, late);
        assert_eq!(remove_absence(&one, 0).expect("none"), text);
        assert_eq!(remove_absence(text, 0).expect("as it was"), text);
        assert_eq!(remove_absence(&one, 7).expect("as it was"), one);
        assert_eq!(
            remove_day(&one).expect_err("the day is needed").code,
            "no-such-day"
        );
    }

    #[test]
    fn absences_on_one_line_come_and_go_as_well() {
        let text = Library::example(false);
        let who = &CourseFile::parse(text)
            .expect("sound")
            .course
            .group
            .students[1]
            .name;
        let line = format!("absence = [{{ who = \"{who}\", day = 1 }}]\n\n[venue]");
        let text = text.replacen("[venue]", &line, 1);
        let two = add_absence(&text).expect("two");
        assert_eq!(absences(&two).len(), 2);
        assert_eq!(remove_absence(&two, 1).expect("one"), text);
        let none = remove_absence(&text, 0).expect("none");
        assert!(!none.contains("absence ="), "{none}");
    }

    #[test]
    fn the_way_of_pairing_and_wishes_are_set_like_any_value() {
        let text = Library::example(false);
        let group = |text: &str| CourseFile::parse(text).expect("sound").course.group;
        let alike = set(text, "group.pairs", "alike").expect("a way");
        assert_eq!(group(&alike).pairing, Pairing::Alike);
        assert_eq!(
            group(&set(&alike, "group.pairs", "").expect("none")).pairing,
            Pairing::Mixed
        );
        let named = "[[student]]\nname = \"Ann Ash\"\n[[student]]\nname = \"Ben Birch\"\n[[student]]\nname = \"Cy Cherry\"\n";
        let text = format!("{}\n{named}", crate::bare::bare(false));
        let wished = set(&text, "student.0.with", "Ben Birch, Cy Cherry").expect("wishes");
        assert_eq!(group(&wished).students[0].with, ["Ben Birch", "Cy Cherry"]);
        let apart = set(&text, "student.2.apart", "Ann Ash").expect("a wish");
        assert_eq!(group(&apart).students[2].apart, ["Ann Ash"]);
    }
}
