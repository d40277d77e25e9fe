//! From patterns used in part to whole battens: keep the whole part, relax what is left, again.

use super::fill::fill;
use super::problem::{Effort, Pattern, Problem, take};
use super::relax::{Relaxed, relax};

/// A relaxation on the way down may take one part in so many of what effort is left.
const STEPS_DOWN: usize = 5;

/// How near to a whole number counts as one.
const NEARLY: f64 = 1e-3;

/// The best packing met on the way down. At every step what is left is also filled at once, and
/// the sum of both is a packing; stops when one costs no more than `least`.
pub(super) fn dive(
    problem: &Problem,
    first: Relaxed,
    pool: &mut Vec<Pattern>,
    least: usize,
    effort: &mut Effort,
) -> Option<Vec<Pattern>> {
    let mut best: Option<(usize, Vec<Pattern>)> = None;
    let mut kept: Vec<Pattern> = Vec::new();
    let mut left = problem.demand.clone();
    let mut relaxed = first;
    loop {
        let before = kept.len();
        keep_whole(problem, &relaxed, pool, &mut left, &mut kept);
        if kept.len() == before {
            keep_largest(problem, &relaxed, pool, &mut left, &mut kept);
        }
        let mut bins = kept.clone();
        bins.extend(fill(problem, &left, effort));
        let cost = problem.cost(&bins);
        if best.as_ref().is_none_or(|(least, _)| cost < *least) {
            best = Some((cost, bins));
        }
        let done = kept.len() == before || left.iter().all(|&n| n == 0);
        if done || effort.spent_out() || best.as_ref().is_some_and(|(cost, _)| *cost <= least) {
            return best.map(|(_, bins)| bins);
        }
        let mut share = effort.share(STEPS_DOWN);
        let before = share.left();
        relaxed = relax(problem, &left, pool, &mut share);
        effort.spend(before - share.left());
    }
}

/// Each pattern as often as it is used in whole, as long as all it holds is still wanted.
fn keep_whole(
    problem: &Problem,
    relaxed: &Relaxed,
    pool: &[Pattern],
    left: &mut [usize],
    kept: &mut Vec<Pattern>,
) {
    for &(name, amount) in &relaxed.used {
        let mut whole = (amount + NEARLY).floor();
        while 1.0 <= whole {
            whole -= 1.0;
            keep(problem, &pool[name], left, kept);
        }
    }
}

/// The pattern that is nearest to being used in whole.
fn keep_largest(
    problem: &Problem,
    relaxed: &Relaxed,
    pool: &[Pattern],
    left: &mut [usize],
    kept: &mut Vec<Pattern>,
) {
    let used = relaxed.used.iter().copied();
    let largest = used.reduce(|best, next| if best.1 < next.1 { next } else { best });
    if let Some((name, _)) = largest {
        keep(problem, &pool[name], left, kept);
    }
}

fn keep(problem: &Problem, pattern: &Pattern, left: &mut [usize], kept: &mut Vec<Pattern>) {
    let trimmed = problem.trimmed(pattern, left);
    if !trimmed.counts.is_empty() {
        take(left, &trimmed, 1);
        kept.push(trimmed);
    }
}

#[cfg(test)]
mod tests {
    use super::super::problem::Stock;
    use super::*;

    fn case() -> Problem {
        Problem {
            sizes: vec![53, 44, 33, 24],
            demand: vec![7, 9, 8, 5],
            stocks: [80, 120].map(|cost| Stock { cost, room: cost }).to_vec(),
        }
    }

    /// Whatever the effort, all that is wanted is packed, once.
    #[test]
    fn what_comes_out_is_a_packing() {
        let problem = case();
        for steps in [0, 100, 10_000, 1_000_000] {
            let mut pool = Vec::new();
            let mut effort = Effort::of(steps);
            let relaxed = relax(&problem, &problem.demand, &mut pool, &mut effort);
            let bound = relaxed.bound;
            let bins = dive(&problem, relaxed, &mut pool, 0, &mut effort).expect("some");
            let mut left = problem.demand.clone();
            for bin in &bins {
                assert!(problem.taken(&bin.counts) <= problem.stocks[bin.stock].room);
                assert!(bin.counts.iter().all(|&(at, n)| n <= left[at]));
                take(&mut left, bin, 1);
            }
            assert_eq!(left, [0; 4]);
            assert!(bound <= problem.cost(&bins));
        }
    }

    /// Patterns that together hold more than is wanted are cut down as they are kept.
    #[test]
    fn nothing_is_cut_that_is_not_wanted() {
        let problem = case();
        let mut pool = vec![Pattern {
            stock: 1,
            counts: vec![(1, 1), (2, 1), (3, 1)],
        }];
        let used = vec![(0, 12.0)];
        let relaxed = Relaxed {
            prices: vec![0; 4],
            bound: 0,
            used,
        };
        let mut left = problem.demand.clone();
        let mut kept = Vec::new();
        keep_whole(&problem, &relaxed, &pool, &mut left, &mut kept);
        // By hand: nine of 44, eight of 33 and five of 24 go into nine battens, not twelve.
        assert_eq!((left, kept.len()), (vec![7, 0, 0, 0], 9));
        // Five hold all three (101), three 44 and 33 (77), one 44 alone.
        let pieces: usize = kept
            .iter()
            .flat_map(|bin| &bin.counts)
            .map(|&(_, n)| n)
            .sum();
        assert_eq!((pieces, problem.cost(&kept)), (22, 5 * 120 + 4 * 80));
        let dived = dive(&problem, relaxed, &mut pool, 0, &mut Effort::of(0)).expect("some");
        let pieces: usize = dived
            .iter()
            .flat_map(|bin| &bin.counts)
            .map(|&(_, n)| n)
            .sum();
        assert_eq!(pieces, 29);
    }
}
