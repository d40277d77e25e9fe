//! What is written to the left and the right of the elevation: heights, copes, throughs.

use crate::along::counted::below_top;
use crate::along::face::{EndAt, Face, STANDING_MM};
use crate::along::lie::level_shown;
use crate::paper::dimension::tick;
use crate::paper::pen::Pen;
use crate::paper::scene::Point;
use crate::paper::sheet::Sheet;
use crate::paper::side_notes::{Note, Towards, side_notes};
use crate::paper::words::shown;
use crate::turns::come_to;
use craft::course::End;
use craft::quantity::{Read, show_count};

/// More through rows than this are written in one line each.
const FEW_ROWS: usize = 2;
/// From the upright line to its notes, past the ends of what leads to it.
const PAST_MM: f64 = 1.2;

/// All notes on both sides, along the upright lines at `left` and `right`: heights and
/// counts at the right; at the left what differs there, or is not to be seen at the right.
pub(crate) fn beside(sheet: &mut Sheet, face: &Face<'_>, (left, right): (f64, f64)) {
    for (towards, x) in [(Towards::Left, left), (Towards::Right, right)] {
        let Some(end) = end_at(face, towards) else {
            continue;
        };
        let lane = Lane {
            face,
            end,
            towards,
            x,
        };
        let mut notes = Vec::new();
        if towards == Towards::Right || heights_differ(face) {
            notes.push(lane.height(sheet));
        }
        if towards == Towards::Right {
            notes.extend(lane.cope(sheet));
        }
        for row in 0..face.plan.stone.throughs.len() {
            if noted_at(face, row) == towards {
                notes.extend(lane.throughs(sheet, row));
            }
        }
        if !notes.is_empty() {
            side_notes(sheet, towards.out(x, PAST_MM), towards, &notes);
        }
    }
}

/// The end of the whole wall on one side of the paper, if this stretch has it.
fn end_at(face: &Face<'_>, towards: Towards) -> Option<EndAt> {
    let [start, finish] = face.ends();
    let (end, here) = if (towards == Towards::Left) == face.mirrored() {
        (finish, face.stretch.last)
    } else {
        (start, face.stretch.first)
    };
    here.then_some(end)
}

fn heights_differ(face: &Face<'_>) -> bool {
    let height = |at: f64| level_shown(face.course, face.lie.top(at) - face.lie.ground(at));
    height(0.0) != height(face.lie.length())
}

/// A row of throughs is noted at the right, unless it is buried there and not at the left.
fn noted_at(face: &Face<'_>, row: usize) -> Towards {
    let below = below_top(face.plan, row);
    let length = face.lie.length();
    let buried = |at: f64| face.lie.top(at) - below <= face.lie.ground(at);
    let [left, right] = if face.mirrored() {
        [length, 0.0]
    } else {
        [0.0, length]
    };
    if buried(right) && !buried(left) {
        Towards::Left
    } else {
        Towards::Right
    }
}

/// The upright line beside one end of the wall.
struct Lane<'a> {
    face: &'a Face<'a>,
    end: EndAt,
    towards: Towards,
    x: f64,
}

impl Lane<'_> {
    /// Ground to cope.
    fn height(&self, sheet: &mut Sheet) -> Note {
        let face = self.face;
        let at = self.end.at;
        let (low, high) = (face.lie.ground(at), face.lie.top(at));
        self.dimension(sheet, (low, high));
        let word = if 0.0 < face.cope() {
            "to cope"
        } else {
            "to top"
        };
        Note {
            y: face.y((low + high) / 2.0),
            figure: level_shown(face.course, high - low),
            word: word.to_owned(),
        }
    }

    fn cope(&self, sheet: &mut Sheet) -> Option<Note> {
        let face = self.face;
        if face.cope() <= 0.0 {
            return None;
        }
        let top = face.lie.top(self.end.at);
        self.dimension(sheet, (top, top + face.cope()));
        Some(Note {
            y: face.y(top + face.cope() / 2.0),
            figure: shown(face.course, face.course.wall.cope_height),
            word: show_count(face.plan.stone.copes, "cope", "copes"),
        })
    }

    /// A row of throughs, led to from where it comes out of the ground on this side.
    fn throughs(&self, sheet: &mut Sheet, row: usize) -> Option<Note> {
        let face = self.face;
        let below = below_top(face.plan, row);
        let (from, to) = face.reach_here(below).unwrap_or((face.from(), face.to()));
        let runs = face.above_ground(&face.below_top(from, to, below));
        let (at, level) = if 0.0 < self.end.out {
            *runs.last()?.last()?
        } else {
            *runs.first()?.first()?
        };
        let thick = face.course.wall.through.thickness.si();
        let y = self.lead(sheet, (at, level + (thick / 2.0).min(below / 2.0)));
        let here = come_to(face.plan, face.course, row, face.lie.side);
        let row = face.plan.stone.throughs.get(row)?;
        let counted = show_count(row.count, "through", "throughs");
        let counted = match here {
            0 => format!("{counted}, dashed"),
            some if some < row.count => format!("{some} of {counted}"),
            _ => counted,
        };
        let height = shown(face.course, row.height);
        Some(if face.plan.stone.throughs.len() <= FEW_ROWS {
            Note {
                y,
                figure: height,
                word: counted,
            }
        } else {
            Note {
                y,
                figure: String::new(),
                word: format!("{height}: {counted}"),
            }
        })
    }

    /// An upright dimension from one level to another, with a line to it from the upper one.
    fn dimension(&self, sheet: &mut Sheet, (low, high): (f64, f64)) {
        let (face, x) = (self.face, self.x);
        let (from, to) = (face.y(low), face.y(high));
        let edge = self.towards.out(face.x(self.end.at), 1.0);
        sheet.line(Pen::Dimension, Point::new(x, from), Point::new(x, to));
        sheet.line(
            Pen::Dimension,
            Point::new(edge, to),
            Point::new(self.towards.out(x, PAST_MM), to),
        );
        tick(sheet, Point::new(x, from));
        tick(sheet, Point::new(x, to));
    }

    /// A level line from a place on the wall past the upright line. Gives how far down it
    /// runs.
    fn lead(&self, sheet: &mut Sheet, place: (f64, f64)) -> f64 {
        let at = self.face.at(place);
        let standing = if self.end.kind == Some(End::Joined) {
            STANDING_MM
        } else {
            0.0
        };
        let near = self.towards.out(at.x, standing + 1.0);
        let far = self.towards.out(self.x, PAST_MM);
        sheet.line(Pen::Leader, Point::new(near, at.y), Point::new(far, at.y));
        at.y
    }
}
