//! A good packing at once: the longest piece left, then whatever fills its batten best.

use super::problem::{Count, Effort, Pattern, Problem, take};

/// The best of several ways of filling: all stock lengths in play, then each alone as the
/// longest. Every piece wanted is in exactly one batten.
pub(super) fn fill(problem: &Problem, demand: &[usize], effort: &mut Effort) -> Vec<Pattern> {
    let longest = demand.iter().position(|&n| n != 0);
    let needed = longest.map_or(0, |at| problem.sizes[at]);
    let first = problem.shortest(needed).unwrap_or(0);
    let mut best = fill_from(problem, demand, effort);
    for stock in first..problem.stocks.len() {
        if effort.spent_out() {
            break;
        }
        let one = Problem {
            stocks: problem.stocks[stock..=stock].to_vec(),
            ..problem.clone()
        };
        let mut bins = fill_from(&one, demand, effort);
        for bin in &mut bins {
            bin.stock = problem
                .shortest(problem.taken(&bin.counts))
                .unwrap_or(stock);
        }
        if problem.cost(&bins) < problem.cost(&best) {
            best = bins;
        }
    }
    best
}

/// Batten after batten, until nothing is wanted any more.
fn fill_from(problem: &Problem, demand: &[usize], effort: &mut Effort) -> Vec<Pattern> {
    let mut left = demand.to_vec();
    let mut bins = Vec::new();
    let mut first = 0;
    while let Some(at) = (first..left.len()).find(|&at| left[at] != 0) {
        first = at;
        let Some(pattern) = next_batten(problem, &left, at, effort) else {
            break;
        };
        let times = |&(at, n): &Count| left[at].checked_div(n).unwrap_or(1);
        let times = pattern.counts.iter().map(times).min().unwrap_or(1).max(1);
        take(&mut left, &pattern, times);
        bins.extend(std::iter::repeat_n(pattern, times));
    }
    bins
}

/// The batten that holds the longest piece left with the least waste for its length; when all
/// that is left goes into one batten, the shortest that takes it.
fn next_batten(
    problem: &Problem,
    left: &[usize],
    longest: usize,
    effort: &mut Effort,
) -> Option<Pattern> {
    if let Some(stock) = problem.shortest(problem.taken_by(left)) {
        return Some(Pattern {
            stock,
            counts: nonzero(left),
        });
    }
    let mut rest = left.to_vec();
    rest[longest] -= 1;
    let size = problem.sizes[longest];
    if !effort.allows(Sums::steps(problem, &rest)) {
        effort.spend(left.len());
        return Some(roughly(problem, left));
    }
    let most = problem.most_room().checked_sub(size)?;
    let sums = Sums::new(problem, &rest, most, effort);
    let filled = |(stock, one): (usize, &super::problem::Stock)| {
        let room = one.room.checked_sub(size)?;
        let full = sums.fullest(room);
        // Waste by the metre bought, as a whole number so that ties fall alike everywhere.
        let waste = (one.room - size - full) * 1_000_000 / one.cost.max(1);
        Some((waste, stock, full))
    };
    let (_, stock, full) = problem.stocks.iter().enumerate().filter_map(filled).min()?;
    let mut counts = sums.pieces(problem, full);
    match counts.first_mut() {
        Some((at, n)) if *at == longest => *n += 1,
        _ => counts.insert(0, (longest, 1)),
    }
    Some(Pattern { stock, counts })
}

/// Long pieces first, as many of each as fit: rough but quick, for when effort is short.
fn roughly(problem: &Problem, left: &[usize]) -> Pattern {
    let mut room = problem.most_room();
    let mut counts = Vec::new();
    for (at, (&size, &wanted)) in problem.sizes.iter().zip(left).enumerate() {
        let n = wanted.min(room / size);
        room -= n * size;
        if n != 0 {
            counts.push((at, n));
        }
    }
    let stock = problem.shortest(problem.taken(&counts)).unwrap_or(0);
    Pattern { stock, counts }
}

fn nonzero(demand: &[usize]) -> Vec<Count> {
    let counts = demand.iter().copied().enumerate();
    counts.filter(|&(_, n)| n != 0).collect()
}

/// Every sum of pieces up to a room, as one bit each; a row for each piece.
struct Sums {
    /// The piece each row adds; the first row has none.
    added: Vec<usize>,
    words: usize,
    bits: Vec<u64>,
}

impl Sums {
    /// How many steps making them costs.
    fn steps(problem: &Problem, demand: &[usize]) -> usize {
        let most = problem.most_room();
        let each = problem.sizes.iter().zip(demand);
        let pieces: usize = each.map(|(&size, &n)| n.min(most / size)).sum();
        (most / 64 + 1) * (pieces + 1)
    }

