//! What every drawing is made of: pens, scenes, texts with room round them, dimensions, scales.

pub(crate) mod block;
pub(crate) mod day_row;
pub(crate) mod dimension;
pub(crate) mod fitting;
pub(crate) mod free_place;
pub(crate) mod handle;
pub(crate) mod hatching;
pub(crate) mod pen;
pub(crate) mod scale;
pub(crate) mod scene;
pub(crate) mod sheet;
pub(crate) mod side_notes;
pub(crate) mod strewn;
pub(crate) mod svg;
pub(crate) mod text_box;
pub(crate) mod upright;
pub(crate) mod words;
