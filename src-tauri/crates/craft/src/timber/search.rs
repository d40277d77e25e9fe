//! The exact search for small cases, bounded: every packing that could cost less is tried.
//!
//! The longest piece left has to be in some batten, and that batten may be taken to be full:
//! pulling pieces in from other battens never makes those longer. So each step tries, for the
//! longest piece left, every full pattern that holds it. A branch ends when what is spent and
//! the least that the rest can cost (by the relaxation's prices, by its sheer length, and
//! lifted to a total that can be bought) is no better than the best known, or when the same
//! rest was reached before for no more.

use super::problem::{Count, Effort, Pattern, Problem, Totals, take};
use super::relax::worth;
use std::collections::HashMap;

/// More pieces than this are not searched: the way down would be too deep.
const MOST_PIECES: usize = 300;
/// More ways than this to go on at one step are not all looked at.
const MOST_LOOKS: usize = 20_000;

/// What the search found.
#[derive(Debug, PartialEq)]
pub(super) struct Found {
    /// A packing that costs less than the one given, if there was one.
    pub(super) better: Option<Vec<Pattern>>,
    /// Whether nothing was left out: then there is none cheaper.
    pub(super) complete: bool,
}

struct Search<'a> {
    problem: &'a Problem,
    prices: &'a [i32],
    totals: &'a Totals,
    effort: Effort,
    complete: bool,
    /// A packing counts only if it costs no more than this.
    target: usize,
    /// No packing can cost less than this.
    least: usize,
    better: Option<Vec<Pattern>>,
    path: Vec<Pattern>,
    /// The least spent so far to come to each rest.
    seen: HashMap<Vec<usize>, usize>,
}

/// Searches for a packing that costs less than `cost`, down to `least`.
pub(super) fn search(
    problem: &Problem,
    prices: &[i32],
    totals: &Totals,
    (least, cost): (usize, usize),
    effort: Effort,
) -> Found {
    let pieces: usize = problem.demand.iter().sum();
    if MOST_PIECES < pieces {
        return Found {
            better: None,
            complete: false,
        };
    }
    let mut search = Search {
        problem,
        prices,
        totals,
        effort,
        complete: true,
        target: totals.below(cost),
        least,
        better: None,
        path: Vec::new(),
        seen: HashMap::new(),
    };
    search.step(&mut problem.demand.clone(), 0);
    Found {
        better: search.better,
        complete: search.complete,
    }
}

impl Search<'_> {
    /// Packs what is left, having spent so much.
    fn step(&mut self, left: &mut [usize], spent: usize) {
        let Some(longest) = left.iter().position(|&n| n != 0) else {
            self.better = Some(self.path.clone());
            self.target = self.totals.below(spent);
            return;
        };
        if !self.hopeful(left, spent) {
            return;
        }
        for pattern in self.patterns(left, longest) {
            let cost = self.problem.stocks[pattern.stock].cost;
            take(left, &pattern, 1);
            self.path.push(pattern);
            if spent + cost <= self.target && self.least <= self.target {
                self.step(left, spent + cost);
            }
            if let Some(pattern) = self.path.pop() {
                give_back(left, &pattern);
            }
        }
    }

    /// Whether the rest could still come to the target, as far as bounds and memory tell.
    fn hopeful(&mut self, left: &[usize], spent: usize) -> bool {
        self.effort.spend(20 * left.len());
        if self.effort.spent_out() {
            self.complete = false;
            return false;
        }
        let length = self.problem.taken_by(left);
        let rest = self.totals.least(worth(self.prices, left), length);
        if self.target < spent + rest {
            return false;
        }
        match self.seen.get(left) {
            Some(&before) if before <= spent => false,
            _ => {
                self.seen.insert(left.to_vec(), spent);
                true
            }
        }
    }

    /// The full patterns that hold the longest piece left, those that waste least worth first.
    fn patterns(&mut self, left: &[usize], longest: usize) -> Vec<Pattern> {
        let mut patterns = Vec::new();
        let mut looks = 0;
        for at in 0..self.problem.stocks.len() {
            let mut list = Listing {
                problem: self.problem,
                left,
                stock: at,
                shorter: at
                    .checked_sub(1)
                    .map_or(0, |at| self.problem.stocks[at].room),
                counts: Vec::new(),
                found: &mut patterns,
                looks: &mut looks,
            };
            let room = self.problem.stocks[at].room;
            if let Some(most) = room.checked_div(self.problem.sizes[longest]) {
                for n in (1..=most.min(left[longest])).rev() {
                    list.with(longest, n, room);
                }
            }
        }
        self.effort
            .spend(looks * (10 + left.len()) + 50 * patterns.len());
        self.complete &= looks < MOST_LOOKS;
        let loss = |pattern: &Pattern| {
            let cost = self.problem.stocks[pattern.stock].cost * 1000;
            let each = pattern.counts.iter();
            let worth: usize = each
                .map(|&(at, n)| usize::try_from(self.prices[at]).unwrap_or(0) * n)
                .sum();
            cost.saturating_sub(worth)
        };
        patterns.sort_by_cached_key(loss);
        patterns
    }
}

