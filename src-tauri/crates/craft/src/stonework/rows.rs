//! The bed lines: how high each course is, and how its bed wanders along the wall.
//!
//! Lines are counted by half courses: even ones are beds, odd ones run within a course and
//! part it where two thin stones take the place of one.

use super::levels::Levels;
use super::luck::{Luck, wander};

/// How far a bed wanders from its level, as a share of the thinner course beside it.
const SWAY: f64 = 0.25;
/// A bed of throughs, or one where the wall is levelled up, wanders less by this factor.
const LEVELLED: f64 = 0.3;
/// One wave of a bed line in metres.
const WAVE_M: f64 = 0.75;
/// No course is lower than this, whatever is asked for.
const LOWEST_COURSE_M: f64 = 0.05;

/// The bed lines of one wall.
pub(super) struct Rows {
    beds: Vec<Bed>,
    seed: u64,
}

struct Bed {
    level: f64,
    sway: f64,
    /// Where the half line above runs, as a share of the course.
    split: f64,
}

/// A level that a bed must keep.
#[derive(Clone, Copy)]
struct Fixed {
    level: f64,
    /// Whether the bed keeps it exactly, as under a cope.
    exactly: bool,
}

/// What the rows are made for, in metres.
pub(super) struct Extent<'a> {
    pub(super) ground: &'a Levels,
    pub(super) top: &'a Levels,
    pub(super) length: f64,
    /// Height of the lowest course and of the highest.
    pub(super) courses: [f64; 2],
    /// Beds that throughs lie on, and their thickness; level tops only.
    pub(super) throughs: Vec<[f64; 2]>,
}

impl Extent<'_> {
    /// The share of the wall's height that lies below this level, where the wall has it.
    fn share(&self, y: f64) -> f64 {
        let mut sum = 0.0;
        let mut count = 0.0;
        for i in 0..17 {
            let x = self.length * f64::from(i) / 16.0;
            let (low, high) = (self.ground.at(x), self.top.at(x));
            if low - 0.02 <= y && y <= high + 0.02 && low < high {
                sum += ((y - low) / (high - low)).clamp(0.0, 1.0);
                count += 1.0;
            }
        }
        if 0.0 < count { sum / count } else { 0.5 }
    }

    fn course_at(&self, y: f64) -> f64 {
        let [low, high] = self.courses;
        (low + (high - low) * self.share(y)).max(LOWEST_COURSE_M)
    }

    fn fixed(&self) -> Vec<Fixed> {
        let low = self.ground.span(0.0, self.length)[0];
        let high = self.top.span(0.0, self.length)[1];
        let mut levels = vec![Fixed {
            level: low,
            exactly: false,
        }];
        for [bed, thickness] in &self.throughs {
            for level in [*bed, bed + thickness] {
                levels.push(Fixed {
                    level,
                    exactly: false,
                });
            }
        }
        for level in self.top.level_stretches(0.4, self.length) {
            levels.push(Fixed {
                level,
                exactly: true,
            });
        }
        levels.push(Fixed {
            level: high,
            exactly: true,
        });
        levels.retain(|one| low <= one.level && one.level <= high);
        self.thin_out(levels)
    }

    /// Levels too close for a course between them are one; a top goes before a through.
    fn thin_out(&self, mut levels: Vec<Fixed>) -> Vec<Fixed> {
        levels.sort_by(|a, b| a.level.total_cmp(&b.level));
        let mut kept: Vec<Fixed> = Vec::new();
        for one in levels {
            let Some(last) = kept.last_mut() else {
                kept.push(one);
                continue;
            };
            if 0.6 * self.course_at(one.level) <= one.level - last.level {
                kept.push(one);
            } else if one.exactly && !last.exactly && 1 < kept.len() {
                kept.pop();
                kept.push(one);
            }
        }
        kept
    }
}

