//! Upright joints read off outlines: where stones meet side by side, and which of these
//! meetings stand one over the other.

use super::polygon::{P, bounds, slice};
use std::collections::BTreeSet;

/// Stones farther apart than this, in metres, have no joint between them; the gap may hold
/// a pinning (common practice, no source).
const WIDEST_JOINT_M: f64 = 0.045;
/// Outlines drawn over one another by more than this, in metres, are not side by side.
const OVERDRAWN_M: f64 = 0.008;
/// Stones side by side share at least this height, in metres, and this part of the lower
/// one; less is a step in a bed.
const SHARED_M: f64 = 0.028;
const SHARED_PART: f64 = 0.45;
/// A side that goes farther along than this for each unit up is the top or the bed of a
/// stone laid aslant, and what lies there is on it or under it and not beside it.
const STEEPEST: f64 = 1.2;
/// Joints lean no more than this for each unit up; what looks like more is a worn corner.
const MOST_LEAN: f64 = 0.15;
/// The next joint up begins within this of the last one's end, in metres: the bed between.
const BED_M: f64 = 0.06;
/// A stone that lies across a joint is at least this thick, in metres, and no longer than
/// that.
const THINNEST_M: f64 = 0.025;
const LONGEST_M: f64 = 3.0;

/// A stone as it is seen.
pub(super) struct Seen {
    /// Its place in the list of all stones.
    pub(super) index: usize,
    pub(super) corners: Vec<P>,
    pub(super) bounds: [f64; 4],
}

impl Seen {
    pub(super) fn new(index: usize, corners: Vec<P>) -> Self {
        Self {
            index,
            bounds: bounds(&corners),
            corners,
        }
    }
}

/// A joint line: meetings that continue one another upwards.
pub(super) struct Line {
    /// Stones on its left, by their place in the list of all.
    pub(super) left: BTreeSet<usize>,
    /// Stones on its right.
    pub(super) right: BTreeSet<usize>,
    /// Its lower end.
    pub(super) foot: P,
    /// Its upper end.
    pub(super) head: P,
}

/// Where two stones meet side by side.
struct Meeting {
    left: usize,
    right: usize,
    foot: P,
    head: P,
}

/// All joint lines, from left to right. Meetings nearer than `lap` are one line.
pub(super) fn lines(stones: &[Seen], lap: f64) -> Vec<Line> {
    let mut by_left: Vec<usize> = (0..stones.len()).collect();
    by_left.sort_by(|a, b| stones[*a].bounds[0].total_cmp(&stones[*b].bounds[0]));
    let mut meetings = meetings(stones, &by_left);
    meetings.sort_by(|a, b| {
        a.foot[0]
            .total_cmp(&b.foot[0])
            .then(a.foot[1].total_cmp(&b.foot[1]))
    });
    let mut group: Vec<usize> = (0..meetings.len()).collect();
    for upper in 0..meetings.len() {
        let foot = meetings[upper].foot;
        for lower in near(&meetings, foot[0], lap + 0.15) {
            let head = meetings[lower].head;
            let rise = foot[1] - head[1];
            if lower != upper
                && (head[0] - foot[0]).abs() < lap
                && rise.abs() < BED_M
                && meetings[lower].foot[1] < foot[1]
                && !crossed(stones, &by_left, head, foot)
            {
                let (a, b) = (root(&group, lower), root(&group, upper));
                group[a.max(b)] = a.min(b);
            }
        }
    }
    let mut lines: Vec<Option<Line>> = meetings.iter().map(|_| None).collect();
    for (i, meeting) in meetings.iter().enumerate() {
        let line = lines[root(&group, i)].get_or_insert_with(|| Line {
            left: BTreeSet::new(),
            right: BTreeSet::new(),
            foot: meeting.foot,
            head: meeting.head,
        });
        line.left.insert(meeting.left);
        line.right.insert(meeting.right);
        if meeting.foot[1] < line.foot[1] {
            line.foot = meeting.foot;
        }
        if line.head[1] < meeting.head[1] {
            line.head = meeting.head;
        }
    }
    lines.into_iter().flatten().collect()
}

