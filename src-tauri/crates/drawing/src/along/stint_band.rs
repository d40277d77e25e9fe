//! Who builds where: a band over the wall with names where there is room for them.

use crate::along::stretches::Stretch;
use crate::paper::dimension::tick;
use crate::paper::pen::Pen;
use crate::paper::scale::Scale;
use crate::paper::scene::{Anchor, Point};
use crate::paper::sheet::{FIGURE_MM, SMALL_MM, Sheet, WORD_MM, line_of};
use crate::paper::text_box::width;
use craft::people::Stint;
use craft::quantity::{Length, Read};

/// Clear paper beside a name.
const BESIDE_MM: f64 = 1.2;
const LINE_MM: f64 = 1.25;

const BESIDE_TURNED_MM: f64 = 0.5;
/// A stint cut by the end of a stretch is named where the larger share of it is.
const NAMED_SHARE: f64 = 0.5;

/// How the stints of one drawing are written, all alike.
pub(crate) struct Writing {
    /// One entry for each stint: its lines, the last lowest.
    lines: Vec<Vec<String>>,
    size: f64,
    bold: bool,
    turned: bool,
}

/// The part of a stint that stands in a stretch of wall.
struct Part {
    stint: usize,
    from: Length,
    to: Length,
    named: bool,
}

fn parts<'a>(stints: &'a [Stint], stretch: &'a Stretch<'_>) -> impl Iterator<Item = Part> + 'a {
    stints.iter().enumerate().filter_map(|(at, stint)| {
        let from = largest(stint.from, stretch.from());
        let to = -largest(-stint.to, -stretch.to());
        let share = (to - from).si() / (stint.to - stint.from).si();
        (0.0 < share).then_some(Part {
            stint: at,
            from,
            to,
            named: NAMED_SHARE <= share,
        })
    })
}

fn largest(a: Length, b: Length) -> Length {
    if a < b { b } else { a }
}

/// The best way to write the stints that fits everywhere; `None` if not even numbers fit.
pub(crate) fn writing(
    stints: &[Stint],
    stretches: &[Stretch<'_>],
    scale: Scale,
) -> Option<Writing> {
    writings(stints).into_iter().find(|writing| {
        stretches.iter().all(|stretch| {
            parts(stints, stretch)
                .filter(|part| part.named)
                .all(|part| writing.fits(part.stint, scale.mm(part.to - part.from)))
        })
    })
}

/// Where a band is drawn.
pub(crate) struct Place<'a> {
    /// The height of its line.
    pub(crate) y: f64,
    /// A station on paper.
    pub(crate) x: &'a dyn Fn(Length) -> f64,
    /// Just over the wall at a station.
    pub(crate) wall: &'a dyn Fn(Length) -> f64,
}

/// The band of one stretch: its texts above its line, and from its strokes lines down to the
/// wall.
pub(crate) fn stint_band(
    sheet: &mut Sheet,
    place: &Place<'_>,
    stints: &[Stint],
    stretch: &Stretch<'_>,
    writing: Option<&Writing>,
) {
    let (y, x) = (place.y, place.x);
    let (start, end) = (stretch.from(), stretch.to());
    let line = [start, end].map(|at| Point::new(x(at), y));
    sheet.line(Pen::Dimension, line[0], line[1]);
    let inner = stints.iter().map(|stint| stint.to);
    let inner = inner.filter(|to| start < *to && *to < end);
    for at in [start, end].into_iter().chain(inner) {
        let along = x(at);
        tick(sheet, Point::new(along, y));
        sheet.line(
            Pen::Dimension,
            Point::new(along, y - 1.2),
            Point::new(along, (place.wall)(at)),
        );
    }
    let middle = |from, to| Point::new((x(from) + x(to)) / 2.0, y - 2.6);
    let Some(writing) = writing else {
        let here: Vec<usize> = parts(stints, stretch).map(|part| part.stint + 1).collect();
        let all = match here.as_slice() {
            [first, .., last] => format!("stints {first} to {last}"),
            _ => "one stint".to_owned(),
        };
        return sheet.word(middle(start, end), &all, Anchor::Middle);
    };
    for part in parts(stints, stretch).filter(|part| part.named) {
        writing.put(sheet, part.stint, middle(part.from, part.to));
    }
}

