//! The group: either counts or a roster of named students.

use super::wishes::wishes;
use crate::Fault;
use crate::course::Private;
use crate::course::node::Section;
use craft::course::{Experience, GloveSize, Group, Pairing, Student};
use std::collections::HashMap;

const EXPERIENCE: [(&str, Experience); 3] = [
    ("novice", Experience::Novice),
    ("improver", Experience::Improver),
    ("experienced", Experience::Experienced),
];

const PAIRING: [(&str, Pairing); 3] = [
    ("mixed", Pairing::Mixed),
    ("friends", Pairing::Friends),
    ("alike", Pairing::Alike),
];

/// The largest count of people taken seriously.
const MOST_PEOPLE: u32 = 500;

/// The group, and what is private of each student of a roster.
pub(super) fn group(root: &Section<'_>) -> Result<(Group, Vec<Private>), Fault> {
    let section = root.section("group")?;
    section.only(&[
        "instructors",
        "assistants",
        "novices",
        "improvers",
        "experienced",
        "pairs",
    ])?;
    let count = |key: &str, otherwise: u32| {
        section
            .get(key)
            .map_or(Ok(otherwise), |entry| entry.whole(0, MOST_PEOPLE))
    };
    let counts = [
        count("novices", 0)?,
        count("improvers", 0)?,
        count("experienced", 0)?,
    ];
    let (named, private) = roster(root)?;
    let students = if named.is_empty() {
        counted(counts)
    } else {
        named
    };
    if students.is_empty() {
        return Err(section.fault(
            "no-students",
            "there are no students".to_owned(),
            "give novices, improvers or experienced in [group], or name students in [[student]]",
        ));
    }
    let group = Group {
        instructors: count("instructors", 1)?,
        assistants: count("assistants", 0)?,
        students,
        pairing: section
            .get("pairs")
            .map_or(Ok(Pairing::default()), |it| it.word(&PAIRING))?,
    };
    Ok((group, private))
}

fn counted(counts: [u32; 3]) -> Vec<Student> {
    EXPERIENCE
        .iter()
        .zip(counts)
        .flat_map(|((_, experience), count)| (0..count).map(move |_| *experience))
        .enumerate()
        .map(|(at, experience)| Student::new(format!("Student {}", at + 1), experience))
        .collect()
}

/// The named students, with their wishes: these need all the names.
fn roster(root: &Section<'_>) -> Result<(Vec<Student>, Vec<Private>), Fault> {
    let sections = root.tables("student")?;
    let mut seen: HashMap<String, usize> = HashMap::new();
    let both: Vec<(Student, Private)> = sections
        .iter()
        .map(|section| student(section, &mut seen))
        .collect::<Result<_, _>>()?;
    let (mut students, private): (Vec<Student>, Vec<Private>) = both.into_iter().unzip();
    let names: Vec<String> = students
        .iter()
        .map(|student| student.name.clone())
        .collect();
    for (student, section) in students.iter_mut().zip(&sections) {
        (student.with, student.apart) = wishes(section, &student.name, &names)?;
    }
    Ok((students, private))
}

/// One student, and apart from them what is private: no plan needs it.
fn student(
    section: &Section<'_>,
    seen: &mut HashMap<String, usize>,
) -> Result<(Student, Private), Fault> {
    section.only(&["name", "experience", "gloves", "with", "apart", "private"])?;
    let entry = section.need("name", "give the student's name")?;
    let name = entry.text()?.trim();
    if name.is_empty() {
        return Err(entry.fault("empty-text", "the name is empty", "give the student's name"));
    }
    let private = private(&section.section("private")?)?;
    let experience = section
        .get("experience")
        .map_or(Ok(Experience::Novice), |entry| entry.word(&EXPERIENCE))?;
    let mut student = Student::new(unique(name, seen), experience);
    student.gloves = section
        .get("gloves")
        .map(|it| it.word(&GloveSize::ALL.map(|size| (size.word(), size))))
        .transpose()?;
    Ok((student, private))
}

fn private(section: &Section<'_>) -> Result<Private, Fault> {
    section.only(&["emergency_contact", "medical"])?;
    let words = |key: &str| -> Result<String, Fault> {
        let text = section.get(key).map_or(Ok(""), |entry| entry.text())?;
        Ok(text.trim().to_owned())
    };
    Ok(Private {
        emergency_contact: words("emergency_contact")?,
        medical: words("medical")?,
    })
}

/// Two students of one name are told apart by a number.
fn unique(name: &str, seen: &mut HashMap<String, usize>) -> String {
    let count = seen.entry(name.to_owned()).or_insert(0);
    *count += 1;
    if *count == 1 {
        return name.to_owned();
    }
    let numbered = format!("{name} ({count})");
    unique(&numbered, seen)
}
