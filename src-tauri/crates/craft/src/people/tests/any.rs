//! What holds for the pairs, stints and rounds of any group.

use super::{LAYING, group, pace};
use crate::course::{End, Group, Pairing};
use crate::people::{
    LAYING_STAGES, LayingStage, Round, Stint, facing_places, pair_count, pairs, rotation, stints,
};
use crate::quantity::{Read, metres};
use crate::wall::Side;
use proptest::prelude::*;
use std::collections::{BTreeSet, HashMap};

prop_compose! {
    fn groups()(
        letters in "[NNNIE]{1,30}",
        way in 0..3_usize,
        twos in prop::collection::vec((0..30_usize, 0..30_usize, prop::bool::ANY), 0..20),
    ) -> Group {
        let mut group = group(&letters);
        group.pairing = [Pairing::Mixed, Pairing::Friends, Pairing::Alike][way];
        for (who, whom, apart) in twos {
            let name = (whom + 1).to_string();
            if let Some(student) = group.students.get_mut(who).filter(|it| it.name != name) {
                let list = if apart { &mut student.apart } else { &mut student.with };
                list.push(name);
            }
        }
        group
    }
}

fn names<'a>(people: impl IntoIterator<Item = &'a String>) -> Vec<&'a String> {
    let mut names: Vec<&String> = people.into_iter().collect();
    names.sort();
    names
}

fn stints_of(group: &Group, length: f64) -> Vec<Stint> {
    stints(group, metres(length), &pace(), LAYING)
}

fn all_stages(minutes: f64) -> Vec<LayingStage> {
    LAYING_STAGES
        .map(|id| LayingStage {
            id: id.to_owned(),
            minutes,
        })
        .to_vec()
}

fn everyone(round: &Round) -> Vec<&String> {
    let at = |place| {
        let place: &crate::people::Place = place;
        place.left.iter().chain(&place.right)
    };
    names(round.places.iter().flat_map(at))
}

