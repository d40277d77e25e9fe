//! What tells the kinds of stone apart without colour: stones of their own size and shape.

use crate::paper::free_place::onward;
use crate::paper::pen::Pen;
use crate::paper::scene::{Mark, Point};
use crate::paper::sheet::Sheet;
use crate::paper::strewn::{chance, steps};
use crate::paper::text_box::TextBox;
use craft::course::StoneKind;
use craft::heaps::HeapKind;
use std::f64::consts::TAU;

/// Paper kept clear round words.
const CLEAR_MM: f64 = 0.6;
/// Between a stone and the edge of its heap.
const EDGE_MM: f64 = 0.45;
/// More stones than this tell no more.
const MOST: f64 = 140.0;
/// Paper millimetres for a metre in the key, where there is no scale.
pub(crate) const IN_THE_KEY: f64 = 9.0;

/// The ground of one heap on paper.
pub(crate) struct Patch<'a> {
    pub(crate) kind: HeapKind,
    /// Its outline.
    pub(crate) outline: &'a [Point],
    /// Along the wall and out from it, in millimetres.
    pub(crate) size_mm: (f64, f64),
    /// The place and the direction along the wall for a share of both.
    pub(crate) at: &'a dyn Fn(f64, f64) -> (Point, Point),
    /// Paper millimetres for a metre.
    pub(crate) mm_per_m: f64,
    /// Different patches look different.
    pub(crate) seed: u64,
}

/// How the stones of a kind are drawn.
enum Look {
    /// Uneven stones so large, in metres, and never smaller on paper than so many millimetres.
    Lumps(f64, f64),
    /// Dots of this radius on paper.
    Dots(f64),
    /// Rings of this radius on paper.
    Rings(f64),
    /// Stones across the row, so wide in metres and at least so many millimetres.
    Across(f64, f64),
}

fn look(kind: HeapKind) -> Look {
    match kind {
        HeapKind::Stone(StoneKind::Footing) => Look::Lumps(0.45, 3.0),
        HeapKind::Stone(StoneKind::Face) => Look::Lumps(0.24, 1.7),
        HeapKind::Stone(StoneKind::Hearting) => Look::Dots(0.3),
        HeapKind::Drainage => Look::Rings(0.5),
        HeapKind::Stone(StoneKind::Throughs) => Look::Across(0.3, 2.2),
        HeapKind::Stone(StoneKind::Copes) => Look::Across(0.1, 0.9),
    }
}

impl Patch<'_> {
    /// Fills the patch with stones wherever they lie wholly within it and clear of words.
    pub(crate) fn fill(&self, sheet: &mut Sheet, words: &[TextBox]) {
        let clear = |mark: &Mark| {
            let here = mark.extent();
            words.iter().all(|text| {
                here.right + CLEAR_MM < text.left
                    || text.right + CLEAR_MM < here.left
                    || here.bottom + CLEAR_MM < text.top
                    || text.bottom + CLEAR_MM < here.top
            })
        };
        for mark in self.stones().into_iter().filter(clear) {
            sheet.mark(mark);
        }
    }

    fn stones(&self) -> Vec<Mark> {
        match look(self.kind) {
            Look::Lumps(size, least) => {
                let size = (size * self.mm_per_m).max(least);
                self.strewn(size * 1.05, |at, key| lump(at, size / 2.0, key))
            }
            Look::Dots(radius) => self.strewn(radius * 4.4, |at, _| dot(Pen::Solid, at, radius)),
            Look::Rings(radius) => {
                self.strewn(radius * 2.9, |at, _| dot(Pen::Drainage, at, radius))
            }
            Look::Across(size, least) => self.across((size * self.mm_per_m).max(least)),
        }
    }

    /// Stones in uneven rows, so far apart.
    fn strewn(&self, apart: f64, stone: impl Fn(Point, u64) -> Mark) -> Vec<Mark> {
        let (long, wide) = self.size_mm;
        let apart = apart.max((long * wide / MOST).sqrt());
        let rows = (wide / apart).floor().max(1.0);
        let columns = (long / apart).floor().max(1.0);
        let mut stones = Vec::new();
        for (number, row) in (0_u64..).zip(steps(rows)) {
            for (place, column) in (0_u64..).zip(steps(columns)) {
                let key = (self.seed * 97 + number) * 997 + place;
                let nudge = |salt: u64| (chance(key * 3 + salt) - 0.5) * 0.3;
                let odd = if number % 2 == 1 { 0.5 } else { 0.0 };
                let along = (column + 0.5 + odd + nudge(1)) / columns;
                let out = (row + 0.5 + nudge(2)) / rows;
                if 1.0 < along {
                    continue;
                }
                let mark = stone((self.at)(along, out).0, key);
                if self.holds(&mark) {
                    stones.push(mark);
                }
            }
        }
        stones
    }

    /// Stones side by side across the row.
    fn across(&self, size: f64) -> Vec<Mark> {
        let (long, wide) = self.size_mm;
        let count = (long / size).floor().clamp(1.0, MOST);
        let usable = long - 2.0 * EDGE_MM;
        let (half, reach) = (usable / count * 0.4, wide / 2.0 - EDGE_MM - 0.2);
        if reach.min(half) <= 0.2 {
            return Vec::new();
        }
        steps(count)
            .map(|step| {
                let share = (EDGE_MM + usable * (step + 0.5) / count) / long;
                let (middle, along) = (self.at)(share, 0.5);
                let out = Point::new(-along.y, along.x);
                let corner = |a: f64, b: f64| onward(onward(middle, along, a), out, b);
                let corners = vec![
                    corner(-half, -reach),
                    corner(half, -reach),
                    corner(half, reach),
                    corner(-half, reach),
                ];
                Mark::Polygon {
                    pen: Pen::Stone,
                    points: corners,
                }
            })
            .filter(|mark| self.holds(mark))
            .collect()
    }

    /// Whether a stone lies within the outline, a little clear of it.
    fn holds(&self, mark: &Mark) -> bool {
        let around: Vec<Point> = match mark {
            Mark::Polygon { points, .. } => points.clone(),
            Mark::Circle {
                centre, radius_mm, ..
            } => (0..8)
                .map(|at| {
                    let (sin, cos) = (f64::from(at) * TAU / 8.0).sin_cos();
                    Point::new(centre.x + radius_mm * cos, centre.y + radius_mm * sin)
                })
                .collect(),
            _ => return false,
        };
        around
            .iter()
            .all(|corner| is_within(self.outline, *corner, EDGE_MM))
    }
}

