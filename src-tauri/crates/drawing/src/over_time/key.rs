//! The key under a picture: samples of what is drawn with what each means.

use crate::paper::scene::{Anchor, Point};
use crate::paper::sheet::{Sheet, WORD_MM};
use crate::paper::text_box::{width, wrap};

/// The room of a sample.
pub(crate) const SAMPLE_MM: (f64, f64) = (9.0, 4.2);
const GAP_MM: f64 = 1.6;
const APART_MM: f64 = 5.0;
const LINE_MM: f64 = WORD_MM * 1.3;
/// From one row of the key to the next.
const ROW_MM: f64 = 6.6;

/// Draws with its upper left corner at a point.
type Drawn = Box<dyn Fn(&mut Sheet, Point)>;

/// One thing in the key.
pub(crate) struct Sample {
    /// It, within [`SAMPLE_MM`].
    draw: Drawn,
    /// What it means.
    words: String,
}

impl Sample {
    pub(crate) fn new(words: &str, draw: impl Fn(&mut Sheet, Point) + 'static) -> Self {
        Self {
            draw: Box::new(draw),
            words: words.to_owned(),
        }
    }
}

/// Samples in rows under all that is drawn, then notes, within a width from `left`.
pub(crate) fn key(
    sheet: &mut Sheet,
    left: f64,
    room_mm: f64,
    samples: &[Sample],
    notes: &[String],
) {
    let mut at = Point::new(left, sheet.extent().bottom + 4.0);
    for sample in samples {
        let before = SAMPLE_MM.0 + GAP_MM;
        let wide = before + width(&sample.words, WORD_MM, false);
        if left < at.x && left + room_mm < at.x + wide {
            at = Point::new(left, at.y + ROW_MM);
        }
        (sample.draw)(sheet, at);
        let lines = wrap(&sample.words, WORD_MM, (room_mm - before).max(30.0));
        let base = at.y + SAMPLE_MM.1 / 2.0 + 0.27 * WORD_MM;
        for (line, down) in lines.iter().zip(crate::paper::strewn::steps(f64::INFINITY)) {
            let place = Point::new(at.x + before, base + down * LINE_MM);
            sheet.word(place, line, Anchor::Start);
        }
        if 1 < lines.len() {
            let more = lines.iter().skip(1).map(|_| LINE_MM).sum::<f64>();
            at = Point::new(left, at.y + ROW_MM + more);
        } else {
            at.x += wide + APART_MM;
        }
    }
    let mut base = sheet.extent().bottom + 1.2;
    for line in notes
        .iter()
        .flat_map(|note| wrap(note, WORD_MM, room_mm.max(40.0)))
    {
        base += LINE_MM;
        sheet.word(Point::new(left, base), &line, Anchor::Start);
    }
}
