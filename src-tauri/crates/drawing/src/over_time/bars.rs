//! One day's bars: told apart by frame and hatching, named inside or on a flag.

use crate::over_time::flags::Flag;
use crate::over_time::timetable::{Bar, short};
use crate::paper::hatching::hatched_box;
use crate::paper::pen::Pen;
use crate::paper::scene::{Anchor, Point};
use crate::paper::sheet::{SMALL_MM, Sheet, WORD_MM, line_of};
use crate::paper::strewn::steps;
use crate::paper::text_box::{width, wrap};
use craft::pace::EntryKind;

/// How high the bars are.
pub(crate) const BAR_MM: f64 = 12.8;
/// Clear paper between a name and the frame.
const BESIDE_MM: f64 = 0.9;
const LINE: f64 = 1.14;

/// All kinds, in the order of the key, with the word for each.
pub(crate) const KINDS: [(EntryKind, &str); 5] = [
    (EntryKind::Build, "building"),
    (EntryKind::Lesson, "lesson"),
    (EntryKind::Safety, "safety"),
    (EntryKind::Break, "break"),
    (EntryKind::Tidy, "tidying"),
];

fn pen(kind: EntryKind) -> Pen {
    match kind {
        EntryKind::Build => Pen::Build,
        EntryKind::Lesson | EntryKind::Tidy => Pen::Talk,
        EntryKind::Safety => Pen::Warning,
        EntryKind::Break => Pen::Rest,
    }
}

/// A bar without its name.
pub(crate) fn frame(sheet: &mut Sheet, kind: EntryKind, across: (f64, f64), down: (f64, f64)) {
    // Frames of neighbours stand clear of one another.
    let inset = 0.25_f64.min((across.1 - across.0) / 4.0);
    let (left, right) = (across.0 + inset, across.1 - inset);
    let corners = [(left, down.0), (right, down.1)].map(|(x, y)| Point::new(x, y));
    sheet.rectangle(pen(kind), corners[0], corners[1]);
    match kind {
        EntryKind::Lesson | EntryKind::Safety => hatched_box(sheet, (left, right), down),
        EntryKind::Tidy => {
            const STEP_MM: f64 = 1.4;
            for stroke in steps(((down.1 - down.0) / STEP_MM - 0.5).floor()) {
                let y = down.0 + (stroke + 1.0) * STEP_MM;
                sheet.line(Pen::Hatch, Point::new(left, y), Point::new(right, y));
            }
        }
        EntryKind::Build | EntryKind::Break => {}
    }
}

/// Draws a bar from 0 down to [`BAR_MM`]. Gives the flag that names it if it can't be named
/// inside: a hatched one never is.
pub(crate) fn bar(sheet: &mut Sheet, bar: &Bar, (left, right): (f64, f64)) -> Option<Flag> {
    frame(sheet, bar.kind, (left, right), (0.0, BAR_MM));
    let name = short(&bar.what);
    let plain = matches!(bar.kind, EntryKind::Build | EntryKind::Break);
    if plain && inside(sheet, &name, (left, right)) {
        return None;
    }
    let middle = (left + right) / 2.0;
    Some(Flag::new(middle, 0.0, Pen::Leader, &name))
}

/// Writes a name into a bar in some lines, or turned where it is narrow, if it has room.
fn inside(sheet: &mut Sheet, name: &str, (left, right): (f64, f64)) -> bool {
    let room = right - left - 2.0 * (BESIDE_MM + 0.25);
    let middle = (left + right) / 2.0;
    for size in [WORD_MM, SMALL_MM] {
        let lines = wrap(name, size, room);
        let high = (lines.iter().map(|_| LINE * size)).sum::<f64>();
        let fits = |line: &String| width(line, size, false) <= room;
        if !lines.iter().all(fits) || BAR_MM - 2.0 * BESIDE_MM < high {
            continue;
        }
        let first = (BAR_MM - high) / 2.0 + 0.84 * size;
        for (line, down) in lines.iter().zip(steps(f64::INFINITY)) {
            let at = Point::new(middle, first + down * LINE * size);
            sheet.text(line_of(at, line, size, Anchor::Middle));
        }
        return true;
    }
    let size = SMALL_MM;
    let long = width(name, size, false);
    if BAR_MM - 2.0 * BESIDE_MM < long || room < size * 0.97 - BESIDE_MM {
        return false;
    }
    let at = Point::new(middle + 0.275 * size, BAR_MM / 2.0);
    sheet.text(line_of(at, name, size, Anchor::Middle).turned());
    true
}

#[cfg(test)]
mod tests {
    use super::*;

    fn named(kind: EntryKind, what: &str, wide: f64) -> Option<Flag> {
        let one = Bar {
            from: 0.0,
            to: 60.0,
            what: what.to_owned(),
            kind,
        };
        bar(&mut Sheet::default(), &one, (0.0, wide))
    }

    #[test]
    fn a_name_stands_inside_where_it_has_room() {
        assert!(named(EntryKind::Build, "Lay the footing", 20.0).is_none());
        assert!(named(EntryKind::Break, "Tea", 5.0).is_none(), "turned");
        assert!(named(EntryKind::Break, "Tea", 2.0).is_some());
        assert!(named(EntryKind::Build, "Finish the built ends", 6.0).is_some());
        assert!(named(EntryKind::Lesson, "Copes", 60.0).is_some(), "hatched");
    }
}
