//! The built-in rules, read as an instructor would read the list they make.

use crate::Library;
use crate::course::CourseFile;
use craft::conditions::Conditions;
use craft::course::{Day, Experience, Group, Pairing, Student};
use craft::kit::{Counted, Heat, KitLine, Weather, kit};
use craft::quantity::{Read, metres};
use craft::tables::Applies;
use std::ops::RangeInclusive;

/// So many students and people who teach at so much wall.
struct Case {
    group: Group,
    days: Vec<Day>,
    conditions: Conditions,
    metres: f64,
}

impl Case {
    fn new(students: usize, staff: u32, metres: f64) -> Self {
        let student = |at| Student::new(format!("Student {at}"), Experience::Novice);
        let example = CourseFile::parse(Library::example(false)).expect("sound");
        Self {
            group: Group {
                instructors: staff,
                assistants: 0,
                students: (1..=students).map(student).collect(),
                pairing: Pairing::default(),
            },
            days: example.course.days,
            conditions: Conditions::just(&[Applies::Bars, Applies::Footing]),
            metres,
        }
    }

    /// Pairs find 1.5 m each, and frames stand 3 m apart.
    fn lines(&self, library: &Library) -> Vec<KitLine> {
        let places = (self.metres / 1.5).ceil().max(1.0) as usize;
        let counted = Counted {
            group: &self.group,
            days: &self.days,
            conditions: &self.conditions,
            weather: Weather {
                heat: Heat::Mild,
                said: craft::kit::SaidBy::Season,
            },
            frames_standing: (self.metres / 3.0).ceil() as usize + 1,
            bar: None,
            stints: (self.group.students.len() / 2).clamp(1, places),
            length: metres(self.metres),
        };
        kit(&library.tables.kit, &counted, &[])
    }
}

/// What is no longer common practice, or silly (common practice, no source).
const SENSIBLE: [(&str, usize, u32, f64, RangeInclusive<usize>); 24] = [
    ("Barrow", 4, 1, 1.0, 1..=2),
    ("Barrow", 8, 2, 9.0, 2..=3),
    ("Barrow", 40, 7, 30.0, 6..=10),
    ("Long level", 12, 2, 3.0, 1..=2),
    ("Long level", 40, 7, 30.0, 3..=6),
    ("Short level", 4, 1, 1.0, 1..=2),
    ("Batter gauge", 40, 7, 30.0, 3..=6),
    ("Walling hammer", 8, 2, 9.0, 8..=10),
    ("Walling hammer", 40, 7, 30.0, 40..=46),
    ("Spade", 4, 1, 1.0, 2..=2),
    ("Spade", 8, 2, 9.0, 2..=4),
    ("Spade", 40, 7, 30.0, 8..=15),
    ("Mattock", 20, 4, 30.0, 2..=5),
    ("Pinch bar", 12, 2, 12.0, 2..=3),
    ("Sledge hammer", 4, 1, 1.0, 2..=2),
    ("Sledge hammer", 40, 7, 30.0, 2..=4),
    ("Steel bar", 20, 4, 30.0, 22..=22),
    ("Bar cap", 20, 4, 30.0, 23..=26),
    ("Eye bolt nut", 8, 2, 9.0, 9..=11),
    ("Hearting bucket", 12, 2, 12.0, 8..=14),
    ("Shelter", 20, 4, 30.0, 2..=2),
    ("Barrier tape", 40, 7, 30.0, 1..=2),
    // Two to three litres a head in mild weather.
    ("Drinking water", 8, 2, 9.0, 20..=30),
    ("Hand washing kit", 40, 7, 30.0, 2..=4),
];

#[test]
fn nobody_laughs_at_the_counts() {
    let library = Library::built_in().expect("sound");
    let mut odd = Vec::new();
    for (item, students, staff, metres, sensible) in SENSIBLE {
        let lines = Case::new(students, staff, metres).lines(&library);
        let line = lines.iter().find(|line| line.item == item);
        let need = line.map(|line| line.need);
        if !need.is_some_and(|need| sensible.contains(&need)) {
            odd.push(format!(
                "{item}, {students} students, {metres} m: {need:?}, not {sensible:?}"
            ));
        }
    }
    assert!(odd.is_empty(), "\n{}", odd.join("\n"));
}

#[test]
fn every_group_has_a_first_aid_kit_of_one_size() {
    let library = Library::built_in().expect("sound");
    // BS 8599-1, higher risk, from memory: below 5 people, to 25, one to every 25 above.
    for (people, item, need) in [
        (2, "small", 1),
        (4, "small", 1),
        (5, "medium", 1),
        (25, "medium", 1),
        (26, "large", 2),
        (50, "large", 2),
        (51, "large", 3),
    ] {
        let lines = Case::new(people - 1, 1, 9.0).lines(&library);
        let kits: Vec<_> = lines
            .iter()
            .filter(|line| line.item.starts_with("First aid kit"))
            .map(|line| (line.item.as_str(), line.need))
            .collect();
        assert_eq!(
            kits,
            [(format!("First aid kit, {item}").as_str(), need)],
            "{people}"
        );
    }
}

