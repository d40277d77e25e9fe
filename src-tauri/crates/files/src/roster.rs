//! A list of people as it comes from a spreadsheet or a message: names, and an experience where there
//! is one.

use crate::course::names_in;
use std::collections::BTreeSet;

/// More people than this come to no course, and more rows are another list.
pub const MOST_ROWS: usize = 500;
/// A longer name is something else that was pasted.
const MOST_OF_NAME: usize = 80;
/// So many faults are told at once.
const MOST_TOLD: usize = 10;

/// Somebody on the list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Named {
    /// The name, with single spaces.
    pub name: String,
    /// The word of the course file; nothing where the list says none.
    pub experience: Option<&'static str>,
}

/// Words for experience, as lists have them, and as the course file does.
const EXPERIENCE: [(&str, &str); 9] = [
    ("novice", "novice"),
    ("beginner", "novice"),
    ("n", "novice"),
    ("improver", "improver"),
    ("intermediate", "improver"),
    ("i", "improver"),
    ("experienced", "experienced"),
    ("advanced", "experienced"),
    ("e", "experienced"),
];

/// What a column is for, by its heading.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Column {
    Name,
    First,
    Last,
    Experience,
}

fn column(heading: &str) -> Option<Column> {
    match heading.trim().to_lowercase().as_str() {
        "name" | "names" | "full name" | "student" | "students" | "participant" => {
            Some(Column::Name)
        }
        "first name" | "firstname" | "given name" | "forename" => Some(Column::First),
        "last name" | "lastname" | "surname" | "family name" => Some(Column::Last),
        "experience" | "level" => Some(Column::Experience),
        _ => None,
    }
}

/// Pasted lines as rows of cells: parted by tabs where there is one, else by semicolons, else by
/// commas. Quotation marks round a cell are no part of it.
pub fn cells(pasted: &str) -> Vec<Vec<String>> {
    let mark = ['\t', ';', ',']
        .into_iter()
        .find(|it| pasted.contains(*it))
        .unwrap_or('\t');
    let lines = pasted.strip_prefix('\u{FEFF}').unwrap_or(pasted).lines();
    let cell = |text: &str| text.trim().trim_matches('"').trim().to_owned();
    lines
        .map(|line| line.split(mark).map(cell).collect())
        .collect()
}

/// Whether the first row that is not blank has a heading of a list of names.
pub fn has_heading(rows: &[Vec<String>]) -> bool {
    let first = rows.iter().find(|row| !is_blank(row));
    let named = |it: &String| {
        matches!(
            column(it),
            Some(Column::Name | Column::First | Column::Last)
        )
    };
    first.is_some_and(|row| row.iter().any(named))
}

/// The people of a list. A first row of headings says what its columns are; without one the first
/// column is the name and the second, if there is one, the experience.
///
/// # Errors
/// What is wrong, each with its row, up to ten of them.
pub fn read(rows: &[Vec<String>]) -> Result<Vec<Named>, Vec<String>> {
    let mut numbered = rows.iter().enumerate().filter(|(_, row)| !is_blank(row));
    let columns: Vec<Option<Column>> = if has_heading(rows) {
        let heading = numbered.next().map(|(_, row)| row.as_slice());
        heading
            .unwrap_or_default()
            .iter()
            .map(|it| column(it))
            .collect()
    } else {
        vec![Some(Column::Name), Some(Column::Experience)]
    };
    let (mut people, mut faults, mut seen) = (Vec::new(), Vec::new(), BTreeSet::new());
    for (at, row) in numbered {
        match person(row, &columns) {
            Ok(person) if seen.insert(person.name.clone()) => people.push(person),
            Ok(person) => faults.push(format!(
                "row {}: {} is in the list twice; write something behind one of the names",
                at + 1,
                person.name
            )),
            Err(wrong) => faults.push(format!("row {}: {wrong}", at + 1)),
        }
        if MOST_TOLD <= faults.len() {
            break;
        }
        if MOST_ROWS < people.len() {
            faults.push(format!("there are more than {MOST_ROWS} names in it"));
            break;
        }
    }
    if people.is_empty() && faults.is_empty() {
        faults.push("there is no name in it; write one to a line".to_owned());
    }
    if faults.is_empty() {
        Ok(people)
    } else {
        Err(faults)
    }
}

/// What taking a list in would change of a course, each in words.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Compared {
    /// Who is new.
    pub added: Vec<String>,
    /// Whose experience would be another.
    pub changed: Vec<String>,
    /// How many are there just so.
    pub same: usize,
    /// Who is in the course and not in the list.
    pub not_in_list: Vec<String>,
}

