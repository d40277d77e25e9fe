//! What the battens must cost at least, and which patterns get there: column generation.
//!
//! Patterns are not listed beforehand. The simplex prices the pieces by the patterns it knows;
//! a knapsack at those prices finds for each stock length the pattern worth most; those worth
//! more than their batten are added, until there is none (P. C. Gilmore and R. E. Gomory, "A
//! linear programming approach to the cutting-stock problem", Operations Research 1961 and
//! 1963, from memory). Prices at which no pattern is worth more than its batten prove a bound:
//! any packing costs at least what its pieces are worth. Along the way, prices divided by the
//! worst overvaluation do the same (A. A. Farley, Operations Research 1990, from memory). The
//! prices are whole micrometres and the knapsack sums whole numbers, so the bound is exact.

use super::knapsack::Knapsack;
use super::problem::{Effort, Pattern, Problem};
use super::simplex::{Column, Simplex};

/// Micrometres in a millimetre: prices are this fine.
const FINE: i32 = 1000;

/// A pattern is worth adding when it beats its batten by more than this many micrometres.
const WORTH_ADDING: i32 = 5;

/// So many patterns are added for each knapsack.
const AT_ONCE: usize = 24;

/// A column already known enters when it gains more than this many micrometres.
const WORTH_ENTERING: f64 = 1.0;

/// The relaxation's answer.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Relaxed {
    /// What each piece is worth, in micrometres; no pattern is worth more than its batten.
    pub(super) prices: Vec<i32>,
    /// No packing of the demand costs less, in millimetres.
    pub(super) bound: usize,
    /// Patterns in use (by their place in the pool) and how much of each, in order of the pool.
    pub(super) used: Vec<(usize, f64)>,
}

/// One demand being relaxed.
struct Generation<'a> {
    problem: &'a Problem,
    demand: &'a [usize],
    /// The sizes still wanted: the simplex has a row for each.
    wanted: Vec<usize>,
    row_of: Vec<usize>,
    simplex: Simplex,
    columns: Vec<Column>,
    best: Relaxed,
}

/// Relaxes a demand; patterns found are added to the pool. Stops early, with a bound that still
/// holds, when the effort is spent.
pub(super) fn relax(
    problem: &Problem,
    demand: &[usize],
    pool: &mut Vec<Pattern>,
    effort: &mut Effort,
) -> Relaxed {
    let mut generation = Generation::new(problem, demand, pool);
    let mut sack = Knapsack::default();
    let steps = Knapsack::steps(problem, demand);
    while steps.is_some_and(|steps| effort.allows(steps)) {
        generation.exchange(effort);
        let prices = generation.whole_prices();
        sack.fill(problem, demand, &prices, effort);
        generation.bound_by(&prices, &sack);
        if !generation.add_patterns(&sack, pool) {
            break;
        }
    }
    generation.finish()
}

impl<'a> Generation<'a> {
    fn new(problem: &'a Problem, demand: &'a [usize], pool: &[Pattern]) -> Self {
        let wanted: Vec<usize> = (0..demand.len()).filter(|&at| demand[at] != 0).collect();
        let mut row_of = vec![usize::MAX; demand.len()];
        for (row, &at) in wanted.iter().enumerate() {
            row_of[at] = row;
        }
        let amounts: Vec<f64> = wanted.iter().map(|&at| demand[at] as f64).collect();
        let alone: Vec<(f64, f64)> = wanted
            .iter()
            .map(|&at| alone(problem, at, demand[at]))
            .collect();
        let mut generation = Self {
            problem,
            demand,
            simplex: Simplex::start(&amounts, &alone),
            columns: Vec::new(),
            best: Relaxed {
                prices: vec![0; demand.len()],
                bound: 0,
                used: Vec::new(),
            },
            wanted,
            row_of,
        };
        for (name, pattern) in pool.iter().enumerate() {
            generation.add_column(name, pattern);
        }
        generation
    }

    /// A pattern that holds more of something than is wanted cannot be used as it is.
    fn add_column(&mut self, name: usize, pattern: &Pattern) {
        if pattern.counts.iter().any(|&(at, n)| self.demand[at] < n) {
            return;
        }
        let entry = |&(at, n): &(usize, usize)| (self.row_of[at], n as f64);
        self.columns.push(Column {
            cost: micrometres(self.problem.stocks[pattern.stock].cost),
            entries: pattern.counts.iter().map(entry).collect(),
            name: Some(name),
        });
    }

