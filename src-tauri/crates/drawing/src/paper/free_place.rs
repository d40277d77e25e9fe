//! Finding a free place for words: the first of several that touches no line and no other text.

use crate::paper::block::Block;
use crate::paper::pen::Pen;
use crate::paper::scene::{Mark, Point};
use crate::paper::sheet::Sheet;
use crate::paper::text_box::TextBox;
use std::f64::consts::TAU;

/// Clear paper round a text.
const CLEAR_MM: f64 = 0.7;
/// Words farther than this from their place are led to it.
const LED_MM: f64 = 4.0;
/// Between a leader and the words it leads to.
const LEADER_GAP_MM: f64 = 0.9;

/// A place to try: so far from a point in a direction of length 1.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Place {
    pub(crate) from: Point,
    pub(crate) towards: Point,
    pub(crate) away_mm: f64,
}

impl Place {
    /// The middle of a block that lies wholly beyond the distance.
    fn middle(self, block: &Block) -> Point {
        let (wide, high) = block.half();
        let reach = self.away_mm + self.towards.x.abs() * wide + self.towards.y.abs() * high;
        onward(self.from, self.towards, reach)
    }

    fn leader(self) -> Option<(Point, Point)> {
        let end = onward(self.from, self.towards, self.away_mm - LEADER_GAP_MM);
        (LED_MM < self.away_mm).then_some((self.from, end))
    }
}

/// The point so far on in a direction.
pub(crate) fn onward(from: Point, towards: Point, by_mm: f64) -> Point {
    Point::new(from.x + towards.x * by_mm, from.y + towards.y * by_mm)
}

/// Places round a point, the nearest first, those in the wished direction before those that
/// turn away from it.
pub(crate) fn around(from: Point, towards: Point, distances_mm: &[f64]) -> Vec<Place> {
    fan(from, towards, distances_mm, 150.0)
}

/// The same, turned away by no more than so many degrees.
pub(crate) fn fan(from: Point, towards: Point, distances_mm: &[f64], most: f64) -> Vec<Place> {
    const TURNS: [f64; 13] = [
        0.0, 20.0, -20.0, 40.0, -40.0, 65.0, -65.0, 90.0, -90.0, 120.0, -120.0, 150.0, -150.0,
    ];
    let place = |away_mm: f64, turn: f64| Place {
        from,
        towards: turned(towards, turn.to_radians()),
        away_mm,
    };
    let turns = || TURNS.iter().filter(|turn| turn.abs() <= most);
    distances_mm
        .iter()
        .flat_map(|away| turns().map(|turn| place(*away, *turn)))
        .collect()
}

/// A direction turned.
pub(crate) fn turned(towards: Point, by: f64) -> Point {
    let (sin, cos) = by.sin_cos();
    Point::new(
        towards.x * cos - towards.y * sin,
        towards.x * sin + towards.y * cos,
    )
}

/// What stands on a sheet already, for finding what is free.
#[derive(Debug, Default)]
pub(crate) struct Ink {
    pieces: Vec<(Point, Point)>,
    texts: Vec<TextBox>,
    /// How many of the sheet's marks it knows.
    read: usize,
}

impl Ink {
    /// Writes a block at the first place where it is clear of everything, with a leader where
    /// it stands far off. Gives whether there was one.
    pub(crate) fn put(&mut self, sheet: &mut Sheet, block: &Block, places: &[Place]) -> bool {
        self.read(sheet);
        let Some(place) = places.iter().find(|place| self.is_free(block, **place)) else {
            return false;
        };
        if let Some((from, to)) = place.leader() {
            sheet.line(Pen::Leader, from, to);
        }
        for mark in block.marks(place.middle(block), place.towards) {
            sheet.mark(mark);
        }
        true
    }

    /// Takes in what was drawn since.
    pub(crate) fn read(&mut self, sheet: &Sheet) {
        let marks = sheet.marks();
        for mark in marks.get(self.read..).unwrap_or_default() {
            self.take(mark);
        }
        self.read = marks.len();
    }

    fn take(&mut self, mark: &Mark) {
        match mark {
            Mark::Line { from, to, .. } => self.pieces.push((*from, *to)),
            Mark::Polyline { points, .. } => self.chain(points),
            Mark::Polygon { points, .. } => {
                self.chain(points);
                if let [first, .., last] = points.as_slice() {
                    self.pieces.push((*last, *first));
                }
            }
            Mark::Circle {
                pen,
                centre,
                radius_mm,
            } => {
                let around: Vec<Point> = (0..=16)
                    .map(|at| {
                        let (sin, cos) = (f64::from(at) * TAU / 16.0).sin_cos();
                        Point::new(centre.x + radius_mm * cos, centre.y + radius_mm * sin)
                    })
                    .collect();
                self.chain(&around);
                // A ring belongs to its number.
                if *pen == Pen::Dimension {
                    self.texts.push(mark.extent());
                }
            }
            Mark::Text(text) => self.texts.push(TextBox::of(text)),
        }
    }

    fn chain(&mut self, points: &[Point]) {
        self.pieces
            .extend(points.windows(2).map(|pair| (pair[0], pair[1])));
    }

