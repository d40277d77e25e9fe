//! The best pairs: a maximum-weight matching of everyone, and the best three of an odd number.
//!
//! The matching is Edmonds' blossom algorithm (Edmonds, "Paths, trees, and flowers", 1965;
//! Galil, "Efficient algorithms for finding maximum matching in graphs", 1986) as rustworkx
//! has it.

use super::weights::Weights;
use rustworkx_core::max_weight_matching::max_weight_matching;
use rustworkx_core::petgraph::graph::UnGraph;
use std::convert::Infallible;

/// How often two of a three who are not to be put together are looked round for others.
const DETOURS: u32 = 6;

/// Everyone in a pair, one of them a three if they are odd, and what that is worth.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Groups {
    pub(super) worth: i128,
    pub(super) groups: Vec<Vec<usize>>,
}

/// The pairs that are worth most together. An odd number has one three: somebody who builds
/// with two others, of those in `middles` the one with whom all are worth most.
pub(super) fn best(weights: &Weights, middles: &[usize]) -> Groups {
    let count = weights.count();
    if count < 2 {
        let groups = (0..count).map(|alone| vec![alone]).collect();
        return Groups { worth: 0, groups };
    }
    if count.is_multiple_of(2) {
        return matched(count, &|one, other| Some(weights.worth(one, other)));
    }
    let mut best: Option<Groups> = None;
    for &middle in middles {
        let with = Three { weights, middle };
        let groups = with.best(&mut Vec::new(), DETOURS);
        if best.as_ref().is_none_or(|best| best.worth < groups.worth) {
            best = Some(groups);
        }
    }
    best.unwrap_or_else(|| Groups {
        worth: 0,
        groups: vec![(0..count).collect()],
    })
}

/// The search for the best three round one person.
struct Three<'w> {
    weights: &'w Weights,
    middle: usize,
}

impl Three<'_> {
    /// The middle one stands there twice and so is matched twice. Where the two so found are
    /// not to be put together, the best with the one or the other kept from the middle may be
    /// better: they are looked at as long as they could be.
    fn best(&self, kept_from: &mut Vec<usize>, detours: u32) -> Groups {
        let count = self.weights.count();
        let who = |place: usize| if place == count { self.middle } else { place };
        let pairs = matched(count + 1, &|one, other| {
            let (one, other) = (who(one), who(other));
            let is_kept = |a: usize, b: usize| a == self.middle && kept_from.contains(&b);
            let never = one == other || is_kept(one, other) || is_kept(other, one);
            (!never).then(|| self.weights.worth(one, other))
        });
        let (three, mut groups): (Vec<_>, Vec<_>) = pairs
            .groups
            .into_iter()
            .map(|pair| pair.into_iter().map(who).collect::<Vec<_>>())
            .partition(|pair| pair.contains(&self.middle));
        let mut ends = three.into_iter().flatten().filter(|it| *it != self.middle);
        let (Some(one), Some(other)) = (ends.next(), ends.next()) else {
            // So many are kept from the middle that too few are left to build with it.
            return Groups {
                worth: i128::MIN,
                groups,
            };
        };
        groups.push(vec![one, self.middle, other]);
        let ends = self.weights.ends(one, other);
        let mut best = Groups {
            worth: pairs.worth + ends,
            groups,
        };
        if ends < 0 && 0 < detours {
            for end in [one, other] {
                kept_from.push(end);
                let round = self.best(kept_from, detours - 1);
                kept_from.pop();
                if best.worth < round.worth {
                    best = round;
                }
            }
        }
        best
    }
}

/// A matching of as many as can be, of these the one worth most. `None` where two can't be
/// matched.
fn matched(count: usize, worth: &dyn Fn(usize, usize) -> Option<i128>) -> Groups {
    let mut graph = UnGraph::<(), i128>::with_capacity(count, count * count / 2);
    let nodes: Vec<_> = (0..count).map(|_| graph.add_node(())).collect();
    for (at, one) in nodes.iter().enumerate() {
        for (before, other) in nodes.iter().enumerate().take(at) {
            if let Some(worth) = worth(before, at) {
                graph.add_edge(*other, *one, worth);
            }
        }
    }
    let weight = |edge: rustworkx_core::petgraph::graph::EdgeReference<'_, i128>| {
        Ok::<_, Infallible>(*edge.weight())
    };
    let Ok(found) = max_weight_matching(&graph, true, weight, false);
    let mut groups: Vec<Vec<usize>> = found
        .into_iter()
        .map(|(one, other)| vec![one.min(other), one.max(other)])
        .collect();
    groups.sort_unstable();
    let total = groups
        .iter()
        .filter_map(|pair| match pair[..] {
            [one, other] => worth(one, other),
            _ => None,
        })
        .sum();
    Groups {
        worth: total,
        groups,
    }
}
