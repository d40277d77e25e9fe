//! A large group dealt into blocks, each with its share of the experience and of the novices.

use crate::course::Student;
use std::collections::HashMap;

/// How many people are weighed together. The effort grows with the third power of it; a
/// course of so many is far beyond what one wall holds.
pub(super) const MOST_TOGETHER: usize = 64;

/// Everyone's place in the group, block by block, roster order within each. All blocks but the last are
/// even, so that at most one three is made. Those who wish for one another stay together, except
/// where a block is full.
pub(super) fn blocks(people: &[&Student]) -> Vec<Vec<usize>> {
    let count = people.len();
    let blocks = count.div_ceil(MOST_TOGETHER).max(1);
    if blocks == 1 {
        return vec![(0..count).collect()];
    }
    let spread = spread(people);
    let circles = circles(people);
    let mut order: Vec<usize> = (0..count).collect();
    order.sort_by(|&one, &other| {
        let of = |it: usize| (spread[circles[it]], circles[it], it);
        let (one, other) = (of(one), of(other));
        one.0
            .total_cmp(&other.0)
            .then_with(|| (one.1, one.2).cmp(&(other.1, other.2)))
    });
    let size = count.div_ceil(blocks).next_multiple_of(2);
    let sorted = |block: &[usize]| {
        let mut block = block.to_vec();
        block.sort_unstable();
        block
    };
    order.chunks(size).map(sorted).collect()
}

/// For each person how far down the list of those of their experience they stand, 0 to 1. In
/// this order any stretch of people has as much experience as any other.
fn spread(people: &[&Student]) -> Vec<f64> {
    let mut all = HashMap::new();
    for student in people {
        *all.entry(student.experience).or_insert(0_usize) += 1;
    }
    let mut seen = HashMap::new();
    people
        .iter()
        .map(|student| {
            let seen = seen.entry(student.experience).or_insert(0_usize);
            *seen += 1;
            let of = all.get(&student.experience).copied().unwrap_or(1);
            (*seen as f64 - 0.5) / of as f64
        })
        .collect()
}

/// For each person the first in the roster of those they are linked with by wishes.
fn circles(people: &[&Student]) -> Vec<usize> {
    let places: HashMap<&str, usize> = people
        .iter()
        .enumerate()
        .map(|(at, student)| (student.name.as_str(), at))
        .collect();
    let mut circles: Vec<usize> = (0..people.len()).collect();
    for (at, student) in people.iter().enumerate() {
        for friend in student.with.iter().filter_map(|it| places.get(it.as_str())) {
            let (one, other) = (circles[at], circles[*friend]);
            let (first, last) = (one.min(other), one.max(other));
            for circle in &mut circles {
                if *circle == last {
                    *circle = first;
                }
            }
        }
    }
    circles
}
