//! The cutting-stock problem in whole millimetres: what is wanted, what can be bought, and
//! which total lengths buying can come to.

use std::iter::successors;

/// A stock length. `room` is the usable length and one kerf: a piece counts as its length and
/// a kerf, and the last piece of a batten needs no cut after it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Stock {
    pub(super) cost: usize,
    pub(super) room: usize,
}

/// What is wanted. Invariant: sizes fall and are distinct, costs and rooms both rise, every
/// size fits the last stock, every demand is at least one.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Problem {
    /// Each length with one kerf.
    pub(super) sizes: Vec<usize>,
    /// How many of each.
    pub(super) demand: Vec<usize>,
    pub(super) stocks: Vec<Stock>,
}

/// So many of one size.
pub(super) type Count = (usize, usize);

/// What is cut from one batten.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Pattern {
    /// Which stock length.
    pub(super) stock: usize,
    /// Which sizes, in order, and how many of each.
    pub(super) counts: Vec<Count>,
}

impl Problem {
    /// The room that pieces take together.
    pub(super) fn taken(&self, counts: &[Count]) -> usize {
        counts.iter().map(|&(at, n)| self.sizes[at] * n).sum()
    }

    /// The room that a whole demand takes.
    pub(super) fn taken_by(&self, demand: &[usize]) -> usize {
        self.sizes.iter().zip(demand).map(|(s, n)| s * n).sum()
    }

    /// The shortest stock with so much room.
    pub(super) fn shortest(&self, room: usize) -> Option<usize> {
        self.stocks.iter().position(|stock| room <= stock.room)
    }

    /// The most room any stock has.
    pub(super) fn most_room(&self) -> usize {
        self.stocks.last().map_or(0, |stock| stock.room)
    }

    /// The total length bought.
    pub(super) fn cost(&self, bins: &[Pattern]) -> usize {
        bins.iter().map(|bin| self.stocks[bin.stock].cost).sum()
    }

    /// The pattern with what is no longer wanted left out, from the shortest stock that does.
    pub(super) fn trimmed(&self, pattern: &Pattern, demand: &[usize]) -> Pattern {
        let wanted = pattern
            .counts
            .iter()
            .map(|&(at, n)| (at, n.min(demand[at])));
        let counts: Vec<Count> = wanted.filter(|&(_, n)| n != 0).collect();
        let stock = self.shortest(self.taken(&counts));
        Pattern {
            stock: stock.unwrap_or(pattern.stock),
            counts,
        }
    }
}

/// Takes a pattern's pieces, `times` over, out of a demand that holds them.
pub(super) fn take(demand: &mut [usize], pattern: &Pattern, times: usize) {
    for &(at, n) in &pattern.counts {
        demand[at] = demand[at].saturating_sub(n * times);
    }
}

/// Work done so far in steps of about a nanosecond: a bound on time that, unlike a clock, gives
/// the same answer on every machine.
#[derive(Debug)]
pub(super) struct Effort {
    left: usize,
}

impl Effort {
    pub(super) fn of(steps: usize) -> Self {
        Self { left: steps }
    }

    pub(super) fn spend(&mut self, steps: usize) {
        self.left = self.left.saturating_sub(steps);
    }

    /// Whether so many steps may still be spent.
    pub(super) fn allows(&self, steps: usize) -> bool {
        steps < self.left
    }

    /// One part in so many of what is left.
    pub(super) fn share(&self, parts: usize) -> Self {
        Self::of(self.left / parts)
    }

    pub(super) fn left(&self) -> usize {
        self.left
    }

    pub(super) fn spent_out(&self) -> bool {
        self.left == 0
    }
}

/// The total lengths that some choice of stock comes to, and the most room each can give.
///
/// A total between two of them cannot be bought, so every lower bound is lifted to the next.
#[derive(Debug)]
pub(super) struct Totals {
    /// The greatest measure that all stock lengths are whole multiples of.
    step: usize,
    /// Most room for each multiple of the step; `None` for a total nothing comes to.
    room: Vec<Option<usize>>,
    /// The stock that gives most room for its length.
    roomiest: Option<Stock>,
}

impl Totals {
    /// Beyond so many steps the table is not made, and bounds are not lifted.
    const LONGEST_TABLE: usize = 400_000;

