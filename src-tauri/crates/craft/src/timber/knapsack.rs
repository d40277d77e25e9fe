//! The integer knapsack: the most valuable pieces for every length of room at once.

use super::problem::{Count, Effort, Problem};

/// No more entries than this are kept: 64 MB of them.
const MOST_ENTRIES: usize = 16_000_000;

/// One choice of the dynamic programme: so many of a size together, or none of them.
#[derive(Debug, Clone, Copy)]
struct Layer {
    at: usize,
    copies: usize,
}

/// The best value for each room up to the longest stock.
///
/// With `V(j, r)` the most that the first j layers are worth in room r,
/// `V(j, r) = max(V(j-1, r), V(j-1, r - size) + value)` (Bellman's recursion, from memory). All
/// rows are kept, so that the pieces behind a value can be read back. Prices must be such that
/// no batten holds more than `i32` can say. A demand of n is split
/// into layers of 1, 2, 4 ... copies and a rest, which together make every number up to n.
#[derive(Debug, Default)]
pub(super) struct Knapsack {
    width: usize,
    layers: Vec<Layer>,
    /// What each layer is worth.
    values: Vec<i32>,
    rows: Vec<i32>,
}

impl Knapsack {
    /// Works out all values at these prices, with no more of a size than is wanted.
    pub(super) fn fill(
        &mut self,
        problem: &Problem,
        demand: &[usize],
        prices: &[i32],
        effort: &mut Effort,
    ) {
        let most = problem.most_room();
        self.width = most + 1;
        self.layers.clear();
        for (at, &size) in problem.sizes.iter().enumerate() {
            if 0 < prices[at] {
                self.layers.extend(split(at, demand[at].min(most / size)));
            }
        }
        let worth = |layer: &Layer| {
            let copies = i32::try_from(layer.copies).unwrap_or(0);
            prices[layer.at].saturating_mul(copies)
        };
        self.values = self.layers.iter().map(worth).collect();
        let needed = self.width * (self.layers.len() + 1);
        if self.rows.len() < needed {
            self.rows.resize(needed, 0);
        }
        // Every other row is written anew; clearing all would take as long as the sums.
        self.rows[..self.width].fill(0);
        for (from, layer) in self.layers.iter().enumerate() {
            let (before, after) = self.rows.split_at_mut((from + 1) * self.width);
            let before = &before[from * self.width..];
            let size = problem.sizes[layer.at] * layer.copies;
            add_layer(before, &mut after[..self.width], size, self.values[from]);
        }
        effort.spend(needed / 2);
    }

    /// How many steps filling would cost; `None` if it would need too much memory.
    pub(super) fn steps(problem: &Problem, demand: &[usize]) -> Option<usize> {
        let most = problem.most_room();
        let each = problem.sizes.iter().zip(demand);
        let layers: usize = each
            .map(|(&size, &n)| split(0, n.min(most / size)).count())
            .sum();
        let entries = (layers + 1) * (most + 1);
        (entries <= MOST_ENTRIES).then_some(entries / 2)
    }

    /// The most that fits in a room is worth.
    pub(super) fn value(&self, room: usize) -> i32 {
        self.row(self.layers.len())[room]
    }

    /// For each layer the most that fits in a room is worth when that layer is in and none
    /// after it. As sizes fall, these are patterns that differ in their shortest piece.
    pub(super) fn endings(&self, problem: &Problem, room: usize) -> Vec<(i32, usize)> {
        let all = self.layers.iter().enumerate();
        all.filter_map(|(at, layer)| {
            let rest = room.checked_sub(problem.sizes[layer.at] * layer.copies)?;
            Some((self.row(at)[rest].wrapping_add(self.values[at]), at))
        })
        .collect()
    }

