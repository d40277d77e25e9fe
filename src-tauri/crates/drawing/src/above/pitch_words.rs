//! The words round a stretch of the setting-out: rows of figures, offsets, bays, arcs.

use crate::above::line_words::{front, same};
use crate::above::pegs::letter;
use crate::above::pitch::{BAR_MM, Diagonals, Pitch};
use crate::above::taped::Taped;
use crate::paper::block::RING_MM;
use crate::paper::dimension::{Across, CLEAR_MM, Outside, ROW_MM, every_so_many, figure_row, tick};
use crate::paper::pen::Pen;
use crate::paper::scene::{Anchor, Point};
use crate::paper::sheet::{FIGURE_MM, Sheet, WORD_MM, line_of};
use crate::paper::side_notes::{Note, Towards, side_notes};
use crate::paper::text_box::width;
use crate::paper::words::shown;
use craft::frames::{Bay, Curve};
use craft::quantity::{Length, Read, show_count};
use craft::wall::Side;

const LANE_MM: f64 = 6.0;
/// Between two rows of figures.
const ROWS_APART_MM: f64 = 1.6;

/// One stretch and what has to be written at it.
pub(crate) struct PitchWords<'a> {
    pub(crate) pitch: &'a Pitch<'a>,
    pub(crate) taped: &'a Taped,
}

