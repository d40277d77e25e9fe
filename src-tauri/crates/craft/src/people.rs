//! People at the wall: pairs that mix experience, and the stint each pair builds.

use crate::course::{Experience, Group, Student};
use crate::quantity::{Length, metres};
use crate::tables::PaceTable;

/// A pair (or three, or one alone) and its stretch of wall.
#[derive(Debug, Clone, PartialEq)]
pub struct Stint {
    /// Where it begins.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
    /// Who builds it.
    pub members: Vec<Student>,
}

/// How many pairs a group makes: an odd one out joins a pair, one person works alone.
pub fn pair_count(students: usize) -> usize {
    (students / 2).max(1)
}

/// Facing places the group takes at the wall: half a person's place is a whole one.
pub fn facing_places(students: usize) -> usize {
    students.div_ceil(2)
}

/// Pairs that mix experience: the most experienced with the least, an odd one out with the
/// last pair, where experience lies closest.
pub fn pairs(group: &Group) -> Vec<Vec<Student>> {
    let mut by_experience = group.students.clone();
    by_experience.sort_by_key(|student| std::cmp::Reverse(student.experience));
    let mut line: std::collections::VecDeque<Student> = by_experience.into();
    let mut pairs = Vec::new();
    while 3 < line.len() || line.len() == 2 {
        pairs.extend([line
            .pop_front()
            .into_iter()
            .chain(line.pop_back())
            .collect()]);
    }
    if !line.is_empty() {
        pairs.push(line.into_iter().collect());
    }
    pairs
}

/// Stints along the wall whose lengths follow the pace of their pairs, so that all finish
/// together. `laying` is the stage whose rates count.
pub fn stints(group: &Group, length: Length, pace: &PaceTable, laying: &str) -> Vec<Stint> {
    let pairs = pairs(group);
    let speeds: Vec<f64> = pairs
        .iter()
        .map(|pair| {
            pair.iter()
                .map(|student| speed(pace, laying, student.experience))
                .sum()
        })
        .collect();
    let all: f64 = speeds.iter().sum();
    let mut from = metres(0.0);
    let last = pairs.len().saturating_sub(1);
    pairs
        .into_iter()
        .zip(speeds)
        .enumerate()
        .map(|(at, (members, speed))| {
            // The last stint ends where the wall ends, whatever the roundings before it.
            let to = if at == last {
                length
            } else {
                from + length * (speed / all)
            };
            let stint = Stint { from, to, members };
            from = to;
            stint
        })
        .collect()
}

/// Units of a stage's work one person does in an hour hands-on. A stage without a rate is
/// refused before anything is worked out; it would count as 1.
pub fn speed(pace: &PaceTable, stage: &str, experience: Experience) -> f64 {
    let column = match experience {
        Experience::Novice => 0,
        Experience::Improver => 1,
        Experience::Experienced => 2,
    };
    pace.rates
        .iter()
        .find(|rate| rate.stage == stage)
        .map_or(1.0, |rate| 1.0 / rate.hours[column])
}

#[cfg(test)]
mod tests {
    use super::*;

    fn group(experiences: &[Experience]) -> Group {
        let students = experiences
            .iter()
            .enumerate()
            .map(|(at, &experience)| Student {
                name: format!("Student {}", at + 1),
                experience,
                gloves: None,
            })
            .collect();
        Group {
            instructors: 1,
            assistants: 0,
            students,
        }
    }

    #[test]
    fn every_student_is_in_one_pair_and_experience_is_mixed() {
        use Experience::{Experienced, Improver, Novice};
        for count in 1..=13 {
            let mut experiences = vec![Novice; count];
            experiences[0] = Experienced;
            if 1 < count {
                experiences[1] = Improver;
            }
            let pairs = pairs(&group(&experiences));
            assert_eq!(pairs.len(), pair_count(count), "{count} students");
            let mut names: Vec<_> = pairs
                .iter()
                .flatten()
                .map(|student| &student.name)
                .collect();
            names.sort();
            names.dedup();
            assert_eq!(names.len(), count);
            if 3 < count {
                assert_eq!(pairs[0][0].experience, Experienced);
                assert_eq!(pairs[0][1].experience, Novice);
            }
        }
    }
}