    /// The pieces of the pattern that ends with a layer.
    pub(super) fn pieces(&self, problem: &Problem, ending: usize, room: usize) -> Vec<Count> {
        let last = self.layers[ending];
        let mut left = room.saturating_sub(problem.sizes[last.at] * last.copies);
        let mut counts: Vec<Count> = vec![(last.at, last.copies)];
        for (from, layer) in self.layers[..ending].iter().enumerate().rev() {
            if self.row(from)[left] == self.row(from + 1)[left] {
                continue;
            }
            left -= problem.sizes[layer.at] * layer.copies;
            match counts.last_mut() {
                Some((at, n)) if *at == layer.at => *n += layer.copies,
                _ => counts.push((layer.at, layer.copies)),
            }
        }
        counts.reverse();
        counts
    }

    fn row(&self, layers: usize) -> &[i32] {
        &self.rows[layers * self.width..(layers + 1) * self.width]
    }
}

fn add_layer(before: &[i32], after: &mut [i32], size: usize, value: i32) {
    let short = size.min(before.len());
    after[..short].copy_from_slice(&before[..short]);
    let without = before[short..].iter();
    let with = before.iter();
    for ((now, &without), &with) in after[short..].iter_mut().zip(without).zip(with) {
        // Wrapping, for speed: by the bound on prices it never does wrap.
        *now = without.max(with.wrapping_add(value));
    }
}

fn split(at: usize, wanted: usize) -> impl Iterator<Item = Layer> {
    let mut left = wanted;
    let mut next = 1;
    std::iter::from_fn(move || {
        let copies = next.min(left);
        left -= copies;
        next *= 2;
        (copies != 0).then_some(Layer { at, copies })
    })
}

#[cfg(test)]
mod tests {
    use super::super::problem::Stock;
    use super::*;

    /// By hand: sizes 6, 4, 3 worth 60, 39, 28, two, one and three of them wanted.
    /// Room 10 holds 6 + 4 (99); room 9 holds 6 + 3 (88); room 13 holds 6 + 4 + 3 (127);
    /// room 5 holds the 4 alone (39); room 2 nothing.
    #[test]
    fn five_rooms_by_hand() {
        let problem = Problem {
            sizes: vec![6, 4, 3],
            demand: vec![2, 1, 3],
            stocks: vec![Stock { cost: 13, room: 13 }],
        };
        let mut sack = Knapsack::default();
        let mut effort = Effort::of(1_000);
        sack.fill(&problem, &problem.demand, &[60, 39, 28], &mut effort);
        assert_eq!(
            [10, 9, 13, 5, 2].map(|room| sack.value(room)),
            [99, 88, 127, 39, 0]
        );
        // Layers: one 6, another 6, the 4, one 3, two more of 3. What ends with each in 13:
        // 6 (60), 6 + 6 (120), 6 + 4 (99), 6 + 4 + 3 (127), 4 + 3 + 3 + 3 (123).
        let endings = sack.endings(&problem, 13);
        assert_eq!(endings, [(60, 0), (120, 1), (99, 2), (127, 3), (123, 4)]);
        assert_eq!(sack.pieces(&problem, 1, 13), [(0, 2)]);
        assert_eq!(sack.pieces(&problem, 3, 13), [(0, 1), (1, 1), (2, 1)]);
        assert_eq!(sack.pieces(&problem, 4, 13), [(1, 1), (2, 3)]);
        assert!(!effort.spent_out());
    }

    #[test]
    fn layers_make_every_number() {
        for wanted in 0..20_usize {
            let layers: Vec<usize> = split(0, wanted).map(|layer| layer.copies).collect();
            let mut made: Vec<usize> = (0..1_usize << layers.len())
                .map(|bits| {
                    (0..layers.len())
                        .filter(|b| bits >> b & 1 == 1)
                        .map(|b| layers[b])
                        .sum()
                })
                .collect();
            made.sort_unstable();
            made.dedup();
            assert_eq!(made, (0..=wanted).collect::<Vec<_>>());
        }
    }
}
