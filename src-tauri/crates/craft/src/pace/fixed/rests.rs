//! Where breaks are added in a stretch of work that is too long: as few as will do, spread evenly.

use super::QUARTER;
use crate::pace::calendar::Span;
use crate::tables::Rests;

/// Where breaks on the quarter hour can't keep stretches short enough, times go to five minutes.
const FINER: f64 = 5.0;
/// A minute too long weighs more than any uneven spread.
const TOO_LONG: f64 = 1e6;
/// Rounding, in minutes.
const HAIR: f64 = 1e-6;

/// The breaks of a stretch without one, in order; none where it is not too long. `free` is where
/// a break has room.
///
/// The fewest that leave no piece longer than `longest + grace`, their own minutes taken off:
/// n of m minutes leave (L - n m) / (n + 1) between them. Where other things stand in the way
/// of that, those that leave the least too long.
pub(super) fn within(long: Span, free: &[Span], rests: &Rests) -> Vec<Span> {
    let limit = rests.longest + rests.grace;
    let minutes = long.to - long.from;
    if minutes <= limit + HAIR {
        return Vec::new();
    }
    let mut best = Spread {
        starts: Vec::new(),
        too_long: minutes - limit,
        cost: f64::INFINITY,
    };
    let many = (1_u32..).take_while(|many| f64::from(*many) * rests.longest < minutes + limit);
    'fewest: for many in many {
        for step in [QUARTER, FINER] {
            let Some(spread) = spread(long, &starts(long, free, rests, step), many, rests) else {
                continue;
            };
            if spread.too_long < best.too_long - HAIR {
                best = spread;
            }
            if best.too_long < HAIR {
                break 'fewest;
            }
        }
    }
    let span = |from| Span {
        from,
        to: from + rests.minutes,
    };
    best.starts.into_iter().map(span).collect()
}

/// Breaks spread over a stretch.
#[derive(Clone)]
struct Spread {
    starts: Vec<f64>,
    /// Minutes by which pieces are too long, together.
    too_long: f64,
    cost: f64,
}

impl Spread {
    /// With one piece more.
    fn and(&self, piece: f64, limit: f64) -> Self {
        let over = (piece - limit).max(0.0);
        Self {
            starts: self.starts.clone(),
            too_long: self.too_long + over,
            cost: self.cost + piece * piece + TOO_LONG * over * over,
        }
    }
}

/// Times at which a break has room, so many minutes apart.
fn starts(long: Span, free: &[Span], rests: &Rests, step: f64) -> Vec<f64> {
    let mut starts = Vec::new();
    for room in free {
        let (from, to) = (room.from.max(long.from), room.to.min(long.to));
        let mut start = (from / step).ceil() * step;
        while start + rests.minutes <= to {
            starts.push(start);
            start += step;
        }
    }
    starts
}

/// So many breaks at some of these times, the pieces between them as even as they can be; of two
/// ways as good the later. Nothing where so many find no room.
fn spread(long: Span, starts: &[f64], many: u32, rests: &Rests) -> Option<Spread> {
    let limit = rests.longest + rests.grace;
    let none = Spread {
        starts: Vec::new(),
        too_long: 0.0,
        cost: 0.0,
    };
    let better = |best: Option<Spread>, one: Spread| match best {
        Some(best) if best.cost < one.cost - HAIR => Some(best),
        _ => Some(one),
    };
    // For each start: the best way to place so many with the last of them there.
    let mut last: Vec<Option<Spread>> = starts
        .iter()
        .map(|start| Some(none.and(start - long.from, limit).at(*start)))
        .collect();
    for _ in 1..many {
        last = starts
            .iter()
            .map(|start| {
                let before = starts.iter().zip(&last);
                let before = before.filter_map(|(before, spread)| {
                    let piece = start - (before + rests.minutes);
                    let spread = spread.as_ref().filter(|_| 0.0 < piece)?;
                    Some(spread.and(piece, limit).at(*start))
                });
                before.fold(None, better)
            })
            .collect();
    }
    let whole = starts
        .iter()
        .zip(last)
        .filter_map(|(start, spread)| Some(spread?.and(long.to - (start + rests.minutes), limit)));
    whole.fold(None, better)
}

impl Spread {
    /// With one break more.
    fn at(mut self, start: f64) -> Self {
        self.starts.push(start);
        self
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::worksheet::sample;
    use proptest::prelude::*;

    fn rests() -> Rests {
        sample::tables().pace.rests
    }

    fn breaks(from: f64, to: f64) -> Vec<f64> {
        let long = Span { from, to };
        let added = within(long, &[long], &rests());
        added.into_iter().map(|it| it.from).collect()
    }

    /// The longest piece without a break.
    fn longest(from: f64, to: f64) -> f64 {
        let mut longest: f64 = 0.0;
        let mut since = from;
        for start in breaks(from, to) {
            longest = longest.max(start - since);
            since = start + rests().minutes;
        }
        longest.max(to - since)
    }

    /// By hand: 135 min pass; 150 less a break leave 135; 285 less one leave twice 135, 300 less
    /// two three times 90; 495 less three four times 112.5, on the quarter 105, 120, 105, 120.
    #[test]
    fn as_few_breaks_as_will_do() {
        for (minutes, many) in [(135.0, 0), (150.0, 1), (285.0, 1), (300.0, 2), (495.0, 3)] {
            assert_eq!(breaks(540.0, 540.0 + minutes).len(), many, "{minutes}");
        }
        assert_eq!(
            breaks(540.0, 750.0),
            [645.0],
            "of 10:30 and 10:45 the later"
        );
        assert_eq!(breaks(540.0, 825.0), [675.0]);
    }

    /// From 9:00 to 14:45 with talks from 10:15 to 12:45: what lies between the breaks is too long
    /// however they are put, and no third one would make it shorter.
    #[test]
    fn a_break_goes_where_there_is_room() {
        let free = [(540.0, 615.0), (765.0, 885.0)].map(|(from, to)| Span { from, to });
        let long = Span {
            from: 540.0,
            to: 885.0,
        };
        let added = within(long, &free, &rests());
        let starts: Vec<f64> = added.iter().map(|it| it.from).collect();
        assert_eq!(starts, [600.0, 765.0], "60, 150 and 105 min of work");
    }

    proptest! {
        /// The fewest there can be; no piece is too long; and a quarter of an hour more never
        /// leaves less to work.
        #[test]
        fn more_time_is_never_less_work(begins in 0..288_u32, quarters in 0..60_u32) {
            let (from, limit, rest) = (f64::from(begins) * 5.0, 135.0, rests().minutes);
            let minutes = f64::from(quarters) * QUARTER;
            let many = breaks(from, from + minutes).len() as f64;
            prop_assert!(longest(from, from + minutes) <= limit + HAIR);
            if 1.0 <= many {
                let fewer = many - 1.0;
                prop_assert!(limit < (minutes - fewer * rest) / (fewer + 1.0));
            }
            let more = breaks(from, from + minutes + QUARTER).len() as f64;
            prop_assert!(minutes - many * rest <= minutes + QUARTER - more * rest);
        }

        #[test]
        fn stretches_of_any_length_stay_short(from in 0.0..1000.0, minutes in 0.0..840.0) {
            prop_assert!(longest(from, from + minutes) <= 135.0 + HAIR);
        }
    }
}
