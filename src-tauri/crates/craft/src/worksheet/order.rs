//! The question that puts stages of the work in order.

use super::draw::Draw;
use super::{Kind, Level, Question};
use crate::tables::{Stage, Work};

/// So many stages are asked about, by level.
const STAGES_ASKED: [usize; 3] = [4, 5, 7];

/// Some stages, shuffled; the answer is their letters in the order of the table.
///
/// Built ends are left out: they rise with the rest of the wall, so that their place in a
/// row is a matter of opinion. So is what is done every day.
/// Where chance would give what the neighbour `before` has, one stage moves to the end.
pub(super) fn order_of_work(
    draw: &mut Draw,
    before: Option<Draw>,
    stages: &[Stage],
    level: Level,
) -> Option<Question> {
    let [easy, usual, hard] = STAGES_ASKED;
    let count = level.pick(easy, usual, hard);
    let names: Vec<&str> = stages
        .iter()
        .filter(|stage| !matches!(stage.work, Work::Heads | Work::EachDay(_)))
        .map(|stage| stage.name.as_str())
        .collect();
    let mut asked = draw.some_of(names.len(), count);
    if before.is_some_and(|mut draw| draw.some_of(names.len(), count) == asked) {
        asked.rotate_left(1);
    }
    if asked.is_sorted() {
        // What is in order already is no question.
        asked.reverse();
    }
    let right = in_order(&asked);
    if right.len() < 2 {
        return None;
    }
    let name = |place: usize| names.get(place).copied().unwrap_or_default();
    let letters: Vec<String> = right.iter().map(|(_, letter)| letter.to_string()).collect();
    let in_words: Vec<String> = right
        .iter()
        .map(|(place, letter)| format!("{letter} {}", name(*place)))
        .collect();
    Some(Question {
        ask: "In what order is this work done? Write the letters, the first stage first."
            .to_owned(),
        working: in_words.join("\n"),
        answer: letters.join(" "),
        choices: asked.iter().map(|place| name(*place).to_owned()).collect(),
        ..Question::of(Kind::OrderOfWork)
    })
}

/// Each stage's place in the table with the letter it is asked by, the first stage first.
fn in_order(asked: &[usize]) -> Vec<(usize, char)> {
    let mut lettered: Vec<(usize, char)> = asked.iter().copied().zip('A'..='Z').collect();
    lettered.sort_unstable();
    lettered
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::worksheet::sample;

    /// By hand: second, last, first becomes C A B.
    #[test]
    fn letters_follow_the_table() {
        assert_eq!(in_order(&[4, 7, 1]), [(1, 'C'), (4, 'A'), (7, 'B')]);
    }

    #[test]
    fn the_answer_puts_the_choices_in_the_order_of_the_table() {
        let stages = sample::tables().stages;
        for student in 0..200 {
            let mut draw = Draw::new(1, student, Kind::OrderOfWork);
            let question =
                order_of_work(&mut draw, None, &stages, Level::Usual).expect("enough stages");
            assert_eq!(question.choices.len(), 5);
            let places: Vec<usize> = question
                .answer
                .split(' ')
                .map(|letter| {
                    let choice = usize::from(letter.as_bytes()[0] - b'A');
                    stages
                        .iter()
                        .position(|stage| stage.name == question.choices[choice])
                        .expect("a stage of the table")
                })
                .collect();
            assert_eq!(places.len(), 5);
            assert!(places.is_sorted_by(|a, b| a < b), "{places:?}");
            assert_ne!(question.answer, "A B C D E");
        }
    }

    #[test]
    fn built_ends_are_not_asked_about() {
        let stages = sample::tables().stages;
        assert!(stages.iter().any(|stage| stage.work == Work::Heads));
        for student in 0..200 {
            let mut draw = Draw::new(1, student, Kind::OrderOfWork);
            let question =
                order_of_work(&mut draw, None, &stages, Level::Usual).expect("enough stages");
            assert!(
                !question
                    .choices
                    .contains(&"Finish the built ends".to_owned())
            );
        }
    }

    #[test]
    fn one_stage_is_no_question() {
        let stages = sample::tables().stages;
        for few in 0..2 {
            let mut draw = Draw::new(1, 0, Kind::OrderOfWork);
            assert_eq!(
                order_of_work(&mut draw, None, &stages[..few], Level::Usual),
                None
            );
        }
        let mut draw = Draw::new(1, 0, Kind::OrderOfWork);
        let question =
            order_of_work(&mut draw, None, &stages[..2], Level::Usual).expect("two stages");
        assert_eq!(question.answer, "B A");
    }
}
