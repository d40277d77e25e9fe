//! Drawings of a planned wall: one scene in paper millimetres, shown on screen and in print.
//!
//! A [`Scene`] is a list of marks with a description in words; [`Scene::svg`] writes it.
//! Nothing in a drawing depends on colour: what a line means is told by its weight, its
//! dashes and its hatching ([`Pen`]). Read the modules in this order:
//!
//! - `pen`, `scene`, `svg`: what a drawing is made of and how it is written
//! - `text_box`, `sheet`, `dimension`, `scale`: room for every text, dimension lines, scales
//! - `stones`, `hatching`: ground and fill hinted at, the same every time
//! - `stretches`: long walls drawn one stretch below another
//! - `block`, `free_place`: words that stay together find a place where no line runs
//! - `upright`: upright chains of dimensions, and lines that give way to words
//! - `section` with `section_widths` and `section_words`, and `parts`: over `cut` with
//!   `cut_stones`, `bank` and `timber`
//! - `frame` with `frame_board`, `frame_checks`, `frame_lines` and `frame_words`; `gauge`
//! - `ground_edge`, `pegs`, `taped`, `line_words`: the line, its edges and what a tape reads
//! - `setting_out` with `pitch`, `pitch_words` and `pitch_rows`: the strip straightened out
//! - `line_plan` with `ground_view` and `plan_words`: the line as it lies on the ground
//! - `elevation`: one more, of `lie` (levels along the wall), `face` (its edges), `laid` and
//!   `masonry` (its stones, with `through_row`), `stint_band`, `beside` and `underneath` with
//!   `line_row` (what is written round it), `told` (the same in words)

mod bank;
mod beside;
mod block;
mod cut;
mod cut_stones;
mod dimension;
mod elevation;
mod face;
mod frame;
mod frame_board;
mod frame_checks;
mod frame_lines;
mod frame_words;
mod free_place;
mod gauge;
mod ground_edge;
mod ground_view;
mod hatching;
mod laid;
mod lie;
mod line_plan;
mod line_row;
mod line_words;
mod masonry;
mod parts;
mod pegs;
mod pen;
mod pitch;
mod pitch_rows;
mod pitch_words;
mod plan_words;
mod scale;
mod scene;
mod section;
mod section_widths;
mod section_words;
mod setting_out;
mod sheet;
mod side_notes;
mod stint_band;
mod stones;
mod stretches;
mod svg;
mod taped;
mod text_box;
mod through_row;
mod timber;
mod told;
mod underneath;
mod upright;
mod words;

#[cfg(test)]
mod fixture;
#[cfg(test)]
mod made_up_lines;
#[cfg(test)]
mod overlap;
#[cfg(test)]
mod written;

pub use elevation::elevation;
pub use frame::frame;
pub use gauge::gauge;
pub use line_plan::line_plan;
pub use parts::section_blank;
pub use pen::Pen;
pub use scene::{Anchor, Mark, Point, Room, Scene, Text};
pub use section::section;
pub use setting_out::setting_out;
