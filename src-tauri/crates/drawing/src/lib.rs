//! Drawings of a planned wall: one scene in paper millimetres, shown on screen and in print.
//!
//! A [`Scene`] is a list of marks with a description in words; [`Scene::svg`] writes it.
//! Nothing in a drawing depends on colour: what a line means is told by its weight, its
//! dashes and its hatching ([`Pen`]). Read the modules in this order:
//!
//! - `pen`, `scene`, `svg`: what a drawing is made of and how it is written
//! - `text_box`, `sheet`, `dimension`, `scale`: room for every text, dimension lines, scales
//! - `stones`, `hatching`: stones and ground hinted at, the same every time
//! - `stretches`: long walls drawn one stretch below another
//! - `section` and `parts` with `cut`, `setting_out` with `pitch`, `gauge`: the drawings
//! - `elevation`: one more, of `lie` (levels along the wall), `face` (its edges), `laid` and
//!   `masonry` (its stones, with `through_row`), `stint_band`, `beside` and `underneath` with
//!   `line_row` (what is written round it), `told` (the same in words)

mod beside;
mod cut;
mod dimension;
mod elevation;
mod face;
mod gauge;
mod hatching;
mod laid;
mod lie;
mod line_row;
mod masonry;
mod parts;
mod pen;
mod pitch;
mod scale;
mod scene;
mod section;
mod setting_out;
mod sheet;
mod side_notes;
mod stint_band;
mod stones;
mod stretches;
mod svg;
mod text_box;
mod through_row;
mod told;
mod underneath;
mod words;

#[cfg(test)]
mod fixture;
#[cfg(test)]
mod overlap;
#[cfg(test)]
mod written;

pub use elevation::elevation;
pub use gauge::gauge;
pub use parts::section_blank;
pub use pen::Pen;
pub use scene::{Anchor, Mark, Point, Room, Scene, Text};
pub use section::section;
pub use setting_out::setting_out;
