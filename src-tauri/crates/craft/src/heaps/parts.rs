//! The pieces of a row, one for each heap: open stretches between the ways, shared where two
//! kinds lie in one row.

use super::field::ROUNDING;
use super::row::{Amount, Row};
use super::ways::between;
use crate::quantity::{Read, whole_number};
use crate::tables::Lie;
use crate::wall::Side;
use std::f64::consts::PI;

/// A shorter piece of ground than this holds no heap.
const LEAST_M: f64 = 0.5;
/// A piece shorter than this holds a full heap as a cone only, which wastes ground.
const RIDGE_M: f64 = 2.4;
/// Nor is there a heap beside another kind on less than this.
const LEAST_BESIDE_M: f64 = 1.2;
/// A heap is given a little more length than it needs.
const SLACK: f64 = 1.05;
/// A slope can't be steeper or flatter than this.
const SLOPES_DEGREES: (f64, f64) = (5.0, 80.0);

/// A piece of a row for one heap.
#[derive(Debug, Clone, Copy)]
pub(super) struct Part {
    /// Which of the amounts it is for.
    pub(super) of: usize,
    pub(super) side: Side,
    /// Centre line to its near edge.
    pub(super) near: f64,
    pub(super) from: f64,
    pub(super) to: f64,
    /// By how many radians the line turns towards its side along it.
    turned: f64,
}

impl Part {
    /// Its length in the middle of a heap half so wide.
    pub(super) fn path(&self, half: f64) -> f64 {
        (self.to - self.from) - self.turned * (self.near + half)
    }

    /// The volume of a ridge along all of it, `tan · half` high, that bends with the line: a
    /// prism of the length of its middle path (the theorem of Pappus) between half cones.
    pub(super) fn ridge(&self, half: f64, tan: f64) -> f64 {
        let prism = (self.path(half) - 2.0 * half).max(0.0);
        half * half * tan * (prism + PI / 3.0 * half)
    }

    /// Half the width of a ridge so high, or of the cone its length allows.
    pub(super) fn reach(&self, lie: Lie, height: f64) -> f64 {
        let half = width(lie, height) / 2.0;
        // As long as it is wide: 2 r = S - t (near + r).
        let grows = 2.0 + self.turned;
        if grows <= 0.0 {
            return half;
        }
        half.min((self.path(0.0) / grows).max(0.0))
    }
}

/// How wide a row of so high heaps of a kind is.
fn width(lie: Lie, height: f64) -> f64 {
    match lie {
        Lie::Heaped { height: most, .. } => 2.0 * height.min(most.si()) / slope(lie),
        Lie::Laid { width, .. } => width.si(),
    }
}

/// Rise for each unit outwards.
pub(super) fn slope(lie: Lie) -> f64 {
    let degrees = match lie {
        Lie::Heaped { repose_degrees, .. } => repose_degrees,
        Lie::Laid { .. } => 45.0,
    };
    let (flattest, steepest) = SLOPES_DEGREES;
    degrees.clamp(flattest, steepest).to_radians().tan()
}

/// Half the width of a cone that holds so much.
pub(super) fn half_of_cone(volume: f64, tan: f64) -> f64 {
    (volume * 3.0 / (PI * tan)).cbrt()
}

/// How long a ridge of so half a width must be to hold so much; a cone that holds it all is
/// narrower.
pub(super) fn length_for(volume: f64, half: f64, tan: f64) -> f64 {
    let cone = PI / 3.0 * half * half * half * tan;
    if volume <= cone || half <= 0.0 {
        return 2.0 * half_of_cone(volume, tan);
    }
    2.0 * half + (volume - cone) / (half * half * tan)
}

