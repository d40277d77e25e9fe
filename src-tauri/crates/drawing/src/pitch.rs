//! The ground seen from above, without any words: trench, faces, diagonal, frames.

use crate::hatching::broken_edge;
use crate::pen::Pen;
use crate::scale::Scale;
use crate::scene::Point;
use crate::sheet::Sheet;
use crate::stretches::Stretch;
use craft::course::Course;
use craft::frames::FrameRow;
use craft::quantity::Length;

/// From the last frame to the broken edge.
const BROKEN_MM: f64 = 3.0;
/// The dot that stands for a bar.
pub(crate) const BAR_MM: f64 = 0.9;

/// A stretch of ground seen from above at a scale; left of the wall is up.
pub(crate) struct Pitch<'a> {
    pub(crate) course: &'a Course,
    pub(crate) stretch: &'a Stretch<'a>,
    pub(crate) scale: Scale,
    /// How many times larger the drawing is across the wall.
    pub(crate) times: u32,
}

impl Pitch<'_> {
    /// Paper millimetres from the first frame of the stretch.
    pub(crate) fn along(&self, station: Length) -> f64 {
        self.scale.mm(station - self.stretch.from())
    }

    /// Paper millimetres for a distance from the centre line.
    pub(crate) fn across(&self, offset: Length) -> f64 {
        self.scale.mm(offset) * f64::from(self.times)
    }

    pub(crate) fn rows(&self) -> &[FrameRow] {
        self.stretch.rows
    }

    pub(crate) fn end(&self) -> f64 {
        self.along(self.stretch.to())
    }

    pub(crate) fn draw(&self, sheet: &mut Sheet) {
        self.trench(sheet);
        self.faces(sheet);
        if self.stretch.first {
            self.first_bay(sheet);
        }
        self.frames(sheet);
    }

    /// The trench ends with the wall, and is open where the wall goes on.
    fn trench(&self, sheet: &mut Sheet) {
        let (Some(footing), Some(first)) = (self.course.wall.footing, self.rows().first()) else {
            return;
        };
        let up = -self.across(first.left_offset + footing.outset);
        let down = self.across(first.right_offset + footing.outset);
        for y in [up, down] {
            sheet.line(Pen::Trench, Point::new(0.0, y), Point::new(self.end(), y));
        }
        for (x, closed) in self.closed() {
            if closed {
                sheet.line(Pen::Trench, Point::new(x, up), Point::new(x, down));
            }
        }
    }

    /// The two ends of the stretch, and whether the wall ends there.
    fn closed(&self) -> [(f64, bool); 2] {
        [(0.0, self.stretch.first), (self.end(), self.stretch.last)]
    }

    /// The two faces at the ground, and the ends of the wall.
    fn faces(&self, sheet: &mut Sheet) {
        let left = |row: &FrameRow| (row.station, -self.across(row.left_offset));
        let right = |row: &FrameRow| (row.station, self.across(row.right_offset));
        let corners = |edge: &dyn Fn(&FrameRow) -> (Length, f64)| -> Vec<Point> {
            let edge = self.rows().iter().map(edge);
            edge.map(|(station, y)| Point::new(self.along(station), y))
                .collect()
        };
        let (up, down) = (corners(&left), corners(&right));
        for (ends, (x, closed)) in [(up.first(), down.first()), (up.last(), down.last())]
            .into_iter()
            .zip(self.closed())
        {
            let (Some(up), Some(down)) = ends else {
                continue;
            };
            if closed {
                sheet.line(Pen::Outline, *up, *down);
            } else {
                let out = if x <= 0.0 { -BROKEN_MM } else { BROKEN_MM };
                broken_edge(sheet, x + out, (up.y, down.y));
            }
        }
        sheet.polyline(Pen::Outline, up);
        sheet.polyline(Pen::Outline, down);
    }

    fn first_bay(&self, sheet: &mut Sheet) {
        if let [first, second, ..] = self.rows() {
            sheet.line(
                Pen::Diagonal,
                Point::new(0.0, -self.across(first.left_offset)),
                Point::new(self.along(second.station), self.across(second.right_offset)),
            );
        }
    }

    /// A frame from above: a board from bar to bar, the bars outside the faces.
    fn frames(&self, sheet: &mut Sheet) {
        for row in self.rows() {
            let x = self.along(row.station);
            let up = -self.across(row.left_offset) - BAR_MM;
            let down = self.across(row.right_offset) + BAR_MM;
            sheet.line(Pen::Bar, Point::new(x, up), Point::new(x, down));
            sheet.circle(Pen::Solid, Point::new(x, up), BAR_MM);
            sheet.circle(Pen::Solid, Point::new(x, down), BAR_MM);
        }
    }
}
