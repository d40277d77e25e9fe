//! Checks on whole sheets: complete, alike for ever, unlike a neighbour's, and right.

mod answers;
mod for_ever;
mod neighbours;

use super::*;
use crate::quantity::Units;

const BOTH: [Units; 2] = [Units::Metric, Units::Imperial];

/// What sheets with every kind of question are drawn from.
struct World {
    course: Course,
    tables: Tables,
    frames: Frames,
}

impl World {
    fn new(units: Units, seed: u64, level: Level) -> Self {
        let mut course = sample::course(units, seed);
        course.worksheets.level = level;
        course.worksheets.questions = Some(Kind::ALL.len());
        Self {
            tables: sample::tables(),
            frames: sample::set_out(&course),
            course,
        }
    }

    fn asked(&self) -> Asked<'_> {
        Asked {
            course: &self.course,
            tables: &self.tables,
            frames: &self.frames,
            fault_wall,
        }
    }

    /// The sheet of a student without the drawn wall, which takes longer than all the rest.
    fn undrawn(&self, student: usize) -> Vec<Question> {
        Kind::ALL
            .into_iter()
            .filter(|kind| *kind != Kind::FindTheFault)
            .filter_map(|kind| question(kind, &self.asked(), student))
            .collect()
    }
}

/// The questions of so many students at every level, in both unit systems.
fn all_questions(seed: u64, students: usize) -> impl Iterator<Item = Question> {
    BOTH.into_iter()
        .flat_map(|units| Level::ALL.map(|level| (units, level)))
        .flat_map(move |(units, level)| {
            let world = World::new(units, seed, level);
            (0..students)
                .flat_map(|student| world.undrawn(student))
                .collect::<Vec<_>>()
        })
}

#[test]
fn a_sheet_has_one_question_of_each_kind_in_order() {
    for units in BOTH {
        for level in Level::ALL {
            let world = World::new(units, 11, level);
            for student in 0..10 {
                let kinds: Vec<Kind> = sheet(&world.asked(), student)
                    .iter()
                    .map(|question| question.kind)
                    .collect();
                assert_eq!(kinds, Kind::ALL);
            }
            for student in 0..200 {
                assert_eq!(world.undrawn(student).len(), Kind::ALL.len() - 1);
            }
        }
    }
}

#[test]
fn a_sheet_has_what_its_course_asks() {
    let mut world = World::new(Units::Metric, 1, Level::Usual);
    world.course.worksheets = WorksheetsGiven {
        left_out: vec![Kind::NameTheParts, Kind::Squareness],
        arithmetic: false,
        ..WorksheetsGiven::default()
    };
    let kinds: Vec<Kind> = sheet(&world.asked(), 0)
        .iter()
        .map(|question| question.kind)
        .collect();
    assert_eq!(
        kinds,
        [
            Kind::OrderOfWork,
            Kind::FindTheFault,
            Kind::HazardAndControl,
            Kind::OnePersonLift,
            Kind::ReadTheTable,
            Kind::Leapfrog
        ]
    );
}

#[test]
fn codes_and_titles_are_all_different() {
    for name in [Kind::code, Kind::title] {
        let mut names = Kind::ALL.map(name).to_vec();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), Kind::ALL.len());
    }
}

#[test]
fn only_what_is_chosen_from_has_choices() {
    for question in all_questions(9, 30) {
        let chosen = [Kind::OrderOfWork, Kind::HazardAndControl].contains(&question.kind);
        assert_eq!(question.choices.is_empty(), !chosen, "{:?}", question.kind);
        let read = [Kind::OnePersonLift, Kind::ReadTheTable].contains(&question.kind);
        assert_eq!(question.table.is_some(), read, "{:?}", question.kind);
    }
}

/// Whatever kind it is, a sheet holds whole sentences and no empty answer; the parts are named
/// by the drawing.
#[test]
fn every_question_asks_and_answers() {
    for question in all_questions(17, 60) {
        assert!(
            question.ask.ends_with(['?', '.']) && !question.ask.contains("  "),
            "{}",
            question.ask
        );
        if question.kind != Kind::NameTheParts {
            assert!(!question.answer.is_empty() && !question.working.is_empty());
        }
    }
}
