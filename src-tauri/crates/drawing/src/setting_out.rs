//! The setting-out seen from above: centre line, stations, bars, trench, diagonal, bays.

use crate::dimension::{Across, CLEAR_MM, Outside, ROW_MM, figure_row, tick};
use crate::elevation::{frame_numbers, in_stretches};
use crate::pen::Pen;
use crate::pitch::{BAR_MM, Pitch};
use crate::scale::{Scale, strip, times_larger};
use crate::scene::{Anchor, Point, Room, Scene};
use crate::sheet::{FIGURE_MM, Heading, Sheet, WORD_MM};
use crate::side_notes::{Note, Towards, side_notes};
use crate::stretches::{Stretch, fitted_in_stretches};
use crate::words::{self, shown};
use craft::course::Course;
use craft::frames::{FrameRow, diagonal};
use craft::plan::Plan;
use craft::quantity::{Length, Read, show_count};

/// The base of the wall is drawn at least so wide.
const LEAST_WIDTH_MM: f64 = 34.0;
const LANE_MM: f64 = 6.0;
/// Between two stretches.
const APART_MM: f64 = 8.0;
const RING_MM: f64 = 3.7;
/// Measurements closer than this are the same to a tape.
const SAME_M: f64 = 0.0005;

/// The setting-out seen from above, station 0 at the left; a long wall in stretches.
pub fn setting_out(plan: &Plan, course: &Course, room: Room) -> Scene {
    let (scale, sheet, room) = fitted_in_stretches(plan, room, |scale, room, parts| {
        seen(plan, course, scale, room, parts)
    });
    let heading = Heading {
        name: "setting-out",
        title: "The setting-out seen from above".to_owned(),
        description: description(plan, course, scale),
    };
    sheet.into_scene(heading, scale, room)
}

