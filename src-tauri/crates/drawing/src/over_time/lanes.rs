//! Whiskers of one day laid out in lanes, each with its name beside it, none over another.

use crate::over_time::whiskers::{Leaves, Line, Piece};
use crate::paper::pen::Pen;
use crate::paper::scene::{Anchor, Point};
use crate::paper::sheet::{Sheet, WORD_MM, line_of};
use crate::paper::text_box::width;

/// From one lane to the next.
pub(crate) const LANE_MM: f64 = 4.5;
/// Between a whisker and its name.
const BESIDE_MM: f64 = 1.5;
/// Between two whiskers of one lane.
const APART_MM: f64 = 4.0;
/// Half the stroke at an end, and half the diamond in the middle.
const STROKE_MM: f64 = 1.2;
const DIAMOND_MM: f64 = 1.25;
/// How far an arrow reaches beyond the end of the day.
pub(crate) const ARROW_MM: f64 = 2.6;

/// How whiskers share lanes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Packing {
    /// A stage never stands over one before it, so that the eye goes down.
    Falling,
    /// Each in the first lane that has room, where paper is short.
    Close,
}

/// A piece with its place across the paper.
struct Laid<'a> {
    piece: &'a Piece,
    /// The whisker, arrow included.
    line: Option<(f64, f64)>,
    /// Where the name begins, and whether it has a lane of its own over the whisker.
    name_at: f64,
    over: bool,
    /// All of it.
    from: f64,
    to: f64,
}

/// Draws the pieces of a day between `left` and `right` from `top` down. `x`: where a time
/// stands; `ends`: where the day ends. Gives the lower edge.
pub(crate) fn lanes(
    sheet: &mut Sheet,
    pieces: &[Piece],
    x: &dyn Fn(f64) -> f64,
    (left, right, ends): (f64, f64, f64),
    (top, packing): (f64, Packing),
) -> f64 {
    // The right edge of what stands in each lane so far.
    let mut filled: Vec<f64> = Vec::new();
    for piece in pieces {
        let laid = lay(piece, x, (left, right, ends));
        let lanes = if laid.over { 2 } else { 1 };
        let free = |at: &usize| {
            let both = filled.iter().skip(*at).take(lanes);
            both.into_iter().all(|to| to + APART_MM <= laid.from)
        };
        let least = match packing {
            Packing::Falling => filled.len().saturating_sub(1),
            // What is never reached stands below all that is.
            Packing::Close if piece.line.is_none() => filled.len(),
            Packing::Close => 0,
        };
        let at = (least..filled.len()).find(free).unwrap_or(filled.len());
        filled.resize(filled.len().max(at + lanes), f64::NEG_INFINITY);
        for to in filled.iter_mut().skip(at).take(lanes) {
            *to = to.max(laid.to);
        }
        let y = top + (at as f64 + 0.5) * LANE_MM;
        laid.draw(sheet, x, y);
    }
    top + filled.len() as f64 * LANE_MM
}

fn lay<'a>(
    piece: &'a Piece,
    x: &dyn Fn(f64) -> f64,
    (left, right, ends): (f64, f64, f64),
) -> Laid<'a> {
    let (_, wide) = words(piece);
    let Some(line) = piece.line else {
        let name_at = (ends - wide).max(left);
        return Laid {
            piece,
            line: None,
            name_at,
            over: false,
            from: name_at,
            to: name_at + wide,
        };
    };
    let (from, mut to) = (x(line.from), x(line.to));
    if line.leaves != Leaves::No {
        to += ARROW_MM;
    }
    // The strokes and the diamond reach a little beyond the times they stand for.
    let (from_mm, to_mm) = (from - DIAMOND_MM, to + DIAMOND_MM);
    let laid = |name_at: f64, over| Laid {
        piece,
        line: Some((from, to)),
        name_at,
        over,
        from: name_at.min(from_mm),
        to: (name_at + wide).max(to_mm),
    };
    if to_mm + BESIDE_MM + wide <= right {
        return laid(to_mm + BESIDE_MM, false);
    }
    if left <= from_mm - BESIDE_MM - wide {
        return laid(from_mm - BESIDE_MM - wide, false);
    }
    laid((right - wide).min(from).max(left), true)
}

/// The words of a piece in a row: each with its place from the first on, and the end of all.
fn words(piece: &Piece) -> (Vec<(f64, &str, bool)>, f64) {
    let mut at = 0.0;
    let parts = [
        (piece.name.as_str(), false),
        (piece.time.as_str(), true),
        (piece.after, false),
    ];
    let mut row = Vec::new();
    for (words, bold) in parts.into_iter().filter(|(words, _)| !words.is_empty()) {
        row.push((at, words, bold));
        at += width(words, WORD_MM, bold) + GAP_MM;
    }
    (row, (at - GAP_MM).max(0.0))
}

