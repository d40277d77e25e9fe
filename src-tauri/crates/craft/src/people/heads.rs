//! Turns at the built ends, so that each pair lays some of a head.

/// The least time in which a turn at a head teaches anything, in minutes (common practice,
/// no source).
pub(super) const LEAST_TURN: f64 = 15.0;

/// One pair's turn at a head.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Turn {
    /// The end: 0 at station 0, 1 at the far one.
    pub end: usize,
    /// The pair, counted from 0.
    pub pair: usize,
    /// The share of the stage at which it begins, 0 to 1.
    pub from: f64,
    /// The share of the stage at which it ends.
    pub to: f64,
}

/// Turns at these ends in a stage of so many minutes. Both heads are built at once, each pair
/// has its turn at the one nearer to it, and the turns at one head are equally long. Where
/// they would be too short, those nearest the head have them.
pub(super) fn turns(pairs: usize, ends: &[usize], minutes: f64) -> Vec<Turn> {
    let fit = (minutes / LEAST_TURN + 1e-9).floor().max(1.0);
    match *ends {
        [] => Vec::new(),
        [end] => in_turn(end, nearest_first(end, pairs, pairs), fit),
        [..] if pairs == 1 => one_pair(ends),
        [first, last, ..] => {
            let at_first = pairs.div_ceil(2);
            let mut turns = in_turn(first, nearest_first(first, pairs, at_first), fit);
            let others = nearest_first(last, pairs, pairs - at_first);
            turns.extend(in_turn(last, others, fit));
            turns
        }
    }
}

/// So many pairs, the one next to this end first.
fn nearest_first(end: usize, pairs: usize, count: usize) -> Vec<usize> {
    if end == 0 {
        (0..pairs).take(count).collect()
    } else {
        (0..pairs).rev().take(count).collect()
    }
}

fn in_turn(end: usize, mut pairs: Vec<usize>, fit: f64) -> Vec<Turn> {
    // A stage so long that all fit keeps all.
    while fit < pairs.len() as f64 {
        pairs.pop();
    }
    let count = pairs.len() as f64;
    (0_u32..)
        .zip(pairs)
        .map(|(at, pair)| Turn {
            end,
            pair,
            from: f64::from(at) / count,
            to: f64::from(at + 1) / count,
        })
        .collect()
}

/// The only pair builds one head after the other.
fn one_pair(ends: &[usize]) -> Vec<Turn> {
    let count = ends.len() as f64;
    (0_u32..)
        .zip(ends)
        .map(|(at, &end)| Turn {
            end,
            pair: 0,
            from: f64::from(at) / count,
            to: f64::from(at + 1) / count,
        })
        .collect()
}
