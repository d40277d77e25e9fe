//! The bank behind a retaining wall: earth hatched to its surface, and the drainage stone.

use crate::across::cut::{Cut, outwards};
use crate::paper::pen::Pen;
use crate::paper::scene::Point;
use crate::paper::sheet::Sheet;
use crate::paper::strewn::{Corner, chance, steps};
use craft::quantity::{Length, Read, metres};
use craft::retaining::Retaining;
use craft::wall::Side;

/// How much of the bank is drawn beyond the drainage stone, on paper.
const EARTH_MM: f64 = 15.0;
/// Earth drawn below the ground the wall stands on, on paper.
const UNDER_MM: f64 = 2.6;
/// Between two strokes of earth.
const STROKE_MM: f64 = 2.4;
/// One drainage stone's place, and the least and greatest radius it is drawn with.
const PEBBLE_MM: f64 = 2.3;
const RADII_MM: (f64, f64) = (0.5, 0.95);
/// How far a long stone of the back reaches into the drainage stone at most (common practice,
/// no source).
const TIE_M: f64 = 0.25;

/// The bank behind a cut wall, on one side.
pub(crate) struct Bank<'a> {
    pub(crate) cut: &'a Cut<'a>,
    pub(crate) side: Side,
    pub(crate) retaining: &'a Retaining,
}

impl Bank<'_> {
    /// Level of its surface where it meets the back: up to the top, if it is not said.
    pub(crate) fn level(&self) -> f64 {
        let top = self.cut.top();
        let front = self.cut.ground(self.side.other());
        let given = self.retaining.given.height;
        given.map_or(top, |height| (front + height.si()).min(top))
    }

    /// How high it leans on the back, above the ground in front.
    pub(crate) fn height(&self) -> Length {
        metres(self.level() - self.cut.ground(self.side.other()))
    }

    /// Thickness of the drainage stone, level.
    fn drainage(&self) -> f64 {
        self.retaining.drainage.si()
    }

    /// So far behind the back, at a level.
    pub(crate) fn behind(&self, by: f64, y: f64) -> f64 {
        self.cut.face(self.side, y) + outwards(self.side) * by
    }

    /// Between the drainage stone and the earth, at a level.
    pub(crate) fn edge(&self, y: f64) -> f64 {
        self.behind(self.drainage(), y)
    }

    /// The rise of its surface for each metre away from the back.
    fn slope(&self) -> f64 {
        self.retaining.bank.slope_degrees.to_radians().tan()
    }

    /// Level of the surface at a place behind the back.
    pub(crate) fn surface(&self, x: f64) -> f64 {
        let back = self.behind(0.0, self.level());
        self.level() + (x - back).abs() * self.slope()
    }

    /// Where earth and drainage stone meet at the surface.
    fn crest(&self) -> Corner {
        // Where the edge and the surface meet, found by going to and fro between them: each
        // turn comes nearer, for no bank and back lean so far that both would be parallel.
        let mut y = self.level();
        for _ in 0..20 {
            y = self.surface(self.edge(y));
        }
        (self.edge(y), y)
    }

    /// The end of what is drawn of it.
    pub(crate) fn far_end(&self) -> f64 {
        let ground = self.cut.ground(self.side);
        let widest = [
            self.edge(ground),
            self.crest().0,
            self.cut.ground_edge(self.side),
        ];
        let out = widest.map(|x| outwards(self.side) * x);
        let out = out.into_iter().fold(f64::NEG_INFINITY, f64::max);
        outwards(self.side) * (out + EARTH_MM / self.cut.scale.mm_per_m())
    }

    /// In the drainage stone, beyond the stones tied into it, at a level.
    pub(crate) fn in_drainage(&self, y: f64) -> f64 {
        self.behind((self.tie() + self.drainage()) / 2.0, y)
    }

    /// In the earth, at a level.
    pub(crate) fn in_earth(&self, y: f64) -> f64 {
        (self.edge(y) + self.far_end()) / 2.0
    }

    /// How far a long stone of the back reaches beyond it.
    pub(crate) fn tie(&self) -> f64 {
        (self.drainage() * 0.6).min(TIE_M)
    }

    pub(crate) fn draw(&self, sheet: &mut Sheet) {
        let cut = self.cut;
        let ground = cut.ground(self.side);
        let under = ground - UNDER_MM / cut.scale.mm_per_m();
        let (crest, far) = (self.crest(), self.far_end());
        let dug = cut.ground_edge(self.side);
        let floor = [(dug, ground), (self.edge(ground), ground)];
        let floor_is_seen = 0.0 < (floor[1].0 - floor[0].0) * outwards(self.side);
        let mut earth = vec![crest, (far, self.surface(far)), (far, under)];
        if floor_is_seen {
            earth.extend([(dug, under), floor[0], floor[1]]);
        } else {
            earth.extend([(dug, under), (dug, ground)]);
        }
        let earth: Vec<Point> = earth.iter().map(|&(x, y)| cut.at(x, y)).collect();
        self.pebbles(sheet);
        strokes(sheet, &earth);
        let mut outline = vec![
            (far, self.surface(far)),
            (self.behind(0.0, self.level()), self.level()),
        ];
        sheet.polyline(Pen::Ground, self.points(&outline));
        outline = vec![crest, self.edge_foot(ground)];
        if floor_is_seen {
            outline.push(floor[0]);
        }
        sheet.polyline(Pen::Ground, self.points(&outline));
    }

    fn edge_foot(&self, ground: f64) -> Corner {
        (self.edge(ground), ground)
    }

    fn points(&self, corners: &[Corner]) -> Vec<Point> {
        corners.iter().map(|&(x, y)| self.cut.at(x, y)).collect()
    }

    /// Round stones between the back and the earth.
    fn pebbles(&self, sheet: &mut Sheet) {
        let cut = self.cut;
        let mm = cut.scale.mm_per_m();
        let (low, thick) = (cut.ground(self.side), self.drainage());
        let columns = (thick * mm / PEBBLE_MM).floor().max(1.0);
        let rows = ((self.crest().1 - low) * mm / PEBBLE_MM).floor().max(1.0);
        for row in steps(rows) {
            for column in steps(columns) {
                let key = 70_000 + (row * 500.0 + column) as u64 * 3;
                let give = |salt: u64| 0.3 * (chance(key + salt) - 0.5);
                let radius = RADII_MM.0 + (RADII_MM.1 - RADII_MM.0) * chance(key + 2);
                let y = low + (row + 0.5 + give(0)) * PEBBLE_MM / mm;
                let by = thick * (column + 0.5 + give(1)) / columns;
                let x = self.behind(by, y);
                let inside = radius / mm <= by.min(thick - by);
                if inside && y + radius / mm <= self.surface(x) {
                    sheet.circle(Pen::Drainage, cut.at(x, y), radius);
                }
            }
        }
    }
}