/// All ways to write the stints, the best first.
fn writings(stints: &[Stint]) -> Vec<Writing> {
    let names = short_names(stints);
    let pair = |at: usize| match stints.get(at).map(|stint| stint.members.len()) {
        Some(1) => format!("Stint {}", at + 1),
        _ => format!("Pair {}", at + 1),
    };
    let counted = |text: &dyn Fn(usize) -> String| -> Vec<Vec<String>> {
        (0..stints.len()).map(|at| vec![text(at)]).collect()
    };
    let joined = names.iter().map(|names| vec![names.join(", ")]).collect();
    let number = |at: usize| (at + 1).to_string();
    let writing = |lines, size, turned| Writing {
        lines,
        size,
        bold: false,
        turned,
    };
    vec![
        writing(joined, WORD_MM * 1.1, false),
        writing(names.clone(), WORD_MM * 1.1, false),
        writing(names, WORD_MM, false),
        Writing {
            bold: true,
            ..writing(counted(&pair), FIGURE_MM, false)
        },
        writing(counted(&pair), WORD_MM, false),
        writing(counted(&pair), WORD_MM, true),
        writing(counted(&number), SMALL_MM, false),
        writing(counted(&number), SMALL_MM, true),
    ]
}

impl Writing {
    fn fits(&self, stint: usize, room_mm: f64) -> bool {
        let lines = self.lines.get(stint).into_iter().flatten();
        let widest = lines
            .map(|line| width(line, self.size, self.bold))
            .fold(0.0, f64::max);
        let (needed, beside) = if self.turned {
            (self.size * 1.11, BESIDE_TURNED_MM)
        } else {
            (widest, BESIDE_MM)
        };
        needed + 2.0 * beside <= room_mm
    }

    fn put(&self, sheet: &mut Sheet, stint: usize, at: Point) {
        let lines = self.lines.get(stint).into_iter().flatten();
        for (above, line) in lines.rev().enumerate() {
            let mut text = if self.turned {
                let at = Point::new(at.x + 0.275 * self.size, at.y);
                line_of(at, line, self.size, Anchor::Start).turned()
            } else {
                let at = Point::new(at.x, at.y - above as f64 * self.size * LINE_MM);
                line_of(at, line, self.size, Anchor::Middle)
            };
            text.bold = self.bold;
            sheet.text(text);
        }
    }
}

/// First names; with the first letter of the last where two are called alike; whole names
/// where even that is not enough.
fn short_names(stints: &[Stint]) -> Vec<Vec<String>> {
    let all: Vec<&str> = stints
        .iter()
        .flat_map(|stint| &stint.members)
        .map(|student| student.name.as_str())
        .collect();
    let ways: [fn(&str) -> String; 2] = [first_name, first_name_and_letter];
    let way = ways.into_iter().find(|way| {
        let mut short: Vec<String> = all.iter().map(|name| way(name)).collect();
        short.sort();
        short.windows(2).all(|pair| pair[0] != pair[1])
    });
    let whole: fn(&str) -> String = |name| name.split_whitespace().collect::<Vec<_>>().join(" ");
    let way = way.unwrap_or(whole);
    stints
        .iter()
        .map(|stint| {
            stint
                .members
                .iter()
                .map(|student| way(&student.name))
                .collect()
        })
        .collect()
}

fn first_name(name: &str) -> String {
    name.split_whitespace().next().unwrap_or(name).to_owned()
}

fn first_name_and_letter(name: &str) -> String {
    let mut words = name.split_whitespace();
    let first = words.next().unwrap_or(name);
    match words.next_back().and_then(|last| last.chars().next()) {
        Some(letter) => format!("{first} {letter}"),
        None => first.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use craft::course::{Experience, Student};
    use craft::quantity::metres;

    fn stints(pairs: &[&[&str]]) -> Vec<Stint> {
        pairs
            .iter()
            .map(|names| Stint {
                from: metres(0.0),
                to: metres(1.0),
                members: names
                    .iter()
                    .map(|name| Student::new(*name, Experience::Novice))
                    .collect(),
            })
            .collect()
    }

    #[test]
    fn names_are_as_short_as_they_can_be_and_stay_apart() {
        let short = |pairs| short_names(&stints(pairs)).concat();
        assert_eq!(short(&[&["Ann Ash", "Ben"]]), ["Ann", "Ben"]);
        assert_eq!(short(&[&["Ann Ash"], &["Ann Birch"]]), ["Ann A", "Ann B"]);
        assert_eq!(
            short(&[&["Student 1", "Student 10"]]),
            ["Student 1", "Student 10"]
        );
    }
}
