//! The words on the heap plan: what lies in each heap, how far off the face, where to begin.

use crate::above::heap_view::HeapView;
use crate::paper::block::Block;
use crate::paper::free_place::{Ink, Place, around, fan};
use crate::paper::scene::{Anchor, Point};
use crate::paper::sheet::{SMALL_MM, Sheet, WORD_MM, line_of};
use crate::paper::text_box::width;
use craft::heaps::{Heap, HeapKind, Heaps};
use craft::quantity::show_mass;
use craft::wall::Side;

/// How far from their place words are tried.
pub(crate) const NEAR_MM: [f64; 4] = [1.3, 2.4, 3.6, 5.0];
pub(crate) const FAR_MM: [f64; 8] = [1.3, 2.4, 3.6, 6.0, 9.0, 13.0, 18.0, 24.0];
/// Along a heap or a strip words are tried in the middle first.
pub(crate) const SHARES: [f64; 7] = [0.5, 0.38, 0.62, 0.26, 0.74, 0.14, 0.86];

const KEEP_CLEAR: &str = "keep clear";

/// The words of one heap plan.
pub(crate) struct HeapWords<'a> {
    pub(crate) view: &'a HeapView<'a>,
}

/// The letter of a kind: A for what lies nearest to the wall.
pub(crate) fn letter(heaps: &Heaps, kind: HeapKind) -> String {
    let at = heaps.kinds().iter().position(|its| *its == kind);
    let at = at.and_then(|at| u8::try_from(at).ok()).unwrap_or_default();
    char::from(b'A' + at).to_string()
}

impl HeapWords<'_> {
    /// Writes everything, the most needed first. Gives whether every row is measured.
    pub(crate) fn write(&self, sheet: &mut Sheet, ink: &mut Ink) -> bool {
        let named = self.in_the_heaps(sheet, ink);
        let measured = self.measured(sheet, ink);
        self.tips(sheet, ink);
        self.ends(sheet, ink);
        self.sides(sheet, ink);
        self.beside_the_rows(sheet, ink, &named);
        self.keep_clear(sheet, ink);
        measured
    }

    /// The kind and its mass in every heap that has room for them, else its letter. Gives which
    /// are named on which side.
    fn in_the_heaps(&self, sheet: &mut Sheet, ink: &mut Ink) -> Vec<(HeapKind, Side)> {
        let mut named = Vec::new();
        for heap in &self.view.heaps.heaps {
            let mass = show_mass(heap.mass, self.view.ground.course.units);
            let (word, letter) = (heap.kind.word(), letter(self.view.heaps, heap.kind));
            let blocks = [
                Block::word(word).and_word(&mass),
                Block::word(&format!("{word} {mass}")),
                Block::word(&format!("{letter} {mass}")),
                Block::figure(&letter),
                Block::word(&letter),
            ];
            let places = self.within(heap);
            let mut fitting = blocks.iter().filter(|block| self.may_hold(heap, block));
            if fitting.any(|block| ink.put(sheet, block, &places))
                || small(sheet, ink, &letter, &places)
            {
                named.push((heap.kind, heap.side));
            }
        }
        named
    }

    /// Whether a heap is large enough for words, whichever way it lies; looked at first because
    /// it is quickly seen.
    fn may_hold(&self, heap: &Heap, block: &Block) -> bool {
        let scale = self.view.ground.scale;
        let (long, wide) = (scale.mm(heap.length), scale.mm(heap.base_width()));
        let (half_wide, half_high) = block.half();
        2.0 * half_wide.min(half_high) <= long.min(wide)
            && 2.0 * half_wide.max(half_high) <= long.hypot(wide)
    }

    fn within(&self, heap: &Heap) -> Vec<Place> {
        let middle = (heap.near + heap.far) / 2.0;
        let shares = SHARES.iter().take(5);
        shares
            .map(|share| {
                let station = heap.from + (heap.to - heap.from) * *share;
                about(self.view.point(heap.side, station, middle))
            })
            .collect()
    }

    /// Letters at the ends of rows none of whose heaps has room for one.
    fn beside_the_rows(&self, sheet: &mut Sheet, ink: &mut Ink, named: &[(HeapKind, Side)]) {
        let mut named = named.to_vec();
        let mut tried = Vec::new();
        for heap in &self.view.heaps.heaps {
            let row = (heap.kind, heap.side, heap.row);
            if named.contains(&(heap.kind, heap.side)) || tried.contains(&row) {
                continue;
            }
            tried.push(row);
            let own =
                |it: &&Heap| it.kind == heap.kind && it.side == heap.side && it.row == heap.row;
            let in_the_row = || self.view.heaps.heaps.iter().filter(own);
            let middle = (heap.near + heap.far) / 2.0;
            let mut places = Vec::new();
            for it in in_the_row() {
                for (station, ahead) in [(it.from, -1.0), (it.to, 1.0)] {
                    let heading = self.view.station(station).heading;
                    let along = self.view.ground.along(heading);
                    let towards = Point::new(along.x * ahead, along.y * ahead);
                    let from = self.view.point(it.side, station, middle);
                    places.extend(fan(from, towards, &NEAR_MM, 20.0));
                }
            }
            places.sort_by(|a, b| a.away_mm.total_cmp(&b.away_mm));
            let block = Block::word(&letter(self.view.heaps, heap.kind));
            if ink.put(sheet, &block, &places) {
                named.push((heap.kind, heap.side));
            }
        }
    }

    fn tips(&self, sheet: &mut Sheet, ink: &mut Ink) {
        let ground = self.view.ground;
        for tip in &self.view.heaps.tips {
            let middle = ground.point(tip.place);
            let load = show_mass(tip.load, ground.course.units);
            let blocks = [
                Block::figure("tip here").and_word(&format!("a load of {load}")),
                Block::figure("tip").and_word(&load),
                Block::word("tip"),
            ];
            let radius = ground.scale.mm(tip.radius);
            let mut places = vec![about(middle)];
            let beyond = NEAR_MM.map(|near| near + radius);
            if blocks.iter().any(|block| ink.put(sheet, block, &places)) {
                continue;
            }
            places = around(middle, Point::new(0.0, 1.0), &beyond);
            ink.put(sheet, &blocks[1], &places);
        }
    }

    /// Places in the middle of a strip.
    pub(crate) fn in_the_strip(&self, side: Side) -> Vec<Place> {
        let length = self.view.ground.wall().length();
        let strip = self
            .view
            .heaps
            .strips
            .iter()
            .find(|strip| strip.side == side);
        let middle = strip.map(|strip| (strip.trench.unwrap_or(strip.face) + strip.near) / 2.0);
        let at = |share: f64| Some(about(self.view.point(side, length * share, middle?)));
        // From the middle of the wall to either end in turn.
        let shares = (0..26_u32).map(|step| {
            let off = f64::from(step.div_ceil(2)) / 27.0;
            if step % 2 == 0 { 0.5 + off } else { 0.5 - off }
        });
        shares.filter_map(at).collect()
    }

    /// In each strip where there is room for it.
    fn keep_clear(&self, sheet: &mut Sheet, ink: &mut Ink) {
        for strip in &self.view.heaps.strips {
            let places = self.in_the_strip(strip.side);
            if !ink.put(sheet, &Block::word(KEEP_CLEAR), &places) {
                turned(sheet, ink, &places);
            }
        }
    }
}

