//! A small revised simplex: the cheapest mix of cutting patterns that covers a demand, when
//! patterns may be used in part.
//!
//! Minimise the sum of cost times x so that the patterns cover the demand, x zero or more. The
//! inverse of the basis is kept dense and brought up to date by each exchange; textbook method,
//! from memory. The prices it gives need not be exact: whoever uses them makes a bound of them
//! in whole numbers.

/// A measure below this is taken for rounding.
const TINY: f64 = 1e-7;
/// Amounts as near as this reach nothing together.
const TIE: f64 = 1e-9;
/// Every demand is raised by this to twice this, each a little differently, so that no two
/// amounts reach nothing at once: where they do, exchanges can go round in a circle.
const NUDGE: f64 = 1e-5;

/// A pattern as the simplex sees it: entries by row. A surplus is -1 in one row, at no cost.
#[derive(Debug, Clone)]
pub(super) struct Column {
    pub(super) cost: f64,
    pub(super) entries: Vec<(usize, f64)>,
    /// The caller's number for it; `None` for a surplus.
    pub(super) name: Option<usize>,
}

impl Column {
    /// What one of it would save at these prices, less what it costs.
    pub(super) fn gain(&self, prices: &[f64]) -> f64 {
        let worth: f64 = self.entries.iter().map(|&(row, n)| n * prices[row]).sum();
        worth - self.cost
    }
}

/// A basis, its inverse, the amounts and the prices that go with it.
#[derive(Debug)]
pub(super) struct Simplex {
    basis: Vec<Column>,
    /// Row after row.
    inverse: Vec<f64>,
    amounts: Vec<f64>,
    prices: Vec<f64>,
}

impl Simplex {
    /// Starts from one pattern for each row that holds `copies` of that row's piece alone.
    pub(super) fn start(demand: &[f64], alone: &[(f64, f64)]) -> Self {
        let rows = demand.len();
        let mut inverse = vec![0.0; rows * rows];
        let mut basis = Vec::with_capacity(rows);
        for (row, &(cost, copies)) in alone.iter().enumerate() {
            inverse[row * rows + row] = 1.0 / copies;
            basis.push(Column {
                cost,
                entries: vec![(row, copies)],
                name: None,
            });
        }
        Self {
            amounts: demand
                .iter()
                .zip(alone)
                .enumerate()
                .map(|(row, (wanted, (_, copies)))| (wanted + nudge(row)) / copies)
                .collect(),
            prices: alone.iter().map(|(cost, copies)| cost / copies).collect(),
            basis,
            inverse,
        }
    }

    /// What a piece of each row is worth.
    pub(super) fn prices(&self) -> &[f64] {
        &self.prices
    }

    /// The patterns in use, by the caller's number, and how much of each.
    pub(super) fn in_use(&self) -> impl Iterator<Item = (usize, f64)> {
        let both = self.basis.iter().zip(&self.amounts);
        both.filter_map(|(column, &amount)| Some((column.name?, amount)))
    }

    /// A row whose price is below nothing: covering it more than asked would save something.
    pub(super) fn below_nothing(&self) -> Option<usize> {
        let at = |row: &usize| self.prices[*row] < -TINY;
        (0..self.prices.len()).find(at)
    }

    /// Brings a column into the basis in place of the one it drives to nothing first.
    /// `false` if there is none, which cannot be as long as costs are more than nothing.
    pub(super) fn enter(&mut self, column: Column) -> bool {
        let change = self.change(&column);
        let Some(out) = self.leaving(&change) else {
            return false;
        };
        let rows = self.basis.len();
        let pivot = change[out];
        let gain = column.gain(&self.prices);
        for entry in &mut self.inverse[out * rows..(out + 1) * rows] {
            *entry /= pivot;
        }
        let pivot_row = self.inverse[out * rows..(out + 1) * rows].to_vec();
        let amount = self.amounts[out] / pivot;
        for (row, &by) in change.iter().enumerate() {
            if row == out || by == 0.0 {
                continue;
            }
            subtract(
                &mut self.inverse[row * rows..(row + 1) * rows],
                &pivot_row,
                by,
            );
            self.amounts[row] = (self.amounts[row] - by * amount).max(0.0);
        }
        subtract(&mut self.prices, &pivot_row, gain);
        self.amounts[out] = amount;
        self.basis[out] = column;
        true
    }

    /// How much of each basis column one of this column stands for.
    fn change(&self, column: &Column) -> Vec<f64> {
        let rows = self.basis.len();
        let by_row = self.inverse.chunks_exact(rows);
        by_row
            .map(|row| column.entries.iter().map(|&(at, n)| row[at] * n).sum())
            .collect()
    }

    /// The row that reaches nothing first; of those alike the one with the largest pivot.
    fn leaving(&self, change: &[f64]) -> Option<usize> {
        let mut found: Option<(f64, f64, usize)> = None;
        for (row, &by) in change.iter().enumerate() {
            if by < TINY {
                continue;
            }
            let ratio = self.amounts[row] / by;
            let better = found.is_none_or(|(least, pivot, _)| {
                ratio < least - TIE || (ratio < least + TIE && pivot < by)
            });
            if better {
                found = Some((ratio, by, row));
            }
        }
        found.map(|(_, _, row)| row)
    }
}

/// Scattered evenly by the golden section, the same every time.
fn nudge(row: usize) -> f64 {
    NUDGE * (1.0 + (row as f64 * 0.618_033_988_749_895).fract())
}

fn subtract(from: &mut [f64], row: &[f64], by: f64) {
    for (entry, &part) in from.iter_mut().zip(row) {
        *entry -= by * part;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: pieces of 3 and of 2 from battens of 5, ten and twenty wanted. Alone, a batten
    /// holds one of the first or two of the second: 10 + 10 battens. With one of each: 10 such
    /// leave 10 of the second, 5 more battens; 15 in all, and the pieces are worth 2.5 each.
    #[test]
    fn one_exchange_by_hand() {
        let mut simplex = Simplex::start(&[10.0, 20.0], &[(5.0, 1.0), (5.0, 2.0)]);
        assert_eq!(simplex.prices(), [5.0, 2.5]);
        let both = Column {
            cost: 5.0,
            entries: vec![(0, 1.0), (1, 1.0)],
            name: Some(7),
        };
        assert!((both.gain(simplex.prices()) - 2.5).abs() < 1e-12);
        assert!(simplex.enter(both));
        assert!(
            simplex
                .prices()
                .iter()
                .all(|price| (price - 2.5).abs() < 1e-12)
        );
        let used: Vec<(usize, f64)> = simplex.in_use().collect();
        assert_eq!(used.len(), 1);
        assert!(used[0].0 == 7 && (used[0].1 - 10.0).abs() < 3.0 * NUDGE);
        assert_eq!(simplex.below_nothing(), None);
    }
}
