//! A line of levels along the wall, as the ground and the top are given.

use super::stone::Point;

/// Levels by station, in metres. Beyond its ends the line runs on level.
#[derive(Debug, Clone)]
pub(super) struct Levels {
    points: Vec<[f64; 2]>,
}

impl Levels {
    pub(super) fn new(points: &[Point]) -> Self {
        Self {
            points: points.iter().map(|point| point.in_metres()).collect(),
        }
    }

    /// The level here; at a step, that of the part beyond it.
    pub(super) fn at(&self, x: f64) -> f64 {
        let after = self.points.partition_point(|point| point[0] <= x);
        self.blend(after, x)
    }

    /// The level here; at a step, that of the part before it.
    pub(super) fn before(&self, x: f64) -> f64 {
        let after = self.points.partition_point(|point| point[0] < x);
        self.blend(after, x)
    }

    fn blend(&self, after: usize, x: f64) -> f64 {
        let Some(last) = self.points.last() else {
            return 0.0;
        };
        match (
            after.checked_sub(1).map(|i| self.points[i]),
            self.points.get(after),
        ) {
            (Some(a), Some(b)) => {
                let width = b[0] - a[0];
                if width <= 1e-9 {
                    a[1]
                } else {
                    a[1] + (b[1] - a[1]) * ((x - a[0]) / width)
                }
            }
            (None, Some(first)) => first[1],
            _ => last[1],
        }
    }

    /// The points of the line from one station to another, both ends among them.
    pub(super) fn between(&self, from: f64, to: f64) -> Vec<[f64; 2]> {
        let mut points = vec![[from, self.at(from)]];
        points.extend(
            self.points
                .iter()
                .filter(|point| from < point[0] && point[0] < to),
        );
        if from < to {
            points.push([to, self.before(to)]);
        }
        points
    }

    /// Lowest and highest level between two stations.
    pub(super) fn span(&self, from: f64, to: f64) -> [f64; 2] {
        self.between(from, to)
            .iter()
            .fold([f64::INFINITY, f64::NEG_INFINITY], |[low, high], point| {
                [low.min(point[1]), high.max(point[1])]
            })
    }

    /// The stations at which the line steps.
    pub(super) fn steps(&self) -> Vec<f64> {
        self.points
            .windows(2)
            .filter(|pair| pair[1][0] - pair[0][0] < 1e-9 && 1e-6 < (pair[1][1] - pair[0][1]).abs())
            .map(|pair| pair[0][0])
            .collect()
    }

    /// The levels of the stretches that run level for at least this far.
    pub(super) fn level_stretches(&self, at_least: f64, to: f64) -> Vec<f64> {
        let mut levels: Vec<f64> = self
            .between(0.0, to)
            .windows(2)
            .filter(|pair| {
                at_least <= pair[1][0] - pair[0][0] && (pair[1][1] - pair[0][1]).abs() < 1e-4
            })
            .map(|pair| pair[0][1])
            .collect();
        levels.sort_by(f64::total_cmp);
        levels.dedup_by(|a, b| (*a - *b).abs() < 1e-3);
        levels
    }
}
