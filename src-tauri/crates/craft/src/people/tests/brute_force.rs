//! The best pairs against every way there is to pair a small group.

use super::pace;
use crate::course::{Experience, Pairing, Student};
use crate::people::matching::best;
use crate::people::speed;
use crate::people::weights::Weights;
use proptest::prelude::*;
use std::collections::HashSet;

/// The best worth of all ways to pair these, one three if they are odd.
fn tried(weights: &Weights, left: &[usize], odd: bool) -> Option<i128> {
    let Some((&first, rest)) = left.split_first() else {
        return (!odd).then_some(0);
    };
    let without = |out: &[usize]| -> Vec<usize> {
        let stays = |it: &usize| !out.contains(it);
        rest.iter().copied().filter(stays).collect()
    };
    let mut ways = Vec::new();
    for (at, &second) in rest.iter().enumerate() {
        let after = tried(weights, &without(&[second]), odd);
        ways.extend(after.map(|after| after + weights.worth(first, second)));
        for &third in rest.iter().skip(at + 1).filter(|_| odd) {
            let after = tried(weights, &without(&[second, third]), false);
            ways.extend(after.map(|after| after + three(weights, [first, second, third])));
        }
    }
    ways.into_iter().max()
}

fn three(weights: &Weights, [a, b, c]: [usize; 3]) -> i128 {
    let round = |middle, one, other| {
        weights.worth(middle, one) + weights.worth(middle, other) + weights.ends(one, other)
    };
    round(a, b, c).max(round(b, a, c)).max(round(c, a, b))
}

prop_compose! {
    fn people()(
        count in 2..=8_usize,
        experience in prop::collection::vec(0..3_usize, 8),
        twos in prop::collection::vec((0..8_usize, 0..8_usize, prop::bool::ANY), 0..10),
    ) -> Vec<Student> {
        let known = [Experience::Novice, Experience::Improver, Experience::Experienced];
        let mut people: Vec<Student> = experience
            .into_iter()
            .take(count)
            .enumerate()
            .map(|(at, of)| Student::new(at.to_string(), known[of]))
            .collect();
        for (who, whom, apart) in twos {
            if who < count && whom < count && who != whom {
                let list = if apart { &mut people[who].apart } else { &mut people[who].with };
                list.push(whom.to_string());
            }
        }
        people
    }
}

proptest! {
    #[test]
    fn no_way_of_pairing_is_better(people in people(), way in 0..3_usize) {
        let pairing = [Pairing::Mixed, Pairing::Friends, Pairing::Alike][way];
        let pace = pace();
        let everyone: Vec<&Student> = people.iter().collect();
        let speeds: Vec<f64> = people
            .iter()
            .map(|it| speed(&pace, super::LAYING, it.experience))
            .collect();
        let weights = Weights::of(&everyone, pairing, &speeds, &HashSet::new());
        let all: Vec<usize> = (0..people.len()).collect();
        let found = best(&weights, &all);
        let by_trying = tried(&weights, &all, !people.len().is_multiple_of(2));
        prop_assert_eq!(Some(found.worth), by_trying);
    }
}
