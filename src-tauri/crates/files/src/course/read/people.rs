//! The group: either counts or a roster of named students.

use crate::Fault;
use crate::course::node::Section;
use craft::course::{Experience, GloveSize, Group, Student};
use std::collections::HashMap;

const EXPERIENCE: [(&str, Experience); 3] = [
    ("novice", Experience::Novice),
    ("improver", Experience::Improver),
    ("experienced", Experience::Experienced),
];

/// The largest count of people taken seriously.
const MOST_PEOPLE: u32 = 500;

/// The group, and whether it came from a roster.
pub(super) fn group(root: &Section<'_>) -> Result<(Group, bool), Fault> {
    let section = root.section("group")?;
    section.only(&[
        "instructors",
        "assistants",
        "novices",
        "improvers",
        "experienced",
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
    let roster = roster(root)?;
    let named = !roster.is_empty();
    let students = if named { roster } else { counted(counts) };
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
    };
    Ok((group, named))
}

fn counted(counts: [u32; 3]) -> Vec<Student> {
    EXPERIENCE
        .iter()
        .zip(counts)
        .flat_map(|((_, experience), count)| (0..count).map(move |_| *experience))
        .enumerate()
        .map(|(at, experience)| Student {
            name: format!("Student {}", at + 1),
            experience,
            gloves: None,
        })
        .collect()
}

/// The named students. What is private is checked and left where it is: no plan, page or
/// window needs it.
fn roster(root: &Section<'_>) -> Result<Vec<Student>, Fault> {
    let mut seen: HashMap<String, usize> = HashMap::new();
    root.tables("student")?
        .iter()
        .map(|section| {
            section.only(&["name", "experience", "gloves", "private"])?;
            let entry = section.need("name", "give the student's name")?;
            let name = entry.text()?.trim();
            if name.is_empty() {
                return Err(entry.fault(
                    "empty-text",
                    "the name is empty",
                    "give the student's name",
                ));
            }
            let gloves = section
                .get("gloves")
                .map(|it| it.word(&GloveSize::ALL.map(|size| (size.word(), size))))
                .transpose()?;
            let private = section.section("private")?;
            private.only(&["emergency_contact", "medical"])?;
            for key in ["emergency_contact", "medical"] {
                private.get(key).map(|entry| entry.text()).transpose()?;
            }
            let experience = section
                .get("experience")
                .map_or(Ok(Experience::Novice), |entry| entry.word(&EXPERIENCE))?;
            Ok(Student {
                name: unique(name, &mut seen),
                experience,
                gloves,
            })
        })
        .collect()
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
