//! Pairs of a group: as its way of pairing asks, and which wishes could not be met.

use super::blocks::{MOST_TOGETHER, blocks};
use super::matching::best;
use super::speed;
use super::weights::{Two, Weights};
use crate::course::{Group, Student};
use crate::tables::PaceTable;
use std::collections::HashSet;

/// Everyone of a group up to this size is tried as the one who builds with two others; of a
/// larger one so many that the effort stays the same.
const ALL_TRIED: usize = 40;

/// At least so many are tried: one of each experience.
const LEAST_TRIED: usize = 3;

/// A wish that the pairs do not meet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Unmet {
    /// Two who are not to be put together are, because there was no other way.
    Together(String, String),
    /// The first would like to build with one of these, and does with none.
    Wish(String, Vec<String>),
}

/// How many pairs a group makes: an odd one out joins a pair, one person works alone.
pub fn pair_count(students: usize) -> usize {
    (students / 2).max(1)
}

/// The pairs of a group, an odd number with one three, in the order of the roster.
///
/// The best of all ways to pair them, aim by aim: people not to be put together are not; then
/// what [`crate::course::Pairing`] says; then pairs of equal pace; then neighbours in the roster.
/// A group too large to be weighed together is dealt into blocks first. `laying` is the stage whose rates count.
pub fn pairs(group: &Group, pace: &PaceTable, laying: &str) -> Vec<Vec<Student>> {
    let everyone: Vec<&Student> = group.students.iter().collect();
    pairs_of(&everyone, group, &[], (pace, laying))
}

/// The pairs of those of a group who are there. Pairs that there `were` are kept before pace
/// is made equal.
pub(super) fn pairs_of(
    there: &[&Student],
    group: &Group,
    were: &[Vec<Student>],
    (pace, laying): (&PaceTable, &str),
) -> Vec<Vec<Student>> {
    let kept: HashSet<(&str, &str)> = were.iter().flat_map(|pair| twos(pair)).collect();
    let mut pairs: Vec<Vec<usize>> = Vec::new();
    for block in blocks(there) {
        let people: Vec<&Student> = block
            .iter()
            .filter_map(|at| there.get(*at).copied())
            .collect();
        let speeds: Vec<f64> = people
            .iter()
            .map(|student| speed(pace, laying, student.experience))
            .collect();
        let weights = Weights::of(&people, group.pairing, &speeds, &kept);
        let groups = best(&weights, &middles(&people)).groups;
        pairs.extend(groups.into_iter().map(|group| {
            let mut members: Vec<usize> = group
                .into_iter()
                .filter_map(|at| block.get(at).copied())
                .collect();
            members.sort_unstable();
            members
        }));
    }
    pairs.sort_unstable();
    let student = |at: &usize| there.get(*at).map(|student| (*student).clone());
    pairs
        .iter()
        .map(|pair| pair.iter().filter_map(student).collect())
        .collect()
}

fn twos(pair: &[Student]) -> impl Iterator<Item = (&str, &str)> {
    pair.iter().flat_map(move |one| {
        pair.iter()
            .filter(move |other| other.name != one.name)
            .map(move |other| (one.name.as_str(), other.name.as_str()))
    })
}

/// Who is tried as the one who builds with two others. Those of one experience whom no wish
/// concerns are as good as each other, so the last of them in the roster stands for all.
fn middles(people: &[&Student]) -> Vec<usize> {
    let named: HashSet<&str> = people
        .iter()
        .flat_map(|student| student.with.iter().chain(&student.apart))
        .map(String::as_str)
        .collect();
    let has_wishes = |student: &Student| {
        !student.with.is_empty()
            || !student.apart.is_empty()
            || named.contains(student.name.as_str())
    };
    let mut seen = HashSet::new();
    let (mut plain, mut wishing) = (Vec::new(), Vec::new());
    for (at, student) in people.iter().enumerate().rev() {
        if has_wishes(student) {
            wishing.push(at);
        } else if seen.insert(student.experience) {
            plain.push(at);
        }
    }
    let count = people.len().clamp(1, MOST_TOGETHER);
    let tried = (ALL_TRIED.pow(4) / count.pow(3)).max(LEAST_TRIED);
    plain.into_iter().chain(wishing).take(tried).collect()
}

/// The wishes that these pairs do not meet, of those who are there.
pub fn unmet(pairs: &[Vec<Student>]) -> Vec<Unmet> {
    let there: HashSet<&str> = pairs.iter().flatten().map(|it| it.name.as_str()).collect();
    let mut unmet = Vec::new();
    for pair in pairs {
        for (at, one) in pair.iter().enumerate() {
            let together = pair.iter().skip(at + 1);
            unmet.extend(
                together
                    .filter(|other| Two { one, other }.apart())
                    .map(|other| Unmet::Together(one.name.clone(), other.name.clone())),
            );
            let wished: Vec<String> = one
                .with
                .iter()
                .filter(|friend| there.contains(friend.as_str()))
                .cloned()
                .collect();
            let is_met = pair.iter().any(|other| wished.contains(&other.name));
            if !wished.is_empty() && !is_met {
                unmet.push(Unmet::Wish(one.name.clone(), wished));
            }
        }
    }
    unmet
}
