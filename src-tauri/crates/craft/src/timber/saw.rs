//! Lumber and saw in whole millimetres: stock lengths rounded down, pieces, kerf and end waste
//! rounded up, so that rounding never makes a piece short.

use super::problem::Stock;
use crate::quantity::{Length, Read, millimetres, whole_number};

/// What the lumber yard has, and what sawing it loses.
#[derive(Debug, Clone, PartialEq)]
pub struct Lumber {
    /// The lengths to be had, as many of each as wanted.
    pub stock_lengths: Vec<Length>,
    /// What the saw turns to dust at each cut.
    pub kerf: Length,
    /// Left unused at each end of a stock length, for splits and dirt; the cuts that take it
    /// off are counted in it.
    pub end_waste: Length,
}

/// The lumber in whole millimetres.
pub(super) struct Saw {
    pub(super) kerf: usize,
    pub(super) stocks: Vec<Stock>,
    /// Each of the stocks as it was given.
    pub(super) lengths: Vec<Length>,
}

impl Saw {
    /// Lengths too short to leave anything between their ends are left out.
    pub(super) fn of(lumber: &Lumber) -> Self {
        let kerf = up(lumber.kerf);
        let ends = up(lumber.end_waste).saturating_mul(2);
        let mut lengths = lumber.stock_lengths.clone();
        lengths.sort_by(|a, b| a.si().total_cmp(&b.si()));
        lengths.dedup_by_key(|length| down(*length));
        lengths.retain(|length| ends < down(*length));
        let stock = |length: &Length| Stock {
            cost: down(*length),
            room: (down(*length) - ends).saturating_add(kerf),
        };
        Self {
            kerf,
            stocks: lengths.iter().map(stock).collect(),
            lengths,
        }
    }

    /// The room a piece takes: its length and a cut.
    pub(super) fn size(&self, length: Length) -> usize {
        (up(length) + self.kerf).max(1)
    }

    /// Whether any stock is long enough.
    pub(super) fn fits(&self, length: Length) -> bool {
        let longest = self.stocks.last();
        longest.is_some_and(|stock| up(length) <= stock.room - self.kerf)
    }
}

fn up(length: Length) -> usize {
    // Far longer than any stock is long enough to say that it does not fit.
    whole_number((length.si() * 1000.0 - 1e-6).ceil().clamp(0.0, 1e9))
}

fn down(length: Length) -> usize {
    // No batten is a kilometre long; the sums stay far from what a number can hold.
    whole_number((length.si() * 1000.0 + 1e-6).floor().clamp(0.0, 1e6))
}

/// So many millimetres.
pub(super) fn whole_mm(whole: usize) -> Length {
    millimetres(whole as f64)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: 8 ft are 2438.4 mm and count as 2438; a cut of 2.4 mm counts as 3 and an end of
    /// 9.5 mm as 10: 2418 between the ends, and one kerf more of room.
    #[test]
    fn rounding_is_on_the_safe_side() {
        let saw = Saw::of(&Lumber {
            stock_lengths: [2438.4, 2438.2, 20.0].map(millimetres).to_vec(),
            kerf: millimetres(2.4),
            end_waste: millimetres(9.5),
        });
        assert_eq!(saw.kerf, 3);
        let (cost, room) = (2438, 2421);
        assert_eq!(saw.stocks, [Stock { cost, room }]);
        assert_eq!(saw.lengths, [millimetres(2438.2)]);
        assert_eq!(saw.size(millimetres(1000.2)), 1004);
        assert!(saw.fits(millimetres(2418.0)) && !saw.fits(millimetres(2418.1)));
    }
}