impl Row<'_> {
    /// The pieces of a row whose heaps are so high. `sparse`: where two kinds share it, no more
    /// than half of its stretches have a heap of the second.
    pub(super) fn parts(&self, amounts: &[Amount], height: f64, sparse: bool) -> Vec<Part> {
        let wanted: Vec<usize> = (0..amounts.len())
            .filter(|at| 0.0 < amounts[*at].left)
            .collect();
        let wide = wanted.iter().map(|at| width(amounts[*at].lie, height));
        let stretches = self.stretches(wide.fold(0.0, f64::max));
        match wanted.as_slice() {
            &[first, second] => {
                let amounts = [(first, &amounts[first]), (second, &amounts[second])];
                self.shared(amounts, &stretches, height, sparse)
            }
            only => {
                let whole = |part: &Part| only.iter().map(|of| Part { of: *of, ..*part }).collect();
                stretches.iter().flat_map::<Vec<Part>, _>(whole).collect()
            }
        }
    }

    /// The open stretches of a row so wide, on the left and the right in turn.
    fn stretches(&self, wide: f64) -> Vec<Part> {
        let [left, right] = Side::BOTH.map(|side| self.stretches_beside(side, wide));
        zigzag(left, right)
    }

    fn stretches_beside(&self, side: Side, wide: f64) -> Vec<Part> {
        let [left, right] = self.sides;
        let of_side = match side {
            Side::Left => left,
            Side::Right => right,
        };
        let Some((near, _)) = of_side.filter(|(near, limit)| near + wide <= *limit) else {
            return Vec::new();
        };
        let far = near + wide;
        let margin = self.table.foot_room.si() / 2.0;
        between(self.field, self.ways, side, far)
            .into_iter()
            .flat_map(|(from, to)| self.open_apart(side, (from, to), far, margin))
            .map(|(from, to)| self.part(0, side, near, from, to))
            .filter(|part| LEAST_M - ROUNDING <= part.path(far - near).min(part.to - part.from))
            .collect()
    }

    /// The open parts of a stretch, with the room between two heaps wherever a bend parts them.
    fn open_apart(
        &self,
        side: Side,
        (from, to): (f64, f64),
        far: f64,
        margin: f64,
    ) -> Vec<(f64, f64)> {
        let least = self.field.least_share(side, from, to, far);
        let half = self.table.between.si() / 2.0 / least;
        let open = self.field.open(side, from, to, far + margin).into_iter();
        let apart = open.map(|(begins, ends)| {
            let begins = if from < begins { begins + half } else { begins };
            let ends = if ends < to { ends - half } else { ends };
            (begins, ends)
        });
        apart.filter(|(begins, ends)| begins < ends).collect()
    }

    fn part(&self, of: usize, side: Side, near: f64, from: f64, to: f64) -> Part {
        Part {
            of,
            side,
            near,
            from,
            to,
            turned: self.field.turned(side, from, to),
        }
    }

    /// Two kinds in one row: the second in heaps as short as hold it, each with one of the
    /// first beside it.
    fn shared(
        &self,
        amounts: [(usize, &Amount); 2],
        stretches: &[Part],
        height: f64,
        sparse: bool,
    ) -> Vec<Part> {
        let [(first, _), (second, of_second)] = amounts;
        let counts = self.counts(of_second.left, stretches, sparse);
        let length = |part: &Part| part.to - part.from;
        let sharing = stretches.iter().zip(&counts);
        let sharing = sharing.filter(|(_, count)| 0 < **count);
        let all: f64 = sharing.map(|(stretch, _)| length(stretch)).sum();
        let tan = slope(of_second.lie);
        let half = width(of_second.lie, height) / 2.0;
        let mut parts = Vec::new();
        for (stretch, count) in stretches.iter().zip(counts) {
            let whole = length(stretch);
            // Of the second kind each stretch has its share by length.
            let each = of_second.left * whole / all.max(whole) / count.max(1) as f64;
            let long = (length_for(each, half, tan) * SLACK).max(LEAST_M);
            let long = long * whole / stretch.path(half);
            let far = stretch.near + 2.0 * half;
            let [from, to] = [stretch.from, stretch.to];
            let gap = self.table.between.si() / self.field.least_share(stretch.side, from, to, far);
            // Too short for both: for the first alone.
            let pieces = [count, count.min(1), 0]
                .into_iter()
                .find_map(|count| alternating(whole, count, long, gap))
                .unwrap_or_default();
            parts.extend(pieces.into_iter().map(|(kind, begins, ends)| {
                let of = if kind == 0 { first } else { second };
                // On the right the order is turned round, so that each place has some near.
                let (from, to) = match stretch.side {
                    Side::Left => (stretch.from + begins, stretch.from + ends),
                    Side::Right => (stretch.to - ends, stretch.to - begins),
                };
                self.part(of, stretch.side, stretch.near, from, to)
            }));
        }
        parts
    }

    /// How many heaps of the second kind each stretch has: one for every so many metres, fewer
    /// where they would not be worth having.
    fn counts(&self, volume: f64, stretches: &[Part], sparse: bool) -> Vec<usize> {
        let every = self.table.hearting_every.si().max(LEAST_M);
        let length = |part: &Part| part.to - part.from;
        let wished: Vec<usize> = stretches
            .iter()
            .map(|stretch| whole_number((length(stretch) / every - ROUNDING).ceil()).max(1))
            .collect();
        let worth = whole_number(volume / self.table.least.si().max(1e-9)).max(1);
        if !sparse && wished.iter().sum::<usize>() <= worth {
            return wished;
        }
        let mut counts = vec![0; stretches.len()];
        for at in best_first(stretches, sparse).into_iter().take(worth) {
            counts[at] = 1;
        }
        counts
    }
}

