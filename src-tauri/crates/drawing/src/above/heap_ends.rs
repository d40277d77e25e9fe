//! The ends of the wall and its two sides, named on the heap plan.

use crate::above::ground_view::{BANK_MM, BEYOND_MM};
use crate::above::heap_told::rough;
use crate::above::heap_words::{FAR_MM, HeapWords, NEAR_MM, SHARES, small};
use crate::above::line_words::front;
use crate::paper::block::Block;
use crate::paper::free_place::{Ink, Place, fan, onward};
use crate::paper::scene::Point;
use crate::paper::sheet::Sheet;
use craft::course::End;
use craft::quantity::{Length, metres};
use craft::wall::Side;

/// Where all round is full, a word stands so far off.
const FARTHER_MM: [f64; 4] = [16.0, 21.0, 27.0, 34.0];

impl HeapWords<'_> {
    /// Station 0 and the far end, and how they are left.
    pub(crate) fn ends(&self, sheet: &mut Sheet, ink: &mut Ink) {
        let ground = self.view.ground;
        let length = ground.wall().length();
        let far = rough(ground.course, length);
        let stations = [
            (metres(0.0), "station 0", -1.0),
            (length, far.as_str(), 1.0),
        ];
        let ring = ground.wall().is_ring();
        for (at, (station, name, ahead)) in stations.into_iter().enumerate() {
            let kind = ground.plan.ends.get(at).map(|end| end.kind);
            let block = match kind {
                None => Block::word(name),
                Some(End::Head) => Block::word(name).and_word("built end"),
                Some(End::Joined) => Block::word(name).and_word("joined"),
                Some(End::Raked) => Block::word(name).and_word("raked end"),
            };
            if ring && at == 1 {
                break;
            }
            let past = match kind {
                None | Some(End::Head) => 0.0,
                Some(End::Joined | End::Raked) => BEYOND_MM,
            };
            ink.put(sheet, &block, &self.past_an_end(station, ahead, past));
        }
    }

    /// Places past an end of the wall: straight on, or aside of that; at the start of a ring
    /// outside or inside of it.
    fn past_an_end(&self, station: Length, ahead: f64, past: f64) -> Vec<Place> {
        let ground = self.view.ground;
        let place = ground.wall().line.place(station);
        let along = ground.along(place.heading);
        let on = Point::new(along.x * ahead, along.y * ahead);
        let end = onward(ground.point(place), on, past);
        let ring = ground.wall().is_ring();
        let mut places = Vec::new();
        if !ring {
            places.extend(fan(end, on, &FAR_MM, 65.0));
        }
        for side in Side::BOTH {
            let out = ground.out(place.heading, side);
            let face = ground.point(place.beside(side, ground.wall().offset(side, station)));
            if ring {
                places.extend(fan(onward(face, out, 1.0), out, &FAR_MM, 90.0));
                continue;
            }
            for away in [1.5, 3.5, 6.0] {
                places.extend(fan(onward(face, out, away), on, &NEAR_MM[..2], 40.0));
            }
        }
        places.sort_by(|a, b| a.away_mm.total_cmp(&b.away_mm));
        if ring {
            places.extend(self.past_the_way(station));
        }
        places
    }

    /// Places past the outer ends of the way at the start of a ring.
    fn past_the_way(&self, station: Length) -> Vec<Place> {
        let ways = self.view.heaps.ways.iter();
        let mut places = Vec::new();
        for way in ways.filter(|way| way.station == station) {
            for side in Side::BOTH {
                let Some(reach) = way.reach(side) else {
                    continue;
                };
                let heading = self.view.station(station).heading;
                let from = self.view.point(side, station, reach);
                places.extend(fan(
                    from,
                    self.view.ground.out(heading, side),
                    &FAR_MM,
                    65.0,
                ));
            }
        }
        places
    }

    /// Left and right, beyond the rows.
    pub(crate) fn sides(&self, sheet: &mut Sheet, ink: &mut Ink) {
        let ground = self.view.ground;
        for side in Side::BOTH {
            let (mut places, mut farther) = (Vec::new(), Vec::new());
            for share in SHARES {
                let station = ground.wall().length() * share;
                let behind = ground.plan.retaining.as_ref();
                let bank = behind.filter(|it| it.given.side == side);
                let (drainage, strokes) =
                    bank.map_or((metres(0.0), 0.0), |it| (it.drainage, BANK_MM));
                let edge = self
                    .view
                    .far(side)
                    .unwrap_or_else(|| ground.wall().offset(side, station) + drainage);
                let out = ground.out(ground.wall().line.place(station).heading, side);
                let from = onward(self.view.point(side, station, edge), out, strokes);
                places.extend(fan(from, out, &FAR_MM, 65.0));
                farther.extend(fan(from, out, &FARTHER_MM, 85.0));
            }
            places.sort_by(|a, b| a.away_mm.total_cmp(&b.away_mm));
            // Where all round is full, before the face.
            let strip = self.in_the_strip(side);
            places.extend(&strip);
            places.extend(farther);
            let block = Block::figure(side.word());
            let bank = front(ground.plan).is_some_and(|front| front != side);
            let block = if bank { block.and_word("bank") } else { block };
            if !ink.put(sheet, &block, &places) {
                small(sheet, ink, side.word(), &strip);
            }
        }
    }
}