fn seen(plan: &Plan, course: &Course, scale: Scale, room: Room, parts: &[Stretch<'_>]) -> Sheet {
    let mut all = Sheet::default();
    let mut every = 1;
    for stretch in parts {
        let pitch = Pitch {
            course,
            stretch,
            scale,
            times: times(plan, scale),
        };
        let mut sheet = Sheet::default();
        every = every.max(pitch.with_words(&mut sheet));
        all.stack(sheet, APART_MM);
    }
    let notes = notes(plan, course, times(plan, scale), every, parts.len());
    strip(&mut all, scale, course.units, &notes, room.width_mm);
    all
}

/// How many times larger the drawing is across the wall.
fn times(plan: &Plan, scale: Scale) -> u32 {
    times_larger(scale.mm(plan.section.base_width()), LEAST_WIDTH_MM)
}

fn exaggerated(times: u32) -> Option<String> {
    (1 < times).then(|| format!("Across the wall drawn {times} times larger than along it."))
}

fn notes(plan: &Plan, course: &Course, times: u32, every: usize, stretches: usize) -> Vec<String> {
    let mut notes: Vec<String> = exaggerated(times).into_iter().collect();
    if 1 < stretches {
        notes.push(in_stretches(shown(course, plan.sizing.length), stretches));
    }
    notes.push("Left is left when looking along the wall from station 0.".to_owned());
    notes.push("Dots: bars, measured to their inner faces.".to_owned());
    if course.wall.footing.is_some() {
        notes.push("Dashed: edge of the trench.".to_owned());
    }
    notes.push(if frames_alike(&plan.frames.rows) {
        "All frames alike.".to_owned()
    } else {
        "Offsets shown are those of frame 1; the others differ.".to_owned()
    });
    if 1 < every {
        notes.push(format!("One station in {every} is figured."));
    }
    vec![notes.join(" ")]
}

fn frames_alike(rows: &[FrameRow]) -> bool {
    let same = |a: Length, b: Length| (a - b).si().abs() < SAME_M;
    rows.windows(2).all(|pair| {
        same(pair[0].left_offset, pair[1].left_offset)
            && same(pair[0].right_offset, pair[1].right_offset)
    })
}

fn bays(rows: &[FrameRow]) -> impl Iterator<Item = Length> {
    rows.windows(2)
        .map(|pair| pair[1].station - pair[0].station)
}

fn first_diagonal(rows: &[FrameRow]) -> Option<Length> {
    let bay = bays(rows).next()?;
    rows.first().map(|row| diagonal(bay, row.base_width()))
}

fn description(plan: &Plan, course: &Course, scale: Scale) -> String {
    let rows = &plan.frames.rows;
    let mut said = vec![format!(
        "Plan at 1:{} along the wall, station 0 at the left, left of the centre line at the top.",
        scale.n()
    )];
    said.extend(exaggerated(times(plan, scale)));
    said.push(words::frames(plan, course));
    if let Some(row) = rows.first() {
        let at = if frames_alike(rows) {
            "Every frame"
        } else {
            "The first frame"
        };
        said.push(format!(
            "{at}: left bar {}, right bar {} from the centre line, {} between their inner faces.",
            shown(course, row.left_offset),
            shown(course, row.right_offset),
            shown(course, row.base_width())
        ));
    }
    let bays: Vec<String> = bays(rows).map(|bay| shown(course, bay)).collect();
    said.push(format!("Bays from station 0: {}.", words::list(&bays)));
    if let Some(diagonal) = first_diagonal(rows) {
        said.push(format!(
            "The first bay is square when both its diagonals measure {}.",
            shown(course, diagonal)
        ));
    }
    said.push(words::footing(plan, course));
    said.join(" ")
}

impl Pitch<'_> {
    /// Draws the stretch with all its words. Gives how many stations go to one figure.
    fn with_words(&self, sheet: &mut Sheet) -> usize {
        self.draw(sheet);
        let drawn = sheet.extent();
        let (left, right) = (drawn.left - LANE_MM, drawn.right + LANE_MM);
        let centre = (
            Point::new(left, 0.0),
            Point::new(right - LANE_MM / 2.0, 0.0),
        );
        sheet.line(Pen::Centre, centre.0, centre.1);
        if self.stretch.first {
            self.offsets(sheet, left);
        }
        if self.stretch.last {
            self.widths(sheet, right);
        }
        let every = self.stations(sheet);
        if self.stretch.first {
            self.diagonal_words(sheet);
        }
        self.lengths(sheet);
        every
    }

    /// Left and right of the centre line, along the upright line at the left.
    fn offsets(&self, sheet: &mut Sheet, x: f64) {
        let Some(row) = self.rows().first() else {
            return;
        };
        let (up, down) = (-self.across(row.left_offset), self.across(row.right_offset));
        sheet.line(Pen::Dimension, Point::new(x, up), Point::new(x, down));
        for y in [up, down] {
            sheet.line(
                Pen::Dimension,
                Point::new(-2.0 * BAR_MM - 0.6, y),
                Point::new(x - 1.2, y),
            );
            tick(sheet, Point::new(x, y));
        }
        tick(sheet, Point::new(x, 0.0));
        let note = |y, figure: String, word: &str| Note {
            y,
            figure,
            word: word.to_owned(),
        };
        let notes = [
            note(up / 2.0, shown(self.course, row.left_offset), "left"),
            note(0.0, String::new(), "centre line"),
            note(down / 2.0, shown(self.course, row.right_offset), "right"),
        ];
        side_notes(sheet, x - 1.2, Towards::Left, &notes);
    }

    /// Base width and trench width at the right.
    fn widths(&self, sheet: &mut Sheet, x: f64) {
        let Some(row) = self.rows().last() else {
            return;
        };
        let (up, down) = (-self.across(row.left_offset), self.across(row.right_offset));
        let end = self.end();
        sheet.line(Pen::Dimension, Point::new(x, up), Point::new(x, down));
        for y in [up, down] {
            let near = end + 2.0 * BAR_MM + 0.6;
            sheet.line(Pen::Dimension, Point::new(near, y), Point::new(x + 1.2, y));
            tick(sheet, Point::new(x, y));
        }
        let mut notes = vec![Note {
            y: (up + down) / 2.0,
            figure: shown(self.course, row.base_width()),
            word: "base width".to_owned(),
        }];
        if let Some(footing) = self.course.wall.footing {
            let y = self.across(row.right_offset + footing.outset);
            sheet.line(Pen::Leader, Point::new(end, y), Point::new(x + 1.2, y));
            notes.push(Note {
                y,
                figure: shown(self.course, row.base_width() + footing.outset * 2.0),
                word: "width of trench".to_owned(),
            });
        }
        side_notes(sheet, x + 1.2, Towards::Right, &notes);
    }

    /// Numbers under the frames, stations under the numbers.
    fn stations(&self, sheet: &mut Sheet) -> usize {
        let places: Vec<(f64, String)> = self
            .rows()
            .iter()
            .map(|row| (self.along(row.station), shown(self.course, row.station)))
            .collect();
        let y = sheet.extent().bottom + 1.5 + RING_MM;
        frame_numbers(sheet, y, &places, self.stretch.before);
        figure_row(sheet, y + RING_MM + 1.8, &places)
    }

    /// Over everything, with a line down between the first two frames.
    fn diagonal_words(&self, sheet: &mut Sheet) {
        let (Some(diagonal), [first, second, ..]) = (first_diagonal(self.rows()), self.rows())
        else {
            return;
        };
        let y = sheet.extent().top - 2.2;
        let share = 0.5;
        let x = self.along(first.station + (second.station - first.station) * share);
        let (up, down) = (
            -self.across(first.left_offset),
            self.across(second.right_offset),
        );
        let on_it = Point::new(x, up + (down - up) * share);
        let corner = Point::new(x, y - 0.3 * FIGURE_MM);
        let along = Point::new(x + 3.0, corner.y);
        sheet.polyline(Pen::Leader, vec![on_it, corner, along]);
        let words = format!(
            "{} from bar to bar, both ways",
            shown(self.course, diagonal)
        );
        sheet.figure(Point::new(along.x + CLEAR_MM, y), &words, Anchor::Start);
    }

    /// Bay by bay where there is room for the figures, then the whole length.
    fn lengths(&self, sheet: &mut Sheet) {
        let end = self.end();
        let y = sheet.extent().bottom + FIGURE_MM + 2.6;
        let stations: Vec<f64> = self
            .rows()
            .iter()
            .map(|row| self.along(row.station))
            .collect();
        let bays: Vec<Length> = bays(self.rows()).collect();
        let figures: Vec<String> = bays.iter().map(|bay| shown(self.course, *bay)).collect();
        let outside = Outside::Right(end + 3.0);
        let rows: Vec<Across<'_>> = stations
            .windows(2)
            .zip(&figures)
            .map(|(ends, figure)| Across {
                y,
                from: ends[0],
                to: ends[1],
                figure,
                word: "bay",
                outside,
            })
            .collect();
        if rows.iter().all(Across::holds_its_text) {
            rows.iter().for_each(|row| row.draw(sheet));
        } else {
            stations.iter().for_each(|x| tick(sheet, Point::new(*x, y)));
            let alike = bays
                .windows(2)
                .all(|pair| (pair[0] - pair[1]).si().abs() < SAME_M);
            let word = match figures.first() {
                Some(figure) if alike => format!("of {figure}"),
                _ => "of different lengths".to_owned(),
            };
            let count = show_count(bays.len(), "bay", "bays");
            let beside = Point::new(end + 3.0, y - 0.6);
            sheet.line(Pen::Dimension, Point::new(0.0, y), Point::new(end, y));
            sheet.figure(beside, &count, Anchor::Start);
            sheet.word(
                Point::new(beside.x, y + 0.8 + 0.76 * WORD_MM),
                &word,
                Anchor::Start,
            );
        }
        if !(self.stretch.first && self.stretch.last) {
            return;
        }
        Across {
            y: y + ROW_MM,
            from: 0.0,
            to: end,
            figure: &shown(self.course, self.stretch.to()),
            word: "length of wall",
            outside,
        }
        .draw(sheet);
    }
}
