//! The question that matches hazards of the work with what is done about them.

use super::draw::Draw;
use super::{Kind, Level, Question};
use crate::tables::HazardAsked;

/// So many hazards are asked about, and so many more controls offered than fit, by level.
const ASKED: [(usize, usize); 3] = [(4, 0), (5, 0), (5, 2)];

/// Hazards, and the controls in no order; the answer is the letter of each.
///
/// Neighbours have different hazards, for one draws from every second row of the table.
pub(super) fn matches(draw: &mut Draw, table: &[HazardAsked], level: Level) -> Option<Question> {
    let [easy, usual, hard] = ASKED;
    let (count, more) = level.pick(easy, usual, hard);
    let rows = draw.some_unlike_neighbours(table.len(), count + more);
    let hazards: Vec<usize> = rows.iter().copied().take(count).collect();
    if hazards.len() < 2 {
        return None;
    }
    let mut controls: Vec<usize> = draw
        .some_of(rows.len(), rows.len())
        .into_iter()
        .filter_map(|at| rows.get(at).copied())
        .collect();
    if controls.starts_with(&hazards) {
        // What stands opposite already is no question.
        controls.rotate_left(1);
    }
    let letter = |row: &usize| {
        let place = controls.iter().position(|one| one == row);
        place.and_then(|at| ('A'..='Z').nth(at))
    };
    let letters: Vec<char> = hazards.iter().filter_map(letter).collect();
    let row = |at: &usize| table.get(*at);
    let numbered = |write: &dyn Fn(usize, char, &HazardAsked) -> String| -> Vec<String> {
        let pairs = hazards.iter().filter_map(row).zip(&letters);
        pairs
            .enumerate()
            .map(|(at, (one, letter))| write(at + 1, *letter, one))
            .collect()
    };
    let extra = if more == 0 {
        ""
    } else {
        " Some fit none of these hazards."
    };
    Some(Question {
        ask: format!(
            "What is done about each hazard? Write beside each number the letter that fits best.\
             {extra}"
        ),
        working: numbered(&|number, letter, one| {
            format!("{number} {}: {letter} {}", one.hazard, one.control)
        })
        .join("\n"),
        answer: numbered(&|number, letter, _| format!("{number} {letter}")).join(", "),
        choices: controls
            .iter()
            .filter_map(row)
            .map(|one| one.control.clone())
            .collect(),
        prompts: hazards
            .iter()
            .filter_map(row)
            .map(|one| one.hazard.clone())
            .collect(),
        ..Question::of(Kind::HazardAndControl)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn table(rows: usize) -> Vec<HazardAsked> {
        (0..rows)
            .map(|at| HazardAsked {
                hazard: format!("hazard {at}"),
                control: format!("control {at}"),
                source: "made up".to_owned(),
            })
            .collect()
    }

    #[test]
    fn each_letter_stands_at_the_control_of_its_hazard() {
        let table = table(16);
        for (level, hazards, controls) in [
            (Level::Easy, 4, 4),
            (Level::Usual, 5, 5),
            (Level::Hard, 5, 7),
        ] {
            for student in 0..200 {
                let mut draw = Draw::new(3, student, Kind::HazardAndControl);
                let question = matches(&mut draw, &table, level).expect("rows enough");
                assert_eq!(question.prompts.len(), hazards);
                assert_eq!(question.choices.len(), controls);
                let answers = question.answer.split(", ").zip(&question.prompts);
                for (at, (answer, hazard)) in answers.enumerate() {
                    let (number, letter) = answer.split_once(' ').expect("number and letter");
                    assert_eq!(number, (at + 1).to_string());
                    let choice = usize::from(letter.as_bytes()[0] - b'A');
                    let control = question.choices[choice].replace("control", "hazard");
                    assert_eq!(control, *hazard);
                }
                assert_ne!(question.answer, "1 A, 2 B, 3 C, 4 D, 5 E");
            }
        }
    }

    #[test]
    fn neighbours_share_no_hazard() {
        let table = table(16);
        for student in 0..50 {
            let [mine, next] = [student, student + 1].map(|student| {
                let mut draw = Draw::new(3, student, Kind::HazardAndControl);
                matches(&mut draw, &table, Level::Usual).expect("rows enough")
            });
            assert!(mine.prompts.iter().all(|one| !next.prompts.contains(one)));
        }
    }

    #[test]
    fn a_table_of_two_rows_is_no_question() {
        for rows in 0..3 {
            let mut draw = Draw::new(3, 0, Kind::HazardAndControl);
            assert_eq!(matches(&mut draw, &table(rows), Level::Usual), None);
        }
    }
}
