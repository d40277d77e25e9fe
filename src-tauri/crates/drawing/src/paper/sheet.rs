//! The sheet a drawing is made on before its size is known, and how it becomes a scene.

use crate::paper::day_row::DayRow;
use crate::paper::handle::Handle;
use crate::paper::pen::Pen;
use crate::paper::scale::Scale;
use crate::paper::scene::{Anchor, Mark, Point, Room, Scene, Text};
use crate::paper::text_box::TextBox;

/// Size of a measurement's figures: read at arm's length.
pub(crate) const FIGURE_MM: f64 = 4.6;
/// Size of the words beside them.
pub(crate) const WORD_MM: f64 = 3.4;
/// Size of figures where there are too many for the larger. Enlarged half as much again, as
/// drawings are in large print, it is 14 point.
pub(crate) const SMALL_MM: f64 = 3.3;
/// White paper round a drawing.
const MARGIN_MM: f64 = 2.0;

/// Marks in paper millimetres round any zero.
#[derive(Debug, Default)]
pub(crate) struct Sheet {
    marks: Vec<Mark>,
    handles: Vec<Handle>,
    days: Vec<DayRow>,
}

/// What is said about a drawing beside its marks.
pub(crate) struct Heading {
    pub(crate) name: &'static str,
    pub(crate) title: String,
    pub(crate) description: String,
}

impl Sheet {
    pub(crate) fn line(&mut self, pen: Pen, from: Point, to: Point) {
        self.marks.push(Mark::Line { pen, from, to });
    }

    pub(crate) fn polyline(&mut self, pen: Pen, points: Vec<Point>) {
        self.marks.push(Mark::Polyline { pen, points });
    }

    pub(crate) fn polygon(&mut self, pen: Pen, points: Vec<Point>) {
        self.marks.push(Mark::Polygon { pen, points });
    }

    pub(crate) fn rectangle(&mut self, pen: Pen, one: Point, other: Point) {
        self.polygon(
            pen,
            vec![
                one,
                Point::new(other.x, one.y),
                other,
                Point::new(one.x, other.y),
            ],
        );
    }

    pub(crate) fn circle(&mut self, pen: Pen, centre: Point, radius_mm: f64) {
        self.marks.push(Mark::Circle {
            pen,
            centre,
            radius_mm,
        });
    }

    /// A measurement, in bold.
    pub(crate) fn figure(&mut self, at: Point, words: &str, anchor: Anchor) {
        self.text(line_of(at, words, FIGURE_MM, anchor).bold());
    }

    /// Words, in the plain face.
    pub(crate) fn word(&mut self, at: Point, words: &str, anchor: Anchor) {
        self.text(line_of(at, words, WORD_MM, anchor));
    }

    pub(crate) fn text(&mut self, text: Text) {
        self.marks.push(Mark::Text(text));
    }

    pub(crate) fn mark(&mut self, mark: Mark) {
        self.marks.push(mark);
    }

    /// Something that can be taken hold of on a screen; it takes no room.
    pub(crate) fn handle(&mut self, handle: Handle) {
        self.handles.push(handle);
    }

    /// Where the bars of a day lie.
    pub(crate) fn day_row(&mut self, row: DayRow) {
        self.days.push(row);
    }

    /// Everything drawn so far, from the back to the front.
    pub(crate) fn marks(&self) -> &[Mark] {
        &self.marks
    }

    /// The smallest box that holds everything drawn so far.
    pub(crate) fn extent(&self) -> TextBox {
        self.marks
            .iter()
            .fold(TextBox::NOTHING, |all, mark| all.with(mark.extent()))
    }

    /// The scene: as wide as the room, with the drawing in its middle, and as high as needed.
    /// A picture whose axis is time or chance has no scale.
    pub(crate) fn into_scene(
        mut self,
        heading: Heading,
        scale: impl Into<Option<Scale>>,
        room: Room,
    ) -> Scene {
        let extent = self.extent();
        let width_mm = room.width_mm.max(extent.width() + 2.0 * MARGIN_MM);
        let by = Point::new(
            (width_mm - extent.width()) / 2.0 - extent.left,
            MARGIN_MM - extent.top,
        );
        self.shift(by);
        Scene {
            name: heading.name,
            title: heading.title,
            description: heading.description,
            width_mm,
            height_mm: extent.height() + 2.0 * MARGIN_MM,
            scale: scale.into().map(Scale::n),
            marks: self.marks,
            handles: self.handles,
            days: self.days,
        }
    }

    /// So many times as large as the room, with white paper round it, in the direction in which it
    /// is larger.
    pub(crate) fn times(&self, room: Room) -> f64 {
        let extent = self.extent();
        let wide = (extent.width() + 2.0 * MARGIN_MM) / room.width_mm;
        let high = (extent.height() + 2.0 * MARGIN_MM) / room.height_mm;
        wide.max(high)
    }

    pub(crate) fn fits(&self, room: Room) -> bool {
        self.times(room) <= 1.0
    }
}

/// One line of text in the plain face.
pub(crate) fn line_of(at: Point, words: &str, size_mm: f64, anchor: Anchor) -> Text {
    Text {
        at,
        words: words.to_owned(),
        size_mm,
        bold: false,
        anchor,
        turned: false,
    }
}

impl Text {
    pub(crate) fn bold(mut self) -> Self {
        self.bold = true;
        self
    }

    pub(crate) fn turned(mut self) -> Self {
        self.turned = true;
        self
    }
}

impl Sheet {
    /// Puts another drawing where it was made.
    pub(crate) fn append(&mut self, mut other: Self) {
        self.marks.append(&mut other.marks);
        self.handles.append(&mut other.handles);
        self.days.append(&mut other.days);
    }

    fn shift(&mut self, by: Point) {
        for mark in &mut self.marks {
            mark.shift(by);
        }
        for handle in &mut self.handles {
            handle.shift(by);
        }
        for day in &mut self.days {
            day.shift(by);
        }
    }

    /// Puts another drawing to the right of `left`. Gives the right edge of both.
    pub(crate) fn join(&mut self, mut other: Self, left: f64) -> f64 {
        let extent = other.extent();
        let by = Point::new(left - extent.left, 0.0);
        other.shift(by);
        self.append(other);
        left + extent.width()
    }

    /// Puts another drawing to the right, their upper edges level.
    pub(crate) fn beside(&mut self, other: Self, gap_mm: f64) {
        let (drawn, extent) = (self.extent(), other.extent());
        let by = Point::new(drawn.right + gap_mm - extent.left, drawn.top - extent.top);
        self.take(other, by);
    }

    /// Puts another drawing below, its left edge at `left`.
    pub(crate) fn under(&mut self, other: Self, left: f64, gap_mm: f64) {
        let (drawn, extent) = (self.extent(), other.extent());
        let by = Point::new(left - extent.left, drawn.bottom + gap_mm - extent.top);
        self.take(other, by);
    }

    /// Puts another drawing above, so that their zeros stand in one upright line.
    pub(crate) fn over(&mut self, other: Self, gap_mm: f64) {
        let by = Point::new(0.0, self.extent().top - gap_mm - other.extent().bottom);
        self.take(other, by);
    }

    fn take(&mut self, mut other: Self, by: Point) {
        other.shift(by);
        self.append(other);
    }

    /// Puts another drawing below, so that their zeros stand in one upright line.
    pub(crate) fn stack(&mut self, mut other: Self, gap_mm: f64) {
        let (above, below) = (self.extent(), other.extent());
        if !self.marks.is_empty() {
            let by = Point::new(0.0, above.bottom + gap_mm - below.top);
            other.shift(by);
        }
        self.append(other);
    }
}