/// Words as small as can be read, with less white round them than others have.
pub(crate) fn small(sheet: &mut Sheet, ink: &mut Ink, words: &str, places: &[Place]) -> bool {
    const LESS_MM: f64 = 0.35;
    let half = (
        width(words, SMALL_MM, true) / 2.0 - LESS_MM,
        SMALL_MM * 0.485 - LESS_MM,
    );
    ink.read(sheet);
    let Some(place) = places.iter().find(|place| ink.is_clear(place.from, half)) else {
        return false;
    };
    let at = Point::new(place.from.x, place.from.y + 0.275 * SMALL_MM);
    sheet.text(line_of(at, words, SMALL_MM, Anchor::Middle).bold());
    true
}

/// The same words upright, for strips that run up the paper.
fn turned(sheet: &mut Sheet, ink: &mut Ink, places: &[Place]) {
    let half = (WORD_MM * 0.5, width(KEEP_CLEAR, WORD_MM, false) / 2.0);
    ink.read(sheet);
    let Some(place) = places.iter().find(|place| ink.is_clear(place.from, half)) else {
        return;
    };
    // Letters stand 0.76 over and 0.21 under the base line: this centres them.
    let at = Point::new(place.from.x + 0.275 * WORD_MM, place.from.y);
    sheet.text(line_of(at, KEEP_CLEAR, WORD_MM, Anchor::Middle).turned());
}

/// Words whose middle stands at a point.
fn about(from: Point) -> Place {
    Place {
        from,
        towards: Point::new(0.0, 0.0),
        away_mm: 0.0,
    }
}