    fn new(problem: &Problem, demand: &[usize], room: usize, effort: &mut Effort) -> Self {
        let words = room / 64 + 1;
        let mut bits = vec![0_u64; words];
        bits[0] = 1;
        let mut added = Vec::new();
        for (at, &size) in problem.sizes.iter().enumerate() {
            if room < size {
                continue;
            }
            for _ in 0..demand[at].min(room / size) {
                let from = added.len() * words;
                bits.extend_from_within(from..);
                let (before, after) = bits.split_at_mut(from + words);
                shift_in(&before[from..], after, size);
                added.push(at);
                effort.spend(words);
            }
        }
        Self { added, words, bits }
    }

    /// The greatest sum within a room.
    fn fullest(&self, room: usize) -> usize {
        let row = self.row(self.added.len());
        (0..=room).rev().find(|&sum| has(row, sum)).unwrap_or(0)
    }

    /// Pieces that come to a sum, the long ones rather than the short.
    fn pieces(&self, problem: &Problem, sum: usize) -> Vec<Count> {
        let mut left = sum;
        let mut counts: Vec<Count> = Vec::new();
        for (row, &at) in self.added.iter().enumerate().rev() {
            if has(self.row(row), left) {
                continue;
            }
            left -= problem.sizes[at];
            match counts.last_mut() {
                Some((last, n)) if *last == at => *n += 1,
                _ => counts.push((at, 1)),
            }
        }
        counts.reverse();
        counts
    }

    fn row(&self, at: usize) -> &[u64] {
        &self.bits[at * self.words..(at + 1) * self.words]
    }
}

fn has(row: &[u64], sum: usize) -> bool {
    row[sum / 64] >> (sum % 64) & 1 == 1
}

/// `after |= before << by`.
fn shift_in(before: &[u64], after: &mut [u64], by: usize) {
    let (words, bits) = (by / 64, by % 64);
    let Some(after) = after.get_mut(words..) else {
        return;
    };
    if bits == 0 {
        after
            .iter_mut()
            .zip(before)
            .for_each(|(to, from)| *to |= from);
        return;
    }
    if let (Some(to), Some(from)) = (after.first_mut(), before.first()) {
        *to |= from << bits;
    }
    for (to, pair) in after.iter_mut().skip(1).zip(before.windows(2)) {
        *to |= pair[1] << bits | pair[0] >> (64 - bits);
    }
}

#[cfg(test)]
mod tests {
    use super::super::problem::Stock;
    use super::*;

    fn problem() -> Problem {
        Problem {
            sizes: vec![130, 70, 31],
            demand: vec![2, 1, 4],
            stocks: [100, 200].map(|cost| Stock { cost, room: cost }).to_vec(),
        }
    }

    /// By hand: within 138 the sums of 130, 70, 31 x 4 go 130 (itself), 132 (70 + 2 x 31) and
    /// no nearer; 124 is four of 31.
    #[test]
    fn sums_are_found_and_read_back() {
        let problem = problem();
        let mut effort = Effort::of(10_000);
        let sums = Sums::new(&problem, &problem.demand, 200, &mut effort);
        assert_eq!(sums.fullest(138), 132);
        assert_eq!(sums.pieces(&problem, 132), [(1, 1), (2, 2)]);
        assert_eq!(sums.fullest(129), 124);
        assert_eq!(sums.pieces(&problem, 124), [(2, 4)]);
        assert_eq!(sums.fullest(30), 0);
        // Over the border of a word: 128 is two whole words of 64.
        let mut after = [0; 4];
        shift_in(&[1 << 63, 5, 0, 0], &mut after, 65);
        assert_eq!(after, [0, 0, 11, 0]);
        shift_in(&[1, 0, 0, 0], &mut after, 128);
        assert_eq!(after, [0, 0, 11, 0]);
    }

    /// By hand: 130 + 70 = 200, 130 + 2 x 31 = 192, 2 x 31 = 62: 200 + 200 + 100.
    #[test]
    fn battens_are_filled_until_nothing_is_left() {
        let problem = problem();
        for steps in [0, 10_000] {
            let bins = fill(&problem, &problem.demand, &mut Effort::of(steps));
            let mut left = problem.demand.clone();
            for bin in &bins {
                assert!(problem.taken(&bin.counts) <= problem.stocks[bin.stock].room);
                take(&mut left, bin, 1);
            }
            assert_eq!(left, [0, 0, 0]);
            assert_eq!(problem.cost(&bins), 500);
        }
    }
}
