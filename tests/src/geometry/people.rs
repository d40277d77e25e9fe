//! Stints: everyone has one, and together they are the whole wall.

use checks::courses::{changed, list, number, numbers, plain};
use proptest::prelude::*;
use std::collections::BTreeSet;

/// The plain course with a roster: each student a name out of a few and an experience.
fn with_roster(students: &[(usize, usize)], length: u32) -> String {
    let words = ["novice", "improver", "experienced"];
    // Few names, so that many are called the same.
    let names = ["Ash", "Birch", "Cedar", "Ash (2)", "Elm"];
    let roster: String = students
        .iter()
        .map(|&(name, experience)| {
            let (name, word) = (names[name], words[experience]);
            format!("[[student]]\nname = \"{name}\"\nexperience = \"{word}\"\n")
        })
        .collect();
    let text = changed(plain(), &[("\"6 m\"", &format!("\"{length} mm\""))]);
    format!("{text}\n{roster}")
}

proptest! {
    #![proptest_config(checks::cases(32))]

    #[test]
    fn each_student_has_one_stint_and_the_wall_has_no_gap(
        students in prop::collection::vec((0..5_usize, 0..3_usize), 1..41),
        length in 300..30_000_u32,
    ) {
        let plan = numbers(&with_roster(&students, length));
        let stints = list(&plan, "/people/stints");
        let mut end = 0.0;
        let mut names = Vec::new();
        for stint in stints {
            let [from, to] = ["/from_m", "/to_m"].map(|key| number(stint, key));
            prop_assert!((from - end).abs() < 1e-9, "a stint from {from} after one to {end}");
            prop_assert!(from < to, "a stint from {from} to {to}");
            end = to;
            let members = list(stint, "/members");
            prop_assert!((1..=3).contains(&members.len()), "{members:?}");
            names.extend(members.iter().filter_map(|name| name.as_str()));
        }
        prop_assert!((end - number(&plan, "/wall/length_m")).abs() < 1e-9, "they end at {end}");
        let different: BTreeSet<&str> = names.iter().copied().collect();
        prop_assert_eq!(different.len(), names.len(), "a name stands twice: {:?}", names);
        prop_assert_eq!(names.len(), students.len());
        prop_assert_eq!(number(&plan, "/people/students") as usize, students.len());
        prop_assert_eq!(number(&plan, "/people/pairs") as usize, stints.len());
    }
}
