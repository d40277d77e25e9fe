//! The papers of the office, page by page: how many there are, and whose.

use super::look::printed;
use super::words::has_its_words;
use checks::courses::{planned, with};
use checks::paper::Paper;
use documents::{Course, named};
use files::Library;
use files::course::set;

fn pages(course: &Course, name: &str) -> Vec<String> {
    let document = named(name).unwrap_or_else(|| panic!("no {name}"));
    let paper = Paper::new(&printed(course, document).pdf);
    has_its_words(course, document, &paper);
    paper.pages()
}

/// A roster of so many with long names, gloves and private notes.
fn roster(many: usize) -> String {
    let one = |at: usize| {
        format!(
            "[[student]]\nname = \"Bartholomew Featherstonehaugh of Longer Hollin Bank, number {at}\"\n\
             gloves = \"XXL\"\nprivate = {{ emergency_contact = \"Contact {at} 07700 900123\", \
             medical = \"Note {at} about bee stings\" }}\n"
        )
    };
    let counts = ("novices = 6\nimprovers = 2\nexperienced = 0\n", "");
    let teachers = ("instructors = 1\n", "instructors = 4\n");
    with(&[counts, teachers]) + &(1..=many).map(one).collect::<String>()
}

/// Both examples as they come, each with its own paper, spelling and units.
#[test]
fn what_is_meant_for_one_sheet_fits_on_one() {
    for imperial in [false, true] {
        let course = planned(Library::example(imperial));
        for (name, due) in [
            ("joining-letter", 1),
            ("feedback-sheet", 1),
            ("emergency-sheet", 2),
            ("register", course.file.course.days.len()),
        ] {
            assert_eq!(
                pages(&course, name).len(),
                due,
                "{name}, imperial: {imperial}"
            );
        }
        let students = course.file.course.group.students.len();
        assert_eq!(pages(&course, "fitness-declaration").len(), students);
        assert_eq!(
            pages(&course, "attendance-slip").len(),
            students.div_ceil(2)
        );
    }
}

/// The register of forty goes over pages, each with its day, its heads and room for walk-ins.
#[test]
fn a_register_of_forty_has_heads_on_every_page() {
    let course = planned(&roster(40));
    let pages = pages(&course, "register");
    assert!(4 < pages.len(), "{} pages", pages.len());
    for page in &pages {
        assert!(
            page.contains("Day ") && page.contains("Signature"),
            "{page}"
        );
    }
    // Numbered on for those who come unannounced.
    assert!(pages.concat().contains("44"));
}

/// Each has their own, and where names are chosen only those.
#[test]
fn letters_declarations_and_slips_are_each_students_own() {
    let mut course = planned(&roster(5));
    for name in ["joining-letter", "fitness-declaration"] {
        let pages = pages(&course, name);
        assert_eq!(pages.len(), 5, "{name}");
        for (at, page) in pages.iter().enumerate() {
            let own = format!("number {}", at + 1);
            let flowing = page.split_whitespace().collect::<Vec<_>>().join(" ");
            assert_eq!(flowing.matches("number ").count(), 1, "{name}: {flowing}");
            assert!(flowing.contains(&own), "{name}: {flowing}");
        }
    }
    course.chosen = Some(vec![3]);
    for name in [
        "joining-letter",
        "fitness-declaration",
        "attendance-slip",
        "contacts-sheet",
    ] {
        let document = named(name).expect("a document");
        let text = Paper::new(&printed(&course, document).pdf).letters();
        assert!(
            text.contains("number4") && !text.contains("number3"),
            "{name}"
        );
    }
}

#[test]
fn every_page_of_the_contacts_is_marked_above_and_below() {
    let pages = pages(&planned(&roster(40)), "contacts-sheet");
    assert!(1 < pages.len());
    for page in &pages {
        assert_eq!(page.matches("PRIVATE").count(), 2, "{page}");
    }
}

/// Who is away throughout has no slip; who misses a day has one for the others.
#[test]
fn a_slip_tells_of_the_days_somebody_came() {
    let away = |who: u32, day: u32| {
        format!(
            "[[absence]]\nwho = \"Bartholomew Featherstonehaugh of Longer Hollin Bank, number \
             {who}\"\nday = {day}\n"
        )
    };
    let text = [
        roster(3),
        "[timetable]\nshort_breaks = false\n".to_owned(),
        away(1, 1),
        away(1, 2),
        away(2, 2),
    ];
    let course = planned(&text.concat());
    let text = pages(&course, "attendance-slip").concat();
    assert!(!text.contains("number 1"), "{text}");
    // By hand: 9:00 to 16:30 less 45 minutes; and with 9:15 to 16:00 less 30 on the second day.
    for (who, hours) in [("number 2", "6 h 45 min"), ("number 3", "13 h of")] {
        let (_, own) = text.split_once(who).expect(who);
        let (_, rest) = own.split_once(": ").expect("hours");
        assert!(rest.starts_with(hours), "{who}: {text}");
    }
}

/// What is typed in for an emergency stands on both sheets in place of a blank, however long.
#[test]
fn long_words_for_an_emergency_wrap_on_both_sheets() {
    let words = "left at the ninth gate, past the barn, ".repeat(10) + "then over the ford";
    assert!(400 < words.len());
    for typed in [words, "W".repeat(400)] {
        let mut text = Library::example(false).to_owned();
        for key in [
            "first_aider",
            "first_aid_kit",
            "hospital",
            "access",
            "meeting_point",
            "signal",
        ] {
            text = set(&text, &format!("emergency.{key}"), &typed).expect("any words will do");
        }
        let course = planned(&text);
        for (name, times) in [
            ("emergency-sheet", 6),
            ("safety-handout", 5),
            ("joining-letter", 1),
        ] {
            let letters = checks::paper::letters(&pages(&course, name).concat());
            let found = letters.matches(&checks::paper::letters(&typed)).count();
            assert_eq!(found, times, "{name}");
        }
    }
}