/// Between a name and its time.
const GAP_MM: f64 = 1.2;

impl Laid<'_> {
    /// `y`: the middle of its first lane.
    fn draw(&self, sheet: &mut Sheet, x: &dyn Fn(f64) -> f64, y: f64) {
        let base = y + 0.27 * WORD_MM;
        for (at, words, bold) in words(self.piece).0 {
            let place = Point::new(self.name_at + at, base);
            let mut text = line_of(place, words, WORD_MM, Anchor::Start);
            text.bold = bold;
            sheet.text(text);
        }
        if let (Some(line), Some(across)) = (&self.piece.line, self.line) {
            let y = if self.over { y + LANE_MM } else { y };
            whisker(sheet, line, across, line.middle.map(x), y);
        }
    }
}

/// A whisker between two places, the arrow included in the second.
pub(crate) fn whisker(
    sheet: &mut Sheet,
    line: &Line,
    (from, to): (f64, f64),
    middle: Option<f64>,
    y: f64,
) {
    sheet.line(Pen::Spread, Point::new(from, y), Point::new(to, y));
    let stroke = |sheet: &mut Sheet, x: f64| {
        let ends = [y - STROKE_MM, y + STROKE_MM].map(|y| Point::new(x, y));
        sheet.line(Pen::Tick, ends[0], ends[1]);
    };
    if !line.enters {
        stroke(sheet, from);
    }
    match line.leaves {
        Leaves::No => stroke(sheet, to),
        Leaves::NextDay => {
            let corners = [(-1.3, -1.0), (0.0, 0.0), (-1.3, 1.0)];
            let corners = corners.map(|(dx, dy)| Point::new(to + dx, y + dy));
            sheet.polyline(Pen::Spread, corners.to_vec());
        }
        Leaves::Beyond => {
            let corners = [(-2.2, -1.1), (0.0, 0.0), (-2.2, 1.1)];
            let corners = corners.map(|(dx, dy)| Point::new(to + dx, y + dy));
            sheet.polygon(Pen::Solid, corners.to_vec());
        }
    }
    if let Some(x) = middle {
        let corners = [(-1.0, 0.0), (0.0, -1.0), (1.0, 0.0), (0.0, 1.0)];
        let corners = corners.map(|(dx, dy)| Point::new(x + dx * DIAMOND_MM, y + dy * DIAMOND_MM));
        sheet.polygon(Pen::Solid, corners.to_vec());
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::paper::scene::Mark;

    fn piece(name: &str, times: Option<(f64, f64)>) -> Piece {
        Piece {
            line: times.map(|(from, to)| Line {
                from,
                to,
                middle: None,
                enters: false,
                leaves: Leaves::No,
            }),
            name: name.to_owned(),
            time: String::new(),
            after: "",
        }
    }

    /// The lane each name stands in, on an axis of 200 mm with a millimetre for a minute.
    fn lanes_of(pieces: &[Piece], packing: Packing) -> Vec<(String, f64)> {
        let mut sheet = Sheet::default();
        lanes(
            &mut sheet,
            pieces,
            &|time| time,
            (0.0, 200.0, 200.0),
            (0.0, packing),
        );
        let texts = sheet.marks().iter().filter_map(|mark| match mark {
            Mark::Text(text) => Some((text.words.clone(), (text.at.y / LANE_MM).floor())),
            _ => None,
        });
        texts.collect()
    }

    #[test]
    fn lanes_are_shared_where_there_is_room() {
        let pieces = [
            piece("dig", Some((0.0, 30.0))),
            piece("footing", Some((20.0, 60.0))),
            piece("lift", Some((100.0, 120.0))),
            piece("copes", None),
        ];
        let at = |packing| -> Vec<f64> {
            let lanes = lanes_of(&pieces, packing).into_iter();
            lanes.map(|(_, lane)| lane).collect()
        };
        assert_eq!(at(Packing::Falling), [0.0, 1.0, 1.0, 1.0]);
        assert_eq!(at(Packing::Close), [0.0, 1.0, 0.0, 2.0]);
    }

    #[test]
    fn a_name_without_room_beside_its_whisker_stands_over_it() {
        let all_day = [piece("second lift", Some((1.0, 199.0)))];
        assert!(lanes_of(&all_day, Packing::Falling)[0].1 < 1.0);
        let mut sheet = Sheet::default();
        let edges = (0.0, 200.0, 200.0);
        let bottom = lanes(
            &mut sheet,
            &all_day,
            &|it| it,
            edges,
            (0.0, Packing::Falling),
        );
        assert!((bottom - 2.0 * LANE_MM).abs() < 1e-9, "{bottom}");
    }
}