#[test]
fn more_students_need_no_less_of_anything() {
    let library = Library::built_in().expect("sound");
    // A first aid kit gives way to a larger one.
    let gives_way = |item: &str| {
        let rules = library.tables.kit.iter();
        rules
            .clone()
            .any(|rule| rule.item == item && rule.to_people.is_some())
    };
    for metres in [1.0, 9.0, 30.0] {
        for students in 1..40 {
            let fewer = Case::new(students, 3, metres).lines(&library);
            let more = Case::new(students + 1, 3, metres).lines(&library);
            for line in fewer.iter().filter(|line| !gives_way(&line.rule)) {
                let same = more.iter().find(|other| other.item == line.item);
                let need = same.map_or(0, |other| other.need);
                assert!(
                    line.need <= need,
                    "{}: {} then {need}",
                    line.item,
                    line.need
                );
            }
        }
    }
}

#[test]
fn every_rule_says_who_vouches_for_it_and_what_it_weighs() {
    let library = Library::built_in().expect("sound");
    let arranged = ["Steel bar"];
    for rule in &library.tables.kit {
        let has_mass = 0.0 < rule.mass.si();
        assert_eq!(
            has_mass,
            !arranged.contains(&rule.item.as_str()),
            "{}",
            rule.item
        );
        assert!(
            !rule.source.is_empty() && !rule.why.is_empty(),
            "{}",
            rule.item
        );
    }
    let frames = library.tables.kit.iter().filter(|rule| rule.limits_frames);
    let frames: Vec<&str> = frames.map(|rule| rule.item.as_str()).collect();
    assert_eq!(frames, ["Steel bar", "Frame board", "Timber frame"]);
}

#[test]
fn what_the_lessons_use_is_on_the_list() {
    let library = Library::built_in().expect("sound");
    let known = |name: &str| {
        let sized = format!("{name},");
        let mut rules = library.tables.kit.iter();
        rules.any(|rule| rule.item == name || rule.item.starts_with(&sized))
    };
    let used = library.cards.iter().flat_map(|card| &card.kit);
    let missing: Vec<&String> = used.filter(|name| !known(name)).collect();
    assert!(missing.is_empty(), "{missing:?}");
}

/// The example course with some of its text exchanged, planned.
fn planned(library: &Library, changes: &[(&str, &str)]) -> Vec<KitLine> {
    let mut text = Library::example(false).replace("\"auto\"  ", "\"9 m\"");
    for (old, new) in changes {
        assert!(text.contains(old), "{old}");
        text = text.replace(old, new);
    }
    let file = CourseFile::parse(&text).expect("well written");
    file.plan(library).expect("a plan").kit
}

#[test]
fn season_heat_and_frames_say_what_is_on_the_list() {
    let library = Library::built_in().expect("sound");
    let summer = ("2027-04", "2027-07");
    let winter = ("2027-04", "2027-12");
    let hot = ("[kit.on_hand]", "[kit]\nheat = \"hot\"\n[kit.on_hand]");
    let timber = ("kind = \"bar\" ", "kind = \"timber\"");
    let no_trench = ("footing = {", "# footing = {");
    // By hand: 10 people, 8 hours, a fifth to spare: 96 times 0.25, 0.5 and 0.75.
    for (changes, water, there, not_there) in [
        (
            &[][..],
            24,
            &["Steel bar", "Mattock"][..],
            &["Sun hat", "Stove and kettle", "Hand saw"][..],
        ),
        (
            &[summer],
            48,
            &["Sun hat"],
            &["Stove and kettle", "Head torch"],
        ),
        (&[hot], 72, &["Sun hat"], &["Stove and kettle"]),
        (
            &[winter],
            24,
            &["Stove and kettle", "Head torch"],
            &["Sun hat"],
        ),
        (
            &[timber],
            24,
            &["Timber frame", "Hand saw"],
            &["Steel bar", "Bar cap"],
        ),
        (&[no_trench], 24, &["Spade"], &["Mattock"]),
    ] {
        let lines = planned(&library, changes);
        let find = |item: &str| lines.iter().find(|line| line.item == item);
        assert_eq!(
            find("Drinking water").map(|line| line.need),
            Some(water),
            "{changes:?}"
        );
        for item in there {
            assert!(find(item).is_some(), "no {item} with {changes:?}");
        }
        for item in not_there {
            assert!(find(item).is_none(), "{item} with {changes:?}");
        }
    }
}