    /// Exchanges among the patterns known until none gains, or a good many times.
    fn exchange(&mut self, effort: &mut Effort) {
        let rows = self.wanted.len();
        for _ in 0..(20 * rows + 100) {
            let Some(column) = self.most_gain() else {
                return;
            };
            effort.spend(rows * rows + 8 * self.columns.len());
            if effort.spent_out() || !self.simplex.enter(column) {
                return;
            }
        }
    }

    fn most_gain(&self) -> Option<Column> {
        if let Some(row) = self.simplex.below_nothing() {
            return Some(Column {
                cost: 0.0,
                entries: vec![(row, -1.0)],
                name: None,
            });
        }
        let prices = self.simplex.prices();
        let gains = self
            .columns
            .iter()
            .map(|column| (column.gain(prices), column));
        let worth = gains.filter(|(gain, _)| WORTH_ENTERING < *gain);
        worth
            .reduce(|best, next| if best.0 < next.0 { next } else { best })
            .map(|(_, column)| column.clone())
    }

    /// The simplex' prices in whole micrometres; a size no longer wanted is worth nothing.
    fn whole_prices(&self) -> Vec<i32> {
        let highest = highest_price(self.problem, self.demand);
        let mut prices = vec![0; self.demand.len()];
        for (&at, &price) in self.wanted.iter().zip(self.simplex.prices()) {
            // The cast is of a whole number between bounds it fits in.
            prices[at] = price.floor().clamp(0.0, highest) as i32;
        }
        prices
    }

    /// Scales prices until no batten is overvalued and keeps them if they prove more.
    fn bound_by(&mut self, prices: &[i32], sack: &Knapsack) {
        let fair = |stock: &super::problem::Stock| {
            (
                as_i128(stock.cost) * i128::from(FINE),
                i128::from(sack.value(stock.room)),
            )
        };
        let worst = self
            .problem
            .stocks
            .iter()
            .map(fair)
            .fold((1, 1), |worst, next| {
                // next.0 / next.1 < worst.0 / worst.1, without dividing.
                if next.0 * worst.1 < worst.0 * next.1 {
                    next
                } else {
                    worst
                }
            });
        let scaled = |&price: &i32| {
            let scaled = i128::from(price) * worst.0 / worst.1.max(1);
            i32::try_from(scaled).unwrap_or(0).min(price)
        };
        let scaled: Vec<i32> = prices.iter().map(scaled).collect();
        let bound = worth(&scaled, self.demand);
        if self.best.bound <= bound {
            self.best.bound = bound;
            self.best.prices = scaled;
        }
    }

    /// Adds the patterns that gain most of those worth more than their batten.
    fn add_patterns(&mut self, sack: &Knapsack, pool: &mut Vec<Pattern>) -> bool {
        let mut gains: Vec<(i128, usize, usize)> = Vec::new();
        for (stock, one) in self.problem.stocks.iter().enumerate() {
            let cost = as_i128(one.cost) * i128::from(FINE);
            for (value, ending) in sack.endings(self.problem, one.room) {
                let gain = i128::from(value) - cost;
                if i128::from(WORTH_ADDING) < gain {
                    gains.push((-gain, stock, ending));
                }
            }
        }
        gains.sort_unstable();
        for &(_, stock, ending) in gains.iter().take(AT_ONCE) {
            let room = self.problem.stocks[stock].room;
            let counts = sack.pieces(self.problem, ending, room);
            let pattern = Pattern { stock, counts };
            self.add_column(pool.len(), &pattern);
            pool.push(pattern);
        }
        !gains.is_empty()
    }

    fn finish(self) -> Relaxed {
        let mut best = self.best;
        best.used = self.simplex.in_use().collect();
        best.used.sort_by_key(|&(name, _)| name);
        best
    }
}

/// What the pieces of a demand are worth together, in millimetres, rounded up: a packing costs
/// whole millimetres.
pub(super) fn worth(prices: &[i32], demand: &[usize]) -> usize {
    let each = prices.iter().zip(demand);
    let fine: usize = each
        .map(|(&price, &n)| usize::try_from(price).unwrap_or(0) * n)
        .sum();
    fine.div_ceil(FINE.unsigned_abs() as usize)
}

fn micrometres(millimetres: usize) -> f64 {
    millimetres as f64 * f64::from(FINE)
}

