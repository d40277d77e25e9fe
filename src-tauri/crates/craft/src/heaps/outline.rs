//! Heaps on the ground plan: their outlines, bent with the line.

use super::Heap;
use super::field::{path, place_along};
use super::shape::where_it_is;
use crate::quantity::{Read, metres};
use crate::wall::{Line, Place};
use std::f64::consts::PI;

/// Along a bend an outline goes in straight pieces that turn no more than this.
const TURN_RAD: f64 = 0.05;
/// A round end goes in so many.
const ROUND: u32 = 12;
/// An edge beside a bend goes in no fewer and no more than so many.
const PIECES: (f64, f64) = (8.0, 400.0);
/// Corners nearer to each other than this are one.
const SAME_M: f64 = 1e-9;

impl Heap {
    /// The corners of its outline on the ground, in order: a rectangle where it is laid, else
    /// a ridge with round ends, either bent with the line.
    pub fn outline(&self, line: &Line) -> Vec<Place> {
        let [from, to, near, far] = [self.from, self.to, self.near, self.far].map(Read::si);
        let mut corners: Vec<(f64, f64)> = if self.laid {
            let inner = run(line, from, to).map(|station| (station, near));
            let outer = run(line, to, from).map(|station| (station, far));
            inner.chain(outer).collect()
        } else {
            self.round_ended(line)
        };
        let apart = |a: &(f64, f64), b: &(f64, f64)| SAME_M < (a.0 - b.0).hypot(a.1 - b.1);
        corners.dedup_by(|a, b| !apart(a, b));
        if let [first, .., last] = corners.as_slice()
            && !apart(first, last)
        {
            corners.pop();
        }
        let place = |(station, offset)| {
            place_along(line, metres(station)).beside(self.side, metres(offset))
        };
        corners.into_iter().map(place).collect()
    }

    /// The corners of a ridge as stations and offsets. Its round ends are measured along the
    /// path in its middle, so that a bend makes it neither larger nor smaller.
    fn round_ended(&self, line: &Line) -> Vec<(f64, f64)> {
        let [from, to, near, far] = [self.from, self.to, self.near, self.far].map(Read::si);
        let (middle, half) = ((near + far) / 2.0, (far - near) / 2.0);
        let along = |station: f64| path(line, self.side, from, station, middle);
        let whole = along(to);
        let at = |distance: f64| where_it_is(distance.clamp(0.0, whole), from, to, along);
        let straight = half.min(whole / 2.0);
        let round = |step: u32, ahead: f64, begins: f64| {
            let turn = PI * (f64::from(step) / f64::from(ROUND) - 0.5);
            let station = at(begins + ahead * straight * turn.cos());
            (station, middle + ahead * half * turn.sin())
        };
        let [first, last] = [straight, whole - straight].map(at);
        let inner = run(line, first, last).map(|station| (station, near));
        let end = (1..ROUND).map(|step| round(step, 1.0, whole - straight));
        let outer = run(line, last, first).map(|station| (station, far));
        let begin = (1..ROUND).map(|step| round(step, -1.0, straight));
        inner.chain(end).chain(outer).chain(begin).collect()
    }
}

/// Stations from one to another, so close together that what lies between is straight.
pub(super) fn run(line: &Line, from: f64, to: f64) -> impl Iterator<Item = f64> + use<> {
    let (low, high) = (from.min(to), from.max(to));
    let bent = line.spans().filter_map(|(begins, ends, bend)| {
        let along = high.min(ends.si()) - low.max(begins.si());
        let bend = bend.filter(|_| 0.0 < along)?;
        Some(along / bend.radius.si())
    });
    let turned: f64 = bent.sum();
    let pieces = if turned <= 0.0 {
        1.0
    } else {
        (turned / TURN_RAD).ceil().clamp(PIECES.0, PIECES.1)
    };
    (0_u32..)
        .map(f64::from)
        .take_while(move |at| *at <= pieces)
        .map(move |at| from + (to - from) * at / pieces)
}
