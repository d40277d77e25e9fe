//! A drawing as a list of marks on paper, measured in millimetres from its upper left corner.

use crate::paper::day_row::DayRow;
use crate::paper::handle::Handle;
use crate::paper::pen::Pen;
use crate::paper::text_box::TextBox;

/// One drawing.
#[derive(Debug, Clone, PartialEq)]
pub struct Scene {
    /// A short word that tells the kinds of drawing apart; begins the ids in the SVG.
    pub name: &'static str,
    /// What it shows.
    pub title: String,
    /// The same in words, with the real numbers, for people who can't see it.
    pub description: String,
    /// Width on paper.
    pub width_mm: f64,
    /// Height on paper.
    pub height_mm: f64,
    /// The n of 1:n, if it is to scale. Where two directions have different scales the
    /// drawing says so, and this is the scale along the wall.
    pub scale: Option<u32>,
    /// What is drawn, from the back to the front.
    pub marks: Vec<Mark>,
    /// What can be taken hold of on a screen; no page shows them.
    pub handles: Vec<Handle>,
    /// Where the bars of each day lie, in a picture of days.
    pub days: Vec<DayRow>,
}

/// The room a drawing may take on a page or a screen.
///
/// The scale is chosen so that the drawing fits. Texts keep their size: where the room is
/// too small for them the scene comes out larger than asked, and is shown smaller.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Room {
    /// Across.
    pub width_mm: f64,
    /// Down.
    pub height_mm: f64,
}

/// A place on paper.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// To the right, in millimetres.
    pub x: f64,
    /// Down, in millimetres.
    pub y: f64,
}

impl Point {
    /// The place so far to the right and down, in millimetres.
    pub fn new(x: f64, y: f64) -> Self {
        Self { x, y }
    }
}

/// One thing drawn.
#[derive(Debug, Clone, PartialEq)]
pub enum Mark {
    /// A straight line.
    Line {
        /// What it stands for.
        pen: Pen,
        /// One end.
        from: Point,
        /// The other.
        to: Point,
    },
    /// Straight lines joined end to end.
    Polyline {
        /// What it stands for.
        pen: Pen,
        /// Its corners.
        points: Vec<Point>,
    },
    /// A closed shape.
    Polygon {
        /// What it stands for.
        pen: Pen,
        /// Its corners.
        points: Vec<Point>,
    },
    /// A circle.
    Circle {
        /// What it stands for.
        pen: Pen,
        /// Its middle.
        centre: Point,
        /// Its radius.
        radius_mm: f64,
    },
    /// Words or figures.
    Text(Text),
}

/// Words or figures in one line.
#[derive(Debug, Clone, PartialEq)]
pub struct Text {
    /// Where the base line begins, has its middle or ends, by the anchor.
    pub at: Point,
    /// What it says.
    pub words: String,
    /// Size of the letters.
    pub size_mm: f64,
    /// In the bold face.
    pub bold: bool,
    /// Which part of the line stands at the place.
    pub anchor: Anchor,
    /// Turned a quarter, to be read from the right.
    pub turned: bool,
}

/// Which part of a line of text stands at its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anchor {
    /// Its beginning.
    Start,
    /// Its middle.
    Middle,
    /// Its end.
    End,
}

impl Mark {
    /// The corners of what it covers: left, top, right, bottom. Line weight is left out.
    pub(crate) fn extent(&self) -> TextBox {
        match self {
            Self::Line { from, to, .. } => TextBox::around(&[*from, *to]),
            Self::Polyline { points, .. } | Self::Polygon { points, .. } => TextBox::around(points),
            Self::Circle {
                centre, radius_mm, ..
            } => TextBox {
                left: centre.x - radius_mm,
                top: centre.y - radius_mm,
                right: centre.x + radius_mm,
                bottom: centre.y + radius_mm,
            },
            Self::Text(text) => TextBox::of(text),
        }
    }

    pub(crate) fn shift(&mut self, by: Point) {
        let shift = |point: &mut Point| {
            point.x += by.x;
            point.y += by.y;
        };
        match self {
            Self::Line { from, to, .. } => {
                shift(from);
                shift(to);
            }
            Self::Polyline { points, .. } | Self::Polygon { points, .. } => {
                points.iter_mut().for_each(shift);
            }
            Self::Circle { centre, .. } => shift(centre),
            Self::Text(text) => shift(&mut text.at),
        }
    }
}
