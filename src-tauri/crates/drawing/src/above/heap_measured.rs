//! How far off the face the rows of heaps begin, measured once.

use crate::above::heap_told::rough;
use crate::above::heap_view::reached;
use crate::above::heap_words::{FAR_MM, HeapWords, NEAR_MM};
use crate::paper::block::Block;
use crate::paper::dimension::tick;
use crate::paper::free_place::{Ink, fan};
use crate::paper::pen::Pen;
use crate::paper::scene::Point;
use crate::paper::sheet::Sheet;
use craft::heaps::TipAt;
use craft::quantity::{Length, Read, metres};
use craft::wall::Side;

/// From the last heap of a row to the line the rows are measured along.
const MEASURED_MM: f64 = 5.0;
/// Rows no farther apart than this begin at one mark.
const SAME_M: f64 = 0.005;
/// Rows closer than this on paper leave no room for a figure at each.
const LEAST_STEP_MM: f64 = 5.6;

impl HeapWords<'_> {
    /// From the face to where each row begins, once, past the end that has no tip; where rows
    /// lie too close for that, to the first alone. Gives whether that tells of every row.
    pub(crate) fn measured(&self, sheet: &mut Sheet, ink: &mut Ink) -> bool {
        let Some((side, offsets, of_both)) = self.fullest_side() else {
            return true;
        };
        let view = self.view;
        let Some(strip) = view.heaps.strips.iter().find(|strip| strip.side == side) else {
            return false;
        };
        let (station, ahead) = self.measured_at(side);
        let heading = view.station(station).heading;
        let along = view.ground.along(heading);
        let towards = Point::new(along.x * ahead, along.y * ahead);
        let points: Vec<Point> = std::iter::once(strip.face)
            .chain(offsets.iter().copied())
            .map(|offset| view.point(side, station, offset))
            .collect();
        let apart = |pair: &[Point]| (pair[1].x - pair[0].x).hypot(pair[1].y - pair[0].y);
        let roomy = points.windows(2).all(|pair| LEAST_STEP_MM <= apart(pair));
        let count = if roomy { points.len() } else { 2 };
        let (Some(first), Some(last)) = (points.first(), points.get(count - 1)) else {
            return false;
        };
        sheet.line(Pen::Dimension, *first, *last);
        for point in points.iter().take(count) {
            tick(sheet, *point);
        }
        let mut all = roomy && of_both;
        for (offset, point) in offsets.iter().zip(points.iter().skip(1)).take(count - 1) {
            let block = Block::figure(&rough(view.ground.course, *offset - strip.face));
            all &= ink.put(sheet, &block, &fan(*point, towards, &FAR_MM, 40.0));
        }
        let out = view.ground.out(heading, side);
        let block = Block::word("from the face");
        let mut places = fan(*last, out, &NEAR_MM, 40.0);
        places.extend(fan(*first, towards, &NEAR_MM, 65.0));
        ink.put(sheet, &block, &places);
        all
    }

    /// The side with the most rows, the offsets at which they begin, and whether the rows of
    /// the other side begin as far from their face.
    fn fullest_side(&self) -> Option<(Side, Vec<Length>, bool)> {
        let heaps = self.view.heaps;
        let offsets = |side: Side| {
            let own = heaps.heaps.iter().filter(|heap| heap.side == side);
            let mut offsets: Vec<Length> = own.map(|heap| heap.near).collect();
            offsets.sort_by(|a, b| a.si().total_cmp(&b.si()));
            offsets.dedup();
            offsets
        };
        let face = |side: Side| {
            let strip = heaps.strips.iter().find(|strip| strip.side == side);
            strip.map_or(metres(0.0), |strip| strip.face)
        };
        let [left, right] = Side::BOTH.map(|side| (side, offsets(side)));
        let (fullest, other) = if right.1.len() < left.1.len() {
            (left, right)
        } else {
            (right, left)
        };
        let told = |offset: &Length| {
            let off = *offset - face(other.0);
            let same = |it: &Length| (*it - face(fullest.0) - off).si().abs() < SAME_M;
            fullest.1.iter().any(same)
        };
        let of_both = other.1.iter().all(told);
        (!fullest.1.is_empty()).then_some((fullest.0, fullest.1, of_both))
    }

    /// Past the rows at one end; in a ring along its first way. With which way is away from them.
    fn measured_at(&self, side: Side) -> (Length, f64) {
        let view = self.view;
        let first_way = view.heaps.ways.first();
        if let Some(way) = first_way.filter(|_| view.ground.wall().is_ring()) {
            return (way.station, 1.0);
        }
        let length = view.ground.wall().length();
        let (from, to) = reached(view.heaps, side).unwrap_or((metres(0.0), length));
        let past = metres(MEASURED_MM / view.ground.scale.mm_per_m());
        let tip_at_finish = view.heaps.tips.iter().any(|tip| tip.at == TipAt::Finish);
        if tip_at_finish {
            let start = if from < metres(0.0) {
                from
            } else {
                metres(0.0)
            };
            (start - past, -1.0)
        } else {
            let end = if length < to { to } else { length };
            (end + past, 1.0)
        }
    }
}