proptest! {
    #[test]
    fn stints_cover_the_wall_and_everyone_is_in_one(group in groups(), length in 1.0..40.0_f64) {
        let stints = stints_of(&group, length);
        prop_assert_eq!(stints.len(), pair_count(group.students.len()));
        let mut at = 0.0;
        let all: f64 = stints.iter().map(|it| crate::people::together(&it.members, &pace(), LAYING)).sum();
        for stint in &stints {
            prop_assert!((stint.from.si() - at).abs() < 1e-12);
            at = stint.to.si();
            // The pair's share of the wall is its share of the pace: all finish together.
            let share = crate::people::together(&stint.members, &pace(), LAYING) / all;
            prop_assert!(((at - stint.from.si()) - share * length).abs() < 1e-9);
        }
        prop_assert!((at - length).abs() < 1e-12);
        let there = names(stints.iter().flat_map(|it| &it.members).map(|it| &it.name));
        prop_assert_eq!(there, names(group.students.iter().map(|it| &it.name)));
        prop_assert!(stints.len() <= facing_places(group.students.len()));
    }

    #[test]
    fn everyone_is_once_in_every_round_and_was_at_both_faces(group in groups(), crews in 0..6_usize) {
        let stints = stints_of(&group, 12.0);
        let rounds = rotation(&stints, &all_stages(90.0), [End::Head; 2], crews, None).rounds;
        let all = names(group.students.iter().map(|it| &it.name));
        let (mut left, mut right) = (BTreeSet::new(), BTreeSet::new());
        prop_assert_eq!(rounds.len(), 6);
        for round in &rounds {
            prop_assert_eq!(everyone(round), all.clone());
            for place in &round.places {
                left.extend(place.left.clone());
                right.extend(place.right.clone());
            }
        }
        prop_assert_eq!(left.len(), all.len());
        prop_assert_eq!(right.len(), all.len());
        let copes = &rounds[5].copes;
        let mut pairs: Vec<usize> = copes.iter().map(|it| it.pair).collect();
        pairs.sort_unstable();
        prop_assert_eq!(pairs, (0..stints.len()).collect::<Vec<_>>());
        for shift in copes {
            let with = copes.iter().filter(|it| it.from < shift.to && shift.from < it.to);
            prop_assert!(with.count() <= crews.max(1));
        }
    }

    #[test]
    fn before_a_bank_nobody_is_behind_the_wall_and_everyone_lays(
        group in groups(),
        bank in prop_oneof![Just(Side::Left), Just(Side::Right)],
    ) {
        let stints = stints_of(&group, 12.0);
        let rounds = rotation(&stints, &all_stages(90.0), [End::Head; 2], 2, Some(bank)).rounds;
        let all = names(group.students.iter().map(|it| &it.name));
        let mut laid = BTreeSet::new();
        for round in &rounds {
            prop_assert_eq!(everyone(round), all.clone());
            for place in &round.places {
                let (front, back) = match bank {
                    Side::Left => (&place.right, &place.left),
                    Side::Right => (&place.left, &place.right),
                };
                prop_assert!(back.is_empty());
                prop_assert!(place.hearting.len() < front.len(), "somebody lays");
                let lay = front.len() - place.hearting.len();
                prop_assert_eq!(&front[lay..], &place.hearting[..]);
                laid.extend(front[..lay].to_vec());
            }
        }
        prop_assert_eq!(laid.len(), all.len());
    }

    #[test]
    fn every_pair_that_fits_has_a_turn_at_a_head(
        group in groups(),
        minutes in 1.0..400.0_f64,
        built in (prop::bool::ANY, prop::bool::ANY),
    ) {
        let end = |built| if built { End::Head } else { End::Raked };
        let stints = stints_of(&group, 12.0);
        let ends = [end(built.0), end(built.1)];
        let rounds = rotation(&stints, &all_stages(minutes), ends, 3, None).rounds;
        let heads = usize::from(built.0) + usize::from(built.1);
        let turns = &rounds[4].heads;
        prop_assert!(rounds.iter().all(|it| it.stage == "heads" || it.heads.is_empty()));
        let fit = ((minutes / 15.0).floor() as usize).max(1);
        if heads == 0 {
            prop_assert!(turns.is_empty());
        } else if stints.len() == 1 {
            // One head after the other.
            prop_assert_eq!(turns.len(), heads);
            return Ok(());
        } else {
            prop_assert!(turns.len() >= stints.len().min(heads * fit).min(2 * fit));
            let pairs: BTreeSet<usize> = turns.iter().map(|it| it.pair).collect();
            prop_assert_eq!(pairs.len(), turns.len(), "one turn each");
        }
        let mut by_end: HashMap<usize, f64> = HashMap::new();
        for turn in turns {
            let at = by_end.entry(turn.end).or_insert(0.0);
            prop_assert!((turn.from - *at).abs() < 1e-9, "turns follow one another");
            *at = turn.to;
            prop_assert!(fit == 1 || stints.len() == 1 || 15.0 - 1e-6 <= (turn.to - turn.from) * minutes);
        }
        prop_assert_eq!(by_end.len(), heads);
        prop_assert!(by_end.values().all(|at| (at - 1.0).abs() < 1e-9));
    }
}

#[test]
fn a_group_of_any_size_is_paired_and_its_links_hold_where_they_can() {
    for count in [63, 64, 65, 128, 129, 199, 200, 500] {
        let letters: String = "NNNI".chars().cycle().take(count).collect();
        let mut group = group(&letters);
        group.pairing = Pairing::Friends;
        for at in (0..count - 1).step_by(10) {
            group.students[at].with = vec![(count - at).to_string()];
        }
        let pairs = pairs(&group, &pace(), LAYING);
        assert_eq!(pairs.len(), pair_count(count));
        assert_eq!(
            pairs.iter().filter(|pair| pair.len() == 3).count(),
            count % 2
        );
        let unmet = crate::people::unmet(&pairs);
        // A block may cut one circle of friends at each of its two borders.
        assert!(unmet.len() <= count / 32, "{count}: {unmet:?}");
    }
}
