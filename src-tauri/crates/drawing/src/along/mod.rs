//! The wall from the side, unrolled along its line and in stretches where it is long.

pub(crate) mod beside;
pub(crate) mod counted;
pub(crate) mod elevation;
pub(crate) mod face;
pub(crate) mod find_fault;
pub(crate) mod ground_handles;
pub(crate) mod laid;
pub(crate) mod lie;
pub(crate) mod line_row;
pub(crate) mod masonry;
pub(crate) mod stint_band;
pub(crate) mod stretches;
pub(crate) mod through_row;
pub(crate) mod told;
pub(crate) mod underneath;