impl Rows {
    pub(super) fn new(extent: &Extent<'_>, seed: u64) -> Self {
        let mut luck = Luck::new(seed, 1);
        let fixed = extent.fixed();
        let mut beds = Vec::new();
        for (i, one) in fixed.iter().enumerate() {
            beds.push(Bed {
                level: one.level,
                sway: if one.exactly || i == 0 { 0.0 } else { LEVELLED },
                split: luck.between(0.42, 0.58),
            });
            if let Some(next) = fixed.get(i + 1) {
                let heights = share_out(extent, one.level, next.level, &mut luck);
                let mut level = one.level;
                for height in heights.iter().take(heights.len() - 1) {
                    level += height;
                    beds.push(Bed {
                        level,
                        sway: 1.0,
                        split: luck.between(0.42, 0.58),
                    });
                }
            }
        }
        let levels: Vec<f64> = beds.iter().map(|bed| bed.level).collect();
        for (i, bed) in beds.iter_mut().enumerate() {
            let below = i.checked_sub(1).map(|j| bed.level - levels[j]);
            let above = levels.get(i + 1).map(|level| level - bed.level);
            let thinner = below.into_iter().chain(above).fold(0.2, f64::min);
            bed.sway *= SWAY * thinner;
        }
        Self { beds, seed }
    }

    /// The last line.
    pub(super) fn last(&self) -> usize {
        2 * (self.beds.len().saturating_sub(1))
    }

    /// The level of a line at a place.
    pub(super) fn level(&self, row: usize, x: f64) -> f64 {
        let row = row.min(self.last());
        let low = self.bed(row / 2, x);
        if row.is_multiple_of(2) {
            return low;
        }
        let high = self.bed(row / 2 + 1, x);
        let share = self.beds[row / 2].split + 0.09 * wander(self.seed, 500 + row as u64, x, 0.5);
        low + (high - low) * share
    }

    fn bed(&self, course: usize, x: f64) -> f64 {
        let bed = &self.beds[course.min(self.beds.len() - 1)];
        let slow = wander(self.seed, course as u64, x, WAVE_M);
        let quick = wander(self.seed, 1000 + course as u64, x, 0.31);
        bed.level + bed.sway * (0.75 * slow + 0.35 * quick)
    }

    /// Height of the course that begins at this line, on the whole.
    pub(super) fn course(&self, row: usize) -> f64 {
        let i = (row / 2).min(self.beds.len().saturating_sub(2));
        match self.beds.get(i + 1) {
            Some(next) => next.level - self.beds[i].level,
            None => LOWEST_COURSE_M,
        }
    }

    /// The even line nearest to this level here.
    pub(super) fn nearest_bed(&self, x: f64, y: f64) -> usize {
        (0..self.beds.len())
            .min_by(|a, b| {
                let off = |i: usize| (self.level(2 * i, x) - y).abs();
                off(*a).total_cmp(&off(*b))
            })
            .map_or(0, |i| 2 * i)
    }

    /// The highest even line at or below this level here.
    pub(super) fn bed_under(&self, x: f64, y: f64) -> usize {
        let above = (0..self.beds.len()).find(|i| y < self.level(2 * i, x));
        2 * above.unwrap_or(self.beds.len()).saturating_sub(1)
    }
}

/// Heights of the courses between two levels: falling with height, each a little off, and
/// together what there is.
fn share_out(extent: &Extent<'_>, from: f64, to: f64, luck: &mut Luck) -> Vec<f64> {
    let rise = to - from;
    let usual = extent.course_at(from + rise / 2.0);
    let count = crate::quantity::whole_number((rise / usual).round()).max(1);
    let mut heights: Vec<f64> = (0..count)
        .map(|i| {
            let middle = from + rise * (i as f64 + 0.5) / count as f64;
            extent.course_at(middle) * (1.0 + 0.13 * luck.bell())
        })
        .collect();
    let scale = rise / heights.iter().sum::<f64>();
    for height in &mut heights {
        *height *= scale;
    }
    heights
}
