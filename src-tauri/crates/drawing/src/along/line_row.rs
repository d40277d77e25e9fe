//! The straights and arcs of a bent line, in a row under the elevation.

use crate::along::face::Face;
use crate::along::stretches::Stretch;
use crate::paper::dimension::{Across, Outside, tick};
use crate::paper::pen::Pen;
use crate::paper::scale::Scale;
use crate::paper::scene::Point;
use crate::paper::sheet::{FIGURE_MM, Sheet};
use crate::paper::words::shown;
use craft::course::Course;
use craft::plan::Plan;
use craft::quantity::{Length, Read, metres};
use craft::wall::Bend;

/// How straights and arcs are written, all alike in one drawing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum LineWriting {
    /// In words.
    Words,
    /// In fewer words.
    Short,
    /// In the fewest.
    Shortest,
    /// By letters that the notes explain.
    Letters,
}

/// One straight or arc of the line.
#[derive(Debug, Clone, Copy)]
struct Span {
    number: usize,
    from: Length,
    to: Length,
    bend: Option<Bend>,
}

/// The straights and arcs of a line that bends; nothing of one that does not.
fn spans(plan: &Plan) -> Vec<Span> {
    let spans: Vec<Span> = plan
        .wall
        .line
        .spans()
        .enumerate()
        .map(|(number, (from, to, bend))| Span {
            number,
            from,
            to,
            bend,
        })
        .collect();
    if spans.iter().all(|span| span.bend.is_none()) {
        return Vec::new();
    }
    spans
}

/// The fullest way of writing that fits everywhere.
pub(crate) fn line_writing(
    plan: &Plan,
    course: &Course,
    parts: &[Stretch<'_>],
    scale: Scale,
) -> LineWriting {
    let spans = spans(plan);
    [
        LineWriting::Words,
        LineWriting::Short,
        LineWriting::Shortest,
    ]
    .into_iter()
    .find(|writing| {
        spans.iter().all(|span| {
            // Whatever is cut by the end of a stretch is written where it has most room.
            let rooms = parts.iter().map(|part| span.within(part));
            let room = rooms
                .map(|(from, to)| scale.mm(to - from))
                .fold(0.0, f64::max);
            let whole = parts.iter().any(|part| span.is_whole_in(part));
            span.across(course, *writing, whole, (0.0, room), 0.0, |across| {
                across.holds_its_text()
            })
        })
    })
    .unwrap_or(LineWriting::Letters)
}

/// The row of one stretch, if the line bends.
pub(crate) fn line_row(sheet: &mut Sheet, face: &Face<'_>, writing: LineWriting) {
    let spans = spans(face.plan);
    if spans.is_empty() {
        return;
    }
    let y = sheet.extent().bottom + FIGURE_MM + 2.6;
    for span in spans {
        let (from, to) = span.within(face.stretch);
        if to <= from {
            continue;
        }
        let ends = [from, to].map(|at| face.x(at.si()));
        let ends = (ends[0].min(ends[1]), ends[0].max(ends[1]));
        let whole = span.is_whole_in(face.stretch);
        span.across(face.course, writing, whole, ends, y, |across| {
            if across.holds_its_text() {
                across.draw(sheet);
                return;
            }
            let line = [ends.0, ends.1].map(|x| Point::new(x, y));
            sheet.line(Pen::Dimension, line[0], line[1]);
            line.into_iter().for_each(|end| tick(sheet, end));
        });
    }
}

/// What the letters of the row stand for.
pub(crate) fn letters_explained(plan: &Plan, course: &Course) -> String {
    let each: Vec<String> = spans(plan)
        .into_iter()
        .map(|span| format!("{} {}", span.letter(), span.said(course)))
        .collect();
    format!("Line: {}.", each.join("; "))
}

/// The line in words: its straights and arcs in order; nothing of one that does not bend.
pub(crate) fn line_said(plan: &Plan, course: &Course) -> Option<String> {
    let each: Vec<String> = spans(plan)
        .into_iter()
        .map(|span| span.said(course))
        .collect();
    (!each.is_empty()).then(|| format!("The line from station 0: {}.", each.join("; ")))
}

impl Span {
    /// The part of it that lies in a stretch; no length where none does.
    fn within(&self, stretch: &Stretch<'_>) -> (Length, Length) {
        let from = self.from.si().max(stretch.from().si());
        let to = self.to.si().min(stretch.to().si());
        (metres(from), metres(to.max(from)))
    }

    fn is_whole_in(&self, stretch: &Stretch<'_>) -> bool {
        let (from, to) = self.within(stretch);
        ((to - from) - (self.to - self.from)).si().abs() < 1e-9
    }

    /// Its dimension line: how long it is, where all of it is seen, and what it is.
    fn across<T>(
        &self,
        course: &Course,
        writing: LineWriting,
        whole: bool,
        (from, to): (f64, f64),
        y: f64,
        then: impl FnOnce(&Across<'_>) -> T,
    ) -> T {
        let (figure, word) = match writing {
            LineWriting::Letters => (self.letter(), String::new()),
            _ => {
                let long = shown(course, self.to - self.from);
                (
                    if whole { long } else { String::new() },
                    self.what(course, writing),
                )
            }
        };
        then(&Across {
            y,
            from,
            to,
            figure: &figure,
            word: &word,
            outside: Outside::Right(to),
        })
    }

    fn what(&self, course: &Course, writing: LineWriting) -> String {
        let Some(bend) = self.bend else {
            return "straight".to_owned();
        };
        let radius = shown(course, bend.radius);
        let turn = bend.turn.word();
        match writing {
            LineWriting::Words | LineWriting::Letters => {
                format!("arc to the {turn}, radius {radius}")
            }
            LineWriting::Short => format!("{turn}, radius {radius}"),
            LineWriting::Shortest => format!("{turn}, r {radius}"),
        }
    }

    fn said(&self, course: &Course) -> String {
        let long = shown(course, self.to - self.from);
        format!("{long} {}", self.what(course, LineWriting::Words))
    }

    /// a, b, c ...; beyond z, numbers.
    fn letter(&self) -> String {
        let letter = u8::try_from(self.number)
            .ok()
            .and_then(|number| b'a'.checked_add(number))
            .filter(u8::is_ascii_lowercase);
        match letter {
            Some(letter) => char::from(letter).to_string(),
            None => (self.number + 1).to_string(),
        }
    }
}