fn as_i128(whole: usize) -> i128 {
    i128::try_from(whole).unwrap_or(i128::MAX)
}

/// The cheapest batten, by the piece, that holds one size alone: its cost and how many it holds.
fn alone(problem: &Problem, at: usize, wanted: usize) -> (f64, f64) {
    let by_stock = problem.stocks.iter().filter_map(|stock| {
        let copies = (stock.room / problem.sizes[at]).min(wanted);
        (copies != 0).then(|| (micrometres(stock.cost), copies as f64))
    });
    by_stock
        .reduce(|best, next| {
            if next.0 * best.1 < best.0 * next.1 {
                next
            } else {
                best
            }
        })
        // Every size fits the longest stock, so this is never needed; it makes pieces dear.
        .unwrap_or((f64::from(i32::MAX), 1.0))
}

/// No price is above this, so that what a batten holds is never worth more than an `i32` can
/// say. Lower prices prove less, never too much.
fn highest_price(problem: &Problem, demand: &[usize]) -> f64 {
    let wanted: usize = demand.iter().sum();
    let least = problem.sizes.last().copied().unwrap_or(1).max(1);
    let pieces = wanted.min(problem.most_room() / least).max(1);
    f64::from(i32::MAX) / pieces as f64
}

#[cfg(test)]
mod tests {
    use super::super::problem::Stock;
    use super::*;
    use proptest::prelude::*;

    /// The best any pattern of a stock is worth, by listing them all.
    fn most_worth(problem: &Problem, prices: &[i32], from: usize, room: usize) -> i64 {
        let Some(&size) = problem.sizes.get(from) else {
            return 0;
        };
        (0..=problem.demand[from].min(room / size))
            .map(|n| {
                let here = i64::from(prices[from]) * i64::try_from(n).expect("small");
                here + most_worth(problem, prices, from + 1, room - n * size)
            })
            .max()
            .unwrap_or(0)
    }

    /// By hand: battens of 10; four pieces of 6 and six of 4. Each 6 needs its own batten and
    /// has room for a 4: four battens, and the two 4s left share a fifth. In part: 6 and 4
    /// together four times, then two 4s in one batten: 5 battens, of 50 in all.
    #[test]
    fn the_bound_of_a_case_by_hand() {
        let problem = Problem {
            sizes: vec![6, 4],
            demand: vec![4, 6],
            stocks: vec![Stock { cost: 10, room: 10 }],
        };
        let mut pool = Vec::new();
        let relaxed = relax(
            &problem,
            &problem.demand,
            &mut pool,
            &mut Effort::of(100_000),
        );
        assert_eq!(relaxed.bound, 50);
        let battens: f64 = relaxed.used.iter().map(|(_, amount)| amount).sum();
        // The pattern of two 4s may be the simplex' own start, which is not in the pool.
        assert!(battens < 5.001);
        let none = relax(&problem, &problem.demand, &mut pool, &mut Effort::of(0));
        assert_eq!(none.bound, 0);
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(48))]

        /// Whatever the effort, no pattern may be worth more than its batten: that is what
        /// makes the bound one.
        #[test]
        fn no_batten_is_overvalued(
            sizes in prop::collection::btree_set(150_usize..900, 1..6),
            each in prop::collection::vec(1_usize..6, 6),
            costs in prop::collection::btree_set(900_usize..2500, 1..4),
            steps in 0_usize..200_000,
        ) {
            let sizes: Vec<usize> = sizes.into_iter().rev().collect();
            let problem = Problem {
                demand: each[..sizes.len()].to_vec(),
                sizes,
                stocks: costs.into_iter().map(|cost| Stock { cost, room: cost + 3 }).collect(),
            };
            let mut pool = Vec::new();
            let relaxed = relax(&problem, &problem.demand, &mut pool, &mut Effort::of(steps));
            for stock in &problem.stocks {
                let cost = i64::try_from(stock.cost).expect("small") * 1000;
                prop_assert!(most_worth(&problem, &relaxed.prices, 0, stock.room) <= cost);
            }
            prop_assert_eq!(relaxed.bound, worth(&relaxed.prices, &problem.demand));
            for pattern in &pool {
                let room = problem.stocks[pattern.stock].room;
                prop_assert!(problem.taken(&pattern.counts) <= room);
                prop_assert!(pattern.counts.iter().all(|&(at, n)| n <= problem.demand[at]));
            }
        }
    }
}
