//! What can be taken hold of in a drawing, and where it comes to lie for each value.
//!
//! A handle is no mark: it is not drawn, and a page has none. A window shows it over the drawing
//! and says which of its stops was meant; what a stop means is worked out here.

use crate::paper::scene::Point;
use craft::wall::Side;

/// Something in a drawing that can be moved.
#[derive(Debug, Clone, PartialEq)]
pub struct Handle {
    /// What moves.
    pub moves: Moves,
    /// Which way it moves.
    pub axis: Axis,
    /// Where it is.
    pub at: Point,
    /// A place that stays where it is while this handle moves.
    pub fixed: Point,
    /// Paper millimetres for a metre along the axis.
    pub mm_per_m: f64,
    /// Where it can be moved to, from left to right or from below upwards; where it is now is
    /// one of them.
    pub stops: Vec<Stop>,
    /// Which of them it is at.
    pub now: usize,
}

/// What a handle moves.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Moves {
    /// The height of the wall.
    Height,
    /// The foot of a face, by its batter.
    Face(Side),
    /// The ground at a surveyed station, counted from 0, at the face that is looked at.
    Ground(usize, Side),
}

/// The way a handle moves.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Axis {
    /// To the left and to the right.
    Across,
    /// Up and down.
    Upright,
}

/// A value a handle can be moved to.
#[derive(Debug, Clone, PartialEq)]
pub struct Stop {
    /// What a person would type for it.
    pub typed: String,
    /// What a person would call it.
    pub words: String,
    /// Where it lies along the axis, in millimetres on paper.
    pub place_mm: f64,
}

impl Handle {
    /// A handle with a stop at each value and one where it is, in order of their places.
    /// A value that would be typed as the present one is left out.
    pub(crate) fn new(
        (moves, axis): (Moves, Axis),
        (at, fixed): (Point, Point),
        mm_per_m: f64,
        now: Stop,
        others: impl IntoIterator<Item = Stop>,
    ) -> Self {
        let mut stops: Vec<Stop> = others
            .into_iter()
            .filter(|it| it.typed != now.typed)
            .collect();
        let typed = now.typed.clone();
        stops.push(now);
        stops.sort_by(|a, b| match axis {
            Axis::Across => a.place_mm.total_cmp(&b.place_mm),
            Axis::Upright => b.place_mm.total_cmp(&a.place_mm),
        });
        let now = stops.iter().position(|it| it.typed == typed);
        Self {
            moves,
            axis,
            at,
            fixed,
            mm_per_m,
            stops,
            now: now.unwrap_or_default(),
        }
    }

    pub(crate) fn shift(&mut self, by: Point) {
        for place in [&mut self.at, &mut self.fixed] {
            place.x += by.x;
            place.y += by.y;
        }
        let along = match self.axis {
            Axis::Across => by.x,
            Axis::Upright => by.y,
        };
        for stop in &mut self.stops {
            stop.place_mm += along;
        }
    }
}