fn root(group: &[usize], mut i: usize) -> usize {
    while group[i] != i {
        i = group[i];
    }
    i
}

/// Meetings whose lower end is about here; they are in order of it.
fn near(meetings: &[Meeting], x: f64, reach: f64) -> std::ops::Range<usize> {
    let from = meetings.partition_point(|one| one.foot[0] < x - reach);
    let to = meetings.partition_point(|one| one.foot[0] <= x + reach);
    from..to
}

/// Whether a thin stone lies across between the end of one joint and the foot of the next.
fn crossed(stones: &[Seen], by_left: &[usize], head: P, foot: P) -> bool {
    if foot[1] - head[1] < THINNEST_M {
        return false;
    }
    let (from, to) = (head[0].min(foot[0]) - 0.01, head[0].max(foot[0]) + 0.01);
    let first = by_left.partition_point(|i| stones[*i].bounds[0] < from - LONGEST_M);
    by_left[first..]
        .iter()
        .map(|i| &stones[*i].bounds)
        .take_while(|[left, ..]| *left < from)
        .any(|[_, low, right, high]| {
            let between = high.min(foot[1]) - low.max(head[1]);
            to < *right && 0.3 * (foot[1] - head[1]) < between
        })
}

fn meetings(stones: &[Seen], by_left: &[usize]) -> Vec<Meeting> {
    let mut found = Vec::new();
    for left in stones {
        let edge = left.bounds[2];
        // A sloping end reaches back farther than the joint is wide.
        let slack = 0.5 * (left.bounds[3] - left.bounds[1]) + OVERDRAWN_M;
        let from = by_left.partition_point(|i| stones[*i].bounds[0] < edge - slack);
        for &i in &by_left[from..] {
            let right = &stones[i];
            if edge + WIDEST_JOINT_M < right.bounds[0] {
                break;
            }
            found.extend(meeting(left, right));
        }
    }
    found
}

fn meeting(left: &Seen, right: &Seen) -> Option<Meeting> {
    let low = left.bounds[1].max(right.bounds[1]);
    let high = left.bounds[3].min(right.bounds[3]);
    let lower = (left.bounds[3] - left.bounds[1]).min(right.bounds[3] - right.bounds[1]);
    if left.index == right.index || high - low < SHARED_M.max(SHARED_PART * lower) {
        return None;
    }
    let seen: Vec<[f64; 3]> = [0.2, 0.4, 0.6, 0.8]
        .iter()
        .filter_map(|part| {
            let y = low + (high - low) * part;
            Some([slice(&left.corners, y)?[1], slice(&right.corners, y)?[0], y])
        })
        .collect();
    let flat = |side: usize| {
        seen.windows(2).any(|pair| {
            let along = (pair[1][side] - pair[0][side]).abs();
            STEEPEST * (pair[1][2] - pair[0][2]) + 0.012 < along
        })
    };
    if flat(0) || flat(1) {
        return None;
    }
    let mut points: Vec<(f64, P)> = seen
        .iter()
        .map(|[end, start, y]| (start - end, [(start + end) / 2.0, *y]))
        .filter(|(gap, _)| -OVERDRAWN_M < *gap && *gap < WIDEST_JOINT_M)
        .collect();
    // Where a corner is off, the joint opens; its line is where it is narrow.
    let narrowest = points
        .iter()
        .map(|(gap, _)| *gap)
        .fold(f64::INFINITY, f64::min);
    points.retain(|(gap, _)| *gap < narrowest + 0.012);
    let (first, last) = (points.first()?.1, points.last()?.1);
    // Read off where both ends are seen, and no farther aslant than stones are laid.
    let apart = last[1] - first[1];
    let lean = if apart < 0.02 {
        0.0
    } else {
        ((last[0] - first[0]) / apart).clamp(-MOST_LEAN, MOST_LEAN)
    };
    let at = |y: f64| [first[0] + lean * (y - first[1]), y];
    Some(Meeting {
        left: left.index,
        right: right.index,
        foot: at(low),
        head: at(high),
    })
}
