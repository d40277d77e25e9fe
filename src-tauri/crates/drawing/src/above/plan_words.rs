//! The words on the ground plan: frames, radii, ends, the bank and which way to look.

use crate::above::ground_view::{BANK_MM, BEYOND_MM, GroundView};
use crate::above::line_words::{front, outset};
use crate::above::pegs::{centres, letter, pegs};
use crate::above::pitch::BAR_MM;
use crate::paper::block::Block;
use crate::paper::free_place::{Ink, Place, around, fan, onward, turned};
use crate::paper::pen::Pen;
use crate::paper::scene::Point;
use crate::paper::sheet::{FIGURE_MM, Sheet};
use crate::paper::words::shown;
use craft::course::End;
use craft::frames::{Curve, FrameRow};
use craft::quantity::{Length, Read, metres};
use craft::wall::Side;
use std::f64::consts::PI;

/// The arrow that tells which way to look.
const ARROW_MM: f64 = 14.0;
const HEAD_MM: f64 = 2.6;
/// Half a stroke of a cross.
const CROSS_MM: f64 = 2.2;
/// Frames closer than this on paper leave no room for words to turn aside.
const CLOSE_MM: f64 = 18.0;
/// How far from their place words are tried.
const NEAR_MM: [f64; 3] = [1.3, 2.4, 3.6];
const FAR_MM: [f64; 9] = [1.3, 2.4, 3.6, 6.0, 9.0, 13.0, 18.0, 24.0, 32.0];
const LED_MM: [f64; 8] = [6.0, 9.0, 13.0, 18.0, 24.0, 32.0, 42.0, 55.0];

/// The words of one ground plan.
pub(crate) struct PlanWords<'a> {
    pub(crate) view: &'a GroundView<'a>,
    /// Which arcs' centres are drawn.
    pub(crate) centres: &'a [bool],
}

/// What found its place.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Said {
    pub(crate) every_frame: bool,
    pub(crate) every_station: bool,
}