/// The stretches in which the second kind is laid first, those of the left and the right in
/// turn: the longest, and of those as long as each other every second one on the left and the
/// others on the right. `sparse`: no more than half of them.
fn best_first(stretches: &[Part], sparse: bool) -> Vec<usize> {
    let of_sides = Side::BOTH.map(|side| {
        let own = stretches.iter().enumerate();
        let mut own: Vec<(usize, usize, &Part)> = own
            .filter(|(_, part)| part.side == side)
            .enumerate()
            .map(|(number, (at, part))| (number, at, part))
            .collect();
        let odd = usize::from(side == Side::Right);
        own.sort_by_key(|(number, _, part)| {
            // Half a metre more or less is no matter.
            let length = whole_number((part.to - part.from) * 2.0);
            (std::cmp::Reverse(length), (number + odd) % 2, *number)
        });
        if sparse {
            own.truncate(own.len().div_ceil(2));
        }
        own
    });
    let [left, right] = of_sides.map(|side| side.into_iter().map(|(_, at, _)| Some(at)));
    let longest = left.len().max(right.len());
    let pad = std::iter::repeat(None);
    let (left, right) = (left.chain(pad.clone()), right.chain(pad));
    let pairs = left.zip(right).take(longest);
    pairs
        .flat_map(|(left, right)| [left, right])
        .flatten()
        .collect()
}

/// Two kinds along a stretch, the second in heaps so long, with gaps between: a second between
/// every two firsts where those are still ridges, else one behind each first. Nothing where
/// they don't fit.
fn alternating(whole: f64, count: usize, long: f64, gap: f64) -> Option<Vec<(usize, f64, f64)>> {
    if count == 0 {
        return Some(vec![(0, 0.0, whole)]);
    }
    let seconds = count as f64;
    let between = (whole - seconds * (long + 2.0 * gap)) / (seconds + 1.0);
    let beside = (whole - seconds * (long + gap) - (seconds - 1.0) * gap) / seconds;
    let least = if count == 1 { LEAST_BESIDE_M } else { RIDGE_M };
    let (first, firsts) = if RIDGE_M <= between {
        (between, count + 1)
    } else if least <= beside {
        (beside, count)
    } else {
        return None;
    };
    let mut pieces = Vec::new();
    let mut at = 0.0;
    for number in 0..firsts {
        pieces.push((0, at, at + first));
        at += first + gap;
        if number < count {
            pieces.push((1, at, at + long));
            at += long + gap;
        }
    }
    Some(pieces)
}

/// Left, right, right, left, and so on, so that few heaps spread evenly over both sides.
fn zigzag(left: Vec<Part>, right: Vec<Part>) -> Vec<Part> {
    let mut parts = Vec::with_capacity(left.len() + right.len());
    let (mut left, mut right) = (left.into_iter(), right.into_iter());
    let mut turned = false;
    loop {
        let pair = [left.next(), right.next()];
        if pair.iter().all(Option::is_none) {
            return parts;
        }
        let [first, second] = pair;
        parts.extend(if turned { second } else { first });
        parts.extend(if turned { first } else { second });
        turned = !turned;
    }
}
