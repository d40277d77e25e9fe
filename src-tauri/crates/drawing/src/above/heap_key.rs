//! The key beside the heap plan: each kind with its stones, its letter, its mass and its heaps.

use crate::above::heap_stones::{IN_THE_KEY, Patch};
use crate::above::heap_told::rough;
use crate::above::heap_words::letter;
use crate::paper::pen::Pen;
use crate::paper::scene::{Anchor, Point};
use crate::paper::sheet::{FIGURE_MM, Sheet, WORD_MM};
use crate::paper::text_box::width;
use craft::course::{Course, StoneKind};
use craft::heaps::{Heap, HeapKind, Heaps};
use craft::quantity::{Length, Read, kilograms, metres, show_count, show_mass};
use craft::wall::Side;

/// The patch of stones.
const PATCH_MM: (f64, f64) = (10.0, 6.4);
const GAP_MM: f64 = 2.0;
/// From one line of a kind to the next.
const LINE_MM: f64 = 4.2;
/// Between two kinds and between two columns.
const APART_MM: f64 = 2.2;
const COLUMNS_APART_MM: f64 = 7.0;

/// The key in so many columns on a sheet of its own. `offsets`: how far off the face each kind
/// lies is told here, because the plan has no room for it.
pub(crate) fn key(heaps: &Heaps, course: &Course, columns: usize, offsets: bool) -> Sheet {
    let kinds = heaps.kinds();
    let each = kinds.len().div_ceil(columns.max(1)).max(1);
    let mut sheet = Sheet::default();
    let mut left = 0.0;
    for column in kinds.chunks(each) {
        let mut top = 0.0;
        let mut right: f64 = left;
        for kind in column {
            let lines = lines(heaps, course, *kind, offsets);
            right = right.max(entry(
                &mut sheet,
                heaps,
                *kind,
                Point::new(left, top),
                &lines,
            ));
            let high = FIGURE_MM + LINE_MM * (lines.len() - 1) as f64;
            top += high.max(PATCH_MM.1) + APART_MM;
        }
        left = right + COLUMNS_APART_MM;
    }
    sheet
}

/// What is said of a kind: its name with its mass, then its heaps and what waits.
fn lines(heaps: &Heaps, course: &Course, kind: HeapKind, offsets: bool) -> Vec<String> {
    let own = heaps.heaps.iter().filter(|heap| heap.kind == kind);
    let own: Vec<Heap> = own.copied().collect();
    let shown = |mass| show_mass(mass, course.units);
    let waiting = heaps.held_back(kind);
    let all = heaps.laid_out(kind) + waiting;
    let mut lines = vec![format!("{} {}", kind.word(), shown(all))];
    if own.is_empty() {
        lines.push("waits at the tip".to_owned());
        return lines;
    }
    lines.push(lots(&own, course));
    if offsets {
        lines.push(off_the_face_in_words(heaps, course, &own));
    }
    if kilograms(0.0) < waiting {
        lines.push(format!("{} of it waits at the tip", shown(waiting)));
    }
    lines
}

/// `1.30 m from the face`, where both sides have the same.
fn off_the_face_in_words(heaps: &Heaps, course: &Course, own: &[Heap]) -> String {
    let least = |side: Side| {
        let offs = own.iter().filter(|heap| heap.side == side);
        let offs = offs.filter_map(|heap| off_the_face(heaps, heap));
        let least = offs.reduce(|least, it| if it < least { it } else { least });
        least.map(|off| rough(course, off))
    };
    match Side::BOTH.map(least) {
        [Some(left), Some(right)] if left != right => {
            format!("{left} left, {right} right from the face")
        }
        [left, right] => format!("{} from the face", left.or(right).unwrap_or_default()),
    }
}

/// `4 heaps, up to 0.64 m high`, `4 lots, laid flat`.
pub(crate) fn lots(heaps: &[Heap], course: &Course) -> String {
    let highest = heaps
        .iter()
        .map(|heap| heap.height.si())
        .fold(0.0, f64::max);
    let count = |one, many| show_count(heaps.len(), one, many);
    match heaps.first().map(|heap| (heap.laid, heap.kind)) {
        Some((true, HeapKind::Stone(StoneKind::Copes))) => {
            format!("{}, on edge", count("lot", "lots"))
        }
        Some((true, _)) => format!("{}, laid flat", count("lot", "lots")),
        _ => {
            let up_to = if heaps.len() == 1 { "" } else { "up to " };
            let high = rough(course, metres(highest));
            format!("{}, {up_to}{high} high", count("heap", "heaps"))
        }
    }
}

/// From the face to the near edge of a heap.
pub(crate) fn off_the_face(heaps: &Heaps, heap: &Heap) -> Option<Length> {
    let strip = heaps.strips.iter().find(|strip| strip.side == heap.side)?;
    Some(heap.near - strip.face)
}

/// One kind, its upper left corner at a point. Gives its right edge.
fn entry(sheet: &mut Sheet, heaps: &Heaps, kind: HeapKind, at: Point, lines: &[String]) -> f64 {
    patch(sheet, kind, at);
    let letter = letter(heaps, kind);
    let mut x = at.x + PATCH_MM.0 + GAP_MM;
    let base = at.y + 0.78 * FIGURE_MM;
    sheet.figure(Point::new(x, base), &letter, Anchor::Start);
    x += width("M", FIGURE_MM, true) + GAP_MM / 2.0;
    let mut right = x;
    for (number, line) in lines.iter().enumerate() {
        let y = base + LINE_MM * number as f64;
        if number == 0 {
            let size = WORD_MM * 1.1;
            let text = crate::paper::sheet::line_of(Point::new(x, y), line, size, Anchor::Start);
            right = right.max(x + width(line, size, true));
            sheet.text(text.bold());
        } else {
            sheet.word(Point::new(x, y), line, Anchor::Start);
            right = right.max(x + width(line, WORD_MM, false));
        }
    }
    right
}

fn patch(sheet: &mut Sheet, kind: HeapKind, at: Point) {
    let (long, wide) = PATCH_MM;
    let corners = [(0.0, 0.0), (long, 0.0), (long, wide), (0.0, wide)];
    let outline = corners.map(|(x, y)| Point::new(at.x + x, at.y + y));
    sheet.polygon(Pen::Through, outline.to_vec());
    let place = |along: f64, out: f64| {
        let point = Point::new(at.x + along * long, at.y + out * wide);
        (point, Point::new(1.0, 0.0))
    };
    let patch = Patch {
        kind,
        outline: &outline,
        size_mm: PATCH_MM,
        at: &place,
        mm_per_m: IN_THE_KEY,
        seed: 1,
    };
    patch.fill(sheet, &[]);
}