    /// All totals up to `most`.
    pub(super) fn new(stocks: &[Stock], most: usize) -> Self {
        let step = stocks.iter().fold(0, |step, stock| gcd(step, stock.cost));
        let count = most.checked_div(step).map_or(0, |steps| steps + 1);
        let roomier = |a: Stock, b: Stock| {
            if a.room * b.cost < b.room * a.cost {
                b
            } else {
                a
            }
        };
        let roomiest = stocks.iter().copied().reduce(roomier);
        if Self::LONGEST_TABLE < count {
            return Self {
                step: 1,
                room: Vec::new(),
                roomiest,
            };
        }
        let mut room = vec![None; count];
        if let Some(nothing) = room.first_mut() {
            *nothing = Some(0);
        }
        for at in 1..count {
            let last = |stock: &Stock| {
                let before = at.checked_sub(stock.cost / step)?;
                room[before].map(|room| room + stock.room)
            };
            room[at] = stocks.iter().filter_map(last).max();
        }
        Self {
            step,
            room,
            roomiest,
        }
    }

    /// The least total that is no less than `bound` and gives so much room. Past the end of the
    /// table it is what so much room costs in the stock that gives most of it, and at least
    /// `bound`, which is still true.
    pub(super) fn least(&self, bound: usize, room: usize) -> usize {
        let first = bound.div_ceil(self.step.max(1));
        let enough = |held: &Option<usize>| held.is_some_and(|held| room <= held);
        let rest = self.room.get(first..).unwrap_or_default();
        rest.iter().position(enough).map_or_else(
            || self.past_the_end(bound, room),
            |more| (first + more) * self.step,
        )
    }

    /// The greatest total below `cost`.
    pub(super) fn below(&self, cost: usize) -> usize {
        let last = cost.div_ceil(self.step.max(1)).min(self.room.len());
        let held = self.room[..last].iter().rposition(Option::is_some);
        match held {
            Some(at) => at * self.step,
            None => cost.saturating_sub(1),
        }
    }

    fn past_the_end(&self, bound: usize, room: usize) -> usize {
        let by_length = |stock: Stock| (room * stock.cost).div_ceil(stock.room.max(1));
        let by_length = self.roomiest.map_or(0, by_length);
        bound.max(self.room.len() * self.step).max(by_length)
    }
}

fn gcd(a: usize, b: usize) -> usize {
    let pairs = successors(Some((a, b)), |&(a, b)| (b != 0).then(|| (b, a % b)));
    pairs.last().map_or(a, |(whole, _)| whole)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: of five of a size and one of another, two and none are still wanted; what is
    /// left of the pattern goes into the shorter stock.
    #[test]
    fn a_pattern_is_cut_down_to_what_is_wanted() {
        let problem = Problem {
            sizes: vec![300, 200],
            demand: vec![9, 9],
            stocks: [700, 1800].map(|cost| Stock { cost, room: cost }).to_vec(),
        };
        let pattern = Pattern {
            stock: 1,
            counts: vec![(0, 5), (1, 1)],
        };
        let trimmed = problem.trimmed(&pattern, &[2, 0]);
        assert_eq!(
            (trimmed.stock, trimmed.counts.as_slice()),
            (0, &[(0, 2)][..])
        );
        let mut demand = vec![9, 9];
        take(&mut demand, &pattern, 1);
        assert_eq!(demand, [4, 8]);
    }

    /// By hand: 3 and 5 come to 0, 3, 5, 6, 8, 9, 10 and everything above; times 600 mm.
    #[test]
    fn totals_are_sums_of_stock_lengths() {
        let stocks = [(1800, 1803), (3000, 3003)].map(|(cost, room)| Stock { cost, room });
        let totals = Totals::new(&stocks, 7200);
        let least = |bound| totals.least(bound, 0);
        assert_eq!(
            [1, 1801, 3001, 3601, 4201].map(least),
            [1800, 3000, 3600, 4800, 4800]
        );
        assert_eq!(
            [1800, 4800, 4801].map(|cost| totals.below(cost)),
            [0, 3600, 4800]
        );
        // Two of 1800 hold 3606, so 3607 needs the next total.
        assert_eq!(totals.least(0, 3606), 3600);
        assert_eq!(totals.least(0, 3607), 4800);
        assert_eq!(totals.least(7201, 0), 7800);
    }

    #[test]
    fn no_stock_and_a_table_too_long_still_bound() {
        assert_eq!(Totals::new(&[], 100).least(7, 0), 7);
        let stocks = [(1, 1), (7, 8)].map(|(cost, room)| Stock { cost, room });
        let totals = Totals::new(&stocks, Totals::LONGEST_TABLE * 2);
        assert_eq!((totals.least(7, 0), totals.below(7)), (7, 6));
        // By hand: 7 mm give room for 8, so room for 80 costs 70.
        assert_eq!(totals.least(7, 80), 70);
    }
}
