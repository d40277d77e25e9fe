//! The bonding rule: where a course may be parted into stones, given the joints under it.

use crate::quantity::whole_number;

/// The least lap over a joint below is half of the shortest stone, and in these bounds, in
/// metres (common practice, no source).
const LAP_M: [f64; 2] = [0.056, 0.065];
/// A lap is a fifth of the stone, but more than this is not asked for (common practice, no
/// source).
const MOST_LAP_M: f64 = 0.09;
const LAP_SHARE: f64 = 0.2;
/// Joints are sought in steps of this, in metres.
const STEP_M: f64 = 0.01;
/// Where nothing else will do, a stone may be shorter or longer than usual by this much.
const STRETCH: [f64; 2] = [0.65, 1.9];
/// What each way of giving in counts: a lap short of the stone's fifth, an unusual length,
/// a lap shorter than it should be, no lap or a joint in a place to be kept clear, and a
/// stone such as there is none.
const SHORT_OF_A_FIFTH: u32 = 1;
const UNUSUAL: u32 = 2;
const SHORT_LAP: u32 = 20;
const NO_LAP: u32 = 200;
const NO_STONE: u32 = 1000;
/// From here the far end cannot be reached.
const NO_WAY: u32 = u32::MAX;

/// The least lap where the shortest usual stone is this long; both in metres.
pub(super) fn least_lap(shortest: f64) -> f64 {
    (shortest / 2.0).clamp(LAP_M[0], LAP_M[1])
}

/// A stretch to fill with stones, in metres. Its two ends are joints already.
pub(super) struct Gap<'a> {
    pub(super) from: f64,
    pub(super) to: f64,
    /// Joints in the bed below, in order.
    pub(super) joints: &'a [f64],
    /// No joint from here to here.
    pub(super) kept_clear: &'a [[f64; 2]],
    pub(super) shortest: f64,
    pub(super) longest: f64,
}

/// Where to part the stretch: each stone near the length wished for at its left end, each
/// joint below crossed. Of all ways, one that gives in least is taken. With it comes
/// whether every joint is crossed.
pub(super) fn part(gap: &Gap<'_>, mut wish: impl FnMut(f64) -> f64) -> (Vec<f64>, bool) {
    let grid = Grid::new(gap);
    let crossing = grid.rest(false, |k| grid.crosses_at(k));
    let rest = if crossing[0] == NO_WAY {
        grid.rest(true, |_| true)
    } else {
        crossing
    };
    let mut cuts = Vec::new();
    let mut at = 0;
    while at < grid.last() {
        let wished = whole_number((wish(grid.place(at)) / grid.step).round());
        let Some(length) = grid.nearest(&rest, at, wished) else {
            break;
        };
        at += length;
        if at < grid.last() {
            cuts.push(grid.place(at));
        }
    }
    (cuts, rest[0] < SHORT_LAP)
}

struct Grid {
    from: f64,
    step: f64,
    lap: f64,
    /// Usual lengths in steps, and the lengths that will do.
    usual: [usize; 2],
    will_do: [usize; 2],
    /// Whether a joint may be here, as far as what comes above goes.
    open: Vec<bool>,
    /// The joint below next on the right, and on the left; this place counts.
    right: Vec<f64>,
    left: Vec<f64>,
}