/// The boxes of all words on a sheet.
pub(crate) fn words(sheet: &Sheet) -> Vec<TextBox> {
    let texts = sheet.marks().iter().filter_map(|mark| match mark {
        Mark::Text(text) => Some(TextBox::of(text)),
        _ => None,
    });
    texts.collect()
}

/// An uneven stone of five or six corners.
fn lump(at: Point, radius: f64, key: u64) -> Mark {
    let corners: u32 = if chance(key * 7) < 0.5 { 5 } else { 6 };
    let turn = chance(key * 7 + 1) * TAU;
    let points = (0..corners).map(|corner| {
        let salt = key * 7 + 2 + u64::from(corner);
        let far = radius * (0.66 + 0.34 * chance(salt));
        let aside = (chance(salt + 700) - 0.5) * 0.7;
        let (sin, cos) = (turn + (f64::from(corner) + aside) * TAU / f64::from(corners)).sin_cos();
        Point::new(at.x + far * cos, at.y + far * sin)
    });
    Mark::Polygon {
        pen: Pen::Stone,
        points: points.collect(),
    }
}

fn dot(pen: Pen, centre: Point, radius_mm: f64) -> Mark {
    Mark::Circle {
        pen,
        centre,
        radius_mm,
    }
}

/// Whether a point lies within an outline and no nearer to it than `clear`.
fn is_within(outline: &[Point], point: Point, clear: f64) -> bool {
    let mut within = false;
    let last = outline.last().into_iter();
    for (from, to) in last.chain(outline).zip(outline) {
        let (x, y) = (point.x - from.x, point.y - from.y);
        let (dx, dy) = (to.x - from.x, to.y - from.y);
        let square = dx * dx + dy * dy;
        let share = if square <= 0.0 {
            0.0
        } else {
            ((x * dx + y * dy) / square).clamp(0.0, 1.0)
        };
        if (x - share * dx).hypot(y - share * dy) < clear {
            return false;
        }
        if (from.y <= point.y) != (to.y <= point.y) && x < dx * (y / dy) {
            within = !within;
        }
    }
    within
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn stones_stay_within_their_heap_and_clear_of_words() {
        let outline = [(0.0, 0.0), (30.0, 0.0), (30.0, 12.0), (0.0, 12.0)];
        let outline = outline.map(|(x, y)| Point::new(x, y));
        let along = Point::new(1.0, 0.0);
        let at = |u: f64, v: f64| (Point::new(u * 30.0, v * 12.0), along);
        for kind in HeapKind::ALL {
            let mut sheet = Sheet::default();
            let middle = Point::new(15.0, 7.0);
            sheet.word(middle, "0.7 t", crate::paper::scene::Anchor::Middle);
            let patch = Patch {
                kind,
                outline: &outline,
                size_mm: (30.0, 12.0),
                at: &at,
                mm_per_m: 10.0,
                seed: 1,
            };
            let written = words(&sheet);
            patch.fill(&mut sheet, &written);
            let [words, stones @ ..] = sheet.marks() else {
                panic!("the word is there");
            };
            assert!(3 < stones.len(), "{kind:?}: {}", stones.len());
            let words = words.extent();
            for stone in stones {
                let here = stone.extent();
                assert!(0.0 < here.left && here.right < 30.0);
                assert!(0.0 < here.top && here.bottom < 12.0);
                let apart = here.right < words.left
                    || words.right < here.left
                    || here.bottom < words.top
                    || words.bottom < here.top;
                assert!(apart, "{kind:?}");
            }
        }
    }
}
