//! The cope: stones on edge along the top, leaning on one another.

use super::polygon::{P, Upright};
use super::setting::stone;
use super::skyline::Wall;
use super::stone::Role;
use crate::quantity::{Read, whole_number};

/// How far copes lean for each unit up, at most (common practice, no source).
const LEAN: [f64; 2] = [0.05, 0.11];
/// At an end the lean is taken back over so many copes.
const UPRIGHT_AT_ENDS: f64 = 3.0;

impl Wall {
    /// Sets copes from one station to another.
    pub(super) fn set_copes(&mut self, [from, to]: [f64; 2], height: f64, thickness: f64) {
        let mut stops = vec![from];
        stops.extend(self.steps.iter().copied().filter(|x| from < *x && *x < to));
        stops.push(to);
        let lean =
            self.luck.between(LEAN[0], LEAN[1]) * if self.luck.chance(0.5) { 1.0 } else { -1.0 };
        for pair in stops.windows(2) {
            self.set_row([pair[0], pair[1]], [height, thickness], lean);
        }
    }

    fn set_row(&mut self, [from, to]: [f64; 2], [height, thickness]: [f64; 2], lean: f64) {
        let count = whole_number(((to - from) / thickness).round());
        if count == 0 {
            return;
        }
        let widths: Vec<f64> = (0..count).map(|_| 1.0 + 0.45 * self.luck.bell()).collect();
        let unit = (to - from) / widths.iter().sum::<f64>();
        let mut left = Upright {
            x: from,
            y: self.top.at(from),
            lean: 0.0,
        };
        let mut x = from;
        for (i, width) in widths.iter().enumerate() {
            x = if i + 1 == count { to } else { x + width * unit };
            let nearer = (i + 1).min(count - i - 1) as f64;
            let right = Upright {
                x,
                y: self.top.before(x),
                lean: (lean + 0.025 * self.luck.bell()) * (nearer / UPRIGHT_AT_ENDS).min(1.0),
            };
            self.set_cope(left, right, height);
            left = right;
        }
    }

    fn set_cope(&mut self, left: Upright, right: Upright, height: f64) {
        let luck = &mut self.luck;
        let high = height * (1.0 + 0.1 * luck.bell());
        let ridge = luck.between(0.15, 0.85);
        let shoulder = [0.86, 0.86].map(|up: f64| up + 0.08 * luck.bell());
        // Across from joint to joint, up the stone, and how far it may fall back.
        let corners = [
            (0.0, 0.07, 0.06),
            (0.1, 0.0, 0.1),
            (0.9, 0.0, 0.1),
            (1.0, 0.07, 0.06),
            (1.0, shoulder[1], 0.07),
            ((ridge + 0.3).min(0.86), 0.985, 0.04),
            ((ridge - 0.3).max(0.14), 1.0, 0.04),
            (0.0, shoulder[0], 0.07),
        ];
        let outline: Vec<P> = corners
            .into_iter()
            .map(|(across, up, back)| {
                let foot = left.y + (right.y - left.y) * across;
                let y = foot + 0.005 + up * high;
                let (a, b) = (left.at(y) + 0.003, right.at(y) - 0.003);
                let slack = back * luck.unit() * (b - a);
                let inward = if across < 0.5 { slack } else { -slack };
                [a + (b - a) * across + inward, y]
            })
            .collect();
        let into = self.section.top_width().si();
        self.stones.push(stone(&outline, Role::Cope, 0, into));
    }
}