/// Slanting strokes within any shape, each from where it enters to where it leaves.
fn strokes(sheet: &mut Sheet, corners: &[Point]) {
    // A stroke is the line x + y = c.
    let sums = || corners.iter().map(|corner| corner.x + corner.y);
    let (least, most) = (
        sums().fold(f64::INFINITY, f64::min),
        sums().fold(f64::NEG_INFINITY, f64::max),
    );
    for stroke in steps(((most - least) / STROKE_MM).floor()) {
        let c = least + (stroke + 0.5) * STROKE_MM;
        for pair in crossings(corners, c).chunks_exact(2) {
            let end = |x: f64| Point::new(x, c - x);
            sheet.line(Pen::Hatch, end(pair[0]), end(pair[1]));
        }
    }
}

/// Where the line x + y = c crosses the edges of a shape, from left to right.
fn crossings(corners: &[Point], c: f64) -> Vec<f64> {
    let edges = corners.iter().zip(corners.iter().cycle().skip(1));
    let mut found: Vec<f64> = edges
        .filter_map(|(from, to)| {
            let (a, b) = (from.x + from.y - c, to.x + to.y - c);
            // An end on the line counts for one of its two edges.
            ((a < 0.0) != (b < 0.0)).then(|| from.x + (to.x - from.x) * a / (a - b))
        })
        .collect();
    found.sort_by(f64::total_cmp);
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: in the square from (0, 0) to (10, 10) the line x + y = 4 runs from x = 0 to
    /// x = 4; with the corner at (10, 10) drawn in to (2, 2) the line x + y = 8 runs from
    /// (0, 8) to the edge from (2, 2) to (0, 10), which it meets at (2/3, 22/3), and likewise
    /// on the other side.
    #[test]
    fn strokes_keep_within_any_shape() {
        let shape = |inner: f64| {
            [(0.0, 0.0), (10.0, 0.0), (inner, inner), (0.0, 10.0)].map(|(x, y)| Point::new(x, y))
        };
        assert_eq!(crossings(&shape(10.0), 4.0), [0.0, 4.0]);
        let found = crossings(&shape(2.0), 8.0);
        let hand = [0.0, 2.0 / 3.0, 22.0 / 3.0, 8.0];
        assert_eq!(found.len(), 4);
        for (found, hand) in found.iter().zip(hand) {
            assert!((found - hand).abs() < 1e-12);
        }
    }
}