/// A list against the roster of a course file.
pub fn compared(text: &str, people: &[Named]) -> Compared {
    let there = names_in(text);
    let mut all = Compared::default();
    for person in people {
        let said = person.experience.unwrap_or("novice");
        match there.iter().find(|(name, _)| *name == person.name) {
            None => all.added.push(format!("{}, {said}", person.name)),
            Some((_, was)) => {
                let was = if was.is_empty() { "novice" } else { was };
                match person.experience {
                    Some(now) if now != was => {
                        all.changed
                            .push(format!("{}: {now} (was: {was})", person.name));
                    }
                    _ => all.same += 1,
                }
            }
        }
    }
    let listed = |name: &String| people.iter().any(|it| it.name == *name);
    let gone = there.into_iter().map(|(name, _)| name);
    all.not_in_list = gone.filter(|name| !listed(name)).collect();
    all
}

fn is_blank(row: &[String]) -> bool {
    row.iter().all(|it| it.trim().is_empty())
}

fn person(row: &[String], columns: &[Option<Column>]) -> Result<Named, String> {
    let of = |wanted: Column| {
        let at = columns.iter().position(|it| *it == Some(wanted))?;
        row.get(at).map(|it| it.trim()).filter(|it| !it.is_empty())
    };
    let whole = of(Column::Name).into_iter();
    let parts = whole.chain(of(Column::First)).chain(of(Column::Last));
    let name = parts
        .flat_map(str::split_whitespace)
        .collect::<Vec<_>>()
        .join(" ");
    if name.is_empty() {
        return Err("there is no name in it".to_owned());
    }
    if MOST_OF_NAME < name.chars().count() {
        let begins: String = name.chars().take(20).collect();
        return Err(format!("\"{begins}...\" is too long for a name"));
    }
    let experience = of(Column::Experience).map(|typed| {
        let word = typed.to_lowercase();
        let known = EXPERIENCE.iter().find(|(known, _)| *known == word);
        known.map(|(_, word)| *word).ok_or_else(|| {
            let begins: String = typed.chars().take(40).collect();
            format!("\"{begins}\" is no experience; write novice, improver or experienced")
        })
    });
    Ok(Named {
        name,
        experience: experience.transpose()?,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn told(pasted: &str) -> Vec<(String, Option<&'static str>)> {
        let people = read(&cells(pasted)).unwrap_or_else(|wrong| panic!("{pasted}: {wrong:?}"));
        people
            .into_iter()
            .map(|it| (it.name, it.experience))
            .collect()
    }

    #[test]
    fn lists_are_read_as_people_have_them() {
        let ann = ("Ann Ash".to_owned(), Some("improver"));
        let ben = ("Ben".to_owned(), None);
        for pasted in [
            "Ann Ash, improver\nBen\n",
            "Ann Ash\timprover\r\nBen\t\r\n\r\n",
            "Name;Experience\n\"Ann  Ash\";Improver\nBen;",
            "\u{FEFF}experience\tsurname\tfirst name\ni\tAsh\tAnn\n\t\tBen",
            "Name,Email,Level\nAnn Ash,a@example.org,intermediate\nBen,b@example.org,",
        ] {
            assert_eq!(told(pasted), [ann.clone(), ben.clone()], "{pasted}");
        }
    }

    #[test]
    fn a_list_is_compared_before_it_is_taken_in() {
        let text = crate::Library::example(false);
        let people = read(&cells("Ann, improver\nBen\nCid")).expect("sound");
        let course = crate::course::take_in_roster(text, &people, true).expect("takes it in");
        let others = read(&cells("Ann, novice\nBen\nDot, experienced")).expect("sound");
        assert_eq!(
            compared(&course, &others),
            Compared {
                added: vec!["Dot, experienced".to_owned()],
                changed: vec!["Ann: novice (was: improver)".to_owned()],
                same: 1,
                not_in_list: vec!["Cid".to_owned()],
            }
        );
    }

    #[test]
    fn what_is_no_list_of_names_says_so_by_row() {
        let long = "x".repeat(10_000);
        for (pasted, wrong) in [
            ("", "there is no name in it; write one to a line"),
            (
                "Ann\nBen, mason",
                "row 2: \"mason\" is no experience; write novice, improver or experienced",
            ),
            (
                "Ann\nAnn",
                "row 2: Ann is in the list twice; write something behind one of the names",
            ),
            (
                "Name, Experience\n, novice",
                "row 2: there is no name in it",
            ),
            (
                long.as_str(),
                "row 1: \"xxxxxxxxxxxxxxxxxxxx...\" is too long for a name",
            ),
        ] {
            assert_eq!(read(&cells(pasted)).expect_err(pasted), [wrong]);
        }
        let many: String = (0..600).map(|at| format!("Person {at}\n")).collect();
        assert_eq!(
            read(&cells(&many)).expect_err("too many"),
            ["there are more than 500 names in it"]
        );
        let faults = read(&cells(&"a, b\n".repeat(50))).expect_err("wrong");
        assert_eq!(faults.len(), MOST_TOLD);
    }
}
