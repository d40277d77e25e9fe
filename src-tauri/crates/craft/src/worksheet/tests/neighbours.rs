//! Checks on what neighbours hold, and on what a sheet depends on.

use super::*;
use proptest::prelude::*;

/// The numbers of a text in order: `3 ft 6 1/2 in` has 3, 6, 1 and 2.
fn numbers(text: &str) -> Vec<&str> {
    text.split(|letter: char| !letter.is_ascii_digit() && letter != '.')
        .map(|number| number.trim_matches('.'))
        .filter(|number| !number.is_empty())
        .collect()
}

/// All that a student sees of a question but its drawing.
fn seen(question: &Question) -> (&str, &[String], &[String]) {
    (&question.ask, &question.choices, &question.prompts)
}

#[test]
fn students_and_seeds_make_a_difference() {
    let sheets = |seed| -> Vec<Vec<Question>> {
        let world = World::new(Units::Metric, seed, Level::Usual);
        (0..40).map(|student| world.undrawn(student)).collect()
    };
    let of_one = sheets(1);
    for (at, sheet) in of_one.iter().enumerate() {
        assert!(!of_one[..at].contains(sheet), "student {at}");
    }
    assert_ne!(of_one, sheets(2));
    assert_eq!(of_one, sheets(1));
}

/// Every second wall, gauge and line is enough for a whole group to be asked about.
#[test]
fn a_group_is_not_asked_the_same_few_questions() {
    for units in BOTH {
        for level in Level::ALL {
            let world = World::new(units, 6, level);
            let group: Vec<_> = (0..20).map(|student| world.undrawn(student)).collect();
            for at in 0..group[0].len() {
                let kind = group[0][at].kind;
                // There is one wall to name the parts of, and the sample has three frames.
                if [Kind::NameTheParts, Kind::ReadTheTable].contains(&kind) {
                    continue;
                }
                let mut asked: Vec<String> = group
                    .iter()
                    .map(|sheet| format!("{:?}", seen(&sheet[at])))
                    .collect();
                asked.sort();
                asked.dedup();
                assert!(
                    8 <= asked.len(),
                    "{units:?} {level:?} {kind:?}: {}",
                    asked.len()
                );
            }
        }
    }
}

fn any_level() -> impl Strategy<Value = Level> {
    prop::sample::select(Level::ALL.to_vec())
}

fn any_units() -> impl Strategy<Value = Units> {
    prop::sample::select(BOTH.to_vec())
}

proptest! {
    #[test]
    fn neighbours_never_hold_the_same_question(
        seed in any::<u64>(),
        student in 0_usize..10_000,
        units in any_units(),
        level in any_level(),
    ) {
        let world = World::new(units, seed, level);
        let (mine, next) = (world.undrawn(student), world.undrawn(student + 1));
        prop_assert_eq!(mine.len(), Kind::ALL.len() - 1);
        prop_assert_eq!(next.len(), Kind::ALL.len() - 1);
        for (mine, next) in mine.iter().zip(&next) {
            if mine.kind == Kind::NameTheParts {
                continue;
            }
            prop_assert_ne!(seen(mine), seen(next));
            if mine.kind.is_sum() || mine.kind == Kind::Leapfrog {
                prop_assert_ne!(numbers(&mine.ask), numbers(&next.ask), "{:?}", mine.kind);
            }
        }
    }

    /// What a course is about to build has no say in its sheets, but in what is read of it.
    #[test]
    fn a_question_does_not_depend_on_the_others_or_on_the_wall(
        seed in any::<u64>(),
        student in 0_usize..10_000,
        level in any_level(),
    ) {
        let world = World::new(Units::Metric, seed, level);
        let mut other = World::new(Units::Metric, seed, level);
        other.course.wall.line.clear();
        other.course.wall.height = crate::quantity::metres(1.4);
        other.course.frames.spacing = crate::quantity::metres(1.0);
        other.course.worksheets.left_out = vec![Kind::Tonnes];
        other.course.worksheets.questions = Some(3);
        for one in world.undrawn(student) {
            prop_assert_eq!(question(one.kind, &other.asked(), student), Some(one));
        }
    }
}