impl Grid {
    fn new(gap: &Gap<'_>) -> Self {
        let width = gap.to - gap.from;
        let count = whole_number((width / STEP_M).round()).max(1);
        let step = width / count as f64;
        let place = |k: usize| gap.from + step * k as f64;
        let mut open = vec![true; count + 1];
        for [low, high] in gap.kept_clear {
            let first = ((low - gap.from) / step).ceil().max(1.0);
            let end = ((high - gap.from) / step).floor() + 1.0;
            let (first, end) = (whole_number(first), whole_number(end).min(count));
            if first < end {
                open[first..end].fill(false);
            }
        }
        let mut right = vec![f64::INFINITY; count + 1];
        let mut left = vec![f64::NEG_INFINITY; count + 1];
        let mut next = 0;
        for k in 0..=count {
            while next < gap.joints.len() && gap.joints[next] < place(k) - 1e-9 {
                next += 1;
            }
            right[k] = gap.joints.get(next).copied().unwrap_or(f64::INFINITY);
            left[k] = if right[k] <= place(k) + 1e-9 {
                right[k]
            } else {
                next.checked_sub(1)
                    .map_or(f64::NEG_INFINITY, |i| gap.joints[i])
            };
        }
        let steps = |length: f64| whole_number((length / step).round()).max(1);
        Self {
            from: gap.from,
            step,
            lap: least_lap(gap.shortest),
            usual: [steps(gap.shortest), steps(gap.longest)],
            will_do: [
                steps(STRETCH[0] * gap.shortest),
                steps(STRETCH[1] * gap.longest),
            ],
            open,
            right,
            left,
        }
    }

    fn last(&self) -> usize {
        self.open.len() - 1
    }

    fn place(&self, k: usize) -> f64 {
        self.from + self.step * k as f64
    }

    /// What a stone from here to there gives in.
    fn gives_in(&self, a: usize, b: usize) -> u32 {
        let (from, to) = (self.place(a), self.place(b));
        let (right, left) = (self.right[a], self.left[b]);
        let mut lap = f64::INFINITY;
        if a != 0 && right <= to {
            lap = right - from;
        }
        if b != self.last() && from <= left {
            lap = lap.min(to - left);
        }
        let fifth = (LAP_SHARE * (to - from)).min(MOST_LAP_M);
        let mut count = if lap < 0.8 * self.lap {
            NO_LAP
        } else if lap < self.lap {
            SHORT_LAP
        } else if lap < fifth {
            SHORT_OF_A_FIFTH
        } else {
            0
        };
        if b != self.last() && !self.open[b] {
            count += NO_LAP;
        }
        if b - a < self.will_do[0] || self.will_do[1] < b - a {
            count += NO_STONE;
        } else if b - a < self.usual[0] || self.usual[1] < b - a {
            count += UNUSUAL;
        }
        count
    }

    /// Whether a joint here is lapped on both sides and not to be kept clear of.
    fn crosses_at(&self, k: usize) -> bool {
        let x = self.place(k);
        let lapped = self.lap <= self.right[k] - x && self.lap <= x - self.left[k];
        k == 0 || k == self.last() || self.open[k] && lapped
    }

    /// The least that must be given in from each place to the far end, by joints in places
    /// that will do; `whole`: or by one stone all the way, such as there is none.
    fn rest(&self, whole: bool, will_do: impl Fn(usize) -> bool) -> Vec<u32> {
        let last = self.last();
        let [short, long] = self.usual;
        let middle = usize::midpoint(short, long);
        let mut rest = vec![NO_WAY; last + 1];
        rest[last] = 0;
        for k in (0..last).rev().filter(|k| will_do(*k)) {
            let lengths = (middle..=long)
                .chain((short..middle).rev())
                .chain(long + 1..=self.will_do[1])
                .chain(self.will_do[0]..short)
                .chain(whole.then_some(last - k));
            for length in lengths {
                if last < k + length || rest[k + length] == NO_WAY {
                    continue;
                }
                let sum = self.gives_in(k, k + length) + rest[k + length];
                rest[k] = rest[k].min(sum);
                if sum == 0 {
                    break;
                }
            }
        }
        rest
    }

    /// The length nearest to the one wished for among those that give in least.
    fn nearest(&self, rest: &[u32], at: usize, wished: usize) -> Option<usize> {
        let good = |length: &usize| {
            let to = at + length;
            0 < *length
                && to <= self.last()
                && rest[to] != NO_WAY
                && self.gives_in(at, to) + rest[to] == rest[at]
        };
        let most = self.will_do[1].max(self.last() - at);
        (0..=most).find_map(|off| {
            [wished + off, wished.saturating_sub(off)]
                .into_iter()
                .find(good)
        })
    }
}
