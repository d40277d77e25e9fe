//! Heaps, clear strips, barrow ways and tips on the ground plan, without words.

use crate::above::ground_edge::{Edge, corners, face};
use crate::above::ground_view::GroundView;
use crate::above::heap_stones::{Patch, words};
use crate::above::plan_words::arrow_head;
use crate::paper::free_place::onward;
use crate::paper::pen::Pen;
use crate::paper::scene::Point;
use crate::paper::sheet::Sheet;
use craft::heaps::{Heap, Heaps, Strip, Way, place_along};
use craft::quantity::{Length, Read, metres};
use craft::wall::{Place, Side};

/// An edge beside a bend goes in straight pieces that turn no more than this.
const TURN_RAD: f64 = 0.035;
/// A way's arrow ends so far beyond the rows.
const PAST_MM: f64 = 1.2;
/// A way shorter than this on paper has no room for an arrow.
const LEAST_ARROW_MM: f64 = 6.0;

/// The heaps on a ground plan.
pub(crate) struct HeapView<'a> {
    pub(crate) ground: &'a GroundView<'a>,
    pub(crate) heaps: &'a Heaps,
}

impl HeapView<'_> {
    /// The place at a station, beyond the ends straight on.
    pub(crate) fn station(&self, station: Length) -> Place {
        place_along(&self.ground.wall().line, station)
    }

    /// The point at a station and an offset to one side.
    pub(crate) fn point(&self, side: Side, station: Length, offset: Length) -> Point {
        self.ground
            .point(self.station(station).beside(side, offset))
    }

    /// Everything but the stones, which give way to words.
    pub(crate) fn draw(&self, sheet: &mut Sheet) {
        let ground = self.ground;
        ground.bank(sheet);
        ground.trench(sheet);
        ground.ends(sheet);
        for side in Side::BOTH {
            let edge = ground.run(side, &face(ground.wall(), side));
            sheet.polyline(Pen::Outline, edge);
        }
        for strip in &self.heaps.strips {
            self.strip(sheet, strip);
        }
        for way in &self.heaps.ways {
            for side in Side::BOTH {
                self.way(sheet, way, side);
            }
        }
        for heap in &self.heaps.heaps {
            sheet.polygon(Pen::Through, self.outline(heap));
        }
        for tip in &self.heaps.tips {
            let radius = ground.scale.mm(tip.radius);
            sheet.circle(Pen::Diagonal, ground.point(tip.place), radius);
        }
    }

    /// The stones in every heap.
    pub(crate) fn stones(&self, sheet: &mut Sheet) {
        let words = words(sheet);
        for (seed, heap) in (1_u64..).zip(&self.heaps.heaps) {
            let outline = self.outline(heap);
            let scale = self.ground.scale;
            let at = |along: f64, out: f64| {
                let station = heap.from + (heap.to - heap.from) * along;
                let offset = heap.near + (heap.far - heap.near) * out;
                let heading = self.station(station).heading;
                (
                    self.point(heap.side, station, offset),
                    self.ground.along(heading),
                )
            };
            let patch = Patch {
                kind: heap.kind,
                outline: &outline,
                size_mm: (scale.mm(heap.length), scale.mm(heap.base_width())),
                at: &at,
                mm_per_m: scale.mm_per_m(),
                seed,
            };
            patch.fill(sheet, &words);
        }
    }

    pub(crate) fn outline(&self, heap: &Heap) -> Vec<Point> {
        let corners = heap.outline(&self.ground.wall().line);
        corners
            .into_iter()
            .map(|place| self.ground.point(place))
            .collect()
    }

    /// How far out the rows on one side reach.
    pub(crate) fn far(&self, side: Side) -> Option<Length> {
        let own = self.heaps.heaps.iter().filter(|heap| heap.side == side);
        own.map(|heap| heap.far)
            .reduce(|most, it| if most < it { it } else { most })
    }

    /// The outer edge of a strip, except within bends too tight to have one.
    fn strip(&self, sheet: &mut Sheet, strip: &Strip) {
        let line = &self.ground.wall().line;
        let mut edges: Vec<Edge> = Vec::new();
        for (from, to, bend) in line.spans() {
            let folds =
                bend.is_some_and(|bend| bend.turn == strip.side && bend.radius <= strip.near);
            if folds {
                edges.push(Edge::new());
                continue;
            }
            let part = [(from, strip.near), (to, strip.near)];
            match edges.last_mut().filter(|edge| !edge.is_empty()) {
                Some(edge) => edge.extend(part),
                None => edges.push(part.to_vec()),
            }
        }
        for edge in edges.iter().filter(|edge| !edge.is_empty()) {
            let places = corners(line, strip.side, edge, TURN_RAD).into_iter();
            let mut points: Vec<Point> = places.map(|place| self.ground.point(place)).collect();
            points.dedup();
            sheet.polyline(Pen::HiddenBar, points);
        }
    }

    /// An arrow with two heads from the clear strip out past the rows.
    fn way(&self, sheet: &mut Sheet, way: &Way, side: Side) {
        let strip = self.heaps.strips.iter().find(|strip| strip.side == side);
        let (Some(strip), Some(reach)) = (strip, way.reach(side)) else {
            return;
        };
        let heading = self.station(way.station).heading;
        let out = self.ground.out(heading, side);
        let inner = self.point(side, way.station, strip.near);
        let outer = onward(self.point(side, way.station, reach), out, PAST_MM);
        let inner = onward(inner, out, PAST_MM);
        if (outer.x - inner.x).hypot(outer.y - inner.y) < LEAST_ARROW_MM {
            return;
        }
        sheet.line(Pen::Tick, inner, outer);
        arrow_head(sheet, outer, out);
        arrow_head(sheet, inner, Point::new(-out.x, -out.y));
    }
}

/// The first and the last station with heaps on one side.
pub(crate) fn reached(heaps: &Heaps, side: Side) -> Option<(Length, Length)> {
    let own = || heaps.heaps.iter().filter(|heap| heap.side == side);
    let least = own().map(|heap| heap.from.si()).reduce(f64::min)?;
    let most = own().map(|heap| heap.to.si()).reduce(f64::max)?;
    Some((metres(least), metres(most)))
}