    fn is_free(&self, block: &Block, place: Place) -> bool {
        let leads_freely = place.leader().is_none_or(|(from, to)| {
            let over = |text: &TextBox| touches(&grown(text, 0.3), from, to);
            !self.texts.iter().any(over)
        });
        let marks = block.marks(place.middle(block), place.towards);
        leads_freely && marks.iter().all(|mark| self.has_room_for(&mark.extent()))
    }

    /// Whether nothing stands in a box round a middle.
    pub(crate) fn is_clear(&self, middle: Point, (wide, high): (f64, f64)) -> bool {
        self.has_room_for(&TextBox {
            left: middle.x - wide,
            top: middle.y - high,
            right: middle.x + wide,
            bottom: middle.y + high,
        })
    }

    fn has_room_for(&self, wanted: &TextBox) -> bool {
        let room = grown(wanted, CLEAR_MM);
        let apart = |text: &TextBox| {
            room.right <= text.left
                || text.right <= room.left
                || room.bottom <= text.top
                || text.bottom <= room.top
        };
        self.texts.iter().all(apart)
            && !self
                .pieces
                .iter()
                .any(|(from, to)| touches(&room, *from, *to))
    }
}

fn grown(text: &TextBox, by: f64) -> TextBox {
    TextBox {
        left: text.left - by,
        top: text.top - by,
        right: text.right + by,
        bottom: text.bottom + by,
    }
}

/// Whether a straight piece and a box have a point in common: they have none where a line
/// along an edge of the box, or along the piece, lies between them.
fn touches(room: &TextBox, from: Point, to: Point) -> bool {
    let beside = from.x.max(to.x) < room.left
        || room.right < from.x.min(to.x)
        || from.y.max(to.y) < room.top
        || room.bottom < from.y.min(to.y);
    if beside {
        return false;
    }
    let side = |x: f64, y: f64| (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x);
    let sides = [
        side(room.left, room.top),
        side(room.right, room.top),
        side(room.left, room.bottom),
        side(room.right, room.bottom),
    ];
    !(sides.iter().all(|side| 0.0 < *side) || sides.iter().all(|side| *side < 0.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    const UPWARDS: Point = Point { x: 0.0, y: -1.0 };

    fn text_of(sheet: &Sheet) -> TextBox {
        let mut texts = sheet.marks().iter().filter_map(|mark| match mark {
            Mark::Text(text) => Some(TextBox::of(text)),
            _ => None,
        });
        texts.next().expect("a text was written")
    }

    #[test]
    fn words_go_where_they_are_wished_or_round_what_stands_there() {
        let here = Point::new(0.0, 0.0);
        let mut sheet = Sheet::default();
        let (mut ink, block) = (Ink::default(), Block::figure("6.00 m"));
        assert!(ink.put(&mut sheet, &block, &around(here, UPWARDS, &[2.0])));
        let first = text_of(&sheet);
        assert!(first.bottom < -1.9 && (first.left + first.right).abs() < 1e-9);
        // The same place again: taken, so the next goes to one side.
        assert!(ink.put(&mut sheet, &block, &around(here, UPWARDS, &[2.0])));
        let second = match sheet.marks().last() {
            Some(Mark::Text(text)) => TextBox::of(text),
            other => panic!("{other:?}"),
        };
        assert!(
            first.right < second.left || second.right < first.left || first.bottom < second.top
        );
    }

    #[test]
    fn where_no_place_is_free_nothing_is_written() {
        let mut sheet = Sheet::default();
        for row in -40..40 {
            let y = f64::from(row);
            sheet.line(Pen::Hatch, Point::new(-50.0, y), Point::new(50.0, y));
        }
        let before = sheet.marks().len();
        let places = around(Point::new(0.0, 0.0), UPWARDS, &[2.0, 6.0]);
        assert!(!Ink::default().put(&mut sheet, &Block::word("bank"), &places));
        assert_eq!(sheet.marks().len(), before);
    }

    #[test]
    fn a_piece_touches_a_box_it_runs_through_and_not_one_it_passes() {
        let room = TextBox {
            left: 0.0,
            top: 0.0,
            right: 4.0,
            bottom: 2.0,
        };
        let touches = |from: (f64, f64), to: (f64, f64)| {
            super::touches(&room, Point::new(from.0, from.1), Point::new(to.0, to.1))
        };
        assert!(touches((-1.0, 1.0), (5.0, 1.0)));
        assert!(touches((1.0, 1.0), (2.0, 1.5)));
        assert!(touches((-1.0, 1.5), (1.5, -1.0)));
        // Passes the corner: its own box overlaps, the piece does not.
        assert!(!touches((-2.0, 1.0), (1.0, -2.0)));
        assert!(!touches((5.0, -1.0), (5.0, 3.0)));
    }

    #[test]
    fn far_words_are_led_to() {
        let mut sheet = Sheet::default();
        let places = around(Point::new(0.0, 0.0), UPWARDS, &[12.0]);
        assert!(Ink::default().put(&mut sheet, &Block::word("radius"), &places));
        assert!(matches!(
            sheet.marks()[0],
            Mark::Line {
                pen: Pen::Leader,
                ..
            }
        ));
        assert!(text_of(&sheet).bottom < -11.0);
    }
}