impl PlanWords<'_> {
    /// Writes everything, the most needed first.
    pub(crate) fn write(&self, sheet: &mut Sheet, ink: &mut Ink) -> Said {
        self.base_line(sheet);
        self.crosses_and_radii(sheet);
        ink.read(sheet);
        self.arrow(sheet, ink);
        let pegged = self.frames(sheet, ink, true);
        let left = self.radii_named(sheet, ink);
        let others = self.frames(sheet, ink, false);
        self.radii_led(sheet, ink, &left);
        self.ends(sheet, ink);
        self.bank(sheet, ink);
        self.base_line_named(sheet, ink);
        Said {
            every_frame: pegged.every_frame && others.every_frame,
            every_station: pegged.every_station && others.every_station,
        }
    }

    /// From the end of the first straight in the first direction, as far as any peg lies
    /// along it; both in metres.
    fn base(&self) -> Option<(f64, f64)> {
        let plan = self.view.plan;
        let first = plan.wall.line.spans().next();
        let straight = first.map_or(0.0, |(_, to, bend)| match bend {
            None => to.si(),
            Some(_) => 0.0,
        });
        let on_the_ground = pegs(plan).into_iter().filter(|peg| peg.station.is_some());
        let farthest = on_the_ground.map(|peg| peg.place.x_m).fold(0.0, f64::max);
        (straight + 1e-6 < farthest).then_some((straight, farthest))
    }

    fn base_line(&self, sheet: &mut Sheet) {
        if let Some((from, to)) = self.base() {
            let ends = [from, to].map(|along| self.view.at(along, 0.0));
            sheet.line(Pen::Dimension, ends[0], ends[1]);
        }
    }

    fn base_line_named(&self, sheet: &mut Sheet, ink: &mut Ink) {
        let Some((_, to)) = self.base() else {
            return;
        };
        let (end, along) = (self.view.at(to, 0.0), self.view.along(0.0));
        let words = Block::word("base line");
        ink.put(sheet, &words, &around(end, along, &NEAR_MM));
    }

    fn curves(&self) -> impl Iterator<Item = (usize, &Curve, bool)> {
        let curves = self.view.plan.fittings.curves.iter().enumerate();
        curves.map(|(at, curve)| (at, curve, self.centres.get(at).copied().unwrap_or_default()))
    }

    /// The middle of an arc on the centre line, and outwards from its centre there.
    fn middle(&self, curve: &Curve) -> (Point, Point) {
        let place = self.view.wall().line.place((curve.from + curve.to) / 2.0);
        let outwards = self.view.out(place.heading, curve.bend.turn.other());
        (self.view.point(place), outwards)
    }

    fn crosses_and_radii(&self, sheet: &mut Sheet) {
        for (at, curve, drawn) in self.curves() {
            let Some(centre) = centres(self.view.plan).get(at).copied().filter(|_| drawn) else {
                continue;
            };
            let centre = self.view.point(centre);
            for (dx, dy) in [(CROSS_MM, 0.0), (0.0, CROSS_MM)] {
                let from = Point::new(centre.x - dx, centre.y - dy);
                sheet.line(Pen::Tick, from, Point::new(centre.x + dx, centre.y + dy));
            }
            let (middle, outwards) = self.middle(curve);
            sheet.line(Pen::Dimension, centre, middle);
            arrow_head(sheet, middle, outwards);
        }
    }

    /// Radii beside their lines, and centres. Gives the arcs whose radius found no room there.
    fn radii_named(&self, sheet: &mut Sheet, ink: &mut Ink) -> Vec<usize> {
        let mut left = Vec::new();
        let centres = centres(self.view.plan);
        for (at, curve, drawn) in self.curves() {
            let (Some(centre), true) = (centres.get(at), drawn) else {
                left.push(at);
                continue;
            };
            let (centre, (middle, outwards)) = (self.view.point(*centre), self.middle(curve));
            let radius = shown(self.view.course, curve.bend.radius);
            let words = Block::figure(&radius).and_word("radius");
            let beside = [turned(outwards, -PI / 2.0), turned(outwards, PI / 2.0)];
            let mut places = Vec::new();
            for away_mm in NEAR_MM {
                for share in [0.45, 0.6, 0.3, 0.75] {
                    let from = between(centre, middle, share);
                    places.extend(beside.map(|towards| Place {
                        from,
                        towards,
                        away_mm,
                    }));
                }
            }
            if !ink.put(sheet, &words, &places) {
                left.push(at);
            }
            let name = Block::word(&format!("centre {}", letter(at)));
            let inwards = around(centre, turned(outwards, PI), &[CROSS_MM, 3.6, 6.0]);
            ink.put(sheet, &name, &inwards);
        }
        left
    }

    /// The other radii, led to the arc from where there is room.
    fn radii_led(&self, sheet: &mut Sheet, ink: &mut Ink, left: &[usize]) {
        for (at, curve, _) in self.curves().filter(|(at, _, _)| left.contains(at)) {
            let radius = shown(self.view.course, curve.bend.radius);
            let words = Block::figure(&format!("radius {radius}"))
                .and_word(&format!("from centre {}", letter(at)));
            let (middle, outwards) = self.middle(curve);
            let mut places = around(middle, turned(outwards, PI), &LED_MM);
            places.extend(around(middle, outwards, &LED_MM));
            places.sort_by(|a, b| a.away_mm.total_cmp(&b.away_mm));
            ink.put(sheet, &words, &places);
        }
    }

    /// Behind station 0 looking along the wall, with left and right beside; where something
    /// stands there, beside the wall.
    fn arrow(&self, sheet: &mut Sheet, ink: &mut Ink) {
        let view = self.view;
        let place = view.wall().line.place(metres(0.0));
        let (along, start) = (view.along(place.heading), view.point(place));
        let behind = match view.plan.ends.first().map(|end| end.kind) {
            None | Some(End::Head) => 4.0,
            Some(End::Joined | End::Raked) => BEYOND_MM + 3.0,
        };
        let mut middles = vec![onward(start, along, -behind - ARROW_MM / 2.0)];
        for far in [9.0, 12.0, 16.0, 22.0, 30.0] {
            for side in [Side::Right, Side::Left] {
                let off = view.scale.mm(view.wall().offset(side, metres(0.0)));
                middles.push(onward(start, view.out(place.heading, side), off + far));
            }
        }
        let half = (
            (along.x.abs() * ARROW_MM / 2.0).max(HEAD_MM),
            (along.y.abs() * ARROW_MM / 2.0).max(HEAD_MM),
        );
        let Some(middle) = middles
            .into_iter()
            .find(|middle| ink.is_clear(*middle, half))
        else {
            return;
        };
        let tip = onward(middle, along, ARROW_MM / 2.0);
        sheet.line(Pen::Tick, onward(middle, along, -ARROW_MM / 2.0), tip);
        arrow_head(sheet, tip, along);
        for side in Side::BOTH {
            let out = view.out(place.heading, side);
            let words = Block::word(side.word());
            ink.put(sheet, &words, &around(middle, out, &[1.8, 3.0, 3.9]));
        }
    }

    /// Numbers with stations where a peg stands; then those of the other frames, straight out
    /// from the wall where they stand close, so that they keep to one row.
    fn frames(&self, sheet: &mut Sheet, ink: &mut Ink, pegged: bool) -> Said {
        let rows = &self.view.plan.frames.rows;
        let pegs = pegs(self.view.plan);
        let has_peg = |row: &FrameRow| pegs.iter().any(|peg| peg.station == Some(row.station));
        let here = |(_, row): &(usize, &FrameRow)| has_peg(row) == pegged;
        let mut bare = Vec::new();
        for (at, row) in rows.iter().enumerate().filter(here) {
            let places = self.beside_frame(row, pegged);
            if !ink.put(sheet, &self.with_station(at, row), &places) {
                bare.push((at, row));
            }
        }
        let mut said = Said {
            every_frame: true,
            every_station: bare.is_empty(),
        };
        for (at, row) in bare {
            let places = self.beside_frame(row, pegged);
            said.every_frame &= ink.put(sheet, &Block::ringed(at + 1), &places);
        }
        said
    }

    fn with_station(&self, at: usize, row: &FrameRow) -> Block {
        let station = if row.station == metres(0.0) {
            "station 0".to_owned()
        } else {
            shown(self.view.course, row.station)
        };
        let heading = self.view.wall().line.place(row.station).heading;
        let out = self.view.out(heading, Side::Right);
        Block::ringed(at + 1).and_figure(&station, FIGURE_MM, out.y.abs() <= out.x.abs())
    }

    /// Places beside a frame, first on the side away from the bend and from the bank.
    fn beside_frame(&self, row: &FrameRow, pegged: bool) -> Vec<Place> {
        let view = self.view;
        let place = view.wall().line.place(row.station);
        let first = self.side_of_words(row.station);
        let close = view.scale.mm(view.plan.frames.bay()) < CLOSE_MM;
        let (far, most): (&[f64], f64) = match (pegged, close) {
            (true, _) => (&FAR_MM, 90.0),
            (false, false) => (&NEAR_MM, 65.0),
            (false, true) => (&NEAR_MM[..1], 0.0),
        };
        let places = |side: Side| {
            let out = view.out(place.heading, side);
            let beyond = row.offset(side) + outset(view.course);
            let face = view.point(place.beside(side, beyond));
            fan(onward(face, out, 2.0 * BAR_MM), out, far, most)
        };
        let mut both = places(first);
        if pegged || !close {
            // Near on either side before far on the first.
            both.extend(places(first.other()));
            both.sort_by(|a, b| a.away_mm.total_cmp(&b.away_mm));
        }
        both
    }

    fn side_of_words(&self, station: Length) -> Side {
        front(self.view.plan).unwrap_or_else(|| {
            let bend = self.view.bend_at(station);
            bend.map_or_else(|| self.usual_side(), |bend| bend.turn.other())
        })
    }

    /// On the outside of most of the bends; right of a straight.
    fn usual_side(&self) -> Side {
        let line = &self.view.wall().line;
        if line.place(line.length()).heading < -1e-9 {
            Side::Left
        } else {
            Side::Right
        }
    }

    fn ends(&self, sheet: &mut Sheet, ink: &mut Ink) {
        let view = self.view;
        for (end, out) in view.plan.ends.iter().zip([-1.0, 1.0]) {
            let place = view.wall().line.place(end.station);
            let along = view.along(place.heading);
            let out = Point::new(along.x * out, along.y * out);
            let (word, beyond) = match end.kind {
                End::Head => ("built end", 0.0),
                End::Joined => ("joined", BEYOND_MM),
                End::Raked => ("raked end", BEYOND_MM),
            };
            let from = onward(view.point(place), out, beyond);
            let mut places = fan(from, out, &NEAR_MM, 65.0);
            for side in Side::BOTH {
                let off = view.scale.mm(view.wall().offset(side, end.station));
                let side_out = view.out(place.heading, side);
                let corner = onward(onward(view.point(place), out, beyond / 2.0), side_out, off);
                places.extend(fan(corner, side_out, &FAR_MM, 65.0));
            }
            ink.put(sheet, &Block::word(word), &places);
        }
    }

    fn bank(&self, sheet: &mut Sheet, ink: &mut Ink) {
        let view = self.view;
        let (Some(front), Some(retaining)) = (front(view.plan), view.plan.retaining.as_ref())
        else {
            return;
        };
        let (back, length) = (front.other(), view.wall().length());
        let drainage = view.scale.mm(retaining.drainage);
        let places = |side: Side, beyond_mm: f64, shares: &[f64], far: &[f64]| {
            let mut places = Vec::new();
            for share in shares {
                let station = length * *share;
                let place = view.wall().line.place(station);
                let off = view.scale.mm(view.wall().offset(side, station));
                let out = view.out(place.heading, side);
                let from = onward(view.point(place), out, off + beyond_mm);
                places.extend(around(from, out, far));
            }
            places
        };
        let bank = Block::figure("bank");
        let behind = drainage + BANK_MM;
        let shares = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8];
        ink.put(sheet, &bank, &places(back, behind, &shares, &NEAR_MM));
        let stone = format!("drainage stone {}", shown(view.course, retaining.drainage));
        let led = [behind + 2.0, behind + 5.0, behind + 9.0, behind + 14.0];
        let shares = [0.75, 0.7, 0.8, 0.25, 0.65, 0.3, 0.85];
        ink.put(
            sheet,
            &Block::word(&stone),
            &places(back, drainage / 2.0, &shares, &led),
        );
        let shares = [0.42, 0.58, 0.36, 0.64, 0.28, 0.72, 0.5];
        ink.put(
            sheet,
            &Block::word("front face"),
            &places(front, 0.0, &shares, &LED_MM),
        );
    }
}

fn between(one: Point, other: Point, share: f64) -> Point {
    Point::new(
        one.x + (other.x - one.x) * share,
        one.y + (other.y - one.y) * share,
    )
}

/// Two strokes back from a tip.
pub(crate) fn arrow_head(sheet: &mut Sheet, tip: Point, along: Point) {
    for turn in [2.75, -2.75] {
        sheet.line(Pen::Tick, tip, onward(tip, turned(along, turn), HEAD_MM));
    }
}
