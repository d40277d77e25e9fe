//! People: by hand, by trying all ways, and what holds for any group.

mod any;
mod brute_force;
mod by_hand;

use crate::course::{Experience, Group, Pairing, Student};
use crate::tables::{PaceTable, Rate};

const LAYING: &str = "first-lift";

/// The table's usual hours for laying, and nothing else of note.
fn pace() -> PaceTable {
    let mut pace = crate::worksheet::sample::tables().pace;
    pace.rates = vec![Rate {
        stage: LAYING.to_owned(),
        hours: [5.0, 3.5, 1.6],
        source: "common practice, no source".to_owned(),
    }];
    pace
}

/// `NIE`: a novice, an improver and an experienced one, named by number.
fn group(letters: &str) -> Group {
    let student = |(at, letter)| {
        let experience = match letter {
            'I' => Experience::Improver,
            'E' => Experience::Experienced,
            _ => Experience::Novice,
        };
        Student::new(format!("{}", at + 1), experience)
    };
    Group {
        instructors: 1,
        assistants: 0,
        students: letters.chars().enumerate().map(student).collect(),
        pairing: Pairing::Mixed,
    }
}

/// `1+4 2+3`.
fn written(pairs: &[Vec<Student>]) -> String {
    let names = |pair: &Vec<Student>| {
        let names: Vec<&str> = pair.iter().map(|it| it.name.as_str()).collect();
        names.join("+")
    };
    pairs.iter().map(names).collect::<Vec<_>>().join(" ")
}