impl PitchWords<'_> {
    /// Draws the stretch with all its words. Gives how many places go to one figure.
    pub(crate) fn write(&self, sheet: &mut Sheet) -> usize {
        self.pitch.draw(sheet, self.diagonals());
        let drawn = sheet.extent();
        let (left, right) = (drawn.left - LANE_MM, drawn.right + LANE_MM);
        sheet.line(
            Pen::Centre,
            Point::new(left, 0.0),
            Point::new(right - LANE_MM / 2.0, 0.0),
        );
        if self.pitch.stretch.first {
            self.offsets(sheet, left);
        }
        if self.pitch.stretch.last && self.taped.frames_alike {
            self.widths(sheet, right);
        }
        let mut every = 1;
        for row in self.rows_above() {
            let (row, one_in) = row.figures();
            sheet.over(row, ROWS_APART_MM);
            every = every.max(one_in);
        }
        for row in self.rows_below() {
            let (row, one_in) = row.figures();
            sheet.stack(row, ROWS_APART_MM);
            every = every.max(one_in);
        }
        every = every.max(self.stations(sheet));
        let one_for_all =
            self.taped.sides_as_the_bay && self.diagonals() == Diagonals::OfTheFirstBay;
        if self.pitch.stretch.first && one_for_all {
            self.diagonal_words(sheet);
        }
        self.lengths(sheet);
        self.arcs(sheet);
        every
    }

    pub(crate) fn diagonals(&self) -> Diagonals {
        if self.taped.square && self.taped.diagonals_alike {
            Diagonals::OfTheFirstBay
        } else {
            Diagonals::OfEveryBay
        }
    }

    pub(crate) fn shown(&self, length: Length) -> String {
        shown(self.pitch.course, length)
    }

    /// The faces and the centre line named along the upright line at the left, with their
    /// distances where all frames have the same; before a bank from the front face.
    fn offsets(&self, sheet: &mut Sheet, x: f64) {
        let pitch = self.pitch;
        let Some(row) = pitch.stretch.rows.first() else {
            return;
        };
        let y = |side| pitch.down(side, row.offset(side));
        let (up, down) = (y(Side::Left), y(Side::Right));
        sheet.line(Pen::Dimension, Point::new(x, up), Point::new(x, down));
        for y in [up, down] {
            let near = Point::new(-2.0 * BAR_MM - 0.6, y);
            sheet.line(Pen::Dimension, near, Point::new(x - 1.2, y));
            tick(sheet, Point::new(x, y));
        }
        tick(sheet, Point::new(x, 0.0));
        let note = |y, figure: String, word: &str| Note {
            y,
            figure,
            word: word.to_owned(),
        };
        let figure = |side| {
            if self.taped.frames_alike {
                self.shown(row.offset(side))
            } else {
                String::new()
            }
        };
        let mut notes = vec![note(0.0, String::new(), "centre line")];
        match front(pitch.plan) {
            None => {
                for side in Side::BOTH {
                    notes.push(note(y(side) / 2.0, figure(side), side.word()));
                }
            }
            Some(front) => {
                notes.push(note(y(front), String::new(), "front face"));
                if self.taped.frames_alike {
                    notes.push(note(y(front) / 2.0, figure(front), "front to centre line"));
                }
                let bank = pitch.bank_from();
                notes.extend(bank.map(|(_, y)| note(y * 1.06, String::new(), "bank")));
            }
        }
        side_notes(sheet, x - 1.2, Towards::Left, &notes);
    }

    /// Base width and trench width at the right.
    fn widths(&self, sheet: &mut Sheet, x: f64) {
        let pitch = self.pitch;
        let Some(row) = pitch.stretch.rows.last() else {
            return;
        };
        let [up, down] = Side::BOTH.map(|side| pitch.down(side, row.offset(side)));
        let end = pitch.end();
        sheet.line(Pen::Dimension, Point::new(x, up), Point::new(x, down));
        for y in [up, down] {
            let near = end + 2.0 * BAR_MM + 0.6;
            sheet.line(Pen::Dimension, Point::new(near, y), Point::new(x + 1.2, y));
            tick(sheet, Point::new(x, y));
        }
        let mut notes = vec![Note {
            y: (up + down) / 2.0,
            figure: self.shown(row.base_width()),
            word: match front(pitch.plan) {
                None => "base width",
                Some(_) => "front to back",
            }
            .to_owned(),
        }];
        if let Some(footing) = pitch.course.wall.footing {
            let y = pitch.across(row.right_offset + footing.outset);
            sheet.line(Pen::Leader, Point::new(end, y), Point::new(x + 1.2, y));
            notes.push(Note {
                y,
                figure: self.shown(row.base_width() + footing.outset * 2.0),
                word: "width of trench".to_owned(),
            });
        }
        side_notes(sheet, x + 1.2, Towards::Right, &notes);
    }

    /// Numbers under the frames, stations under the numbers.
    fn stations(&self, sheet: &mut Sheet) -> usize {
        let frames = self.pitch.frames();
        let y = sheet.extent().bottom + 1.5 + RING_MM;
        let xs = || frames.iter().map(|frame| self.pitch.along(frame.station));
        let ringed = every_so_many(xs(), 2.0 * RING_MM + 1.0) == 1;
        let every = if ringed { 1 } else { every_so_many(xs(), 6.2) };
        for at in crate::paper::dimension::shown(frames.len(), every) {
            let centre = Point::new(self.pitch.along(frames[at].station), y);
            if ringed {
                sheet.circle(Pen::Dimension, centre, RING_MM);
            }
            let size = WORD_MM * 1.08;
            let base = Point::new(centre.x, y + 0.34 * size);
            let number = frames[at].number.to_string();
            sheet.text(line_of(base, &number, size, Anchor::Middle).bold());
        }
        let places: Vec<(f64, String)> = frames
            .iter()
            .map(|frame| {
                let x = self.pitch.along(frame.station);
                (x, self.shown(frame.station))
            })
            .collect();
        figure_row(sheet, y + RING_MM + 1.8, &places)
    }

    /// Over everything, with a line down to the diagonal of the first bay.
    fn diagonal_words(&self, sheet: &mut Sheet) {
        let Some(bay) = self.pitch.bays().next() else {
            return;
        };
        let pitch = self.pitch;
        let y = sheet.extent().top - 2.2;
        let x = pitch.along((bay.from + bay.to) / 2.0);
        let up = pitch.down(Side::Left, pitch.offsets(bay, Side::Left)[0]);
        let down = pitch.down(Side::Right, pitch.offsets(bay, Side::Right)[1]);
        let corner = Point::new(x, y - 0.3 * FIGURE_MM);
        let along = Point::new(x + 3.0, corner.y);
        let on_it = Point::new(x, (up + down) / 2.0);
        sheet.polyline(Pen::Leader, vec![on_it, corner, along]);
        let marks = if pitch.plan.frames.bars.is_some() {
            "bar to bar"
        } else {
            "leg to leg"
        };
        let start = along.x + CLEAR_MM;
        let figure = self.shown(bay.diagonals[0]);
        sheet.figure(Point::new(start, y), &figure, Anchor::Start);
        // Words as large as the figure would reach beyond a short wall.
        let beside = start + width(&figure, FIGURE_MM, true) + CLEAR_MM;
        let words = format!("from {marks}, both ways");
        sheet.word(Point::new(beside, y), &words, Anchor::Start);
    }

    /// Bay by bay where there is room for the figures, then the whole length.
    fn lengths(&self, sheet: &mut Sheet) {
        let pitch = self.pitch;
        let end = pitch.end();
        let y = sheet.extent().bottom + FIGURE_MM + 2.6;
        let bays: Vec<&Bay> = pitch.bays().collect();
        let figures: Vec<String> = bays.iter().map(|bay| self.shown(bay.length)).collect();
        let outside = Outside::Right(end + 3.0);
        let rows: Vec<Across<'_>> = bays
            .iter()
            .zip(&figures)
            .map(|(bay, figure)| Across {
                y,
                from: pitch.along(bay.from),
                to: pitch.along(bay.to),
                figure,
                word: "bay",
                outside,
            })
            .collect();
        if rows.iter().all(Across::holds_its_text) {
            rows.iter().for_each(|row| row.draw(sheet));
        } else {
            self.bays_counted(sheet, y, &bays);
        }
        if !(pitch.stretch.first && pitch.stretch.last) {
            return;
        }
        Across {
            y: y + ROW_MM,
            from: 0.0,
            to: end,
            figure: &self.shown(pitch.stretch.to()),
            word: if pitch.plan.wall.is_ring() {
                "round the ring, back to frame 1"
            } else {
                "length of wall"
            },
            outside,
        }
        .draw(sheet);
    }

    fn bays_counted(&self, sheet: &mut Sheet, y: f64, bays: &[&Bay]) {
        let end = self.pitch.end();
        let ends = bays.iter().map(|bay| bay.to);
        for station in std::iter::once(self.pitch.stretch.from()).chain(ends) {
            tick(sheet, Point::new(self.pitch.along(station), y));
        }
        let alike = bays
            .windows(2)
            .all(|pair| same(pair[0].length, pair[1].length));
        let word = match bays.first() {
            Some(bay) if alike => format!("of {}", self.shown(bay.length)),
            _ => "of different lengths".to_owned(),
        };
        let count = show_count(bays.len(), "bay", "bays");
        let beside = Point::new(end + 3.0, y - 0.6);
        sheet.line(Pen::Dimension, Point::new(0.0, y), Point::new(end, y));
        sheet.figure(beside, &count, Anchor::Start);
        let below = Point::new(beside.x, y + 0.8 + 0.76 * WORD_MM);
        sheet.word(below, &word, Anchor::Start);
    }

    /// Where arcs begin and end, with their radius where there is room for it, else by letter.
    fn arcs(&self, sheet: &mut Sheet) {
        let pitch = self.pitch;
        let y = sheet.extent().bottom + FIGURE_MM + 2.6;
        let curves = pitch.plan.fittings.curves.iter().enumerate();
        for (at, curve) in curves {
            let Some((from, to)) = self.within(curve) else {
                continue;
            };
            let figure = format!("radius {}", self.shown(curve.bend.radius));
            let word = format!("arc {}, turning {}", letter(at), curve.bend.turn.word());
            let across = Across {
                y,
                from,
                to,
                figure: &figure,
                word: &word,
                outside: Outside::Right(to),
            };
            if across.holds_its_text() {
                across.draw(sheet);
                continue;
            }
            sheet.line(Pen::Dimension, Point::new(from, y), Point::new(to, y));
            for x in [from, to] {
                tick(sheet, Point::new(x, y));
            }
            let name = letter(at).to_string();
            let middle = Point::new((from + to) / 2.0, y - CLEAR_MM);
            if width(&name, FIGURE_MM, true) + 3.0 <= to - from {
                sheet.figure(middle, &name, Anchor::Middle);
            }
        }
    }

    /// The part of an arc that lies in the stretch, on paper.
    fn within(&self, curve: &Curve) -> Option<(f64, f64)> {
        let (begins, ends) = (self.pitch.stretch.from().si(), self.pitch.stretch.to().si());
        let (from, to) = (curve.from.si().max(begins), curve.to.si().min(ends));
        let mm = |station: f64| (station - begins) * self.pitch.scale.mm_per_m();
        (from + 1e-9 < to).then(|| (mm(from), mm(to)))
    }
}