/// The listing of full patterns of one stock length.
struct Listing<'a> {
    problem: &'a Problem,
    left: &'a [usize],
    stock: usize,
    /// The room of the next shorter stock: what fits in there is not cut from this one.
    shorter: usize,
    counts: Vec<Count>,
    found: &'a mut Vec<Pattern>,
    /// Ways looked at so far, of all stock lengths.
    looks: &'a mut usize,
}

impl Listing<'_> {
    /// All full patterns with n of this size, and of the sizes below it whatever fits.
    fn with(&mut self, at: usize, n: usize, room: usize) {
        if n != 0 {
            self.counts.push((at, n));
        }
        self.below(at + 1, room - n * self.problem.sizes[at]);
        if n != 0 {
            self.counts.pop();
        }
    }

    fn below(&mut self, from: usize, room: usize) {
        if MOST_LOOKS <= *self.looks {
            return;
        }
        *self.looks += 1;
        let fits = |&at: &usize| self.left[at] != 0 && self.problem.sizes[at] <= room;
        let Some(at) = (from..self.left.len()).find(fits) else {
            self.note(room);
            return;
        };
        let most = self.left[at].min(room / self.problem.sizes[at]);
        for n in (0..=most).rev() {
            self.with(at, n, room);
        }
    }

    /// Notes the pattern if nothing else fits in and no shorter stock holds it.
    fn note(&mut self, room: usize) {
        let stock = self.problem.stocks[self.stock];
        let used = |at: usize| {
            self.counts
                .iter()
                .find(|(size, _)| *size == at)
                .map_or(0, |c| c.1)
        };
        let fits = |at: usize| self.problem.sizes[at] <= room && used(at) < self.left[at];
        if self.shorter < stock.room - room && !(0..self.left.len()).any(fits) {
            self.found.push(Pattern {
                stock: self.stock,
                counts: self.counts.clone(),
            });
        }
    }
}

fn give_back(left: &mut [usize], pattern: &Pattern) {
    for &(at, n) in &pattern.counts {
        left[at] += n;
    }
}

#[cfg(test)]
mod tests {
    use super::super::problem::Stock;
    use super::*;

    fn case() -> Problem {
        Problem {
            sizes: vec![6, 5, 4, 3, 2],
            demand: vec![1, 1, 2, 1, 2],
            stocks: [10, 13].map(|cost| Stock { cost, room: cost }).to_vec(),
        }
    }

    /// By hand: the pieces come to 26 = 2 · 13, and 6 + 5 + 2 and 4 + 4 + 3 + 2 fill two of 13.
    #[test]
    fn without_any_prices_the_search_finds_the_least() {
        let problem = case();
        let totals = Totals::new(&problem.stocks, 30);
        let found = search(&problem, &[0; 5], &totals, (0, 30), Effort::of(1_000_000));
        let bins = found.better.expect("there is one");
        assert!(found.complete);
        assert_eq!(problem.cost(&bins), 26);
        // Asked for something cheaper still, it proves that there is nothing.
        let none = search(&problem, &[0; 5], &totals, (0, 26), Effort::of(1_000_000));
        assert_eq!((none.better, none.complete), (None, true));
    }

    #[test]
    fn a_search_cut_short_says_so() {
        let problem = case();
        let totals = Totals::new(&problem.stocks, 30);
        let found = search(&problem, &[0; 5], &totals, (0, 30), Effort::of(10));
        assert_eq!((found.better, found.complete), (None, false));
    }

    /// By hand: with the 6, a batten of 10 is full with 4, with 2 and 2, or with 3, after which
    /// 1 is left and nothing so short wanted. 13 is full with 5 2, 4 3, 4 2 and 3 2 2; 6 and 5
    /// alone is not, for a 2 still goes in.
    #[test]
    fn patterns_listed_are_full_and_not_for_a_shorter_stock() {
        let problem = case();
        let totals = Totals::new(&problem.stocks, 30);
        let mut search = Search {
            problem: &problem,
            prices: &[0; 5],
            totals: &totals,
            effort: Effort::of(10_000),
            complete: true,
            target: 30,
            least: 0,
            better: None,
            path: Vec::new(),
            seen: HashMap::new(),
        };
        let patterns = search.patterns(&problem.demand, 0);
        let mut seen: Vec<(usize, usize)> = patterns
            .iter()
            .map(|pattern| (pattern.stock, problem.taken(&pattern.counts)))
            .collect();
        seen.sort_unstable();
        assert_eq!(
            seen,
            [(0, 9), (0, 10), (0, 10), (1, 12), (1, 13), (1, 13), (1, 13)]
        );
    }
}
